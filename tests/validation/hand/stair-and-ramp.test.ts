// A stair of 7 in by 10-1/2 in and a ramp of 1 in 12, worked out by hand from their job files alone: right triangles, nothing else.
// tan = 2/3 and 1/12, so 1 / cos = sqrt(13) / 3 and sqrt(145) / 12.
import { describe, expect, test } from "vitest";
import { bevelOf, thickEdge } from "../../../src/plan/end-fitting.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { examplePlan } from "../../support/example-jobs.ts";

const IN = 25.4;
const [stair, ramp] = [examplePlan("0012-stair-from-landing"), examplePlan("0013-ramp-to-porch")];

function heightsOn(
  plan: Plan,
  postId: string,
  course: number,
): { readonly left: number; readonly right: number; readonly drilled: number } {
  const bore = plan.bores.find((one) => one.verticalId === postId && one.course === course);
  if (bore === undefined) throw new Error(`no bore in ${postId}`);
  const [left, right] = bore.entryFace === "left" ? [bore.entryHeight, bore.exitHeight] : [bore.exitHeight, bore.entryHeight];
  return { left, right, drilled: bore.drilledLength };
}

const cutOf = (plan: Plan, use: string): number => plan.cuts.find((piece) => piece.use.startsWith(use))?.length ?? Number.NaN;
const stationOf = (plan: Plan, id: string): number => plan.verticals.find((one) => one.id === id)?.station ?? Number.NaN;

describe("the stair from the landing, in inches", () => {
  const inches = (mm: number): number => mm / IN;
  const slant = Math.sqrt(13) / 3;

  // 7 treads of 10-1/2 in; posts of 5-1/2 in, 1/2 in from the edge of the landing and flush with the lowest nosing; the third between.
  test("posts stand 3-1/4, 37 and 70-3/4 in from the edge of the landing, the last one on the lowest tread", () => {
    expect(["P4", "P5", "P6"].map((id) => inches(stationOf(stair, id)))).toEqual([3.25, 37, 70.75].map((at) => expect.closeTo(at, 9)));
    expect(70.75 + 5.5 / 2).toBe(7 * 10.5);
    expect(70.75 - 5.5 / 2).toBeGreaterThan(6 * 10.5);
  });

  test("course 1, drilled at 8-3/8 in, is 1.833 in higher on the left face of a post and as much lower on the right one", () => {
    for (const id of ["P4", "P5", "P6"]) {
      const { left, right, drilled } = heightsOn(stair, id, 1);
      expect(inches(left)).toBeCloseTo(8.375 + 5.5 / 3, 9);
      expect(inches(right)).toBeCloseTo(8.375 - 5.5 / 3, 9);
      expect(inches(drilled)).toBeCloseTo(6.61, 3);
    }
    expect(inches(heightsOn(stair, "P3", 1).left)).toBeCloseTo(8.375, 9);
  });

  // Under a top at 38 in lies a rail of 3-1/2 in, 4.207 in plumb; over a gap of 1 in one of 3-1/2 in, as much.
  test("its opening reaches from 5.207 in to 33.793 in, its top to 38 in, plumb above the nosings", () => {
    const { bottom, top, guardHeight } = stair.rakes[0]?.opening ?? { bottom: 0, top: 0, guardHeight: 0 };
    expect([bottom, top, guardHeight].map(inches)).toEqual([1 + 3.5 * slant, 38 - 3.5 * slant, 38].map((at) => expect.closeTo(at, 9)));
    // IRC R312.1.2, exception 1: at least 34 in; as a handrail 34 to 38 in.
    expect(stair.checks.find(({ id }) => id === "rake-height-B")?.verdict).toBe("pass");
  });

  test("a square spacing is the plumb one times 0.832: 2-7/8 in plumb are 2.392 in", () => {
    const gap = stair.rakes[0]?.gaps.find(({ plumb }) => Math.abs(plumb - 2.875 * IN) < 1e-6);
    expect(inches(gap?.spacing ?? 0)).toBeCloseTo(2.39214, 4);
    expect(inches(gap?.clear ?? 0)).toBeCloseTo(2.39214 - 0.125, 4);
  });

  // A plumb cut moves the long point by 3-1/2 x 2/3 in. Bottom rails lie between faces 28-1/4 in apart, the top rail over 73-1/2 in.
  test("rails from long point to long point: 36.286 in at the bottom, 90.669 in at the top", () => {
    expect(inches(cutOf(stair, "bottom rail, both ends cut 33.7 deg"))).toBeCloseTo(28.25 * slant + 7 / 3, 9);
    expect(inches(cutOf(stair, "top rail, both ends cut 33.7 deg"))).toBeCloseTo(73.5 * slant + 7 / 3, 9);
    expect([28.25 * slant + 7 / 3, 73.5 * slant + 7 / 3]).toEqual([expect.closeTo(36.286, 3), expect.closeTo(90.669, 3)]);
  });

  test("posts on their long edge 20 + 33.793 + 1.833 in, spacers 28.587 + 1 in", () => {
    expect(inches(cutOf(stair, "post, top cut 33.7 deg"))).toBeCloseTo(20 + 38 - 3.5 * slant + 5.5 / 3, 9);
    expect(inches(cutOf(stair, "spacer, both ends cut 33.7 deg"))).toBeCloseTo(37 - 7 * slant + 1, 9);
  });

  // 3-1/2 in from the wall to P1; 72 in of level cable, 1 in by 1/3 in down between the posts, 73 in of level length down the stair.
  test("a cable is 72 + 1.054 + 87.737 in long between the faces, and 0.479 in more over its bevelled washer", () => {
    const [run] = stair.runs;
    expect(inches(run?.pathLength ?? 0)).toBeCloseTo(72 + Math.hypot(1, 1 / 3) + 73 * slant, 6);
    // 1/16 in at the thin edge, 1-1/4 x 2/3 in more at the other.
    expect(inches((run?.outsideLength ?? 0) - (run?.pathLength ?? 0))).toBeCloseTo(1 / 16 + (1.25 * 2) / 3 / 2, 9);
    // 2 in of thread less three turns of 1/28 in less the washer.
    expect(inches(run?.takeUp.threadAvailable ?? 0)).toBeCloseTo(2 - 3 / 28 - 0.479167, 5);
  });

  // 6.610 in, a guide block of 1-1/2 in and 2 in more come to 10.110 in: the next half inch.
  test("its bits are 10-1/2 in long", () => {
    for (const use of ["pass", "stud end"])
      expect(inches(stair.bits.find((bit) => bit.use === use)?.bitLength_min ?? 0)).toBeCloseTo(10.5, 9);
  });
});

