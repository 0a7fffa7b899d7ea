// Does the wood at the mouths of bores bear the push of the cables that bend there, and do the bushings?
import type { Job } from "../job/job.ts";
import { atAngleToGrain, type Mouths, plugCapacity, pressedSide, type Slants, SQUARE } from "../mechanics/mouth-bearing.ts";
import { roundTube } from "../mechanics/section.ts";
import type { Cited } from "../sources/cited.ts";
import { alloys } from "../tables/metal.ts";
import { metalBasis } from "../tables/metal-strength.ts";
import { bushingBears_diameters, strandBears_diameters } from "../tables/practice.ts";
import { angleDegrees, length } from "../units/print.ts";
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import { type Bending, type BendMouth, bendMouths } from "./bend-mouths.ts";
import { bearingAcross, bearingAlong, leastAcross } from "./check-bearing.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import { hardestPull } from "./check-tension.ts";
import { alloyOf, designWall } from "./frame-members.ts";
import type { Check, Run } from "./plan.ts";

export const bendChecks = (plan: Checked, job: Job): readonly Check[] =>
  plan.runs.flatMap((run) => {
    const mouths = bendMouths(plan, run, job);
    const pull = hardestPull(plan, run);
    return [...woodCheck(run, mouths, pull, job), ...bushingCheck(run, mouths, pull, job)];
  });

/** What the wood at a mouth may be pressed with, and over how much of it what lies in it presses. */
export interface MouthBearing {
  /** Across the grain, and along it where there are design values; all factors but those of the length and of buckling. */
  readonly across: Cited<Megapascal>;
  readonly along: Cited<Megapascal> | null;
  /** In the way of the push. */
  readonly pressure: Megapascal;
  readonly diameter: Mm;
  readonly length: Mm;
  /** That a tube takes [N mm]; infinite for what is short enough to stay straight. */
  readonly moment_Nmm: number;
  /** What the cable may press with. */
  readonly capacity: Cited<Newton>;
}

/** Null in metal, where the wall bears more than the bushing. */
export function mouthBearing(mouth: BendMouth, job: Job): MouthBearing | null {
  const { member, section, toGrain, lining } = mouth;
  if (section.material !== "wood") return null;
  const across = member.kind === "spacer" ? leastAcross(job) : bearingAcross(member.id, job);
  const along = member.kind === "spacer" ? null : bearingAlong(member.id, job);
  const pressure = along === null ? across.value : atAngleToGrain({ along: along.value, across: across.value, angle: toGrain });
  const plug = plugOf(mouth, job);
  // Strand is no plug: it lies on the wood and cannot turn in it.
  const value = lining === "bare strand" ? pressure * plug.diameter * plug.length : plugCapacity({ pressure, ...plug });
  const where = `${across.where}${grainWords(mouth, along)}; ${plugWords[lining]}${slantWords(mouth)}`;
  return { across, along, pressure, ...plug, capacity: { ...across, value, where } };
}

/** Over what is pressed, behind the source of the pressure. */
const plugWords: Readonly<Record<BendMouth["lining"], string>> = {
  "bare strand": "on its diameter x 2 of them (practice)",
  bushing: "on 0.41 of diameter x length: loaded at its mouth a bushing turns (derived)",
  tube: "as far as a tube that is loaded at its mouth neither turns nor bends (derived)",
};

/** Behind how what lies in the bore is pressed: on the mitre its ends are not square. */
function slantWords({ lining, slants }: BendMouth): string {
  if (slants.near <= 0 || slants.far <= 0) return "";
  if (lining === "bushing") return "; on the mitre it lies in as far as wood holds it all round (derived)";
  return lining === "tube" ? "; its ends are cut for the mitre, and the cable presses on its shorter side (derived)" : "";
}

/** The chain along the grain without its table, which is that of the value across it. */
function grainWords({ toGrain }: BendMouth, along: Cited<Megapascal> | null): string {
  if (along === null || Math.abs(toGrain - Math.PI / 2) < 1e-9) return "";
  return `; ${along.where.split(", ").at(-1)}; ${angleDegrees(toGrain)} to it, NDS 2018, eq. 3.10-1 (from memory)`;
}

