// In which order are the cables of one run tightened, from which end, to which reading?
import type { Room } from "../../drawing/paper.ts";
import { arrowhead, circle, group, type Line, type Part, strokes } from "../../drawing/shape.ts";
import { label, MARK_mm, textWidth } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Plan, Run, RunEnd, RunTightening, TighteningStep } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { showIn } from "../show-number.ts";
import { endName } from "../wording.ts";
import { courseName, finishDrawing, footer } from "./kit.ts";

/** Courses are drawn evenly spaced: order and readings matter here, not distances. */
const PITCH_mm = 7.6;
const RADIUS_mm = 3.1;
const ARROW_mm = 9;
/** Height of the uppermost course, under the words about the two ends. */
const TOP_mm = 17;

export function tighteningDiagram(plan: Plan, runId: string, box: Room): Drawing {
  const run = plan.runs.find(({ id }) => id === runId);
  const tightening = plan.tightening.find((one) => one.runId === runId);
  if (run === undefined || tightening === undefined) throw new RangeError(`no run ${runId}`);
  const drawn = [...courseLines(plan, run, tightening, box), ...tensions(plan, run, box)];
  const foot = footer(drawn, { scale: null, units: plan.job.units, notes: notesOf(plan, run, tightening), room: box });
  return finishDrawing({
    id: `tightening-${run.id.toLowerCase()}`,
    title: `Run ${run.id}: order of tightening, the same in every pass`,
    description: describe(plan, run, tightening),
    parts: [...drawn, foot],
  });
}

interface Columns {
  readonly left: Mm;
  readonly right: Mm;
}

/** Left and right ends of the course lines. */
const columnsOf = (plan: Plan, box: Room): Columns => {
  const height = Math.max(...plan.courses.map((course) => textWidth(showIn(plan.job.units).tape(course.height))));
  return { left: height + 34, right: box.width - 24 };
};

function courseLines(plan: Plan, run: Run, tightening: RunTightening, box: Room): readonly Part[] {
  const { order } = tightening;
  const show = showIn(plan.job.units);
  const reading = `gauge at last: ${show.forceBoth(lastPass(tightening).reading)}`;
  const { left, right } = columnsOf(plan, box);
  const count = plan.courses.length;
  const yOf = (number: number): Mm => (count - number) * PITCH_mm + TOP_mm;
  const lines = plan.courses.map(
    ({ number }): Line => [
      { x: left, y: yOf(number) },
      { x: right, y: yOf(number) },
    ],
  );
  const bottom = yOf(1) + PITCH_mm * 0.75;
  const posts = strokes("outline", [
    [
      { x: left, y: 10.5 },
      { x: left, y: bottom },
    ],
    [
      { x: right, y: 10.5 },
      { x: right, y: bottom },
    ],
  ]);
  return [
    strokes("cable", lines),
    posts,
    ...endWords(run.left, { x: left, y: 2.5 }, "start", reading),
    ...endWords(run.right, { x: right, y: 2.5 }, "end", reading),
    ...plan.courses.flatMap(({ number, height }) => {
      const y = yOf(number);
      const turn = String(order.indexOf(number) + 1);
      return [
        label(show.tape(height), { x: 0, y }),
        label(courseName(number), { x: left - 30, y }, { size: MARK_mm, weight: 700 }),
        ...(run.left.pulls ? pullSign({ x: left, y }, -1, turn) : []),
        ...(run.right.pulls ? pullSign({ x: right, y }, 1, turn) : []),
      ];
    }),
    label("height", { x: 0, y: TOP_mm - 6 }),
    label("course", { x: left - 30, y: TOP_mm - 6 }),
  ];
}

