// One story of the gate, the column and the corner of the house on every sheet, by the marks of their posts.
import { describe, expect, test } from "vitest";
import { contentBox } from "../../../src/drawing/paper.ts";
import { details } from "../../../src/packet/drawings/details.ts";
import { gatesOf, guardEnds } from "../../../src/packet/guard-ends.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { cellText, packetOf, sheetOf, tableOf, textsOf } from "../read-packet.ts";

const plan = examplePlan("0011-two-guards-and-a-gate");
const crew = packetOf(plan, "crew");
const permit = packetOf(plan, "permit");
const surveyRows = tableOf(crew, "survey-measure").rows.map((row) => row.map(cellText));

describe("the gate between P4 and P5", () => {
  test("stands between the end post of side A and the first of side B", () =>
    expect(gatesOf(plan).map(({ posts }) => posts)).toEqual([["P4", "P5"]]));

  test("hangs on posts of its own: the same on the survey and in the question to the authority", () => {
    const alone = "gate hangs on posts of its own: nothing of it is fixed to P4 or P5";
    expect(
      tableOf(crew, "survey-verify")
        .rows.map((row) => cellText(row[1] ?? ""))
        .join(),
    ).toContain(alone);
    expect(
      tableOf(permit, "authority-questions")
        .rows.map((row) => row.map(cellText).join())
        .join(),
    ).toContain(alone);
  });

  test("is narrowed by what stands out of them, which the survey and the details say", () => {
    for (const id of ["Z-003", "Z-301"]) {
      expect
        .soft(sheetOf(crew, id).blocks.flatMap(textsOf).join())
        .toContain("Studs, nuts and cut tails at P4 and P5 stand into the opening of the gate");
    }
  });
});

describe("what interrupts the guard", () => {
  test("each width has a stop, and the house corner its step", () => {
    const rows = surveyRows.filter(([, , , , key]) => key?.includes("interrupted / "));
    for (const [what, , stop] of rows) expect.soft(stop, what).not.toBe("-");
    expect(rows).toContainEqual(
      expect.arrayContaining(["Side E starts towards the deck, square from the line of side D", "6'-0\" (1829 mm)"]),
    );
  });

  test("the survey names posts, not keys, where it asks for gaps and for room behind posts", () => {
    expect(surveyRows.map(([what]) => what)).toEqual(
      expect.arrayContaining(["Clear gap to the column at P9 and P10: the widest and the narrowest", "Behind P5"]),
    );
    for (const [what] of surveyRows) expect.soft(what).not.toContain(" / ");
  });

  test("P9 and P10 at the column and P16 and P17 at the house corner have drawings with their gap", () => {
    expect(guardEnds(plan).map(({ post, against }) => `${post.id} ${against}`)).toContain("P16 house corner");
    const drawn = details(plan, contentBox({ paper: "letter", orientation: "portrait" })).map(
      ({ title, description }) => `${title}: ${description}`,
    );
    expect(drawn.find((text) => text.includes("P9, P10"))).toContain('3-1/2" to the column');
    expect(drawn.find((text) => text.includes("P16, P17"))).toContain('3-1/2" to the house corner');
  });

  test("posts of two sections that a cable passes are drawn both", () => {
    const porch = details(examplePlan("0010-old-porch-as-found"), contentBox({ paper: "letter", orientation: "portrait" }));
    expect(porch.find(({ id }) => id === "detail-pass")?.description).toMatch(/line post P2, 4x4.*line post P4, 6x6/);
  });
});
