// Does the picture of the whole guard show what the plan holds, from where no side is hidden?
import { describe, expect, test } from "vitest";
import { eyeOf, prism, seen } from "../../../src/packet/drawings/solids.ts";
import { drawnOverview } from "../../../src/packet/sheets/drawn.ts";
import { textsOf } from "../../support/svg-texts.ts";
import { testedPlans } from "./all-drawings.ts";

describe.each(Object.entries(testedPlans))("overview of %s", (_, make) => {
  const plan = make();
  const [drawing] = drawnOverview(plan);
  if (drawing === undefined) throw new Error("no picture");
  const texts = textsOf(drawing.svg).map(({ text }) => text);

  test("names every side, and every post that holds or turns cables, once", () => {
    const marked = plan.verticals.filter(({ role }) => role !== "line" && role !== "spacer").map(({ id }) => id);
    const named = texts.filter((text) => /^(?:PR?\d+|side [A-Z]+)$/.test(text));
    expect([...named].sort()).toEqual([...marked, ...plan.sides.map(({ id }) => `side ${id}`)].sort());
  });

  test("has a line for each course in each bay that cables pass", () => {
    const strung = new Set(plan.runs.flatMap(({ bayIds }) => bayIds));
    const paths = [...drawing.svg.matchAll(/ d="((?:M[^MZ"]+){2,})" fill="none" stroke="#000" stroke-width="0.18"/g)].map(
      ([, path = ""]) => path.split("M").length - 1,
    );
    expect(paths.filter((count) => count === plan.courses.length).length).toBeGreaterThanOrEqual(strung.size);
  });

  test("shows at least three tenths of the length of every side", () => {
    const eye = eyeOf(plan);
    for (const { id, from, to, length } of plan.sides) {
      const [a, b] = [from, to].map((point) => seen(eye, { ...point, z: 0 }).x);
      expect.soft(Math.abs((b ?? 0) - (a ?? 0)) / length, `side ${id}`).toBeGreaterThan(0.3);
    }
  });

  test("looks out from the walking surface: what is left there is left in the picture, counted over all sides", () => {
    const eye = eyeOf(plan);
    const run = plan.sides.reduce((sum, { from, to }) => sum + seen(eye, { ...to, z: 0 }).x - seen(eye, { ...from, z: 0 }).x, 0);
    expect(run).toBeGreaterThan(0);
  });
});

describe("prism", () => {
  // Seen along y, from below left: of a box the face towards the eye and its top can be seen, and one of the two others.
  const ring = [
    { x: 0, y: 0, z: 0 },
    { x: 2, y: 0, z: 0 },
    { x: 2, y: 1, z: 0 },
    { x: 0, y: 1, z: 0 },
  ];
  const facesOf = (into: { readonly x: number; readonly y: number }): number =>
    prism({ ring, low: 0, high: 3 }, { into, right: { x: into.y, y: -into.x } }, ({ x, z }) => ({ x, y: -z }), "edge").filter(
      ({ mark }) => mark.kind === "polygon",
    ).length;

  test("of a box three faces are seen from a corner, two from straight before it", () => {
    expect([facesOf({ x: Math.SQRT1_2, y: Math.SQRT1_2 }), facesOf({ x: 0, y: 1 })]).toEqual([3, 2]);
  });
});
