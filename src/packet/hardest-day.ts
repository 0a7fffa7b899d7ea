// On which day of the year do finished cables pull hardest, and by how much more than when they were tightened?
import type { RunClimate } from "../plan/climate-plan.ts";
import type { Plan } from "../plan/plan.ts";
import type { Text } from "./packet.ts";
import type { Show } from "./show-number.ts";

type Hardest = RunClimate["hardest"];

/** Of the run that gains most; null where no day adds anything. */
const hardestDay = ({ climate }: Pick<Plan, "climate">): Hardest | null =>
  climate.reduce<Hardest | null>((most, { hardest }) => (hardest.worst > (most?.worst ?? 0) ? hardest : most), null);

/** "at 14 deg F", for the head of a column; nothing where no day adds anything. */
export function hardestAt(plan: Pick<Plan, "climate">, show: Show): Text {
  const day = hardestDay(plan);
  return day === null ? "" : `at ${show.heat(day.temperature)}`;
}

/** Heat pulls the cables of a frame that grows more than they do. */
export function harderWhen({ climate, job: { site } }: Pick<Plan, "climate" | "job">): "cold" | "hot" {
  const day = hardestDay({ climate });
  return day !== null && day.temperature > site.reference.value ? "hot" : "cold";
}

/** What the checks are made with, and what an owner's gauge may show. */
export function hardestTexts({ climate, job: { site } }: Pick<Plan, "climate" | "job">, show: Show): readonly Text[] {
  const day = hardestDay({ climate });
  if (day === null) return [];
  const isCold = day.temperature < site.reference.value;
  return [
    `**${isCold ? "Cold" : "Heat"}:** cables that stand right at ${show.heat(site.reference.value)} pull up to ${show.forceUp(day.worst)} more at ${show.heat(day.temperature)}, the site's ${isCold ? "coldest" : "warmest"} day. Frame, washers and strand are checked with that pull, as if it stayed.`,
  ];
}
