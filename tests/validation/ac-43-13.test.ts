// Source: FAA Advisory Circular 43.13-1B (8 September 1998), table 7-3, flexible cable, corrosion resistant (MIL-W-83420, composition B):
// minimum breaking strength in lb.
import { describe, it } from "vitest";
import { breakingForce } from "../../src/tables/strand.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const FORCE_N_PER_LBF = 4.4482216152605;

describe("breakingForce", () => {
  it.each([
    ["7x7", 1 / 16, "480"],
    ["7x7", 3 / 32, "920"],
    ["7x19", 1 / 16, "480"],
    ["7x19", 3 / 32, "920"],
    ["7x19", 1 / 8, "1,760"],
    ["7x19", 5 / 32, "2,400"],
    ["7x19", 3 / 16, "3,700"],
    ["7x19", 7 / 32, "5,000"],
    ["7x19", 1 / 4, "6,400"],
    ["7x19", 5 / 16, "9,000"],
  ] as const)("%s stainless cable of %s in breaks at %s lb", (construction, diameter_in, printed) => {
    const force = breakingForce({ construction, diameter: diameter_in * 25.4, grade: "304" });
    expectAsPrinted((force?.value ?? Number.NaN) / FORCE_N_PER_LBF, printed, { within: 1e-6, because: "a row, not a formula" });
  });
});
