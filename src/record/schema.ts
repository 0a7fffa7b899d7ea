// What may a record file contain? Each block with its keys, as people write them down from the sheets.
import { exactOptional as maybe, type output } from "zod";
import { block, forceField, lengthField, list, ranged, textField } from "../job/field.ts";
import { dateField, jobNumber, numberField, warmth } from "../job/fields.ts";
import { isRefusal, quoted, type Reading, refuse } from "../units/notation.ts";
import type { Mm } from "../units/quantity.ts";
import { readLength } from "../units/read.ts";

const MOST_LISTED = 500;
/** 166 uprights with 30 courses each. */
export const MOST_MARKS = 5000;
const reading = (name: string) => forceField({ name, example: "245 lbf", from: "0 N", to: "50 kN" });
const boreHeight = (name: string) => lengthField({ name, example: "20-3/8 in", from: "0 in", to: "4 m" });
const outOfPlumb = (name: string) => ranged({ name, example: "1/16 in", from: "300 mm other way", to: "300 mm" }, readOutOfPlumb);
const bore = block("a bore as it was made", "{ mark: P3-05, height: 20-3/8 in }", {
  mark: textField("the mark of a bore", "P3-05"),
  height: maybe(boreHeight("the height of a bore")),
  left: maybe(boreHeight("the height on the left face")),
  right: maybe(boreHeight("the height on the right face")),
});

/** `1/16 in` the way the cables pull, `1/16 in other way` against it (negative) -> mm */
function readOutOfPlumb(text: string): Reading<Mm> {
  const against = /^(.*\S),?\s+(?:the )?other way$/i.exec(text.trim())?.[1];
  if (/^(?:-|minus\b)/i.test(text.trim()))
    return refuse(`${quoted(text)} is negative`, "write it without the minus and say the other way: 1/16 in other way");
  const off = readLength(against ?? text);
  return isRefusal(off) || against === undefined ? off : { value: 0 - off.value };
}

const end = block("an end that was tightened", "{ post: P1, last: 245 lbf, turns: 6.5, thread left: 1/2 in }", {
  post: textField("the post of an end", "P1"),
  last: reading("the last reading"),
  turns: maybe(numberField({ name: "the turns of the nut", example: "6.5", from: "0", to: "400" })),
  "thread left": maybe(lengthField({ name: "the thread that is left", example: "1/2 in", from: "0 in", to: "300 mm" })),
});

const cable = block("a cable as it was built", "{ mark: R1-05, proof: 231 lbf }", {
  mark: textField("the mark of a cable", "R1-05"),
  length: maybe(lengthField({ name: "the length of the cable", example: "24 ft 2 in", from: "1 in", to: "100 m" })),
  lot: maybe(textField("the lot or spool", "S-17")),
  passes: maybe(list("the readings of the passes", "[130 lbf, 245 lbf]", reading("the reading of a pass"), { least: 1, most: 12 })),
  ends: maybe(list("the ends of a cable", "[{ post: P1, last: 245 lbf }]", end, { least: 1, most: 2 })),
  proof: maybe(reading("the reading of the proof")),
  initials: maybe(textField("the initials", "RT")),
});

const post = block("a post before and after", "{ post: P1, before: 0 in, after: 1/16 in }", {
  post: textField("the mark of a post", "P1"),
  before: outOfPlumb("out of plumb before"),
  after: outOfPlumb("out of plumb after"),
  note: maybe(textField("the note", "shimmed at the foot")),
});

const deviation = block(
  "a deviation",
  "{ mark: P3-05, planned: 20-1/4 in, built: 20-3/8 in, why: knot, accepted by: H. Marram, date: 2026-05-12 }",
  {
    mark: textField("the mark", "P3-05"),
    planned: textField("what was planned", "20-1/4 in"),
    built: textField("what was built", "20-3/8 in"),
    why: textField("the reason", "a knot"),
    "accepted by": textField("who accepted it", "H. Marram"),
    date: dateField("the date of acceptance"),
  },
);

const lot = block("a lot", "{ item: cable, lot: S-17 }", {
  item: textField("the item", "cable"),
  lot: textField("the lot or spool number", "S-17"),
  certificate: maybe(textField("the certificate", "no. 118 of 2026-03-30")),
  from: maybe(textField("the seller", "Amberfold Marine (invented)")),
});

const head = block("the record block", "{ job: 0001-porch-front, revision: 0, written by: R. Teasel }", {
  job: jobNumber,
  revision: textField("the revision that was built from", "0"),
  "written by": textField("who wrote the record", "R. Teasel"),
  gauge: maybe(textField("the gauge", "no. 12, checked 2026-05-02")),
  temperature: maybe(warmth("the temperature at the last readings", "68 F")),
});

const closing = block("the closing block", "{ completed: 2026-05-20 }", {
  inspection: maybe(textField("the inspection", "permit 77, passed 2026-05-19")),
  completed: maybe(dateField("the date of completion")),
  "keep until": maybe(dateField("the date until which this is kept")),
  "open items": maybe(textField("the open items", "none")),
});

const listed = { least: 1, most: MOST_LISTED };
const marked = { least: 1, most: MOST_MARKS };

export const recordFile = block("the record", "", {
  record: head,
  bores: maybe(list("the list of bores", "[{ mark: P3-05, height: 20-3/8 in }]", bore, marked)),
  cables: maybe(list("the list of cables", "[{ mark: R1-05, proof: 231 lbf }]", cable, marked)),
  posts: maybe(list("the list of posts", "[{ post: P1, before: 0 in, after: 1/16 in }]", post, listed)),
  deviations: maybe(list("the list of deviations", "[{ mark: P3-05, ... }]", deviation, listed)),
  lots: maybe(list("the list of lots", "[{ item: cable, lot: S-17 }]", lot, listed)),
  closing: maybe(closing),
});

export type RecordFile = output<typeof recordFile>;
