// Source: a public calculation sheet of losses in successive stressing (scribd.com/document/405136295): 5 cables, modular ratio 6.1664, the
// rows of concrete stress at the level of a cable when the later ones are stressed sum to 29.079 N/mm2; printed average loss 35.863 N/mm2
// = 6.1664 x 29.079 / 5. The sheet takes the member's answer to a pull as given, not changed by the cables already there, which is the
// limit of a member that is very stiff against its cables; how its sum is shared among the rows was not seen, and does not matter.
import { describe, it } from "vitest";
import { plainPasses } from "../../src/mechanics/sequence.ts";
import { cableSystem } from "../../src/mechanics/sequence-solve.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

/** Sums to 1 over the ten pairs of five cables. */
const sharings: readonly (readonly [string, (later: number, earlier: number) => number])[] = [
  ["evenly among the ten pairs", () => 1 / 10],
  ["by how late the cable is", (later) => 1 / (4 * later)],
];

describe("plainPasses", () => {
  it.each(sharings)("5 cables stressed in turn lose 35.863 N/mm2 on average, the stresses shared %s", (_how, share) => {
    // Per mm2 of cable and mm of length: a cable's own give is 1/E, the member's is sigma / (E_member T). T is large, so that the
    // cables do not answer the loss: the limit of the sheet.
    const [ratio, sum, pull] = [6.1664, 29.079, 1e9];
    const flexibility = [0, 1, 2, 3, 4].map((i) =>
      [0, 1, 2, 3, 4].map((j) => (i === j ? 0 : (ratio * sum * share(Math.max(i, j), Math.min(i, j))) / pull)),
    );
    const system = cableSystem({ flexibility, cableFlexibility: [1, 1, 1, 1, 1] });
    const target = [pull, pull, pull, pull, pull];
    const tensions = plainPasses(system, { order: [0, 1, 2, 3, 4], target }, 1)[0]?.tensions ?? [];
    const losses = tensions.map((tension) => pull - tension);
    expectAsPrinted(losses.reduce((all, one) => all + one, 0) / 5, "35.863");
  });
});
