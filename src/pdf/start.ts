// How does a browser that was found become one that runs?

import { accessSync, constants, mkdirSync } from "node:fs";
import { homedir, tmpdir } from "node:os";
import { join } from "node:path";
import type { FoundBrowser } from "./find-browser.ts";
import { launchBrowser, type RunningBrowser } from "./launch.ts";
import { unpackBrowser } from "./unpack.ts";

/** Two saturate two cores; more only wait for each other. */
export const PAGES = 2;

export interface StartOptions {
  /** Folder of the program's own that may hold an unpacked browser. */
  readonly cache: string;
  readonly warn: (line: string) => void;
  /** Empty pages to have at once; the printer's number unless something else drives the browser. */
  readonly pages?: number;
}

export const startBrowser = async (found: FoundBrowser, { cache, warn, pages = PAGES }: StartOptions): Promise<RunningBrowser> => {
  if (found.kind !== "npm") return launchBrowser({ path: found.path, libraries: undefined, warn, pages });
  const folder = join(writableFolder(cache), found.identity.replace(/[^A-Za-z0-9.]+/g, "-"));
  const { path, libraries } = await unpackBrowser({ packed: found.path, cache: folder });
  return launchBrowser({ path, libraries, warn, pages });
};

/** The program's own folder, or the user's cache where the program is installed read-only. */
const writableFolder = (own: string): string => {
  try {
    mkdirSync(own, { recursive: true });
    accessSync(own, constants.W_OK);
    return own;
  } catch {
    const home = homedir();
    return join(home === "" ? tmpdir() : join(home, ".cache"), "reevebook");
  }
};
