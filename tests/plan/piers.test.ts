// Piers at the ends of a guard: where the cables begin, what the frame hands to the pier, and whether the anchors hold as they are rated.
import { describe, expect, test } from "vitest";
import { momentWithoutRails } from "../../src/plan/pier.ts";
import { changedText, examplePlan, planOf } from "../support/example-jobs.ts";
import { checkOf, endsOf, INCH, LBF } from "../support/in-plan.ts";
import { disagreeing, traceOf } from "../support/traces.ts";

const NAME = "0016-brick-pier";
const plan = examplePlan(NAME);

describe("the pier of 0016", () => {
  test("holds, and the nut is at the other end", () => {
    expect(endsOf(plan)).toEqual([["PR1 anchor false", "P5 stud true"]]);
  });

  test("is where the cable begins: 17 ft 4 in from its face to the outer face of the end post", () => {
    expect(plan.runs[0]?.pathLength).toBeCloseTo(208 * INCH, 6);
    const pier = plan.verticals[0];
    expect([pier?.id, pier?.kind, pier?.station]).toEqual(["PR1", "pier", -10 * INCH]);
  });

  test("stands in place of an end post: five posts, spread as if one were flush in the pier", () => {
    // Flush posts would stand at -2-3/4 in and 205-1/4 in: five bays of 41.6 in are at most 48 in, so P1 is at 38.85 in, nearest 1/16 in.
    const posts = plan.verticals.filter(({ kind }) => kind === "post");
    expect(posts).toHaveLength(5);
    expect(posts[0]?.station).toBeCloseTo(38.875 * INCH, 6);
    // To the face of P1 at 36-1/8 in with one spacer of 1-1/2 in in the middle: two spans of about 17-5/16 in, within 24 in.
    const [first, second] = plan.bays;
    expect([first?.leftId, second?.rightId]).toEqual(["PR1", "P1"]);
    expect((first?.free ?? 0) + (second?.free ?? 0)).toBeCloseTo((38.875 - 2.75 - 1.5) * INCH, 6);
  });

  test("has blind holes of the anchor's size from its right face, in its middle", () => {
    const own = plan.bores.filter(({ verticalId }) => verticalId === "PR1");
    expect(own).toHaveLength(plan.courses.length);
    for (const { kind, through, entryFace, offset, diameter, drilledLength } of own) {
      expect([kind, through, entryFace, offset]).toEqual(["anchor end", false, "right", 0]);
      expect([diameter / INCH, drilledLength / INCH]).toEqual([7 / 16, 5].map((inch) => expect.closeTo(inch, 9)));
    }
  });

  test("is pulled by every cable, and through the rails pushed by as much less what the posts take", () => {
    const { target = 0, high = 0 } = plan.runs[0]?.tension ?? {};
    const pull = plan.pulls.find(({ postId }) => postId === "PR1");
    expect(pull?.pull_target).toBeCloseTo(plan.courses.length * target, 6);
    expect(pull?.pull_high ?? 0).toBeGreaterThan(plan.courses.length * high);
    // The cables pull the guard together: the shears of all feet, that of the pier among them, come to nothing.
    const shears = plan.frame.sides.flatMap(({ posts }) => posts.map(({ baseShear }) => baseShear));
    expect(Math.abs(shears.reduce((sum, shear) => sum + shear, 0))).toBeLessThan(1e-3 * Math.max(...shears.map(Math.abs)));
    expect(Math.abs(plan.frame.sides[0]?.posts[0]?.movement ?? 1)).toBeLessThan(0.001);
  });

  test("has the whole moment of the cables to stand where no rail bears on it: their pull times the mean of their heights", () => {
    const pull = plan.pulls.find(({ postId }) => postId === "PR1");
    const mean = plan.courses.reduce((sum, { height }) => sum + height, 0) / plan.courses.length;
    expect(momentWithoutRails(plan.pulls, "PR1")).toBeCloseTo((pull?.pull_high ?? 0) * mean, 0);
  });

  test("needs anchors rated for the hardest day and for the infill load, with the strand's own demand", () => {
    const rated = checkOf(plan, "anchor-rated-R1-PR1");
    expect((rated.limit?.value ?? 0) / LBF).toBeCloseTo(700, 6);
    expect(rated.demand?.value).toBe(checkOf(plan, "season-R1").demand?.value);
    expect(checkOf(plan, "anchor-infill-R1-PR1").demand?.value).toBe(checkOf(plan, "infill-R1").demand?.value);
  });

  test("has its anchors far enough from its edges: 20/2 = 10 in to its sides, 46 - 33-3/4 = 12-1/4 in to its top", () => {
    const { demand, limit, verdict } = checkOf(plan, "anchor-edge-R1-PR1");
    expect([(demand?.value ?? 0) / INCH, (limit?.value ?? 0) / INCH, verdict]).toEqual([
      expect.closeTo(10, 9),
      expect.closeTo(4, 9),
      "pass",
    ]);
    const low = planOf(changedText(NAME, { "height: 46 in": "height: 37 in" }));
    expect((checkOf(low, "anchor-edge-R1-PR1").demand?.value ?? 0) / INCH).toBeCloseTo(37 - 33.75, 6);
    expect(checkOf(low, "anchor-edge-R1-PR1").verdict).toBe("fail");
  });

  test("has anchors as far apart as its courses", () => {
    // 2-3/4 in is the least spacing of the courses on sheet Z-201.
    const { demand, verdict } = checkOf(plan, "anchor-spacing-R1-PR1");
    expect([(demand?.value ?? 0) / INCH, verdict]).toEqual([expect.closeTo(2.75, 9), "pass"]);
    const wide = planOf(changedText(NAME, { "least spacing: 2-1/2 in": "least spacing: 3 in" }));
    expect(checkOf(wide, "anchor-spacing-R1-PR1").verdict).toBe("fail");
  });

  test("itself is for a licensed engineer to accept", () => {
    expect(checkOf(plan, "pier-stands-R1-PR1").verdict).toBe("ask");
  });
});

