// What do warmth, drying and bedding-in take from each run, and what is read on another day?
import type { Job } from "../job/job.ts";
import type { FloorMaterial } from "../job/site.ts";
import { closingByShrinkage, isEvenChange, sizeChange } from "../mechanics/settling.ts";
import { nutTurns } from "../mechanics/stretch.ts";
import { type ChangedTensions, changedTensions, closingByTemperature, dayTargets, type StandingCables } from "../mechanics/temperature.ts";
import { type Cited, cite } from "../sources/cited.ts";
import { expansions, type ShrinkingWood, woodShrinkage } from "../tables/shrinkage.ts";
import type { WoodSpecies } from "../tables/timber-strength.ts";
import type { Celsius, Mm, Newton } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import type { DayReading, Loss, RunClimate } from "./climate-plan.ts";
import { isOnFace } from "./face-end.ts";
import type { FrameGroup } from "./frames.ts";
import type { RunEnd } from "./plan.ts";

/** The wood of the shrinkage table that stands for a group of species: of several, one that shrinks much. */
const shrinkingAs: Readonly<Record<WoodSpecies, ShrinkingWood>> = {
  "Douglas Fir-Larch": "Douglas-fir, coast",
  "Hem-Fir": "western hemlock",
  "Spruce-Pine-Fir": "western hemlock",
  "Southern Pine": "loblolly pine",
  Redwood: "redwood, young growth",
  "Western Cedars": "western redcedar",
};

/** Further bedding-in of a strand that has been tightened once. */
const LATER_BEDDING: Cited<number> = cite(0.00015, "en-1993-1-11", "3.2.2(3), note 1: 0.15 mm/m, as a public validation note quotes it");

/** A post stays where it stands and shrinks to its middle: half of it moves the anchor. */
const ANCHOR_share = 0.5;
/** Days are printed at so many temperatures over the site's range. */
const DAY_count = 7;

const growingOf = (material: FloorMaterial): Cited<number> => expansions[material === "wood" ? "wood along the grain" : material];

/** The cables of a group as they stand at given pulls at their nuts. */
export function standing(group: FrameGroup, pulls: readonly Newton[]): StandingCables {
  const lengths = group.runs.flatMap((run) => group.courses.map(() => run.pathLength));
  return {
    flexibility: group.flexibility,
    cables: group.cableFlexibility.map((own, index) => {
      const length = lengths[index] ?? 0;
      return { length, stiffness: length / own, tension: pulls[index] ?? 0 };
    }),
  };
}

interface Causes {
  readonly stand: StandingCables;
  readonly expansion_perC: number;
  readonly closingAt: (warmer: Celsius) => readonly Mm[];
  readonly drying: readonly Mm[];
  readonly bedding: readonly Mm[];
  /** Of each run. */
  readonly shrinkage: readonly EndShrinkage[];
  readonly wood: RunClimate["wood"];
  readonly expansion: RunClimate["expansion"];
}

function causesOf(group: FrameGroup, targets: readonly Newton[], job: Job): Causes {
  const pulls = targets.flatMap((target) => group.courses.map(() => target));
  const expansion = {
    strand: expansions["stainless strand"],
    deck: growingOf(job.site.floor?.value ?? job.posts.section.material),
    rail: growingOf(job.frame.topRail.material),
  };
  const dry = dryingOf(job);
  const shrinkage = group.runs.map((run): EndShrinkage => {
    // A screw in the face holds about the middle of its post, which does not move as the post shrinks.
    const ofEnd = (end: RunEnd): Mm => (isOnFace(end) ? 0 : shrunk(sectionOfPost(job, end.postId).along, dry));
    const [left, right] = [ofEnd(run.left), ofEnd(run.right)];
    return { left, right, closing: closingByShrinkage([left, right].map((each) => ({ shrinkage: each, share: ANCHOR_share }))) };
  });
  return {
    stand: standing(group, pulls),
    expansion_perC: expansion.strand.value,
    closingAt: (warmer) =>
      closingByTemperature({
        warmer,
        expansion_deck_perC: expansion.deck.value,
        expansion_rail_perC: expansion.rail.value,
        perDeckStrain: group.perDeckStrain,
        perRailStrain: group.perRailStrain,
      }),
    drying: shrinkage.flatMap(({ closing }) => group.courses.map(() => closing)),
    bedding: group.runs.flatMap((run) => group.courses.map(() => LATER_BEDDING.value * run.pathLength)),
    shrinkage,
    wood: dry?.wood ?? null,
    expansion,
  };
}

/** Which loss a target makes up for: on the day that slackens most, whichever it is. */
const coveredLoss = { "heat and settling": "both", heat: "weather", nothing: null } as const;

/** What of the losses the targets make up for, one for each run: the `covered` of climateOf without all the rest. */
export function coveredOf(group: FrameGroup, targets: readonly Newton[], job: Job): readonly Newton[] {
  const which = coveredLoss[job.tightening.allowFor.value];
  if (which === null) return group.runs.map(() => 0);
  const causes = causesOf(group, targets, job);
  const { reference, coldest, warmest } = job.site;
  const days = [warmest, coldest].map(({ value }) => changed(causes, value - reference.value, which === "both").changes);
  const count = group.courses.length;
  return group.runs.map((_, index) => {
    const each = days.flatMap((changes) => changes.slice(index * count, (index + 1) * count).map((change) => 0 - change));
    return Math.max(0, ...each);
  });
}

