import { describe, expect, test } from "vitest";
import { type CodeEdition, type GuardRules, guardRules, type Occupancy } from "../../src/tables/limits.ts";

function rulesOf(edition: CodeEdition, occupancy: Occupancy = "one- or two-family dwelling"): GuardRules {
  const rules = guardRules({ edition, occupancy });
  if (rules === null) throw new Error(`no rules for ${edition}`);
  return rules;
}

describe("guardRules", () => {
  // International Residential Code: height 36 in, sphere 4 in, 200 lb, 50 lb on 1 ft2; numbers and SI values as printed there.
  test.each([
    ["IRC 2018", "R312.1.2", "R312.1.3", "table R301.5, note d"],
    ["IRC 2021", "R312.1.2", "R312.1.3", "table R301.5, notes d and i"],
    ["IRC 2024", "R321.1.2", "R321.1.3", "table R301.5, notes d and i"],
  ] as const)(
    "%s: 36 in by %s, 4 in sphere by %s, 200 lb by %s, 50 lb on 1 ft2, nothing along the top, no climbing rule",
    (edition, height, opening, load) => {
      const rules = rulesOf(edition);
      expect(rules.guardHeight_min).toMatchObject({ value: 914.4, where: height });
      expect(rules.openingSphere).toMatchObject({ value: 101.6, where: opening });
      expect(rules.topLoad.value).toBeCloseTo(889.644, 3);
      expect(rules.topLoadDirection.where).toBe(load);
      expect(rules.infillLoad.value).toBeCloseTo(222.411, 3);
      expect(rules.infillArea_mm2.value).toBeCloseTo(92_903.04, 2);
      expect(rules.uniformLoad_NPerMm).toBeNull();
      expect(rules.climbRule).toBeNull();
      expect(rules.guardRequiredAboveDrop.value).toBe(762);
      expect(rules.guardHeight_min.source).toBe(edition.toLowerCase().replace(" ", "-"));
    },
  );

  // International Building Code 1015.3, 1015.4, 1607.9.
  test("IBC 2021: 42 in (1066.8 mm) and 50 lb/ft along the top by 1607.9.1; a one-family house 36 in and no line load", () => {
    const other = rulesOf("IBC 2021", "other");
    expect(other.guardHeight_min).toMatchObject({ value: 1066.8, where: "1015.3" });
    expect(other.uniformLoad_NPerMm?.value).toBeCloseTo(0.7297, 4);
    expect(other.uniformLoad_NPerMm?.where).toBe("1607.9.1");
    const home = rulesOf("IBC 2021");
    expect(home.guardHeight_min).toMatchObject({ value: 914.4, where: "1015.3, exception 1" });
    expect(home.uniformLoad_NPerMm).toBeNull();
  });

  test("IBC 2024 has the line load in 1607.9.1.1 and the single load in 1607.9.1, the other way round than 2021", () => {
    const rules = rulesOf("IBC 2024", "dwelling unit in a larger building");
    expect(rules.uniformLoad_NPerMm?.where).toBe("1607.9.1.1");
    expect(rules.topLoad.where).toBe("1607.9.1");
    expect(rules.guardHeight_min.value).toBe(1066.8);
    expect(rules.notes.join(" ")).toContain("exception 1");
  });

  // ABCB Housing Provisions 2022, 11.3.3, 11.3.4; NCC 2022 Volume Two H5V1.
  test("NCC 2022: 1 m, a 125 mm sphere, 150 N on the cone, and above a 4 m fall nothing to climb from 150 to 760 mm", () => {
    const rules = rulesOf("NCC 2022");
    expect(rules.guardHeight_min).toMatchObject({ value: 1000, where: "11.3.4(2)(b)(i)" });
    expect(rules.openingSphere).toMatchObject({ value: 125, where: "11.3.4(4)" });
    expect(rules.openingForce).toMatchObject({ value: 150, where: "H5V1" });
    expect(rules.climbZone?.value).toEqual({ aboveDrop: 4000, from: 150, to: 760 });
    expect(rules.guardRequiredAboveDrop.value).toBe(1000);
    // The standard that it names was not read: its loads say so.
    expect([rules.infillLoad.source, rules.topLoad.source, rules.uniformLoad_NPerMm?.source]).toEqual(["memory", "memory", "memory"]);
  });

  test("no United States edition states a force for the opening test, and each says to ask", () => {
    for (const edition of ["IRC 2018", "IRC 2021", "IRC 2024", "IBC 2021", "IBC 2024"] as const) {
      expect(rulesOf(edition).openingForce, edition).toBeNull();
      expect(rulesOf(edition).notes.join(" "), edition).toContain("no force");
    }
  });

  test("each edition has a rule on pool barriers; the residential code outside its scope says so", () => {
    for (const edition of ["IRC 2018", "IRC 2021", "IRC 2024", "IBC 2021", "IBC 2024", "NCC 2022"] as const) {
      expect(rulesOf(edition).poolRule.value.length, edition).toBeGreaterThan(20);
    }
    expect(rulesOf("IRC 2021", "other").notes.length).toBe(rulesOf("IRC 2021").notes.length + 1);
  });

  test("NCC 2022 for another building says that its provisions are for houses", () => {
    expect(rulesOf("NCC 2022", "other").notes.length).toBe(rulesOf("NCC 2022").notes.length + 1);
  });

  test("IRC 2018 loads the top in five directions, 2021 outward and down, and in all five where it is the handrail", () => {
    const any = ["outward", "inward", "along the rail", "down", "up"];
    expect(rulesOf("IRC 2018").topLoadDirections).toEqual(any);
    expect(rulesOf("IRC 2021").topLoadDirections).toEqual(["outward", "down"]);
    expect(rulesOf("IRC 2021").handrailLoadDirections).toEqual(any);
  });

  test("another code has no rules here", () => {
    expect(guardRules({ edition: "other", occupancy: "other" })).toBeNull();
  });
});
