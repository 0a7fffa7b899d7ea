// Sides that slope: spacings, triangle, transitions, rules of stairs, and what is refused.
import { describe, expect, test } from "vitest";
import { traceAll } from "../../src/explain/explain.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { rowsOf, wordsOn } from "../packet/read-packet.ts";
import { changedText, examplePlan, jobOf, planOf } from "../support/example-jobs.ts";
import { disagreeing } from "../support/traces.ts";

const STAIR = "0012-stair-from-landing";
const stair = examplePlan(STAIR);
const IN = 25.4;

const checkOf = (plan: Plan, id: string): string | undefined => plan.checks.find((check) => check.id === id)?.verdict;
const changed = (changes: Readonly<Record<string, string>>): Plan => planOf(changedText(STAIR, changes));

describe("a stair of 7 in by 10-1/2 in", () => {
  const [rake] = stair.rakes;
  if (rake === undefined) throw new Error("no rake");

  // tan a = 2/3, so cos a = 3 / sqrt(13) and the cables of a course 2-7/8 in plumb lie 2.392 in apart.
  test("has 3 / sqrt(13) of each plumb spacing square to its cables", () => {
    expect(rake.slope).toBeCloseTo(-Math.atan(2 / 3), 12);
    for (const { spacing, plumb } of rake.gaps) expect(spacing).toBeCloseTo((plumb * 3) / Math.sqrt(13), 9);
    expect(rake.rise).toBeCloseTo(-49 * IN, 9);
    expect(rake.slopeLength).toBeCloseTo(24.5 * Math.sqrt(13) * IN, 9);
  });

  // The riser stands 3/4 in back under its nosing: the right angle lies 7 + g + 3/4 x 2/3 in under the rail. With g = 1 in its legs are
  // 8-1/2 and 12-3/4 in, and the circle 21.25 - sqrt(234.8125) = 5.926 in; it is 6 in at g = 1.1055 in.
  test("lets 5.926 in into the corner under a rail 1 in above its nosings, and 6 in at a gap of 1.106 in", () => {
    expect(rake.triangle?.sphere).toBeCloseTo((21.25 - Math.sqrt(8.5 ** 2 + 12.75 ** 2)) * IN, 9);
    expect(rake.triangle?.gap_max).toBeCloseTo((12 / (5 - Math.sqrt(13)) - 7.5) * IN, 9);
    expect(checkOf(stair, "rake-triangle-B")).toBe("pass");
    expect(checkOf(changed({ "gap below: 1 in": "gap below: 1-1/8 in" }), "rake-triangle-B")).toBe("fail");
  });

  // 8 and 12 in without an overhang; 1-1/4 in, the most that the code lets project, where the job does not say.
  test("lets in 5.578 in without an overhang, and more than 6 in with the greatest one, which is taken where none is given", () => {
    expect(changed({ "nosing: 3/4 in": "nosing: 0 in" }).rakes[0]?.triangle?.sphere).toBeCloseTo((20 - Math.sqrt(208)) * IN, 9);
    const unknown = changed({ ", nosing: 3/4 in": "" });
    expect(unknown.rakes[0]?.triangle?.nosing).toMatchObject({ value: 1.25 * IN, source: "memory" });
    expect(checkOf(unknown, "rake-triangle-B")).toBe("fail");
  });

  test("asks about open risers unless the job says that they are closed", () => {
    expect(checkOf(stair, "rake-risers-B")).toBeUndefined();
    for (const other of ["", ", open risers: true"])
      expect(checkOf(changed({ ", open risers: false": other }), "rake-risers-B")).toBe("ask");
  });

  test("is bored through a post of 5-1/2 in over 5.5 sqrt(13) / 3 = 6.610 in, 1.833 in higher on its upper face", () => {
    const bore = stair.bores.find(({ mark }) => mark === "P5-01");
    expect(bore?.drilledLength).toBeCloseTo((5.5 * Math.sqrt(13) * IN) / 3, 9);
    expect((bore?.entryHeight ?? 0) - (bore?.height ?? 0)).toBeCloseTo((5.5 / 3) * IN, 9);
  });

  test("bends the cable at the edge of the landing by its whole slope, in two parts", () => {
    const [run] = stair.runs;
    expect(run?.bends).toHaveLength(2);
    expect(run?.bends.reduce((sum, { angle }) => sum + angle, 0)).toBeCloseTo(Math.atan(2 / 3), 9);
  });

  test("as a handrail is checked for 34 in to 38 in; without one the handrail is a question", () => {
    const held = { "handrail: false": "handrail: true" };
    expect(checkOf(changed(held), "rake-handrail-high-B")).toBe("pass");
    expect(checkOf(changed({ ...held, "clear opening: 29 in": "clear opening: 29-1/2 in" }), "rake-handrail-high-B")).toBe("fail");
    expect(checkOf(stair, "rake-handrail-B")).toBe("ask");
  });

  test("given by its counts, its rise and run or its pitch is the same stair", () => {
    const given = "riser: 7 in, tread: 10-1/2 in";
    for (const other of ["rise: 4 ft 8 in, run: 7 ft, risers: 8, treads: 8", "rise: 4 ft 8 in, run: 7 ft", "rise: 4 ft 1 in"]) {
      expect.soft(changed({ [given]: other }).runs[0]?.pathLength, other).toBeCloseTo(stair.runs[0]?.pathLength ?? 0, 6);
    }
  });
});

