// Are the templates of every example true to size in the finished PDF? Rulers, bores and lines are measured there, not in the drawing.
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contentBox } from "../../src/drawing/paper.ts";
import type { Paper } from "../../src/job/job.ts";
import { makeTemplates } from "../../src/packet/make-templates.ts";
import { showIn } from "../../src/packet/show-number.ts";
import { type Template, templatesOf } from "../../src/packet/templates/faces.ts";
import { polesOf } from "../../src/packet/templates/pole.ts";
import { tilesOf } from "../../src/packet/templates/template-strips.ts";
import { inspectPdf } from "../../src/pdf/inspect.ts";
import type { Printer } from "../../src/pdf/print.ts";
import type { Bore, Plan } from "../../src/plan/plan.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { printCopy } from "../../src/site/print-copy.ts";
import { packageRoot } from "../../src/site/root.ts";
import { exampleNames, examplePlan, exampleText, planOf } from "../support/example-jobs.ts";
import { type PdfLine, type PdfShapes, type Place, readPdfShapes } from "../support/pdf-shapes.ts";
import { readPdfText } from "../support/pdf-text.ts";
import { finishOptions, printJob, testPrinter } from "../support/test-printer.ts";

/** What the crew can see on a ruler is 0.5 mm; the paper must leave all of it to the printer. */
const TRUE_mm = 0.1;
const papers = ["letter", "a4"] as const;
const layouts = makeLayouts(packageRoot());
let printer: Printer;
beforeAll(() => {
  printer = testPrinter();
});
afterAll(() => printer.close());

const print = async (plan: Plan, paper: Paper): Promise<Buffer> => {
  const packet = makeTemplates({ plan, paper, stamp: { jobHash: "0123456789ab", programVersion: "test" } });
  const finish = { ...finishOptions, fullSize: true };
  const heightOf = (orientation: "portrait" | "landscape"): number => contentBox({ paper, orientation }).height * (96 / 25.4);
  const heights = { portrait: heightOf("portrait"), landscape: heightOf("landscape") };
  return (await printer.print(printJob(printCopy(packet, layouts), { heights, measure: "always", finish }))).bytes;
};

const lengthOf = ({ from, to }: PdfLine): number => Math.hypot(to.x - from.x, to.y - from.y);
const isUpright = ({ from, to }: PdfLine): boolean => Math.abs(from.x - to.x) < 0.01;
const isLevel = ({ from, to }: PdfLine): boolean => Math.abs(from.y - to.y) < 0.01;
/** The ruler of about this length; only its own line is as thin as an edge and as long. */
const ruler = ({ lines }: PdfShapes, about: number, lies: (line: PdfLine) => boolean): number | undefined =>
  lines
    .filter((line) => lies(line) && Math.abs(line.width_mm - 0.3) < 0.02)
    .map(lengthOf)
    .filter((length) => Math.abs(length - about) < 0.5)
    .at(-1);

/** The lower cut line of each tile from left to right: the only level lines of the outline's pen. */
const cutLines = ({ lines }: PdfShapes): readonly PdfLine[] =>
  lines
    .filter((line) => isLevel(line) && Math.abs(line.width_mm - 0.5) < 0.02 && lengthOf(line) > 30)
    .toSorted((a, b) => a.from.x - b.from.x);

interface Due {
  readonly right: number;
  readonly height: number;
  readonly diameter: number;
  /** Along the upright: a bore at an angle meets the face in an ellipse, as high as its diameter over the cosine. */
  readonly up: number;
}

/** What the schedule of bores (Z-603) says of the faces of a template, read from the bores themselves. */
const dueOn = ({ uprights, face }: Template, plan: Plan): readonly (readonly Due[])[] =>
  uprights.map(({ id }) =>
    plan.bores
      .filter((bore) => bore.verticalId === id)
      .flatMap((bore: Bore): readonly Due[] => {
        const right = face === "right" ? bore.offset : -bore.offset;
        const at = { right, height: bore.entryFace === face ? bore.entryHeight : bore.exitHeight };
        const round = (diameter: number): Due => ({ ...at, diameter: diameter / Math.cos(bore.skew), up: diameter / Math.cos(bore.angle) });
        return [
          // On the mitre the face where the bore comes out is marked as well.
          ...(bore.entryFace === face || bore.skew !== 0 ? [round(bore.diameter)] : []),
          ...(bore.entryFace === face && bore.sleeveHole !== undefined ? [round(bore.sleeveHole)] : []),
          ...(bore.counterbore?.face === face ? [round(bore.counterbore.diameter), round(bore.diameter)] : []),
        ];
      }),
  );

