import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bestOrderBySets } from "../../src/mechanics/order-search-sets.ts";
import { figuresOf, permutations, randomFrames, systemOf } from "../support/cable-frames.ts";

describe("bestOrderBySets", () => {
  it.each([false, true])(
    "finds the least of all n! orders, tried one by one, for reading and then movement (pulls that tighten others: %s)",
    (signs) => {
      fc.assert(
        fc.property(randomFrames({ cables: [2, 5], signs }), (frame) => {
          const { target } = frame;
          // Places that swing both ways, one that all cables draw alike, its mirror, one that goes half as far, one near the first cable.
          const movement = [
            { perPull: target.map((_, cable) => (cable % 2 === 0 ? 0.002 : -0.001)), limit: 1.5 },
            { perPull: target.map(() => 0.0009), limit: 1.5 },
            { perPull: target.map(() => -0.0009), limit: 1.5 },
            { perPull: target.map(() => 0.0009), limit: 3 },
            { perPull: target.map((_, cable) => (cable === 0 ? 0.0025 : 0.0001)), limit: 1.5 },
          ];
          const task = { system: systemOf(frame), target, movement };
          const figures = figuresOf(task);
          const all = permutations(target.map((_, cable) => cable)).map(figures);
          const least = Math.min(...all.map(({ highest_overTarget }) => highest_overTarget));
          const tie = 0.02;
          const found = bestOrderBySets(task, tie);
          expect(Math.abs(found.bound - least)).toBeLessThan(1e-8);
          const own = figures(found.order);
          expect(own.highest_overTarget).toBeLessThan(least + tie + 1e-8);
          expect(Math.abs(own.movement_overLimit - found.movement_overLimit)).toBeLessThan(1e-8);
          const alike = all.filter(({ highest_overTarget }) => highest_overTarget <= least + tie - 1e-8);
          for (const other of alike) expect(own.movement_overLimit).toBeLessThan(other.movement_overLimit + 1e-8);
        }),
        { numRuns: 60 },
      );
    },
  );

  // Without the second cable the first hangs slack at its take-up of 0.005 x 100 - 0.006 x 1000 = -5.5 mm and moves nothing, whether the
  // third, which shares nothing with them, is tight (500 N, 2 mm) or not; the second moves the frame by 2.475 mm alone and by 1.5 with the
  // first; all three by 1 - 2.5 + 2 = 0.5.
  it("a cable that hangs slack on the way moves nothing: first, second, third moves the frame by 1.5 mm, every other order by 2 or more", () => {
    const flexibility = [
      [0.001, -0.006, 0],
      [-0.006, 0.05, 0],
      [0, 0, 0],
    ];
    const system = systemOf({ flexibility, cableFlexibility: [0.004, 0.01, 0.01], target: [] });
    const movement = [{ perPull: [0.01, -0.0025, 0.004], limit: 2 }];
    const found = bestOrderBySets({ system, target: [100, 1000, 500], movement }, 0.02);
    expect(found.order).toEqual([0, 1, 2]);
    expect(found.bound).toBeCloseTo(1, 12);
    expect(found.movement_overLimit).toBeCloseTo(0.75, 12);
  });

  it("looks at 2^n sets: 16 for 4 cables", () => {
    const frame = { flexibility: [0, 1, 2, 3].map(() => [0, 0, 0, 0]), cableFlexibility: [1, 1, 1, 1], target: [1, 2, 3, 4] };
    const found = bestOrderBySets({ system: systemOf(frame), target: frame.target, movement: [] }, 0);
    expect(found).toMatchObject({ bound: 1, movement_overLimit: 0, sets: 16 });
    expect(found.order.toSorted()).toEqual([0, 1, 2, 3]);
  });
});
