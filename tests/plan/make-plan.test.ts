import { describe, expect, test } from "vitest";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Bay, Vertical } from "../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, exampleText, jobOf, planOf } from "../support/example-jobs.ts";

const IN = 25.4;
const FT = 304.8;

describe("makePlan on the rules of thumb (common practice, no source)", () => {
  const plan = examplePlan("rule-of-thumb");

  test("29 in of clear opening at 3 in at most takes 9 cables, 10 gaps of 2.9 in", () => {
    expect(plan.courses).toHaveLength(9);
    expect(plan.gaps).toHaveLength(10);
    const exact = plan.courses.map((course) => course.height_exact);
    exact.slice(1).forEach((height, index) => {
      expect(height - (exact[index] ?? 0)).toBeCloseTo(2.9 * IN, 9);
    });
  });

  test("drilled heights are whole sixteenths of an inch and every gap is still at most 3 in", () => {
    for (const course of plan.courses) {
      const sixteenths = (course.height / IN) * 16;
      expect(Math.abs(sixteenths - Math.round(sixteenths))).toBeLessThan(1e-9);
      expect(Math.abs(course.height - course.height_exact)).toBeLessThanOrEqual(IN / 32 + 1e-9);
    }
    for (const gap of plan.gaps) expect(gap.spacing).toBeLessThanOrEqual(3 * IN + 1e-6);
    expect(plan.gaps.reduce((sum, gap) => sum + gap.spacing, 0)).toBeCloseTo(29 * IN, 6);
  });

  test("23 ft outside to outside takes a 25 ft ready length", () => {
    expect(plan.runs).toHaveLength(1);
    expect(plan.runs[0]?.outsideLength).toBeCloseTo(23 * FT, 6);
    expect(plan.runs[0]?.orderLength).toBeCloseTo(25 * FT, 6);
  });

  test("25 ft outside to outside takes the next step, 30 ft, not the 25 ft itself", () => {
    const longer = planOf(changedText("rule-of-thumb", { "length: 23 ft ": "length: 25 ft " }));
    expect(longer.runs[0]?.orderLength).toBeCloseTo(30 * FT, 6);
  });

  test("posts stand at most 6 ft apart and no cable is free over more than 3 ft", () => {
    const posts = plan.verticals.filter((vertical) => vertical.kind === "post").map((post) => post.station);
    expect(posts[0]).toBeCloseTo(1.75 * IN, 9);
    expect(posts.at(-1)).toBeCloseTo(23 * FT - 1.75 * IN, 9);
    posts.slice(1).forEach((station, index) => {
      expect(station - (posts[index] ?? 0)).toBeLessThanOrEqual(6 * FT + 1e-6);
    });
    for (const bay of plan.bays) expect(bay.free).toBeLessThanOrEqual(3 * FT + 1e-6);
  });

  test("the bores of 1/8 in cable: 5/16 in at the stud, 1/4 in with a 3/8 in counterbore at the grip, 1/4 in to pass", () => {
    const size = (kind: string) => new Set(plan.bores.filter((bore) => bore.kind === kind).map((bore) => bore.diameter / IN));
    expect(size("stud end")).toEqual(new Set([5 / 16]));
    expect(size("grip end")).toEqual(new Set([1 / 4]));
    expect(size("pass")).toEqual(new Set([1 / 4]));
    const sunk = plan.bores.filter((bore) => bore.counterbore !== null);
    expect(sunk).toHaveLength(9);
    expect(sunk[0]?.counterbore?.diameter).toBeCloseTo((3 / 8) * IN, 9);
  });
});

describe("makePlan on every example", () => {
  test.each(exampleNames)("%s: each course of each run has one bore in each of its members", (name) => {
    const plan = examplePlan(name);
    const marks = plan.bores.map((bore) => bore.mark);
    expect(new Set(marks).size).toBe(marks.length);
    for (const run of plan.runs) {
      const members = new Set(plan.bays.filter((bay) => run.bayIds.includes(bay.id)).flatMap((bay) => [bay.leftId, bay.rightId]));
      const bores = plan.bores.filter((bore) => bore.runId === run.id);
      expect(bores).toHaveLength(members.size * plan.courses.length);
    }
  });

  test.each(exampleNames)("%s: the spans and members of a run add up to its outside length", (name) => {
    const plan = examplePlan(name);
    for (const run of plan.runs) {
      const bays = plan.bays.filter((bay) => run.bayIds.includes(bay.id));
      const ids = [...new Set(bays.flatMap((bay) => [bay.leftId, bay.rightId]))];
      // A cable that ends at an eye or an anchor is not in that post or pier.
      const eyes = [run.left, run.right].flatMap(({ kind, postId }) => (kind === "stud" || kind === "grip" ? [] : [postId]));
      const members = plan.verticals.filter(({ id }) => ids.includes(id) && !eyes.includes(id));
      // On the mitre half the diagonal of a square post, square through one behind which two runs end; in a sleeve the wood alone holds the cable.
      const through = ({ along, core, slope, corner }: Vertical): number =>
        corner?.faces === "adjacent" && !corner.isSetOff ? along / Math.SQRT2 : (core?.along ?? along) / Math.cos(slope);
      const solid = members.reduce((sum, member) => sum + through(member), 0);
      // A bay beside a post that leans along its side says the longest of its cables; all posts and bays together are as long as ever.
      const between = ({ leftId, rightId }: Bay): number => {
        const [left, right] = [leftId, rightId].map((id) => plan.verticals.find((one) => one.id === id));
        return left === undefined || right === undefined ? Number.NaN : right.station - right.along / 2 - (left.station + left.along / 2);
      };
      const free = bays.reduce((sum, bay) => sum + (bay.longestCourse === undefined ? bay.free : between(bay)), 0);
      // Bores set off sideways make the first or last span a hair longer than its bay.
      const seats = run.left.seat + run.right.seat;
      expect(run.outsideLength - seats - solid - free).toBeGreaterThanOrEqual(-1e-6);
      expect(run.outsideLength - seats - solid - free).toBeLessThan(1);
    }
  });

  test.each(exampleNames)(
    "%s: every span has at least the tension that the criterion asks of it, no reading exceeds the working limit",
    (name) => {
      const plan = examplePlan(name);
      for (const run of plan.runs) for (const span of run.spans) expect(span.tension).toBeGreaterThanOrEqual(span.required * (1 - 1e-9));
      for (const set of plan.tightening) {
        for (const step of set.steps) expect(step.reading_high).toBeLessThanOrEqual(plan.target.workingLimit + 1e-9);
      }
    },
  );

  test.each(exampleNames)("%s: the plan is plain data and comes out the same twice", (name) => {
    const once = JSON.stringify(examplePlan(name));
    expect(JSON.stringify(examplePlan(name))).toBe(once);
    expect(JSON.parse(once)).toEqual(examplePlan(name));
  });
});