/** Where slanted bores come out on the other face, as the schedule has it; nearer to the hole than this they are told in words only. */
const exitsOn = ({ uprights: [upright], face }: Template, plan: Plan): readonly Place[] =>
  plan.bores
    .filter(({ verticalId, angle, entryFace, counterbore }) => {
      const isHere = entryFace === face || counterbore?.face === face;
      return verticalId === upright?.id && angle !== 0 && isHere;
    })
    .map(({ entryFace, entryHeight, exitHeight, offset }): readonly [Place, number] => {
      const [from, to] = entryFace === face ? [entryHeight, exitHeight] : [exitHeight, entryHeight];
      return [{ x: face === "right" ? offset : -offset, y: to }, Math.abs(to - from)];
    })
    .filter(([, rise]) => rise >= EXIT_mm)
    .map(([place]) => place);

const EXIT_mm = 2.6;

/** Middles of the crosses of two slanted strokes, each as wide as high. */
const saltires = ({ lines }: PdfShapes): readonly Place[] => {
  const strokes = lines.filter(
    ({ from, to, width_mm }) =>
      Math.abs(width_mm - 0.18) < 0.02 && Math.abs(Math.abs(from.x - to.x) - 3.2) < 0.05 && Math.abs(Math.abs(from.y - to.y) - 3.2) < 0.05,
  );
  const middleOf = ({ from, to }: PdfLine): Place => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
  const isRising = ({ from, to }: PdfLine): boolean => (to.x - from.x) * (to.y - from.y) > 0;
  const rising = strokes.filter(isRising).map(middleOf);
  const falling = strokes.filter((line) => !isRising(line)).map(middleOf);
  return rising.filter((one) => falling.some((other) => Math.hypot(one.x - other.x, one.y - other.y) < 0.02));
};

/** Registration marks are rounds as well: of this size, on the joints. */
const CROSS_mm = 4.4;

interface Measured {
  readonly worst: number;
  readonly holes: number;
  readonly exits: number;
}

/** Every round of a template's pages against the schedule of each of its uprights. */
const measure = (template: Template, pages: readonly PdfShapes[], plan: Plan, paper: Paper): Measured => {
  const tiles = tilesOf(template, { plan, paper, show: showIn(plan.job.units) });
  const found: Due[] = [];
  const exits: Place[] = [];
  let next = 0;
  for (const page of pages) {
    for (const line of cutLines(page)) {
      const tile = tiles[next];
      next += 1;
      if (tile === undefined) throw new Error(`${template.id} has more tiles on its pages than it should`);
      const [left, right] = [Math.min(line.from.x, line.to.x), Math.max(line.from.x, line.to.x)];
      const middle = (left + right) / 2;
      for (const { centre, across, up } of page.rounds) {
        if (centre.x < left || centre.x > right) continue;
        const height = tile.from + centre.y - line.from.y;
        const isJoint = Math.abs(across - CROSS_mm) < 0.05 && [tile.from, tile.to].some((joint) => Math.abs(height - joint) < 0.5);
        if (isJoint) continue;
        found.push({ right: centre.x - middle, height, diameter: across, up });
      }
      for (const { x, y } of template.rake === null ? [] : saltires(page)) {
        if (x >= left && x <= right) exits.push({ x: x - middle, y: tile.from + y - line.from.y });
      }
    }
  }
  expect(next).toBe(tiles.length);
  let worst = 0;
  for (const due of dueOn(template, plan)) {
    expect(found).toHaveLength(due.length);
    for (const hole of due) {
      const off = found.map((one) =>
        Math.max(
          Math.hypot(one.right - hole.right, one.height - hole.height),
          Math.abs(one.diameter - hole.diameter),
          Math.abs(one.up - hole.up),
        ),
      );
      worst = Math.max(worst, Math.min(...off));
    }
  }
  const dueExits = exitsOn(template, plan);
  expect(exits, template.id).toHaveLength(dueExits.length);
  for (const due of dueExits) worst = Math.max(worst, Math.min(...exits.map(({ x, y }) => Math.hypot(x - due.x, y - due.y))));
  return { worst, holes: found.length, exits: exits.length };
};

