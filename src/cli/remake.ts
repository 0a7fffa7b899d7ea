// What does a job file give? Its whole output made again and kept in memory, to be compared with what was written once.
import { basename, join } from "node:path";
import { titleBlock } from "../packet/make-packet.ts";
import type { TitleBlock } from "../packet/packet.ts";
import type { FoundBrowser } from "../pdf/find-browser.ts";
import { makePrinter, type Printer } from "../pdf/print.ts";
import { startBrowser } from "../pdf/start.ts";
import type { Plan } from "../plan/plan.ts";
import { type Layouts, makeLayouts } from "../site/layouts.ts";
import { packageRoot } from "../site/root.ts";
import type { BuildOptions } from "./arguments.ts";
import type { Effects, Files } from "./effects.ts";
import { type JobFile, sourcesOf } from "./manifest.ts";
import { makePlanner, type Planner } from "./planner.ts";
import { pdfName, printJobs, prints, stampOf } from "./printing.ts";
import { localShard, type PagedJob } from "./shard.ts";

export interface Remade {
  readonly plan: Plan;
  readonly titleBlock: TitleBlock;
  /** By path below the output folder: the job's own files, and a list of jobs and a style sheet for it alone. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** Paths of the PDFs that belong to it; they are among the files when they were printed. */
  readonly pdfs: readonly string[];
  /** Names of what it was made from: the job file, its record and what was issued before, where they are. */
  readonly sources: readonly string[];
}

export interface Remaker {
  /** A text says what is wrong with the job file. */
  readonly remake: (file: JobFile, options: BuildOptions) => Promise<Remade | string>;
  readonly close: () => void;
}

export interface RemakerContext {
  readonly effects: Effects;
  /** Without one nothing is printed. */
  readonly browser: FoundBrowser | undefined;
  /** Stands in for a real browser in tests. */
  readonly printer?: Printer | undefined;
}

export const makeRemaker = ({ effects, browser, printer: given }: RemakerContext): Remaker => {
  const root = packageRoot();
  const layouts = makeLayouts(root);
  let printer = given;
  const warn = (line: string): void => effects.output.warn(`note: ${line}\n`);
  if (printer === undefined && browser !== undefined) {
    printer = makePrinter(() => startBrowser(browser, { cache: join(root, ".cache"), warn }));
  }
  return {
    remake: (file, options) => remakeOne(file, { options: { ...options, out: "" }, effects, root, layouts, printer, browser }),
    close: () => printer?.close(),
  };
};

interface OneContext {
  readonly options: BuildOptions;
  readonly effects: Effects;
  readonly browser: FoundBrowser | undefined;
  readonly root: string;
  readonly layouts: Layouts;
  readonly printer: Printer | undefined;
}

const remakeOne = async (file: JobFile, context: OneContext): Promise<Remade | string> => {
  const { options, effects, root, layouts, printer } = context;
  const made = new Map<string, Uint8Array>();
  const put = (path: string, content: Uint8Array | string): void => {
    made.set(path.replaceAll("\\", "/"), typeof content === "string" ? Buffer.from(content) : content);
  };
  const files: Files = { ...effects.files, writeWhole: put };
  const planner = makePlanner(options);
  const shard = localShard({ jobs: [file], options, root }, { files, planner, layouts });
  const [planned] = await shard.plan();
  if (planned?.fault !== undefined) throw new Error(planned.fault);
  if (planned?.number === undefined) return planned?.problems ?? "";
  const { number } = planned;
  let tell: (page: PagedJob) => void = () => {};
  const paged = new Promise<PagedJob>((resolve) => {
    tell = resolve;
  });
  const archive = async () => [(await paged).entry].filter((entry) => entry !== undefined);
  await shard.pages([number], tell, { archive, write: put });
  const { fault } = await paged;
  if (fault !== undefined) throw new Error(fault);
  const { plan } = planner.planOf(file);
  if (options.pdf && printer !== undefined) await printOne(file, { ...context, effects: { ...effects, files }, printer, planner });
  const pdfs = options.pdf ? prints.map((print) => `${number}/${pdfName(plan, print)}`) : [];
  return {
    plan,
    titleBlock: titleBlock(plan, stampOf(file)),
    files: made,
    pdfs,
    sources: sourcesOf(file).map(({ path }) => basename(path)),
  };
};

interface PrintContext extends OneContext {
  readonly printer: Printer;
  readonly planner: Planner;
}

const printOne = async (file: JobFile, { options, effects, layouts, printer, browser, planner }: PrintContext): Promise<void> => {
  const { out, draft } = options;
  const planned = planner.planOf(file);
  const task = { file, number: planned.plan.job.identity.number, before: undefined };
  const settings = { effects, out, layouts, printer, draft, browser: browser?.identity ?? "", planOf: () => planned };
  await printJobs([task], settings, (_task, result) => {
    if (result instanceof Error) throw result;
  });
};
