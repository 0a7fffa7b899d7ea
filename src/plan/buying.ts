// What has to be bought, how many with spares, and for how much?
import type { Job } from "../job/job.ts";
import { cutStock } from "../stock/cut.ts";
import { angleDegrees, length } from "../units/print.ts";
import type { Cents, Mm } from "../units/quantity.ts";
import { BUSHING_TUBE, bushingTubeSize, fineSize, tubedBores, tubeNote, wallSize } from "./bushing-tubes.ts";
import { eyeLines } from "./buying-eyes.ts";
import { bevelOf } from "./end-fitting.ts";
import { isOnFace } from "./face-end.ts";
import { piece, sizeText } from "./order-piece.ts";
import type { Bore, Run } from "./plan.ts";
import type { CutPlan, OrderLine } from "./purchase.ts";

interface Bought {
  readonly runs: readonly Run[];
  readonly courseCount: number;
  readonly bores: readonly Bore[];
  readonly cutPlans: readonly CutPlan[];
}

export function makeOrder(bought: Bought, job: Job): readonly OrderLine[] {
  return [
    ...cableLines(bought, job),
    ...fittingLines(bought, job),
    ...bushingLines(bought, job),
    ...careLines(job),
    ...lumberLines(bought, job),
  ];
}

/** Sum of the priced lines; null when no line has a price. */
export function totalOf(order: readonly OrderLine[]): Cents | null {
  const priced = order.filter((line) => line.price_cents !== null);
  return priced.length === 0 ? null : priced.reduce((sum, line) => sum + (line.price_cents ?? 0) * line.quantity, 0);
}

const cableName = (job: Job): string =>
  `${job.cable.construction} strand, ${length(job.cable.diameter, { units: job.units, decimals: 1, step: 1 / 32 })}, stainless ${job.cable.grade}`;

/** The one item of cable that is not bought by its piece. */
export const SPOOL = "spool of cable";

function cableLines({ runs, courseCount }: Bought, job: Job): readonly OrderLine[] {
  const common = { group: "cable", size: cableName(job), spare: 0 } as const;
  if (job.supply.kind === "ready") {
    const { lengths, price_cents } = job.supply;
    return [...countByLength(runs, courseCount)].map(([pieceLength, net]): OrderLine => {
      const price = price_cents?.[lengths.value.indexOf(pieceLength)] ?? null;
      const note = "ready length with one stud end on it; the other end is cut and fitted on site";
      return { ...common, item: "ready cable", net, quantity: net, unit: "piece", pieceLength, price_cents: price, note };
    });
  }
  const { spoolLength, price_cents } = job.supply;
  const pieces = runs.map((run) => ({ mark: run.id, length: run.orderLength, count: courseCount }));
  const net = spoolsFor(pieces, spoolLength);
  const note = `${pieces.map((piece) => `${piece.count} x ${length(piece.length, { units: job.units, style: "feet" })}`).join(", ")}; do not cut before the run has been measured on site`;
  return [{ ...common, item: SPOOL, net, quantity: net, unit: "spool", pieceLength: spoolLength, price_cents, note }];
}

/** Fewest spools from which all pieces can be cut, each in one length. */
export function spoolsFor(
  pieces: readonly { readonly mark: string; readonly length: Mm; readonly count: number }[],
  spoolLength: Mm,
): number {
  const plan = cutStock({ pieces, stock: [{ length: spoolLength, cost: spoolLength }], kerf: 0, endTrim: 0, objective: "count" });
  if ("tooLong" in plan) throw new RangeError("a run is longer than the spool: the cuts should have prevented it");
  return plan.bars.length;
}

function countByLength(runs: readonly Run[], courseCount: number): ReadonlyMap<Mm, number> {
  const counts = new Map<Mm, number>();
  for (const run of [...runs].sort((a, b) => a.orderLength - b.orderLength)) {
    counts.set(run.orderLength, (counts.get(run.orderLength) ?? 0) + courseCount);
  }
  return counts;
}

