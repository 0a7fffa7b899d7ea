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
    ["-0.5 C", -0.5],
    ["37.5 C", 37.5],
    ["20 deg.C", 20],
  ])("%s is %s degC (fixed points of both scales)", (text, value) => {
    expect(readTemperature(text)).toEqual({ value });
  });

  test.each(["95", "", "warm", "20 K", "1.2.3 C", "at 20 C", "20 C or so", "20 deg"])("%j is refused", (text) => {
    expect(problemOf(readTemperature(text))).not.toBe("");
  });
});

describe("readPitch", () => {
  test("47.5 Hz is 47.5", () => expect(readPitch("47.5 Hz")).toEqual({ value: 47.5 }));

  test("without a space too", () => expect(readPitch("110Hz")).toEqual({ value: 110 }));

  test.each(["47.5", "-3 Hz", "A4", "1.2.3 Hz", "about 47 Hz", "47 Hz or so", "", "47,5 Hz"])("%j is refused", (text) => {
    expect(problemOf(readPitch(text))).not.toBe("");
  });
});

describe("readWeight", () => {
  test.each([
    ["1 lb", 0.45359237],
    ["16 oz", 0.45359237],
    ["159 g", 0.159],
    ["0.5 kg", 0.5],
    ["159g", 0.159],
    ["2.5 lbs", 1.133980925],
  ])("%s is %s kg (NIST SP 811)", (text, value) => {
    const reading = readWeight(text);
    expect("value" in reading ? reading.value : Number.NaN).toBeCloseTo(value, 12);
  });

  test.each(["1 stone", "3", "-1 g", "1,5 kg", "about 1 kg", "1 kg or so", "1.2.3 kg", ""])("%j is refused", (text) => {
    expect(problemOf(readWeight(text))).not.toBe("");
  });
});
