// Source: J. H. Bickford's table of metric threads as quoted at engineersedge.com (table 15797): stress areas in mm^2.
import { describe, it } from "vitest";
import { stressArea, threadOf } from "../../src/tables/thread.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("stressArea", () => {
  it.each([
    ["M5x0.8", "14.183"],
    ["M6x1", "20.123"],
    ["M8x1.25", "36.609"],
    ["M10x1.5", "57.990"],
  ])("%s has a stress area of %s mm^2", (name, printed) => {
    const thread = threadOf(name);
    const wider = { within: 0.001, because: "the table takes 0.7854 for pi/4" };
    expectAsPrinted(thread === null ? Number.NaN : stressArea(thread.value), printed, wider);
  });
});
