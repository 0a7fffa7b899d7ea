// Source: reference solutions of the frame under its cables, linear plane frame by Euler-Bernoulli direct stiffness, made with numpy and
// checked with CalculiX (tests/support/reference-cases.json). Each case states its own tolerances. End posts stand at 0 and at the run's
// length, the post's axis is the anchorage; shear, weight and friction are left out. What the cases say of other models (shear, no
// intermediate posts) is compared too, to the three digits that are stated.
import { describe, expect, it } from "vitest";
import { guardOfCase, solveFrameCase } from "../../src/mechanics/cases/frame-case.ts";
import { guardFrame, sideState } from "../../src/mechanics/guard-frame.ts";
import type { GuardFrameInput } from "../../src/mechanics/guard-frame-build.ts";
import { plainPasses } from "../../src/mechanics/sequence.ts";
import { namedOrders } from "../../src/mechanics/sequence-order.ts";
import { cableSystem } from "../../src/mechanics/sequence-solve.ts";
import { expectWithin, type FrameCase, frameCases, frameClimateCases, shareOf } from "../support/reference-cases.ts";

/** Softly expects two values to lie within a stated distance. */
function expectNear(computed: number, reference: number, within: number, what: string): void {
  expect.soft(Math.abs(computed - reference), `${what}: ${computed} against ${reference}`).toBeLessThanOrEqual(within);
}

type State = FrameCase["out"]["frame_all_at_target"];

function expectState(one: FrameCase, computed: State, reference: State, what: string): void {
  const lever = one.in.cable_heights.mm.reduce((sum, height) => sum + height, 0) * one.in.target.N;
  for (const side of ["left", "right"] as const) {
    const [mine, theirs] = [computed[side], reference[side]];
    const largest = theirs.inward_deflection_largest.mm;
    const within = shareOf(one, "deflection") * largest;
    expectNear(mine.inward_deflection_top.mm, theirs.inward_deflection_top.mm, within, `${what}, top of ${side}`);
    expectNear(mine.inward_deflection_largest.mm, largest, within, `${what}, largest of ${side}`);
    // Theirs is read on a grid of places; the curve is flat there.
    expectNear(mine.height_of_largest.mm, theirs.height_of_largest.mm, 3, `${what}, height of the largest of ${side}`);
    expectNear(mine.base_moment["N.mm"], theirs.base_moment["N.mm"], shareOf(one, "base_moment") * lever, `${what}, base of ${side}`);
  }
  const [mine, theirs] = [computed.top_rail_compression_per_bay?.N, reference.top_rail_compression_per_bay?.N];
  expect.soft(mine?.length, what).toBe(theirs?.length);
  for (const [bay, force] of (theirs ?? []).entries()) {
    const share = shareOf(one, "rail_compression");
    expectWithin({ computed: mine?.[bay] ?? Number.NaN, reference: force, share, what: `${what}, rail of bay ${bay + 1}` });
  }
}

/** Tensions after one plain pass in each of the four named orders on another model of the frame, and that model. */
function onePass(one: FrameCase, input: GuardFrameInput) {
  const guard = guardFrame(input);
  const target = input.cables.map(() => one.in.target.N);
  const cableFlexibility = target.map(() => one.in.run_between_anchorages.mm / one.in.cable_EA.N);
  const system = cableSystem({ flexibility: guard.flexibility, cableFlexibility });
  const tensions = Object.values(namedOrders).flatMap(
    (order) => plainPasses(system, { order: order(target.length), target }, 1)[0]?.tensions ?? [],
  );
  return { guard, target, tensions };
}

const greatestGap = (some: readonly number[], others: readonly number[]): number =>
  Math.max(...some.map((value, index) => Math.abs(value - (others[index] ?? Number.NaN))));

