// How does a cable pass a post and a spacer in the middle of a side?
import { dimension } from "../../drawing/dimension.ts";
import { type Part, polygon, strokes } from "../../drawing/shape.ts";
import type { Bore, Plan, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { groupBy } from "../sheets/kit.ts";
import { sleeveHoleText } from "../sheets/sleeve-words.ts";
import type { Show } from "../show-number.ts";
import { type Detail, type Picture, placeAt } from "./detail-compose.ts";
import { CABLE_mm, cutMember, sectionOf } from "./detail-parts.ts";
import { type Place, rectangle } from "./detail-place.ts";
import { showOf } from "./kit.ts";

interface Passed {
  readonly member: Vertical;
  readonly bore: Bore;
}

/** The first post of each section and the first spacer that a cable only passes; null where a guard has neither. */
export function passDetail(plan: Plan): Detail | null {
  const found = (kind: Vertical["kind"]): readonly Passed[] => {
    const all = plan.verticals.flatMap((member): readonly Passed[] => {
      const bore = plan.bores.find((one) => one.verticalId === member.id && one.kind === "pass");
      return member.kind !== kind || bore === undefined ? [] : [{ member, bore }];
    });
    return groupBy(all, ({ member }) => member.sectionName).map(([first]) => first);
  };
  const passed = [...found("post"), ...found("spacer")];
  if (passed.length === 0) return null;
  const show = showOf(plan);
  const words = passed.map(({ member, bore }) => passText(plan, member, bore, show));
  return {
    id: "detail-pass",
    title: "Posts and spacers that the cable passes",
    description: `Level cut through ${words.join(", and through ")}. All bores of this kind are alike; the table of bores gives every height.`,
    notes: [],
    size: {
      width: passed.reduce((sum, { member }) => sum + member.along, 0) + (passed.length - 1) * BETWEEN_mm + 2 * CABLE_mm,
      height: Math.max(...passed.map(({ member }) => member.across)),
    },
    draw: (scale) => draw(plan, passed, scale.ratio, show),
  };
}

const passText = (plan: Plan, member: Vertical, bore: Bore, show: Show): Text =>
  `${member.kind === "post" ? "line post" : "spacer"} ${member.id}, ${member.sectionName}: bore ${show.fine(bore.diameter)} right through${sleeveHoleText(bore, show)}${bushingText(plan, member, bore)}`;

/** Clear distance drawn between the two, not to scale. */
const BETWEEN_mm = 30;

function draw(plan: Plan, passed: readonly Passed[], ratio: number, show: Show): Picture {
  let right: Mm = 0;
  const placed = passed.map((one) => {
    const middle = right + one.member.along / 2;
    right = middle + one.member.along / 2 + BETWEEN_mm;
    return { ...one, place: placeAt(ratio, middle) };
  });
  const line = placeAt(ratio);
  const deepest = Math.max(...passed.map(({ member }) => member.across / 2));
  const notes = placed.map(({ member, bore, place }, index) => ({
    target: place((index === 0 ? -0.3 : 0.3) * member.along, -bore.diameter / 2),
    text: passText(plan, member, bore, show),
  }));
  const cable = { target: line(-CABLE_mm * 0.6, 0), text: `cable ${show.fine(plan.job.cable.diameter)}` };
  return {
    parts: [
      ...placed.flatMap(({ member, bore, place }) => [
        ...cutMember(plan, member, place, [
          { from: -member.along / 2, to: member.along / 2, offset: bore.offset, diameter: bore.diameter },
        ]),
        ...(bore.bushing ? bushings(plan, member, bore, place) : []),
        dimension({
          from: { x: place(-member.along / 2, 0).x, y: place(0, -deepest).y },
          to: { x: place(member.along / 2, 0).x, y: place(0, -deepest).y },
          offset: 5,
          text: show.tape(member.along),
        }),
      ]),
      strokes("heavy", [[line(-CABLE_mm, 0), line(right - BETWEEN_mm + CABLE_mm, 0)]]),
    ],
    left: [cable, ...notes.slice(0, 1)],
    right: notes.slice(1),
  };
}

/** In a tube both walls are lined; in a solid member one bushing sits at the face `solidFace`. Black: a sleeve with a rim outside. */
export function bushings(plan: Plan, member: Vertical, bore: Bore, place: Place, solidFace: 1 | -1 = -1): readonly Part[] {
  const { wall } = sectionOf(plan, member);
  const { length, tubeWall } = plan.job.fittings.bushing;
  const reach = wall ?? Math.min(length.value, member.along * 0.7);
  const half = member.along / 2;
  const radius = bore.diameter / 2;
  const inTube = radius - (wall === null ? (tubeWall?.value ?? 0) : 0);
  const sides = [-1, 1] as const;
  const part = (x: readonly [Mm, Mm], y: readonly [Mm, Mm], look: Parameters<typeof polygon>[1]): Part =>
    polygon(rectangle(place, { left: x[0], right: x[1], low: bore.offset + y[0], high: bore.offset + y[1] }), look);
  const black = (face: 1 | -1, x: readonly [Mm, Mm], y: readonly [Mm, Mm]): Part =>
    part([face * x[0], face * x[1]], y, { pen: null, fill: "black" });
  const tube =
    inTube < radius ? sides.map((side) => part([-half, half], [side * inTube, side * radius], { pen: "edge", fill: "white" })) : [];
  return [
    ...tube,
    ...(wall === null ? [solidFace] : sides).flatMap((face) =>
      sides.flatMap((side) => [
        black(face, [half - reach, half], [side * inTube * 0.7, side * inTube]),
        black(face, [half, half + 1.6], [side * inTube * 0.7, side * (radius + 2.4)]),
      ]),
    ),
  ];
}

/** How many bushings go into a bore, in words. */
export function bushingText(plan: Plan, member: Vertical, bore: Bore): Text {
  if (!bore.bushing) return "";
  if (sectionOf(plan, member).wall !== null) return ", with a bushing in each wall";
  return plan.job.fittings.bushing.tubeWall === null ? ", with a bushing" : ", a tube right through, with a bushing in its mouth";
}
