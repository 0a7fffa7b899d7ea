// Is each post bored as it was found: leaning, of another section, with something behind it?
import { describe, expect, test } from "vitest";
import { explain, traceAll } from "../../src/explain/explain.ts";
import { kindAt } from "../../src/explain/kind.ts";
import { leavesBelow, wholePlan } from "../../src/explain/path.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, examplePlan, jobOf, planOf } from "../support/example-jobs.ts";
import { disagreeing } from "../support/traces.ts";

const NAME = "0006-porch-existing-posts";
const INCH = 25.4;
const plain = examplePlan(NAME);

const found = (...rows: readonly string[]): string =>
  changedText(NAME, { "  existing: true\n": `  existing: true\n  as found:\n${rows.map((row) => `    - ${row}\n`).join("")}` });

describe("a post that leans 1/2 in out over 36 in", () => {
  const plan = planOf(found("{ post: P3, leans: { out: 1/2 in, over: 36 in } }"));
  const own = plan.bores.filter(({ verticalId }) => verticalId === "P3");

  test("is bored off its middle towards the deck, so that the cables stay straight", () => {
    expect(own.length).toBe(plan.courses.length);
    for (const { height, offset } of own) {
      // By similar triangles, to the nearest sixteenth.
      const lean = (height * 0.5) / 36;
      expect(Math.abs(lean + offset)).toBeLessThanOrEqual(INCH / 32 + 1e-9);
      expect(Math.abs((offset / INCH) * 16 - Math.round((offset / INCH) * 16))).toBeLessThan(1e-9);
    }
    expect(own.at(-1)?.offset).toBeLessThan(-INCH / 4);
    expect(plan.bores.filter(({ verticalId }) => verticalId === "P2").every(({ offset }) => offset === 0)).toBe(true);
    expect(plan.runs.map(({ pathLength }) => pathLength)).toEqual(plain.runs.map(({ pathLength }) => pathLength));
  });

  test("is explained", () => {
    const answer = explain(plan, `bores.${own.at(-1)?.mark}.offset`);
    expect(answer.kind === "trace" && answer.trace.recomputed).toBeCloseTo(own.at(-1)?.offset ?? 0, 9);
  });

  test("too much of it fails the edge distance", () => {
    const far = planOf(found("{ post: P3, leans: { in: 3 in, over: 36 in } }"));
    expect(far.checks.find(({ id }) => id === "edge-distance")?.verdict).toBe("fail");
  });
});

describe("a post that leans 1/2 in to the right over 36 in", () => {
  const plan = planOf(found("{ post: P3, leans: { right: 1/2 in, over: 36 in } }"));
  const [lowest, highest] = [plan.courses[0]?.height ?? 0, plan.courses.at(-1)?.height ?? 0];
  // The middle cable, of two the lower, by counting off one from each end.
  const middle = plan.courses[Math.ceil(plan.courses.length / 2) - 1]?.height ?? 0;
  const freeOf = (one: typeof plan, beside: "leftId" | "rightId"): number =>
    one.bays.find((bay) => bay[beside] === "P3")?.free ?? Number.NaN;

  test("keeps its station, that of the middle cable", () => {
    const [old, own] = [plain, plan].map(({ verticals }) => verticals.find(({ id }) => id === "P3"));
    expect(own?.station).toBe(old?.station);
    expect(own?.leansAlong).toEqual({
      slant: 0.5 / 36,
      height: middle,
      low: expect.closeTo((-(middle - lowest) * 0.5) / 36, 9),
      high: expect.closeTo(((highest - middle) * 0.5) / 36, 9),
    });
  });

  test("lengthens the bay to its left at the highest course and the one to its right at the lowest, by similar triangles", () => {
    expect(freeOf(plan, "rightId") - freeOf(plain, "rightId")).toBeCloseTo(((highest - middle) * 0.5) / 36, 5);
    expect(freeOf(plan, "leftId") - freeOf(plain, "leftId")).toBeCloseTo(((middle - lowest) * 0.5) / 36, 5);
    expect(plan.bays.filter(({ longestCourse }) => longestCourse !== undefined).map(({ longestCourse }) => longestCourse)).toEqual([
      plan.courses.length,
      1,
    ]);
  });

  test("asks more tension of the longer bays, and leaves the length of its cables and its bores alone", () => {
    const requiredIn = (one: typeof plan): number =>
      one.runs.flatMap(({ spans }) => spans).find(({ bayId }) => bayId === one.bays.find(({ rightId }) => rightId === "P3")?.id)
        ?.required ?? 0;
    expect(requiredIn(plan)).toBeGreaterThan(requiredIn(plain));
    expect(plan.runs.map(({ pathLength }) => pathLength)).toEqual(plain.runs.map(({ pathLength }) => pathLength));
    const boresOf = (one: typeof plan) =>
      one.bores.filter(({ verticalId }) => verticalId === "P3").map(({ height, offset }) => [height, offset]);
    expect(boresOf(plan)).toEqual(boresOf(plain));
  });
});

