// Which tubes lie round bushings in wood, how are their ends cut, and with which tools?
import type { Job } from "../job/job.ts";
import { angleDegrees, length } from "../units/print.ts";
import type { Mm, Radian } from "../units/quantity.ts";
import type { Bore } from "./plan.ts";
import type { Line } from "./tools.ts";

/** As it is ordered. */
export const BUSHING_TUBE = "tube round bushings, stainless";

/** Sizes of bushings and of what lies round them. */
export const fineSize = (mm: Mm, job: Job): string => length(mm, { units: job.units, decimals: 1, step: 1 / 32 });
/** Walls of tubes lie closer together. */
export const wallSize = ({ value }: { readonly value: Mm }, job: Job): string =>
  length(value, { units: job.units, decimals: 1, step: 1 / 64 });

/** The tube in a bore with bushings, as it is ordered; nothing where it has none. */
export function bushingTubeSize({ drilledLength }: Pick<Bore, "drilledLength">, job: Job): string {
  const { bushing, bushingBore } = job.fittings;
  if (bushing.tubeWall === null) return "";
  return `${fineSize(bushingBore.value, job)}, wall ${wallSize(bushing.tubeWall, job)}, ${fineSize(drilledLength, job)} long`;
}

/** Right through the bores in wood where a cable bends. */
export const tubedBores = (bores: readonly Bore[], job: Job): readonly Bore[] =>
  job.fittings.bushing.tubeWall === null ? [] : bores.filter(({ bushing }) => bushing);

/** Off square: its ends lie flush with the faces of the post. */
const cutOf = ({ angle, skew }: Pick<Bore, "angle" | "skew">): Radian => (skew === 0 ? Math.abs(angle) : skew);

/** How the tube of a bore is cut. */
export function tubeNote(bore: Bore): string {
  if (bore.skew !== 0) return `for a bore on the mitre: length along its middle, ends cut ${off(bore)}, tip to tip longer by its outside`;
  return bore.angle === 0
    ? "cut to its bore, ends square"
    : `for a bore on a slope: length along its middle, both ends cut ${off(bore)}, alike`;
}

const off = (bore: Bore): string => angleDegrees(cutOf(bore));

/** Tubes are cut to length and to the faces of their posts, or trimmed; a burr cuts bushing and strand. */
export function tubeTools(bores: readonly Bore[], job: Job): readonly Line[] {
  const tubed = tubedBores(bores, job);
  if (tubed.length === 0) return [];
  const counts = new Map<string, number>();
  for (const bore of tubed) counts.set(endWords(bore), (counts.get(endWords(bore)) ?? 0) + 1);
  const isSquare = tubed.every((bore) => cutOf(bore) === 0);
  const cuts = [...counts].map(([ends, count]) => `${count} tubes with ${ends}`).join(", ");
  return [
    {
      item: isSquare
        ? "tube cutter for stainless, or hacksaw with fine teeth"
        : "hacksaw with fine teeth, and a mitre box that holds the tube",
      size: `for ${fineSize(job.fittings.bushingBore.value, job)} tube`,
      source: "have",
      note: `cuts or trims ${cuts}`,
    },
    { item: "deburring tool, half-round file", source: "have", note: `rounds both ends of ${tubed.length} tubes, inside and outside` },
  ];
}

const endWords = (bore: Bore): string =>
  bore.skew === 0 && bore.angle === 0 ? "square ends" : `ends at ${off(bore)}${bore.skew === 0 ? "" : " on the mitre"}`;
