// What happens to every cable of a run, step by step: all pulled to one reading beside each pulled to its own?
import type { Room } from "../../drawing/paper.ts";
import { circle, type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, textLines, textWidth, wrap } from "../../drawing/text.ts";
import type { Plan, Run } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import type { Mm, Newton } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { courseName, finishDrawing, footer, showOf } from "./kit.ts";
import { marksRightOf, type NamedValue, namesLeftOf, namesWidth } from "./plot-values.ts";

/** The axes are at least so high; more where the marks at the ends of the lines need it. */
const HEIGHT_mm = 40;
/** Between the two halves, for the marks at the ends of the lines. */
const GAP_mm = 11;
const RIGHT_mm = 9;
const DOT_mm = 0.65;
/** Above so much of the target the scale need not begin at nothing. */
const ZERO_share = 0.35;
/** Ends that lie closer together than this are told by one value. */
const APART_mm = 8;

interface Half {
  readonly title: Text;
  readonly steps: readonly Step[];
}

interface Step {
  /** 0 where runs that share the frame are pulled after this one: their names stand in its place. */
  readonly course: number;
  readonly others?: Text;
  readonly tensions: readonly Newton[];
  readonly pass: number;
}

interface Scale {
  readonly yOf: (tension: Newton) => Mm;
  readonly bottom: Newton;
  readonly height: Mm;
}

export function tensionSteps(plan: Plan, runId: string, box: Room): Drawing {
  const run = plan.runs.find(({ id }) => id === runId);
  const tightening = plan.tightening.find((one) => one.runId === runId);
  if (run === undefined || tightening === undefined) throw new RangeError(`no run ${runId}`);
  const halves = halvesOf(run, tightening);
  const scale = scaleOf(run, halves);
  const drawn = plot(plan, run, { halves, scale, room: box });
  const show = showOf(plan);
  const others = laterRuns(run.id, tightening.together);
  const notes = [
    ...(others.length === 0 ? [] : [`${others.join(", ")} below the last step of each half: when the cables of that run are pulled too.`]),
    `Left: from the middle outward. Right: ${tightening.orderName}. One line for each cable from its first pull (dot; its number below) on.`,
    `Solid across: the target. Dashed: at least and at most at the end. The scale begins at ${show.force(scale.bottom)}.`,
  ];
  return finishDrawing({
    id: `tension-steps-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: tension of every cable after every step`,
    description: describe(plan, run, tightening),
    parts: [...drawn, footer(drawn, { scale: null, units: plan.job.units, notes, room: box })],
  });
}

/** Short, so that each title is one line; the words below have the rest. Each half ends when all runs of the frame are pulled. */
function halvesOf(run: Run, { plain, steps, passes, together }: RunTightening): readonly [Half, Half] {
  const later = laterRuns(run.id, together);
  const others = later.length > 2 ? `${later[0]} to ${later.at(-1)}` : later.join(" ");
  const end = (tensions: readonly Newton[]): readonly Step[] =>
    others === "" ? [] : [{ course: 0, others, tensions, pass: passes.at(-1)?.number ?? 1 }];
  return [
    {
      title: "Customary: every cable to the target",
      steps: [...plain.steps.map((step) => ({ ...step, pass: 1 })), ...end(plain.tensions)],
    },
    {
      title: passes.length === 1 ? "Here: each cable to its own reading" : `Here: ${passes.length} passes`,
      // The last pass leaves every cable of the frame at its target.
      steps: [...steps, ...end(plain.tensions.map(() => run.tension.target))],
    },
  ];
}

/** Runs that are pulled after this one in each pass and change what its cables bear. */
export const laterRuns = (runId: string, together: readonly string[]): readonly string[] => together.slice(together.indexOf(runId) + 1);

