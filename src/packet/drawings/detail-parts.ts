// Of which signs are the details made: cut posts, bores, studs, gripping fittings, washers, cables?
import { hatched, type Part, polygon, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Bore, Plan, RunEnd, Vertical } from "../../plan/plan.ts";
import { recessOf } from "../../plan/sleeve.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import { SAME_mm } from "../../units/tolerance.ts";
import { type Hole, outlineOf, type Place, rectangle, tiltedPlace } from "./detail-place.ts";
import { cutSleeved } from "./detail-sleeve.ts";

export const sectionOf = (plan: Plan, vertical: Vertical): Plan["job"]["posts"]["section"] =>
  vertical.kind === "post" ? plan.job.posts.section : plan.job.spacers.section;

/** A post or spacer cut level at the height of a cable, or plumb along it, where a tube shows two walls: cut material hatched, bores left open. */
export function cutMember(
  plan: Plan,
  vertical: Vertical,
  place: Place,
  holes: readonly Hole[],
  cut: "level" | "plumb" = "level",
): readonly Part[] {
  if (vertical.kind === "pier") return cutPier(vertical, place, holes);
  const { core } = vertical;
  const { sleeve } = plan.job.posts;
  if (core !== undefined && sleeve !== null) return cutSleeved({ ...vertical, core }, sleeve, place, holes);
  const { wall, material } = sectionOf(plan, vertical);
  const [halfAlong, halfAcross] = [vertical.along / 2, vertical.across / 2];
  const outer = rectangle(place, { left: -halfAlong, right: halfAlong, low: -halfAcross, high: halfAcross });
  const hollow = halfAcross - (cut === "plumb" ? 0 : (wall ?? 0));
  const inner = wall === null ? null : rectangle(place, { left: -halfAlong + wall, right: halfAlong - wall, low: -hollow, high: hollow });
  const open = holes.flatMap((hole) => inMaterial(hole, halfAlong, wall)).map((hole) => outlineOf(hole, place));
  const outlines = [outer, ...(inner === null ? [] : [inner]), ...open];
  return [
    polygon(outer, { pen: "outline", fill: "white" }),
    ...(inner === null ? [] : [polygon(inner, { pen: "edge", fill: "white" })]),
    ...open.map((hole) => polygon(hole, { pen: "edge", fill: "white" })),
    hatched({ outlines, spacing: material === "wood" ? 3 : 1.2, angle: Math.PI / 4 }),
  ];
}

/** A pier cut level at an anchor: hatched both ways, so that it is not taken for a post. */
function cutPier({ along, across }: Vertical, place: Place, holes: readonly Hole[]): readonly Part[] {
  const outer = rectangle(place, { left: -along / 2, right: along / 2, low: -across / 2, high: across / 2 });
  const open = holes.map((hole) => outlineOf(hole, place));
  const outlines = [outer, ...open];
  const face = (along / 2) * (holes.some(({ to }) => to > along / 2 - SAME_mm) ? 1 : -1);
  return [
    polygon(outer, { pen: "thin", fill: "white" }),
    strokes("outline", [[place(face, -across / 2), place(face, across / 2)]]),
    ...open.map((hole) => polygon(hole, { pen: "edge", fill: "white" })),
    ...[1, -1].map((way) => hatched({ outlines, spacing: 4, angle: (way * Math.PI) / 4 })),
  ];
}

/** In a tube only the two walls are bored. */
function inMaterial(hole: Hole, halfAlong: Mm, wall: Mm | null): readonly Hole[] {
  if (wall === null) return [hole];
  return [
    { ...hole, from: -halfAlong, to: -halfAlong + wall },
    { ...hole, from: halfAlong - wall, to: halfAlong },
  ];
}

/** 1 where the fitting stands on the right-hand face, -1 on the left-hand one. */
export const signOf = (end: Pick<RunEnd, "backFace">): 1 | -1 => (end.backFace === "right" ? 1 : -1);

