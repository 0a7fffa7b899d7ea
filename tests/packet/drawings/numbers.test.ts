// Do drawings print the plan's own numbers, and what must stand on each?
import { describe, expect, test } from "vitest";
import { contentBox } from "../../../src/drawing/paper.ts";
import { calibrationBar } from "../../../src/packet/drawings/calibration-bar.ts";
import { dayPlot } from "../../../src/packet/drawings/day-plot.ts";
import { detailNotes, details } from "../../../src/packet/drawings/details.ts";
import { elevations } from "../../../src/packet/drawings/elevation.ts";
import { frictionPlot } from "../../../src/packet/drawings/friction-plot.ts";
import { openingDiagram } from "../../../src/packet/drawings/opening-diagram.ts";
import { symbolOf } from "../../../src/packet/drawings/plan-runs.ts";
import { planView } from "../../../src/packet/drawings/plan-view.ts";
import { tensionSteps } from "../../../src/packet/drawings/tension-steps.ts";
import { tighteningDiagram } from "../../../src/packet/drawings/tightening-diagram.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import { floorWord } from "../../../src/packet/wording.ts";
import { exampleNames, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";
import { textsOf } from "../../support/svg-texts.ts";

const portrait = contentBox({ paper: "letter", orientation: "portrait" });
const landscape = contentBox({ paper: "letter", orientation: "landscape" });
const wordsOf = (svg: string): readonly string[] => textsOf(svg).map(({ text }) => text);
const straight = examplePlan("0001-level-deck-straight");
const corners = examplePlan("0002-deck-two-corners");

describe.each(exampleNames)("drawings of %s", (name) => {
  const plan = examplePlan(name);
  const show = showIn(plan.job.units);

  test("the elevations print the height of every course, the station of every vertical and the free length of every bay", () => {
    for (const side of plan.sides) {
      const drawn = elevations(plan, side.index, landscape).flatMap(({ svg }) => wordsOf(svg));
      for (const { height, number, raised = height } of plan.courses) {
        expect.soft(drawn).toContain(show.tape(side.isRaised === true ? raised : height));
        if (raised !== height) expect.soft(drawn).not.toContain(show.tape(side.isRaised === true ? height : raised));
        expect.soft(drawn).toContain(String(number).padStart(2, "0"));
      }
      const own = plan.verticals.filter(({ sideIndex }) => sideIndex === side.index);
      // A pier stands where its side begins or ends: it has a name and no station.
      for (const { id, sectionName } of own.filter(({ kind }) => kind === "pier")) {
        expect.soft(drawn).toContain(`${id}: ${sectionName.toUpperCase()}`);
      }
      for (const { id, station } of own.filter(({ kind }) => kind !== "pier")) {
        expect.soft(drawn).toContain(show.feet(station));
        expect.soft(drawn).toContain(id);
      }
      const joined = drawn.join(" ");
      for (const bay of plan.bays.filter(({ sideId, kind }) => sideId === side.id && kind === "bay")) {
        // Half of a short bay at a match line has no room for the word "span".
        const named = [`${bay.id} (span ${show.tape(bay.free)})`, `${bay.id} (${show.tape(bay.free)})`];
        expect
          .soft(
            named.some((words) => joined.includes(words)),
            `${bay.id} in ${joined}`,
          )
          .toBe(true);
      }
      expect.soft(joined).toContain(show.tape(plan.opening.guardHeight));
    }
  });

  test("the plan prints every post with its station, the length of every side, the deck, and the ends of every run", () => {
    const words = wordsOf(planView(plan, portrait).svg);
    for (const { id, station } of plan.verticals.filter(({ kind }) => kind === "post")) {
      expect.soft(words).toContain(id);
      expect.soft(words).toContain(show.feet(station));
    }
    const spacers = plan.verticals.filter(({ kind }) => kind === "spacer");
    const unmarked = spacers.some(({ id }) => !words.includes(id));
    expect.soft(words.join(" ").includes("Spacers not marked: see the elevations.")).toBe(unmarked);
    expect.soft(words.includes("post where two runs end")).toBe(plan.verticals.some(({ role }) => role === "shared"));
    // A column is named as such, once, a corner of the house on both its sides.
    const inside = plan.job.sides.flatMap(({ interrupted }) =>
      interrupted === null || ["column", "house corner"].includes(interrupted.what) ? [] : [interrupted.end, interrupted.start],
    );
    const corners = plan.job.sides.flatMap(({ interrupted }) => (interrupted?.what === "house corner" ? [interrupted.width] : []));
    expect
      .soft(words.filter((word) => word.startsWith("HOUSE CORNER")))
      .toEqual(corners.flatMap((width) => new Array(2).fill(`HOUSE CORNER ${show.feet(width)}`)));
    const walls = [plan.job.start, ...inside, plan.job.end].filter(({ kind }) => kind === "wall").length;
    expect.soft(words.filter((word) => word === "WALL")).toHaveLength(walls);
    for (const side of plan.sides) expect.soft(words).toContain(`side ${side.id}: ${show.feet(side.length)}`);
    for (const run of plan.runs) expect.soft(words).toContain(run.id);
    const pulls = plan.runs.flatMap((run) => [run.left, run.right]).filter((end) => end.pulls);
    expect(words.filter((word) => word === "pull")).toHaveLength(pulls.length);
    expect(words).toContain(floorWord(plan.job).toUpperCase());
    expect(words.includes("N")).toBe(plan.job.bearing !== null);
  });

  test("the details print every size of bore that the plan has", () => {
    const words = details(plan, portrait)
      .flatMap(({ svg }) => wordsOf(svg))
      .join(" ");
    for (const { diameter, counterbore, through, drilledLength, sleeveHole } of plan.bores) {
      expect
        .soft(words)
        .toContain(through ? `bore ${show.fine(diameter)}` : `blind hole ${show.diameterOne(diameter)}, ${show.fine(drilledLength)} deep`);
      if (counterbore !== null)
        expect
          .soft(words)
          .toContain(
            `${sleeveHole === undefined ? "counterbore" : "washer's hole in the sleeve"} ${show.fine(counterbore.diameter)}, ${show.tape(counterbore.depth)} deep`,
          );
      if (sleeveHole !== undefined) expect.soft(words).toContain(`holes for the cable in the sleeve ${show.fine(sleeveHole)}`);
    }
  });

  test("the tightening diagram has each turn of the order once at each pulling end, and the reading of every step", () => {
    for (const run of plan.runs) {
      const tightening = plan.tightening.find(({ runId }) => runId === run.id);
      const words = wordsOf(tighteningDiagram(plan, run.id, portrait).svg);
      const ends = [run.left, run.right].filter((end) => end.pulls).length;
      tightening?.order.forEach((_, index) => {
        // From 10 on the number of a course is written like that of a turn.
        const asCourse = index + 1 >= 10 && index + 1 <= plan.courses.length ? 1 : 0;
        expect.soft(words.filter((word) => word === String(index + 1))).toHaveLength(ends + asCourse);
      });
      const joined = words.join(" ");
      // Each compensated pass has a column of its own: the number alone, its unit above it.
      for (const { kind, share, number } of tightening?.passes ?? []) {
        const readings = (tightening?.steps ?? []).filter(({ pass }) => pass === number).map(({ reading }) => show.gauge(reading));
        if (kind === "plain") expect.soft(joined).toContain(`Pass ${number}: every cable to ${show.percent(share)}`);
        else for (const reading of readings) expect.soft(words).toContain(reading);
      }
      const endWords = [run.left, run.right].map(({ postId, kind, pulls }) => `${postId}, ${kind} end: ${pulls ? "pull" : "holds"}`);
      for (const text of endWords) expect.soft(words.filter((word) => word === text)).toHaveLength(1);
      expect
        .soft(joined)
        .toContain(`At the end: ${show.forceBoth(run.tension.target)} at the nut, at least ${show.force(run.tension.low)}.`);
      for (const { postId } of [run.left, run.right]) expect.soft(joined).toContain(`${postId}, `);
      expect.soft(joined).toContain(`least in bay ${run.tension.leastBayId}: ${show.forceDown(run.tension.least)}`);
    }
  });

  test("the opening diagram names every bay once, and in its words the one that the plan has tested first", () => {
    for (const side of plan.sides) {
      const { svg } = openingDiagram(plan, side.index, portrait);
      const own = plan.bays.filter(({ sideId, kind }) => sideId === side.id && kind === "bay");
      const words = wordsOf(svg);
      for (const { id } of own) expect.soft(words.filter((word) => word === id)).toHaveLength(1);
      const first = own.find(({ id }) => plan.openingBayIds.includes(id));
      expect.soft(first).toBeDefined();
      expect.soft(words.join(" ")).toContain(`A double circle: bay ${first?.id}, free length ${show.tape(first?.free ?? 0)}`);
    }
  });

  // What a sheet needs: a drawing and its table on one page, two parts of a long side on one page (layout of the packet; no outside source).
  test("heights on paper: tightening diagrams below 75 mm, details to 70 mm, elevations to 105 mm and their parts below 80 mm", () => {
    for (const { id } of plan.runs) expect.soft(tighteningDiagram(plan, id, portrait).height_mm, id).toBeLessThan(75);
    for (const { id, height_mm } of details(plan, portrait)) expect.soft(height_mm, id).toBeLessThanOrEqual(70);
    for (const side of plan.sides) {
      const room = { ...landscape, height: landscape.height * 0.62 };
      const parts = elevations(plan, side.index, room);
      // A rake is as high as it climbs.
      const highest = (count: number, slope: number): number => (slope !== 0 ? room.height : count > 1 ? 79.9 : 105);
      for (const { id, height_mm } of parts) expect.soft(height_mm, id).toBeLessThanOrEqual(highest(parts.length, side.slope));
    }
  });

  test("the details say for each corner post from which face it is drilled, as the table of bores does, and no note twice", () => {
    const all = details(plan, portrait).map(({ svg }) => wordsOf(svg).join(" "));
    const corner = all.filter((words) => words.includes("corner point"));
    for (const words of corner) {
      // One post has one bore: from the face that looks to the side that ends there.
      const [, side] = /drill this way, from the middle of the face towards side (\w)/.exec(words) ?? [];
      if (side !== undefined) {
        const post = plan.verticals.find(({ id }) => words.includes(`${id},`) && /^P\d/.test(id));
        expect.soft(post?.sideId).toBe(side);
        expect
          .soft(new Set(plan.bores.filter(({ verticalId }) => verticalId === post?.id).map(({ entryFace }) => entryFace)))
          .toEqual(new Set(["left"]));
        continue;
      }
      // Where two runs end on it each has a blind hole in the face that looks to its own side; behind it a bore from there right through.
      const ends = [
        ...words.matchAll(
          /(R\d+): (?:blind hole [^,]*, [^ ]+ deep|bore [^ ]+ right through) from the middle of the face towards side (\w)/g,
        ),
      ];
      if (words.includes("holds both runs")) {
        expect.soft(ends).toHaveLength(2);
        const [left, right] = ends.map(([, id, towards]) => ({ run: plan.runs.find((run) => run.id === id), towards }));
        expect.soft(left?.run?.sideIds.at(-1)).toBe(left?.towards);
        expect.soft(right?.run?.sideIds[0]).toBe(right?.towards);
        expect.soft(left?.run?.right.postId).toBe(right?.run?.left.postId);
        continue;
      }
      for (const [, id, face] of words.matchAll(/drill (P\d+) this way, from its (left|right) face/g)) {
        const bores = plan.bores.filter(({ verticalId }) => verticalId === id);
        expect.soft(new Set(bores.map(({ entryFace }) => entryFace)), id).toEqual(new Set([face]));
      }
      expect.soft([...words.matchAll(/this way, from its/g)]).toHaveLength(2);
    }
    for (const note of detailNotes) for (const words of all) expect.soft(words).not.toContain(note.slice(0, 30));
  });

  test("every gripping fitting bears with its collar on a washer, whether its body lies in a counterbore or in a through bore", () => {
    for (const { svg, id } of details(plan, portrait).filter((one) => one.id.startsWith("detail-grip-end"))) {
      const words = wordsOf(svg).join(" ");
      expect.soft(words, id).toMatch(/washer \d.* under the collar/);
      expect.soft(words, id).toContain("body of the fitting");
    }
  });

  test("only runs with corners have a plot of their tension", () => {
    for (const run of plan.runs) {
      const turns = new Set(run.sideIds).size > 1;
      expect.soft(frictionPlot(plan, run.id, portrait) !== null, run.id).toBe(turns);
    }
  });
});

describe("tighteningDiagram", () => {
  test("the first course of the order has turn 1 at its height", () => {
    const texts = textsOf(tighteningDiagram(straight, "R1", portrait).svg);
    // The middle of its digits: they may be of different sizes.
    const yOf = (word: string): number => {
      const corners = texts.find(({ text }) => text === word)?.corners ?? [];
      return corners.reduce((sum, { y }) => sum + y, 0) / corners.length;
    };
    const first = straight.tightening[0]?.order[0] ?? 0;
    expect(yOf("1")).toBeCloseTo(yOf(String(first).padStart(2, "0")), 1);
  });

  test("two passes: the plain one in words, the compensated one as a column", () => {
    const two = planOf(exampleText("0001-level-deck-straight").replace("\ntightening:\n", "\ntightening:\n  passes: [60 %, 100 %]\n"));
    const joined = wordsOf(tighteningDiagram(two, "R1", portrait).svg).join(" ");
    expect(joined).toContain("Pass 1: every cable to 60 %");
    expect(joined).toContain("Pass 2: each cable to its own reading");
    expect(joined).toContain("then begin the next pass");
  });
});

describe("tensionSteps", () => {
  const corner = (svg: string, word: string) => textsOf(svg).filter(({ text }) => text === word);

  test.each(exampleNames)(
    "%s: every cable is named where it is pulled in both halves; target, band, highest and weakest stand at the left",
    (name) => {
      const plan = examplePlan(name);
      const show = showIn(plan.job.units);
      for (const { runId, plain, steps } of plan.tightening) {
        const run = plan.runs.find(({ id }) => id === runId);
        const { svg, description } = tensionSteps(plan, runId, portrait);
        for (const { number } of plan.courses) {
          expect.soft(corner(svg, String(number).padStart(2, "0")).length, `${runId} ${number}`).toBeGreaterThanOrEqual(2);
        }
        const words = wordsOf(svg);
        const highest = Math.max(...steps.map(({ tensions, course }) => tensions[course - 1] ?? 0));
        // When all runs of the frame are pulled, as the words of the sheet count it.
        const weakest = Math.min(...plain.tensions);
        for (const text of [
          `target ${show.force(run?.tension.target ?? 0)}`,
          `at least ${show.forceUp(run?.tension.low ?? 0)}`,
          `at most ${show.forceDown(run?.tension.high ?? 0)}`,
          `highest ${show.force(highest)}`,
          `weakest ${show.force(weakest)}`,
        ])
          expect.soft(words).toContain(text);
        expect.soft(description).toContain("The log holds the same readings");
      }
    },
  );

  test("slack cables: the scale begins at nothing", () => {
    const [first] = straight.tightening;
    const plain =
      first?.plain.steps.map(({ course, tensions }) => ({
        course,
        tensions: tensions.map((tension, index) => (index === 4 ? 0 : tension)),
      })) ?? [];
    const tightening = straight.tightening.map((one) => ({ ...one, plain: { ...one.plain, steps: plain } }));
    expect(wordsOf(tensionSteps({ ...straight, tightening }, "R1", portrait).svg).join(" ")).toContain("The scale begins at 0 lbf.");
  });

  test("no run of that name: a fault of the caller", () => {
    expect(() => tensionSteps(straight, "R9", portrait)).toThrow(RangeError);
    expect(() => dayPlot(straight, "R9", portrait)).toThrow(RangeError);
  });
});

describe("dayPlot", () => {
  test.each(exampleNames)(
    "%s: the temperatures of the day's table stand below, the readings of the coldest and warmest day at the left",
    (name) => {
      const plan = examplePlan(name);
      const show = showIn(plan.job.units);
      for (const { runId, days } of plan.climate) {
        const words = wordsOf(dayPlot(plan, runId, portrait).svg);
        for (const { temperature } of days) expect.soft(words).toContain(show.heat(temperature).replace(` ${show.heatUnit}`, ""));
        // The last line of the table of days beside it: 306 lbf there and 307 here were two readings for one day.
        const target = plan.runs.find(({ id }) => id === runId)?.tension.target ?? 0;
        const columns = plan.tightening.find((one) => one.runId === runId)?.days ?? [];
        const ends = [columns[0], columns.at(-1)].map((day) => `${show.gauge(target + (day?.added ?? 0))} ${show.forceUnit}`);
        expect.soft(words).toContain(`coldest ${ends[0]}`);
        expect.soft(words).toContain(`warmest ${ends[1]}`);
      }
    },
  );
});

describe("elevations", () => {
  const [only] = elevations(straight, 0, landscape);

  test("a side of 23 ft is one drawing on Letter at 3/8 in to the foot", () => {
    expect(elevations(straight, 0, landscape)).toHaveLength(1);
    expect(wordsOf(only?.svg ?? "").join(" ")).toContain(`Scale 3/8" = 1'-0". Do not scale.`);
  });

  test("mirrored job: stations counted from the other end add up to the length of the side", () => {
    const posts = straight.verticals.filter(({ kind }) => kind === "post");
    const [first, last] = [posts[0], posts.at(-1)];
    expect((first?.station ?? 0) + (last?.station ?? 0)).toBeCloseTo(straight.sides[0]?.length ?? 0, 6);
  });
});

describe("planView", () => {
  // A deck with walls at both ends: the sides go out from the house wall, along it and back to it.
  test("the deck is named between the two house walls and the outer side of a U", () => {
    const texts = textsOf(planView(corners, portrait).svg);
    const middleOf = (word: string) => {
      const of = texts.find(({ text }) => text === word)?.corners ?? [];
      const share = (pick: (corner: { readonly x: number; readonly y: number }) => number): number =>
        of.reduce((sum, corner) => sum + pick(corner), 0) / of.length;
      return { x: share(({ x }) => x), y: share(({ y }) => y) };
    };
    const [deck, wall, outer, upper, lower] = ["DECK", "WALL", "P5", "P2", "P9"].map(middleOf);
    expect(deck?.x).toBeGreaterThan(wall?.x ?? Number.NaN);
    expect(deck?.x).toBeLessThan(outer?.x ?? Number.NaN);
    expect(deck?.y).toBeGreaterThan(upper?.y ?? Number.NaN);
    expect(deck?.y).toBeLessThan(lower?.y ?? Number.NaN);
  });

  test("a first side that runs south has north at the left, one that runs east has north above: N against the arrow's tail", () => {
    const north = (plan: typeof straight) => {
      const svg = planView(plan, portrait).svg;
      const n = textsOf(svg).find(({ text }) => text === "N");
      const [, x, y] = /<path d="M(-?[\d.]+) (-?[\d.]+)L[^"]*Z" fill="#000"\/>(?!.*Z" fill="#000"\/>)/.exec(svg) ?? [];
      const middle = {
        x: ((n?.corners[0]?.x ?? 0) + (n?.corners[2]?.x ?? 0)) / 2,
        y: ((n?.corners[0]?.y ?? 0) + (n?.corners[2]?.y ?? 0)) / 2,
      };
      return { dx: middle.x - Number(x), dy: middle.y - Number(y) };
    };
    expect(corners.job.bearing).toBeCloseTo(Math.PI, 9);
    expect(north(corners).dx).toBeLessThan(-1);
    expect(straight.job.bearing).toBeCloseTo(Math.PI / 2, 9);
    expect(north(straight).dy).toBeLessThan(-1);
  });
});

