// Z-001: what is this packet, what does it rest on, how is it read, and when must the work stop?
import { revisionOf } from "../../job/identity.ts";
import type { Check, Verdict } from "../../plan/plan.ts";
import type { Problem } from "../../problem/problem.ts";
import { percent } from "../../units/print.ts";
import { calibrationBar } from "../drawings/calibration-bar.ts";
import { FRAME_SHEET, frameFails, frameWords, isBeyond, ratioText } from "../frame-verdict.ts";
import { catalogue, issueName, issueReader, ownSheets } from "../issues.ts";
import type { Block, Cell, Sheet, Table, Text } from "../packet.ts";
import { sourcePlace } from "../show-number.ts";
import { introduction, notApproval, peopleOf, verdictText, verdictWord } from "../wording.ts";
import { changedWords } from "./changes.ts";
import { howToRead } from "./how-to-read.ts";
import {
  bold,
  caution,
  column,
  count,
  facts,
  groupBy,
  heading,
  list,
  listed,
  minor,
  postsOf,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  sideBySide,
  spacersOf,
  table,
  unique,
} from "./kit.ts";
import { pullsTable } from "./pulls.ts";
import { rulesTable } from "./rules-used.ts";
import { stopConditions } from "./stop-conditions.ts";

export const coverSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.cover)] : []),
    facts("cover-job", jobFacts(context)),
    caution(
      plan.verdict === "fail" ? "danger" : "warning",
      `**${verdictText(plan)}**`,
      frameFails(plan) ? notApproval : `${frameWords(plan)} ${notApproval}`,
    ),
    ...openBlocks(context),
    heading("cover-stop-head", "Stop work and ask when"),
    list(...stopConditions(context)),
    pullsTable(context, "cover-pulls"),
    { ...calibrationBar(), title: "Check of the print: if the bar does not measure 100 mm, print again at 100 %" },
    indexTable(context),
    ...(context.whole ? [checksTable(context)] : []),
    ...(context.rules ? [rulesTable(context)] : []),
  ]);
};

function jobFacts(context: SheetContext): readonly (readonly [Text, Text, true?])[] {
  const { plan, issue, show, stamp } = context;
  const { identity, code, cable } = plan.job;
  const total = plan.sides.reduce((sum, side) => sum + side.length, 0);
  return [
    ["Job, client", `${bold(`${identity.number} - ${identity.title}`)}; ${identity.client}`],
    ...(context.whole ? ([["Place", identity.place]] as const) : []),
    [
      "Status",
      `${bold(identity.status)}, issued ${identity.issueDate}, surveyed ${identity.surveyDate}${identity.checkedBy === null ? `; ${bold("not checked")}` : ""}`,
    ],
    ...(context.whole ? ([["Issue", `${issueName[issue]}. ${issueReader[issue]}`]] as const) : []),
    ["Code assumed", `${code.edition}, ${code.occupancy}${context.whole ? `; authority: ${code.authority}` : ""}`],
    [
      "Guard",
      `${count(plan.sides.length, "side")}, ${show.feetBoth(total)} in all${plan.rakes.length === 0 ? "" : " (level)"}, ${count(postsOf(plan).length, "post")}, ${count(spacersOf(plan).length, "spacer")}`,
    ],
    [
      "Cables",
      `${count(plan.courses.length, "course")} in ${count(plan.runs.length, "run")}: ${count(plan.cables.length, "cable")}, ${cable.construction}, ${show.diameter(cable.diameter)}, stainless ${cable.grade}`,
    ],
    ["Datum", `${bold(plan.job.frame.datum)}. Every height is measured from here${plan.rakes.length === 0 ? "" : ", plumb"}.`],
    ...(context.whole ? ([["Made from", `job file ${stamp.jobHash}, program version ${stamp.programVersion}`]] as const) : []),
    [
      "Revisions",
      `${identity.revisions.map(({ mark, date, by, change }) => `${bold(mark)}, ${date}, ${by}: ${change}`).join("; ")}. Destroy older sets.${changedWords(context)}`,
    ],
  ];
}

