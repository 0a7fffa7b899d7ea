import { describe, expect, test } from "vitest";
import { showIn } from "../../../src/packet/show-number.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, planOf } from "../../support/example-jobs.ts";
import { cellText, packetOf, sheetOf, tableOf } from "../read-packet.ts";

const raked = ["0012-stair-from-landing", "0013-ramp-to-porch"];

describe("Z-401", () => {
  test("stands in the crew's packet of a job with a rake, and of no other", () => {
    expect(raked.length).toBeGreaterThan(1);
    for (const name of exampleNames) {
      const ids = packetOf(examplePlan(name), "crew").sheets.map(({ id }) => id);
      expect.soft(ids.includes("Z-401"), name).toBe(raked.includes(name));
    }
  });

  test.each(raked)("%s: prints for each course both spacings of each rake, as the plan has them", (name) => {
    const plan = examplePlan(name);
    const show = showIn(plan.job.units);
    for (const { sideId, gaps } of plan.rakes) {
      const rows = tableOf(packetOf(plan, "crew"), `stairs-spacing-${sideId}`).rows.map((row) => row.map(cellText));
      expect(rows.map((row) => row.slice(3, 5))).toEqual(gaps.map(({ plumb, spacing }) => [show.tape(plumb), show.tape(spacing)]));
      expect(rows.slice(0, -1).map((row) => row[1])).toEqual(plan.courses.map(({ height }) => show.tape(height)));
    }
  });

  test.each(raked)("%s: prints the height of every bore on both faces of a post", (name) => {
    const plan = examplePlan(name);
    const show = showIn(plan.job.units);
    for (const { sideId } of plan.rakes) {
      const rows = tableOf(packetOf(plan, "crew"), `stairs-faces-${sideId}`).rows.map((row) => row.map(cellText));
      const post = plan.verticals.find((one) => one.sideId === sideId && one.kind === "post");
      const bores = plan.bores.filter(({ verticalId }) => verticalId === post?.id).toSorted((a, b) => a.course - b.course);
      const due = bores.map(({ entryFace, entryHeight, exitHeight }) =>
        (entryFace === "left" ? [entryHeight, exitHeight] : [exitHeight, entryHeight]).map(show.tape),
      );
      expect(rows.map((row) => row.slice(1, 3))).toEqual(due);
    }
  });

  test.each(raked)("%s: the table of bores has a row for each upright of the rake with its angle and its true length", (name) => {
    const plan = examplePlan(name);
    const show = showIn(plan.job.units);
    for (const { sideId, slope } of plan.rakes) {
      const rows = tableOf(packetOf(plan, "crew"), `stairs-bores-${sideId}`).rows.map((row) => row.map(cellText));
      const own = plan.verticals.filter((one) => one.sideId === sideId);
      expect(rows.map((row) => [row[2], row[4]])).toEqual(
        own.map(({ along }) => [show.angle(Math.abs(slope)), show.tape(along / Math.cos(slope))]),
      );
    }
  });

  // tan 24.23 deg = 0.45, the least of steel on dry wood; 7 in 10-1/2 is 33.7 deg, 4 in 12 is 18.4 deg.
  test("a bevelled washer on a slope that friction may not hold is said to be pushed along its post, and asked about; on a gentle one not", () => {
    const NAME = "0012-stair-from-landing";
    const words = (plan: Plan, sheet: string, issue: "crew" | "permit"): string => JSON.stringify(sheetOf(packetOf(plan, issue), sheet));
    const steep = examplePlan(NAME);
    expect(words(steep, "Z-401", "crew")).toContain("is also pushed up the face of P6**");
    expect(words(steep, "Z-401", "crew")).toContain("up to 24.2 deg only (0.45 at least [drive-guide])");
    expect(words(steep, "Z-002", "permit")).toContain("What keeps the bevelled washers at P6 from sliding along the post (engineer)?");
    const gentle = planOf(changedText(NAME, { "riser: 7 in, tread: 10-1/2 in": "riser: 3-1/2 in, tread: 10-1/2 in" }));
    expect(words(gentle, "Z-401", "crew")).toContain("End posts on a rake");
    expect(words(gentle, "Z-401", "crew")).not.toContain("is also pushed");
    expect(words(gentle, "Z-002", "permit")).not.toContain("from sliding along the post");
  });

  test("both ways past a change of slope stand side by side, the chosen one marked", () => {
    const packet = packetOf(examplePlan("0012-stair-from-landing"), "crew");
    const rows = tableOf(packet, "stairs-ways").rows.map((row) => row.map(cellText));
    expect(rows.map((row) => row.slice(0, 5))).toEqual([
      ["A/B", "cables pass", "yes", "1", "9"],
      ["A/B", "runs end", "no", "2", "18"],
    ]);
  });

  test("the bores of Z-603 say how much higher they go in and how much lower they come out", () => {
    const packet = packetOf(examplePlan("0012-stair-from-landing"), "crew");
    const { columns, rows } = tableOf(packet, "bores-grid");
    const [angle, goesIn, comesOut] = ["angle", "in", "out"].map((key) => columns.findIndex((column) => column.key === key));
    const words = rows.map((row) => row.map(cellText));
    const of = (id: string): readonly (string | undefined)[] => {
      const row = words.find(([name]) => name === id) ?? [];
      return [row[angle ?? -1], row[goesIn ?? -1], row[comesOut ?? -1]];
    };
    expect(of("P2")).toEqual(["level", "at it", "at it"]);
    expect(of("P5")).toEqual(["33.7 deg", '1-13/16" higher', '1-13/16" lower']);
    expect(sheetOf(packet, "Z-603").orientation).toBe("landscape");
  });
});
