// Z-001: what is this packet, what does it rest on, how is it read, and when must the work stop?
import { calibrationBar } from "../drawings/calibration-bar.ts";
import { issueName, issueReader } from "../issues.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark, sourcePlace } from "../show-number.ts";
import { frameNotChecked, introduction, notApproval, verdictText, verdictWord } from "../wording.ts";
import {
  bold,
  caution,
  column,
  count,
  facts,
  heading,
  list,
  postsOf,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  spacersOf,
  table,
} from "./kit.ts";
import { rulesUsed } from "./rules-used.ts";

export const coverSheet: SheetMaker = (context, head): Sheet => {
  const { plan, issue } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.cover)] : []),
    facts("cover-job", jobFacts(context)),
    caution(plan.verdict === "fail" ? "danger" : "warning", `**${verdictText(plan)}**`, frameNotChecked, notApproval),
    ...(plan.job.notes.length > 0 ? [heading("cover-notes-head", "Notes from the office"), list(...plan.job.notes)] : []),
    heading("cover-stop-head", "Stop work and ask when"),
    list(...stopConditions(context)),
    heading("cover-index-head", `Sheets of this issue (${issueName[issue].toLowerCase()})`),
    indexTable(context),
    revisionTable(context),
    ...checksBlocks(context),
    heading("cover-read-head", "How to read it"),
    list(...howToRead(context)),
    calibrationBar(),
    rulesTable(context),
    ...warningBlocks(context),
  ]);
};

function jobFacts(context: SheetContext): readonly (readonly [Text, Text, true?])[] {
  const { plan, issue, show, stamp } = context;
  const { identity, code, cable } = plan.job;
  const total = plan.sides.reduce((sum, side) => sum + side.length, 0);
  return [
    ["Job", `${identity.number} - ${identity.title}${identity.example ? " (EXAMPLE, invented)" : ""}`],
    ["Place", identity.place],
    ["Client", identity.client],
    ["Firm", identity.firm],
    ["Prepared, checked", `${identity.preparedBy}; checked by ${identity.checkedBy ?? "nobody yet"}`],
    ["Status", `${identity.status}, issued ${identity.issueDate}, surveyed ${identity.surveyDate}`],
    ["Issue", `${issueName[issue]}. ${issueReader[issue]}`],
    ["Code assumed", `${code.edition}, ${code.occupancy}; authority: ${code.authority}`],
    [
      "Guard",
      `${count(plan.sides.length, "side")}, ${show.feetBoth(total)} in all, ${count(postsOf(plan).length, "post")}, ${count(spacersOf(plan).length, "spacer")}`,
    ],
    [
      "Cables",
      `${count(plan.courses.length, "course")} in ${count(plan.runs.length, "run")}: ${count(plan.cables.length, "cable")}, ${cable.construction}, ${show.diameter(cable.diameter)}, stainless ${cable.grade}`,
    ],
    ["Datum", `${plan.job.frame.datum}. Every height is measured from here.`, true],
    ["Made from", `job file ${stamp.jobHash}, program version ${stamp.programVersion}`],
  ];
}

function stopConditions({ plan, show }: SheetContext): readonly Text[] {
  const { limits, spacers, posts } = plan.job;
  return [
    `a gap between cables, or to a rail or the deck, would be above **${show.tape(limits.cableSpacing_max.value)}** ${sourceMark(limits.cableSpacing_max.source)}`,
    `a free length of cable is above **${show.tape(spacers.free_max.value)}** ${sourceMark(spacers.free_max.source)}`,
    "a fitting that was bought does not fit its bore: measure the fittings before the first hole",
    "a bit meets metal, or a fastener is where a bore should go",
    `${posts.existing ? "a standing post" : "a post"} is loose, cracked, out of plumb, or moves when pushed by hand`,
    `a cable reads above its band in the log, or **${show.force(plan.target.workingLimit)}** (the working limit of the strand) would be reached`,
    "an end post leans or a rail bows while cables are tightened",
    "a wire of the strand is broken, or the sphere passes at the agreed force",
    "a hold point is not signed, or a question to the authority is open",
  ];
}

