import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cantilever,
  cantileverEven,
  overhangs,
  proppedCantilever,
  simpleBeam,
  simpleBeamEven,
  simpleBeamPart,
  simpleBeamPoints,
} from "../../src/mechanics/beam.ts";
import { alongMember, solveFrame } from "../../src/mechanics/frame.ts";
import type { Frame, LoadCase } from "../../src/mechanics/frame-model.ts";
import { expectAsPrinted } from "../support/as-printed.ts";

const IN_mm = 25.4;
const LBF_N = 4.4482216152605;
const beam = { length: 2000, load: 500, at: 1300, EI: 2e10 };

/** The same beam by the frame solver: movement down at a place. */
function byFrame(
  length: number,
  ends: readonly ["fixed" | "pinned", "pinned" | "free"],
  load: LoadCase,
  EI = beam.EI,
): (at: number) => number {
  const [left, right] = ends;
  const frame: Frame = {
    nodes: [
      { x: 0, y: 0, support: { x: "fixed", y: "fixed", ...(left === "fixed" && { rotation: "fixed" }) } },
      { x: length, y: 0, ...(right === "pinned" && { support: { y: "fixed" } }) },
    ],
    members: [{ from: 0, to: 1, EA: 1e8, EI }],
  };
  const [response] = solveFrame(frame, [load]);
  if (response === undefined) throw new Error("no response");
  const state = alongMember({ frame, load, response }, 0);
  return (at) => -state(at).y;
}

const point = (load: number, at: number): LoadCase => ({ onMembers: [{ member: 0, at, y: -load }] });
const places = fc.tuple(fc.double({ min: 1, max: 1999, noNaN: true }), fc.double({ min: 0, max: 2000, noNaN: true }));

describe("cantilever", () => {
  it("500 N at 1.3 m of 2 m: at the load P a^3 / 3 EI, tip P a^2 (3 L - a) / 6 EI, moment P a", () => {
    expect(cantilever(beam, 1300)).toEqual({ deflection: (500 * 1300 ** 3) / (3 * 2e10), moment: 650_000 });
    expect(cantilever(beam).deflection).toBeCloseTo((500 * 1300 ** 2 * (6000 - 1300)) / (6 * 2e10), 12);
  });

  it("law: the frame solver gives the same at any place", () => {
    fc.assert(
      fc.property(places, ([at, where]) => {
        const frame = byFrame(2000, ["fixed", "free"], point(500, at))(where);
        expect(Math.abs(cantilever({ ...beam, at }, where).deflection - frame)).toBeLessThan(1e-7);
      }),
    );
  });

  it("refuses places off the beam and a beam without stiffness", () => {
    expect(() => cantilever({ ...beam, at: 2001 })).toThrow(RangeError);
    expect(() => cantilever({ ...beam, at: -1 })).toThrow(RangeError);
    expect(() => cantilever(beam, 2001)).toThrow(RangeError);
    expect(() => cantilever(beam, -1)).toThrow(RangeError);
    expect(() => cantilever({ ...beam, EI: 0 })).toThrow("must be positive");
  });
});

describe("cantileverEven", () => {
  it("3 N/mm on 2 m: w L^4 / 8 EI and w L^2 / 2, as the frame solver", () => {
    const { deflection, moment } = cantileverEven({ length: 2000, load_NPerMm: 3, EI: 2e10 });
    expect(moment).toBe(6e6);
    expect(deflection).toBeCloseTo(byFrame(2000, ["fixed", "free"], { even: [{ member: 0, y: -3 }] })(2000), 7);
  });
});

describe("proppedCantilever", () => {
  it("500 N in the middle: prop 5 P / 16, moment 3 P L / 16 (beam tables, from memory)", () => {
    const { prop, moment, deflection } = proppedCantilever({ ...beam, at: 1000 });
    expect(prop).toBeCloseTo((5 * 500) / 16, 12);
    expect(moment).toBeCloseTo((3 * 500 * 2000) / 16, 8);
    expect(deflection).toBeCloseTo((7 * 500 * 2000 ** 3) / (768 * 2e10), 12);
  });

  it("law: the frame solver gives the same at any place, and nothing at the prop", () => {
    fc.assert(
      fc.property(places, ([at, where]) => {
        const frame = byFrame(2000, ["fixed", "pinned"], point(500, at))(where);
        expect(Math.abs(proppedCantilever({ ...beam, at }, where).deflection - frame)).toBeLessThan(1e-7);
        expect(Math.abs(proppedCantilever({ ...beam, at }, 2000).deflection)).toBeLessThan(1e-9);
      }),
    );
  });
});

