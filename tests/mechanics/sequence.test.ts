import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  COMPENSATED,
  PLAIN,
  passesToWithin,
  plainPasses,
  plainPassesUntil,
  stepTargets,
  tightenInPasses,
} from "../../src/mechanics/sequence.ts";
import { bottomToTop, topToBottom } from "../../src/mechanics/sequence-order.ts";
import { cableSystem, takeUpsFor } from "../../src/mechanics/sequence-solve.ts";
import { endFrame, randomFrames, systemOf } from "../support/cable-frames.ts";

const even = (count: number, tension = 1000): readonly number[] => Array.from({ length: count }, () => tension);

describe("plainPasses on n equal cables of stiffness k on one end frame of stiffness K, r = k/K", () => {
  // Derived: cable m+1 pulled to T takes T r/(1 + m r) from each of the m before it, as m cables and the frame share the movement.
  const firstLeft = (count: number, r: number): number =>
    1 - Array.from({ length: count - 1 }, (_, m) => r / (1 + (m + 1) * r)).reduce((sum, part) => sum + part, 0);

  it.each([
    [2, 0.05],
    [10, 0.05],
    [6, 0.2],
    [12, 0.01],
  ])("%i cables with r = %d: the first ends at T (1 - sum r/(1 + m r))", (count, r) => {
    const [first] = plainPasses(endFrame(count, r), { order: bottomToTop(count), target: even(count) }, 1);
    expect(first?.tensions[0]).toBeCloseTo(1000 * firstLeft(count, r), 8);
  });

  it("10 cables with r = 0.05: the first ends at 0.6361 T and the mean is 0.8278 T (the closed form evaluated by hand)", () => {
    const [first] = plainPasses(endFrame(10, 0.05), { order: bottomToTop(10), target: even(10) }, 1);
    expect(first?.least_overTarget).toBeCloseTo(0.6361, 4);
    expect(first?.mean_overTarget).toBeCloseTo(0.8278, 4);
  });

  it("10 cables with r = 2: cables hang slack after one plain pass, and say which", () => {
    const [first] = plainPasses(endFrame(10, 2), { order: bottomToTop(10), target: even(10) }, 1);
    expect(first?.slack).toContain(0);
    expect(first?.slack).not.toContain(9);
    expect(first?.worstError).toBe(1);
  });
});

describe("tightenInPasses", () => {
  it("a compensated pass ends with every cable at its own target, from any order, also with unequal cables and targets", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 8], signs: true }), fc.boolean(), (frame, down) => {
        const { target } = frame;
        const order = (down ? topToBottom : bottomToTop)(target.length);
        const last = tightenInPasses(systemOf(frame), { order, target }, [PLAIN, COMPENSATED]).at(-1);
        for (const [cable, tension] of (last?.tensions ?? []).entries()) {
          expect(Math.abs(tension - (target[cable] ?? 0))).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it("no cable ever pushes, and the cable that is pulled has the reading of its step", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 8], signs: true }), (frame) => {
        const order = topToBottom(frame.target.length);
        for (const step of tightenInPasses(systemOf(frame), { order, target: frame.target }, [
          { kind: "plain", share: 0.5 },
          PLAIN,
          COMPENSATED,
        ])) {
          expect(Math.min(...step.tensions)).toBeGreaterThanOrEqual(0);
          expect(step.tensions[step.cable]).toBe(step.reading);
        }
      }),
    );
  });

  it("on a frame that only closes, the first pull of a plain pass takes tension from no cable that has none, and each later pull takes from all before", () => {
    const steps = tightenInPasses(endFrame(6, 0.1), { order: bottomToTop(6), target: even(6) }, [PLAIN]);
    for (const [place, step] of steps.entries()) {
      for (let cable = 0; cable < place; cable++) {
        expect(step.tensions[cable]).toBeLessThan(steps[place - 1]?.tensions[cable] ?? 0);
      }
      expect(step.tensions.slice(place + 1)).toEqual(even(5 - place, 0));
    }
  });

  it("mirror: turning the frame upside down and the order with it gives the same tensions upside down", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 7] }), (frame) => {
        const { target, flexibility, cableFlexibility } = frame;
        const upsideDown = cableSystem({
          flexibility: flexibility.map((row) => row.toReversed()).toReversed(),
          cableFlexibility: cableFlexibility.toReversed(),
        });
        const up = tightenInPasses(systemOf(frame), { order: bottomToTop(target.length), target }, [PLAIN]).at(-1)?.tensions ?? [];
        const turned = { order: topToBottom(target.length), target: target.toReversed() };
        const down = tightenInPasses(upsideDown, turned, [PLAIN]).at(-1)?.tensions.toReversed() ?? [];
        for (const [cable, tension] of up.entries()) expect(Math.abs(tension - (down[cable] ?? 0))).toBeLessThan(1e-6);
      }),
    );
  });

  it("twice the target, twice every tension: the tightening is proportional, slack cables included", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 6] }), (frame) => {
        const { target } = frame;
        const order = bottomToTop(target.length);
        const once = tightenInPasses(systemOf(frame), { order, target }, [PLAIN, COMPENSATED]);
        const twice = tightenInPasses(systemOf(frame), { order, target: target.map((aim) => 2 * aim) }, [PLAIN, COMPENSATED]);
        for (const [index, step] of once.entries()) expect(Math.abs((twice[index]?.reading ?? 0) - 2 * step.reading)).toBeLessThan(1e-5);
      }),
    );
  });

  it.each([
    ["a cable named twice", { order: [0, 0, 2], target: even(3) }],
    ["a cable left out", { order: [0, 1], target: even(3) }],
    ["a fourth cable", { order: [0, 1, 3], target: even(3) }],
    ["a step too many", { order: [0, 1, 2, 2], target: even(3) }],
    ["a target too many", { order: [0, 1, 2], target: even(4) }],
    ["a target too few", { order: [0, 1, 2], target: even(2) }],
  ])("refuses %s", (_what, tightening) => {
    expect(() => tightenInPasses(endFrame(3, 0.1), tightening, [PLAIN])).toThrow(/each of 3 cables once/);
  });

  it("refuses a target of 0 N", () => {
    expect(() => tightenInPasses(endFrame(2, 0.1), { order: [0, 1], target: [1000, 0] }, [PLAIN])).toThrow(/positive/);
  });
});

