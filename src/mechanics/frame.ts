// How does a plane frame move under its loads, and what goes through its members into its supports?
import { Matrix } from "ml-matrix";
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import { checkBalance, type PlacedForce } from "./frame-check.ts";
import { heldForces, type LaidMember, layMember, type SetMember, stateWithin } from "./frame-member.ts";
import { AXES, actionOn, type Frame, type FrameResponse, type Hold, type LoadCase, toFrame, toMember } from "./frame-model.ts";
import { pick } from "./frame-pick.ts";
import { type Assembled, assemble } from "./frame-stiffness.ts";

/**
 * Movements, member forces and reactions of a linear plane frame by direct stiffness: K u = p, with one factorisation for all load cases.
 * Small movements; forces on the undeformed frame.
 *
 * @param frame - nodes [mm] with supports [N/mm, N mm/rad], members with EA [N], EI [N mm2], GA [N]
 * @param cases - loads [N, N mm, N/mm], strains [ratio], settlements of fixed supports [mm, rad]
 * @returns for each case the movement of the nodes [mm, rad], the member forces [N, N mm] and the reactions [N, N mm]
 * @throws RangeError naming the node when the frame can move freely, when a load has nothing to act on or a settlement no fixed support,
 *   and when the forces do not balance within the tolerance
 * Source: derived, direct stiffness method; the factorisation is a library's
 */
export function solveFrame(frame: Frame, cases: readonly LoadCase[]): readonly FrameResponse[] {
  const assembled = assemble(frame);
  const { free, factor } = assembled;
  const prepared = cases.map((load) => prepare(frame, assembled, load));
  const moves = factor.solve(new Matrix(free.map(({ spot }) => prepared.map(({ pushes }) => pushes[spot] as number))));
  return prepared.map((one, column) => {
    for (const [row, { spot }] of free.entries()) one.moves[spot] = moves.get(row, column);
    return respond(frame, assembled, one);
  });
}

/** Movement along the axes of the frame, forces in those of the member. */
export interface PlaceState {
  readonly x: Mm;
  readonly y: Mm;
  readonly rotation: Radian;
  readonly tension: Newton;
  readonly shear: Newton;
  /** Positive where it bends the member hollow to its left, seen from its first node [N mm]. */
  readonly moment: number;
}

/**
 * Movement and forces along a member of a solved frame; exact for the loads that lie on it.
 *
 * @param solved - the frame, the load case and its response [mm, N, N mm]
 * @param member - number of the member [count]
 * @param set - the member in its place, where many cases are read of one frame [mm, ratio]
 * @returns of a distance from its first node [mm], the movement along the axes of the frame [mm], the rotation [rad], tension and shear
 *   [N] and moment [N mm] in the member's axes; at a point load, as just before it; a place off the member is refused
 * @throws RangeError when there is no such member
 * Source: derived, method of initial parameters
 */
export function alongMember(
  solved: { readonly frame: Frame; readonly load: LoadCase; readonly response: FrameResponse },
  member: number,
  set?: LaidMember,
): (at: Mm) => PlaceState {
  const { frame, load, response } = solved;
  const one = pick(frame.members, member, "member");
  const laid = set ?? layMember(one, { from: pick(frame.nodes, one.from), to: pick(frame.nodes, one.to) });
  const [first, second] = [pick(response.nodes, one.from), pick(response.nodes, one.to)];
  const ends = toMember(laid, [first.x, first.y, first.rotation, second.x, second.y, second.rotation]);
  const known = { ends, forces: pick(response.memberForces, member), action: actionOn(laid, member, load) };
  return (at) => {
    const { along, across, rotation, tension, shear, moment } = stateWithin(laid, at, known);
    return { x: along * laid.cos - across * laid.sin, y: along * laid.sin + across * laid.cos, rotation, tension, shear, moment };
  };
}

interface Prepared {
  readonly load: LoadCase;
  /** Movement of each node and axis: at first those that are given, in the end all. */
  readonly moves: number[];
  /** Forces on each member while its ends are held, in its own axes. */
  readonly held: readonly (readonly number[])[];
  readonly atNodes: readonly number[];
  /** What acts on the nodes once members with their loads, and given movements, hold on to them. */
  readonly pushes: readonly number[];
}

const NOTHING = [0, 0, 0, 0, 0, 0] as const;

function prepare(frame: Frame, { members, loose }: Assembled, load: LoadCase): Prepared {
  const moves = settled(frame, load);
  const atNodes = new Array<number>(moves.length).fill(0);
  for (const { node, x = 0, y = 0, moment = 0 } of load.atNodes ?? []) {
    pick(frame.nodes, node, "node");
    if (moment !== 0 && loose.has(3 * node + 2)) throw new RangeError(`nothing turns with node ${node}: no moment can act there`);
    for (const [axis, value] of [x, y, moment].entries()) atNodes[3 * node + axis] = pick(atNodes, 3 * node + axis) + value;
  }
  const loaded = new Set<number>();
  for (const list of [load.onMembers, load.even, load.strains]) for (const { member } of list ?? []) loaded.add(member);
  for (const member of loaded) pick(members, member, "member");
  const held = members.map((set, index) => (loaded.has(index) ? heldForces(set, actionOn(set, index, load)) : NOTHING));
  const pushes = [...atNodes];
  for (const [index, set] of members.entries()) {
    const settles = load.settlements !== undefined && set.spots.some((spot) => moves[spot] !== 0);
    if (!settles && !loaded.has(index)) continue;
    const local = endForces(set, toMember(set, ofSpots(set.spots, moves)), held[index] as readonly number[], { force: 0, moment: 0 });
    const forces = toFrame(set, local);
    for (let end = 0; end < 6; end++) {
      const spot = set.spots[end] as number;
      pushes[spot] = (pushes[spot] as number) - (forces[end] as number);
    }
  }
  return { load, moves, held, atNodes, pushes };
}

