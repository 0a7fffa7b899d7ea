// Which job numbers clash, what is stale, and what is recorded of a build?
import { relative } from "node:path";
import type { ArchiveEntry } from "../site/archive.ts";
import type { Files } from "./effects.ts";
import { isOwnOutput, type JobFile, type JobRecord, type Manifest, type OutputFile, readJob } from "./manifest.ts";
import { duplicateProblem, problemText } from "./planner.ts";
import type { PrintTask } from "./printing.ts";
import { programDigest } from "./program.ts";
import type { Survey } from "./survey.ts";

/** What becomes of one job during the build. */
export interface Work extends PrintTask {
  readonly outputs: OutputFile[];
  entry: ArchiveEntry | undefined;
  pages: number;
  fault: boolean;
}

/** Records of the last build that still hold. */
export const recordsLeft = ({ manifest, changed, gone }: Survey): Record<string, JobRecord> => {
  const stale = new Set([...gone, ...changed.map(({ id }) => id)]);
  return Object.fromEntries(Object.entries(manifest.jobs).filter(([id]) => !stale.has(id)));
};

export interface Claim {
  readonly file: JobFile;
  readonly number: string;
}

/** Job numbers that more than one file claims; on a disk that takes capitals for small letters they would meet as well. */
export const duplicates = (
  ready: readonly Claim[],
  left: Readonly<Record<string, JobRecord>>,
  { survey: { options, salt, unchanged }, files }: { readonly survey: Survey; readonly files: Files },
): readonly { readonly file: JobFile; readonly text: string }[] => {
  const claims = new Map<string, Claim[]>();
  const claim = (entry: Claim): void => {
    const key = entry.number.toLowerCase();
    claims.set(key, [...(claims.get(key) ?? []), entry]);
  };
  for (const entry of ready) claim(entry);
  const known = new Map(unchanged.map((file) => [file.id, file]));
  for (const [id, { entry }] of Object.entries(left)) {
    if (!claims.has(entry.number.toLowerCase())) continue;
    const file = known.get(id) ?? readJob(files, relative("", `${options.out}/${id}`), { out: options.out, salt });
    if (typeof file !== "string") claim({ file, number: entry.number });
  }
  return [...claims.values()]
    .filter((sharing) => sharing.length > 1)
    .flatMap((sharing) =>
      sharing.map(({ number, file }) => {
        const others = sharing.filter((other) => other.file !== file).map((other) => other.file.path);
        return { file, text: problemText(file, [duplicateProblem(number, others)]) };
      }),
    );
};

/** The list of jobs: those that were left alone and those that were made, by number. */
export const entriesOf = (left: Readonly<Record<string, JobRecord>>, works: readonly Work[]): readonly ArchiveEntry[] => {
  const made = works.flatMap((work) => (work.fault || work.entry === undefined ? [] : [work.entry]));
  return [...Object.values(left).map(({ entry }) => entry), ...made].sort((a, b) => (a.number < b.number ? -1 : 1));
};

export const manifestOf = (
  left: Readonly<Record<string, JobRecord>>,
  made: readonly Work[],
  { shared, touched_ms }: { readonly shared: readonly OutputFile[]; readonly touched_ms: (number: string) => number },
): Manifest => ({
  format: 1,
  program: programDigest,
  jobs: {
    ...left,
    ...Object.fromEntries(
      made.flatMap(({ file: { id, key, digest }, number, entry, outputs }) =>
        entry === undefined ? [] : [[id, { key, digest, entry, touched_ms: touched_ms(number), outputs }] as const],
      ),
    ),
  },
  shared,
});

/** Only what a manifest lists is ever removed, and only what looks like an output of ours. */
export const staleOutputs = (
  { manifest }: Survey,
  {
    works,
    made,
    left,
  }: { readonly works: readonly Work[]; readonly made: readonly Work[]; readonly left: Readonly<Record<string, JobRecord>> },
): readonly string[] => {
  const paths = (owners: readonly { readonly outputs: readonly OutputFile[] }[]): readonly string[] =>
    owners.flatMap(({ outputs }) => outputs.map(({ path }) => path));
  const current = new Set([...paths(made), ...paths(Object.values(left))]);
  const before = [...paths(Object.values(manifest.jobs)), ...paths(works)];
  return [...new Set(before)].filter((path) => !current.has(path) && isOwnOutput(path));
};
