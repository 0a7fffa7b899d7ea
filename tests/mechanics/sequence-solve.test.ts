import fc from "fast-check";
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { cableSystem, LOOSE, pullTo, takeUpsFor, tensionsFor, tensionsOn } from "../../src/mechanics/sequence-solve.ts";
import { randomFrames, systemOf } from "../support/cable-frames.ts";

/** Solutions agree to rounding, in N; tensions are hundreds of newtons. */
const SAME_N = 1e-6;

describe("cableSystem", () => {
  it("adds the cable's own 0.008 mm/N to the frame's 0.002 mm/N on the diagonal only", () => {
    const { coupling } = cableSystem({
      flexibility: [
        [0.002, 0.001],
        [0.001, 0.003],
      ],
      cableFlexibility: [0.008, 0.008],
    });
    expect(Array.from(coupling)).toEqual([0.01, 0.001, 0.001, 0.011]);
  });

  it.each([
    [
      "3 cables on a frame of 2 rows",
      {
        flexibility: [
          [0, 0],
          [0, 0],
        ],
        cableFlexibility: [1, 1, 1],
      },
      /3 rows of 3/,
    ],
    ["2 cables on a frame of 1 row", { flexibility: [[0, 0]], cableFlexibility: [1, 1] }, /2 rows of 2/],
    ["a short row", { flexibility: [[0, 0], [0]], cableFlexibility: [1, 1] }, /2 rows of 2/],
    [
      "0.001 against 0.002 mm/N across the diagonal",
      {
        flexibility: [
          [0.01, 0.001],
          [0.002, 0.01],
        ],
        cableFlexibility: [1, 1],
      },
      /flexibility 2,1 is 0.002 and 1,2 is 0.001: it must be symmetric/,
    ],
    [
      "a hundred-thousandth of the largest across the diagonal",
      {
        flexibility: [
          [0.01, 0.001],
          [0.0010001, 0.01],
        ],
        cableFlexibility: [1, 1],
      },
      /symmetric/,
    ],
    [
      "one of two cables that does not stretch",
      {
        flexibility: [
          [0, 0],
          [0, 0],
        ],
        cableFlexibility: [1, 0],
      },
      /positive/,
    ],
    ["a flexibility that is no number", { flexibility: [[Number.NaN]], cableFlexibility: [1] }, /finite/],
    ["a cable that does not stretch", { flexibility: [[0.001]], cableFlexibility: [0] }, /positive/],
    ["a cable without stiffness", { flexibility: [[0.001]], cableFlexibility: [Number.POSITIVE_INFINITY] }, /positive/],
    ["a frame that opens by 0.02 mm/N when it is pulled", { flexibility: [[-0.02]], cableFlexibility: [0.01] }, /opens/],
  ])("refuses %s", (_what, frame, message) => {
    expect(() => cableSystem(frame)).toThrow(message);
    // Asked once, with take-ups that would pull every cable.
    const takeUps = frame.cableFlexibility.map(() => 10);
    expect(() => tensionsOn(frame, takeUps)).toThrow(message);
  });
});

