import { describe, expect, it } from "vitest";
import { bottomToTop, centreOutwards, outsideIn, topToBottom } from "../../src/mechanics/sequence-order.ts";

const numbers = (order: readonly number[]): readonly number[] => order.map((cable) => cable + 1);

describe("topToBottom and bottomToTop", () => {
  it("4 cables: 4 3 2 1 and 1 2 3 4", () => {
    expect(numbers(topToBottom(4))).toEqual([4, 3, 2, 1]);
    expect(numbers(bottomToTop(4))).toEqual([1, 2, 3, 4]);
  });
});

describe("centreOutwards", () => {
  it("10 cables begin at cable 5, then above, then below (reference-sequence, how to feed: ceil(n/2))", () => {
    expect(numbers(centreOutwards(10))).toEqual([5, 6, 4, 7, 3, 8, 2, 9, 1, 10]);
  });

  it("9 cables begin at the middle one, 5; 1 and 2 cables begin at 1", () => {
    expect(numbers(centreOutwards(9))).toEqual([5, 6, 4, 7, 3, 8, 2, 9, 1]);
    expect(numbers(centreOutwards(1))).toEqual([1]);
    expect(numbers(centreOutwards(2))).toEqual([1, 2]);
  });
});

describe("outsideIn", () => {
  it("5 cables: top, bottom, next below, next above, middle", () => {
    expect(numbers(outsideIn(5))).toEqual([5, 1, 4, 2, 3]);
  });
});

describe("every named order", () => {
  it.each([1, 2, 3, 8, 13])("names each of %i cables once", (count) => {
    for (const order of [topToBottom, bottomToTop, centreOutwards, outsideIn]) {
      expect(order(count).toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, cable) => cable));
    }
  });
});
