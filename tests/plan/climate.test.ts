import { describe, expect, test } from "vitest";
import { traceAll } from "../../src/explain/explain.ts";
import { wordsOn } from "../packet/read-packet.ts";
import { changedText, exampleNames, examplePlan, exampleText, planOf } from "../support/example-jobs.ts";
import { disagreeing } from "../support/traces.ts";

const name = "rule-of-thumb";
const changed = (changes: Readonly<Record<string, string>>) => planOf(changedText(name, changes));
const site = (lines: string) => changed({ "tightening:\n": `site: { ${lines} }\ntightening:\n` });

describe.each(exampleNames)("climateOf of %s", (example) => {
  const plan = examplePlan(example);

  test("the colder the day, the higher the reading of every cable; at the reference temperature it is the target", () => {
    for (const { runId, days } of plan.climate) {
      const target = plan.runs.find(({ id }) => id === runId)?.tension.target ?? 0;
      days.slice(1).forEach((day, index) => {
        day.each.forEach((reading, cable) => {
          expect(reading).toBeLessThan(days[index]?.each[cable] ?? 0);
        });
      });
      const [before, after] = [days.findLast(({ temperature }) => temperature <= 20), days.find(({ temperature }) => temperature >= 20)];
      expect(before?.high).toBeGreaterThanOrEqual(target * 0.999);
      expect(after?.low).toBeLessThanOrEqual(target * 1.001);
    }
  });

  test("a warm day takes less than from a cable between rigid anchors, EA (16e-6 - alpha) dt, at the nut over what friction leaves", () => {
    const { stiffness } = plan.job.cable;
    const { warmest, reference } = plan.job.site;
    for (const { runId, heat, expansion } of plan.climate) {
      const left = plan.runs.find(({ id }) => id === runId)?.tension.farRatio ?? 1;
      const rigid = stiffness.value.nominal * (expansion.strand.value - expansion.deck.value) * (warmest.value - reference.value);
      for (const loss of heat.each) {
        expect(loss).toBeGreaterThan(0);
        expect(loss).toBeLessThanOrEqual((rigid / left) * 1.001);
      }
    }
  });
});

describe("climateOf", () => {
  test("the target makes up for heat and settling; for heat alone it is lower, for nothing lowest", () => {
    const target = (what: string): number =>
      changed({ "tightening:\n": `tightening:\n  allow for: ${what}\n` }).runs[0]?.tension.target ?? 0;
    const [both, heat, nothing] = [target("heat and settling"), target("heat"), target("nothing")];
    expect(both).toBeGreaterThan(heat ?? 0);
    expect(heat).toBeGreaterThan(nothing ?? 0);
  });

  test("posts that are as dry when fitted as later do not shrink", () => {
    const climate = site("moisture at fitting: 12 %").climate[0];
    expect(climate?.shrinkage.closing).toBe(0);
  });

  test("a site without a summer takes nothing by heat: warmest and reference 68 F", () => {
    expect(site("warmest: 68 F").climate[0]?.heat.worst).toBeCloseTo(0, 6);
  });

  // Wood Handbook, 13-2: dD = D C dM within 6 to 14 % of moisture; C of southern yellow pine, 0.00265, from a dimension change chart.
  test.each([14, 13, 7])(
    "Southern Pine of 3-1/2 in that is fitted at %i per cent of moisture changes evenly from there to 6",
    (percent) => {
      const plan = changed({
        "  size: 4x4  ": "  species: Southern Pine\n  grade: No.2\n  size: 4x4  ",
        "tightening:\n": `site: { moisture at fitting: ${percent} %, moisture in service: 6 % }\ntightening:\n`,
      });
      expect(plan.job.site.moistureAtFitting_percent.value).toBe(percent);
      expect(plan.climate[0]?.shrinkage.left).toBeCloseTo(88.9 * 0.00265 * (percent - 6), 9);
      expect(plan.climate[0]?.wood?.changeShare?.value).toBe(0.00265);
    },
  );

  test("western hemlock of 3-1/2 in that dries from 19 to 12 % shrinks by 13-3 of the Wood Handbook: D dM / (30/0.078 - 30 + 19)", () => {
    const plan = changed({ "  size: 4x4  ": "  species: Hem-Fir\n  grade: No.2\n  size: 4x4  " });
    expect(plan.climate[0]?.shrinkage.left).toBeCloseTo((88.9 * 7) / (30 / 0.078 - 30 + 19), 9);
    expect(plan.climate[0]?.wood?.changeShare).toBeNull();
  });
});

