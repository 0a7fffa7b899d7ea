import { describe, expect, test } from "vitest";
import type { Block } from "../../../src/packet/packet.ts";
import { troubles } from "../../../src/packet/troubles.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";
import { cellText, examples, packetOf, sheetOf, stepsOf, tableOf, textsOf } from "../read-packet.ts";
import { gradeOf, longSentences } from "../reading.ts";

/** Pause cards with fewer than ten items: "checklist for checklists", general surgery and aviation practice. */
const ITEMS_most = 9;

const guideTexts = (blocks: readonly Block[]): readonly string[] =>
  stepsOf(blocks).flatMap(({ items, hold }) => [
    ...items.flatMap(({ text, more }) => [text, ...(more === undefined ? [] : [more])]),
    ...(hold === undefined ? [] : [hold]),
  ]);

/** A run with two studs, or with an eye on a face or in a pier, has its far ends cut and fitted on a card of its own. */
const cardCount = (plan: Plan): number =>
  plan.job.fittings.holdEnd === "stud" ||
  plan.runs.some(({ left, right }) => [left, right].some(({ kind }) => kind === "face" || kind === "anchor"))
    ? 8
    : 7;

function pagesOf(plan: Plan): readonly (readonly Block[])[] {
  const pages: Block[][] = [[]];
  for (const block of sheetOf(packetOf(plan, "crew"), "Z-801").blocks) {
    if (block.kind === "break") pages.push([]);
    else pages.at(-1)?.push(block);
  }
  return pages;
}

const crewWords = (plan: Plan): string => pagesOf(plan).flat().flatMap(textsOf).join("\n");
const homeWords = (plan: Plan): string => sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks.flatMap(textsOf).join("\n");

