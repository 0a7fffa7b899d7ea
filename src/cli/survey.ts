// Which job files are there, and which of them changed since the last build?
import { join } from "node:path";
import type { FoundBrowser } from "../pdf/find-browser.ts";
import type { BuildOptions } from "./arguments.ts";
import { besideFinder, besideKind, strayFiles } from "./beside.ts";
import type { Effects } from "./effects.ts";
import { findJobs, isCurrent, type JobFile, type Manifest, readJob, readManifest, saltOf } from "./manifest.ts";
import { programDigest } from "./program.ts";

export interface Survey {
  readonly options: BuildOptions;
  readonly manifest: Manifest;
  readonly changed: readonly JobFile[];
  readonly unchanged: readonly JobFile[];
  readonly salt: string;
  /** Ids of files that the last build knew and that are gone. */
  readonly gone: readonly string[];
  /** Records and issued files that stand beside no job file. */
  readonly stray: readonly string[];
  /** What is to be told of files that can't be read. */
  readonly unread: readonly string[];
}

/** Looks at names and bytes only; a text says why nothing can be done at all. */
export const survey = (
  options: BuildOptions,
  { effects: { files }, browser }: { readonly effects: Effects; readonly browser: FoundBrowser | undefined },
): Survey | string => {
  const paths = findJobs(files, options);
  if (paths === undefined) return `there is no folder "${options.jobs}"; --jobs names another`;
  if (paths.length === 0) return `there is no job file (*.yaml) in "${options.jobs}"`;
  const salt = saltOf(options, programDigest, browser?.identity ?? "");
  const manifest = readManifest(files, options.out);
  const changed: JobFile[] = [];
  const unchanged: JobFile[] = [];
  const besideOf = besideFinder(files);
  const unread: string[] = [];
  for (const path of paths) {
    const job = readJob(files, path, { out: options.out, salt, besideOf });
    if (typeof job === "string") unread.push(job);
    else (isCurrent(files, options.out, manifest.jobs[job.id], job) ? unchanged : changed).push(job);
  }
  if (unread.length === paths.length) return unread.join("").trimEnd();
  const known = new Set([...changed, ...unchanged].map(({ id }) => id));
  const gone = options.files.length > 0 ? [] : Object.keys(manifest.jobs).filter((id) => !known.has(id));
  const stray = options.files.length > 0 ? [] : strayFiles(files, paths);
  return { options, manifest, changed, unchanged, salt, gone, stray, unread };
};

export const upToDate = ({ options, manifest, changed, gone, stray }: Survey, { files }: Effects): boolean =>
  changed.length === 0 &&
  gone.length === 0 &&
  stray.length === 0 &&
  manifest.shared.length > 0 &&
  manifest.shared.every(({ path, size }) => files.size(join(options.out, path)) === size);

/** A file whose job file is missing is told as what is wrong with a file: its job may have been renamed without it. */
export const strayText = (path: string): string => {
  const kind = besideKind(path) ?? "record";
  const what = kind === "record" ? "this record" : "what was issued";
  return `${path}: error: there is no job file beside ${what}\n  fix: give it the name of its job file, NAME.${kind}.yaml beside NAME.yaml, or move it away\n`;
};
