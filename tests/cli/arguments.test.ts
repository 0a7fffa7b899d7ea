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

  test.each(["", "--help", "-h", "build --help", "check --help", "explain --help", "--version"])("%j is answered", (line) =>
    expect(read(line).command).toBe("say"),
  );
  test("explain takes a job, and a value of one word or more", () => {
    expect(read("explain 0001 course 05 --jobs j")).toMatchObject({
      command: "explain",
      job: "0001",
      value: "course 05",
      options: { jobs: "j", files: [] },
    });
    expect(read("explain 0001")).toMatchObject({ command: "explain", job: "0001", value: undefined });
  });

  test("the version is said as it is", () => expect(read("--version")).toEqual({ command: "say", text: "1.2.3\n" }));

  test.each([
    ["bild", /no command "bild"/],
    ["build --papper a4", /--papper/],
    ["build --paper a5", /--paper takes letter or a4, not "a5"/],
    ["build --out", /--out/],
    ["check --no-pdf", /check makes no pages: --no-pdf/],
    ["explain 0001 R1 --draft", /explain makes no pages: --draft/],
    ["explain", /explain takes a job: its file or its number/],
  ])("%j is refused with its reason", (line, reason) => {
    const request = read(line);
    expect(request.command).toBe("refuse");
    expect(request.command === "refuse" ? request.text : "").toMatch(reason);
  });
});
