// How does one straight member answer to the movement of its ends and to the loads on it?
import { Matrix } from "ml-matrix";
import type { AxialStiffness, Mm, Newton } from "../units/quantity.ts";
import { pick } from "./frame-pick.ts";

export interface FrameMember {
  /** Numbers of the nodes at its ends. */
  readonly from: number;
  readonly to: number;
  readonly EA: AxialStiffness;
  /** Bending stiffness [N mm2]; 0 for a bar, which is then hinged at both ends. */
  readonly EI: number;
  /** Shear modulus times shear area [N]; left out, shear does not deform the member (Euler-Bernoulli). */
  readonly GA?: number | undefined;
  readonly hingedFrom?: boolean;
  readonly hingedTo?: boolean;
}

/** Loads on one member in its own axes: along it from its first node to its second, across it to the left of that, anticlockwise. */
export interface MemberAction {
  readonly points: readonly { readonly at: Mm; readonly along: Newton; readonly across: Newton; readonly moment: number }[];
  /** Even loads per length of the member [N/mm]. */
  readonly evenAlong: number;
  readonly evenAcross: number;
  /** Free strain, as from warmth: positive lengthens. */
  readonly strain: number;
}

/** A member in its place. */
export interface LaidMember {
  readonly member: FrameMember;
  readonly length: Mm;
  readonly cos: number;
  readonly sin: number;
}

export interface SetMember extends LaidMember {
  /** Numbers of its six end movements among those of all nodes: 3 node + axis, first node, then second. */
  readonly spots: readonly number[];
  /** Forces at the ends [along, across, moment, along, across, moment] per movement of the ends, releases included. */
  readonly stiffness: Matrix;
  /** The same numbers row by row, for the loops that read them most. */
  readonly rows: readonly number[];
  /** What a moment held at a hinge hands to each end force when it is let go. */
  readonly releases: readonly Release[];
}

interface Release {
  readonly end: 2 | 5;
  readonly shares: readonly number[];
}

interface Point {
  readonly x: Mm;
  readonly y: Mm;
}

/**
 * A member in its place: length and direction from its first node to its second.
 *
 * @param member - the member [N, N mm2]
 * @param ends - first and second node [mm]
 * @returns length [mm] and direction [ratio]
 * @throws RangeError when it has no length
 * Source: derived, Pythagoras
 */
export function layMember(member: FrameMember, ends: { readonly from: Point; readonly to: Point }): LaidMember {
  const [dx, dy] = [ends.to.x - ends.from.x, ends.to.y - ends.from.y];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) throw new RangeError(`the ${nameOf(member)} has no length`);
  return { member, length, cos: dx / length, sin: dy / length };
}

const nameOf = ({ from, to }: FrameMember): string => `member from node ${from} to node ${to}`;

/**
 * A member with its place and stiffness: Timoshenko beam, phi = 12 EI / (GA L^2), k = EI / ((1 + phi) L^3) [12, 6 L, (4 + phi) L^2,
 * (2 - phi) L^2]; a hinged end is let go by k' = k - k_r k_r^T / k_rr.
 *
 * @param member - stiffnesses EA [N], EI [N mm2] and GA [N], hinges [yes or no]
 * @param ends - first and second node [mm]
 * @returns length [mm], direction [ratio] and stiffness of the ends [N/mm, N, N mm]
 * @throws RangeError when it has no length or stiffness, or cannot bend and is not hinged at both ends
 * Source: derived, slope-deflection with shear; working in tests/mechanics/frame.test.ts
 */
