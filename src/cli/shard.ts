// How is a share of the jobs planned and turned into pages? The same way in this thread and in another.
import { join } from "node:path";
import { makePacket } from "../packet/make-packet.ts";
import type { ArchiveEntry } from "../site/archive.ts";
import { buildSite, loadEngine, type PacketPage } from "../site/build.ts";
import { csvFiles } from "../site/csv.ts";
import { dxfFiles } from "../site/dxf.ts";
import { type Layouts, makeLayouts } from "../site/layouts.ts";
import type { BuildOptions } from "./arguments.ts";
import type { Files } from "./effects.ts";
import { faultText } from "./fault.ts";
import type { JobFile, OutputFile } from "./manifest.ts";
import { allProblemsText, makePlanner, type Planner, prepare, textOf } from "./planner.ts";
import { pdfName, prints, printTitle, stampOf } from "./printing.ts";

export interface PlannedJob {
  readonly id: string;
  /** undefined when the job can't be built. */
  readonly number: string | undefined;
  /** Errors as they are shown; empty when there are none. */
  readonly problems: string;
  readonly warnings: number;
  readonly fault: string | undefined;
}

export interface PagedJob {
  readonly number: string;
  readonly entry: ArchiveEntry | undefined;
  readonly outputs: readonly OutputFile[];
  readonly fault: string | undefined;
}

/** The list of jobs: what it says when all else is done, and where it goes. */
export interface IndexPage {
  readonly archive: () => Promise<readonly ArchiveEntry[]>;
  readonly write: (path: string, text: string) => void;
}

export interface Shard {
  /** Loads what the pages will need. */
  readonly load: () => Promise<void>;
  readonly plan: () => Promise<readonly PlannedJob[]>;
  /** Makes the pages of these jobs, after all shards have planned and no two jobs share a number. */
  readonly pages: (numbers: readonly string[], done: (page: PagedJob) => void, index: IndexPage | undefined) => Promise<void>;
  readonly close: () => void;
}

export interface ShardOptions {
  readonly jobs: readonly JobFile[];
  readonly options: BuildOptions;
  readonly root: string;
}

export interface ShardContext {
  readonly files: Files;
  readonly planner?: Planner;
  readonly layouts?: Layouts;
}

export const localShard = ({ jobs, options, root }: ShardOptions, context: ShardContext): Shard => {
  const planner = context.planner ?? makePlanner(options);
  const byNumber = new Map<string, JobFile>();
  const planOne = (file: JobFile): PlannedJob => {
    const nothing = { id: file.id, number: undefined, problems: "", warnings: 0, fault: undefined };
    try {
      const prepared = prepare(file, options);
      if (prepared.plan === undefined) return { ...nothing, problems: allProblemsText(prepared) };
      planner.keep(prepared);
      const { number } = prepared.plan.job.identity;
      byNumber.set(number, file);
      const told = [...prepared.problems, ...prepared.recordProblems, ...prepared.issuedProblems];
      return { ...nothing, number, warnings: told.filter((problem) => problem.severity === "warning").length };
    } catch (error) {
      return { ...nothing, fault: faultText(error) };
    }
  };
  return {
    load: async () => {
      await loadEngine();
    },
    plan: async () => jobs.map(planOne),
    pages: (numbers, done, index) =>
      makePages(
        numbers.filter((number) => byNumber.has(number)),
        {
          files: context.files,
          layouts: context.layouts ?? makeLayouts(root),
          root,
          options,
          planner,
          fileOf: (number) => byNumber.get(number),
          done,
          index,
        },
      ),
    close: () => {},
  };
};

interface PagesContext {
  readonly files: Files;
  readonly layouts: Layouts;
  readonly root: string;
  readonly options: BuildOptions;
  readonly planner: Planner;
  readonly fileOf: (number: string) => JobFile | undefined;
  readonly done: (page: PagedJob) => void;
  readonly index: IndexPage | undefined;
}

