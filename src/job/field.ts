// How is one value of a job file read, and what does it say when it cannot be?
import { closest, distance } from "fastest-levenshtein";
import * as z from "zod";
import { undrawn } from "../tables/letters.ts";
import { isRefusal, quoted, type Reading, type Refusal, refuse, tidy } from "../units/notation.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { readForce, readLength } from "../units/read.ts";

/** What a value or a block is called and how one is written: for messages and for the documentation. */
export interface Word {
  readonly name: string;
  readonly example: string;
  /** A block with one line for each key is shown on lines of its own. */
  readonly isBlock?: true;
  /** The only words that it takes. */
  readonly options?: readonly string[];
  /** Least and greatest plausible value, as one would write them. */
  readonly from?: string;
  readonly to?: string;
}

const words = new WeakMap<object, Word>();

/** The word of a schema, looking through what is wrapped around it. */
export function wordOf(schema: z.ZodType): Word | undefined {
  let inner: z.ZodType | undefined = schema;
  while (inner !== undefined) {
    const word = words.get(inner);
    if (word !== undefined) return word;
    inner = unwrap(inner);
  }
  return undefined;
}

/** The schema inside an optional one, or undefined. */
export function unwrap(schema: z.ZodType): z.ZodType | undefined {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodExactOptional ? (schema.unwrap() as z.ZodType) : undefined;
}

function named<S extends z.ZodType>(schema: S, word: Word): S {
  words.set(schema, word);
  return schema;
}

/** A block of keys; any other key in it is a problem. */
export const block = <S extends z.ZodRawShape>(name: string, example: string, shape: S): z.ZodObject<S, z.core.$strict> =>
  named(z.strictObject(shape), { name, example, isBlock: true });

/** Blocks of several kinds, told apart by their key "kind". */
export const kinds = <S extends readonly [z.ZodObject, ...z.ZodObject[]]>(
  name: string,
  example: string,
  options: S,
): z.ZodDiscriminatedUnion<S> => named(z.discriminatedUnion("kind", options), { name, example, isBlock: true });

/** The key that tells kinds of a block apart. */
export const kind = <K extends string>(value: K): z.ZodLiteral<K> => named(z.literal(value), { name: "the kind", example: value });

export interface ListRange {
  readonly least: number;
  readonly most: number;
}

export const list = <S extends z.ZodType>(name: string, example: string, item: S, { least, most }: ListRange): z.ZodArray<S> =>
  named(
    z.array(item).check((ctx) => {
      const size = ctx.value.length;
      if (size >= least && size <= most) return;
      const message = size < least ? `${name} has too few entries: ${size}` : `${name} has too many entries: ${size}`;
      ctx.issues.push({
        code: "custom",
        input: ctx.value,
        message,
        params: { fix: `write ${least} to ${most} of them, for example ${example}` },
      });
    }),
    { name, example },
  );

export type Field<T> = z.ZodPipe<z.ZodString, z.ZodTransform<T, string>>;

/** A single value that `read` understands. */
export function field<T>(word: Word, read: (text: string) => Reading<T>): Field<T> {
  const schema = z.string().transform((text, ctx): T => {
    const reading = text.length > MOST_LETTERS ? tooLong(word, text) : text.trim() === "" ? nothing(word) : read(text);
    if (!isRefusal(reading)) return reading.value;
    ctx.issues.push({ code: "custom", input: text, message: reading.problem, params: { fix: reading.fix } });
    return z.NEVER;
  });
  return named(schema, word);
}

/** More than any value of a job needs; longer texts are not even looked at. */
const MOST_LETTERS = 300;

const tooLong = ({ name }: Word, text: string): Refusal =>
  refuse(`${name} has ${text.length} letters`, `shorten it to ${MOST_LETTERS} letters or fewer`);

const nothing = ({ name, example }: Word): Refusal => refuse(`${name} is empty`, `write it, for example ${example}`);

export interface RangeWord extends Word {
  readonly from: string;
  readonly to: string;
}

/** A length within what is plausible for it. */
export const lengthField = (word: RangeWord): Field<Mm> => ranged(word, readLength);

/** A force within what is plausible for it. */
export const forceField = (word: RangeWord): Field<Newton> => ranged(word, readForce);

