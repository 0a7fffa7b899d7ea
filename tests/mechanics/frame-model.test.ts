import { describe, expect, it } from "vitest";
import { layMember } from "../../src/mechanics/frame-member.ts";
import { actionOn, toFrame, toMember } from "../../src/mechanics/frame-model.ts";

// Three right, four up.
const laid = layMember({ from: 0, to: 1, EA: 1, EI: 1 }, { from: { x: 0, y: 0 }, to: { x: 3, y: 4 } });

describe("toMember", () => {
  it("5 to the right is 3 along and -4 across; turns stay", () => {
    expect(toMember(laid, [5, 0, 7, 0, 5, 8])).toEqual([3, -4, 7, 4, 3, 8].map((value) => expect.closeTo(value, 12)));
  });

  it("refuses fewer than six values", () => {
    expect(() => toMember(laid, [1, 2, 3])).toThrow(RangeError);
  });
});

describe("toFrame", () => {
  it("undoes toMember", () => {
    const values = [1, -2, 3, 4, 5.5, -6];
    expect(toFrame(laid, toMember(laid, values))).toEqual(values.map((value) => expect.closeTo(value, 12)));
  });
});

describe("actionOn", () => {
  it("turns the loads of its own member into its axes, adds even loads and strains, and leaves out those of others", () => {
    const action = actionOn(laid, 2, {
      onMembers: [
        { member: 2, at: 1, x: 5 },
        { member: 1, at: 1, x: 5 },
        { member: 2, at: 2, y: 5, moment: 9 },
      ],
      even: [
        { member: 2, x: 5 },
        { member: 2, y: 5 },
        { member: 0, y: 5 },
      ],
      strains: [
        { member: 2, strain: 0.1 },
        { member: 2, strain: 0.2 },
        { member: 3, strain: 7 },
      ],
    });
    expect(action.points).toEqual([
      { at: 1, along: expect.closeTo(3, 12), across: expect.closeTo(-4, 12), moment: 0 },
      { at: 2, along: expect.closeTo(4, 12), across: expect.closeTo(3, 12), moment: 9 },
    ]);
    expect(action.evenAlong).toBeCloseTo(7, 12);
    expect(action.evenAcross).toBeCloseTo(-1, 12);
    expect(action.strain).toBeCloseTo(0.3, 12);
    expect(actionOn(laid, 0, {})).toEqual({ points: [], evenAlong: 0, evenAcross: 0, strain: 0 });
  });
});
