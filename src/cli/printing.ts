// How do the four issues of each job, and its templates on both papers, become PDFs? A few at once; a job's files are written when all of them are good.
import { createHash } from "node:crypto";
import { basename, join } from "node:path";
import { contentBox } from "../drawing/paper.ts";
import { revisionOf } from "../job/identity.ts";
import type { Issue, Paper } from "../job/job.ts";
import { issueName } from "../packet/issues.ts";
import { makePacket } from "../packet/make-packet.ts";
import { makeTemplates } from "../packet/make-templates.ts";
import type { Packet, Stamp } from "../packet/packet.ts";
import { NOT_FOR_CONSTRUCTION, paperName } from "../packet/wording.ts";
import { drawingFaults } from "../pdf/drawing-faults.ts";
import type { PageHeights } from "../pdf/measure.ts";
import { type Printer, PrintFault } from "../pdf/print.ts";
import type { Plan } from "../plan/plan.ts";
import type { Layouts } from "../site/layouts.ts";
import { extraHead_mm } from "../site/page-rules.ts";
import { printCopy } from "../site/print-copy.ts";
import type { Effects } from "./effects.ts";
import { type JobFile, type JobRecord, type OutputFile, sourcesOf } from "./manifest.ts";
import type { Planner } from "./planner.ts";
import { programVersion } from "./program.ts";

const issues: readonly Issue[] = ["crew", "homeowner", "permit", "record"];

/** What is printed in one file: an issue, or the full-size templates for one paper. */
export type Print = { readonly issue: Issue } | { readonly templatesOn: Paper };

const papers: readonly Paper[] = ["letter", "a4"];

/** In the order in which a job's page names them. */
export const prints: readonly Print[] = [...issues.map((issue) => ({ issue })), ...papers.map((templatesOn) => ({ templatesOn }))];

const printName = (print: Print): string => ("issue" in print ? print.issue : `templates-${print.templatesOn}`);

/** As a link says it. */
export const printTitle = (print: Print): string =>
  "issue" in print ? issueName[print.issue] : `Full-size templates and story pole, ${paperName[print.templatesOn]} paper`;

/** The name of a printed file: who has only the file must know what it is, of which revision, and that nobody may build from it. */
export const pdfName = ({ job: { identity }, verdict }: Plan, print: Print): string => {
  const { number, status } = identity;
  const words = [
    number,
    printName(print),
    `r${inName(revisionOf(identity))}`,
    ...(status === "for construction" ? [] : [inName(status)]),
    ...(verdict === "fail" ? [inName(NOT_FOR_CONSTRUCTION)] : []),
  ];
  return `${words.join("-")}.pdf`;
};

/** Only what every system takes in the name of a file. */
const inName = (text: string): string => text.replace(/[^A-Za-z0-9]+/g, "-").replace(/^-|-$/g, "");

/** Those with most pages first, so that the last of a job is a short one and no page of the browser waits for long. */
const longestFirst: readonly Print[] = [
  ...papers.map((templatesOn) => ({ templatesOn })),
  ...(["homeowner", "crew", "record", "permit"] as const).map((issue) => ({ issue })),
];

export interface PrintingOptions {
  readonly effects: Effects;
  readonly out: string;
  readonly layouts: Layouts;
  readonly printer: Printer;
  readonly draft: boolean;
  /** Identity of the browser: a page printed by another is another file. */
  readonly browser: string;
  readonly planOf: Planner["planOf"];
}

export interface PrintTask {
  readonly file: JobFile;
  readonly number: string;
  /** What the last build made of this job. */
  readonly before: JobRecord | undefined;
}

export interface PrintedJob {
  readonly outputs: readonly OutputFile[];
  readonly pages: number;
}

const HASH_LETTERS = 12;

export const stampOf = ({ digest, record, issued }: JobFile): Stamp => ({
  jobHash: digest.slice(0, HASH_LETTERS),
  ...(record === undefined ? {} : { recordHash: record.digest.slice(0, HASH_LETTERS) }),
  ...(issued === undefined ? {} : { issuedHash: issued.digest.slice(0, HASH_LETTERS) }),
  programVersion,
});

