// How do the four issues of each job become PDFs? A few at once; a job's files are written when all of them are good.
import { createHash } from "node:crypto";
import { basename, join } from "node:path";
import { contentBox } from "../drawing/paper.ts";
import type { Issue, Paper } from "../job/job.ts";
import { makePacket } from "../packet/make-packet.ts";
import type { Packet } from "../packet/packet.ts";
import type { Printer } from "../pdf/print.ts";
import type { Plan } from "../plan/plan.ts";
import { blocksHtml, type Layouts } from "../site/layouts.ts";
import { printCopy } from "../site/print-copy.ts";
import type { Effects } from "./effects.ts";
import type { JobFile, JobRecord, OutputFile } from "./manifest.ts";
import { programVersion } from "./program.ts";

export const issues: readonly Issue[] = ["crew", "homeowner", "permit", "record"];

/** One more than the browser has pages, so that the next document is ready when a page is free. */
const AT_ONCE = 3;

export interface PrintingOptions {
  readonly effects: Effects;
  readonly out: string;
  readonly layouts: Layouts;
  readonly printer: Printer;
  readonly draft: boolean;
  /** Identity of the browser: a page printed by another is another file. */
  readonly browser: string;
  readonly planOf: (file: JobFile) => Plan;
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

export const stampOf = (file: JobFile) => ({ jobHash: file.digest.slice(0, 12), programVersion });

/** Prints all jobs; `done` is called for each as it is written, or with what went wrong. */
export const printJobs = async <T extends PrintTask>(
  tasks: readonly T[],
  options: PrintingOptions,
  done: (task: T, result: PrintedJob | Error) => void,
): Promise<void> => {
  const measured = new Set<string>();
  const parts = tasks.flatMap((task) => {
    const shared = {
      task,
      claimed: new Set<string>(),
      results: [] as { path: string; pdf: PrintedPdf }[],
      error: undefined as Error | undefined,
      left: issues.length,
    };
    return issues.map((issue) => ({ issue, shared }));
  });
  let next = 0;
  const work = async (): Promise<void> => {
    for (let part = parts[next++]; part !== undefined; part = parts[next++]) {
      const { issue, shared } = part;
      const path = `${shared.task.number}/${shared.task.number}-${issue}.pdf`;
      try {
        if (shared.error === undefined)
          shared.results.push({
            path,
            pdf: await printIssue(issue, { path, task: shared.task, measured, claimed: shared.claimed }, options),
          });
      } catch (error) {
        shared.error = error instanceof Error ? error : new Error(String(error));
      }
      shared.left -= 1;
      if (shared.left === 0) done(shared.task, shared.error ?? writeAll(shared.results, options));
      if (shared.left === 0) shared.results.length = 0;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
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

interface IssueContext {
  readonly path: string;
  readonly task: PrintTask;
  /** Sheets that were found good, in this job or another. */
  readonly measured: Set<string>;
  /** Sheets that another issue of this job is measuring: if one is bad, the whole job is. */
  readonly claimed: Set<string>;
}

const printIssue = async (
  issue: Issue,
  { path, task, measured, claimed }: IssueContext,
  { effects, out, layouts, printer, draft, browser, planOf }: PrintingOptions,
): Promise<PrintedPdf> => {
  const { file } = task;
  const plan = planOf(file);
  const packet = makePacket({ plan, issue, stamp: stampOf(file) });
  const html = printCopy(packet, layouts);
  const digest = createHash("sha256").update(html).update(`${draft} ${browser} ${file.digest}`).digest("hex");
  const old = task.before?.outputs.find((output) => output.path === path);
  if (old?.html === digest && old.pages !== undefined && effects.files.size(join(out, path)) === old.size) {
    return { bytes: undefined, size: old.size, pages: old.pages, html: digest };
  }
  const sheets = packet.sheets.map((sheet) =>
    createHash("sha256").update(`${packet.paper} ${sheet.orientation} ${sheet.name}`).update(blocksHtml(sheet)).digest("base64"),
  );
  const unmeasured = [...sheets.keys()].filter((index) => !measured.has(sheets[index] ?? "") && !claimed.has(sheets[index] ?? ""));
  for (const sheet of sheets) claimed.add(sheet);
  const { titleBlock } = packet;
  const { bytes, pages } = await printer.print({
    name: `${task.number}, issue ${issue}`,
    html,
    measure: { sheets: unmeasured, heights: pageHeights(packet) },
    finish: {
      date: plan.job.identity.issueDate,
      title: `${titleBlock.jobNumber} ${titleBlock.title}: ${packet.issueName}`,
      author: titleBlock.firm,
      attachment: { name: basename(file.path), bytes: file.bytes },
    },
    tagged: !draft,
  });
  for (const index of unmeasured) measured.add(sheets[index] ?? "");
  return { bytes, size: bytes.length, pages, html: digest };
};

const PIXELS_PER_MM = 96 / 25.4;

const pageHeights = ({ paper }: Packet): { readonly portrait: number; readonly landscape: number } => ({
  portrait: heightOf(paper, "portrait") * PIXELS_PER_MM,
  landscape: heightOf(paper, "landscape") * PIXELS_PER_MM,
});

const heightOf = (paper: Paper, orientation: "portrait" | "landscape"): number => contentBox({ paper, orientation }).height;