const makePages = async (
  numbers: readonly string[],
  { files, layouts, root, options, planner, fileOf, done, index }: PagesContext,
): Promise<void> => {
  const outputs = new Map<string, OutputFile[]>(numbers.map((number) => [number, []]));
  const entries = new Map<string, ArchiveEntry>();
  const put = (path: string, text: string): void => {
    files.writeWhole(join(options.out, path), text);
    outputs.get(path.split("/")[0] ?? "")?.push({ path, size: Buffer.byteLength(text) });
  };
  await buildSite({
    layouts,
    root,
    numbers,
    pageOf: (number) => {
      try {
        const file = fileOf(number);
        if (file === undefined) throw new Error(`no job file is known for ${number}`);
        const { page, entry } = pageOf(file, { planner, put, pdf: options.pdf });
        entries.set(number, entry);
        return page;
      } catch (error) {
        done({ number, entry: undefined, outputs: outputs.get(number) ?? [], fault: faultText(error) });
        return undefined;
      }
    },
    ...(index === undefined ? {} : { archive: index.archive }),
    write: (path, text) => {
      const number = path.split("/")[0] ?? "";
      if (number === path) {
        index?.write(path, text);
        return;
      }
      put(path, text);
      done({ number, entry: entries.get(number), outputs: outputs.get(number) ?? [], fault: undefined });
      outputs.delete(number);
    },
  });
};

interface PageContext {
  readonly planner: Planner;
  readonly put: (path: string, content: string) => void;
  readonly pdf: boolean;
}

/** The packet of a job's web page with every sheet in it; its data are written on the way. */
const pageOf = (file: JobFile, { planner, put, pdf }: PageContext): { readonly page: PacketPage; readonly entry: ArchiveEntry } => {
  const { plan, built, revised } = planner.planOf(file);
  const { number } = plan.job.identity;
  const packet = makePacket({ plan, built, revised, issue: plan.job.audience, stamp: stampOf(file), all: true });
  const { titleBlock } = packet;
  const entry = {
    number,
    title: titleBlock.title,
    place: titleBlock.place,
    status: titleBlock.status,
    revision: titleBlock.revision,
    date: titleBlock.date,
    code: titleBlock.jobHash,
    verdict: packet.verdict,
    verdictText: packet.verdictText,
    example: titleBlock.example !== "",
  };
  put(`${number}/plan.json`, `${JSON.stringify(plan)}\n`);
  put(`${number}/${number}.yaml`, textOf(file));
  if (file.record !== undefined) put(`${number}/${number}.record.yaml`, textOf(file.record));
  if (file.issued !== undefined) put(`${number}/${number}.issued.yaml`, textOf(file.issued));
  if (built !== undefined) put(`${number}/record.json`, `${JSON.stringify(built)}\n`);
  if (revised !== undefined) put(`${number}/changes.json`, `${JSON.stringify(revised.changes)}\n`);
  const tables = csvFiles(packet);
  for (const { name, text } of tables) put(`${number}/${name}.csv`, text);
  const drawings = dxfFiles(plan, titleBlock);
  for (const { name, text } of drawings) put(`${number}/${name}.dxf`, text);
  const page: PacketPage = {
    packet,
    prints: pdf ? prints.map((print) => ({ href: pdfName(plan, print), name: printTitle(print) })) : [],
    data: [
      ...tables.map(({ name, label }) => ({ href: `${name}.csv`, name: `${label} (CSV)` })),
      ...drawings.map(({ name, label }) => ({ href: `${name}.dxf`, name: `${label} (DXF, mm)` })),
      { href: `${number}.yaml`, name: "The job file (YAML)" },
      ...(file.record === undefined ? [] : [{ href: `${number}.record.yaml`, name: "The record of what was built (YAML)" }]),
      ...(file.issued === undefined ? [] : [{ href: `${number}.issued.yaml`, name: "The job file as it was issued before (YAML)" }]),
      { href: "plan.json", name: "The whole plan (JSON)" },
      ...(built === undefined ? [] : [{ href: "record.json", name: "What was built, beside the plan (JSON)" }]),
      ...(revised === undefined ? [] : [{ href: "changes.json", name: "What has changed since it was issued before (JSON)" }]),
    ],
  };
  return { page, entry };
};
