// Whatever the lengths of the sides, can the guard seen from above be read: a return of 2 ft beside a side of 120 ft as well?
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overlap, type Quad } from "../../../src/drawing/box.ts";
import { contentBox } from "../../../src/drawing/paper.ts";
import { planView } from "../../../src/packet/drawings/plan-view.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { textsOf } from "../../support/svg-texts.ts";
import { shaped } from "./all-drawings.ts";

const portrait = contentBox({ paper: "letter", orientation: "portrait" });
const TURNS = ["right 90", "left 90", "right 45", "left 45"] as const;

/** Texts that lie on each other. */
function clashesOf(plan: Plan): readonly string[] {
  const texts = textsOf(planView(plan, portrait).svg);
  const box = ({ corners }: (typeof texts)[number]): Quad => corners as unknown as Quad;
  return texts.flatMap((one, index) =>
    texts.slice(index + 1).flatMap((other) => (overlap(box(one), box(other)) ? [`"${one.text}" / "${other.text}"`] : [])),
  );
}

describe("planView", () => {
  // These had words of a run on the marks of another side: two long sides a few feet apart, and a short return.
  test.each([
    ["length: 3 ft, turn: left 90 deg", "length: 5 ft, turn: left 90 deg", "length: 120 ft"],
    ["length: 120 ft, turn: right 90 deg", "length: 2 ft, turn: right 90 deg", "length: 45 ft"],
    ["length: 120 ft, turn: left 90 deg", "length: 14 ft, turn: left 90 deg", "length: 120 ft"],
    ["length: 24 ft, turn: right 90 deg", "length: 5 ft, turn: right 90 deg", "length: 45 ft"],
    ["length: 5 ft, turn: right 45 deg", "length: 120 ft"],
  ])("%s and so on: no two texts overlap", (...sides) => {
    expect(clashesOf(shaped(...sides))).toEqual([]);
  });

  test("no two texts overlap at any lengths of two or three sides from 2 to 120 ft", () => {
    const side = fc.constantFrom(2, 3, 4, 5, 7, 10, 16, 27, 45, 70, 120);
    fc.assert(
      fc.property(fc.array(side, { minLength: 2, maxLength: 3 }), fc.constantFrom(...TURNS), (lengths, turn) => {
        const sides = lengths.map((feet, index) => `length: ${feet} ft${index === lengths.length - 1 ? "" : `, turn: ${turn} deg`}`);
        expect(clashesOf(shaped(...sides))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  }, 120_000);
});