function scaleOf(run: Run, halves: readonly Half[]): Scale {
  const { target, low, high } = run.tension;
  const pulled = halves.flatMap(linesOf).flatMap(({ points }) => points.map(({ tension }) => tension));
  // Where the strand bears less than is asked, the upper end of the band lies below the lower one.
  const [least, most] = [Math.min(...pulled, low, high), Math.max(...pulled, low, high)];
  const bottom = least < ZERO_share * target ? 0 : least - 0.15 * (most - least);
  const top = most + 0.05 * (most - bottom);
  const count = halves[0]?.steps[0]?.tensions.length ?? 0;
  const height = Math.max(HEIGHT_mm, count * lineHeight());
  return { bottom, height, yOf: (tension) => height * (1 - (tension - bottom) / (top - bottom)) };
}

interface CableLine {
  readonly course: number;
  readonly points: readonly { readonly step: number; readonly tension: Newton; readonly isPulled: boolean }[];
}

/** Of every cable what it bears after each step from its first one on. */
const linesOf = ({ steps }: Half): readonly CableLine[] =>
  (steps[0]?.tensions ?? []).map((_, index) => {
    const course = index + 1;
    const first = steps.findIndex((step) => step.course === course);
    const points = steps.map((step, number) => ({ step: number, tension: step.tensions[index] ?? 0, isPulled: step.course === course }));
    return { course, points: first < 0 ? [] : points.slice(first) };
  });

interface Plotting {
  readonly halves: readonly [Half, Half];
  readonly scale: Scale;
  readonly room: Room;
}

function plot(plan: Plan, run: Run, { halves, scale, room }: Plotting): readonly Part[] {
  const values = valuesOf(plan, run, { halves, scale });
  const left = namesWidth(values);
  const wide = room.width - 1.2 - left - GAP_mm - RIGHT_mm;
  const [first, second] = halves;
  // Each half takes its share, but its title needs room.
  const share = Math.min(0.5, Math.max(0.32, first.steps.length / (first.steps.length + second.steps.length)));
  const middle = left + wide * share;
  const one = halfParts(run, first, { scale, left, right: middle });
  const other = halfParts(run, second, { scale, left: middle + GAP_mm, right: left + wide + GAP_mm });
  return [...one, ...other, ...namesLeftOf(left, values), label("pulled", { x: left - 3, y: scale.height + 4 }, { anchor: "end" })];
}

function valuesOf(plan: Plan, { tension }: Run, { halves, scale }: Omit<Plotting, "room">): readonly NamedValue[] {
  const show = showOf(plan);
  const [first, second] = halves;
  const highest = Math.max(...second.steps.map(({ tensions, course }) => tensions[course - 1] ?? 0));
  const weakest = Math.min(...(first.steps.at(-1)?.tensions ?? []));
  const named: readonly (readonly [Text, Newton])[] = [
    [`highest ${show.force(highest)}`, highest],
    [`at most ${show.forceDown(tension.high)}`, tension.high],
    [`target ${show.force(tension.target)}`, tension.target],
    [`at least ${show.forceUp(tension.low)}`, tension.low],
    [`weakest ${show.force(weakest)}`, weakest],
  ];
  return named.map(([text, value]) => ({ text, y: scale.yOf(value) }));
}

interface Place {
  readonly scale: Scale;
  readonly left: Mm;
  readonly right: Mm;
}

