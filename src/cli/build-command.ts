// How is a build carried out? Plans first, then pages and PDFs side by side, then the list of jobs and the manifest.
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { count as counted } from "../packet/sheets/kit.ts";
import type { FoundBrowser } from "../pdf/find-browser.ts";
import type { RunningBrowser } from "../pdf/launch.ts";
import { makePrinter, type Printer, PrintFault } from "../pdf/print.ts";
import { startBrowser } from "../pdf/start.ts";
import { type Layouts, makeLayouts } from "../site/layouts.ts";
import { packageRoot } from "../site/root.ts";
import { type Claim, duplicates, entriesOf, manifestOf, recordsLeft, staleOutputs, type Work } from "./build-steps.ts";
import type { Effects } from "./effects.ts";
import { faultText } from "./fault.ts";
import { type JobRecord, type OutputFile, writeManifest } from "./manifest.ts";
import { whyUnwritable } from "./output-folder.ts";
import { makePlanner, type Planner } from "./planner.ts";
import { printJobs } from "./printing.ts";
import { makeReport, type Report } from "./report.ts";
import type { IndexPage, PagedJob, Shard } from "./shard.ts";
import { makeShards } from "./shards.ts";
import { type Survey, strayText } from "./survey.ts";

export interface BuildContext {
  readonly effects: Effects;
  readonly browser: FoundBrowser | undefined;
  /** The first browser, started while the rest of the program was loaded. */
  readonly started?: Promise<RunningBrowser> | undefined;
  /** Stands in for a real browser in tests. */
  readonly printer?: Printer;
}

export const build = async (survey: Survey, context: BuildContext): Promise<number> => {
  const { effects, browser } = context;
  const { options, changed } = survey;
  const unwritable = whyUnwritable(effects.files, options.out);
  if (unwritable !== undefined) {
    effects.output.warn(unwritable);
    return 1;
  }
  if (options.pdf && browser === undefined && context.printer === undefined && changed.length > 0) {
    effects.output.warn(
      "there is no browser to print with: install Chrome, Chromium or Edge, name one in REEVEBOOK_BROWSER, or use --no-pdf\n",
    );
    return 2;
  }
  const report = makeReport(effects, changed.length);
  const root = packageRoot();
  let { started } = context;
  const printer =
    context.printer ??
    (options.pdf && browser !== undefined && changed.length > 0
      ? makePrinter(() => {
          const first = started;
          started = undefined;
          return first ?? startBrowser(browser, { cache: join(root, ".cache"), warn: (line) => report.note(`note: ${line}`) });
        })
      : undefined);
  return carryOut(survey, { ...context, report, root, printer });
};

interface Running {
  readonly effects: Effects;
  readonly browser: FoundBrowser | undefined;
  readonly report: Report;
  readonly root: string;
  readonly printer: Printer | undefined;
}

const carryOut = async (survey: Survey, running: Running): Promise<number> => {
  const { effects, report, root, printer } = running;
  const { options, changed } = survey;
  const layouts = makeLayouts(root);
  const planner = makePlanner(options);
  const shards = makeShards({ jobs: changed, options, root }, { files: effects.files, planner, layouts, threads: effects.threads });
  try {
    const left = recordsLeft(survey);
    if (changed.length > MANY) {
      // Before the pace is changed: what is kept of compiled scripts holds only for the pace at which it was compiled.
      await Promise.all(shards.map((shard) => shard.load()));
      paceEngine();
    }
    const { works, bad, faults } = await planAll(survey, { running, shards, left });
    const printing = printAll(works, { running, survey, layouts, planner });
    const shared: OutputFile[] = [];
    const pages = countdown(works.length);
    const index: IndexPage = {
      archive: async () => {
        await Promise.all([printing, pages.zero]);
        return entriesOf(left, works);
      },
      write: (path, text) => {
        effects.files.writeWhole(join(options.out, path), text);
        shared.push({ path, size: Buffer.byteLength(text) });
      },
    };
    // The site engine is loaded while the browser prints: before, it would keep the first documents waiting.
    await Promise.race([printing, printer?.atWork]);
    await Promise.all([printing, makePages(works, { shards, running, index, paged: pages.down })]);
    const made = works.filter((work) => !work.fault);
    for (const path of staleOutputs(survey, { works, made, left })) effects.files.remove(join(options.out, path));
    const touched_ms = (number: string): number => effects.files.touched_ms(join(options.out, number)) ?? 0;
    writeManifest(effects.files, options.out, manifestOf(left, made, { shared, touched_ms }));
    const faulty = works.length - made.length + faults;
    const unchanged = survey.unchanged.filter(({ id }) => id in left).length;
    const pageCount = made.reduce((sum, work) => sum + work.pages, 0);
    report.end({ built: made.length, unchanged, failed: bad + faulty, pages: pageCount, out: options.out });
    if (faulty > 0) return 2;
    return bad > 0 ? 1 : 0;
  } finally {
    for (const shard of shards) shard.close();
    if (printer !== undefined) printer.close();
  }
};

/** So many jobs are worth another pace. */
const MANY = 100;

