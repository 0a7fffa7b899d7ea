// What goes into the bores of posts before the cables do, in words for somebody who does it once: stops for blind holes, eyes, bushings?
import { goesThroughOneWall } from "../../plan/face-end.ts";
import type { Plan } from "../../plan/plan.ts";
import type { StepItem } from "../packet.ts";
import { hasBushingTubes, hasMitredTubes, mitredSeat } from "./bearing.ts";
import { MITRE_OFF_mm, mitredIds } from "./bore-corners.ts";
import { bushingsOf } from "./bore-kinds.ts";
import { faceEnds, faceIds, setWords, shankWords } from "./face-ends.ts";
import { greatest, listed, type SheetContext } from "./kit.ts";
import { isWood } from "./material.ts";
import { crossedIds } from "./set-off-words.ts";

/** The holes of ends on faces, which do not go through. */
export function holeItems({ plan, show }: SheetContext): readonly StepItem[] {
  if (faceEnds(plan).length === 0) return [];
  const shank = shankWords({ plan, show });
  if (plan.bores.some((bore) => goesThroughOneWall(bore, plan.job)))
    return [
      {
        text: `${faceIds(plan)}: bore through one wall only. Put a stop on the bit.`,
        more: "The far wall stays whole.",
        killer: true,
      },
    ];
  const depth = greatest(plan.bores.filter(({ kind }) => kind === "face end").map(({ drilledLength }) => drilledLength));
  return [
    {
      text: `${faceIds(plan)}: the holes are blind, ${show.fine(depth)} deep. Put a stop on the bit.`,
      more: "A hole that comes out at the back holds nothing.",
      killer: true,
    },
    ...(shank === ""
      ? []
      : [
          {
            text: `Each of these holes is ${shank}.`,
            more: "Forced into the narrow hole, the shank splits the post.",
            killer: true as const,
          },
        ]),
  ];
}

/** Eyes stand before the cables come, in holes that are treated: a brush does not reach behind a screw. */
export const fasteningItems = ({ plan }: SheetContext): readonly StepItem[] =>
  faceEnds(plan).length === 0
    ? []
    : [
        {
          text: setWords(plan),
          more: `Try the first eye with a hard pull.${isWood(plan) ? " A post that splits is not used." : ""}`,
          killer: true,
        },
      ];

/** A bore on which the cable turns at both mouths takes two. */
export function bushingItems(plan: Plan): readonly StepItem[] {
  const { bores, bushings } = bushingsOf(plan);
  if (bores === 0) return [];
  return [
    ...(hasBushingTubes(plan)
      ? [
          {
            text: "Push a tube into each hole where the cable bends. Its ends are round and level with the wood.",
            ...(hasMitredTubes(plan) ? { more: `At ${listed(mitredIds(plan))} its ends are cut at 45 deg first.` } : {}),
            killer: true as const,
          },
        ]
      : []),
    {
      text: bushings === bores ? `Put bushings in ${bores} holes.` : `Put ${bushings} bushings in ${bores} holes.`,
      more: `The table of bores says which${bushings === bores ? "" : ", and where a hole takes one at each end"}.${mitredSeat(plan)}`,
    },
  ];
}

/** A corner post that is bored right through from two faces. */
export function crossedItems({ plan, show }: SheetContext): readonly StepItem[] {
  const ids = crossedIds(plan);
  if (ids.length === 0) return [];
  return [
    {
      text: `${listed(ids)}: bore each face at its own marks, square to the face. Each bit must come out on its mark, in the middle of the far face, within ${show.tape(MITRE_OFF_mm)}.`,
      more: "Is it further off, or does the wood split? Stop and ask before you bore the next one.",
      killer: true,
    },
  ];
}