function indexTable({ index, plan }: SheetContext): Table {
  const revision = plan.job.identity.revisions.at(-1)?.mark ?? "0";
  return table({
    id: "cover-index",
    caption: "Sheet index: what is not listed here is not part of this issue",
    columns: [
      column("id", "Sheet", 0.13),
      column("name", "Name", 0.35),
      column("use", "For", 0.42),
      column("revision", "Rev.", 0.1, { align: "center" }),
    ],
    rows: index.map(({ id, name, use }) => [id, name, use, revision]),
    rowHeads: true,
  });
}

function revisionTable({ plan }: SheetContext): Table {
  return table({
    id: "cover-revisions",
    caption: "Revisions. Destroy older sets",
    columns: [column("mark", "Rev.", 0.1), column("date", "Date", 0.16), column("by", "By", 0.12), column("change", "Change", 0.62)],
    rows: plan.job.identity.revisions.map(({ mark, date, by, change }) => [bold(mark), date, by, change]),
  });
}

function checksBlocks(context: SheetContext): readonly Block[] {
  const { plan, show } = context;
  const advice = plan.checks.filter(({ verdict, advice: text }) => verdict !== "pass" && text !== "");
  return [
    heading("cover-checks-head", "Checks"),
    table({
      id: "cover-checks",
      caption: "What this program has checked. Ratio above 1 fails",
      columns: [
        column("name", "Check", 0.24),
        column("where", "Where", 0.18),
        column("demand", "Found", 0.09),
        column("limit", "Limit", 0.14),
        column("ratio", "Ratio", 0.06, { align: "right" }),
        column("verdict", "Verdict", 0.11),
        column("source", "Source", 0.18),
      ],
      rows: plan.checks.map((check) => [
        check.name,
        check.where,
        check.demand ? show.measure(check.demand) : "-",
        check.limit ? `${check.rule} ${show.measure(check.limit)}` : "-",
        check.ratio === null ? "-" : show.decimal(check.ratio, 2),
        verdictWord[check.verdict],
        sourcePlace(check.source, check.sourceWhere),
      ]),
      notes: advice.map((check) => `${check.name}: ${check.advice}`),
    }),
  ];
}

function howToRead(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const step = plan.job.limits.tapeStep;
  const last = String(plan.courses.length).padStart(2, "0");
  return [
    "Stand on the deck and look out: sides, posts, bays and runs count from left to right; left and right faces are meant so too.",
    `Courses count from the lowest (01) up to ${last}. R1-${last} is the cable of course ${last} in run R1; P1-${last} is its bore in post P1; S1 is a spacer; A1 is the first bay of side A.`,
    `Heights are from the datum to the middle of the bore, rounded once to ${show.tape(step.value)} ${sourceMark(step.source)}. Values in parentheses repeat the first one in the other unit. Never add printed lengths; do not scale drawings.`,
    "A mark in brackets such as [practice] says where the value comes from: [practice] is common practice without a source, [job] is stated in the job file, [memory] was not looked up.",
    `Blank boxes are filled in on site with ink: no erasing, one line through a wrong number, initials beside it.${context.home ? ` The words are explained on ${refer(context, "steps")}.` : ""}`,
    "Check the print: the bar below must measure 100 mm. If it does not, print again at 100 %.",
  ];
}

function rulesTable(context: SheetContext): Table {
  return table({
    id: "cover-rules",
    caption: "Rules used in this packet. Each can be changed in the job file",
    columns: [column("rule", "Rule", 0.4), column("value", "Value", 0.27), column("source", "Source", 0.33)],
    rows: rulesUsed(context).map(({ rule, value, source, where }) => [rule, value, sourcePlace(source, where)]),
  });
}

function warningBlocks({ plan }: SheetContext): readonly Block[] {
  return plan.warnings.length === 0
    ? []
    : [
        heading("cover-warnings-head", "What the program noticed"),
        list(...plan.warnings.map(({ what, why, fix }) => `**${what}**${why ? ` (${why})` : ""}: ${fix}`)),
      ];
}
