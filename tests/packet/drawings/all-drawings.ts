// Which drawings does a plan have in all, and for which plans are they tested?
import { contentBox, type PaperName } from "../../../src/drawing/paper.ts";
import { calibrationBar } from "../../../src/packet/drawings/calibration-bar.ts";
import { details } from "../../../src/packet/drawings/details.ts";
import { elevations } from "../../../src/packet/drawings/elevation.ts";
import { frictionPlot } from "../../../src/packet/drawings/friction-plot.ts";
import { openingDiagram } from "../../../src/packet/drawings/opening-diagram.ts";
import { planView } from "../../../src/packet/drawings/plan-view.ts";
import { tighteningDiagram } from "../../../src/packet/drawings/tightening-diagram.ts";
import type { Drawing } from "../../../src/packet/packet.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";

export interface Placed {
  readonly drawing: Drawing;
  readonly width: number;
  readonly height: number;
}

/** Every drawing with the box it was given. */
export function allDrawings(plan: Plan, paper: PaperName): readonly Placed[] {
  const portrait = contentBox({ paper, orientation: "portrait" });
  const landscape = contentBox({ paper, orientation: "landscape" });
  const upright = [
    calibrationBar(),
    planView(plan, portrait),
    ...details(plan, portrait),
    ...plan.runs
      .flatMap(({ id }) => [tighteningDiagram(plan, id, portrait), frictionPlot(plan, id, portrait)])
      .filter((one) => one !== null),
    ...plan.sides.map((_, index) => openingDiagram(plan, index, portrait)),
  ];
  return [
    ...upright.map((drawing) => ({ drawing, ...portrait })),
    ...plan.sides.flatMap((_, index) => elevations(plan, index, landscape)).map((drawing) => ({ drawing, ...landscape })),
  ];
}

const sides = /\n {2}sides:\n(?:(?: {4}.*|\s*)\n)+/;

/** The first example with other sides: shapes that no example has. */
function shaped(...lengths: readonly string[]): Plan {
  const text = exampleText("0001-level-deck-straight");
  if (!sides.test(text)) throw new Error("the example has no sides where they are looked for");
  const roomy = text.replace("  existing: false", "  existing: false\n  corner setback: 5 in");
  return planOf(roomy.replace(sides, `\n  sides:\n${lengths.map((side) => `    - { ${side} }`).join("\n")}\n\n`));
}

export const testedPlans: Readonly<Record<string, () => Plan>> = {
  ...Object.fromEntries(exampleNames.map((name) => [name, () => examplePlan(name)])),
  "a side of 2 ft": () => shaped("length: 2 ft"),
  "a side of 150 ft": () => shaped("length: 150 ft"),
  "left 90, right 90": () => shaped("length: 9 ft, turn: left 90 deg", "length: 7 ft, turn: right 90 deg", "length: 14 ft"),
  "left 90 twice": () => shaped("length: 12 ft, turn: left 90 deg", "length: 8 ft, turn: left 90 deg", "length: 12 ft"),
  "right 45 three times": () =>
    shaped("length: 6 ft, turn: right 45 deg", "length: 6 ft, turn: right 45 deg", "length: 6 ft, turn: right 45 deg", "length: 6 ft"),
  "right 120, posts set far back": () => shaped("length: 16 ft, turn: right 120 deg", "length: 11 ft"),
  "a short return": () => shaped("length: 20 ft, turn: right 90 deg", "length: 3 ft"),
  "grip without room behind": () =>
    planOf(changedText("0001-level-deck-straight", { "end: { kind: post, access: drill }": "end: { kind: post, access: hand }" })),
};