describe("solveFrameCase against reference solutions", () => {
  it("has all 5 cases", () => {
    expect(frameCases).toHaveLength(5);
  });

  it.each(frameCases)("$id: $note: flexibility, take-ups, movement, base moment, rail compression", (one) => {
    const { out } = one;
    const computed = solveFrameCase(one.in);
    const F = out.flexibility_F["mm/N"];
    const mine = computed.flexibility_F["mm/N"];
    expect(mine.map((row) => row.length)).toEqual(F.map((row) => row.length));
    expectNear(greatestGap(mine.flat(), F.flat()), 0, shareOf(one, "flexibility_F") * Math.max(...F.flat()), "F");
    const own = out.cable_flexibility_L_over_EA["mm/N"];
    expectWithin({ computed: computed.cable_flexibility_L_over_EA["mm/N"], reference: own, share: 1e-9, what: "L/EA" });
    for (const [cable, ratio] of out.F_ii_over_cable_flexibility.entries()) {
      const share = shareOf(one, "flexibility_F");
      expectWithin({
        computed: computed.F_ii_over_cable_flexibility[cable] ?? Number.NaN,
        reference: ratio,
        share,
        what: `F_ii of ${cable + 1}`,
      });
    }
    for (const [cable, takeUp] of out.final_take_up_all_at_target.mm.entries()) {
      const share = shareOf(one, "take_up");
      expectWithin({
        computed: computed.final_take_up_all_at_target.mm[cable] ?? Number.NaN,
        reference: takeUp,
        share,
        what: `take-up ${cable + 1}`,
      });
    }
    expectState(one, computed.frame_all_at_target, out.frame_all_at_target, "all at target");
    expectState(one, computed.frame_after_one_pass_top_to_bottom, out.frame_after_one_pass_top_to_bottom, "after one pass");
  });

  it("by hand: on a rail that does not give (F1-11), each cable's anchors close by twice a propped cantilever's own movement", () => {
    const one = frameCases.find(({ id }) => id === "F1-11");
    if (one === undefined) throw new Error("F1-11 is missing");
    const { "mm/N": F } = solveFrameCase(one.in).flexibility_F;
    const L = one.in.top_rail_axis_height.mm;
    const EI = one.in.left_end_post.E.MPa * one.in.left_end_post.I_in_frame_plane["mm^4"];
    // Propped cantilever with a load at a from the fixed end: prop P a^2 (3 L - a) / (2 L^3); beam tables, from memory.
    const alone = (x: number, a: number): number => (Math.min(x, a) ** 2 * (3 * Math.max(x, a) - Math.min(x, a))) / (6 * EI);
    const held = (x: number, a: number): number => alone(x, a) - ((a ** 2 * (3 * L - a)) / (2 * L ** 3)) * alone(x, L);
    for (const [i, x] of one.in.cable_heights.mm.entries()) {
      for (const [j, a] of one.in.cable_heights.mm.entries())
        expectNear(F[i]?.[j] ?? Number.NaN, 2 * held(x, a), 1e-9, `F ${i + 1},${j + 1}`);
    }
  });
});

/** What is stated to three digits. */
const threeDigits = (stated: number): number => 0.5 * 10 ** (Math.floor(Math.log10(stated)) - 2);

describe("guardFrame against what the reference cases say of other models", () => {
  it.each(frameCases)(
    "$id: shear changes a tension after one pass, in the worst of four orders, by the stated share of the target",
    (one) => {
      const { shear_flexible_posts_change_one_pass_tension_over_target: stated, E_over_G } = one.out.model_sensitivity;
      const plain = guardOfCase(one.in);
      // Shear area of a full rectangle 5/6 A; of a thin square tube 5/12 A (energy of the shear flow, from memory): the tube of F1-05 is
      // thick for that and its case does not state the area, so 2 % are allowed there.
      const tube = one.id === "F1-05";
      const soft = {
        ...plain,
        posts: plain.posts.map((post) => ({ ...post, GA: (post.E / E_over_G) * post.A * (tube ? 5 / 12 : 5 / 6) })),
      };
      const gap = greatestGap(onePass(one, soft).tensions, onePass(one, plain).tensions) / one.in.target.N;
      expectNear(gap, stated, tube ? 0.02 * stated : threeDigits(stated), "shear");
    },
  );

  it.each(frameCases.filter(({ in: { intermediate_posts } }) => intermediate_posts !== null))(
    "$id: without intermediate posts, F, tensions after one pass and base moment differ by the stated shares",
    (one) => {
      const stated = one.out.model_sensitivity;
      const whole = onePass(one, guardOfCase(one.in));
      const bare = onePass(one, guardOfCase({ ...one.in, intermediate_posts: null }));
      const [F, G] = [whole.guard.flexibility.flat(), bare.guard.flexibility.flat()];
      const moment = ({ guard, target }: typeof whole): number => sideState(guard, { tensions: target }).baseMoment[0] ?? Number.NaN;
      const differences = [
        [
          greatestGap(whole.tensions, bare.tensions) / one.in.target.N,
          stated.leaving_out_intermediate_posts_changes_one_pass_tension_over_target,
        ],
        [greatestGap(F, G) / Math.max(...F), stated.leaving_out_intermediate_posts_changes_F_over_max_F],
        [Math.abs(moment(bare) / moment(whole) - 1), stated.leaving_out_intermediate_posts_changes_base_moment],
      ] as const;
      // Where the middle post stands on the line of symmetry it changes nothing: what is stated then is dust.
      for (const [computed, reference = Number.NaN] of differences) expectNear(computed, reference, threeDigits(reference) + 1e-12, "bare");
    },
  );
});

describe("guardFrame under warmth against reference solutions", () => {
  it.each(frameClimateCases)(
    "$id: anchors come nearer by the stated length when deck and rails change temperature and no cable pulls",
    (one) => {
      const guard = guardFrame(guardOfCase(one.in.frame_inputs));
      const warmth = one.in.dT.K;
      const state = sideState(guard, {
        tensions: guard.perPull.map(() => 0),
        deckStrain: one.in.deck_alpha["1/K"] * warmth,
        railStrain: one.in.rail_alpha["1/K"] * warmth,
      });
      const shrunk = 2 * one.in.share_of_shrinkage_moving_each_anchor * one.in.post_shrinkage_each.mm;
      for (const [cable, closing] of one.out.anchor_closing_before_cables_react.mm.entries()) {
        // Far below the tolerance of the case, which is for tensions: 0.5 % of 1 kN is more than 0.01 mm of these cables.
        expectNear((state.closing[cable] ?? Number.NaN) + shrunk, closing, 1e-6, `cable ${cable + 1}`);
      }
    },
  );
});
