// Which tools does a pier need, in which cables are anchored?
import type { Job } from "../job/job.ts";
import { anchorEndsOf, pierNamed } from "./pier.ts";
import type { Run } from "./plan.ts";
import type { Line } from "./tools.ts";

/** What bores a pier, cleans its holes and keeps the dust of silica down. */
export function pierTools(runs: readonly Run[], job: Job): readonly Line[] {
  const kinds = anchorEndsOf({ runs }).map(({ end }) => pierNamed(job, end.postId).anchor.kind);
  if (kinds.length === 0) return [];
  return [
    { item: "hammer drill, with a stop", source: "rent", note: "for the pier alone; rotary only where the anchor's report says so" },
    { item: "dust extraction on the drill, dust mask", source: "rent", note: "dust of concrete and masonry holds silica" },
    { item: "detector for steel and pipes", source: "rent", note: "every hole of the pier, before it is bored" },
    { item: "brush and blower as the anchor's maker asks; vacuum with a HEPA filter", source: "buy", note: "a dusty hole holds little" },
    ...(kinds.includes("adhesive")
      ? [{ item: "dispenser and nozzles for the adhesive", source: "rent", note: "label, date and temperature read first" } as const]
      : []),
    ...(kinds.includes("expansion") ? [{ item: "torque wrench", source: "rent", note: "anchors set as their maker says" } as const] : []),
  ];
}