describe("simpleBeam", () => {
  // Source: review log of a wood beam program (public repository): 2x10, E 1.6e6 psi, 14 ft, 1000 lb.
  const inch = { length: 168, load: 1000, EI: 1.6e6 * ((1.5 * 9.25 ** 3) / 12) };
  const inside = { length: 168 * IN_mm, load: 1000 * LBF_N, EI: inch.EI * LBF_N * IN_mm ** 2 };

  const grid = { within: 2e-4 * 0.38372, because: "the greatest of places on a grid, which lies a little low" };

  it("2x10 of 14 ft with 1000 lb in the middle bends 0.62407 in, with 1000 lb at 3 ft 0.38372 in at most", () => {
    expectAsPrinted(simpleBeam({ ...inside, at: 84 * IN_mm }).deflection / IN_mm, "0.62407");
    expectAsPrinted(simpleBeam({ ...inside, at: 36 * IN_mm }).deflection / IN_mm, "0.38372", grid);
  });

  it("the frame solver finds both, the second where the formula says", () => {
    const middle = byFrame(inside.length, ["pinned", "pinned"], point(inside.load, 84 * IN_mm), inside.EI);
    expectAsPrinted(middle(84 * IN_mm) / IN_mm, "0.62407");
    const aside = simpleBeam({ ...inside, at: 36 * IN_mm });
    const frame = byFrame(inside.length, ["pinned", "pinned"], point(inside.load, 36 * IN_mm), inside.EI);
    expectAsPrinted(frame(aside.deflectionAt) / IN_mm, "0.38372", grid);
    for (const by of [-50, 50]) expect(frame(aside.deflectionAt + by)).toBeLessThan(frame(aside.deflectionAt));
  });

  it("500 N at 1.3 m of 2 m: reactions 175 and 325 N, moment P a b / L, and the mirrored load the mirrored answer", () => {
    const [one, other] = [simpleBeam(beam), simpleBeam({ ...beam, at: 700 })];
    expect([one.left, one.right, one.moment]).toEqual([175, 325, 227_500]);
    expect(other.deflection).toBe(one.deflection);
    expect(other.deflectionAt).toBeCloseTo(2000 - one.deflectionAt, 9);
    expect(one.deflectionAt).toBeCloseTo(Math.sqrt((2000 ** 2 - 700 ** 2) / 3), 9);
  });
});

describe("simpleBeamEven", () => {
  it("3 N/mm on 2 m: 5 w L^4 / 384 EI, w L^2 / 8, w L / 2, as the frame solver", () => {
    const { deflection, moment, reaction } = simpleBeamEven({ length: 2000, load_NPerMm: 3, EI: 2e10 });
    expect([moment, reaction]).toEqual([1.5e6, 3000]);
    expect(deflection).toBeCloseTo(byFrame(2000, ["pinned", "pinned"], { even: [{ member: 0, y: -3 }] })(1000), 7);
  });
});

describe("overhangs", () => {
  it("refuses a beam without stiffness", () => {
    expect(() => overhangs({ span: 2000, overhang: 500, load_NPerMm: 1, EI: 0 })).toThrow(RangeError);
  });
});

describe("simpleBeamPoints", () => {
  it("one load is simpleBeam's", () => {
    const { moment, left, right } = simpleBeamPoints({ length: 2000, load: 500, places: [1300] });
    expect([left, right, moment]).toEqual([175, 325, 227_500]);
  });

  it("two of P at a third each: P L / 3 between them, P at each support (beam tables, from memory)", () => {
    const { moment, left, right } = simpleBeamPoints({ length: 3000, load: 100, places: [1000, 2000] });
    expect([left, right, moment]).toEqual([100, 100, 100_000]);
  });

  it("law: the order of the loads is nothing to it, and mirrored it mirrors", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 6 }), (places) => {
        const one = simpleBeamPoints({ length: 1000, load: 10, places });
        const other = simpleBeamPoints({ length: 1000, load: 10, places: places.map((at) => 1000 - at) });
        expect(other.moment).toBeCloseTo(one.moment, 6);
        expect(other.left).toBeCloseTo(one.right, 9);
        expect(simpleBeamPoints({ length: 1000, load: 10, places: places.toReversed() }).moment).toBeCloseTo(one.moment, 6);
      }),
    );
  });

  it("refuses a load off the beam", () => {
    expect(() => simpleBeamPoints({ length: 1000, load: 10, places: [1001] })).toThrow(RangeError);
  });
});

describe("simpleBeamPart", () => {
  it("on all of the beam it is an even load: P L / 8 and half of it at each support", () => {
    expect(simpleBeamPart({ length: 800, load: 100, width: 800 })).toEqual({ moment: 10_000, reaction: 50 });
  });

  it("on none of it a single load: P L / 4, and all of it at the support", () => {
    expect(simpleBeamPart({ length: 800, load: 100, width: 0 })).toEqual({ moment: 20_000, reaction: 100 });
  });

  it("a thousand small loads on the part come to the same", () => {
    const [length, width, count] = [800, 300, 1000];
    const spread = (from: number) => Array.from({ length: count }, (_, nth) => from + ((nth + 0.5) / count) * width);
    const { moment, reaction } = simpleBeamPart({ length, load: 100, width });
    expect(simpleBeamPoints({ length, load: 100 / count, places: spread((length - width) / 2) }).moment / moment).toBeCloseTo(1, 5);
    expect(simpleBeamPoints({ length, load: 100 / count, places: spread(0) }).left).toBeCloseTo(reaction, 9);
  });

  it("refuses a part longer than the beam", () => {
    expect(() => simpleBeamPart({ length: 800, load: 100, width: 801 })).toThrow(RangeError);
  });
});
