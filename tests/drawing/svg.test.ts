import { describe, expect, test } from "vitest";
import { circle, coveredStrokes, polygon, strokes } from "../../src/drawing/shape.ts";
import { finishSvg } from "../../src/drawing/svg.ts";
import { label } from "../../src/drawing/text.ts";

const parts = [
  strokes("thin", [
    [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ],
  ]),
  label("P1", { x: 2, y: 2 }, { ground: true }),
  circle({ x: 5, y: 5 }, 1, { pen: "edge", fill: "white" }),
  strokes("thin", [
    [
      { x: 0, y: 8 },
      { x: 10, y: 8 },
    ],
  ]),
  strokes("hidden", [
    [
      { x: 0, y: 9 },
      { x: 10, y: 9 },
    ],
  ]),
  polygon(
    [
      { x: 0, y: 0 },
      { x: 1, y: 0 },
      { x: 1, y: 1 },
    ],
    { pen: "edge", fill: "white" },
  ),
];
const { svg, width_mm, height_mm } = finishSvg({ id: "side-a", title: "Side A", description: "One & only", parts });

describe("coveredStrokes", () => {
  const from = (y: number) => [
    [
      { x: 0, y },
      { x: 4, y },
    ],
  ];
  test("are written between the shapes before and behind them; other strokes lie over all", () => {
    const round = (x: number) => circle({ x, y: 0 }, 1, { pen: "edge", fill: "white" });
    const drawn = finishSvg({
      id: "a",
      title: "A",
      description: "a",
      parts: [strokes("thin", from(1)), round(1), coveredStrokes("edge", from(2)), round(2)],
    }).svg;
    const places = ['cx="1"', 'd="M0 2', 'cx="2"', 'd="M0 1'].map((what) => drawn.indexOf(what));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(Math.min(...places)).toBeGreaterThan(0);
  });
});

describe("finishSvg", () => {
  test("size and viewBox are in paper mm and agree, and hold everything drawn with 0.5 mm around it", () => {
    expect(svg).toContain(`width="${width_mm}mm" height="${height_mm}mm" viewBox="-0.65 -0.65 ${width_mm} ${height_mm}"`);
    // From the edge of a line 0.3 mm thick at 0 to that of one 0.25 mm thick at 10, and 0.5 mm on both sides, up to the next 0.1 mm.
    expect(width_mm).toBeCloseTo(11.3, 9);
    expect(height_mm).toBeCloseTo(10.3, 9);
  });

  test("it is named for people who cannot see it, with ids made from its own name", () => {
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" role="img" aria-labelledby="side-a-title side-a-desc"/);
    expect(svg).toContain('<title id="side-a-title">Side A</title><desc id="side-a-desc">One &amp; only</desc>');
  });

  test("two lines of the thin pen become one path; the dashed one stays by itself", () => {
    expect([...svg.matchAll(/<path [^>]*fill="none"/g)]).toHaveLength(2);
    expect(svg).toContain('d="M0 0H10M0 8H10"');
  });

  test("shapes come before lines, and texts with their white ground last", () => {
    const order = ["<circle", 'fill="none"', '<rect class="ground"', "<text"].map((piece) => svg.indexOf(piece));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order.every((at) => at > 0)).toBe(true);
  });
});
