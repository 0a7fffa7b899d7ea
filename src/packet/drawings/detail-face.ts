// How is an end on the face of its post drawn: its hole, its fastening, the eye and what is pinned to it?
import { circle, type Part, polygon, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import type { FaceEnd } from "../../job/face-end.ts";
import { faceOf, isOnFace, plainShankOf } from "../../plan/face-end.ts";
import { pierNamed } from "../../plan/pier.ts";
import type { Bore, Plan, RunEnd, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { roundDown } from "../../units/round.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import type { Note } from "./detail-compose.ts";
import { CABLE_mm, type EndDrawn, type EndPoints, signOf } from "./detail-parts.ts";
import { type Hole, type Place, rectangle } from "./detail-place.ts";

/** Drawn sizes of parts whose real ones differ from maker to maker. */
const FLANGE_mm = 2;
const EYE_mm = 4.2;
const PIN_mm = 1.7;
/** Body of the fitting that is pinned to the eye. */
const BODY_mm = 14;

/** How far before its post an end on the face is drawn. */
export const reachBefore = (plan: Plan, end: RunEnd): Mm => (isOnFace(end) ? eyeOf(plan, end).standOut + BODY_mm + CABLE_mm : CABLE_mm);

/** A blind hole from the face that the cable comes to. */
export function blindHole(end: RunEnd, vertical: Vertical, { diameter, drilledLength }: Pick<Bore, "diameter" | "drilledLength">): Hole {
  const [from, to] = [-vertical.along / 2, -vertical.along / 2 + drilledLength].map((x) => signOf(end) * x) as [Mm, Mm];
  return { from: Math.min(from, to), to: Math.max(from, to), offset: end.offset, diameter };
}

interface Eye {
  readonly standOut: Mm;
  readonly flange: Mm;
  /** Outside diameter of what is in the hole. */
  readonly shank: Mm;
  readonly tip: Mm;
  /** From its end; null: all along. */
  readonly thread: Mm | null;
  readonly pitch: Mm;
}

/** An anchor is drawn a little thinner than its hole. */
const ANCHOR_share = 0.82;
/** Threads whose pitch is not stated. */
const PITCH_mm = 2;

function eyeOf(plan: Plan, end: RunEnd): Eye {
  const common = { tip: 0, thread: null, pitch: PITCH_mm };
  if (end.kind === "anchor") {
    const { standOut, flange, hole } = pierNamed(plan.job, end.postId).anchor;
    return { ...common, standOut: standOut.value, flange: flange.value, shank: ANCHOR_share * hole.value };
  }
  const { standOut, flange, hole, fastening } = faceOf(plan.job);
  const eye = { ...common, standOut: standOut.value, flange: flange.value };
  switch (fastening.kind) {
    case "rivet nut":
      return { ...eye, shank: hole.value };
    case "tapped hole":
      return { ...eye, shank: fastening.diameter.value, pitch: fastening.pitch.value };
    case "lag screw":
      return { ...eye, shank: fastening.diameter.value, tip: fastening.tip.value, thread: fastening.threadLength.value };
  }
}

export function faceFitting(plan: Plan, end: RunEnd, vertical: Vertical, place: Place, bore: Pick<Bore, "drilledLength">): EndDrawn {
  const one = eyeOf(plan, end);
  const { standOut, flange, shank } = one;
  const sign = signOf(end);
  /** From the face into the post, and up. */
  const at = (into: Mm, up: Mm): Point => place(sign * (into - vertical.along / 2), end.offset + up);
  const box = (from: Mm, to: Mm, height: Mm): Part =>
    polygon(
      rectangle((x, y) => at(x, y), { left: from, right: to, low: -height / 2, high: height / 2 }),
      { pen: "edge", fill: "white" },
    );
  const eye = -standOut;
  const [from, one_on] = [at(0, 0), at(1, 0)];
  const radius = EYE_mm * Math.hypot(one_on.x - from.x, one_on.y - from.y);
  return {
    parts: [
      ...fasteningParts(one, bore.drilledLength, at),
      box(-FLANGE_mm, 0, flange),
      box(eye + EYE_mm * 0.6, -FLANGE_mm, shank * 0.8),
      box(eye - BODY_mm, eye + EYE_mm * 0.4, EYE_mm * 1.1),
      circle(at(eye, 0), radius, { pen: "edge", fill: "white" }),
      circle(at(eye, 0), (radius * PIN_mm) / EYE_mm, { pen: "edge", fill: "black" }),
      strokes("heavy", [[at(eye - BODY_mm, 0), at(eye - BODY_mm - CABLE_mm, 0)]]),
    ],
    points: {
      washer: at(-FLANGE_mm / 2, flange * 0.42),
      bevel: at(-FLANGE_mm / 2, flange * 0.42),
      fitting: at(eye, EYE_mm * 0.8),
      tip: at(bore.drilledLength * 0.75, 0),
      cable: at(eye - BODY_mm - CABLE_mm * 0.6, 0),
      bore: at(Math.min(4, bore.drilledLength / 2), -shank / 2),
      counterbore: at(eye - BODY_mm * 0.6, 0),
    },
  };
}

/** Shank, and strokes for its thread; a lag screw ends in a point. */
function fasteningParts({ shank, tip, thread, pitch: step }: Eye, depth: Mm, at: (into: Mm, up: Mm) => Point): readonly Part[] {
  const half = shank / 2;
  const count = Math.max(1, roundDown(((thread ?? depth) - tip) / step, 1));
  const strokesOf = Array.from({ length: count }, (_, index) => {
    const x = depth - tip - index * step;
    return [at(x, -half), at(Math.max(0, x - step * 0.6), half)];
  });
  return [
    polygon([at(0, -half), at(depth - tip, -half), at(depth, 0), at(depth - tip, half), at(0, half)], { pen: "edge", fill: "white" }),
    strokes("thin", strokesOf),
  ];
}

const fasteningNames = { "lag screw": "lag screw", "tapped hole": "stud in its thread", "rivet nut": "rivet nut" } as const;

/** "lag screw 5/16", thread 2"". */
export function fasteningText({ fastening }: FaceEnd, show: Show): Text {
  const name = fasteningNames[fastening.kind];
  switch (fastening.kind) {
    case "lag screw":
      return `${name} ${show.fine(fastening.diameter.value)}, thread ${show.tape(fastening.threadLength.value)}`;
    default:
      return `${name} ${fastening.thread}`;
  }
}

function inHoleText(plan: Plan, { kind, postId }: RunEnd, show: Show): Text {
  if (kind === "anchor") return `${pierNamed(plan.job, postId).anchor.kind} anchor`;
  const shank = plainShankOf(plan);
  const opened = shank === null ? "" : `; hole opened to ${show.diameterOne(shank.diameter)} for the first ${show.tape(shank.length)}`;
  return `${fasteningText(faceOf(plan.job), show)}${opened}`;
}

/** What the labels of an end on the face say. */
export function faceNotes(plan: Plan, end: RunEnd, points: EndPoints, show: Show): readonly Note[] {
  const { postId } = end;
  const { flange, standOut } = eyeOf(plan, end);
  return [
    { target: points.tip, text: inHoleText(plan, end, show) },
    { target: points.washer, text: `flange ${show.fine(flange)}, flat on the face` },
    { target: points.fitting, text: `eye, ${postId}: holds; its middle ${show.tape(standOut)} from the face` },
    { target: points.counterbore, text: "end fitting of the cable, pinned to the eye" },
  ];
}
