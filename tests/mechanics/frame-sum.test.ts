import { describe, expect, it } from "vitest";
import { alongMember, solveFrame } from "../../src/mechanics/frame.ts";
import type { Frame, LoadCase } from "../../src/mechanics/frame-model.ts";
import { superpose } from "../../src/mechanics/frame-sum.ts";

const frame: Frame = {
  nodes: [
    { x: 0, y: 0, support: { x: "fixed", y: "fixed", rotation: "fixed" } },
    { x: 0, y: 1000, support: { x: 30 } },
    { x: 2000, y: 1000, support: { x: "fixed", y: "fixed" } },
  ],
  members: [
    { from: 0, to: 1, EA: 8e7, EI: 2e10 },
    { from: 1, to: 2, EA: 8e7, EI: 5e9, hingedTo: true },
  ],
};
const cases: readonly LoadCase[] = [
  { onMembers: [{ member: 0, at: 400, x: 100, y: -7, moment: 600 }], strains: [{ member: 1, strain: 1e-4 }] },
  { even: [{ member: 1, x: 0.1, y: -0.5 }], atNodes: [{ node: 1, x: 8, y: -20, moment: 5e3 }] },
  {
    settlements: [
      { node: 2, x: 0.4, y: -2 },
      { node: 0, rotation: 2e-3 },
    ],
  },
];
const factors = [2, -3, 0.5];

describe("superpose", () => {
  it("twice one case, less three times another, and half a settlement of 2 mm and turn of 2 mrad are what solving them together gives", () => {
    const responses = solveFrame(frame, cases);
    const parts = responses.map((response, index) => ({ response, load: cases[index] ?? {}, factor: factors[index] ?? 0 }));
    const sum = superpose(parts);
    const together: LoadCase = {
      onMembers: [{ member: 0, at: 400, x: 200, y: -14, moment: 1200 }],
      strains: [{ member: 1, strain: 2e-4 }],
      even: [{ member: 1, x: -3 * 0.1, y: 1.5 }],
      atNodes: [{ node: 1, x: -24, y: 60, moment: -15e3 }],
      settlements: [
        { node: 2, x: 0.2, y: -1 },
        { node: 0, rotation: 1e-3 },
      ],
    };
    expect(sum.load).toMatchObject(together);
    const [response] = solveFrame(frame, [together]);
    for (const [index, node] of (response?.nodes ?? []).entries()) expect(sum.response.nodes[index]?.y).toBeCloseTo(node.y, 10);
    const [mine, theirs] = [sum, { load: together, response: response ?? sum.response }].map((solved) =>
      alongMember({ frame, ...solved }, 0)(650),
    );
    expect(mine?.moment).toBeCloseTo(theirs?.moment ?? Number.NaN, 5);
    expect(mine?.x).toBeCloseTo(theirs?.x ?? Number.NaN, 10);
    expect(sum.response.reactions[0]?.moment).toBeCloseTo(response?.reactions[0]?.moment ?? Number.NaN, 5);
    expect(sum.response.reactions[2]?.x).toBeCloseTo(response?.reactions[2]?.x ?? Number.NaN, 7);
    expect(sum.response.memberForces[1]?.[2]).toBeCloseTo(response?.memberForces[1]?.[2] ?? Number.NaN, 5);
  });

  it("refuses to add nothing", () => {
    expect(() => superpose([])).toThrow("no load case 0");
  });
});
