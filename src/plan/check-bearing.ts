// Does the wood under a washer or a fitting bear the pull?
import type { Job } from "../job/job.ts";
import { adjusted } from "../mechanics/wood-adjust.ts";
import { bearingAcrossCheck } from "../mechanics/wood-checks.ts";
import { type Cited, cite } from "../sources/cited.ts";
import { bearingAcrossGrain_min } from "../tables/timber.ts";
import { woodStrength } from "../tables/timber-strength.ts";
import { bearingAreaRule, wetBearing, woodFactors } from "../tables/wood-factors.ts";
import { length } from "../units/print.ts";
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { sectionOfPost } from "./as-found.ts";
import type { Checked } from "./check-row.ts";
import { hardestPull } from "./check-tension.ts";
import { counterboreDepth, endBore } from "./end-fitting.ts";
import { isOnFace } from "./face-end.ts";
import { conditionsOf, pieceOf } from "./frame-members.ts";
import type { Check, Run, RunEnd } from "./plan.ts";

/** Wood posts only: in a tube the wall bears on its edge, which is part of the frame's check. */
export function bearingChecks(plan: Checked, job: Job): readonly Check[] {
  if (job.posts.section.material !== "wood") return [];
  return plan.runs.flatMap((run) => {
    const force = hardestPull(plan, run);
    return [run.left, run.right].filter((end) => !isOnFace(end)).map((end) => bearingCheck(run, end, { force, plan, job }));
  });
}

/** What the wood of a post bears across the grain, all factors but that of the bearing's length; with the chain in its place. */
export const bearingAcross = (postId: string, job: Job): Cited<Megapascal> => postValue("bearingAcross", postId, job) ?? leastAcross(job);

/** The same along the grain, but for the factor of buckling; null where there are no design values. */
export const bearingAlong = (postId: string, job: Job): Cited<Megapascal> | null => postValue("compression", postId, job);

/** Of wood whose species is not known, or that has no row of its own. */
export function leastAcross(job: Job): Cited<Megapascal> {
  const wet = job.site.wet.value ? wetBearing.value : 1;
  return { ...bearingAcrossGrain_min, value: bearingAcrossGrain_min.value * wet };
}

const grains = { bearingAcross: "across", compression: "along" } as const;

function postValue(property: keyof typeof grains, postId: string, job: Job): Cited<Megapascal> | null {
  const { along, across } = sectionOfPost(job, postId);
  const { wood } = job.posts;
  const piece = pieceOf({ x: along, y: across, wood });
  const reference = woodStrength(piece);
  if (reference === null) return null;
  const factors = woodFactors({ property, piece, conditions: conditionsOf(wood, job) });
  const chain = adjusted(reference.value[property], factors);
  const named = chain.factors.filter(({ value }) => value !== 1).map(({ name, value }) => ` x ${name} ${value}`);
  return cite(chain.value, reference.source, `${reference.where}, Fc ${grains[property]} the grain${named.join("")}`);
}

/** Widest washer that lies within the post at each of an end's bores. */
function roomOf({ postId }: RunEnd, { verticals, bores }: Seated): Mm {
  const post = verticals.find(({ id }) => id === postId);
  const across = post?.core?.across ?? post?.across ?? Number.POSITIVE_INFINITY;
  const aside = bores.filter(({ verticalId, kind }) => verticalId === postId && kind !== "pass").map(({ offset }) => Math.abs(offset));
  return across - 2 * Math.max(0, ...aside);
}

/** A ring that bears next to nothing, where a bore leaves none. */
const LEAST_ring: Mm = 0.1;

type Seated = Pick<Checked, "opening" | "verticals" | "rakes" | "bores">;

/** Where the post ends above: under the top rail of its side. */
function upperEndOf({ postId }: RunEnd, { opening, verticals, rakes }: Seated): Mm {
  const sideId = verticals.find(({ id }) => id === postId)?.sideId;
  return (rakes.find((one) => one.sideId === sideId)?.opening ?? opening).top;
}

/** Of the bores in its post the highest, of whichever run. */
const highestBore = ({ postId }: RunEnd, { bores }: Seated): Mm =>
  Math.max(...bores.filter(({ verticalId }) => verticalId === postId).map(({ height }) => height));

export interface Bearing {
  /** Across the grain, all factors but that of the bearing's length. */
  readonly allowable: Cited<Megapascal>;
  /** C_b: a short bearing away from the end of the post carries more. */
  readonly byLength: number;
  readonly seat: Mm;
  readonly hole: Mm;
  /** What the washer may press with. */
  readonly capacity: Cited<Newton>;
}

/** What the wood under the washer of one end bears. */
export function bearingOf(end: RunEnd, plan: Seated, job: Job): Bearing {
  const { seat: washer, hole } = seatOf(end, job);
  // Where a washer reaches over the edge of its post, only as much of it counts as lies round the bore within the post.
  const seat = Math.max(Math.min(washer, roomOf(end, plan)), hole + LEAST_ring);
  const allowable = bearingAcross(end.postId, job);
  const area_mm2 = ringArea(seat, hole);
  const { capacity } = bearingAcrossCheck({
    force: 1,
    area_mm2,
    length: seat,
    fromEnd: upperEndOf(end, plan) - highestBore(end, plan) - seat / 2,
    rule: bearingAreaRule.value,
    allowable: allowable.value,
  });
  const byLength = capacity / allowable.value;
  const named = byLength === 1 ? "" : ` x C_b ${roundTo(byLength, 2)} (${bearingAreaRule.where})`;
  return { allowable, byLength, seat, hole, capacity: { ...allowable, value: capacity * area_mm2, where: `${allowable.where}${named}` } };
}

/** The washer presses on what is left around its hole in the face: the bore, or the counterbore that the body lies in. */
function seatOf(end: RunEnd, job: Job): { readonly seat: Mm; readonly hole: Mm } {
  const { stud, grip } = job.fittings;
  const hole = counterboreDepth(end, job) > 0 ? grip.counterbore.value : endBore(end, job);
  return { seat: (end.kind === "stud" ? stud : grip).washerDiameter.value, hole };
}

/** An "ask" above 1: a wider washer or a plate is chosen before anything is bought. */
function bearingCheck(
  run: Run,
  end: RunEnd,
  { force, plan, job }: { readonly force: Newton; readonly plan: Checked; readonly job: Job },
): Check {
  const { allowable, hole, capacity } = bearingOf(end, plan, job);
  const needed = Math.sqrt((4 * force) / (Math.PI * allowable.value) + hole ** 2);
  const washer = length(needed, { units: job.units, step: 1 / 8, rounding: "up" });
  const keeps = force <= capacity.value;
  return {
    id: `bearing-${run.id}-${end.postId}`,
    name: "Bearing of the washer on the wood of the post",
    where: `${end.postId}, ${run.id}`,
    rule: "at most",
    demand: { value: force, kind: "force" },
    limit: { value: capacity.value, kind: "force" },
    ratio: force / capacity.value,
    source: capacity.source,
    sourceWhere: capacity.where,
    verdict: keeps ? "pass" : "ask",
    advice: keeps
      ? ""
      : `the washer may sink in: use one of at least ${washer} (fittings: ${end.kind === "stud" ? "stud" : "grip"}: washer), or a plate`,
  };
}

const ringArea = (outside: Mm, inside: Mm): number => (Math.PI / 4) * (outside ** 2 - inside ** 2);
