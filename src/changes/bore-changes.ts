// What has changed in the bores of posts that stand in both plans, and what do the old holes do to the new ones?
import { heightOn } from "../plan/bores.ts";
import type { Bore, Face, Plan, Vertical } from "../plan/plan.ts";
import type { Mm } from "../units/quantity.ts";
import { roundNearest } from "../units/round.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { align, type Pair } from "./align.ts";
import type { Difference, Draft, Todo } from "./changes.ts";
import { gathered, numberDiffers, wordDiffers } from "./differences.ts";
import { isOther } from "./frame-changes.ts";
import type { Match } from "./match.ts";
import { besideHoles } from "./old-holes.ts";

/** Bores that say the same of several posts are one change; those of posts that are new, gone or of another section are told with their posts. */
export function boreChanges(match: Match): readonly Draft[] {
  return gathered(
    match.verticals.flatMap(({ before, after }) =>
      before === null || after === null || isOther(before, after) ? [] : inOnePost(before, after, match),
    ),
  );
}

function inOnePost(old: Vertical, now: Vertical, match: Match): readonly Draft[] {
  const [before, after] = [rowsOf(match.before, old.id), rowsOf(match.after, now.id)];
  const bores = Array.from({ length: Math.max(before.length, after.length) })
    .flatMap((_, index) => align(before[index] ?? [], after[index] ?? [], { placeOf: ({ height }) => height, same: match.same }))
    .map((pair) => told(pair, match));
  // Holes that may be there already, and are no bores any more.
  const holes = bores.flatMap(({ pair, isElsewhere }) =>
    pair.before !== null && (pair.after === null || isElsewhere) ? [pair.before] : [],
  );
  return bores.flatMap((bore) => {
    const { pair, differences, isElsewhere } = bore;
    const mark = (pair.after ?? pair.before)?.mark;
    if (differences.length === 0 || mark === undefined) return [];
    const isHole = pair.after !== null && (pair.before === null || isElsewhere);
    const beside = isHole ? besideHoles(pair.after, { holes, post: now, job: match.after.job }) : null;
    return [
      {
        todo: todoOf(bore, beside?.isNear === true),
        subject: "bore",
        what: whatOf(bore),
        marks: [mark],
        differences,
        ...(beside === null ? {} : { left: beside.left }),
      },
    ];
  });
}

interface Told {
  readonly pair: Pair<Bore>;
  readonly differences: readonly Difference[];
  /** The old hole is no hole for the new bore. */
  readonly isElsewhere: boolean;
}

function told(pair: Pair<Bore>, match: Match): Told {
  const differences = differencesOf(pair, match);
  return { pair, differences, isElsewhere: differences.some((difference) => isOff(difference, match.step + SAME_mm)) };
}

/** As in a record of what was built: a bore that is off by no more than a step of the tape is where it should be. */
function isOff({ of, from, to }: Difference, most: Mm): boolean {
  if (!PLACES.has(of) || from === null || to === null || typeof from === "string" || typeof to === "string") return false;
  return from.kind === "angle" || Math.abs(to.value - from.value) > most;
}

function whatOf({ pair: { before, after }, differences, isElsewhere }: Told): Draft["what"] {
  if (before === null) return "added";
  if (after === null) return "removed";
  if (isElsewhere) return "moved";
  return differences.every(({ of }) => of === "course") ? "renamed" : "changed";
}

/** What a hole that is there already lets somebody do: one that was wrong is asked about before a bit is set beside it. */
function todoOf({ pair: { before, after }, differences, isElsewhere }: Told, isNear: boolean): Todo {
  if (after === null || isNear) return "ask";
  if (before === null || isElsewhere) return "bore";
  if (differences.some(shrinks)) return "ask";
  if (differences.every(({ of }) => of === "course")) return "mark";
  return differences.every(({ of }) => READ.has(of)) ? "read" : "bore";
}

/** What is no other hole. */
const READ = new Set(["course", "bit goes in on the face", "for"]);

/** A counterbore from the other face is a second one. */
function shrinks({ of, from, to }: Difference): boolean {
  if (of === "made") return true;
  if (of === "counterbore from the face") return from !== null && to !== null;
  if (!GROWING.has(of) || from === null || typeof from === "string") return false;
  return to === null || typeof to === "string" || to.value < from.value;
}

/** The bores of each run in a post from the lowest up; the left-hand run first. */
function rowsOf({ bores }: Plan, id: string): readonly (readonly Bore[])[] {
  const rows = new Map<string, Bore[]>();
  for (const bore of bores.filter(({ verticalId }) => verticalId === id)) rows.set(bore.runId, [...(rows.get(bore.runId) ?? []), bore]);
  return [...rows.values()].map((row) => row.toSorted((a, b) => a.height - b.height));
}

/** Properties of which less cannot be undone: a hole gets wider and deeper, never narrower. */
const GROWING = new Set(["diameter", "depth", "counterbore", "depth of the counterbore", "hole in the sleeve"]);
/** Where a hole is. */
const PLACES = new Set(["height", "height on the left face", "height on the right face", "across", "angle off square"]);

/** On a slope each face is bored at the mark of the tape that is nearest: this is what the sheets print. */
const drilledOn = (bore: Bore, face: Face, step: Mm): Mm => roundNearest(heightOn(bore, face), step);

/** Of a bore that is new or gone its mark and its size: where it is stands on the sheets that have it. */
function differencesOf({ before: old, after: now }: Pair<Bore>, { step, same }: Match): readonly Difference[] {
  if (old === null || now === null) return numberDiffers("diameter", [old?.diameter, now?.diameter], { kind: "diameter" });
  const faces = old.angle === 0 && now.angle === 0 ? [] : (["left", "right"] as const);
  return [
    ...wordDiffers("course", [`${old.course}`, `${now.course}`]),
    ...numberDiffers("height", [old.height, now.height], { kind: "height", same }),
    ...faces.flatMap((face) =>
      numberDiffers(`height on the ${face} face`, [drilledOn(old, face, step), drilledOn(now, face, step)], { kind: "height", same }),
    ),
    ...numberDiffers("across", [old.offset, now.offset], { kind: "across", same }),
    ...numberDiffers("angle off square", [old.skew, now.skew], { kind: "angle", same: same / now.drilledLength }),
    ...numberDiffers("diameter", [old.diameter, now.diameter], { kind: "diameter" }),
    ...madeDiffers(old, now),
  ];
}

const depthOf = ({ through, drilledLength }: Bore): Mm | null => (through ? null : drilledLength);

const madeDiffers = (old: Bore, now: Bore): readonly Difference[] => [
  ...wordDiffers("made", [old.through ? "right through" : "blind", now.through ? "right through" : "blind"]),
  ...numberDiffers("depth", [depthOf(old), depthOf(now)], { kind: "depth" }),
  ...numberDiffers("counterbore", [old.counterbore?.diameter, now.counterbore?.diameter], { kind: "diameter" }),
  ...numberDiffers("depth of the counterbore", [old.counterbore?.depth, now.counterbore?.depth], { kind: "depth" }),
  ...wordDiffers("counterbore from the face", [old.counterbore?.face ?? null, now.counterbore?.face ?? null]),
  ...numberDiffers("hole in the sleeve", [old.sleeveHole, now.sleeveHole], { kind: "diameter" }),
  ...wordDiffers("bit goes in on the face", [old.entryFace, now.entryFace]),
  ...wordDiffers("bushing", [old.bushing ? "yes" : "no", now.bushing ? "yes" : "no"]),
  ...wordDiffers("for", [old.kind, now.kind]),
];
