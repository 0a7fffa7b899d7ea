import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  angleDegrees,
  count,
  decimal,
  drillStep,
  feetInches,
  force,
  forceAsPrinted,
  hertz,
  inches,
  length,
  lineLoad,
  millimetres,
  moment,
  money,
  percent,
  sectionArea,
  sectionModulus,
  spokenLength,
  stress,
  temperature,
  turnStiffness,
} from "../../src/units/print.ts";
import { onScale, reading } from "../../src/units/print-measured.ts";
import { readForce, readLength } from "../../src/units/read.ts";

// Expected texts by hand from 1 in = 25.4 mm and 1 lbf = 4.4482216152605 N (NIST SP 811).

describe("inches", () => {
  test.each([
    [823.9125, '32-7/16"'],
    [824, '32-7/16"'],
    [0, '0"'],
    [9.525, '3/8"'],
    [25.4, '1"'],
    [25.3, '1"'],
    [-12.7, '-1/2"'],
  ])("%d mm is %s", (mm, text) => expect(inches(mm)).toBe(text));

  test("17 mm lies between 10/16 and 11/16 in: down gives 5/8, up 11/16", () => {
    expect(inches(17, { rounding: "down" })).toBe('5/8"');
    expect(inches(17, { rounding: "up" })).toBe('11/16"');
    expect(inches(17, { step: 1 / 64 })).toBe('43/64"');
  });

  test.each([0.1, 1 / 3, 1 / 128, 2])("a step of %d in is on no tape", (step) => expect(() => inches(25.4, { step })).toThrow(RangeError));

  test("whole inches are marks too: 17 mm is 1 in to the nearest", () => expect(inches(17, { step: 1 })).toBe('1"'));
});

describe("feetInches", () => {
  test.each([
    [3822.7, "12'-6 1/2\""],
    [3048, "10'-0\""],
    [3060.7, "10'-0 1/2\""],
    [304.8, "1'-0\""],
    [304.5, "1'-0\""],
    [165.1, '6-1/2"'],
    [0, '0"'],
  ])("%d mm is %s", (mm, text) => expect(feetInches(mm)).toBe(text));
});

describe("length", () => {
  test("824 mm in inches first, in mm first, in feet and alone", () => {
    expect(length(823.9125, { units: "inch", style: "tape" })).toBe('32-7/16" (824 mm)');
    expect(length(824, { units: "mm", style: "tape" })).toBe('824 mm (32-7/16")');
    expect(length(3822.7, { units: "inch", style: "feet", both: false })).toBe("12'-6 1/2\"");
    expect(length(2.26, { units: "mm", decimals: 1 })).toBe('2.3 mm (1/16")');
  });

  test("what is bought goes up in both systems: 3810.1 mm is 3811 mm or 150-1/16 in", () =>
    expect(length(3810.1, { units: "mm", rounding: "up" })).toBe('3811 mm (150-1/16")'));
});

describe("force", () => {
  test.each([
    [1334.46648457815, "inch", "300 lbf (1.33 kN)"],
    [1330, "mm", "1330 N (299 lbf)"],
    [53.4, "inch", "12 lbf (53.4 N)"],
    [12_500, "mm", "12.5 kN (2810 lbf)"],
    [10_000, "mm", "10 kN (2248 lbf)"],
    [1000, "inch", "225 lbf (1 kN)"],
    [24, "mm", "24 N (5.4 lbf)"],
    [0, "inch", "0 lbf (0 N)"],
  ] as const)("%d N in a job in %s is %s", (newtons, units, text) => expect(force(newtons, units)).toBe(text));

  test("1334.4 N down is 299 lbf, up 300 lbf", () => {
    expect(force(1334.4, "inch", { rounding: "down", both: false })).toBe("299 lbf");
    expect(force(1334.4, "inch", { rounding: "up", both: false })).toBe("300 lbf");
  });

  // 245 lbf is 1089.81 N: rounded down it would be 1.08 kN on one sheet and 1.09 kN on the next.
  test("what its first unit prints as it is has one other unit, whichever way the rest is rounded", () => {
    for (const rounding of ["down", "up", "nearest"] as const) {
      expect(force(245 * 4.4482216152605, "inch", { rounding })).toBe("245 lbf (1.09 kN)");
      expect(force(925, "mm", { rounding })).toBe("925 N (208 lbf)");
    }
    expect(force(1334.4, "inch", { rounding: "down" })).toBe("299 lbf (1.33 kN)");
    expect(force(1338.9, "inch", { rounding: "up" })).toBe("301 lbf (1.34 kN)");
    // 1017 N are 228.6 lbf.
    expect(force(1017, "mm", { rounding: "down" })).toBe("1010 N (228 lbf)");
    expect(force(1017, "mm", { rounding: "up" })).toBe("1020 N (229 lbf)");
  });
});

