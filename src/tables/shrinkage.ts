// How much does wood shrink across the grain, and how much do strand, wood and metals grow with warmth? A source on each row.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import { alloys } from "./metal.ts";

/** Across the grain: radial is square to the year rings, tangential along them. */
export type GrainDirection = "radial" | "tangential";

/** Shrinkage from green to oven-dry [%] and change of size per percent of moisture between 6 and 14 % [1/%]. */
export interface WoodShrinkage {
  readonly shrinkage_percent: Readonly<Record<GrainDirection, Cited<number>>>;
  readonly coefficient: Readonly<Record<GrainDirection, Cited<number>>>;
}

/** Moisture at which wood begins to shrink: that of old redwood and western redcedar is low, as their printed coefficients show. */
const SATURATION_percent = 30;
const SATURATION_cedar_percent = 22;
/** The coefficients hold about this moisture. */
const MIDDLE_percent = 10;

/**
 * Change of size per percent of moisture from the total shrinkage: C = (S/100/M_s) / (1 - (S/100)(M_s - 10)/M_s), the line through
 * the fibre saturation M_s with its size at 10 % as the basis.
 *
 * @param shrinkage_percent - shrinkage S from green to oven-dry in one direction [%]
 * @param saturation_percent - fibre saturation, 30 when left out [%]
 * @returns coefficient between 6 and 14 % of moisture [1/%]
 * @throws RangeError when the shrinkage is not between 0 and 100 % or the saturation not above 10 %
 * Source: derived, gives the printed rows of wood-handbook table 13-5 for red alder, beech, walnut and cherry to the last digit
 */
export function shrinkageCoefficient(shrinkage_percent: number, saturation_percent: number = SATURATION_percent): number {
  if (!(shrinkage_percent > 0 && shrinkage_percent < 100)) throw new RangeError(`shrinkage ${shrinkage_percent} % must lie in 0 to 100 %`);
  if (!(saturation_percent > MIDDLE_percent)) throw new RangeError(`saturation ${saturation_percent} % must be above ${MIDDLE_percent} %`);
  const perPercent = shrinkage_percent / 100 / saturation_percent;
  return perPercent / (1 - perPercent * (saturation_percent - MIDDLE_percent));
}

type Pair = readonly [radial: number, tangential: number];

/** A species whose total shrinkage was read in table 4-3 or remembered; its coefficients are printed ones where given, else derived. */
function species(
  [radial, tangential]: Pair,
  read: "read" | "memory",
  { saturation_percent = SATURATION_percent, printed = {} }: Partial<SpeciesMore> = {},
): WoodShrinkage {
  const total = (percent: number): Cited<number> =>
    read === "read" ? cite(percent, "wood-handbook", "table 4-3") : fromMemory(percent, "Wood Handbook table 4-3, row not seen");
  const derived = (percent: number): Cited<number> =>
    cite(shrinkageCoefficient(percent, saturation_percent), "derived", "from the total shrinkage, as table 13-5 goes");
  return {
    shrinkage_percent: { radial: total(radial), tangential: total(tangential) },
    coefficient: { radial: printed.radial ?? derived(radial), tangential: printed.tangential ?? derived(tangential) },
  };
}

interface SpeciesMore {
  readonly saturation_percent: number;
  readonly printed: Partial<Readonly<Record<GrainDirection, Cited<number>>>>;
}

/** Quotes the tangential coefficient of the handbook for floors. */
const floors = (coefficient: number, row: string): Cited<number> => cite(coefficient, "dimension-change-chart", row);
const cedar = { saturation_percent: SATURATION_cedar_percent };
const WOODS = {
  "western redcedar": species([2.4, 5.0], "read", cedar),
  "Douglas-fir, coast": species([4.8, 7.6], "read", { printed: { tangential: floors(0.00267, "Douglas-fir") } }),
  "Douglas-fir, interior west": species([4.8, 7.5], "read"),
  "Douglas-fir, interior north": species([3.8, 6.9], "read"),
  "Port-Orford-cedar": species([4.6, 6.9], "read"),
  "incense cedar": species([3.3, 5.2], "read"),
  "white fir": species([3.3, 7.0], "read"),
  "grand fir": species([3.4, 7.5], "read"),
  "white oak": species([5.6, 10.5], "read"),
  "western hemlock": species([4.2, 7.8], "memory"),
  "redwood, old growth": species([2.6, 4.4], "memory", cedar),
  "redwood, young growth": species([2.2, 4.9], "memory", cedar),
  "loblolly pine": species([4.8, 7.4], "memory", { printed: { tangential: floors(0.00265, "southern yellow pine") } }),
  "longleaf pine": species([5.1, 7.5], "memory", { printed: { tangential: floors(0.00263, "longleaf, heart pine") } }),
  "shortleaf pine": species([4.6, 7.7], "memory", { printed: { tangential: floors(0.00265, "southern yellow pine") } }),
  "slash pine": species([5.4, 7.6], "memory", { printed: { tangential: floors(0.00265, "southern yellow pine") } }),
  ipe: species([6.6, 8.0], "memory"),
} as const satisfies Record<string, WoodShrinkage>;

export type ShrinkingWood = keyof typeof WOODS;

export const woodShrinkage: Readonly<Record<ShrinkingWood, WoodShrinkage>> = WOODS;

/** What grows with warmth: strand, a deck or rail of wood along its grain, or one of metal. */
export type GrowingMaterial =
  | "stainless strand"
  | "steel strand"
  | "wood along the grain"
  | "wood across the grain"
  | "steel"
  | "stainless"
  | "aluminium"
  | "concrete";

/** Thermal expansion per degC. */
export const expansions: Readonly<Record<GrowingMaterial, Cited<number>>> = {
  "stainless strand": cite(16e-6, "en-1993-1-11", "3.3(1), as a public validation note quotes it"),
  "steel strand": cite(12e-6, "en-1993-1-11", "3.3(1), as a public validation note quotes it"),
  "wood along the grain": cite(
    3.7e-6,
    "expansion-table",
    "fir; wood in general 3e-6",
    "the Wood Handbook has 3.1e-6 to 4.5e-6 (from memory)",
  ),
  "wood across the grain": cite(30e-6, "expansion-table", "wood across the grain", "moisture moves it about three times as far"),
  steel: alloys["A500 grade B"].expansion_perC,
  stainless: alloys[316].expansion_perC,
  aluminium: alloys["6063-T5"].expansion_perC,
  concrete: fromMemory(10e-6, "concrete, some 7e-6 to 13e-6 by its stone"),
};
