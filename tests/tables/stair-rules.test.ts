import { describe, expect, test } from "vitest";
import { guardRules } from "../../src/tables/limits.ts";

const stairsOf = (edition: Parameters<typeof guardRules>[0]["edition"], occupancy: Parameters<typeof guardRules>[0]["occupancy"]) => {
  const rules = guardRules({ edition, occupancy });
  if (rules === null) throw new Error(`no rules for ${edition}`);
  return rules.stairs;
};

describe("stairs", () => {
  // International Residential Code: open side of stairs 34 in, as handrail 34 to 38 in, sphere 4-3/8 in, triangle 6 in, handrail from 4 risers.
  test.each([
    ["IRC 2018", "R312.1", "R311.7.8"],
    ["IRC 2021", "R312.1", "R311.7.8"],
    ["IRC 2024", "R321.1", "R318.7.8"],
  ] as const)(
    "%s: 34 in, 4-3/8 in and 6 in by the exceptions of %s.2 and .3; a handrail from 4 risers on by %s",
    (edition, guards, rails) => {
      const stairs = stairsOf(edition, "one- or two-family dwelling");
      expect(stairs.guardHeight_min).toMatchObject({ value: 863.6, where: `${guards}.2, exception 1` });
      expect(stairs.openingSphere).toMatchObject({ value: 111.125, where: `${guards}.3, exception 2` });
      expect(stairs.triangleSphere?.value).toBeCloseTo(152.4, 9);
      expect(stairs.triangleSphere?.where).toBe(`${guards}.3, exception 1`);
      expect(stairs.handrail.low.value).toBe(863.6);
      expect(stairs.handrail.high?.value).toBeCloseTo(965.2, 9);
      expect(stairs.handrailNeeded).toMatchObject({ value: { risers: 4 }, where: rails });
    },
  );

  // International Building Code 1015.3, 1015.4 exceptions 2 and 6.
  test("IBC 2024: in a dwelling unit 34 in and 4-3/8 in, elsewhere 42 in and 4 in; the triangle 6 in everywhere", () => {
    expect(stairsOf("IBC 2024", "dwelling unit in a larger building").openingSphere).toMatchObject({
      value: 111.125,
      where: "1015.4, exception 6",
    });
    const other = stairsOf("IBC 2024", "other");
    expect(other.openingSphere.value).toBeCloseTo(101.6, 9);
    expect(other.guardHeight_min.value).toBeCloseTo(1066.8, 9);
    expect(other.triangleSphere).toMatchObject({ where: "1015.4, exception 2" });
  });

  // NCC 2022 ABCB Housing Provisions 11.3.4(2)(a), 11.3.4(4), 11.3.5.
  test("NCC 2022: 865 mm above the nosings, 125 mm above their line, no size for the triangle, a handrail from 1 m of rise", () => {
    const stairs = stairsOf("NCC 2022", "one- or two-family dwelling");
    expect(stairs.guardHeight_min).toMatchObject({ value: 865, where: "11.3.4(2)(a)" });
    expect(stairs.openingSphere.value).toBe(125);
    expect(stairs.triangleSphere).toBeNull();
    expect(stairs.openingFrom).toBe("line of the nosings");
    expect(stairsOf("IRC 2021", "one- or two-family dwelling").openingFrom).toBe("steps");
    expect(stairs.handrailNeeded.value).toEqual({ rise: 1000 });
  });

  // NCC 2022 ABCB Housing Provisions 11.3.4(2)(a): 865 mm above a ramp too; the American texts name no other height there.
  test("above a ramp: 865 mm by the NCC 2022, by the IRC that of a floor", () => {
    const rampOf = (edition: "NCC 2022" | "IRC 2021") => guardRules({ edition, occupancy: "one- or two-family dwelling" })?.rampHeight_min;
    expect(rampOf("NCC 2022")).toMatchObject({ value: 865, where: "11.3.4(2)(a)" });
    expect(rampOf("IRC 2021")).toBeUndefined();
  });
});
