// Do the spacers hold the code's load on the infill, on their face or through the cables beside them, and what must their fixings hold?
import type { Job } from "../job/job.ts";
import { simpleBeam, simpleBeamPart, simpleBeamPoints } from "../mechanics/beam.ts";
import type { NetSection } from "../mechanics/section.ts";
import { deflectionCheck, type Part, strengthCheck } from "../mechanics/strength-check.ts";
import type { LoadDuration } from "../tables/wood-factors.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { InfillLoad } from "./frame-check-guard.ts";
import type { CheckInput } from "./frame-check-loads.ts";
import { boresOfWorstCourse, netOf } from "./frame-check-net.ts";
import { askRow, limitRow, stressRow, worstOf } from "./frame-check-row.ts";
import type { Strength } from "./frame-check-strength.ts";
import { type Bent, shearOf, stressOf } from "./frame-check-stress.ts";
import { type FrameMember, spacerMember } from "./frame-members.ts";
import type { CheckPart, FrameCheck } from "./frame-plan.ts";
import type { Vertical } from "./plan.ts";
import { cablesUnder } from "./tensions.ts";

export interface LoadedSpacer {
  readonly spacer: Vertical;
  /** Between its fixings: from the bottom rail, or the datum without one, to the top rail. */
  readonly length: Mm;
  /** Of its bores over its foot. */
  readonly heights: readonly Mm[];
  /** At its bores, the same at every course. */
  readonly net: NetSection;
}

export interface SpacerQuestion {
  readonly spacers: readonly LoadedSpacer[];
  readonly member: FrameMember;
  readonly strength: (load: LoadDuration) => Strength | null;
  readonly infill: InfillLoad;
}

export function loadedSpacers({ verticals, bores, sides, opening, rakes, job }: CheckInput): readonly LoadedSpacer[] {
  const { section } = spacerMember(job);
  const worst = boresOfWorstCourse({ bores });
  return verticals
    .filter(({ kind }) => kind === "spacer")
    .map((spacer): LoadedSpacer => {
      const own = rakes.find(({ sideId }) => sideId === sides[spacer.sideIndex]?.id)?.opening ?? opening;
      const heights = bores.filter(({ verticalId }) => verticalId === spacer.id).map(({ height }) => height - own.bottom);
      const net = netOf(section, worst.get(spacer.id) ?? [], job.spacers.section);
      return { spacer, length: own.top - own.bottom, heights: heights.sort((a, b) => a - b), net };
    });
}

/** What one spacer bears of the load. */
export interface SpacerDemand {
  readonly moment: number;
  /** Of the fixing that the load reaches. */
  readonly reaction: Newton;
  /** Height over which the load stands. */
  readonly width: Mm;
  /** Cables that share it. */
  readonly count: number;
}

/**
 * All of the load comes to one spacer: spread over its face, or on the cables that cross its square right beside it, which press sideways on
 * their bores. Whatever stands between, its middle lies half of the square off a fixing at least.
 */
export function spacerDemand({ length, heights }: LoadedSpacer, { force, side }: InfillLoad): SpacerDemand {
  const width = Math.min(side, length);
  const part = simpleBeamPart({ length, load: force, width });
  const count = Math.min(heights.length, cablesUnder(side, widestGap(heights)));
  return { moment: Math.max(part.moment, momentByCables(heights, { length, force, count })), reaction: part.reaction, width, count };
}

/** The fewest cables cross the square where they lie farthest apart. */
const widestGap = (heights: readonly Mm[]): Mm => Math.max(0, ...heights.slice(1).map((height, index) => height - (heights[index] ?? 0)));

/** Greatest moment of a spacer under a load that neighbouring cables share, at any height. */
export const momentByCables = (
  heights: readonly Mm[],
  { length, force, count }: { readonly length: Mm; readonly force: Newton; readonly count: number },
): number =>
  count === 0
    ? 0
    : Math.max(
        ...heights
          .slice(0, heights.length - count + 1)
          .map((_, first) => simpleBeamPoints({ length, load: force / count, places: heights.slice(first, first + count) }).moment),
      );

const NAMES = { x: "along", y: "square" } as const;

export function spacerRows(question: SpacerQuestion, job: Job): readonly FrameCheck[] {
  const { infill } = question;
  const strength = question.strength(infill.duration);
  return [
    ...(strength === null ? askRows(question) : [...bendingRows(question, strength), ...shearRows(question, strength)]),
    ...deflectionRows(question, job),
    ...fixingRows(question, job),
  ];
}

const whereOf = (kind: string, name: string, { spacer }: LoadedSpacer, { infill }: SpacerQuestion) =>
  ({ id: `spacer-${kind}-${spacer.id}`, name, member: spacer.id, height: null, loads: infill.text }) as const;

const LARGER = "Use larger spacers, deeper square to the guard (spacers: size).";

const loadParts = (force: Newton, { length }: LoadedSpacer, { width }: SpacerDemand): readonly CheckPart[] => [
  { name: "P", value: force, unit: "N" },
  { name: "L", value: length, unit: "mm" },
  { name: "w", value: width, unit: "mm" },
];