/** What is short enough to stay straight, as it is bought. */
const STIFF = { moment_Nmm: Number.POSITIVE_INFINITY, slants: SQUARE } as const;

interface Plug extends Pick<MouthBearing, "diameter" | "length" | "moment_Nmm"> {
  readonly mouths: Mouths;
  readonly slants: Slants;
}

function plugOf({ lining, through, mouths, slants }: BendMouth, job: Job): Plug {
  const { bushing, bushingBore } = job.fittings;
  const diameter = lining === "bare strand" ? job.cable.diameter : bushingBore.value;
  switch (lining) {
    case "bare strand":
      return { diameter, length: strandBears_diameters.value * diameter, mouths: 1, ...STIFF };
    case "bushing":
      // Each mouth has a bushing of its own, its ends square: on the mitre it goes in as far as wood holds it all round.
      return {
        diameter,
        length: Math.min(
          bushing.length.value,
          bushingBears_diameters.value * diameter,
          pressedSide({ diameter, length: through, slants }) / mouths,
        ),
        mouths: 1,
        ...STIFF,
      };
    case "tube":
      return { diameter, length: through, mouths, moment_Nmm: tubeMoment(job), slants };
  }
}

/** Moment that the tube round the bushings may take for good. */
export function tubeMoment({ fittings: { bushing, bushingBore } }: Job): number {
  if (bushing.tubeWall === null) throw new RangeError("bushings without a tube");
  const wall = designWall("stainless", bushing.tubeWall.value);
  const { yieldStress } = alloys[alloyOf.stainless];
  return (roundTube({ outside: bushingBore.value, wall }).x.modulus_mm3 * yieldStress.value) / metalBasis.stainless.yieldSafety.value;
}

interface Loaded {
  readonly mouth: BendMouth;
  readonly capacity: Cited<Newton>;
}

const loadedIn = (mouths: readonly BendMouth[], job: Job): readonly Loaded[] =>
  mouths.flatMap((mouth) => {
    const bearing = mouthBearing(mouth, job);
    return bearing === null ? [] : [{ mouth, capacity: bearing.capacity }];
  });

/** Computed values that differ by less than this share are one: the first of them is named. */
const SAME_share = 1e-9;

const worstOf = (mouths: readonly Loaded[]): Loaded | undefined =>
  mouths.reduce<Loaded | undefined>(
    (worst, one) => (worst === undefined || ratioOf(one) > ratioOf(worst) * (1 + SAME_share) ? one : worst),
    undefined,
  );

/** Of what is allowed there, for each newton at the nut. */
const ratioOf = ({ mouth, capacity }: Loaded): number => mouth.pushShare / capacity.value;

/** The mouth of a run whose wood is used most. */
export const worstMouth = (plan: Bending, run: Run, job: Job): Loaded | undefined => worstOf(loadedIn(bendMouths(plan, run, job), job));

/** An "ask" above 1: wood that is pressed in lets the cable slacken; other bushings are chosen before anything is bored. */
function woodCheck(run: Run, mouths: readonly BendMouth[], pull: Newton, job: Job): readonly Check[] {
  const loaded = loadedIn(mouths, job);
  const worst = worstOf(loaded);
  if (worst === undefined) return [];
  const { mouth, capacity } = worst;
  const push = pull * mouth.pushShare;
  const beyond = loaded.filter((one) => pull * ratioOf(one) > 1).map((one) => one.mouth.member.id);
  const check = limitCheck({
    id: `bend-${run.id}`,
    name: `Push of a cable on the wood at the mouth of a bore where it bends${mouth.lining === "bare strand" ? ", bare strand" : ""}`,
    where: `${mouth.member.id}, ${run.id}`,
    rule: "at most",
    demand: push,
    limit: capacity,
    kind: "force",
    advice: `${beyondWords(beyond)}${remedyWords(mouth, push, job)}`,
  });
  return [check.verdict === "fail" ? { ...check, verdict: "ask" } : check];
}