describe("stepsSheet for the crew", () => {
  test.each(examples)("%s: each pause card has at most 9 items, is confirmed after the work and ends with its last line", (_, plan) => {
    const cards = stepsOf(sheetOf(packetOf(plan, "crew"), "Z-801").blocks);
    expect(cards.length).toBe(cardCount(plan));
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

  test.each(examples)(
    "%s: the open edge is closed before the first work on it, on every card, in the guide and in the list of tools",
    (_, plan) => {
      const protection = plan.job.code.drop >= 1828.8 ? "fall protection" : "temporary barrier";
      const [first, ...others] = pagesOf(plan);
      expect(stepsOf(first ?? [])[0]?.items[0]?.text.toLowerCase()).toContain(`${protection} up at the open edge before`);
      for (const page of others) expect.soft(page.flatMap(textsOf).join("\n").toLowerCase()).toContain(protection);
      expect(homeWords(plan)).toContain(`${protection} at the open edge first. Keep it up until H4.`);
      expect(plan.tools.some(({ item, step }) => item === protection && step === "before measuring")).toBe(true);
    },
  );

  test.each(examples)(
    "%s: the cards stop at every hold point that is signed on Z-804, H0 too, which a crew has from its office",
    (_, plan) => {
      const points = tableOf(packetOf(plan, "crew"), "proof-holds").rows.map((row) => cellText(row[0] ?? ""));
      const asked = points.flatMap((point) => /^H\d/.exec(point)?.[0] ?? []);
      const held = stepsOf(sheetOf(packetOf(plan, "crew"), "Z-801").blocks).flatMap(
        ({ hold }) => (hold ?? "").match(/^H\d( and H\d)?/)?.[0].split(" and ") ?? [],
      );
      expect(held).toEqual(asked);
    },
  );

  test.each(examples)("%s: each card has a page of its own, with one line for who ended it or handed it on", (_, plan) => {
    const pages = pagesOf(plan);
    expect(pages.length).toBe(cardCount(plan));
    for (const page of pages) {
      expect.soft(page.filter(({ kind }) => kind === "steps").length).toBe(1);
      const lines = page.flatMap((block) => (block.kind === "blanks" ? block.rows.map(({ label }) => label) : []));
      expect.soft(page.some(({ kind }) => kind === "signatures")).toBe(false);
      expect.soft(lines).toEqual(["Initials; or stopped after line no., handed to"]);
    }
  });

  test.each(examples)("%s: every trouble of the job stands once, on the card of its step", (_, plan) => {
    const shown = pagesOf(plan)
      .flat()
      .flatMap((block) => (block.kind === "table" ? block.rows.map(([when = ""]) => cellText(when)) : []));
    expect(shown).toEqual(troubles(plan).map(({ when }) => when));
  });

  test.each(examples)("%s: the danger of a tight cable stands before the card of tightening, that of the bit before boring", (_, plan) => {
    const wordsBefore = (id: string): string => {
      const page = pagesOf(plan).find((blocks) => blocks.some((block) => block.kind === "steps" && block.id === id)) ?? [];
      const at = page.findIndex(({ kind }) => kind === "steps");
      return page.slice(0, at).flatMap(textsOf).join(" ");
    };
    expect(wordsBefore("card-before-tightening")).toContain("Stand beside it");
    expect(wordsBefore("card-bore")).toContain("glasses");
  });

  test("two studs: marked on one card that ends with H2, cut and fitted on the next", () => {
    const cards = stepsOf(pagesOf(examplePlan("0002-deck-two-corners")).flat());
    const at = cards.findIndex(({ id }) => id === "card-reeve");
    expect(cards[at]?.hold).toMatch(/^H2, signed on Z-804: no cable is cut to its final length for its second stud before H2/);
    expect(cards[at]?.items.map(({ text }) => text).join(" ")).toMatch(/marked[^.]*every mark measured twice/);
    expect(cards[at]?.items.map(({ text }) => text).join(" ")).not.toMatch(/stud fitted, nut/);
    expect(cards[at + 1]?.id).toBe("card-second-studs");
    // Both ends of this job stand 3-1/2 in from a wall: no tool fits behind them.
    expect(cards[at + 1]?.items.map(({ text }) => text).join(" ")).toMatch(
      /nut and washer off at P1; cables bowed towards the deck.*pulled back into the bay, in a wide curve; cut and stud fitted there, stud pushed out/,
    );
  });

  test("grip ends: H2 keeps tails long until H3, and nothing cuts them before the readings are in their band", () => {
    const plan = examplePlan("0003-long-boardwalk");
    const cards = stepsOf(pagesOf(plan).flat());
    expect(cards.find(({ id }) => id === "card-reeve")?.hold).toMatch(/^H2, signed on Z-804: ends set\. Tails stay long until H3\./);
    const cut = cards.findIndex(({ items, hold }) =>
      [...items.map(({ text }) => text), hold ?? ""].some((text) => /tails (are )?cut/i.test(text)),
    );
    expect(cards[cut]?.id).toBe("card-tightening");
    expect(crewWords(plan)).toMatch(/led out sideways in a wide curve/);
    expect(crewWords(plan)).toMatch(/all of R1 set first, its tails capped or bent aside, then R2/);
  });

  test("steel: nothing is said of wood, and both walls, cold paint and swarf are", () => {
    const plan = examplePlan("0005-steel-balcony");
    for (const words of [crewWords(plan), homeWords(plan)]) {
      expect.soft(words).not.toMatch(/\bwood\b|splits?\b|treated|when the bit meets metal|hold a block/i);
      expect.soft(words).toMatch(/both walls/i);
      expect.soft(words).toMatch(/zinc paint/);
      expect.soft(words).toMatch(/cutting oil/);
    }
  });

  test("untreated wood is not treated; counterbores, tails and corners are spoken of only where there are any", () => {
    const untreated = examplePlan("0004-between-two-walls");
    expect(crewWords(untreated)).not.toMatch(/treated/i);
    expect(crewWords(untreated)).not.toMatch(/corner/);
    const studs = examplePlan("0002-deck-two-corners");
    expect(crewWords(studs)).not.toMatch(/\btails?\b|counterbore|grip end|hold end/i);
    expect(homeWords(studs)).not.toMatch(/\btails?\b|grip end|hold end/i);
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

  test.each(examples)("%s: who marks one stick is told that its strip can be printed, where a level side has such a stick", (_, plan) => {
    const level = plan.sides.some(({ slope }) => slope === 0) && plan.setOff === null;
    expect(homeWords(plan).includes("Or glue on the strip of Z-702, printed at 100 %.")).toBe(level);
  });

  test.each(examples)("%s: the steps speak of this job: each run, its target, all cables and all bores", (_, plan) => {
    const texts = homeWords(plan);
    for (const run of plan.runs) expect.soft(texts).toContain(`Run ${run.id}: the target is`);
    expect(texts).toContain(`Thread ${plan.cables.length} cables`);
    expect(texts).toContain(`Bore ${plan.bores.length} holes`);
    expect(texts).toMatch(/H0[\s\S]*H1[\s\S]*H2[\s\S]*H3[\s\S]*H4/);
  });

  test.each(examples)("%s: the word list and the if-then table are there", (_, plan) => {
    const ids = sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(ids).toEqual(expect.arrayContaining(["steps-words", "steps-troubles"]));
  });

  // Rails are cut to the frame that stands; common practice, no source.
  test.each(["0002-deck-two-corners", "0006-porch-existing-posts"])(
    "%s: posts, then the standing frame is measured, then rails, the opening, spacers, H1",
    (name) => {
      const words = homeWords(examplePlan(name));
      const at = [
        /Set \d+ posts plumb|Check all \d+ posts/,
        /Measure between the standing posts/,
        /Cut the rails/,
        /Measure the space between the rails/,
        /Cut and fix \d+ spacers/,
        /H1, signed on Z-804/,
      ].map((place) => words.search(place));
      expect(at.every((index) => index > -1)).toBe(true);
      expect([...at].sort((a, b) => a - b)).toEqual(at);
    },
  );

  test("two studs: the far ends are marked, H2 stops the work, and only then is a cable cut and its stud pushed out", () => {
    const words = homeWords(examplePlan("0002-deck-two-corners"));
    const places = [
      "Mark it where it leaves",
      "H2, signed on Z-804: no cable is cut",
      "take nut and washer off at P1",
      "Cut and fit the stud there",
      "push the stud out through",
    ];
    // The first stud is pushed out too, when its cable is reeved.
    const at = places.map((place) => words.lastIndexOf(place));
    expect(at.every((index) => index > -1)).toBe(true);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
  });

  test("more than one run: one after the other in a single round, each round on every run where there are several", () => {
    const text = exampleText("0003-long-boardwalk");
    const rounds = planOf(text.replace("\ntightening:\n", "\ntightening:\n  passes: [60 %, 100 %]\n"));
    expect(homeWords(rounds)).toContain("on every run before the next round on any");
    expect(homeWords(rounds)).toContain("Round 1: tighten each cable to 60 % of its target.");
    expect(homeWords(planOf(text))).toContain("Do one run after the other");
    expect(homeWords(examplePlan("0001-level-deck-straight"))).not.toMatch(/on every run|one run after/);
  });

  test.each(examples)("%s: both issues stop by the column of the day, stop each cable at its own reading and read all again", (_, plan) => {
    expect(crewWords(plan)).toMatch(/"Stop at" of each step kept, from the column of the day/);
    expect(crewWords(plan)).toContain("All read again without turning a nut");
    expect(homeWords(plan)).toMatch(/Stop each cable at the value in that column/);
    expect(homeWords(plan)).toContain("Stop each cable at its own reading");
    expect(homeWords(plan)).toContain("Read every cable again");
  });
});
