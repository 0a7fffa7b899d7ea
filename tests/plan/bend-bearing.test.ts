// Is each bend of a cable checked where it presses, with the tension that stands there, and does what holds it bound the window?
import { describe, expect, test } from "vitest";
import { angleBetween3, dot3, length3, type Point3, pathLength3, subtract3 } from "../../src/geometry/space.ts";
import { bendMouths } from "../../src/plan/bend-mouths.ts";
import { mouthBearing } from "../../src/plan/check-bend.ts";
import { hardestPull } from "../../src/plan/check-tension.ts";
import type { Check, Plan, Run } from "../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../support/example-jobs.ts";

const CORNERS = "0002-deck-two-corners";
const plan = examplePlan(CORNERS);

const rowOf = ({ checks }: Plan, id: string): Check | undefined => checks.find((one) => one.id === id);
const runOf = ({ runs }: Plan, id: string): Run => {
  const run = runs.find((one) => one.id === id);
  if (run === undefined) throw new Error(`no run ${id}`);
  return run;
};
const bendBound = ({ frame }: Plan, id: string) =>
  frame.windows.find(({ runId }) => runId === id)?.allows.find(({ kind }) => kind === "bend");
/** The example with the lines about its bushings put otherwise. */
const bushed = (lines: string): Plan =>
  planOf(
    changedText(CORNERS, {
      "  bushing bore: 5/8 in            # outside of the tubes in the corner posts: bushings alone would crush the wood there\n": "",
      "  bushing: { tube wall: 5/64 in }\n": lines,
    }),
  );

describe.each(exampleNames)("%s", (name) => {
  const example = examplePlan(name);
  const mouths = example.runs.flatMap((run) => bendMouths(example, run, example.job).map((mouth) => ({ run, mouth })));

  test("every bend of a cable has its mouth, in the order of the run, and a row that is no less used", () => {
    expect(mouths.map(({ mouth }) => mouth.bend)).toEqual(example.runs.flatMap(({ bends }) => bends));
    for (const { run, mouth } of mouths) {
      const bearing = mouthBearing(mouth, example.job);
      const row = rowOf(example, bearing === null ? `bushing-${run.id}` : `bend-${run.id}`);
      const push = hardestPull(example, run) * mouth.pushShare;
      expect(row, run.id).toBeDefined();
      if (bearing === null) expect(row?.demand?.value).toBeGreaterThanOrEqual(push - 1e-6);
      else expect(row?.ratio).toBeGreaterThanOrEqual(push / bearing.capacity.value - 1e-9);
    }
  });

  test("the path of a run turns where its bends are, by as much", () => {
    for (const { path, bends, id } of example.runs) {
      const steps = path.slice(1).map((point, before) => subtract3(point, path[before] ?? point));
      const turns = steps.slice(1).map((behind, before) => ({
        angle: angleBetween3(steps[before] ?? behind, behind),
        at: pathLength3(path.slice(0, before + 2)),
      }));
      expect(
        turns.map(({ angle }) => angle),
        id,
      ).toEqual(bends.map(({ angle }) => expect.closeTo(angle, 9)));
      expect(
        turns.map(({ at }) => at),
        id,
      ).toEqual(bends.map(({ at }) => expect.closeTo(at, 3)));
    }
  });

  test("level bends press square to the grain of posts", () => {
    const level = mouths.filter(({ run }) => run.path.every(({ z }) => z === run.path[0]?.z));
    for (const { mouth } of level) expect(mouth.toGrain).toBeCloseTo(Math.PI / 2, 12);
  });

  test("a run that goes straight has no row", () => {
    for (const { id } of example.runs.filter(({ bends }) => bends.length === 0)) {
      expect(rowOf(example, `bend-${id}`) ?? rowOf(example, `bushing-${id}`)).toBeUndefined();
    }
  });
});

describe("the tension at a bend", () => {
  // Pulled from both ends, friction 0.30: behind a bend of 45 deg exp(-0.30 pi / 4) = 0.790 of the pull is left.
  test("is the whole pull at the first bend from either nut, and 0.790 of it at the second", () => {
    const shares = bendMouths(plan, runOf(plan, "R1"), plan.job).map(({ share }) => share);
    const behind = Math.exp((-0.3 * Math.PI) / 4);
    expect(shares).toEqual([1, behind, behind, 1].map((share) => expect.closeTo(share, 12)));
  });
});

