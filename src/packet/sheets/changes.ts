// Z-004: what has changed since the revision that was issued, and what if somebody worked from an old sheet?
import type { Change, Changes, Edition } from "../../changes/changes.ts";
import type { Block, Cell, Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction, peopleOf, verdictWord } from "../wording.ts";
import { redoWords } from "./change-redo.ts";
import { changeWords, markWords, todoName } from "./change-words.ts";
import {
  blank,
  bold,
  caution,
  column,
  count,
  facts,
  listed,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
} from "./kit.ts";

export const changesSheet: SheetMaker = (context, head): Sheet => {
  const { revised, home } = context;
  if (revised === undefined) throw new Error("a sheet of changes was asked for a job of which nothing was issued before");
  const { changes } = revised;
  return sheet(head, "landscape", [
    ...(home ? [prose(...introduction.changes)] : []),
    caution(
      "warning",
      `**Destroy every sheet of ${oldRevisions(changes)} before you go on.** Who bores from an old sheet bores into the wrong place.`,
    ),
    table({
      id: "changes-old",
      caption: `Sets of ${oldRevisions(changes)}`,
      columns: [
        column("sets", "Collected and destroyed, how many", 0.3),
        column("from", "From whom", 0.3),
        column("by", "By", 0.25),
        column("date", "Date", 0.15),
      ],
      rows: [[blank("sets"), blank(), blank(), blank()]],
      writeIn: true,
    }),
    facts("changes-facts", factRows(context, changes)),
    ...changeBlocks(context, changes),
    ...valueBlocks(changes),
    ...(context.issue === "permit"
      ? []
      : [
          prose("Everybody who works from this set has been told what changed."),
          signatures("changes-sign", home ? "You" : "Crew lead", home ? "Second person" : "Firm"),
        ]),
  ]);
};

/** "revision 0", "revisions 0 and A" */
const oldRevisions = ({ from, between }: Changes): Text =>
  between.length === 0 ? `revision ${from.revision}` : `revisions ${listed([from.revision, ...between])}`;

function factRows(context: SheetContext, changes: Changes): readonly (readonly [Text, Text, true?])[] {
  const { stamp, differing = [] } = context;
  const { from, to, between } = changes;
  const named = (how: string): Text =>
    differing
      .filter((one) => one.how === how)
      .map(({ id, name }) => `${bold(id)} ${name}`)
      .join(", ");
  return [
    ["Issued before", editionWords(from, stamp.issuedHash)],
    ["This set", editionWords(to, stamp.jobHash)],
    ...(between.length === 0
      ? []
      : ([["Between them", `revision ${listed(between)}: a set of it is not compared here, and is out of date as well`]] as const)),
    [
      "Changes",
      bold(
        changes.changes.length === 0 ? "none but revision and dates" : `${countChanges(changes)}, numbered 1 to ${changes.changes.length}`,
      ),
    ],
    ...(from.verdict === to.verdict ? [] : ([["Checks as a whole", `${bold(plainVerdict(to))}, was ${plainVerdict(from)}`]] as const)),
    ["Sheets that say something else", `${named("differs") || "none"}. Replace all others too: no two revisions lie about together.`],
    ...(named("new") === "" ? [] : ([["Sheets that are new", named("new")]] as const)),
    ...(named("gone") === "" ? [] : ([["Sheets that are gone", named("gone")]] as const)),
    [
      "How it was compared",
      `Both sets were worked out from their job files by program version ${stamp.programVersion}. If an old sheet names another version or another job file, compare it by hand.`,
    ],
  ];
}

/** On the cover: whoever finds fewer has missed one. */
export const changedWords = (context: SheetContext): Text =>
  context.revised === undefined
    ? ""
    : ` ${bold(`${countChanges(context.revised.changes)} since revision ${context.revised.changes.from.revision}: ${refer(context, "changes")}.`)}`;

const countChanges = ({ changes }: Changes): Text => count(changes.length, "change");

const plainVerdict = ({ verdict }: Edition): Text => verdictWord[verdict].replaceAll("**", "");

const editionWords = ({ revision, issueDate, status }: Edition, hash: string | undefined): Text =>
  `revision ${bold(revision)}, issued ${issueDate}, ${status}; job file ${hash ?? "not named"}`;

/** A number for each change, and a place to sign for each that may have to be redone. */
function changeBlocks(context: SheetContext, { changes }: Changes): readonly Block[] {
  if (changes.length === 0) return [];
  const isSigned = context.issue !== "permit";
  return [
    table({
      id: "changes-list",
      caption: "What changed, by what has to be done: what costs most when it is missed stands first",
      columns: [
        column("number", "No.", 0.045, { align: "right" }),
        column("todo", "To do", 0.085),
        column("marks", "What", 0.18),
        column("words", "Now, and before", 0.29),
        column("redo", "If it was done from an old sheet", 0.26),
        ...(isSigned ? [column("done", "Done, by", 0.08), column("date", "Date", 0.06)] : []),
      ],
      rows: changes.map((change): readonly Cell[] => [
        `${change.number}`,
        bold(todoName[change.todo]),
        markWords(change),
        changeWords(change, context),
        redoWords(change, context),
        ...(isSigned ? (change.todo === "read" ? ["-", "-"] : [blank(), blank()]) : []),
      ]),
      rowHeads: true,
      writeIn: true,
      notes: [...oldHoles(context, changes), ...newMarks(changes)],
    }),
  ];
}

/** What holds for every old hole. */
function oldHoles(context: SheetContext, changes: readonly Change[]): readonly Text[] {
  const { plan, show, home } = context;
  if (changes.every(({ left }) => left === undefined)) return [];
  const { value, source } = plan.job.limits.betweenBores_min;
  return [
    `Old holes: a new hole is too near where less than ${show.tape(value)} ${sourceMark(source)} is left between the two, or an old one lies under its washer. The checks of the frame (${refer(context, "frameChecks")}) count no hole that is not on ${refer(context, "bores")}. Tell ${peopleOf(home).office} of each: whoever accepts the frame must know, and decides between another post and a repair.`,
  ];
}

const newMarks = (changes: readonly Change[]): readonly Text[] =>
  changes.some(({ what }) => what === "renamed")
    ? ["Marks are those of the new sheets. A bore has the mark of its post in front: it changes with it."]
    : [];

/** Why it changed: what was written otherwise. */
function valueBlocks({ values }: Changes): readonly Block[] {
  if (values.length === 0) return [];
  return [
    table({
      id: "changes-values",
      caption: "What was written otherwise in the job file",
      columns: [column("key", "Where", 0.34), column("now", "Now", 0.33), column("before", "Before", 0.33)],
      rows: values.map(({ key, from, to }) => [key, bold(to ?? "not written"), from ?? "not written"]),
    }),
  ];
}
