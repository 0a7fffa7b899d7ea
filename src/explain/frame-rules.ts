// How stiff is the frame, and how does it stand under its cables?

import { alongPost, type SideState } from "../mechanics/guard-frame.ts";
import { standsOn } from "../plan/corner-post.ts";
import { highPulls, type SideUnder } from "../plan/frame-check-loads.ts";
import type { PostAnswer } from "../plan/frame-plan.ts";
import type { FrameGroup, SideFrame } from "../plan/frames.ts";
import { stateOf } from "../plan/movement.ts";
import { courseHeight } from "../plan/set-off.ts";
import { superposed as onHardestDay } from "./framed.ts";
import { whereMost } from "./lists.ts";
import { derived, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Kind, Working } from "./trace.ts";

const solver = derived("plane frame by direct stiffness, one unit load after the other");

interface FramedSide {
  readonly group: FrameGroup;
  readonly frame: SideFrame;
}

function frameOf(reader: Reader, sideId: string): FramedSide {
  const run = must(
    reader.plan.runs.find(({ sideIds }) => sideIds.includes(sideId)),
    `run on side ${sideId}`,
  );
  const { group } = reader.group(run.id);
  return {
    group,
    frame: must(
      group.sides.find(({ side }) => side.id === sideId),
      `frame of side ${sideId}`,
    ),
  };
}

/** A value of a side that is the sum of what each cable does to it. */
function superposed(
  reader: Reader,
  side: FramedSide,
  { read, kind, what }: { readonly read: (state: SideState) => number; readonly kind: Kind; readonly what: string },
): readonly Input[] {
  const { group, frame } = side;
  const cables = group.cableFlexibility;
  const units = cables.map((_, own) =>
    read(
      stateOf(
        frame,
        cables.map((__, cable) => (cable === own ? 1 : 0)),
      ),
    ),
  );
  return [
    given("f", `${what} per newton at the nut of each cable`, units, kind, solver),
    reader.all(
      "T",
      "target at the nut of each cable on this frame",
      group.runs.flatMap(({ id }) => group.courses.map(() => `runs.${id}.tension.target`)),
    ),
  ];
}

const answer = (
  field: keyof PostAnswer,
  what: string,
  kind: Kind,
  read: (side: FramedSide, post: number, own: PostAnswer) => (state: SideState) => number,
): Rule =>
  rule(
    `frame.sides.*.posts.*.${field}`,
    `${what} of {1} on side {0} when all cables stand at their targets`,
    (reader, [sideId = "", postId]) => {
      const side = frameOf(reader, sideId);
      const own = must(
        reader.plan.frame.sides.find((one) => one.sideId === sideId)?.posts.find((one) => one.postId === postId),
        `post ${postId}`,
      );
      const post = side.frame.posts.findIndex(({ id }) => id === postId);
      return {
        formula: "dot(f, T)",
        inputs: superposed(reader, side, { read: read(side, post, own), kind, what }),
        origin: derived("superposition"),
      };
    },
  );

/** Of the courses and the middle of the top rail. */
function heightOfMost(reader: Reader, sideId: string, postId: string): Working {
  const { group, frame } = frameOf(reader, sideId);
  const targets = group.runs.flatMap(({ id }) => group.courses.map(() => reader.run(id).tension.target));
  const along = alongPost(
    frame.guard,
    stateOf(frame, targets),
    frame.posts.findIndex(({ id }) => id === postId),
  );
  const heights = [...group.courses.map((course) => courseHeight(course, frame.side)), frame.guard.input.height];
  return {
    formula: "whereMost(m, z)",
    inputs: [
      given(
        "m",
        "movement at each of these heights, without its sign: of each cable's influence times its target",
        heights.map((height) => Math.abs(along(height).movement)),
        "length",
        solver,
      ),
      given("z", "heights of the courses, and of the middle of the top rail", heights, "length"),
    ],
    functions: { whereMost },
    origin: derived("superposition, at every course and at the rail"),
  };
}

/** How the frame of a side stands among those of its group. */
const stateOn = (sides: readonly SideUnder[], { side }: SideFrame): SideState =>
  must(
    sides.find(({ frame }) => frame.side.index === side.index),
    `side ${side.id}`,
  ).state;

const answers: readonly Rule[] = [
  answer(
    "movement",
    "Largest movement along the side",
    "flexibility",
    ({ frame }, post, { height }) =>
      (state) =>
        alongPost(frame.guard, state, post)(height).movement,
  ),
  rule(
    "frame.sides.*.posts.*.height",
    "Height at which {1} on side {0} moves most when all cables stand at their targets",
    (reader, [sideId = "", postId = ""]) => heightOfMost(reader, sideId, postId),
  ),
  answer(
    "top",
    "Movement of the top",
    "flexibility",
    (_, post) =>
      ({ top }) =>
        top[post] ?? 0,
  ),
  answer(
    "baseMoment_Nmm",
    "Moment at the base along the side",
    "length",
    (_, post) =>
      ({ baseMoment }) =>
        baseMoment[post] ?? 0,
  ),
  answer(
    "baseShear",
    "Force that the base hands down along the side",
    "share",
    (_, post) =>
      ({ baseShear }) =>
        baseShear[post] ?? 0,
  ),
  rule(
    "frame.sides.*.posts.*.baseThrust",
    "Force that post {1} on side {0} stands on, all cables at the top of their bands on the hardest day; negative where they lift it",
    (reader, [sideId = "", postId = ""]): Working => {
      const { group, frame } = frameOf(reader, sideId);
      const post = frame.posts.findIndex(({ id }) => id === postId);
      const { text, inputs } = onHardestDay(reader, group, {
        symbol: "f",
        what: `force that ${postId} stands on`,
        kind: "share",
        read: (sides) => stateOn(sides, frame).baseThrust[post] ?? 0,
      });
      return { formula: text, inputs, origin: derived("superposition") };
    },
  ),
  ...(["topRailThrust", "bottomRailThrust"] as const).map((rail) =>
    rule(
      `frame.sides.*.${rail}`,
      `Greatest compression of the ${rail === "topRailThrust" ? "top" : "bottom"} rail of side {}, all cables at the top of their bands on the hardest day`,
      (reader, [sideId = ""]): Working => {
        const side = frameOf(reader, sideId);
        const thrusts = stateOf(side.frame, highPulls(side.group, reader.plan))[rail];
        // A line of sides has one frame: of its bays those that touch this side.
        const isOwn = (place: number): boolean => {
          const post = side.frame.posts[place];
          return post !== undefined && standsOn(post, side.frame.side.index);
        };
        const bay = thrusts.indexOf(Math.max(...thrusts.filter((_, place) => isOwn(place) || isOwn(place + 1))));
        if (bay < 0) return { formula: "z", inputs: [given("z", "there is no such rail", 0, "force")], origin: solver };
        const { text, inputs } = onHardestDay(reader, side.group, {
          symbol: "f",
          what: `compression of the rail in bay ${bay + 1} of posts`,
          kind: "share",
          read: (sides) => stateOn(sides, side.frame)[rail][bay] ?? 0,
        });
        return { formula: `max(0, ${text})`, inputs, origin: derived("superposition") };
      },
    ),
  ),
];

export const frameRules: readonly Rule[] = answers;