/** How steeply the lower edge of the first tile climbs outward over its flaps; 0 where it is level all along. */
const flapSlope = (page: PdfShapes | undefined, { width }: Template): number => {
  const lower = (page?.lines ?? []).filter((line) => Math.abs(line.width_mm - 0.5) < 0.02 && !isLevel(line));
  const [foot] = page === undefined ? [] : cutLines(page);
  const first = lower.filter(({ from, to }) => Math.min(from.x, to.x) < (foot?.to.x ?? 0) + 20);
  const slopes = first.map(({ from, to }) => (to.y - from.y) / (to.x - from.x));
  // The two flaps are the same, mirrored; the level part between them is as wide as the face.
  if (slopes.length === 0) return 0;
  expect(slopes).toHaveLength(2);
  expect(Math.abs(lengthOf(foot ?? { from: { x: 0, y: 0 }, to: { x: 0, y: 0 }, width_mm: 0 }) - width)).toBeLessThan(TRUE_mm);
  expect((slopes[0] ?? 0) + (slopes[1] ?? 0)).toBeCloseTo(0, 3);
  return slopes.at(-1) ?? 0;
};

/** A spacer is cut along the slope: seen from its left face that is how its side climbs, from its right face how it falls. */
const flapDue = ({ kind, face, uprights: [upright] }: Template): number =>
  kind === "post" ? 0 : (face === "left" ? 1 : -1) * Math.tan(upright?.slope ?? 0);

// The sloping jobs are not built yet, but their templates are measured as well.
describe.each(exampleNames.flatMap((name) => papers.map((paper) => ({ name, paper }))))("$name on $paper", ({ name, paper }) => {
  test("has rulers of 150 mm and 6 in both ways on each page of tiles, and every bore where the schedule has it", async () => {
    const plan = examplePlan(name);
    const bytes = await print(plan, paper);
    const shapes = await readPdfShapes(bytes);
    const { pages } = await readPdfText(bytes);
    const isOf = (text: string, id: string): boolean => new RegExp(` ${id}, [^:]*: tiles? \\d`).test(text);
    const tilePages = shapes.filter((_, index) => /: tiles? \d+ (to \d+ )?of \d/.test(pages[index]?.text ?? ""));
    expect(tilePages.length).toBeGreaterThan(5);
    for (const page of tilePages) {
      for (const lies of [isLevel, isUpright]) {
        for (const about of [150, 152.4]) expect.soft(Math.abs((ruler(page, about, lies) ?? 0) - about)).toBeLessThan(TRUE_mm);
      }
    }
    const templates = templatesOf(plan);
    let [holes, exits] = [0, 0];
    for (const template of templates) {
      const own = shapes.filter((_, index) => isOf(pages[index]?.text ?? "", template.id));
      const measured = measure(template, own, plan, paper);
      expect.soft(measured.worst, template.id).toBeLessThan(TRUE_mm);
      holes += measured.holes;
      exits += measured.exits;
      expect.soft(Math.abs(flapSlope(own[0], template) - flapDue(template)), template.id).toBeLessThan(0.01);
    }
    // Each post on a slope is wide enough for the mark, and a template stands for every course.
    expect(exits).toBeGreaterThanOrEqual(plan.rakes.length * plan.courses.length);
    expect(holes).toBeGreaterThanOrEqual(plan.courses.length * 3);
    // Nothing of the templates stands anywhere but on the pages made for it, and each page is one sheet of this paper.
    expect(pages.length).toBeLessThanOrEqual(tilePages.length + 4);
    for (const [index, page] of pages.entries()) {
      const [width, height] = paper === "letter" ? [612, 792] : [595.28, 841.89];
      expect.soft(Math.abs(page.width_pt - width), `page ${index + 1}`).toBeLessThan(0.5);
      expect.soft(Math.abs(page.height_pt - height), `page ${index + 1}`).toBeLessThan(0.5);
      expect.soft(page.sizes_pt[0], `page ${index + 1}`).toBeGreaterThan(8.95);
    }
    expect(bytes.toString("latin1")).toMatch(/\/ViewerPreferences <<[^>]*\/PrintScaling \/None/);
    expect(Math.abs((inspectPdf(bytes).bar_mm ?? 0) - 100)).toBeLessThan(TRUE_mm);
  });
});

