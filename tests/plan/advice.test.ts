// Can what a check advises be written into the job file as it stands there? Its keys are named, and posts that stand are not moved.
import { describe, expect, test } from "vitest";
import { makePlan } from "../../src/plan/make-plan.ts";
import { changesOf } from "../../src/plan/remedy-changes.ts";
import { changedText, exampleText, jobOf, planOf } from "../support/example-jobs.ts";

type Changes = Readonly<Record<string, string>>;

const adviceOf = (name: string, changes: Changes, id: RegExp): readonly string[] =>
  planOf(changedText(name, changes)).checks.flatMap((check) => (id.test(check.id) && check.verdict !== "pass" ? check.advice : []));

describe("advice", () => {
  test("a washer that sinks in is named by the block of its fitting", () => {
    const told = adviceOf("0001-level-deck-straight", { "stud: { washer: 1-1/2 in }": "", "grip: { washer: 1-1/2 in }": "" }, /^bearing-/);
    expect(told).toHaveLength(2);
    expect(told[0]).toMatch(/at least \S+" \(\d+ mm\) \(fittings: stud: washer\), or a plate$/);
    expect(told[1]).toContain("(fittings: grip: washer)");
  });

  test("a washer as wide as soft wood may ask for can be written", () => {
    const { stud } = planOf(changedText("0001-level-deck-straight", { "stud: { washer: 1-1/2 in }": "stud: { washer: 2-1/4 in }" })).job
      .fittings;
    expect(stud.washerDiameter.value).toBeCloseTo(57.15, 9);
  });

  test("a cable that the table of the NCC lacks is named as it was bought: 5/32 in is 3.97 mm, not the 4 mm of the table", () => {
    const { problems } = makePlan(jobOf(changedText("0005-steel-balcony", { "  diameter: 4 mm": "  diameter: 5/32 in" })));
    expect(problems.map(({ what }) => what).join()).toContain('1x19 of 3.97 mm (5/32") at a spacing');
  });

  test("a tube round bushings is asked for with both its keys", () => {
    const bare = { "  bushing: { tube wall: 5/64 in }\n": "" };
    for (const told of adviceOf("0002-deck-two-corners", bare, /bend|mouth/)) {
      expect(told).toContain("(fittings: bushing: tube wall, and its outside as bushing bore)");
    }
    expect(adviceOf("0002-deck-two-corners", bare, /bend|mouth/).length).toBeGreaterThan(0);
  });

  test("a bore too near the edge of a spacer is answered by the spacer, not by its post", () => {
    const told = adviceOf("0001-level-deck-straight", { "fittings:\n": "fittings:\n  pass bore: 9/16 in\n" }, /^edge-distance/);
    expect(told).toEqual(["use wider spacers (spacers: size), or a smaller bore there (fittings: pass bore)"]);
  });

  test("a bottom rail too high above the nosings is lowered on the slope alone", () => {
    const told = adviceOf("0012-stair-from-landing", { "    gap below: 1 in ": "    gap below: 2 in " }, /^rake-triangle/);
    expect(told).toEqual(["lower the bottom rail of the stair (frame: on rakes: gap below)"]);
  });

  test("a new post is moved away from its wall, one that stands is not", () => {
    const narrow: Changes = { "start: { kind: wall, gap: 3-1/2 in": "start: { kind: wall, gap: 2-1/2 in" };
    expect(adviceOf("0002-deck-two-corners", narrow, /^wall-reach-/)[0]).toMatch(
      /^move the post away from the wall; or try hand and wrench/,
    );
    const standing = adviceOf(
      "0018-corner-post-between-runs",
      { "start: { kind: wall, gap: 3-1/2 in": "start: { kind: wall, gap: 2-1/2 in", "stations: [6-1/4 in": "stations: [5-1/4 in" },
      /^wall-reach-/,
    );
    expect(standing[0]).toMatch(/^try hand and wrench there and state the gap in which they do \(limits: narrowest wall gap\)/);
  });
});

describe("warnings", () => {
  const solidIn = (changes: Changes): readonly string[] =>
    planOf(changedText("0005-steel-balcony", changes)).warnings.flatMap(({ what }) => (what.startsWith("no wall is given") ? [what] : []));

  test("posts and rails of metal as thick as a tube, without a wall, are told to be taken as solid", () => {
    expect(solidIn({})).toEqual([]);
    expect(solidIn({ "  wall: 4 mm\n": "", "lay: flat, wall: 3 mm, material: steel }\n": "lay: flat, material: steel }\n" })).toEqual([
      "no wall is given for posts: solid steel of 50 mm x 50 mm is checked, far stronger than a tube",
      "no wall is given for the top rail: solid steel of 50 mm x 50 mm is checked, far stronger than a tube",
    ]);
  });

  test("a bar of 30 mm is sold as a bar", () => {
    expect(solidIn({ "  size: 50 mm x 50 mm\n  wall: 4 mm\n": "  size: 30 mm x 50 mm\n" })).toEqual([]);
  });
});

describe("remedy", () => {
  test("a wood that makes it hold is written into the rails that there are", () => {
    const { frame, ...job } = jobOf(exampleText("rule-of-thumb"));
    const written = (bottomRail: typeof frame.bottomRail): readonly string[] =>
      changesOf({ ...job, frame: { ...frame, bottomRail } }, { posts: true, topRail: true, bottomRail: false, spacers: false }).flatMap(
        ({ write }) => (/species: Southern Pine, grade: No.1/.test(write) && write.includes("top rail") ? [write] : []),
      );
    expect(written(frame.bottomRail)).toEqual(["posts, top rail, bottom rail: species: Southern Pine, grade: No.1, incised: false"]);
    expect(written(null)).toEqual(["posts, top rail: species: Southern Pine, grade: No.1, incised: false"]);
  });

  test("posts that stand are said to be replaced by new ones", () => {
    const weak = planOf(
      changedText("0006-porch-existing-posts", {
        "    force: 5 lbf": "    force: 12 lbf",
        "  species: Southern Pine\n  grade: No.1\n  treated: true\n  existing": "  treated: true\n  existing",
      }),
    );
    expect(weak.frame.remedy?.change ?? "").toMatch(
      /new posts of|posts and rails of .*, if the posts that stand are stamped so, or new posts/,
    );
  });
});
