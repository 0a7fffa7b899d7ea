// What does each command line ask for?
import { describe, expect, test } from "vitest";
import { readArguments } from "../../src/cli/arguments.ts";

const read = (line: string) =>
  readArguments(
    line.split(" ").filter((word) => word !== ""),
    "1.2.3",
  );

describe("readArguments", () => {
  test("build alone takes jobs/ and output/, with PDFs, on the paper of each job", () => {
    expect(read("build")).toEqual({
      command: "build",
      options: { jobs: "jobs", out: "output", files: [], pdf: true, draft: false, paper: undefined },
    });
  });

  test("files and options stand in any order", () => {
    expect(read("build a.yaml --out=o --no-pdf b.yaml --paper a4 --jobs j --draft")).toEqual({
      command: "build",
      options: { jobs: "j", out: "o", files: ["a.yaml", "b.yaml"], pdf: false, draft: true, paper: "a4" },
    });
  });

  test.each([
    "",
    "--help",
    "-h",
    "build --help",
    "check --help",
    "explain --help",
    "blank --help",
    "freeze --help",
    "verify --help",
    "--version",
  ])("%j is answered", (line) => expect(read(line).command).toBe("say"));
  test("explain takes a job, and a value of one word or more", () => {
    expect(read("explain 0001 course 05 --jobs j")).toMatchObject({
      command: "explain",
      job: "0001",
      value: "course 05",
      options: { jobs: "j", files: [] },
    });
    expect(read("explain 0001")).toMatchObject({ command: "explain", job: "0001", value: undefined });
  });

  test("freeze takes what build takes, the folder that keeps, and whether to print again", () => {
    expect(read("freeze a.yaml --into kept --paper a4")).toEqual({
      command: "freeze",
      options: { jobs: "jobs", out: "output", files: ["a.yaml"], pdf: true, draft: false, paper: "a4" },
      into: "kept",
      print: false,
    });
    expect(read("freeze --into kept --print")).toMatchObject({ command: "freeze", options: { files: [] }, print: true });
  });

  test("verify takes folders", () => {
    expect(read("verify a b --print")).toEqual({ command: "verify", folders: ["a", "b"], print: true });
  });

  test("both helps say what hashes can't do, or what is never written over", () => {
    const said = (line: string): string => {
      const request = read(line);
      return request.command === "say" ? request.text : "";
    };
    expect(said("verify --help")).toMatch(
      /guard against damage\. They do not guard against somebody who changes a file and its manifests too/,
    );
    expect(said("freeze --help")).toMatch(/A revision that was frozen is never written over/);
  });

  test("blank takes the number of the new job", () =>
    expect(read("blank 0042-new-deck")).toEqual({ command: "blank", number: "0042-new-deck" }));

  test("the version is said as it is", () => expect(read("--version")).toEqual({ command: "say", text: "1.2.3\n" }));

  test.each([
    ["bild", /no command "bild"/],
    ["build --papper a4", /--papper/],
    ["build --paper a5", /--paper takes letter or a4, not "a5"/],
    ["build --out", /--out/],
    ["check --no-pdf", /check makes no pages: --no-pdf/],
    ["explain 0001 R1 --draft", /explain makes no pages: --draft/],
    ["freeze", /freeze takes --into DIR/],
    ["freeze --into kept --draft", /freeze freezes no drafts: --draft/],
    ["freeze --into kept --no-pdf --print", /--print has no meaning with --no-pdf/],
    ["verify", /verify takes the folders of bags/],
    ["verify a --out b", /verify reads bags and nothing else: --out/],
    ["build --into kept", /build freezes nothing: --into/],
    ["toString", /no command "toString"/],
    ["blank", /blank takes one number/],
    ["blank 0042 0043", /blank takes one number/],
    ["explain", /explain takes a job: its file or its number/],
  ])("%j is refused with its reason", (line, reason) => {
    const request = read(line);
    expect(request.command).toBe("refuse");
    expect(request.command === "refuse" ? request.text : "").toMatch(reason);
  });
});
