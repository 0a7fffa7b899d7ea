// What angle, share, date, number or price did somebody write? The quantities that are the same in every country.
import { commonSlip, quoted, type Reading, readDecimal, refuse, tidy } from "./notation.ts";
import type { Cents, Radian } from "./quantity.ts";

export interface AngleOptions {
  /** Whether "right" or "left" must, may or must not stand before the angle; default: may. */
  readonly side?: "must" | "may" | "must not";
}

/** `90 deg`, `right 90 deg`, `left 45 deg` (negative) -> rad */
export function readAngle(text: string, { side = "may" }: AngleOptions = {}): Reading<Radian> {
  const example = side === "must" ? "right 90 deg or left 45 deg" : side === "may" ? "90 deg, right 90 deg or left 45 deg" : "90 deg";
  const plain = tidy(text).toLowerCase();
  const slip = commonSlip(plain, example);
  if (slip !== null) return slip;
  const match = /^(right|left)?\s*([\d.]+)\s*(deg|degrees?|\u00b0)?$/.exec(plain);
  const [, word, number = "", unit] = match ?? [];
  const decimal = readDecimal(number);
  if (match === null || decimal === null) return refuse(`${quoted(text)} is not an angle`, `write ${example}`);
  if (unit === undefined) return refuse(`${quoted(text)} has no unit`, `write ${[word, number, "deg"].filter(Boolean).join(" ")}`);
  if (side === "must" && word === undefined) {
    return refuse(
      `${quoted(text)} does not say to which side`,
      `write right ${number} deg or left ${number} deg, as seen from the deck looking out`,
    );
  }
  if (side === "must not" && word !== undefined)
    return refuse(`${quoted(text)} is a turn, not a direction`, `write ${number} deg, clockwise from north`);
  const angle = ((decimal.digits / decimal.scale) * Math.PI) / 180;
  return { value: word === "left" ? 0 - angle : angle };
}

/** `30 %` or `0.3` -> 0.3 */
export function readShare(text: string): Reading<number> {
  const plain = tidy(text);
  const slip = commonSlip(plain, "30 % or 0.3");
  if (slip !== null) return slip;
  const [, number = "", sign] = /^([\d.]+)\s*(%)?$/.exec(plain) ?? [];
  const decimal = readDecimal(number);
  if (decimal === null) return refuse(`${quoted(text)} is not a share`, "write 30 % or 0.3");
  if (sign !== undefined) return { value: decimal.digits / (100 * decimal.scale) };
  const value = decimal.digits / decimal.scale;
  return value > 1 ? refuse(`${quoted(text)} is more than the whole`, `write ${value} %, if per cent are meant`) : { value };
}

/** `2026-04-02` -> the same text, when that day exists. */
export function readDate(text: string): Reading<string> {
  const plain = tidy(text);
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(plain);
  if (match === null) return refuse(`${quoted(text)} is not a date`, "write year, month and day as 2026-04-02");
  const [year = 0, month = 0, day = 0] = match.slice(1).map(Number);
  if (month < 1 || month > 12) return refuse(`${quoted(text)} has no such month`, "write year, month and day as 2026-04-02");
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const days = [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1] ?? 0;
  if (day < 1 || day > days) return refuse(`${quoted(text)} is a day that does not exist`, `that month has ${days} days`);
  return { value: plain };
}

/** `2`, `2.5` -> the number */
export function readNumber(text: string): Reading<number> {
  const plain = tidy(text);
  const slip = commonSlip(plain, "2");
  if (slip !== null) return slip;
  const decimal = readDecimal(plain);
  return decimal === null
    ? refuse(`${quoted(text)} is not a number`, "write a number such as 2 or 0.5")
    : { value: decimal.digits / decimal.scale };
}

/** `12.50` -> 1250 cents, without any sign of a country's money. */
export function readMoney(text: string): Reading<Cents> {
  const plain = tidy(text);
  const slip = commonSlip(plain, "12.50");
  if (slip !== null) return slip;
  const match = /^(\d{1,9})(?:\.(\d{2}))?$/.exec(plain);
  if (match === null) return refuse(`${quoted(text)} is not a price`, "write it in the job's money without a sign, as 12.50 or 12");
  return { value: Number(match[1]) * 100 + Number(match[2] ?? 0) };
}

/** `true` or `false`, and the words for them. */
export function readYesNo(text: string): Reading<boolean> {
  const plain = tidy(text).toLowerCase();
  if (["true", "yes"].includes(plain)) return { value: true };
  if (["false", "no"].includes(plain)) return { value: false };
  return refuse(`${quoted(text)} is neither true nor false`, "write true or false");
}
