// Is what was kept still what was issued? Each bag by the rules of RFC 8493, and made again from its own job file where that is possible.
import { join } from "node:path";
import { checkBag } from "../bag/check-bag.ts";
import { count as counted } from "../packet/sheets/kit.ts";
import { count } from "../units/print.ts";
import { digest, readFile, walk } from "./bag-folder.ts";
import type { Effects } from "./effects.ts";
import { faultText } from "./fault.ts";
import { printable } from "./printable.ts";
import type { Remaker, RemakerContext } from "./remake.ts";
import { type Bag, type Compared, compareBag } from "./verify-compare.ts";

export interface VerifyRequest {
  readonly folders: readonly string[];
  readonly print: boolean;
}

/** Exit code 1 when a bag is not valid, or there is none. */
export const verify = async ({ folders, print }: VerifyRequest, context: RemakerContext): Promise<number> => {
  const { effects, browser, printer } = context;
  const { output } = effects;
  if (print && browser === undefined && printer === undefined) {
    output.warn("there is no browser to print with: leave --print out, or name a browser in REEVEBOOK_BROWSER\n");
    return 2;
  }
  const remaker = lazily(async () => (await import("./remake.ts")).makeRemaker(context));
  let valid = 0;
  let wrong = 0;
  let faults = 0;
  for (const folder of folders) {
    const bags = bagsIn(effects, folder);
    if (bags.length === 0)
      output.warn(`${printable(folder)}: there is no bag\n  fix: name a folder that was frozen, or a folder of them\n`);
    if (bags.length === 0) wrong += 1;
    for (const bag of bags) {
      try {
        if (await verifyOne(bag, { effects, remaker, print })) valid += 1;
        else wrong += 1;
      } catch (error) {
        faults += 1;
        output.warn(`${printable(bag)}: ${faultText(error)}`);
      }
    }
  }
  await remaker.close();
  output.write(`${count(valid)} valid, ${count(wrong + faults)} not. ${GUARD}\n`);
  if (faults > 0) return 2;
  return wrong > 0 ? 1 : 0;
};

const GUARD = "Hashes guard against damage, not against somebody who changes a file and its manifests too.";

interface Lazy {
  readonly get: () => Promise<Remaker>;
  readonly close: () => Promise<void>;
}

/** Loaded when the first bag can be made again: most of the program is needed for it. */
const lazily = (make: () => Promise<Remaker>): Lazy => {
  let made: Promise<Remaker> | undefined;
  return {
    get: () => {
      made ??= make();
      return made;
    },
    close: async () => {
      if (made !== undefined) (await made).close();
    },
  };
};

/** The folder itself where it has anything of a bag; else the folders in it. */
const bagsIn = ({ files }: Effects, folder: string): readonly string[] => {
  const names = files.list(folder) ?? [];
  if (names.some((name) => name === "data" || /^(?:bagit|bag-info|(?:tag)?manifest-.*)\.txt$/.test(name))) return [folder];
  return [...names]
    .sort()
    .filter((name) => !name.startsWith("."))
    .map((name) => join(folder, name))
    .filter((path) => files.kind(path) === "folder");
};

interface OneContext {
  readonly effects: Effects;
  readonly remaker: Lazy;
  readonly print: boolean;
}

/** True when nothing is wrong with the bag. */
const verifyOne = async (folder: string, { effects, remaker, print }: OneContext): Promise<boolean> => {
  const { files, output } = effects;
  const entries = walk(files, folder);
  const check = checkBag({ entries, read: (path) => readFile(files, join(folder, path)), digest });
  const bag: Bag = { folder, check, paths: new Set(entries.filter(({ kind }) => kind === "file").map(({ path }) => path)) };
  const isValid = check.faults.length === 0;
  const compared = isValid ? await compareBag(bag, { files, print, remaker: remaker.get }) : notCompared;
  const faults = [...check.faults, ...compared.faults];
  const lines = [
    `${folder}: ${stateOf(bag, compared)}`,
    ...compared.said.map((line) => `  ${line}`),
    ...check.unguarded.map((path) => `  note: ${path} is in no manifest, so nothing guards it`),
    ...faults.flatMap(({ where, what, fix }) => [`  ${where}: ${what}`, `    fix: ${fix}`]),
  ];
  const say = faults.length === 0 ? output.write : output.warn;
  say(lines.map((line) => `${printable(line)}\n`).join(""));
  return faults.length === 0;
};

const notCompared: Compared = { faults: [], said: ["not made again from its job file, as it is not valid"] };

const stateOf = ({ check: { faults, payload, algorithms } }: Bag, compared: Compared): string => {
  if (faults.length > 0) return faults.every(({ kind }) => kind === "damaged") ? "complete, but NOT VALID" : "NOT COMPLETE";
  const hashes = algorithms.map(({ label }) => label).join(" and ");
  const state = compared.faults.length === 0 ? "complete and valid" : "every hash is right, but it is NOT WHAT ITS JOB FILE GIVES";
  return `${state}: ${counted(payload.files, "file")}, ${count(payload.bytes)} bytes, ${hashes}`;
};
