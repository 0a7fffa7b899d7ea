// What goes wrong most in a job, and what is done then?
import { isCorner, jointsOf } from "../plan/joints.ts";
import { anchorEndsOf } from "../plan/pier.ts";
import type { Plan } from "../plan/plan.ts";
import type { Text } from "./packet.ts";
import { peopleOf } from "./wording.ts";

export type TroubleStep = "bore" | "reeve" | "tighten" | "prove";

export interface Trouble {
  /** The step at which it happens. */
  readonly step: TroubleStep;
  readonly when: Text;
  readonly then: Text;
}

const trouble = (step: TroubleStep, when: Text, then: Text): Trouble => ({ step, when, then });

/** If-then: what goes wrong most in this job, and what to do; in the order of the work. */
export function troubles(plan: Plan, home = false): readonly Trouble[] {
  const { office } = peopleOf(home);
  return [
    ...boringTroubles(plan, office),
    trouble(
      "reeve",
      "a cable is too short",
      "Do not stretch it and do not leave out turns of the nut. Use it in a shorter run, and order a new one.",
    ),
    ...(isGripped(plan)
      ? [
          trouble(
            "reeve",
            "the grip end was set too soon",
            "Do not pull it off by force. Cut it off only if enough cable is left. Else replace the cable.",
          ),
        ]
      : []),
    ...pullingTroubles(plan, office),
    trouble(
      "prove",
      "the sphere passes in one bay",
      `Read the tension there. If it is in its band, do not tighten further: ask ${office}. More pull may harm the frame.`,
    ),
    trouble("prove", "rust spots show", "Clean with a soft cloth and a stainless cleaner. Steel dust from other tools causes most of it."),
  ];
}

const isGripped = (plan: Plan): boolean => plan.runs.some(({ left, right }) => left.kind === "grip" || right.kind === "grip");
const isPulledAtBoth = (plan: Plan): boolean => plan.runs.some(({ left, right }) => left.pulls && right.pulls);

function boringTroubles(plan: Plan, office: Text): readonly Trouble[] {
  const wood = plan.job.posts.section.material === "wood";
  const height = "Write the real height in the table. If a gap is now above its limit, stop.";
  const slope =
    plan.rakes.length === 0
      ? []
      : [
          trouble(
            "bore",
            "a bore on a slope comes out off its mark",
            "Stop. Hold the bevel to guide block and slope, look at the level marks. Bore nothing more there until you know why.",
          ),
        ];
  const pier = plan.verticals.some(({ kind }) => kind === "pier")
    ? [
        trouble(
          "bore",
          "a pier cracks or crumbles at a hole, or a hole meets a void",
          "Stop. Set no anchor there. Let the engineer who accepted the pier decide.",
        ),
      ]
    : [];
  return wood
    ? [
        trouble(
          "bore",
          "the bit meets metal",
          `Stop. Do not force it. Move nothing until somebody knows what it is. Ask ${office} for another height.`,
        ),
        trouble("bore", "a hole is off its height", `${height} Ask before you plug and bore again.`),
        trouble(
          "bore",
          "a post checks or splits at a bore",
          "Stop. Bore no more in that post. Let somebody who knows wood decide if it stays.",
        ),
        ...pier,
        ...slope,
      ]
    : [
        trouble(
          "bore",
          "the bit meets a weld, a bolt or a sleeve",
          `Stop. Do not force it. Find out what it is. Ask ${office} for another height.`,
        ),
        trouble("bore", "a hole is off its height", `${height} Ask before you bore again.`),
        trouble("bore", "a bore has a sharp edge", "Deburr it and fit the bushing. Bare metal must not touch the strand."),
        ...pier,
        ...slope,
      ];
}

function pullingTroubles(plan: Plan, office: Text): readonly Trouble[] {
  const joints = jointsOf(plan.runs);
  const bushed = plan.bores.some(({ bushing }) => bushing);
  return [
    trouble(
      "tighten",
      "the nut turns stiffly or squeaks",
      "Stop at once. Turn it back a little, clean the thread, oil it. A nut that has seized must be cut off and replaced.",
    ),
    trouble(
      "tighten",
      "the end of the thread is reached and the cable is still slack",
      isGripped(plan)
        ? "Turn the nut back to its first turns. Pull the slack through the grip end. Then start again."
        : `Stop. The cable is too long for its studs: ask ${office} before you cut it.`,
    ),
    trouble(
      "tighten",
      "cables tightened first have gone slack",
      "This is expected: the log counts with it. Go on in its order to its end. Then read all once more.",
    ),
    trouble(
      "tighten",
      "an end post leans, or a rail bows",
      "Stop tightening. Write down the movement. Let a licensed engineer look at it.",
    ),
    ...(anchorEndsOf(plan).length > 0
      ? [
          trouble(
            "tighten",
            "an anchor gives, or its pier cracks or moves",
            "Stop. Slacken the cables of that pier. Let a licensed engineer look at it.",
          ),
        ]
      : []),
    ...(joints.length > 0
      ? [
          trouble(
            "tighten",
            `the far side of a ${joints.every((id) => isCorner(plan, id)) ? "corner" : "bend"} reads low`,
            `${bushed ? "Check the bushings. " : ""}Pull again ${isPulledAtBoth(plan) ? "from both ends" : "slowly"}. Never pull above the highest reading.`,
          ),
        ]
      : []),
  ];
}
