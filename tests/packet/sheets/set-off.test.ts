// Does every sheet give the heights of its own side where the bores of two runs cross in a corner post, and say on which face which are bored?
import { describe, expect, test } from "vitest";
import type { Issue } from "../../../src/job/job.ts";
import { details } from "../../../src/packet/drawings/details.ts";
import { showOf } from "../../../src/packet/drawings/kit.ts";
import { tighteningDiagram } from "../../../src/packet/drawings/tightening-diagram.ts";
import { polesOf, servedBy } from "../../../src/packet/templates/pole.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";
import { cellText, packetOf, readPrinted, rowsOf, tableOf, wordsOn } from "../read-packet.ts";

const NAME = "0019-corner-bores-set-off";
const plan = examplePlan(NAME);
const show = showOf(plan);
const HALF_mm = 25.4 / 32 + 1e-6;

/** From the bores alone: heights of the courses at a post, for a run. */
const boredAt = (postId: string, runId: string): readonly number[] =>
  plan.bores
    .filter((bore) => bore.verticalId === postId && bore.runId === runId)
    .toSorted((a, b) => a.course - b.course)
    .map(({ height }) => height);
const [low, high] = [boredAt("P4", "R1"), boredAt("P4", "R2")];

const expectHeights = (printed: readonly string[], due: readonly number[]): void => {
  expect(printed).toHaveLength(due.length);
  printed.forEach((text, index) => {
    expect(Math.abs(readPrinted(text) - (due[index] ?? Number.NaN)), text).toBeLessThanOrEqual(HALF_mm);
  });
};

/** Columns of a table whose rows stand side by side, read one block after the other. */
function sideBySide(id: string, key: string, issue: "crew" | "record" = "crew"): readonly string[] {
  const { columns, rows } = tableOf(packetOf(plan, issue, true), id);
  const places = columns.flatMap((column, place) => (column.key.replace(/-?\d+$/, "") === key ? [place] : []));
  return places.flatMap((place) => rows.map((row) => cellText(row[place] ?? ""))).filter((text) => text !== "" && !text.startsWith("("));
}

describe("heights", () => {
  test("on elevations: a table for side A, and one for sides B and C", () => {
    const tables = packetOf(plan, "crew").sheets.flatMap(({ id, blocks }) =>
      blocks.flatMap((block) => (block.kind === "table" && block.id.endsWith("-heights") && id.startsWith("Z-2") ? [{ id, block }] : [])),
    );
    expect(tables.map(({ id, block }) => [id, /on (sides? [A-Z and,]+) above/.exec(block.caption)?.[1]])).toEqual([
      ["Z-201", "side A"],
      ["Z-202", "sides B and C"],
    ]);
    expect(wordsOn(plan, "Z-203")).toContain("The heights of the bores are the same on sides B and C: table on Z-202.");
  });

  test("in the table of bores: two for each course, by side", () => {
    const { columns, rows, caption } = tableOf(packetOf(plan, "crew"), "bores-heights");
    expect(columns.slice(0, 5).map(({ sub }) => sub)).toEqual([undefined, "side A", "in mm", "sides B and C", "in mm"]);
    const read = (place: number): readonly string[] => [0, 5].flatMap((block) => rows.map((row) => cellText(row[block + place] ?? "")));
    expectHeights(read(1), low);
    expectHeights(read(3), high);
    expect(caption).toContain("P4 has both, each on its own face");
  });

  test("in the list of cables and in the diagrams of tightening: those of their run", () => {
    const marks = sideBySide("cables-marks", "mark");
    expect(marks).toHaveLength(2 * plan.courses.length);
    const printed = sideBySide("cables-marks", "height");
    expectHeights(printed, [...low, ...high]);
    for (const [runId, own, others] of [
      ["R1", low, high],
      ["R2", high, low],
    ] as const) {
      const { svg } = tighteningDiagram(plan, runId, { width: 180, height: 240 });
      const words = [...svg.matchAll(/>([^<>]+)</g)].map(([, text = ""]) => text.replaceAll("&quot;", '"'));
      for (const height of own) expect(words).toContain(show.tape(height));
      for (const height of others) expect(words).not.toContain(show.tape(height));
    }
  });

  test("on the record: P4 stands once with the heights of side A and once with those of B", () => {
    const tables = packetOf(plan, "record", true).sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind === "table" && block.id.startsWith("record-bores-") ? [block] : [])),
    );
    const of = (head: string) => tables.find(({ columns }) => columns.some((column) => column.head === head));
    for (const [head, due] of [
      ["P4 R1", low],
      ["P4 R2", high],
      ["P1", low],
      ["P11", high],
    ] as const) {
      expectHeights(
        (of(head)?.rows ?? []).slice(0, plan.courses.length).map((row) => cellText(row[1] ?? "")),
        due,
      );
    }
  });

  test("on two poles, of which P4 has one for each face", () => {
    expect(polesOf(plan).map(servedBy)).toEqual([
      "P1 to P4, S1 to S6; P4 on the face towards A only",
      "P4 to P11, S7 to S16; P4 on the face towards B only",
    ]);
    expect(polesOf(plan).map(({ marks }) => marks.map(({ height }) => height))).toEqual([low, high]);
  });
});

