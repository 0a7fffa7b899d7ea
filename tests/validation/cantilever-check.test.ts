// Source: xcfem/xc, a public structural analysis library: its test of a cantilever with a load that is not at the tip (test_cantilever01).
// E 210 GPa, I 3.49e-6 m^4, length 4.5 m, 7320 N at 3.25 m from the fixed end: the tip moves 0.180221124983 m.
import { describe, it } from "vitest";
import { cantilever } from "../../src/mechanics/beam.ts";
import { solveFrame } from "../../src/mechanics/frame.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const EI = 210_000 * 3.49e6;

describe("cantilever and solveFrame", () => {
  it("the closed form gives the printed tip", () => {
    expectAsPrinted(cantilever({ length: 4500, load: 7320, at: 3250, EI }).deflection / 1000, "0.180221124983");
  });

  it("so does the frame solver with the load on the member", () => {
    const frame = {
      nodes: [
        { x: 0, y: 0, support: { x: "fixed", y: "fixed", rotation: "fixed" } },
        { x: 4500, y: 0 },
      ],
      members: [{ from: 0, to: 1, EA: 1e9, EI }],
    } as const;
    const [response] = solveFrame(frame, [{ onMembers: [{ member: 0, at: 3250, y: -7320 }] }]);
    expectAsPrinted(-(response?.nodes[1]?.y ?? Number.NaN) / 1000, "0.180221124983");
  });
});