/** Any quantity within what is plausible for it. */
export function ranged(word: RangeWord, read: (text: string) => Reading<number>): Field<number> {
  const [least, most] = [bound(read(word.from)), bound(read(word.to))];
  const isWithin = (value: number): boolean => value >= least && value <= most;
  return field(word, (text) => {
    const reading = read(text);
    if (isRefusal(reading) || isWithin(reading.value)) return reading;
    const isLess = reading.value < least;
    const what = `${quoted(text)} is ${isLess ? "less" : "more"} than ${isLess ? word.from : word.to}, the ${isLess ? "least" : "most"} for ${word.name}`;
    const near = otherUnit(text, read, isWithin);
    return refuse(what, near === null ? `check the number and its unit, for example ${word.example}` : `did you mean ${near}?`);
  });
}

function bound(reading: Reading<number>): number {
  if (isRefusal(reading)) throw new RangeError(`a limit of the program's own does not read: ${reading.problem}`);
  return reading.value;
}

/** Units that are mistaken for one another, the likeliest first. */
const mistaken: Readonly<Record<string, readonly string[]>> = {
  ft: ["in"],
  "'": ["in"],
  in: ["mm", "ft"],
  '"': ["mm", "ft"],
  mm: ["cm", "in", "m"],
  cm: ["mm", "m"],
  m: ["mm", "cm"],
  kn: ["N"],
  n: ["kN", "lbf"],
};

/** The same number with another unit, when that is plausible. */
function otherUnit(text: string, read: (text: string) => Reading<number>, isWithin: (value: number) => boolean): string | null {
  const [, number, unit = ""] = /^([\d./ -]*\d)\s*([a-z'"]+)$/i.exec(tidy(text)) ?? [];
  if (number === undefined) return null;
  const units = Object.hasOwn(mistaken, unit.toLowerCase()) ? (mistaken[unit.toLowerCase()] ?? []) : [];
  const guesses = units.map((other) => `${number} ${other}`);
  return (
    guesses.find((guess) => {
      const reading = read(guess);
      return !isRefusal(reading) && isWithin(reading.value);
    }) ?? null
  );
}

/** One of a few words; capitals do not matter. */
export function choice<const T extends string>(name: string, options: readonly T[]): Field<T> {
  const canonical = new Map(options.map((option) => [option.toLowerCase(), option]));
  return field({ name, example: options[0] ?? "", options }, (text): Reading<T> => {
    const plain = tidy(text);
    const value = canonical.get(plain.toLowerCase());
    if (value !== undefined) return { value };
    const near = nearest(plain, options);
    const choices = options.join(" | ");
    return refuse(
      `${quoted(text)} is no word for ${name}`,
      near === null ? `write one of: ${choices}` : `did you mean ${near}? It is one of: ${choices}`,
    );
  });
}

/** Share of its letters that may differ: two of the four of a word with two exchanged. */
const MOST_DIFFERENT_share = 0.5;

/** The option that is spelled most alike, when it is alike enough to be meant. */
export function nearest(text: string, options: readonly string[]): string | null {
  if (options.length === 0 || text.length > 60) return null;
  const plain = text.toLowerCase();
  const near = closest(plain, [...options]);
  const lower = options.find((option) => option.toLowerCase() === plain);
  if (lower !== undefined) return lower;
  return distance(plain, near.toLowerCase()) <= Math.max(1, near.length * MOST_DIFFERENT_share) ? near : null;
}

/** Free text on one line, accents joined to their letters; signs that no printer shows and letters that the sheets' font lacks are refused. */
export const textField = (name: string, example: string): Field<string> =>
  field({ name, example }, (text) => {
    const line = text.normalize("NFC").replace(/\s+/g, " ").trim();
    if (line.includes("\ufffd"))
      return refuse(
        `${name} holds a letter that was not saved as UTF-8`,
        "save the file as plain text in UTF-8, and write the letter again",
      );
    if (/[\p{Cc}\p{Cf}\p{Co}\p{Cs}]/u.test(line)) {
      return refuse(`${name} holds a sign that cannot be printed`, "write it again with letters, digits and common marks");
    }
    const [letter] = undrawn.exec(line) ?? [];
    if (letter === undefined) return { value: line };
    const fix =
      "write it with Latin letters; the accents of Europe are there, as in \u00e9, \u00f1, \u00f6, \u00e5, \u0142, \u010d, \u0151";
    return refuse(`${name} holds ${quoted(letter)}, which the font of the sheets lacks`, fix);
  });
