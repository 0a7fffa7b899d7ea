import { describe, expect, test } from "vitest";
import { examplePlan } from "../../support/example-jobs.ts";
import { wordsOn } from "../read-packet.ts";

const boresOf = (name: string): string => wordsOn(examplePlan(name), "Z-603");

describe("Z-603, room for the drill", () => {
  test("the landing: bays of 13-1/8 in beside a bit of 10-1/2 in leave no room for a drill", () => {
    // 6 ft 4 in less 3-1/2 in of gap, three posts of 5-1/2 in, half an inch of setback and two spacers of 1-1/2 in: 52-1/2 in in four bays.
    expect(boresOf("0012-stair-from-landing")).toMatch(/Room for the drill: bay A\d is 13-1\/8" long, a bit in it 10-1\/2"/);
  });

  test("who bores once is told by the guide, where the bit goes in", () => {
    expect(wordsOn(examplePlan("0012-stair-from-landing"), "Z-801", "homeowner")).toMatch(
      /Begin with a short bit[\s\S]*only 13-1\/8" long/,
    );
  });

  test("the ramp: 408 mm less a bit of 140 mm leave 268 mm, so nothing is said", () => {
    expect(boresOf("0013-ramp-to-porch")).not.toContain("Room for the drill");
  });
});