describe("where the slope changes", () => {
  const ended = changed({ "tightening:": "limits: { most bends: 0 }\ntightening:" });

  test("the cables pass when one run does: 9 cables instead of 18, both ways side by side", () => {
    const [transition] = stair.transitions;
    expect(transition).toMatchObject({ id: "A/B", passes: true, pass: { runs: 1, cables: 9 }, end: { runs: 2, cables: 18, turned: 0 } });
    // One bend after the other: exp(-0.3 x 0.588), and no friction where runs end.
    expect(transition?.pass?.farShare).toBeCloseTo(Math.exp(-0.3 * Math.atan(2 / 3)), 9);
    expect(transition?.why).toMatch(/^passes: fewer runs/);
  });

  test("two runs end between two posts as far apart as a pair, when no run may bend", () => {
    expect(ended.transitions[0]).toMatchObject({ passes: false, pass: null });
    expect(ended.runs.map(({ sideIds }) => sideIds)).toEqual([["A"], ["B"]]);
    const free = ended.bays.find(({ kind }) => kind === "corner")?.free ?? 0;
    expect(free).toBeGreaterThan(ended.job.posts.pairGap.value);
    expect(disagreeing(traceAll(ended))).toEqual([]);
  });

  test("a stair that turns off a landing bends its cables in space, and is explained", () => {
    const turned = changed({ "    - length: 6 ft 4 in           #": "    - length: 6 ft 4 in\n      turn: right 90 deg #" });
    const bends = turned.runs.flatMap((run) => run.bends.map(({ angle }) => angle));
    expect(bends.reduce((sum, angle) => sum + angle, 0)).toBeGreaterThan(Math.PI / 2 - 0.2);
    expect(disagreeing(traceAll(turned))).toEqual([]);
  });
});

// The stair's bottom rail 1 in above the nosings, the landing's 3-3/4 in above its floor: plumb, its upper edge lies 5.207 in up, the landing's
// 7.25 in. The lowest course may lie 3 in above the one and 3 sqrt(13) / 3 = 3.606 in above the other: at 8.813 in, 8-13/16 on the tape or below.
describe("a stair whose rails lie lower than those of its landing", () => {
  const low = changed({ "  gap below: 2 in\n": "  gap below: 3-3/4 in\n" });
  const [rake] = low.rakes;

  test("has the fewest courses that keep 3 in, 10 and not 18: its lowest one moves towards its rail, the others are even above it", () => {
    const bottom = (1 + (3.5 * Math.sqrt(13)) / 3) * IN;
    expect(low.courses[0]?.height).toBeLessThanOrEqual(bottom + Math.sqrt(13) * IN + 1e-9);
    expect(low.courses).toHaveLength(10);
    expect(low.courses.length).toBe(Math.ceil((low.opening.top - (low.courses[0]?.height ?? 0)) / (3 * IN)));
    const spacings = low.courses.slice(1).map(({ height }, below) => height - (low.courses[below]?.height ?? 0));
    expect(Math.max(...spacings) - Math.min(...spacings)).toBeLessThanOrEqual(IN / 16 + 1e-9);
    for (const { spacing } of [...low.gaps, ...(rake?.gaps ?? [])]) expect(spacing).toBeLessThanOrEqual(3 * IN + 1e-6);
  });

  test("each number of it is explained", () => expect(disagreeing(traceAll(low))).toEqual([]));
});

