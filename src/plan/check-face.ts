// Does the fastening of an end on the face of its post hold the pull?
import type { Job } from "../job/job.ts";
import { withdrawal } from "../mechanics/fastener.ts";
import { innerThreadArea } from "../mechanics/thread-shear.ts";
import { type Cited, cite } from "../sources/cited.ts";
import {
  behindHole,
  lagEdge_diameters,
  lagPenetration_diameters,
  pilotRange,
  warmConnection,
  wetWithdrawal,
} from "../tables/face-fastening.ts";
import { alloys } from "../tables/metal.ts";
import { metalBasis } from "../tables/metal-strength.ts";
import { specificGravity } from "../tables/timber-strength.ts";
import { durationFactor, guardLoadDuration, type LoadDuration } from "../tables/wood-factors.ts";
import { lagScrewRule } from "../tables/wood-fasteners.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { sectionOfPost } from "./as-found.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import { hardestPull, underInfill } from "./check-tension.ts";
import { endsOnFaces } from "./corner-post.ts";
import { type FaceAt, faceDepth, faceEndsOf, faceOf } from "./face-end.ts";
import { alloyOf, conditionsOf, designWall } from "./frame-members.ts";
import type { Check, RunEnd } from "./plan.ts";

export function faceChecks(plan: Checked, job: Job): readonly Check[] {
  const ends = faceEndsOf(plan);
  if (ends.length === 0) return [];
  return [
    ...ends.flatMap((at) => holdChecks(plan, at, job)),
    ...ends.flatMap((at) => placeChecks(plan, at, job)),
    ...cornerChecks(plan, job),
    ...screwChecks(job),
    ...(faceOf(job).rated === null ? [ratingQuestion] : []),
  ];
}

/** What the thread of one end holds in its post: screw in wood, thread in metal; null where the maker's rating alone says it. */
export function holdOf({ postId }: Pick<RunEnd, "postId">, job: Job, load: LoadDuration = "permanent"): Cited<Newton> | null {
  const { fastening } = faceOf(job);
  switch (fastening.kind) {
    case "lag screw": {
      const factors = screwFactors(job, load);
      const { force } = withdrawal({ ...screwOf(job), factor: product(factors) });
      const named = factors.flatMap(({ name, value, source }) =>
        value === 1 ? [] : [` x ${name} ${value}${source === "memory" ? " (from memory)" : ""}`],
      );
      return cite(force, "nds-2018", `${lagScrewRule.where}, specific gravity of ${gravityOf(job).where}${named.join("")}`);
    }
    case "tapped hole": {
      const shear = threadShear(postId, job);
      const thread = { diameter: fastening.diameter.value, pitch: fastening.pitch.value, length: threadIn(postId, job) };
      return { ...shear, value: shear.value * innerThreadArea(thread) };
    }
    case "rivet nut":
      return null;
  }
}

/** Thread of a lag screw that holds: without its tip, and no longer than the screw is deep. */
export function screwOf(job: Job) {
  const { fastening } = faceOf(job);
  if (fastening.kind !== "lag screw") throw new RangeError("no lag screw");
  const { threadLength, tip, diameter } = fastening;
  return {
    rule: lagScrewRule.value,
    gravity: gravityOf(job).value,
    diameter: diameter.value,
    penetration: threadLength.value - tip.value,
  };
}

function gravityOf({ posts }: Job): Cited<number> {
  if (posts.wood === null) throw new RangeError("a lag screw in posts without a species");
  return specificGravity[posts.wood.value.species];
}

interface ScrewFactor extends Cited<number> {
  readonly name: "C_D" | "C_M" | "C_t";
}

/** The cables pull as long as the guard stands; who leans on one does so for as long as is taken for the guard. */
export function screwFactors(job: Job, load: LoadDuration): readonly ScrewFactor[] {
  const { wet, warmest } = conditionsOf(job.posts.wood, job);
  return [
    { name: "C_D", ...durationFactor[load] },
    { name: "C_M", ...wetWithdrawal, value: wet ? wetWithdrawal.value : 1 },
    { name: "C_t", ...warmConnection(warmest, wet) },
  ];
}

const product = (factors: readonly ScrewFactor[]): number => factors.reduce((sum, { value }) => sum * value, 1);

