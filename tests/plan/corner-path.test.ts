import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { overlap, type Quad } from "../../src/drawing/box.ts";
import { cornerPath, cornerRoom, cornerSetback, cornerSlot, touchingSetback } from "../../src/plan/corner-path.ts";
import { changedText, examplePlan, exampleText, jobOf, planOf } from "../support/example-jobs.ts";

const deg = (degrees: number): number => (degrees * Math.PI) / 180;

describe("cornerPath", () => {
  test("at a square corner with both faces 57.15 mm from the corner point the cable runs 80.82 mm and turns 45 degrees twice", () => {
    const { chord, angle_left, angle_right } = cornerPath({ setback_left: 57.15, setback_right: 57.15, turn: deg(90) });
    expect(chord).toBeCloseTo(57.15 * Math.SQRT2, 9);
    expect(angle_left).toBeCloseTo(deg(45), 12);
    expect(angle_right).toBeCloseTo(deg(45), 12);
  });

  test("the two halves always add up to the turn, and unequal setbacks turn more where the face is nearer", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 5, max: 300, noNaN: true }),
        fc.double({ min: 3, max: 134, noNaN: true }),
        (a, b, turn) => {
          const path = cornerPath({ setback_left: a, setback_right: b, turn: deg(turn) });
          expect(path.angle_left + path.angle_right).toBeCloseTo(deg(turn), 9);
          expect(path.chord).toBeLessThanOrEqual(a + b + 1e-9);
          if (a < b * 0.999) expect(path.angle_left).toBeGreaterThan(path.angle_right);
        },
      ),
    );
  });
});

describe("cornerRoom", () => {
  test("posts 5-1/2 in wide that stand 2-1/4 in back from a square corner reach 1/2 in into each other", () => {
    const room = cornerRoom({ setback_left: 57.15, setback_right: 57.15, turn: deg(90), along: 88.9, across: 139.7 });
    expect(room / 25.4).toBeCloseTo(-0.5, 9);
  });

  test("it is below 0 just where the two rectangles overlap, as the drawings find it with the corners of both", () => {
    /** The post behind a corner point at the origin, its side leaving at `heading`; `from` is the end of the post that is nearer. */
    const post = (from: number, to: number, half: number, heading: number): Quad => {
      const at = (x: number, y: number) => ({
        x: x * Math.cos(heading) - y * Math.sin(heading),
        y: x * Math.sin(heading) + y * Math.cos(heading),
      });
      return [at(from, -half), at(to, -half), at(to, half), at(from, half)];
    };
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(mm(-60, 150), mm(-60, 150), mm(-134, 134), mm(40, 140), mm(40, 140), (a, b, degrees, along, across) => {
        const turn = deg(degrees);
        const room = cornerRoom({ setback_left: a, setback_right: b, turn, along, across });
        fc.pre(Math.abs(room) > 0.05);
        const [left, right] = [post(-a, -a - along, across / 2, 0), post(b, b + along, across / 2, -turn)];
        expect(overlap(left, right)).toBe(room < 0);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("cornerSlot", () => {
  test("4x4 posts 2-1/4 in from a square corner leave 0.71 in, by their corners 1/2 in apart both ways", () => {
    const slot = cornerSlot({ setback_left: 57.15, setback_right: 57.15, turn: deg(90), across: 88.9 });
    expect(slot / 25.4).toBeCloseTo(Math.hypot(0.5, 0.5), 9);
  });

  test("5-1/2 in wide posts set back 3-1/4 in at a turn of 30 degrees leave a slot of 4.86 in: more than a 4 in sphere", () => {
    const slot = cornerSlot({ setback_left: 82.55, setback_right: 82.55, turn: deg(30), across: 139.7 });
    expect(slot / 25.4).toBeCloseTo(4.855, 3);
  });

  test("a turn to the left leaves the same slot as one to the right", () => {
    const options = { setback_left: 70, setback_right: 40, across: 89 };
    expect(cornerSlot({ ...options, turn: deg(-50) })).toBeCloseTo(cornerSlot({ ...options, turn: deg(50) }), 9);
  });
});

describe("cornerSetback", () => {
  const job = jobOf(exampleText("0003-long-boardwalk"));

  test("without a setback in the job the posts stand 1/2 in beyond where they would touch, so the slot stays under an inch", () => {
    for (const turn of [deg(10), deg(30), deg(-60), deg(90), deg(120)]) {
      const setback = cornerSetback(turn, job);
      expect(setback - touchingSetback(turn, job)).toBeCloseTo(12.7, 9);
      expect(cornerSlot({ setback_left: setback, setback_right: setback, turn, across: job.posts.section.across })).toBeLessThanOrEqual(
        25.4 + 1e-9,
      );
    }
  });

  test("a setback of 3-1/4 in at the 30 degree corner of the boardwalk fails the check of the slot", () => {
    const plan = planOf(changedText("0003-long-boardwalk", { "  below datum: 14 in": "  below datum: 14 in\n  corner setback: 3-1/4 in" }));
    expect(plan.checks.find((check) => check.id === "corner-slot-A")?.verdict).toBe("fail");
    expect(plan.verdict).toBe("fail");
    expect(examplePlan("0003-long-boardwalk").checks.find((check) => check.id === "corner-slot-A")?.verdict).toBe("pass");
  });
});
