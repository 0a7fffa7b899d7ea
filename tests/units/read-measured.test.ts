import { describe, expect, test } from "vitest";
import { readPitch, readTemperature, readWeight } from "../../src/units/read-measured.ts";

const problemOf = (reading: object): string => ("problem" in reading ? String(reading.problem) : "");

describe("readTemperature", () => {
  test.each([
    ["32 F", 0],
    ["212 F", 100],
    ["-40 F", -40],
    ["-40 C", -40],
    ["20 C", 20],
    ["20 deg C", 20],
    ["68 deg. F", 20],
    ["-10C", -10],
  ])("%s is %s degC (fixed points of both scales)", (text, value) => {
    expect(readTemperature(text)).toEqual({ value });
  });

  test.each(["95", "", "warm", "20 K", "1.2.3 C"])("%j is refused", (text) => {
    expect(problemOf(readTemperature(text))).not.toBe("");
  });
});

describe("readPitch", () => {
  test("47.5 Hz is 47.5", () => expect(readPitch("47.5 Hz")).toEqual({ value: 47.5 }));

  test.each(["47.5", "-3 Hz", "A4", "1.2.3 Hz"])("%j is refused", (text) => {
    expect(problemOf(readPitch(text))).not.toBe("");
  });
});

describe("readWeight", () => {
  test.each([
    ["1 lb", 0.45359237],
    ["16 oz", 0.45359237],
    ["159 g", 0.159],
    ["0.5 kg", 0.5],
  ])("%s is %s kg (NIST SP 811)", (text, value) => {
    const reading = readWeight(text);
    expect("value" in reading ? reading.value : Number.NaN).toBeCloseTo(value, 12);
  });

  test.each(["1 stone", "3", "-1 g", "1,5 kg"])("%j is refused", (text) => {
    expect(problemOf(readWeight(text))).not.toBe("");
  });
});
