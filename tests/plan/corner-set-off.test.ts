// Two runs that end behind one corner post, their bores set off in height: where they end, who pulls, and what the bores take out of the post.
import { describe, expect, test } from "vitest";
import { loadsOf } from "../../src/plan/frame-check-loads.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { levelAt, waysToSetOff } from "../../src/plan/set-off.ts";
import { changedText, examplePlan, exampleText, jobOf, planOf, withSides } from "../support/example-jobs.ts";
import { framesOf } from "../support/frame-groups.ts";
import { checkOf, endsOf, INCH } from "../support/in-plan.ts";

const NAME = "0019-corner-bores-set-off";
const plan = examplePlan(NAME);

describe("the runs of 0019", () => {
  test("end behind P4; where both ends are as easy to reach the other one pulls", () => {
    // Behind P1 there is room for a hand only, so R1 is pulled at P4.
    expect(endsOf(plan)).toEqual([
      ["P1 grip false", "P4 stud true"],
      ["P4 grip false", "P11 stud true"],
    ]);
    const free = planOf(
      changedText(NAME, { "start: { kind: wall, gap: 3-1/2 in, access: hand }": "start: { kind: post, access: drill }" }),
    );
    expect(endsOf(free)[0]).toEqual(["P1 stud true", "P4 grip false"]);
  });

  test("go through P4 from the face that looks to their side, in the middle, with no counterbore though a drill reaches its backs", () => {
    const own = plan.bores.filter(({ verticalId }) => verticalId === "P4");
    expect(own).toHaveLength(2 * plan.courses.length);
    for (const { runId, entryFace, through, offset, skew, drilledLength, counterbore, diameter } of own) {
      expect(entryFace).toBe(runId === "R1" ? "left" : "right");
      expect(diameter / INCH).toBeCloseTo(runId === "R1" ? 5 / 16 : 3 / 8, 9);
      expect([through, offset, skew, counterbore]).toEqual([true, 0, 0, null]);
      expect(drilledLength).toBeCloseTo(5.5 * INCH, 9);
    }
  });

  test("with studs at both ends a run that turns is pulled at both, one that goes straight on from the corner post at its other end", () => {
    const studs = ell("right 90 deg").replace("hold end: grip", "hold end: stud");
    expect(endsOf(planOf(studs))).toEqual([
      ["P1 stud true", "P4 stud false"],
      ["P4 stud false", "P7 stud true"],
    ]);
    expect(endsOf(planOf(exampleText(NAME).replace("hold end: grip", "hold end: stud")))[1]).toEqual(["P4 stud true", "P11 stud true"]);
  });

  test("say that they cross, and ask the engineer", () => {
    expect(plan.runs[0]?.why).toContain("behind which runs end, their bores set off in height");
    expect(checkOf(plan, "crossing-split")).toMatchObject({ verdict: "ask", where: "P4" });
  });
});

