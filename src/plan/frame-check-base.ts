// What must the base of a post hold, and does it by its own report?
import type { Job } from "../job/job.ts";
import { coupleForce } from "../mechanics/fastener.ts";
import { strengthCheck } from "../mechanics/strength-check.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { alone, loadsText, type PostQuestion, postGroups, type Situation, withLoads } from "./frame-check-post.ts";
import { askRow, limitRow, worstOf } from "./frame-check-row.ts";
import type { CheckPart, FrameCheck } from "./frame-plan.ts";
import type { Vertical } from "./plan.ts";

/** Name of the part of a base's row that pulls it up; the post stands behind it. */
export const LIFT = "pull of the cables upwards";

const momentOf = ({ moment }: Situation): number => Math.hypot(moment.x, moment.y);
const shearOf = ({ shear }: Situation): Newton => Math.hypot(shear.x, shear.y);

/** Bolts are chosen for all bases of a group: the greatest moment, shear and pull upwards may stand at different posts. */
interface Feet {
  readonly moment: Situation;
  readonly shear: Situation;
  readonly lift: Situation;
}

function worstFeet(feet: readonly Situation[]): Feet | undefined {
  const [moment, shear, lift] = [worstOf(feet, momentOf), worstOf(feet, shearOf), worstOf(feet, ({ post }) => post.lift)];
  return moment === undefined || shear === undefined || lift === undefined ? undefined : { moment, shear, lift };
}

/** Moment at the datum, by groups of like posts: under the cables alone, which bounds the tension, and with the code's load. */
export function baseRows(question: PostQuestion, job: Job): readonly FrameCheck[] {
  return postGroups(question).flatMap(({ name, posts }) => {
    const feet = posts.map((post) => ({ ...post, places: post.places.filter(({ height }) => height === 0) }));
    const [cables, loaded] = [worstFeet(alone(feet)), worstFeet(withLoads(feet, question))];
    const known = job.posts.baseCapacity_Nmm !== null;
    // Where nothing is known to compare with, the greater demand is enough.
    const asked = known ? [cables, loaded] : [loaded ?? cables];
    const below = Math.min(...posts.map(({ post }) => belowDatum(post, job)));
    return asked.flatMap((one) => (one === undefined ? [] : [baseRow(name, { ...one, below }, job)]));
  });
}

/** Length of a post below the datum. */
export const belowDatum = ({ slope }: Pick<Vertical, "slope">, { posts, frame }: Job): Mm =>
  slope === 0 ? posts.belowDatum : frame.onRakes.postBelow.value;

interface BelowFeet extends Feet {
  /** The least length below the datum among them. */
  readonly below: Mm;
}

function baseRow(name: string, { moment: foot, shear, lift, below }: BelowFeet, job: Job): FrameCheck {
  const { post, place, moment } = foot;
  const kind = foot.load === null ? "base-cables" : "base-guard";
  const where = {
    id: `${kind}-${post.post.id}`,
    name: `bases of ${name}`,
    member: post.post.id,
    height: place.height,
    loads: loadsText(foot),
  };
  const demand = momentOf(foot);
  const parts: readonly CheckPart[] = [
    { name: "M along", value: moment.x, unit: "N mm" },
    { name: "M square", value: moment.y, unit: "N mm" },
    { name: shear.post === post ? "V" : `V, at ${shear.post.post.id}`, value: shearOf(shear), unit: "N" },
    ...liftParts(lift),
    ...coupleParts(demand, below),
  ];
  const capacity = job.posts.baseCapacity_Nmm;
  if (capacity !== null) {
    return limitRow(
      { ...where, advice: "Use a base with a higher capacity, or a lower tension with more spacers." },
      {
        ...capacity,
        check: strengthCheck({ demand, capacity: capacity.value }, parts),
        unit: "N mm",
        formula: "M = sqrt(M along^2 + M square^2) <= capacity of the base",
        factors: [],
      },
    );
  }
  return askRow(
    {
      ...where,
      advice: "Compare the demand with what the fastening carries by its own report, and write that as base capacity under posts.",
    },
    { source: "derived", where: "a demand without a capacity", demand, unit: "N mm", formula: "M = sqrt(M along^2 + M square^2)", parts },
  );
}

/** Less than this is no pull upwards, but dust of the solution. */
const LEAST_lift: Newton = 1;

/** Where a slope begins the cables pull a foot up, and the code's load does not press it down. */
const liftParts = ({ post: { lift, post } }: Situation): readonly CheckPart[] =>
  lift < LEAST_lift ? [] : [{ name: `${LIFT}, at ${post.id}`, value: lift, unit: "N" }];

/** Two bolts through the part below the datum stand no farther apart than it is long: their force is at least this. */
const coupleParts = (moment_Nmm: number, below: Mm): readonly CheckPart[] =>
  below > 0
    ? [
        {
          name: "force in each of two bolts through the part below the datum, at least",
          value: coupleForce({ moment_Nmm, arm: below }),
          unit: "N",
        },
      ]
    : [];
