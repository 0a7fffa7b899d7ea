// How does each side of the frame answer when all cables stand at their targets?
import { alongPost } from "../mechanics/guard-frame.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { RunClimate } from "./climate-plan.ts";
import { standsOn } from "./corner-post.ts";
import { highPulls } from "./frame-check-loads.ts";
import type { PostAnswer, SideAnswer } from "./frame-plan.ts";
import type { FrameGroup, SideFrame } from "./frames.ts";
import { stateOf } from "./movement.ts";
import type { Run, Vertical } from "./plan.ts";
import { courseHeight } from "./set-off.ts";

/** Pulls at the nuts of a group's cables when every run stands at its target. */
export const targetPulls = (group: FrameGroup, runs: readonly Pick<Run, "id" | "tension">[]): readonly number[] =>
  group.runs.flatMap(({ id }) => group.courses.map(() => runs.find((run) => run.id === id)?.tension.target ?? 0));

/** Movements and bases at the targets, as they are measured; rails and feet as hard as they are ever pressed or lifted, as their joints must stand it. */
export const answersOf = (
  group: FrameGroup,
  plan: { readonly runs: readonly Run[]; readonly climate: readonly RunClimate[] },
): readonly SideAnswer[] =>
  group.sides.map((side) => answerOf(side, group, { pulls: targetPulls(group, plan.runs), high: highPulls(group, plan) }));

interface Pulls {
  readonly pulls: readonly Newton[];
  readonly high: readonly Newton[];
}

function answerOf(frame: SideFrame, { courses }: FrameGroup, { pulls, high }: Pulls): SideAnswer {
  const state = stateOf(frame, pulls);
  const pressed = stateOf(frame, high);
  const heights = [...courses.map((course) => courseHeight(course, frame.side)), frame.guard.input.height];
  const isOn = (post: Vertical | undefined): boolean => post !== undefined && standsOn(post, frame.side.index);
  const isOwn = (place: number): boolean => isOn(frame.posts[place]);
  // A line of sides has one frame: of its bays those that touch this side.
  const beside = (thrusts: readonly Newton[]): readonly Newton[] => thrusts.filter((_, bay) => isOwn(bay) || isOwn(bay + 1));
  return {
    sideId: frame.side.id,
    posts: frame.posts.flatMap((post, index): readonly PostAnswer[] => {
      if (!isOn(post)) return [];
      const along = alongPost(frame.guard, state, index);
      const places = heights.map((height) => ({ height, movement: along(height).movement }));
      const largest = places.reduce((most, one) => (Math.abs(one.movement) > Math.abs(most.movement) ? one : most));
      return [
        {
          postId: post.id,
          ...largest,
          top: state.top[index] ?? 0,
          baseMoment_Nmm: state.baseMoment[index] ?? 0,
          baseShear: state.baseShear[index] ?? 0,
          baseThrust: pressed.baseThrust[index] ?? 0,
        },
      ];
    }),
    topRailThrust: Math.max(0, ...beside(pressed.topRailThrust)),
    bottomRailThrust: Math.max(0, ...beside(pressed.bottomRailThrust)),
  };
}

/** How much nearer the anchors of a run's cables come when all runs stand at their targets: of the cable that closes most. */
export function closingOf(group: FrameGroup, runs: readonly Pick<Run, "id" | "tension">[], runId: string): Mm {
  const pulls = targetPulls(group, runs);
  const from = group.runs.findIndex(({ id }) => id === runId) * group.courses.length;
  const own = group.flexibility.slice(from, from + group.courses.length);
  return Math.max(0, ...own.map((row) => row.reduce((sum, closing, other) => sum + closing * (pulls[other] ?? 0), 0)));
}