function fittingLines({ runs, courseCount, bores }: Bought, job: Job): readonly OrderLine[] {
  const ends = runs.flatMap((run) => [run.left, run.right]);
  const studs = ends.filter((end) => end.kind === "stud").length * courseCount;
  const grips = ends.filter((end) => end.kind === "grip").length * courseCount;
  // Ready cables come with one stud end on them.
  const attached = job.supply.kind === "ready" ? runs.length * courseCount : 0;
  const { stud, grip } = job.fittings;
  const inSleeve = job.posts.sleeve === null ? "" : ", on the wood in its sleeve";
  const size = (mm: Mm): string => sizeText(mm, job);
  // The body goes through its washer, the collar does not.
  const gripWasher = `${size(grip.washerDiameter.value)} across, hole for a body of ${size(grip.counterbore.value)}`;
  // The check of its bearing counts the whole washer.
  const stiff = job.posts.section.material === "wood" ? "; thick, as a thin one dishes" : "";
  return [
    ...piece("fittings", "stud end for fitting on site", stud.thread, studs - attached, {
      job,
      note: "measure its bore and thread before drilling",
    }),
    ...piece("fittings", "gripping end", `body ${size(grip.counterbore.value)} x ${size(grip.bodyLength.value)}`, grips, {
      job,
      note: "holds one way only: it cannot be pulled back once set",
    }),
    ...piece("fittings", "nut, stainless", stud.thread, studs, {
      job,
      note: "same grade as the studs, or one grade apart against seizing",
    }),
    ...piece("fittings", "washer, stainless, stud end", `${size(stud.washerDiameter.value)} across, hole for ${stud.thread}`, studs, {
      job,
      note: `under each nut${inSleeve}${stiff}`,
    }),
    ...piece("fittings", "washer, stainless, gripping end", gripWasher, grips, {
      job,
      note: `under the collar of each fitting${inSleeve === "" ? ", on the face of the post" : inSleeve}${stiff}`,
    }),
    ...eyeLines(runs, courseCount, job),
    ...bevelledWashers(bores, job),
    ...piece("fittings", "cap for a stud", stud.thread, studs, { job, note: "over the stud and its nut" }),
    ...piece("fittings", "cap for a cut cable end", size(job.cable.diameter), grips, { job, note: "no sharp end stays open" }),
  ];
}

/** Where an end is bored at an angle, nut and collar need a seat square to the bore. */
export const isBevelled = ({ angle, kind }: Bore): boolean => angle !== 0 && (kind === "stud end" || kind === "grip end");

/** "for 33.7 deg: 1-1/4 in across, 1/16 in to 7/8 in thick" */
export function bevelSize({ angle, kind }: Pick<Bore, "angle" | "kind">, job: Job): string {
  const { across, thin, thick } = bevelOf(kind === "stud end" ? "stud" : "grip", angle, job);
  const [wide, from, to] = [across, thin, thick].map((mm) => length(mm, { units: job.units, decimals: 1, step: 1 / 32, both: false }));
  return `for ${angleDegrees(Math.abs(angle))}: ${wide} across, ${from} to ${to} thick`;
}

function bevelledWashers(bores: readonly Bore[], job: Job): readonly OrderLine[] {
  const sizes = bores.filter(isBevelled).map((bore) => bevelSize(bore, job));
  const note = "under the flat washer of an end on a slope: thick edge up where the bore falls outwards, down where it rises (derived)";
  return [...new Set(sizes)].flatMap((size) => {
    const net = sizes.filter((one) => one === size).length;
    return piece("fittings", "bevelled washer, stainless", size, net, { job, note });
  });
}

/** At how many mouths of a bore the cable turns so far that it needs a bushing. */
export function mouthsTurned({ runId, verticalId }: Bore, { runs }: { readonly runs: readonly Run[] }, job: Job): number {
  const bends = runs.find(({ id }) => id === runId)?.bends ?? [];
  return bends.filter(({ postId, angle }) => postId === verticalId && angle > job.fittings.bushingAngle.value).length;
}

/** A tube has two walls to line. */
export const isInTube = ({ verticalId }: Bore, { posts, spacers }: Job): boolean =>
  (verticalId.startsWith("P") ? posts : spacers).section.wall !== null;

