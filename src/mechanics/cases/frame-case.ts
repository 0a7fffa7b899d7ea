// What does a frame case, as a case file states it, come to?
import type { Mm, Newton } from "../../units/quantity.ts";
import { pick } from "../frame-pick.ts";
import { type GuardFrame, guardFrame, largestMovement, type SideState, sideState } from "../guard-frame.ts";
import type { GuardFrameInput, GuardPost, GuardRail } from "../guard-frame-build.ts";
import { plainPasses } from "../sequence.ts";
import { topToBottom } from "../sequence-order.ts";
import { cableSystem, takeUpsFor } from "../sequence-solve.ts";

/** Quantities are objects keyed by their units; only the key of the inside unit is read. */
interface CaseSection {
  readonly E: { readonly MPa: number };
  readonly A: { readonly "mm^2": number };
  readonly I_in_frame_plane: { readonly "mm^4": number };
}

interface CasePost extends CaseSection {
  readonly base: "fixed" | { readonly rotational_stiffness: { readonly "N.mm/rad": number } };
}

interface CaseHeight {
  readonly mm: Mm;
}

/** The `in` object of a frame case. The axis of the bottom rail may be named by any key that ends in "height". */
export interface FrameCaseInput {
  readonly left_end_post: CasePost;
  readonly right_end_post: CasePost;
  readonly top_rail_axis_height: CaseHeight;
  readonly run_between_anchorages: { readonly mm: Mm };
  readonly top_rail: (CaseSection & { readonly joint_to_posts: "pinned" | "rigid" }) | null;
  readonly bottom_rail: (Pick<CaseSection, "E" | "A"> & Readonly<Record<string, unknown>>) | null;
  readonly intermediate_posts: {
    readonly count: number;
    readonly equally_spaced: boolean;
    readonly post: CasePost;
    readonly joined_to_rails: boolean;
  } | null;
  readonly cable_heights: { readonly mm: readonly Mm[] };
  readonly cable_EA: { readonly N: Newton };
  readonly target: { readonly N: Newton };
}

interface CaseSide {
  readonly inward_deflection_top: { readonly mm: Mm };
  readonly inward_deflection_largest: { readonly mm: Mm };
  readonly height_of_largest: { readonly mm: Mm };
  readonly base_moment: { readonly "N.mm": number };
}

interface CaseFrameState {
  readonly left: CaseSide;
  readonly right: CaseSide;
  readonly top_rail_compression_per_bay?: { readonly N: readonly Newton[] };
}

/** Keyed like the `out` object of a frame case, what concerns the order of tightening left out. */
export interface FrameCaseOutput {
  readonly flexibility_F: { readonly "mm/N": readonly (readonly number[])[] };
  readonly cable_flexibility_L_over_EA: { readonly "mm/N": number };
  readonly F_ii_over_cable_flexibility: readonly number[];
  readonly final_take_up_all_at_target: { readonly mm: readonly Mm[] };
  readonly frame_all_at_target: CaseFrameState;
  readonly frame_after_one_pass_top_to_bottom: CaseFrameState;
}

/**
 * A frame case solved: flexibility of the frame, take-ups u = (F + L/EA) T, movement and forces with all cables at target and after one
 * plain pass from top to bottom.
 *
 * @param input - the `in` object of the case, as it stands in its file: quantities keyed by unit, of which the inside units are read
 *   [mm, mm^2, mm^4, MPa, N, N.mm/rad]
 * @returns the `out` object of the case in the same units [mm/N, mm, N, N mm]
 * @throws RangeError when the bottom rail has no height, intermediate posts are not equally spaced, or the frame cannot be solved
 * Source: reference-frame; derived, as in guardFrame
 */