describe("by how much they are set off", () => {
  const job = plan.job;
  const ways = (clear: number, count: number, least: number): readonly number[] =>
    waysToSetOff({ clear: clear * INCH, count, least: least * INCH }, job).map((by) => by / INCH);

  test("nothing where no bores cross; half a spacing where that takes no more cables; else the least", () => {
    expect(ways(30.5, 10, 0)).toEqual([0]);
    expect(ways(30.5, 10, 7 / 8)).toEqual([23 / 16, 7 / 8].map((by) => expect.closeTo(by, 9)));
    // 11 spacings of 3 in less 32 in leave 1 in.
    expect(ways(32, 10, 7 / 8)).toEqual([1, 7 / 8].map((by) => expect.closeTo(by, 9)));
    expect(ways(32, 10, 1)).toEqual([expect.closeTo(1, 9)]);
    expect(ways(30.5, 10, 1.46)).toEqual([expect.closeTo(1.5, 9)]);
  });

  test.each([20, 23.5, 27, 30.5, 32, 33, 35.25, 38.75])(
    "an opening of %d in: every gap of both levels is at most 3 in, and the wood is left",
    (clear) => {
      const { value, problems } = makePlan(jobOf(changedText(NAME, { "clear opening: 30-1/2 in": `clear opening: ${clear} in` })));
      expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
      for (const { spacing } of [...(value?.gaps ?? []), ...(value?.setOff?.gaps ?? [])])
        expect(spacing).toBeLessThanOrEqual(3 * INCH + 1e-6);
      expect(value?.setOff?.gaps).toHaveLength(value?.gaps.length ?? 0);
      const heights = [...new Set(value?.bores.filter(({ verticalId }) => verticalId === "P4").map(({ height }) => height))].toSorted(
        (a, b) => a - b,
      );
      const steps = heights.slice(1).map((height, index) => (height - (heights[index] ?? 0)) / INCH);
      expect(Math.min(...steps)).toBeGreaterThanOrEqual(7 / 8 - 1e-9);
      // As few cables as hold a spacing of 3 in over the opening and the least by which they are set off.
      const fewest = Math.ceil((clear + 7 / 8) / 3 - 1e-9) - 1;
      expect(value?.courses).toHaveLength(fewest);
    },
  );

  test("so much wood that no bore has room between two of the other side is refused at its corner", () => {
    const { value, problems } = makePlan(
      jobOf(exampleText(NAME).replace("supply:", "limits: { wood between bores: 1-1/8 in }\n\nsupply:")),
    );
    expect(value).toBeUndefined();
    expect(problems.map(({ path, what }) => [path.join(" "), what])).toEqual([
      ["guard sides 0 corner", expect.stringMatching(/each needs 1-1\/2" .*from middle to middle/)],
    ]);
  });

  test("behind every second such corner the cables are low again; other corners change nothing", () => {
    const side = "    - length: 8 ft\n      turn: right 90 deg\n      corner: one post, bores set off\n";
    const other = "    - length: 8 ft\n      turn: left 90 deg\n";
    const sides = `${side}${other}${side}    - length: 8 ft\n`;
    const job = jobOf(withSides(exampleText(NAME), sides));
    expect([0, 1, 2, 3].map((index) => levelAt(job, index).isRaised ?? false)).toEqual([false, true, true, false]);
    const { runs, bores, courses } = planOf(withSides(exampleText(NAME), sides));
    expect(runs.map(({ sideIds, isRaised }) => [sideIds.join(""), isRaised ?? false])).toEqual([
      ["A", false],
      ["BC", true],
      ["D", false],
    ]);
    for (const { runId, course, height } of bores) {
      const { height: low, raised } = courses[course - 1] ?? {};
      expect(height).toBe(runId === "R2" ? raised : low);
    }
  });
});

/** An L of two like sides whose runs end behind its corner post, all else alike. */
const ell = (turn: string): string =>
  withSides(
    changedText(NAME, { "start: { kind: wall, gap: 3-1/2 in, access: hand }": "start: { kind: post, access: drill }" }),
    `    - length: 12 ft\n      turn: ${turn}\n      corner: one post, bores set off\n    - length: 12 ft\n`,
  );

describe("the corner post in its frame", () => {
  test("is bored at the heights of both sides, and both strips are out of one section: by hand", () => {
    const { plan: framed, groups } = framesOf(jobOf(ell("right 90 deg")));
    const [post, ...others] = loadsOf({ ...framed, groups, job: framed.job }).posts.filter(({ post: { corner } }) => corner !== undefined);
    expect(others).toEqual([]);
    const bored = (post?.places ?? []).filter(({ isBored }) => isBored).map(({ height }) => height);
    const due = framed.bores.filter(({ verticalId }) => verticalId === post?.post.id).map(({ height }) => height);
    expect(bored.toSorted()).toEqual(due.toSorted());
    expect(due).toHaveLength(2 * framed.courses.length);
    // A square of 5-1/2 in, both ends grips of 3/8 in: two strips that cross, the middle square counted once.
    const [w, d] = [5.5 * INCH, (3 / 8) * INCH];
    expect(post?.net.area_mm2).toBeCloseTo(w * w - 2 * w * d + d * d, 6);
    const inertia = (w ** 4 - d * w ** 3 - (w - d) * d ** 3) / 12;
    expect(((post?.net.x.modulus_mm3 ?? 0) * (w / 2)) / inertia).toBeCloseTo(1, 9);
    expect(((post?.net.y.modulus_mm3 ?? 0) * (w / 2)) / inertia).toBeCloseTo(1, 9);
  });

  test("of bores of two sizes each takes its own strip", () => {
    const { groups } = framesOf(plan.job);
    const post = loadsOf({ ...plan, groups }).posts.find(({ post: { id } }) => id === "P4");
    const [w, a, b] = [5.5 * INCH, (5 / 16) * INCH, (3 / 8) * INCH];
    expect(post?.net.area_mm2).toBeCloseTo(w * w - w * a - w * b + a * b, 6);
    expect(((post?.net.x.modulus_mm3 ?? 0) * (w / 2)) / ((w ** 4 - a * w ** 3 - (w - a) * b ** 3) / 12)).toBeCloseTo(1, 9);
    expect(((post?.net.y.modulus_mm3 ?? 0) * (w / 2)) / ((w ** 4 - b * w ** 3 - (w - b) * a ** 3) / 12)).toBeCloseTo(1, 9);
  });

  test("the pull of the raised cables acts so much higher", () => {
    const { plan: framed } = framesOf(jobOf(ell("right 90 deg")));
    const [low, high] = framed.pulls.filter(({ cause, postId }) => cause === "end" && postId === framed.cornerPulls[0]?.postId);
    expect((high?.height ?? 0) - (low?.height ?? 0)).toBeCloseTo(framed.setOff?.by ?? Number.NaN, 9);
    expect(framed.setOff?.by).toBeGreaterThan(25);
  });

  test("at a right angle no cable of one side feels those of the other, in one group", () => {
    const [group, ...others] = framesOf(jobOf(ell("right 90 deg"))).groups;
    expect(others).toEqual([]);
    const count = group?.courses.length ?? 0;
    group?.flexibility.forEach((row, i) => {
      row.forEach((value, j) => {
        if (i < count !== j < count) expect(value).toBe(0);
        else expect(value).toBeGreaterThan(0);
      });
    });
  });

  test("inside and outside corners strain it alike", () => {
    const ratios = (text: string) => planOf(text).frame.checks.map(({ name, ratio }) => [name, ratio === null ? null : ratio.toFixed(9)]);
    expect(ratios(ell("left 90 deg"))).toEqual(ratios(ell("right 90 deg")));
  });
});