describe("makePlan on runs", () => {
  test("a guard of 78 ft 6 in and 27 ft 3 in is cut into two runs within 70 ft and 40 ft, on two posts", () => {
    const plan = examplePlan("0003-long-boardwalk");
    expect(plan.runs).toHaveLength(2);
    for (const run of plan.runs) {
      expect(run.outsideLength).toBeLessThanOrEqual((run.bends.length > 0 ? 40 : 70) * FT + 1e-6);
    }
    expect(plan.verticals.filter((vertical) => vertical.role === "pair")).toHaveLength(
      plan.runs.some((run) => run.left.postId === run.right.postId) ? 0 : 2 * plan.bays.filter((bay) => bay.kind === "pair gap").length,
    );
    expect(plan.bays.filter((bay) => bay.kind === "pair gap")).toHaveLength(1);
  });

  test("on posts that stand already two runs end on one post, their bores 2 x the offset apart", () => {
    const plan = examplePlan("0006-porch-existing-posts");
    expect(plan.runs.length).toBeGreaterThan(1);
    const shared = plan.runs[0]?.right.postId ?? "";
    expect(plan.runs[1]?.left.postId).toBe(shared);
    const offsets = plan.bores.filter((bore) => bore.verticalId === shared && bore.course === 1).map((bore) => bore.offset);
    expect(offsets).toHaveLength(2);
    expect((offsets[0] ?? 0) + (offsets[1] ?? 0)).toBeCloseTo(0, 9);
    expect(Math.abs(offsets[0] ?? 0)).toBeGreaterThan(0);
  });

  test("a square corner of two posts turns the cable 45 degrees at each", () => {
    const plan = examplePlan("two-corners-4x4");
    const angles = plan.runs.flatMap((run) => run.bends.map((bend) => (bend.angle * 180) / Math.PI));
    expect(angles).toHaveLength(4);
    for (const angle of angles) expect(angle).toBeCloseTo(45, 9);
  });

  test("runs of at most 5 ft between posts 5 ft 8 in apart are refused: there is no post to cut at", () => {
    const text = changedText("rule-of-thumb", { "tightening:\n": "limits:\n  longest straight run: 5 ft\n\ntightening:\n" });
    const { value, problems } = makePlan(jobOf(text));
    expect(value).toBeUndefined();
    expect(problems.map((problem) => problem.what).join()).toContain("cannot be cut into runs");
  });
});

describe("makePlan in mirror", () => {
  test("a guard mirrored left to right has the same lengths and mirrored posts", () => {
    const there = planOf(changedText("two-corners-4x4", { "length: 9 ft 8 in": "length: 11 ft 2 in" }));
    const back = planOf(
      changedText("two-corners-4x4", {
        "length: 9 ft 8 in": "length: 9 ft 7-1/2 in",
        "    - length: 9 ft 7-1/2 in\n\nposts": "    - length: 11 ft 2 in\n\nposts",
      }),
    );
    expect(back.runs[0]?.pathLength).toBeCloseTo(there.runs[0]?.pathLength ?? 0, 6);
    const spans = (plan: typeof there) => plan.bays.map((bay) => bay.free);
    const mirrored = [...spans(back)].reverse();
    // Stations are rounded from the left, so a mirrored bay may differ by one step of the tape.
    spans(there).forEach((free, index) => {
      expect(Math.abs(free - (mirrored[index] ?? 0))).toBeLessThanOrEqual(IN / 16 + 1e-6);
    });
  });
});

test("the text of the examples says that they are invented", () => {
  for (const name of exampleNames) {
    expect(exampleText(name)).toContain("EXAMPLE");
    expect(jobOf(exampleText(name)).identity.example).toBe(true);
  }
});
