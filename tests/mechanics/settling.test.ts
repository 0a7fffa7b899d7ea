import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closingByShrinkage, evenSizeChange, settled, sizeChange } from "../../src/mechanics/settling.ts";
import { randomFrames } from "../support/cable-frames.ts";

const fir = { size: 3.5, shrinkage_percent: 7.6, coefficient: 0.00267 };

describe("sizeChange", () => {
  it("3.5 in of Douglas-fir, tangential, 19 to 12 %: -0.0638 in by the formula for wide ranges (worked by hand: 24.5 / 383.7)", () => {
    expect(sizeChange({ ...fir, moisture_from_percent: 19, moisture_to_percent: 12 })).toBeCloseTo(-0.0638, 4);
  });

  it("from green (30 %) to oven-dry it is the total shrinkage: -7.6 % of the size", () => {
    expect(sizeChange({ ...fir, moisture_from_percent: 30, moisture_to_percent: 0 })).toBeCloseTo(-0.076 * 3.5, 12);
  });

  it("inside 6 to 14 % it goes evenly: 12 to 8 % is -4 x 0.00267 of the size, and back is the same", () => {
    expect(sizeChange({ ...fir, moisture_from_percent: 12, moisture_to_percent: 8 })).toBeCloseTo(-4 * 0.00267 * 3.5, 12);
    expect(sizeChange({ ...fir, moisture_from_percent: 6, moisture_to_percent: 14 })).toBeCloseTo(
      evenSizeChange({ size: 3.5, moisture_change_percent: 8, coefficient: 0.00267 }),
      12,
    );
  });

  it("where it begins or ends below 6 % the formula for wide ranges holds: 3 to 10 % is 7 / (30/0.076 - 27) of the size (Wood Handbook 13-3)", () => {
    expect(sizeChange({ ...fir, moisture_from_percent: 3, moisture_to_percent: 10 })).toBeCloseTo((3.5 * 7) / (30 / 0.076 - 27), 12);
    expect(sizeChange({ ...fir, moisture_from_percent: 10, moisture_to_percent: 3 })).toBeCloseTo((-3.5 * 7) / (30 / 0.076 - 20), 12);
  });

  it("drier is smaller, on either formula", () => {
    const percent = fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(percent, percent, (from, to) => {
        const change = sizeChange({ ...fir, moisture_from_percent: from, moisture_to_percent: to });
        expect(Math.sign(change)).toBe(Math.sign(to - from));
      }),
    );
  });

  it.each([
    ["31 % of moisture", { moisture_from_percent: 31, moisture_to_percent: 12 }, /between 0 and 30/],
    ["-1 % of moisture", { moisture_from_percent: 12, moisture_to_percent: -1 }, /between 0 and 30/],
    ["no size", { moisture_from_percent: 19, moisture_to_percent: 12, size: 0 }, /positive/],
    ["no shrinkage", { moisture_from_percent: 19, moisture_to_percent: 12, shrinkage_percent: 0 }, /positive/],
    ["no coefficient", { moisture_from_percent: 19, moisture_to_percent: 12, coefficient: 0 }, /positive/],
  ])("refuses %s", (_what, wood, message) => {
    expect(() => sizeChange({ ...fir, ...wood })).toThrow(message);
  });
});

describe("closingByShrinkage", () => {
  it("half of 1.65 mm at each end is 1.65 mm; a steel post on the other side halves it", () => {
    expect(
      closingByShrinkage([
        { shrinkage: 1.65, share: 0.5 },
        { shrinkage: 1.65, share: 0.5 },
      ]),
    ).toBeCloseTo(1.65, 12);
    expect(
      closingByShrinkage([
        { shrinkage: 1.65, share: 0.5 },
        { shrinkage: 0, share: 0.5 },
      ]),
    ).toBeCloseTo(0.825, 12);
  });

  it("held at its inner face a post takes all of its shrinkage along, at its outer face none", () => {
    const ends = [
      { shrinkage: 1.65, share: 1 },
      { shrinkage: 9, share: 0 },
    ];
    expect(closingByShrinkage(ends)).toBe(1.65);
  });

  it("refuses a share of 1.1 and of -0.1, at either end", () => {
    for (const share of [1.1, -0.1]) {
      const ends = [
        { shrinkage: 1, share: 0.5 },
        { shrinkage: 1, share },
      ];
      expect(() => closingByShrinkage(ends)).toThrow(/0 and 1/);
    }
  });
});

describe("settled", () => {
  const standing = { cables: [{ length: 6096, stiffness: 782_230, tension: 1000 }], flexibility: [[0]] };
  const drying = { closing: [1.6], bedding: [0.9], pitch: 0.907, pullingEnds: 1, threadLeft: 20 };

  it("1.6 mm of drying and 0.9 mm of bedding-in over 20 ft cost about EA 2.5 / L = 321 N; the nut travels 2.5 mm, 2.76 turns of 0.907 mm", () => {
    const after = settled(standing, drying);
    expect(after.losses[0]).toBeCloseTo(321, 0);
    expect(after.tensions[0]).toBeCloseTo(679, 0);
    expect(after.travelPerEnd[0]).toBeCloseTo(2.5, 12);
    expect(after.turns[0]).toBeCloseTo(2.756, 3);
    expect(after.threadLeft[0]).toBeCloseTo(17.5, 12);
    expect(after.slack).toEqual([]);
  });

  it("pulled from both ends each nut travels half; thread that lacks is negative", () => {
    const after = settled(standing, { ...drying, pullingEnds: 2, threadLeft: 1 });
    expect(after.travelPerEnd[0]).toBeCloseTo(1.25, 12);
    expect(after.threadLeft[0]).toBeCloseTo(-0.25, 12);
  });

  it("a cold day hides part of the loss: 20 degC colder the same settling reads 251 N more (EA alpha dt)", () => {
    const [warm, cold] = [settled(standing, drying), settled(standing, { ...drying, warmer: -20, expansion_perC: 16e-6 })];
    expect((cold.tensions[0] ?? 0) - (warm.tensions[0] ?? 0)).toBeCloseTo(782_230 * 16e-6 * 20, -1);
  });

  it("a frame that gives way loses less tension to the same drying, and asks for the same turns", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 6] }), ({ flexibility, cableFlexibility, target }) => {
        const cables = target.map((tension, cable) => ({ length: 6000, stiffness: 6000 / (cableFlexibility[cable] ?? 1), tension }));
        const same = { ...drying, closing: target.map(() => 0.3), bedding: target.map(() => 0) };
        const sum = (losses: readonly number[]): number => losses.reduce((all, one) => all + one, 0);
        const given = settled({ cables, flexibility }, same);
        const rigid = settled({ cables, flexibility: flexibility.map((row) => row.map(() => 0)) }, same);
        expect(sum(given.losses)).toBeLessThanOrEqual(sum(rigid.losses) + 1e-6);
        expect(given.turns).toEqual(rigid.turns);
      }),
    );
  });

  it("refuses no pulling end and a pitch of 0 mm", () => {
    expect(() => settled(standing, { ...drying, pullingEnds: 0 })).toThrow(/one end at least/);
    expect(() => settled(standing, { ...drying, pitch: 0 })).toThrow(/pitch/);
  });
});
