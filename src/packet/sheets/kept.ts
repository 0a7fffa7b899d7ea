// What does the target hold in store for the weather, drying and bedding-in? One answer for every sheet.
import type { Plan } from "../../plan/plan.ts";
import type { SourceId } from "../../sources/sources.ts";
import type { Text } from "../packet.ts";

export interface Kept {
  readonly what: Text;
  readonly source: SourceId;
  readonly where: Text;
}

const words = { "heat and settling": "weather, drying and bedding-in", heat: "weather", nothing: "nothing" } as const;

/** A tension that somebody states is the target as it stands: the key of the job file has no say then. */
export function keptInTarget({ job, target }: Plan): Kept {
  const { allowFor, criterion } = job.tightening;
  return criterion.kind === "stated"
    ? { what: "nothing: the tension is stated, losses are with whoever states it", source: target.source, where: target.sourceWhere }
    : { what: words[allowFor.value], source: allowFor.source, where: allowFor.where };
}
