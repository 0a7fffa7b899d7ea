// Which kinds of value does a job file hold, beside lengths and forces?
import { quoted, type Reading, refuse, tidy } from "../units/notation.ts";
import type { Celsius, Kilogram, Mm, Radian } from "../units/quantity.ts";
import { readLength, readMassPerLength, readPerLength } from "../units/read.ts";
import { readPitch, readTemperature, readWeight } from "../units/read-measured.ts";
import { readAngle, readDate, readMoney, readNumber, readShare, readYesNo } from "../units/read-plain.ts";
import { readThread, type Thread } from "../units/read-thread.ts";
import { type Field, field, ranged } from "./field.ts";

const MOST_NUMBER_LETTERS = 60;

/** Names that one of the systems a job may be built on keeps for itself. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/** The job number names a folder and is printed everywhere: letters, digits and single hyphens. */
export const jobNumber: Field<string> = field({ name: "the job number", example: "0001-porch-front" }, (text): Reading<string> => {
  const plain = text.trim();
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/i.test(plain)) {
    if (RESERVED.test(plain)) return refuse(`${quoted(text)} cannot name a folder everywhere`, `write job-${plain}`);
    if (plain.length <= MOST_NUMBER_LETTERS) return { value: plain };
    return refuse(`the job number has ${plain.length} letters`, `shorten it to ${MOST_NUMBER_LETTERS} or fewer; it names a folder`);
  }
  const clean = plain
    .replace(/[^a-z0-9]+/gi, "-")
    .replace(/^-|-$/g, "")
    .slice(0, MOST_NUMBER_LETTERS)
    .replace(/-$/, "");
  const fix = `use letters, digits and single hyphens, for example ${clean === "" ? "0001-porch-front" : clean}`;
  return refuse(`${quoted(text)} cannot name a folder`, fix);
});

export const dateField = (name: string): Field<string> => field({ name, example: "2026-04-02" }, readDate);

export const yesNo = (name: string): Field<boolean> => field({ name, example: "true" }, readYesNo);

export const thread: Field<Thread> = field({ name: "the thread", example: "1/4-28" }, readThread);

export const money = (name: string): Field<number> => field({ name, example: "12.50" }, readMoney);

export const massPerLength: Field<number> = ranged(
  { name: "the mass of the cable", example: "52 g/m", from: "5 g/m", to: "1 kg/m" },
  readMassPerLength,
);

export const perLength: Field<number> = ranged(
  { name: "the loss along a run", example: "0.0015 per m", from: "0 per m", to: "0.1 per m" },
  readPerLength,
);

/** To the right is an outside corner as seen from the deck looking out. */
export const turn: Field<Radian> = ranged(
  { name: "the turn of a side", example: "right 90 deg", from: "left 170 deg", to: "right 170 deg" },
  (text) => readAngle(text, { side: "must" }),
);

export const bearing: Field<Radian> = ranged({ name: "the bearing", example: "90 deg", from: "0 deg", to: "360 deg" }, (text) =>
  readAngle(text, { side: "must not" }),
);

export const smallAngle = (name: string): Field<Radian> =>
  ranged({ name, example: "3 deg", from: "0 deg", to: "45 deg" }, (text) => readAngle(text, { side: "must not" }));

export const cornerTurn = (name: string, example: string): Field<Radian> =>
  ranged({ name, example, from: "0 deg", to: "120 deg" }, (text) => readAngle(text, { side: "must not" }));

export interface NumberWord {
  readonly name: string;
  readonly example: string;
  readonly from: string;
  readonly to: string;
}

export const share = (word: NumberWord): Field<number> => ranged(word, readShare);

export const numberField = (word: NumberWord): Field<number> => ranged(word, readNumber);

export const warmth = (name: string, example: string): Field<Celsius> =>
  ranged({ name, example, from: "-50 C", to: "60 C" }, readTemperature);

export const pitch = (name: string): Field<number> => ranged({ name, example: "47.5 Hz", from: "2 Hz", to: "500 Hz" }, readPitch);

export const sampleWeight: Field<Kilogram> = ranged(
  { name: "the weight of the sample", example: "0.35 lb", from: "1 g", to: "100 kg" },
  readWeight,
);

/** A whole number. */
export const countField = (word: NumberWord): Field<number> =>
  ranged(word, (text) => {
    const reading = readNumber(text);
    if ("value" in reading && !Number.isInteger(reading.value)) {
      return refuse(`${quoted(text)} is not a whole number`, `write a whole number, for example ${word.example}`);
    }
    return reading;
  });

/** The two sizes of a member as written: the first along the side or thickness, the second square to it. */
export type SizeText =
  | { readonly kind: "nominal"; readonly name: string; readonly numbers: readonly [string, string] }
  | { readonly kind: "measured"; readonly sizes: readonly [Mm, Mm]; readonly isMetric: boolean };

const LEAST_SIZE_mm = 5;
const MOST_SIZE_mm = 600;

export const size = (name: string, example: string): Field<SizeText> =>
  field({ name, example }, (text): Reading<SizeText> => {
    const plain = tidy(text);
    const parts = plain.split(/\s*[x\u00d7]\s*/i);
    const [first = "", second = ""] = parts;
    const how = "write lumber as 4x4 or 2x6, anything else as 50 mm x 50 mm";
    if (parts.length === 3) {
      return refuse(
        `${quoted(text)} is not the size of a member`,
        `write the wall of a tube as a key of its own: size: ${first} x ${second} and wall: ${parts[2]}`,
      );
    }
    if (parts.length !== 2) return refuse(`${quoted(text)} is not the size of a member`, how);
    if (/^[\d/.]+$/.test(first) && /^[\d/.]+$/.test(second)) {
      return { value: { kind: "nominal", name: `${first}x${second}`, numbers: [first, second] } };
    }
    // "50 x 50 mm" leaves out the first unit.
    const unit = /[a-z'"]+\.?$/i.exec(second)?.[0] ?? "";
    const width = readLength(/[a-z'"]$/i.test(first) ? first : `${first} ${unit}`);
    const depth = readLength(second);
    if ("problem" in width) return refuse(`${quoted(text)} is not the size of a member: ${width.problem}`, how);
    if ("problem" in depth) return refuse(`${quoted(text)} is not the size of a member: ${depth.problem}`, how);
    const sizes = [width.value, depth.value] as const;
    if (sizes.some((length) => length < LEAST_SIZE_mm)) {
      return refuse(
        `${quoted(text)} is too small for ${name}`,
        `a member is at least ${LEAST_SIZE_mm} mm thick; check the number and its unit`,
      );
    }
    if (sizes.some((length) => length > MOST_SIZE_mm)) {
      return refuse(`${quoted(text)} is too large for ${name}`, `a member is at most ${MOST_SIZE_mm} mm; check the number and its unit`);
    }
    return { value: { kind: "measured", sizes, isMetric: /m$/i.test(unit) } };
  });
