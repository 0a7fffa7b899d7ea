// Which safety messages belong to each step? Each stands beside its step; the one for the whole time also on the sheet of safety.
import type { CodeEdition } from "../../job/job.ts";
import type { Plan } from "../../plan/plan.ts";
import { FRAME_SHEET, frameFails } from "../frame-verdict.ts";
import type { Block, Text } from "../packet.ts";
import { showIn, sourceMark } from "../show-number.ts";
import { cutsStrand } from "./ends.ts";
import { caution } from "./kit.ts";
import { isTreated, isWood } from "./material.ts";
import { pierFails, piersOf } from "./piers.ts";
import { overEdge } from "./set-off-words.ts";

export type SafetyKey = "frame" | "bore" | "reeve" | "tighten" | "cut";

interface Message {
  readonly level: "danger" | "warning" | "caution" | "notice";
  readonly text: readonly Text[];
}

/** Cautions for one step. */
export const safetyFor = (key: SafetyKey, plan: Plan): readonly Block[] =>
  messagesFor(key, plan).map(({ level, text }) => caution(level, ...text));

function messagesFor(key: SafetyKey, plan: Plan): readonly Message[] {
  switch (key) {
    case "frame":
      return [fallMessage(plan)];
    case "bore":
      return boreMessages(plan);
    case "reeve":
      return [
        {
          level: "warning",
          text: [
            `Wear gloves and glasses. ${plan.job.supply.kind === "ready" ? "" : "Tape the strand before each cut: cut ends whip. "}Never let strand slide through your hand.`,
            ...overEdge(plan),
          ],
        },
      ];
    case "tighten":
      return tightenMessages(plan);
    case "cut":
      return [
        {
          level: "warning",
          text: [
            ...(cutsStrand(plan) ? ["Wear glasses when you cut strand. Hold the end so that it cannot fly. File every end."] : []),
            isWood(plan)
              ? "Do not grind near stainless parts or dry wood. Sparks start fires and leave rust."
              : "Do not grind near stainless parts. Sparks leave rust.",
          ],
        },
      ];
  }
}

/** Rules of the federal government for construction work hold in the United States alone. */
export const ofUnitedStates = (edition: CodeEdition): boolean => edition.startsWith("IRC") || edition.startsWith("IBC");

const FOOTING: Text = " On the slope stand level. Keep tools off it. Hold stock so that it cannot slide.";

/** The rule that construction work follows is another in each country. */
function fallMessage(plan: Plan): Message {
  const { code, units } = plan.job;
  const drop = showIn(units).measure({ kind: "length", value: code.drop });
  return {
    level: "danger",
    text: [
      `**This edge: a drop of ${drop}.**${plan.rakes.length === 0 ? "" : FOOTING}`,
      ofUnitedStates(code.edition)
        ? `An open edge 6 ft (1.8 m) or more above the ground needs fall protection while you work ${sourceMark("osha-1926")}.`
        : "Follow the local rules for work at height. Ask which ones apply before you start.",
      "Cables that are not yet tight are not a guard. Never tie off to a guard.",
    ],
  };
}

function boreMessages(plan: Plan): readonly Message[] {
  const mark = ofUnitedStates(plan.job.code.edition) ? ` ${sourceMark("osha-1926")}` : "";
  return [
    {
      level: "warning",
      text: [
        `Wear glasses with side shields${mark}. Hold the drill with both hands. A bit that catches turns the drill.`,
        isWood(plan)
          ? "Look for hidden bolts and screws first. Stop when the bit meets metal."
          : "Clamp the guide. Use cutting oil and slow turns. Ease off before the bit breaks through a wall.",
        ...(piersOf(plan).length > 0 ? [dustText(plan)] : []),
        ...(piersOf(plan).some(({ anchor }) => anchor.kind === "adhesive") ? [ADHESIVE] : []),
        ...(isTreated(plan) ? ["Treated wood: wear a dust mask and gloves. Wash before you eat. Never burn the chips."] : []),
        ...(isWood(plan) ? [] : ["Metal chips are hot and sharp. Clamp the work. Use a brush, not your hand."]),
      ],
    },
  ];
}

const dustText = ({ job }: Plan): Text =>
  `Dust of concrete and masonry holds silica, which scars the lungs. Bore the pier with a shroud and dust extraction on the drill. Clean holes with a vacuum that has a HEPA filter${ofUnitedStates(job.code.edition) ? ` (29 CFR 1926.1153, table 1) ${sourceMark("memory")}` : " and follow the local rules for such dust"}. Wear a dust mask.`;

const ADHESIVE: Text = "Adhesive for anchors harms skin and eyes: wear gloves and glasses. Read its label and its safety data sheet first.";

/** What a post does before it fails, by its material. */
export const postFails = (plan: Plan): Text => (isWood(plan) ? "leans, splits or moves at its foot" : "leans, bends or moves at its foot");

function tightenMessages(plan: Plan): readonly Message[] {
  return [
    {
      level: "danger",
      text: [
        "A tight cable stores energy. Stand beside it, never in line with it. Wear glasses.",
        ...(frameFails(plan) ? [`**The frame FAILS its checks on ${FRAME_SHEET}: do not tighten.**`] : []),
        `Stop when a post ${postFails(plan)}, or moves more than ${showIn(plan.job.units).fine(plan.frame.movement_max.value)} anywhere.`,
        ...overEdge(plan),
        ...(pierFails(plan) === null ? [] : [`Stop when ${pierFails(plan)}. Slacken its cables.`]),
      ],
    },
    {
      level: "caution",
      text: [
        `Use hand wrenches only. Power tools heat stainless threads, and they seize ${sourceMark("bolt-science-galling")}. Oil each thread first.`,
      ],
    },
  ];
}
