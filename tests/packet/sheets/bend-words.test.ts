// Do the sheets say what lies in the bores where a cable bends, what to measure, to order and to decide?
import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { rowsOf, wordsOn } from "../read-packet.ts";

const CORNERS = "0002-deck-two-corners";
const tubes = examplePlan(CORNERS);
const small = planOf(
  changedText(CORNERS, {
    "  bushing bore: 5/8 in            # outside of the tubes in the corner posts: bushings alone would crush the wood there\n": "",
    "  bushing: { tube wall: 5/64 in }\n": "",
  }),
);
const metal = planOf(
  changedText("0005-steel-balcony", { "  bushing: { rated: 1.5 kN, rated by: data sheet of its maker (invented) }\n": "" }),
);
const TOO_SMALL = "too small by the check on Z-001: decide first";

describe("bushings that crush the wood", () => {
  test("are to be decided by an engineer, and marked wherever their size stands", () => {
    expect(wordsOn(small, "Z-001")).toContain("above its limit: decide before boring (engineer): Push of a cable on the wood");
    for (const id of ["Z-003", "Z-301", "Z-604"]) expect(wordsOn(small, id), id).toContain(TOO_SMALL);
    expect(wordsOn(small, "Z-002", "permit")).toContain("not by the check on Z-001: to be decided");
    expect(wordsOn(small, "Z-803")).toContain("do not tighten yet");
  });

  test("are none where they sit in tubes: nothing is marked", () => {
    for (const id of ["Z-003", "Z-301", "Z-604"]) expect(wordsOn(tubes, id), id).not.toContain(TOO_SMALL);
    expect(wordsOn(tubes, "Z-803")).not.toContain("do not tighten yet");
  });
});

describe("tubes round bushings", () => {
  test("are measured, bored for, ordered and pushed in", () => {
    const survey = rowsOf(tubes, "survey-measure").map(([what]) => what);
    expect(survey).toEqual(
      expect.arrayContaining(["Tube round the bushings: sits firmly in a bore of", "Tube round the bushings: its wall"]),
    );
    expect(wordsOn(tubes, "Z-603")).toContain("Each sits in a stainless tube that goes right through");
    expect(wordsOn(tubes, "Z-604")).toContain('5/8" (15.9 mm), wall 5/64" (2 mm), 5-1/2" (139.7 mm) long');
    expect(wordsOn(tubes, "Z-801", "homeowner")).toContain("Push a tube into each hole where the cable bends.");
  });

  test("are told apart from bushings alone, whose length is measured", () => {
    expect(rowsOf(small, "survey-measure").map(([what]) => what)).toContain(`Bushing: length in its bore, rim left out (${TOO_SMALL})`);
    for (const id of ["Z-003", "Z-301", "Z-603", "Z-604"]) expect(wordsOn(small, id), id).not.toContain("tube round");
  });
});

