// What is a plane frame, what can act on it, and what is its answer made of?
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import type { FrameMember, LaidMember, MemberAction } from "./frame-member.ts";

/** Held fast, or by a spring [N/mm, N mm/rad]. */
export type Hold = "fixed" | number;

export interface FrameNode {
  readonly x: Mm;
  readonly y: Mm;
  readonly support?: { readonly x?: Hold; readonly y?: Hold; readonly rotation?: Hold };
}

export interface Frame {
  readonly nodes: readonly FrameNode[];
  readonly members: readonly FrameMember[];
}

/** Forces along the axes of the frame; moments [N mm] anticlockwise. */
export interface LoadCase {
  readonly atNodes?: readonly { readonly node: number; readonly x?: Newton; readonly y?: Newton; readonly moment?: number }[];
  /** At a distance from the first node of a member. */
  readonly onMembers?: readonly {
    readonly member: number;
    readonly at: Mm;
    readonly x?: Newton;
    readonly y?: Newton;
    readonly moment?: number;
  }[];
  /** Even load over the whole of a member, per length of it [N/mm]. */
  readonly even?: readonly { readonly member: number; readonly x?: number; readonly y?: number }[];
  /** Free strain of a member, as from warmth: positive lengthens. */
  readonly strains?: readonly { readonly member: number; readonly strain: number }[];
  /** Movement of a support that is held fast. */
  readonly settlements?: readonly { readonly node: number; readonly x?: Mm; readonly y?: Mm; readonly rotation?: Radian }[];
}

export interface FrameResponse {
  readonly nodes: readonly { readonly x: Mm; readonly y: Mm; readonly rotation: Radian }[];
  /** Forces on each member at its ends in its own axes: along, across to the left, moment; first node, then second. */
  readonly memberForces: readonly (readonly number[])[];
  /** Of each node, what its support does to the frame. */
  readonly reactions: readonly { readonly x: Newton; readonly y: Newton; readonly moment: number }[];
}

/** The three movements of a node, in the order in which all lists keep them. */
export const AXES = ["x", "y", "rotation"] as const;

/**
 * Six end values turned from the axes of the frame to those of a member: along = x cos + y sin, across = y cos - x sin.
 *
 * @param set - direction of the member, cos [ratio] and sin [ratio]
 * @param values - six values along the axes of the frame [any]
 * @returns six values in the axes of the member [any]
 * @throws RangeError when there are fewer than six
 * Source: derived, turned axes
 */
export const toMember = ({ cos, sin }: LaidMember, values: readonly number[]): readonly number[] => turn(values, cos, -sin);

/**
 * Six end values turned from the axes of a member to those of the frame: x = along cos - across sin, y = along sin + across cos.
 *
 * @param set - direction of the member, cos [ratio] and sin [ratio]
 * @param values - six values in the axes of the member [any]
 * @returns six values along the axes of the frame [any]
 * @throws RangeError when there are fewer than six
 * Source: derived, turned axes
 */
export const toFrame = ({ cos, sin }: LaidMember, values: readonly number[]): readonly number[] => turn(values, cos, sin);

function turn(values: readonly number[], cos: number, sin: number): readonly number[] {
  if (values.length < 6) throw new RangeError(`there is no entry ${values.length}`);
  const [a, b, c, d] = [values[0] as number, values[1] as number, values[3] as number, values[4] as number];
  return [a * cos - b * sin, a * sin + b * cos, values[2] as number, c * cos - d * sin, c * sin + d * cos, values[5] as number];
}

/**
 * The part of a load case that lies on one member, in the member's axes.
 *
 * @param set - direction of the member, cos [ratio] and sin [ratio]
 * @param index - number of the member [count]
 * @param load - the load case [N, N mm, N/mm, ratio]
 * @returns its loads [N, N mm, N/mm] and strain [ratio]
 * @throws never
 * Source: derived, turned axes
 */
export function actionOn({ cos, sin }: LaidMember, index: number, load: LoadCase): MemberAction {
  const points: MemberAction["points"][number][] = [];
  for (const { member, at, x = 0, y = 0, moment = 0 } of load.onMembers ?? []) {
    if (member === index) points.push({ at, along: x * cos + y * sin, across: y * cos - x * sin, moment });
  }
  let [evenAlong, evenAcross, strain] = [0, 0, 0];
  for (const { member, x = 0, y = 0 } of load.even ?? []) {
    if (member !== index) continue;
    evenAlong += x * cos + y * sin;
    evenAcross += y * cos - x * sin;
  }
  for (const one of load.strains ?? []) if (one.member === index) strain += one.strain;
  return { points, evenAlong, evenAcross, strain };
}
