// Which sides slope and which are level, and what are slopes called?
import type { Plan } from "../../plan/plan.ts";
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
