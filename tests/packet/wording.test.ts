import { describe, expect, test } from "vitest";
import { introduction, troubles, verdictText, wordList } from "../../src/packet/wording.ts";
import { examples } from "./read-packet.ts";
import { gradeOf, longSentences } from "./reading.ts";

describe("wordList", () => {
  test("stands in the order of the alphabet, each term once", () => {
    const terms = wordList.map(([term]) => term);
    expect(terms).toEqual([...new Set(terms)].sort((a, b) => (a < b ? -1 : 1)));
  });

  test("explains the terms that a homeowner meets on the sheets", () => {
    const terms = new Set(wordList.map(([term]) => term));
    for (const term of [
      "bay",
      "bore",
      "bushing",
      "course",
      "datum",
      "end post",
      "grip end",
      "reeve",
      "run",
      "spacer",
      "span",
      "stud end",
      "take-up",
    ]) {
      expect.soft(terms.has(term), term).toBe(true);
    }
  });

  test("no explanation has a sentence of more than 20 words", () => {
    expect(wordList.flatMap(([, meaning]) => longSentences(meaning))).toEqual([]);
  });
});

describe("introduction", () => {
  test("no sheet opens with a sentence of more than 20 words, and all together read at grade 8 or below", () => {
    const texts = Object.values(introduction).flat();
    expect(texts.flatMap(longSentences)).toEqual([]);
    expect(gradeOf(texts)).toBeLessThanOrEqual(8);
  });
});

describe("troubles", () => {
  test.each(examples)(
    "%s: if-then rows cover galling, slack, the sphere, hardware in the way and a short cable, in short sentences",
    (_, plan) => {
      const rows = troubles(plan);
      const whens = rows.map(([when]) => when).join("; ");
      for (const word of ["stiffly", "slack", "sphere passes", "bit meets metal", "too short", "leans"]) expect.soft(whens).toContain(word);
      expect(rows.flatMap(([, then]) => longSentences(then))).toEqual([]);
    },
  );
});

describe("verdictText", () => {
  test.each(examples)("%s: never says that the frame is fine", (_, plan) => {
    for (const verdict of ["pass", "ask", "fail"] as const) {
      expect.soft(verdictText({ ...plan, verdict })).toMatch(/not checked by/);
    }
  });
});