// 316 grows by 16.5e-6 per degree between 20 and 100 degC (a data sheet of 316), the strand by 16e-6: neither day takes much.
test("climateOf in a frame of stainless: 0005 with posts, rails and spacers of it grows as its strand does, within 3 %", () => {
  const plan = planOf(exampleText("0005-steel-balcony").replaceAll("material: steel", "material: stainless"));
  const { coldest, reference } = plan.job.site;
  const climate = plan.climate[0];
  expect(climate?.expansion.deck.value).toBe(16.5e-6);
  expect(climate?.expansion.rail.value).toBe(16.5e-6);
  const rigid = plan.job.cable.stiffness.value.nominal * 0.5e-6 * (reference.value - coldest.value);
  expect(climate?.cold.worst).toBeGreaterThan(0);
  expect(climate?.cold.worst).toBeLessThanOrEqual((rigid / (plan.runs[0]?.tension.farRatio ?? 1)) * 1.001);
});

// Aluminium grows by 23.4e-6 per degree (data sheet of 6063), the strand by 16e-6 (EN 1993-1-11, 3.3): cold slackens the cables of such a frame.
describe("climateOf in a frame of aluminium: 0005 with posts, rails and spacers of it", () => {
  const aluminium = (what: string) =>
    planOf(
      exampleText("0005-steel-balcony")
        .replaceAll("material: steel", "material: aluminium")
        .replace("tightening:\n", `tightening:\n  allow for: ${what}\n`),
    );
  const plan = aluminium("heat and settling");
  const [climate, run] = [plan.climate[0], plan.runs[0]];
  const { coldest, reference } = plan.job.site;

  test("the coldest day takes most, at most what it takes between rigid anchors, EA (23.4e-6 - 16e-6) dt over what friction leaves", () => {
    const rigid = plan.job.cable.stiffness.value.nominal * (23.4e-6 - 16e-6) * (reference.value - coldest.value);
    expect(climate?.slackest.temperature).toBe(coldest.value);
    expect(climate?.cold.worst).toBeGreaterThan(0.3 * rigid);
    expect(climate?.cold.worst).toBeLessThanOrEqual((rigid / (run?.tension.farRatio ?? 1)) * 1.001);
    expect(climate?.heat.worst).toBeLessThan(0);
  });

  test("the target makes up for it and for settling: the lowest reading less both still meets the criterion", () => {
    expect(climate?.both.worst).toBeGreaterThan((climate?.cold.worst ?? 0) + 0.9 * (climate?.settling.worst ?? 0));
    expect(run?.tension.covered).toBeGreaterThanOrEqual(climate?.both.worst ?? 0);
    expect((run?.tension.low ?? 0) - (climate?.both.worst ?? 0)).toBeGreaterThanOrEqual(run?.tension.required ?? 0);
  });

  test("with `heat` the weather alone is made up for, cold where it takes most", () => {
    const {
      climate: [alone],
      runs: [first],
    } = aluminium("heat");
    expect(first?.tension.covered).toBeCloseTo(alone?.cold.worst ?? 0, 9);
  });
});

// Wood grows by 3.7e-6 per degree along the grain, concrete by some 10e-6, steel by 11.7e-6, the strand by 16e-6: what the feet stand on holds them
// back, and heat takes more from the cables near it.
describe("climateOf on a floor of other stuff than the posts: 0005", () => {
  const steel = examplePlan("0005-steel-balcony");
  const on = (floor: string) =>
    planOf(changedText("0005-steel-balcony", { "\ntightening:\n": `\nsite: { floor: ${floor} }\ntightening:\n` }));
  const [wood, concrete] = [on("wood"), on("concrete")];
  const heatOf = ({ climate }: typeof steel): number => climate[0]?.heat.worst ?? 0;

  test("heat takes the more, the less the floor grows, but no more than between rigid anchors on it, EA (16e-6 - 3.7e-6) dt", () => {
    const { stiffness } = wood.job.cable;
    const { warmest, reference } = wood.job.site;
    expect(heatOf(concrete)).toBeGreaterThan(heatOf(steel));
    expect(heatOf(wood)).toBeGreaterThan(1.5 * heatOf(steel));
    const rigid = stiffness.value.nominal * (16e-6 - 3.7e-6) * (warmest.value - reference.value);
    expect(heatOf(wood)).toBeLessThanOrEqual((rigid / (wood.runs[0]?.tension.farRatio ?? 1)) * 1.001);
  });

  test("a floor of what the posts are of changes nothing", () => {
    expect(on("steel").climate).toEqual(steel.climate);
  });

  test("where it is not said the survey asks for it, and with it the rules name it", () => {
    expect(wordsOn(steel, "Z-003")).toContain("grows with warmth as steel does; else the job file says what it is (site: floor)");
    expect(wordsOn(wood, "Z-003")).not.toContain("(site: floor)");
    expect(wordsOn(wood, "Z-001", "permit")).toMatch(/ of wood grows by/);
    expect(wordsOn(steel, "Z-001", "permit")).toMatch(/ is taken to grow as the posts, by/);
  });

  test("each number of it is explained", () => expect(disagreeing(traceAll(wood))).toEqual([]));
});