export interface EndBore extends Pick<Bore, "through" | "drilledLength"> {
  readonly diameter: Mm;
  /** Off level in a plumb cut; a level cut shows nothing of it. */
  readonly tilt?: Radian;
  readonly counterbore: { readonly diameter: Mm; readonly depth: Mm } | null;
}

/** Drawn sizes of parts whose real ones differ from maker to maker; only what the plan states is to scale. */
const WASHER_mm = 1.8;
/** Collar of a gripping fitting, a sign and no shape. */
const COLLAR_mm = 4;
const NUT_mm = 6.5;
const TAIL_mm = 10;
/** How far cables are drawn beyond the posts. */
export const CABLE_mm = 20;
/** Farthest point that a stud is drawn to, from the face it stands on. */
export const FITTING_mm = WASHER_mm + NUT_mm + TAIL_mm;

/** Points that labels refer to. */
export interface EndPoints {
  readonly washer: Point;
  readonly bevel: Point;
  readonly fitting: Point;
  readonly tip: Point;
  readonly cable: Point;
  readonly bore: Point;
  readonly counterbore: Point;
}

export interface EndDrawn {
  readonly parts: readonly Part[];
  readonly points: EndPoints;
}

function box(
  place: Place,
  sign: 1 | -1,
  { near, far, offset, height }: { readonly near: Mm; readonly far: Mm; readonly offset: Mm; readonly height: Mm },
): Part {
  return polygon(rectangle(place, { left: sign * near, right: sign * far, low: offset - height / 2, high: offset + height / 2 }), {
    pen: "edge",
    fill: "white",
  });
}

/** The frame of an end: x outwards along its bore from the middle of the post, y across it. */
interface EndFrame {
  readonly sign: 1 | -1;
  readonly along: Place;
  readonly at: Place;
  /** To the face, in a sleeve that of the wood inside, and to the seat of nut or collar. */
  readonly half: Mm;
  /** To where the cable is seen. */
  readonly front: Mm;
  readonly seat: Mm;
  /** The bevelled washer between them: nothing where the bore is square to the face. */
  readonly bevel: readonly Part[];
}

function endFrame(
  end: RunEnd,
  vertical: Vertical,
  place: Place,
  { tilt = 0, washer }: { readonly tilt?: Radian; readonly washer: Mm },
): EndFrame {
  const [sign, along] = [signOf(end), tiltedPlace(place, tilt)];
  const front = vertical.along / 2 / Math.cos(tilt);
  const half = front - recessOf(vertical);
  const seat = half + end.seat;
  const at: Place = (x, y) => along(sign * x, end.offset + y);
  // The face is upright: along the bore it is nearer on one side of it and farther on the other.
  const lean = ((sign * washer) / 2) * Math.tan(tilt);
  const wedge = [at(half + lean, washer / 2), at(seat, washer / 2), at(seat, -washer / 2), at(half - lean, -washer / 2)];
  return { sign, along, at, half, front, seat, bevel: end.seat === 0 ? [] : [polygon(wedge, { pen: "edge", fill: "white" })] };
}

/** In the hole of a washer, between the wood and the outer face of the sleeve. */
const inSleeve = ({ counterbore, diameter }: EndBore, at: Place, [half, front]: readonly [Mm, Mm]): Point =>
  at((half + front) / 2, (counterbore?.diameter ?? diameter) * 0.46);

