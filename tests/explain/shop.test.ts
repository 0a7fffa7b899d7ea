// Are the pieces that are cut, bored and bought explained: by the posts between which they lie, and by counting?
import { describe, expect, test } from "vitest";
import { examplePlan } from "../support/example-jobs.ts";
import { traceOf } from "../support/traces.ts";

const corners = examplePlan("0002-deck-two-corners");
const straight = examplePlan("rule-of-thumb");

describe("rails", () => {
  // By hand: 15 ft 4 in between the corners, and half the width of a 2x6, 2-3/4 in, beyond each at a right angle: 15 ft 9-1/2 in.
  test("a top rail goes to the long points of its mitres", () => {
    const { formula, value } = traceOf(corners, "cuts.TR2.length");
    expect(formula).toContain("tan(abs(a1) / 2)");
    expect(value).toBeCloseTo((15 * 12 + 9.5) * 25.4, 6);
  });

  test("a bottom rail lies between the faces of two posts", () => {
    const { formula, inputs } = traceOf(straight, "cuts.BR1.length");
    expect(formula).toBe("x2 - w2 / 2 - (x1 + w1 / 2)");
    expect(inputs.flatMap(({ paths }) => paths)).toEqual(
      expect.arrayContaining(["verticals.P1.station", "verticals.P1.along", "verticals.P2.station", "verticals.P2.along"]),
    );
  });

  test.each(corners.cuts.map(({ mark, count }) => [mark, count] as const))("%s is cut %i times", (mark, count) => {
    expect(traceOf(corners, `cuts.${mark}.count`).recomputed).toBe(count);
  });
});

test("spools are counted by cutting the lengths of all runs again", () => {
  const line = corners.order.findIndex(({ item }) => item === "spool of cable");
  const { formula, inputs } = traceOf(corners, `order[${line}].net`);
  expect(formula).toBe("spools(l, N, S)");
  expect(inputs.map(({ paths }) => paths[0])).toEqual(["runs.R1.orderLength", undefined, "job.supply.spoolLength"]);
});

test("every line of the order says how many pieces are needed", () => {
  for (const [nth, { net, item }] of corners.order.entries()) expect.soft(traceOf(corners, `order[${nth}].net`).recomputed, item).toBe(net);
});

test("each bit has the diameter of its holes", () => {
  for (const [nth, { diameter }] of straight.bits.entries()) {
    const { inputs, value } = traceOf(straight, `bits[${nth}].diameter`);
    expect(value).toBe(diameter);
    expect(inputs[0]?.paths.every((path) => path.endsWith(".diameter"))).toBe(true);
  }
});

test("a proven cut plan buys what its bound says", () => {
  for (const [nth, { proven, bought_bound }] of straight.cutPlans.entries()) {
    if (proven) expect.soft(traceOf(straight, `cutPlans[${nth}].bought_bound`).recomputed).toBeCloseTo(bought_bound, 6);
  }
});

test("the trial pull is 50 lbf at 36 in, or round figures of the other units", () => {
  expect(traceOf(straight, "frame.trial.pull").recomputed).toBeCloseTo(50 * 4.4482216152605, 9);
  expect(traceOf(straight, "frame.trial.height").recomputed).toBeCloseTo(36 * 25.4, 9);
  expect(traceOf(examplePlan("0005-steel-balcony"), "frame.trial.pull").recomputed).toBe(200);
});
