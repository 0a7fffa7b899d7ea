// Which hole goes where: post, height, face, size, depth, bushing?
import type { Job } from "../job/job.ts";
import type { Mm } from "../units/quantity.ts";
import { roundNearest, roundUp } from "../units/round.ts";
import { climbTo } from "./corner-path.ts";
import { boreSkew } from "./corner-post.ts";
import { counterboreDepth, endBore } from "./end-fitting.ts";
import { faceDepth, faceOf, isOnFace } from "./face-end.ts";
import { throughPost } from "./lay-run.ts";
import { pierNamed } from "./pier.ts";
import type { Bore, BoreKind, Course, Face, RunEnd, Vertical } from "./plan.ts";
import type { BitUse } from "./purchase.ts";
import type { RunGeometry } from "./runs.ts";
import { courseHeight } from "./set-off.ts";
import { sleeveHoleOf, washerHole } from "./sleeve.ts";

/** What a bit needs besides the hole: the chuck's grip and the start (common practice, no source). */
const BIT_EXTRA_mm = 50.8;
/** A bore at an angle is begun through a guide block, as thick as lumber of 2 in (common practice, no source). */
export const GUIDE_BLOCK_mm = 38.1;

export function makeBores(runs: readonly RunGeometry[], courses: readonly Course[], job: Job): readonly Bore[] {
  const shared = sharedPosts(runs);
  const numbers = courses.map((course) => String(course.number).padStart(2, "0"));
  const bores: Bore[] = [];
  for (const run of runs) {
    for (const member of run.members) {
      // The same at every course but for its height: worked out once.
      const at = boreAt(run, member, job);
      const behind = shared.has(member.id) ? `/${run.id}` : "";
      const climb = climbTo(at.entryFace, member);
      courses.forEach((course, index) => {
        const { number } = course;
        const height = courseHeight(course, run);
        const mark = `${member.id}-${numbers[index]}${behind}`;
        const offset = at.offset - shiftAt(member, height, job);
        const heights = { height, entryHeight: height + climb, exitHeight: height - climb };
        bores.push({ mark, verticalId: member.id, course: number, runId: run.id, ...heights, ...at, offset });
      });
    }
  }
  return bores;
}

/** How far the middle of a leaning post is off the line of the cables at a height, on a mark of the tape: away from the deck. */
const shiftAt = ({ lean }: Vertical, height: Mm, job: Job): Mm => (lean === 0 ? 0 : roundNearest(lean * height, job.limits.tapeStep.value));

type BoreAt = Omit<Bore, "mark" | "verticalId" | "course" | "runId" | "height" | "entryHeight" | "exitHeight">;

/** A bore follows the slope of its side. */
const drilled = (member: Vertical): Pick<Bore, "angle" | "skew" | "drilledLength"> => ({
  angle: member.slope,
  skew: boreSkew(member),
  drilledLength: throughPost(member),
});

/** Posts on which one run ends and the next begins: their bores are named with the run. */
function sharedPosts(runs: readonly RunGeometry[]): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const run of runs) for (const member of run.members) counts.set(member.id, (counts.get(member.id) ?? 0) + 1);
  return new Set([...counts].filter(([, count]) => count > 1).map(([id]) => id));
}

function boreAt(run: RunGeometry, member: Vertical, job: Job): BoreAt {
  const end = [run.left, run.right].find((one) => one.postId === member.id);
  if (end !== undefined) return endBoreOf(end, member, job);
  const bend = run.bends.filter((one) => one.postId === member.id).reduce((sum, one) => sum + one.angle, 0);
  const material = member.kind === "post" ? job.posts.section.material : job.spacers.section.material;
  // One post at a corner turns the cable at both mouths, by half at each.
  const steepest = member.corner === undefined ? bend : bend / 2;
  const bushing = material !== "wood" || steepest > job.fittings.bushingAngle.value;
  const kind: BoreKind = steepest > job.fittings.bushingAngle.value ? "bend" : "pass";
  const diameter = bushing ? job.fittings.bushingBore.value : job.fittings.passBore.value;
  return {
    kind,
    offset: 0,
    diameter,
    ...sleeveHoleOf(diameter, member, job),
    through: true,
    counterbore: null,
    entryFace: entryFaceOf(run, member),
    bushing,
    bend,
    ...drilled(member),
  };
}

/** From the left; but the first post after a corner from the right, where its bay gives room for the drill. */
function entryFaceOf(run: RunGeometry, member: Vertical): Face {
  const behind = run.spans.find((span) => span.bay.rightId === member.id);
  return behind?.bay.kind === "corner" ? "right" : "left";
}

