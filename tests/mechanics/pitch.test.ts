import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestNote, pitch, pitchBand, pitchStiff, tensionFromPitch, tensionFromPitchStiff } from "../../src/mechanics/pitch.ts";

const string = { span: 914.4, tension: 1000, mass_kgPerM: 0.052 };
const stiff = { bendingStiffness_Nmm2: 240_000, ends: "clamped" } as const;
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("pitch", () => {
  it("a slack string has no pitch: 0 Hz", () => {
    expect(pitch({ ...string, tension: 0 })).toBe(0);
  });

  it("1 m of 0.25 kg/m at 1 N sounds at 1 Hz (closed form)", () => {
    expect(pitch({ span: 1000, tension: 1, mass_kgPerM: 0.25 })).toBe(1);
  });

  it("refuses a span or mass of 0 and a negative tension", () => {
    for (const wrong of [{ span: 0 }, { mass_kgPerM: 0 }, { tension: -1 }])
      expect(() => pitch({ ...string, ...wrong })).toThrow(RangeError);
  });
});

describe("tensionFromPitch", () => {
  it("law: double pitch, four times the tension; and the tension's pitch is the pitch", () => {
    fc.assert(
      fc.property(number(5, 500), number(100, 3000), number(0.01, 0.5), (pitch_Hz, span, mass_kgPerM) => {
        const tension = tensionFromPitch({ span, pitch_Hz, mass_kgPerM });
        expect(tensionFromPitch({ span, pitch_Hz: 2 * pitch_Hz, mass_kgPerM })).toBeCloseTo(4 * tension, 6);
        expect(pitch({ span, tension, mass_kgPerM })).toBeCloseTo(pitch_Hz, 9);
      }),
    );
  });

  it("a string that does not sound has no tension", () => expect(tensionFromPitch({ ...string, pitch_Hz: 0 })).toBe(0));

  it("refuses a pitch below 0", () => {
    expect(() => tensionFromPitch({ span: 1000, pitch_Hz: -1, mass_kgPerM: 0.05 })).toThrow(RangeError);
  });
});

describe("pitchStiff", () => {
  it("without tension a pinned bar sounds at (pi/2L^2) sqrt(EI/m), a clamped one (4.73004/pi)^2 = 2.267 times as high (Euler-Bernoulli)", () => {
    const pinned = pitchStiff({ ...string, ...stiff, tension: 0, ends: "pinned" });
    expect(pinned).toBeCloseTo((Math.PI / (2 * 0.9144 ** 2)) * Math.sqrt(0.24 / 0.052), 9);
    const clamped = pitchStiff({ ...string, ...stiff, tension: 0 });
    // Tabled roots of cosh b cos b = 1: 4.73004 and 7.85320 (any book on vibration, from memory).
    expect(Math.sqrt(clamped / pinned) * Math.PI).toBeCloseTo(4.73004, 5);
    const second = pitchStiff({ ...string, ...stiff, tension: 0, mode: 2 });
    expect(Math.sqrt(second / pinned) * Math.PI).toBeCloseTo(7.8532, 4);
  });

  it("for xi of 1000 clamped ends raise the pitch by 2/xi and the square terms, (4 + pi^2/2)/xi^2", () => {
    const xi = 1000;
    const bendingStiffness_Nmm2 = (1000 * 914.4 ** 2) / xi ** 2;
    const ratio = pitchStiff({ ...string, bendingStiffness_Nmm2, ends: "clamped" }) / pitch(string);
    expect(ratio).toBeCloseTo(1 + 2 / xi + (4 + Math.PI ** 2 / 2) / xi ** 2, 7);
  });

  // Euler-Bernoulli beam under tension between clamped ends, with a^2 - b^2 = T L^2 / EI and f = a b sqrt(EI/m) / (2 pi L^2):
  // 2 a b (1 - cosh a cos b) + (a^2 - b^2) sinh a sin b = 0 (Bokaian 1990, from memory).
  it("law: between clamped ends it is a root of the published frequency equation, of as many half waves as its mode", () => {
    fc.assert(
      fc.property(number(0, 4000), number(1e5, 1e7), fc.constantFrom(1, 2, 3), (tension, bendingStiffness_Nmm2, mode) => {
        const f = pitchStiff({ ...string, tension, bendingStiffness_Nmm2, ends: "clamped", mode });
        const xi2 = (tension * string.span ** 2) / bendingStiffness_Nmm2;
        // a b and a^2 - b^2 give a^2.
        const product = ((2 * Math.PI * f * string.span ** 2) / 1000) * Math.sqrt(string.mass_kgPerM / bendingStiffness_Nmm2);
        const a = Math.sqrt(xi2 / 2 + Math.sqrt((xi2 / 2) ** 2 + product ** 2));
        const b = product / a;
        const left = (at: number) => 2 * a * at * (1 / Math.cosh(a) - Math.cos(at)) + (a ** 2 - at ** 2) * Math.tanh(a) * Math.sin(at);
        expect(left(b * (1 - 1e-9)) * left(b * (1 + 1e-9))).toBeLessThan(0);
        expect(Math.floor(b / Math.PI)).toBe(mode);
      }),
    );
  });

  it("without bending stiffness it is the plain string, also for an endlessly long cosh", () => {
    expect(pitchStiff({ ...string, bendingStiffness_Nmm2: 0, ends: "clamped" })).toBe(pitch(string));
    expect(pitchStiff({ ...string, bendingStiffness_Nmm2: 1e-3, ends: "clamped" }) / pitch(string)).toBeCloseTo(1, 3);
  });

  it("refuses a negative bending stiffness", () => {
    expect(() => pitchStiff({ ...string, bendingStiffness_Nmm2: -1, ends: "pinned" })).toThrow(RangeError);
  });
});

