// What did the last build make, and from what? Kept beside the output, so that unchanged jobs are left alone.
import { createHash } from "node:crypto";
import { basename, join, relative } from "node:path";
import type { ArchiveEntry } from "../site/archive.ts";
import type { BuildOptions } from "./arguments.ts";
import { type BesideFile, type BesideFinder, type BesideKind, besideKinds, isJob, jobBeside } from "./beside.ts";
import type { Files } from "./effects.ts";
import { systemCode } from "./fault.ts";

export interface OutputFile {
  /** Below the output folder. */
  readonly path: string;
  readonly size: number;
  /** Of a PDF: digest of the page that was printed, and its number of pages. */
  readonly html?: string;
  readonly pages?: number;
}

export interface JobRecord {
  readonly key: string;
  readonly digest: string;
  readonly entry: ArchiveEntry;
  /** When the job's folder was last changed, by us. */
  readonly touched_ms: number;
  readonly outputs: readonly OutputFile[];
}

export interface Manifest {
  readonly format: 1;
  readonly program: string;
  /** By the id of the job file. */
  readonly jobs: Readonly<Record<string, JobRecord>>;
  /** Files that belong to no job: the list of jobs and its style sheet. */
  readonly shared: readonly OutputFile[];
}

export interface JobFile {
  readonly path: string;
  /** The path as seen from the output folder: the same from wherever the program is called. */
  readonly id: string;
  readonly bytes: Uint8Array;
  /** SHA-256 of the bytes. */
  readonly digest: string;
  /** Digest of all that shapes this job's outputs. */
  readonly key: string;
  /** What was built. */
  readonly record?: BesideFile;
  /** The job file as it was issued before. */
  readonly issued?: BesideFile;
}

/** The job file with what lies beside it: all that its outputs are made from. */
export const sourcesOf = (file: JobFile): readonly Pick<JobFile, "path" | "bytes" | "digest">[] =>
  [file, file.record, file.issued].filter((one) => one !== undefined);

const manifestName = "manifest.json";
export const noManifest: Manifest = { format: 1, program: "", jobs: {}, shared: [] };

export const readManifest = (files: Files, out: string): Manifest => {
  const bytes = files.read(join(out, manifestName));
  if (bytes === undefined) return noManifest;
  try {
    const manifest = JSON.parse(Buffer.from(bytes).toString("utf8")) as Manifest;
    return manifest.format === 1 ? manifest : noManifest;
  } catch {
    return noManifest; // broken off by hand: everything is made again
  }
};

export const writeManifest = (files: Files, out: string, manifest: Manifest): void =>
  files.writeWhole(join(out, manifestName), `${JSON.stringify(manifest)}\n`);

/** The job files of a run: those that were named, by themselves or by a file beside them, or all of the folder in the order of their names. */
export const findJobs = (files: Files, options: BuildOptions): readonly string[] | undefined => {
  if (options.files.length > 0) return [...new Set(options.files.map((path) => jobBeside(files, relative("", path))))];
  return files
    .list(options.jobs)
    ?.filter(isJob)
    .sort()
    .map((name) => join(options.jobs, name));
};

/** Bytes are hashed before anything is parsed: a thousand files cost 50 ms, parsing them would cost a second. A text says why there are none. */
export const readJob = (
  files: Files,
  path: string,
  { out, salt, besideOf }: { readonly out: string; readonly salt: string; readonly besideOf?: BesideFinder },
): JobFile | string => {
  const bytes = bytesOf(files, path);
  if (typeof bytes === "string") return bytes;
  const digest = digestOf(bytes);
  const beside: { [K in BesideKind]?: BesideFile } = {};
  let key = digest;
  for (const kind of besideKinds) {
    const [own, ...rivals] = besideOf?.(path, kind) ?? [];
    if (own === undefined) continue;
    const ownBytes = bytesOf(files, own);
    if (typeof ownBytes === "string") return ownBytes;
    beside[kind] = { path: own, bytes: ownBytes, digest: digestOf(ownBytes), rivals };
    key += `${kind}${beside[kind].digest}${rivals.join()}`;
  }
  return { path, id: relative(out, path), bytes, digest, key: `${key}${salt}`, ...beside };
};

const digestOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
/** What the system won't give is told like any problem of a job file: it stops no other. */
const bytesOf = (files: Files, path: string): Uint8Array | string => {
  try {
    return files.read(path) ?? unread(path, `there is no job file "${path}"`, "check its name; a link must lead to a file");
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    if (code === "EISDIR") return unread(path, "this is a folder, not a job file", "name a file; --jobs takes a folder of them");
    return unread(path, `this file can't be read (${code})`, "see that it is a file that you may read");
  }
};

const unread = (path: string, what: string, fix: string): string => `${path}:1:1: error: ${what}\n  fix: ${fix}\n`;

/** Everything but the job itself that shapes an output. */
export const saltOf = (options: BuildOptions, program: string, browser: string): string =>
  createHash("sha256")
    .update(JSON.stringify([program, options.paper ?? "", options.pdf, options.draft, options.pdf ? browser : ""]))
    .digest("hex")
    .slice(0, 16);

/**
 * True when a job's outputs follow from its file as it is now, and are all there. A folder that nobody touched since needs
 * one look; in any other each file is looked at.
 */
export const isCurrent = (files: Files, out: string, record: JobRecord | undefined, job: JobFile): record is JobRecord =>
  record !== undefined &&
  record.key === job.key &&
  (files.touched_ms(join(out, record.entry.number)) === record.touched_ms ||
    record.outputs.every(({ path, size }) => files.size(join(out, path)) === size));

/** File names are refused before they are used: a job's own file is attached and shown under its name. */
export const oddName = (path: string): boolean => !/^[A-Za-z0-9][A-Za-z0-9 ._-]*$/.test(basename(path));

/** What a manifest lists is only trusted where it looks like an output of ours: a name in the folder of a job. */
export const isOwnOutput = (path: string): boolean => /^[A-Za-z0-9][A-Za-z0-9-]*\/[A-Za-z0-9][A-Za-z0-9._-]*$/.test(path);
