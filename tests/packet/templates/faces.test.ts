import { describe, expect, test } from "vitest";
import { MARK_mm, textWidth } from "../../../src/drawing/text.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import { halfHeight, marksOf, type TemplateHole, templatesOf } from "../../../src/packet/templates/faces.ts";
import { holeWords } from "../../../src/packet/templates/hole-words.ts";
import { polesOf, withoutPole } from "../../../src/packet/templates/pole.ts";
import { edgeWords } from "../../../src/packet/templates/slope-words.ts";
import { tilesOf } from "../../../src/packet/templates/template-strips.ts";
import type { Vertical } from "../../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../../support/example-jobs.ts";

const upright = (id: string): Vertical => ({ id }) as Vertical;

describe("marksOf", () => {
  test("neighbours stand in one, two alone do not", () => {
    expect(marksOf(["P1", "P3", "P4", "P6", "P7", "P8", "S1"].map(upright))).toBe("P1, P3, P4, P6 to P8, S1");
  });
});

describe("halfHeight", () => {
  const hole: TemplateHole = {
    mark: "P1-01",
    course: 1,
    here: { right: 0, height: 100 },
    there: { right: 0, height: 100 },
    angle: 0,
    skew: 0,
    isExit: false,
    diameter: 10,
    drilledLength: 88.9,
    through: true,
    oneWall: false,
    sleeveHole: null,
    counterbore: null,
  };

  test("a level hole is round", () => expect(halfHeight(hole)).toBe(5));

  test("a bore at 60 degrees to a square one meets the face in an ellipse twice as high as wide", () => {
    expect(halfHeight({ ...hole, angle: Math.PI / 3 })).toBeCloseTo(10, 9);
    expect(halfHeight({ ...hole, angle: -Math.PI / 3 })).toBeCloseTo(10, 9);
  });

  test("a counterbore counts with its own size", () => expect(halfHeight({ ...hole, counterbore: { diameter: 16, depth: 20 } })).toBe(8));
});

const raked = ["0012-stair-from-landing", "0013-ramp-to-porch"];

/** A stair without a bottom rail: its lowest bores begin or come out just above the nosings; steeper, below them. */
const noRail: Readonly<Record<string, string>> = {
  "bottom rail: { size: 2x4, lay: edge, material: wood, treated: true, species: Douglas Fir-Larch, grade: No.1 }": "",
  "  gap below: 2 in\n": "",
  "    gap below: 1 in               # plumb above the nosings: 6 in must not pass at riser and tread\n": "",
  "clear opening: 29 in": "clear opening: 34-1/2 in",
};
const steep = { ...noRail, "riser: 7 in, tread: 10-1/2 in, nosing: 3/4 in": "riser: 7 in, tread: 7-1/4 in, nosing: 0 in" };
const stair = "0012-stair-from-landing";
const plans = [
  ...exampleNames.map((name) => ({ name, plan: examplePlan(name), isRaked: raked.includes(name) })),
  { name: "a stair without a bottom rail", plan: planOf(changedText(stair, noRail)), isRaked: true },
  { name: "a steep stair without a bottom rail", plan: planOf(changedText(stair, steep)), isRaked: true },
];

