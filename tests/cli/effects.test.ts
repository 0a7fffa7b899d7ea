// Are real files written whole or not at all?
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { realEffects } from "../../src/cli/effects.ts";

const folder = mkdtempSync(join(tmpdir(), "reevebook-files-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const { files } = realEffects;

describe("writeWhole", () => {
  test("a file in two new folders is written, and no other name is left beside it", () => {
    files.writeWhole(join(folder, "a/b/c.txt"), "words");
    expect(readFileSync(join(folder, "a/b/c.txt"), "utf8")).toBe("words");
    expect(readdirSync(join(folder, "a/b"))).toEqual(["c.txt"]);
  });

  test("when it can't be put in place, the half that was written is removed", () => {
    mkdirSync(join(folder, "taken/inside"), { recursive: true });
    expect(() => files.writeWhole(join(folder, "taken"), "words")).toThrow();
    expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });
});

describe("writeFolder", () => {
  const content = new Map([
    ["a.txt", Buffer.from("a")],
    ["b/c.txt", Buffer.from("c")],
  ]);

  test("a folder is written with the folders in it and above it, and no other name is left beside it", () => {
    files.writeFolder(join(folder, "e/f"), content);
    expect(readFileSync(join(folder, "e/f/b/c.txt"), "utf8")).toBe("c");
    expect(readdirSync(join(folder, "e"))).toEqual(["f"]);
  });

  test("one that has something in it is not written over, and nothing is left of the attempt", () => {
    files.writeFolder(join(folder, "g/h"), new Map([["mine", Buffer.from("mine")]]));
    expect(() => files.writeFolder(join(folder, "g/h"), content)).toThrow();
    expect(readdirSync(join(folder, "g/h"))).toEqual(["mine"]);
    expect(readdirSync(join(folder, "g"))).toEqual(["h"]);
  });

  test("when a file of it can't be written, nothing is left", () => {
    const clashing = new Map([...content, ["a.txt/d", Buffer.from("d")]]);
    expect(() => files.writeFolder(join(folder, "i/j"), clashing)).toThrow();
    expect(readdirSync(join(folder, "i"))).toEqual([]);
  });
});

describe("kind", () => {
  test("a file, a folder and nothing are told apart, also behind a file", () => {
    files.writeWhole(join(folder, "k/l"), "l");
    expect(["k/l", "k", "k/m", "k/l/m"].map((path) => files.kind(join(folder, path)))).toEqual(["file", "folder", undefined, undefined]);
  });

  test.skipIf(process.platform === "win32")("a link is a link, whatever it shows", () => {
    symlinkSync(join(folder, "k"), join(folder, "link"));
    expect(files.kind(join(folder, "link"))).toBe("link");
    expect(files.kind("/dev/null")).toBe("other");
  });
});

describe("remove", () => {
  test("a folder goes with its last file, and stays while it has another", () => {
    files.writeWhole(join(folder, "d/1"), "1");
    files.writeWhole(join(folder, "d/2"), "2");
    files.remove(join(folder, "d/1"));
    expect(files.list(join(folder, "d"))).toEqual(["2"]);
    files.remove(join(folder, "d/2"));
    expect(files.list(join(folder, "d"))).toBeUndefined();
  });
});
