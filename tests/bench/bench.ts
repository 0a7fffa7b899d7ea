// How fast is the program, each figure beside the yardstick that was measured in the same run?
import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { readArguments } from "../../src/cli/arguments.ts";
import { build } from "../../src/cli/build-command.ts";
import { type Effects, realEffects } from "../../src/cli/effects.ts";
import type { JobFile } from "../../src/cli/manifest.ts";
import { type Planned, prepare } from "../../src/cli/planner.ts";
import { printJobs } from "../../src/cli/printing.ts";
import { survey } from "../../src/cli/survey.ts";
import { parseJob } from "../../src/job/parse.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import { makeTemplates } from "../../src/packet/make-templates.ts";
import type { Packet } from "../../src/packet/packet.ts";
import { findBrowser } from "../../src/pdf/find-browser.ts";
import { makePrinter } from "../../src/pdf/print.ts";
import { startBrowser } from "../../src/pdf/start.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { printCopy } from "../../src/site/print-copy.ts";
import { packageRoot } from "../../src/site/root.ts";
import { decimal } from "../../src/units/print.ts";
import { bareClient } from "./bare-client.ts";

const JOBS = 1000;
const root = packageRoot();
const main = join(root, ".build", "main.js");
const cache = join(root, ".cache");
mkdirSync(cache, { recursive: true });
const folder = mkdtempSync(join(cache, "bench-"));
const jobs = join(folder, "jobs");
const silent: Effects = { ...realEffects, output: { terminal: false, write: () => {}, warn: (text) => process.stderr.write(text) } };

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const say = (what: string, figure: string, limit: string): void => {
  process.stdout.write(`${what.padEnd(62)} ${figure.padEnd(46)} ${limit}\n`);
};
const seconds = (value_ms: number): string => `${decimal(value_ms / 1000, { decimals: 2 })} s`;
const ratio = (ours: number, yardstick: number): string => `${decimal(ours / yardstick, { decimals: 2 })} x`;

/** Length of the side and the job's number are all that differs. */
const jobText = (index: number, feet = 8 + (index % 20)): string =>
  readFileSync(join(root, "jobs", "0001-level-deck-straight.yaml"), "utf8")
    .replace("number: 0001-porch-front", `number: B-${index}`)
    .replace("length: 23 ft", `length: ${feet} ft`);

interface Run {
  readonly wall_ms: number;
  readonly peak_MiB: number;
}

const runNode = (words: readonly string[]): Promise<Run> =>
  new Promise((resolve, reject) => {
    const started = performance.now();
    const child = spawn(process.execPath, [...words], { stdio: ["ignore", "ignore", "pipe"] });
    let peak = 0;
    let said = "";
    const look = (): void => {
      const status = `/proc/${child.pid}/status`;
      if (!existsSync(status)) return;
      try {
        peak = Math.max(peak, Number(/VmHWM:\s+(\d+)/.exec(readFileSync(status, "utf8"))?.[1] ?? 0));
      } catch {
        // it ended between the two looks
      }
    };
    const timer = setInterval(look, 25);
    child.stderr.on("data", (text) => {
      said += String(text);
    });
    child.on("close", (code) => {
      clearInterval(timer);
      if (code === 0) resolve({ wall_ms: performance.now() - started, peak_MiB: peak / 1024 });
      else reject(new Error(`node ${words.join(" ")} ended with ${code}: ${said}`));
    });
  });

/** Both in turn, so that a machine that drifts drifts for both. */
const inTurn = async (times: number, ours: () => Promise<Run>, yardstick: () => Promise<Run>): Promise<readonly [number, number]> => {
  const walls: [number[], number[]] = [[], []];
  for (let round = 0; round < times; round += 1) {
    walls[0].push((await ours()).wall_ms);
    walls[1].push((await yardstick()).wall_ms);
  }
  return [median(walls[0]), median(walls[1])];
};

const benchPlan = (): void => {
  const times: number[] = [];
  const packets: number[] = [];
  for (let index = 0; index < 100; index += 1) {
    const bytes = Buffer.from(jobText(index));
    const started = performance.now();
    const { plan } = prepare({ path: "bench.yaml", id: "bench.yaml", bytes, digest: "", key: "" }, options("unused"));
    const planned = performance.now();
    if (plan === undefined) throw new Error("the bench's own job has a problem");
    makePacket({ plan, issue: "crew", stamp: { jobHash: "", programVersion: "" }, all: true });
    times.push(planned - started);
    packets.push(performance.now() - planned);
  }
  say("plan of one job, its file read and checked (median of 100)", `${decimal(median(times), { decimals: 1 })} ms`, "");
  say("packet of one job with all its sheets (median of 100)", `${decimal(median(packets), { decimals: 1 })} ms`, "");
};

