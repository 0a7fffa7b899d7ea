import { describe, expect, test } from "vitest";
import { troubles } from "../../src/packet/troubles.ts";
import { introduction, verdictText, wordList } from "../../src/packet/wording.ts";
import type { FrameCheck, Remedy } from "../../src/plan/frame-plan.ts";
import { isCorner, jointsOf } from "../../src/plan/joints.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { cellText, examples, packetOf, tableOf, textsOf } from "./read-packet.ts";
import { gradeOf, longSentences } from "./reading.ts";

describe("wordList", () => {
  test("stands in the order of the alphabet, each term once", () => {
    const terms = wordList.map(([term]) => term);
    expect(terms).toEqual([...new Set(terms)].sort((a, b) => (a < b ? -1 : 1)));
  });

  test("explains the terms that a homeowner meets on the sheets", () => {
    const terms = new Set(wordList.map(([term]) => term));
    for (const term of [
      "band",
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
      "station",
      "story pole",
      "stud end",
      "tail",
      "take-up",
    ]) {
      expect.soft(terms.has(term), term).toBe(true);
    }
  });

  test.each(examples)(
    "%s: a word of the trade that stands on a homeowner's sheets is explained on Z-801, and 'tail' only where one is cut",
    (_, plan) => {
      const packet = packetOf(plan, "homeowner");
      const texts = packet.sheets
        .flatMap(({ blocks }) => blocks.flatMap((block) => ("id" in block && block.id === "steps-words" ? [] : textsOf(block))))
        .join("\n");
      const explained = tableOf(packet, "steps-words").rows.map(([term = ""]) => cellText(term));
      for (const term of ["band", "crown", "first turns", "shear", "station", "story pole", "tail"]) {
        expect.soft(explained.includes(term), term).toBe(new RegExp(`\\b${term}s?\\b`, "i").test(texts));
      }
      expect.soft(explained).toContain("places (PLS)");
      expect.soft(explained.includes("N"), "N").toBe(plan.job.units === "mm");
      expect.soft(explained.includes("lbf"), "lbf").toBe(plan.job.units === "inch");
    },
  );

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
    "%s: if-then rows cover galling, slack, the sphere, a short cable and a leaning post, in short sentences",
    (_, plan) => {
      for (const home of [true, false]) {
        const rows = troubles(plan, home);
        const whens = rows.map(({ when }) => when).join("; ");
        for (const word of ["stiffly", "slack", "sphere passes", "too short", "leans"]) expect.soft(whens).toContain(word);
        expect(rows.flatMap(({ then }) => longSentences(then))).toEqual([]);
      }
    },
  );

  test("metal in the way and a split post are troubles of wood, a sharp edge one of steel", () => {
    const whens = (name: string): string =>
      troubles(examplePlan(name))
        .map(({ when }) => when)
        .join("; ");
    expect(whens("0001-level-deck-straight")).toMatch(/bit meets metal.*splits/);
    expect(whens("0005-steel-balcony")).not.toMatch(/meets metal|splits/);
    expect(whens("0005-steel-balcony")).toContain("sharp edge");
  });

  test("corners and grip ends are spoken of only where the job has them", () => {
    for (const [name, plan] of examples) {
      const whens = troubles(plan)
        .map(({ when }) => when)
        .join("; ");
      expect.soft(whens.includes("corner"), name).toBe(jointsOf(plan.runs).some((id) => isCorner(plan, id)));
      expect
        .soft(whens.includes("grip end"), name)
        .toBe(plan.runs.some(({ left, right }) => left.kind === "grip" || right.kind === "grip"));
    }
  });

  test("somebody who does it once has no office to ask", () => {
    for (const [, plan] of examples) {
      const thens = troubles(plan, true)
        .map(({ then }) => then)
        .join(" ");
      expect.soft(thens).not.toContain("the office");
      expect.soft(thens).toContain("the author of this packet");
    }
  });
});

describe("verdictText", () => {
  const check = { id: "height", verdict: "fail" } as Plan["checks"][number];
  const ofFrame = { id: "post-cables-P1", ratio: 1.3, verdict: "fail" } as FrameCheck;
  const withChecks = (plan: Plan, checks: Plan["checks"], frame: readonly FrameCheck[], remedy: Remedy | null = null): Plan => ({
    ...plan,
    verdict: "fail",
    checks,
    frame: { ...plan.frame, checks: frame, remedy },
  });

  test.each(examples)("%s: never says that the frame is fine", (_, plan) => {
    for (const verdict of ["pass", "ask", "fail"] as const) {
      expect.soft(verdictText({ ...plan, verdict })).toMatch(/engineer/);
      expect.soft(verdictText({ ...plan, verdict })).not.toMatch(/frame (holds|is fine|passes)/);
    }
  });

  test("of 2 checks that fail 1 is of the frame: it must be changed or reviewed, and what would hold is named without marks of bold", () => {
    const [[, plan] = []] = examples;
    if (!plan) throw new Error("no example");
    const rows = [check, { ...check, id: "frame-post-cables-P1" }];
    const text = verdictText(
      withChecks(plan, rows, [ofFrame], {
        change: "posts of 6x6",
        ratio: 0.9,
        checks: [{ kind: "post-cables", ratio: 0.9 }],
        write: "posts: size: 6x6",
      }),
    );
    expect(text).toBe(
      "Not for construction: 2 checks fail, 1 of them of the frame. It must be changed or reviewed by a licensed engineer, see Z-805. It would hold with: posts of 6x6.",
    );
    expect(verdictText(withChecks(plan, [check], []))).toMatch(
      /^Not for construction: 1 check fails\. A licensed engineer or the authority/,
    );
  });
});
