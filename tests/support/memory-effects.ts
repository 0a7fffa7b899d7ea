// How is the program run without touching the world? With files in a map, a clock that counts and output that is kept.
import { readFileSync } from "node:fs";
import { dirname, normalize } from "node:path";
import type { Effects } from "../../src/cli/effects.ts";

export interface MemoryEffects extends Effects {
  readonly disk: Map<string, string | Uint8Array>;
  readonly said: string[];
  readonly warned: string[];
  /** Paths in the order in which they were written. */
  readonly written: string[];
}

export const memoryEffects = (disk: Readonly<Record<string, string>>): MemoryEffects => {
  const files = new Map<string, string | Uint8Array>(Object.entries(disk));
  const touched = new Map<string, number>();
  const said: string[] = [];
  const warned: string[] = [];
  const written: string[] = [];
  let ticks = 0;
  const touch = (path: string): void => {
    ticks += 1;
    touched.set(dirname(path), ticks);
  };
  const bytesOf = (content: string | Uint8Array): Uint8Array => (typeof content === "string" ? Buffer.from(content) : content);
  return {
    disk: files,
    said,
    warned,
    written,
    now_ms: () => {
      ticks += 1;
      return ticks;
    },
    env: {},
    platform: "linux",
    threads: false,
    output: { terminal: false, write: (text) => said.push(text), warn: (text) => warned.push(text) },
    files: {
      list: (folder) => {
        const names = [...files.keys()]
          .filter((path) => path.startsWith(`${folder}/`))
          .map((path) => path.slice(folder.length + 1).split("/")[0] ?? "");
        return names.length === 0 ? undefined : [...new Set(names)];
      },
      read: (path) => {
        const content = files.get(normalize(path));
        return content === undefined ? undefined : bytesOf(content);
      },
      size: (path) => {
        const content = files.get(normalize(path));
        return content === undefined ? undefined : bytesOf(content).length;
      },
      kind: (path) => {
        if (files.has(normalize(path))) return "file";
        return [...files.keys()].some((file) => file.startsWith(`${normalize(path)}/`)) ? "folder" : undefined;
      },
      touched_ms: (folder) => touched.get(normalize(folder)),
      writeWhole: (path, content) => {
        files.set(normalize(path), content);
        written.push(normalize(path));
        touch(normalize(path));
      },
      writeFolder: (path, content) => {
        for (const [name, bytes] of content) {
          const file = normalize(`${path}/${name}`);
          files.set(file, bytes);
          written.push(file);
        }
      },
      remove: (path) => {
        files.delete(normalize(path));
        touch(normalize(path));
      },
    },
  };
};

/** The smallest example job, with its number changed where a test needs several. */
export const exampleJob = (number = "0001-porch-front"): string =>
  readFileSync("jobs/0001-level-deck-straight.yaml", "utf8").replace("number: 0001-porch-front", `number: ${number}`);
