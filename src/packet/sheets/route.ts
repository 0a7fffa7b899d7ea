// By which route is it shown that the openings are right: a sphere under a push, a sag, a stated tension or a table of the code?
import type { Plan } from "../../plan/plan.ts";
import { type GuardRules, guardRules } from "../../tables/limits.ts";
import type { Newton } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { sourceMark } from "../show-number.ts";
import { count, type SheetContext } from "./kit.ts";

export type FactRow = readonly [name: Text, value: Text, strong?: true];

export interface Route {
  readonly facts: readonly FactRow[];
  /** For the table of hold points. */
  readonly criterion: Text;
  /** For the card of the crew. */
  readonly confirmed: Text;
  /** True when the sphere is pushed with a force. */
  readonly pushed: boolean;
  /** The force of the test where one is agreed or named. */
  readonly force: Newton | null;
}

export function openingRoute(context: SheetContext): Route {
  return context.plan.job.tightening.criterion.kind === "table" ? tableRoute(context) : pushRoute(context);
}

/** Openings that a sphere or a tape can meet. */
export const testedBays = (plan: Plan) => plan.bays.filter(({ kind }) => kind !== "pair gap");

const sphereFact = ({ plan, show }: SheetContext): FactRow => {
  const { openingSphere } = plan.job.code;
  return ["Sphere", `${show.tapeBoth(openingSphere.value)} ${sourceMark(openingSphere.source)} ${openingSphere.where}`];
};

const otherForce = (rules: GuardRules | null, show: Show): Text | null =>
  rules?.openingForce
    ? `${show.forceBoth(rules.openingForce.value)}${rules.openingForce.note ? `, ${rules.openingForce.note}` : ""} ${sourceMark(rules.openingForce.source)} ${rules.openingForce.where}`
    : null;

/** Infill built to the code's own table meets its opening rule: what is proved is spacing and tension. */
function tableRoute(context: SheetContext): Route {
  const { plan, show } = context;
  const { target } = plan;
  const force = otherForce(guardRules(plan.job.code), show);
  const sphere = show.tape(plan.job.code.openingSphere.value);
  return {
    facts: [
      [
        "Route of this job",
        `**tension and spacing by the table of the code** ${sourceMark(target.source)} ${target.sourceWhere}: readings as below; no push is asked on this route`,
      ],
      sphereFact(context),
      ...(force === null
        ? []
        : [["Another route, not taken here", `${force}: this infill is not laid out for it. Say so if it is asked.`] as const]),
    ],
    criterion: `readings as below; ${sphere} sphere does not pass any bay when set in by hand, not pushed`,
    confirmed: `Spacing measured and ${sphere} sphere set in by hand, not pushed: it passes none of ${count(testedBays(plan).length, "bay")}.`,
    pushed: false,
    force: null,
  };
}

function pushRoute(context: SheetContext): Route {
  const { plan, show } = context;
  const { criterion } = plan.job.tightening;
  const ofCode = guardRules(plan.job.code);
  const named = otherForce(ofCode, show);
  const force = criterion.kind === "sphere" ? criterion.force : (ofCode?.openingForce?.value ?? null);
  const sphere = show.tape(plan.job.code.openingSphere.value);
  return {
    facts: [
      ["Route of this job", `${plan.target.criterionText}${criterion.kind === "sag" ? `; hang it in bay ${plan.target.worstBayId}` : ""}`],
      sphereFact(context),
      ...(criterion.kind === "sphere"
        ? ([["Force of the test", show.forceBoth(criterion.force), true]] as const)
        : ([["Force of the test", "not stated in the job: the authority says if the sphere is pushed, and how hard"]] as const)),
      ...(named === null ? [] : ([["Force that the code names", named]] as const)),
    ],
    criterion: `${sphere} sphere does not pass at the agreed force, every bay`,
    confirmed: `Sphere ${show.tapeBoth(plan.job.code.openingSphere.value)} does not pass in any of ${count(testedBays(plan).length, "bay")}.`,
    pushed: true,
    force,
  };
}
