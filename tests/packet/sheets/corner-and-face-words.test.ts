// Do the sheets say where one post at a corner is bored, and where an end on the face is measured, bored and turned in?
import { describe, expect, test } from "vitest";
import { contentBox } from "../../../src/drawing/paper.ts";
import { details } from "../../../src/packet/drawings/details.ts";
import { bushingsOf } from "../../../src/packet/sheets/bore-kinds.ts";
import { templatesOf } from "../../../src/packet/templates/faces.ts";
import { faceWords } from "../../../src/packet/templates/slope-words.ts";
import { plainShankOf } from "../../../src/plan/face-end.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { packetOf, rowsOf, sheetOf, stepsOf, wordsOn } from "../read-packet.ts";

const corners = examplePlan("0014-corners-of-one-post");
const faces = examplePlan("0015-ends-on-faces");
const shared = examplePlan("0018-corner-post-between-runs");

describe("two posts at a corner that stand already", () => {
  const standing = planOf(
    changedText("0002-deck-two-corners", {
      "  existing: false": "  existing: true",
      "    - length: 9 ft 8 in ": "    - stations: [6-1/4 in, 4 ft 8 in, 9 ft 2 in]\n      length: 9 ft 8 in ",
      "    - length: 15 ft 4 in": "    - stations: [6 in, 5 ft, 10 ft, 14 ft 10 in]\n      length: 15 ft 4 in",
      "    - length: 9 ft 7-1/2 in": "    - stations: [6 in, 4 ft 9 in, 9 ft 1-1/4 in]\n      length: 9 ft 7-1/2 in",
    }),
  );
  const row = /^posts \/ corner setback$/m;

  test("are corrected under the stations of their side, new ones under the setback of corners", () => {
    expect(wordsOn(standing, "Z-003")).not.toMatch(row);
    expect(wordsOn(examplePlan("0002-deck-two-corners"), "Z-003")).toMatch(row);
  });
});

describe("one post at a corner", () => {
  test("bends its cable at each mouth by half of the turn: 45 deg of 90, 22.5 deg of 45", () => {
    const bends = rowsOf(corners, "bores-grid").flatMap((row) => row.filter((cell) => cell.endsWith(" each")));
    expect(bends).toEqual(["both faces, 45 deg each", "both faces, 22.5 deg each"]);
    expect(rowsOf(corners, "cables-ends")[0]?.[4]).toBe("P4 twice 45 deg, P6 twice 22.5 deg");
  });

  test("has its faces named by the sides they look at; posts of several corners share a template by the hand alone", () => {
    const named = templatesOf(corners)
      .filter(({ isCorner }) => isCorner)
      .map((template) => `${template.uprights.map(({ id }) => id).join()} ${faceWords(template)}`);
    expect(named).toEqual(["P4 face towards side A", "P4 face towards side B", "P6 face towards side B"]);
    const both = templatesOf(corners).find(({ isCorner }) => isCorner);
    if (both === undefined) throw new Error("no template of a corner");
    const posts = corners.verticals.filter(({ corner }) => corner !== undefined);
    expect(faceWords({ ...both, uprights: posts })).toBe("face towards the side to its left");
  });

  test("is marked on both faces where it is bored on the mitre", () => {
    expect(wordsOn(corners, "Z-801")).toContain("at P4 also on the face where it comes out");
    expect(wordsOn(corners, "Z-801", "homeowner")).toContain("P4: mark the middle on both faces.");
  });

  test("that stands on the bisector of a left turn lies on the far side of the deck: 2.75 in x tan 22.5 deg = 1.139 in", () => {
    const place = rowsOf(corners, "plan-verticals").find(([mark]) => mark === "P6")?.[4];
    expect(place).toContain('1-1/8" (29 mm) from the corner point, on the bisector, away from the deck');
  });
});