describe("tensionsFor", () => {
  it("two cables of 0.01 mm/N on a frame that closes by 0.01 mm/N for both: 30 and 30 mm leave 1000 N in each", () => {
    const system = cableSystem({
      flexibility: [
        [0.01, 0.01],
        [0.01, 0.01],
      ],
      cableFlexibility: [0.01, 0.01],
    });
    for (const tension of tensionsFor(system, [30, 30])) expect(tension).toBeCloseTo(1000, 9);
  });

  it("the same frame with 5 and 30 mm: the first hangs slack since 1500 N close its anchors by 15 mm", () => {
    const system = cableSystem({
      flexibility: [
        [0.01, 0.01],
        [0.01, 0.01],
      ],
      cableFlexibility: [0.01, 0.01],
    });
    expect(tensionsFor(system, [5, 30])).toEqual([0, 1500]);
  });

  it("a cable that was never pulled stays slack even where the frame opens it", () => {
    const system = cableSystem({
      flexibility: [
        [0.01, -0.005],
        [-0.005, 0.01],
      ],
      cableFlexibility: [0.01, 0.01],
    });
    expect(tensionsFor(system, [LOOSE, 20])).toEqual([0, 1000]);
    expect(tensionsFor(system, [0, 20])[0]).toBeGreaterThan(0);
  });

  it("where nothing is slack it is the Cholesky solution of a linear algebra library", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 12] }), (frame) => {
        const system = systemOf(frame);
        const matrix = new Matrix(
          frame.flexibility.map((row, i) => row.map((f, j) => f + (i === j ? (frame.cableFlexibility[i] ?? 0) : 0))),
        );
        const takeUps = takeUpsFor(system, frame.target);
        const solution = new CholeskyDecomposition(matrix).solve(Matrix.columnVector([...takeUps])).to1DArray();
        for (const [cable, tension] of tensionsFor(system, takeUps).entries()) {
          expect(Math.abs(tension - (solution[cable] ?? 0))).toBeLessThan(SAME_N);
          expect(Math.abs(tension - (frame.target[cable] ?? 0))).toBeLessThan(SAME_N);
        }
      }),
    );
  });

  it("meets both halves of the condition for any take-ups, whatever the signs in the frame: no push, and slack only where nothing is lacking", () => {
    fc.assert(
      fc.property(
        randomFrames({ cables: [1, 8], signs: true }),
        fc.array(fc.double({ min: -5, max: 15, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (frame, any) => {
          const takeUps = any.slice(0, frame.target.length);
          const system = systemOf(frame);
          const tensions = tensionsFor(system, takeUps);
          const needed = takeUpsFor(system, tensions);
          for (const [cable, tension] of tensions.entries()) {
            const lacks = (needed[cable] ?? 0) - (takeUps[cable] ?? 0);
            expect(tension).toBeGreaterThanOrEqual(0);
            if (tension > 0) expect(Math.abs(lacks)).toBeLessThan(1e-6);
            else expect(lacks).toBeGreaterThan(-1e-6);
          }
        },
      ),
    );
  });

  it("superposition: while nothing is slack, the tensions of two sets of take-ups add", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 6] }), (frame) => {
        const system = systemOf(frame);
        const more = frame.target.toReversed();
        const sum = takeUpsFor(system, frame.target).map((takeUp, cable) => takeUp + (takeUpsFor(system, more)[cable] ?? 0));
        for (const [cable, tension] of tensionsFor(system, sum).entries()) {
          expect(Math.abs(tension - (frame.target[cable] ?? 0) - (more[cable] ?? 0))).toBeLessThan(SAME_N);
        }
      }),
    );
  });
});

describe("pullTo", () => {
  const system = cableSystem({
    flexibility: [
      [0.01, 0.01],
      [0.01, 0.01],
    ],
    cableFlexibility: [0.01, 0.01],
  });

  it("the second cable pulled to 1000 N beside one of 1000 N: the first falls to 500 N and the second took up 25 mm", () => {
    const { takeUp, tensions } = pullTo(system, [20, LOOSE], { cable: 1, reading: 1000 });
    expect(tensions[0]).toBeCloseTo(500, 9);
    expect(tensions[1]).toBe(1000);
    expect(takeUp).toBeCloseTo(25, 9);
  });

  it("pulled to 3000 N the second lets the first hang slack, and its take-up is that of a cable alone: 60 mm", () => {
    expect(pullTo(system, [20, LOOSE], { cable: 1, reading: 3000 })).toEqual({ takeUp: 60, tensions: [0, 3000] });
  });

  it("the take-up that it gives leaves the tensions that it gives", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 8], signs: true }), fc.double({ min: 1, max: 3000, noNaN: true }), (frame, reading) => {
        const one = systemOf(frame);
        const takeUps = takeUpsFor(one, frame.target);
        const { takeUp, tensions } = pullTo(one, takeUps, { cable: 0, reading });
        for (const [cable, tension] of tensionsFor(one, takeUps.with(0, takeUp)).entries()) {
          expect(Math.abs(tension - (tensions[cable] ?? 0))).toBeLessThan(1e-4);
        }
      }),
    );
  });

  it("let go altogether the second leaves the first its 1000 N, and its own anchors 10 mm nearer", () => {
    const { takeUp, tensions } = pullTo(system, [20, LOOSE], { cable: 1, reading: 0 });
    expect(tensions).toEqual([expect.closeTo(1000, 9), 0]);
    expect(takeUp).toBeCloseTo(10, 9);
  });

  it("refuses a reading of -1 N", () => {
    expect(() => pullTo(system, [20, LOOSE], { cable: 1, reading: -1 })).toThrow(/no tension/);
  });
});