describe("stepTargets", () => {
  it("a frame that does not give way: every reading is the target", () => {
    expect(stepTargets(endFrame(4, 0), { order: [2, 0, 3, 1], target: [900, 1000, 1100, 1200] })).toEqual([900, 1000, 1100, 1200]);
  });

  it("end frame: the first of n is stopped at T (1 + n r) / (1 + r), the last at T (derived: u* = T (1 + n r))", () => {
    const [n, r] = [8, 0.1];
    const readings = stepTargets(endFrame(n, r), { order: bottomToTop(n), target: even(n) });
    expect(readings[0]).toBeCloseTo((1000 * (1 + n * r)) / (1 + r), 8);
    expect(readings[n - 1]).toBeCloseTo(1000, 8);
  });

  it("after a plain pass the readings lie nearer to the target", () => {
    const tightening = { order: bottomToTop(8), target: even(8) };
    const [alone, after] = [stepTargets(endFrame(8, 0.1), tightening), stepTargets(endFrame(8, 0.1), tightening, 1)];
    expect(Math.max(...after)).toBeLessThan(Math.max(...alone));
    expect(Math.max(...after)).toBeGreaterThan(1000);
  });
});

describe("plainPassesUntil", () => {
  it("two cables with r = 1 come within 1 % in 4 passes; 6 are made when 6 are asked for, and the first four are the same", () => {
    const tightening = { order: [0, 1], target: even(2) };
    const four = plainPassesUntil(endFrame(2, 1), tightening, { within: 0.01, passes_min: 1 });
    const six = plainPassesUntil(endFrame(2, 1), tightening, { within: 0.01, passes_min: 6 });
    expect([four.length, six.length]).toEqual([4, 6]);
    expect(six.slice(0, 4)).toEqual(four);
    expect(plainPasses(endFrame(2, 1), tightening, 4)).toEqual(four);
  });
});

describe("passesToWithin", () => {
  it("two cables with r = 1: pass 1 leaves an error of 1/2, each further one a quarter of it (derived), so 10 % needs 3 passes and 1 % needs 4", () => {
    const tightening = { order: [0, 1], target: even(2) };
    const errors = plainPasses(endFrame(2, 1), tightening, 4).map(({ worstError }) => worstError);
    for (const [index, error] of errors.entries()) expect(error).toBeCloseTo(0.5 / 4 ** index, 12);
    expect(passesToWithin(plainPasses(endFrame(2, 1), tightening, 4), 0.1)).toBe(3);
    expect(passesToWithin(plainPasses(endFrame(2, 1), tightening, 4), 0.01)).toBe(4);
  });

  it("a frame a hundred times softer than 6 cables is not right after 50 passes: null", () => {
    const results = plainPassesUntil(endFrame(6, 100), { order: bottomToTop(6), target: even(6) }, { within: 0.05, passes_min: 1 });
    expect(results).toHaveLength(50);
    expect(passesToWithin(results, 0.05)).toBeNull();
  });

  it("the passes never grow the error of the take-ups: the tension energy of what is missing falls from pass to pass", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 6] }), (frame) => {
        const { target } = frame;
        const system = systemOf(frame);
        const missing = plainPasses(system, { order: topToBottom(target.length), target }, 4).map(({ tensions, slack }) => {
          const gap = target.map((aim, cable) => aim - (tensions[cable] ?? 0));
          return slack.length > 0
            ? Number.POSITIVE_INFINITY
            : takeUpsFor(system, gap).reduce((sum, takeUp, cable) => sum + takeUp * (gap[cable] ?? 0), 0);
        });
        for (let pass = 1; pass < missing.length; pass++) {
          expect(missing[pass] ?? 0).toBeLessThanOrEqual((missing[pass - 1] ?? 0) * (1 + 1e-9) + 1e-9);
        }
      }),
    );
  });
});