/** What is open before the work may begin: checks that do not pass, and what the program noticed. */
function openBlocks(context: SheetContext): readonly Block[] {
  const { plan } = context;
  const open = plan.checks.filter((check) => check.verdict !== "pass" && !isOfFrame(check));
  const asked = groupBy(open, ({ name, verdict, advice }) => `${name}\n${verdict}\n${advice}`).map(
    ([first, ...others]) => `${openWord(first, context)}: ${first.name}${placesOf([first, ...others])}${after(first.advice)}`,
  );
  return [
    heading("cover-open-head", `Open before the work: ${tally(context)}`),
    ...(isIssued(plan.job.identity.status) ? [prose("**Do not bore before H0 and H1 are signed.**")] : []),
    list(
      ...frameOpen(context),
      ...asked,
      ...noticed(plan.warnings),
      ...plan.job.notes.map((note) => `${bold("From the office")}: ${note}`),
    ),
  ];
}

const isOfFrame = ({ id }: Check): boolean => id.startsWith("frame-");

/** What fails of the frame in one line, what nobody here can answer in another. */
function frameOpen(context: SheetContext): readonly Text[] {
  const { plan } = context;
  const having = (verdict: Verdict): readonly Check[] => plan.checks.filter((check) => isOfFrame(check) && check.verdict === verdict);
  const [failing, asked] = [having("fail"), having("ask")];
  return [
    ...(failing.length === 0
      ? []
      : [
          `${verdictWord.fail}: the frame, ${failing.map(({ name, where, ratio }) => `${name} (${where}, ratio ${ratioText(ratio ?? 0)})`).join("; ")}: ${FRAME_SHEET}`,
        ]),
    ...(asked.length === 0
      ? []
      : [
          `**to be decided** (engineer): ${unique(asked.map(({ name }) => name)).join(", ")}: demands on ${FRAME_SHEET}, no capacity is known`,
        ]),
  ];
}

const isIssued = (status: Text): boolean => ["for construction", "as built"].includes(status);

/** Every check is counted once. */
function tally({ plan, whole }: SheetContext): Text {
  const having = (verdict: Verdict): number => plan.checks.filter((check) => check.verdict === verdict).length;
  const parts: readonly (readonly [number, Text])[] = [
    [having("fail"), "fail"],
    [having("ask"), "to be asked or decided"],
    [having("not checked"), "not checked"],
  ];
  const others = parts.filter(([number]) => number > 0).map(([number, words]) => `, ${number} ${words}`);
  return `of ${count(plan.checks.length, "check")} ${having("pass")} pass${others.join("")} (${whole ? "listed below" : "the permit issue lists them"})`;
}

/** Warnings that ask for the same thing stand together. */
const noticed = (warnings: readonly Problem[]): readonly Text[] =>
  unique(warnings.map(({ fix }) => fix)).map((fix) => {
    const same = warnings.filter((each) => each.fix === fix);
    return `${same.map(({ what, why }) => `${bold(what)}${why ? ` (${why})` : ""}`).join("; ")}: ${fix}`;
  });

function placesOf(checks: readonly Check[]): Text {
  const places = checks.map(({ where }) => where).filter((where) => where !== "whole guard");
  return places.length === 0 ? "" : ` (${places.join("; ")})`;
}

/** A limit is exceeded, yet the plan may stand: whoever knows the wood or the thread decides. */
const isAbove = ({ verdict, ratio }: Check): boolean => verdict === "ask" && ratio !== null && ratio > 1;

function openWord(check: Check, { home }: Pick<SheetContext, "home">): Text {
  const word = isAbove(check) ? "**above its limit: decide before boring**" : verdictWord[check.verdict];
  const who = decider(check, home);
  return check.verdict === "ask" && who !== AUTHORITY
    ? `**${isAbove(check) ? "above its limit: decide before boring" : "to be decided"}** (${who})`
    : word;
}

const AUTHORITY = "authority";
/** The table of checks has the same words in every issue. */
const FOR_ALL = { home: false } as const;

/** Washers, bends and thread are no matter of the authority. */
function decider({ id }: Check, home: boolean): Text {
  if (["bearing-", "bend-", "bushing-", "frame-"].some((kind) => id.startsWith(kind))) return "engineer";
  return id.startsWith("thread-") ? peopleOf(home).office : AUTHORITY;
}

const after = (advice: Text): Text => (advice === "" ? "" : `: ${advice}`);

