import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readAngle, readDate, readMoney, readNumber, readShare, readYesNo } from "../../src/units/read-plain.ts";

const refusal = (reading: object): string =>
  "problem" in reading && "fix" in reading ? `${reading.problem} | ${reading.fix}` : `read as ${JSON.stringify(reading)}`;

describe("readAngle", () => {
  test("90 deg and right 90 deg are a quarter turn, left 45 deg is minus an eighth", () => {
    expect(readAngle("90 deg")).toEqual({ value: Math.PI / 2 });
    expect(readAngle("Right 90\u00b0")).toEqual({ value: Math.PI / 2 });
    expect(readAngle("left 45 degrees")).toEqual({ value: -Math.PI / 4 });
    expect(readAngle("22.5 degree")).toEqual({ value: Math.PI / 8 });
  });

  test("an angle without deg, a word that is no side and a minus are refused", () => {
    expect(refusal(readAngle("right 90"))).toBe('"right 90" has no unit | write right 90 deg');
    expect(refusal(readAngle("90"))).toBe('"90" has no unit | write 90 deg');
    for (const text of ["up 90 deg", "90 deg or so", "1.2.3 deg"]) expect(refusal(readAngle(text))).toContain("is not an angle");
    expect(refusal(readAngle("-90 deg"))).toContain("is negative");
  });

  test("a turn must say right or left, a direction must not", () => {
    expect(refusal(readAngle("90 deg", { side: "must" }))).toContain("does not say to which side | write right 90 deg or left 90 deg");
    expect(refusal(readAngle("left 90 deg", { side: "must not" }))).toContain("is a turn, not a direction");
    expect(readAngle("225 deg", { side: "must not" })).toEqual({ value: (225 / 180) * Math.PI });
    expect(readAngle("right 90 deg", { side: "must" })).toEqual({ value: Math.PI / 2 });
  });

  test("what is no angle is answered with what may be written there", () => {
    expect(refusal(readAngle("x", { side: "must" }))).toContain("| write right 90 deg or left 45 deg");
    expect(refusal(readAngle("x"))).toContain("| write 90 deg, right 90 deg or left 45 deg");
    expect(refusal(readAngle("x", { side: "must not" }))).toMatch(/write 90 deg$/);
  });
});

describe("readShare", () => {
  test("30 %, 30% and 0.3 are the same to the last bit", () => {
    for (const text of ["30 %", "30%", "0.3"]) expect(readShare(text)).toEqual({ value: 0.3 });
    expect(readShare("12.5 %")).toEqual({ value: 0.125 });
    for (const text of ["100 %", "1"]) expect(readShare(text)).toEqual({ value: 1 });
  });

  test("30 without a sign is refused with a suggestion of 30 %", () =>
    expect(refusal(readShare("30"))).toBe('"30" is more than the whole | write 30 %, if per cent are meant'));

  test("a third as 1/3 is refused, and so is less than nothing", () => {
    expect(refusal(readShare("1/3"))).toContain("is not a share");
    expect(refusal(readShare("-0.3"))).toContain("is negative");
  });
});

// The Gregorian calendar: every fourth year is a leap year, but of the hundreds only every fourth.
describe("readDate", () => {
  test.each(["2026-04-02", "2024-02-29", "2000-02-29", "2026-12-31", "2026-01-01"])("%s is a day", (text) =>
    expect(readDate(text)).toEqual({ value: text }),
  );

  test.each([
    ["2026-02-29", "that month has 28 days"],
    ["1900-02-29", "that month has 28 days"],
    ["2026-04-31", "that month has 30 days"],
    ["2026-00-10", "has no such month"],
    ["2026-13-01", "has no such month"],
    ["2026-01-00", "that month has 31 days"],
    ["04/02/2026", "is not a date"],
    ["2026-4-2", "is not a date"],
    ["on 2026-04-02", "is not a date"],
    ["2026-04-021", "is not a date"],
  ])("%s is refused", (text, expected) => expect(refusal(readDate(text))).toContain(expected));
});

describe("readMoney", () => {
  test("12.50 is 1250 cents and 12 is 1200", () => {
    expect(readMoney("12.50")).toEqual({ value: 1250 });
    expect(readMoney("12")).toEqual({ value: 1200 });
  });

  test.each(["$12", "12.5", "12.505", "twelve"])("%s is refused", (text) => expect(refusal(readMoney(text))).toContain("is not a price"));

  test("a comma, a minus and nothing are told as such", () => {
    expect(refusal(readMoney("12,50"))).toMatch(/write 12\.50$/);
    expect(refusal(readMoney("-1.00"))).toContain("is negative");
    expect(refusal(readMoney(""))).toContain("nothing here");
  });
});

describe("readNumber and readYesNo", () => {
  test("2.5 is a number and 2 ft is not", () => {
    expect(readNumber("2.5")).toEqual({ value: 2.5 });
    expect(refusal(readNumber("2 ft"))).toContain("is not a number");
    expect(refusal(readNumber("-2"))).toContain("is negative");
  });

  test("true, Yes, false and no are read; 1 is not", () => {
    const read = ["true", "Yes", "false", "no"].map((text) => readYesNo(text));
    expect(read).toEqual([true, true, false, false].map((value) => ({ value })));
    expect(refusal(readYesNo("1"))).toContain("write true or false");
  });
});

describe("what is quoted of a text that is refused", () => {
  test("it stands on one line; of more than 40 letters the first 37", () => {
    expect(refusal(readDate(" two\n\n  lines "))).toContain('"two lines" is');
    expect(refusal(readDate("x".repeat(40)))).toContain(`"${"x".repeat(40)}" is`);
    expect(refusal(readDate("x".repeat(41)))).toContain(`"${"x".repeat(37)}..." is`);
  });
});

describe("laws of reading", () => {
  test("any text at all is read or refused with a fix, and never throws", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: "binary" })), (text) => {
        for (const read of [readAngle, readShare, readDate, readMoney, readNumber, readYesNo]) {
          const reading = read(text);
          if ("problem" in reading) expect(reading.problem.length * reading.fix.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 1000 },
    );
  });
});
