// What if the program that is to print is no browser, or its packed form is used by two runs at once?
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliCompressSync } from "node:zlib";
import { afterAll, describe, expect, test } from "vitest";
import { launchBrowser } from "../../src/pdf/launch.ts";
import { unpackBrowser } from "../../src/pdf/unpack.ts";

const folder = mkdtempSync(join(tmpdir(), "reevebook-launch-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const program = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, `#!/bin/sh\n${text}\n`, { mode: 0o700 });
  return path;
};

describe("launchBrowser", () => {
  test("a program that ends at once is told with its code and its words", async () => {
    const path = program("ends", "echo cannot find my library >&2; exit 7");
    await expect(launchBrowser({ path, libraries: undefined, warn: () => {}, pages: 1 })).rejects.toThrow(
      /did not start: it ended with code 7\ncannot find my library/,
    );
  });

  test("a file that is no program is told", async () => {
    const path = join(folder, "plain.txt");
    writeFileSync(path, "words");
    await expect(launchBrowser({ path, libraries: undefined, warn: () => {}, pages: 1 })).rejects.toThrow(/did not start/);
  });

  test("a browser that says it can't have its sandbox is started once more without, and the user is told", async () => {
    const warned: string[] = [];
    const path = program("boxed", 'case "$*" in *--no-sandbox*) echo second start >&2; exit 3;; esac; echo No usable sandbox >&2; exit 1');
    const started = launchBrowser({ path, libraries: undefined, warn: (line) => warned.push(line), pages: 1 });
    await expect(started).rejects.toThrow(/second start/);
    expect(warned).toHaveLength(1);
  });

  test("its own libraries stand first on the library path", async () => {
    const path = program("shows", "echo path is $LD_LIBRARY_PATH >&2; exit 1");
    await expect(launchBrowser({ path, libraries: "/own/lib", warn: () => {}, pages: 1 })).rejects.toThrow(/path is \/own\/lib/);
  });
});

describe("unpackBrowser", () => {
  // A shell script stands in for the 64 MB of the packed browser.
  const packed = join(folder, "chromium.br");
  const pack = (text: string): void => writeFileSync(packed, brotliCompressSync(Buffer.from(`#!/bin/sh\n${text}\n`)));

  test("two runs at once leave one whole program, no half, and agree that it starts by itself", async () => {
    pack("exit 0");
    const cache = join(folder, "cache-a");
    const both = await Promise.all([unpackBrowser({ packed, cache }), unpackBrowser({ packed, cache })]);
    expect(both[0]).toEqual({ path: join(cache, "browser"), libraries: undefined });
    expect(both[1]).toEqual(both[0]);
    expect(readdirSync(cache).sort()).toEqual(["browser", "starts"]);
    rmSync(packed);
    expect(await unpackBrowser({ packed, cache }), "a later run only looks").toEqual(both[0]);
  });

  test("a packed file that is broken leaves nothing behind", async () => {
    writeFileSync(packed, "no such packing");
    const cache = join(folder, "cache-b");
    await expect(unpackBrowser({ packed, cache })).rejects.toThrow();
    expect(readdirSync(cache)).toEqual([]);
  });

  test("where it does not start by itself and the libraries are missing from the package, the reason is told", async () => {
    pack("exit 127");
    const cache = join(folder, "cache-c");
    await expect(unpackBrowser({ packed, cache })).rejects.toThrow(/al2023\.tar\.br/);
    expect(existsSync(join(cache, "browser"))).toBe(true);
  });
});
