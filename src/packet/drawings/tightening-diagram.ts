// In which order are the cables of one run tightened, from which end, to which reading?
import type { Room } from "../../drawing/paper.ts";
import { arrowhead, type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, MARK_mm, textLines, textWidth, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan, Run, RunEnd } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { endName } from "../wording.ts";
import { courseName, finishDrawing, showOf } from "./kit.ts";

/** Courses are drawn evenly spaced: order and readings matter here, not distances. */
const PITCH_mm = { least: 4, most: 6.2 } as const;
const ARROW_mm = 8;
/** Height of the uppermost course, under the words about the two ends. */
const TOP_mm = 18.4;
/** Below the lowest course: where the least tension is left. */
const BELOW_mm = 10;
/** The whole diagram, notes beside it, leaves room for the log. */
const HEIGHT_mm = 73;
/** The notes stand to the right of the diagram. */
const NOTES_mm = 62;
const GAP_mm = 5;

export function tighteningDiagram(plan: Plan, runId: string, box: Room): Drawing {
  const run = plan.runs.find(({ id }) => id === runId);
  const tightening = plan.tightening.find((one) => one.runId === runId);
  if (run === undefined || tightening === undefined) throw new RangeError(`no run ${runId}`);
  const frame = frameOf(plan, run, box);
  const lines = notesOf(plan, run, tightening).flatMap((note) => wrap(note, NOTES_mm));
  const notes = textLines(lines, { x: box.width - 1.2 - NOTES_mm, y: 2.5 });
  return finishDrawing({
    id: `tightening-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: order of tightening, the same in every pass`,
    description: describe(plan, run, tightening),
    parts: [...courseLines(plan, run, tightening, frame), ...tensions(plan, run, frame), ...notes],
  });
}

interface Frame {
  /** Left and right ends of the course lines. */
  readonly left: Mm;
  readonly right: Mm;
  readonly pitch: Mm;
}

/** Heights, courses and the order stand left of the lines; the order again at their right where that end pulls too. */
function frameOf(plan: Plan, run: Run, box: Room): Frame {
  const show = showOf(plan);
  const height = Math.max(...plan.courses.map((course) => textWidth(show.tape(course.height))));
  const pitch = (HEIGHT_mm - TOP_mm - BELOW_mm) / plan.courses.length;
  return {
    left: Math.max(height, textWidth("height")) + 36,
    right: box.width - 1.2 - NOTES_mm - GAP_mm - (run.right.pulls ? ARROW_mm + ORDER_mm : 0),
    pitch: Math.min(Math.max(pitch, PITCH_mm.least), PITCH_mm.most),
  };
}

/** Width of the column of the order. */
const ORDER_mm = 9.5;

function courseLines(plan: Plan, run: Run, { order }: RunTightening, frame: Frame): readonly Part[] {
  const show = showOf(plan);
  const { left, right, pitch } = frame;
  const count = plan.courses.length;
  const yOf = (number: number): Mm => (count - number) * pitch + TOP_mm;
  const [top, bottom] = [TOP_mm - 3, yOf(1) + 3];
  const upright = (x: Mm): Line => [
    { x, y: top },
    { x, y: bottom },
  ];
  const lines = plan.courses.map(
    ({ number }): Line => [
      { x: left, y: yOf(number) },
      { x: right, y: yOf(number) },
    ],
  );
  const course_x = left - ARROW_mm - ORDER_mm - 10;
  const head_y = TOP_mm - 4.8;
  const ends = [
    { end: run.left, x: left, toward: -1 },
    { end: run.right, x: right, toward: 1 },
  ] as const;
  return [
    strokes("edge", lines),
    strokes("outline", [upright(left), upright(right)]),
    ...endWords(run, left, right, show),
    ...plan.courses.flatMap(({ number, height }) => {
      const y = yOf(number);
      const turn = String(order.indexOf(number) + 1);
      return [
        label(show.tape(height), { x: 0, y }),
        label(courseName(number), { x: course_x, y }, { weight: 700, anchor: "middle" }),
        ...ends.flatMap(({ end, x, toward }) => (end.pulls ? pullSign({ x, y }, toward, turn) : [])),
      ];
    }),
    label("height", { x: 0, y: head_y }),
    label("course", { x: course_x, y: head_y }, { anchor: "middle" }),
    ...ends.flatMap(({ end, x, toward }) =>
      end.pulls ? [label("order", { x: x + toward * (ARROW_mm + ORDER_mm / 2), y: head_y }, { anchor: "middle" })] : [],
    ),
  ];
}

