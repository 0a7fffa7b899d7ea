// Shear area of an inner thread, by hand from the basic profile: 7/8 pi d L, whatever the pitch.
import { describe, expect, test } from "vitest";
import { innerThreadArea } from "../../src/mechanics/thread-shear.ts";

describe("innerThreadArea", () => {
  test("M6 in a wall of 3 mm: p / 2 + (3/8) p of each pitch is sheared, 7/8 x pi x 6 x 3 = 49.480 mm2", () => {
    expect(innerThreadArea({ diameter: 6, pitch: 1, length: 3 })).toBeCloseTo((7 / 8) * Math.PI * 18, 9);
  });

  test("a finer thread of the same size shears as much: the basic profile has one shape", () => {
    expect(innerThreadArea({ diameter: 6.35, pitch: 25.4 / 28, length: 5 })).toBeCloseTo(
      innerThreadArea({ diameter: 6.35, pitch: 25.4 / 20, length: 5 }),
      9,
    );
  });

  test("goes with the length in the metal", () => {
    const at = (length: number): number => innerThreadArea({ diameter: 8, pitch: 1.25, length });
    expect(at(10) / at(4)).toBeCloseTo(2.5, 12);
  });

  test.each([
    { diameter: 0, pitch: 1, length: 3 },
    { diameter: 6, pitch: 0, length: 3 },
    { diameter: 6, pitch: 1, length: 0 },
  ])("refuses %o", (thread) => expect(() => innerThreadArea(thread)).toThrow(RangeError));
});
