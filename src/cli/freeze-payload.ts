// What goes into the bag of one job, and does it follow from the job file? Read from the output folder, compared with what the job file gives now.
import { basename, join } from "node:path";
import type { BuildOptions } from "./arguments.ts";
import { isSame } from "./bag-folder.ts";
import type { Files } from "./effects.ts";
import { isOwnOutput, type JobFile, type JobRecord, sourcesOf } from "./manifest.ts";
import type { Remade } from "./remake.ts";

/** By path below data/, or why there is none. */
export type Payload = ReadonlyMap<string, Uint8Array> | string;

interface PayloadContext {
  readonly files: Files;
  readonly options: BuildOptions;
  readonly made: Remade;
}

export const payloadOf = (file: JobFile, record: JobRecord, { files, options: { out }, made }: PayloadContext): Payload => {
  const { number } = made.plan.job.identity;
  const payload = new Map<string, Uint8Array>();
  const wrong: string[] = [];
  const lost = new Set([...made.files.keys(), ...made.pdfs].filter((path) => path.startsWith(`${number}/`)));
  for (const { path, size } of record.outputs) {
    if (!isOwnOutput(path) || !path.startsWith(`${number}/`))
      return `${join(out, "manifest.json")} lists ${path}, which is no output of this job`;
    const bytes = files.read(join(out, path));
    const again = made.files.get(path);
    const isGood = bytes !== undefined && (again === undefined ? lost.has(path) && bytes.length === size : isSame(bytes, again));
    if (isGood) payload.set(path, bytes);
    else wrong.push(path);
    lost.delete(path);
  }
  wrong.push(...lost);
  if (wrong.length > 0)
    return `not what the job file gives: ${wrong.sort().join(", ")}\n  fix: remove ${join(out, number)} and build again`;
  // A list of jobs and a style sheet for this job alone: what its page leads to.
  for (const [path, bytes] of made.files) if (!path.includes("/")) payload.set(path, bytes);
  for (const { path, bytes } of sourcesOf(file)) payload.set(basename(path), bytes);
  return payload;
};

/** Files that lie in the job's output folder and were not made by a build: they are left out, and told. */
export const strangersIn = (files: Files, { outputs, entry }: JobRecord, out: string): readonly string[] => {
  const own = new Set(outputs.map(({ path }) => path));
  return (files.list(join(out, entry.number)) ?? []).map((name) => `${entry.number}/${name}`).filter((path) => !own.has(path));
};
