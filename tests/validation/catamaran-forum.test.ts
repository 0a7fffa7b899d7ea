// Source: contributors of a catamaran forum, standing rigging (catsailor.com): 1x19 strand of grade 316 breaks at 720 kgf with 3 mm and at
// 1285 kgf with 4 mm. The program's rule 0.786 d^2 kN was fitted to these two and to 2878 kgf at 6 mm.
import { describe, it } from "vitest";
import { breakingForce } from "../../src/tables/strand.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const NEWTON_PER_KGF = 9.80665;

describe("breakingForce", () => {
  it.each([
    [3, "720", 3.6],
    [4, "1285", 6.5],
  ])("1x19 of grade 316, %s mm, breaks at %s kgf", (diameter, printed, within) => {
    const force = breakingForce({ construction: "1x19", diameter, grade: "316" })?.value ?? Number.NaN;
    expectAsPrinted(force / NEWTON_PER_KGF, printed, { within, because: "one factor for three sizes, 0.5 % allowed" });
  });
});
