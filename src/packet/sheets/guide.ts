// How does somebody who does this once work through the job? Read a step, do it; sentences of at most 20 words.
import type { Block } from "../packet.ts";
import { cutEnds } from "./ends.ts";
import { endsStage, farEndStage } from "./guide-ends.ts";
import { finishStage, proveStage, tightenStage } from "./guide-finish.ts";
import { askStage, buyStage, frameStage, measureStage } from "./guide-start.ts";
import { boreStage, reeveStage, setOutStage } from "./guide-work.ts";
import { blanks, caution, heading, type SheetContext, steps } from "./kit.ts";
import { safetyFor } from "./safety-messages.ts";
import type { Stage } from "./stage.ts";

export function guideBlocks(context: SheetContext): readonly Block[] {
  const cut = cutEnds(context.plan).length > 0 ? [farEndStage] : [];
  const stages = [
    askStage,
    measureStage,
    buyStage,
    frameStage,
    setOutStage,
    boreStage,
    reeveStage,
    endsStage,
    ...cut,
    tightenStage,
    proveStage,
    finishStage,
  ];
  return [
    caution(
      "warning",
      "Call a professional if a post moves, a part is rotten or rusted through, or you are unsure.",
      "A licensed engineer or your building office must accept the frame. This packet computes it on Z-805. It does not test it.",
    ),
    ...stages.map((make) => make(context)).flatMap((stage, index) => stageBlocks(stage, index + 1, context)),
    blanks("guide-stopped", "If you stop for the day", [
      ["Last step done, date", ""],
      ["What is still loose", ""],
    ]),
  ];
}

/** The heading stands before a caution, so that it is read as part of its step and not of the one before. */
function stageBlocks(stage: Stage, number: number, { plan }: SheetContext): readonly Block[] {
  const name = `${number}. ${stage.title}`;
  const hand = `In the hand: ${stage.sheets}`;
  const cautions = stage.safety === null ? [] : safetyFor(stage.safety, plan);
  return [
    ...(cautions.length > 0 ? [heading(`guide-${stage.key}-head`, name), ...cautions] : []),
    steps({
      id: `guide-${stage.key}`,
      title: cautions.length > 0 ? hand : `${name}. ${hand}`,
      mode: "read-do",
      items: stage.items,
      ...(stage.hold === undefined ? {} : { hold: stage.hold }),
    }),
  ];
}
