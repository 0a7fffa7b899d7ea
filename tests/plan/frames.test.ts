import { describe, expect, test } from "vitest";
import { targetPulls } from "../../src/plan/frame-answer.ts";
import { stateOf } from "../../src/plan/movement.ts";
import { bottomRailReaches } from "../../src/plan/rails.ts";
import { changedText, exampleNames, exampleText, jobOf } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";

const framed = (name: string, changes: Readonly<Record<string, string>> = {}) => framesOf(jobOf(changedText(name, changes)));

describe.each(exampleNames)("frameGuard of %s", (name) => {
  const { plan, groups } = framesOf(jobOf(exampleText(name)));

  test("has every cable of every run once", () => {
    const cables = groups.reduce((sum, group) => sum + group.cableFlexibility.length, 0);
    expect(cables).toBe(plan.cables.length);
  });

  test("closing of cable i by a pull of j is that of j by a pull of i (Maxwell), and pulls close, never open", () => {
    for (const { flexibility } of groups) {
      const largest = Math.max(...flexibility.flat());
      flexibility.forEach((row, i) => {
        expect(row[i]).toBeGreaterThan(0);
        row.forEach((value, j) => {
          expect(Math.abs(value - (flexibility[j]?.[i] ?? Number.NaN))).toBeLessThan(1e-9 * largest);
        });
      });
    }
  });

  test("a bottom rail stands in the frame exactly where one is cut: none across a corner or a change of slope", () => {
    for (const { guard, posts } of groups.flatMap(({ sides }) => sides)) {
      if (guard.input.bottomRail === null) continue;
      const cut = plan.sides.flatMap((side) => bottomRailReaches(side, plan.verticals).map(({ fromId, toId }) => `${fromId} ${toId}`));
      const stands = guard.built.bottomRail.map((pieces) => pieces.length > 0);
      expect(stands).toEqual(posts.slice(1).map((right, bay) => cut.includes(`${posts[bay]?.id} ${right.id}`)));
    }
  });

  test("the feet of the posts hand down no force along a side whose corners are square or that has none", () => {
    for (const group of groups) {
      for (const frame of group.sides) {
        const isHeld = frame.guard.input.posts.some((post) => post.top !== undefined);
        const { baseShear } = stateOf(frame, targetPulls(group, plan.runs));
        const sum = baseShear.reduce((total, shear) => total + shear, 0);
        const size = baseShear.reduce((total, shear) => total + Math.abs(shear), 0);
        if (!isHeld) expect(Math.abs(sum)).toBeLessThan(1e-6 * size);
      }
    }
  });
});

describe("frameGuard", () => {
  test("a guard that is its own mirror image answers as one: the two end posts of 0002 lean the same way in", () => {
    const { plan } = framed("0002-deck-two-corners");
    const posts = plan.frame.sides.flatMap((side) => side.posts);
    const [first, last] = [posts[0], posts.at(-1)];
    expect(first?.movement).toBeGreaterThan(0);
    expect((last?.movement ?? 0) / (first?.movement ?? 1)).toBeCloseTo(-1, 1);
  });

  // A plane frame of each side written by itself in another language, with sections of 0.93 of the walls and round corners.
  test("the anchors of 0005 close by 3.9424482 mm under 925 N in each cable (second computation by direct stiffness)", () => {
    const rows = framed("0005-steel-balcony").groups[0]?.flexibility ?? [];
    expect(rows).toHaveLength(10);
    expect(Math.max(...rows.map((row) => 925 * row.reduce((sum, one) => sum + one, 0)))).toBeCloseTo(3.9424482, 6);
  });

  test("on a fixed base the anchors close less than on a spring of 25 kN m per radian", () => {
    const soft = framed("rule-of-thumb").groups[0]?.flexibility[4]?.[4] ?? 0;
    const stiff = framed("rule-of-thumb", { "  existing: false": "  existing: false\n  base: { kind: fixed }" }).groups[0]
      ?.flexibility[4]?.[4];
    expect(stiff).toBeLessThan(soft);
  });

  test("a base that moved 1/4 in under 50 lbf at 36 in turns more than one that moved 3/16 in", () => {
    const closing = (movement: string): number =>
      framed("rule-of-thumb", {
        "  existing: false": `  existing: false\n  base: { kind: measured, pull: 50 lbf, height: 36 in, movement: ${movement} }`,
      }).groups[0]?.flexibility[4]?.[4] ?? 0;
    expect(closing("1/4 in")).toBeGreaterThan(closing("3/16 in"));
  });

  test("two runs that end on one side share a frame: a pull of one opens or closes the other", () => {
    const { groups } = framed("0003-long-boardwalk");
    expect(groups).toHaveLength(1);
    const count = groups[0]?.courses.length ?? 0;
    expect(Math.abs(groups[0]?.flexibility[0]?.[count] ?? 0)).toBeGreaterThan(0);
  });
});
