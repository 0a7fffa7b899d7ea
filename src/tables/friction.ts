// How much does strand rub on what it passes over?
import { type Cited, cite } from "../sources/cited.ts";

/** What lines the bore: a plastic bushing, bare metal or bare wood. */
export type BoreLining = "plastic" | "metal" | "wood";

export interface FrictionRange {
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
}

const rows: Readonly<Record<BoreLining, Cited<FrictionRange>>> = {
  plastic: cite(
    { low: 0.2, nominal: 0.3, high: 0.45 },
    "drive-guide",
    "table 7.21, steel on plastic, static, dry: 0.20 to 0.45",
    "0.30 is a choice inside the range; no test of strand in a bushing was found",
  ),
  metal: cite(
    { low: 0.12, nominal: 0.45, high: 0.8 },
    "friction-table",
    "steel on steel, static, dry: 0.45 to 0.80; the drive guide gives 0.12 to 0.60",
    "0.45 is the lower end of the one range and inside the other",
  ),
  wood: cite(
    { low: 0.45, nominal: 0.6, high: 0.75 },
    "drive-guide",
    "table 7.21, wood on steel, static, dry: 0.45 to 0.75",
    "0.60 is the middle of the range; the friction table gives 0.50 to 0.65",
  ),
};

/**
 * Coefficient of friction of dry strand on the lining of a bore: a row of the tables for pairs of materials.
 *
 * @param lining - what the strand touches [word]
 * @returns low, nominal and high coefficient of static friction [ratio] with their source
 * @throws never
 * Source: drive-guide, table 7.21; friction-table
 */
export const strandFriction = (lining: BoreLining): Cited<FrictionRange> => rows[lining];