describe("a guard of one stair alone", () => {
  const alone = changed({
    "    - length: 6 ft 4 in           # the landing, from the siding to its edge; no turn: the guard goes straight on\n": "",
  });

  test("has its courses by the spacing square to the cables: fewer than the level side asks for", () => {
    expect(alone.courses.length).toBeLessThan(stair.courses.length);
    expect(alone.gaps).toEqual(alone.rakes[0]?.gaps);
    for (const { spacing } of alone.gaps) expect(spacing).toBeLessThanOrEqual(3 * IN + 1e-6);
    expect(Math.max(...alone.gaps.map(({ plumb }) => plumb))).toBeGreaterThan(3 * IN);
  });

  test("each number of it is explained", () => expect(disagreeing(traceAll(alone))).toEqual([]));

  test("lifts its lowest post", () => {
    const posts = alone.frame.sides.flatMap((side) => side.posts);
    expect(posts.at(-1)?.baseThrust).toBeLessThan(0);
    expect(posts.reduce((sum, { baseThrust }) => sum + baseThrust, 0)).toBeCloseTo(0, 6);
  });
});

describe("what cannot be built is refused", () => {
  const refusals = (changes: Readonly<Record<string, string>>): readonly string[] =>
    makePlan(jobOf(changedText(STAIR, changes))).problems.flatMap(({ severity, what }) => (severity === "error" ? [what] : []));

  test("a rail that lies where the courses of the level side pass", () => {
    expect(refusals({ "gap below: 1 in ": "gap below: 6 in " })[0]).toMatch(/^on side B there is no room between bottom rail and course 1/);
  });

  test("a rake whose opening reaches far past the level one", () => {
    expect(refusals({ "    gap below: 1 in ": "    clear opening: 40 in\n    gap below: 1 in " })[0]).toMatch(/reaches so far past/);
  });

  test("hardware on the posts beside a rake", () => {
    const hardware = "  existing: false\n  hardware: [{ what: bracket, from: 10 in, to: 11 in }]";
    expect(refusals({ "  existing: false": hardware })[0]).toMatch(/^hardware on the posts/);
  });
});

/** The metal ramp as an ordinary stair. */
const metalStair = (gap: string, code = "  edition: NCC 2022", levelGap = "70 mm"): Plan =>
  planOf(
    changedText("0013-ramp-to-porch", {
      "length: 4.8 m ": "length: 2.34 m ",
      "rake: { kind: ramp, goes: up, rise: 400 mm, run: 4.8 m }":
        "rake: { kind: stair, goes: up, riser: 175 mm, tread: 260 mm, nosing: 20 mm, open risers: false }",
      "  clear opening: 880 mm": `  clear opening: 880 mm\n  on rakes: { gap below: ${gap} }`,
      "  edition: NCC 2022": code,
      "  gap below: 70 mm": `  gap below: ${levelGap}`,
    }),
  );
const rowOf = (plan: Plan, id: string) => plan.checks.find((one) => one.id === id);

describe("a stair under a code with no size for the triangle", () => {
  const other = (triangle: string): string =>
    `  edition: other\n  guard height: 900 mm\n  opening: 125 mm\n  stairs: { guard height: 900 mm, opening: 125 mm${triangle} }`;

  // k = 1 + 260/175 - sqrt(1 + (260/175)^2) = 0.6948; (175 + 20 x 175/260) k = 130.9 mm with the rail on the nosings: above 125 mm.
  test("is told to ask, not to lower a rail that cannot be low enough", () => {
    const own = metalStair("20 mm", other(""));
    expect(rowOf(own, "rake-triangle-B")).toMatchObject({ verdict: "fail", advice: expect.stringContaining("code: stairs: triangle") });
    expect(rowOf(own, "rake-nosings-B")).toBeUndefined();
  });

  // (188.46 + 70) x 0.6948 = 179.6 mm.
  test("passes with the size that the authority named", () => {
    expect(rowOf(metalStair("70 mm", other(", triangle: 200 mm")), "rake-triangle-B")?.verdict).toBe("pass");
  });
});

