// Is each number that goes into a check of the frame explained: by the cables' influence, the code's load, the section and its strength?
import { describe, expect, test } from "vitest";
import { traceAll } from "../../src/explain/explain.ts";
import { leavesBelow, wholePlan } from "../../src/explain/path.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";
import { disagreeing, traceOf } from "../support/traces.ts";

const NAME = "rule-of-thumb";
const straight = examplePlan(NAME);

/** Numbers of the rows of the frame that stand on sheet Z-805 and have no explanation; a question has no capacity. */
const unexplained = (plan: Plan): readonly string[] => {
  const traced = new Set(traceAll(plan).map(({ path }) => path));
  return leavesBelow(wholePlan(plan))
    .filter(({ pattern, value }) => /^frame\.checks\.\*\.(parts\.\*\.value|height|demand)$/.test(pattern) && typeof value === "number")
    .map(({ path }) => path)
    .filter((path) => !traced.has(path));
};

test.each([...exampleNames, NAME])("every part, height and demand of the frame's checks of %s is explained", (name) => {
  expect(unexplained(examplePlan(name))).toEqual([]);
});

describe("frames of other kinds", () => {
  test.each([
    [
      "rigid joints, under which members buckle",
      NAME,
      { "  datum: top of the decking": "  datum: top of the decking\n  rail joint: rigid" },
    ],
    ["corners that are not square", "0002-deck-two-corners", { "turn: right 90 deg          #": "turn: right 45 deg          #" }],
    [
      "a base with a capacity of its own",
      NAME,
      { "  below datum: 10 in": "  base capacity: { pull: 500 lbf, height: 36 in }\n  below datum: 10 in" },
    ],
    ["a rail without design values", NAME, { "top rail: { size: 2x6, lay: flat,": "top rail: { size: 5/4x6, lay: flat," }],
    ["line loads", NAME, { "edition: IRC 2021": "edition: NCC 2022" }],
    ["aluminium", "0005-steel-balcony", { "material: steel": "material: aluminium" }],
    [
      "spacers that turn over before they yield, and fixings of a known capacity",
      "0005-steel-balcony",
      { "size: 10 mm x 40 mm ": "fixing capacity: 600 N\n  size: 5 mm x 60 mm " },
    ],
    ["spacers of tube", "0005-steel-balcony", { "size: 10 mm x 40 mm ": "wall: 2 mm\n  size: 40 mm x 40 mm " }],
    ["spacers without design values", NAME, { "spacers:\n  size: 2x2": "spacers:\n  size: 1-1/2 in x 3/4 in" }],
    [
      "posts that stand turned at a corner, under loads from anywhere",
      "0014-corners-of-one-post",
      { "turn: right 90 deg          #": "turn: right 45 deg          #", "edition: IRC 2021": "edition: IRC 2018" },
    ],
  ] as const)("with %s are traced too", (_, name, changes) => {
    const plan = planOf(changedText(name, changes));
    expect(disagreeing(traceAll(plan))).toEqual([]);
    expect(unexplained(plan)).toEqual([]);
  });

  test("loads that nobody knows here are a question without a demand", () => {
    const plan = planOf(changedText(NAME, { "edition: IRC 2021": "edition: other\n  guard height: 36 in\n  opening: 4 in" }));
    expect(unexplained(plan)).toEqual(["frame.checks.guard-loads.demand"]);
    expect(disagreeing(traceAll(plan))).toEqual([]);
  });
});

describe("a moment of a post", () => {
  const path = "frame.checks.post-guard-P5.parts.M along.value";

  test("is each cable's influence times the top of its band and what the hardest day adds", () => {
    const { formula, inputs, what } = traceOf(straight, path);
    expect(what).toBe("M along, as it goes into the frame's check post-guard-P5");
    expect(formula).toBe("abs(dot(f, h) + dot(f, g))");
    const [influence, high, added] = inputs;
    expect(influence?.value).toHaveLength(straight.courses.length);
    expect(high?.paths[0]).toBe("runs.R1.tension.high");
    expect(added?.paths[8]).toBe("climate.R1.hardest.each[8]");
  });

  test("square to the guard is the code's load times its lever", () => {
    const { formula, value, inputs } = traceOf(straight, "frame.checks.post-guard-P5.parts.M square.value");
    expect(formula).toBe("k0 + P * max(0, H - z)");
    const of = (symbol: string): number => Number(inputs.find((input) => input.symbol === symbol)?.value);
    // By hand: 200 lbf at the top of the guard.
    expect(of("P")).toBeCloseTo(200 * 4.4482216152605, 6);
    expect(value).toBeCloseTo(of("P") * (of("H") - of("z")), 6);
  });

  test("that was changed by hand disagrees with its explanation, and so does a height", () => {
    const checks = straight.frame.checks.map((check) =>
      check.id === "post-shear-P1"
        ? { ...check, parts: check.parts.map((part) => (part.name === "V" ? { ...part, value: part.value * 1.001 } : part)) }
        : check,
    );
    const lies = disagreeing(traceAll({ ...straight, frame: { ...straight.frame, checks } }));
    expect(lies.map((line) => line.split(" is ")[0])).toEqual(
      expect.arrayContaining(["frame.checks.post-shear-P1.parts.V.value", "frame.checks.post-shear-P1.demand"]),
    );
  });
});

describe("the change that makes the frame hold", () => {
  test("has the greatest of the ratios that it was found with", () => {
    const { formula, inputs, value, origin } = traceOf(straight, "frame.remedy.ratio");
    expect(formula).toBe("max(q)");
    expect(inputs[0]?.paths).toEqual(straight.frame.remedy?.checks.map(({ kind }) => `frame.remedy.checks.${kind}.ratio`));
    expect(value).toBe(Math.max(...[inputs[0]?.value ?? []].flat()));
    expect(origin.where).toContain(straight.frame.remedy?.write);
  });

  test("names each kind of check that failed, with a ratio that holds", () => {
    const failed = straight.frame.checks.filter(({ verdict }) => verdict === "fail").map(({ id }) => id.replace(/-[A-Z]+\d*$/, ""));
    expect(new Set(straight.frame.remedy?.checks.map(({ kind }) => kind))).toEqual(new Set(failed));
    for (const { ratio, kind } of straight.frame.remedy?.checks ?? []) expect.soft(ratio, kind).toBeLessThanOrEqual(1);
  });
});

test("the height at which a post moves most is that of the greatest of its movements", () => {
  const { formula, value, inputs } = traceOf(straight, "frame.sides.A.posts.P1.height");
  expect(formula).toBe("whereMost(m, z)");
  const [movements, heights] = inputs.map((input) => [input.value].flat()) as [number[], number[]];
  expect(heights[movements.indexOf(Math.max(...movements))]).toBe(value);
});
