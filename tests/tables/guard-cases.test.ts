import { describe, expect, test } from "vitest";
import { combinationRule, guardCases } from "../../src/tables/guard-cases.ts";
import { type CodeEdition, guardRules, type Occupancy } from "../../src/tables/limits.ts";

function casesOf(edition: CodeEdition, { occupancy = "one- or two-family dwelling" as Occupancy, handrail = false } = {}) {
  const rules = guardRules({ edition, occupancy });
  if (rules === null) throw new Error(`no rules for ${edition}`);
  return guardCases(rules, handrail);
}

const directionsOfTop = (...of: Parameters<typeof casesOf>) => {
  const load = casesOf(...of).find(({ name }) => name === "cables and single load at the top")?.load.value;
  return load?.kind === "top" ? load.directions : null;
};

const ANY = ["outward", "inward", "along the rail", "down", "up"];

describe("guardCases", () => {
  test("IRC 2021: cables alone for good, 200 lb at the top, 50 lb on a square of 304.8 mm; nothing along the top", () => {
    const cases = casesOf("IRC 2021");
    expect(cases.map(({ name, duration }) => [name, duration.value])).toEqual([
      ["cables alone", "permanent"],
      ["cables and single load at the top", "ten minutes"],
      ["cables and load on the infill", "ten minutes"],
    ]);
    expect(cases[1]?.load.value).toMatchObject({ kind: "top", force: 200 * 4.4482216152605 });
    expect(cases[1]?.load).toMatchObject({ source: "irc-2021", where: "table R301.5" });
    expect(cases[2]?.load.value).toEqual({
      kind: "infill",
      force: expect.closeTo(222.411, 3),
      side: expect.closeTo(304.8, 9),
      directions: ["outward", "inward"],
    });
  });

  // International Residential Code, table R301.5: note d up to 2018; notes d and i since 2021.
  test("IRC 2018 pushes the top in any direction, 2021 and 2024 outward and down, and in any direction where it is the handrail", () => {
    expect(directionsOfTop("IRC 2018")).toEqual(ANY);
    expect(directionsOfTop("IRC 2021")).toEqual(["outward", "down"]);
    expect(directionsOfTop("IRC 2024")).toEqual(["outward", "down"]);
    expect(directionsOfTop("IRC 2024", { handrail: true })).toEqual(ANY);
    expect(directionsOfTop("NCC 2022", { handrail: true })).toEqual(["outward", "inward", "down"]);
  });

  // International Building Code 2021, 1607.9.1: 50 lb/ft = 0.7297 N/mm, not in one- and two-family dwellings.
  test("IBC 2021: 50 lb/ft along the top as a case of its own, not for a one-family house", () => {
    const line = casesOf("IBC 2021", { occupancy: "other" }).find(({ load }) => load.value.kind === "line");
    expect(line?.load.value).toEqual({ kind: "line", force_NPerMm: expect.closeTo(0.7297, 4), directions: ANY });
    expect(line?.load.where).toBe("1607.9.1");
    expect(casesOf("IBC 2021").some(({ load }) => load.value.kind === "line")).toBe(false);
  });

  test("the rule of combination says that guard loads don't act together, as remembered", () => {
    expect(combinationRule.value).toContain("not together");
    expect(combinationRule.source).toBe("memory");
  });
});
