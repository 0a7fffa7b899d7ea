import { describe, expect, test } from "vitest";
import { catalogue, sheetHeads } from "../../src/packet/issues.ts";
import { examples, issues } from "./read-packet.ts";

const [first] = examples;
if (!first) throw new Error("no example job");
const [, plan] = first;
const idsOf = (issue: (typeof issues)[number]): readonly string[] => sheetHeads({ plan, issue, all: false }).map(({ id }) => id);

describe("sheetHeads", () => {
  test("every issue opens with the cover Z-001 and ends with the sources Z-902", () => {
    for (const issue of issues) {
      expect.soft(idsOf(issue)[0]).toBe("Z-001");
      expect.soft(idsOf(issue).at(-1)).toBe("Z-902");
    }
  });

  test("the official gets the questions, drawings, cables, proof and frame checks, but no steps, bores or order list", () => {
    expect(idsOf("permit")).toEqual(["Z-001", "Z-002", "Z-101", "Z-201", "Z-301", "Z-601", "Z-804", "Z-805", "Z-902"]);
  });

  test("the crew gets every sheet of the work with the owner's card, and neither questions nor record", () => {
    expect(idsOf("crew")).toEqual([
      "Z-001",
      "Z-003",
      "Z-101",
      "Z-201",
      "Z-301",
      "Z-601",
      "Z-602",
      "Z-603",
      "Z-604",
      "Z-605",
      "Z-801",
      "Z-802",
      "Z-803",
      "Z-804",
      "Z-805",
      "Z-806",
      "Z-902",
    ]);
  });

  test("the homeowner gets the questions on top of the crew's sheets", () => {
    expect(idsOf("homeowner").filter((id) => !idsOf("crew").includes(id))).toEqual(["Z-002"]);
    expect(idsOf("crew").filter((id) => !idsOf("homeowner").includes(id))).toEqual([]);
  });

  test("every issue tells what changed, on Z-004, where it is known what was issued before, and none elsewhere", () => {
    for (const issue of issues) {
      const ids = sheetHeads({ plan, issue, all: false, isRevised: true }).map(({ id }) => id);
      expect.soft(ids.filter((id) => !idsOf(issue).includes(id))).toEqual(["Z-004"]);
      expect.soft([...ids].sort()).toEqual(ids);
      expect.soft(sheetHeads({ plan, issue, all: true }).map(({ id }) => id)).not.toContain("Z-004");
    }
  });

  test("only the record issue holds Z-901", () => {
    expect(issues.filter((issue) => idsOf(issue).includes("Z-901"))).toEqual(["record"]);
  });

  test("all: every sheet of the catalogue stands once, one elevation for each side", () => {
    for (const [, each] of examples) {
      const heads = sheetHeads({ plan: each, issue: "crew", all: true, isRevised: true });
      expect.soft(new Set(heads.map(({ key }) => key)).size).toBe(Object.keys(catalogue).length - (each.rakes.length > 0 ? 0 : 1));
      expect
        .soft(heads.filter(({ key }) => key === "elevation").map(({ id }) => id))
        .toEqual(each.sides.map((_, index) => `Z-${201 + index}`));
    }
  });

  // US National CAD Standard, sheet identification: discipline designator (Z: contractor and shop drawings), sheet type
  // (one digit), sequence (two digits); read in secondary sources only.
  test("ids have a discipline letter Z, one digit of type and two of sequence, in rising order", () => {
    for (const issue of issues) {
      for (const id of idsOf(issue)) expect.soft(id).toMatch(/^Z-[0-9]\d\d$/);
      expect.soft([...idsOf(issue)].sort()).toEqual(idsOf(issue));
    }
  });
});