/** Thread in the metal of a post: in a tube as long as its wall is taken for strength. */
export function threadIn(postId: string, job: Job): Mm {
  const { material, wall } = sectionOfPost(job, postId);
  return wall === null ? faceDepth(postId, job) : designWall(material, wall);
}

/** Shear that the metal round a thread may carry for good: the less of yield and rupture, each with its safety. */
export function threadShear(postId: string, job: Job): Cited<number> {
  const { material } = sectionOfPost(job, postId);
  if (material === "wood") throw new RangeError("a thread in metal in posts of wood");
  const basis = metalBasis[material];
  const alloy = alloyOf[material];
  const { yieldStress, ultimateStress } = alloys[alloy];
  const value =
    basis.shearShare.value * Math.min(yieldStress.value / basis.yieldSafety.value, ultimateStress.value / basis.ruptureSafety.value);
  return {
    ...basis.shearShare,
    value,
    where: `${basis.shearShare.where}; ${alloy}; shear area of the inner thread from FED-STD-H28/2 (from memory)`,
  };
}

/** On the hardest day, and with the code's infill load on the cable as its strand is checked, against what holds and what its maker states. */
function holdChecks(plan: Checked, { run, end }: FaceAt, job: Job): readonly Check[] {
  const { fastening, rated } = faceOf(job);
  const [pull, loaded] = [hardestPull(plan, run), underInfill(plan, run)];
  const [held, longer] =
    fastening.kind === "lag screw"
      ? ["Pull on the lag screw, straight out of the post", "use a longer or thicker screw, or let the bores go right through"]
      : ["Pull on the thread in the metal of the post", "use a rivet nut, or let the bores go right through"];
  const eye = fastening.kind === "rivet nut" ? "Pull on the rivet nut, as rated" : "Pull on the eye, as rated";
  const stronger = "use a fitting that is rated for the pull, or let the bores go right through";
  const rows = [
    ["hold", held, pull, holdOf(end, job), longer],
    ["brief", `${held}, ${UNDER_INFILL}`, loaded, holdOf(end, job, guardLoadDuration.value), longer],
    ["rated", eye, pull, rated, stronger],
    ["infill", `${eye}, ${UNDER_INFILL}`, loaded, rated, stronger],
  ] as const;
  return rows.flatMap(([id, name, demand, limit, advice]) => {
    if (demand === null || limit === null) return [];
    const where = `${end.postId}, ${run.id}`;
    return [limitCheck({ id: `face-${id}-${run.id}-${end.postId}`, name, where, rule: "at most", demand, limit, kind: "force", advice })];
  });
}

const UNDER_INFILL = "under the code's infill load on its cable";

/** Where the hole lies in its post: what is left behind it and beside it. */
function placeChecks(plan: Checked, { run, end }: FaceAt, job: Job): readonly Check[] {
  const { fastening } = faceOf(job);
  const { wall } = sectionOfPost(job, end.postId);
  const common = { where: `${end.postId}, ${run.id}`, rule: "at least", kind: "length" } as const;
  return [
    ...(wall === null
      ? [
          limitCheck({
            ...common,
            id: `face-behind-${run.id}-${end.postId}`,
            name: "Left behind the blind hole of an end",
            demand: behindOf(plan, end, job),
            limit: behindHole,
            advice: "use a shorter screw, or a deeper post",
          }),
        ]
      : []),
    ...(fastening.kind === "tapped hole"
      ? [
          limitCheck({
            ...common,
            id: `face-engaged-${run.id}-${end.postId}`,
            name: "Thread in the metal of the post",
            demand: faceDepth(end.postId, job),
            limit: { ...fastening.engagement_min, value: fastening.engagement_min.value * fastening.diameter.value },
            advice: "use a rivet nut, or let the bores go right through",
          }),
        ]
      : []),
    ...(fastening.kind === "lag screw"
      ? [
          limitCheck({
            ...common,
            id: `face-edge-${run.id}-${end.postId}`,
            name: "Middle of a lag screw to the edge of its post",
            demand: edgeOf(plan, { run, end }),
            limit: { ...lagEdge_diameters, value: lagEdge_diameters.value * fastening.diameter.value },
            advice: "use a wider post or a thinner screw",
          }),
        ]
      : []),
  ];
}

