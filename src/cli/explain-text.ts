// How does an explanation look on the terminal: a number with its formula, its inputs, its source and its rounding?
import type { Answer, Askable, Line } from "../explain/explain.ts";
import { type Value, withNumbers } from "../explain/formula.ts";
import type { Input, Kind, Origin, Trace } from "../explain/trace.ts";
import { count as counted } from "../packet/sheets/kit.ts";
import { sources } from "../sources/sources.ts";
import {
  angleDegrees,
  decimal,
  feetInches,
  force,
  inches,
  lineLoad,
  moment,
  money,
  percent,
  sectionArea,
  sectionModulus,
  stress,
  temperature,
  turnStiffness,
} from "../units/print.ts";
import { roundDown, roundNearest } from "../units/round.ts";

/** As wide as most terminals are, at least. */
const WIDTH = 100;
const FIGURES = 6;
/** Less than that is dust of the arithmetic. */
const FINEST_places = 12;
/** From here on a length is read in feet. */
const LONG_mm = 2438.4;
const FINEST_in = 1 / 64;

export function answerText(answer: Exclude<Answer, { readonly kind: "unknown" }>): string {
  const lines = { trace: traceLines, value: valueLines, list: listLines } as const;
  switch (answer.kind) {
    case "trace":
      return joined(lines.trace(answer.trace));
    case "value":
      return joined(lines.value(answer));
    case "list":
      return joined(lines.list(answer));
  }
}

/** No sign that could steer the terminal. */
const joined = (lines: readonly string[]): string => `${lines.map((line) => line.trimEnd().replace(/[\p{Cc}\p{Cf}]/gu, "?")).join("\n")}\n`;

const LABEL = 10;

/** A label and its text, wrapped. */
function labelled(label: string, text: string): readonly string[] {
  return wrapped(text, WIDTH - LABEL).map((line, index) => `${(index === 0 ? label : "").padEnd(LABEL)}${line}`);
}

function traceLines(trace: Trace): readonly string[] {
  const { path, jsonPath, what, value, recomputed, kind, formula, inputs, functions = {}, origin } = trace;
  const terms = new Map(inputs.map(({ symbol, value: input }) => [symbol, bare(input)]));
  return [
    path,
    ...wrapped(what, WIDTH),
    "",
    ...labelled("value", valueText(value, kind)),
    ...(jsonPath === path ? [] : labelled("plan.json", jsonPath)),
    ...labelled("formula", formula),
    ...labelled("", `= ${withNumbers(formula, (symbol) => terms.get(symbol))}`),
    ...labelled("", `= ${valueText(recomputed, kind)}`),
    ...Object.entries(functions).flatMap(([name, { means }]) => labelled("", `${name}: ${means}`)),
    ...labelled("source", originText(origin)),
    ...labelled("rounding", trace.rounding ?? "none in the plan; a sheet rounds it once, when it prints it"),
    "",
    "where",
    ...inputs.flatMap(inputLines),
  ];
}

const INPUT = 40;

/** Symbol and number, what it is beside it, and below where it stands and comes from. */
function inputLines({ symbol, what, value, kind, paths, origin }: Input): readonly string[] {
  const left = wrapped(`${symbol} = ${listText(value, kind)}`, INPUT - 4);
  const place = paths.length === 0 ? "not kept in the plan" : pathsText(paths);
  const right = [what, place, ...(origin === null ? [] : [originText(origin)])].flatMap((text) => wrapped(text, WIDTH - INPUT));
  const rows = Math.max(left.length, right.length);
  return Array.from({ length: rows }, (_, index) => `  ${(left[index] ?? "").padEnd(INPUT - 2)}${right[index] ?? ""}`);
}

function pathsText(paths: readonly string[]): string {
  const different = [...new Set(paths)];
  return different.length <= 3 ? different.join(", ") : `${different[0]} to ${different.at(-1)}, ${different.length} in all`;
}

function valueLines({ line, jsonPath, origin, formula, near }: Extract<Answer, { readonly kind: "value" }>): readonly string[] {
  return [
    line.path,
    ...(line.what === "" ? [] : wrapped(line.what, WIDTH)),
    "",
    ...labelled("value", lineValue(line)),
    ...(jsonPath === line.path ? [] : labelled("plan.json", jsonPath)),
    ...(formula === "" ? [] : labelled("formula", `${formula}, as its check says`)),
    ...(origin === null ? [] : labelled("source", originText(origin))),
    ...(origin === null || origin.note === "" ? [] : labelled("note", origin.note)),
    "",
    ...(origin === null && near.length > 0 ? ["it has no explanation of its own; explained near it:", ...rowsOf(near)] : []),
  ];
}

const LIST_most = 400;

function listLines({ title, lines }: Extract<Answer, { readonly kind: "list" }>): readonly string[] {
  const more = lines.length > LIST_most ? [`  and ${lines.length - LIST_most} more: ask for a part`] : [];
  return [`${title}: ${counted(lines.length, "value")}`, "", ...rowsOf(lines.slice(0, LIST_most)), ...more];
}

const PATH_most = 62;

function rowsOf(lines: readonly Line[]): readonly string[] {
  const width = Math.min(PATH_most, Math.max(0, ...lines.map(({ path }) => path.length)) + 2);
  return lines.flatMap((line) => {
    const texts = wrapped(lineValue(line), WIDTH - 2 - width);
    // A path that is longer than its column stands on a line of its own.
    const own = line.path.length >= width ? [`  ${line.path}`] : [];
    return [...own, ...texts.map((text, index) => `  ${(index === 0 && own.length === 0 ? line.path : "").padEnd(width)}${text}`)];
  });
}

