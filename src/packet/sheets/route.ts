// By which route is it shown that the openings are right: a sphere under a push, a sag, a stated tension or a table of the code?
import type { Plan } from "../../plan/plan.ts";
import { type GuardRules, guardRules } from "../../tables/limits.ts";
import type { Newton } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { clauseOf, type Show, showIn, sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { count, listed, type SheetContext, unique } from "./kit.ts";
import { sidesWord } from "./slopes.ts";

export type FactRow = readonly [name: Text, value: Text, strong?: true];

export interface Route {
  readonly facts: readonly FactRow[];
  /** For the table of hold points. */
  readonly criterion: Text;
  /** For the card of the crew. */
  readonly confirmed: Text;
  /** Is the sphere pushed: with the force of the job, only if the authority asks for it, or never? */
  readonly push: "agreed" | "if asked" | "never";
  /** The force of the test where one is agreed or named. */
  readonly force: Newton | null;
}

export function openingRoute(context: SheetContext): Route {
  return context.plan.job.tightening.criterion.kind === "table" ? tableRoute(context) : pushRoute(context);
}

/** Where an opening is tried: the same words on every sheet. */
export const testPlaces = ({ job }: Plan): Text =>
  `between every two neighbouring cables at the middle of the longest free length, at the top ${job.frame.bottomRail ? "and bottom rail" : `rail and the ${floorWord(job)}`}, and beside end posts${slopePlaces(job)}`;

/** On a slope the sphere meets the cables square, and a stair has a third place. */
function slopePlaces({ sides, code, units }: Plan["job"]): Text {
  const sloped = sides.filter(({ rake }) => rake !== null);
  if (sloped.length === 0) return "";
  const stair = sloped.some(({ rake }) => rake?.kind === "stair");
  return `; on ${sidesWord(sloped.map(({ id }) => id))} square to the cables${stair ? stepPlaces({ code, units }) : ""}`;
}

function stepPlaces({ code, units }: Pick<Plan["job"], "code" | "units">): Text {
  const { triangleSphere, openingFrom } = code.stairs;
  const nosings = openingFrom === "steps" ? "" : " and up from the line of the nosings";
  if (triangleSphere !== null) return `${nosings}, and a ${showIn(units).tape(triangleSphere.value)} sphere at every riser and tread`;
  return openingFrom === "steps" ? ", and at every riser and tread" : nosings;
}

/** The force is an assumption until the authority has answered. */
export const forceWords = ({ plan, show }: SheetContext): Text => {
  const { criterion } = plan.job.tightening;
  return criterion.kind === "sphere"
    ? `assumed ${show.force(criterion.force)} until the authority answers; if the answer is higher: stop, new packet`
    : "named by the authority";
};

/** Where a sag is read: in the bay in which each run is proved. */
export const sagBays = ({ runs }: Plan): Text => listed(unique(runs.map(({ proof }) => proof.bayId)));

/** "A1, first of side A" */
export function bayName(plan: Plan, bayId: string): Text {
  const bay = plan.bays.find(({ id }) => id === bayId);
  return bay && plan.openingBayIds.includes(bayId) ? `${bayId}, first of side ${bay.sideId}` : bayId;
}

/** Openings that a sphere or a tape can meet. */
export const testedBays = (plan: Plan) => plan.bays.filter(({ kind }) => kind !== "pair gap");

const sphereFact = ({ plan, show }: SheetContext): FactRow => {
  const { openingSphere } = plan.job.code;
  return ["Sphere", `${show.tapeBoth(openingSphere.value)} ${sourceMark(openingSphere.source)} ${openingSphere.where}`];
};

/** A stair may have a wider sphere between its cables: the one that is tried is never wider. */
function stairFacts({ plan, show }: SheetContext): readonly FactRow[] {
  const { openingSphere, stairs } = plan.job.code;
  const sides = plan.rakes.filter(({ kind }) => kind === "stair").map(({ sideId }) => sideId);
  if (sides.length === 0) return [];
  const wider =
    stairs.openingSphere.value > openingSphere.value ? `; ${show.tape(openingSphere.value)} is tried there too, which asks for more` : "";
  const steps =
    stairs.triangleSphere === null
      ? ""
      : `. At riser, tread and bottom rail ${show.tapeBoth(stairs.triangleSphere.value)} must not go in ${clauseOf(stairs.triangleSphere)}`;
  return [
    [
      `On the stair, ${listed(sides)}`,
      `between the cables ${show.tapeBoth(stairs.openingSphere.value)} ${clauseOf(stairs.openingSphere)}${wider}${steps}`,
    ],
  ];
}

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
      ...stairFacts(context),
      ...(force === null
        ? []
        : [["Another route, not taken here", `${force}: this infill is not laid out for it. Say so if it is asked.`] as const]),
    ],
    criterion: `readings as below; ${sphere} sphere does not pass any bay when set in by hand, not pushed`,
    confirmed: `Spacing measured and ${sphere} sphere set in by hand, not pushed: it passes none of ${count(testedBays(plan).length, "bay")}.`,
    push: "never",
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
      ["Route of this job", `${plan.target.criterionText}${criterion.kind === "sag" ? `; hang it in bay ${sagBays(plan)}` : ""}`],
      sphereFact(context),
      ...stairFacts(context),
      ...(criterion.kind === "sphere"
        ? ([["Force of the test", show.forceBoth(criterion.force), true]] as const)
        : ([["Force of the test", "not stated in the job: the authority says if the sphere is pushed, and how hard"]] as const)),
      ...(named === null ? [] : ([["Force that the code names", named]] as const)),
    ],
    criterion: [
      ...(criterion.kind === "sag" ? [`sag as below; ${sphere} sphere set in by hand does not pass`] : []),
      ...(criterion.kind === "stated" ? [`readings as below; ${sphere} sphere set in by hand does not pass`] : []),
      ...(criterion.kind === "sphere" ? [`${sphere} sphere does not pass at the agreed force, every bay (${forceWords(context)})`] : []),
    ].join("; "),
    confirmed: `Sphere ${show.tapeBoth(plan.job.code.openingSphere.value)} ${criterion.kind === "sphere" ? "pushed with the agreed force" : "set in by hand, pushed only if the authority asks,"} does not pass in any of ${count(testedBays(plan).length, "bay")}.`,
    push: criterion.kind === "sphere" ? "agreed" : "if asked",
    force,
  };
}
