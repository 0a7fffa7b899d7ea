// How many threads share the work? One for a few jobs; more when there are hundreds.
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { countSteps } from "../units/round.ts";
import { programDigest } from "./program.ts";
import { localShard, type PagedJob, type PlannedJob, type Shard, type ShardContext, type ShardOptions } from "./shard.ts";

/** A thread costs about 0.3 s to start and 100 MB to have. */
const JOBS_PER_THREAD = 40;
const MOST_THREADS = 4;

/** The first share stays in this thread. */
export const makeShards = (all: ShardOptions, context: ShardContext & { readonly threads: boolean }): readonly Shard[] => {
  const wanted = Math.min(availableParallelism(), MOST_THREADS, countSteps(all.jobs.length, { step: JOBS_PER_THREAD, rounding: "down" }));
  if (wanted < 2 || !context.threads || programDigest === "source") return [localShard(all, context)];
  const shares = Array.from({ length: wanted }, (_, share) => ({
    ...all,
    jobs: all.jobs.filter((_job, index) => index % wanted === share),
  }));
  return shares.map((share, index) => (index === 0 ? localShard(share, context) : threadShard(share)));
};

type Answer =
  | { readonly loaded: true }
  | { readonly planned: readonly PlannedJob[] }
  | { readonly page: PagedJob }
  | { readonly end: true };

const threadShard = (workerData: ShardOptions): Shard => {
  const worker = new Worker(new URL("./shard-worker.js", import.meta.url), {
    workerData,
    // What the first thread has: with less, the same things are looked at again and again before they are thrown away.
    resourceLimits: { maxYoungGenerationSizeMb: 48 },
  });
  let hear: (answer: Answer) => void = () => {};
  let fail: (error: Error) => void = () => {};
  worker.on("message", (answer: Answer) => hear(answer));
  worker.on("error", (error) => fail(error instanceof Error ? error : new Error(String(error))));
  const ask = <T>(question: unknown, listen: (answer: Answer, resolve: (value: T) => void) => void): Promise<T> =>
    new Promise((resolve, reject) => {
      fail = reject;
      hear = (answer) => listen(answer, resolve);
      worker.postMessage(question);
    });
  return {
    load: () =>
      ask<void>({ load: true }, (answer, resolve) => {
        if ("loaded" in answer) resolve();
      }),
    plan: () =>
      ask<readonly PlannedJob[]>({ plan: true }, (answer, resolve) => {
        if ("planned" in answer) resolve(answer.planned);
      }),
    pages: (numbers, done) =>
      ask<void>({ pages: numbers }, (answer, resolve) => {
        if ("page" in answer) done(answer.page);
        else if ("end" in answer) resolve();
      }),
    close: () => {
      void worker.terminate();
    },
  };
};
