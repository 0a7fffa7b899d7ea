// Source: S. Timoshenko, Strength of Materials, part I: beam on two supports with 10,000 lb/ft on each overhang, as the tests of a public
// structural analysis library quote it. E 30e6 psi, I 7892 in^4, overhangs 120 in, supports 240 in apart: the middle moves 0.182 in, the
// stress is 11,400 psi. The depth of 30 in, from which the stress follows, is from memory.
import { describe, it } from "vitest";
import { overhangs } from "../../src/mechanics/beam.ts";
import { alongMember, solveFrame } from "../../src/mechanics/frame.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

// Inches and pounds throughout: the formulas need only one system.
const EI = 30e6 * 7892;
const w = 10_000 / 12;
const HALF_DEPTH_in = 15;
const because = "printed to the hundred";

describe("overhangs and solveFrame", () => {
  it("the closed form gives the printed rise and stress", () => {
    const { rise, moment } = overhangs({ span: 240, overhang: 120, load_NPerMm: w, EI });
    expectAsPrinted(rise, "0.182");
    expectAsPrinted((moment * HALF_DEPTH_in) / 7892, "11,400", { within: 50, because });
  });

  it("so does the frame solver", () => {
    const frame = {
      nodes: [
        { x: 0, y: 0 },
        { x: 120, y: 0, support: { x: "fixed", y: "fixed" } },
        { x: 360, y: 0, support: { y: "fixed" } },
        { x: 480, y: 0 },
      ],
      members: [0, 1, 2].map((from) => ({ from, to: from + 1, EA: 30e6 * 50, EI })),
    } as const;
    const load = { even: [0, 2].map((member) => ({ member, y: -w })) };
    const [response] = solveFrame(frame, [load]);
    if (response === undefined) throw new Error("no response");
    const middle = alongMember({ frame, load, response }, 1)(120);
    expectAsPrinted(middle.y, "0.182");
    expectAsPrinted((Math.abs(middle.moment) * HALF_DEPTH_in) / 7892, "11,400", { within: 50, because });
  });
});