describe("tensionFromPitchStiff", () => {
  it("law: the pitch of the tension found is the pitch heard, for both ends and modes", () => {
    fc.assert(
      fc.property(
        number(20, 4000),
        number(0, 1e6),
        fc.constantFrom("pinned" as const, "clamped" as const),
        fc.constantFrom(1, 2, 3),
        (tension, EI, ends, mode) => {
          const one = { span: 914.4, mass_kgPerM: 0.052, bendingStiffness_Nmm2: EI, ends, mode };
          const pitch_Hz = pitchStiff({ ...one, tension });
          expect(tensionFromPitchStiff({ ...one, pitch_Hz })).toBeCloseTo(tension, 5);
        },
      ),
    );
  });

  it("is 0 where the bar alone sounds as high", () => {
    expect(tensionFromPitchStiff({ span: 300, mass_kgPerM: 0.052, ...stiff, pitch_Hz: 10 })).toBe(0);
  });
});

describe("pitchBand", () => {
  const strand = { ...string, construction: "1x19", diameter: 3.175, modulus: 130e3 } as const;

  it("holds the plain string just below its low end, and is 5 to 6 % wide for 1/8 in on 36 in at 1000 N", () => {
    const { low, nominal, high } = pitchBand(strand);
    expect(low).toBeGreaterThan(pitch(string));
    expect(low / pitch(string)).toBeLessThan(1.001);
    expect(nominal ** 2).toBeCloseTo(low * high, 9);
    // xi of a solid bar is L sqrt(T/EI) = 41.2, and 2/xi + (4 + pi^2/2)/xi^2 = 0.0538.
    expect(high / pitch(string)).toBeCloseTo(1.0538, 3);
  });

  it("law: low < nominal < high, and more tension raises all three", () => {
    fc.assert(
      fc.property(
        number(50, 4000),
        number(1, 500),
        fc.constantFrom("1x19" as const, "7x7" as const, "7x19" as const),
        (tension, more, construction) => {
          const before = pitchBand({ ...strand, construction, tension });
          const after = pitchBand({ ...strand, construction, tension: tension + more });
          expect(before.low).toBeLessThan(before.nominal);
          expect(before.nominal).toBeLessThan(before.high);
          for (const key of ["low", "nominal", "high"] as const) expect(after[key]).toBeGreaterThan(before[key]);
        },
      ),
    );
  });
});

describe("nearestNote", () => {
  // Twelve-tone equal scale on A4 = 440 Hz (ISO 16, from memory); frequencies as tables print them.
  it.each([
    [440, "A4"],
    [261.626, "C4"],
    [82.407, "E2"],
    [55, "A1"],
    [46.249, "F#1"],
    [16.352, "C0"],
    [15.434, "B-1"],
    [8.176, "C-1"],
  ])("%s Hz is %s to a tenth of a cent", (pitch_Hz, name) => {
    const note = nearestNote(pitch_Hz);
    expect(note.name).toBe(name);
    expect(Math.abs(note.cents)).toBeLessThan(0.1);
  });

  it("a quarter tone above A4 is 50 cents above A4 and a hair more is 50 below A#4", () => {
    expect(nearestNote(440 * 2 ** (0.499 / 12))).toMatchObject({ name: "A4" });
    expect(nearestNote(440 * 2 ** (0.499 / 12)).cents).toBeCloseTo(49.9, 6);
    expect(nearestNote(440 * 2 ** (0.501 / 12))).toMatchObject({ name: "A#4" });
    expect(nearestNote(440 * 2 ** (0.501 / 12)).cents).toBeCloseTo(-49.9, 6);
  });

  it("refuses a pitch of 0 or without end", () => {
    for (const wrong of [0, -1, Number.POSITIVE_INFINITY, Number.NaN]) expect(() => nearestNote(wrong)).toThrow("must be positive");
  });
});