describe("an end post that leans along the guard", () => {
  const away = planOf(found("{ post: P8, leans: { right: 1 in, over: 36 in } }"));
  const lengthTo = (one: typeof away, end: "P8" | "P1"): number =>
    one.runs.find(({ left, right }) => left.postId === end || right.postId === end)?.pathLength ?? Number.NaN;

  test("makes its run as long as its highest cable, or its lowest, and no other run", () => {
    const middle = away.courses[Math.ceil(away.courses.length / 2) - 1]?.height ?? 0;
    const more = ((away.courses.at(-1)?.height ?? 0) - middle) / 36;
    expect(lengthTo(away, "P8") - lengthTo(plain, "P8")).toBeCloseTo(more, 5);
    expect(lengthTo(away, "P1")).toBe(lengthTo(plain, "P1"));
    const inward = planOf(found("{ post: P8, leans: { left: 1 in, over: 36 in } }"));
    expect(lengthTo(inward, "P8") - lengthTo(plain, "P8")).toBeCloseTo((middle - (inward.courses[0]?.height ?? 0)) / 36, 5);
  });

  test("is asked of the engineer; a line post is not", () => {
    const asked = (one: typeof away) => one.checks.filter(({ id }) => id === "lean-along").map(({ where, verdict }) => [where, verdict]);
    expect(asked(away)).toEqual([["P8", "ask"]]);
    expect(asked(planOf(found("{ post: P3, leans: { right: 1 in, over: 36 in } }")))).toEqual([]);
  });
});

describe("an end post beside a wall that leans along the guard", () => {
  const beside = (gap: string, station: string, lean: string): string =>
    found(`{ post: P1, leans: { ${lean}: 1 in, over: 36 in } }`)
      .replace("start: { kind: post, access: drill }", `start: { kind: wall, gap: ${gap}, access: hand }`)
      .replace("stations: [1-3/4 in,", `stations: [${station},`);
  const checked = (text: string, id: string) => planOf(text).checks.find((check) => check.id === id);

  test("has its gap tried where it is widest and where it is narrowest: at the deck, the rail or the cables", () => {
    const away = planOf(beside("3-1/2 in", "5-1/4 in", "right"));
    const [first, middle, last] = [0, (away.courses.length - 1) >> 1, -1].map((at) => away.courses.at(at)?.height ?? Number.NaN);
    if (first === undefined || middle === undefined || last === undefined) throw new Error("no courses");
    // The face of the post at a height, from the plumb wall: it passes 3-1/2 in at the middle cable.
    const gapAt = (height: number, way: number): number => 3.5 * INCH + (way * (height - middle)) / 36;
    const gapOf = ({ verticals }: Plan) => verticals.find(({ id }) => id === "P1")?.leansAlong?.gap;
    expect(gapOf(away)?.widest).toBeCloseTo(gapAt(away.opening.guardHeight, 1), 5);
    expect(gapOf(away)?.narrowest).toBeCloseTo(gapAt(first, 1), 5);
    const towards = planOf(beside("3-1/2 in", "5-1/4 in", "left"));
    expect(gapOf(towards)?.widest).toBeCloseTo(gapAt(0, -1), 5);
    expect(gapOf(towards)?.narrowest).toBeCloseTo(gapAt(last, -1), 5);
    expect(disagreeing(traceAll(towards))).toEqual([]);
  });

  test("fails where the sphere passes at its foot, though not at the middle cable", () => {
    expect(checked(beside("3-1/4 in", "5 in", "left"), "wall-gap-start")?.verdict).toBe("pass");
    expect(checked(beside("3-1/2 in", "5-1/4 in", "left"), "wall-gap-start")?.verdict).toBe("fail");
  });
});

