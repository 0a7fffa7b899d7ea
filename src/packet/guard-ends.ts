// Where does the guard end, at its two ends and at what interrupts it, and what stands behind each end post?
import type { GuardEnd } from "../job/job.ts";
import type { Plan, Vertical } from "../plan/plan.ts";
import type { Mm } from "../units/quantity.ts";
import type { Text } from "./packet.ts";

export interface GuardEndPlace {
  readonly post: Vertical;
  /** On which hand of the post the guard ends. */
  readonly hand: "left" | "right";
  readonly end: GuardEnd;
  /** What the gap is measured to: "wall", "column", "house corner". */
  readonly against: Text;
  /** In the job file, below guard: "start", "sides / A / interrupted / end". */
  readonly key: Text;
}

/** From left to right along the guard. */
export const guardEnds = (plan: Plan): readonly GuardEndPlace[] =>
  plan.sides.flatMap((side): readonly GuardEndPlace[] => {
    const posts = plan.verticals.filter(({ kind, sideIndex }) => kind !== "spacer" && sideIndex === side.index);
    const [first, last] = [posts[0], posts.at(-1)];
    const before = side.index === 0 ? null : (plan.sides[side.index - 1]?.id ?? null);
    const isLast = side.index === plan.sides.length - 1;
    return [
      ...(side.begins === null || first === undefined
        ? []
        : [
            {
              post: first,
              hand: "left",
              end: side.begins,
              against: againstOf(plan, side.index - 1),
              key: before === null ? "start" : `sides / ${before} / interrupted / start`,
            } as const,
          ]),
      ...(side.ends === null || last === undefined
        ? []
        : [
            {
              post: last,
              hand: "right",
              end: side.ends,
              against: againstOf(plan, side.index),
              key: isLast ? "end" : `sides / ${side.id} / interrupted / end`,
            } as const,
          ]),
    ];
  });

/** What a side meets behind its end: a column and a house corner by their names, all else is a wall. */
export function againstOf({ job }: Pick<Plan, "job">, sideIndex: number): Text {
  const what = job.sides[sideIndex]?.interrupted?.what;
  return what === "column" || what === "house corner" ? what : "wall";
}

export interface GatePlace {
  readonly sides: readonly [Text, Text];
  /** Its two posts: the end posts of the guard beside it. */
  readonly posts: readonly [Text, Text];
  readonly width: Mm;
}

/** Gates, with the posts of the guard on both sides of them. */
export const gatesOf = (plan: Plan): readonly GatePlace[] =>
  plan.job.sides.flatMap(({ id, interrupted }, index): readonly GatePlace[] => {
    if (interrupted?.what !== "gate") return [];
    const ends = guardEnds(plan);
    const left = ends.find(({ post, hand }) => post.sideIndex === index && hand === "right");
    const right = ends.find(({ post, hand }) => post.sideIndex === index + 1 && hand === "left");
    const next = plan.sides[index + 1]?.id ?? "";
    return [{ sides: [id, next], posts: [left?.post.id ?? "", right?.post.id ?? ""], width: interrupted.width }];
  });

/** One story on every sheet. */
export const gateAlone = ({ posts: [left, right] }: GatePlace): Text =>
  `the gate hangs on posts of its own: nothing of it is fixed to ${left} or ${right}, unless an engineer checked them with it`;

/** What stands out of the end posts narrows the way through. */
export const gateCaution = ({ posts: [left, right] }: GatePlace): Text =>
  `Studs, nuts and cut tails at ${left} and ${right} stand into the opening of the gate: cap every one, and let leaf and latch clear them. The clear width is measured between the caps, not between the posts.`;
