// Which sheets are printed at full size? Templates and story pole of one plan, for one size of paper.
import type { Paper } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";
import { ownSheets } from "./issues.ts";
import type { Sheet, TitleBlock } from "./packet.ts";
import { storyPoleSheet } from "./sheets/story-pole.ts";
import { templatesSheet } from "./sheets/templates.ts";
import { showIn } from "./show-number.ts";
import type { StripContext } from "./templates/template-strips.ts";

export interface FullSizeRequest {
  readonly plan: Plan;
  readonly paper: Paper;
  /** Stands on each strip, as strips are cut out. */
  readonly block: TitleBlock;
}

export function fullSizeSheets({ plan, paper, block }: FullSizeRequest): readonly Sheet[] {
  const context: StripContext = { plan, show: showIn(plan.job.units), paper, titleBlock: block };
  return [templatesSheet(context, ownSheets.templates), storyPoleSheet(context, ownSheets.storyPole)];
}
