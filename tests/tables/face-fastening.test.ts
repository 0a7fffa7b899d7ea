// Rules of the lag screw as they stand in our table: from memory of the NDS 2018, by the same rows in other words.
import { describe, expect, test } from "vitest";
import { pilotRange, warmConnection } from "../../src/tables/face-fastening.ts";

describe("pilotRange", () => {
  // NDS 2018, 12.1.4.2, from memory: dense, middling and light woods by their specific gravity.
  test.each([
    [0.67, 0.65, 0.85],
    [0.55, 0.6, 0.75],
    [0.5, 0.4, 0.7],
    [0.43, 0.4, 0.7],
  ])("wood of specific gravity %s: %s to %s of the shank", (gravity, least, most) => {
    expect(pilotRange(gravity).value).toEqual({ least, most });
  });
});

describe("warmConnection", () => {
  // NDS 2018, table 11.3.4, from memory: up to 100 degF nothing, up to 125 degF 0.8 in dry and 0.7 in wet service, up to 150 degF
  // 0.7 and 0.5. 125 degF are 51.7 degC, 150 degF 65.6 degC.
  test.each([
    [37, false, 1],
    [37, true, 1],
    [50, false, 0.8],
    [50, true, 0.7],
    [51.6, false, 0.8],
    [51.7, false, 0.7],
    [60, false, 0.7],
    [60, true, 0.5],
  ])("%s degC, wet %s: %s", (warmest, wet, factor) => expect(warmConnection(warmest, wet).value).toBe(factor));

  test("the table ends at 150 degF", () => expect(() => warmConnection(66, false)).toThrow(/150/));
});
