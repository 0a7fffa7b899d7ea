// Does each raked side keep the code's rules of stairs and ramps, and can its bores be drilled?
import type { Job } from "../job/job.ts";
import { guardRules } from "../tables/limits.ts";
import type { Mm } from "../units/quantity.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import type { Check } from "./plan.ts";
import type { RakePlan } from "./rake-plan.ts";

export const rakeChecks = ({ rakes }: Pick<Checked, "rakes">, job: Job): readonly Check[] =>
  rakes.flatMap((rake) => [
    ...heightChecks(rake, job),
    ...openingChecks(rake, job),
    ...nosingChecks(rake, job),
    ...triangleChecks(rake, job),
    ...riserQuestion(rake, job),
  ]);

const surfaceOf = ({ kind }: RakePlan): string => (kind === "stair" ? "line of the nosings" : "surface of the ramp");

function heightChecks(rake: RakePlan, job: Job): readonly Check[] {
  const { sideId, opening, kind, guardHeight_min } = rake;
  const where = `side ${sideId}: top of the top rail, plumb above the ${surfaceOf(rake)}`;
  const common = { where, demand: opening.guardHeight, kind: "length" } as const;
  const height = limitCheck({
    ...common,
    id: `rake-height-${sideId}`,
    name: "Height of the guard on a rake",
    rule: "at least",
    limit: guardHeight_min,
    advice: "raise the top rail of the rake (frame: on rakes)",
  });
  if (kind === "ramp") return [height];
  if (!job.frame.railIsHandrail) return [height, ...handrailQuestion(rake, job)];
  const { low, high } = job.code.stairs.handrail;
  const name = "Height of a guard's top that is the stair's handrail";
  return [
    height,
    limitCheck({
      ...common,
      id: `rake-handrail-low-${sideId}`,
      name,
      rule: "at least",
      limit: low,
      advice: "raise the top rail of the stair",
    }),
    ...(high === null
      ? []
      : [
          limitCheck({
            ...common,
            id: `rake-handrail-high-${sideId}`,
            name,
            rule: "at most",
            limit: high,
            advice: "lower the top rail of the stair, or give the stair a handrail of its own",
          }),
        ]),
  ];
}

/** A flight that needs a handrail needs one beside a guard whose top is none. */
function handrailQuestion({ sideId, rise }: RakePlan, job: Job): readonly Check[] {
  const needed = guardRules(job.code)?.stairs.handrailNeeded;
  if (needed === undefined) return [];
  const from = "risers" in needed.value ? `a flight of ${needed.value.risers} or more risers` : "a stair of this rise";
  if ("rise" in needed.value && Math.abs(rise) < needed.value.rise) return [];
  return [
    question(`rake-handrail-${sideId}`, "Handrail of the stair", {
      source: needed.source,
      where: needed.where,
      advice: `${from} needs a handrail; the top rail is not held to be one (frame: handrail). Ask where the handrail goes.`,
    }),
  ];
}

function openingChecks({ sideId, gaps, openingSphere, kind }: RakePlan, job: Job): readonly Check[] {
  const clear = gaps.reduce((most, gap) => (gap.clear > most.clear ? gap : most));
  const spacing = gaps.reduce((most, gap) => (gap.spacing > most.spacing ? gap : most));
  const gap = job.frame.onRakes.gapBelow;
  return [
    limitCheck({
      id: `rake-opening-${sideId}`,
      name: "Clear opening square to the raked cables, at rest",
      where: `side ${sideId}: between ${clear.below} and ${clear.above}`,
      rule: "at most",
      demand: clear.clear,
      limit: openingSphere,
      kind: "length",
      advice: "set the cables closer",
    }),
    limitCheck({
      id: `rake-spacing-${sideId}`,
      name: "Spacing square to the raked cables after rounding",
      where: `side ${sideId}: between ${spacing.below} and ${spacing.above}`,
      rule: "at most",
      demand: spacing.spacing,
      limit: job.limits.cableSpacing_max,
      kind: "length",
      advice: "add a course",
    }),
    // Under the bottom rail of a stair lies the triangle.
    ...(kind === "stair" || job.frame.bottomRail === null
      ? []
      : [
          limitCheck({
            id: `rake-gap-below-${sideId}`,
            name: "Gap under the bottom rail of the ramp",
            where: `side ${sideId}: surface of the ramp to bottom rail, plumb`,
            rule: "at most",
            demand: gap.value,
            limit: job.code.openingSphere,
            kind: "length",
            advice: "lower the bottom rail",
          }),
        ]),
  ];
}

