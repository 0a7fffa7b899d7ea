// Is a guard that is interrupted planned as separate guards, each where it stands?
import { describe, expect, test } from "vitest";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, examplePlan, jobOf, planOf } from "../support/example-jobs.ts";

const INCH = 25.4;
const FOOT = 12 * INCH;
const NAME = "0011-two-guards-and-a-gate";
const plan = examplePlan(NAME);

describe("a veranda with a gate, a column and a second guard behind the house", () => {
  test("has a run for each piece, which ends at the piece's own ends", () => {
    expect(plan.runs.map(({ sideIds }) => sideIds.join(""))).toEqual(["A", "B", "CD", "E"]);
    for (const run of plan.runs) {
      const roles = [run.left.postId, run.right.postId].map((end) => plan.verticals.find(({ id }) => id === end)?.role);
      expect(roles).toEqual(["end", "end"]);
    }
  });

  test("pulls at the drill, not at the planter", () => {
    // Both ends of side A are reached by hand only; of side B the left one by a drill.
    expect(plan.runs[1]?.left.pulls).toBe(true);
    expect(plan.runs.every(({ left, right }) => left.pulls !== right.pulls)).toBe(true);
  });

  test("asks about the gate, which is not planned", () => {
    expect(plan.checks.filter(({ id }) => id.startsWith("gate-")).map(({ id, verdict }) => [id, verdict])).toEqual([["gate-A", "ask"]]);
  });

  test("stands where the tape says", () => {
    const at = (id: string) => plan.sides.find((side) => side.id === id)?.from ?? { x: Number.NaN, y: Number.NaN };
    // Side A of 9 ft 8 in and a gate of 40 in; side B of 12 ft 2 in and a column of 10 in; all in one line.
    expect(at("B").x).toBeCloseTo(9 * FOOT + 8 * INCH + 40 * INCH, 9);
    expect(at("C").x).toBeCloseTo(9 * FOOT + 8 * INCH + 40 * INCH + 12 * FOOT + 2 * INCH + 10 * INCH, 9);
    // Side D runs down from the corner; side E begins 3 ft further down and 6 ft towards the deck, which is to the left on paper.
    expect(at("E").x).toBeCloseTo(at("D").x - 6 * FOOT, 9);
    expect(at("E").y).toBeCloseTo(-(8 * FOOT + 3 * INCH) - 3 * FOOT, 9);
  });

  test("has no bay, bottom rail or cable across what interrupts it, and checks each gap beside it", () => {
    const side = (id: string): string | undefined => plan.verticals.find((one) => one.id === id)?.sideId;
    const across = plan.bays.filter(({ leftId, rightId }) => side(leftId) !== side(rightId)).map(({ id }) => id);
    expect(across).toEqual(["C/D"]);
    const gaps = plan.checks.filter(({ id }) => id.startsWith("wall-gap")).map(({ id }) => id);
    expect(gaps).toEqual(["wall-gap-start", "wall-gap-end", "wall-gap-B-end", "wall-gap-B-start", "wall-gap-D-end", "wall-gap-D-start"]);
    expect(plan.checks.filter(({ id }) => id.startsWith("wall-")).every(({ verdict }) => verdict === "pass")).toBe(true);
  });
});

const GATE =
  "    - length: 11 ft 6 in\n      interrupted: { what: gate, width: 36 in, end: { kind: post }, start: { kind: post } }\n    - length: 11 ft 6 in\n";

test("the two halves of a guard are what each of them is alone", () => {
  const whole = planOf(changedText("rule-of-thumb", { "    - length: 23 ft  ": GATE }));
  const alone = planOf(changedText("rule-of-thumb", { "    - length: 23 ft  ": "    - length: 11 ft 6 in  " }));
  const facts = ({ runs }: Plan) =>
    runs.map(({ pathLength, orderLength, tension, spans }) => ({ pathLength, orderLength, tension, spans: spans.length }));
  const [left, right] = facts(whole);
  const [one] = facts(alone);
  const { leastBayId: _left, ...tensionLeft } = left?.tension ?? one?.tension ?? { leastBayId: "" };
  const { leastBayId: _one, ...tensionOne } = one?.tension ?? { leastBayId: "" };
  expect(tensionLeft).toEqual(tensionOne);
  expect([left?.pathLength, right?.pathLength]).toEqual([one?.pathLength, one?.pathLength]);
  expect(whole.bores.length).toBe(2 * alone.bores.length);
});

test("cables may not be longer than to be had, but what interrupts them counts for nothing", () => {
  const long = changedText("rule-of-thumb", {
    "    - length: 23 ft  ":
      "    - length: 60 ft\n      interrupted: { what: open, width: 90 ft, end: { kind: post }, start: { kind: post } }\n    - length: 60 ft\n",
  });
  expect(makePlan(jobOf(long)).value?.runs.length).toBe(2);
});
