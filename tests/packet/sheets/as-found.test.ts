// Do the sheets of an old guard say what was found at its posts wherever somebody would otherwise do the usual thing?
import { describe, expect, test } from "vitest";
import { lineHeight } from "../../../src/drawing/text.ts";
import { makeTemplates } from "../../../src/packet/make-templates.ts";
import { showIn } from "../../../src/packet/show-number.ts";
import { templatesOf } from "../../../src/packet/templates/faces.ts";
import { zonesOf } from "../../../src/packet/templates/hardware-zones.ts";
import { tilesOf } from "../../../src/packet/templates/template-strips.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { cellText, examples, packetOf, sheetOf, stamp, stepsOf, tableOf, textsOf } from "../read-packet.ts";

const porch = examplePlan("0010-old-porch-as-found");
const crew = packetOf(porch, "crew");
const wordsOf = (id: string, packet = crew): string => sheetOf(packet, id).blocks.flatMap(textsOf).join("\n");

describe("P6, which leans by 3/8 in in 36 in away from the deck, and P2, which leans along the guard", () => {
  test("is named with its lean wherever posts must be plumb", () => {
    for (const words of [wordsOf("Z-001"), wordsOf("Z-801"), wordsOf("Z-801", packetOf(porch, "homeowner"))]) {
      expect.soft(words).toContain('P6 leans 3/8" away from the deck over 36" of height');
    }
    expect(
      tableOf(crew, "tools-list")
        .rows.map((row) => cellText(row[4] ?? ""))
        .join(),
    ).toContain("posts plumb before marking, but for P2, P6, which lean as found");
  });

  test("the card of setting out says that its holes are off the middle", () => {
    const card = stepsOf(sheetOf(crew, "Z-801").blocks).find(({ id }) => id === "card-set-out");
    expect(card?.items.map(({ text }) => text).join()).toContain("At P6 off the middle of the face, by the table on Z-603.");
  });

  test("the grid has a row for it in its place, which points to its own table", () => {
    const marks = tableOf(crew, "bores-grid").rows.map((row) => row.slice(0, 2).map(cellText));
    expect(marks.find(([mark]) => mark === "P6")).toEqual(["P6", "table below"]);
    expect(marks.filter(([mark]) => mark?.startsWith("P")).map(([mark]) => mark)).toEqual(["P1", "P2", "P3", "P4", "P5", "P6", "P7"]);
  });

  test("the record has its offsets from the lowest to the highest course", () => {
    const { rows } = tableOf(packetOf(porch, "record"), "record-bores-2");
    expect(rows.map((row) => row.slice(0, 2).map(cellText).join(": "))).toContain(
      `Across, from the middle: P6 1/16" towards the deck to 5/16" towards the deck`,
    );
  });
});

describe("P3, which leans to the right, and P7, which leans to the left", () => {
  const rows = [
    "- { post: P3, leans: { right: 1/2 in, over: 36 in } }",
    "- { post: P7, leans: { left: 1 in, over: 36 in } }",
    "- { post: P4, size: 6x6 }",
  ];
  const plan = planOf(
    changedText("0010-old-porch-as-found", {
      "- { post: P2, leans: { right: 1/2 in, over: 36 in } }": "",
      "- { post: P4, size: 6x6 }": rows.join("\n    "),
    }),
  );
  const [office, own, home] = [packetOf(plan, "crew"), packetOf(plan, "crew"), packetOf(plan, "homeowner")];

  test("are named with their lean wherever posts must be plumb", () => {
    for (const words of [wordsOf("Z-001", own), wordsOf("Z-801", own), wordsOf("Z-801", home)]) {
      expect.soft(words).toMatch(/P3 leans 1\/2" to the right over 36" of height[,.] P7 leans 1" to the left over 36" of height/);
    }
  });

  test("are surveyed at the middle cable, and their lean is read again", () => {
    const words = wordsOf("Z-003", office);
    const { height } = plan.courses[4] ?? { height: 0 };
    expect(words).toContain(`at ${showIn("inch").tape(height)} above the datum`);
    expect(words).toContain('leans to the right (seen from the deck), from plumb over 36" of height');
    expect(words).toContain("the longest, at course 09");
  });

  test("are bored level, and what reads otherwise there is said", () => {
    const words = wordsOf("Z-603", own);
    expect(words).toContain("at P3 and P7, which lean along the guard, level instead");
    expect(words).toContain("**P3 and P7** lean along the guard: **bore level**");
    expect(words).toContain("**P7**: washers bear on a face that is not square to the cable.");
    expect(words).toContain("Read tensions with a gauge, or in another bay.");
    expect(
      stepsOf(sheetOf(home, "Z-801").blocks)
        .flatMap(({ items }) => items.map(({ text }) => text))
        .join(),
    ).toContain("At P3 and P7 bore level");
  });
});

