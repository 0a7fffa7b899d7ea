// How is a number that somebody wrote taken apart without losing a digit?

/** What was read, or what was wrong with it and what to write instead. */
export type Reading<T> = { readonly value: T } | Refusal;

export interface Refusal {
  readonly problem: string;
  readonly fix: string;
}

export const isRefusal = <T>(reading: Reading<T>): reading is Refusal => "problem" in reading;

export const refuse = (problem: string, fix: string): Refusal => ({ problem, fix });

/** A decimal number as two whole ones: 6.25 is 625 over 100. */
export interface Decimal {
  readonly digits: number;
  readonly scale: number;
}

/** "6.25" or ".5" -> its digits; null for anything else, and for more digits than a double holds on the way to mm. */
export function readDecimal(text: string): Decimal | null {
  const match = /^(\d*)(?:\.(\d+))?$/.exec(text);
  const [whole = "", part = ""] = match?.slice(1) ?? [];
  const written = (whole + part).replace(/^0+(?=\d)/, "");
  if (match === null || written === "" || written.length > MOST_DIGITS || part.length > MOST_DECIMALS) return null;
  return { digits: Number(written), scale: 10 ** part.length };
}

/** Nothing on a site is known to more; beyond, the whole-number arithmetic would no longer be exact. */
const MOST_DIGITS = 10;
const MOST_DECIMALS = 6;

/** Text in one form: straight marks, plain fractions and spaces, ASCII hyphens. */
export function tidy(text: string): string {
  if (PLAIN.test(text)) return text.trim();
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize("NFKC").replace("\u2044", "/")} `)
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2018\u2019\u2032\u00b4]{2}|''|[\u201c\u201d\u2033]/g, '"')
    .replace(/[\u2018\u2019\u2032\u00b4]/g, "'")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .replace(/\s+/g, " ")
    .trim();
}

/** Most texts need nothing but trimming. */
const PLAIN = /^(?!.*(?:''| {2}))[\x20-\x7e]*$/;

/** A stretch of the user's text for a message: one line, not too long. */
export function quoted(text: string): string {
  const line = text.replace(/\s+/g, " ").trim();
  const letters = [...line];
  return `"${letters.length <= 40 ? line : `${letters.slice(0, 37).join("")}...`}"`;
}

/** What no quantity of a job may look like: the common slips, each with what to write instead. */
export function commonSlip(text: string, example: string): Refusal | null {
  if (text === "") return refuse("there is nothing here", `write ${example}`);
  if (/^(-|minus\b)/i.test(text)) return refuse(`${quoted(text)} is negative`, `write it without the minus, for example ${example}`);
  const comma = /(\d+),(\d+)/.exec(text);
  if (comma !== null) {
    const [, whole = "", part = ""] = comma;
    const as = (number: string): string => text.replace(comma[0], number);
    const joined = part.length === 3 ? `${as(`${whole}.${part}`)} or ${as(`${whole}${part}`)}, whichever is meant` : as(`${whole}.${part}`);
    return refuse(`${quoted(text)} has a comma`, `a decimal is written with a point and thousands without a mark: write ${joined}`);
  }
  return null;
}