function ofSpots(spots: readonly number[], values: readonly number[]): readonly number[] {
  const found = [0, 0, 0, 0, 0, 0];
  for (let end = 0; end < 6; end++) found[end] = values[spots[end] as number] as number;
  return found;
}

/** k u + the forces of the held ends; notes the largest product of a stiffness and a movement among forces and among moments. */
function endForces(
  { rows }: SetMember,
  moves: readonly number[],
  held: readonly number[],
  products: { force: number; moment: number },
): readonly number[] {
  const forces = [0, 0, 0, 0, 0, 0];
  for (let row = 0; row < 6; row++) {
    let sum = held[row] as number;
    let most = 0;
    for (let column = 0; column < 6; column++) {
      const product = (rows[6 * row + column] as number) * (moves[column] as number);
      sum += product;
      most = Math.max(most, Math.abs(product));
    }
    if (row === 2 || row === 5) products.moment = Math.max(products.moment, most);
    else products.force = Math.max(products.force, most);
    forces[row] = sum;
  }
  return forces;
}

/** The given movements of the supports; zero elsewhere. */
function settled(frame: Frame, load: LoadCase): number[] {
  const moves = new Array<number>(3 * frame.nodes.length).fill(0);
  for (const { node, ...by } of load.settlements ?? []) {
    const { support = {} } = pick(frame.nodes, node, "node");
    for (const [axis, name] of AXES.entries()) {
      const move = by[name] ?? 0;
      if (move !== 0 && support[name] !== "fixed") throw new RangeError(`node ${node} is not fixed in ${name} and cannot settle there`);
      moves[3 * node + axis] = move;
    }
  }
  return moves;
}

function respond(frame: Frame, { members }: Assembled, { load, moves, held, atNodes }: Prepared): FrameResponse {
  const products = { force: 0, moment: 0 };
  /** What the members need at each node and axis, less the load there: the support's part where it is held fast. */
  const needed = atNodes.map((force) => -force);
  const memberForces = members.map((set, index) => {
    const local = endForces(set, toMember(set, ofSpots(set.spots, moves)), held[index] as readonly number[], products);
    const forces = toFrame(set, local);
    for (let end = 0; end < 6; end++) {
      const spot = set.spots[end] as number;
      needed[spot] = (needed[spot] as number) + (forces[end] as number);
    }
    return local;
  });
  const forces = loadsOf(frame, members, load);
  const reactions = frame.nodes.map(({ x, y, support }, node) => {
    if (support === undefined) return NO_REACTION;
    const react = (hold: Hold | undefined, spot: number): number => {
      if (hold === undefined) return 0;
      return hold === "fixed" ? (needed[spot] as number) : -hold * (moves[spot] as number);
    };
    const force_x = react(support.x, 3 * node);
    const force_y = react(support.y, 3 * node + 1);
    const moment = react(support.rotation, 3 * node + 2);
    forces.push({ x, y, force_x, force_y, moment });
    return { x: force_x, y: force_y, moment };
  });
  checkBalance(forces, products);
  const nodes = frame.nodes.map((_, node) => {
    return { x: moves[3 * node] as number, y: moves[3 * node + 1] as number, rotation: moves[3 * node + 2] as number };
  });
  return { nodes, memberForces, reactions };
}

const NO_REACTION = { x: 0, y: 0, moment: 0 } as const;

const placeOf = ({ nodes }: Frame, node: number): { readonly x: Mm; readonly y: Mm } => {
  const { x, y } = pick(nodes, node);
  return { x, y };
};

/** All loads with the places at which they act. */
function loadsOf(frame: Frame, members: readonly SetMember[], load: LoadCase): PlacedForce[] {
  const along = (index: number, at: (length: Mm) => Mm): { readonly x: Mm; readonly y: Mm; readonly length: Mm } => {
    const { member, length, cos, sin } = pick(members, index);
    const from = placeOf(frame, member.from);
    return { x: from.x + at(length) * cos, y: from.y + at(length) * sin, length };
  };
  return [
    ...(load.atNodes ?? []).map(({ node, x = 0, y = 0, moment = 0 }) => ({ ...placeOf(frame, node), force_x: x, force_y: y, moment })),
    ...(load.onMembers ?? []).map(({ member, at, x = 0, y = 0, moment = 0 }) => {
      const place = along(member, () => at);
      return { x: place.x, y: place.y, force_x: x, force_y: y, moment };
    }),
    ...(load.even ?? []).map(({ member, x = 0, y = 0 }) => {
      const middle = along(member, (length) => length / 2);
      return { x: middle.x, y: middle.y, force_x: x * middle.length, force_y: y * middle.length, moment: 0 };
    }),
  ];
}
