// How much of the pull is left in each span of a run that turns?

import { spread } from "../../drawing/leader.ts";
import type { Room } from "../../drawing/paper.ts";
import { type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, textWidth } from "../../drawing/text.ts";
import { jointName } from "../../plan/joints.ts";
import type { Plan, Run } from "../../plan/plan.ts";
import type { SpanReading } from "../../plan/readings.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { finishDrawing, footer, showOf } from "./kit.ts";

const HEIGHT_mm = 46;

/** Null for a run on one side. */
export function frictionPlot(plan: Plan, runId: string, box: Room): Drawing | null {
  const run = plan.runs.find(({ id }) => id === runId);
  if (run === undefined) throw new RangeError(`no run ${runId}`);
  // Bores that are set off sideways on one side bend the cable by a degree or less and are not worth a plot.
  if (run.sideIds.length < 2) return null;
  const show = showOf(plan);
  const drawn = plot(plan, run, box, show);
  const notes = [
    "Thick: least tension in each span when every pulling end reads its target. Dashed: what the criterion asks of the span.",
    `Each step down is a bend that the cable rubs on. Spans are as wide as their free length. Friction ${show.decimal(plan.job.tightening.friction.value, 2)}.`,
  ];
  return finishDrawing({
    id: `friction-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: tension along the cable`,
    description: describe(run, show),
    parts: [...drawn, footer(drawn, { scale: null, units: plan.job.units, notes, room: box })],
  });
}

interface Column {
  readonly span: SpanReading;
  readonly left: Mm;
  readonly right: Mm;
}

function plot(plan: Plan, run: Run, box: Room, show: Show): readonly Part[] {
  const values = [run.tension.target, run.tension.least, ...run.spans.map(({ required }) => required)];
  const highest = Math.max(...values);
  const words = valueLabels(run, show);
  const left = Math.max(...words.map(({ text }) => textWidth(text))) + 4;
  const columns = columnsOf(run, { left, right: box.width - 2 });
  const yOf = (force: number): Mm => HEIGHT_mm * (1 - force / (highest * 1.08));
  const right = columns.at(-1)?.right ?? left;
  const step = (value: (span: SpanReading) => number): Line =>
    columns.flatMap((column) => [
      { x: column.left, y: yOf(value(column.span)) },
      { x: column.right, y: yOf(value(column.span)) },
    ]);
  const base = yOf(0);
  return [
    ...cornerBands(columns, base),
    strokes("edge", [
      [
        { x: left, y: 0 },
        { x: left, y: base },
        { x: right, y: base },
      ],
    ]),
    strokes(
      "thin",
      columns.map((column) => [
        { x: column.right, y: base },
        { x: column.right, y: base + 1.5 },
      ]),
    ),
    strokes("heavy", [step((span) => span.tension)]),
    strokes("hidden", [step((span) => span.required)]),
    ...spreadValues(words, yOf).flatMap(({ text, y, at }) => [
      label(text, { x: left - 3, y }, { anchor: "end" }),
      strokes("thin", [
        [
          { x: left - 2.2, y },
          { x: left, y: at },
        ],
      ]),
    ]),
    ...bayNames(plan, columns, base + 4),
    ...ends(run, { left, right, y: base + 8.5 }),
  ];
}

function columnsOf(run: Run, { left, right }: { readonly left: Mm; readonly right: Mm }): readonly Column[] {
  const total = run.spans.reduce((sum, { free }) => sum + free, 0);
  let at = left;
  return run.spans.map((span) => {
    const from = at;
    at += ((right - left) * span.free) / total;
    return { span, left: from, right: at };
  });
}

/** The short spans across corners stand out as bands. */
const cornerBands = (columns: readonly Column[], base: Mm): readonly Part[] =>
  columns
    .filter(({ span }) => span.bayId.includes("/"))
    .map(({ left, right }) =>
      strokes("thin", [
        [
          { x: left, y: 0 },
          { x: left, y: base },
        ],
        [
          { x: right, y: 0 },
          { x: right, y: base },
        ],
      ]),
    );

interface Value {
  readonly force: number;
  readonly text: Text;
}

function valueLabels(run: Run, show: Show): readonly Value[] {
  const required = Math.max(...run.spans.map((span) => span.required));
  return [
    { force: run.tension.target, text: `target ${show.force(run.tension.target)}` },
    { force: run.tension.least, text: `least ${show.forceDown(run.tension.least)}` },
    { force: required, text: `required ${show.forceUp(required)}` },
    { force: 0, text: "0" },
  ];
}

function spreadValues(
  values: readonly Value[],
  yOf: (force: number) => Mm,
): readonly { readonly text: Text; readonly y: Mm; readonly at: Mm }[] {
  const places = spread(values.map(({ force }) => ({ at: yOf(force), size: lineHeight() })));
  return values.map(({ text, force }, index) => ({ text, at: yOf(force), y: places[index] ?? yOf(force) }));
}

/** Names of bays where they have room; corners and changes of slope are named above their bands. */
function bayNames(plan: Plan, columns: readonly Column[], y: Mm): readonly Part[] {
  return columns.flatMap(({ span, left, right }) => {
    const middle = (left + right) / 2;
    if (span.bayId.includes("/")) return [label(jointName(plan, span.bayId), { x: middle, y: -2.4 }, { anchor: "middle" })];
    return textWidth(span.bayId) + 1 <= right - left ? [label(span.bayId, { x: middle, y }, { anchor: "middle" })] : [];
  });
}

function ends(run: Run, { left, right, y }: { readonly left: Mm; readonly right: Mm; readonly y: Mm }): readonly Part[] {
  const words = (end: Run["left"]): Text => (end.pulls ? `${end.postId}: pulled here` : `${end.postId}: holds`);
  return [label(words(run.left), { x: left, y }), label(words(run.right), { x: right, y }, { anchor: "end" })];
}

function describe(run: Run, show: Show): Text {
  const bends = run.bends.map(({ postId, angle }) => `${show.angle(Math.abs(angle))} at ${postId}`).join(", ");
  return `Tension along run ${run.id} from ${run.left.postId} to ${run.right.postId}: ${show.forceBoth(run.tension.target)} at the pulling end, least ${show.forceDown(run.tension.least)} in bay ${run.tension.leastBayId}. Bends: ${bends}. The table of cables holds the same numbers.`;
}