/** Losses and day readings of every run of a group whose nuts stand at `targets`, one for each run. */
export function climateOf(group: FrameGroup, targets: readonly Newton[], job: Job): readonly RunClimate[] {
  const count = group.courses.length;
  const causes = causesOf(group, targets, job);
  const { expansion } = causes;
  const { reference, coldest, warmest, nextVisit_months } = job.site;
  const hot = changed(causes, warmest.value - reference.value, false);
  const cold = changed(causes, coldest.value - reference.value, false);
  const dry = changed(causes, 0, true);
  const hotAndDry = changed(causes, warmest.value - reference.value, true);
  const coldAndDry = changed(causes, coldest.value - reference.value, true);
  const days = dayReadings(causes, job);
  return group.runs.map((run, index): RunClimate => {
    const of = <T>(list: readonly T[]): readonly T[] => list.slice(index * count, (index + 1) * count);
    const loss = ({ changes, tensions }: ChangedTensions): Loss => {
      const each = of(changes).map((change) => 0 - change);
      return {
        worst: Math.max(...each),
        each,
        slackCourses: of(tensions).flatMap((tension, course) => (tension === 0 ? [course + 1] : [])),
      };
    };
    const ends = [run.left, run.right].filter((end) => end.pulls).length;
    const bedding = LATER_BEDDING.value * run.pathLength;
    const { pitch } = job.fittings.stud;
    const shrinkage = causes.shrinkage[index] ?? { left: 0, right: 0, closing: 0 };
    const travelPerEnd = (shrinkage.closing + bedding) / ends;
    const [heat, chill, inHeat, inCold] = [loss(hot), loss(cold), loss(hotAndDry), loss(coldAndDry)];
    // Heat slackens a strand of steel in wood or steel, cold one in a frame of aluminium, which shrinks more than it does.
    const isCold = inCold.worst > inHeat.worst;
    const losses = { heat, cold: chill, settling: loss(dry), both: isCold ? inCold : inHeat };
    const which = coveredLoss[job.tightening.allowFor.value];
    const lost = { both: losses.both.worst, weather: Math.max(heat.worst, chill.worst) };
    return {
      runId: run.id,
      ...losses,
      slackest: { temperature: isCold ? coldest.value : warmest.value },
      hardest: hardestOf(losses, job),
      covered: which === null ? 0 : Math.max(0, lost[which]),
      days: days.map(({ temperature, each }): DayReading => {
        const own = of(each);
        return { temperature, each: own, low: Math.min(...own), high: Math.max(...own) };
      }),
      shrinkage,
      bedding,
      visit: { months: nextVisit_months.value, turnsPerEnd: nutTurns({ travel: travelPerEnd, pitch: pitch.value }), travelPerEnd },
      expansion,
      wood: causes.wood,
      beddingShare: LATER_BEDDING,
    };
  });
}

/** Cold pulls a strand of steel in wood or steel, heat one in a frame of aluminium; each cable by itself, as a deck and a rail may differ. */
function hardestOf({ cold, heat }: Pick<RunClimate, "cold" | "heat">, { site }: Job): RunClimate["hardest"] {
  const gains = (loss: Loss): readonly Newton[] => loss.each.map((lost) => Math.max(0, 0 - lost));
  const [inCold, inHeat] = [gains(cold), gains(heat)];
  const each = inCold.map((gain, index) => Math.max(gain, inHeat[index] ?? 0));
  const isHot = Math.max(...inHeat) > Math.max(...inCold);
  return { each, worst: Math.max(...each), temperature: isHot ? site.warmest.value : site.coldest.value };
}

/** Tensions after a change of warmth, with or without drying and bedding-in. */
function changed({ stand, expansion_perC, closingAt, drying, bedding }: Causes, warmer: Celsius, settles: boolean): ChangedTensions {
  const closing = closingAt(warmer).map((nearer, index) => nearer + (settles ? (drying[index] ?? 0) : 0));
  return changedTensions(stand, { warmer, expansion_perC, closing, ...(settles ? { lengthening: bedding } : {}) });
}

function dayReadings(
  { stand, expansion_perC, closingAt }: Causes,
  job: Job,
): readonly { readonly temperature: Celsius; readonly each: readonly Newton[] }[] {
  const { reference, coldest, warmest } = job.site;
  const step = (warmest.value - coldest.value) / (DAY_count - 1);
  const temperatures = Array.from({ length: DAY_count }, (_, index) => coldest.value + index * step);
  const days = temperatures.map((temperature) => {
    const warmer = temperature - reference.value;
    return { warmer, closing: closingAt(warmer) };
  });
  return dayTargets(stand, days, expansion_perC).map(({ targets }, index) => ({ temperature: temperatures[index] ?? 0, each: targets }));
}

type EndShrinkage = RunClimate["shrinkage"];

interface Drying {
  readonly wood: NonNullable<RunClimate["wood"]>;
  readonly coefficient: number;
}

/** What the wood of the posts dries by; across the year rings or along them, whichever is more. null for metal. */
function dryingOf({ posts, site }: Job): Drying | null {
  if (posts.wood === null) return null;
  const name = shrinkingAs[posts.wood.value.species];
  const { shrinkage_percent, coefficient } = woodShrinkage[name];
  const [from_percent, to_percent] = [site.moistureAtFitting_percent.value, site.moistureInService_percent.value];
  return {
    wood: {
      name,
      shrinkage_percent: shrinkage_percent.tangential,
      changeShare: isEvenChange(from_percent, to_percent) ? coefficient.tangential : null,
      from_percent,
      to_percent,
    },
    coefficient: coefficient.tangential.value,
  };
}

/** How much a post shrinks along the cable while it dries. */
function shrunk(size: Mm, dry: Drying | null): Mm {
  if (dry === null) return 0;
  const { shrinkage_percent, from_percent, to_percent } = dry.wood;
  const change = sizeChange({
    size,
    moisture_from_percent: from_percent,
    moisture_to_percent: to_percent,
    shrinkage_percent: shrinkage_percent.value,
    coefficient: dry.coefficient,
  });
  return Math.max(0, 0 - change);
}
