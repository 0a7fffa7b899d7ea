// What does a helping thread do? Plans its share when asked, and makes the pages when told which.
import { parentPort, workerData } from "node:worker_threads";
import { realEffects } from "./effects.ts";
import { localShard, type ShardOptions } from "./shard.ts";

const shard = localShard(workerData as ShardOptions, { files: realEffects.files });

parentPort?.on("message", async (message: { readonly plan: true } | { readonly pages: readonly string[] }) => {
  if ("plan" in message) {
    parentPort?.postMessage({ planned: await shard.plan() });
    return;
  }
  await shard.pages(message.pages, (page) => parentPort?.postMessage({ page }), undefined);
  parentPort?.postMessage({ end: true });
});
