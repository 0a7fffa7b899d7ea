// Is a post that stands turned between two sides drawn as it is seen from each of them? Its corners are set out again from its middle.
import { describe, expect, test } from "vitest";
import { elevations } from "../../../src/packet/drawings/elevation.ts";
import { outlineOf, seenTo } from "../../../src/packet/drawings/turned-post.ts";
import { membersOn } from "../../../src/plan/corner-post.ts";
import type { Plan, SidePlan, Vertical } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";

const NAME = "0014-corners-of-one-post";
const inside = examplePlan(NAME);
const outside = planOf(changedText(NAME, { "turn: left 45 deg": "turn: right 45 deg" }));

const seen = (plan: Plan, sideIndex: number, id = "P6"): { readonly post: Vertical; readonly side: SidePlan } => {
  const side = plan.sides[sideIndex];
  const post = membersOn(sideIndex, plan.verticals).find((one) => one.id === id);
  if (side === undefined || post === undefined) throw new Error(`no ${id} on side ${sideIndex}`);
  return { post, side };
};

/** Of each edge of the post: how far along the side, and how far on the deck's hand of its middle line. */
function edgesOf({ post, side }: ReturnType<typeof seen>): readonly { readonly at: number; readonly near: number }[] {
  return [45, 135, 225, 315].map((degrees) => {
    const away = post.direction - side.direction + (degrees * Math.PI) / 180;
    const far = (post.along * Math.SQRT2) / 2;
    return { at: post.station + far * Math.cos(away), near: -far * Math.sin(away) };
  });
}

describe.each([
  ["an inside corner", inside],
  ["an outside corner", outside],
])("a post on the bisector of %s", (_, plan) => {
  test.each([1, 2])("is as wide from side %i as its edges lie apart, and the edge next to the deck is drawn where it is", (index) => {
    const view = seen(plan, index);
    const { left, right, turned } = outlineOf(view.post, view.side);
    const edges = edgesOf(view);
    expect(left).toBeCloseTo(Math.min(...edges.map(({ at }) => at)), 6);
    expect(right).toBeCloseTo(Math.max(...edges.map(({ at }) => at)), 6);
    // By hand, 5-1/2 in at 22.5 deg: 5.5 (0.92388 + 0.38268) = 7.186 in.
    expect((right - left) / 25.4).toBeCloseTo(7.186, 3);
    const nearest = edges.reduce((most, one) => (one.near > most.near ? one : most));
    expect(turned?.edge).toBeCloseTo(nearest.at, 6);
  });
});

test("the mouth on the deck's hand is seen at an inside corner, and hidden behind the post at an outside one", () => {
  for (const [plan, index, face] of [
    [inside, 1, "left"],
    [inside, 2, "right"],
  ] as const) {
    const { post, side } = seen(plan, index);
    const { left, right } = outlineOf(post, side);
    // In the middle of the face that is seen: 2.541 in from the middle of the post.
    expect(Math.abs(seenTo(post, side, face) - post.station) / 25.4).toBeCloseTo(2.541, 3);
    expect(seenTo(post, side, face)).toBeGreaterThan(left);
    expect(seenTo(post, side, face)).toBeLessThan(right);
  }
  const [home, next] = [seen(outside, 1), seen(outside, 2)];
  expect(seenTo(home.post, home.side, "left")).toBe(outlineOf(home.post, home.side).left);
  expect(seenTo(next.post, next.side, "right")).toBe(outlineOf(next.post, next.side).right);
});

test("a post that stands square is as wide as it is, and the sheet says which one is turned", () => {
  const { post, side } = seen(inside, 1, "P4");
  expect(outlineOf(post, side)).toEqual({ left: -69.85, right: 69.85, turned: null });
  const words = (index: number): string => JSON.stringify(elevations(inside, index, { width: 250, height: 150 }));
  expect(words(1)).toContain("P6 stands turned by 22.5 deg");
  expect(words(0)).not.toContain("stands turned");
});
