// Are real files written whole or not at all?
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
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