test("every number of a guard with leaning posts has a unit and comes out of its explanation", () => {
  const plan = planOf(
    found("{ post: P3, leans: { right: 1/2 in, out: 1/4 in, over: 36 in } }", "{ post: P8, leans: { left: 1 in, over: 36 in } }"),
  );
  expect(disagreeing(traceAll(plan))).toEqual([]);
  const without = leavesBelow(wholePlan(plan)).filter((place) => typeof place.value === "number" && kindAt(place) === null);
  expect(without.map(({ path }) => path)).toEqual([]);
  for (const path of ["bays.A2.free", "verticals.P3.leansAlong.high", "verticals.P8.leansAlong.slant"]) {
    expect.soft(explain(plan, path).kind, path).toBe("trace");
  }
});

test("a post between spans that the code's table counts from post to post", () => {
  const table = (text: string) =>
    planOf(text)
      .runs.flatMap(({ spans }) => spans)
      .map(({ demandSpan }) => demandSpan);
  const criterion = (text: string): string =>
    text.replace(/criterion:[\s\S]*?(?=\n\S|$)/, "criterion: { kind: table, source: NCC 2022 }\n");
  const [before, after] = [
    table(criterion(found("{ post: P3, access: drill }"))),
    table(criterion(found("{ post: P3, leans: { right: 1 in, over: 36 in } }"))),
  ];
  expect(disagreeing(traceAll(planOf(criterion(found("{ post: P3, leans: { right: 1 in, over: 36 in } }")))))).toEqual([]);
  expect(after.every((span, index) => span >= (before[index] ?? 0))).toBe(true);
  expect(after.some((span, index) => span > (before[index] ?? 0) + 5)).toBe(true);
});

describe("a post of another section", () => {
  const plan = planOf(found("{ post: P3, size: 6x6 }"));

  test("stands on its station with its own faces, and the spans beside it are shorter", () => {
    const [old, wide] = [plain, plan].map(({ verticals }) => verticals.find(({ id }) => id === "P3"));
    expect(wide?.station).toBe(old?.station);
    expect([wide?.along, wide?.across]).toEqual([5.5 * INCH, 5.5 * INCH]);
    const beside = (one: typeof plan): number =>
      one.bays.filter(({ leftId, rightId }) => leftId === "P3" || rightId === "P3").reduce((sum, { free }) => sum + free, 0);
    expect(beside(plan)).toBeLessThan(beside(plain));
    expect(plan.bores.find(({ verticalId }) => verticalId === "P3")?.drilledLength).toBe(5.5 * INCH);
  });

  test("is stiffer in the frame, and checked in a group of its own with its own section and class of wood", () => {
    const moves = (one: typeof plan): number => one.frame.sides[0]?.posts.find(({ postId }) => postId === "P3")?.movement ?? Number.NaN;
    expect(moves(plan)).not.toBe(moves(plain));
    const rowsOf = (one: typeof plan) => one.frame.checks.filter(({ name }) => name.includes("of 6x6"));
    expect(rowsOf(plain)).toEqual([]);
    const bending = rowsOf(plan).find(({ id }) => id === "post-cables-P3");
    // NDS supplement, table 4D, from memory: Southern Pine No.1 posts and timbers 1350 psi, not the 1500 psi of 4x4 dimension lumber.
    expect(bending?.factors[0]?.value).toBeCloseTo(1350 * 0.006894757, 3);
    expect(bending?.parts.find(({ name }) => name === "S")?.value).toBeCloseTo(139.7 ** 3 / 6, 0);
  });
});