describe.each(plans)("templates of $name", ({ plan, isRaked }) => {
  const templates = templatesOf(plan);

  test("hold each bore of each upright once where its bit goes in, and each counterbore once", () => {
    const seen = templates.flatMap(({ uprights, face, holes }) =>
      uprights.flatMap(({ id }) =>
        holes.map(
          (hole) =>
            `${id} ${face} ${hole.course} ${hole.here.height} ${face === "right" ? hole.here.right : -hole.here.right + 0} ${hole.counterbore === null ? "bore" : "counterbore"}`,
        ),
      ),
    );
    const due = plan.bores.flatMap(({ verticalId, entryFace, course, entryHeight, exitHeight, offset, skew, counterbore }) => [
      // On the mitre the face where it comes out has it too.
      ...(skew === 0 ? [] : [`${verticalId} ${entryFace === "left" ? "right" : "left"} ${course} ${exitHeight} ${offset} bore`]),
      `${verticalId} ${entryFace} ${course} ${entryHeight} ${offset} bore`,
      ...(counterbore === null
        ? []
        : [
            `${verticalId} ${counterbore.face} ${course} ${counterbore.face === entryFace ? entryHeight : exitHeight} ${offset} counterbore`,
          ]),
    ]);
    expect(seen.toSorted()).toEqual(due.toSorted());
  });

  test("uprights that share one have the same face, and each has its own number", () => {
    for (const { uprights, width } of templates) for (const { across } of uprights) expect(across).toBe(width);
    expect(new Set(templates.map(({ id }) => id)).size).toBe(templates.length);
  });

  test("a story pole has every height of its uprights", () => {
    for (const { uprights, faces, marks } of polesOf(plan)) {
      for (const { id, corner } of uprights) {
        // Of a corner post that is bored from two faces at two heights the face that looks to the side of the pole.
        const toward = faces.find((one) => one.id === id)?.sideId;
        const isOn = (face: string): boolean => toward === undefined || toward === (face === "left" ? corner?.homeId : corner?.nextId);
        expect(toward !== undefined).toBe(corner?.isSetOff === true);
        const own = plan.bores.filter(({ verticalId, entryFace }) => verticalId === id && isOn(entryFace));
        const heights = new Set(own.map(({ entryHeight }) => entryHeight));
        expect(new Set(marks.map(({ height }) => height))).toEqual(heights);
      }
    }
    // Such a post has two poles.
    const twice = plan.verticals.filter(({ corner }) => corner?.isSetOff === true).length;
    expect([...polesOf(plan).flatMap(({ uprights }) => uprights), ...withoutPole(plan)]).toHaveLength(plan.verticals.length + twice);
  });

  // The two faces of an upright on a slope are bored at two heights: one stick is wrong on one of them, or on both.
  test("no pole stands for an upright whose bores slant", () => {
    const slanted = new Set(plan.bores.filter(({ angle }) => angle !== 0).map(({ verticalId }) => verticalId));
    expect(slanted.size > 0).toBe(isRaked);
    for (const { uprights } of polesOf(plan)) for (const { id } of uprights) expect(slanted.has(id)).toBe(false);
    expect(withoutPole(plan).map(({ id }) => id)).toEqual(plan.verticals.filter(({ id }) => slanted.has(id)).map(({ id }) => id));
  });

  test("words of the lower edge name no bottom rail where there is none, and say how far below its mark a strip begins", () => {
    const show = showIn(plan.job.units);
    for (const template of templates) {
      const lowest = tilesOf(template, { plan, paper: "letter", show })[0]?.from ?? 0;
      const words = edgeWords(template, lowest, { plan, show });
      expect
        .soft(words.includes("bottom rail"))
        .toBe(plan.job.frame.bottomRail !== null && template.kind === "spacer" && template.rake === null);
      expect.soft(/^this edge lies .* below/.test(words)).toBe(lowest < template.foot);
      if (plan.job.frame.bottomRail === null) expect.soft(template.rail).toBeNull();
    }
  });

  test("words of a hole stand between the edges of its face, clear of the next hole and of each other", () => {
    for (const { holes, width, face, id } of templates) {
      const half = width / 2;
      const bands = holes.map((hole) => {
        const { lines, above, below } = holeWords(hole, { show: showIn(plan.job.units), half, face });
        for (const { text, isBold, at, anchor } of lines) {
          const wide = textWidth(text, isBold ? { size: MARK_mm, weight: 700 } : {});
          const left = at.x - (anchor === "start" ? 0 : anchor === "middle" ? wide / 2 : wide);
          expect.soft(Math.max(-left, left + wide), `${id}: ${text}`).toBeLessThanOrEqual(half + 1e-9);
          expect.soft(Math.abs(at.y), `${id}: ${text}`).toBeLessThan(at.y > 0 ? above : below);
        }
        return { low: hole.here.height - below, high: hole.here.height + above, right: hole.here.right };
      });
      for (const [index, band] of bands.entries()) {
        const next = bands.slice(index + 1).find(({ right }) => right === band.right);
        if (next !== undefined) expect.soft(next.low, id).toBeGreaterThanOrEqual(band.high - 1);
      }
    }
  });

  test("no line between tiles, and no end of a strip, crosses a hole or a mark where a bore comes out", () => {
    for (const paper of ["letter", "a4"] as const) {
      for (const template of templates) {
        const tiles = tilesOf(template, { plan, paper, show: showIn(plan.job.units) });
        const lines = [...tiles.map(({ from }) => from), tiles.at(-1)?.to ?? 0];
        const marks = template.holes.flatMap(({ here, there, angle, diameter, counterbore }) => [
          { at: here.height, reach: (counterbore?.diameter ?? diameter) / 2 / Math.cos(angle) },
          ...(angle === 0 ? [] : [{ at: there.height, reach: 1.6 }]),
        ]);
        for (const { at, reach } of marks) {
          expect.soft(Math.min(...lines), `${template.id} on ${paper}`).toBeLessThan(at - reach);
          expect.soft(Math.max(...lines), `${template.id} on ${paper}`).toBeGreaterThan(at + reach);
          for (const line of lines) expect.soft(Math.abs(line - at), `${template.id} on ${paper}`).toBeGreaterThan(reach);
        }
      }
    }
  });
});
