// What the cables of a guard that slopes do to its posts: lift of feet, bends that are small, loads per length of rail.
import { describe, expect, test } from "vitest";
import { traceAll } from "../../src/explain/explain.ts";
import { LIFT } from "../../src/plan/frame-check-base.ts";
import { loadsOf } from "../../src/plan/frame-check-loads.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";
import { disagreeing } from "../support/traces.ts";

const [stair, ramp] = [examplePlan("0012-stair-from-landing"), examplePlan("0013-ramp-to-porch")];

const groupsOf = (plan: Plan) => framesOf(plan.job).groups;
const postsOf = (plan: Plan) => plan.frame.sides.flatMap(({ posts }) => posts);

describe.each([
  ["stair", stair],
  ["ramp", ramp],
])("the feet of the %s", (_, plan) => {
  // The cables pull at the guard alone: whatever lifts some feet presses others down by as much.
  test("are lifted and pressed by forces whose sum is nothing", () => {
    const thrusts = postsOf(plan).map(({ baseThrust }) => baseThrust);
    expect(thrusts.reduce((sum, thrust) => sum + thrust, 0)).toBeCloseTo(0, 6);
    expect(Math.max(...thrusts)).toBeGreaterThan(0);
  });

  test("are lifted in the demands of their bases by as much as the plan says of the foot that is lifted most", () => {
    const parts = plan.frame.checks.flatMap((check) => check.parts.filter(({ name }) => name.startsWith(LIFT)));
    for (const { name, value } of parts) {
      const foot = postsOf(plan).find(({ postId }) => name === `${LIFT}, at ${postId}`);
      expect(value).toBeCloseTo(0 - (foot?.baseThrust ?? 0), 9);
    }
    const lifted = Math.min(...postsOf(plan).map(({ baseThrust }) => baseThrust));
    expect(Math.max(0, ...parts.map(({ value }) => value))).toBeCloseTo(lifted < -1 ? -lifted : 0, 9);
  });

  test("stand on what the hardest day makes of it, more than at the targets", () => {
    const group = groupsOf(plan)[0];
    if (group === undefined) throw new Error("no group");
    const [frame] = group.sides;
    const target = plan.runs[0]?.tension.target ?? 0;
    const atTarget = postsOf(plan).map((_post, index) =>
      [...(frame?.terms.values() ?? [])]
        .flat()
        .reduce((sum, { cable, share }) => sum + share * target * (frame?.guard.perPull[cable]?.baseThrust[index] ?? 0), 0),
    );
    const [most, all] = [Math.max(...atTarget.map(Math.abs)), postsOf(plan).map(({ baseThrust }) => Math.abs(baseThrust))];
    expect(Math.max(...all)).toBeGreaterThan(most * 1.05);
  });
});

// Euler-Eytelwein: what the nut pulls with does not arrive everywhere. Statics: what is lost at a bend, its two posts take.
test.each([
  ["stair", stair],
  ["ramp", ramp],
])("the frame of the %s is pulled at each end as hard as the run is there, and all of it comes to nothing", (_, plan) => {
  const [run] = plan.runs;
  const target = run?.tension.target ?? 0;
  const frame = groupsOf(plan)[0]?.sides[0];
  const pieces = (frame?.terms.get(0) ?? []).map(({ share, cable }) => ({ share, ...frame?.guard.input.cables[cable] }));
  const last = (frame?.posts.length ?? 0) - 1;
  expect(pieces.filter(({ left }) => left === 0).map(({ share }) => share * target)).toEqual([
    expect.closeTo(run?.spans[0]?.tension ?? 0, 6),
  ]);
  expect(pieces.filter(({ right }) => right === last).map(({ share }) => share * target)).toEqual([
    expect.closeTo(run?.spans.at(-1)?.tension ?? 0, 6),
  ]);
  const shears = postsOf(plan).map(({ baseShear }) => baseShear);
  expect(shears.reduce((sum, shear) => sum + shear, 0) / Math.max(...shears)).toBeCloseTo(0, 6);
});

test("the foot of a stair is lifted, the posts at the edge of the landing are pressed down", () => {
  const thrustOf = (id: string): number => postsOf(stair).find(({ postId }) => postId === id)?.baseThrust ?? 0;
  expect(thrustOf(stair.runs[0]?.right.postId ?? "")).toBeLessThan(0);
  expect(thrustOf("P3") + thrustOf("P4")).toBeGreaterThan(0);
});

// ASCE 7-16, 4.5.1.1 (from memory): the load stands along the top rail, so all posts of a side carry the length of its rail.
test.each([
  ["stair", stair],
  ["ramp", ramp],
])("posts of the %s carry the length of the rail along the slope", (_, plan) => {
  const { posts } = loadsOf({ ...plan, groups: groupsOf(plan), job: plan.job });
  for (const side of plan.sides) {
    const carried = posts.filter(({ post }) => post.sideId === side.id).reduce((sum, { tributary }) => sum + tributary, 0);
    const rise = side.datum_to - side.datum_from;
    expect(carried).toBeCloseTo(Math.hypot(side.length, rise), 6);
  }
});

