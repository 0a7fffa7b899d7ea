// Source: M. A. Crisfield, Non-linear Finite Element Analysis of Solids and Structures, volume 1, equation 1.11, as a public repository's
// test quotes it: shallow bar with a rise z over l, W = (EA/l^3)(z^2 w + 1.5 z w^2 + 0.5 w^3); l = 2.5 m, z = 0.025 m, EA = 5e7 N.
// Two such bars are a span of 2 l whose wire is too long to be straight: measured from the straight line its strain begins below zero.
import { describe, expect, it } from "vitest";
import { springOf } from "../../src/mechanics/lateral.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const LENGTH_mm = 2500;
const RISE_mm = 25;
const STIFFNESS_N = 5e7;
const tension = STIFFNESS_N * (LENGTH_mm / Math.hypot(LENGTH_mm, RISE_mm) - 1);
const spring = springOf({ span: 2 * LENGTH_mm, tension, stiffness: STIFFNESS_N, runLength: 2 * LENGTH_mm, support: "held" });
/** Force of one of the two bars when the top has moved by w from its rise; the deflection is z + w. */
const forceOfOneBar = (w: number): number => spring(RISE_mm + w).force / 2;

describe("springOf", () => {
  it("equation 1.11: the bar holds -9.375 N half way down, and nothing at the straight line and at its mirror image", () => {
    const because = "the equation is for a shallow bar; the exact string differs by the square of the slope, 1e-4";
    expectAsPrinted(forceOfOneBar(-0.5 * RISE_mm), "-9.375", { within: 9.375e-4, because });
    expect(Math.abs(forceOfOneBar(-RISE_mm))).toBeLessThan(1e-9);
    expect(Math.abs(forceOfOneBar(-2 * RISE_mm))).toBeLessThan(1e-6);
  });
});