describe("wood beside a bore on the mitre", () => {
  // Tension across the grain has no published value (from memory, NDS 2018, 3.8.2): nobody here can let it pass.
  test("is asked of the engineer, at the mitre alone", () => {
    const asked = corners.checks.filter(({ id }) => id === "mitre-split");
    expect(asked.map(({ where, verdict }) => `${where} ${verdict}`)).toEqual(["P4 ask"]);
    expect(wordsOn(corners, "Z-001")).toContain("Splitting of posts bored on the mitre (P4)");
    const straight = planOf(changedText("0014-corners-of-one-post", { "turn: right 90 deg": "turn: right 60 deg" }));
    expect(straight.checks.filter(({ id }) => id === "mitre-split")).toEqual([]);
  });
});

describe("ends on faces", () => {
  test("a run is measured from the face that its cable comes to: 6-3/4 in to 137-1/2 in is 10 ft 10-3/4 in", () => {
    const runs = rowsOf(faces, "survey-measure").filter(([what]) => what?.startsWith("Run "));
    expect(runs.map(([what, planned]) => [what, planned?.split(" (")[0]])).toEqual([
      ["Run R1, right face of P1 to outside P4", "10'-10 3/4\""],
      ["Run R2, outside P5 to left face of P9", "14'-8\""],
      ["Run R3, right face of P9 to outside P13", "12'-8\""],
    ]);
  });

  test("nobody stops for a gap behind which nothing has to reach", () => {
    const rows = rowsOf(faces, "survey-measure");
    expect(rows.find(([what]) => what === "Clear gap to the wall at P1")?.[2]).toBe('above 4"');
    expect(rows.find(([what]) => what === "Behind P1")?.[2]).toBe("-");
  });

  test("the plain shank of the lag screw, 2-3/8 in less a thread of 2-1/8 in, has its wider hole on every sheet of boring", () => {
    expect(plainShankOf(faces)?.length).toBeCloseTo(0.25 * 25.4, 9);
    const words = 'opened to 5/16" (7.9 mm) for the first 1/4"'.replace(" (7.9 mm)", "");
    for (const text of [wordsOn(faces, "Z-603"), wordsOn(faces, "Z-801"), wordsOn(faces, "Z-801", "homeowner")])
      expect.soft(text).toContain(words);
    expect(rowsOf(faces, "tools-list").map(([, tool, size]) => `${tool} ${size}`)).toContain(
      'wood bit for the shank, with a stop 5/16" (7.9 mm)',
    );
    expect(plainShankOf(planOf(changedText("0015-ends-on-faces", { "thread length: 2-1/8 in": "thread length: 2-3/8 in" })))).toBeNull();
  });

  test("the pilot hole is printed as the bit that is bought: 13/64 in of 60 % to 75 % of 5/16 in, 3/16 in to 15/64 in", () => {
    const pilots = rowsOf(faces, "cover-checks", "permit").filter(([name]) => name?.startsWith("Pilot hole"));
    expect(pilots.map(([, , found, limit]) => [found, limit])).toEqual([
      ['13/64"', 'at least 3/16"'],
      ['13/64"', 'at most 15/64"'],
    ]);
  });

  test("no sheet of a job without gripping fittings speaks of their collars", () => {
    for (const plan of [corners, faces]) expect.soft(wordsOn(plan, "Z-301")).not.toContain("gripping");
    expect(wordsOn(examplePlan("0001-level-deck-straight"), "Z-301")).toContain("under the collar of every gripping fitting");
  });
});

