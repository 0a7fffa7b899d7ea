// Two runs that end on the two faces of one corner post: where they end, what is left between their holes, and how both pull the post.
import { describe, expect, test } from "vitest";
import { sectionAt } from "../../src/plan/as-found.ts";
import { betweenHoles } from "../../src/plan/check-face.ts";
import { loadsOf } from "../../src/plan/frame-check-loads.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { changedText, examplePlan, jobOf, planOf, withSides } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";
import { checkOf, endsOf, INCH } from "../support/in-plan.ts";

const NAME = "0018-corner-post-between-runs";
const plan = examplePlan(NAME);

describe("the runs of 0018", () => {
  test("end on two faces of P5, and pull at their other ends", () => {
    expect(endsOf(plan)).toEqual([
      ["P1 stud true", "P5 face false"],
      ["P5 face false", "P10 stud true"],
    ]);
    expect(plan.runs.map(({ sideIds }) => sideIds)).toEqual([["A"], ["B", "C"]]);
  });

  test("are as long as by hand: to the face of P5, along the mitre of P8", () => {
    // P1 at 6-1/4 in, its outer face at 3-1/2 in; P5 at 194 in, its left face 2-3/4 in before.
    expect(plan.runs[0]?.pathLength).toBeCloseTo((194 - 2.75 - 3.5) * INCH, 6);
    // B from 2-3/4 in to 141 - 2-3/4 in; the mitre, half the diagonal of 5-1/2 in; C from 2-3/4 in to the outer face of P10 at 94 + 2-3/4 in.
    expect(plan.runs[1]?.pathLength).toBeCloseTo((138.25 - 2.75 + 5.5 / Math.SQRT2 + 96.75 - 2.75) * INCH, 4);
  });

  test("have a blind hole each at every course, from the middle of the face that looks to their side", () => {
    const own = plan.bores.filter(({ verticalId }) => verticalId === "P5");
    expect(own.length).toBe(2 * plan.courses.length);
    for (const { runId, entryFace, through, offset, skew, drilledLength } of own) {
      expect([entryFace, through, offset, skew]).toEqual([runId === "R1" ? "left" : "right", false, 0, 0]);
      expect(drilledLength).toBeCloseTo(2.25 * INCH, 9);
    }
  });

  test("no bore that passes a corner begins or ends on P5, and P8 is passed", () => {
    expect(plan.verticals.flatMap(({ id, role, corner }) => (corner === undefined ? [] : [[id, role, corner.isPassed]]))).toEqual([
      ["P5", "corner", false],
      ["P8", "corner", true],
    ]);
    expect(plan.runs.flatMap(({ bends }) => bends.map(({ postId }) => postId))).toEqual(["P8", "P8"]);
  });
});

/** Nearest two points of two rectangles square to each other, one from each of two neighbouring faces, tried one by one. */
function nearest(width: number, depth: number, diameter: number): number {
  const steps = 60;
  const across = Array.from({ length: steps + 1 }, (_, index) => -diameter / 2 + (index * diameter) / steps);
  let least = Number.POSITIVE_INFINITY;
  // The tips of both holes: one comes from the left, the other from below.
  for (const a of across) {
    for (const b of across) least = Math.min(least, Math.hypot(-(width / 2 - depth) - b, a + (width / 2 - depth)));
  }
  return least;
}

describe("what is left between the two holes", () => {
  test("by hand: sqrt 2 x (2-3/4 - 2-1/4 - 5/32) in = 0.486 in, by the screw and not by its narrower pilot hole", () => {
    const { demand, limit, verdict } = checkOf(plan, "face-between-P5");
    expect((demand?.value ?? 0) / INCH).toBeCloseTo(Math.SQRT2 * 0.34375, 9);
    expect((limit?.value ?? 0) / INCH).toBeCloseTo(0.25, 9);
    expect(verdict).toBe("pass");
  });

  test.each([
    [100, 30, 8],
    [140, 57, 5],
    [90, 40, 6],
  ])("a post of %d mm, holes %d mm deep and %d mm wide: as found by trying all points", (width, depth, diameter) => {
    expect(betweenHoles({ width, depth, diameter })).toBeCloseTo(nearest(width, depth, diameter), 9);
  });

  test("screws that reach further are refused: sqrt 2 x (2-3/4 - 2-1/2 - 5/32) in is less than 1/4 in; behind each is room", () => {
    const longer = planOf(changedText(NAME, { "depth: 2-1/4 in ": "depth: 2-1/2 in " }));
    expect(checkOf(longer, "face-between-P5").verdict).toBe("fail");
    // To the far face, not to the other hole: that lies square to it.
    expect((checkOf(longer, "face-behind-R1-P5").demand?.value ?? 0) / INCH).toBeCloseTo(3, 9);
    expect(longer.verdict).toBe("fail");
  });
});

const START = { "start: { kind: wall, gap: 3-1/2 in, access: hand }": "start: { kind: post, access: drill }" };
const SIDE_A = "[2-3/4 in, 4 ft 5 in, 8 ft 4 in, 12 ft 3 in, 16 ft 2 in]";

