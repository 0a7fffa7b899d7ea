// Can every drawing of every job be read: texts inside the paper, apart from each other, none too small?
import { describe, expect, test } from "vitest";
import { overlap, type Quad } from "../../../src/drawing/box.ts";
import { struckTexts } from "../../support/svg-lines.ts";
import { textsOf, viewBoxOf } from "../../support/svg-texts.ts";
import { allDrawings, testedPlans } from "./all-drawings.ts";

/** 9 pt in mm; the smallest type on paper (packet rules; common practice, no source). */
const NINE_POINTS_mm = (9 * 25.4) / 72;
/** One line under a drawing. */
const CAPTION_mm = 8;
/** Letters may touch the edge by this much: the margin of the measuring itself. */
const PLAY_mm = 0.02;

describe.each(Object.keys(testedPlans))("drawings of %s", (name) => {
  const plan = testedPlans[name]?.();
  if (plan === undefined) throw new Error(`no plan ${name}`);
  const onLetter = allDrawings(plan, "letter");
  const onA4 = allDrawings(plan, "a4");
  const all = [...onLetter.map((one) => ({ ...one, paper: "letter" })), ...onA4.map((one) => ({ ...one, paper: "a4" }))];

  test("each drawing fits the content box of its sheet, on Letter and on A4", () => {
    for (const { drawing, paper, width, height } of all) {
      expect.soft(drawing.width_mm, `${drawing.id} on ${paper}`).toBeLessThanOrEqual(width);
      expect.soft(drawing.height_mm, `${drawing.id} on ${paper}`).toBeLessThanOrEqual(height - CAPTION_mm);
    }
  });

  test("each text lies inside its drawing", () => {
    for (const { drawing, paper } of all) {
      const { left, top, width, height } = viewBoxOf(drawing.svg);
      expect.soft([width, height], drawing.id).toEqual([drawing.width_mm, drawing.height_mm]);
      for (const { text, corners } of textsOf(drawing.svg)) {
        const out = corners.filter(
          ({ x, y }) => x < left - PLAY_mm || x > left + width + PLAY_mm || y < top - PLAY_mm || y > top + height + PLAY_mm,
        );
        expect.soft(out, `"${text}" in ${drawing.id} on ${paper}`).toEqual([]);
      }
    }
  });

  test("no two texts of a drawing overlap", () => {
    for (const { drawing, paper } of all) {
      const texts = textsOf(drawing.svg);
      expect.soft(texts.length, drawing.id).toBeGreaterThan(2);
      const clashes = texts.flatMap((one, index) =>
        texts
          .slice(index + 1)
          .flatMap((other) =>
            overlap(one.corners as unknown as Quad, other.corners as unknown as Quad) ? [`"${one.text}" / "${other.text}"`] : [],
          ),
      );
      expect.soft(clashes, `${drawing.id} on ${paper}`).toEqual([]);
    }
  });

  // The line of the target in the plot of steps reaches the numbers at its right-hand end, and no further.
  test("no line runs through a text", () => {
    for (const { drawing, paper } of all) {
      if (drawing.id.startsWith("tension-steps")) continue;
      expect.soft(struckTexts(drawing.svg, textsOf(drawing.svg)), `${drawing.id} on ${paper}`).toEqual([]);
    }
  });

  test("one spacer is no spacers", () => {
    for (const { drawing } of onLetter) expect.soft(drawing.svg, drawing.id).not.toMatch(/\b1 spacers/);
  });

  test("no text is smaller than 9 pt", () => {
    for (const { drawing } of all) {
      for (const { text, size } of textsOf(drawing.svg))
        expect.soft(size, `"${text}" in ${drawing.id}`).toBeGreaterThanOrEqual(NINE_POINTS_mm - 1e-9);
    }
  });

  test("ids are unique within a packet, and a drawing is one string of characters up to 0xFF", () => {
    const ids = onLetter.map(({ drawing }) => drawing.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { drawing } of onLetter) {
      expect
        .soft(
          [...drawing.svg].every((letter) => letter.charCodeAt(0) <= 0xff),
          drawing.id,
        )
        .toBe(true);
      const own = [...drawing.svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      expect.soft(own).toEqual([`${drawing.id}-title`, `${drawing.id}-desc`]);
      expect.soft(drawing.svg).not.toMatch(/NaN|Infinity|undefined|null|e-\d|"-0[" ]/);
    }
  });

  test("the same plan gives the same bytes", () => {
    expect(allDrawings(plan, "letter").map(({ drawing }) => drawing.svg)).toEqual(onLetter.map(({ drawing }) => drawing.svg));
  });
});
