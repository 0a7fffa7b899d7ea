import { describe, expect, test } from "vitest";
import { makePacket } from "../../src/packet/make-packet.ts";
import { makeTemplates } from "../../src/packet/make-templates.ts";
import { drawingFaults } from "../../src/pdf/drawing-faults.ts";
import { exampleText, planOf } from "../support/example-jobs.ts";

const stamp = { jobHash: "0123456789ab", programVersion: "0.0.0-test" };

describe.each(["stair-from-landing", "ramp-to-porch"])("the sheets of %s", (name) => {
  const plan = planOf(exampleText(name));

  test.each(["crew", "homeowner", "permit", "record"] as const)(
    "%s: every drawing fits, and both heights of a slanted bore are told",
    (issue) => {
      const packet = makePacket({ plan, issue, stamp });
      expect(drawingFaults(packet)).toEqual([]);
      expect(packet.sheets.some(({ id }) => id === "Z-401")).toBe(issue !== "record");
    },
  );

  test.each(["letter", "a4"] as const)("templates on %s fit their pages", (paper) => {
    expect(drawingFaults(makeTemplates({ plan, paper, stamp }))).toEqual([]);
  });
});
