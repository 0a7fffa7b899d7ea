// What does a record file say, and what is wrong with it by itself? Text -> AsBuilt and all problems at once.
import { type BlocksOf, readFileText } from "../job/read-file.ts";
import { wrong } from "../job/wrong.ts";
import type { Outcome, Problem } from "../problem/problem.ts";
import { type AsBuilt, type BuiltBore, type BuiltCable, KEPT_years } from "./as-built.ts";
import { MOST_MARKS, type RecordFile, recordFile } from "./schema.ts";

/** Each bore of the longest guard takes a line. */
const room = { name: "record", letters: 500_000, entries: MOST_MARKS };

/** Reads the record of one job; whether its marks are those of the plan is asked by `compareRecord`. */
export function parseRecord(text: string): Outcome<AsBuilt> {
  const { value, problems } = readFileText(text, {
    schema: recordFile,
    holds: "record",
    copy: "the example record",
    room,
    check: checkBlocks,
  });
  return value === undefined ? { value: undefined, problems } : { value: asBuiltOf(value), problems };
}

const checkBlocks = ({ bores = [], closing = {} }: BlocksOf<RecordFile>): readonly Problem[] => [
  ...checkHeights(bores),
  ...checkClosing(closing),
];

/** Days are written so that their letters are in their order. */
const checkClosing = ({ completed, "keep until": keepUntil }: NonNullable<RecordFile["closing"]>): readonly Problem[] =>
  completed === undefined || keepUntil === undefined || keepUntil > completed
    ? []
    : [
        wrong(
          ["closing", "keep until"],
          `the record would be kept until ${keepUntil}, and the work was completed on ${completed}`,
          "correct one of the two dates",
        ),
      ];

const checkHeights = (bores: NonNullable<RecordFile["bores"]>): readonly Problem[] =>
  bores.flatMap(({ mark, height, left, right }, index) => {
    const hasBoth = left !== undefined && right !== undefined;
    const hasOne = left !== undefined || right !== undefined;
    if (height !== undefined ? !hasOne : hasBoth) return [];
    return [
      wrong(
        ["bores", index],
        `the bore ${mark} has ${height === undefined ? "no height" : "one height too many"}`,
        "write its height, or on a slope its heights on both faces: left and right",
      ),
    ];
  });

const asBuiltOf = ({ record, bores = [], cables = [], posts = [], deviations = [], lots = [], closing = {} }: RecordFile): AsBuilt => ({
  jobNumber: record.job,
  revision: record.revision,
  writtenBy: record["written by"],
  gauge: record.gauge ?? "",
  temperature: record.temperature ?? null,
  bores: bores.map(boreOf),
  cables: cables.map(cableOf),
  posts: posts.map(({ post, before, after, note = "" }) => ({ postId: post, before, after, note })),
  deviations: deviations.map(({ "accepted by": acceptedBy, ...deviation }) => ({ ...deviation, acceptedBy })),
  lots: lots.map(({ item, lot, certificate = "", from = "" }) => ({ item, lot, certificate, from })),
  closing: {
    inspection: closing.inspection ?? "",
    completed: closing.completed ?? "",
    keepUntil: closing["keep until"] ?? keptUntil(closing.completed ?? ""),
    isKeepDefault: closing["keep until"] === undefined && closing.completed !== undefined,
    openItems: closing["open items"] ?? "",
  },
});

/** The same day so many years later; a leap day that is not there is the day before. */
function keptUntil(completed: string): string {
  if (completed === "") return "";
  const year = Number(completed.slice(0, 4)) + KEPT_years;
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const day = completed.slice(4);
  return `${year}${day === "-02-29" && !isLeap ? "-02-28" : day}`;
}

const boreOf = ({ mark, height, left, right }: NonNullable<RecordFile["bores"]>[number]): BuiltBore => ({
  mark,
  height: height ?? null,
  left: left ?? null,
  right: right ?? null,
});

const cableOf = (cable: NonNullable<RecordFile["cables"]>[number]): BuiltCable => ({
  mark: cable.mark,
  length: cable.length ?? null,
  lot: cable.lot ?? "",
  passes: cable.passes ?? [],
  ends: (cable.ends ?? []).map(({ post, last, turns = null, "thread left": threadLeft = null }) => ({
    postId: post,
    last,
    turns,
    threadLeft,
  })),
  proof: cable.proof ?? null,
  initials: cable.initials ?? "",
});
