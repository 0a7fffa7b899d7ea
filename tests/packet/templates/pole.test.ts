// Can the words beside a story pole be read, or do its lines run through them?
import { describe, expect, test } from "vitest";
import { makeTemplates } from "../../../src/packet/make-templates.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { textsOf } from "../../support/svg-texts.ts";
import { stamp } from "../read-packet.ts";

/** Half of the width of the strip. */
const HALF_mm = 22;

describe("words up the edge of a story pole", () => {
  test.each(["0014-corners-of-one-post", "0018-corner-post-between-runs"])("%s: no line of a course runs through them", (name) => {
    const { sheets } = makeTemplates({ plan: examplePlan(name), stamp, paper: "letter" });
    const drawings = sheets.filter(({ id }) => id === "Z-702").flatMap(({ blocks }) => blocks.filter((block) => block.kind === "drawing"));
    let seen = 0;
    for (const { svg } of drawings) {
      const texts = textsOf(svg).map(({ text, corners }) => {
        const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
        return { text, left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
      });
      // The number of a course stands some 1.9 mm above its line.
      const lines = texts.filter(({ text }) => /^\d\d$/.test(text)).map(({ left, bottom }) => ({ x: left, y: bottom + 1.9 }));
      for (const { text, left, top, bottom } of texts.filter(({ text }) => /^Pole A:|^NOT FOR/.test(text))) {
        for (const { y } of lines.filter(({ x }) => Math.abs(x - left) < HALF_mm)) {
          seen += 1;
          expect
            .soft(y < top || y > bottom, `${text} from ${bottom.toFixed(2)} to ${top.toFixed(2)}, a line at ${y.toFixed(2)}`)
            .toBe(true);
        }
      }
    }
    expect(seen).toBeGreaterThan(10);
  });
});
