import { describe, expect, test } from "vitest";
import { details } from "../../../src/packet/drawings/details.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";

const ROOM = { width: 190, height: 240 };
const of = (plan: Plan, id: string) => details(plan, ROOM).filter((drawing) => drawing.id.startsWith(id));

describe("Z-301 of a guard that slopes", () => {
  test("cuts the posts where the slope changes plumb, once for the stair and at both ends of the ramp", () => {
    expect(of(examplePlan("0012-stair-from-landing"), "detail-slope").map(({ title }) => title)).toEqual(["Where the slope changes, A/B"]);
    expect(of(examplePlan("0013-ramp-to-porch"), "detail-slope")).toHaveLength(2);
    expect(of(examplePlan("0002-deck-two-corners"), "detail-slope")).toEqual([]);
  });

  // The cable goes from level to atan(1/3) between the posts, then to atan(2/3): 18.4 and 15.3 deg.
  test("says the angle of each bore and of each bend", () => {
    const [drawing] = of(examplePlan("0012-stair-from-landing"), "detail-slope");
    expect(drawing?.description).toMatch(/P3, 6x6: bore 1\/2", level, with a bushing, the cable bends 18\.4 deg/);
    expect(drawing?.description).toMatch(/P4, 6x6: bore 1\/2", 33\.7 deg off level, with a bushing, the cable bends 15\.3 deg/);
  });

  test("draws two ends there where no run passes", () => {
    const ended = planOf(changedText("0012-stair-from-landing", { "tightening:\n": "limits: { most bends: 0 }\ntightening:\n" }));
    expect(of(ended, "detail-slope")).toHaveLength(1);
  });

  test("cuts an end on the slope plumb, and says which edge of its washer is thick", () => {
    const [drawing] = of(examplePlan("0012-stair-from-landing"), "detail-stud-end-p6");
    expect(drawing?.description).toMatch(/^Plumb cut along the cable/);
    expect(drawing?.svg).toContain("thick edge up");
  });
});