// NCC 2022, ABCB Housing Provisions 11.3.4(4): 125 mm, on a stair above the line of the nosings.
describe("a stair under the NCC", () => {
  test("is measured from the line of the nosings: an ordinary one passes, and no sphere is tried at riser and tread", () => {
    const own = metalStair("70 mm");
    expect(rowOf(own, "rake-triangle-B")).toBeUndefined();
    // 70 mm x cos(atan(175 / 260)) = 58.1 mm.
    expect(rowOf(own, "rake-nosings-B")).toMatchObject({
      verdict: "pass",
      source: "ncc-2022",
      sourceWhere: expect.stringContaining("11.3.4(4)"),
    });
    expect(rowOf(own, "rake-nosings-B")?.demand?.value).toBeCloseTo(58.07, 2);
  });

  const high = (gap: string): Plan => metalStair(gap, undefined, "120 mm");
  // 150 mm x 0.82959 = 124.4 mm, 151 mm x 0.82959 = 125.3 mm.
  test("keeps 125 mm square to the slope between that line and the bottom rail", () => {
    expect(rowOf(high("150 mm"), "rake-nosings-B")?.verdict).toBe("pass");
    expect(rowOf(high("151 mm"), "rake-nosings-B")?.verdict).toBe("fail");
  });

  test("is tried at riser and tread where the job names a size", () => {
    const own = metalStair("70 mm", "  edition: NCC 2022\n  stairs: { triangle: 175 mm }");
    expect(rowOf(own, "rake-triangle-B")?.verdict).toBe("fail");
    expect(rowOf(own, "rake-nosings-B")?.verdict).toBe("pass");
  });

  test("its sheets measure there too", () => {
    const own = metalStair("70 mm");
    expect(wordsOn(own, "Z-804")).toContain("square to the cables and up from the line of the nosings");
    expect(wordsOn(own, "Z-804")).not.toContain("riser and tread");
    expect(rowsOf(own, "proof-slopes").map(([, what]) => what)).toContain("Line of the nosings to the bottom rail, square to the slope");
    expect(wordsOn(own, "Z-401")).toContain("measures openings above the line of the nosings");
    expect(wordsOn(own, "Z-002", "permit")).toContain("On a stair: sphere that must not pass, above the line of the nosings");
    expect(disagreeing(traceAll(own))).toEqual([]);
  });
});

// NCC 2022, ABCB Housing Provisions 11.3.4(2): (a) 865 mm above a stair's nosings or a ramp, (b) 1 m above floors and decks.
describe("a ramp under the NCC", () => {
  const lower = (code = "  edition: NCC 2022"): Plan =>
    planOf(
      changedText("0013-ramp-to-porch", {
        "  clear opening: 880 mm": "  clear opening: 880 mm\n  on rakes: { clear opening: 840 mm }",
        "  edition: NCC 2022": code,
      }),
    );

  test("may be as low as 865 mm, the landing not", () => {
    const own = lower();
    const height = rowOf(own, "rake-height-B")?.demand?.value ?? 0;
    expect(height).toBeGreaterThan(865);
    expect(height).toBeLessThan(1000);
    expect(rowOf(own, "rake-height-B")).toMatchObject({ verdict: "pass", limit: { value: 865 }, sourceWhere: "11.3.4(2)(a)" });
    expect(rowOf(own, "guard-height")?.limit?.value).toBe(1000);
  });

  test("keeps a height that the job states", () => {
    expect(rowOf(lower("  edition: NCC 2022\n  guard height: 1000 mm"), "rake-height-B")).toMatchObject({
      verdict: "fail",
      limit: { value: 1000 },
    });
  });
});
