// What a crew and somebody who does it once are told of piers and of sleeves: that it stands where it matters, and in its order.
import { describe, expect, test } from "vitest";
import { makeTemplates } from "../../../src/packet/make-templates.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { packetOf, sheetOf, stamp, stepsOf, tableOf, textsOf } from "../read-packet.ts";

const pier = examplePlan("0016-brick-pier");
const sleeved = examplePlan("0017-vinyl-sleeves");
const plain = examplePlan("0001-level-deck-straight");

const wordsOf = (plan: typeof pier, issue: "crew" | "homeowner" | "permit", id: string): string =>
  sheetOf(packetOf(plan, issue), id).blocks.flatMap(textsOf).join("\n");

const textsOfTemplates = (plan: typeof pier): string =>
  makeTemplates({ plan, paper: "letter", stamp })
    .sheets.flatMap(({ blocks }) => blocks.flatMap(textsOf))
    .join("\n");

describe("a pier", () => {
  test.each(["crew", "homeowner"] as const)("%s: gets no wood preservative into its holes, and its marks from the stick", (issue) => {
    const steps = wordsOf(pier, issue, "Z-801");
    expect(steps).toMatch(/(Every bore|into every hole) in wood, none in PR1/);
    expect(steps).toMatch(/arks (carried )?to every post and spacer, and to PR1,/);
    expect(wordsOf(pier, issue, "Z-603")).toContain("No wood preservative in them");
    expect(wordsOf(plain, issue, "Z-801")).not.toMatch(/in wood, none in/);
  });

  test("is bored by somebody who does it once only after the search for steel, with the size of its hole", () => {
    const items = stepsOf(sheetOf(packetOf(pier, "homeowner"), "Z-801").blocks).flatMap((block) => block.items.map(({ text }) => text));
    const search = items.findIndex((text) => text.includes("look for hidden steel"));
    const bored = items.flatMap((text, index) => (/7\/16/.test(text) ? [index] : []));
    expect(bored).toEqual([search + 1]);
  });

  test("is searched for steel before any bore, and has room for the hammer drill", () => {
    const cards = stepsOf(sheetOf(packetOf(pier, "crew"), "Z-801").blocks);
    const at = (words: RegExp): number => cards.findIndex(({ items }) => items.some(({ text }) => words.test(text)));
    expect(at(/PR1 searched for hidden steel and pipes/)).toBeLessThan(at(/110 bores done/));
    expect(at(/PR1 searched for hidden steel and pipes/)).toBeGreaterThanOrEqual(0);
    expect(wordsOf(pier, "crew", "Z-603")).toMatch(/hammer drill .* A1, 17-5\/16" long\. Bore PR1 before S1 is fixed/);
    expect(wordsOf(pier, "homeowner", "Z-801")).toContain("Take S1 out, bore, and fix it again.");
    expect(wordsOf(plain, "crew", "Z-801") + wordsOf(plain, "crew", "Z-603")).not.toMatch(/hammer drill|hidden steel/);
  });

  test.each(["crew", "homeowner"] as const)("%s: its adhesive, and what to do when a hole meets a void", (issue) => {
    expect(wordsOf(pier, issue, "Z-801")).toMatch(/Adhesive for anchors harms skin and eyes/);
    expect(wordsOf(pier, issue, "Z-801")).toContain("a pier cracks or crumbles at a hole, or a hole meets a void");
    expect(wordsOf(plain, issue, "Z-801")).not.toMatch(/dhesive|crumbles/);
  });

  test("bounds the tension by its anchors, not by ends on faces of posts", () => {
    const names = pier.frame.windows.flatMap(({ allows }) => allows.map(({ name }) => name));
    expect(names).toContain("anchors in the pier on the hardest day, less the band");
    expect(names.join()).not.toContain("ends on faces");
  });

  test("its template says that the paper has no edges of its face, and where the middle is", () => {
    // 20 in wide: 10 in from either edge.
    const words = textsOfTemplates(pier);
    expect(words).toMatch(/\*\*T1: the face of PR1 is wider than the paper\*\*.*10" \(254 mm\) from either edge/);
    expect(textsOfTemplates(plain)).not.toContain("wider than the paper");
  });

  test.each(["crew", "homeowner"] as const)("%s: stops the work when an anchor gives or it moves", (issue) => {
    for (const id of ["Z-001", "Z-803"]) expect.soft(wordsOf(pier, issue, id)).toMatch(/an anchor turns, slips or bends, or PR1 cracks/);
    expect(wordsOf(pier, issue, "Z-803")).toContain("PR1 is taken to stand still");
    expect(wordsOf(pier, issue, "Z-801")).toContain("an anchor gives, or its pier cracks or moves");
    expect(wordsOf(plain, issue, "Z-801")).not.toMatch(/anchor gives/);
  });

  test("is accepted with the posts", () => {
    expect(wordsOf(pier, "crew", "Z-801")).toContain("Cables end on P5. Pier PR1 with its anchors, by an engineer.");
    expect(wordsOf(pier, "crew", "Z-003")).toContain("PR1 and P5 hold the ends of cables");
  });
});

describe("sleeves", () => {
  test.each(["crew", "homeowner"] as const)("%s: room for the hole saw is tried where only a hand reaches", (issue) => {
    expect(wordsOf(sleeved, issue, "Z-603")).toContain("**Behind P4, P5 and P7 only a hand reaches:**");
    expect(wordsOf(sleeved, issue, "Z-801")).toMatch(/P4, P5 and P7.* saw /);
  });

  test("posts whose washer's hole is on another face than the bit are marked on both", () => {
    expect(wordsOf(sleeved, "crew", "Z-801")).toContain("at P1, P4, P5 and P7 also on the face of the washer's hole");
    expect(wordsOf(sleeved, "homeowner", "Z-801")).toContain("Mark P1, P4, P5 and P7 on two faces");
    expect(wordsOf(pier, "crew", "Z-801")).not.toContain("also on the face");
  });

  test("a run is measured over its sleeves", () => {
    // By hand: 16 ft less 4-3/4 in to the corner point.
    expect(wordsOf(sleeved, "crew", "Z-003")).toMatch(/Run R1, outside the sleeve of P1 to outside the sleeve of P4\n15'-7 1\/4"/);
  });

  test("no free length is given where no cable goes", () => {
    expect(wordsOf(sleeved, "crew", "Z-101")).toContain("no cable (A/B)");
  });

  test("how rails reach the wood is asked on the sheet of questions", () => {
    expect(wordsOf(sleeved, "permit", "Z-002")).toMatch(/fastened to the 6x6 in the sleeves.*\n.*block in the gap of 5\/16/);
    expect(wordsOf(plain, "permit", "Z-002")).not.toContain("sleeve");
  });

  test("a tape is given what it finds with the sleeves on, a gauge the span from wood to wood", () => {
    // By hand: 33-3/8 in less half a spacer of 1-1/2 in and a sleeve of 6-1/2 in, the wood of which ends 1/2 in before it.
    const survey = wordsOf(sleeved, "crew", "Z-003");
    expect(survey).toMatch(/Bays A1 to A6: the longest clear length between sleeves and spacers\n.*26-1\/8"/);
    expect(survey).not.toContain("free length");
    expect(wordsOf(sleeved, "crew", "Z-803")).toContain('26-5/8"');
    for (const id of ["Z-101", "Z-803"]) expect(wordsOf(sleeved, "crew", id)).toContain("count from wood to wood");
    expect(wordsOf(plain, "crew", "Z-101")).not.toContain("wood to wood");
  });

  test("washers are bought for the wood, not for the face of the sleeve", () => {
    const order = textsOf(tableOf(packetOf(sleeved, "crew"), "order-list")).join("\n");
    expect(order).toContain("under each nut, on the wood in its sleeve");
    expect(order).not.toContain("on the face of the post");
  });
});
