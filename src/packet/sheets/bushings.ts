// What is measured, ruled and said of the bushings where a cable bends?
import type { Plan } from "../../plan/plan.ts";
import type { Cited } from "../../sources/cited.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { type Show, sourceMark } from "../show-number.ts";
import { bushingWarning, hasBushingTubes, mitredSeat, tubeEnds } from "./bearing.ts";
import { isWood } from "./material.ts";
import { atLeast } from "./survey-least.ts";
import type { SurveyRow } from "./survey-rows.ts";

interface Shown {
  readonly plan: Plan;
  readonly show: Show;
}

const isBushed = ({ bores }: Plan): boolean => bores.some(({ bushing }) => bushing);

/** What is measured on the bushings that were bought. */
export function bushingRows({ plan, show }: Shown): readonly SurveyRow[] {
  if (!isBushed(plan)) return [];
  const { bushing, bushingBore } = plan.job.fittings;
  const warning = bushingWarning(plan);
  const bore: SurveyRow = [
    "fittings / bushing bore",
    hasBushingTubes(plan) ? "Tube round the bushings: sits firmly in a bore of" : "Bushing: sits firmly in a bore of",
    show.diameter(bushingBore.value),
    "does not go in, or turns by hand",
  ];
  const bends = plan.runs.some((run) => run.bends.length > 0);
  const rated: readonly SurveyRow[] =
    !bends || (isWood(plan) && bushing.rated === null)
      ? []
      : [
          [
            "fittings / bushing / rated",
            "Working load of a bushing where a cable bends, from its maker",
            bushing.rated === null ? "not known: asked for" : show.forceBoth(bushing.rated.value),
            bushing.rated === null ? "none to be had" : `below ${show.force(bushing.rated.value)}`,
          ],
        ];
  if (!isWood(plan)) return [bore, ...rated];
  return bushing.tubeWall === null
    ? [
        bore,
        [
          "fittings / bushing / length",
          `Bushing: length in its bore, rim left out${warning}`,
          ...atLeast(bushing.length.value, show.tapeBoth, show.tape),
        ],
        ...rated,
      ]
    : [
        bore,
        [
          "fittings / bushing / tube wall",
          `Tube round the bushings: its wall${warning}`,
          ...atLeast(bushing.tubeWall.value, show.diameter, show.diameterOne),
        ],
        ...rated,
      ];
}

/** Sizes that the check of the bends rests on. */
export function bushingRules({ plan, show }: Shown): readonly (readonly [rule: Text, size: Cited<Mm>, print: (mm: Mm) => Text])[] {
  if (!isBushed(plan) || !isWood(plan)) return [];
  const { length, tubeWall } = plan.job.fittings.bushing;
  return tubeWall === null
    ? [["Length of a bushing in its bore", length, show.tapeBoth]]
    : [["Wall of the tube round the bushings", tubeWall, show.diameter]];
}

/** Behind where bushings go. */
export function bushingSitWords({ plan, show }: Shown): Text {
  if (!isWood(plan)) return "";
  const { bushing, bushingBore } = plan.job.fittings;
  const warning = bushingWarning(plan);
  return bushing.tubeWall === null
    ? ` It lies at least ${show.tape(bushing.length.value)} long in its bore ${sourceMark(bushing.length.source)}${warning}.${mitredSeat(plan)}`
    : ` It sits in the mouth of a stainless tube, ${show.diameterOne(bushingBore.value)} x ${show.diameterOne(bushing.tubeWall.value)} wall, right through the bore ${sourceMark(bushing.tubeWall.source)}${warning}: ends ${tubeEnds(plan)}, flush with the faces, so that the tube and not the mouth alone presses on the wood.${mitredSeat(plan)}`;
}
