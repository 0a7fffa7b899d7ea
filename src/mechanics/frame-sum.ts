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
  const forces = first.memberForces.map((ends) => ends.map(() => 0));
  const nodes = first.nodes.map(() => ({ x: 0, y: 0, rotation: 0 }));
  const reactions = first.reactions.map(() => ({ x: 0, y: 0, moment: 0 }));
  for (const { response, factor } of acting) {
    for (let node = 0; node < nodes.length; node++) addMove(pick(nodes, node), pick(response.nodes, node), factor);
    for (let node = 0; node < reactions.length; node++) addReaction(pick(reactions, node), pick(response.reactions, node), factor);
    for (let member = 0; member < forces.length; member++) addForces(pick(forces, member), pick(response.memberForces, member), factor);
  }
  return { load: summedLoad(acting), response: { nodes, memberForces: forces, reactions } };
}

type Part = Parameters<typeof superpose>[0][number];
type Of<T extends readonly unknown[]> = { -readonly [K in keyof T[number]]: T[number][K] };

function addMove(sum: Of<FrameResponse["nodes"]>, by: FrameResponse["nodes"][number], factor: number): void {
  sum.x += factor * by.x;
  sum.y += factor * by.y;
  sum.rotation += factor * by.rotation;
}

function addReaction(sum: Of<FrameResponse["reactions"]>, by: FrameResponse["reactions"][number], factor: number): void {
  sum.x += factor * by.x;
  sum.y += factor * by.y;
  sum.moment += factor * by.moment;
}

function addForces(sum: number[], by: readonly number[], factor: number): void {
  for (let end = 0; end < sum.length; end++) sum[end] = (sum[end] as number) + factor * (by[end] as number);
}

/** All loads of the cases, each times its factor. */
function summedLoad(acting: readonly Part[]): LoadCase {
  const atNodes: Required<LoadCase>["atNodes"][number][] = [];
  const onMembers: Required<LoadCase>["onMembers"][number][] = [];
  const even: Required<LoadCase>["even"][number][] = [];
  const strains: Required<LoadCase>["strains"][number][] = [];
  const settlements: Required<LoadCase>["settlements"][number][] = [];
  for (const { load, factor } of acting) {
    for (const { node, x = 0, y = 0, moment = 0 } of load.atNodes ?? []) {
      atNodes.push({ node, x: x * factor, y: y * factor, moment: moment * factor });
    }
    for (const { member, at, x = 0, y = 0, moment = 0 } of load.onMembers ?? []) {
      onMembers.push({ member, at, x: x * factor, y: y * factor, moment: moment * factor });
    }
    for (const { member, x = 0, y = 0 } of load.even ?? []) even.push({ member, x: x * factor, y: y * factor });
    for (const { member, strain } of load.strains ?? []) strains.push({ member, strain: strain * factor });
    for (const { node, x = 0, y = 0, rotation = 0 } of load.settlements ?? []) {
      settlements.push({ node, x: x * factor, y: y * factor, rotation: rotation * factor });
    }
  }
  return { atNodes, onMembers, even, strains, settlements };
}
