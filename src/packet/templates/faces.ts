// Which holes are marked on which face of which upright, and which uprights have the same ones?
import { climbTo } from "../../plan/corner-path.ts";
import { goesThroughOneWall } from "../../plan/face-end.ts";
import type { Bore, Face, Plan, Vertical } from "../../plan/plan.ts";
import { bottomRailReaches } from "../../plan/rails.ts";
import type { RakePlan } from "../../plan/rake-plan.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import { groupBy } from "../sheets/kit.ts";

/** A place on a face: to the right of its middle for somebody who looks at it, and above the datum. */
export interface FacePoint {
  readonly right: Mm;
  readonly height: Mm;
}

/** A hole that is begun on a face. A level bore is one whose angle is 0. */
export interface TemplateHole {
  readonly mark: string;
  readonly course: number;
  /** Its middle on this face. */
  readonly here: FacePoint;
  /** Where the same bore meets the other face, seen through the upright: its `right` counts as on this face. */
  readonly there: FacePoint;
  /** Of the bore to a square one; upward where it runs up from here. */
  readonly angle: Radian;
  /** Off square as seen from above; positive where it goes in to the right hand of somebody who looks at the face. */
  readonly skew: Radian;
  /** On the mitre the face where the bore comes out is marked too. */
  readonly isExit: boolean;
  /** Of the bore, square to its own axis. */
  readonly diameter: Mm;
  /** Of the bore, from face to face. */
  readonly drilledLength: Mm;
  readonly through: boolean;
  /** Of the hole in the sleeve round the bore; null where the post has none. */
  readonly sleeveHole: Mm | null;
  /** Of a tube: through the wall of this face, not through the far one. */
  readonly oneWall: boolean;
  /** What is bored from this face: the bore itself, or the counterbore in whose middle the bore comes out. */
  readonly counterbore: { readonly diameter: Mm; readonly depth: Mm } | null;
}

/** How the side of an upright slopes, as its faces show it. */
export interface FaceSlope {
  readonly kind: RakePlan["kind"];
  /** Of the side above level, from left to right. */
  readonly slope: Radian;
  /** How much higher the line of the nosings, or the ramp, meets this face than the middle of the upright; negative where it is lower. */
  readonly climb: Mm;
}

/** What a face shows. */
interface FaceMarks {
  readonly face: Face;
  /** Of one post at a corner: it looks to one of its two sides. */
  readonly isCorner: boolean;
  /** Height above the datum of what the lower edge stands on. */
  readonly foot: Mm;
  /** null on a level side. */
  readonly rake: FaceSlope | null;
  /** Heights that the bottom rail takes on this face; null where it does not meet it. */
  readonly rail: { readonly low: Mm; readonly high: Mm } | null;
  /** From the lowest up. */
  readonly holes: readonly TemplateHole[];
}

/** A full-size template: all holes that are begun on one face, for every upright that has the same. */
export interface Template extends FaceMarks {
  /** T1, T2 ... */
  readonly id: string;
  readonly kind: Vertical["kind"];
  readonly uprights: readonly Vertical[];
  /** Of the face, across the upright. */
  readonly width: Mm;
}

/** Everything that is marked on one upright. */
export interface UprightFace extends FaceMarks {
  readonly upright: Vertical;
}

const faces: readonly Face[] = ["left", "right"];

/** The templates of a plan, in the order of their first uprights. */
export const templatesOf = (plan: Plan): readonly Template[] =>
  groupBy(
    plan.verticals.flatMap((upright) => facesOf(plan, upright)),
    likeness,
  ).map((alike, index) => {
    const [{ upright, ...marks }] = alike;
    return { id: `T${index + 1}`, kind: upright.kind, uprights: alike.map((one) => one.upright), width: upright.across, ...marks };
  });

/** Templates, schedules and drawings for machines ask for the same faces: they are kept as long as their plan is. */
const known = new WeakMap<Plan, Map<Vertical, readonly UprightFace[]>>();

/** What is marked on the faces of an upright, faces without a hole left out. */
export function facesOf(plan: Plan, upright: Vertical): readonly UprightFace[] {
  const ofPlan = known.get(plan) ?? new Map<Vertical, readonly UprightFace[]>();
  known.set(plan, ofPlan);
  const before = ofPlan.get(upright);
  if (before !== undefined) return before;
  const made = makeFaces(plan, upright);
  ofPlan.set(upright, made);
  return made;
}

function makeFaces(plan: Plan, upright: Vertical): readonly UprightFace[] {
  const bores = plan.bores.filter(({ verticalId }) => verticalId === upright.id);
  return faces.flatMap((face) => {
    const holes = bores
      .flatMap((bore) => holesOn(bore, face, { ...upright, oneWall: goesThroughOneWall(bore, plan.job) }))
      .sort((a, b) => a.here.height - b.here.height || a.here.right - b.here.right);
    if (holes.length === 0) return [];
    const rake = slopeOf(plan, upright, face);
    const isCorner = upright.corner !== undefined;
    return [{ upright, face, isCorner, foot: footOf(plan, upright, rake), rake, rail: railOn(plan, upright, { face, rake }), holes }];
  });
}

function slopeOf({ rakes }: Plan, upright: Vertical, face: Face): FaceSlope | null {
  const rake = rakes.find(({ sideId }) => sideId === upright.sideId);
  return rake === undefined ? null : { kind: rake.kind, slope: rake.slope, climb: climbTo(face, upright) };
}