describe("the ramp to the porch, in millimetres", () => {
  const slant = Math.sqrt(145) / 12;

  test("a bore climbs 50 / 12 mm through a post and is 50.173 mm long", () => {
    for (const id of ["P4", "P5", "P8"]) {
      const { left, right, drilled } = heightsOn(ramp, id, 1);
      expect([left, right]).toEqual([expect.closeTo(180 - 50 / 24, 9), expect.closeTo(180 + 50 / 24, 9)]);
      expect(drilled).toBeCloseTo(50.1733, 4);
    }
  });

  test("its opening reaches from 70 + 30.104 mm to 1030 - 50.173 mm", () => {
    const { bottom, top } = ramp.rakes[0]?.opening ?? { bottom: 0, top: 0 };
    expect([bottom, top]).toEqual([expect.closeTo(70 + 30 * slant, 9), expect.closeTo(1030 - 50 * slant, 9)]);
  });

  test("80 mm plumb are 79.724 mm square to the cables", () => {
    expect(ramp.rakes[0]?.gaps[1]?.spacing).toBeCloseTo((80 * 12) / Math.sqrt(145), 9);
  });

  // Level, 4.8 m with posts half an inch from each change of slope, in four bays of at most 1.25 m.
  test("a post is 120 + 979.827 + 2.083 mm on its long edge", () => {
    expect(cutOf(ramp, "post, top cut 4.8 deg")).toBeCloseTo(120 + 1030 - 50 * slant + 50 / 24, 9);
  });

  test("a cable ends on level posts: no bevelled washer, no thread taken", () => {
    const [run] = ramp.runs;
    expect(run?.outsideLength).toBe(run?.pathLength);
    expect(run?.takeUp.threadAvailable).toBeCloseTo(80 - 3, 9);
  });
});

// The seat of a nut is square to the cable. With d along the cable out of the post and n square to it, upwards, the rim of the seat lies
// at t d + R n and t d - R n; how far each is from the plumb face, measured along the cable, is its x over that of d.
describe("which edge of a bevelled washer is thick", () => {
  const edges = (outward: 1 | -1, rises: 1 | -1, slope: number) => {
    const d = { x: outward * Math.cos(slope), y: rises * Math.sin(slope) };
    const n = { x: -d.y * outward, y: d.x * outward };
    const [t, radius] = [20, 15];
    const along = (sign: 1 | -1): number => (t * d.x + sign * radius * n.x) / d.x;
    return { up: along(1), down: along(-1) };
  };

  test.each([
    ["upper end of a stair up to the right", "right", 1],
    ["lower end of a stair down to the right", "right", -1],
    ["upper end of a stair down to the right", "left", 1],
    ["lower end of a stair up to the right", "left", -1],
  ] as const)("at the %s, on the %s face", (_, face, rises) => {
    const slope = Math.atan(2 / 3);
    const { up, down } = edges(face === "right" ? 1 : -1, rises, slope);
    // Above level from left to right: a bore that rises out of the left face falls to the right.
    const ofBore = face === "right" ? rises * slope : 0 - rises * slope;
    expect(thickEdge(face, ofBore)).toBe(up > down ? "up" : "down");
    const { across, thin, thick } = bevelOf("stud", ofBore, stair.job);
    expect(thick - thin).toBeCloseTo((Math.abs(up - down) * across) / 30, 9);
  });

  test("down at the upper end, up at the lower one", () => {
    expect([thickEdge("right", 0.5), thickEdge("left", -0.5)]).toEqual(["down", "down"]);
    expect([thickEdge("right", -0.5), thickEdge("left", 0.5)]).toEqual(["up", "up"]);
  });

  test("as many are ordered as there are ends on the slope", () => {
    const line = stair.order.find(({ item }) => item.startsWith("bevelled washer"));
    expect(line).toMatchObject({ net: 9, size: 'for 33.7 deg: 1-1/4" across, 1/16" to 29/32" thick' });
    expect(ramp.order.some(({ item }) => item.startsWith("bevelled washer"))).toBe(false);
  });
});