test("the bends of a ramp of one in twelve are in the table of pulls, although no bushing is asked for by their angle", () => {
  const [run] = ramp.runs;
  const bends = ramp.pulls.filter(({ cause }) => cause === "bend");
  expect(bends.map(({ postId }) => postId)).toEqual(["P3", "P4", "P8", "P9"]);
  // Between two posts as far from the change of slope, the cable climbs half as steeply as the ramp: atan(1/24), and the rest behind.
  const [level, raked] = [Math.atan(1 / 24), Math.atan(1 / 12) - Math.atan(1 / 24)];
  expect(run?.bends.map(({ angle }) => angle)).toEqual([level, raked, raked, level].map((angle) => expect.closeTo(angle, 9)));
  // Statics, the triangle of forces by the law of cosines: T before a post and T exp(-0.3 turn) behind it, as the cable slips round it
  // from the nearer end, which is pulled. Where the bend is small that is more than 2 T sin(turn / 2), friction or none.
  const target = run?.tension.target ?? 0;
  const slipping = (before: number, turn: number): number => {
    const behind = before * Math.exp(-0.3 * turn);
    return Math.sqrt(before ** 2 + behind ** 2 - 2 * before * behind * Math.cos(turn));
  };
  const outer = 10 * slipping(target, level as number);
  const inner = 10 * slipping(target * Math.exp(-0.3 * (level as number)), raked as number);
  expect(outer).toBeGreaterThan(10 * 2 * target * Math.sin((level as number) / 2) * 1.03);
  bends.forEach(({ pull_target }, index) => {
    expect(pull_target / (index === 0 || index === 3 ? outer : inner)).toBeCloseTo(1, 9);
  });
  expect(new Set(ramp.bores.filter(({ bend }) => bend > 0).map(({ bushing }) => bushing))).toEqual(new Set([true]));
});

// Statics: what a cable pulls a post with is the sum of two forces, that before the post and that behind it.
test.each(exampleNames)("%s: no bend is given less than the sum of its two pulls, nor than twice the greater one could make", (name) => {
  const plan = examplePlan(name);
  for (const { postId, runId, pull_target, cables } of plan.pulls.filter(({ cause }) => cause === "bend")) {
    const run = plan.runs.find(({ id }) => id === runId);
    const turn = run?.bends.filter((bend) => bend.postId === postId).reduce((sum, { angle }) => sum + angle, 0) ?? 0;
    const beside = plan.bays.filter(({ leftId, rightId }) => leftId === postId || rightId === postId).map(({ id }) => id);
    const [one = 0, other = 0] = (run?.spans ?? []).filter(({ bayId }) => beside.includes(bayId)).map(({ tension }) => tension);
    const sum = Math.hypot(one - other * Math.cos(turn), other * Math.sin(turn));
    expect.soft(pull_target).toBeGreaterThanOrEqual(cables * sum * (1 - 1e-9));
    expect.soft(pull_target).toBeGreaterThanOrEqual(cables * 2 * Math.max(one, other) * Math.sin(turn / 2) * (1 - 1e-9));
  }
});

test("a rake that is higher than the level sides gives the lever of the code's load, and is explained", () => {
  const high = planOf(changedText("0012-stair-from-landing", { "    gap below: 1 in ": "    clear opening: 31 in\n    gap below: 1 in " }));
  expect(high.rakes[0]?.opening.guardHeight).toBeGreaterThan(high.opening.guardHeight);
  expect(disagreeing(traceAll(high))).toEqual([]);
});

// Euler-Eytelwein: behind a turn a the pull is exp(-mu a); mu is 0.3 on a bushing. The stair is pulled at its foot, the ramp at both ends.
describe("what arrives behind the bends", () => {
  const tensionsOn = (plan: Plan, ids: (bayId: string) => boolean): readonly number[] =>
    (plan.runs[0]?.spans ?? []).filter(({ bayId }) => ids(bayId)).map(({ tension }) => tension);
  const alike = (tensions: readonly number[], due: number): void => {
    expect(tensions.length).toBeGreaterThan(0);
    for (const tension of tensions) expect(tension).toBeCloseTo(due, 6);
  };

  test("of the stair: all of it on the flight, exp(-0.3 x 15.26 deg) between the posts, exp(-0.3 x 33.69 deg) along the landing", () => {
    const target = stair.runs[0]?.tension.target ?? 0;
    const [all, level] = [Math.atan(2 / 3), Math.atan(1 / 3)];
    alike(
      tensionsOn(stair, (id) => /^B\d/.test(id)),
      target,
    );
    alike(
      tensionsOn(stair, (id) => id === "A/B"),
      target * Math.exp(-0.3 * (all - level)),
    );
    alike(
      tensionsOn(stair, (id) => /^A\d/.test(id)),
      target * Math.exp(-0.3 * all),
    );
    expect(stair.runs[0]?.tension.least).toBeCloseTo(target * Math.exp(-0.3 * all), 6);
  });

  test("of the ramp: both walks stand at the target, the ramp at exp(-0.3 x 4.76 deg) of it", () => {
    const target = ramp.runs[0]?.tension.target ?? 0;
    alike(
      tensionsOn(ramp, (id) => /^[AC]\d/.test(id)),
      target,
    );
    alike(
      tensionsOn(ramp, (id) => id.includes("/")),
      target * Math.exp(-0.3 * Math.atan(1 / 24)),
    );
    alike(
      tensionsOn(ramp, (id) => /^B\d/.test(id)),
      target * Math.exp(-0.3 * Math.atan(1 / 12)),
    );
  });
});
