// Which sides slope and which are level, and what are slopes called?
import type { Plan, RunEnd } from "../../plan/plan.ts";
import type { Cited } from "../../sources/cited.ts";
import { type FrictionRange, strandFriction } from "../../tables/friction.ts";
import type { Text } from "../packet.ts";
import { listed, refer, type SheetContext, unique } from "./kit.ts";

type Sloped = Pick<Plan, "sides" | "rakes">;

export const levelSides = ({ sides, rakes }: Sloped): readonly Text[] =>
  sides.map(({ id }) => id).filter((id) => !rakes.some(({ sideId }) => sideId === id));

export const slopedSides = ({ rakes }: Pick<Plan, "rakes">): readonly Text[] => rakes.map(({ sideId }) => sideId);

/** "side B", "sides B and D" */
export const sidesWord = (ids: readonly Text[]): Text => `side${ids.length === 1 ? "" : "s"} ${listed(ids)}`;

const has = ({ rakes }: Pick<Plan, "rakes">, wanted: "stair" | "ramp"): boolean => rakes.some(({ kind }) => kind === wanted);

/** What a board lies on. */
export function surfaceOf(plan: Pick<Plan, "rakes">): Text {
  if (!has(plan, "stair")) return "the ramp";
  return has(plan, "ramp") ? "the nosings or the ramp" : "the nosings";
}

export const onWhat = (kind: "stair" | "ramp"): Text => (kind === "stair" ? "the nosings" : "the ramp");

/** What lies over riser and tread. */
export const overSteps = ({ bottomRail }: Plan["job"]["frame"]): Text => (bottomRail === null ? "lowest cable" : "bottom rail");

/** "B 33.7 deg" */
export const slopesWords = (plan: Pick<Plan, "rakes">, angle: (slope: number) => Text): Text =>
  listed(plan.rakes.map(({ sideId, slope }) => `${sideId} ${angle(Math.abs(slope))}`));

/** "33.7 deg"; each by its side where slopes differ. */
export function anglesWords(plan: Pick<Plan, "rakes">, angle: (slope: number) => Text): Text {
  const all = unique(plan.rakes.map(({ slope }) => angle(Math.abs(slope))));
  return all.length === 1 ? (all[0] ?? "") : slopesWords(plan, angle);
}

/** What is bored on a slope stands on a sheet of its own. */
export const boreSheets = (context: SheetContext): Text =>
  context.plan.rakes.length === 0 ? refer(context, "bores") : `${refer(context, "bores")}, ${refer(context, "stairs")}`;

/** Of the steel of a washer on the face of a post. */
export const washerFriction = ({ posts }: Plan["job"]): Cited<FrictionRange> =>
  strandFriction(posts.section.material === "wood" ? "wood" : "metal");

/** Ends on slopes steeper than friction is sure to hold a washer: the pull of their cables pushes it along the face of the post. */
export const slidingEnds = ({ runs, verticals, job }: Pick<Plan, "runs" | "verticals" | "job">): readonly RunEnd[] =>
  runs
    .flatMap(({ left, right }) => [left, right])
    .filter(({ seat, postId }) => {
      const slope = verticals.find(({ id }) => id === postId)?.slope ?? 0;
      return seat > 0 && Math.tan(Math.abs(slope)) > washerFriction(job).value.low;
    });
