// Source: Universiti Teknologi Malaysia, course SAB 4323 (prestressed concrete), example 4.3: short-term losses of a tendon, with the
// printed answers as a public repository's test states them. L = 20 m, drape 0.558 m, mu = 0.25, K = 0.0017 /m, 1239 MPa on 2850 mm^2,
// E = 195 GPa, the wedges slip 5 mm. Printed: p = 15.82 kN/m, reach 13.25 m, loss 419.3 kN, and 3111.9, 3270.1 and 3214.8 kN at the
// jack, the middle and the far end.
import { describe, it } from "vitest";
import { drawInLoss } from "../../src/mechanics/corner.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const P0_N = 1239 * 2850;
const LENGTH_mm = 20_000;
const because = "the example rounds the friction loss per metre and the reach before it goes on";

describe("drawInLoss", () => {
  const end = drawInLoss({ slip: 5, stiffness: 195e3 * 2850, loss_NPerMm: 15.82, length: LENGTH_mm });

  it("example 4.3: with 15.82 kN/m of friction and 5 mm of slip, 13.25 m lose, and 419.3 kN at the jack", () => {
    expectAsPrinted(end.reach / 1000, "13.25");
    expectAsPrinted(end.loss / 1000, "419.3");
  });

  it("example 4.3: 15.82 kN/m is P0 (mu / r + K) on the circle of the drape", () => {
    const radius_m = (10 ** 2 + 0.558 ** 2) / (2 * 0.558);
    expectAsPrinted((P0_N / 1000) * (0.25 / radius_m + 0.0017), "15.82");
  });

  it("example 4.3: 3111.9, 3270.1 and 3214.8 kN are left at the jack, the middle and the far end", () => {
    const left_kN = (at_mm: number): number => (P0_N - 15.82 * at_mm - Math.max(0, 2 * 15.82 * (end.reach - at_mm))) / 1000;
    expectAsPrinted(left_kN(0), "3111.9", { within: 0.2, because });
    expectAsPrinted(left_kN(LENGTH_mm / 2), "3270.1", { within: 0.2, because });
    expectAsPrinted(left_kN(LENGTH_mm), "3214.8", { within: 0.2, because });
  });
});
