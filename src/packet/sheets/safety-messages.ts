// Which safety messages belong to each step? They stand on the sheet of safety and again just before the step.
import type { Plan } from "../../plan/plan.ts";
import type { Block, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { caution } from "./kit.ts";

export type SafetyKey = "frame" | "set-out" | "bore" | "reeve" | "tighten" | "cut";

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
      return fallMessages();
    case "set-out":
      return [];
    case "bore":
      return boreMessages(plan);
    case "reeve":
      return [
        {
          level: "warning",
          text: ["Wear gloves and glasses. Tape the strand before each cut: cut ends whip. Never let strand slide through your hand."],
        },
      ];
    case "tighten":
      return tightenMessages();
    case "cut":
      return [
        {
          level: "warning",
          text: ["Wear glasses when you cut tails. Hold the tail so that it cannot fly. File every end."],
        },
        {
          level: "caution",
          text: ["Do not grind near stainless parts or dry wood. Sparks start fires and leave rust."],
        },
      ];
  }
}

/** The rule that construction work in the US follows. */
function fallMessages(): readonly Message[] {
  return [
    {
      level: "danger",
      text: [
        `An open edge 6 ft (1.8 m) or more above the ground needs fall protection while you work ${sourceMark("osha-1926")}.`,
        "Cables that are not yet tight are not a guard. Never tie off to a guard.",
      ],
    },
  ];
}

function boreMessages(plan: Plan): readonly Message[] {
  const { posts } = plan.job;
  const wood = posts.section.material === "wood";
  return [
    {
      level: "warning",
      text: [
        `Wear glasses with side shields ${sourceMark("osha-1926")}. Hold the drill with both hands. A bit that catches turns the drill.`,
        "Look for hidden bolts and screws first. Stop when the bit meets metal.",
      ],
    },
    ...(wood && posts.treatment === "treated"
      ? [{ level: "caution", text: ["Treated wood: wear a dust mask and gloves. Wash before you eat. Never burn the chips."] } as const]
      : []),
    ...(wood ? [] : [{ level: "caution", text: ["Metal chips are hot and sharp. Clamp the work. Use a brush, not your hand."] } as const]),
  ];
}

function tightenMessages(): readonly Message[] {
  return [
    {
      level: "danger",
      text: ["A tight cable stores energy. Stand beside it, never in line with it. Wear glasses."],
    },
    {
      level: "warning",
      text: ["The frame is NOT checked by this program. It must be accepted first. Stop when a post leans, splits or moves at its foot."],
    },
    {
      level: "caution",
      text: [
        `Use hand wrenches only. Power tools heat stainless threads, and they seize ${sourceMark("bolt-science-galling")}. Oil each thread first.`,
      ],
    },
  ];
}

/** All messages in the order of the work, each once. */
export function allMessages(plan: Plan): readonly (readonly [step: Text, messages: readonly Block[]])[] {
  return [
    ["All the time at an open edge", safetyFor("frame", plan)],
    ["When you bore", safetyFor("bore", plan)],
    ["When you handle strand", safetyFor("reeve", plan)],
    ["When you tighten", safetyFor("tighten", plan)],
    ["When you cut and finish", safetyFor("cut", plan)],
  ];
}
