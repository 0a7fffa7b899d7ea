// What do the posts of a corner get of a cable that slips round them, in the frame of each of their sides?
import { expect, test } from "vitest";
import type { SideFrame } from "../../src/plan/frames.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";

/** What 1 N at the nut of the lowest cable pushes each post with, along the side, at the height of that cable. */
function pushes({ guard, terms, posts }: SideFrame): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const add = (place: number, force: number): void => {
    const id = posts[place]?.id ?? "";
    found.set(id, (found.get(id) ?? 0) + force);
  };
  for (const { cable, share, part } of terms.get(0) ?? []) {
    const { left = -1, right = -1, height = 0, pushes: behind = [] } = guard.input.cables[cable] ?? {};
    add(left, share * part);
    add(right, -share * part);
    for (const push of behind) if (push.height === height) add(push.post, share * part * push.factor);
  }
  return found;
}

// Statics: a post is pulled back with the tension before it and onward with that behind it, turned by 45 degrees. Euler-Eytelwein: behind
// each of the two posts of a square corner the tension is exp(-0.3 pi / 4) of that before it.
test("a square corner of two posts, slipping: the first gets T - T2 cos 45 deg along its side and T2 sin 45 deg square to it, the second the rest", () => {
  const [group] = framesOf(examplePlan("0002-deck-two-corners").job).groups;
  const [a, b] = (group?.sides ?? []).map(pushes);
  const kept = Math.exp((-0.3 * Math.PI) / 4);
  const [cos, sin] = [kept * Math.SQRT1_2, kept * Math.SQRT1_2];
  expect(a?.get("P4")).toBeCloseTo(cos - 1, 9);
  expect(a?.get("P5")).toBeCloseTo(-cos, 9);
  expect(b?.get("P4")).toBeCloseTo(sin, 9);
  expect(b?.get("P5")).toBeCloseTo(kept ** 2 - sin, 9);
});

// The two sides push against each other at corners that are not square; what one side pulls another holds, so that nothing is left over.
test.each(["0002-deck-two-corners", "0005-steel-balcony", "0011-two-guards-and-a-gate"])(
  "%s: what the cables push along a side of square corners is nothing in sum",
  (name) => {
    for (const side of framesOf(examplePlan(name).job).groups.flatMap(({ sides }) => sides)) {
      expect([...pushes(side).values()].reduce((sum, push) => sum + push, 0)).toBeCloseTo(0, 9);
    }
  },
);
