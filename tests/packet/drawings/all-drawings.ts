// Which drawings does a plan have in all, and for which plans are they tested?
import { contentBox, type PaperName } from "../../../src/drawing/paper.ts";
import { calibrationBar } from "../../../src/packet/drawings/calibration-bar.ts";
import type { Drawing } from "../../../src/packet/packet.ts";
import {
  drawnDays,
  drawnDetails,
  drawnElevations,
  drawnFriction,
  drawnOpenings,
  drawnOverview,
  drawnParts,
  drawnPlan,
  drawnRake,
  drawnSteps,
  drawnTightening,
} from "../../../src/packet/sheets/drawn.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { changedText, exampleNames, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";

export interface Placed {
  readonly drawing: Drawing;
  /** What the page has between its margins. */
  readonly width: number;
  readonly height: number;
}

/** Every drawing as the sheets ask for it. */
export function allDrawings(original: Plan, paper: PaperName): readonly Placed[] {
  const plan: Plan = { ...original, job: { ...original.job, paper } };
  const portrait = contentBox({ paper, orientation: "portrait" });
  const landscape = contentBox({ paper, orientation: "landscape" });
  const upright = [
    calibrationBar(),
    ...drawnPlan(plan),
    ...drawnDetails(plan),
    ...drawnFriction(plan),
    ...plan.rakes.flatMap(({ sideId }) => drawnRake(plan, sideId)),
    ...plan.runs.flatMap(({ id }) => [...drawnTightening(plan, id), ...drawnSteps(plan, id), ...drawnDays(plan, id)]),
    ...drawnOpenings(plan),
    ...drawnOverview(plan),
    ...drawnParts(plan),
  ];
  return [
    ...upright.map((drawing) => ({ drawing, ...portrait })),
    ...plan.sides.flatMap((_, index) => drawnElevations(plan, index)).map((drawing) => ({ drawing, ...landscape })),
  ];
}

const sides = /\n {2}sides:\n(?:(?: {4}.*|\s*)\n)+/;

/** The first example with other sides: shapes that no example has. */
export function shaped(...lengths: readonly string[]): Plan {
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
  "right 90 twice, then right 45 to a wall": () =>
    shaped("length: 12 ft, turn: right 90 deg", "length: 20 ft, turn: right 90 deg", "length: 8 ft, turn: right 45 deg", "length: 9 ft"),
  "sides with one spacer": () => shaped("length: 6 ft, turn: right 90 deg", "length: 5 ft"),
  "a short return": () => shaped("length: 20 ft, turn: right 90 deg", "length: 3 ft"),
  "three passes": () =>
    planOf(exampleText("0003-long-boardwalk").replace("\ntightening:\n", "\ntightening:\n  passes: [40 %, 70 %, 100 %]\n")),
  "a steel stair with its landing, in mm": () => examplePlan("steel-stair"),
  "a ramp with gripping ends in counterbores": () => examplePlan("garden-ramp"),
  "grip without room behind": () =>
    planOf(changedText("0001-level-deck-straight", { "end: { kind: post, access: drill }": "end: { kind: post, access: hand }" })),
};