describe("words", () => {
  test("two sticks, and which goes on which face of P4", () => {
    for (const words of [wordsOn(plan, "Z-603"), wordsOn(plan, "Z-801")]) {
      expect(words).toMatch(/two sticks/i);
      expect(words).toContain("P4: the stick of side A on the face towards A, that of side B on the face towards B");
    }
    expect(wordsOn(plan, "Z-801", "homeowner")).toContain("Take two straight sticks.");
    expect(wordsOn(plan, "Z-801", "homeowner")).toContain("P4: bore each face at its own marks, square to the face.");
    expect(wordsOn(examplePlan("0018-corner-post-between-runs"), "Z-801")).not.toMatch(/two sticks/i);
  });

  test("the spacing is measured on a post of each height, for the gaps to the rails are not the same", () => {
    expect(wordsOn(plan, "Z-801", "homeowner")).toContain("Measure the spacing on one post of each side, middle to middle.");
  });

  test("lengths of lumber lie along a tube only where a tube is cut", () => {
    expect(wordsOn(plan, "Z-602")).toContain("finished sizes along the grain, without");
    expect(wordsOn(examplePlan("0005-steel-balcony"), "Z-602")).toMatch(/finished sizes along the (grain or the )?tube, without/);
  });

  test("the faces of P4 are told by sides, never by left and right", () => {
    const ends = rowsOf(plan, "cables-ends").flat();
    expect(ends.filter((cell) => cell.includes("P4,"))).toEqual([
      expect.stringContaining("stud end at P4, face away from side A"),
      expect.stringContaining("grip end at P4, face away from side B"),
    ]);
    expect(wordsOn(plan, "Z-801")).toContain("R1 from P4 (in at its face away from side A) to P1");
    const rows = rowsOf(plan, "bores-grid").filter(([upright]) => upright?.startsWith("P4"));
    expect(rows.map((row) => row.slice(0, 6))).toEqual([
      ["P4/R1", expect.anything(), "to A", "square", "opposite", expect.anything()],
      ["P4/R2", expect.anything(), "to B", "square", "opposite", expect.anything()],
    ]);
  });

  test("in a turn to the right the backs of P4 stand over the open edge; in one to the left over the deck", () => {
    const left = planOf(exampleText(NAME).replaceAll("turn: right 90 deg", "turn: left 90 deg"));
    expect(wordsOn(plan, "Z-801")).toContain("At P4 nuts and grips stand on outer faces, over the open edge.");
    expect(wordsOn(left, "Z-801")).not.toContain("over the open edge");
  });

  test("the turn of such a corner is measured to 1 deg, that of another one to 2 deg", () => {
    const turns = wordsOn(plan, "Z-003").match(/off by more than [12] deg/g);
    expect(turns?.slice(0, 2)).toEqual(["off by more than 1 deg", "off by more than 2 deg"]);
    expect(wordsOn(plan, "Z-003")).toContain("Beyond the two far faces of P4, where nuts or grips stand");
  });

  test("the least wood between two bores stands at the corner and among the rules", () => {
    const crossing = details(plan, { width: 180, height: 240 }).find(({ id }) => id === "detail-heights-p4");
    expect(crossing?.description).toContain('leave 1-1/16" of wood between them');
    for (const height of [...low, ...high]) expect(crossing?.description).toContain(show.tape(height));
    expect(wordsOn(plan, "Z-001", "permit")).toContain("Wood between two bores that cross in a corner post");
    const more = planOf(changedText(NAME, { "# limits: {": "limits: { wood between bores: 3/4 in } # {" }));
    expect(more.job.limits.betweenBores_min).toMatchObject({ value: 19.05, source: "job" });
  });
});

describe("the posts that hold ends of cables", () => {
  const roles = (own: Plan, issue: Issue): string => /Cables end on [^.]*\./.exec(wordsOn(own, "Z-801", issue))?.[0] ?? "";

  test("are not called end posts where they stand at a corner or between two runs", () => {
    for (const issue of ["crew", "homeowner"] as const) {
      expect(roles(plan, issue)).toBe("Cables end on P1, P4 (corner post) and P11.");
      expect(roles(examplePlan("0018-corner-post-between-runs"), issue)).toBe("Cables end on P1, P5 (corner post) and P10.");
      expect(roles(examplePlan("0015-ends-on-faces"), issue)).toMatch(/ \(two runs\)/);
      expect(roles(examplePlan("0002-deck-two-corners"), issue)).toBe("Cables end on P1 and P13.");
      expect(wordsOn(plan, "Z-801", issue)).not.toMatch(/[Ee]nd posts? (here|P)/);
    }
  });
});