describe("bushings without a tube in the corners of wooden posts", () => {
  const own = bushed("");

  test("are to be decided, like a washer that sinks in, and the advice says what would do", () => {
    const row = rowOf(own, "bend-R1");
    expect(row?.verdict).toBe("ask");
    expect(row?.advice).toMatch(
      /^the wood may be crushed at P4, P5, P9, P10 and the cable slacken: use bushings at least .* across and .* long; or set/,
    );
    expect(row?.sourceWhere).toContain("Southern Pine, No.1, wet or dry, Fc across the grain");
  });

  test("that are as wide and long as the advice says pass; a sixteenth less does not", () => {
    const [, across = "", long = ""] = /at least (\S+)" \(.*?\) across and (\S+)" \(/.exec(rowOf(own, "bend-R1")?.advice ?? "") ?? [];
    const wide = bushed(`  bushing bore: ${across} in\n  bushing: { length: ${long} in }\n`);
    expect(rowOf(wide, "bend-R1")?.verdict).toBe("pass");
    expect(across).toBe("1-1/16");
    const less = bushed("  bushing bore: 1 in\n  bushing: { length: 2 in }\n");
    expect(rowOf(less, "bend-R1")?.verdict).toBe("ask");
  });

  test("bear no more where they are longer than two diameters", () => {
    const limit = (length: string): number => rowOf(bushed(`  bushing: { length: ${length} }\n`), "bend-R1")?.limit?.value ?? 0;
    expect(limit("1/2 in")).toBeGreaterThan(limit("3/8 in"));
    expect(limit("1 in")).toBe(limit("1/2 in"));
  });

  test("close the window of tensions, as washers would", () => {
    expect(bendBound(own, "R1")?.tension).toBe(0);
    expect(bendBound(plan, "R1")?.tension).toBeGreaterThan(runOf(plan, "R1").tension.target);
  });
});

describe("the bound of the window", () => {
  test("is where the row comes to its limit: at that target the row uses all of it", () => {
    const { target, high } = runOf(plan, "R1").tension;
    const row = rowOf(plan, "bend-R1");
    const worst = plan.climate.find(({ runId }) => runId === "R1")?.hardest.worst ?? 0;
    const tightening = plan.tightening.find(({ runId }) => runId === "R1");
    const added = Math.max(0, ...(tightening?.days ?? []).map((day) => day.added));
    const bound = bendBound(plan, "R1")?.tension ?? 0;
    // All is done and the hardest day comes; or a cable is tightened on the day whose readings are the highest.
    const done = (bound * high) / target + worst;
    const atWork = ((bound + added) / (target + added)) * (tightening?.most_onAnyDay ?? 0);
    const pull = Math.max(done, atWork);
    expect((pull / hardestPull(plan, runOf(plan, "R1"))) * (row?.demand?.value ?? 0)).toBeCloseTo(row?.limit?.value ?? 0, 6);
  });
});

describe("a rated bushing", () => {
  test("in tubes is asked for, and fails where it is rated for less than the push", () => {
    const ask = planOf(
      changedText("0005-steel-balcony", { "  bushing: { rated: 1.5 kN, rated by: data sheet of its maker (invented) }\n": "" }),
    );
    expect(rowOf(ask, "bushing-R1")).toMatchObject({ verdict: "ask", limit: null, ratio: null });
    expect(rowOf(ask, "bushing-R1")?.demand?.value).toBe(rowOf(examplePlan("0005-steel-balcony"), "bushing-R1")?.demand?.value);
    const weak = planOf(changedText("0005-steel-balcony", { "rated: 1.5 kN": "rated: 1.1 kN" }));
    expect(rowOf(weak, "bushing-R1")?.verdict).toBe("fail");
    expect(bendBound(ask, "R1")).toBeUndefined();
  });

  test("in wood is compared too, beside the wood", () => {
    const own = bushed("  bushing: { rated: 200 lbf, rated by: its maker }\n");
    expect(rowOf(own, "bushing-R1")?.verdict).toBe("fail");
    expect(rowOf(own, "bend-R1")?.verdict).toBe("ask");
  });
});

describe("bare strand", () => {
  // 405 psi of Hem-Fir x 0.67 wet, on 1/8 in x 1/4 in: 8.48 lbf.
  test("on a spacer of wood that nobody names is taken with the least of the usual woods: 8.48 lbf", () => {
    const own = examplePlan("0006-porch-existing-posts");
    expect(rowOf(own, "bend-R1")).toMatchObject({ where: "S6, R1", verdict: "pass" });
    expect((rowOf(own, "bend-R1")?.limit?.value ?? 0) / 4.4482216152605).toBeCloseTo(405 * 0.67 * 0.125 * 0.25, 6);
    expect(rowOf(own, "bend-R1")?.name).toContain("bare strand");
  });
});

/** Where a line along the wall of a bore, on the side that the cable presses on, comes out of its post: from the axis alone. */
function comesOut(own: Plan, run: Run, index: number): { readonly near: number; readonly far: number } {
  const bend = run.bends[index];
  const post = own.verticals.find(({ id }) => id === bend?.postId);
  if (bend === undefined || post === undefined) throw new Error("no bend");
  const turns = run.path.map((point, nth) => ({ point, nth, at: pathLength3(run.path.slice(0, nth + 1)) }));
  const mouth = turns.filter(({ nth }) => nth > 0 && nth < turns.length - 1).find(({ at }) => Math.abs(at - bend.at) < 0.01);
  if (mouth === undefined) throw new Error("no mouth");
  const unit = (from: Point3, to: Point3): Point3 => {
    const step = subtract3(to, from);
    const size = length3(step);
    return { x: step.x / size, y: step.y / size, z: step.z / size };
  };
  const moved = (point: Point3, way: Point3, by: number): Point3 => ({
    x: point.x + by * way.x,
    y: point.y + by * way.y,
    z: point.z + by * way.z,
  });
  /** A square of the post's width round its middle, turned as it stands. */
  const isInside = ({ x, y }: Point3): boolean => {
    const [dx, dy] = [x - post.centre.x, y - post.centre.y];
    const along = Math.abs(dx * Math.cos(post.direction) + dy * Math.sin(post.direction));
    const across = Math.abs(dy * Math.cos(post.direction) - dx * Math.sin(post.direction));
    return Math.max(along, across) < post.along / 2;
  };
  const ways = [mouth.nth - 1, mouth.nth + 1].map((nth) => unit(mouth.point, run.path[nth] as Point3));
  const inwards = ways.find((way) => isInside(moved(mouth.point, way, 1))) as Point3;
  const outwards = ways.find((way) => way !== inwards) as Point3;
  // Both stretches pull at the mouth; across the bore the sum pushes to the side on which the cable lies.
  const side = unit({ x: 0, y: 0, z: 0 }, moved(outwards, inwards, -dot3(outwards, inwards)));
  const RADIUS = 5;
  const wall = moved(mouth.point, side, RADIUS);
  // Walked along the wall from outside of the post: where it goes in, and where it comes out.
  const STEP = 0.01;
  const within: number[] = [];
  for (let s = -20; s < 250; s += STEP) if (isInside(moved(wall, inwards, s))) within.push(s);
  const through = run.path.flatMap((_, nth) => (nth > 0 ? [pathLength3(run.path.slice(nth - 1, nth + 1))] : []));
  const bore = own.bores.find(({ verticalId, runId }) => verticalId === post.id && runId === run.id)?.drilledLength ?? through[0] ?? 0;
  return { near: (within[0] ?? 0) / RADIUS, far: (bore - (within.at(-1) ?? 0)) / RADIUS };
}

describe("the side of a bore that is pressed", () => {
  const stair = planOf(
    changedText("0012-stair-from-landing", {
      "bushing: { length: 1 in }": "bushing: { tube wall: 1/16 in }",
    }),
  );
  const mitres = ["0014-corners-of-one-post", "0018-corner-post-between-runs"].map((name) => examplePlan(name));

  test.each([...mitres, stair, plan].map((own) => [own.job.identity.number, own] as const))(
    "%s: begins as deep as the post's faces say",
    (_, own) => {
      for (const run of own.runs) {
        for (const { index, slants, lining } of bendMouths(own, run, own.job)) {
          if (lining !== "tube") continue;
          const { near, far } = comesOut(own, run, index);
          expect(slants.near, `${run.id} ${index}`).toBeCloseTo(near, 1);
          expect(slants.far, `${run.id} ${index}`).toBeCloseTo(far, 1);
        }
      }
    },
  );

  test("is the shorter one at both ends on the mitre, shorter at one end and longer at the other on a slope, else even", () => {
    const of = (own: Plan) => own.runs.flatMap((run) => bendMouths(own, run, own.job)).filter(({ lining }) => lining === "tube");
    for (const own of mitres) {
      const mitred = of(own).filter(({ member }) => member.corner?.faces === "adjacent");
      expect(mitred.length).toBeGreaterThan(0);
      for (const { slants } of mitred) expect(slants).toEqual({ near: expect.closeTo(1, 12), far: expect.closeTo(1, 12) });
    }
    const sloped = of(stair).filter(({ slants }) => slants.near !== 0);
    expect(sloped.length).toBeGreaterThan(0);
    for (const { slants } of sloped) expect(slants.far).toBe(-slants.near);
    for (const { slants } of of(plan)) expect(slants).toEqual({ near: 0, far: 0 });
  });
});