/** Under the index stands how the sheets are read. */
function indexTable(context: SheetContext): Table {
  const { index, plan, issue } = context;
  const isWhole = index.some(({ key }) => !catalogue[key].issues.includes(issue));
  const columns = [column("id", "Sheet", 0.1), column("name", "Name and use", 0.4)];
  const own = index.some(({ key }) => key === "bores") ? Object.values(ownSheets) : [];
  const rows = [...index, ...own.map((head) => ({ ...head, use: `${head.use}; a file for each paper` }))]
    .toSorted((a, b) => (a.id < b.id ? -1 : 1))
    .map(({ id, name, use }) => [bold(id), `${bold(name)}: ${use}`]);
  return table({
    id: "cover-index",
    caption: isWhole
      ? `All sheets, in the words of the ${issueName[issue].toLowerCase()}, all at revision ${revisionOf(plan.job.identity)}: an issue on paper holds the part of them that its own cover lists`
      : `Sheets of the ${issueName[issue].toLowerCase()}, all at revision ${revisionOf(plan.job.identity)}: what is not listed here is not part of it`,
    ...sideBySide(columns, rows, 2),
    rowHeads: true,
    notes: howToRead(context),
  });
}

/** Thread is finer than a tape, and so is a bit; what is left between blind holes is printed as the detail prints it. */
const FINE = { "thread-": "travel", "face-pilot-": "diameterOne", "face-between-": "tapeDown" } as const;
const fineKey = (id: string): (typeof FINE)[keyof typeof FINE] | null =>
  Object.entries(FINE).find(([head]) => id.startsWith(head))?.[1] ?? null;

function checksTable(context: SheetContext): Table {
  const { plan, show } = context;
  /** A capacity is never printed too large, nor a demand too small; the greatest reading as the log allows it. */
  const print = (check: Check, which: "demand" | "limit"): Text => {
    const [measure, fine] = [check[which], fineKey(check.id)];
    if (measure === null) return "-";
    const isDemand = (which === "demand") === (check.rule === "at most") && !(which === "demand" && check.id.startsWith("strand-"));
    return fine !== null && measure.kind === "length" ? show[fine](measure.value) : show.measure(measure, isDemand ? "up" : "down");
  };
  return table({
    id: "cover-checks",
    caption: "What was checked. A ratio above 1 is not met: it fails, or must be decided before boring",
    columns: [
      column("name", "Check", 0.22),
      column("where", "Where", 0.135),
      column("demand", "Found", 0.115),
      column("limit", "Limit", 0.135),
      column("ratio", "Ratio", 0.06, { align: "right" }),
      column("verdict", "Verdict", 0.1),
      column("source", "Source", 0.235),
    ],
    rows: [
      ...plan.checks
        .filter((check) => !isOfFrame(check))
        .map((check) => [
          check.name,
          minor(check.where),
          print(check, "demand"),
          check.limit ? `${check.rule} ${print(check, "limit")}` : "-",
          check.ratio === null ? "-" : show.decimal(check.ratio, 2),
          openWord(check, FOR_ALL),
          minor(sourcePlace(check.source, check.sourceWhere)),
        ]),
      ...frameRow(context),
    ],
  });
}

/** The worst first: one that fails, or must be asked, decides about all. */
const verdictOrder: readonly Verdict[] = ["fail", "ask", "not checked", "pass"];

/** All checks of the frame: the highest ratio of those that compare, and how many demands somebody else must compare. */
function frameRow({ plan, show }: SheetContext): readonly (readonly Cell[])[] {
  const checks = plan.checks.filter(isOfFrame);
  const compared = checks.filter(({ ratio }) => ratio !== null);
  const asked = checks.filter(({ ratio }) => ratio === null);
  const worst = compared.reduce<Check | undefined>((most, one) => ((one.ratio ?? 0) > (most?.ratio ?? 0) ? one : most), undefined);
  const verdict = verdictOrder.find((each) => compared.some((check) => check.verdict === each));
  const ratio = worst?.ratio ?? 0;
  return [
    ...(worst === undefined || verdict === undefined
      ? []
      : [
          [
            `Frame: ${count(compared.length, "check")}, each on ${FRAME_SHEET}; the highest ratio`,
            minor(`${worst.where}: ${worst.name}`),
            isBeyond(ratio) ? "-" : percent(ratio, { rounding: "up" }),
            `at most ${show.percent(1)}`,
            ratioText(ratio),
            verdictWord[verdict],
            minor(sourcePlace(worst.source, worst.sourceWhere)),
          ],
        ]),
    ...(asked.length === 0
      ? []
      : [
          [
            `Frame: ${count(asked.length, "demand")} with nothing here to compare with, each on ${FRAME_SHEET}`,
            minor(listed(unique(asked.map(({ name }) => name)))),
            "-",
            "-",
            "-",
            "**to be decided** (engineer)",
            minor(FRAME_SHEET),
          ],
        ]),
  ];
}