/** An arrow away from the cable with the number of the turn behind it, in a circle. */
function pullSign(at: Point, toward: 1 | -1, turn: Text): readonly Part[] {
  const tip = { x: at.x + toward * ARROW_mm, y: at.y };
  const middle = { x: tip.x + toward * (RADIUS_mm + 1), y: at.y };
  return [
    strokes("cable", [[at, { x: tip.x - toward * 2, y: at.y }]]),
    arrowhead(tip, { x: toward, y: 0 }, 3),
    circle(middle, RADIUS_mm, { pen: "edge", fill: "white" }),
    label(turn, middle, { size: MARK_mm, weight: 700, anchor: "middle" }),
  ];
}

const endWords = (end: RunEnd, at: Point, anchor: "start" | "end", reading: Text): readonly Part[] => [
  label(`${end.postId}, ${endName[end.kind]}${end.pulls ? ": pull here" : ": holds"}`, at, { size: MARK_mm, weight: 700, anchor }),
  ...(end.pulls ? [label(reading, { x: at.x, y: at.y + 5 }, { anchor })] : []),
];

const lastPass = (tightening: RunTightening): TighteningStep => {
  const step = tightening.steps.at(-1);
  if (step === undefined) throw new RangeError("a run without steps");
  return step;
};

/** Under the courses: where the least tension is left, and how much. */
function tensions(plan: Plan, run: Run, box: Room): readonly Part[] {
  const show = showIn(plan.job.units);
  const { left, right } = columnsOf(plan, box);
  const y = plan.courses.length * PITCH_mm + TOP_mm + 2;
  const index = run.bayIds.indexOf(run.tension.leastBayId);
  const share = (Math.max(0, index) + 0.5) / Math.max(1, run.bayIds.length);
  const least = { x: left + (right - left) * share, y };
  const words = `least in bay ${run.tension.leastBayId}: ${show.forceBoth(run.tension.least)}`;
  const half = textWidth(words) / 2;
  const at = { x: Math.min(Math.max(least.x, left + half), right - half), y: y + 7.5 };
  return [
    group([
      strokes("thin", [
        [
          { x: left, y },
          { x: right, y },
        ],
      ]),
      strokes("edge", [
        [
          { x: least.x, y: y - 1.4 },
          { x: least.x, y: y + 1.4 },
        ],
        [
          { x: least.x, y: y + 1.4 },
          { x: Math.min(Math.max(least.x, at.x - half), at.x + half), y: y + 5 },
        ],
      ]),
    ]),
    label(words, at, { anchor: "middle" }),
  ];
}

/** The reading of each pass, from the steps themselves. */
function passesOf(plan: Plan, { steps }: RunTightening): readonly Text[] {
  const show = showIn(plan.job.units);
  const passes = [...new Map(steps.map((step) => [step.pass, step])).values()];
  return passes.map((step, index) => {
    const checks = passes[index - 1]?.reading === step.reading ? " Check: turn a nut only where it reads outside." : "";
    return `Pass ${step.pass}: ${show.forceBoth(step.reading)}; good: ${show.forceBand(step.reading_low, step.reading_high)}.${checks}`;
  });
}

function notesOf(plan: Plan, run: Run, tightening: RunTightening): readonly Text[] {
  const both = run.left.pulls && run.right.pulls;
  return [
    ...passesOf(plan, tightening),
    `The number in the circle is the turn of each cable${both ? "; pull each cable at both ends before the next one" : ""}. Go through all turns, then begin the next pass. Not to scale.`,
  ];
}

function describe(plan: Plan, run: Run, tightening: RunTightening): Text {
  const show = showIn(plan.job.units);
  const pulled = [run.left, run.right].filter(({ pulls }) => pulls).map(({ postId }) => postId);
  return (
    `Cables of run ${run.id}, tightened at ${pulled.join(" and ")} in the order of courses ${tightening.order.map(courseName).join(", ")}. ` +
    `${passesOf(plan, tightening).join(" ")} ` +
    `Least tension when all readings are right: ${show.forceBoth(run.tension.least)} in bay ${run.tension.leastBayId}. The log below has a row for each step.`
  );
}