describe("the other quantities", () => {
  test("a quarter turn is 90 deg, an eighth of a right angle 11.3 deg", () => {
    expect(angleDegrees(Math.PI / 2)).toBe("90 deg");
    expect(angleDegrees(Math.PI / 16)).toBe("11.3 deg");
  });

  // Water boils at 100 deg C = 212 deg F; both scales meet at -40 (SI brochure of NIST, SP 811, appendix B).
  test.each([
    [100, "212 deg F (100 deg C)", "100 deg C"],
    [-40, "-40 deg F (-40 deg C)", "-40 deg C"],
    [20, "68 deg F (20 deg C)", "20 deg C"],
    [-17.8, "0 deg F (-18 deg C)", "-18 deg C"],
  ])("%d deg C is %s, alone %s", (value, both, alone) => {
    expect(temperature(value, "inch")).toBe(both);
    expect(temperature(value, "mm", { both: false })).toBe(alone);
  });

  test("836.2 mm, 53.62 Hz, 30 %, 1250 cents and a count of 11", () => {
    expect([millimetres(836.2), hertz(53.62), percent(0.3), money(1250), money(5), count(11)]).toEqual([
      "836 mm",
      "53.6 Hz",
      "30 %",
      "12.50",
      "0.05",
      "11",
    ]);
  });

  test("-0.2 mm prints no minus before the 0", () => expect(millimetres(-0.2)).toBe("0 mm"));

  test("100000 mm prints all its zeros", () => expect(millimetres(100_000)).toBe("100000 mm"));

  test("so do numbers beyond a thousand millions, with the decimals that they have", () => {
    const numbers = [2_000_000_000, 2_000_000_000.5, 2_000_000_000.25, -3e9];
    expect(numbers.map((value) => decimal(value, { decimals: 2 }))).toEqual(["2000000000", "2000000000.5", "2000000000.25", "-3000000000"]);
  });

  test("more decimals than six are printed as they are: 25.4 / 64 has seven", () => {
    expect(decimal(25.4 / 64, { decimals: 7 })).toBe("0.396875");
    expect(decimal(1 / 128 ** 2, { decimals: 8 })).toBe("0.00006104");
  });

  test("a bit of 13/64 in is sold in sixty-fourths, one of 7/32 or 1/4 in in thirty-seconds; one of 5 mm is printed to these", () => {
    const steps = [(13 * 25.4) / 64, (7 * 25.4) / 32, 25.4 / 4, 5].map(drillStep);
    expect(steps).toEqual([1 / 64, 1 / 32, 1 / 32, 1 / 32]);
  });
});

describe("spokenLength", () => {
  test.each([
    [131.7625, "five and three sixteenths inches"],
    [25.4, "one inch"],
    [12.7, "one half inch"],
    [19.05, "three quarters of an inch"],
    [0, "zero inches"],
    [38.1, "one and one half inches"],
    [3175, "one hundred twenty-five inches"],
    [482.6, "nineteen inches"],
    [508, "twenty inches"],
    [533.4, "twenty-one inches"],
    [2540, "one hundred inches"],
    [2794, "one hundred ten inches"],
    [9753.6, "three hundred eighty-four inches"],
    [25_374.6, "nine hundred ninety-nine inches"],
    [25_400, "1000 inches"],
    [-12.7, "minus one half inch"],
  ])("%d mm is said as %s", (mm, text) => expect(spokenLength(mm, { units: "inch" })).toBe(text));

  test("3822.7 mm in feet, and 836 mm in a job in mm", () => {
    expect(spokenLength(3822.7, { units: "inch", style: "feet" })).toBe("twelve feet six and one half inches");
    expect(spokenLength(3048, { units: "inch", style: "feet" })).toBe("ten feet");
    const said = [304.8, 381, 317.5, 152.4, 0].map((mm) => spokenLength(mm, { units: "inch", style: "feet" }));
    expect(said).toEqual(["one foot", "one foot three inches", "one foot one half inch", "six inches", "zero inches"]);
    expect(spokenLength(836, { units: "mm" })).toBe("836 millimetres");
  });
});

