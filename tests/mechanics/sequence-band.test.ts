import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stepTargets } from "../../src/mechanics/sequence.ts";
import { readingErrors } from "../../src/mechanics/sequence-band.ts";
import { bottomToTop } from "../../src/mechanics/sequence-order.ts";
import { LOOSE, pullTo } from "../../src/mechanics/sequence-solve.ts";
import { endFrame, randomFrames, systemOf } from "../support/cable-frames.ts";

describe("readingErrors", () => {
  it("a frame that does not give way: each cable ends as far off as its own reading, and no other", () => {
    const { perStep, all } = readingErrors(endFrame(3, 0), { order: [2, 0, 1], target: [900, 1000, 1100] });
    for (const error of [...perStep, all]) expect(error).toBeCloseTo(1, 9);
  });

  it("two cables with r = 0.5: the first reading is 4/3 T, what it is off grows by 9/8 and then lacks a third of that in the other cable (derived)", () => {
    // coupling [[1.5, 0.5], [0.5, 1.5]], its inverse [[0.75, -0.25], [-0.25, 0.75]]; first pull: pivot 1.5, second: 1.5 - 0.25 / 1.5 = 4/3
    const { perStep, all } = readingErrors(endFrame(2, 0.5), { order: [0, 1], target: [1000, 1000] });
    expect(perStep[0]).toBeCloseTo((4 / 3) * 1.5 * 0.75, 9);
    expect(perStep[1]).toBeCloseTo(1, 9);
    expect(all).toBeCloseTo((4 / 3) * 1.5 * 0.75 + (4 / 3) * 0.25, 9);
  });

  it("readings that are off by up to 1 %, each to either side, end within 1 % times the figure for all", () => {
    const sides = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(randomFrames({ cables: [2, 6] }), sides, (frame, off) => {
        const { target } = frame;
        const system = systemOf(frame);
        const order = bottomToTop(target.length);
        const readings = stepTargets(system, { order, target });
        const takeUps = target.map(() => LOOSE);
        let tensions: readonly number[] = [];
        for (const cable of order) {
          const pulled = pullTo(system, takeUps, { cable, reading: (readings[cable] ?? 0) * (1 + 0.01 * (off[cable] ?? 0)) });
          takeUps[cable] = pulled.takeUp;
          tensions = pulled.tensions;
        }
        const worst = Math.max(...tensions.map((tension, cable) => Math.abs(tension / (target[cable] ?? 1) - 1)));
        fc.pre(Math.min(...tensions) > 0);
        expect(worst).toBeLessThanOrEqual(0.01 * readingErrors(system, { order, target }).all + 1e-9);
      }),
    );
  });
});
