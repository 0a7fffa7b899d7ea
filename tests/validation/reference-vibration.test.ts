// Source: reference solutions of the pitch of a stiff string, made with scipy (pinned closed form, clamped characteristic equation) and
// checked with Hermite finite elements (2e-7) and CalculiX 2.20 (tests/support/reference-cases.json). Each case states its own tolerance.
import { describe, expect, it } from "vitest";
import { pitch, pitchStiff, tensionFromPitch, tensionFromPitchStiff } from "../../src/mechanics/pitch.ts";
import { expectWithin, type HeardCase, heardCases, type PitchCase, pitchCases, shareOf } from "../support/reference-cases.ts";

const stringOf = (one: PitchCase | HeardCase) => ({
  span: one.in.span.mm,
  mass_kgPerM: one.in.mass_per_length["kg/m"],
  bendingStiffness_Nmm2: one.in.EI["N.mm^2"],
  ends: one.in.ends,
});

describe("pitchStiff and tensionFromPitchStiff against reference solutions", () => {
  it("has all 14 cases, pinned and clamped", () => {
    expect([pitchCases.length, heardCases.length]).toEqual([10, 4]);
    expect(new Set(pitchCases.map((one) => one.in.ends))).toEqual(new Set(["pinned", "clamped"]));
  });

  it.each(pitchCases)("$id: $in.ends span of $in.span.mm mm at $in.T.N N, modes 1 and 2", (one) => {
    const string = { ...stringOf(one), tension: one.in.T.N };
    const share = shareOf(one, "f1_f2");
    expectWithin({ computed: pitchStiff(string), reference: one.out.f1.Hz, share, what: "mode 1" });
    expectWithin({ computed: pitchStiff({ ...string, mode: 2 }), reference: one.out.f2.Hz, share, what: "mode 2" });
    const plain = shareOf(one, "f1_string_formula");
    expectWithin({ computed: pitch(string), reference: one.out.f1_string_formula.Hz, share: plain, what: "plain string" });
    const back = tensionFromPitchStiff({ ...stringOf(one), pitch_Hz: one.out.f1.Hz });
    expectWithin({ computed: back, reference: one.in.T.N, share: shareOf(one, "T"), what: "tension back from mode 1" });
  });

  it.each(heardCases)("$id: mode $in.mode of a $in.ends span of $in.span.mm mm heard at $in.frequency.Hz Hz", (one) => {
    const heard = { ...stringOf(one), mode: one.in.mode, pitch_Hz: one.in.frequency.Hz };
    expectWithin({ computed: tensionFromPitchStiff(heard), reference: one.out.T.N, share: shareOf(one, "T"), what: "tension" });
    const plain = shareOf(one, "f1_string_formula");
    expectWithin({ computed: tensionFromPitch(heard), reference: one.out.T_string_formula.N, share: plain, what: "plain string" });
  });

  it("agrees far closer than the tolerances: worst deviation of a mode below 1e-7", () => {
    const deviations = pitchCases.flatMap((one) => {
      const string = { ...stringOf(one), tension: one.in.T.N };
      return [pitchStiff(string) / one.out.f1.Hz - 1, pitchStiff({ ...string, mode: 2 }) / one.out.f2.Hz - 1].map(Math.abs);
    });
    expect(Math.max(...deviations)).toBeLessThan(1e-7);
  });
});