export function solveFrameCase(input: FrameCaseInput): FrameCaseOutput {
  const guard = guardFrame(guardOfCase(input));
  const own = input.run_between_anchorages.mm / input.cable_EA.N;
  const target = input.cable_heights.mm.map(() => input.target.N);
  const system = cableSystem({ flexibility: guard.flexibility, cableFlexibility: target.map(() => own) });
  const onePass = pick(plainPasses(system, { order: topToBottom(target.length), target }, 1), 0);
  return {
    flexibility_F: { "mm/N": guard.flexibility },
    cable_flexibility_L_over_EA: { "mm/N": own },
    F_ii_over_cable_flexibility: guard.flexibility.map((row, cable) => pick(row, cable) / own),
    final_take_up_all_at_target: { mm: takeUpsFor(system, target) },
    frame_all_at_target: frameState(guard, target),
    frame_after_one_pass_top_to_bottom: frameState(guard, onePass.tensions),
  };
}

/**
 * The side that a frame case describes: end posts at 0 and at the length of the run, the post's axis as anchorage, shear left out.
 *
 * @param input - the `in` object of the case [mm, mm^2, mm^4, MPa, N, N.mm/rad]
 * @returns posts, rails and cables as guardFrame takes them [mm, MPa, N, N mm2]
 * @throws RangeError when the bottom rail has no height or intermediate posts are not equally spaced
 * Source: reference-frame, how to feed
 */
export function guardOfCase(input: FrameCaseInput): GuardFrameInput {
  const run = input.run_between_anchorages.mm;
  const between = input.intermediate_posts;
  const count = between?.joined_to_rails ? between.count : 0;
  if (between && !between.equally_spaced) throw new RangeError("intermediate posts that are not equally spaced have no stations in a case");
  const inner = between === null ? [] : Array.from({ length: count }, (_, index) => post(between.post, (run * (index + 1)) / (count + 1)));
  const posts = [post(input.left_end_post, 0), ...inner, post(input.right_end_post, run)];
  const rail = input.top_rail;
  return {
    posts,
    height: input.top_rail_axis_height.mm,
    topRail: rail && { EA: rail.E.MPa * rail.A["mm^2"], EI: rail.E.MPa * rail.I_in_frame_plane["mm^4"], joint: rail.joint_to_posts },
    bottomRail: bottomRail(input),
    cables: input.cable_heights.mm.map((height) => ({ left: 0, right: posts.length - 1, height })),
  };
}

const post = ({ E, A, I_in_frame_plane, base }: CasePost, station: Mm): GuardPost => ({
  station,
  E: E.MPa,
  A: A["mm^2"],
  I: I_in_frame_plane["mm^4"],
  base: base === "fixed" ? base : base.rotational_stiffness["N.mm/rad"],
});

/** Bars from post to post. */
function bottomRail({ bottom_rail }: FrameCaseInput): (GuardRail & { readonly height: Mm }) | null {
  if (bottom_rail === null) return null;
  const [, axis] = Object.entries(bottom_rail).find(([key]) => key.endsWith("height")) ?? [];
  if (!isHeight(axis)) throw new RangeError("the bottom rail of the case has no height in mm");
  return { EA: bottom_rail.E.MPa * bottom_rail.A["mm^2"], EI: 0, joint: "pinned", height: axis.mm };
}

const isHeight = (value: unknown): value is CaseHeight => typeof value === "object" && value !== null && "mm" in value;

function frameState(guard: GuardFrame, tensions: readonly Newton[]): CaseFrameState {
  const state = sideState(guard, { tensions });
  const last = guard.input.posts.length - 1;
  const sides = { left: inward(guard, state, { post: 0, towards: 1 }), right: inward(guard, state, { post: last, towards: -1 }) };
  return guard.input.topRail === null ? sides : { ...sides, top_rail_compression_per_bay: { N: state.topRailThrust } };
}

function inward(guard: GuardFrame, state: SideState, end: { readonly post: number; readonly towards: 1 | -1 }): CaseSide {
  const largest = largestMovement(guard, state, end);
  return {
    inward_deflection_top: { mm: end.towards * pick(state.top, end.post) },
    inward_deflection_largest: { mm: largest.movement },
    height_of_largest: { mm: largest.height },
    base_moment: { "N.mm": end.towards * pick(state.baseMoment, end.post) },
  };
}
