// How does the program touch the world? Through this object: the real one here, one in memory in tests.
import { lstatSync, mkdirSync, readdirSync, readFileSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";

export interface Files {
  /** Names in a folder; undefined when there is no such folder. */
  readonly list: (folder: string) => readonly string[] | undefined;
  /** undefined when there is no such file. */
  readonly read: (path: string) => Uint8Array | undefined;
  readonly size: (path: string) => number | undefined;
  /** What has this name, itself and not what it links to; undefined when nothing has. */
  readonly kind: (path: string) => "file" | "folder" | "link" | "other" | undefined;
  /** When a folder's list of names last changed; undefined when there is no such folder. */
  readonly touched_ms: (folder: string) => number | undefined;
  /** The whole file or nothing: written under another name, then renamed. */
  readonly writeWhole: (path: string, content: Uint8Array | string) => void;
  /** The whole folder or nothing, in the same way; files by path below it. Refuses when there is a folder with something in it. */
  readonly writeFolder: (path: string, files: ReadonlyMap<string, Uint8Array>) => void;
  /** Removes a file, and its folder when that is empty then. */
  readonly remove: (path: string) => void;
}

export interface Output {
  /** A terminal shows progress in one line that is written over; anything else gets plain lines. */
  readonly terminal: boolean;
  readonly write: (text: string) => void;
  readonly warn: (text: string) => void;
}

export interface Effects {
  readonly files: Files;
  readonly now_ms: () => number;
  readonly output: Output;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
  /** Whether other threads may do a share of the work: they touch the real world. */
  readonly threads: boolean;
}

export const realEffects: Effects = {
  files: {
    list: (folder) => orUndefined(() => readdirSync(folder)),
    read: (path) => orUndefined(() => readFileSync(path)),
    size: (path) => statSync(path, { throwIfNoEntry: false })?.size,
    kind: (path) => {
      const found = orUndefined(() => lstatSync(path));
      if (found === undefined) return undefined;
      if (found.isSymbolicLink()) return "link";
      if (found.isDirectory()) return "folder";
      return found.isFile() ? "file" : "other";
    },
    touched_ms: (folder) => statSync(folder, { throwIfNoEntry: false })?.mtimeMs,
    writeWhole: (path, content) => {
      const part = partOf(path);
      try {
        try {
          writeFileSync(part, content);
        } catch (error) {
          if (!isMissing(error)) throw error;
          mkdirSync(dirname(path), { recursive: true });
          writeFileSync(part, content);
        }
        renameSync(part, path);
      } catch (error) {
        // Where its folder is a file there is no part, and asking for it would hide what went wrong.
        orUndefined(() => rmSync(part, { force: true }));
        throw error;
      }
    },
    writeFolder: (path, files) => {
      const part = partOf(path);
      try {
        for (const [name, content] of files) {
          const file = join(part, name);
          mkdirSync(dirname(file), { recursive: true });
          writeFileSync(file, content);
        }
        renameSync(part, path);
      } catch (error) {
        rmSync(part, { recursive: true, force: true });
        throw error;
      }
    },
    remove: (path) => {
      rmSync(path, { force: true });
      orUndefined(() => (readdirSync(dirname(path)).length === 0 ? rmdirSync(dirname(path)) : undefined));
    },
  },
  now_ms: () => performance.now(),
  output: {
    terminal: process.stdout.isTTY === true,
    write: (text) => {
      process.stdout.write(text);
    },
    warn: (text) => {
      process.stderr.write(text);
    },
  },
  env: process.env,
  platform: process.platform,
  threads: true,
};

/** The name under which something is written before it is whole. */
const partOf = (path: string): string => join(dirname(path), `.${basename(path)}.${process.pid}.part`);

const isMissing = (error: unknown): boolean => {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  return code === "ENOENT" || code === "ENOTDIR";
};

/** A file that is not there is an answer; anything else that goes wrong is not. */
const orUndefined = <T>(read: () => T): T | undefined => {
  try {
    return read();
  } catch (error) {
    if (isMissing(error)) return undefined;
    throw error;
  }
};