describe("calibrationBar", () => {
  test("100 mm between its ends, as a single line", () => {
    const line = /<line class="calibration" x1="([\d.]+)" y1="[\d.]+" x2="([\d.]+)"/.exec(calibrationBar().svg);
    expect(Number(line?.[2]) - Number(line?.[1])).toBe(100);
  });
});

describe("signs and names that a hand must not mistake", () => {
  test("a stud end is a diamond that stands on a corner whichever way its side runs: square to the page it would be a spacer", () => {
    const { mark } = symbolOf("stud", { x: 0, y: 0 });
    const points = mark.kind === "polygon" ? mark.points : [];
    expect(points).toHaveLength(4);
    for (const { x, y } of points) expect(Math.min(Math.abs(x), Math.abs(y))).toBe(0);
  });

  test("the name of a corner stands in the one post that makes it, clear of the opening", () => {
    const one = examplePlan("0014-corners-of-one-post");
    for (const side of one.sides) {
      for (const { svg } of elevations(one, side.index, landscape)) {
        const texts = textsOf(svg);
        for (const { text, corners: ink } of texts.filter(({ text }) => text.startsWith("corner with"))) {
          const [left, right] = [Math.min(...ink.map(({ x }) => x)), Math.max(...ink.map(({ x }) => x))];
          // The mark of the post stands in the post's middle.
          const marks = texts
            .filter(({ text }) => /^P[46]$/.test(text))
            .map(({ corners: at }) => (at[0]?.x ?? 0) / 2 + (at[1]?.x ?? 0) / 2);
          expect
            .soft(
              marks.some((x) => Math.abs(x - (left + right) / 2) < 1),
              `${side.id} ${text}`,
            )
            .toBe(true);
        }
      }
    }
  });
});
