import { describe, expect, it } from "vitest";
import { assemble } from "../../src/mechanics/frame-stiffness.ts";

const bar = { EA: 1e6, EI: 0, hingedFrom: true, hingedTo: true };

describe("assemble", () => {
  it("numbers what is free alone: of two bars that meet over two hinges, the two movements of the meeting point", () => {
    const { free, places, loose, factor } = assemble({
      nodes: [
        { x: 0, y: 0, support: { x: "fixed", y: "fixed" } },
        { x: 400, y: 300 },
        { x: 800, y: 0, support: { x: "fixed", y: "fixed" } },
      ],
      members: [
        { from: 0, to: 1, ...bar },
        { from: 1, to: 2, ...bar },
      ],
    });
    expect(free.map(({ node, axis }) => [node, axis])).toEqual([
      [1, "x"],
      [1, "y"],
    ]);
    expect(places).toEqual([-1, -1, -1, 0, 1, -1, -1, -1, -1]);
    expect([...loose]).toEqual([2, 5, 8]);
    // K = 2 EA / L (cos^2, sin^2): the factor holds the roots.
    expect(factor.lowerTriangularMatrix.get(0, 0)).toBeCloseTo(Math.sqrt((2 * 1e6 * 0.64) / 500), 9);
    expect(factor.lowerTriangularMatrix.get(1, 1)).toBeCloseTo(Math.sqrt((2 * 1e6 * 0.36) / 500), 9);
  });

  it("a node that a spring alone holds against turning is free to turn on it; two bars in a line are a mechanism", () => {
    const node = { x: 0, y: 0, support: { x: "fixed", y: "fixed", rotation: 5 } } as const;
    expect(assemble({ nodes: [node], members: [] }).free).toHaveLength(1);
    const flat = {
      nodes: [
        { x: 0, y: 0, support: { x: "fixed", y: "fixed" } },
        { x: 400, y: 0 },
        { x: 800, y: 0, support: { x: "fixed", y: "fixed" } },
      ],
      members: [
        { from: 0, to: 1, ...bar },
        { from: 1, to: 2, ...bar },
      ],
    } as const;
    expect(() => assemble(flat)).toThrow("the frame is a mechanism: node 1 can move freely in y");
  });

  it("two stiff bars in a line are a mechanism whichever way the line runs, though the last bits of its stiffness may hold the node", () => {
    const held = { x: "fixed", y: "fixed" } as const;
    for (let degrees = 5; degrees < 90; degrees += 5) {
      const [x, y] = [400 * Math.cos((degrees * Math.PI) / 180), 400 * Math.sin((degrees * Math.PI) / 180)];
      const line = {
        nodes: [
          { x: 0, y: 0, support: held },
          { x, y },
          { x: 2 * x, y: 2 * y, support: held },
        ],
        members: [
          { from: 0, to: 1, ...bar, EA: 1e9 },
          { from: 1, to: 2, ...bar, EA: 1e9 },
        ],
      };
      expect(() => assemble(line)).toThrow("node 1 can move freely");
    }
  });
});