/** An arrow away from the cable, and behind it the place of the cable in the order. */
const pullSign = (at: Point, toward: 1 | -1, turn: Text): readonly Part[] => [
  strokes("cable", [[at, { x: at.x + toward * (ARROW_mm - 2), y: at.y }]]),
  arrowhead({ x: at.x + toward * ARROW_mm, y: at.y }, { x: toward, y: 0 }, 2.8),
  label(turn, { x: at.x + toward * (ARROW_mm + ORDER_mm / 2), y: at.y }, { size: MARK_mm, weight: 700, anchor: "middle" }),
];

/** What each end does; where it pulls, the reading to aim at and the least that is enough. */
function endWords(run: Run, left: Mm, right: Mm, show: Show): readonly Part[] {
  const { target, low } = run.tension;
  const words = (end: RunEnd, x: Mm, anchor: "start" | "end"): readonly Part[] => [
    label(`${end.postId}, ${endName[end.kind]}`, { x, y: 2.5 }, { weight: 700, anchor }),
    label(end.pulls ? `pull to ${show.force(target)}` : "holds", { x, y: 6 }, { weight: 700, anchor }),
    ...(end.pulls ? [label(`at least ${show.force(low)}`, { x, y: 9.5 }, { anchor })] : []),
  ];
  return [...words(run.left, left, "start"), ...words(run.right, right, "end")];
}

/** Under the courses: where the least tension is left, and how much. */
function tensions(plan: Plan, run: Run, { left, right, pitch }: Frame): readonly Part[] {
  const y = (plan.courses.length - 1) * pitch + TOP_mm + 5;
  const index = run.bayIds.indexOf(run.tension.leastBayId);
  const share = (Math.max(0, index) + 0.5) / Math.max(1, run.bayIds.length);
  const x = left + (right - left) * share;
  const words = `least in bay ${run.tension.leastBayId}: ${showOf(plan).forceBoth(run.tension.least)}`;
  const half = textWidth(words) / 2;
  const at = { x: Math.min(Math.max(x, left + half), right - half), y: y + 4.2 };
  return [
    strokes("thin", [
      [
        { x: left, y },
        { x: right, y },
      ],
    ]),
    strokes("edge", [
      [
        { x, y: y - 1.2 },
        { x, y: y + 1.6 },
      ],
    ]),
    label(words, at, { anchor: "middle" }),
  ];
}

/** The reading of each pass and what is good enough, from the steps themselves: two lines for each. */
function passesOf(plan: Plan, { steps }: RunTightening): readonly (readonly [Text, Text])[] {
  const show = showOf(plan);
  const passes = [...new Map(steps.map((step) => [step.pass, step])).values()];
  return passes.map((step, index) => {
    const checks = passes[index - 1]?.reading === step.reading ? " Check: turn a nut only where it reads outside." : "";
    return [`Pass ${step.pass}: ${show.forceBoth(step.reading)}`, `good: ${show.forceBand(step.reading_low, step.reading_high)}.${checks}`];
  });
}

function notesOf(plan: Plan, run: Run, tightening: RunTightening): readonly Text[] {
  const both = run.left.pulls && run.right.pulls;
  return [
    ...passesOf(plan, tightening).flat(),
    `Order: which cable comes first, second and so on. ${both ? `Turn the nuts at ${run.left.postId} and ${run.right.postId} by turns, so that both readings rise together, before the next cable. ` : ""}Go through the whole order, then begin the next pass.`,
    "Not to scale.",
  ];
}

function describe(plan: Plan, run: Run, tightening: RunTightening): Text {
  const show = showOf(plan);
  const pulled = [run.left, run.right].filter(({ pulls }) => pulls).map(({ postId }) => postId);
  return (
    `Cables of run ${run.id}, tightened at ${pulled.join(" and ")} to ${show.forceBoth(run.tension.target)}, at least ${show.forceBoth(run.tension.low)}, in the order of courses ${tightening.order.map(courseName).join(", ")}. ` +
    `${passesOf(plan, tightening)
      .map((lines) => lines.join("; "))
      .join(" ")} ` +
    `Least tension when all readings are right: ${show.forceBoth(run.tension.least)} in bay ${run.tension.leastBayId}. The log below has a row for each step.`
  );
}
