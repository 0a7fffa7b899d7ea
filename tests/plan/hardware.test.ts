// Do courses keep clear of hardware, within the rules and as evenly as they can, or say that they can't?
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { explain } from "../../src/explain/explain.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, jobOf, planOf } from "../support/example-jobs.ts";

const NAME = "rule-of-thumb";
const INCH = 25.4;

const withHardware = (...rows: readonly string[]): string =>
  changedText(NAME, { "  largest spacing: 6 ft": `  hardware:\n${rows.map((row) => `    - ${row}\n`).join("")}  largest spacing: 6 ft` });

/** Written again from the job's own figures: half of the widest thing at a bore of that post, and the clearance, in inches. */
const away = (postId: string): number => (postId === "P1" || postId === "P5" ? 1.25 / 2 : 0.25 / 2) + 0.25;

function expectClear(plan: Plan, from_in: number, to_in: number, postIds: readonly string[]): void {
  const spacings = [plan.opening.bottom, ...plan.courses.map(({ height }) => height), plan.opening.top];
  for (const [index, height] of spacings.slice(1).entries()) expect(height - (spacings[index] ?? 0)).toBeLessThanOrEqual(3 * INCH + 1e-6);
  for (const bore of plan.bores.filter(({ verticalId }) => postIds.includes(verticalId))) {
    const [low, high] = [from_in - away(bore.verticalId), to_in + away(bore.verticalId)];
    const height = bore.height / INCH;
    expect(height <= low + 1e-6 || height >= high - 1e-6, `${bore.mark} at ${height} in`).toBe(true);
    // Still a mark of the tape.
    expect(Math.abs(height * 16 - Math.round(height * 16))).toBeLessThan(1e-6);
  }
}

test("hardware that no course meets moves none", () => {
  const free = planOf(changedText(NAME, {}));
  const plan = planOf(withHardware("{ what: bolt, from: 9-1/2 in, to: 9-3/4 in, posts: [P3] }"));
  expect(plan.courses).toEqual(free.courses);
  expect(plan.checks.find(({ id }) => id === "hardware-P3")?.verdict).toBe("pass");
  expect(free.checks.some(({ id }) => id.startsWith("hardware"))).toBe(false);
});

describe("a bolt where the fifth course would be", () => {
  const plan = planOf(withHardware("{ what: bolt, from: 19-3/4 in, to: 20-1/4 in, posts: [P3] }"));

  test("moves courses on all posts, and takes one more where nine would stand too far apart", () => {
    expectClear(plan, 19.75, 20.25, ["P3"]);
    // Nine would need the fifth at 20-5/8 in or above, but five spacings of 3 in from 5-1/2 in reach 20-1/2 in only; so do those above.
    expect(plan.courses.length).toBe(10);
    expect(plan.courses.some(({ moved }) => moved !== 0)).toBe(true);
    expect(new Set(plan.bores.filter(({ course }) => course === 5).map(({ height }) => height)).size).toBe(1);
  });

  test("is explained as such", () => {
    const moved = plan.courses.find(({ moved: by }) => by !== 0);
    const answer = explain(plan, `courses.${moved?.number}.height`);
    expect(answer.kind === "trace" && answer.trace.recomputed).toBeCloseTo(moved?.height ?? 0, 9);
  });
});

test("an end post keeps its washers clear, which needs more room than a bore", () => {
  const [line, end] = ["P3", "P1"].map((post) => planOf(withHardware(`{ what: bolt, from: 20-1/2 in, to: 20-3/4 in, posts: [${post}] }`)));
  expect(line?.courses.every(({ moved }) => moved === 0)).toBe(true);
  expect(end?.courses.some(({ moved }) => moved !== 0)).toBe(true);
});

test("wherever hardware is, the courses keep clear of it and their spacing, or the plan says that they can't", () => {
  let refused = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 16 * 34 }),
      fc.integer({ min: 1, max: 16 * 3 }),
      fc.constantFrom("P1", "P2", "P5"),
      (low, size, post) => {
        const [from_in, to_in] = [low / 16, (low + size) / 16];
        const job = jobOf(withHardware(`{ what: a thing, from: ${from_in} in, to: ${to_in} in, posts: [${post}] }`));
        const { value, problems } = makePlan(job);
        if (value !== undefined) return expectClear(value, from_in, to_in, [post]);
        refused += 1;
        expect(problems.map(({ what }) => what)).toEqual([expect.stringContaining("leaves no height for a course")]);
        // Only what is wider than a spacing, or lies at an edge of the opening, can be refused.
        expect(to_in - from_in + 2 * away(post) > 3 - 1 / 8 || from_in < 9 || to_in > 31).toBe(true);
      },
    ),
    { numRuns: 12, seed: 5 },
  );
  expect(refused).toBeLessThan(12);
});

test("hardware on a post that is not there", () => {
  const { value, problems } = makePlan(jobOf(withHardware("{ what: bolt, from: 20 in, to: 21 in, posts: [P3, P9] }")));
  expect(value).toBeUndefined();
  expect(problems.map(({ path, what }) => ({ path: path.join("."), what }))).toEqual([
    { path: "posts.hardware.0.posts.1", what: "there is no post P9" },
  ]);
});

// An end post has a washer of 1-1/4 in on its back: half of it and 1/4 in of clearance are 7/8 in beyond each end of the hardware.
test("hardware that leaves no height is told with what it takes: 20 to 22 in on P1 takes 19-1/8 to 22-7/8 in", () => {
  const [problem] = makePlan(jobOf(withHardware("{ what: bracket, from: 20 in, to: 22 in, posts: [P1] }"))).problems;
  expect(problem?.what).toMatch(/^bracket on P1 leaves no height/);
  expect(problem?.why).toMatch(/^no bore has its middle between 19-1\/8" \(486 mm\) and 22-7\/8" \(581 mm\) there/);
  expect(problem?.fix).toContain("a smaller washer");
});
