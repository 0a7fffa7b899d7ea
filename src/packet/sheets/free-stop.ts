// How does every sheet say up to which free length a bay still fits?
import { longestClear, longestFree } from "../../plan/free-stop.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { least, refer, type SheetContext, unique } from "./kit.ts";

/** "14-3/8"", or "its stop on Z-003, bay by bay (the least is 14-3/8")", and where that comes from; of what a tape finds, sleeves on. */
export function freeStop(context: SheetContext): { readonly what: Text; readonly limit: Text; readonly source: Text } {
  const { plan, show } = context;
  const { value, source } = plan.job.spacers.free_max;
  const bays = plan.bays.filter(({ kind }) => kind === "bay");
  const stops = bays.map(({ id }) => longestFree(plan, id));
  const clear = bays.map((bay) => show.tapeDown(longestClear(plan, bay)));
  const words = show.tapeDown(Math.min(value, least(bays.map((bay) => longestClear(plan, bay)))));
  const isOne = unique(clear).length <= 1;
  return {
    what: plan.job.posts.sleeve === null ? "free length of a cable" : "clear length between sleeves and spacers",
    limit: isOne ? words : `its stop on ${refer(context, "survey")}, bay by bay (the least is ${words})`,
    source: sourceMark(stops.every((stop) => stop >= value) ? source : plan.target.source),
  };
}