export function setMember(member: FrameMember, ends: { readonly from: Point; readonly to: Point }): SetMember {
  const laid = layMember(member, ends);
  const { length } = laid;
  const { EA, EI, GA, hingedFrom = false, hingedTo = false } = member;
  const name = nameOf(member);
  if (!(EA > 0) || !(EI >= 0) || !(GA === undefined || GA > 0)) throw new RangeError(`the ${name} has no stiffness`);
  if (EI === 0 && !(hingedFrom && hingedTo)) throw new RangeError(`the ${name} cannot bend: it is a bar only with a hinge at both ends`);
  const phi = GA === undefined ? 0 : (12 * EI) / (GA * length ** 2);
  const k = EI / ((1 + phi) * length ** 3);
  const [a, b, c, d, e] = [EA / length, 12 * k, 6 * k * length, (4 + phi) * k * length ** 2, (2 - phi) * k * length ** 2];
  const rows = [
    [a, 0, 0, -a, 0, 0],
    [0, b, c, 0, -b, c],
    [0, c, d, 0, -c, e],
    [-a, 0, 0, a, 0, 0],
    [0, -b, -c, 0, b, -c],
    [0, c, e, 0, -c, d],
  ];
  const releases: Release[] = [];
  if (EI !== 0 && hingedFrom) releases.push(letGo(rows, 2));
  if (EI !== 0 && hingedTo) releases.push(letGo(rows, 5));
  const [first, second] = [3 * member.from, 3 * member.to];
  const spots = [first, first + 1, first + 2, second, second + 1, second + 2];
  const flat = ([] as number[]).concat(...rows); // a tenth of the time of flat()
  return { member, length, cos: laid.cos, sin: laid.sin, spots, stiffness: new Matrix(rows), rows: flat, releases };
}

/** Lets go of a hinged end in the rows of a stiffness. */
function letGo(rows: readonly number[][], end: 2 | 5): Release {
  const own = [...pick(rows, end)];
  const shares = rows.map((row) => pick(row, end) / pick(own, end));
  for (const [index, row] of rows.entries()) {
    const share = pick(shares, index);
    for (let column = 0; column < 6; column++) row[column] = (row[column] as number) - share * (own[column] as number);
  }
  return { end, shares };
}

/**
 * Forces that hold the ends of a loaded member still. Of the member held at its first end alone, the loads move the second end by v and
 * turn it by t; the force V and moment M there undo both: V (L^3/3EI + L/GA) + M L^2/2EI = -v, V L^2/2EI + M L/EI = -t.
 *
 * @param set - the member [mm, N]
 * @param action - loads on it [N, N mm, N/mm, ratio]
 * @returns forces on the member at its ends [N, N, N mm, N, N, N mm], hinges let go
 * @throws RangeError when a member that cannot bend is loaded across
 * Source: derived, force method
 */
export function heldForces(set: SetMember, action: MemberAction): readonly number[] {
  const { length: L, member } = set;
  const { evenAlong, evenAcross, strain, points } = action;
  const across = evenAcross !== 0 || points.some((one) => one.across !== 0 || one.moment !== 0);
  const along = points.map(({ at, along }) => ({ from: -along * (1 - at / L), to: (-along * at) / L }));
  const held = [member.EA * strain - (evenAlong * L) / 2, 0, 0, -member.EA * strain - (evenAlong * L) / 2, 0, 0];
  held[0] = along.reduce((sum, { from }) => sum + from, pick(held, 0));
  held[3] = along.reduce((sum, { to }) => sum + to, pick(held, 3));
  if (!across) return held;
  if (member.EI === 0) throw new RangeError(`the ${nameOf(member)} cannot bend and is loaded across`);
  const [f, g] = flexibilities(member);
  let [v, t, force, turn] = [
    evenAcross * ((L ** 4 / 8) * f + (L ** 2 / 2) * g),
    ((evenAcross * L ** 3) / 6) * f,
    evenAcross * L,
    (evenAcross * L ** 2) / 2,
  ];
  for (const { at, across: load, moment } of points) {
    const rest = L - at;
    v += load * ((at ** 3 / 3 + (at ** 2 * rest) / 2) * f + at * g) + moment * (at ** 2 / 2 + at * rest) * f;
    t += ((load * at ** 2) / 2 + moment * at) * f;
    force += load;
    turn += load * at + moment;
  }
  const [a, b, c] = [(L ** 3 / 3) * f + L * g, (L ** 2 / 2) * f, L * f];
  const determinant = a * c - b * b;
  const V = (t * b - v * c) / determinant;
  const M = (v * b - t * a) / determinant;
  [held[1], held[2], held[4], held[5]] = [-force - V, -turn - V * L - M, V, M];
  return set.releases.reduce<readonly number[]>((forces, { end, shares }) => {
    const moment = pick(forces, end);
    return forces.map((one, index) => one - pick(shares, index) * moment);
  }, held);
}

