import { describe, expect, test } from "vitest";
import type { Block } from "../../../src/packet/packet.ts";
import { examples, packetOf, sheetOf, stepsOf, textsOf } from "../read-packet.ts";
import { gradeOf, longSentences } from "../reading.ts";

/** Pause cards with fewer than ten items: "checklist for checklists", general surgery and aviation practice. */
const ITEMS_most = 9;

const guideTexts = (blocks: readonly Block[]): readonly string[] =>
  stepsOf(blocks).flatMap(({ items, hold }) => [
    ...items.flatMap(({ text, more }) => [text, ...(more === undefined ? [] : [more])]),
    ...(hold === undefined ? [] : [hold]),
  ]);

describe("stepsSheet for the crew", () => {
  test.each(examples)("%s: each pause card has at most 9 items, is confirmed after the work and ends with its last line", (_, plan) => {
    const cards = stepsOf(sheetOf(packetOf(plan, "crew"), "Z-801").blocks);
    expect(cards.length).toBe(7);
    for (const card of cards) {
      expect.soft(card.mode, card.id).toBe("do-confirm");
      expect.soft(card.items.length, card.id).toBeLessThanOrEqual(ITEMS_most);
      expect.soft(card.items.at(-1)?.text, card.id).toBe("List complete.");
      expect
        .soft(
          card.items.some(({ killer }) => killer === true),
          card.id,
        )
        .toBe(true);
    }
  });

  test.each(examples)("%s: each card has a page of its own, with the place where work stopped and a signature", (_, plan) => {
    const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-801");
    const pages: Block[][] = [[]];
    for (const block of blocks) {
      if (block.kind === "break") pages.push([]);
      else pages.at(-1)?.push(block);
    }
    const cards = pages.filter((page) => page.some(({ kind }) => kind === "steps"));
    expect(cards.length).toBe(7);
    for (const page of cards) {
      expect.soft(page.filter(({ kind }) => kind === "steps").length).toBe(1);
      expect.soft(page.map(({ kind }) => kind)).toContain("blanks");
      // A hold point brings its own line to sign.
      const isHeld = stepsOf(page).some(({ hold }) => hold !== undefined);
      expect.soft(isHeld || page.some(({ kind }) => kind === "signatures")).toBe(true);
    }
  });

  test.each(examples)("%s: the danger of a tight cable stands before the card of tightening, that of the bit before boring", (_, plan) => {
    const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-801");
    const wordsBefore = (id: string): string => {
      const at = blocks.findIndex((block) => block.kind === "steps" && block.id === id);
      const start = blocks.slice(0, at).findLastIndex(({ kind }) => kind === "break");
      return blocks
        .slice(start + 1, at)
        .flatMap(textsOf)
        .join(" ");
    };
    expect(wordsBefore("card-before-tightening")).toContain("Stand beside it");
    expect(wordsBefore("card-bore")).toContain("glasses");
  });
});

describe("stepsSheet for the homeowner", () => {
  test.each(examples)("%s: no step has a sentence of more than 20 words", (_, plan) => {
    const { blocks } = sheetOf(packetOf(plan, "homeowner"), "Z-801");
    const cautions = blocks.filter(({ kind }) => kind === "caution").flatMap(textsOf);
    expect([...guideTexts(blocks), ...cautions].flatMap(longSentences)).toEqual([]);
  });

  test.each(examples)("%s: steps and safety read at grade 6 or below", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    expect(gradeOf(guideTexts(sheetOf(packet, "Z-801").blocks))).toBeLessThanOrEqual(6);
    expect(
      gradeOf(
        sheetOf(packet, "Z-802")
          .blocks.filter(({ kind }) => kind === "caution")
          .flatMap(textsOf),
      ),
    ).toBeLessThanOrEqual(6);
  });

  test.each(examples)("%s: the steps speak of this job: each run, its target, all cables and all bores", (_, plan) => {
    const texts = stepsOf(sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks)
      .flatMap(textsOf)
      .join("\n");
    for (const run of plan.runs) expect.soft(texts).toContain(`Run ${run.id}: the target is`);
    expect(texts).toContain(`Thread ${plan.cables.length} cables`);
    expect(texts).toContain(`Bore ${plan.bores.length} holes`);
    expect(texts).toMatch(/H0[\s\S]*H1[\s\S]*H2[\s\S]*H3[\s\S]*H4/);
  });

  test.each(examples)("%s: the word list and the if-then table are there", (_, plan) => {
    const ids = sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(ids).toEqual(expect.arrayContaining(["steps-words", "steps-troubles"]));
  });
});
