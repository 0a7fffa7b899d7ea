// Source: tables of unified threads, UNF at boltport.com/threads/unf and UNC at formulafactory.tools: tensile stress areas in in^2.
import { describe, it } from "vitest";
import { stressArea, threadOf } from "../../src/tables/thread.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

describe("stressArea", () => {
  it.each([
    ["10-32", "0.0200"],
    ["1/4-28", "0.0364"],
    ["5/16-24", "0.0580"],
    ["3/8-24", "0.0878"],
    ["1/4-20", "0.0318"],
    ["5/16-18", "0.0524"],
    ["3/8-16", "0.0775"],
  ])("%s has a stress area of %s in^2", (name, printed) => {
    const thread = threadOf(name);
    const because = "the UNF table cuts 0.05807 of 5/16-24 down to 0.0580";
    const wider = name === "5/16-24" ? { within: 0.0001, because } : undefined;
    expectAsPrinted(thread === null ? Number.NaN : stressArea(thread.value) / 25.4 ** 2, printed, wider);
  });
});
