// Is what a detail calls the same really the same, and what is the other way round called mirrored?
import { describe, expect, test } from "vitest";
import type { Plan, RunEnd } from "../../../src/plan/plan.ts";
import { textsOf } from "../../support/svg-texts.ts";
import { allDrawings, testedPlans } from "./all-drawings.ts";

const endsOf = (plan: Plan, postId: string): readonly RunEnd[] =>
  plan.runs.flatMap(({ left, right }) => [left, right]).filter((end) => end.postId === postId);
const ids = (text: string): readonly string[] => text.match(/\bP\d+\b/g) ?? [];

/** "Drawn for P1; P5 the same; P13 mirrored, left for right." as it stands under its drawing, lines joined. */
const sentences = (svg: string): readonly string[] =>
  textsOf(svg)
    .map(({ text }) => text)
    .join(" ")
    .match(/Drawn for [^.]*\./g) ?? [];

describe.each(Object.keys(testedPlans))("details of %s", (name) => {
  const plan = testedPlans[name]?.();
  if (plan === undefined) throw new Error(`no plan ${name}`);
  const details = allDrawings(plan, "letter").filter(({ drawing }) => drawing.id.startsWith("detail-"));

  test("an end is called the same where its back is the same face, mirrored where it is the other", () => {
    for (const { drawing } of details.filter(({ drawing: { id } }) => !id.startsWith("detail-corner"))) {
      for (const sentence of sentences(drawing.svg)) {
        const [first = "", ...others] = sentence.split(";");
        const back = endsOf(plan, ids(first)[0] ?? "").map(({ backFace }) => backFace);
        for (const part of others)
          for (const id of ids(part))
            for (const { backFace } of endsOf(plan, id))
              expect.soft(back.includes(backFace), `${sentence} ${id}`).toBe(part.includes("the same"));
      }
    }
  });

  test("corners that share a drawing turn the same way and are drilled from the same faces with the same bit", () => {
    for (const { drawing } of details.filter(({ drawing: { id } }) => id.startsWith("detail-corner"))) {
      for (const sentence of sentences(drawing.svg)) {
        const [first = "", others = ""] = sentence.split("; the same at ");
        const likeness = (id: string): string => {
          const bore = plan.bores.find(({ verticalId }) => verticalId === id);
          return `${bore?.entryFace} ${bore?.diameter} ${plan.verticals.find((vertical) => vertical.id === id)?.sectionName}`;
        };
        const drawn = ids(first).map(likeness);
        ids(others).forEach((id, place) => {
          expect.soft(likeness(id), `${sentence} ${id}`).toBe(drawn[place % drawn.length]);
        });
      }
    }
  });
});

test("0002: the far end is mirrored, and says so without an if", () => {
  const plan = testedPlans["0002-deck-two-corners"]?.();
  if (plan === undefined) throw new Error("no plan");
  const words = allDrawings(plan, "letter").flatMap(({ drawing }) => sentences(drawing.svg));
  expect(words).toContain("Drawn for P1; P13 mirrored, left for right.");
});
