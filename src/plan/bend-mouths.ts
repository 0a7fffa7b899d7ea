// At which mouths of its bores does a cable bend, how hard does it press there for each newton at its nut, and on what?
import { angleBetween3, direction3, dot3, length3, type Point3, pressFromPlumb, subtract3 } from "../geometry/space.ts";
import type { Job, Section } from "../job/job.ts";
import { greatestAt } from "../mechanics/corner.ts";
import { bendPush, type Mouths, type Slants, SQUARE } from "../mechanics/mouth-bearing.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import type { Checked } from "./check-row.ts";
import { profileOf } from "./friction.ts";
import type { Bend, Bore, Run, Vertical } from "./plan.ts";

export interface BendMouth {
  readonly bend: Bend;
  /** Its place among the bends of its run, from 0. */
  readonly index: number;
  readonly member: Vertical;
  readonly section: Section;
  /** Of the pull at the nut what is left on the side of the bend that pulls harder. */
  readonly share: number;
  /** Push at the mouth for each newton at the nut. */
  readonly pushShare: number;
  /** Between the push and the grain of the upright, which is plumb. */
  readonly toGrain: Radian;
  /** What lies between the strand and what bears it. */
  readonly lining: "bare strand" | "bushing" | "tube";
  /** Along the bore. */
  readonly through: Mm;
  /** At how many of its mouths this bore bends the cable so far that it is lined. */
  readonly mouths: Mouths;
  /** Of the faces of the post against the bore: at this mouth, and at its other one. */
  readonly slants: Slants;
}

export type Bending = Pick<Checked, "verticals" | "bores">;

export function bendMouths({ verticals, bores }: Bending, run: Run, job: Job): readonly BendMouth[] {
  if (run.bends.length === 0) return [];
  const profile = profileOf(run, 1, job);
  const turns = turnsOf(run);
  const isLined = ({ angle }: Bend): boolean => angle > job.fittings.bushingAngle.value;
  return run.bends.map((bend, index): BendMouth => {
    const member = found(verticals, ({ id }) => id === bend.postId);
    const bore = found(bores, ({ verticalId, runId }) => verticalId === bend.postId && runId === run.id);
    const section = member.kind === "spacer" ? job.spacers.section : sectionOfPost(job, member.id);
    const isBushed = section.material !== "wood" || (bore.bushing && isLined(bend));
    const isInTube = section.material === "wood" && isBushed && job.fittings.bushing.tubeWall !== null;
    const share = greatestAt(profile, bend.at);
    return {
      bend,
      index,
      member,
      section,
      share,
      pushShare: bendPush({ tension: share, angle: bend.angle }),
      toGrain: turns[index] == null ? Math.PI / 2 : pressFromPlumb(turns[index].ahead, turns[index].behind),
      lining: isInTube ? "tube" : isBushed ? "bushing" : "bare strand",
      through: bore.drilledLength,
      mouths: run.bends.filter((other) => other.postId === bend.postId && isLined(other)).length > 1 ? 2 : 1,
      slants: slantsOf(turns[index] ?? null, member, bore),
    };
  });
}

/** A corner of the path that turns by less is none. */
const STRAIGHT_rad = 1e-9;

/** The stretches of a cable before and behind a bend. */
interface Turn {
  readonly ahead: Point3;
  readonly behind: Point3;
}

/** Of each bend, in their order: between which stretches it lies; null where the path does not turn. */
function turnsOf({ path, bends }: Run): readonly (Turn | null)[] {
  const steps = path.slice(1).flatMap((point, before) => {
    const step = subtract3(point, path[before] ?? point);
    // Where a bore ends at the place where the next stretch begins, the path has one point twice.
    return length3(step) > 0 ? [step] : [];
  });
  let at: Mm = 0;
  const turns = steps.slice(1).flatMap((behind, before) => {
    const ahead = steps[before] ?? behind;
    at += length3(ahead);
    return angleBetween3(ahead, behind) > STRAIGHT_rad ? [{ at, ahead, behind }] : [];
  });
  return bends.map((bend) =>
    turns.reduce<(typeof turns)[number] | null>(
      (near, one) => (near === null || Math.abs(one.at - bend.at) < Math.abs(near.at - bend.at) ? one : near),
      null,
    ),
  );
}

/**
 * On the mitre the cable presses towards the arris that the bore cuts off, where both faces come to meet it: the short side at both ends.
 * On a slope both faces are plumb: what is short at one end is long at the other. With the bore along b and the way of the cable outside of
 * it along o, the push across the bore is along n, as o without its part along b, or against it, and the bore begins -n_z b_z / (1 - b_z^2)
 * deeper there.
 */
function slantsOf(turn: Turn | null, { direction }: Vertical, { angle, skew }: Bore): Slants {
  if (skew !== 0) return { near: Math.tan(skew), far: Math.tan(skew) };
  if (turn === null || angle === 0) return SQUARE;
  const bore = direction3(direction, angle);
  const outer = angleBetween3(bore, turn.ahead) < angleBetween3(bore, turn.behind) ? turn.behind : turn.ahead;
  const along = dot3(outer, bore);
  const across = subtract3(outer, { x: along * bore.x, y: along * bore.y, z: along * bore.z });
  const near = -(across.z / length3(across)) * (bore.z / (1 - bore.z ** 2));
  return { near, far: -near };
}

function found<T>(list: readonly T[], is: (one: T) => boolean): T {
  const one = list.find(is);
  if (one === undefined) throw new RangeError("a bend without its post or bore: the run and the layout disagree");
  return one;
}
