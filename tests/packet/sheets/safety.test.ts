import { describe, expect, test } from "vitest";
import { safetyFor } from "../../../src/packet/sheets/safety-messages.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { examples, packetOf, sheetOf, textsOf } from "../read-packet.ts";

describe("safetyFor", () => {
  const words = (name: string): string => safetyFor("frame", examplePlan(name)).flatMap(textsOf).join(" ");

  // 29 CFR 1926.501(b)(1): unprotected sides and edges 6 ft (1.8 m) or more above a lower level (from memory).
  test("the fall box names the drop of the job, and the rule of the US only for its editions", () => {
    expect(words("0004-between-two-walls")).toMatch(/This edge: a drop of 9'-6"\..*6 ft \(1\.8 m\).*\[osha-1926\]/);
    expect(words("0005-steel-balcony")).toMatch(/This edge: a drop of 3400 mm\..*local rules for work at height/);
    expect(words("0005-steel-balcony")).not.toContain("osha");
  });

  test("a job outside the US cites no rule of the US on any sheet", () => {
    const packet = packetOf(examplePlan("0005-steel-balcony"), "crew");
    expect(packet.sheets.flatMap(({ blocks }) => blocks.flatMap(textsOf)).join(" ")).not.toContain("[osha-1926]");
  });
});

describe("safetySheet", () => {
  test.each(examples)(
    "%s: holds the box for the whole time, the four lists, one more where lag screws hold and one at a deep drop or for work outside, and no box that stands at a step",
    (_, plan) => {
      const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-802");
      expect(blocks.filter(({ kind }) => kind === "caution").length).toBe(1);
      const lags = plan.job.fittings.face?.fastening.kind === "lag screw" ? 1 : 0;
      const outside = blocks.some((block) => textsOf(block).join(" ").includes("A ladder outside")) ? 1 : 0;
      expect(blocks.filter(({ kind }) => kind === "list").length).toBe(4 + lags + outside);
    },
  );

  // At the edge from 6 ft on: 29 CFR 1926.501(b)(1). Ladders of one out for four up on level ground, one hand on them: 29 CFR 1926.1053
  // (b)(5)(i), (b)(6), (b)(21) (from memory); elsewhere common practice, no source.
  describe("ladders and fall protection", () => {
    const sheetWords = (plan: Plan): string => sheetOf(packetOf(plan, "crew"), "Z-802").blocks.flatMap(textsOf).join("\n");
    const deep = (drop: string): Plan => planOf(changedText("0001-level-deck-straight", { "  drop: 38 in": `  drop: ${drop}` }));

    test("are not spoken of at a low drop where all is reached from the deck", () => {
      expect(sheetWords(deep("38 in"))).not.toMatch(/ladder|harness/i);
      expect(sheetWords(deep("5 ft 11 in"))).not.toMatch(/ladder|harness/i);
    });

    test("are spoken of at 6 ft and more, by the rule of the US where it holds, else as practice", () => {
      expect(sheetWords(deep("6 ft"))).toMatch(
        /Fall protection stands before an old guard.*\n.*\n.*one out for four up.*\(29 CFR 1926\.1053\) \[memory\]/,
      );
      const metric = sheetWords(examplePlan("0005-steel-balcony"));
      expect(metric).toMatch(/one out for four up, tied or held, one hand on it \[practice\]/);
      expect(metric).not.toContain("CFR");
    });

    test("at a low drop with faces that are bored or pulled from outside a ladder is spoken of, with the posts", () => {
      const text = sheetWords(examplePlan("0019-corner-bores-set-off"));
      expect(text).toMatch(/only the outer faces of P\d+.* need somebody outside/);
      expect(text).toContain("one out for four up");
      expect(text).not.toContain("harness");
    });
  });

  test("treated wood asks for treated bores, untreated wood does not, steel asks for cold paint", () => {
    const words = (name: string): string =>
      sheetOf(packetOf(examplePlan(name), "crew"), "Z-802")
        .blocks.flatMap(textsOf)
        .join(" ");
    expect(words("0001-level-deck-straight")).toContain("Treat every bore");
    expect(words("0004-between-two-walls")).not.toMatch(/treat/i);
    expect(words("0005-steel-balcony")).not.toMatch(/treat|notch|chips of wood/i);
    expect(words("0005-steel-balcony")).toContain("Touch up bare metal at bores, cold");
  });
});
