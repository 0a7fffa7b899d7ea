// What is measured of each slope when it is proved, and again for the record: slope, heights, openings, handrail?
import type { RakePlan } from "../../plan/rake-plan.ts";
import { handrailRules } from "../../tables/handrails.ts";
import type { Text } from "../packet.ts";
import { clauseOf } from "../show-number.ts";
import { greatest, type SheetContext } from "./kit.ts";
import { onWhat, overSteps } from "./slopes.ts";
import { SLOPE_rad } from "./survey-rakes.ts";
import { practice } from "./survey-rows.ts";

export interface SlopeCheck {
  readonly sideId: string;
  readonly what: Text;
  readonly planned: Text;
  readonly limit: Text;
  /** A length, an angle, or an answer. */
  readonly unit: Text;
}

export const slopeChecks = (context: SheetContext): readonly SlopeCheck[] =>
  context.plan.rakes.flatMap((rake) =>
    [slopeCheck(context, rake), heightCheck(context, rake), ...openingChecks(context, rake), handrailCheck(context, rake)].map((row) => ({
      sideId: rake.sideId,
      ...row,
    })),
  );

type Shown = Pick<SheetContext, "plan" | "show">;
type Row = Omit<SlopeCheck, "sideId">;

const slopeCheck = ({ show }: SheetContext, { slope, kind }: RakePlan): Row => ({
  what: `Slope, on a long board on ${onWhat(kind)}`,
  planned: show.angle(Math.abs(slope)),
  limit: `off by ${show.angle(SLOPE_rad)} at most ${practice}`,
  unit: "deg",
});

function heightCheck({ plan, show }: SheetContext, { kind, opening, guardHeight_min }: RakePlan): Row {
  const { low, high } = plan.job.code.stairs.handrail;
  const asHandrail = kind === "stair" && plan.job.frame.railIsHandrail;
  const limit = asHandrail
    ? `${show.tape(Math.max(low.value, guardHeight_min.value))}${high === null ? " at least" : ` to ${show.tape(high.value)}`} ${clauseOf(low)}`
    : `${show.tape(guardHeight_min.value)} at least ${clauseOf(guardHeight_min)}`;
  return {
    what: `Height of the guard${asHandrail ? ", its top the handrail" : ""}, plumb above ${onWhat(kind)}: lowest and highest`,
    planned: show.tape(opening.guardHeight),
    limit,
    unit: show.lengthUnit,
  };
}

function openingChecks({ plan, show }: SheetContext, rake: RakePlan): readonly Row[] {
  const { code, frame } = plan.job;
  const { kind, gaps, openingSphere } = rake;
  const between: Row = {
    what: "Widest clear opening, **square to the cables**",
    planned: show.tape(greatest(gaps.map(({ clear }) => clear))),
    limit: `${show.tape(openingSphere.value)} sphere must not pass ${clauseOf(openingSphere)}`,
    unit: show.lengthUnit,
  };
  if (kind === "ramp") {
    if (frame.bottomRail === null) return [between];
    return [
      between,
      {
        what: "Gap under the bottom rail, plumb",
        planned: show.tape(frame.onRakes.gapBelow.value),
        limit: `${show.tape(code.openingSphere.value)} sphere must not pass ${clauseOf(code.openingSphere)}`,
        unit: show.lengthUnit,
      },
    ];
  }
  return [between, ...nosingRows({ plan, show }, rake), ...triangleRows({ plan, show }, rake)];
}

/** Where the code measures from the line of the nosings. */
function nosingRows({ plan, show }: Shown, { aboveNosings, openingSphere }: RakePlan): readonly Row[] {
  if (aboveNosings === null || plan.job.code.stairs.openingFrom === "steps") return [];
  return [
    {
      what: "Line of the nosings to the bottom rail, square to the slope",
      planned: show.tape(aboveNosings),
      limit: `${show.tape(openingSphere.value)} sphere must not pass ${clauseOf(openingSphere)}`,
      unit: show.lengthUnit,
    },
  ];
}

function triangleRows({ plan, show }: Shown, { openingSphere, triangle }: RakePlan): readonly Row[] {
  const { code, frame } = plan.job;
  if (code.stairs.triangleSphere === null && code.stairs.openingFrom !== "steps") return [];
  const limit = code.stairs.triangleSphere ?? openingSphere;
  return [
    {
      what: `Every riser and tread under the ${overSteps(frame)}: sphere set in`,
      planned: triangle === null ? "not known" : `${show.tape(triangle.sphere)} goes in`,
      limit: `${show.tape(limit.value)} sphere must not go in ${clauseOf(limit)}`,
      unit: "held?",
    },
  ];
}

function handrailCheck(context: SheetContext, { kind }: RakePlan): Row {
  const { plan } = context;
  const rules = handrailRules(plan.job.code.edition);
  const rule = kind === "stair" ? rules?.stair : rules?.ramp;
  const planned = kind === "stair" && plan.job.frame.railIsHandrail ? "top rail" : "not in this packet";
  return {
    what: "Handrail as answered by the authority: height, grip, ends, clear of walls",
    planned,
    limit: rule === undefined ? "the authority's answer" : `${rule.value} ${clauseOf(rule)}`,
    unit: "yes / no",
  };
}
