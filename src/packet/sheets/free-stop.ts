// Up to which free length does a bay still fit? One rule for every sheet: the job's own, or what the criterion bears, whichever is less.
import type { Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { least, refer, type SheetContext, unique } from "./kit.ts";
import { spansInBay } from "./spans.ts";

/** Longest free length of a bay: where the criterion gives none, or a longer one, the limit of the job. */
export function longestFree(plan: Plan, bayId: string): Mm {
  const stops = spansInBay(plan, bayId).flatMap(({ span }) => (span.free_stop === null ? [] : [span.free_stop]));
  return Math.min(plan.job.spacers.free_max.value, least(stops));
}

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
