// At which mouths of its bores does a cable bend, how hard does it press there for each newton at its nut, and on what?
import { angleBetween3, length3, pressFromPlumb, subtract3 } from "../geometry/space.ts";
import type { Job, Section } from "../job/job.ts";
import { greatestAt } from "../mechanics/corner.ts";
import { bendPush, type Mouths } from "../mechanics/mouth-bearing.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import { sectionOfPost } from "./as-found.ts";
import type { Checked } from "./check-row.ts";
import { profileOf } from "./friction.ts";
import type { Bend, Run, Vertical } from "./plan.ts";

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
}

export type Bending = Pick<Checked, "verticals" | "bores">;

export function bendMouths({ verticals, bores }: Bending, run: Run, job: Job): readonly BendMouth[] {
  if (run.bends.length === 0) return [];
  const profile = profileOf(run, 1, job);
  const toGrain = pressAngles(run);
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
      toGrain: toGrain[index] ?? Math.PI / 2,
      lining: isInTube ? "tube" : isBushed ? "bushing" : "bare strand",
      through: bore.drilledLength,
      mouths: run.bends.filter((other) => other.postId === bend.postId && isLined(other)).length > 1 ? 2 : 1,
    };
  });
}

/** A corner of the path that turns by less is none. */
const STRAIGHT_rad = 1e-9;

/** Of each bend, in their order: the way in which the cable presses there, from plumb; level where its path does not tell. */
function pressAngles({ path, bends }: Run): readonly Radian[] {
  const steps = path.slice(1).flatMap((point, before) => {
    const step = subtract3(point, path[before] ?? point);
    // Where a bore ends at the place where the next stretch begins, the path has one point twice.
    return length3(step) > 0 ? [step] : [];
  });
  let at: Mm = 0;
  const turns = steps.slice(1).flatMap((behind, before) => {
    const ahead = steps[before] ?? behind;
    at += length3(ahead);
    return angleBetween3(ahead, behind) > STRAIGHT_rad ? [{ at, press: pressFromPlumb(ahead, behind) }] : [];
  });
  return bends.map((bend) => {
    const [first, ...others] = turns;
    if (first === undefined) return Math.PI / 2;
    return others.reduce((near, one) => (Math.abs(one.at - bend.at) < Math.abs(near.at - bend.at) ? one : near), first).press;
  });
}

function found<T>(list: readonly T[], is: (one: T) => boolean): T {
  const one = list.find(is);
  if (one === undefined) throw new RangeError("a bend without its post or bore: the run and the layout disagree");
  return one;
}
