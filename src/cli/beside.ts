// Which files lie beside a job file and belong to it: the record of what was built, and what was issued before?
import { basename, dirname, join } from "node:path";
import type { Files } from "./effects.ts";

/** NAME.record.yaml and NAME.issued.yaml beside NAME.yaml. */
export type BesideKind = "record" | "issued";

export interface BesideFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly digest: string;
  /** Further files of this kind beside the same job, of which none can be chosen: NAME.record.yml beside NAME.record.yaml. */
  readonly rivals: readonly string[];
}

const endings: Readonly<Record<BesideKind, RegExp>> = { record: /\.record\.ya?ml$/i, issued: /\.issued\.ya?ml$/i };
export const besideKinds: readonly BesideKind[] = ["record", "issued"];

/** null for a job file. Names that begin with a dot are what editors and systems leave behind. */
export const besideKind = (path: string): BesideKind | null =>
  basename(path).startsWith(".") ? null : (besideKinds.find((kind) => endings[kind].test(path)) ?? null);

export const isJob = (name: string): boolean => /\.ya?ml$/i.test(name) && besideKind(name) === null && !name.startsWith(".");

/** What a job file and the files beside it have in common: their name. */
const stemOf = (path: string): string => basename(path).replace(/(?:\.(?:record|issued))?\.ya?ml$/i, "");

/** The job file that is meant by its own path or by that of a file beside it, whose ending may be another. */
export const jobBeside = (files: Files, path: string): string => {
  if (besideKind(path) === null) return path;
  const folder = dirname(path);
  const name = files.list(folder)?.find((one) => isJob(one) && stemOf(one) === stemOf(path));
  return name === undefined ? path.replace(/\.(?:record|issued)(\.ya?ml)$/i, "$1") : join(folder, name);
};

/** Paths of the files of a kind beside a job file. */
export type BesideFinder = (jobPath: string, kind: BesideKind) => readonly string[];

/** Each folder is looked into once, as most jobs have none. */
export const besideFinder = (files: Files): BesideFinder => {
  const folders = new Map<string, ReadonlyMap<string, string[]>>();
  const look = (folder: string): ReadonlyMap<string, string[]> => {
    const found = new Map<string, string[]>();
    for (const name of [...(files.list(folder) ?? [])].sort()) {
      const kind = besideKind(name);
      if (kind === null) continue;
      const key = `${kind} ${stemOf(name)}`;
      found.set(key, [...(found.get(key) ?? []), join(folder, name)]);
    }
    folders.set(folder, found);
    return found;
  };
  return (jobPath, kind) => (folders.get(dirname(jobPath)) ?? look(dirname(jobPath))).get(`${kind} ${stemOf(jobPath)}`) ?? [];
};

/** Files of a folder that stand beside no job file. */
export const strayFiles = (files: Files, jobs: readonly string[]): readonly string[] =>
  [...new Set(jobs.map((path) => dirname(path)))].flatMap((folder) => {
    const stems = new Set(jobs.filter((path) => dirname(path) === folder).map(stemOf));
    return (files.list(folder) ?? [])
      .filter((name) => besideKind(name) !== null && !stems.has(stemOf(name)))
      .map((name) => join(folder, name));
  });
