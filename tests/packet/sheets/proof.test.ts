import { describe, expect, test } from "vitest";
import type { Plan } from "../../../src/plan/plan.ts";
import { examplePlan } from "../../support/example-jobs.ts";
import { forceStep, readForce } from "../read-force.ts";
import { cellText, examples, packetOf, sheetOf, stepsOf, tableOf, textsOf } from "../read-packet.ts";

const wordsOf = (plan: Plan, issue: "crew" | "homeowner" = "crew"): string =>
  sheetOf(packetOf(plan, issue), "Z-804").blocks.flatMap(textsOf).join("\n");

/** Bays side by side, left half first. */
function bayCells(plan: Plan, issue: "crew" | "permit"): readonly (readonly [bay: string, push: string])[] {
  const { rows, columns } = tableOf(packetOf(plan, issue), "proof-openings");
  const starts = columns.flatMap(({ key }, index) => (/^bay(-\d)?$/.test(key) ? [index] : []));
  return starts.flatMap((start) =>
    rows.flatMap((row) => {
      const bay = cellText(row[start] ?? "").replace(/, first of side \w+$/, "");
      return bay === "" ? [] : [[bay, cellText(row[start + 1] ?? "")] as const];
    }),
  );
}

describe("proofSheet", () => {
  test.each(examples)("%s: every bay that a sphere can meet stands once, and the first of each side is marked", (_, plan) => {
    expect(bayCells(plan, "permit").map(([bay]) => bay)).toEqual(plan.bays.filter(({ kind }) => kind !== "pair gap").map(({ id }) => id));
    const marked = JSON.stringify(tableOf(packetOf(plan, "permit"), "proof-openings").rows).match(/[^"*]+(?=, first)/g) ?? [];
    expect([...marked].sort()).toEqual([...plan.openingBayIds].sort());
  });

  test.each(examples)("%s: a push that is printed is never more than what was computed", (_, plan) => {
    for (const [bay, push] of bayCells(plan, "crew")) {
      if (push === "" || push === "-" || push === "rigid, no value") continue;
      const spans = plan.runs.flatMap((run) => run.spans.filter(({ bayId }) => bayId === bay));
      const [sliding = "", held = sliding] = push.split(" - ");
      if (sliding !== "far above") {
        const least = Math.min(...spans.map(({ pushThrough }) => pushThrough.sliding));
        expect.soft(readForce(sliding), bay).toBeLessThanOrEqual(least + 1e-6);
        expect.soft(readForce(sliding), bay).toBeGreaterThan(least - forceStep(least));
      }
      if (held !== "far above") {
        expect.soft(readForce(held), bay).toBeLessThanOrEqual(Math.min(...spans.map(({ pushThrough }) => pushThrough.held)) + 1e-6);
      }
    }
  });

  // 77 mm is narrower than the 4 in sphere, which cannot go in between the two posts; 117 mm is wider, and takes more than ten times the test.
  test("0009 and 0002: a corner gap is rigid where the sphere does not go in between its posts, and has its value where it does", () => {
    const corner = (job: string): string | undefined => bayCells(examplePlan(job), "crew").find(([bay]) => bay === "A/B")?.[1];
    expect(corner("0009-bay-window-deck")).toBe("rigid, no value");
    expect(corner("0002-deck-two-corners")).toBe("far above");
  });

  test("0014: the push of bay A1, 10-13/16 in long, is the same for the tester as for the authority", () => {
    const plan = examplePlan("0014-corners-of-one-post");
    const told = tableOf(packetOf(plan, "permit"), "authority-push").rows.map((row) => row.map(cellText));
    const sliding = told.find(([bay = ""]) => bay.startsWith("A1,"))?.[3]?.replace(/[*]| \(.*/g, "");
    expect(sliding).toBe("42 lbf");
    expect(bayCells(plan, "permit").find(([bay]) => bay === "A1")?.[1]).toBe(`${sliding} - far above`);
  });

  test.each(examples)("%s: hold points H0 to H4 are there, as in the homeowner's steps, and signed on this sheet only", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const points = tableOf(packet, "proof-holds-home").rows.map((row) => cellText(row[0] ?? ""));
    const held = stepsOf(sheetOf(packet, "Z-801").blocks).flatMap(({ hold }) => (hold === undefined ? [] : [hold.slice(0, 2)]));
    expect(points.flatMap((point) => /^H\d/.exec(point)?.[0] ?? [])).toEqual(["H0", "H1", "H2", "H3", "H4"]);
    expect(held).toEqual(["H0", "H1", "H2", "H3", "H4"]);
    expect(sheetOf(packet, "Z-801").blocks.some(({ kind }) => kind === "signatures")).toBe(false);
  });

  test.each(examples)("%s: H1 names every post and the greatest pull that a run puts on it, rounded up", (_, plan) => {
    const row = tableOf(packetOf(plan, "crew"), "proof-holds").rows.find(([point = ""]) => cellText(point).startsWith("H1"));
    const words = cellText(row?.[2] ?? "");
    expect(cellText(row?.[0] ?? "")).toContain("in writing before anything is bored");
    expect(words).toContain("limit for the lean");
    for (const { postId, pull_high } of plan.pulls) {
      const group = words.split(/[:;]/).find((part) => new RegExp(`\\b${postId}\\b`).test(part)) ?? "";
      const force = /[\d.]+ (?:lbf|N|kN)/.exec(group)?.[0] ?? "";
      expect.soft(readForce(force), postId).toBeGreaterThanOrEqual(pull_high - 1e-6);
    }
  });

  // 1687 lbf along side A and 1452 lbf along side B pull square to each other: sqrt(1687^2 + 1452^2) = 2226 lbf.
  test("0018: H1 names what both runs together ask of the corner post on which they end", () => {
    const row = tableOf(packetOf(examplePlan("0018-corner-post-between-runs"), "crew"), "proof-holds").rows.find(([point = ""]) =>
      cellText(point).startsWith("H1"),
    );
    expect(cellText(row?.[2] ?? "")).toContain("R1 and R2 at once P5 2226 lbf");
  });

  test.each(examples)("%s: the proof is read in the bay of the plan, between its two limits", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "proof-pulls");
    for (const [index, run] of plan.runs.entries()) {
      const [id, bay, low = "", high = ""] = rows[index]?.map(cellText) ?? [];
      expect.soft([id, bay]).toEqual([run.id, run.proof.bayId]);
      expect.soft(plan.bays.find((each) => each.id === bay)?.kind).toBe("bay");
      expect.soft(readForce(low)).toBeGreaterThanOrEqual(run.proof.low - 1e-6);
      expect.soft(readForce(high)).toBeLessThanOrEqual(run.proof.high + 1e-6);
      expect.soft(readForce(low)).toBeLessThan(readForce(high));
    }
  });

  // On a cold day cables that are too slack for a warm one still read above "at least": whoever signs has to move the band.
  test.each(examples)("%s: every band that is signed for names its temperature and the table that moves it", (_, plan) => {
    const { value } = plan.job.site.reference;
    const heat = plan.job.units === "inch" ? `at ${Math.round(value * 1.8 + 32)} deg F` : `at ${Math.round(value)} deg C`;
    const day = `${heat}; on another day moved as the table by temperature on Z-803 says`;
    const crew = packetOf(plan, "crew");
    const criterion = tableOf(crew, "proof-holds").rows.find(([point = ""]) => cellText(point).startsWith("H3"))?.[2] ?? "";
    expect.soft(cellText(criterion)).toContain(day);
    expect.soft(tableOf(crew, "proof-pulls").notes?.join(" ")).toContain(day);
    const card = stepsOf(sheetOf(crew, "Z-801").blocks).find(({ id }) => id === "card-tightening");
    expect.soft(card?.items.find(({ text }) => text.startsWith("Every last reading"))?.text).toContain(day);
    for (const { id } of plan.runs) expect.soft(tableOf(packetOf(plan, "record"), `record-cables-${id}`).caption).toContain(day);
    expect.soft(tableOf(crew, "tightening-spans").caption).toContain(heat);
  });

  // Two bends of 18.4 and 15.3 deg, together 33.7 deg, at a friction of 0.3: exp(-0.3 x 0.588) = 0.84.
  test("0012: behind its bends bay A1 moves by 84 % of what the nut moves by; 0001 has no bend and no share", () => {
    const notes = (name: string): string => tableOf(packetOf(examplePlan(name), "crew"), "proof-pulls").notes?.join(" ") ?? "";
    expect(notes("0012-stair-from-landing")).toContain("R1 in A1 by 84 % of it");
    expect(notes("0001-level-deck-straight")).not.toContain("of it");
  });

  test("two studs: H2 stands before the final cut and speaks of no tails; a grip end: tails stay long until H3", () => {
    expect(wordsOf(examplePlan("0005-steel-balcony"))).toMatch(/H2 marked, before the final cut/);
    expect(wordsOf(examplePlan("0005-steel-balcony"))).not.toContain("tail");
    expect(wordsOf(examplePlan("0001-level-deck-straight"))).toMatch(/H2 ends set[\s\S]*tails stay long until H3/);
  });

  test("a crew has the answers of the authority and four rows for deviations; the other issues have them elsewhere", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const heads = tableOf(packetOf(plan, "crew"), "proof-answers").columns.map(({ head }) => head);
    expect(heads).toEqual(["Force of the test", "Sphere", "Level cables", "Permit no.", "By whom", "Date"]);
    expect(tableOf(packetOf(plan, "crew"), "proof-deviations").rows.length).toBe(4);
    expect(wordsOf(plan, "homeowner")).not.toContain("Answers of the authority");
  });

  test("somebody who does it once signs as 'you' and has no crew lead, office or firm", () => {
    for (const [, plan] of examples) {
      expect.soft(wordsOf(plan, "homeowner")).not.toMatch(/crew lead|\boffice\b|\bfirm\b/);
      expect.soft(wordsOf(plan, "homeowner")).toContain("second person");
    }
  });
});

