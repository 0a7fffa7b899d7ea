import { describe, expect, test } from "vitest";
import { siteEnds, startOf, startsInside, startWords, stopOf } from "../../../src/packet/sheets/ends.ts";
import type { Run, RunEnd } from "../../../src/plan/plan.ts";
import { examples } from "../read-packet.ts";

const [first] = examples;
const [run] = first?.[1].runs ?? [];
if (!run) throw new Error("no example run");

const end = (postId: string, more: Partial<RunEnd>): RunEnd => ({
  postId,
  kind: "stud",
  pulls: false,
  backFace: "left",
  access: "drill",
  offset: 0,
  seat: 0,
  ...more,
});
const between = (left: RunEnd, right: RunEnd): Run => ({ ...run, left, right });

describe("startOf", () => {
  test("a run that is pulled at P9 on its right begins at P9 and stops at P1", () => {
    const pulledRight = between(end("P1", { kind: "grip" }), end("P9", { pulls: true, backFace: "right" }));
    expect([startOf(pulledRight).postId, stopOf(pulledRight).postId]).toEqual(["P9", "P1"]);
  });

  test("a run that is pulled at both ends begins on the left", () => {
    const both = between(end("P1", { pulls: true }), end("P9", { pulls: true, backFace: "right" }));
    expect([startOf(both).postId, stopOf(both).postId]).toEqual(["P1", "P9"]);
  });

  test.each(examples)("%s: every run begins at an end that pulls", (_, plan) => {
    for (const each of plan.runs) expect.soft(startOf(each).pulls, each.id).toBe(true);
  });
});

/** No post of it makes a corner. */
const NOWHERE = { verticals: [] };

describe("startWords", () => {
  test("with room for a drill behind P1 the cable goes in there; with room for a hand only it starts inside", () => {
    const free = between(end("P1", { pulls: true }), end("P9", { kind: "grip" }));
    const tight = between(end("P1", { pulls: true, access: "hand" }), end("P9", { kind: "grip" }));
    expect(startWords(NOWHERE, free)).toBe("P1 (in at its left face)");
    expect(startsInside(tight)).toBe(true);
    expect(startWords(NOWHERE, tight)).toBe("P1 (from inside, stud out at its left face)");
  });
});

describe("siteEnds", () => {
  test("the far end is fitted on site, as a grip or as a second stud", () => {
    expect(siteEnds(between(end("P1", { pulls: true }), end("P9", { kind: "grip" }))).grips.map(({ postId }) => postId)).toEqual(["P9"]);
    expect(siteEnds(between(end("P1", { pulls: true }), end("P9", {}))).studs.map(({ postId }) => postId)).toEqual(["P9"]);
  });
});
