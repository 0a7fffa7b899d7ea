// What has changed in the frame: sides, rails, posts and spacers?
import type { Plan, Vertical } from "../plan/plan.ts";
import type { Opening } from "../plan/rake-plan.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_rad } from "../units/tolerance.ts";
import type { Pair } from "./align.ts";
import type { Difference, Draft } from "./changes.ts";
import { gathered, numberDiffers, wordDiffers } from "./differences.ts";
import type { Match } from "./match.ts";

export const frameChanges = (match: Match): readonly Draft[] => [
  ...sideChanges(match),
  ...railChanges(match),
  ...nameChanges(match),
  ...match.verticals.flatMap((pair) => verticalChanges(pair, match)),
];

/** All posts that stand where they stood under another mark are one change, and all spacers. */
const nameChanges = ({ verticals }: Match): readonly Draft[] =>
  (["post", "spacer", "pier"] as const).flatMap((subject): readonly Draft[] => {
    const renamed = verticals.flatMap(({ before, after }) =>
      before !== null && after?.kind === subject && before.id !== after.id ? [{ from: before.id, to: after.id }] : [],
    );
    const differences = renamed.flatMap(({ from, to }) => wordDiffers("mark", [from, to]));
    return renamed.length === 0 ? [] : [{ todo: "mark", subject, what: "renamed", marks: renamed.map(({ to }) => to), differences }];
  });

const idsOf = (...lists: readonly (readonly { readonly id: string }[])[]): readonly string[] => [
  ...new Set(lists.flat().map(({ id }) => id)),
];

function sideChanges({ before, after }: Match): readonly Draft[] {
  return idsOf(before.sides, after.sides).flatMap((id): readonly Draft[] => {
    const [old, now] = [before, after].map(({ sides }) => sides.find((side) => side.id === id));
    const differences = [
      ...numberDiffers("length", [old?.length, now?.length], { kind: "station" }),
      ...numberDiffers("turn at its right-hand end", [old?.turn, now?.turn], { kind: "angle", same: SAME_rad }),
      ...numberDiffers("slope", [old?.slope, now?.slope], { kind: "slope", same: SAME_rad }),
    ];
    if (differences.length === 0) return [];
    const what = old === undefined ? "added" : now === undefined ? "removed" : "changed";
    return [{ todo: "set", subject: "side", what, marks: [id], differences }];
  });
}

/** The lower and the upper edge of what the cables fill, and the top of the guard: of the level sides together, and of each slope. */
function railChanges({ before, after, same }: Match): readonly Draft[] {
  const slopes = idsOf(before.sides, after.sides).filter((id) => [before, after].every((plan) => rakedOpening(plan, id) !== undefined));
  const drafts = [
    ...railChange("level sides", [levelOpening(before), levelOpening(after)], same),
    ...slopes.flatMap((id) => railChange(id, [rakedOpening(before, id), rakedOpening(after, id)], same)),
  ];
  return gathered(drafts);
}

const levelOpening = ({ sides, opening }: Plan): Opening | undefined => (sides.some(({ slope }) => slope === 0) ? opening : undefined);
const rakedOpening = ({ rakes }: Plan, id: string): Opening | undefined => rakes.find(({ sideId }) => sideId === id)?.opening;

function railChange(mark: string, [old, now]: readonly [Opening | undefined, Opening | undefined], same: Mm): readonly Draft[] {
  if (old === undefined || now === undefined) return [];
  const differences = [
    ...numberDiffers("lower edge of the opening", [old.bottom, now.bottom], { kind: "height", same }),
    ...numberDiffers("upper edge of the opening", [old.top, now.top], { kind: "height", same }),
    ...numberDiffers("top of the guard", [old.guardHeight, now.guardHeight], { kind: "height", same }),
  ];
  return differences.length === 0 ? [] : [{ todo: "set", subject: "rail", what: "changed", marks: [mark], differences }];
}

function verticalChanges({ before: old, after: now }: Pair<Vertical>, { same }: Match): readonly Draft[] {
  const one = now ?? old;
  if (one === null) return [];
  const common = { subject: one.kind, marks: [one.id] };
  const where = numberDiffers(`station on side ${one.sideId}`, [old?.station, now?.station], { kind: "station", same });
  const section = sectionDiffers(old, now);
  if (old === null || now === null) {
    return [{ ...common, todo: "set", what: old === null ? "added" : "removed", differences: [...where, ...section] }];
  }
  const differences = [...where, ...section, ...wordDiffers("stands as", [old.role, now.role])];
  if (differences.length === 0) return [];
  const isSet = where.length + section.length > 0;
  return [{ ...common, todo: isSet ? "set" : "read", what: where.length > 0 ? "moved" : "changed", differences }];
}

/** Another piece of wood or metal, in which nothing is bored. */
export const isOther = (old: Vertical, now: Vertical): boolean => sectionDiffers(old, now).length > 0;

/** A section of the same name may have another size where a post was found so. */
function sectionDiffers(old: Vertical | null, now: Vertical | null): readonly Difference[] {
  const names = wordDiffers("section", [old?.sectionName ?? null, now?.sectionName ?? null]);
  if (names.length > 0 || old === null || now === null) return names;
  return [
    ...numberDiffers("size along the side", [old.along, now.along], { kind: "size" }),
    ...numberDiffers("size across", [old.across, now.across], { kind: "size" }),
  ];
}