describe("openingRoute", () => {
  // NCC 2022, Housing Provisions 11.3.6 and H5V1: wire infill built to the table, or a cone of 125 mm pulled with 150 N.
  test("0005 is proved by the table of the code: the cone is named as another route, and no force is asked", () => {
    const plan = examplePlan("0005-steel-balcony");
    const words = wordsOf(plan);
    expect(words).toMatch(/Route of this job\n\*\*tension and spacing by the table of the code\*\* \[ncc-2022\]/);
    expect(words).toMatch(/Another route, not taken here\n150 N/);
    expect(words).toContain("no push is asked on this route");
    expect(tableOf(packetOf(plan, "crew"), "proof-openings").columns.map(({ key }) => key)).not.toContain("force");
  });

  test("0001 is proved by a sphere under a push, whose force is printed large", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const facts = sheetOf(packetOf(plan, "crew"), "Z-804").blocks.flatMap((block) => (block.kind === "facts" ? block.facts : []));
    expect(facts.find(({ name }) => name === "Force of the test")).toMatchObject({ strong: true, value: expect.stringMatching(/^12 lbf/) });
  });

  test("the card of the crew confirms the route of the job", () => {
    for (const [, plan] of examples) {
      const card = stepsOf(sheetOf(packetOf(plan, "crew"), "Z-801").blocks).find(({ id }) => id === "card-proof");
      const { kind } = plan.job.tightening.criterion;
      const items = card?.items ?? [];
      expect.soft(items[0]?.text).toMatch(/^The official called before the test/);
      expect.soft(items.some(({ text }) => text.startsWith("Force used at the sphere"))).toBe(kind === "sphere");
      expect.soft(items.some(({ text }) => text.startsWith("Sag read in bay"))).toBe(kind === "sag");
      expect.soft(items[1]?.text).toContain("between every two neighbouring cables at the middle of the longest free length");
    }
  });

  test("0004, where a sag was agreed: two rows for its run, in the bay of the proof, with the limit of the job", () => {
    const plan = examplePlan("0004-between-two-walls");
    const rows = tableOf(packetOf(plan, "crew"), "proof-sag").rows.map((row) => row.map(cellText));
    // The job file: 10 lbf, 5/16 in at most.
    expect(rows.map((row) => row.slice(0, 4))).toEqual([
      [plan.runs[0]?.proof.bayId, "R1, lowest in the log", "10 lbf", '5/16"'],
      [plan.runs[0]?.proof.bayId, "R1, any other", "10 lbf", '5/16"'],
    ]);
  });

  test("0003: the slots between the two posts of a pair, 3-1/2 in, and of a corner are listed and measured", () => {
    const plan = examplePlan("boardwalk-6ft");
    expect(tableOf(packetOf(plan, "crew"), "proof-slots").rows.map((row) => row.slice(0, 3).map(cellText))).toEqual([
      ["A25", "P13 and P14", '3-1/2"'],
      ["A/B", "P16 and P17", '15/16"'],
    ]);
  });

  test.each(examples)("%s: the permit and record issues hold a copy without places to sign", (_, plan) => {
    for (const issue of ["permit", "record"] as const) {
      const { caption, rows } = tableOf(packetOf(plan, issue), "proof-holds-copy");
      expect.soft(caption).toContain("copy; the signed one is in the crew (homeowner) set");
      expect.soft(rows.flat().some((cell) => typeof cell === "object" && "blank" in cell)).toBe(false);
    }
  });
});