function halfParts(run: Run, half: Half, { scale, left, right }: Place): readonly Part[] {
  const { yOf, height } = scale;
  const wide = (right - left) / Math.max(1, half.steps.length);
  const xOf = (step: number): Mm => left + (step + 0.5) * wide;
  const across = (tension: Newton): Line => [
    { x: left, y: yOf(tension) },
    { x: right, y: yOf(tension) },
  ];
  const lines = linesOf(half);
  const title = wrap(half.title, right - left, { weight: 700 });
  const passes = passNames(half, xOf, -3);
  const above = passes.length > 0 ? -3 - lineHeight() : -3;
  return [
    ...textLines(title, { x: left, y: above - (title.length - 1) * lineHeight() }, { weight: 700 }),
    ...passes,
    strokes("edge", [
      [
        { x: left, y: 0 },
        { x: left, y: height },
        { x: right, y: height },
      ],
      across(run.tension.target),
    ]),
    strokes("hidden", [across(run.tension.low), across(run.tension.high)]),
    strokes(
      "cable",
      lines.map(({ points }) => points.map(({ step, tension }) => ({ x: xOf(step), y: yOf(tension) }))).filter((line) => line.length > 1),
    ),
    ...lines.flatMap(({ points }) =>
      points
        .filter(({ isPulled }) => isPulled)
        .map(({ step, tension }) => circle({ x: xOf(step), y: yOf(tension) }, DOT_mm, { pen: "thin", fill: "black" })),
    ),
    ...pulledNames(half, { xOf, wide, y: height + 4 }),
    ...endNames(lines, { x: xOf(half.steps.length - 1) + DOT_mm, yOf, height }),
  ];
}

/** The number of the cable that is pulled at each step, in as many rows as keep them apart. */
function pulledNames({ steps }: Half, { xOf, wide, y }: { readonly xOf: (step: number) => Mm; readonly wide: Mm; readonly y: Mm }) {
  const needed = textWidth("00") + 1;
  const rows = wide >= needed ? 1 : wide * 2 >= needed ? 2 : 3;
  return steps.map(({ course, others }, step) =>
    label(others ?? courseName(course), { x: xOf(step), y: y + (step % rows) * lineHeight() }, { anchor: "middle" }),
  );
}

/** Over its steps the name of each pass, where there is more than one. */
function passNames({ steps }: Half, xOf: (step: number) => Mm, y: Mm): readonly Part[] {
  const passes = [...new Set(steps.map(({ pass }) => pass))];
  if (passes.length < 2) return [];
  return passes.map((pass) => {
    const own = steps.flatMap((step, index) => (step.pass === pass ? [index] : []));
    return label(`pass ${pass}`, { x: (xOf(own[0] ?? 0) + xOf(own.at(-1) ?? 0)) / 2, y }, { anchor: "middle" });
  });
}

/** Where the cables end apart from each other their numbers stand at the ends of their lines. */
function endNames(lines: readonly CableLine[], { x, yOf, height }: { readonly x: Mm; readonly yOf: Scale["yOf"]; readonly height: Mm }) {
  const ends = lines.flatMap(({ course, points }): readonly NamedValue[] => {
    const last = points.at(-1);
    return last === undefined ? [] : [{ text: courseName(course), y: yOf(last.tension) }];
  });
  const heights = ends.map(({ y }) => y);
  return Math.max(...heights) - Math.min(...heights) < APART_mm ? [] : marksRightOf(x, ends, { from: 0, to: height });
}

function describe(plan: Plan, run: Run, tightening: RunTightening): Text {
  const show = showOf(plan);
  const { plain, steps, orderName, together } = tightening;
  const others = laterRuns(run.id, together);
  const when = others.length === 0 ? "" : `, when ${others.join(" and ")} stand too,`;
  const ends = plain.tensions.map((tension, index) => `${courseName(index + 1)} ${show.force(tension)}`);
  const own = steps.map(({ course, pass, reading }) => `${courseName(course)}${pass > 1 ? ` (pass ${pass})` : ""} ${show.force(reading)}`);
  const [, here] = halvesOf(run, tightening);
  const last = here.steps.at(-1)?.tensions ?? [];
  return (
    `Left: every cable of run ${run.id} is pulled to ${show.forceBoth(run.tension.target)} in the customary order; the cables then${when} hold ${ends.join(", ")}. ` +
    `Right: ${orderName}, stopped at ${own.join(", ")}; then${when} all hold ${show.force(Math.min(...last))} to ${show.force(Math.max(...last))}. The log holds the same readings.`
  );
}