test("lines of the story pole stand at the heights of the bores", async () => {
  const plan = examplePlan(exampleNames[0] ?? "");
  const bytes = await print(plan, "letter");
  const [shapes, { pages }] = [await readPdfShapes(bytes), await readPdfText(bytes)];
  const [pole] = polesOf(plan);
  const own = shapes.filter((_, index) => /Pole A, to glue/.test(pages[index]?.text ?? ""));
  const heights: number[] = [];
  let base = 0;
  for (const page of own) {
    for (const cut of cutLines(page)) {
      const marks = page.lines.filter(
        (line) =>
          isLevel(line) &&
          Math.abs(line.width_mm - 0.3) < 0.02 &&
          Math.abs(lengthOf(line) - 44) < 0.1 &&
          Math.abs(line.from.x - cut.from.x) < 0.1,
      );
      const above = marks.map(({ from }) => from.y - cut.from.y).sort((a, b) => a - b);
      heights.push(...above.map((height) => base + height));
      // The last line but the paper's edge is where the next tile lies.
      base += above.at(-2) ?? 0;
    }
  }
  for (const { height } of pole?.marks ?? []) expect.soft(Math.min(...heights.map((one) => Math.abs(one - height)))).toBeLessThan(TRUE_mm);
  expect(pole?.marks).toHaveLength(plan.courses.length);
});

test("a set for one printer is as much too long as that printer makes it too short, and says whose it is on every tile", async () => {
  const plan = planOf(`${exampleText(exampleNames[0] ?? "")}\nprinter: { name: office, across: 149.2 mm, up: 149.6 mm }\n`);
  const bytes = await print(plan, "a4");
  const [shapes, { pages }] = [await readPdfShapes(bytes), await readPdfText(bytes)];
  const tiled = shapes.flatMap((page, index) =>
    /: tiles? \d+ (to \d+ )?of \d/.test(pages[index]?.text ?? "") ? [{ page, text: pages[index]?.text ?? "" }] : [],
  );
  expect(tiled.length).toBeGreaterThan(5);
  for (const { page, text } of tiled) {
    // Put through the printer the rulers come out right: 150.804 * 149.2 / 150 = 150.
    expect.soft(Math.abs((ruler(page, 150.804, isLevel) ?? 0) * (149.2 / 150) - 150)).toBeLessThan(TRUE_mm);
    expect.soft(Math.abs((ruler(page, 150.401, isUpright) ?? 0) * (149.6 / 150) - 150)).toBeLessThan(TRUE_mm);
    expect
      .soft(text.match(/only for printer office: its rulers measured 149.2 across, 149.6 mm up/g)?.length ?? 0)
      .toBeGreaterThanOrEqual(2);
  }
});

test("a packet that fails says so on every tile", async () => {
  const plan = examplePlan("0007-too-much-for-the-frame");
  const { pages } = await readPdfText(await print(plan, "letter"));
  const tiled = pages.filter(({ text }) => /: tiles? \d+ (to \d+ )?of \d/.test(text));
  for (const { text } of tiled) {
    const tiles = (text.match(/cut here/g) ?? []).length;
    // Once in the margin of the page, and in the words along the edge of each tile.
    expect.soft((text.match(/NOT FOR CONSTRUCTION/g) ?? []).length).toBeGreaterThan(tiles);
  }
  expect(tiled.length).toBeGreaterThan(5);
});

test("is the same file twice", async () => {
  const plan = examplePlan(exampleNames[0] ?? "");
  expect((await print(plan, "letter")).equals(await print(plan, "letter"))).toBe(true);
});
