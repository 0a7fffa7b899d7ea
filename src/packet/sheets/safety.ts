// Z-802: what can hurt somebody all the time, and what can spoil the material? Dangers of one step stand beside that step.
import type { Block, Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { hasBushingTubes } from "./bearing.ts";
import { cutsStrand } from "./ends.ts";
import { hasLags } from "./face-ends.ts";
import { heading, list, prose, type SheetContext, type SheetMaker, sheet } from "./kit.ts";
import { boreRule, isWood } from "./material.ts";
import { safetyFor } from "./safety-messages.ts";
import { outsideRules } from "./safety-outside.ts";

export const safetySheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.safety)] : []),
    heading("safety-always", "All the time at an open edge"),
    ...safetyFor("frame", context.plan),
    ...outsideRules(context),
    heading("safety-stainless", "Keep stainless steel clean"),
    list(...stainlessRules(context)),
    heading("safety-threads", "Keep threads from seizing"),
    list(...threadRules()),
    ...lagRules(context),
    heading("safety-strand", "Keep the strand whole"),
    list(...strandRules(context)),
    heading("safety-frame", "Keep the frame sound"),
    list(...frameRules(context)),
  ]);

function stainlessRules({ plan }: SheetContext): readonly Text[] {
  const harsh = plan.job.code.exposure !== "inland";
  return [
    `Steel dust on stainless steel rusts. No steel wool, no steel brush, no grinding nearby ${sourceMark("ssina-fabrication")}.`,
    "Clean tools before they touch stainless parts. Lay cable and fittings on a clean sheet.",
    isWood(plan)
      ? "Wipe off chips of wood and metal at the end of each day, then rinse with clean water."
      : "Brush swarf off stainless parts at once; wipe and rinse with clean water at the end of each day.",
    "No chlorine bleach, no hydrochloric acid (some brick and tile cleaners).",
    ...(harsh ? [`This place is harsh (${plan.job.code.exposure}): rinse more often, and use grade 316 throughout.`] : []),
  ];
}

const threadRules = (): readonly Text[] => [
  `Oil or grease every thread made for stainless steel before its nut goes on ${sourceMark("bolt-science-galling")}.`,
  "Run each nut by hand first; if it does not run, clean or replace it. Turn slowly with a hand wrench; hold the stud still with a second one.",
  "If it turns stiffly, stop. Turn back, let it cool, clean, oil.",
];

/** What holds by a thread in wood gives no sign before it lets go. */
function lagRules({ plan }: SheetContext): readonly Block[] {
  if (!hasLags(plan)) return [];
  return [
    heading("safety-lags", "Keep lag screws holding"),
    list(
      "Never hammered, never without the pilot hole: the wood splits, and the thread holds nothing.",
      "A screw that turns and does not draw in holds nothing. A split beside one: no pull. Mark it, stop, ask.",
    ),
  ];
}

const strandRules = ({ plan }: SheetContext): readonly Text[] => [
  "Roll strand off its coil; do not pull it off over the end. A kink cannot be taken out: replace the cable.",
  `Do not drag strand over edges or through dust.${plan.bores.some(({ bushing }) => bushing) ? ` Put ${hasBushingTubes(plan) ? "tube and bushing" : "the bushing"} in before the cable.` : ""}`,
  "Grip the cable only with smooth jaws or wood blocks.",
  ...(cutsStrand(plan)
    ? ["Tape the strand; cut through the tape with a cutter for stainless strand, square, in a block with a hole."]
    : []),
  `Deburr: no wire end may stand out by more than half the cable's diameter ${sourceMark("ncc-2022")}.`,
];

function frameRules({ plan }: SheetContext): readonly Text[] {
  const rule = boreRule(plan);
  return [
    `${isWood(plan) ? "Do not notch posts. " : ""}Do not add bores that this packet does not show.`,
    ...(rule === null ? [] : [rule]),
    "Nothing but this infill hangs on the posts: no screens, planters or hammocks.",
  ];
}
