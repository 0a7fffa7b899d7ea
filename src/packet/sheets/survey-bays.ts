// How long may each bay be when it is measured?
import { longestClear } from "../../plan/free-stop.ts";
import type { Plan } from "../../plan/plan.ts";
import { clearOf } from "../../plan/sleeve.ts";
import type { Text } from "../packet.ts";
import { groupBy, listed, type SheetContext } from "./kit.ts";
import { longestWords } from "./leaning.ts";
import { aboveWords, isLevel, type SurveyRow } from "./survey-rows.ts";

/** Equal bays stand in one row: of all of them the longest counts. */
export function bayRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const bays = plan.bays
    .filter(({ kind }) => kind === "bay")
    .map((bay) => {
      const { id, sideId } = bay;
      const clear = clearOf(bay, plan);
      const stop = aboveWords(show.tapeDown(longestClear(plan, bay)), show.tape(clear));
      return { id, sideId, planned: `${show.tapeBoth(clear)}${longestWords(bay)}`, stop };
    });
  return groupBy(bays, ({ sideId, planned, stop }) => `${sideId}\n${planned}\n${stop}`).map((same): SurveyRow => {
    const [{ sideId, planned, stop }] = same;
    const ids = rangesOf(plan, same);
    return [
      `guard / sides / ${sideId} / stations`,
      `${same.length === 1 ? `Bay ${ids}: ` : `Bays ${ids}: the longest `}${bayName(plan)}${isLevel(plan, sideId) ? "" : ", along the slope"}`,
      planned,
      stop,
    ];
  });
}

/** Of a bay, as a tape finds it. */
const bayName = ({ job: { posts } }: Plan): Text => (posts.sleeve === null ? "free length" : "clear length between sleeves and spacers");

/** Bays that follow each other are named by the first and the last: "A1 to A34". */
function rangesOf({ bays }: Plan, named: readonly { readonly id: string }[]): Text {
  const places = named.map(({ id }) => bays.findIndex((bay) => bay.id === id));
  const ranges = places.flatMap((place, index): readonly Text[] => {
    if (index > 0 && places[index - 1] === place - 1) return [];
    let last = index;
    while (places[last + 1] === (places[last] ?? 0) + 1) last += 1;
    const [from, to] = [named[index]?.id ?? "", named[last]?.id ?? ""];
    return last - index > 1 ? [`${from} to ${to}`] : named.slice(index, last + 1).map(({ id }) => id);
  });
  return listed(ranges);
}
