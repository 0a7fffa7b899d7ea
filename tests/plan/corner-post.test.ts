// Where does one post stand that makes a corner by itself? Against closed forms, and against how it must look from both sides.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { besideBore, cornerShape } from "../../src/plan/corner-post.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, jobOf, planOf, withSides } from "../support/example-jobs.ts";

const deg = (value: number): number => (value * Math.PI) / 180;
const shape = (turn: number, width = 100) => cornerShape(deg(turn), width, deg(60));

describe("cornerShape", () => {
  test("a square corner: the middle is the corner point, the bore is half the diagonal, the mouths are the middles of two faces", () => {
    const { faces, setback, inset, chord, twist } = shape(90);
    expect(faces).toBe("adjacent");
    expect(setback).toBeCloseTo(50, 9);
    expect(inset).toBe(0);
    expect(chord).toBeCloseTo(Math.sqrt(5000), 9);
    expect(twist).toBeCloseTo(0, 9);
  });

  test("a bay of 135 degrees: bored straight through, turned by 22.5 degrees, the middle tan 22.5 / 2 of the width inside", () => {
    const { faces, setback, inset, chord, twist } = shape(-45);
    expect(faces).toBe("opposite");
    expect(chord).toBe(100);
    expect(inset).toBeCloseTo(50 * (Math.SQRT2 - 1), 9);
    expect(setback).toBeCloseTo(50 / Math.cos(deg(22.5)), 9);
    expect(twist).toBeCloseTo(deg(22.5), 9);
  });

  test("the two mouths and the corner point are a triangle of two equal sides whose angle is what is left of the turn", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 110, noNaN: true }), fc.double({ min: 30, max: 200, noNaN: true }), (turn, width) => {
        const { setback, chord } = shape(turn, width);
        // The law of cosines.
        const angle = Math.PI - deg(turn);
        expect(chord ** 2).toBeCloseTo(2 * setback ** 2 - 2 * setback ** 2 * Math.cos(angle), 4);
      }),
    );
  });

  test("as the turn vanishes it is a line post: as long as wide, its middle on the line", () => {
    const { setback, inset, chord, twist } = shape(1e-6);
    expect([setback, inset, chord, twist].map((value) => Math.round(value * 1e5) / 1e5)).toEqual([50, 0, 100, 0]);
  });
});

test("a bore on the mitre comes as near to the arris as a quarter of the diagonal; one straight through half the width", () => {
  const corner = { homeId: "A", nextIndex: 1, nextId: "B", nextStation: 0, turn: deg(90), isPassed: true, isSetOff: false, ...shape(90) };
  expect(besideBore({ across: 100, corner })).toBeCloseTo((100 * Math.SQRT2) / 4, 9);
  expect(besideBore({ across: 100, corner: { ...corner, faces: "opposite" } })).toBe(50);
});

const NAME = "0014-corners-of-one-post";
/** The example with other sides. */
const ofSides = (sides: string, changes: Readonly<Record<string, string>> = {}): string => withSides(changedText(NAME, changes), sides);

/** An L of two like sides with one post, all else alike. */
const ell = (turn: string): Plan =>
  planOf(
    ofSides(`    - length: 8 ft\n      turn: ${turn}\n      corner: one post\n    - length: 8 ft\n`, {
      "start: { kind: wall, gap: 3-1/2 in, access: hand }": "start: { kind: post, access: drill }",
      "end: { kind: wall, gap: 3-1/2 in, access: hand }": "end: { kind: post, access: drill }",
    }),
  );

const cornerPostOf = (plan: Plan) => plan.verticals.find(({ corner }) => corner !== undefined);

describe("the frame of one post at a corner", () => {
  test("a square corner of two like sides pushes it alike both ways", () => {
    const plan = ell("right 90 deg");
    const id = cornerPostOf(plan)?.id;
    const [along, around] = plan.frame.sides.map(({ posts }) => posts.find(({ postId }) => postId === id));
    expect(along?.movement).toBeDefined();
    expect(Math.abs(around?.movement ?? 0)).toBeCloseTo(Math.abs(along?.movement ?? Number.NaN), 6);
    expect(Math.abs(around?.baseMoment_Nmm ?? 0)).toBeCloseTo(Math.abs(along?.baseMoment_Nmm ?? Number.NaN), 0);
    expect(plan.frame.sides[0]?.topRailThrust).toBeCloseTo(plan.frame.sides[1]?.topRailThrust ?? Number.NaN, 4);
  });

  test("inside and outside corners strain the frame alike", () => {
    const ratios = (plan: Plan) => plan.frame.checks.map(({ name, ratio }) => [name, ratio === null ? null : Number(ratio.toFixed(9))]);
    expect(ratios(ell("left 90 deg"))).toEqual(ratios(ell("right 90 deg")));
    expect(ratios(ell("left 45 deg"))).toEqual(ratios(ell("right 45 deg")));
  });

  test("the post of a corner that hardly turns is hardly pushed", () => {
    const ratio = (turn: string): number =>
      ell(turn).frame.checks.find(({ name }) => name === "bending of corner posts by the cables")?.ratio ?? Number.NaN;
    expect(ratio("right 3 deg")).toBeLessThan(0.15 * ratio("right 60 deg"));
    expect(ratio("right 60 deg")).toBeLessThan(ratio("right 90 deg"));
  });

  test("its resultant is that of the whole turn: twice the tension times the sine of half of it", () => {
    for (const [turn, angle] of [
      ["right 90 deg", 90],
      ["left 45 deg", 45],
    ] as const) {
      const plan = ell(turn);
      const post = cornerPostOf(plan);
      const [bend, ...others] = plan.pulls.filter(({ cause }) => cause === "bend");
      const beside = plan.bays.filter(({ leftId, rightId }) => leftId === post?.id || rightId === post?.id).map(({ id }) => id);
      const tension = Math.max(...(plan.runs[0]?.spans ?? []).filter(({ bayId }) => beside.includes(bayId)).map((span) => span.tension));
      expect(others).toEqual([]);
      expect(bend?.pull_target).toBeCloseTo(plan.courses.length * 2 * tension * Math.sin(deg(angle / 2)), 6);
    }
  });
});

describe("a curve of many small turns on one post each", () => {
  const curve = (turns: number, turn: number) =>
    makePlan(
      jobOf(
        ofSides(`${`    - length: 40 in\n      turn: right ${turn} deg\n      corner: one post\n`.repeat(turns)}    - length: 40 in\n`),
      ),
    );

  test("one run goes round eight turns of 12 degrees: they count as 96 / 90 of a corner", () => {
    const { value: plan } = curve(8, 12);
    expect(plan?.runs.map(({ sideIds }) => sideIds.length)).toEqual([9]);
    expect(plan?.checks.find(({ id }) => id === "run-corners-R1")?.demand?.value).toBeCloseTo(96 / 90, 9);
    // All of its turns, by halves.
    expect(plan?.runs[0]?.bends.map(({ angle }) => angle)).toHaveLength(16);
    expect(plan?.runs[0]?.bends.reduce((sum, { angle }) => sum + angle, 0)).toBeCloseTo(deg(96), 9);
  });

  test("turns of 16 degrees are corners each: no run goes round three of them, and none may end on such a post", () => {
    const { value, problems } = curve(3, 16);
    expect(value).toBeUndefined();
    expect(problems.map(({ what }) => what)).toEqual(["the guard cannot be cut into runs that keep the limits"]);
  });
});