describe("where bushings go", () => {
  test("is said of the bores that this job has: one face of each post of a corner, or both of a corner of one post", () => {
    const [setOff, one] = [examplePlan("0019-corner-bores-set-off"), examplePlan("0014-corners-of-one-post")];
    expect(wordsOn(setOff, "Z-603")).toContain("Bushings: one in each bore, from the face named. Each sits");
    expect(wordsOn(one, "Z-604")).toContain("for a bore on the mitre: length along its middle, ends cut 45 deg");
    expect(wordsOn(setOff, "Z-604")).not.toContain("on the mitre");
    expect(wordsOn(one, "Z-603")).toContain("Bushings: one from each face where both are named. Each sits");
    expect(wordsOn(setOff, "Z-001")).toContain("fit bushings at both posts of each corner that cables pass and look");
    expect(wordsOn(one, "Z-001")).toContain("fit bushings at every mouth of a bore of each corner and look");
  });

  test("says wherever a tube is cut or put in how its ends are on the mitre, and only there", () => {
    const [setOff, one] = [examplePlan("0019-corner-bores-set-off"), examplePlan("0014-corners-of-one-post")];
    for (const [id, issue] of [
      ["Z-301", "crew"],
      ["Z-603", "crew"],
      ["Z-801", "homeowner"],
    ] as const) {
      expect.soft(wordsOn(one, id, issue), id).toContain("cut at 45 deg");
      expect.soft(wordsOn(setOff, id, issue), id).not.toContain("cut at 45 deg");
    }
    expect(wordsOn(one, "Z-801")).toContain("20 bores have their tube, ends cut at 45 deg on the mitre, rounded and flush");
    expect(wordsOn(setOff, "Z-801")).toContain("their tube, ends rounded and flush");
    expect(wordsOn(setOff, "Z-604")).toContain("cut to its bore, ends square;");
    expect(wordsOn(one, "Z-802")).toContain("Put tube and bushing in before the cable.");
    expect(wordsOn(small, "Z-802")).toContain("Put the bushing in before the cable.");
  });

  test("has it pushed in on the mitre until it is held all round, in a tube or in wood alone, and only there", () => {
    const one = examplePlan("0014-corners-of-one-post");
    const alone = planOf(changedText("0014-corners-of-one-post", { "  bushing: { tube wall: 5/64 in }\n": "" }));
    for (const [id, issue] of [
      ["Z-301", "crew"],
      ["Z-603", "crew"],
      ["Z-801", "homeowner"],
    ] as const) {
      expect.soft(wordsOn(one, id, issue), id).toContain("On the mitre push it in until the tube holds it all round.");
      expect.soft(wordsOn(alone, id, issue), id).toContain("On the mitre push it in until the wood holds it all round.");
      expect.soft(wordsOn(tubes, id, issue), id).not.toContain("holds it all round");
    }
  });

  test("is looked after as it was built: a tube sinks in, not the bushing in it", () => {
    for (const id of ["Z-001", "Z-806"]) {
      expect(wordsOn(tubes, id), id).toMatch(/a tube (that )?has sunk in/);
      expect(wordsOn(small, id), id).toMatch(/a bushing (that )?has sunk in/);
    }
    expect(wordsOn(tubes, "Z-002", "permit")).toContain("Do the wood along the tubes, and the bushings in them, bear the push");
    expect(wordsOn(small, "Z-002", "permit")).toContain("Do the wood at the mouths of bores, and the bushings there, bear");
  });
});

describe("bushings in metal", () => {
  test("are asked of their maker", () => {
    expect(wordsOn(metal, "Z-001")).toContain("Working load of the bushings where a cable bends");
    expect(wordsOn(metal, "Z-002", "permit")).toContain("bushings are not rated: ask their maker");
    expect(wordsOn(metal, "Z-003")).toContain("not known: asked for");
  });
});

describe("the tools that cut tubes", () => {
  const toolNotes = (plan: Plan): readonly (readonly [item: string, note: string])[] =>
    plan.tools.filter(({ item }) => /tube cutter|hacksaw|deburring tool, half-round/.test(item)).map(({ item, note }) => [item, note]);

  test("stand in the list where tubes are cut, with how many and how their ends lie", () => {
    expect(toolNotes(tubes)).toEqual([
      ["tube cutter for stainless, or hacksaw with fine teeth", "cuts or trims 40 tubes with square ends"],
      ["deburring tool, half-round file", "rounds both ends of 40 tubes, inside and outside"],
    ]);
    const mitred = examplePlan("0014-corners-of-one-post");
    expect(toolNotes(mitred)[0]).toEqual([
      "hacksaw with fine teeth, and a mitre box that holds the tube",
      "cuts or trims 10 tubes with ends at 45 deg on the mitre, 10 tubes with square ends",
    ]);
    expect(wordsOn(mitred, "Z-605")).toContain('for 5/8" (15.9 mm) tube');
    const stair = planOf(changedText("0012-stair-from-landing", { "bushing: { length: 1 in }": "bushing: { tube wall: 1/16 in }" }));
    expect(toolNotes(stair)[0]?.[1]).toBe("cuts or trims 9 tubes with square ends, 9 tubes with ends at 33.7 deg");
    expect(wordsOn(stair, "Z-604")).toContain("for a bore on a slope: length along its middle, both ends cut 33.7 deg, alike;");
  });

  test("and only there", () => {
    expect(toolNotes(small)).toEqual([]);
    expect(toolNotes(metal)).toEqual([]);
  });
});

describe("bushings in a metal frame", () => {
  const row = "Working load of a bushing where a cable bends, from its maker";
  const straight = planOf(
    changedText("0005-steel-balcony", { "      turn: right 90 deg\n    - length: 4.72 m\n": "", "length: 1850 mm": "length: 4.72 m" }),
  );

  test("have a working load to ask for where a cable bends", () => expect(wordsOn(metal, "Z-003")).toContain(row));

  test("have none where no cable bends", () => {
    expect(wordsOn(straight, "Z-003")).toContain("Bushing: sits firmly in a bore of");
    expect(wordsOn(straight, "Z-003")).not.toContain(row);
  });
});
