// Which browser prints the pages? One named by the environment, else one that is installed, else the one from npm.
import { existsSync, readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";

export interface FoundBrowser {
  readonly kind: "named" | "installed" | "npm";
  /** The program to start; for npm the packed file that is unpacked first. */
  readonly path: string;
  /** Changes when the browser changes: part of the key of every printed file. */
  readonly identity: string;
}

export interface BrowserSearch {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

const linuxNames = ["google-chrome", "google-chrome-stable", "chromium", "chromium-browser", "microsoft-edge", "microsoft-edge-stable"];
const linuxFolders = ["/usr/bin", "/usr/local/bin", "/snap/bin"];
const macNames = ["Google Chrome", "Chromium", "Microsoft Edge"];
const windowsTails = [
  "Google\\Chrome\\Application\\chrome.exe",
  "Chromium\\Application\\chrome.exe",
  "Microsoft\\Edge\\Application\\msedge.exe",
];

const namedIn = ({ env }: Pick<BrowserSearch, "env">): string | undefined => env["REEVEBOOK_BROWSER"] || undefined;

/** What is wrong with the name of a browser that the environment gives; undefined when nothing is. */
export const wrongBrowserName = (search: Pick<BrowserSearch, "env">): string | undefined => {
  const named = namedIn(search);
  if (named === undefined || statSync(named, { throwIfNoEntry: false })?.isFile() === true) return undefined;
  return `REEVEBOOK_BROWSER names "${named}", but there is no such file\n  fix: name the browser's program with its whole path, or unset it to have one looked for\n`;
};

/** The first browser found, or undefined when there is none at all. */
export const findBrowser = (search: BrowserSearch): FoundBrowser | undefined => {
  const named = namedIn(search);
  if (named !== undefined) return { kind: "named", path: named, identity: identityOf(named) };
  const installed = usualPlaces(search).find((path) => existsSync(path));
  if (installed !== undefined) return { kind: "installed", path: installed, identity: identityOf(installed) };
  const packed = search.platform === "linux" ? packedBrowser() : undefined;
  return packed === undefined ? undefined : { kind: "npm", path: packed.path, identity: `npm ${packed.version}` };
};

/** Where browsers usually stand on each system. */
export const usualPlaces = ({ platform, env }: BrowserSearch): readonly string[] => {
  if (platform === "darwin") {
    const roots = ["/Applications", ...(env["HOME"] === undefined ? [] : [join(env["HOME"], "Applications")])];
    return roots.flatMap((root) => macNames.map((name) => `${root}/${name}.app/Contents/MacOS/${name}`));
  }
  if (platform === "win32") {
    const roots = [env["PROGRAMFILES"], env["PROGRAMFILES(X86)"], env["LOCALAPPDATA"]].filter((root) => root !== undefined);
    return roots.flatMap((root) => windowsTails.map((tail) => `${root}\\${tail}`));
  }
  return linuxFolders.flatMap((folder) => linuxNames.map((name) => `${folder}/${name}`));
};

// Starting a browser only to ask its version would cost more than the question is worth: size and date tell a change.
const identityOf = (path: string): string => {
  const { size, mtimeMs } = statSync(path);
  return `${path} ${size} ${mtimeMs}`;
};

/** The browser that came with the optional package, still packed. */
const packedBrowser = (): { readonly path: string; readonly version: string } | undefined => {
  try {
    const entry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
    const root = join(dirname(entry), "..", "..");
    const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
    return { path: join(root, "bin", "chromium.br"), version };
  } catch {
    return undefined; // optional dependency: not there on this system
  }
};
