// Does a bag hold what its own job file gives? Only the program that made it can tell, byte for byte.
import { join } from "node:path";
import { type Fault, PAYLOAD } from "../bag/bag.ts";
import type { BagCheck } from "../bag/check-bag.ts";
import { isSame, readFile } from "./bag-folder.ts";
import { browserOf, isThisProgram, type Origin, originOf } from "./bag-words.ts";
import { besideFinder } from "./beside.ts";
import type { Files } from "./effects.ts";
import { readJob } from "./manifest.ts";
import { programDigest, programVersion } from "./program.ts";
import type { Remade, Remaker } from "./remake.ts";

export interface Bag {
  readonly folder: string;
  readonly check: BagCheck;
  /** Of its files. */
  readonly paths: ReadonlySet<string>;
}

export interface Compared {
  readonly faults: readonly Fault[];
  /** What was done, or why not. */
  readonly said: readonly string[];
}

export interface CompareContext {
  readonly files: Files;
  readonly print: boolean;
  readonly remaker: () => Promise<Remaker>;
}

/** Makes a valid bag again from the job file in it. */
export const compareBag = async (bag: Bag, context: CompareContext): Promise<Compared> => {
  const { folder, check, paths } = bag;
  const origin = originOf(check.info);
  if (origin === undefined) return hashesOnly("bag-info.txt does not say by which program and from which job file it was made");
  if (!isThisProgram(origin)) {
    const [theirs, ours] = [origin.digest, programDigest].map((digest) => digest.slice(0, DIGITS));
    return hashesOnly(
      `it was made by ${origin.version} (${theirs}), this is reevebook ${programVersion} (${ours}); that one can make it again`,
    );
  }
  const path = `${PAYLOAD}${origin.jobFile}`;
  const file = paths.has(path)
    ? readJob(context.files, join(folder, path), { out: "", salt: "", besideOf: besideFinder(context.files) })
    : undefined;
  if (file === undefined || typeof file === "string")
    return { faults: [changed("bag-info.txt", `it names the job file ${path}, which is not there`)], said: [] };
  const { paper, pdf } = origin;
  const remaker = await context.remaker();
  const made = await remaker.remake(file, { jobs: "", out: "", files: [], pdf, draft: false, paper });
  if (typeof made === "string")
    return { faults: [changed(path, "this program makes no packet of it, so the bag was not made of it")], said: [] };
  return compareFiles(bag, { ...context, origin, made });
};

const DIGITS = 12;

const hashesOnly = (why: string): Compared => ({
  faults: [],
  said: [`hashes alone were checked, it was not made again from its job file: ${why}`],
});

const changed = (where: string, what: string): Fault => ({
  where,
  kind: "damaged",
  what,
  fix: "somebody may have changed files and manifests together: compare with another copy of the bag",
});

interface FilesContext extends CompareContext {
  readonly origin: Origin;
  readonly made: Remade;
}

const compareFiles = ({ folder, paths }: Bag, { files, print, origin, made }: FilesContext): Compared => {
  const faults: Fault[] = [];
  const read = (path: string): Uint8Array => readFile(files, join(folder, `${PAYLOAD}${path}`));
  const pdfs = new Set(made.pdfs);
  const printed = [...pdfs].flatMap((path) => made.files.get(path) ?? []).flatMap((bytes) => browserOf(bytes) ?? [])[0];
  const isOther = print && origin.pdf && printed !== origin.browser;
  const expected = [...new Set([...made.files.keys(), ...pdfs])];
  for (const path of expected) {
    const again = isOther && pdfs.has(path) ? undefined : made.files.get(path);
    if (!paths.has(`${PAYLOAD}${path}`))
      faults.push(changed(`${PAYLOAD}${path}`, "the job file gives this file, but the bag does not hold it"));
    else if (again !== undefined && !isSame(read(path), again)) {
      faults.push(
        changed(
          `${PAYLOAD}${path}`,
          pdfs.has(path)
            ? "printed again it is another file; so it is, too, with another build of the same browser"
            : "it is not what the job file gives",
        ),
      );
    }
  }
  const known = new Set([...expected, ...made.sources].map((path) => `${PAYLOAD}${path}`));
  const strangers = [...paths].filter((path) => path.startsWith(PAYLOAD) && !known.has(path));
  faults.push(...strangers.map((path) => changed(path, "the job file gives no such file")));
  const pages = `made again from data/${origin.jobFile} by this program: page, plan and data are ${faults.length === 0 ? "" : "NOT "}the same, byte for byte`;
  return { faults, said: [pages, ...(origin.pdf ? [pdfText({ print, isOther, printed, origin })] : [])] };
};

interface Printing {
  readonly print: boolean;
  readonly isOther: boolean;
  readonly printed: string | undefined;
  readonly origin: Origin;
}

const pdfText = ({ print, isOther, printed, origin }: Printing): string => {
  if (!print) return "PDFs: hashes alone were checked; --print prints them again and compares";
  if (isOther)
    return `PDFs: hashes alone were checked; they were printed by ${origin.browser ?? "an unnamed browser"}, the browser here is ${printed ?? "another"}`;
  return "PDFs: printed again and compared";
};