/**
 * Else the engine lets its heap grow to three times what is alive: half again the memory, for a twentieth of the time. Calls
 * written out in place of their names make what it compiles with all its art a twentieth dearer, and are worth it in small
 * functions alone. (That it rarely does so is set where scripts are loaded.)
 */
const paceEngine = (): void => {
  setFlagsFromString("--heap-growing-percent=40");
  setFlagsFromString("--max-inlined-bytecode-size=100");
  setFlagsFromString("--max-inlined-bytecode-size-cumulative=100");
};

interface PlanAllContext {
  readonly running: Running;
  readonly shards: readonly Shard[];
  /** Loses the records of jobs that clash with a changed one. */
  readonly left: Record<string, JobRecord>;
}

/** Plans every changed job and tells all problems, before anything is written. */
const planAll = async (
  survey: Survey,
  { running: { report, effects }, shards, left }: PlanAllContext,
): Promise<{ readonly works: readonly Work[]; readonly bad: number; readonly faults: number }> => {
  // Threads are asked before this one sets to work on its own share.
  const answers = await Promise.all([...shards].reverse().map((shard) => shard.plan()));
  const planned = new Map(answers.flat().map((job) => [job.id, job]));
  const ready: Claim[] = [];
  let bad = survey.unread.length;
  let faults = 0;
  for (const file of survey.changed) {
    const job = planned.get(file.id);
    if (job?.fault !== undefined) {
      faults += 1;
      report.failed(`${file.path}: ${job.fault}`);
    } else if (job?.number === undefined) {
      bad += 1;
      report.failed(job?.problems ?? "");
    } else {
      ready.push({ file, number: job.number });
      const count = counted(job.warnings, "warning");
      if (job.warnings > 0) report.note(`${file.path}: ${count}, told by "npx reevebook check ${file.path}"`);
    }
  }
  for (const path of survey.stray) {
    bad += 1;
    report.failed(strayText(path));
  }
  const clashing = duplicates(ready, left, { survey, files: effects.files });
  for (const { file, text } of clashing) {
    bad += 1;
    report.failed(text);
    delete left[file.id];
  }
  const clash = new Set(clashing.map(({ file }) => file.id));
  const works = ready
    .filter(({ file }) => !clash.has(file.id))
    .map(
      ({ file, number }): Work => ({
        file,
        number,
        before: survey.manifest.jobs[file.id],
        outputs: [],
        entry: undefined,
        pages: 0,
        fault: false,
      }),
    );
  return { works, bad, faults };
};

/** A promise that is kept when so many things have happened. */
const countdown = (count: number): { readonly zero: Promise<void>; readonly down: () => void } => {
  let left = count;
  let reached = (): void => {};
  const zero = new Promise<void>((resolve) => {
    reached = resolve;
  });
  if (left === 0) reached();
  return {
    zero,
    down: () => {
      left -= 1;
      if (left === 0) reached();
    },
  };
};

interface MakePagesContext {
  readonly shards: readonly Shard[];
  readonly running: Running;
  /** The first share makes the list of jobs as well. */
  readonly index: IndexPage;
  readonly paged: () => void;
}

const makePages = async (
  works: readonly Work[],
  { shards, running: { report, printer }, index, paged }: MakePagesContext,
): Promise<void> => {
  const byNumber = new Map(works.map((work) => [work.number, work]));
  const numbers = works.map(({ number }) => number);
  const done = (page: PagedJob): void => {
    const work = byNumber.get(page.number);
    if (work === undefined) return;
    work.outputs.push(...page.outputs);
    work.entry = page.entry;
    if (page.fault !== undefined && !work.fault) report.failed(`${work.file.path}: ${page.fault}`);
    work.fault ||= page.fault !== undefined;
    if (!work.fault && printer === undefined) report.built(work.number, 0);
    paged();
  };
  await Promise.all(shards.map((shard, share) => shard.pages(numbers, done, share === 0 ? index : undefined)).reverse());
};

interface PrintAllContext {
  readonly running: Running;
  readonly survey: Survey;
  readonly layouts: Layouts;
  readonly planner: Planner;
}

const printAll = async (works: readonly Work[], { running, survey: { options }, layouts, planner }: PrintAllContext): Promise<void> => {
  const { effects, printer, browser, report } = running;
  if (printer === undefined) return;
  const { out, draft } = options;
  await printJobs(
    works,
    { effects, out, layouts, printer, draft, browser: browser?.identity ?? "", planOf: planner.planOf },
    (work, result) => {
      if (!(result instanceof Error)) {
        work.outputs.push(...result.outputs);
        work.pages = result.pages;
        if (!work.fault) report.built(work.number, work.pages);
        return;
      }
      if (!work.fault)
        report.failed(result instanceof PrintFault ? printFaultText(work, result) : `${work.file.path}: ${faultText(result)}`);
      work.fault = true;
    },
  );
};

const printFaultText = ({ file, number }: Work, { faults }: PrintFault): string =>
  `${file.path}: the packet of ${number} can't be printed as it should be; nothing of it is kept\n${faults.map((fault) => `  ${fault}\n`).join("")}` +
  "  fix: shorten what the sheet takes from the job file; if that is not it, this is a fault of the program\n";