/** 1/EI and 1/GA; nothing where the member cannot bend or shear does not deform it. */
function flexibilities({ EI, GA }: FrameMember): readonly [number, number] {
  return [EI === 0 ? 0 : 1 / EI, GA === undefined ? 0 : 1 / GA];
}

/** Movement and forces in the member's own axes. The moment is positive where it bends the member hollow to its left. */
export interface LocalState {
  readonly along: Mm;
  readonly across: Mm;
  readonly rotation: number;
  readonly tension: Newton;
  readonly shear: Newton;
  readonly moment: number;
}

interface Sums {
  readonly Q: number;
  readonly Mz: number;
  readonly bent: number;
  readonly bentTwice: number;
}

/**
 * Movement and forces at a place of a member, by integration from its first end: M(z) = -M1 + V1 z + sum P (z - a) - sum m,
 * theta = theta1 + int M/EI, v = v1 + int theta - int Q/GA.
 *
 * @param set - the member [mm, N]
 * @param at - place from its first end [mm]
 * @param known - movement of the ends [mm, mm, rad, mm, mm, rad], forces on the ends [N, N, N mm, N, N, N mm], loads on it [N]
 * @returns movement [mm, rad], tension and shear [N], moment [N mm]; at a point load, as just before it
 * @throws RangeError when the place lies off the member
 * Source: derived, method of initial parameters
 */
export function stateWithin(
  set: LaidMember,
  at: Mm,
  known: { readonly ends: readonly number[]; readonly forces: readonly number[]; readonly action: MemberAction },
): LocalState {
  const { length, member } = set;
  if (!(at >= 0 && at <= length)) throw new RangeError(`place ${at} mm is not on the member of ${length} mm`);
  const [f, g] = flexibilities(member);
  const { ends, forces, action } = known;
  const { points, evenAlong, strain } = action;
  const M = forces[2] as number;
  const moved = (z: Mm, { Mz, bentTwice }: Sums): number => {
    // The integral of the shear is the rise of the moment, less what couples on the way take out of it.
    let couples = 0;
    for (const point of points) if (point.at < z) couples += point.moment;
    return bentTwice * f - (Mz + M + couples) * g;
  };
  const [v1, v2] = [ends[1] as number, ends[4] as number];
  const turn1 = member.hingedFrom ? (v2 - v1 - moved(length, sumsTo(length, forces, action))) / length : (ends[2] as number);
  const here = sumsTo(at, forces, action);
  let [pull, stretch] = [0, 0];
  for (const point of points) {
    if (!(point.at < at)) continue;
    pull += point.along;
    stretch += point.along * (at - point.at);
  }
  // Less than nothing is not printed as minus zero.
  const tension = 0 - (forces[0] as number) - evenAlong * at - pull;
  const pulled = -(forces[0] as number) * at - (evenAlong * at ** 2) / 2 - stretch;
  return {
    along: (ends[0] as number) + pulled / member.EA + strain * at,
    across: v1 + turn1 * at + moved(at, here),
    rotation: turn1 + here.bent * f,
    tension,
    shear: here.Q,
    moment: here.Mz,
  };
}

/** Integrals of the forces from the first end to z: shear, moment, of the moment once and twice. */
function sumsTo(z: Mm, forces: readonly number[], { evenAcross: w, points }: MemberAction): Sums {
  const [V, M] = [forces[1] as number, forces[2] as number];
  const [z2, z3] = [z ** 2, z ** 3];
  let Q = V + w * z;
  let Mz = -M + V * z + (w * z2) / 2;
  let bent = -M * z + (V * z2) / 2 + (w * z3) / 6;
  let bentTwice = (-M * z2) / 2 + (V * z3) / 6 + (w === 0 ? 0 : (w * z ** 4) / 24);
  for (const point of points) {
    const r = z - point.at;
    if (r <= 0) continue;
    Q += point.across;
    Mz += point.across * r - point.moment;
    bent += (point.across * r ** 2) / 2 - point.moment * r;
    bentTwice += (point.across * r ** 3) / 6 - (point.moment * r ** 2) / 2;
  }
  return { Q, Mz, bent, bentTwice };
}
