// Source: reference solutions of friction along a run, made with numpy (capstan factor at each bend, elementwise larger of the two one-end
// profiles) and checked with an incremental Coulomb slider (tests/support/reference-cases.json). Each case states its own tolerance.
// "A then B" means: pull A to the value, lock it, then pull B to the value.
import { describe, expect, it } from "vitest";
import { type TensionProfile, tensionProfile } from "../../src/mechanics/corner.ts";
import { type CapstanCase, capstanCases, expectWithin, type PulledRun, shareOf } from "../support/reference-cases.ts";

function profileOf(one: CapstanCase, from: "A" | "B" | "both"): TensionProfile {
  return tensionProfile({
    length: one.in.run.mm,
    bends: one.in.bends_from_A.map((bend) => ({ at: bend.at.mm, angle: (bend.angle_deg * Math.PI) / 180 })),
    friction: one.in.mu,
    wobble_perMm: 0,
    pull_left: from === "B" ? null : one.in.pull.N,
    pull_right: from === "A" ? null : one.in.pull.N,
  });
}

/** Segments within this share of the least tie with it. */
const TIE = 1e-9;

function expectRun(one: CapstanCase, profile: TensionProfile, run: PulledRun, what: string): void {
  const share = shareOf(one, "all");
  expect.soft(profile.segments, what).toHaveLength(run.segment_tension.N.length);
  for (const [index, segment] of profile.segments.entries()) {
    const reference = run.segment_tension.N[index] ?? Number.NaN;
    expectWithin({ computed: segment.tension_from, reference, share, what: `${what}, segment ${index + 1}` });
    expect.soft(segment.tension_to).toBe(segment.tension_from);
  }
  expectWithin({ computed: profile.least, reference: run.least_tension.N, share, what: `${what}, least` });
  expectWithin({ computed: profile.least / one.in.pull.N, reference: run.least_over_pull, share, what: `${what}, least over pull` });
  expectWithin({ computed: profile.integral_NMm / one.in.EA.N, reference: run.elongation_total.mm, share, what: `${what}, stretch` });
  const least = profile.segments.flatMap((segment, index) => (segment.tension_from <= profile.least * (1 + TIE) ? [index + 1] : []));
  expect.soft(least, `${what}, least segments`).toEqual(run.least_segment);
  expect.soft(profile.segments[least[0] === undefined ? 0 : least[0] - 1]?.from).toBe(profile.leastAt);
}

describe("tensionProfile against reference solutions", () => {
  it("has all 9 cases", () => {
    expect(capstanCases).toHaveLength(9);
  });

  it.each(capstanCases)("$id: run of $in.run.mm mm, friction $in.mu, pulled with $in.pull.N N from A, from B, and from A then B", (one) => {
    const both = one.out.pulled_from_A_then_B;
    const [fromA, fromB, fromBoth] = [profileOf(one, "A"), profileOf(one, "B"), profileOf(one, "both")];
    expectRun(one, fromA, one.out.pulled_from_A, "from A");
    expectRun(one, fromB, one.out.pulled_from_B, "from B");
    expectRun(one, fromBoth, both, "from A then B");
    const drawn = (fromBoth.integral_NMm - fromA.integral_NMm) / one.in.EA.N;
    expectWithin({
      computed: fromA.integral_NMm / one.in.EA.N,
      reference: both.drawn_in_at_A.mm,
      share: shareOf(one, "all"),
      what: "drawn in at A",
    });
    expectWithin({ computed: drawn, reference: both.drawn_in_at_B.mm, share: shareOf(one, "all"), what: "drawn in at B" });
    const raised = fromBoth.segments.flatMap((segment, index) =>
      segment.tension_from > (fromA.segments[index]?.tension_from ?? 0) * (1 + TIE) ? [index + 1] : [],
    );
    expect.soft(raised, "segments raised by the second pull").toEqual(both.segments_raised_by_second_pull);
  });
});