const lineValue = ({ value, kind }: Line): string =>
  typeof value === "number" && kind !== null ? valueText(value, kind) : `${value ?? "none"}`;

/** What can be asked, one line for each kind of number. */
export function askableText(rows: readonly Askable[], marks: readonly string[]): string {
  return joined([
    ...wrapped(`Marks: ${marks.join(", ")}`, WIDTH),
    "",
    ...wrapped(
      "Any path into plan.json, by marks (runs.R1) or counted from 0 (runs[0]). These numbers are traced; the first of each kind stands here:",
      WIDTH,
    ),
    "",
    ...rows.flatMap(({ example, what, places }) => {
      const name = what.replace(/\{\d?\}/g, "...");
      return [`  ${example}${places > 1 ? `  (${places})` : ""}`, ...wrapped(name, WIDTH - 6).map((line) => `      ${line}`)];
    }),
  ]);
}

/** Its mark, its name where it is a publication, the place in it, and how it was seen where it was not read itself. */
function originText({ source, where }: Origin): string {
  const { title, seen } = sources[source];
  const name = source === "derived" || source === "job" ? "" : title;
  const read = ["full text", "not published", "from memory"].includes(seen) ? "" : `seen: ${seen}`;
  return `[${source}] ${[name, where, read].filter((part) => part !== "").join("; ")}`;
}

/** Lines of words, each no wider than the space; a word that is wider stands alone. */
function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}

/** A number to six figures, without its unit. */
function figures(value: number): string {
  if (value === 0) return "0";
  const places = FIGURES - 1 - roundDown(Math.log10(Math.abs(value)), 1);
  return decimal(value, { decimals: Math.max(0, Math.min(FINEST_places, places)) });
}

const LIST_groups = 5;

/** In a formula: a negative number in brackets, equal numbers of a list together. */
function bare(value: Value): string {
  if (typeof value === "number") return value < 0 ? `(${figures(value)})` : figures(value);
  return `[${groupsOf(value).join(", ")}]`;
}

function groupsOf(values: readonly number[]): readonly string[] {
  const groups: { readonly text: string; count: number }[] = [];
  for (const value of values) {
    const text = figures(value);
    const last = groups.at(-1);
    if (last?.text === text) last.count += 1;
    else groups.push({ text, count: 1 });
  }
  const texts = groups.map(({ text, count }) => (count === 1 ? text : `${count} x ${text}`));
  return texts.length <= LIST_groups ? texts : [...texts.slice(0, LIST_groups - 1), `... ${values.length} in all`];
}

const listText = (value: Value, kind: Kind): string =>
  typeof value === "number" ? valueText(value, kind) : `${bare(value)} ${kind === "share" ? "" : unitOf[kind]}`.trimEnd();

const unitOf: Readonly<Record<Kind, string>> = {
  length: "mm",
  force: "N",
  angle: "rad",
  share: "",
  percent: "%",
  count: "",
  turns: "turns",
  frequency: "Hz",
  temperature: "deg C",
  warmth: "deg C",
  stress: "MPa",
  moment: "N mm",
  "turn stiffness": "N mm/rad",
  "axial stiffness": "N",
  "bending stiffness": "N mm2",
  flexibility: "mm/N",
  "line load": "N/mm",
  area: "mm2",
  "section modulus": "mm3",
  "second moment": "mm4",
  mass: "kg/m",
  "per length": "per mm",
  "per degree": "per deg C",
  "sum of force and length": "N mm",
  months: "months",
  money: "",
};

/** In the unit of the formulas, and in the other one or as it is read behind it. */
function valueText(value: number, kind: Kind): string {
  const other = otherText(value, kind);
  const own = kind === "money" ? money(value) : `${figures(value)} ${unitOf[kind]}`.trimEnd();
  return other === null ? own : `${own} (${other})`;
}

const inch = { both: false } as const;

const INCH_mm = 25.4;
/** Of a step: a length as near as this to it lies on it. */
const ON_share = 1e-6;
const isOn = (value: number, step: number): boolean => Math.abs(value - roundNearest(value, step)) < ON_share * step;

/** As a tape reads it where it lies on a mark, as so many threads to the inch where it is the pitch of one; else a decimal: no fraction that it is not. */
function inchText(value: number): string {
  const own = value / INCH_mm;
  if (isOn(own, FINEST_in)) return Math.abs(value) < LONG_mm ? inches(value, { step: FINEST_in }) : feetInches(value, { step: FINEST_in });
  const perInch = 1 / own;
  return own > 0 && own < 1 && isOn(perInch, 1) && perInch < MOST_threads
    ? `1/${figures(roundNearest(perInch, 1))}"`
    : `${figures(own)} in`;
}

/** The finest thread of a screw has no more to the inch. */
const MOST_threads = 100;

function otherText(value: number, kind: Kind): string | null {
  switch (kind) {
    case "length":
      return inchText(value);
    case "force":
    case "axial stiffness":
      return force(value, "inch", inch);
    case "angle":
      return angleDegrees(value);
    case "share":
      return percent(value, { decimals: 1 });
    case "temperature":
      return temperature(value, "inch").split(" (")[0] ?? null;
    case "stress":
      return stress(value, "inch", inch);
    case "moment":
      return moment(value, "inch", inch);
    case "turn stiffness":
      return turnStiffness(value, "inch", inch);
    case "area":
      return sectionArea(value, "inch", inch);
    case "section modulus":
      return sectionModulus(value, "inch", inch);
    case "line load":
      return lineLoad(value, "inch", inch);
    default:
      return null;
  }
}
