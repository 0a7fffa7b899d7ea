// What has changed in what is cut, bought and borrowed?
import type { Job } from "../job/job.ts";
import type { CutPiece, OrderLine, ToolLine } from "../plan/purchase.ts";
import { length } from "../units/print.ts";
import { SAME_rad } from "../units/tolerance.ts";
import type { Pair } from "./align.ts";
import type { Draft } from "./changes.ts";
import { numberDiffers, wordDiffers } from "./differences.ts";
import type { Match } from "./match.ts";

export const shopChanges = ({ before, after, same }: Match): readonly Draft[] => [
  ...pairsOf(before.cuts, after.cuts, [(piece) => pieceKey(piece), ({ mark }) => mark]).flatMap((pair) => partChange(pair, same)),
  ...pairsOf(before.order, after.order, [(line) => itemName(line, after.job)]).flatMap((pair) => itemChange(pair, after.job)),
  ...pairsOf(before.tools, after.tools, [toolName, ({ step, item }) => `${step}: ${item}`]).flatMap(toolChange),
];

/** Pairs by the first key; what it leaves alone by the next one. What is new stands behind. */
function pairsOf<T>(before: readonly T[], after: readonly T[], keys: readonly ((item: T) => string)[]): readonly Pair<T>[] {
  const known = new Map<T, T>();
  const taken = new Set<T>();
  for (const keyOf of keys) {
    for (const old of before.filter((one) => !known.has(one))) {
      const now = after.find((one) => !taken.has(one) && keyOf(one) === keyOf(old));
      if (now === undefined) continue;
      known.set(old, now);
      taken.add(now);
    }
  }
  return [
    ...before.map((old) => ({ before: old, after: known.get(old) ?? null })),
    ...after.filter((one) => !taken.has(one)).map((now) => ({ before: null, after: now })),
  ];
}

const whatOf = ({ before, after }: Pair<unknown>): Draft["what"] => (before === null ? "added" : after === null ? "removed" : "changed");

/** The same part under whatever mark. */
const pieceKey = ({ use, sectionName, material, length, cutAngle }: CutPiece): string =>
  JSON.stringify([use, sectionName, material, length, cutAngle]);

function partChange(pair: Pair<CutPiece>, same: number): readonly Draft[] {
  const { before: old, after: now } = pair;
  const piece = now ?? old;
  if (piece === null) return [];
  const words = (read: (one: CutPiece) => string): readonly [string | null, string | null] => [old && read(old), now && read(now)];
  const measured = [
    ...(old === null || now === null ? [] : wordDiffers("mark", [old.mark, now.mark])),
    ...wordDiffers(
      "section",
      words(({ sectionName, material }) => `${sectionName}, ${material}`),
    ),
    ...numberDiffers("length", [old?.length, now?.length], { kind: "station", same }),
    ...(old === null || now === null
      ? []
      : numberDiffers("cut off square", [old.cutAngle, now.cutAngle], { kind: "angle", same: SAME_rad })),
    ...numberDiffers("number", [old?.count, now?.count], { kind: "count" }),
  ];
  // Its words hold its lengths and angles again.
  const differences =
    measured.length > 0
      ? measured
      : wordDiffers(
          "part",
          words(({ use }) => use),
        );
  if (differences.length === 0) return [];
  const isName = differences.every(({ of }) => of === "mark");
  return [{ todo: isName ? "mark" : "cut", subject: "part", what: isName ? "renamed" : whatOf(pair), marks: [piece.mark], differences }];
}

/** Lumber has its length in its size, a cable beside it. */
function itemName({ group, item, size, pieceLength }: OrderLine, { units }: Pick<Job, "units">): string {
  const long = group === "lumber and tube" || pieceLength === null ? [] : [length(pieceLength, { units, style: "feet", both: false })];
  return [item, ...(size === "" ? [] : [size]), ...long].join(", ");
}

function itemChange(pair: Pair<OrderLine>, job: Pick<Job, "units">): readonly Draft[] {
  const { before: old, after: now } = pair;
  const line = now ?? old;
  const differences = numberDiffers("order", [old?.quantity, now?.quantity], { kind: "count" });
  return line === null || differences.length === 0
    ? []
    : [{ todo: "buy", subject: "item", what: whatOf(pair), marks: [itemName(line, job)], differences }];
}

const toolName = ({ item, size }: ToolLine): string => (size === "" ? item : `${item}, ${size}`);

/** What it is told to show, or to fit, may be another. */
function toolChange(pair: Pair<ToolLine>): readonly Draft[] {
  const { before: old, after: now } = pair;
  const tool = now ?? old;
  if (tool === null) return [];
  const differences =
    old === null || now === null ? wordDiffers("step", [old?.step ?? null, now?.step ?? null]) : wordDiffers("size", [old.size, now.size]);
  if (differences.length === 0) return [];
  return [{ todo: now === null ? "read" : "buy", subject: "tool", what: whatOf(pair), marks: [toolName(tool)], differences }];
}