/** End bores are drilled from the cable's side, so that a tear-out stays under the washer's side; the counterbore from the back. */
function endBoreOf(end: RunEnd, member: Vertical, job: Job): BoreAt {
  if (isOnFace(end)) return blindBoreOf(end, member, job);
  const depth = counterboreDepth(end, job);
  const diameter = endBore(end, job);
  const inWood = depth > 0 ? { diameter: job.fittings.grip.counterbore.value, depth } : null;
  const counterbore = washerHole(end, job) ?? inWood;
  return {
    kind: end.kind === "stud" ? "stud end" : "grip end",
    offset: end.offset,
    diameter,
    ...sleeveHoleOf(diameter, member, job),
    through: true,
    counterbore: counterbore === null ? null : { ...counterbore, face: end.backFace },
    entryFace: end.backFace === "left" ? "right" : "left",
    bushing: false,
    bend: 0,
    ...drilled(member),
  };
}

/** A blind hole from the face that the cable comes to. */
const blindBoreOf = (end: RunEnd, member: Vertical, job: Job): BoreAt => ({
  ...(end.kind === "anchor"
    ? {
        kind: "anchor end",
        diameter: pierNamed(job, member.id).anchor.hole.value,
        drilledLength: pierNamed(job, member.id).anchor.depth.value,
      }
    : { kind: "face end", diameter: faceOf(job).hole.value, drilledLength: faceDepth(member.id, job) }),
  offset: end.offset,
  through: false,
  counterbore: null,
  entryFace: end.backFace === "left" ? "right" : "left",
  bushing: false,
  bend: 0,
  angle: member.slope,
  skew: 0,
});

interface BitCount {
  readonly diameter: Mm;
  readonly use: string;
  deepest: Mm;
  /** The greatest depth with the guide block that the bit goes through first. */
  reach: Mm;
  holes: number;
}

/** What a bit goes through for a hole of a bore, of this depth. */
export const reachOf = ({ angle, skew }: Pick<Bore, "angle" | "skew">, depth: Mm): Mm =>
  depth + (angle === 0 && skew === 0 ? 0 : GUIDE_BLOCK_mm);

/** How many holes of each size and depth: what to buy in bits and how long they must be. */
export function countBits(bores: readonly Bore[], job: Job): readonly BitUse[] {
  const uses: BitCount[] = [];
  const count = (bore: Bore, diameter: Mm, depth: Mm, use: string, holes = 1): void => {
    const reach = reachOf(bore, depth);
    const known = uses.find((one) => one.diameter === diameter && one.use === use);
    if (known === undefined) uses.push({ diameter, use, deepest: depth, reach, holes });
    else {
      known.deepest = Math.max(known.deepest, depth);
      known.reach = Math.max(known.reach, reach);
      known.holes += holes;
    }
  };
  for (const bore of bores) {
    count(bore, bore.diameter, bore.drilledLength, useOf(bore));
    if (bore.counterbore !== null) count(bore, bore.counterbore.diameter, bore.counterbore.depth, counterboreUse(bore));
    if (bore.sleeveHole !== undefined) count(bore, bore.sleeveHole, wallOf(job), SLEEVE_USE, sleeveHoles(bore));
  }
  const step = job.units === "inch" ? BIT_STEP_mm.inch : BIT_STEP_mm.mm;
  return uses
    .map(({ reach, ...one }) => ({ ...one, bitLength_min: roundUp(reach + BIT_EXTRA_mm, step) }))
    .sort((a, b) => a.diameter - b.diameter || (a.use < b.use ? -1 : 1));
}

/** Bits are sold in steps; a length to look for is rounded up to these (common practice, no source). */
const BIT_STEP_mm = { inch: 12.7, mm: 10 };

/** What the holes in a sleeve are listed for; each bore has one in every face but that of its washer. */
export const SLEEVE_USE = "hole in the sleeve, each face";
export const WASHER_HOLE = "washer's hole in the sleeve";

/** What the bit of a counterbore is listed for. */
export const counterboreUse = ({ sleeveHole }: Pick<Bore, "sleeveHole">): string =>
  sleeveHole === undefined ? "counterbore" : WASHER_HOLE;

/** How many of its faces have a hole for the cable. */
export const sleeveHoles = ({ counterbore }: Pick<Bore, "counterbore">): number => (counterbore === null ? 2 : 1);

const wallOf = ({ posts: { sleeve } }: Job): Mm => sleeve?.wall ?? 0;

/** What a bore's bit is listed for. */
export const useOf = ({ bushing, kind, skew }: Pick<Bore, "bushing" | "kind" | "skew">): string => {
  const name = skew === 0 ? kind : `${kind} on the mitre`;
  return bushing ? `${name}, bushing` : name;
};

/** The bit that a bore is made with, as `bitsOf` lists it. */
export function bitOf({ bits }: { readonly bits: readonly BitUse[] }, bore: Bore): BitUse {
  const found = bits.find(({ diameter, use }) => diameter === bore.diameter && use === useOf(bore));
  if (found === undefined) throw new RangeError(`no bit for ${bore.mark}`);
  return found;
}

/** Of the middle of a bore on one of its two faces, above the datum under the middle of its post. */
export const heightOn = ({ entryFace, entryHeight, exitHeight }: Bore, face: Face): Mm => (face === entryFace ? entryHeight : exitHeight);
