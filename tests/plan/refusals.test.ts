// What cannot be built as the job says it is said at the line that makes it impossible, with what to do.
import { describe, expect, test } from "vitest";
import { makePlan } from "../../src/plan/make-plan.ts";
import { changedText, jobOf, planOf } from "../support/example-jobs.ts";

const STRAIGHT = "rule-of-thumb";
const CORNERS = "two-corners-4x4";
const STEEL = "steel-too-long";
const EXISTING = "0006-porch-existing-posts";

interface Refusal {
  readonly name: string;
  readonly job: string;
  readonly changes: Readonly<Record<string, string>>;
  readonly path: string;
  readonly what: string;
}

const refusals: readonly Refusal[] = [
  {
    name: "three right turns of 90 degrees that bring side D back through side A",
    job: CORNERS,
    changes: { "    - length: 9 ft 7-1/2 in\n": "    - length: 9 ft 7-1/2 in\n      turn: right 90 deg\n    - length: 20 ft\n" },
    path: "guard.sides.3.length",
    what: "crosses or touches side A",
  },
  {
    name: "a turn of 1 degree",
    job: CORNERS,
    changes: { "turn: right 90 deg ": "turn: right 1 deg " },
    path: "guard.sides.0.turn",
    what: "is no corner",
  },
  {
    name: "a turn of 150 degrees",
    job: CORNERS,
    changes: { "turn: right 90 deg ": "turn: right 150 deg " },
    path: "guard.sides.0.turn",
    what: "too sharp",
  },
  {
    name: "a side of 8 in for two posts",
    job: CORNERS,
    changes: { "length: 15 ft 4 in": "length: 8 in" },
    path: "guard.sides.1.length",
    what: "too short for its two posts",
  },
  {
    name: "an opening of 3 in at 3 in spacing",
    job: STRAIGHT,
    changes: { "clear opening: 29 in": "clear opening: 3 in" },
    path: "frame.clear opening",
    what: "no room for a cable",
  },
  {
    name: "cables 5 in apart under a 4 in sphere",
    job: STRAIGHT,
    changes: { "tightening:\n": "limits: { largest cable spacing: 5 in }\n\ntightening:\n" },
    path: "limits.largest cable spacing",
    what: "lets the sphere of",
  },
  {
    name: "5 in under the bottom rail",
    job: STRAIGHT,
    changes: { "gap below: 2 in": "gap below: 5 in" },
    path: "frame.gap below",
    what: "under the bottom rail",
  },
  {
    name: "5 in between wall and post",
    job: CORNERS,
    changes: { "start: { kind: wall, gap: 3-1/2 in": "start: { kind: wall, gap: 5 in" },
    path: "guard.start.gap",
    what: "wider than",
  },
  {
    name: "nothing behind the last post",
    job: STRAIGHT,
    changes: { "end: { kind: post, access: drill }": "end: { kind: post, access: none }" },
    path: "guard.end.access",
    what: "nothing reaches the back of P5",
  },
  {
    name: "nothing behind either end",
    job: STRAIGHT,
    changes: {
      "end: { kind: post, access: drill }": "end: { kind: post, access: none }",
      "start: { kind: post, access: drill }": "start: { kind: post, access: none }",
    },
    path: "guard.start.access",
    what: "no reachable end",
  },
  {
    name: "corner posts 1 in from the corner point",
    job: CORNERS,
    changes: { "below datum: 11 in": "below datum: 11 in\n  corner setback: 1 in" },
    path: "posts.corner setback",
    what: "into each other",
  },
  {
    name: "two posts 3 in apart, each 3-1/2 in wide",
    job: EXISTING,
    changes: { "5 ft 9 in, 11 ft 4-1/2 in": "11 ft 1-1/2 in, 11 ft 4-1/2 in" },
    path: "guard.sides.0.stations.2",
    what: "no room between them",
  },
  {
    name: "a first post 1-3/4 in from a wall that is said to be 3-1/2 in off",
    job: EXISTING,
    changes: { "start: { kind: post, access: drill }": "start: { kind: wall, gap: 3-1/2 in }" },
    path: "guard.sides.0.stations.0",
    what: "but the gap is given as",
  },
  {
    name: "a pass bore smaller than the cable",
    job: STEEL,
    changes: { "pass bore: 7 mm": "pass bore: 3 mm" },
    path: "fittings.pass bore",
    what: "smaller than the cable",
  },
  {
    name: "a stud bore of 30 mm under a washer of 36 mm in a 50 mm post",
    job: STEEL,
    changes: { "bore: 8 mm, thread": "bore: 30 mm, thread", "washer: 18 mm": "washer: 36 mm" },
    path: "fittings.stud.bore",
    what: "more than half of a post",
  },
  {
    name: "4 mm cable of 7x7 at 100 mm over 2,500 mm: the code's table says X",
    job: STEEL,
    changes: {
      "construction: 1x19": "construction: 7x7\n  breaking force: 9 kN",
      "largest cable spacing: 80 mm": "largest cable spacing: 100 mm",
      "largest spacing: 1.6 m": "largest spacing: 2.6 m",
    },
    path: "tightening.criterion",
    what: "NCC 2022 table 11.3.6a has no tension",
  },
  {
    name: "a sag of 0.5 mm under 100 lbf",
    job: "0004-between-two-walls",
    changes: { "weight: 10 lbf": "weight: 100 lbf", "largest sag: 5/16 in": "largest sag: 0.5 mm" },
    path: "tightening.criterion",
    what: "no tension in reach",
  },
  {
    name: "a sphere held against 440 lbf",
    job: STRAIGHT,
    changes: { "force: 12 lbf": "force: 440 lbf" },
    path: "tightening.criterion",
    what: "no tension in reach",
  },
];

