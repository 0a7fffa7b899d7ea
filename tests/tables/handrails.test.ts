import { describe, expect, test } from "vitest";
import { handrailRules } from "../../src/tables/handrails.ts";

// Values and clauses as printed in IRC 2018, 2021 and 2024 (R311.7.8; since 2024 R318.7.8 and R320), IBC 2024 (1011.11, 1014) and the
// ABCB Housing Provisions 2022 (11.3.5). Rules of ramps in IRC and IBC, and all of IBC 2021, are from memory.
describe("handrailRules", () => {
  test.each([
    ["IRC 2018", "irc-2018", "R311.7.8", "R311.7.8.5"],
    ["IRC 2021", "irc-2021", "R311.7.8", "R311.7.8.5"],
    ["IRC 2024", "irc-2024", "R318.7.8", "R320.6"],
  ] as const)("%s: from 4 risers on, 34 to 38 in, a grip of 4 to 6-1/4 in round; clauses of its own", (edition, source, needed, grips) => {
    const rules = handrailRules(edition);
    expect(rules?.stair).toMatchObject({ source, where: needed });
    expect(rules?.stair.value).toContain("4 or more risers");
    expect(rules?.height.value).toContain("34 to 38 in");
    expect(rules?.grip?.size).toEqual({ value: { perimeter_min: 101.6, perimeter_max: 158.75, across_max: 57.15 }, source, where: grips });
    expect(rules?.ends?.value).toContain("returned");
    expect(rules?.ramp).toMatchObject({ source: "memory" });
  });

  test("IBC 2024 was read; IBC 2021 is told from memory", () => {
    expect(handrailRules("IBC 2024")?.stair).toMatchObject({ source: "ibc-2024", where: "1011.11" });
    expect(handrailRules("IBC 2021")?.stair).toMatchObject({ source: "memory", where: "IBC 2021, 1011.11" });
    expect(handrailRules("IBC 2024")?.ramp.where).toContain("1012.8");
  });

  test("NCC 2022: where a stair or a ramp rises 1 m, at least 865 mm; of grip and ends nothing was read", () => {
    const rules = handrailRules("NCC 2022");
    expect(rules?.ramp).toMatchObject({ source: "ncc-2022", where: "11.3.5" });
    expect(rules?.ramp.value).toContain("1 m");
    expect(rules?.height.value).toContain("865 mm");
    expect([rules?.grip, rules?.ends, rules?.clearance]).toEqual([null, null, null]);
  });

  test("another code states its own", () => {
    expect(handrailRules("other")).toBeNull();
  });
});
