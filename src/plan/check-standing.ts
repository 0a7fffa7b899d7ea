// Do the bores keep clear of what is on the posts?

import type { Job } from "../job/job.ts";
import { alongLean_max } from "../tables/practice.ts";
import type { Mm } from "../units/quantity.ts";
import { type Checked, limitCheck, question } from "./check-row.ts";
import { type HardwareZone, halfSeat } from "./hardware.ts";
import type { Bore, Check } from "./plan.ts";

interface NearestZone {
  readonly zone: HardwareZone;
  /** From the edge of the bore or its washer to the hardware, upright. */
  readonly clear: Mm;
}

/** The hardware that a bore comes nearest to on its post. */
export function nearestZone(bore: Bore, { hardware }: Pick<Checked, "hardware">, job: Job): NearestZone | null {
  const half = halfSeat(bore, job);
  const own = hardware.filter(({ postId }) => postId === bore.verticalId);
  return own.reduce<NearestZone | null>((nearest, zone) => {
    const clear = Math.max(zone.from - bore.height, bore.height - zone.to) - half;
    return nearest === null || clear < nearest.clear ? { zone, clear } : nearest;
  }, null);
}

/** What the tables here do not hold, and what the frame's model leaves out. */
export const mountQuestions = ({ posts }: Job): readonly Check[] => [
  ...(posts.built === "laminated"
    ? [
        question("laminated-posts", "Strength of laminated posts", {
          source: "derived",
          where: "computed with the values of sawn lumber of the stated species and grade",
          advice: "compare with the design values in the maker's report; bore square to the glue lines only as it allows",
        }),
      ]
    : []),
  ...(posts.sleeve === null
    ? []
    : [
        question("sleeved-rails", "Rails fastened to the wood in the sleeves", {
          source: "practice",
          where: "a sleeve carries nothing: rails and brackets reach through it",
          advice: `have rails, brackets and their fasteners reach the ${posts.section.name} inside, with a solid block where there is a gap`,
        }),
      ]),
  ...(posts.mount === "fascia"
    ? [
        question("fascia-mount", "Bending of posts at their fasteners on the fascia", {
          source: "derived",
          where: "bending is computed at the datum; at fasteners below it the shear of the post adds its depth there times the shear",
          advice:
            "have the fasteners, the fascia and the framing behind it designed for the moment and shear on sheet Z-805, taken at the fasteners",
        }),
      ]
    : []),
];

/** A gate is no part of the guard's plan, and pulls at the posts beside it. */
export const gateQuestions = ({ sides }: Job): readonly Check[] =>
  sides.flatMap(({ id, interrupted }) =>
    interrupted?.what === "gate"
      ? [
          question(`gate-${id}`, `Gate behind side ${id}`, {
            source: "derived",
            where: "its leaf, hinges and latch, and what it adds to the end posts beside it, are not computed",
            advice: "ask the authority for its rules on gates; hang it on posts of its own, or have the end post checked with it",
          }),
        ]
      : [],
  );

/** One row for each post with hardware: the bore that comes nearest to it. */
export function hardwareChecks(plan: Checked, job: Job): readonly Check[] {
  return [...new Set(plan.hardware.map(({ postId }) => postId))].flatMap((postId) => {
    const nearest = plan.bores
      .filter(({ verticalId }) => verticalId === postId)
      .flatMap((bore) => {
        const found = nearestZone(bore, plan, job);
        return found === null ? [] : [{ mark: bore.mark, ...found }];
      })
      .reduce((least, one) => (one.clear < least.clear ? one : least));
    return [
      limitCheck({
        id: `hardware-${postId}`,
        name: "Edge of a bore or washer to hardware",
        where: `${nearest.mark}, ${nearest.zone.what}`,
        rule: "at least",
        demand: nearest.clear,
        limit: job.posts.hardwareClearance,
        kind: "length",
        advice: "move the hardware",
      }),
    ];
  });
}

/**
 * On the mitre the cables press on the wood between their bores and the near edge of the post, a wedge of an eighth of its section: nearly all
 * of their push on the post crosses the bores as tension across the grain, for which wood has no published value.
 */
export function mitreQuestions({ bores }: Pick<Checked, "bores">): readonly Check[] {
  const posts = [...new Set(bores.flatMap(({ skew, verticalId }) => (skew === 0 ? [] : [verticalId])))];
  if (posts.length === 0) return [];
  return [
    {
      ...question("mitre-split", "Splitting of posts bored on the mitre", {
        source: "memory",
        where: "NDS 2018, 3.8.2: tension across the grain is avoided, or carried by steel",
        advice: `ask the engineer whether the wood between bores and edge of ${posts.join(", ")} holds the push of the bend, or which bolts or screws across the bores shall hold it; or make the corner with two posts`,
      }),
      where: posts.join(", "),
    },
  ];
}

/** Loads on a post count from its foot as if it were plumb: whether one that leans along the pull of its cables may hold them is asked. */
export function leanQuestions({ verticals, runs }: Pick<Checked, "verticals" | "runs">): readonly Check[] {
  const ends = new Set(runs.flatMap(({ left, right }) => [left.postId, right.postId]));
  const posts = verticals.filter(({ id, leansAlong }) => leansAlong !== undefined && ends.has(id)).map(({ id }) => id);
  if (posts.length === 0) return [];
  return [
    {
      ...question("lean-along", "End posts that lean along the guard", {
        source: alongLean_max.source,
        where: alongLean_max.where,
        advice: `ask the engineer whether ${posts.join(", ")} may hold cables as found, and look why it leans: a loose foot or rot goes on leaning; else set it plumb or replace it`,
      }),
      where: posts.join(", "),
    },
  ];
}
