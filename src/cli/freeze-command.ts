// How is an issued revision kept for good? In a bag of its own, which is never written over.
import { basename, join, relative } from "node:path";
import { makeBag } from "../bag/make-bag.ts";
import { count as counted } from "../packet/sheets/kit.ts";
import { count } from "../units/print.ts";
import type { BuildOptions } from "./arguments.ts";
import { digest, isSame, walk } from "./bag-folder.ts";
import { browserOf, type Issued, infoOf, readmeOf } from "./bag-words.ts";
import type { Effects, Files } from "./effects.ts";
import { faultText } from "./fault.ts";
import { payloadOf, strangersIn } from "./freeze-payload.ts";
import type { JobFile } from "./manifest.ts";
import type { Remade, Remaker, RemakerContext } from "./remake.ts";
import { type Survey, survey } from "./survey.ts";

export interface FreezeRequest {
  readonly options: BuildOptions;
  readonly into: string;
  readonly print: boolean;
}

/** Exit code 1 when a job could not be frozen; the others are all the same. */
export const freeze = async (request: FreezeRequest, { effects, browser, printer }: RemakerContext): Promise<number> => {
  const { options, into, print } = request;
  const { files, output } = effects;
  const refuse = (text: string): number => {
    output.warn(`${text}\n`);
    return 1;
  };
  const found = survey(options, { effects, browser });
  if (typeof found === "string") return refuse(found);
  if (isInside(into, options.out))
    return refuse(`--into ${into} lies in the output folder ${options.out}, which may be removed and built again: name another`);
  if (!["folder", "link", undefined].includes(files.kind(into))) return refuse(`--into ${into} is no folder`);
  for (const file of found.changed) output.warn(notCurrent(file, options));
  const { makeRemaker } = await import("./remake.ts");
  const remaker = makeRemaker(print ? { effects, browser, printer } : { effects, browser: undefined });
  let frozen = 0;
  let faults = 0;
  try {
    for (const file of found.unchanged) {
      try {
        if (await freezeOne(file, { request, effects, remaker, found })) frozen += 1;
      } catch (error) {
        faults += 1;
        output.warn(`${file.path}: ${faultText(error)}`);
      }
    }
  } finally {
    remaker.close();
  }
  const left = found.changed.length + found.unchanged.length - frozen;
  output.write(`${counted(frozen, "job")} frozen in ${into}, ${left} not\n`);
  if (faults > 0) return 2;
  return left > 0 ? 1 : 0;
};

const isInside = (path: string, folder: string): boolean => !/^\.\.(?:[/\\]|$)|^[a-z]:/i.test(relative(folder, path));

const notCurrent = ({ path }: JobFile, { out, paper, pdf }: BuildOptions): string => {
  const asked = `--out ${out}${paper === undefined ? "" : ` --paper ${paper}`}${pdf ? "" : " --no-pdf"}`;
  return (
    `${path}: its packet in ${out} was not built from the file as it is now, with these options, by this program and this browser\n` +
    `  fix: npx reevebook build ${asked} ${path}, look at what it made, then freeze\n`
  );
};

interface OneContext {
  readonly request: FreezeRequest;
  readonly effects: Effects;
  readonly remaker: Remaker;
  readonly found: Survey;
}