/**
 * Posts stand on the datum, on a rake on their level mark; spacers stand on what bounds the opening below: the bottom rail, or the datum
 * without one. A spacer on a rake is cut along it, so its foot meets the two faces at two heights.
 */
function footOf({ opening, rakes }: Plan, { kind, sideId }: Vertical, rake: FaceSlope | null): Mm {
  if (kind !== "spacer") return 0;
  return (rakes.find((one) => one.sideId === sideId)?.opening ?? opening).bottom + (rake?.climb ?? 0);
}

/** The bottom rail goes between the posts of a side: it meets no face that looks at a corner or at an end of the guard. */
function railOn(
  { job, opening, rakes, sides, verticals }: Plan,
  { id, kind, sideId, sideIndex, corner }: Vertical,
  { face, rake }: Pick<FaceMarks, "face" | "rake">,
): FaceMarks["rail"] {
  const side = sides[face === "right" ? (corner?.nextIndex ?? sideIndex) : sideIndex];
  if (job.frame.bottomRail === null || kind === "spacer" || side === undefined) return null;
  const meets = bottomRailReaches(side, verticals).some(({ fromId, toId }) => (face === "right" ? fromId : toId) === id);
  if (!meets) return null;
  if (rake === null) return { low: job.frame.gapBelow, high: opening.bottom };
  const bottom = rakes.find((one) => one.sideId === sideId)?.opening.bottom ?? opening.bottom;
  const [low, high] = [job.frame.onRakes.gapBelow.value + rake.climb, bottom + rake.climb];
  return high <= 0 ? null : { low: Math.max(0, low), high };
}

/** The hole of a bore on this face: one if its bit goes in here, one if it is counterbored from here. */
function holesOn(bore: Bore, face: Face, { corner, oneWall }: Vertical & Pick<TemplateHole, "oneWall">): readonly TemplateHole[] {
  const { entryFace, counterbore, mark, course, diameter, drilledLength } = bore;
  // Whoever looks at the left face of a post has what lies away from the deck on the left hand.
  const right = (face === "left" ? -bore.offset : bore.offset) + 0;
  const entry = face === entryFace;
  const [from, to] = entry ? heightsOf(bore) : heightsOf(bore).toReversed();
  const hole = {
    mark,
    course,
    here: { right, height: from ?? bore.height },
    there: { right, height: to ?? bore.height },
    angle: angleOf(bore, face),
    // In an outside corner the two faces meet at the deck's side, which is to the right of who looks at the left one.
    skew: (face === "left" ? 1 : -1) * Math.sign(corner?.turn ?? 0) * bore.skew + 0,
    isExit: !entry,
    diameter,
    sleeveHole: bore.sleeveHole ?? null,
    drilledLength,
    through: bore.through,
    oneWall,
  };
  return [
    ...(entry || bore.skew !== 0 ? [{ ...hole, counterbore: null }] : []),
    ...(counterbore?.face === face ? [{ ...hole, counterbore: { diameter: counterbore.diameter, depth: counterbore.depth } }] : []),
  ];
}

/** Of the middle of a bore on the face that the bit goes in and on the other. */
const heightsOf = ({ entryHeight, exitHeight }: Bore): readonly Mm[] => [entryHeight, exitHeight];

/** Upward where it runs up from this face. */
const angleOf = ({ angle }: Bore, face: Face): Radian => (face === "left" ? angle : 0 - angle);

/** Half the height of a hole on the face: where a round bit goes in at an angle, the hole is an ellipse. */
export const halfHeight = (hole: TemplateHole): Mm => widestOf(hole) / 2 / Math.cos(hole.angle);

/** What is seen of a hole on its face. */
export const widestOf = ({ diameter, sleeveHole, counterbore }: TemplateHole): Mm => counterbore?.diameter ?? sleeveHole ?? diameter;

/** A hole beside the middle line: from half a millimetre on it can be told. */
export const isOffMiddle = ({ here }: TemplateHole): boolean => Math.abs(here.right) >= 0.5;

const likeness = ({ upright, face, isCorner, foot, rake, rail, holes }: UprightFace): string =>
  JSON.stringify([
    upright.kind,
    upright.across,
    isCorner,
    face,
    foot,
    rake,
    rail,
    holes.map(({ here, there, angle, skew, isExit, diameter, sleeveHole, through, drilledLength, counterbore }) => [
      here,
      there,
      angle,
      skew,
      isExit,
      diameter,
      sleeveHole,
      through || drilledLength,
      counterbore,
    ]),
  ]);

/** Marks of posts, then of spacers, neighbours in one: "P2 to P4, P6". */
export function marksOf(uprights: readonly Pick<Vertical, "id">[]): string {
  const runs: { readonly letter: string; readonly from: number; to: number }[] = [];
  const named = uprights.map(({ id }) => {
    const [, letter = "", digits = ""] = /^(\D+)(\d+)$/.exec(id) ?? [];
    return { letter, number: Number(digits) };
  });
  for (const { letter, number } of named.toSorted((a, b) => (a.letter === b.letter ? a.number - b.number : a.letter < b.letter ? -1 : 1))) {
    const last = runs.at(-1);
    if (last !== undefined && last.letter === letter && last.to === number - 1) last.to = number;
    else runs.push({ letter, from: number, to: number });
  }
  return runs
    .map(({ letter, from, to }) => {
      if (to === from) return `${letter}${from}`;
      return to === from + 1 ? `${letter}${from}, ${letter}${to}` : `${letter}${from} to ${letter}${to}`;
    })
    .join(", ");
}
