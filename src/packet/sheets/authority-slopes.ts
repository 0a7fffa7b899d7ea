// What must the authority answer of sides that slope: heights, openings, handrail, climbing?
import type { RakePlan } from "../../plan/rake-plan.ts";
import type { Cited } from "../../sources/cited.ts";
import { type HandrailRules, handrailRules } from "../../tables/handrails.ts";
import { guardRules } from "../../tables/limits.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { clauseOf, sourceMark } from "../show-number.ts";
import { greatest, listed, type SheetContext, unique } from "./kit.ts";
import { onWhat, overSteps, slidingEnds, washerFriction } from "./slopes.ts";

type Question = readonly [question: Text, assumed: Text];

const cited = (rule: Cited<string>): Text => `${rule.value} ${clauseOf(rule)}`;

type Clause = readonly [rule: Text, cited: Cited<unknown>, value: Text];

/** A row for each rule of the code that holds on a slope alone: rule, value, and where it stands. */
export const slopeClauses = (context: SheetContext): readonly Clause[] => [...stairClauses(context), ...rampClauses(context)];

/** A code that asks for less on a ramp than on a floor. */
function rampClauses({ plan, show }: SheetContext): readonly Clause[] {
  const { rampHeight_min, guardHeight_min } = plan.job.code;
  if (!plan.rakes.some(({ kind }) => kind === "ramp") || rampHeight_min.value === guardHeight_min.value) return [];
  return [["On a ramp: least height, plumb above it", rampHeight_min, show.tapeBoth(rampHeight_min.value)]];
}

function stairClauses({ plan, show }: SheetContext): readonly Clause[] {
  const { stairs } = plan.job.code;
  if (!plan.rakes.some(({ kind }) => kind === "stair")) return [];
  const { low, high } = stairs.handrail;
  return [
    ["On a stair: least height, plumb above the nosings", stairs.guardHeight_min, show.tapeBoth(stairs.guardHeight_min.value)],
    [
      "On a stair: height of a top that is the handrail",
      low,
      high === null ? `at least ${show.tapeBoth(low.value)}` : `${show.tape(low.value)} to ${show.tapeBoth(high.value)}`,
    ],
    [
      `On a stair: sphere that must not pass${stairs.openingFrom === "steps" ? "" : ", above the line of the nosings"}`,
      stairs.openingSphere,
      show.tapeBoth(stairs.openingSphere.value),
    ],
    ...(stairs.triangleSphere === null
      ? []
      : ([
          [
            "At riser, tread and bottom rail: sphere that must not go in",
            stairs.triangleSphere,
            show.tapeBoth(stairs.triangleSphere.value),
          ],
        ] as const)),
  ];
}

export function slopeQuestions(context: SheetContext): readonly Question[] {
  const rules = handrailRules(context.plan.job.code.edition);
  const ofSides = context.plan.rakes.flatMap((rake): readonly Question[] => [
    heightQuestion(context, rake),
    ...openingQuestions(context, rake),
    ...(rake.kind === "stair" ? stairRailQuestions(context, rake, rules) : rampRailQuestions(context, rake, rules)),
    [
      `Do cables along the slope of side ${rake.sideId} count as level ones (climbing)?`,
      guardRules(context.plan.job.code)?.climbRule?.value ?? "allowed as level ones; no rule on climbing assumed",
    ],
  ]);
  return [...ofSides, ...slidingQuestion(context)];
}

function slidingQuestion({ plan, show }: SheetContext): readonly Question[] {
  const ends = unique(slidingEnds(plan).map(({ postId }) => postId));
  if (ends.length === 0) return [];
  const { value, source } = washerFriction(plan.job);
  return [
    [
      `What keeps the bevelled washers at ${listed(ends)} from sliding along the post (engineer)?`,
      `not computed; friction is sure to hold them up to ${show.angle(Math.atan(value.low))} ${sourceMark(source)}`,
    ],
  ];
}

const heightQuestion = ({ show }: SheetContext, { sideId, kind, opening, guardHeight_min }: RakePlan): Question => [
  `How high must the guard be on the ${kind} (side ${sideId}), measured from where?`,
  `${show.tape(opening.guardHeight)} plumb above ${onWhat(kind)}; at least ${show.tape(guardHeight_min.value)} ${clauseOf(guardHeight_min)}`,
];