/** Prints all jobs; `done` is called for each as it is written, or with what went wrong. */
export const printJobs = async <T extends PrintTask>(
  tasks: readonly T[],
  options: PrintingOptions,
  done: (task: T, result: PrintedJob | Error) => void,
): Promise<void> => {
  const parts = tasks.flatMap((task) => {
    const shared = {
      task,
      results: [] as { path: string; pdf: PrintedPdf }[],
      error: undefined as Error | undefined,
      left: prints.length,
    };
    return longestFirst.map((print) => ({ print, shared }));
  });
  let next = 0;
  const work = async (): Promise<void> => {
    for (let part = parts[next++]; part !== undefined; part = parts[next++]) {
      const { print, shared } = part;
      try {
        if (shared.error === undefined) {
          const path = `${shared.task.number}/${pdfName(options.planOf(shared.task.file).plan, print)}`;
          shared.results.push({ path, pdf: await printOne(print, { path, task: shared.task }, options) });
        }
      } catch (error) {
        shared.error = error instanceof Error ? error : new Error(String(error));
      }
      shared.left -= 1;
      if (shared.left === 0) done(shared.task, shared.error ?? writeAll(shared.results, options));
      if (shared.left === 0) shared.results.length = 0;
    }
  };
  const { connected, atWork } = options.printer;
  const after = async (moment: Promise<unknown>): Promise<void> => {
    await Promise.race([moment, first]).catch(() => {});
    await work();
  };
  // One document for each of the browser's two pages and one ahead; each is made when this program would only wait.
  const first = work();
  await Promise.all([first, after(connected), after(atWork)]);
};

interface PrintedPdf {
  /** undefined when the file of the last build is what it would be. */
  readonly bytes: Uint8Array | undefined;
  readonly size: number;
  readonly pages: number;
  readonly html: string;
}

const writeAll = (
  results: readonly { readonly path: string; readonly pdf: PrintedPdf }[],
  { effects, out }: PrintingOptions,
): PrintedJob => {
  for (const { path, pdf } of results) if (pdf.bytes !== undefined) effects.files.writeWhole(join(out, path), pdf.bytes);
  const outputs = results.map(({ path, pdf: { size, pages, html } }) => ({ path, size, pages, html }));
  return { outputs, pages: outputs.reduce((sum, output) => sum + output.pages, 0) };
};

interface PrintContext {
  readonly path: string;
  readonly task: PrintTask;
}

const printOne = async (
  print: Print,
  { path, task }: PrintContext,
  { effects, out, layouts, printer, draft, browser, planOf }: PrintingOptions,
): Promise<PrintedPdf> => {
  const { file } = task;
  const { plan, built, revised } = planOf(file);
  const stamp = stampOf(file);
  const packet =
    "issue" in print
      ? makePacket({ plan, built, revised, issue: print.issue, stamp })
      : makeTemplates({ plan, paper: print.templatesOn, stamp });
  const html = printCopy(packet, layouts);
  const digest = createHash("sha256")
    .update(html)
    .update([draft, browser, ...sourcesOf(file).map(({ path, digest }) => `${basename(path)} ${digest}`)].join(" "))
    .digest("hex");
  const old = task.before?.outputs.find((output) => output.path === path);
  if (old?.html === digest && old.pages !== undefined && effects.files.size(join(out, path)) === old.size) {
    return { bytes: undefined, size: old.size, pages: old.pages, html: digest };
  }
  const name = `${task.number}, ${printName(print)}`;
  const faults = drawingFaults(packet);
  if (faults.length > 0) throw new PrintFault(name, faults);
  const { titleBlock } = packet;
  const { bytes, pages } = await printer.print({
    name,
    html,
    heights: pageHeights(packet),
    measure: "scaled",
    finish: {
      date: plan.job.identity.issueDate,
      title: `${titleBlock.jobNumber} ${titleBlock.title}: ${packet.issueName}`,
      author: titleBlock.firm,
      identifier: basename(path, ".pdf"),
      description: [`Revision ${titleBlock.revision}, ${titleBlock.status}`, titleBlock.stamp, titleBlock.example]
        .filter((text) => text !== "")
        .join("; "),
      fullSize: !("issue" in print),
      attachments: sourcesOf(file).map(({ path, bytes }) => ({ name: basename(path), bytes })),
    },
    tagged: !draft,
  });
  return { bytes, size: bytes.length, pages, html: digest };
};

const PIXELS_PER_MM = 96 / 25.4;

const pageHeights = (packet: Packet): PageHeights => ({
  portrait: heightOf(packet, "portrait") * PIXELS_PER_MM,
  landscape: heightOf(packet, "landscape") * PIXELS_PER_MM,
});

const heightOf = ({ paper, titleBlock }: Packet, orientation: "portrait" | "landscape"): number =>
  contentBox({ paper, orientation }).height - extraHead_mm(titleBlock);
