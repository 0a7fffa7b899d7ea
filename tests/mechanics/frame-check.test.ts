import { describe, expect, it } from "vitest";
import { checkBalance } from "../../src/mechanics/frame-check.ts";

const push = { x: 0, y: 1000, force_x: 100, force_y: 0, moment: 0 };
const base = { x: 0, y: 0, force_x: -100, force_y: 0, moment: 1e5 };
const none = { force: 0, moment: 0 };

describe("checkBalance", () => {
  it("100 N at 1 m over a base that answers with -100 N and 1e5 N mm is in balance", () => {
    expect(checkBalance([push, base], none)).toBe(0);
  });

  it("refuses a reaction that is short by one part in 10 000, naming what misses", () => {
    expect(() => checkBalance([push, { ...base, force_x: -99.99 }], none)).toThrow("forces along x");
    expect(() => checkBalance([push, { ...base, force_y: 0.01 }], none)).toThrow("forces along y");
    expect(() => checkBalance([push, { ...base, moment: 99_990 }], none)).toThrow("moments");
    expect(() => checkBalance([push, { ...base, moment: Number.NaN }], none)).toThrow("moments");
  });

  it("says by how much balance is missed within the tolerance: 1e-5 N of 200 N", () => {
    expect(checkBalance([push, { ...base, force_x: -100 + 1e-5 }], none)).toBeCloseTo(5e-8, 12);
  });

  it("the size of forces aslant is the sum of both parts, and dust counts for nothing: 1e-5 N less 2e-6 of 1400 N", () => {
    const forces = [
      { x: 0, y: 0, force_x: 300, force_y: -400, moment: 0 },
      { x: 0, y: 0, force_x: -300 + 1e-5, force_y: 400, moment: 0 },
    ];
    expect(checkBalance(forces, none) * 1400).toBeCloseTo(1e-5, 9);
    expect(checkBalance(forces, { force: 2e6, moment: 0 }) * 1400).toBeCloseTo(8e-6, 9);
  });

  it("forgives the dust of large products: 1e-4 N where stiffness times movement is 1e9 N", () => {
    const dust = [
      { ...push, force_x: 1e-4 },
      { ...base, force_x: 0, moment: 0 },
    ];
    expect(() => checkBalance(dust, none)).toThrow(RangeError);
    expect(checkBalance(dust, { force: 1e9, moment: 0 })).toBe(0);
  });
});