/** True when the revision is in its bag, now or since before. */
const freezeOne = async (file: JobFile, { request: { options, into }, effects, remaker, found }: OneContext): Promise<boolean> => {
  const { files, output } = effects;
  const refuse = (text: string): false => {
    output.warn(`${file.path}: ${text}\n`);
    return false;
  };
  const record = found.manifest.jobs[file.id];
  if (record === undefined) throw new Error(`the manifest knows ${file.id} no more`);
  if (!/\.ya?ml$/i.test(file.path))
    return refuse("a job file that is kept needs a name that ends in .yaml\n  fix: rename it and build again");
  const made = await remaker.remake(file, options);
  if (typeof made === "string") return refuse(made);
  const { number, revisions } = made.plan.job.identity;
  const revision = revisions.at(-1)?.mark ?? "0";
  const name = `${number}-r${revision}`;
  if (!/^[a-z0-9]+(?:\.[a-z0-9]+)*$/i.test(revision) || revision.length > MOST_MARK_LETTERS) {
    return refuse(
      `the revision "${revision}" can't name a folder\n  fix: mark it with letters, digits and single dots, at most ${MOST_MARK_LETTERS}: 0, 1, A, P1.2`,
    );
  }
  const payload = payloadOf(file, record, { files, options, made });
  if (typeof payload === "string") return refuse(payload);
  for (const path of strangersIn(files, record, options.out))
    output.warn(`note: ${join(options.out, path)} was not made by a build; it is not frozen\n`);
  const pdf = [...payload].find(([path]) => path.endsWith(".pdf"))?.[1];
  const issued: Issued = {
    plan: made.plan,
    revision,
    options,
    jobFile: basename(file.path),
    browser: pdf === undefined ? undefined : browserOf(pdf),
  };
  const notes = new Map([["README.txt", readmeOf(issued, [...payload.keys()])]]);
  const bag = makeBag({ payload, info: infoOf(issued), notes }, digest);
  const folder = join(into, name);
  const trouble = troubleWith(files, { into, name, bag });
  if (trouble === undefined) {
    files.writeFolder(folder, bag);
    output.write(`${folder}: frozen, ${payload.size} files; status ${made.titleBlock.status}, verdict ${made.plan.verdict}\n`);
  } else if (trouble.length > 0) {
    return refuse(trouble);
  } else {
    output.write(`${folder}: frozen before, byte for byte the same\n`);
  }
  tellStamp(made, effects);
  return true;
};

const MOST_MARK_LETTERS = 20;

/** What nobody may build from is kept as it was issued, and said. */
const tellStamp = ({ titleBlock: { stamp, jobNumber } }: Remade, { output }: Effects): void => {
  if (stamp !== "") output.warn(`note: every sheet of ${jobNumber} says "${stamp}"; it is kept as what it is\n`);
};

interface Place {
  readonly into: string;
  readonly name: string;
  readonly bag: ReadonlyMap<string, Uint8Array>;
}

/** undefined: the place is free. Empty: the same bag stands there. Else why it can't be written. */
const troubleWith = (files: Files, { into, name, bag }: Place): string | undefined => {
  const alike = (files.list(into) ?? []).find((other) => other.toLowerCase() === name.toLowerCase());
  if (alike === undefined) return undefined;
  const folder = join(into, alike);
  if (alike !== name)
    return `${folder} differs from ${name} in capitals only, and some disks take one for the other\n  fix: choose another mark`;
  const kind = files.kind(folder);
  if (kind !== "folder") return `${folder} is no folder but a ${kind === "link" ? "link" : "file"}\n  fix: move it away`;
  const there = new Map(walk(files, folder).flatMap((entry) => (entry.kind === "folder" ? [] : [[entry.path, entry.kind] as const])));
  const differing = [...new Set([...there.keys(), ...bag.keys()])].filter((path) => {
    const [now, then] = [bag.get(path), there.get(path) === "file" ? files.read(join(folder, path)) : undefined];
    return now === undefined || then === undefined || !isSame(now, then);
  });
  if (differing.length === 0) return "";
  const named = differing.sort().slice(0, MOST_NAMED).join(", ");
  const more = differing.length > MOST_NAMED ? ` and ${count(differing.length - MOST_NAMED)} more` : "";
  return (
    `${folder} was frozen before and is not the same: ${named}${more}\n` +
    "  A frozen revision is never changed.\n" +
    `  fix: if the job has changed, add a revision under "job: revisions", build and freeze that;\n` +
    `       if only the program or the browser has, keep the bag as it is; npx reevebook verify ${folder} says whether it is sound`
  );
};

const MOST_NAMED = 6;