describe("laws of printing", () => {
  const mm = fc.double({ min: 0, max: 100_000, noNaN: true });

  test("what is printed in inches, feet or mm and read again is the value to half the printed step", () => {
    fc.assert(
      fc.property(mm, fc.constantFrom(2, 4, 8, 16, 32, 64), (x, perInch) => {
        const step = 1 / perInch;
        for (const text of [inches(x, { step }), feetInches(x, { step })]) {
          const reading = readLength(text);
          expect("value" in reading && Math.abs(reading.value - x), text).toBeLessThanOrEqual(12.7 * step + 1e-4);
        }
        const metric = readLength(millimetres(x, { decimals: 1 }));
        expect("value" in metric && Math.abs(metric.value - x)).toBeLessThanOrEqual(0.05 + 1e-4);
      }),
    );
  });

  test("a length on the tape is given back to the last bit", () => {
    fc.assert(
      fc.property(fc.nat(200_000), (sixtyFourths) => {
        const x = (sixtyFourths * 254) / 640;
        expect(readLength(feetInches(x, { step: 1 / 64 }))).toEqual({ value: x });
        expect(readLength(inches(x, { step: 1 / 64 }))).toEqual({ value: x });
      }),
    );
  });

  test("down is never more than the value and up never less", () => {
    fc.assert(
      fc.property(mm, (x) => {
        const [down, up] = (["down", "up"] as const).map((rounding) => readLength(inches(x, { rounding })));
        expect(down !== undefined && "value" in down && down.value).toBeLessThanOrEqual(x + 1e-3);
        expect(up !== undefined && "value" in up && up.value).toBeGreaterThanOrEqual(x - 1e-3);
      }),
    );
  });

  test("a printed force is read again within three figures or half a pound", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 50_000, noNaN: true }), (newtons) => {
        const metric = readForce(force(newtons, "mm", { both: false }));
        expect("value" in metric && Math.abs(metric.value - newtons)).toBeLessThanOrEqual(0.0051 * newtons);
        const imperial = readForce(force(newtons, "inch", { both: false }));
        expect("value" in imperial && Math.abs(imperial.value - newtons)).toBeLessThanOrEqual(2.2242);
      }),
    );
  });

  test("nothing but plain ASCII is printed", () => {
    fc.assert(
      fc.property(fc.double({ min: -100_000, max: 100_000, noNaN: true }), (x) => {
        const all = [
          length(x, { units: "inch" }),
          length(x, { units: "mm", style: "feet" }),
          force(x, "inch"),
          angleDegrees(x),
          spokenLength(x, { units: "inch" }),
        ];
        for (const text of all) expect(text).toMatch(/^[\x20-\x7e]+$/);
      }),
    );
  });
});

// 1 psi = 1 lbf over 1 sq in = 4.4482216152605 / 25.4^2 N/mm2 = 0.0068947573 MPa (NIST SP 811, appendix B: 6.894757 E-03).
const PSI_MPa = 6.894757e-3;

describe("stress", () => {
  test("850 psi, the bending value of Hem-Fir No.2 in table 4A of the NDS Supplement, is 5.86 MPa", () => {
    expect(stress(850 * PSI_MPa, "inch")).toBe("850 psi (5.86 MPa)");
    expect(stress(850 * PSI_MPa, "mm")).toBe("5.86 MPa (850 psi)");
  });

  test("a modulus of 1,300,000 psi has no exponent: 8960 MPa", () =>
    expect(stress(1.3e6 * PSI_MPa, "inch")).toBe("1300000 psi (8960 MPa)"));

  test("a demand of 466.4 psi goes up to 467, a capacity of 466.6 psi down to 466; four figures show the tenth", () => {
    expect(stress(466.4 * PSI_MPa, "inch", { both: false, rounding: "up" })).toBe("467 psi");
    expect(stress(466.6 * PSI_MPa, "inch", { both: false, rounding: "down" })).toBe("466 psi");
    expect(stress(466.4 * PSI_MPa, "inch", { both: false, figures: 4 })).toBe("466.4 psi");
  });
});

