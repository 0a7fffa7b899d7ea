// Units of length, force and stress against the exact factors of the National Institute of Standards and Technology:
// A. Thompson, B. N. Taylor: Guide for the Use of the International System of Units (SI), NIST Special Publication 811,
// 2008 edition, appendix B.8 and B.9 (factors in bold are exact). The digits below were read as quoted by GNU units 2.22
// (which names NIST SP 447 and HB 44) and by scipy.constants 1.17.1.
// The publication itself was not opened: its edition and appendix numbers are from memory.
import { describe, expect, test } from "vitest";
import { readForce, readLength, readMassPerLength } from "../../src/units/read.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const number = (reading: object): number => ("value" in reading && typeof reading.value === "number" ? reading.value : Number.NaN);
const exact = { within: 1e-12, because: "the factor is exact; only the last bit of a double may differ" };

describe("readLength", () => {
  test("appendix B.8: 1 in = 25.4 mm exactly", () => expectAsPrinted(number(readLength("1 in")), "25.4", exact));

  test("appendix B.8: 1 ft = 304.8 mm exactly", () => expectAsPrinted(number(readLength("1 ft")), "304.8", exact));
});

describe("readForce", () => {
  test("appendix B.8: 1 lbf = 4.4482216152605 N exactly", () => expectAsPrinted(number(readForce("1 lbf")), "4.4482216152605", exact));

  test("appendix B.8: 1 psi = 6894.757293168361 Pa is 1 lbf on the square of 1 in", () => {
    const pascal = (number(readForce("1 lbf")) / number(readLength("1 in")) ** 2) * 1e6;
    expect(Math.abs(pascal / 6894.757293168361 - 1)).toBeLessThanOrEqual(1e-12);
  });

  test("1 kgf = 9.80665 N exactly stands in the suggestion for 100 kgf: 981 N", () => {
    const reading = readForce("100 kgf");
    expect("fix" in reading && reading.fix).toContain("981 N");
  });
});

describe("readMassPerLength", () => {
  test("1 lb = 0.45359237 kg exactly: 1000 lb/1000 ft is 0.45359237 / 0.3048 kg/m", () =>
    expect(number(readMassPerLength("1000 lb/1000 ft"))).toBeCloseTo(0.45359237 / 0.3048, 12));
});
