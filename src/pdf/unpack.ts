// Where does the npm browser run from? A versioned cache of our own, filled whole or not at all.
import { spawnSync } from "node:child_process";
import { createReadStream, createWriteStream, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { createBrotliDecompress } from "node:zlib";

export interface UnpackedBrowser {
  readonly path: string;
  /** Folder of carried system libraries, only where the system lacks them. */
  readonly libraries: string | undefined;
}

export interface UnpackOptions {
  /** The packed browser, `.../bin/chromium.br`. */
  readonly packed: string;
  /** Folder that belongs to this version alone. */
  readonly cache: string;
}

/** Unpacks the browser once; later calls only look. */
export const unpackBrowser = async ({ packed, cache }: UnpackOptions): Promise<UnpackedBrowser> => {
  const path = join(cache, "browser");
  const libraries = join(cache, "al2023", "lib");
  if (!existsSync(path)) await whole(path, async (part) => unbrotli(packed, part));
  if (existsSync(libraries)) return { path, libraries };
  if (existsSync(join(cache, "starts")) || starts(path)) {
    if (!existsSync(join(cache, "starts"))) mkdirSync(join(cache, "starts"));
    return { path, libraries: undefined };
  }
  await whole(join(cache, "al2023"), (part) => untar(join(dirname(packed), "al2023.tar.br"), part));
  return { path, libraries };
};

/** Makes a file or folder under another name and renames it, so that a parallel or broken run leaves no half. */
const whole = async (path: string, make: (part: string) => Promise<void>): Promise<void> => {
  mkdirSync(dirname(path), { recursive: true });
  const part = join(dirname(path), `.${basename(path)}-${process.pid}.part`);
  try {
    await make(part);
    renameSync(part, path);
  } catch (error) {
    if (!existsSync(path)) throw error; // another run was first: then its result is used
  } finally {
    rmSync(part, { recursive: true, force: true });
  }
};

const unbrotli = async (from: string, to: string): Promise<void> =>
  pipeline(createReadStream(from), createBrotliDecompress({ chunkSize: 1 << 21 }), createWriteStream(to, { mode: 0o700 }));

const untar = async (from: string, folder: string): Promise<void> => {
  const { extract } = (await import("tar-fs")).default;
  // One pipeline from end to end: an error in any part of it ends the rest.
  await pipeline(createReadStream(from), createBrotliDecompress({ chunkSize: 1 << 21 }), extract(folder) as NodeJS.WritableStream);
  // The archive holds lib/ at its top; older ones hold al2023/lib/.
  const nested = join(folder, "al2023");
  if (!existsSync(join(folder, "lib")) && existsSync(nested)) renameSync(join(nested, "lib"), join(folder, "lib"));
};

const starts = (path: string): boolean => spawnSync(path, ["--version"], { timeout: 20_000 }).status === 0;
