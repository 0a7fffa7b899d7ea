// Past a change of slope a run passes or two runs end: what the plan says of both ways is what such guards come to.
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/plan.ts";
import type { Way } from "../../src/plan/rake-plan.ts";
import { changedText, planOf } from "../support/example-jobs.ts";

const STAIR = "0012-stair-from-landing";
const RAMP = "0013-ramp-to-porch";

/** Counted and summed from the runs, bends and lengths of a plan as it stands. */
function wayThatRuns({ runs, courses, job }: Plan): Way {
  const turns = runs.map(({ bends }) => bends.reduce((sum, { angle }) => sum + angle, 0));
  return {
    runs: runs.length,
    cables: runs.length * courses.length,
    fittings: 2 * runs.length * courses.length,
    longest: expect.closeTo(Math.max(...runs.map(({ pathLength }) => pathLength)), 1) as number,
    turned: expect.closeTo(Math.max(...turns), 9) as number,
    farShare: expect.closeTo(Math.min(...turns.map((turn) => Math.exp(-job.tightening.friction.value * turn))), 9) as number,
  };
}

const limits = (text: string) => ({ "tightening:\n": `limits: { ${text} }\ntightening:\n` });
const variants: readonly (readonly [name: string, job: string, changes: Readonly<Record<string, string>>])[] = [
  ["the stair", STAIR, {}],
  ["the stair without bends", STAIR, limits("most bends: 0")],
  ["the stair with short runs", STAIR, limits("longest run with bends: 12 ft")],
  ["the stair with a long landing", STAIR, { "length: 6 ft 4 in": "length: 36 ft" }],
  ["the stair with cables of 10 ft at most", STAIR, { "kind: ready": "kind: ready\n  lengths: [5 ft, 10 ft]" }],
  ["the ramp", RAMP, {}],
  ["the ramp with one bend a run", RAMP, { "largest cable spacing: 80 mm": "largest cable spacing: 80 mm\n  most bends: 1" }],
  ["the ramp with none", RAMP, { "largest cable spacing: 80 mm": "largest cable spacing: 80 mm\n  most bends: 0" }],
];

describe.each(variants)("%s", (_, name, changes) => {
  const plan = planOf(changedText(name, changes));

  test("comes to what its chosen way says, at every change of slope", () => {
    expect(plan.transitions.length).toBeGreaterThan(0);
    for (const { passes, pass, end } of plan.transitions) expect(passes ? pass : end).toEqual(wayThatRuns(plan));
  });

  test("has no run that passes where two end, or ends where one passes", () => {
    for (const { id, passes } of plan.transitions)
      expect(
        plan.runs.some(({ bayIds }) => bayIds.includes(id)),
        id,
      ).toBe(passes);
  });

  test("never has more runs than the way that was not taken, and says so", () => {
    for (const { passes, pass, end, why } of plan.transitions) {
      const [own, other] = passes ? [pass, end] : [end, pass];
      expect(own?.runs ?? 0).toBeLessThanOrEqual(other?.runs ?? Number.POSITIVE_INFINITY);
      expect(why).toMatch(passes ? /^passes: / : /^ends here: /);
      if (other === null) expect(why).toMatch(passes ? /no choice of runs that end here/ : /no run may pass/);
      else if (own?.runs === other.runs) expect(why).toContain("as many runs either way");
      else expect(why).toContain("fewer runs");
    }
  });
});

test("the way that was not taken is the guard that comes of having to take it", () => {
  const [passing, ended] = [planOf(changedText(STAIR, {})), planOf(changedText(STAIR, limits("most bends: 0")))];
  expect(passing.transitions[0]?.passes).toBe(true);
  expect(passing.transitions[0]?.end).toEqual(wayThatRuns(ended));
});
