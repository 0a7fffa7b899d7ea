// What does a helping thread do? Loads, plans its share when asked, and makes the pages when told which.
import { parentPort, workerData } from "node:worker_threads";
import { realEffects } from "./effects.ts";
import type { ShardOptions } from "./shard.ts";

// The same script as in the first thread, of which the compiled form is kept.
const { localShard } = await import("./shard.ts");
const shard = localShard(workerData as ShardOptions, { files: realEffects.files });

parentPort?.on("message", async (message: { readonly load: true } | { readonly plan: true } | { readonly pages: readonly string[] }) => {
  if ("load" in message) {
    await shard.load();
    parentPort?.postMessage({ loaded: true });
  } else if ("plan" in message) {
    parentPort?.postMessage({ planned: await shard.plan() });
  } else {
    await shard.pages(message.pages, (page) => parentPort?.postMessage({ page }), undefined);
    parentPort?.postMessage({ end: true });
  }
});
