// Jobs at the edge of what can be built are planned and put on paper too, or refused: nothing in between.
import { describe, expect, test } from "vitest";
import { makePacket } from "../../src/packet/make-packet.ts";
import { makeTemplates } from "../../src/packet/make-templates.ts";
import { drawingFaults } from "../../src/pdf/drawing-faults.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, exampleNames, exampleText, planOf } from "../support/example-jobs.ts";
import { rowsOf, stamp } from "./read-packet.ts";

const wordsOf = (plan: Plan): string => {
  const packets = [
    ...(["crew", "homeowner", "permit", "record"] as const).map((issue) => makePacket({ plan, issue, stamp })),
    ...(["letter", "a4"] as const).map((paper) => makeTemplates({ plan, paper, stamp })),
  ];
  expect(packets.flatMap(drawingFaults)).toEqual([]);
  return JSON.stringify(packets);
};

describe("a packet of an odd job", () => {
  test("a sphere that no gap lets through asks for no tension, and the sheet says so", () => {
    expect(
      wordsOf(planOf(changedText("0001-level-deck-straight", { "    diameter: 4 in": "    diameter: 8 in" }))).includes("nothing is asked"),
    ).toBe(true);
  });

  test("spans too short for every instrument but a gauge", () => {
    const words = wordsOf(planOf(changedText("0004-between-two-walls", { "largest spacing: 4 ft": "largest spacing: 1 ft" })));
    expect(words.includes("too little to see")).toBe(true);
    expect(words.includes("nothing here: no span is long enough")).toBe(true);
  });

  test("an end post hard against its wall fails a check, and is drawn", () => {
    const plan = planOf(changedText("0002-deck-two-corners", { "start: { kind: wall, gap: 3-1/2 in": "start: { kind: wall, gap: 0 in" }));
    expect(plan.verdict).toBe("fail");
    expect(wordsOf(plan).includes("move the post away from the wall")).toBe(true);
  });

  test("a force that no strand bears gives a packet that fails and says by how much", () => {
    const plan = planOf(changedText("0012-stair-from-landing", { "force: 10 lbf": "force: 200 lbf" }));
    expect(plan.verdict).toBe("fail");
    expect(wordsOf(plan).includes("NOT FOR CONSTRUCTION")).toBe(true);
  });

  test("eight runs in one frame are named by the first and the last under the plot of their steps, which keeps to its page", () => {
    const plan = planOf(
      changedText("0004-between-two-walls", {
        "paper: letter": "paper: a4",
        "start: { kind: wall, gap: 3-1/4 in, access: hand }": "start: { kind: post, access: drill }",
        "end: { kind: wall, gap: 3-3/4 in, access: hand }": "end: { kind: post, access: drill }",
        "    - length: 13 ft 5-1/4 in": "    - length: 117 ft 6 in\n      turn: left 30 deg\n    - length: 27 ft 3 in",
      }),
    );
    expect(plan.runs).toHaveLength(8);
    expect(wordsOf(plan).includes("R2 to R8")).toBe(true);
  });

  test("returns of one bay each have one bay: A1, not A1 to A1", () => {
    const words = wordsOf(
      planOf(changedText("0002-deck-two-corners", { "length: 9 ft 8 in": "length: 3 ft", "length: 9 ft 7-1/2 in": "length: 3 ft" })),
    );
    expect(words).not.toMatch(/\b([A-Z]+\d+) to \1\b/);
  });

  test("a word without a space is broken where a drawing has no room for it", () => {
    const long = "x".repeat(110);
    const words = wordsOf(planOf(changedText("0001-level-deck-straight", { "datum: top of the decking": `datum: ${long}` })));
    // A line of a drawing that holds a part of it alone.
    expect(/>x{20,109}<\/text>/.test(words)).toBe(true);
  });
});

describe.each(exampleNames)("%s on the other size of paper", (name) => {
  test("has no drawing that is wider or higher than its page", () => {
    const text = exampleText(name);
    const other = text.replace(/^paper: (letter|a4)/m, (_, paper) => `paper: ${paper === "a4" ? "letter" : "a4"}`);
    expect(other).not.toBe(text);
    expect(drawingFaults(makePacket({ plan: planOf(other), issue: "crew", stamp }))).toEqual([]);
  });
});

describe("pairs of posts with nothing between them", () => {
  // Lengths of 8 ft hold one bay each, so every line post becomes a pair.
  const plan = planOf(
    changedText("0001-level-deck-straight", {
      "  kind: ready                     # ready lengths, or: kind: spool, spool length: 500 ft": "  kind: ready\n  lengths: [8 ft]",
    }),
  );
  const posts = plan.verticals.filter(({ kind }) => kind === "post");

  test("have bays between them, with spacers and a tested opening", () => {
    const pairs = posts.filter(({ role }) => role === "pair");
    expect(pairs.length).toBeGreaterThan(2);
    const gaps = plan.bays.filter(({ kind }) => kind === "pair gap");
    expect(gaps.map(({ leftId, rightId }) => [leftId, rightId])).toEqual(
      Array.from({ length: pairs.length / 2 }, (_, index) => [pairs[2 * index]?.id, pairs[2 * index + 1]?.id]),
    );
    expect(Math.max(...plan.bays.map(({ free }) => free))).toBeLessThanOrEqual(plan.job.spacers.free_max.value + 1e-6);
    for (const run of plan.runs) expect(plan.bays.find(({ id }) => id === run.proof.bayId)?.kind).toBe("bay");
  });

  test("are put on paper, each with its slot to measure", () => {
    expect(wordsOf(plan).includes("Slots between two posts")).toBe(true);
    const pairs = posts.filter(({ role }) => role === "pair").map(({ id }) => id);
    const slots = rowsOf(plan, "proof-slots").map(([, between]) => between);
    expect(slots).toEqual(pairs.flatMap((id, index) => (index % 2 === 0 ? [`${id} and ${pairs[index + 1]}`] : [])));
  });
});
