// What does a packet hold? The sheets of one issue, in order, made from one plan.

import type { Revised } from "../changes/changes.ts";
import { revisionOf } from "../job/identity.ts";
import type { Issue } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";
import type { Comparison } from "../record/record.ts";
import { dangerLine } from "./danger-line.ts";
import { type DifferingSheet, differingSheets } from "./differing-sheets.ts";
import { FRAME_STAMP, failingChecks } from "./frame-verdict.ts";
import { fullSizeSheets } from "./full-size.ts";
import { issueName, type SheetHead, type SheetKey, sheetHeads } from "./issues.ts";
import { sourcesMarkedIn } from "./marked-sources.ts";
import type { Packet, Sheet, Stamp, TitleBlock } from "./packet.ts";
import { authoritySheet } from "./sheets/authority.ts";
import { boresSheet } from "./sheets/bores.ts";
import { cablesSheet } from "./sheets/cables.ts";
import { careSheet } from "./sheets/care.ts";
import { changesSheet } from "./sheets/changes.ts";
import { coverSheet } from "./sheets/cover.ts";
import { detailsSheet } from "./sheets/details.ts";
import { elevationSheet } from "./sheets/elevation.ts";
import { frameChecksSheet } from "./sheets/frame-checks.ts";
import type { SheetContext, SheetMaker } from "./sheets/kit.ts";
import { lumberSheet } from "./sheets/lumber.ts";
import { orderSheet } from "./sheets/order.ts";
import { planSheet } from "./sheets/plan-view.ts";
import { proofSheet } from "./sheets/proof.ts";
import { recordSheet } from "./sheets/record.ts";
import { safetySheet } from "./sheets/safety.ts";
import { sourcesSheet } from "./sheets/sources.ts";
import { stairsSheet } from "./sheets/stairs.ts";
import { stepsSheet } from "./sheets/steps.ts";
import { surveySheet } from "./sheets/survey.ts";
import { tighteningSheet } from "./sheets/tightening.ts";
import { toolsSheet } from "./sheets/tools.ts";
import { showIn } from "./show-number.ts";
import { NOT_FOR_CONSTRUCTION, verdictText } from "./wording.ts";

export interface PacketRequest {
  readonly plan: Plan;
  /** What was built, where there is a record of it. */
  readonly built?: Comparison | undefined;
  /** What was issued before, where that is known. */
  readonly revised?: Revised | undefined;
  readonly issue: Issue;
  readonly stamp: Stamp;
  /** Every sheet in the words of the issue, for the web page. */
  readonly all?: boolean;
}

const makers: Readonly<Record<SheetKey, SheetMaker>> = {
  cover: coverSheet,
  authority: authoritySheet,
  survey: surveySheet,
  changes: changesSheet,
  plan: planSheet,
  elevation: elevationSheet,
  details: detailsSheet,
  stairs: stairsSheet,
  cables: cablesSheet,
  lumber: lumberSheet,
  bores: boresSheet,
  order: orderSheet,
  tools: toolsSheet,
  steps: stepsSheet,
  safety: safetySheet,
  tightening: tighteningSheet,
  proof: proofSheet,
  frameChecks: frameChecksSheet,
  care: careSheet,
  record: recordSheet,
  sources: sourcesSheet,
};

export function makePacket({ plan, built, revised, issue, stamp, all = false }: PacketRequest): Packet {
  const context: SheetContext = {
    plan,
    issue,
    stamp,
    show: showIn(plan.job.units),
    home: issue === "homeowner",
    whole: all || issue !== "crew",
    rules: all || issue === "permit" || issue === "record",
    index: sheetHeads({ plan, issue, all, isRevised: revised !== undefined }),
    marked: [],
    built,
    revised,
  };
  return {
    issue,
    issueName: issueName[issue],
    paper: plan.job.paper,
    titleBlock: titleBlock(plan, stamp),
    verdict: plan.verdict,
    verdictText: verdictText(plan),
    sheets: makeSheets(context, { all }),
  };
}

interface Scope {
  readonly all: boolean;
}

/** The sheet of changes names the others, and that of sources lists the marks on all of them: each is made after what it speaks of. */
function makeSheets(context: SheetContext, scope: Scope): readonly Sheet[] {
  const made = new Map<SheetHead, Sheet>();
  const isLate = ({ key }: SheetHead): boolean => key === "changes" || key === "sources";
  for (const head of [...context.index.filter((each) => !isLate(each)), ...context.index.filter(isLate)]) {
    const others = [...made.values()];
    const marked = head.key === "sources" ? sourcesMarkedIn(others.flatMap(({ blocks }) => blocks)) : [];
    const differing = head.key === "changes" ? differingFrom(context, others, scope) : [];
    const sheet = makers[head.key]({ ...context, marked, differing }, head);
    const danger = dangerLine(context.plan, { key: head.key, issue: context.issue });
    made.set(head, danger.length === 0 ? sheet : { ...sheet, blocks: [...danger, ...sheet.blocks] });
  }
  return context.index.flatMap((head) => made.get(head) ?? []);
}

/** The same sheets, and the templates, made from the plan that was issued. The sheet of sources is a list of the others' marks. */
function differingFrom(context: SheetContext, made: readonly Sheet[], { all }: Scope): readonly DifferingSheet[] {
  const { plan, revised, issue, stamp } = context;
  if (revised === undefined) return [];
  const { issued } = revised;
  const index = sheetHeads({ plan: issued, issue, all }).filter(({ key }) => key !== "sources");
  const before = { ...context, plan: issued, show: showIn(issued.job.units), index, built: undefined, revised: undefined };
  const hasTemplates = index.some(({ key }) => key === "bores");
  const block = titleBlock(plan, stamp);
  const full = (each: Plan): readonly Sheet[] => (hasTemplates ? fullSizeSheets({ plan: each, paper: plan.job.paper, block }) : []);
  return differingSheets([...makeSheets(before, { all }), ...full(issued)], [...made, ...full(plan)]);
}

/** What stands in the margins of every sheet. */
export function titleBlock(plan: Plan, stamp: Stamp): TitleBlock {
  const { identity, units, frame } = plan.job;
  return {
    firm: identity.firm,
    jobNumber: identity.number,
    title: identity.title,
    place: identity.place,
    client: identity.client,
    revision: revisionOf(identity),
    date: identity.issueDate,
    status: identity.status,
    preparedBy: identity.preparedBy,
    checkedBy: identity.checkedBy ?? "not checked yet",
    units: units === "inch" ? "feet and inches (mm in parentheses)" : "mm (inches in parentheses)",
    datum: frame.datum,
    example: identity.example ? "EXAMPLE - invented job" : "",
    stamp: stampOf(plan),
    jobHash: stamp.jobHash,
    programVersion: stamp.programVersion,
  };
}

/** Nobody bores from a set that a check forbids, or that was not issued for it. A frame that fails says all of it: two lines of the margin. */
function stampOf(plan: Plan): string {
  const isIssued = ["for construction", "as built"].includes(plan.job.identity.status);
  const failing = failingChecks(plan).length;
  const others = plan.checks.filter(({ verdict }) => verdict === "fail").length > failing;
  const reasons =
    failing > 0
      ? [FRAME_STAMP, ...(others ? ["also Z-001"] : [])]
      : [...(plan.verdict === "fail" ? ["a check fails, see Z-001"] : []), ...(isIssued ? [] : ["do not bore from this set"])];
  return reasons.length === 0 ? "" : `${NOT_FOR_CONSTRUCTION} - ${reasons.join("; ")}`;
}