/** Behind a blind hole to the far face, or to the hole of the other run that ends on the same post; at a corner that one lies square to it. */
export function behindOf({ verticals, runs }: Pick<Checked, "verticals" | "runs">, { postId }: RunEnd, job: Job): Mm {
  const post = verticals.find(({ id }) => id === postId);
  const holes = post?.corner === undefined ? faceEndsOf({ runs }).filter(({ end }) => end.postId === postId).length : 1;
  return (post?.along ?? 0) - holes * faceDepth(postId, job);
}

/** Holes from two faces of a corner post lie at one height, square to each other: they must not meet inside it. */
function cornerChecks({ verticals }: Checked, job: Job): readonly Check[] {
  return verticals.flatMap((post): readonly Check[] => {
    if (post.corner === undefined || !endsOnFaces(post.corner) || sectionOfPost(job, post.id).wall !== null) return [];
    return [
      limitCheck({
        id: `face-between-${post.id}`,
        name: "Left between the blind holes from two faces of a corner post",
        where: post.id,
        rule: "at least",
        demand: betweenHoles({ width: post.along, depth: faceDepth(post.id, job), diameter: widestInHole(job) }),
        limit: behindHole,
        kind: "length",
        advice: "use a shorter screw, or a wider post, or make the corner with two posts",
      }),
    ];
  });
}

/** Of what is in the hole of an end on the face: the shank of a screw is thicker than its pilot hole. */
export function widestInHole(job: Job): Mm {
  const { fastening, hole } = faceOf(job);
  return fastening.kind === "rivet nut" ? hole.value : Math.max(fastening.diameter.value, hole.value);
}

/**
 * Between two holes from the middles of two neighbouring faces of a square post, at one height. Each ends this far before the middle:
 * a = w / 2 - l. Seen from above they are two rectangles square to each other, whose nearest edges are a - d / 2 apart both ways; less than
 * nothing where the holes meet.
 */
export const betweenHoles = ({ width, depth, diameter }: { readonly width: Mm; readonly depth: Mm; readonly diameter: Mm }): Mm =>
  Math.SQRT2 * (width / 2 - depth - diameter / 2);

/** From the middle of the hole that lies nearest to an edge of its post. */
function edgeOf({ verticals, bores }: Checked, { run, end }: FaceAt): Mm {
  const across = verticals.find(({ id }) => id === end.postId)?.across ?? 0;
  const own = bores.filter(({ verticalId, runId }) => verticalId === end.postId && runId === run.id);
  return across / 2 - Math.max(...own.map(({ offset }) => Math.abs(offset)));
}

/** What the wood asks of the screw, wherever it goes in. */
function screwChecks(job: Job): readonly Check[] {
  const { fastening, hole } = faceOf(job);
  if (fastening.kind !== "lag screw") return [];
  const pilot = pilotRange(gravityOf(job).value);
  const shank = fastening.diameter.value;
  const common = { where: "every end on a face", kind: "length" } as const;
  const bit = {
    ...common,
    name: "Pilot hole of the lag screws",
    demand: hole.value,
    advice: `take the bit that the wood asks: ${roundTo(pilot.value.least * 100, 0)} to ${roundTo(pilot.value.most * 100, 0)} % of the shank`,
  };
  return [
    limitCheck({
      ...common,
      id: "face-thread",
      name: "Thread of the lag screws in the wood, tip left out",
      rule: "at least",
      demand: screwOf(job).penetration,
      limit: { ...lagPenetration_diameters, value: lagPenetration_diameters.value * shank },
      advice: "use a longer screw",
    }),
    limitCheck({ ...bit, id: "face-pilot-least", rule: "at least", limit: { ...pilot, value: pilot.value.least * shank } }),
    limitCheck({ ...bit, id: "face-pilot-most", rule: "at most", limit: { ...pilot, value: pilot.value.most * shank } }),
  ];
}

const ratingQuestion: Check = question("face-rating", "Working load of the eyes on the faces of posts", {
  source: "derived",
  where: "what the eye itself carries, and the fitting that is pinned to it, is not computed",
  advice: "ask their maker for it and write it as rated: and rated by: under fittings: face",
});
