import { describe, expect, test } from "vitest";
import { safetyFor } from "../../../src/packet/sheets/safety-messages.ts";
import { examplePlan } from "../../support/example-jobs.ts";
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
    "%s: holds the box for the whole time, the four lists, one more where lag screws hold, and no box that stands at a step",
    (_, plan) => {
      const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-802");
      expect(blocks.filter(({ kind }) => kind === "caution").length).toBe(1);
      expect(blocks.filter(({ kind }) => kind === "list").length).toBe(plan.job.fittings.face?.fastening.kind === "lag screw" ? 5 : 4);
    },
  );

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
