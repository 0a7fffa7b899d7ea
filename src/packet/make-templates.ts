// What is printed at full size? The templates and the story pole of one plan, for one size of paper.
import type { Paper } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";
import { fullSizeSheets } from "./full-size.ts";
import { titleBlock } from "./make-packet.ts";
import type { Packet, Stamp } from "./packet.ts";
import { paperName, verdictText } from "./wording.ts";

export interface TemplatesRequest {
  readonly plan: Plan;
  readonly stamp: Stamp;
  readonly paper: Paper;
}

/** Never mixed with tables of a packet: nothing wide may make a browser shrink what is measured. */
export function makeTemplates({ plan, stamp, paper }: TemplatesRequest): Packet {
  const block = titleBlock(plan, stamp);
  return {
    issue: plan.job.audience,
    issueName: `Templates on ${paperName[paper]} paper`,
    paper,
    titleBlock: block,
    verdict: plan.verdict,
    verdictText: verdictText(plan),
    sheets: fullSizeSheets({ plan, paper, block }),
  };
}
