// Source: worked example of elastic stretch of aircraft cable (aeroassemblies.com, elastic stretch): 7x19 stainless, 0.125 in, 20 in long,
// 500 lb, stretch in percent W G / D^2 with G = 0.0000162; printed length under load 20.10368 in. Its rule means EA = 100 D^2 / G.
import { describe, it } from "vitest";
import { elongation } from "../../src/mechanics/stretch.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const MM_PER_INCH = 25.4;
const FORCE_N_PER_LBF = 4.4482216152605;

describe("elongation", () => {
  it("20 in of 7x19 of 0.125 in stand 20.10368 in long under 500 lb", () => {
    const stiffness = ((100 * 0.125 ** 2) / 0.0000162) * FORCE_N_PER_LBF;
    const stretch = elongation({ tension: 500 * FORCE_N_PER_LBF, length: 20 * MM_PER_INCH, stiffness });
    expectAsPrinted(20 + stretch / MM_PER_INCH, "20.10368");
  });
});