describe("moment", () => {
  // 1 in-lbf = 0.1129848 N m (NIST SP 811, appendix B: 1.129848 E-01).
  test("200 lbf at 36 in are 7200 in-lbf or 813 N m (813.5)", () => {
    expect(moment(7200 * 112.9848, "inch")).toBe("7200 in-lbf (813 N m)");
    expect(moment(7200 * 112.9848, "mm")).toBe("813 N m (7200 in-lbf)");
  });

  test("beside a section modulus in mm3 it stands in N mm: 1281 N m are 1281000 N mm", () => {
    expect(moment(1_281_000, "mm", { both: false, figures: 4, small: true })).toBe("1281000 N mm");
    expect(moment(7200 * 112.9848, "inch", { both: false, small: true })).toBe("7200 in-lbf");
  });
});

describe("sectionArea, sectionModulus", () => {
  // Table 1B of the NDS Supplement, 4x4: A = 12.25 in2, S = 7.146 in3; 1 in = 25.4 mm.
  test("a 4x4 has 12.25 sq in (7903 mm2) and 7.146 cu in (117099 mm3)", () => {
    expect(sectionArea(88.9 ** 2, "inch", { both: false, figures: 4 })).toBe("12.25 sq in");
    expect(sectionArea(88.9 ** 2, "mm")).toBe("7900 mm2 (12.3 sq in)");
    expect(sectionModulus(88.9 ** 3 / 6, "inch", { both: false, figures: 4 })).toBe("7.146 cu in");
    expect(sectionModulus(88.9 ** 3 / 6, "mm")).toBe("117000 mm3 (7.15 cu in)");
  });
});

describe("turnStiffness, lineLoad", () => {
  test("25 kN m per radian are 221000 in-lbf per radian (221269)", () =>
    expect(turnStiffness(25e6, "inch")).toBe("221000 in-lbf/rad (25000 N m/rad)"));

  // 1 lbf/ft = 14.59390 N/m (NIST SP 811, appendix B).
  test("50 lbf/ft are 0.73 N/mm", () => {
    expect(lineLoad(50 * 0.0145939, "inch")).toBe("50 lbf/ft (0.73 N/mm)");
    expect(lineLoad(0.75, "mm")).toBe("0.75 N/mm (51.4 lbf/ft)");
  });
});

describe("onScale", () => {
  // 10 lb are 4.5359237 kg by definition (international pound), and weigh 44.482 N at standard gravity 9.80665 m/s2 (SI brochure).
  test("a weight of 44.4822 N shows 10 lb, or 4.54 kg; one of 50 N shows 11.2 lb or 5.1 kg", () => {
    expect(onScale(44.4822, "inch")).toBe("10 lb");
    expect(onScale(44.4822, "mm")).toBe("4.54 kg");
    expect(onScale(50, "inch")).toBe("11.2 lb");
    expect(onScale(50, "mm")).toBe("5.1 kg");
  });
});

describe("forceAsPrinted", () => {
  const LBF_N = 4.4482216152605;
  test.each(["inch", "mm"] as const)("%s: it is the force that `force` prints, and printing it again changes nothing", (units) => {
    for (const value of [0, 3.21, 44.4, 824.96, 999.96, 1017.4, 1045.06, 12_345.6]) {
      for (const rounding of ["up", "down", "nearest"] as const) {
        const printed = forceAsPrinted(value, units, rounding);
        for (const again of ["up", "down", "nearest"] as const) {
          expect.soft(force(printed, units, { both: false, rounding: again })).toBe(force(value, units, { both: false, rounding }));
        }
      }
    }
  });

  test("1017.4 N down is 1010 N; 241.2 lbf up is 242 lbf", () => {
    expect(forceAsPrinted(1017.4, "mm", "down")).toBe(1010);
    expect(forceAsPrinted(241.2 * LBF_N, "inch", "up")).toBeCloseTo(242 * LBF_N, 9);
  });
});

test("reading: the number alone, with a decimal where one was written", () => {
  expect([reading(349.6 * 4.4482216152605, "inch"), reading(350 * 4.4482216152605, "inch"), reading(1043, "mm")]).toEqual([
    "349.6",
    "350",
    "1043",
  ]);
});