test("an anchor that is too weak fails, and bounds the window of tensions", () => {
  const weak = planOf(changedText(NAME, { "rated: 700 lbf": "rated: 200 lbf" }));
  expect(checkOf(weak, "anchor-rated-R1-PR1").verdict).toBe("fail");
  const bound = weak.frame.windows[0]?.allows.find(({ kind }) => kind === "face")?.tension ?? Number.NaN;
  expect(bound).toBeLessThan(weak.runs[0]?.tension.target ?? 0);
});

test("without a rating and distances there is nothing to compare: each is asked with what it has to be", () => {
  const open = planOf(
    changedText(NAME, {
      "      rated: 700 lbf\n": "",
      "      rated by: letter of an engineer, 2026-10-01, for ten anchors in this pier (invented)\n": "",
      "      least edge: 4 in\n": "",
      "      least spacing: 2-1/2 in\n": "",
    }),
  );
  for (const name of ["rating", "edge", "spacing"]) {
    const { verdict, demand, limit } = checkOf(open, `anchor-${name}-R1-PR1`);
    expect([verdict, limit]).toEqual(["ask", null]);
    expect(demand?.value ?? 0).toBeGreaterThan(0);
  }
  expect(checkOf(open, "anchor-rating-R1-PR1").demand?.value).toBe(checkOf(open, "infill-R1").demand?.value);
  expect(disagreeing(["rating", "edge", "spacing"].map((name) => traceOf(open, `checks.anchor-${name}-R1-PR1.demand.value`)))).toEqual([]);
});

test("between two piers two runs meet, and each is pulled where they meet", () => {
  const end =
    "kind: pier\n    of: concrete\n    along: 16 in\n    across: 16 in\n    height: 48 in\n    anchor: { kind: expansion, hole: 12 mm, depth: 90 mm, stand-out: 30 mm, flange: 25 mm }";
  const both = planOf(changedText(NAME, { "  end: { kind: post, access: drill }": `  end:\n    ${end}` }));
  const ends = endsOf(both);
  expect(ends[0]?.[0]).toBe("PR1 anchor false");
  expect(ends[1]?.[1]).toBe("PR2 anchor false");
  const paths = [...both.verticals.map(({ id }) => `verticals.${id}.station`), ...both.runs.map(({ id }) => `runs.${id}.pathLength`)];
  expect(disagreeing(paths.map((path) => traceOf(both, path)))).toEqual([]);
  expect(ends.map((own) => own.filter((one) => one.endsWith("stud true")).length)).toEqual([1, 1]);
});
