// Is every number that is explained the number of the plan, computed again from inputs that stand in the plan?
import { describe, expect, test } from "vitest";
import { type Answer, askable, explain, traceAll } from "../../src/explain/explain.ts";
import { kindAt } from "../../src/explain/kind.ts";
import { marksOf } from "../../src/explain/marks.ts";
import { leavesBelow, placeAt, wholePlan } from "../../src/explain/path.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";
import { disagreeing, traceOf } from "../support/traces.ts";

const NAME = "rule-of-thumb";
const straight = examplePlan(NAME);

describe.each([...exampleNames, NAME])("the explanations of %s", (name) => {
  const plan = examplePlan(name);
  const leaves = leavesBelow(wholePlan(plan));
  const traces = traceAll(plan);

  test("each formula comes to the plan's number", () => {
    expect(traces.length).toBeGreaterThan(1000);
    expect(disagreeing(traces)).toEqual([]);
  });

  test("each input with a path is the number that stands there, and no input is left out of its formula", () => {
    // The warmth stands beside the length without tension that is made from it.
    const wrong = traces.flatMap(({ path, formula, inputs }) =>
      inputs.flatMap(({ symbol, value, paths }) => {
        const stands = paths.map((one) => placeAt(plan, `${one}.value`)?.value ?? placeAt(plan, one)?.value);
        const same = paths.length === 0 || JSON.stringify(stands) === JSON.stringify(typeof value === "number" ? [value] : value);
        const used = new RegExp(`\\b${symbol}\\b`).test(formula) || symbol === "dt";
        return same && used ? [] : [`${path}: ${symbol} of ${formula} at ${paths.join(", ")}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test("each number has a unit, and each path leads back to its place, by marks and counted from 0", () => {
    const numbers = leaves.filter(({ value }) => typeof value === "number");
    expect(numbers.filter((place) => kindAt(place) === null).map(({ path }) => path)).toEqual([]);
    const lost = leaves.filter(
      ({ path, jsonPath }) => placeAt(plan, path)?.jsonPath !== jsonPath || placeAt(plan, jsonPath)?.path !== path,
    );
    expect(lost.map(({ path }) => path)).toEqual([]);
  });

  test("each mark that stands on a sheet lists its values, each of which can be asked", () => {
    for (const mark of marksOf(plan)) {
      const answer = explain(plan, mark);
      if (answer.kind !== "list") throw new Error(`${mark} is no mark`);
      expect.soft(answer.lines.length, mark).toBeGreaterThan(0);
      for (const { path } of answer.lines) if (placeAt(plan, path) === undefined) expect.soft(path, mark).toBe("a place of the plan");
    }
  });
});

describe("what the sheets print is explained", () => {
  test.each([
    "courses.5.height",
    "courses.5.height_exact",
    "gaps[3].clear",
    "verticals.P2.station",
    "verticals.S1.station",
    "bays.A1.free",
    "runs.R1.pathLength",
    "runs.R1.orderLength",
    "runs.R1.tension.required",
    "runs.R1.tension.low",
    "runs.R1.tension.target",
    "runs.R1.tension.high",
    "runs.R1.tension.covered",
    "runs.R1.tension.farRatio",
    "runs.R1.takeUp.elongation",
    "runs.R1.takeUp.closing",
    "runs.R1.takeUp.ends.P1.turns",
    "runs.R1.spans.A1.required",
    "runs.R1.spans.A1.pitch_Hz.nominal",
    "runs.R1.spans.A1.sag.sliding",
    "runs.R1.spans.A1.pushThrough.sliding",
    "tightening.R1.steps.3.reading",
    "tightening.R1.steps.3.reading_low",
    "tightening.R1.steps.3.turnsPerEnd",
    "tightening.R1.steps.3.tensions[0]",
    "climate.R1.covered",
    "climate.R1.both.each[2]",
    "climate.R1.days[0].each[2]",
    "frame.posts.modulus",
    "frame.posts.base",
    "frame.sides.A.posts.P1.movement",
    "frame.windows.R1.low",
    "checks.strand-R1.ratio",
    "checks.bearing-R1-P1.limit.value",
    "bores.P3-05.diameter",
    "bores.P3-05.height",
    "bores.P5-05.counterbore.depth",
    "bits[0].bitLength_min",
    "pulls.P1/R1.pull_high",
    "order[2].quantity",
    "target.workingLimit",
  ])("%s", (path) => {
    const { inputs, origin, what } = traceOf(straight, path);
    expect(inputs.length).toBeGreaterThan(0);
    expect(origin.where.length + what.length).toBeGreaterThan(0);
  });

  test("each check of the frame gives its ratio, or is a question", () => {
    for (const { id, verdict } of straight.frame.checks) {
      expect.soft(explain(straight, `frame.checks.${id}.ratio`).kind, id).toBe(verdict === "ask" ? "value" : "trace");
    }
  });
});

describe("explain", () => {
  // By hand: 5-1/2 in of bottom rail and gap, 29 in of opening, 9 courses: 5.5 + 29 x 5 / 10 = 20 in.
  test("course 5 stands at 20 in: 139.7 + 736.6 x 5 / (9 + 1) = 508 mm", () => {
    const { value, inputs, formula } = traceOf(straight, "courses.5.height_exact");
    expect(value).toBeCloseTo(508, 9);
    expect(formula).toBe("b + c * n / (N + 1)");
    expect(inputs.map((input) => input.value)).toEqual([expect.closeTo(139.7, 9), expect.closeTo(736.6, 9), 5, 9]);
  });

  test("runs[0].tension.target and runs.R1.tension.target are one place", () => {
    expect(traceOf(straight, "runs[0].tension.target")).toEqual(traceOf(straight, "runs.R1.tension.target"));
  });

  test("a plan whose target was changed by hand disagrees with its explanation", () => {
    const runs = straight.runs.map((run) => ({ ...run, tension: { ...run.tension, target: run.tension.target + 1 } }));
    const lies = disagreeing(traceAll({ ...straight, runs }));
    expect(lies.some((line) => line.startsWith("runs.R1.tension.target is"))).toBe(true);
  });

  test("measured turns and a measured base are traced too", () => {
    const plan = planOf(
      changedText(NAME, {
        "\nposts:\n": "\nposts:\n  base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 1/2 in }\n",
        "\ntightening:\n": "\ncalibration:\n  turns: { cable: R1-05, turns: 7.5, from: 100 lbf, to: 250 lbf }\ntightening:\n",
      }),
    );
    expect(plan.job.cable.stiffness.source).toBe("job");
    expect(disagreeing(traceAll(plan))).toEqual([]);
    expect(traceOf(plan, "frame.posts.base").formula).toBe("F * h * h / (m - bent(F, h, EI))");
  });

  test.each([
    ["plain passes that the job asks for", "passes: [50 %, 80 %, 100 %]"],
    ["a target that makes up for heat alone", "allow for: heat"],
    ["a target that makes up for nothing", "allow for: nothing"],
  ])("%s are traced too", (_, line) => {
    const plan = planOf(changedText(NAME, { "\ntightening:\n": `\ntightening:\n  ${line}\n` }));
    expect(disagreeing(traceAll(plan))).toEqual([]);
  });

  test("loosely pulled cables that warmth and drying slacken are traced too", () => {
    const plan = planOf(
      changedText(NAME, {
        "\nposts:\n": "\nposts:\n  base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 4 in }\n",
        "\ntightening:\n": "\nsite: { warmest: 130 F, moisture at fitting: 28 % }\ntightening:\n  allow for: nothing\n",
        "force: 12 lbf": "force: 3 lbf",
      }),
    );
    expect(plan.climate.some(({ both }) => both.slackCourses.length > 0)).toBe(true);
    expect(disagreeing(traceAll(plan))).toEqual([]);
  });

  test("bushings without a tube that crush the wood, and what they are rated for, are traced too", () => {
    const plan = planOf(
      changedText("0002-deck-two-corners", {
        "bushing: { tube wall: 5/64 in }": "bushing: { length: 1-1/2 in, rated: 300 lbf, rated by: its maker }",
      }),
    );
    expect(disagreeing(traceAll(plan))).toEqual([]);
    expect(traceOf(plan, "checks.bend-R1.limit.value").formula).toContain("min(L, q * D, B / n)");
    expect(traceOf(plan, "checks.bushing-R1.limit.value").inputs[0]).toMatchObject({ kind: "force" });
  });

  test("a bushing alone on the mitre, and a tube whose ends lie along a slope, are traced too", () => {
    const mitred = planOf(changedText("0014-corners-of-one-post", { "tube wall: 5/64 in": "length: 2 in" }));
    expect(disagreeing(traceAll(mitred))).toEqual([]);
    expect(traceOf(mitred, "checks.bend-R1.limit.value").formula).toContain("(B - D) / n");
    const stair = planOf(changedText("0012-stair-from-landing", { "bushing: { length: 1 in }": "bushing: { tube wall: 1/16 in }" }));
    expect(disagreeing(traceAll(stair))).toEqual([]);
    expect(traceOf(stair, "checks.bend-R1.limit.value").inputs.map(({ symbol }) => symbol)).toEqual(expect.arrayContaining(["w", "v"]));
  });

  test("a value that the job states comes with its source", () => {
    const answer = explain(straight, "job.tightening.band");
    expect(answer).toMatchObject({ kind: "value", line: { value: 0.1, kind: "share" }, origin: { source: "practice" } });
  });

  test("a value without an explanation names what is explained near it", () => {
    const answer = explain(straight, "tightening.R1.steps.1.number");
    expect(answer.kind === "value" ? answer.near.map(({ path }) => path) : []).toContain("tightening.R1.steps.1.reading");
  });

  test("a part of the plan lists its values", () => {
    const answer = explain(straight, "runs.R1.tension");
    expect(answer.kind === "list" ? answer.lines.map(({ path }) => path) : []).toContain("runs.R1.tension.target");
  });

  const titleOf = (answer: Answer): string => (answer.kind === "list" ? answer.title : answer.kind);

  test.each([
    ["R1", "run R1"],
    ["r1-05", "cable R1-05: run R1, course 5"],
    ["P3-05", "bore P3-05"],
    ["P1", "post P1"],
    ["S1", "spacer S1"],
    ["A2", "bay A2"],
    ["A", "side A"],
    ["05", "course 5"],
    ["course 5", "course 5"],
    ["strand-R1", "check strand-R1"],
    ["SP", "piece SP"],
  ])("%s is the mark of %s", (mark, title) => expect(titleOf(explain(straight, mark))).toBe(title));

  test.each(["", "99", "course 99", "runs.R9", "runs.R1.", "runs.R1.tension.target.x", "constructor", "runs.length", "bores.P3-05.heigth"])(
    "%j leads nowhere and names what is nearest",
    (value) => {
      const answer = explain(straight, value);
      expect(answer.kind).toBe("unknown");
      expect(answer.kind === "unknown" ? answer.nearest.length : 0).toBe(5);
    },
  );

  test("bores.P3-05.heigth is nearest to bores.P3-05.height", () => {
    expect(explain(straight, "bores.P3-05.heigth")).toMatchObject({ nearest: expect.arrayContaining(["bores.P3-05.height"]) });
  });
});

describe("askable", () => {
  test("names each kind of number once, with its first place and how many there are", () => {
    const rows = askable(straight);
    expect(new Set(rows.map(({ pattern }) => pattern)).size).toBe(rows.length);
    expect(rows).toContainEqual({
      pattern: "courses.*.height",
      what: "Height of course {} above the datum: this is drilled",
      example: "courses.1.height",
      places: straight.courses.length,
    });
  });
});
