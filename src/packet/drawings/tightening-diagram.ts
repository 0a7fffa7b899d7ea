// In which order are the cables of one run tightened, from which end, to which reading?
import type { Room } from "../../drawing/paper.ts";
import { arrowhead, type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, MARK_mm, textLines, textWidth, wrap } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan, Run } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import { courseHeight } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
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
  const frame = frameOf(plan, run, tightening, box);
  const lines = notesOf(plan, run, tightening).flatMap((note) => wrap(note, NOTES_mm));
  const notes = textLines(lines, { x: box.width - 1.2 - NOTES_mm, y: 2.5 });
  return finishDrawing({
    id: `tightening-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: order of tightening${tightening.passes.length > 1 ? ", the same in every pass" : ""}`,
    description: describe(plan, run, tightening),
    parts: [...courseLines(plan, run, tightening, frame), ...tensions(plan, run, frame), ...notes],
  });
}

interface Frame {
  /** Where the readings of each compensated pass end, left of the order. */
  readonly stops: readonly Stop[];
  /** Left and right ends of the course lines. */
  readonly left: Mm;
  readonly right: Mm;
  readonly pitch: Mm;
}

/** One pass in which each cable has its own reading. */
interface Stop {
  readonly pass: number;
  readonly x: Mm;
}

/** Heights, courses, readings and the order stand left of the lines; the order again at their right where that end pulls too. */
function frameOf(plan: Plan, run: Run, { passes }: RunTightening, box: Room): Frame {
  const show = showOf(plan);
  const height = Math.max(...plan.courses.map((course) => textWidth(show.tape(courseHeight(course, run)))));
  const pitch = (HEIGHT_mm - TOP_mm - BELOW_mm) / plan.courses.length;
  const first = Math.max(height, textWidth("height")) + 15;
  const own = passes.filter(({ kind }) => kind === "compensated");
  const stops = own.map(({ number }, index): Stop => ({ pass: number, x: first + (index + 1) * STOP_mm }));
  return {
    stops,
    left: first + own.length * STOP_mm + 4 + ARROW_mm + ORDER_mm,
    right: box.width - 1.2 - NOTES_mm - GAP_mm - (run.right.pulls ? ARROW_mm + ORDER_mm : 0),
    pitch: Math.min(Math.max(pitch, PITCH_mm.least), PITCH_mm.most),
  };
}

/** Width of a column of readings. */
const STOP_mm = 13;
/** Width of the column of the order. */
const ORDER_mm = 9.5;

function courseLines(plan: Plan, run: Run, { order, steps }: RunTightening, frame: Frame): readonly Part[] {
  const show = showOf(plan);
  const { left, right, pitch, stops } = frame;
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
  const course_x = (stops[0]?.x ?? left - ARROW_mm - ORDER_mm - 4 + STOP_mm) - STOP_mm - 5;
  const head_y = TOP_mm - 4.8;
  const ends = [
    { end: run.left, x: left, toward: -1 },
    { end: run.right, x: right, toward: 1 },
  ] as const;
  return [
    strokes("edge", lines),
    strokes("outline", [upright(left), upright(right)]),
    ...endWords(run, left, right),
    ...plan.courses.flatMap((course) => {
      const { number } = course;
      const y = yOf(number);
      const turn = String(order.indexOf(number) + 1);
      return [
        label(show.tape(courseHeight(course, run)), { x: 0, y }),
        label(courseName(number), { x: course_x, y }, { weight: 700, anchor: "middle" }),
        ...stops.map(({ pass, x }) => {
          const step = steps.find((one) => one.pass === pass && one.course === number);
          return label(show.gauge(step?.reading ?? 0), { x, y }, { weight: 700, anchor: "end" });
        }),
        ...ends.flatMap(({ end, x, toward }) => (end.pulls ? pullSign({ x, y }, toward, turn) : [])),
      ];
    }),
    label("height", { x: 0, y: head_y }),
    label("course", { x: course_x, y: head_y }, { anchor: "middle" }),
    ...stops.flatMap(({ pass, x }) => [
      label(stops.length > 1 ? `pass ${pass},` : "stop at,", { x, y: head_y - lineHeight() }, { anchor: "end" }),
      label(show.forceUnit, { x, y: head_y }, { anchor: "end" }),
    ]),
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

/** What each end does, each on a line of its own: the course lines may be short. */
const endWords = (run: Run, left: Mm, right: Mm): readonly Part[] =>
  [
    { end: run.left, at: { x: left, y: 2.5 }, anchor: "start" },
    { end: run.right, at: { x: right, y: 6 }, anchor: "end" },
  ].map(({ end, at, anchor }) =>
    label(`${end.postId}, ${endName[end.kind]}: ${end.pulls ? "pull" : "holds"}`, at, { weight: 700, anchor: anchor as "start" | "end" }),
  );

/** Under the courses: where the least tension is left, and how much. */
function tensions(plan: Plan, run: Run, { left, right, pitch }: Frame): readonly Part[] {
  const y = (plan.courses.length - 1) * pitch + TOP_mm + 5;
  const index = run.bayIds.indexOf(run.tension.leastBayId);
  const share = (Math.max(0, index) + 0.5) / Math.max(1, run.bayIds.length);
  const x = left + (right - left) * share;
  const words = `least in bay ${run.tension.leastBayId}: ${showOf(plan).forceDown(run.tension.least)}`;
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

/** What each pass asks: one reading of all cables, or one of each. */
const passWords = (plan: Plan, { passes, steps }: RunTightening): readonly Text[] =>
  passes.map(({ number, kind, share }) => {
    const show = showOf(plan);
    const step = steps.find(({ pass }) => pass === number);
    return kind === "compensated" || step === undefined
      ? `Pass ${number}: each cable to its own reading; its band stands in the log.`
      : `Pass ${number}: every cable to ${show.percent(share)}, ${show.forceBoth(step.reading)}, good: ${show.forceBand(step.reading_low, step.reading_high)}.`;
  });

function notesOf(plan: Plan, run: Run, tightening: RunTightening): readonly Text[] {
  const both = run.left.pulls && run.right.pulls;
  const several = tightening.passes.length > 1;
  const show = showOf(plan);
  return [
    ...passWords(plan, tightening),
    `At the end: ${show.forceBoth(run.tension.target)} at the nut, at least ${show.force(run.tension.low)}.`,
    `Order: which cable comes first, second and so on: ${tightening.orderName}. ${both ? `Turn the nuts at ${run.left.postId} and ${run.right.postId} by turns, so that both readings rise together, before the next cable. ` : ""}${several ? "Go through the whole order, then begin the next pass. " : ""}Then read all once more.`,
    "Not to scale.",
  ];
}

function describe(plan: Plan, run: Run, tightening: RunTightening): Text {
  const show = showOf(plan);
  const pulled = [run.left, run.right].filter(({ pulls }) => pulls).map(({ postId }) => postId);
  return (
    `Cables of run ${run.id}, tightened at ${pulled.join(" and ")} to ${show.forceBoth(run.tension.target)} at the end, at least ${show.forceBothUp(run.tension.low)}, ${tightening.orderName}, in the order of courses ${tightening.order.map(courseName).join(", ")}. ` +
    `${passWords(plan, tightening).join(" ")} Readings: ${tightening.steps.map(({ course, pass, reading }) => `${courseName(course)} pass ${pass} ${show.force(reading)}`).join(", ")}. ` +
    `Least tension when all readings are right: ${show.forceBothDown(run.tension.least)} in bay ${run.tension.leastBayId}. The log below has a row for each step.`
  );
}
