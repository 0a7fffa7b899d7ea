// Where is a strip that is longer than its sheet cut into tiles?
import type { Mm } from "../../units/quantity.ts";
import { roundDown, roundUp } from "../../units/round.ts";

export interface Tile {
  /** 1 is the lowest. */
  readonly number: number;
  readonly count: number;
  /** Height above the datum of its lower line, where it is cut. */
  readonly from: Mm;
  /** Height of its upper line: the lower line of the next tile, or the end of the strip. */
  readonly to: Mm;
}

export interface Strip {
  readonly foot: Mm;
  readonly top: Mm;
  /** Heights that no line should cross: holes with their words, and where bores come out. */
  readonly kept: readonly Band[];
  /** What of them is measured: no line crosses it even where words leave no room. */
  readonly marks: readonly Band[];
}

export interface Band {
  readonly low: Mm;
  readonly high: Mm;
}

/** A tile shorter than this share of the longest is not worth its sheet. */
const SHORTEST_share = 1 / 3;

/** Tiles of much the same length, cut at whole steps above the datum, so that a tape finds each line again, and clear of all holes. */
export function cutTiles(
  { foot, top, kept, marks }: Strip,
  { longest, step }: { readonly longest: Mm; readonly step: Mm },
): readonly Tile[] {
  const lines: Mm[] = [foot];
  for (let last = foot; top - last > longest; ) {
    const even = (top - last) / (roundUp((top - last) / longest, 1) || 1);
    const most = roundDown(last + longest, step);
    const wanted = Math.min(roundUp(last + even, step), most);
    last = clearLine(wanted, { from: last + longest * SHORTEST_share, to: most, kept, marks, step });
    lines.push(last);
  }
  return lines.map((from, index) => ({ number: index + 1, count: lines.length, from, to: lines[index + 1] ?? top }));
}

interface Clear extends Pick<Strip, "kept" | "marks"> {
  readonly from: Mm;
  readonly to: Mm;
  readonly step: Mm;
}

/** The line nearest to `wanted` that crosses nothing; where there is none, one that crosses words alone; then the line that was wanted. */
function clearLine(wanted: Mm, { from, to, kept, marks, step }: Clear): Mm {
  for (const bands of [kept, marks]) {
    const isClear = (line: Mm): boolean => line >= from && line <= to && !bands.some(({ low, high }) => line > low && line < high);
    for (
      let [low, high] = [wanted, wanted];
      low >= from || high <= to;
      low = roundDown(low - step / 2, step), high = roundUp(high + step / 2, step)
    ) {
      const line = [low, high].find(isClear);
      if (line !== undefined) return line;
    }
  }
  return wanted;
}
