// What do the signs on the plan mean, and where is north?
import { arrowhead, circle, group, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { label, MARK_mm, textWidth } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan } from "../../plan/plan.ts";
import { outsideOf } from "../../plan/sleeve.ts";
import type { Mm, Radian } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { symbolOf } from "./plan-runs.ts";

interface KeyItem {
  readonly words: Text;
  readonly sign: (at: Point) => Part;
}

const SIGN_mm = 8;
const GAP_mm = 5;
const ROW_mm = 6;

/** Rows of signs with their words below `at`, no wider than `width`. */
export function planKey(plan: Plan, at: Point, width: Mm): Part {
  let [x, y] = [at.x, at.y + ROW_mm / 2];
  return group(
    itemsOf(plan).flatMap(({ words, sign }) => {
      const needs = SIGN_mm + textWidth(words);
      if (x > at.x && x + needs > at.x + width) [x, y] = [at.x, y + ROW_mm];
      const parts = [sign({ x: x + SIGN_mm / 2 - 1, y }), label(words, { x: x + SIGN_mm, y })];
      x += needs + GAP_mm;
      return parts;
    }),
  );
}

function itemsOf(plan: Plan): readonly KeyItem[] {
  const ends = plan.runs.flatMap((run) => [run.left, run.right]);
  const along = { x: 1, y: 0 };
  const { spacers } = plan.job;
  return [
    { words: `post ${postNames(plan).join(" or ")}`, sign: (at) => square(at, 1.5) },
    ...(plan.verticals.some(({ role }) => role === "shared") ? [{ words: "post where two runs end", sign: sharedSign }] : []),
    ...(plan.verticals.some(({ kind }) => kind === "spacer")
      ? [{ words: `spacer ${spacers.section.name}`, sign: (at: Point) => square(at, 0.8) }]
      : []),
    {
      words: "run",
      sign: (at) =>
        strokes("cable", [
          [
            { x: at.x - 3, y: at.y },
            { x: at.x + 3, y: at.y },
          ],
        ]),
    },
    ...(ends.some(({ kind }) => kind === "stud") ? [{ words: "stud end", sign: (at: Point) => symbolOf("stud", at) }] : []),
    ...(ends.some(({ kind }) => kind === "grip") ? [{ words: "grip end", sign: (at: Point) => symbolOf("grip", at) }] : []),
    ...(["face", "anchor"] as const)
      .filter((kind) => ends.some((end) => end.kind === kind))
      .map((kind) => ({ words: kind === "face" ? "face end" : "anchor end", sign: (at: Point) => symbolOf(kind, at) })),
    {
      words: "tightened here",
      sign: (at) => group([strokes("cable", [[{ x: at.x - 3, y: at.y }, at]]), arrowhead({ x: at.x + 2.6, y: at.y }, along, 3.6)]),
    },
  ];
}

/** The usual section first, then those of posts that were found otherwise. */
const postNames = ({ job }: Plan): readonly Text[] => [
  ...new Set([outsideOf(job).name, ...job.posts.asFound.flatMap(({ section }) => section?.name ?? [])]),
];

const square = ({ x, y }: Point, half: Mm): Part =>
  polygon(
    [
      { x: x - half, y: y - half },
      { x: x + half, y: y - half },
      { x: x + half, y: y + half },
      { x: x - half, y: y + half },
    ],
    { pen: half > 1 ? "outline" : "edge", fill: "white" },
  );

/** Radius of the ring around a post on which two runs end. */
export const SHARED_RING_mm = 2;

const sharedSign = (at: Point): Part => group([circle(at, SHARED_RING_mm, { pen: "edge", fill: "white" }), square(at, 0.9)]);

/** An arrow that points north; `bearing` is the compass direction of the first side, which runs to the right on paper. */
export function northArrow(at: Point, bearing: Radian): Part {
  const toward = { x: Math.cos(bearing), y: -Math.sin(bearing) };
  const end = (by: Mm): Point => ({ x: at.x + toward.x * by, y: at.y + toward.y * by });
  return group([
    strokes("edge", [[end(-6), end(4)]]),
    arrowhead(end(6.5), toward, 4.5),
    label("N", end(9.4), { size: MARK_mm, weight: 700, anchor: "middle" }),
  ]);
}