/** Right-angled corners all the way: how the plan grows with the sides. */
const sidesText = (sides: number): string =>
  readFileSync(join(root, "jobs", "0001-level-deck-straight.yaml"), "utf8")
    .replace(/clear opening: \d+ in/, "clear opening: 37 in")
    .replace(/force: \d+ lbf/, "force: 4 lbf")
    .replace("  existing: false", "  existing: false\n  base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 3/16 in }")
    .replace(
      / +- length: 23 ft[^\n]*\n/,
      Array.from({ length: sides }, (_, side) => {
        const turn = side === sides - 1 ? "" : ", turn: right 90 deg";
        return `    - { length: ${12 + side} ft${turn} }\n`;
      }).join(""),
    );

const benchSides = (): void => {
  const figures = [1, 2, 3, 4].map((sides) => {
    const { value: job } = parseJob(sidesText(sides));
    if (job === undefined) throw new Error("the bench's own job has a problem");
    const times = Array.from({ length: 60 }, () => {
      const started = performance.now();
      makePlan(job);
      return performance.now() - started;
    });
    const { value: plan } = makePlan(job);
    // A frame that fails would be planned again with every change that might help.
    if (plan === undefined || plan.verdict === "fail") throw new Error("the bench's own frame does not hold");
    if (plan.courses.length < 12) throw new Error("the bench's own opening has fewer than 12 courses");
    return { sides, courses: plan.courses.length, median_ms: median(times.slice(20)) };
  });
  for (const { sides, courses, median_ms } of figures) {
    const limit = sides === 4 ? "at most 30 ms" : "";
    say(`plan of ${sides} sides and ${courses} courses (median of 40)`, `${decimal(median_ms, { decimals: 1 })} ms`, limit);
  }
};

const options = (out: string) => {
  const request = readArguments(["build", "--jobs", jobs, "--out", out], "bench");
  if (request.command !== "build") throw new Error("build was asked for");
  return request.options;
};

const benchHtml = async (): Promise<void> => {
  const out = join(folder, "html");
  const { wall_ms, peak_MiB } = await runNode([main, "build", "--jobs", jobs, "--out", out, "--no-pdf"]);
  say(`pages and data of ${JOBS} jobs, without PDFs`, `${seconds(wall_ms)}, ${decimal(peak_MiB)} MiB`, "at most 5 s, 450 MiB");
  const same = [main, "build", "--jobs", jobs, "--out", out, "--no-pdf"];
  const [ours, nothing] = await inTurn(
    9,
    () => runNode(same),
    () => runNode(["-e", "0"]),
  );
  say(`nothing changed of ${JOBS} jobs / node -e 0 (${seconds(nothing)})`, `${seconds(ours)} = ${ratio(ours, nothing)}`, "at most 2.5 x");
};

/** A build of all jobs that prints nothing stands in for the quarter of an hour that it would take. */
const benchOneChanged = async (): Promise<void> => {
  const out = join(folder, "pdf");
  const browser = findBrowser(silent);
  const found = survey(options(out), { effects: silent, browser });
  if (typeof found === "string") throw new Error(found);
  const bytes = Buffer.from("stands in for a PDF");
  const printer = {
    print: async () => ({ bytes, pages: 1 }),
    connected: Promise.resolve(),
    atWork: Promise.resolve(),
    version: async () => "",
    close: () => {},
    crash: () => {},
  };
  await build(found, { effects: silent, browser, printer });
  const walls: number[] = [];
  for (let round = 0; round < 3; round += 1) {
    writeFileSync(join(jobs, "job-0500.yaml"), jobText(500, 30 + round));
    walls.push((await runNode([main, "build", "--jobs", jobs, "--out", out])).wall_ms);
  }
  say(`one changed of ${JOBS} jobs, with its page and PDFs`, seconds(median(walls)), "at most 1.5 s");
};

