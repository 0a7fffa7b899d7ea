import { describe, expect, test } from "vitest";
import { CLOSURE_mm, DUST_share, SAME_mm, SAME_rad, TAPE_mm } from "../../src/units/tolerance.ts";

describe("tolerances", () => {
  test("a tape shows 1/16 in, which is 1.5875 mm; read twice to 1/4 in it is 6.35 mm off", () => {
    expect(TAPE_mm).toBe(1.5875);
    expect(CLOSURE_mm).toBe(6.35);
  });

  test("dust of 100 m is finer than what counts as one point, and that is finer than a tape", () => {
    expect(100_000 * DUST_share).toBeLessThan(TAPE_mm);
    expect(SAME_mm).toBeLessThan(TAPE_mm / 1000);
    expect(TAPE_mm).toBeLessThan(CLOSURE_mm);
  });

  test("directions that count as one part by less than a point over 1 m", () => expect(1000 * SAME_rad).toBeLessThanOrEqual(1e-3));
});