/** Without risers there is no triangle, and the gap between two treads is an opening of its own. */
function riserQuestion({ sideId, kind }: RakePlan, job: Job): readonly Check[] {
  const open = job.sides.find(({ id }) => id === sideId)?.rake?.openRisers;
  if (kind === "ramp" || open === false) return [];
  const advice = `${open === true ? "The risers are open" : "The job file does not say whether the risers are open (rake: open risers)"}: between open treads more than 30 in above the floor below a 4 in sphere must not pass, and with no riser there is no triangle. Ask which sphere must not pass there, and measure it.`;
  return [question(`rake-risers-${sideId}`, "Open risers", { source: "memory", where: "IRC R311.7.5.1, IBC 1011.5.5.3", advice })];
}

/** Where the code measures from the line of the nosings, what lies below it is no opening. */
function nosingChecks({ sideId, aboveNosings, openingSphere }: RakePlan, job: Job): readonly Check[] {
  if (aboveNosings === null || job.code.stairs.openingFrom === "steps") return [];
  return [
    limitCheck({
      id: `rake-nosings-${sideId}`,
      name: "Opening between the line of the nosings and the bottom rail",
      where: `side ${sideId}: square to the slope`,
      rule: "at most",
      demand: aboveNosings,
      limit: openingSphere,
      kind: "length",
      advice: "lower the bottom rail of the stair",
    }),
  ];
}

function triangleChecks({ sideId, kind, triangle }: RakePlan, job: Job): readonly Check[] {
  const { triangleSphere, openingSphere, openingFrom } = job.code.stairs;
  if (kind === "ramp" || (triangleSphere === null && openingFrom !== "steps")) return [];
  // Where the code names no size for the triangle, its opening rule holds there too.
  const limit = triangleSphere ?? openingSphere;
  const id = `rake-triangle-${sideId}`;
  if (triangle === null || triangle.under === "lowest cable") {
    const { source, where } = limit;
    const advice =
      triangle === null
        ? "Riser and tread are not given: measure the triangle of riser, tread and bottom rail on site, or give riser and tread in the job file."
        : "There is no bottom rail: ask whether the triangle's rule holds under a cable, and which sphere must not pass there.";
    return [question(id, "Triangle of riser, tread and bottom rail", { source, where, advice })];
  }
  return [
    limitCheck({
      id,
      name: "Triangle of riser, tread and bottom rail",
      where: `side ${sideId}: largest sphere that goes in`,
      rule: "at most",
      demand: triangle.sphere,
      limit,
      kind: "length",
      advice: triangleAdvice(triangle, limit.value),
    }),
  ];
}

/** A circle in a triangle grows with its height, r + g + n r / t; with the rail on the nosings g is nothing. */
function triangleAdvice({ riser, tread, nosing, gap, sphere }: NonNullable<RakePlan["triangle"]>, limit: Mm): string {
  const onNosings = riser + (nosing.value * riser) / tread;
  return (sphere * onNosings) / (onNosings + gap) <= limit
    ? "lower the bottom rail of the stair (frame: on rakes: gap below)"
    : "no rail keeps this sphere out at such steps, not even one that lies on the nosings: ask the authority which sphere must not go in there, and state it (code: stairs: triangle)";
}
