// What stands on a side that slopes: its opening, gaps, the triangle at riser and tread, and what of it cannot be built?
import { circleInStep } from "../geometry/space.ts";
import type { Job } from "../job/job.ts";
import type { Rake } from "../job/slope.ts";
import type { JobPath, Problem } from "../problem/problem.ts";
import { angleDegrees, length } from "../units/print.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { alongSlope } from "./corner-path.ts";
import { gapsOf } from "./gaps.ts";
import type { Course, SidePlan } from "./plan.ts";
import type { Opening, RakePlan, Triangle } from "./rake-plan.ts";

export function levelOpening({ frame }: Job): Opening {
  const bottom = frame.gapBelow + (frame.bottomRail?.depth ?? 0);
  const top = bottom + frame.clearOpening;
  return { bottom, top, guardHeight: top + frame.topRail.depth };
}

/** A rail's depth is square to the rake; plumb it takes up more. Without a clear opening of its own the rake's top is as high as the level one. */
export function openingOnRake(slope: Radian, job: Job): Opening {
  const { onRakes, bottomRail, topRail } = job.frame;
  const bottom = onRakes.gapBelow.value + alongSlope(bottomRail?.depth ?? 0, slope);
  const rail = alongSlope(topRail.depth, slope);
  const top = onRakes.clearOpening === null ? levelOpening(job).guardHeight - rail : bottom + onRakes.clearOpening.value;
  return { bottom, top, guardHeight: top + rail };
}

export function rakeOf(
  {
    side,
    opening,
    cosine,
    courses,
    leads,
  }: {
    readonly side: SidePlan;
    readonly opening: Opening;
    readonly cosine: number;
    readonly courses: readonly Course[];
    readonly leads: boolean;
  },
  job: Job,
): RakePlan {
  const rake = job.sides[side.index]?.rake;
  if (rake == null) throw new RangeError(`side ${side.id} slopes without a rake`);
  const isStair = rake.kind === "stair";
  return {
    sideId: side.id,
    kind: rake.kind,
    givenAs: rake.givenAs,
    slope: side.slope,
    rise: side.datum_to - side.datum_from,
    slopeLength: alongSlope(side.length, side.slope),
    opening,
    leads,
    gaps: gapsOf(courses, { opening, cosine }, job),
    triangle: isStair ? triangleOf(rake, courses, job) : null,
    aboveNosings: isStair && job.frame.bottomRail !== null ? job.frame.onRakes.gapBelow.value * cosine : null,
    openingSphere: isStair ? job.code.stairs.openingSphere : job.code.openingSphere,
    guardHeight_min: isStair ? job.code.stairs.guardHeight_min : job.code.rampHeight_min,
  };
}

/** The riser stands back under the nosing by n: as if the line above lay higher by n r / t. The edge of the tread above is not counted on. */
function triangleOf({ step, slope, nosing }: Rake, courses: readonly Course[], job: Job): Triangle | null {
  if (step === null) return null;
  const { riser, tread } = step;
  const hasRail = job.frame.bottomRail !== null;
  const lowest = (courses[0]?.height ?? 0) - alongSlope(job.cable.diameter / 2, slope);
  const gap = hasRail ? job.frame.onRakes.gapBelow.value : lowest;
  const size = { rise: riser, going: tread };
  const limit = job.code.stairs.triangleSphere;
  const back = (nosing.value * riser) / tread;
  // The circle grows with the height of the triangle: r + g + n r / t.
  const gap_max = limit === null ? null : limit.value / (circleInStep(size, 0) / riser) - riser - back;
  const under = hasRail ? "bottom rail" : "lowest cable";
  return { riser, tread, nosing, gap, under, sphere: circleInStep(size, gap + back), gap_max };
}

/** Least plumb distance from a rail's face to the middle of the cable next to it: the bore must not cut the rail's edge. */
export const railRoom = (job: Job): Mm => Math.max(job.fittings.passBore.value, job.fittings.bushingBore.value) / 2;

export function rakeProblems({ sideId, opening, gaps, openingSphere, slope }: RakePlan, job: Job): readonly Problem[] {
  const tape = { units: job.units, style: "tape" } as const;
  const index = job.sides.findIndex(({ id }) => id === sideId);
  const path = ["guard", "sides", index, "rake"];
  const room = alongSlope(railRoom(job), slope);
  const [low, high] = [gaps[0], gaps.at(-1)];
  const tight = [low, high].find((gap) => gap !== undefined && gap.plumb < room);
  if (opening.top <= opening.bottom || tight !== undefined) {
    const between = tight === undefined ? "its rails" : `${tight.below} and ${tight.above}`;
    return [
      {
        severity: "error",
        path,
        what: `on side ${sideId} there is no room between ${between}: at ${angleDegrees(Math.abs(slope))} its rails take up more of the height than level ones, and the courses keep their heights`,
        fix: `give the raked frame its own heights under frame: on rakes (now ${length(opening.bottom, tape)} to ${length(opening.top, tape)}, plumb), or a rail of less depth`,
      },
    ];
  }
  const widest = Math.max(...gaps.map((gap) => gap.clear));
  if (widest < openingSphere.value) return [];
  return [
    {
      severity: "error",
      path: spacingPath(job),
      what: `a clear gap of ${length(widest, tape)} on side ${sideId} lets the sphere of ${length(openingSphere.value, tape)} through before any cable moves`,
      fix: "give a smaller `largest cable spacing` under limits; at most 3 in is customary for the 4 in sphere (common practice, no source)",
    },
  ];
}

/** Where a spacing stands that lets a sphere through: its own line, or where the opening comes from if the job leaves the spacing to custom. */
export const spacingPath = ({ limits }: Job): JobPath =>
  limits.cableSpacing_max.source === "job" ? ["limits", "largest cable spacing"] : ["code", "opening"];

/** The rails of a rake lie so far from those of the level sides that no number of courses fills the gap between. */
export function neverMeets(
  { side, opening, reference }: { readonly side: SidePlan; readonly opening: Opening; readonly reference: Opening },
  job: Job,
): Problem {
  const most = job.limits.cableSpacing_max.value;
  const tape = { units: job.units, style: "tape" } as const;
  return {
    severity: "error",
    path: ["guard", "sides", side.index, "rake"],
    what: `the opening of side ${side.id}, ${length(opening.bottom, tape)} to ${length(opening.top, tape)} plumb, reaches so far past that of the other sides that the courses leave more than ${length(most, tape)} beside its rails`,
    fix: `bring its rails nearer to ${length(reference.bottom, tape)} and ${length(reference.top, tape)} under frame: on rakes`,
  };
}
