import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { threadNames, threadOf } from "../../src/tables/thread.ts";
import { readForce, readLength, readMassPerLength, readPerLength } from "../../src/units/read.ts";
import { readThread } from "../../src/units/read-thread.ts";

const value = <T>(reading: { readonly value: T } | { readonly problem: string; readonly fix: string }): T => {
  if ("problem" in reading) throw new Error(`${reading.problem}: ${reading.fix}`);
  return reading.value;
};

const refusal = (reading: object): string =>
  "problem" in reading && "fix" in reading ? `${reading.problem} | ${reading.fix}` : `read as ${JSON.stringify(reading)}`;

// Expected mm by hand: whole 64ths of an inch times 254 over 640 (1 in = 25.4 mm exactly, NIST SP 811).
describe("readLength", () => {
  test.each([
    ["12 ft 6 1/2 in", 3822.7],
    ["5'-6 1/2\"", 1689.1],
    ["66-1/2 in", 1689.1],
    ['66 1/2"', 1689.1],
    ["66\u00bd in", 1689.1],
    ["66 1\u20442 in", 1689.1],
    ["5\u2032 6\u00bd\u2033", 1689.1],
    ["5\u2019-6\u201d", 1676.4],
    ["5''", 127],
    ["5ft 6.5in", 1689.1],
    ["5 feet 6 inches", 1676.4],
    ["2 ft. 3 in.", 685.8],
    ["12 FT", 3657.6],
    ["12.5 ft", 3810],
    ["0.1 in", 2.54],
    ["3/8 in", 9.525],
    ["1/64 in", 0.396875],
    ["5'-0\"", 1524],
    ["1676 mm", 1676],
    ["167.6 cm", 1676],
    ["1.68 m", 1680],
    [" 5\u00a0m ", 5000],
    ["0", 0],
    ["0 in", 0],
    [".25 in", 6.35],
    ["0000000000012 mm", 12],
    ["9 ft 11 63/64 in", 3047.603125],
  ])("%s is %d mm to the last bit", (text, mm) => expect(value(readLength(text))).toBe(mm));

  test.each([
    ["12", '"12" has no unit | write 12 in or 12 mm, whichever is meant'],
    ["5' 6 1/2", "\"5' 6 1/2\" has no unit at its end | write 5' 6 1/2 in, if inches are meant"],
    ["3/4", '"3/4" has no unit | write 3/4 in, if inches are meant'],
    ["66 1/2", '"66 1/2" has no unit | write 66 1/2 in, if inches are meant'],
    ["10 mm 3", '"10 mm 3" has no unit at its end | write a length such as 12 ft 6 1/2 in'],
    ["12-6", '"12-6" has two numbers side by side | write 12 ft 6 in, if feet and inches are meant'],
    ["5-6 1/2 in", "write 5 ft 6 1/2 in, if feet and inches are meant"],
    ['5 11-3/8"', "write 5 ft 11 3/8 in, if feet and inches are meant"],
    ["12 13 in", "has two numbers side by side | write a length such as 12 ft 6 1/2 in"],
    ["2026-04-20", "has two numbers side by side | write a length such as 12 ft 6 1/2 in"],
    ["5' 14\"", '"5\' 14"" has 12 inches or more after the feet | write 6\'-2", if that is meant'],
    ["1,5 in", '"1,5 in" has a comma | a decimal is written with a point and thousands without a mark: write 1.5 in'],
    ["1,676 mm", "write 1.676 mm or 1676 mm, whichever is meant"],
    ["3 1/3 in", "1/3 of an inch is not on a tape | use halves"],
    ["3 1/0 in", "1/0 of an inch is not on a tape"],
    ["6/4 in", '6/4 is a whole inch or more | write 1-1/2", if that is meant'],
    ["-3 in", '"-3 in" is negative | write it without the minus'],
    ["\u22123 in", "is negative"],
    ["5 feets", '"feets" is no unit of length | write ft'],
    ["2 yd", "write feet: 1 yd is 3 ft"],
    ["5 cubits", '"cubits" is no unit of length | use ft, in, mm, cm or m'],
    ["1.5 1/2 in", "has a decimal and a fraction | write 1.5 in"],
    ["12 1/2 ft", "has a fraction of a foot | write the part of a foot in inches"],
    ["12 1/2 ft 3 in", "has a fraction of a foot"],
    ["5.5 ft 6 in", "has a decimal of a foot beside inches"],
    ["1/2 m", "has a fraction of a metric unit | write a decimal"],
    ["1 m 20 cm", "mixes units that do not go together"],
    ["6 in 5 ft", "mixes units that do not go together"],
    ["6 mm 3 in", "mixes units that do not go together"],
    ["5 ft 3 mm", "mixes units that do not go together"],
    ["5 ft 6 in 2 in", "mixes units that do not go together"],
    ["5 ft 12 in", "has 12 inches or more after the feet | write 6'-0\""],
    ["5 ft 13 1/64 in", "write 6'-1 1/64\", if that is meant"],
    ["5' 6 in 7", "has no unit at its end | write a length such as"],
    ["4/4 in", '4/4 is a whole inch or more | write 1", if that is meant'],
    ["65/64 in", 'write 1-1/64", if that is meant'],
    ["10-11 23/64 in", "write 10 ft 11 23/64 in, if feet and inches are meant"],
    ["12,5 in", "write 12.5"],
    ["5 foots", "write ft"],
    ["5 fts", "write ft"],
    ["5 inchs", "write in"],
    ["5 ins", "write in"],
    ["2 yards", "write feet: 1 yd is 3 ft"],
    ["5 millimetrs", "write mm"],
    ["5 centimetrs", "write cm"],
    ["5 metrs", "write m"],
    ["12345678901 ft 1 in", "has more digits than can be measured"],
    ["1 ft 12345678901 in", "has more digits than can be measured"],
    ["1.1234567 mm", "has more digits than can be measured"],
    ["5 6 in", "has two numbers side by side"],
    ["", "there is nothing here"],
    ["in", "is not a length"],
    ["<b>5</b> in", "is not a length"],
    ["1e3 mm", '"e" is no unit of length'],
    ["constructor", "is not a length"],
    ["3 constructor", "is no unit of length"],
    ["1234567890123 mm", "has more digits than can be measured"],
    ["9999999 ft 0.000001 in", "has more digits than can be measured"],
  ])("%s is refused with what was found and what to write", (text, expected) => expect(refusal(readLength(text))).toContain(expected));

  test("a comma that is no mark of thousands has one meaning", () =>
    expect(refusal(readLength("12,5 in"))).toMatch(/without a mark: write 12\.5 in$/));

  test("each of the first 64,000 sixty-fourths, written as feet and inches, is n * 254 / 640 to the last bit", () => {
    for (let n = 1; n <= 64_000; n += 1) {
      const feet = Math.floor(n / 768);
      const inch = Math.floor((n % 768) / 64);
      const text = `${feet}' ${inch} ${n % 64}/64"`;
      const reading = value(readLength(n % 64 === 0 ? `${feet}' ${inch}"` : text));
      if (reading !== (n * 254) / 640) expect.fail(`${text}: ${reading}`);
    }
  });

  test("a decimal of an inch and the same fraction are one length", () => {
    fc.assert(
      fc.property(fc.nat(5000), fc.nat(63), (whole, part) => {
        expect(value(readLength(`${whole}.${`${(part / 64).toFixed(6)}`.slice(2)} in`))).toBe(
          part === 0 ? value(readLength(`${whole} in`)) : value(readLength(`${whole} ${part}/64 in`)),
        );
      }),
    );
  });

  test("any text at all is read or refused with a fix, and never throws", () => {
    const near = fc.string({ unit: fc.constantFrom(..."0123456789 ./-'\"ftinmcx,\u00bd\u2044\u2032".split("")), maxLength: 14 });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: "binary" }), near), (text) => {
        for (const read of [readLength, readForce, readMassPerLength, readPerLength, readThread]) {
          const reading = read(text);
          if ("problem" in reading) expect(reading.problem.length * reading.fix.length).toBeGreaterThan(0);
          else expect(JSON.stringify(reading)).not.toContain("null");
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe("readForce", () => {
  // 1 lbf = 4.4482216152605 N exactly (NIST SP 811, B.8).
  test.each([
    ["300 lbf", 1334.46648457815],
    ["300 lb", 1334.46648457815],
    ["1.3 kN", 1300],
    ["1300 N", 1300],
    ["1.5kn", 1500],
  ])("%s is %d N", (text, newtons) => expect(value(readForce(text))).toBeCloseTo(newtons, 9));

  test.each([
    ["150 kgf", "write 1470 N, which is the weight of 150 kg"], // 150 x 9.80665 = 1471
    ["10 kg", "write 98.1 N"],
    ["1.5 kgf", "write 14.7 N, which is the weight of 1.5 kg"],
    ["300", "has no unit"],
    ["300 stone", '"stone" is no unit of force'],
    ["lbf", "is not a force"],
    ["1,300 N", "has a comma"],
    ["-5 N", "is negative"],
  ])("%s is refused", (text, expected) => expect(refusal(readForce(text))).toContain(expected));
});

describe("readMassPerLength", () => {
  test("52 g/m and 0.052 kg/m are one mass", () => {
    expect(value(readMassPerLength("52 g/m"))).toBe(0.052);
    expect(value(readMassPerLength("0.052 kg/m"))).toBe(0.052);
    expect(value(readMassPerLength("52.5 g/m"))).toBe(0.0525);
  });

  test("35 lb/1000 ft is 35 x 0.45359237 kg over 304.8 m (NIST SP 811), and 3.5 lb/100 ft the same", () => {
    expect(value(readMassPerLength("35 lb/1000 ft"))).toBeCloseTo((35 * 0.45359237) / 304.8, 12);
    expect(value(readMassPerLength("35.5 lb/1000 ft"))).toBeCloseTo((35.5 * 0.45359237) / 304.8, 12);
    expect(value(readMassPerLength("3.5 lb/100 ft"))).toBeCloseTo((35 * 0.45359237) / 304.8, 12);
  });

  test("52 kg is refused because it is not per length", () =>
    expect(refusal(readMassPerLength("52 kg"))).toContain("is no mass per length"));
});

describe("readPerLength", () => {
  test("0.0015 per m is 1.5e-6 per mm and 0.0002 /ft is 0.0002 / 304.8 per mm", () => {
    expect(value(readPerLength("0.0015 per m"))).toBeCloseTo(1.5e-6, 15);
    expect(value(readPerLength("0.0002 /ft"))).toBeCloseTo(0.0002 / 304.8, 15);
  });

  test("0.0015 per mile is refused", () => expect(refusal(readPerLength("0.0015 per mile"))).toContain("is not per length"));
});

describe("readThread", () => {
  test("28 turns to the inch are 25.4 / 28 = 0.907142857 mm apart", () => {
    const thread = value(readThread("1/4 - 28 UNF"));
    expect(thread.name).toBe("1/4-28");
    expect(thread.pitch).toBeCloseTo(0.907142857142857, 14);
  });

  test("M6x1 has a pitch of 1 mm, and 10-32 one of 25.4 / 32 mm", () => {
    expect(value(readThread("m6 x 1"))).toEqual({ name: "M6x1", diameter: 6, pitch: 1 });
    expect(value(readThread("10-32")).pitch).toBe(0.79375);
  });

  // Source: the outside diameters of src/tables/thread.ts, 10-32 among them; 1-8 of a whole inch is from memory.
  test("10-32 is 4.826 mm across, #10-32 the same, 5/16-18 is 7.9375 mm, 1-8 is 25.4 mm", () => {
    for (const name of threadNames)
      expect.soft(value(readThread(name)).diameter).toBeCloseTo(threadOf(name)?.value.diameter ?? Number.NaN, 9);
    expect(value(readThread("#10-32"))).toEqual({ name: "#10-32", diameter: 4.826, pitch: 0.79375 });
    expect(value(readThread("5/16-18")).diameter).toBe(7.9375);
    expect(value(readThread("1-8")).diameter).toBe(25.4);
  });

  // ASME B1.1 from memory: No. 12 is 0.216 in, 12-24 its coarse thread; No. 14 was 0.242 in. Metric sizes are their own.
  test("12-24 is 5.4864 mm across, #14-20 is 6.1468 mm; M2.5x0.45 is 2.5 mm and 0.45 mm apart", () => {
    expect(value(readThread("12-24")).diameter).toBeCloseTo(5.4864, 12);
    expect(value(readThread("#14-20")).diameter).toBeCloseTo(6.1468, 12);
    expect(value(readThread("M2.5x0.45"))).toEqual({ name: "M2.5x0.45", diameter: 2.5, pitch: 0.45 });
    expect(value(readThread("1/4-28UNF")).pitch).toBeCloseTo(25.4 / 28, 12);
  });

  test.each([
    ["M6x9", '"M6x9" is no thread that is cut: it has 9 mm of pitch on 6 mm of diameter | read it again'],
    ["M99x1", "1 mm of pitch on 99 mm of diameter"],
    ["1/4-2", "12.7 mm of pitch on 6.35 mm of diameter"],
    ["1/0-28", "is not a thread"],
    ["#1/4-28", "is not a thread"],
    ["M0x1", "is not a thread"],
    ["M6.x1", "is not a thread"],
    ["M6x1.", "is not a thread"],
    ["a 1/4-28", "is not a thread"],
    ["1/4-28 or so", "is not a thread"],
    ["an M6x1", "is not a thread"],
    ["M6x1 or so", "is not a thread"],
    ["0-28", "is not a thread"],
    ["13-28", "0.91 mm of pitch on 330.2 mm of diameter"],
  ])("%s is refused: %s", (text, why) => expect(refusal(readThread(text))).toContain(why));

  test.each(["M6", "1/4", "1/4-0", "coarse", "M6x0", ""])("%s is refused: the pitch is not stated", (text) =>
    expect(refusal(readThread(text))).toContain("is not a thread"),
  );
});
