import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bearingAcrossCheck, bearingAreaFactor, woodCombinedCheck, woodShearCheck } from "../../src/mechanics/wood-checks.ts";

const rule = { beside: 9.525, shortBelow: 152.4, fromEnd_min: 76.2 };

describe("woodShearCheck", () => {
  it("1000 N on 50 x 30 mm is 1 MPa at the middle: 3 V / (2 A)", () => {
    const check = woodShearCheck({ force: 1000, area_mm2: 1500, allowable: 2 });
    expect(check).toMatchObject({ demand: 1, ratio: 0.5 });
    expect(check.parts.map(({ name, value, unit }) => [name, value, unit])).toEqual([
      ["V", 1000, "N"],
      ["A", 1500, "mm2"],
    ]);
  });

  it("refuses an area of 0", () => {
    expect(() => woodShearCheck({ force: 1, area_mm2: 0, allowable: 1 })).toThrow(RangeError);
  });
});

describe("bearingAreaFactor", () => {
  // National Design Specification, table 3.10.4 (from memory): 0.5 in 1.75, 1 in 1.38, 1.5 in 1.25, 2 in 1.19, 3 in 1.13, 6 in
  // 1.00. Its remembered 1.10 for 4 in is left out: the formula of the same clause gives 1.094.
  it.each([
    [0.5, 1.75],
    [1, 1.38],
    [1.5, 1.25],
    [2, 1.19],
    [3, 1.13],
    [6, 1],
  ])("a bearing of %f in has %f", (length_in, printed) => {
    const factor = bearingAreaFactor({ length: (length_in * 254) / 10, fromEnd: 76.2, rule });
    expect(Math.abs(factor - printed)).toBeLessThan(0.0051);
  });

  it("near the end of the piece it is 1", () => {
    expect(bearingAreaFactor({ length: 25.4, fromEnd: 76, rule })).toBe(1);
  });

  it("refuses a length of 0", () => {
    expect(() => bearingAreaFactor({ length: 0, fromEnd: 100, rule })).toThrow(RangeError);
  });
});

describe("bearingAcrossCheck", () => {
  it("a washer of 25.4 mm may press 1.375 of the value: 500 N on 200 mm2 against 2 MPa uses 0.909", () => {
    const check = bearingAcrossCheck({ force: 500, area_mm2: 200, length: 25.4, fromEnd: 300, rule, allowable: 2 });
    expect(check.capacity).toBeCloseTo(2.75, 12);
    expect(check.ratio).toBeCloseTo(2.5 / 2.75, 12);
    expect(check.parts.map(({ name }) => name)).toEqual(["P", "A", "C_b"]);
  });

  it("refuses an area of 0", () => {
    expect(() => bearingAcrossCheck({ force: 1, area_mm2: 0, length: 1, fromEnd: 1, rule, allowable: 1 })).toThrow(RangeError);
  });
});

describe("woodCombinedCheck", () => {
  const bent = { stress: 4, allowable: 10, bucklingStress: 8 };
  const member = { compression: 2, compressionAllowable: 5, edge: bent, flat: { ...bent, stress: 1 }, beamBucklingStress: 20 };

  it("eq. 3.9-3 by hand: (2/5)^2 + 4/(10 x 0.75) + 1/(10 (0.75 - 0.04)) = 0.16 + 0.53333 + 0.14085", () => {
    const check = woodCombinedCheck(member);
    expect(check.ratio).toBeCloseTo(0.16 + 0.4 / 0.75 + 0.1 / 0.71, 12);
    expect(check.parts.map(({ value }) => value)).toEqual(
      [0.16, 0.4 / 0.75, 0.1 / 0.71, 0.25, 0.29].map((value) => expect.closeTo(value, 12)),
    );
  });

  it("limits: without compression it is the plain sum of a piece that cannot turn over, without bending the square of the share", () => {
    expect(woodCombinedCheck({ ...member, compression: 0, beamBucklingStress: Infinity }).ratio).toBeCloseTo(0.5, 12);
    const straight = { ...bent, stress: 0 };
    expect(woodCombinedCheck({ ...member, edge: straight, flat: straight }).ratio).toBeCloseTo(0.16, 12);
  });

  it("a member that buckles has no finite share, bent or not", () => {
    expect(woodCombinedCheck({ ...member, compression: 8 }).ratio).toBe(Infinity);
    expect(woodCombinedCheck({ ...member, flat: { ...bent, stress: 0, bucklingStress: 2 } }).ratio).toBe(Infinity);
    expect(woodCombinedCheck({ ...member, beamBucklingStress: 4 }).ratio).toBe(Infinity);
  });

  it("law: more of any stress uses more, and the sign of a bending doesn't matter", () => {
    const stress = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(stress, stress, stress, (compression, edge, flat) => {
        const ratio = (more: readonly [number, number, number]) =>
          woodCombinedCheck({
            ...member,
            compression: compression + more[0],
            edge: { ...bent, stress: edge + more[1] },
            flat: { ...bent, stress: flat + more[2] },
          }).ratio;
        const before = ratio([0, 0, 0]);
        for (const more of [
          [0.1, 0, 0],
          [0, 0.1, 0],
          [0, 0, 0.1],
        ] as const) {
          expect(ratio(more)).toBeGreaterThan(before);
        }
        const mirrored = woodCombinedCheck({ ...member, compression, edge: { ...bent, stress: -edge }, flat: { ...bent, stress: -flat } });
        expect(mirrored.ratio).toBeCloseTo(before, 12);
      }),
    );
  });

  it("refuses a pull and allowed stresses that are not positive", () => {
    for (const wrong of [
      { compression: -1 },
      { compressionAllowable: 0 },
      { edge: { ...bent, allowable: 0 } },
      { flat: { ...bent, allowable: 0 } },
      { edge: { ...bent, bucklingStress: 0 } },
      { flat: { ...bent, bucklingStress: 0 } },
      { beamBucklingStress: 0 },
    ]) {
      expect(() => woodCombinedCheck({ ...member, ...wrong })).toThrow(RangeError);
    }
  });
});
