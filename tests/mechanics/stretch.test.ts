import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { elongation, nutTurns, takeUp, unstressedLength } from "../../src/mechanics/stretch.ts";

describe("elongation", () => {
  it("40 ft at 200 lbf with EA 175,852 lbf stretch by 200 x 480 / 175,852 in (Hooke)", () => {
    const stretch = elongation({ tension: 200 * 4.4482216152605, length: 12_192, stiffness: 175_852 * 4.4482216152605 });
    expect(stretch / 25.4).toBeCloseTo((200 * 480) / 175_852, 12);
  });

  it("refuses a stiffness of 0", () => {
    expect(() => elongation({ tension: 1, length: 1, stiffness: 0 })).toThrow(RangeError);
  });
});

describe("unstressedLength", () => {
  it("law: stretching the slack length by the tension gives the length back", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e5, noNaN: true }), fc.double({ min: 0, max: 1e4, noNaN: true }), (length, tension) => {
        const slack = unstressedLength({ length, tension, stiffness: 8e5 });
        expect(slack + elongation({ tension, length: slack, stiffness: 8e5 })).toBeCloseTo(length, 8);
      }),
    );
  });

  it("refuses a stiffness below 0", () => {
    expect(() => unstressedLength({ length: 1, tension: 1, stiffness: 0 })).toThrow(RangeError);
  });
});

describe("nutTurns", () => {
  it("1 in of 1/4-28 thread is 28 turns", () => {
    expect(nutTurns({ travel: 25.4, pitch: 25.4 / 28 })).toBeCloseTo(28, 12);
  });

  it("refuses a pitch of 0", () => {
    expect(() => nutTurns({ travel: 1, pitch: 0 })).toThrow(RangeError);
  });
});

describe("takeUp", () => {
  const parts = {
    elongation: 12,
    elongation_low: 11,
    elongation_high: 14,
    bedding: 2,
    seating: 4,
    pullingEnds: 1,
    pitch: 0.9,
    threadLength: 50.8,
    firstTurns: 3,
  };

  it("12 mm of stretch, 2 of bedding and 4 of seating are 18 mm: 20 turns of 0.9 mm from one end, 30.1 mm of thread left", () => {
    const result = takeUp(parts);
    expect(result).toMatchObject({ elongation: 12, bedding: 2, seating: 4, travel: 18, travelPerEnd: 18, slackToPull: 0 });
    expect(result.turns).toBeCloseTo(20, 12);
    expect(result.turns_low).toBeCloseTo(17 / 0.9, 12);
    expect(result.turns_high).toBeCloseTo(20 / 0.9, 12);
    expect(result.threadAvailable).toBeCloseTo(48.1, 12);
    expect(result.threadLeft).toBeCloseTo(30.1, 12);
  });

  it("two pulling ends share the travel: 9 mm and 10 turns each", () => {
    const result = takeUp({ ...parts, pullingEnds: 2 });
    expect(result.travelPerEnd).toBe(9);
    expect(result.turns).toBeCloseTo(10, 12);
  });

  it("20 mm of thread less 2.7 for the first turns lack 0.7 mm for 18: that much slack is pulled first; from two ends of 10 mm, 3.4", () => {
    const short = takeUp({ ...parts, threadLength: 20 });
    expect(short.threadLeft).toBeCloseTo(-0.7, 12);
    expect(short.slackToPull).toBeCloseTo(0.7, 12);
    expect(takeUp({ ...parts, threadLength: 10, pullingEnds: 2 }).slackToPull).toBeCloseTo(3.4, 12);
  });

  it("refuses a cable that no end pulls", () => {
    expect(() => takeUp({ ...parts, pullingEnds: 0 })).toThrow(RangeError);
  });
});
