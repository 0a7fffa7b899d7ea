// Within which readings must a cable have stood on the day of the record?
import { movedBand } from "../plan/day-targets.ts";
import type { Plan, Run } from "../plan/plan.ts";
import type { Celsius, Newton } from "../units/quantity.ts";

interface Band {
  readonly low: Newton;
  readonly high: Newton;
}

/** At the nut, and in the bay of the proof, which has its share of what the nut moves by. Of a day nobody stated: those of the reference. */
export function bandsOfDay(run: Run, plan: Plan, temperature: Celsius | null): { readonly atNut: Band; readonly inBay: Band } {
  const { tension, proof } = run;
  const days = plan.tightening.find(({ runId }) => runId === run.id)?.days ?? [];
  const added = temperature === null ? 0 : addedAt(days, temperature);
  const share = proof.low / tension.low;
  const most = plan.target.workingLimit;
  return { atNut: movedBand(tension, { by: added, most }), inBay: movedBand(proof, { by: share * added, most }) };
}

/** Between two days of the table on the line from one to the other; beyond its ends no more than there. */
function addedAt(days: Plan["tightening"][number]["days"], temperature: Celsius): Newton {
  const after = days.findIndex((day) => day.temperature >= temperature);
  const [low, high] = [days[after === -1 ? days.length - 1 : Math.max(0, after - 1)], days.at(after)];
  if (low === undefined || high === undefined) return 0;
  const way = high.temperature - low.temperature;
  const part = way > 0 ? Math.max(0, temperature - low.temperature) / way : 0;
  return low.added + part * (high.added - low.added);
}
