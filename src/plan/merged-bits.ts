// Which bits are bought for all the holes of a job?
import { SLEEVE_USE, WASHER_HOLE } from "./bores.ts";
import type { BitUse } from "./purchase.ts";

/** Each size once, with all its uses and long enough for the deepest. */
export function mergedBits(bits: readonly BitUse[]): readonly BitUse[] {
  const isLike = (one: BitUse, other: BitUse): boolean => one.diameter === other.diameter && whatOf(one) === whatOf(other);
  return bits
    .filter((bit, nth) => bits.findIndex((one) => isLike(one, bit)) === nth)
    .map((bit) => {
      const same = bits.filter((one) => isLike(one, bit));
      return {
        diameter: bit.diameter,
        deepest: Math.max(...same.map(({ deepest }) => deepest)),
        bitLength_min: Math.max(...same.map(({ bitLength_min }) => bitLength_min)),
        holes: same.reduce((sum, { holes }) => sum + holes, 0),
        use: same.map(({ holes, use }) => (same.length === 1 ? use : `${use} (${holes})`)).join("; "),
      };
    });
}

/** A bit for masonry bores nothing else, and the other way round. */
export const isForMasonry = ({ use }: BitUse): boolean => use.includes("anchor end");

/** A sleeve is bored with tools of its own. */
const isOfSleeve = ({ use }: BitUse): boolean => use.includes(SLEEVE_USE) || use.includes(WASHER_HOLE);

const whatOf = (bit: BitUse): "masonry" | "sleeve" | "post" => (isForMasonry(bit) ? "masonry" : isOfSleeve(bit) ? "sleeve" : "post");
