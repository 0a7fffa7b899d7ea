import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { eulerColumn, woodBeam, woodColumn } from "../../src/mechanics/column.ts";

const post = { size: 88.9, modulus_min: 3500, compression: 9 };
const share = [
  { lengths: 1.87, depths: 0 },
  { lengths: 1.44, depths: 3 },
] as const;
const rail = { share, depth: 140, breadth: 38, modulus_min: 3500, bending: 10 };

describe("woodColumn", () => {
  it("limit: no length, no buckling: CP is 1", () => {
    expect(woodColumn({ ...post, length: 0 })).toEqual({ slenderness: 0, bucklingStress: Infinity, factor: 1 });
  });

  it("limit: a very slender, very strong column fails at its buckling stress: CP Fc* is FcE", () => {
    const { factor, bucklingStress } = woodColumn({ ...post, length: 49 * 88.9, compression: 1e5 });
    expect((factor * 1e5) / bucklingStress).toBeCloseTo(1, 4);
  });

  it("agrees with the printed form t - sqrt(t^2 - r / c)", () => {
    const { factor, bucklingStress } = woodColumn({ ...post, length: 1500 });
    const middle = (1 + bucklingStress / 9) / 1.6;
    expect(factor).toBeCloseTo(middle - Math.sqrt(middle ** 2 - bucklingStress / 9 / 0.8), 12);
  });

  it("law: the longer the column, the smaller its factor, always from above 0 to 1", () => {
    const length = fc.double({ min: 100, max: 4300, noNaN: true });
    fc.assert(
      fc.property(length, length, (one, other) => {
        const [short, long] = [Math.min(one, other), Math.max(one, other) + 1];
        const [near, far] = [woodColumn({ ...post, length: short }).factor, woodColumn({ ...post, length: long }).factor];
        expect(far).toBeLessThan(near);
        expect(far).toBeGreaterThan(0);
        expect(near).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("a length of 50 sizes is taken, one of more refused (NDS 2018, 3.7.1.4, from memory: shall not exceed 50); so is what is not positive", () => {
    expect(woodColumn({ ...post, size: 90, length: 4500 }).slenderness).toBe(50);
    expect(() => woodColumn({ ...post, size: 90, length: 4501 })).toThrow(/50/);
    for (const wrong of [{ length: -1 }, { size: 0 }, { modulus_min: 0 }, { compression: 0 }]) {
      expect(() => woodColumn({ ...post, length: 100, ...wrong })).toThrow("must be positive");
    }
  });
});

describe("woodBeam", () => {
  it("140 mm deep and 38 mm wide, 3 m free: 1.44 lengths and 3 depths; 0.9 m is short and counts 1.87 lengths", () => {
    expect(woodBeam({ ...rail, length: 3000 }).length).toBeCloseTo(1.44 * 3000 + 3 * 140, 9);
    expect(woodBeam({ ...rail, length: 900 }).length).toBeCloseTo(1.87 * 900, 9);
  });

  it("a length of 7 depths counts as long (NDS 2018, table 3.3.3, from memory: below 7, and from 7 on)", () => {
    expect(woodBeam({ ...rail, length: 980 }).length).toBeCloseTo(1.44 * 980 + 3 * 140, 9);
    expect(woodBeam({ ...rail, length: 979 }).length).toBeCloseTo(1.87 * 979, 9);
  });

  it("a square and a piece on its flat don't turn over", () => {
    expect(woodBeam({ ...rail, length: 3000, depth: 89, breadth: 89 })).toMatchObject({ factor: 1, bucklingStress: Infinity });
    expect(woodBeam({ ...rail, length: 3000, depth: 38, breadth: 140 })).toMatchObject({ factor: 1, bucklingStress: Infinity });
  });

  it("limit: no free length, no turning over", () => {
    expect(woodBeam({ ...rail, length: 0 }).factor).toBe(1);
  });

  it("law: a longer free length has a smaller factor", () => {
    const length = fc.double({ min: 980, max: 9000, noNaN: true });
    fc.assert(
      fc.property(length, length, (one, other) => {
        const [short, long] = [Math.min(one, other), Math.max(one, other) + 1];
        expect(woodBeam({ ...rail, length: long }).factor).toBeLessThan(woodBeam({ ...rail, length: short }).factor);
      }),
    );
  });

  it("a slenderness of 50 is taken, one of more refused (NDS 2018, 3.3.3.7, from memory: shall not exceed 50); so is what is not positive", () => {
    const even = { lengths: 1, depths: 0 };
    const thin = { ...rail, share: [even, even], depth: 100, breadth: 20 } as const;
    expect(woodBeam({ ...thin, length: 10_000 }).slenderness).toBe(50);
    expect(() => woodBeam({ ...thin, length: 10_001 })).toThrow(/slenderness/);
    for (const wrong of [{ length: -1 }, { depth: 0 }, { breadth: 0 }, { modulus_min: 0 }, { bending: 0 }]) {
      expect(() => woodBeam({ ...rail, length: 100, ...wrong })).toThrow("must be positive");
    }
  });
});

describe("eulerColumn", () => {
  it("the force at buckling is pi^2 E I / L^2", () => {
    const column = { length: 1000, inertia_mm4: 1e5, area_mm2: 500, modulus: 200_000 };
    expect(eulerColumn(column).bucklingStress * 500).toBeCloseTo((Math.PI ** 2 * 200_000 * 1e5) / 1e6, 6);
    expect(eulerColumn(column).slenderness).toBeCloseTo(1000 / Math.sqrt(200), 12);
    expect(eulerColumn({ ...column, length: 0 }).bucklingStress).toBe(Infinity);
  });

  it("refuses what is not positive", () => {
    const column = { length: 1, inertia_mm4: 1, area_mm2: 1, modulus: 1 };
    for (const wrong of [{ length: -1 }, { inertia_mm4: 0 }, { area_mm2: 0 }, { modulus: 0 }]) {
      expect(() => eulerColumn({ ...column, ...wrong })).toThrow(RangeError);
    }
  });
});