describe("what a hand needs at one post on the mitre", () => {
  const outside = "the drill is held outside the guard";

  test("nobody leans out over the edge: where the bit goes in on the far side, every sheet of boring says where to stand", () => {
    expect(corners.verticals.find(({ id }) => id === "P4")?.corner?.faces).toBe("adjacent");
    const sheets = [wordsOn(corners, "Z-603"), wordsOn(corners, "Z-801"), wordsOn(corners, "Z-801", "homeowner")];
    for (const text of sheets) expect.soft(text).toMatch(/P4[^\n]*outside the guard|outside the guard[^\n]*P4/);
    expect(wordsOn(shared, "Z-603")).toContain(`P8, at an outside corner: ${outside}`);
    expect(wordsOn(faces, "Z-603")).not.toContain(outside);
  });

  test("20 bores, each turned at both mouths, take 40 bushings: 10 courses through P4 and P6", () => {
    expect(bushingsOf(corners)).toEqual({ bores: 20, bushings: 40 });
    expect(wordsOn(corners, "Z-801", "homeowner")).toContain("40 bushings in 20 holes");
  });

  test("a bushing is ordered without a rim for the mitre only, and no tube is spoken of", () => {
    const noteOf = (plan: Plan): string | undefined => plan.order.find(({ item }) => item.startsWith("bushing"))?.note;
    expect(noteOf(corners)).toBe("where a cable leaves its bore at an angle, without a rim for bores on the mitre");
    expect(noteOf(examplePlan("0002-deck-two-corners"))).toBe("where a cable leaves its bore at an angle");
    expect(noteOf(examplePlan("0005-steel-balcony"))).toContain("in both walls of a metal member");
  });

  test("the engineer is asked on the sheet of questions too", () => {
    const asked = (plan: Plan): boolean => wordsOn(plan, "Z-002", "permit").includes("between the bores on the mitre and the edge");
    expect([corners, faces, shared].map(asked)).toEqual([true, false, true]);
  });

  test("the survey says how to come to a corner point that lies in the post", () => {
    expect(wordsOn(corners, "Z-003")).toContain("The corner point at P4 and P6 lies in the post.");
    expect(wordsOn(faces, "Z-003")).not.toContain("lies in the post");
  });

  test("every visit looks at the cables where they turn; where none turns nobody is sent", () => {
    expect(wordsOn(corners, "Z-806", "homeowner")).toContain("where cables turn, at P4 and P6");
    expect(wordsOn(faces, "Z-806", "homeowner")).not.toContain("where cables turn");
    expect(wordsOn(faces, "Z-601")).not.toContain("exp(-mu");
  });

  test("rails meet at half of the turn, 45 deg and 22.5 deg, and the saw is told", () => {
    const saw = rowsOf(corners, "tools-list").find(([, tool]) => tool?.includes("saw"));
    expect(saw?.join(" ")).toContain("at corners 45 deg and 22.5 deg off square");
    const straight = rowsOf(examplePlan("0001-level-deck-straight"), "tools-list").find(([, tool]) => tool?.includes("saw"));
    expect(straight?.join(" ")).not.toContain("corners");
  });

  test("lumber is bought of the wood that the frame was computed with", () => {
    const wood = corners.job.posts.wood?.value;
    expect(wordsOn(corners, "Z-604")).toContain(`${wood?.species} ${wood?.grade}`);
  });
});

describe("what a hand needs at an end on the face", () => {
  test.each([["0015", faces] as const, ["0018", shared] as const])(
    "%s: no lag screw closes its hole before the preservative is in",
    (_, plan) => {
      const items = stepsOf(sheetOf(packetOf(plan, "homeowner"), "Z-801").blocks).flatMap((steps) => steps.items.map(({ text }) => text));
      const [soaked, turned] = [/preservative/i, /turn in[^.]*lag screw|lag screw[^.]*turn/i].map((words) =>
        items.findIndex((text) => words.test(text)),
      );
      expect(soaked, items.join("\n")).toBeGreaterThan(-1);
      expect(turned, items.join("\n")).toBeGreaterThan(soaked ?? 0);
    },
  );

  test("an eye is photographed on its face, and no back where nothing is fitted", () => {
    const photos = wordsOn(faces, "Z-901", "record");
    expect(photos).toContain("Eyes at P1:");
    expect(photos).not.toContain("Back of P1:");
    expect(wordsOn(corners, "Z-901", "record")).toContain("Both faces of P4:");
  });

  // 7/16 in is 11.1 mm: to the next half inch it would read 1/2 in, more wood than there is.
  test("the wood left between two blind holes is printed alike on the cover and in the detail", () => {
    const row = rowsOf(shared, "cover-checks", "permit").find(([name]) => name?.startsWith("Left between"));
    expect(row?.[2]).toBe('7/16"');
    const drawn = details(shared, contentBox({ paper: "letter", orientation: "portrait" }))
      .map(({ svg }) => svg)
      .join(" ");
    expect(drawn.includes('screws 7/16"<')).toBe(true);
  });
});