/** The example with other sides. */
const ofSides = (sides: string, changes: Readonly<Record<string, string>> = START): string => withSides(changedText(NAME, changes), sides);

/** An L of two like sides whose runs end on its corner post, all else alike. */
const ell = (turn: string): string =>
  ofSides(`    - length: 16 ft 2 in
      turn: ${turn}
      corner: one post, ends
      stations: ${SIDE_A}
    - length: 16 ft 2 in
      stations: [0 in, 3 ft 11 in, 7 ft 10 in, 11 ft 9 in, 15 ft 11-1/4 in]
`);

const near = (value: number | undefined, other: number | undefined): void =>
  expect(Math.abs((value ?? Number.NaN) / (other ?? Number.NaN) - 1)).toBeLessThan(1e-6);

describe("the frame of a corner post on which two runs end", () => {
  test("like sides bend and shear it alike along both, at every height", () => {
    const { plan: corner, groups } = framesOf(jobOf(ell("right 90 deg")));
    const [post, ...others] = loadsOf({ ...corner, groups, job: corner.job }).posts.filter(({ post: { id } }) => id === "P5");
    expect(others).toEqual([]);
    const most = Math.max(...(post?.places ?? []).map(({ moment }) => moment.x));
    expect(most).toBeGreaterThan(0);
    for (const { moment, shear } of post?.places ?? []) {
      expect(Math.abs(moment.x - moment.y)).toBeLessThan(1e-6 * most);
      near(shear.x, shear.y);
    }
    // Both blind holes weaken it alike.
    near(post?.net.x.modulus_mm3, post?.net.y.modulus_mm3);
    expect(post?.net.area_mm2).toBeLessThan(post?.whole.area_mm2 ?? 0);
  });

  test("inside and outside corners strain it alike", () => {
    const ratios = (text: string) => planOf(text).frame.checks.map(({ name, ratio }) => [name, ratio === null ? null : ratio.toFixed(9)]);
    expect(ratios(ell("left 90 deg"))).toEqual(ratios(ell("right 90 deg")));
  });

  test("each side closes as a straight guard of the same posts does; at a right angle no cable of one side feels those of the other", () => {
    const straight = ofSides(`    - length: 16 ft 4-3/4 in\n      stations: ${SIDE_A}\n`, {
      ...START,
      "end: { kind: post, access: drill }": "end: { kind: post, access: none }",
    });
    const [one] = framesOf(jobOf(straight)).groups;
    const [group, ...others] = framesOf(jobOf(ell("right 90 deg"))).groups;
    expect(others).toEqual([]);
    const count = group?.courses.length ?? 0;
    group?.flexibility.forEach((row, i) => {
      row.forEach((value, j) => {
        if (i < count !== j < count) expect(value).toBe(0);
        else near(value, one?.flexibility[i % count]?.[j % count]);
      });
    });
  });
});

test("the two pulls together are the diagonal of their square corner, by vectors, and towards the deck in a turn to the right", () => {
  const [both, ...others] = plan.cornerPulls;
  expect(others).toEqual([]);
  for (const field of ["pull_target", "pull_high"] as const) {
    const [a = 0, b = 0] = plan.pulls.filter(({ postId }) => postId === "P5").map((pull) => pull[field]);
    // Side A runs along x: its cables pull to -x; side B runs along -y.
    expect(both?.[field]).toBeCloseTo(Math.hypot(-a, -b), 6);
    expect(Math.min(a, b)).toBeGreaterThan(0);
  }
  expect(both?.runIds).toEqual(["R1", "R2"]);
});

describe("one post at a corner that stands already", () => {
  test("is one mark on both its sides: the third post of side B is P7, as it is found", () => {
    const job = jobOf(changedText(NAME, { "posts:": "posts:\n  as found: [{ post: P7, size: 4x4 }]" }));
    expect([1, 2, 3].map((nth) => sectionAt(job, 1, nth).name)).toEqual(["6x6", "4x4", "6x6"]);
    expect(sectionAt(job, 2, 1).name).toBe("6x6");
    expect(plan.verticals.find(({ id }) => id === "P7")).toMatchObject({ sideId: "B", station: 94 * INCH });
  });

  test("has to stand where its sides meet, within a step of the tape", () => {
    const off = (station: string) => makePlan(jobOf(changedText(NAME, { "12 ft 3 in, 16 ft 2 in]": `12 ft 3 in, ${station}]` })));
    expect(off("16 ft 1-15/16 in").value).toBeDefined();
    const { value, problems } = off("16 ft 1-3/4 in");
    expect(value).toBeUndefined();
    expect(problems.map(({ path }) => path.join(" "))).toContain("guard sides 0 stations 4");
  });
});

test("a corner some degrees off a right angle turns its post half of it from square to both sides", () => {
  const text = ell("right 87 deg")
    .replaceAll(/ {6}stations: .*\n/g, "")
    .replace("existing: true", "existing: false\n  below datum: 10 in");
  const corner = planOf(text).verticals.find(({ role }) => role === "corner")?.corner;
  expect(corner?.twist).toBeCloseTo((-1.5 * Math.PI) / 180, 9);
  expect(corner?.faces).toBe("adjacent");
});
