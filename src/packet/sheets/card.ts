// What stands on a pause card of the crew?
import type { Block, StepItem, Text } from "../packet.ts";
import type { TroubleStep } from "../troubles.ts";

export interface Card {
  readonly key: string;
  readonly title: Text;
  /** The sheets in the hand at this step. */
  readonly sheets: Text;
  readonly safety: readonly Block[];
  readonly items: readonly StepItem[];
  /** The step whose troubles are printed on the card. */
  readonly troubles?: TroubleStep;
  readonly hold?: Text;
}