function openingQuestions(
  { plan, show }: SheetContext,
  { sideId, kind, gaps, openingSphere, triangle, aboveNosings }: RakePlan,
): readonly Question[] {
  const widest = show.tape(greatest(gaps.map(({ clear }) => clear)));
  const { triangleSphere: limit, openingFrom } = plan.job.code.stairs;
  const unnamed =
    openingFrom === "steps"
      ? "no size of its own named"
      : `none, as openings are measured above the line of the nosings ${clauseOf(openingSphere)}${aboveNosings === null ? "" : `: ${show.tape(aboveNosings)} there`}`;
  const between: Question = [
    `Which sphere must not pass between the cables of side ${sideId}?`,
    `${show.tape(openingSphere.value)} ${clauseOf(openingSphere)}; ${widest} clear at most, square to the cables`,
  ];
  if (kind === "ramp") return [between];
  const planned = triangle === null ? "riser and tread not known: measured on site" : `${show.tape(triangle.sphere)} goes in at most`;
  return [
    between,
    [
      `Which sphere must not go in at riser, tread and ${overSteps(plan.job.frame)} of side ${sideId}?`,
      limit === null ? `${unnamed}; ${planned}` : `${show.tape(limit.value)} ${clauseOf(limit)}; ${planned}`,
    ],
  ];
}

function stairRailQuestions(context: SheetContext, { sideId, opening }: RakePlan, rules: HandrailRules | null): readonly Question[] {
  const { plan, show } = context;
  const { low, high } = plan.job.code.stairs.handrail;
  const range = high === null ? `at least ${show.tape(low.value)}` : `${show.tape(low.value)} to ${show.tape(high.value)}`;
  const needed = rules === null ? "" : `; needed ${cited(rules.stair)}`;
  if (!plan.job.frame.railIsHandrail) {
    return [
      [`Where does the handrail of the stair (side ${sideId}) go, and who fixes it?`, `not in this packet${needed}`],
      ...ownRailQuestion(sideId, rules),
    ];
  }
  return [
    [
      `May the top rail of side ${sideId} be the handrail, at this height?`,
      `yes: ${show.tape(opening.guardHeight)}, allowed ${range} ${clauseOf(low)}${needed}`,
    ],
    [`Can a hand close round it, as the code asks?`, gripWords(context, rules)],
    [
      `Must the handrail of side ${sideId} go on past the stair, and its ends be returned?`,
      rules?.ends ? `${cited(rules.ends)}; ends are not drawn here` : "ends are not drawn here",
    ],
    [`How far must the handrail of side ${sideId} be clear of walls?`, rules?.clearance ? cited(rules.clearance) : "not known here"],
  ];
}

/** A handrail that somebody else fixes: what the code asks of it, so that nothing of the guard stands in its way. */
const ownRailQuestion = (sideId: string, rules: HandrailRules | null): readonly Question[] =>
  rules === null
    ? []
    : [
        [
          `Which height, grip, ends and clearance must the handrail of side ${sideId} have?`,
          [rules.height, rules.grip?.words, rules.ends, rules.clearance].flatMap((rule) => (rule == null ? [] : [cited(rule)])).join("; "),
        ],
      ];

/** A rail of lumber is mostly too thick for a hand: said before it is bought. */
function gripWords({ plan, show }: SheetContext, rules: HandrailRules | null): Text {
  const { depth, width } = plan.job.frame.topRail;
  const rail = `top rail ${show.tape(depth)} x ${show.tape(width)}`;
  if (!rules?.grip) return `${rail}; no rule was read`;
  const { size, words } = rules.grip;
  const fits = isGrip(depth, width, size.value);
  return `${rail}: ${fits ? "yes" : "**NO by its size alone: fix a rail to it that can be gripped, or ask**"}. Asked: ${cited(words)}`;
}

/** By the outline of a square-edged section and its diagonal. */
const isGrip = (
  depth: Mm,
  width: Mm,
  { perimeter_min, perimeter_max, across_max }: { readonly perimeter_min: Mm; readonly perimeter_max: Mm; readonly across_max: Mm },
): boolean => {
  const perimeter = 2 * (depth + width);
  return perimeter >= perimeter_min && perimeter <= perimeter_max && Math.hypot(depth, width) <= across_max;
};

function rampRailQuestions({ show }: SheetContext, { sideId, slope, rise }: RakePlan, rules: HandrailRules | null): readonly Question[] {
  const own = `${show.angle(Math.abs(slope))}, rise ${show.tape(Math.abs(rise))}`;
  return [
    [
      `Does the ramp (side ${sideId}) need a handrail: from which slope or rise on, on which sides?`,
      `${own}; none in this packet${rules === null ? "" : `; asked ${cited(rules.ramp)}`}`,
    ],
    ...ownRailQuestion(sideId, rules),
  ];
}
