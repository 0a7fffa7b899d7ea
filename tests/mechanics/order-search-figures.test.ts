import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { movementOverLimit, orderFigures } from "../../src/mechanics/order-search-figures.ts";
import { COMPENSATED, PLAIN, tightenInPasses } from "../../src/mechanics/sequence.ts";
import { centreOutwards } from "../../src/mechanics/sequence-order.ts";
import { endFrame, figuresOf, type RandomFrame, randomFrames, systemOf } from "../support/cable-frames.ts";

/** The same figures from the full simulation. */
function simulated(frame: RandomFrame, order: readonly number[], perPull: readonly number[]) {
  const { target } = frame;
  const steps = tightenInPasses(systemOf(frame), { order, target }, [COMPENSATED]);
  const plain = tightenInPasses(systemOf(frame), { order, target }, [PLAIN]).at(-1)?.tensions ?? [];
  const moved = (tensions: readonly number[]): number =>
    Math.abs(tensions.reduce((sum, tension, cable) => sum + tension * (perPull[cable] ?? 0), 0));
  return {
    highest: Math.max(...steps.map(({ reading, cable }) => reading / (target[cable] ?? 1))),
    movement: Math.max(...steps.map(({ tensions }) => moved(tensions))) / 2,
    least: Math.min(...plain.map((tension, cable) => tension / (target[cable] ?? 1))),
  };
}

describe("orderFigures", () => {
  it.each([false, true])("agrees with the simulation of one compensated and one plain pass (pulls that tighten others: %s)", (signs) => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 8], signs }), (frame) => {
        const perPull = frame.target.map((_, cable) => 0.001 * (cable - 1));
        const order = centreOutwards(frame.target.length);
        const figures = figuresOf({ system: systemOf(frame), target: frame.target, movement: [{ perPull, limit: 2 }] })(order);
        const expected = simulated(frame, order, perPull);
        expect(Math.abs(figures.highest_overTarget - expected.highest)).toBeLessThan(1e-8);
        expect(Math.abs(figures.movement_overLimit - expected.movement)).toBeLessThan(1e-8);
        expect(Math.abs(figures.leastAfterPlain_overTarget - expected.least)).toBeLessThan(1e-8);
      }),
    );
  });

  it("a cable that would have to push on the way hangs slack instead: its step reads nothing, the next one reads its target of 1000 N", () => {
    const flexibility = [
      [0.001, -0.006],
      [-0.006, 0.05],
    ];
    const frame = { flexibility, cableFlexibility: [0.004, 0.01], target: [100, 1000] };
    const movement = [{ perPull: [0.01, 0], limit: 2 }];
    const figures = figuresOf({ system: systemOf(frame), target: frame.target, movement })([0, 1]);
    // u1 = 0.005 x 100 - 0.006 x 1000 = -5.5 mm: pulled first, cable 1 needs no tension at all to stand at its take-up.
    expect(figures.highest_overTarget).toBeCloseTo(1, 12);
    expect(figures.highestCable).toBe(1);
    // Slack it moves nothing; at its 100 N in the end 1 mm.
    expect(figures.movement_overLimit).toBeCloseTo(0.5, 12);
  });

  it("after a plain pass 100 N are gone where 1000 N of the next cable close the anchors by 10 mm: the first hangs slack, and pushes nothing", () => {
    const flexibility = [
      [0.01, 0.01],
      [0.01, 0.01],
    ];
    const system = systemOf({ flexibility, cableFlexibility: [0.01, 0.01], target: [] });
    const figures = figuresOf({ system, target: [100, 1000], movement: [] })([0, 1]);
    expect(figures).toMatchObject({ leastAfterPlain_overTarget: 0, leastCable: 0 });
    // Its compensated reading is (0.02 x 100 + 0.01 x 1000) / 0.02 = 600 N.
    expect(figures.highest_overTarget).toBeCloseTo(6, 12);
  });

  it.each([0.05, 2])(
    "leaves an order alone whose highest reading is above the one given, and tells it where that is met (end frame, r = %d)",
    (r) => {
      const target = [1000, 1000, 1000, 1000];
      const task = { system: endFrame(4, r), target, movement: [] };
      const order = [0, 1, 2, 3];
      // First reading T (1 + 4 r) / (1 + r), the highest.
      const highest = (1 + 4 * r) / (1 + r);
      expect(orderFigures(task)(order, highest - 1e-6)).toBeNull();
      expect(orderFigures(task)(order, highest)?.highest_overTarget).toBeCloseTo(highest, 12);
    },
  );

  it("does so too where a cable hangs slack on the way", () => {
    const flexibility = [
      [0.001, -0.006],
      [-0.006, 0.05],
    ];
    const system = systemOf({ flexibility, cableFlexibility: [0.004, 0.01], target: [] });
    expect(orderFigures({ system, target: [100, 1000], movement: [] })([0, 1], 0.99)).toBeNull();
  });

  it("refuses an order that leaves a cable out", () => {
    const figures = figuresOf({ system: endFrame(3, 0.1), target: [1000, 1000, 1000], movement: [] });
    expect(() => figures([0, 1])).toThrow(/each of 3 cables once/);
    expect(() => figures([0, 1, 3])).toThrow(/each of 3 cables once/);
    expect(() => figures([0, 1, 1])).toThrow(/each of 3 cables once/);
    expect(() => figures([0, 1, 2, 2])).toThrow(/each of 3 cables once/);
  });
});

describe("movementOverLimit", () => {
  it("0.002 mm/N times 1000 N and 0.001 times -500 N are 1.5 mm: 0.75 of 2 mm; the other way round it counts alike", () => {
    expect(movementOverLimit([{ perPull: [0.002, 0.001], limit: 2 }], [1000, -500])).toBeCloseTo(0.75, 12);
    expect(movementOverLimit([{ perPull: [-0.002, -0.001], limit: 2 }], [1000, -500])).toBeCloseTo(0.75, 12);
    expect(movementOverLimit([], [1000, -500])).toBe(0);
  });
});
