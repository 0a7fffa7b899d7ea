// What is one stage of the guide for somebody who does this once?
import type { StepItem, Text } from "../packet.ts";
import type { SafetyKey } from "./safety-messages.ts";

export interface Stage {
  readonly key: string;
  readonly title: Text;
  /** The sheets to have in the hand. */
  readonly sheets: Text;
  readonly safety: SafetyKey | null;
  readonly items: readonly StepItem[];
  readonly hold?: Text;
}
