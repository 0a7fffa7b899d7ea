// How stiff is a frame against each movement of its nodes, and can it move freely?
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { MECHANISM_share } from "../units/tolerance.ts";
import { type SetMember, setMember } from "./frame-member.ts";
import { AXES, type Frame, toFrame } from "./frame-model.ts";
import { pick } from "./frame-pick.ts";

interface Freedom {
  readonly spot: number;
  readonly node: number;
  readonly axis: (typeof AXES)[number];
}

export interface Assembled {
  readonly members: readonly SetMember[];
  /** For each node and axis in turn, its number among the unknowns; -1 where it is held or nothing turns with it. */
  readonly places: readonly number[];
  /** The movement of a node that each unknown is; spot = 3 node + axis. */
  readonly free: readonly Freedom[];
  /** Rotations of nodes that hang on hinges alone. */
  readonly loose: ReadonlySet<number>;
  /** The stiffness of all unknowns taken apart. */
  readonly factor: CholeskyDecomposition;
}

/**
 * Members set in place, unknowns numbered, stiffness K = sum of the members' and springs' and its factor L L^T = K.
 *
 * @param frame - nodes [mm] with supports [N/mm, N mm/rad], members with EA [N], EI [N mm2], GA [N]
 * @returns members, numbering [count] and factor [N/mm, N, N mm]
 * @throws RangeError naming the node and axis when the frame can move freely
 * Source: derived, direct stiffness method
 */
export function assemble(frame: Frame): Assembled {
  const members = frame.members.map((member) =>
    setMember(member, { from: pick(frame.nodes, member.from, "node"), to: pick(frame.nodes, member.to, "node") }),
  );
  const turning = new Set<number>();
  for (const { from, to, hingedFrom, hingedTo } of frame.members) {
    if (!hingedFrom) turning.add(from);
    if (!hingedTo) turning.add(to);
  }
  const free: Freedom[] = [];
  const loose = new Set<number>();
  const places: number[] = [];
  for (const [node, { support = {} }] of frame.nodes.entries()) {
    for (const [axis, name] of AXES.entries()) {
      const spot = 3 * node + axis;
      if (name === "rotation" && support.rotation === undefined && !turning.has(node)) loose.add(spot);
      const held = support[name] === "fixed" || loose.has(spot);
      places.push(held ? -1 : free.length);
      if (!held) free.push({ spot, node, axis: name });
    }
  }
  return { members, places, free, loose, factor: factorise(frame, { members, places, free }) };
}

function factorise(frame: Frame, { members, places, free }: Pick<Assembled, "members" | "places" | "free">): CholeskyDecomposition {
  const lines = free.map(() => new Array<number>(free.length).fill(0));
  const add = (row: number, column: number, value: number): void => {
    // The lower half is the mirror of the upper, to the last bit.
    if (row < 0 || column < row) return;
    const [line, mirror] = [lines[row] as number[], lines[column] as number[]];
    const sum = (line[column] as number) + value;
    line[column] = sum;
    mirror[row] = sum;
  };
  for (const set of members) {
    const rows = set.spots.map((spot) => pick(places, spot));
    // Turned twice: the columns of K' = R k, then its rows.
    const half = [0, 6, 12, 18, 24, 30].map((from) => toFrame(set, set.rows.slice(from, from + 6)));
    for (let j = 0; j < 6; j++) {
      const column = rows[j] as number;
      if (column < 0) continue;
      const turned = toFrame(
        set,
        half.map((row) => row[j] as number),
      );
      for (let i = 0; i < 6; i++) add(rows[i] as number, column, turned[i] as number);
    }
  }
  for (const [row, { node, axis }] of free.entries()) {
    const hold = pick(frame.nodes, node).support?.[axis];
    if (typeof hold === "number") add(row, row, hold);
  }
  const stiffness = new Matrix(lines);
  const factor = new CholeskyDecomposition(stiffness);
  for (const [row, { node, axis }] of free.entries()) {
    const kept = factor.lowerTriangularMatrix.get(row, row) ** 2;
    if (kept > MECHANISM_share * stiffness.get(row, row)) continue;
    throw new RangeError(`the frame is a mechanism: node ${node} can move freely in ${axis}`);
  }
  return factor;
}
