// How does every sheet say up to which free length a bay still fits?
import { longestFree } from "../../plan/free-stop.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { least, refer, type SheetContext, unique } from "./kit.ts";

/** "14-3/8"", or "its stop on Z-003, bay by bay (the least is 14-3/8")", and where that comes from. */
export function freeStop(context: SheetContext): { readonly limit: Text; readonly source: Text } {
  const { plan, show } = context;
  const { value, source } = plan.job.spacers.free_max;
  const stops = plan.bays.filter(({ kind }) => kind === "bay").map(({ id }) => longestFree(plan, id));
  const words = show.tapeDown(Math.min(value, least(stops)));
  const isOne = unique(stops.map(show.tapeDown)).length <= 1;
  return {
    limit: isOne ? words : `its stop on ${refer(context, "survey")}, bay by bay (the least is ${words})`,
    source: sourceMark(stops.every((stop) => stop >= value) ? source : plan.target.source),
  };
}