describe("makePlan refuses", () => {
  test.each(refusals)("$name", ({ job, changes, path, what }) => {
    const { value, problems } = makePlan(jobOf(changedText(job, changes)));
    expect(value).toBeUndefined();
    const found = problems.find((problem) => problem.severity === "error" && problem.what.includes(what));
    expect(problems.map((problem) => problem.what)).toContainEqual(expect.stringContaining(what));
    expect(found?.path.join(".")).toBe(path);
    expect(found?.fix.length).toBeGreaterThan(10);
  });
});

describe("makePlan warns, and the check fails", () => {
  test("a guard of 32 in under IRC 2021 is too low by 4 in", () => {
    const text = changedText(STRAIGHT, { "clear opening: 29 in": "clear opening: 25 in" });
    const { value, problems } = makePlan(jobOf(text));
    expect(problems.map((problem) => problem.what).join()).toContain("asks for at least 36");
    expect(value?.checks.find((check) => check.id === "guard-height")?.verdict).toBe("fail");
    expect(value?.verdict).toBe("fail");
  });

  test("a pool barrier of level cables fails, whatever its tension", () => {
    expect(planOf(changedText(STRAIGHT, { "pool barrier: false": "pool barrier: true" })).verdict).toBe("fail");
  });

  test("304 at the coast is warned of", () => {
    const plan = planOf(changedText(STRAIGHT, { "grade: 316": "grade: 304", "exposure: inland ": "exposure: coast " }));
    expect(plan.warnings.map((warning) => warning.what).join()).toContain("stains and pits sooner");
  });

  test("posts that stand 7 ft apart fail the rule of 6 ft (common practice, no source)", () => {
    const plan = planOf(changedText(EXISTING, { "16 ft 11 in, 22 ft": "18 ft 5 in, 22 ft" }));
    expect(plan.checks.find((check) => check.id === "post-spacing")?.verdict).toBe("fail");
  });

  test("a target above 30 % of the breaking force fails the strand's check", () => {
    const plan = planOf(changedText(STRAIGHT, { "force: 12 lbf": "force: 30 lbf" }));
    expect(plan.checks.find((check) => check.id === "strand-R1")?.verdict).toBe("fail");
  });
});