const packetsOf = (index: number): readonly Packet[] => {
  const bytes = Buffer.from(jobText(index));
  const { plan } = prepare({ path: "bench.yaml", id: "bench.yaml", bytes, digest: "", key: "" }, options("unused"));
  if (plan === undefined) throw new Error("the bench's own job has a problem");
  const stamp = { jobHash: `${index}`, programVersion: "bench" };
  return [
    ...(["crew", "homeowner", "permit", "record"] as const).map((issue) => makePacket({ plan, issue, stamp })),
    ...(["letter", "a4"] as const).map((paper) => makeTemplates({ plan, paper, stamp })),
  ];
};

const benchWarm = async (): Promise<void> => {
  const layouts = makeLayouts(root);
  const found = findBrowser(silent);
  if (found === undefined) throw new Error("there is no browser to measure");
  const printer = makePrinter(() => startBrowser(found, { cache, warn: () => {} }));
  const bare = await bareClient(cache);
  const out = join(folder, "warm");
  mkdirSync(out, { recursive: true });
  const walls: [number[], number[]] = [[], []];
  const PER_ROUND = 4;
  for (let round = 0; round < 6; round += 1) {
    const indexes = Array.from({ length: PER_ROUND }, (_, index) => round * PER_ROUND + index);
    const pages = indexes.flatMap((index) => packetsOf(index).map((packet) => printCopy(packet, layouts)));
    const before = performance.now();
    await Promise.all(pages.map(async (html, index) => writeFileSync(join(out, `bare-${index}.pdf`), await bare.print(html))));
    const between = performance.now();
    const tasks = indexes.map((index) => {
      const bytes = Buffer.from(jobText(index));
      return { file: { path: "bench.yaml", id: `${index}`, bytes, digest: `${index}`, key: "" }, number: `B-${index}`, before: undefined };
    });
    const planOf = (file: JobFile) => {
      const { plan } = prepare(file, options("unused"));
      if (plan === undefined) throw new Error("the bench's own job has a problem");
      return { plan, built: undefined, revised: undefined };
    };
    const kept = new Map<string, Planned>();
    const planOnce = (file: JobFile) => {
      const plan = kept.get(file.id) ?? planOf(file);
      kept.set(file.id, plan);
      return plan;
    };
    await printJobs(tasks, { effects: silent, out, layouts, printer, draft: false, browser: "", planOf: planOnce }, (_task, result) => {
      if (result instanceof Error) throw result;
    });
    const after = performance.now();
    if (round === 0) continue; // both browsers warm up
    walls[0].push((after - between) / pages.length);
    walls[1].push((between - before) / pages.length);
  }
  printer.close();
  bare.close();
  const [ours, alone] = [median(walls[0]), median(walls[1])];
  say(
    `marginal tagged packet, from plan to file / browser alone (${decimal(alone)} ms)`,
    `${decimal(ours)} ms = ${ratio(ours, alone)}`,
    "at most 1.15 x",
  );
};

const benchCold = async (): Promise<void> => {
  const one = join(folder, "one");
  mkdirSync(one, { recursive: true });
  const layouts = makeLayouts(root);
  const pages = packetsOf(15).map((packet, index) => {
    const path = join(one, `${index}.html`);
    writeFileSync(path, printCopy(packet, layouts));
    return path;
  });
  writeFileSync(join(one, "job.yaml"), jobText(15));
  const out = join(one, "out");
  const cold = async (): Promise<Run> => {
    rmSync(out, { recursive: true, force: true });
    return runNode([main, "build", "--out", out, join(one, "job.yaml")]);
  };
  const [ours, bare] = await inTurn(5, cold, () => runNode([join(root, ".build", "bare-client.js"), cache, ...pages]));
  say(
    `one job cold, page, four issues and two sets of templates / bare client (${seconds(bare)})`,
    `${seconds(ours)} = ${ratio(ours, bare)}`,
    "at most 1.35 x",
  );
};

const parts: Readonly<Record<string, () => void | Promise<void>>> = {
  plan: benchPlan,
  sides: benchSides,
  cold: benchCold,
  warm: benchWarm,
  html: benchHtml,
  changed: benchOneChanged,
};

try {
  const wanted = process.argv.slice(2).filter((word) => word in parts);
  mkdirSync(jobs);
  for (let index = 0; index < JOBS; index += 1) writeFileSync(join(jobs, `job-${String(index).padStart(4, "0")}.yaml`), jobText(index));
  process.stdout.write(`node ${process.version}, ${JOBS} jobs\n`);
  for (const [name, part] of Object.entries(parts)) if (wanted.length === 0 || wanted.includes(name)) await part();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
