// Source: reference solutions of a span under a side load, made with scipy (scalar root of the exact two-segment string, 1e-13) and
// checked with a three-equation Newton solver, an energy gradient and CalculiX 2.20 with large deflections (tests/support/reference-cases.json).
// Each case states its own tolerance.
import { describe, expect, it } from "vitest";
import { deflectionUnder, lateralResponse } from "../../src/mechanics/lateral.ts";
import { expectWithin, type LateralCase, lateralCases, shareOf } from "../support/reference-cases.ts";

const spanOf = (one: LateralCase) => ({
  span: one.in.span.mm,
  tension: one.in.T0.N,
  stiffness: one.in.EA.N,
  runLength: one.in.run.mm,
  support: one.in.supports === "slide" ? ("sliding" as const) : ("held" as const),
});

describe("deflectionUnder and lateralResponse against reference solutions", () => {
  it("has all 40 cases, sliding and held", () => {
    expect(lateralCases).toHaveLength(40);
    expect(new Set(lateralCases.map((one) => one.in.supports))).toEqual(new Set(["slide", "clamped"]));
  });

  it.each(lateralCases)("$id: span $in.span.mm mm, $in.supports, $in.T0.N N, pushed with $in.P.N N", (one) => {
    const { deflection, tension } = deflectionUnder({ ...spanOf(one), force: one.in.P.N });
    expectWithin({ computed: deflection, reference: one.out.deflection.mm, share: shareOf(one, "deflection"), what: "deflection" });
    expectWithin({ computed: tension, reference: one.out.tension.N, share: shareOf(one, "tension"), what: "tension" });
    const rise = tension - one.in.T0.N;
    expectWithin({ computed: rise, reference: one.out.tension_rise.N, share: shareOf(one, "tension_rise"), what: "tension rise" });
    // The other way round: the reference's deflection gives back its force.
    const { force } = lateralResponse({ ...spanOf(one), deflection: one.out.deflection.mm });
    expectWithin({ computed: force, reference: one.in.P.N, share: shareOf(one, "tension_rise"), what: "force" });
    const small = (one.in.P.N * one.in.span.mm) / (4 * one.in.T0.N) / deflection;
    expectWithin({ computed: small, reference: one.out.small_load_formula_over_true, share: shareOf(one, "deflection"), what: "PL/4T" });
  });

  it("agrees far closer than the tolerances: worst deviation of deflection and tension below 1e-8", () => {
    const deviations = lateralCases.flatMap((one) => {
      const { deflection, tension } = deflectionUnder({ ...spanOf(one), force: one.in.P.N });
      return [Math.abs(deflection / one.out.deflection.mm - 1), Math.abs(tension / one.out.tension.N - 1)];
    });
    expect(Math.max(...deviations)).toBeLessThan(1e-8);
  });
});
