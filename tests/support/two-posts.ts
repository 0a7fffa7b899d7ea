// Which guard is simple enough to check by hand? Two posts on fixed bases, one cable half-way up, a rail that does not give.

import type { Job } from "../../src/job/job.ts";
import { guardFrame } from "../../src/mechanics/guard-frame.ts";
import type { CheckInput } from "../../src/plan/frame-check-loads.ts";
import { postMember } from "../../src/plan/frame-members.ts";
import type { FrameGroup } from "../../src/plan/frames.ts";
import type { Plan } from "../../src/plan/plan.ts";

interface TwoPosts {
  readonly tension: number;
  readonly height: number;
  readonly spacing: number;
}

/** The two end posts of a plan with one side, set so far apart; each post is then a cantilever that its rail props. */
export function twoPosts(plan: Plan, job: Job, { tension, height, spacing }: TwoPosts): CheckInput {
  const { section, modulus } = postMember(job);
  const post = { E: modulus.value, A: section.area_mm2, I: section.x.inertia_mm4, base: "fixed" as const };
  const all = plan.verticals.filter(({ kind }) => kind === "post");
  const [first, last] = [all[0], all.at(-1)];
  const [course, run, side] = [plan.courses[0], plan.runs[0], plan.sides[0]];
  if (first === undefined || last === undefined || course === undefined || run === undefined || side === undefined)
    throw new Error("the plan has no posts, course, run or side");
  const posts = [
    { ...first, station: 0 },
    { ...last, station: spacing },
  ];
  const courses = [{ ...course, height: height / 2 }];
  const guard = guardFrame({
    posts: posts.map(({ station }) => ({ ...post, station })),
    height,
    topRail: { EA: "rigid", EI: 0, joint: "pinned" },
    bottomRail: null,
    cables: [{ left: 0, right: 1, height: height / 2 }],
  });
  const group = {
    runs: [{ id: run.id, bends: [] }],
    courses,
    sides: [{ side, posts, guard, terms: new Map([[0, [{ cable: 0, share: 1, part: 1 }]]]) }],
  } as unknown as FrameGroup;
  return {
    ...plan,
    verticals: posts,
    courses,
    runs: [{ ...run, tension: { ...run.tension, high: tension } }],
    // No day pulls harder than another.
    climate: [],
    groups: [group],
    job,
  };
}
