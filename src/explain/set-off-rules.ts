// Where bores of two runs cross in a corner post: by how much are they set off, what is left between them, and beside raised cables?
import { nearestCrossed } from "../plan/check-set-off.ts";
import type { Bore } from "../plan/plan.ts";
import { roundUp } from "../units/round.ts";
import { edgesOf } from "./course-rules.ts";
import type { CheckSide } from "./rake-check-rules.ts";
import { derived, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

/** Half-way between two bores of the other side, but no more than the largest spacing leaves; else the least. */
function setOffBy({ at, plan, number }: Reader): Working {
  const step = at("s", "step of the tape", "job.limits.tapeStep");
  if (number("setOff.by") <= roundUp(number("setOff.least"), number("job.limits.tapeStep.value"))) {
    return {
      formula: "up(l, s)",
      inputs: [at("l", "least from middle to middle", "setOff.least"), step],
      origin: derived("the least that leaves the wood between two bores: more would need more cables"),
    };
  }
  return {
    formula: "down(min(c / (2 * N + 1), (N + 1) * a - c), s)",
    inputs: [
      at("c", "clear opening that the cables fill", "job.frame.clearOpening"),
      given("N", "courses", plan.courses.length, "count"),
      at("a", "largest spacing of cables", "job.limits.cableSpacing_max"),
      step,
    ],
    origin: derived("half-way between two bores of the other side, as far as the largest spacing allows"),
  };
}

const bothBores = ({ lower, upper }: { readonly lower: Bore; readonly upper: Bore }, { at }: Reader): Working["inputs"] => [
  at("h2", "height of the upper one", `bores.${upper.mark}.height`),
  at("h1", "height of the lower one", `bores.${lower.mark}.height`),
  at("d2", "bore of the upper one", `bores.${upper.mark}.diameter`),
  at("d1", "bore of the lower one", `bores.${lower.mark}.diameter`),
];

export const setOffDemands: Readonly<Record<string, CheckSide>> = {
  crossing: (reader, id) => {
    const post = must(
      reader.plan.verticals.find((one) => one.id === id),
      id,
    );
    return {
      formula: "h2 - h1 - (d2 + d1) / 2",
      inputs: bothBores(nearestCrossed(reader.plan, post), reader),
      origin: derived("level bores square to each other: between them stands the height less half of each"),
    };
  },
};

export const setOffRules: readonly Rule[] = [
  rule("setOff.by", "By how much the cables of raised sides lie higher", setOffBy),
  rule("setOff.least", "Least from the middle of a bore to that of one which crosses it in a corner post", ({ at }) => ({
    formula: "max(a, b) + w",
    inputs: [
      at("a", "bore of a stud end", "job.fittings.stud.bore"),
      at("b", "bore of a gripping end without a counterbore", "job.fittings.grip.boreNoBack"),
      at("w", "wood left between two bores", "job.limits.betweenBores_min"),
    ],
    origin: derived("half of each bore, and the wood between them"),
  })),
  ...(["spacing", "plumb"] as const).map((field) =>
    rule(`setOff.gaps.*.${field}`, "Spacing of the opening {} on raised sides", (reader, keys) => {
      const [low, high] = edgesOf(reader, keys, "raised");
      return { formula: "h2 - h1", inputs: [high.height, low.height], origin: derived("heights as drilled") };
    }),
  ),
  rule("setOff.gaps.*.clear", "Clear gap of the opening {} on raised sides: what a sphere meets", (reader, keys) => {
    const radii = edgesOf(reader, keys, "raised").filter(({ isCable }) => isCable).length;
    return {
      formula: radii === 2 ? "a - d / 2 - d / 2" : "a - d / 2",
      inputs: [reader.at("a", "spacing", `setOff.gaps${keys[0]}.spacing`), reader.at("d", "diameter of the cable", "job.cable.diameter")],
      origin: derived("half a cable at each side that is a cable"),
    };
  }),
];
