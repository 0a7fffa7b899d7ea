// Z-002: what must the authority having jurisdiction answer before the job goes on?
import type { Cited } from "../../sources/cited.ts";
import { type GuardRules, guardRules } from "../../tables/limits.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { frameNotChecked, introduction, notApproval } from "../wording.ts";
import {
  blank,
  blanks,
  caution,
  column,
  facts,
  heading,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
} from "./kit.ts";
import { worstPush } from "./spans.ts";

export const authoritySheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  const rules = guardRules(plan.job.code);
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.authority)] : []),
    caution("notice", notApproval, frameNotChecked),
    facts("authority-assumed", assumed(context)),
    ...(rules
      ? clauseBlocks(context, rules)
      : [prose("The job names no edition that this program knows. All rules below were stated in the job file: ask which code applies.")]),
    ...pushBlocks(context),
    questionTable(context, rules),
    blanks("authority-answers", "Answered by", [
      ["Name and office", ""],
      ["Telephone or mail", ""],
      ["Permit number", ""],
      ["Inspections wanted, and how long before to call", ""],
    ]),
    signatures("authority-sign", "For the authority", "Licensed engineer, for the frame", "Asked by"),
  ]);
};

function assumed({ plan, show }: SheetContext): readonly (readonly [Text, Text, true?])[] {
  const { code, frame } = plan.job;
  return [
    ["Authority", code.authority],
    ["Edition assumed", code.edition, true],
    ["Occupancy", code.occupancy],
    ["Drop to the ground below", show.feetBoth(code.drop)],
    ["Exposure", code.exposure],
    ["Pool barrier", code.poolBarrier ? "**yes: level cables cannot be the barrier, see question 7**" : "no"],
    ["Guard height planned", `${show.tapeBoth(plan.opening.guardHeight)} above ${frame.datum}`, true],
  ];
}

const FOOT_mm = 304.8;
const METRE_mm = 1000;

const lineLoad = (load_NPerMm: number, { plan, show }: SheetContext): Text =>
  plan.job.units === "inch"
    ? `${show.forceBoth(load_NPerMm * FOOT_mm)} on each foot`
    : `${show.forceBoth(load_NPerMm * METRE_mm)} on each metre`;

function clauseBlocks(context: SheetContext, rules: GuardRules): readonly Block[] {
  const { show, plan } = context;
  const line = (name: Text, cited: Cited<unknown>, value: Text) => [name, value, sourceMark(cited.source), cited.where];
  const { guardHeight_min, openingSphere } = plan.job.code;
  return [
    table({
      id: "authority-clauses",
      caption: `Clauses assumed (${plan.job.code.edition})`,
      columns: [
        column("rule", "Rule", 0.3),
        column("value", "Value", 0.3),
        column("source", "Source", 0.15),
        column("where", "Clause", 0.25),
      ],
      rows: [
        line("A guard is needed above a drop of", rules.guardRequiredAboveDrop, show.tapeBoth(rules.guardRequiredAboveDrop.value)),
        line("Least height of the guard", guardHeight_min, show.tapeBoth(guardHeight_min.value)),
        line("Sphere that must not pass", openingSphere, show.tapeBoth(openingSphere.value)),
        line("Load on the infill", rules.infillLoad, show.forceBoth(rules.infillLoad.value)),
        line("Single load at the top", rules.topLoad, `${show.forceBoth(rules.topLoad.value)}, ${rules.topLoadDirection.value}`),
        rules.uniformLoad_NPerMm
          ? line("Line load along the top", rules.uniformLoad_NPerMm, lineLoad(rules.uniformLoad_NPerMm.value, context))
          : ["Line load along the top", "none in this edition for this occupancy", sourceMark(rules.topLoad.source), "no clause found"],
        rules.openingForce
          ? line("Force of the opening test", rules.openingForce, show.forceBoth(rules.openingForce.value))
          : [
              "Force of the opening test",
              "**none stated: the authority says which**",
              sourceMark(rules.openingSphere.source),
              "no clause found",
            ],
      ],
      notes: rules.notes,
    }),
  ];
}

/** The computed force, offered as a fact for the official to judge. */
function pushBlocks(context: SheetContext): readonly Block[] {
  const { plan, show } = context;
  const worst = worstPush(plan);
  if (!worst) {
    return [];
  }
  const { code } = plan.job;
  return [
    heading("authority-push-head", "What the planned cables hold back"),
    facts("authority-push", [
      ["Sphere", show.tapeBoth(code.openingSphere.value)],
      ["Worst place", `bay ${worst.span.bayId} of run ${worst.run.id}, ${show.tapeBoth(worst.span.free)} free`],
      ["Push-through force, cables free to slide", show.forceBoth(worst.span.pushThrough.sliding), true],
      ["Push-through force, cables held at the uprights", show.forceBoth(worst.span.pushThrough.held)],
      ["At a tension in this span of", show.forceBoth(worst.span.tension)],
      ["Target was set by", `${plan.target.criterionText} ${sourceMark(plan.target.source)}`],
    ]),
    prose(
      `The force is computed, not tested: two cables in the middle of a span, without friction ${sourceMark("derived")}. A real guard lies between the two cases.`,
    ),
  ];
}

function questionTable({ plan, show }: SheetContext, rules: GuardRules | null): Table {
  const { code, posts, tightening } = plan.job;
  const { criterion } = tightening;
  const ofCode = rules?.openingForce
    ? `${show.force(rules.openingForce.value)}${rules.openingForce.note ? `, ${rules.openingForce.note}` : ""}`
    : "no force assumed";
  const force =
    criterion.kind === "sphere"
      ? `${show.tape(criterion.diameter)} sphere, ${show.force(criterion.force)}; ${criterion.agreedWith}`
      : ofCode;
  const climbs = rules?.climbRule ? rules.climbRule.value : "allowed; no rule on climbing assumed";
  const questions: readonly (readonly [Text, Text])[] = [
    ["Which edition applies, with which local amendments?", code.edition],
    ["Is a guard required here, and how high must it be?", show.tape(code.guardHeight_min.value)],
    ["Which sphere must not pass, and up to which height?", `${show.tape(code.openingSphere.value)}, full height`],
    ["Is the opening tested under a force? Sphere or cone, how large, how hard, where?", force],
    ["Are level cables allowed (climbing)?", climbs],
    [
      "Which loads on top and infill? Is a letter of a licensed engineer needed for posts, rails and feet?",
      "code loads above; frame not checked",
    ],
    ["Is the guard also a pool barrier?", code.poolBarrier ? "yes" : "no"],
    ["Is a permit needed? Which drawings, which inspections, when?", "asked here"],
    ...(posts.existing
      ? ([["Do existing posts and heights still count when only the infill changes?", "existing posts stay"]] as const)
      : []),
    [
      "Are there rules on the gap under the guard and on openings next to posts?",
      `${show.tape(plan.gaps[0]?.clear ?? 0)} clear at the bottom`,
    ],
    ["Does anything else at this place apply (fire, coast, association, heritage)?", `exposure: ${code.exposure}`],
  ];
  return table({
    id: "authority-questions",
    caption: 'Questions. Write the answer, or "as assumed"',
    columns: [
      column("no", "No.", 0.07),
      column("question", "Question", 0.38),
      column("assumed", "Assumed in this packet", 0.25),
      column("answer", "Answer", 0.3),
    ],
    rows: questions.map(([question, answer], index) => [`${index + 1}`, question, answer, blank()]),
    writeIn: true,
  });
}
