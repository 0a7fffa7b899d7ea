// Which job files are there, and which of them changed since the last build?
import { join } from "node:path";
import type { FoundBrowser } from "../pdf/find-browser.ts";
import type { BuildOptions } from "./arguments.ts";
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
  for (const path of paths) {
    const job = readJob(files, path, { out: options.out, salt });
    if (job === undefined) return `there is no job file "${path}"`;
    (isCurrent(files, options.out, manifest.jobs[job.id], job) ? unchanged : changed).push(job);
  }
  const known = new Set([...changed, ...unchanged].map(({ id }) => id));
  const gone = options.files.length > 0 ? [] : Object.keys(manifest.jobs).filter((id) => !known.has(id));
  return { options, manifest, changed, unchanged, salt, gone };
};

export const upToDate = ({ options, manifest, changed, gone }: Survey, { files }: Effects): boolean =>
  changed.length === 0 &&
  gone.length === 0 &&
  manifest.shared.length > 0 &&
  manifest.shared.every(({ path, size }) => files.size(join(options.out, path)) === size);
