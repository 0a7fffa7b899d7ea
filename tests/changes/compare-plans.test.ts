// What does the comparison find in real jobs that were changed by hand?
import { describe, expect, test } from "vitest";
import type { Change, Changes, Value } from "../../src/changes/changes.ts";
import { changedText, exampleNames, examplePlan, exampleText, revised } from "../support/example-jobs.ts";

/** The example as it is now, against what it would have been with these lines. */
const since = (name: string, issued: Readonly<Record<string, string>>): Changes =>
  revised(changedText(name, issued), exampleText(name)).changes;

const about = ({ changes }: Changes, subject: Change["subject"]): readonly Change[] => changes.filter((one) => one.subject === subject);
const numberOf = (value: Value | null | undefined): number =>
  value === null || value === undefined || typeof value === "string" ? Number.NaN : value.value;
const differs = (change: Change | undefined, of: string): readonly [number, number] => {
  const found = change?.differences.find((one) => one.of === of);
  return [numberOf(found?.from), numberOf(found?.to)];
};
const INCH = 25.4;
/** Lines of the example that made the bores of its corner posts wider. */
const tubes = { "  bushing bore: 5/8 in": "  # ", "  bushing: { tube wall: 5/64 in }": "" };

describe("comparePlans", () => {
  test.each(exampleNames)("%s has not changed against itself", (name) => {
    const { changes, values } = revised(exampleText(name), exampleText(name)).changes;
    expect(changes).toEqual([]);
    expect(values).toEqual([]);
  });

  test("comments and the way in which a length is written change no number, but the file's words", () => {
    const { changes, values } = since("0001-level-deck-straight", { "clear opening: 29 in ": "clear opening: 2 ft 5 in " });
    expect(changes).toEqual([]);
    expect(values).toEqual([{ key: "frame: clear opening", from: "2 ft 5 in", to: "29 in" }]);
  });

  test("changes are numbered from 1, what must be asked first and what is only known last", () => {
    const { changes } = since("0006-porch-existing-posts", { " 16 ft 11 in,": "" });
    expect(changes.map(({ number }) => number)).toEqual(changes.map((_, index) => index + 1));
    const order = ["ask", "mark", "set", "bore", "cut", "buy", "tighten", "read"];
    const found = changes.map(({ todo }) => order.indexOf(todo));
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(JSON.stringify(since("0006-porch-existing-posts", { " 16 ft 11 in,": "" }).changes)).toBe(JSON.stringify(changes));
  });

  describe("a post put in between others whose stations are given", () => {
    const changes = since("0006-porch-existing-posts", { " 16 ft 11 in,": "" });

    test("is the only post that is set; those behind it have new marks at their old places", () => {
      const posts = about(changes, "post");
      expect(posts.filter(({ todo }) => todo === "set").map(({ what, marks }) => [what, ...marks])).toEqual([["added", "P4"]]);
      const renamed = posts.find(({ what }) => what === "renamed");
      expect(renamed?.marks).toEqual(["P5", "P6", "P7", "P8"]);
      expect(renamed?.differences.map(({ from, to }) => `${from} ${to}`)).toEqual(["P4 P5", "P5 P6", "P6 P7", "P7 P8"]);
    });

    test("bores of posts that only have another mark are not told; those of the post that two runs shared are", () => {
      const uprights = new Set(about(changes, "bore").flatMap(({ marks }) => marks.map((mark) => mark.split("-")[0])));
      expect([...uprights].sort()).toEqual(["P4", "P5"]);
    });

    test("a counterbore cannot be taken back, and a bore that another run had is gone: both are asked about", () => {
      expect(about(changes, "bore").map(({ todo, what }) => `${todo} ${what}`)).toEqual(["ask moved", "ask removed"]);
    });
  });

  describe("an opening that is one inch lower", () => {
    const changes = since("0001-level-deck-straight", { "clear opening: 29 in": "clear opening: 30 in" });
    const bores = about(changes, "bore");

    test("moves the top rail down by it", () => {
      const [from, to] = differs(about(changes, "rail")[0], "upper edge of the opening");
      expect(from - to).toBeCloseTo(INCH, 6);
    });

    test("moves all bores of a course by the same, each course told once or twice", () => {
      const marks = bores.flatMap((one) => one.marks);
      expect(new Set(marks).size).toBe(marks.length);
      expect([...marks].sort()).toEqual(
        examplePlan("0001-level-deck-straight")
          .bores.map(({ mark }) => mark)
          .sort(),
      );
      expect(bores.every(({ what }) => what === "moved")).toBe(true);
    });

    // 1/2 in between two bores: common practice, no source (limits: wood between bores). 1/4 in bores that lie x apart leave x - 1/4 in.
    test("a bore is asked about where less wood is left to its old hole than the job's limit, or that hole lies under a washer", () => {
      for (const { todo, left = Number.NaN, marks, differences } of bores) {
        const [from, to] = differs({ differences } as Change, "height");
        const isEnd = marks.some((mark) => /^P[15]-/.test(mark));
        if (!isEnd) expect.soft(left).toBeCloseTo(Math.abs(from - to) - INCH / 4, 6);
        if (!isEnd) expect.soft(todo, marks[0]).toBe(left < INCH / 2 ? "ask" : "bore");
        // Washers are 1-1/2 in wide here: an old hole at 7/8 in still lies under them.
        if (isEnd) expect.soft(todo, marks[0]).toBe("ask");
      }
    });
  });

  test("another cable is bought anew, and tightened by another log", () => {
    const changes = since("0005-steel-balcony", { "diameter: 4 mm": "diameter: 1/8 in" });
    const [strand] = about(changes, "strand");
    expect(strand).toMatchObject({ todo: "buy", marks: ["R1"] });
    expect(differs(strand, "diameter")).toEqual([INCH / 8, 4]);
    expect(
      about(changes, "item")
        .filter(({ marks }) => marks[0]?.startsWith("spool"))
        .map(({ what }) => what),
    ).toEqual(["removed", "added"]);
    const [from, to] = differs(about(changes, "tension")[0], "target at the nut");
    expect(to).toBeLessThan(from);
  });

  test("a side that was measured longer: its posts move, its cables are too short, its bores stay", () => {
    const changes = since("0002-deck-two-corners", { "length: 9 ft 7-1/2 in": "length: 9 ft 6 in" });
    const [from, to] = differs(about(changes, "side")[0], "length");
    expect(to - from).toBeCloseTo(1.5 * INCH, 6);
    const moved = about(changes, "post").filter(({ what }) => what === "moved");
    expect(moved.map(({ marks }) => marks[0])).toEqual(["P11", "P12", "P13"]);
    const [was, is] = differs(about(changes, "cable")[0], "outside to outside");
    expect(is - was).toBeCloseTo(1.5 * INCH, 6);
    expect(about(changes, "bore")).toEqual([]);
    // Free lengths of side C alone are longer: a cable that is plucked there sounds lower.
    expect(about(changes, "reading")[0]?.differences).toEqual([{ of: "pitch and sag in bays", from: null, to: "C1, C2, C3, C4, C5, C6" }]);
  });

  test("a hole that gets wider is bored again, one that would have to get narrower is asked about", () => {
    const wider = about(since("0002-deck-two-corners", tubes), "bore");
    expect(wider.map(({ todo, what }) => `${todo} ${what}`)).toEqual(["bore changed"]);
    const text = exampleText("0002-deck-two-corners");
    const narrower = about(revised(text, changedText("0002-deck-two-corners", tubes)).changes, "bore");
    expect(narrower.map(({ todo, what }) => `${todo} ${what}`)).toEqual(["ask changed"]);
    expect(narrower[0]?.marks).toHaveLength(40);
  });

  // A tape is read to its step: the record of what was built takes no bore for another one that is off by no more, either.
  test("a bore that is off by no more than a step of the tape may stay, and is no old hole beside the others", () => {
    const steeper = changedText("0012-stair-from-landing", { "riser: 7 in": "riser: 7-1/4 in" });
    const bores = about(revised(exampleText("0012-stair-from-landing"), steeper).changes, "bore");
    expect(bores.length).toBeGreaterThan(0);
    for (const change of bores) {
      for (const face of ["left", "right"]) {
        const [from, to] = differs(change, `height on the ${face} face`);
        expect.soft(Math.abs(to - from)).toBeCloseTo(INCH / 16, 6);
      }
      expect.soft([change.todo, change.what, change.left]).toEqual(["bore", "changed", undefined]);
    }
  });

  test("ready cables of another length are other items", () => {
    const items = about(since("0001-level-deck-straight", { "length: 23 ft ": "length: 18 ft " }), "item").filter(({ marks }) =>
      marks[0]?.startsWith("ready"),
    );
    expect(items.map(({ what, marks }) => `${what} ${marks[0]?.split(", ").at(-1)}`)).toEqual(["removed 20'-0\"", "added 25'-0\""]);
  });

  test("posts of another section are replaced: their bores are told with them", () => {
    const changes = since("0001-level-deck-straight", { "size: 6x6": "size: 4x6" });
    const posts = about(changes, "post");
    expect(posts.map(({ marks }) => marks[0])).toEqual(["P1", "P2", "P3", "P4", "P5"]);
    expect(posts.every(({ todo, differences }) => todo === "set" && differences.some(({ of }) => of === "section"))).toBe(true);
    expect(
      about(changes, "bore")
        .flatMap(({ marks }) => marks)
        .filter((mark) => mark.startsWith("P")),
    ).toEqual([]);
  });

  test("an end of another kind is told at its run and at its bores", () => {
    const changes = since("0001-level-deck-straight", { "hold end: grip": "hold end: stud" });
    expect(about(changes, "end")[0]?.differences).toEqual([{ of: "right end", from: "stud", to: "grip" }]);
    expect(about(changes, "bore").map(({ todo }) => todo)).toEqual(["ask"]);
  });

  test("a check that must be asked now is asked about, one that passes now is only known", () => {
    const [text, without] = [exampleText("0002-deck-two-corners"), changedText("0002-deck-two-corners", tubes)];
    for (const [before, after, todo] of [
      [text, without, "ask"],
      [without, text, "read"],
    ] as const) {
      const checks = about(revised(before, after).changes, "check");
      expect(checks.map((check) => `${check.todo} ${check.what}`)).toEqual([`${todo} changed`]);
      expect(checks[0]?.marks[0]).toMatch(/^Push of a cable on the wood/);
    }
  });

  test("courses that are counted otherwise at the same height have new marks", () => {
    // A spacing of 3 in: with the bottom rail 3 in higher the lowest cable is gone, and all others lie where they lay.
    const at = (gap: string, opening: string): string =>
      changedText("0001-level-deck-straight", {
        "gap below: 2 in": `gap below: ${gap}`,
        "clear opening: 29 in": `clear opening: ${opening}`,
      });
    const changes = about(revised(at("1/2 in", "30 in"), at("3-1/2 in", "27 in")).changes, "bore");
    expect(
      changes
        .filter(({ what }) => what === "removed")
        .flatMap(({ marks }) => marks)
        .sort(),
    ).toEqual(["P1", "P2", "P3", "P4", "P5", "S1", "S2", "S3", "S4"].map((id) => `${id}-01`));
    const renamed = changes.filter(({ what }) => what === "renamed");
    expect(renamed.map(({ todo, differences }) => `${todo} ${differences[0]?.from} ${differences[0]?.to}`)).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((course) => `mark ${course + 1} ${course}`),
    );
  });

  test("a guard that loses a side loses its posts, and the run that went there is another", () => {
    const { changes } = revised(
      exampleText("0002-deck-two-corners"),
      exampleText("0002-deck-two-corners").replace(/ {6}turn: right 90 deg\n {4}- length: 9 ft 7-1\/2 in\n/, ""),
    ).changes;
    expect(changes.find(({ subject, what }) => subject === "side" && what === "removed")?.marks).toEqual(["C"]);
    const gone = changes.filter(({ subject, what }) => subject === "post" && what === "removed").flatMap(({ marks }) => marks);
    expect(gone).toContain("P13");
    expect(changes.some(({ subject }) => subject === "cable")).toBe(true);
  });

  test("a steeper ramp moves rails and lengths; holes that stay within half a step of the tape are the same", () => {
    const changes = since("0013-ramp-to-porch", { "rise: 400 mm": "rise: 410 mm" });
    expect(about(changes, "side")[0]?.differences[0]?.of).toBe("slope");
    expect(about(changes, "bore")).toEqual([]);
    const steeper = about(since("0013-ramp-to-porch", { "rise: 400 mm": "rise: 520 mm" }), "bore");
    expect(steeper.flatMap(({ differences }) => differences.map(({ of }) => of))).toContain("height on the left face");
  });
});