export function studEnd(plan: Plan, end: RunEnd, vertical: Vertical, place: Place, bore: EndBore): EndDrawn {
  const { offset } = end;
  const washer = plan.job.fittings.stud.washerDiameter.value;
  const { sign, along, at, half, front, seat, bevel } = endFrame(end, vertical, place, { ...bore, washer });
  const stud = bore.diameter * 0.76;
  const tip = seat + FITTING_mm;
  const threads = Array.from({ length: 14 }, (_, index) => {
    const x = tip - 1 - index * ((FITTING_mm + seat) / 14);
    return [at(x, -stud / 2), at(x - stud * 0.25, stud / 2)];
  });
  return {
    parts: [
      box(along, sign, { near: -half * 0.7, far: tip, offset, height: stud }),
      strokes("thin", threads),
      ...bevel,
      box(along, sign, { near: seat, far: seat + WASHER_mm, offset, height: washer }),
      box(along, sign, { near: seat + WASHER_mm, far: seat + WASHER_mm + NUT_mm, offset, height: stud * 1.8 }),
      strokes("thin", [
        [at(seat + WASHER_mm, stud * 0.45), at(seat + WASHER_mm + NUT_mm, stud * 0.45)],
        [at(seat + WASHER_mm, -stud * 0.45), at(seat + WASHER_mm + NUT_mm, -stud * 0.45)],
      ]),
      strokes("heavy", [[at(-half * 0.7, 0), at(-front - CABLE_mm, 0)]]),
    ],
    points: {
      washer: at(seat + WASHER_mm / 2, washer * 0.42),
      bevel: at(seat - end.seat / 4, -washer * 0.42),
      fitting: at(seat + WASHER_mm + NUT_mm * 0.6, stud * 0.7),
      tip: at(tip - 3, 0),
      cable: at(-front - CABLE_mm * 0.6, 0),
      bore: at(-half + 4, -bore.diameter / 2 + 0.3),
      counterbore: front > half ? inSleeve(bore, at, [half, front]) : at(half - 4, bore.diameter / 2),
    },
  };
}

/** The body lies in its counterbore or bore; its collar bears on a washer on the back face. */
export function gripEnd(plan: Plan, end: RunEnd, vertical: Vertical, place: Place, bore: EndBore): EndDrawn {
  const { offset } = end;
  const { bodyLength, counterbore, washerDiameter } = plan.job.fittings.grip;
  const { sign, along, at, half, front, seat, bevel } = endFrame(end, vertical, place, { ...bore, washer: washerDiameter.value });
  const body = counterbore.value * 0.86;
  const inner = seat - bodyLength.value;
  const jaws = [0.25, 0.5, 0.75].map((share) => {
    const x = inner + share * bodyLength.value;
    return [at(x - body * 0.3, body / 2), at(x + body * 0.3, 0), at(x - body * 0.3, -body / 2)];
  });
  const collar = seat + WASHER_mm + COLLAR_mm;
  const end_mm = collar + 9;
  return {
    parts: [
      box(along, sign, { near: inner, far: seat + WASHER_mm, offset, height: body }),
      strokes("thin", jaws),
      ...bevel,
      box(along, sign, { near: seat, far: seat + WASHER_mm, offset, height: washerDiameter.value }),
      box(along, sign, { near: seat + WASHER_mm, far: collar, offset, height: body * 1.5 }),
      strokes("heavy", [[at(-front - CABLE_mm, 0), at(end_mm, 0)]]),
    ],
    points: {
      washer: at(seat + WASHER_mm / 2, washerDiameter.value * 0.42),
      bevel: at(seat - end.seat / 4, -washerDiameter.value * 0.42),
      fitting: at(inner + bodyLength.value * 0.6, -body * 0.3),
      tip: at(end_mm - 2, 0),
      cable: at(-front - CABLE_mm * 0.6, 0),
      bore: at(-half + 4, -bore.diameter / 2 + 0.2),
      counterbore: front > half ? inSleeve(bore, at, [half, front]) : at(half - 3, (bore.counterbore?.diameter ?? bore.diameter) * 0.46),
    },
  };
}

/** How far behind the back face the parts of an end are drawn. */
export function reachBehind({ kind, seat }: RunEnd): Mm {
  if (kind === "face" || kind === "anchor") return 0;
  return seat + (kind === "stud" ? FITTING_mm : WASHER_mm + COLLAR_mm + 9);
}