/** What is said of those that this job has. On the mitre a rim has no face to lie on. */
function bushingNote(bores: readonly Bore[], job: Job): string {
  const bushed = bores.filter(({ bushing }) => bushing);
  const tubes = bushed.filter((bore) => isInTube(bore, job)).length;
  return [
    ...(tubes < bushed.length ? ["where a cable leaves its bore at an angle"] : []),
    ...(tubes > 0 ? ["in both walls of a metal member"] : []),
    ...(bushed.some(({ skew }) => skew !== 0) ? ["without a rim for bores on the mitre"] : []),
  ].join(", ");
}

function bushingLines({ runs, courseCount, bores }: Bought, job: Job): readonly OrderLine[] {
  // A tube has two walls to line; in a solid member a bushing sits at each mouth at which the cable turns.
  const count = bores
    .filter((bore) => bore.bushing)
    .reduce((sum, bore) => sum + (isInTube(bore, job) ? 2 : Math.max(1, mouthsTurned(bore, { runs }, job))), 0);
  const behind = runs.flatMap(({ left, right }) => [left, right]).filter((end) => !isOnFace(end)).length;
  const isolating = job.posts.section.material === "wood" || job.posts.section.material === "stainless" ? 0 : behind * courseCount;
  return [
    ...piece("bushings and washers", BUSHING, bushingSize(job), count, { job, note: bushingNote(bores, job) }),
    ...tubeLines(bores, job),
    ...piece("bushings and washers", "isolating sleeve and washer, plastic", "to suit the end fittings", isolating, {
      job,
      note: "between stainless fittings and a post of another metal",
    }),
  ];
}

/** As it is ordered. */
export const BUSHING = "bushing, plastic";

function bushingSize(job: Job): string {
  const { bushing, bushingBore } = job.fittings;
  const outside = fineSize(bushingBore.value, job);
  if (job.posts.section.material !== "wood") return `for a bore of ${outside}`;
  return bushing.tubeWall === null
    ? `for a bore of ${outside}, ${fineSize(bushing.length.value, job)} long in it`
    : `for a tube of ${outside}, wall ${wallSize(bushing.tubeWall, job)}`;
}

function tubeLines(bores: readonly Bore[], job: Job): readonly OrderLine[] {
  const tubed = tubedBores(bores, job).map((bore) => ({ size: bushingTubeSize(bore, job), cut: tubeNote(bore) }));
  return [...new Set(tubed.map(({ size }) => size))].flatMap((size) => {
    const own = tubed.filter((one) => one.size === size);
    const cuts = [...new Set(own.map(({ cut }) => cut))].join(", or ");
    const note = `${cuts}; ends rounded, flush with the faces; a bushing only in an end where the cable bends`;
    return piece("bushings and washers", BUSHING_TUBE, size, own.length, { job, note });
  });
}

function careLines(job: Job): readonly OrderLine[] {
  const one = (item: string, size: string, note: string): OrderLine => {
    return { group: "care", item, size, net: 1, spare: 0, quantity: 1, unit: "bottle", pieceLength: null, price_cents: null, note };
  };
  const treated = job.posts.treatment === "treated" && job.posts.section.material === "wood";
  return [
    one("thread lubricant against seizing", "50 ml", "on every stainless thread before its nut goes on"),
    one("mild cleaner for stainless steel", "250 ml", "free of chlorides; no steel wool"),
    ...(treated ? [one("wood preservative for field treatment", "250 ml", "every bore in treated wood (AWPA M4)")] : []),
    ...(job.posts.section.material === "wood" ? [one("sealant for outdoor wood", "300 ml", "bores and washers, when all is tight")] : []),
    ...(job.posts.section.material === "steel" ? [one("zinc paint, cold", "250 ml", "bare steel of bores and cuts")] : []),
  ];
}

function lumberLines({ cutPlans }: Bought, job: Job): readonly OrderLine[] {
  return cutPlans.flatMap((plan) => {
    const counts = new Map<Mm, number>();
    for (const bar of plan.bars) counts.set(bar.stockLength, (counts.get(bar.stockLength) ?? 0) + 1);
    return [...counts].map(([pieceLength, net]): OrderLine => {
      const common = { group: "lumber and tube", item: plan.sectionName, unit: "length", pieceLength, price_cents: null } as const;
      return {
        ...common,
        size: length(pieceLength, { units: job.units, style: "feet" }),
        net,
        spare: 0,
        quantity: net,
        note: "cut plan on the lumber sheet",
      };
    });
  });
}