describe("an end post of another section", () => {
  // Two inches thicker, so its middle stands an inch further in: its outer face is the end of the side as before.
  const plan = planOf(found("{ post: P8, size: 6x6 }").replace("38 ft 5-1/4 in", "38 ft 4-1/4 in"));
  const ends = plan.climate.find(({ runId }) => runId === plan.runs.find(({ right }) => right.postId === "P8")?.id)?.shrinkage;

  test("dries by its own size, not by that of the others: 5-1/2 in against 3-1/2 in", () => {
    expect((ends?.right ?? 0) / (ends?.left ?? 1)).toBeCloseTo(5.5 / 3.5, 9);
    expect(ends?.closing).toBeCloseTo(((ends?.left ?? 0) + (ends?.right ?? 0)) / 2, 9);
  });

  // NDS supplement, table 4D, from memory: Southern Pine posts and timbers 375 psi, wet or dry; 4x4 has 565 psi x 0.67.
  test("bears its washers by its own class of wood", () => {
    const limitAt = (one: typeof plan, post: string): number =>
      one.checks.find(({ id }) => id.startsWith("bearing-") && id.endsWith(post))?.limit?.value ?? 0;
    expect(limitAt(plan, "P8") / limitAt(plain, "P8")).toBeCloseTo(375 / (565 * 0.67), 6);
  });
});

describe("what is behind a post", () => {
  test("decides which end pulls", () => {
    const pullsAt = (text: string): readonly string[] =>
      planOf(text).runs.flatMap(({ left, right }) => [left, right].filter(({ pulls }) => pulls).map(({ postId }) => postId));
    const [first] = pullsAt(found("{ post: P8, access: hand, behind: a planter }"));
    expect(first).toBe("P1");
    expect(pullsAt(found("{ post: P1, access: hand, behind: a planter }"))).not.toContain("P1");
  });

  test("keeps runs from meeting on a post that nothing reaches", () => {
    const meeting = plain.verticals.find(({ role }) => role === "shared")?.id ?? "";
    const plan = planOf(found(`{ post: ${meeting}, access: none, behind: a chimney }`));
    expect(plan.verticals.find(({ role }) => role === "shared")?.id).not.toBe(meeting);
  });

  test("refuses an end that nothing reaches, at the line that says so", () => {
    const { value, problems } = makePlan(jobOf(found("{ post: P8, access: none, behind: a planter }")));
    expect(value).toBeUndefined();
    expect(problems.map(({ path, what }) => [path.join("."), what])).toEqual([
      ["posts.as found.0.access", expect.stringContaining("nothing reaches the back of P8")],
    ]);
  });
});

describe("how posts are built and mounted", () => {
  const with_ = (line: string): string => changedText("rule-of-thumb", { "  largest spacing: 6 ft": `  ${line}\n  largest spacing: 6 ft` });
  const asked = (text: string): readonly string[] =>
    planOf(text)
      .checks.filter(({ verdict }) => verdict === "ask")
      .map(({ id }) => id);
  const MEASURED = "base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 1/2 in }";

  test("laminated posts are computed as sawn ones, and asked for", () => {
    expect(asked(with_("built: laminated"))).toContain("laminated-posts");
    expect(asked(with_("built: solid"))).not.toContain("laminated-posts");
  });

  test("posts on the fascia are as soft as they were pulled, and their fasteners are asked for", () => {
    const fascia = planOf(with_(`mount: fascia\n  ${MEASURED}`));
    expect(asked(with_(`mount: fascia\n  ${MEASURED}`))).toContain("fascia-mount");
    const deck = planOf(with_(MEASURED));
    expect(fascia.frame.sides).toEqual(deck.frame.sides);
  });
});