describe("kinds of posts on Z-603", () => {
  test.each(examples)("%s: a range swallows no post of another kind", (_, plan) => {
    const [words = ""] = tableOf(packetOf(plan, "crew"), "bores-grid").notes ?? [];
    for (const [, first, last, kind] of words.matchAll(/P(\d+) to P(\d+)[^:]*: ([a-z ]+)/g)) {
      for (let nth = Number(first); nth <= Number(last); nth++) {
        const { role } = plan.verticals.find(({ id }) => id === `P${nth}`) ?? { role: "none" };
        expect.soft(kind, `P${nth}`).toContain(role === "pair" ? "of a pair" : role);
      }
    }
  });
});

describe("templates", () => {
  test("hardware is hatched on those that have it, with the posts where not all have it", () => {
    const words = templatesOf(porch).map((template) => [
      template.uprights.map(({ id }) => id).join(),
      zonesOf(template, porch).map((zone) => zone.words),
    ]);
    expect(words).toContainEqual([
      "P2,P3,P5",
      ["bolts of the post bases: bore nothing here", "bolt of an old awning in P3 and P5: bore nothing here"],
    ]);
    expect(words).toContainEqual(["S1,S2,S3,S4,S5,S6,S7", []]);
  });

  test("where holes stand beside the middle line, the sheet and the strip say so", () => {
    const [sheet] = makeTemplates({ plan: porch, paper: "letter", stamp }).sheets;
    const blocks = sheet?.blocks ?? [];
    expect(blocks.flatMap(textsOf).join()).toContain("**P6: the middle line is not where the holes are.**");
    const drawn = blocks.flatMap((block) => (block.kind === "drawing" && block.title.includes("P6") ? [block.svg] : [])).join();
    expect(drawn).toContain("1/16\" to the deck's side");
  });

  test.each(examples)("%s: the lower line of a tile leaves two lines of words below those of its lowest hole", (_, plan) => {
    const show = showIn(plan.job.units);
    for (const template of templatesOf(plan)) {
      for (const { number, from, to } of tilesOf(template, { plan, show, paper: "letter" })) {
        const lowest = Math.min(...template.holes.map(({ here }) => here.height).filter((height) => height >= from && height < to));
        if (number > 1) expect.soft(lowest - from, `${template.id}-${number}`).toBeGreaterThan(3 * lineHeight());
      }
    }
  });
});

describe("an old porch with three posts of another size", () => {
  const plan = planOf(
    changedText("0010-old-porch-as-found", {
      "- { post: P4, size: 6x6 }": "- { post: P3, size: 6x6 }\n    - { post: P4, size: 6x6 }\n    - { post: P5, size: 4x6 }",
    }),
  );
  const drawn = (id: string): string =>
    sheetOf(packetOf(plan, "crew"), id)
      .blocks.flatMap((block) => (block.kind === "drawing" ? [...block.svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, text]) => text) : []))
      .join(" ");

  test("the elevation names each other section once, with its posts", () => {
    expect(drawn("Z-201")).toContain("Posts 4x4 (P3, P4 6x6) (P5 4x6), spacers");
  });

  test("the key of the plan seen from above has all sections", () => {
    expect(drawn("Z-101")).toContain("post 4x4 or 6x6 or 4x6");
  });
});

test("that a post leans along the guard is told on the elevation of its own side, not on the other", () => {
  const leaning = planOf(
    changedText("0018-corner-post-between-runs", {
      "  existing: true\n": "  existing: true\n  as found: [{ post: P2, leans: { right: 1/4 in, over: 36 in } }]\n",
    }),
  );
  const words = (id: string): string => sheetOf(packetOf(leaning, "crew"), id).blocks.flatMap(textsOf).join(" ");
  expect(words("Z-201")).toContain("**P2** leans along the guard");
  expect(words("Z-202")).not.toContain("leans along");
  expect(words("Z-101")).toContain("**P2** leans along the guard");
});