export const spacerBent = ({ length, net }: LoadedSpacer, { moment }: Pick<SpacerDemand, "moment">): Bent => ({
  force: 0,
  moment: { x: 0, y: moment },
  modulus_mm3: { x: net.x.modulus_mm3, y: net.y.modulus_mm3 },
  free: { length, bends: "any other" },
  names: NAMES,
});

function bendingRows(question: SpacerQuestion, strength: Strength): readonly FrameCheck[] {
  const { infill } = question;
  const worst = worstOf(question.spacers, (one) => spacerDemand(one, infill).moment / one.net.y.modulus_mm3);
  if (worst === undefined) return [];
  const demand = spacerDemand(worst, infill);
  const where = { ...whereOf("bending", "bending of spacers by the load on the infill", worst, question), advice: LARGER };
  return [stressRow(where, stressOf(strength, spacerBent(worst, demand)), loadParts(infill.force, worst, demand))];
}

function shearRows(question: SpacerQuestion, strength: Strength): readonly FrameCheck[] {
  const { infill } = question;
  const worst = worstOf(question.spacers, (one) => spacerDemand(one, infill).reaction / one.net.area_mm2);
  if (worst === undefined) return [];
  const demand = spacerDemand(worst, infill);
  const sheared = shearOf(strength, { force: demand.reaction, netArea_mm2: worst.net.area_mm2, axis: "y" });
  const where = { ...whereOf("shear", "shear of spacers by the load on the infill", worst, question), advice: LARGER };
  return [stressRow(where, sheared, loadParts(infill.force, worst, demand))];
}

/** As though all of it stood at mid-height: on the safe side. */
function deflectionRows(question: SpacerQuestion, job: Job): readonly FrameCheck[] {
  const { infill, member } = question;
  const worst = worstOf(question.spacers, ({ length }) => length);
  if (worst === undefined) return [];
  const { length } = worst;
  const EI = member.modulus.value * member.section.y.inertia_mm4;
  const { deflection } = simpleBeam({ length, load: infill.force, at: length / 2, EI });
  const { deflectionShare_max } = job.limits;
  const parts: readonly Part[] = [
    { name: "P", value: infill.force, unit: "N" },
    { name: "L", value: length, unit: "mm" },
  ];
  const check = { ...deflectionCheck({ deflection, limit: deflectionShare_max.value * length }), parts };
  const where = { ...whereOf("deflection", "deflection of spacers by the load on the infill", worst, question), advice: LARGER };
  return [limitRow(where, { ...deflectionShare_max, check, unit: "mm", formula: "P L^3 / (48 E I) <= share of L", factors: [] })];
}

const REACTION = "V = P (1 - w / (2 L))";

/** How the row begins of what the fixings of spacers must hold. */
export const FIXING = "spacer-fixing-";

/** The load with its edge at a fixing: most of it comes there. */
function fixingRows(question: SpacerQuestion, job: Job): readonly FrameCheck[] {
  const { infill } = question;
  const worst = worstOf(question.spacers, (one) => spacerDemand(one, infill).reaction);
  if (worst === undefined) return [];
  const demand = spacerDemand(worst, infill);
  const parts = loadParts(infill.force, worst, demand);
  const where = whereOf("fixing", "fixings of spacers, each end", worst, question);
  const capacity = job.spacers.fixing;
  if (capacity !== null) {
    return [
      limitRow(
        { ...where, advice: "Use a stronger fixing at both ends of each spacer, and write what it holds (spacers: fixing capacity)." },
        {
          ...capacity,
          check: strengthCheck({ demand: demand.reaction, capacity: capacity.value }, parts),
          unit: "N",
          formula: `${REACTION} <= capacity of a fixing`,
          factors: [],
        },
      ),
    ];
  }
  return [
    askRow(
      {
        ...where,
        advice:
          "Fix each end so that it holds at least the demand, pushed square to the guard. Compare it with what the fixing carries by its own report, and write that as fixing capacity under spacers.",
      },
      { source: "derived", where: "a demand without a capacity", demand: demand.reaction, unit: "N", formula: REACTION, parts },
    ),
  ];
}

function askRows(question: SpacerQuestion): readonly FrameCheck[] {
  const { infill } = question;
  const worst = worstOf(question.spacers, (one) => spacerDemand(one, infill).moment);
  if (worst === undefined) return [];
  const demand = spacerDemand(worst, infill);
  return [
    askRow(
      {
        ...whereOf("ask", "bending of spacers by the load on the infill", worst, question),
        advice:
          "No design values stand here for spacers of this size: use a piece of at least 1-1/2 in each way, or have a licensed engineer compare the demand with what it carries.",
      },
      {
        source: "nds-design-values",
        where: "tables 4A, 4B and 4D",
        demand: demand.moment,
        unit: "N mm",
        formula: "M, to be carried by a spacer",
        parts: [{ name: "M", value: demand.moment, unit: "N mm" }, ...loadParts(infill.force, worst, demand)],
      },
    ),
  ];
}