const beyondWords = (ids: readonly string[]): string =>
  `the wood may be crushed at ${[...new Set(ids)].join(", ")} and the cable slacken: `;

function remedyWords(mouth: BendMouth, push: Newton, job: Job): string {
  const others = "or lower the tension (shorter spans); or end the runs there";
  switch (mouth.lining) {
    case "bare strand":
      return `let bushings go in at smaller bends too (fittings: bushing angle); ${others}`;
    case "tube":
      return `use a tube of a larger diameter or wall round the bushings; ${others}`;
    case "bushing": {
      const needed = neededBushing(mouth, push, job);
      const size = (mm: Mm): string => length(mm, { units: job.units, step: 1 / 16 });
      const tube =
        "set the bushings in a stainless tube right through the bore (fittings: bushing: tube wall, and its outside as bushing bore)";
      return needed === null
        ? `no plastic bushing does here: ${tube}; ${others}`
        : `use bushings at least ${size(needed)} across and ${size(bushingBears_diameters.value * needed)} long; or ${tube}; ${others}`;
    }
  }
}

/** A wider bore is no bore of a post. */
const WIDEST_share = 1 / 4;
const SIZE_STEP_mm = { inch: 25.4 / 16, mm: 1 } as const;

/** Diameter of a plastic bushing, as long as it bears, that the wood holds; null where none fits the post. */
function neededBushing(mouth: BendMouth, push: Newton, job: Job): Mm | null {
  const pressure = mouthBearing(mouth, job)?.pressure ?? 0;
  const step = SIZE_STEP_mm[job.units];
  for (let diameter = step; diameter <= WIDEST_share * mouth.section.across; diameter += step) {
    const plug = {
      pressure,
      diameter,
      length: bushingBears_diameters.value * diameter,
      mouths: 1,
      ...STIFF,
    } as const;
    if (diameter >= job.fittings.bushingBore.value && plugCapacity(plug) >= push) return diameter;
  }
  return null;
}

/** Bushings that bear by their rating: all in metal, and any that is rated. */
const ratedMouths = (mouths: readonly BendMouth[], job: Job): readonly BendMouth[] =>
  mouths.filter(({ lining, section }) => lining !== "bare strand" && (section.material !== "wood" || job.fittings.bushing.rated !== null));

function bushingCheck(run: Run, mouths: readonly BendMouth[], pull: Newton, job: Job): readonly Check[] {
  const [first, ...others] = ratedMouths(mouths, job);
  if (first === undefined) return [];
  const hardest = others.reduce((most, one) => (one.pushShare > most.pushShare * (1 + SAME_share) ? one : most), first);
  const common = { id: `bushing-${run.id}`, where: `${hardest.member.id}, ${run.id}` };
  const demand = pull * hardest.pushShare;
  const { rated } = job.fittings.bushing;
  if (rated === null) {
    return [
      {
        ...question(common.id, "Working load of the bushings where a cable bends", {
          source: "derived",
          where: "what plastic between strand and metal bears for good is not computed",
          advice: "ask their maker for it and write it as rated: and rated by: under fittings: bushing",
        }),
        ...common,
        demand: { value: demand, kind: "force" },
      },
    ];
  }
  const name = "Push of a cable on its bushing where it bends, as rated";
  const advice = "use bushings that are rated for it, lower the tension, or end the runs there";
  return [limitCheck({ ...common, name, rule: "at most", demand, limit: rated, kind: "force", advice })];
}

/** Pull at the nut of a run that the wood at its bends bears, and its bushings; null where it does not bend. */
export function leastBend(plan: Bending, run: Run, job: Job): Cited<Newton> | null {
  const mouths = bendMouths(plan, run, job);
  const { rated } = job.fittings.bushing;
  const bushed = rated === null ? [] : ratedMouths(mouths, job).map((mouth) => ({ mouth, capacity: rated }));
  const worst = worstOf([...loadedIn(mouths, job), ...bushed]);
  return worst === undefined ? null : { ...worst.capacity, value: 1 / ratioOf(worst) };
}
