import { describe, expect, test } from "vitest";
import { showCited, showIn, sourceMark, sourcePlace } from "../../src/packet/show-number.ts";
import { cite, practice } from "../../src/sources/cited.ts";

const inch = showIn("inch");
const metric = showIn("mm");

describe("showIn", () => {
  // 1 in = 25.4 mm exactly (international inch).
  test("149.225 mm is 5-7/8 in on a tape, with 149 mm behind it", () => {
    expect(inch.tape(149.225)).toBe('5-7/8"');
    expect(inch.tapeBoth(149.225)).toBe('5-7/8" (149 mm)');
    expect(metric.tapeBoth(149.225)).toBe('149 mm (5-7/8")');
  });

  test("a bore of 6.35 mm is 1/4 in and 6.4 mm, not 6 mm", () => {
    expect(inch.diameter(6.35)).toBe('1/4" (6.4 mm)');
    expect(metric.diameter(6.4)).toBe('6.4 mm (1/4")');
    expect(inch.diameterOne(6.35)).toBe('1/4"');
    expect(inch.diameterOther(6.35)).toBe("6.4 mm");
  });

  // 4 / 25.4 = 0.1575 in lies between 5/32 = 0.1563 and 3/16 = 0.1875.
  test("a cable of 4 mm is 5/32 in, not 3/16 in", () => {
    expect(metric.diameter(4)).toBe('4 mm (5/32")');
    expect(inch.diameter(4)).toBe('5/32" (4 mm)');
  });

  test("what is left is rounded down, what is bought is rounded up", () => {
    expect(inch.tapeDown(25.4 * (1 + 15 / 32))).toBe('1-7/16"');
    expect(inch.feetUp(304.8 * 25 + 0.5)).toBe(`25'-0 1/16"`);
  });

  // 1 lbf = 4.4482216152605 N exactly (standard gravity and the avoirdupois pound).
  test("a band of 211.5 to 258.5 lbf is printed inward as 212 to 258 lbf", () => {
    expect(inch.forceBand(211.5 * 4.4482216152605, 258.5 * 4.4482216152605)).toBe("212 lbf - 258 lbf");
  });

  test("a gauge's step is printed whole, the number alone: 1125 N, not 1130 N; 253 lbf as 253", () => {
    expect(metric.gauge(1125)).toBe("1125");
    expect(inch.gauge(253 * 4.4482216152605)).toBe("253");
    expect(metric.force(1125)).toBe("1130 N");
  });

  test("what holds back is rounded down, what is needed is rounded up: 12.6 lbf is 12 or 13 lbf", () => {
    const value = 12.6 * 4.4482216152605;
    expect(inch.forceDown(value)).toBe("12 lbf");
    expect(inch.forceUp(value)).toBe("13 lbf");
    expect(inch.forceBothDown(value)).toBe("12 lbf (56 N)");
    expect(inch.forceBothUp(value)).toBe("13 lbf (56.1 N)");
    expect(inch.measure({ value, kind: "force" }, "down")).toBe("12 lbf");
    expect(inch.measure({ value, kind: "force" }, "up")).toBe("13 lbf");
  });

  test("the travel of a nut is never printed too short: 13.0 mm is 17/32 in, though 0.512 in is nearer to 1/2 in", () => {
    expect(inch.travel(13)).toBe('17/32"');
    expect(inch.fine(13)).toBe('1/2"');
  });

  test("an area of 1 sq ft is 144 sq in, one of 2000 mm2 is 3.1 sq in", () => {
    expect(inch.area(304.8 * 304.8)).toBe("144 sq in (92903 mm2)");
    expect(metric.area(2000)).toBe("2000 mm2 (3.1 sq in)");
  });

  // 1 psi = 0.006894757 MPa, 1 in-lbf = 112.9848 N mm, 1 lbf/ft = 0.0145939 N/mm (NIST SP 811, appendix B).
  test("stresses, moments and sections stand in the units of the job first", () => {
    expect(inch.stress(5.86)).toBe("850 psi (5.86 MPa)");
    expect(metric.stress(5.86, { both: false })).toBe("5.86 MPa");
    expect(inch.moment(112_984.8)).toBe("1000 in-lbf (113 N m)");
    expect(metric.sectionArea(1000)).toBe("1000 mm2 (1.55 sq in)");
    expect(metric.sectionModulus(16_387, { both: false })).toBe("16400 mm3");
    expect(inch.turnStiffness(112.9848, { both: false })).toBe("1 in-lbf/rad");
    expect(inch.lineLoad(0.145939)).toBe("10 lbf/ft (0.146 N/mm)");
  });

  test("a measure is printed in its kind: 0.5 as a share is 50 %, pi/4 as an angle 45 deg, 3 as a count 3", () => {
    expect(inch.measure({ value: 0.5, kind: "share" })).toBe("50 %");
    expect(inch.measure({ value: Math.PI / 4, kind: "angle" })).toBe("45 deg");
    expect(inch.measure({ value: 3, kind: "count" })).toBe("3");
    expect(inch.measure({ value: 101.6, kind: "length" })).toBe('4"');
    expect(inch.measure({ value: 12192, kind: "length" })).toBe("40'-0\"");
    expect(metric.measure({ value: 1000, kind: "force" })).toBe("1000 N");
  });
});

describe("sourceMark", () => {
  test("a cited value carries the id of its source in brackets", () => {
    expect(sourceMark("irc-2021")).toBe("[irc-2021]");
    expect(showCited(practice(76.2, "spacing"), inch.tape)).toBe('3" [practice]');
    expect(showCited(cite(101.6, "irc-2021", "R312.1.3"), inch.tape)).toBe('4" [irc-2021]');
  });

  test("a published place follows its mark; practice has none", () => {
    expect(sourcePlace("irc-2021", "R312.1.3")).toBe("[irc-2021] R312.1.3");
    expect(sourcePlace("practice", "spacing")).toBe("[practice]");
  });
});
