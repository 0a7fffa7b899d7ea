// What a crew and somebody who does it once are told of piers and of sleeves: that it stands where it matters, and in its order.
import { describe, expect, test } from "vitest";
import { examplePlan } from "../../support/example-jobs.ts";
import { packetOf, sheetOf, stepsOf, tableOf, textsOf } from "../read-packet.ts";

const pier = examplePlan("0016-brick-pier");
const sleeved = examplePlan("0017-vinyl-sleeves");
const plain = examplePlan("0001-level-deck-straight");

const wordsOf = (plan: typeof pier, issue: "crew" | "homeowner" | "permit", id: string): string =>
  sheetOf(packetOf(plan, issue), id).blocks.flatMap(textsOf).join("\n");

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

  test.each(["crew", "homeowner"] as const)("%s: stops the work when an anchor gives or it moves", (issue) => {
    for (const id of ["Z-001", "Z-803"]) expect.soft(wordsOf(pier, issue, id)).toMatch(/an anchor turns, slips or bends, or PR1 cracks/);
    expect(wordsOf(pier, issue, "Z-803")).toContain("PR1 is taken to stand still");
    expect(wordsOf(pier, issue, "Z-801")).toContain("an anchor gives, or its pier cracks or moves");
    expect(wordsOf(plain, issue, "Z-801")).not.toMatch(/anchor gives/);
  });

  test("is accepted with the posts", () => {
    expect(wordsOf(pier, "crew", "Z-801")).toContain("End post P5. Pier PR1 with its anchors, by an engineer.");
    expect(wordsOf(pier, "crew", "Z-003")).toContain("PR1 and P5 hold the ends of cables");
  });
});

describe("sleeves", () => {
  test.each(["crew", "homeowner"] as const)("%s: room for the hole saw is tried where only a hand reaches", (issue) => {
    expect(wordsOf(sleeved, issue, "Z-603")).toContain("**Behind P4, P5 and P7 only a hand reaches:**");
    expect(wordsOf(sleeved, issue, "Z-801")).toMatch(/P4, P5 and P7.* saw /);
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
