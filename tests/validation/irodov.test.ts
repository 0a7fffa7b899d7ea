// Source: I. E. Irodov, Problems in General Physics, problem 1.294 with its published answer (solveirodov.com/problems/1-294):
// a weight on the middle of an unstressed wire. The modulus of steel is the reader's to look up; 200 GPa is from memory.
import { describe, expect, it } from "vitest";
import { deflectionUnder } from "../../src/mechanics/lateral.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("deflectionUnder", () => {
  it("problem 1.294: 0.25 kg on the middle of an unstressed wire of 1.0 mm, 2.0 m long, sinks by 2.5 cm", () => {
    const { deflection } = deflectionUnder({
      span: 2000,
      tension: 0,
      stiffness: 200e3 * (Math.PI / 4),
      runLength: 2000,
      support: "held",
      force: 0.25 * 9.80665,
    });
    expectAsPrinted(deflection / 10, "2.5");
    expect(deflection).toBeGreaterThan(24);
  });
});
