// Do the bores, with nothing else, give back the cables? Random outlines, rebuilt with vectors that the program has no part in.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Bore, Plan, Run } from "../../src/plan/plan.ts";
import { exampleNames, examplePlan, exampleText, jobOf } from "../support/example-jobs.ts";

type V = readonly [x: number, y: number];
const plus = (a: V, b: V, by = 1): V => [a[0] + by * b[0], a[1] + by * b[1]];
const gap = (a: V, b: V): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
/** Distance of a point from the line through two others. */
const off = (p: V, a: V, b: V): number => Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / gap(a, b);

interface Line {
  readonly start: V;
  readonly along: V;
  readonly out: V;
}

/** Each side of the job by complex numbers: the direction is turned by exp(-i turn); an interruption moves the start. */
function linesOf(job: Job): readonly Line[] {
  let start: V = [0, 0];
  let along: V = [1, 0];
  return job.sides.map(({ length, turn, interrupted }) => {
    const out: V = [-along[1], along[0]];
    const line = { start, along, out };
    start = plus(plus(plus(start, along, length), along, interrupted?.width ?? 0), out, interrupted?.out ?? 0);
    const [c, s] = [Math.cos(turn ?? 0), Math.sin(turn ?? 0)];
    along = [along[0] * c + along[1] * s, along[1] * c - along[0] * s];
    return line;
  });
}

interface Hole {
  readonly bore: Bore;
  readonly sideId: string;
  readonly left: V;
  readonly right: V;
  /** How far off the line of the cable a bore may be. */
  readonly play: number;
}

/** The two ends of each bore of a cable, in the order of the schedule of uprights. */
function holesOf(plan: Plan, run: Run, course: number): readonly Hole[] {
  const lines = new Map(linesOf(plan.job).map((line, index) => [plan.job.sides[index]?.id, line]));
  return plan.verticals.flatMap((upright) =>
    plan.bores
      .filter((bore) => bore.verticalId === upright.id && bore.runId === run.id && bore.course === course)
      .map((bore): Hole => {
        const line = lines.get(upright.sideId);
        if (line === undefined) throw new Error(`no side ${upright.sideId}`);
        // The middle of a leaning post is elsewhere at each height; its bore is set off by as much, to a mark of the tape.
        const offLine = bore.offset + upright.lean * bore.height;
        const middle = plus(plus(line.start, line.along, upright.station), line.out, offLine);
        return {
          bore,
          sideId: upright.sideId,
          // Marks of the tape are 1/16 in or 1 mm apart.
          play: upright.lean === 0 ? 1e-6 : 0.8,
          left: plus(middle, line.along, -upright.along / 2),
          right: plus(middle, line.along, upright.along / 2),
        };
      }),
  );
}

/** Two runs that end on one post are bored off its middle: there the cable is not on the line of its side. */
const isEndSetOff = (run: Run, ...holes: readonly Hole[]): boolean =>
  holes.some(({ bore }) => [run.left, run.right].some(({ postId, offset }) => postId === bore.verticalId && offset !== 0));

const lengthOf = (holes: readonly Hole[]): number => {
  const points = holes.flatMap(({ left, right }) => [left, right]);
  return points.slice(1).reduce((sum, point, index) => sum + gap(points[index] ?? point, point), 0);
};

