// What does somebody who does this once do differently on a side that slopes? Sentences of at most 20 words.
import type { RakePlan } from "../../plan/rake-plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { postsWith, slopedEnds } from "./ends.ts";
import { listed, refer, type SheetContext } from "./kit.ts";
import { levelSides, onWhat, sidesWord, slopedSides } from "./slopes.ts";

/** "Level side A: " before a step that a slope does otherwise; nothing where none slopes. */
export const levelFirst = ({ plan }: SheetContext): Text => (plan.rakes.length === 0 ? "" : `**Level ${sidesWord(levelSides(plan))}.** `);

const slope = ({ sideId }: RakePlan): Text => `**Slope, side ${sideId}.**`;

/** Slope, rise and steps, before anything is bought or cut. */
export const measureSlopes = (context: SheetContext): readonly StepItem[] =>
  context.plan.rakes.flatMap((rake): readonly StepItem[] => [
    {
      text: `${slope(rake)} Lay a straight board on ${onWhat(rake.kind)}. Read how it slopes.`,
      more: `The plan has ${context.show.angle(Math.abs(rake.slope))}. Turn the gauge round and read again. Half a degree off: stop.`,
      value: "deg",
      killer: true,
    },
    {
      text: `${slope(rake)} Measure its length level and its rise straight up.${rake.kind === "stair" ? " Count the steps." : ""}`,
      more: "Do not lay the tape on the slope: it reads too much.",
    },
  ]);

/** Rails are level, or follow the slope. */
export const railsLie = ({ plan }: SheetContext): Text =>
  plan.rakes.length === 0
    ? "check that they are level"
    : levelSides(plan).length === 0
      ? "check that they follow the slope"
      : `check them: level on ${listed(levelSides(plan))}, along the slope on ${listed(slopedSides(plan))}`;

export const cutSlopes = (context: SheetContext): readonly StepItem[] =>
  context.plan.rakes.map((rake) => ({
    text: `${slope(rake)} Cut rails and spacers at ${context.show.angle(Math.abs(rake.slope))} off square, both ends the same way.`,
    more: `The lengths on ${refer(context, "lumber")} go from tip to tip. Try the first cut on a scrap.`,
    killer: true,
  }));

/** On a slope the stick is wrong on both faces. */
export const markSlopes = (context: SheetContext): readonly StepItem[] =>
  context.plan.rakes.flatMap((rake): readonly StepItem[] => [
    {
      text: `${slope(rake)} ${rake.kind === "stair" ? "Clamp" : "Lay"} the straight board on ${onWhat(rake.kind)}. Mark its lower edge on the middle of each post and spacer.`,
      more: `This mark is the datum of that post. ${levelSides(context.plan).length === 0 ? "A stick marked from a level floor" : "The stick of a level side"} is of no use here.`,
      killer: true,
    },
    {
      text: `${slope(rake)} Carry each mark level to both faces. From there mark both faces by ${refer(context, "stairs")}.`,
      more: "The hole goes in at one height and comes out at another. Mark both before you bore.",
      killer: true,
    },
  ]);

export const boreSlopes = (context: SheetContext): readonly StepItem[] =>
  context.plan.rakes.map((rake) => ({
    text: `${slope(rake)} Saw a guide block to ${context.show.angle(Math.abs(rake.slope))}. Clamp it to the face and bore through it.`,
    more: "Try it on a scrap of the same size. The bit must come out on the mark of the other face.",
    killer: true,
  }));

/** Ends on a slope bear on a wedge. */
export function bevelItems(context: SheetContext): readonly StepItem[] {
  const ends = slopedEnds(context.plan);
  if (ends.length === 0) return [];
  return [
    {
      text: `${postsWith(ends)}: a bevelled washer goes on first. ${refer(context, "stairs")} shows which edge is up.`,
      more: "Nut and collar do not sit flat on a post of a slope. The wedge makes up for it.",
      killer: true,
    },
  ];
}

/** Where else the ball is tried, and where another one is. */
export const trySlopes = ({ plan, show }: SheetContext): readonly StepItem[] => {
  const { triangleSphere } = plan.job.code.stairs;
  return plan.rakes.flatMap((rake): readonly StepItem[] =>
    rake.kind === "stair" && triangleSphere !== null
      ? [
          {
            text: `${slope(rake)} At each step take a ball of ${show.tape(triangleSphere.value)}. It must not go in under the rail.`,
            more: "Try it where riser, tread and rail meet.",
            killer: true,
          },
        ]
      : [],
  );
};
