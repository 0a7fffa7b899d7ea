// What is the answer of a frame to several load cases together?
import type { FrameResponse, LoadCase } from "./frame-model.ts";
import { pick } from "./frame-pick.ts";

/**
 * The answer to several load cases at once, each times a factor, without solving again: the answers of a linear frame add up.
 *
 * @param parts - load cases with their responses [N, mm] and factors [ratio]
 * @returns the load case that they make together, and its response [N, mm]
 * @throws RangeError when there is nothing to add
 * Source: derived, superposition
 */
export function superpose(parts: readonly { readonly load: LoadCase; readonly response: FrameResponse; readonly factor: number }[]): {
  readonly load: LoadCase;
  readonly response: FrameResponse;
} {
  const { response: first } = pick(parts, 0, "load case");
  // A case taken no times would only lengthen the list of loads that every reading walks through.
  const acting = parts.filter(({ factor }) => factor !== 0);
  const sum = (of: (response: FrameResponse) => number): number =>
    acting.reduce((total, { response, factor }) => total + factor * of(response), 0);
  const scaled = <T extends object>(list: readonly T[] | undefined, factor: number, keep: readonly string[]): readonly T[] =>
    (list ?? []).map((one) => {
      const entries = Object.entries(one).map(([key, value]) => [key, keep.includes(key) ? value : value * factor]);
      return Object.fromEntries(entries) as T;
    });
  const all = <T extends object>(of: (load: LoadCase) => readonly T[] | undefined, keep: readonly string[]): readonly T[] =>
    acting.flatMap(({ load, factor }) => scaled(of(load), factor, keep));
  return {
    load: {
      atNodes: all((load) => load.atNodes, ["node"]),
      onMembers: all((load) => load.onMembers, ["member", "at"]),
      even: all((load) => load.even, ["member"]),
      strains: all((load) => load.strains, ["member"]),
      settlements: all((load) => load.settlements, ["node"]),
    },
    response: {
      nodes: first.nodes.map((_, node) => ({
        x: sum(({ nodes }) => pick(nodes, node).x),
        y: sum(({ nodes }) => pick(nodes, node).y),
        rotation: sum(({ nodes }) => pick(nodes, node).rotation),
      })),
      memberForces: first.memberForces.map((forces, member) =>
        forces.map((_, end) => sum(({ memberForces }) => pick(pick(memberForces, member), end))),
      ),
      reactions: first.reactions.map((_, node) => ({
        x: sum(({ reactions }) => pick(reactions, node).x),
        y: sum(({ reactions }) => pick(reactions, node).y),
        moment: sum(({ reactions }) => pick(reactions, node).moment),
      })),
    },
  };
}