function expectRebuilt(plan: Plan): void {
  for (const { runId, course } of plan.cables) {
    const run = plan.runs.find(({ id }) => id === runId);
    if (run === undefined) throw new Error(`no run ${runId}`);
    const holes = holesOf(plan, run, course);
    // The cable schedule's length, from the bores alone; free lengths are kept to a millionth of a millimetre each.
    expect(lengthOf(holes)).toBeCloseTo(run.pathLength, holes.some(({ play }) => play > 0.1) ? 1 : 4);
    for (const [index, hole] of holes.entries()) {
      const next = holes[index + 1];
      if (next === undefined || next.sideId !== hole.sideId || isEndSetOff(run, hole, next)) continue;
      // Neighbours on a side are bored on one line.
      const line = linesOf(plan.job)[plan.job.sides.findIndex(({ id }) => id === hole.sideId)];
      const end = plus(hole.left, line?.along ?? [1, 0]);
      expect(off(next.left, hole.left, end)).toBeLessThan(hole.play + next.play);
      expect(off(next.right, hole.left, end)).toBeLessThan(hole.play + next.play);
      expect(next.bore.height).toBe(hole.bore.height);
    }
  }
  for (const bore of plan.bores) {
    const upright = plan.verticals.find(({ id }) => id === bore.verticalId);
    const widest = Math.max(bore.diameter, bore.counterbore?.diameter ?? 0);
    const edge = (upright?.across ?? 0) / 2 - Math.abs(bore.offset) - widest / 2;
    const kept = plan.checks.find(({ id }) => id === "edge-distance");
    expect(edge).toBeGreaterThanOrEqual((kept?.demand?.value ?? Number.NaN) - 1e-9);
    expect(bore.height - widest / 2).toBeGreaterThan(plan.opening.bottom);
    expect(bore.height + widest / 2).toBeLessThan(plan.opening.top);
  }
}

describe.each(exampleNames)("the bores of %s", (name) => {
  test("give back its cables, and lie in their posts", () => expectRebuilt(examplePlan(name)));
});

interface Outline {
  readonly lengths: readonly number[];
  readonly turns: readonly number[];
}

const outline: fc.Arbitrary<Outline> = fc.integer({ min: 1, max: 4 }).chain((count) =>
  fc.record({
    lengths: fc.array(fc.integer({ min: 60, max: 150 }), { minLength: count, maxLength: count }),
    // Degrees, inside corners and the 135 deg corners of a bay among them.
    turns: fc.array(fc.constantFrom(90, -90, 45, -45, 30, -20, 10, 62, -75), { minLength: count - 1, maxLength: count - 1 }),
  }),
);

const textOf = ({ lengths, turns }: Outline, bearing = 90): string => {
  const sides = lengths.map((length, index) => {
    const turn = turns[index];
    return `    - length: ${length} in\n${turn === undefined ? "" : `      turn: ${turn < 0 ? "left" : "right"} ${Math.abs(turn)} deg\n`}`;
  });
  return exampleText("two-corners-4x4")
    .replace(/ {2}sides:\n(?: {4}.*\n)+/, `  sides:\n${sides.join("")}`)
    .replace(/ {2}start: .*\n {2}end: .*\n/, "  start: { kind: post, access: drill }\n  end: { kind: post, access: drill }\n")
    .replace(/ {2}bearing: .*/, `  bearing: ${bearing} deg`);
};

const lengthsOf = (plan: Plan): readonly number[] => plan.runs.map(({ pathLength }) => pathLength);

test("random outlines: bores give back the cables, and a mirrored or turned guard has the same lengths", () => {
  let planned = 0;
  fc.assert(
    fc.property(outline, (given) => {
      const plan = makePlan(jobOf(textOf(given))).value;
      // Outlines that cross themselves are refused.
      if (plan === undefined) return;
      planned += 1;
      expectRebuilt(plan);
      const turned = makePlan(jobOf(textOf(given, 213))).value;
      expect(turned && lengthsOf(turned)).toEqual(lengthsOf(plan));
      // Seen in a mirror what was left is right: the sides come in the other order, and an outside corner stays one.
      const mirrored = makePlan(jobOf(textOf({ lengths: given.lengths.toReversed(), turns: given.turns.toReversed() }))).value;
      const sum = (one: Plan | undefined): number => (one === undefined ? 0 : lengthsOf(one).reduce((all, length) => all + length, 0));
      expect(sum(mirrored)).toBeCloseTo(sum(plan), 4);
      // And upside down: every outside corner is an inside corner.
      const inside = makePlan(jobOf(textOf({ ...given, turns: given.turns.map((turn) => -turn) }))).value;
      expect(sum(inside)).toBeCloseTo(sum(plan), 4);
    }),
    { numRuns: 4, seed: 11 },
  );
  expect(planned).toBeGreaterThan(2);
}, 120_000);
