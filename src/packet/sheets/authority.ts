// Z-002: what must the authority having jurisdiction answer before the job goes on?
import type { Cited } from "../../sources/cited.ts";
import type { SourceId } from "../../sources/sources.ts";
import { type GuardRules, guardRules } from "../../tables/limits.ts";
import { cableLoadDuration, durationFactor, guardLoadDuration } from "../../tables/wood-factors.ts";
import { FRAME_SHEET, frameFails, frameWords } from "../frame-verdict.ts";
import { gateAlone, gatesOf } from "../guard-ends.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark, sourcePlace } from "../show-number.ts";
import { introduction, notApproval } from "../wording.ts";
import { slopeClauses, slopeQuestions } from "./authority-slopes.ts";
import { bearingQuestion, bendQuestion } from "./bearing.ts";
import { mitreQuestion } from "./bore-corners.ts";
import { faceQuestion } from "./face-ends.ts";
import { isWooden } from "./frame-inputs.ts";
import {
  blank,
  blanks,
  bold,
  caution,
  column,
  facts,
  heading,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
} from "./kit.ts";
import { pierQuestions } from "./piers.ts";
import { pullsTable } from "./pulls.ts";
import { mostMovedWords } from "./readings.ts";
import { sleeveQuestions } from "./sleeves.ts";
import { onWhat } from "./slopes.ts";
import { openingSpans } from "./spans.ts";
import { metalParts } from "./survey-rows.ts";

export const authoritySheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  const rules = guardRules(plan.job.code);
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.authority)] : []),
    caution(frameFails(plan) ? "danger" : "notice", notApproval, frameWords(plan)),
    facts("authority-assumed", assumed(context)),
    ...(rules
      ? clauseBlocks(context, rules)
      : [prose("The job names no edition that this program knows. All rules below were stated in the job file: ask which code applies.")]),
    ...pushBlocks(context, rules),
    pullsTable(context, "authority-pulls"),
    blanks("authority-answers", "The questions below are answered by", [
      ["Name and office", ""],
      ["Telephone or mail", ""],
      ["Permit number", ""],
      ["Inspections wanted, and how long before to call", ""],
    ]),
    questionTable(context, rules),
    signatures("authority-sign", "For the authority", "Licensed engineer, for the frame", "Asked by"),
  ]);
};

function assumed({ plan, show }: SheetContext): readonly (readonly [Text, Text, true?])[] {
  const { code, frame } = plan.job;
  return [
    ["Authority", code.authority],
    ["Edition assumed", bold(code.edition)],
    ["Occupancy", code.occupancy],
    ["Drop to the ground below", show.feetBoth(code.drop)],
    ["Exposure", code.exposure],
    ["Pool barrier", code.poolBarrier ? "**yes: level cables cannot be the barrier, see the question below**" : "no"],
    ...(plan.rakes.length === plan.sides.length
      ? []
      : [["Guard height planned", `${bold(show.tapeBoth(plan.opening.guardHeight))} above ${frame.datum}`] as const]),
    ...plan.rakes.map(
      ({ sideId, kind, opening }) =>
        [`On the ${kind}, side ${sideId}`, `${bold(show.tapeBoth(opening.guardHeight))} plumb above ${onWhat(kind)}`] as const,
    ),
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
  const line = (name: Text, cited: Cited<unknown>, value: Text) => [name, value, markOf(cited.source), placeOf(cited)];
  const { edition, guardHeight_min, openingSphere } = plan.job.code;
  const columns = [
    column("rule", "Rule", 0.3),
    column("value", "Value", 0.3),
    column("source", "Source", 0.15),
    column("where", "Clause", 0.25),
  ];
  const slopes = slopeClauses(context).map(([rule, cited, value]) => line(rule, cited, value));
  return [
    table({
      id: "authority-clauses",
      caption: `Clauses assumed (${edition})`,
      columns,
      rows: [
        line("A guard is needed above a drop of", rules.guardRequiredAboveDrop, show.tapeBoth(rules.guardRequiredAboveDrop.value)),
        line("Least height of the guard", guardHeight_min, show.tapeBoth(guardHeight_min.value)),
        line("Sphere that must not pass", openingSphere, show.tapeBoth(openingSphere.value)),
        line("Load on the infill", rules.infillLoad, show.forceBoth(rules.infillLoad.value)),
        line("Area that this load acts on", rules.infillArea_mm2, show.area(rules.infillArea_mm2.value)),
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
    ...(slopes.length === 0
      ? []
      : [table({ id: "authority-clauses-slopes", caption: `Clauses assumed on slopes (${edition})`, columns, rows: slopes })]),
  ];
}

/** What nobody looked up says so in words. */
const markOf = (source: SourceId): Text =>
  source === "memory" ? `${sourceMark(source)} **from memory, not looked up**` : sourceMark(source);
const placeOf = ({ where, note }: Cited<unknown>): Text => (note === undefined ? where : `${where}: ${note}`);

/** The computed force, offered as a fact for the official to judge. */
function pushBlocks(context: SheetContext, rules: GuardRules | null): readonly Block[] {
  const { plan, show } = context;
  const { code, tightening } = plan.job;
  return [
    heading("authority-push-head", "What the planned cables hold back"),
    table({
      id: "authority-push",
      caption: `Force that pushes a sphere of ${show.tapeBoth(code.openingSphere.value)} through, in the weakest bay of each side`,
      columns: [
        column("bay", "Bay, run", 0.14),
        column("free", "Free length", 0.2),
        column("tension", "Tension there", 0.22, { sub: "at target, at least" }),
        column("sliding", "Passes at", 0.22, { sub: "cables free to slide" }),
        column("held", "Passes at", 0.22, { sub: "cables held at the uprights" }),
      ],
      rows: openingSpans(plan).map(({ run, span }) => [
        bold(`${span.bayId}, ${run.id}`),
        show.tapeBoth(span.free),
        show.forceBothDown(span.tension),
        bold(show.forceBothDown(span.pushThrough.sliding)),
        show.forceBothDown(span.pushThrough.held),
      ]),
      rowHeads: true,
      notes: [
        `The force is computed, not tested: two cables in the middle of a span, without friction ${sourceMark("derived")}. A real guard lies between the two cases.`,
        `The target was set by: ${plan.target.criterionText} ${sourcePlace(plan.target.source, plan.target.sourceWhere)}.`,
        ...(tightening.criterion.kind === "table" ? routeTaken(context, rules) : []),
      ],
    }),
  ];
}

/** A code may offer a table of tensions and a test: meeting one is no claim to meet the other. */
function routeTaken({ plan, show }: SheetContext, rules: GuardRules | null): readonly Text[] {
  const { source, sourceWhere } = plan.target;
  const test = rules?.openingForce;
  return [
    `Way of compliance taken here: tensions of ${sourcePlace(source, sourceWhere)}, by the clear distance between posts. The forces above play no part in it.`,
    ...(test
      ? [
          `The test ${sourcePlace(test.source, test.where)} (${show.forceBoth(test.value)}${test.note ? `, ${test.note}` : ""}) is another way of compliance, which is **not claimed** here. If it is wanted, it must be carried out.`,
        ]
      : []),
  ];
}

/** The gap under the guard and the one below the lowest cable are two. */
function openingsAtFoot({ plan, show }: Pick<SheetContext, "plan" | "show">): Text {
  const { bottomRail, gapBelow } = plan.job.frame;
  const lowest = show.tape(Math.max(...[plan.gaps[0], plan.setOff?.gaps[0]].map((gap) => gap?.clear ?? 0)));
  return bottomRail === null
    ? `no bottom rail: ${lowest} clear between the walking surface and the lowest cable`
    : `${show.tape(gapBelow)} under the bottom rail; ${lowest} clear between it and the lowest cable`;
}

/** What the computation of the frame rests on and nobody but the authority or an engineer can settle. */
function frameQuestions(context: SheetContext, rules: GuardRules | null): readonly (readonly [Text, Text])[] {
  const { plan, show } = context;
  const { job, frame } = plan;
  const base = frame.posts.base.value;
  const loads = rules
    ? [
        `${show.force(rules.topLoad.value)} at any point of the top, ${(job.frame.railIsHandrail ? rules.handrailLoadDirections : rules.topLoadDirections).join(", ")}`,
        ...(rules.uniformLoad_NPerMm ? [`or ${lineLoad(rules.uniformLoad_NPerMm.value, context)}`] : []),
        `or ${show.force(rules.infillLoad.value)} on the infill`,
      ].join("; ")
    : "none known: only the cables are checked";
  return [
    ["Which loads act on top and infill, in which directions, in addition to the cables?", loads],
    ...(isWooden(job)
      ? ([
          [
            "Load duration of wood: is ten minutes accepted for guard loads, and permanent for the cables?",
            `C_D ${show.decimal(durationFactor[guardLoadDuration.value].value, 2)} ${sourceMark(guardLoadDuration.source)} and ${show.decimal(durationFactor[cableLoadDuration.value].value, 2)}`,
          ],
        ] as const)
      : []),
    ...metalParts(plan).map(({ parts, alloy, yieldStress }): readonly [Text, Text] => [
      `Which metal are the ${parts} of, and is this yield strength accepted (engineer)?`,
      `${alloy}: ${show.stress(yieldStress.value)} ${sourceMark(yieldStress.source)}, from the certificate: ${refer(context, "survey")}`,
    ]),
    [
      "What may the base of a post bear (moment, shear), by which report of its hardware?",
      job.posts.baseCapacity_Nmm === null
        ? `not known; demands on ${FRAME_SHEET}; taken to turn: ${base === "fixed" ? "not at all" : show.turnStiffness(base, { both: false })} ${sourceMark(frame.posts.base.source)}`
        : `${show.moment(job.posts.baseCapacity_Nmm.value, { both: false, rounding: "down" })} ${sourceMark(job.posts.baseCapacity_Nmm.source)}`,
    ],
    [
      `Is the computation on ${FRAME_SHEET} enough, or is a letter of a licensed engineer needed for posts, rails and feet?`,
      frameFails(plan) ? "**it FAILS: engineer needed, or change the frame**" : "no check fails; asked here",
    ],
  ];
}

function questionTable(context: SheetContext, rules: GuardRules | null): Table {
  const { plan, show } = context;
  const { code, posts, tightening } = plan.job;
  const { criterion } = tightening;
  const ofCode = rules?.openingForce
    ? `${show.force(rules.openingForce.value)}${rules.openingForce.note ? `, ${rules.openingForce.note}` : ""}`
    : "no force assumed";
  const forceOf = (): Text => {
    switch (criterion.kind) {
      case "sphere":
        return `${show.tape(criterion.diameter)} sphere, ${show.force(criterion.force)}; ${criterion.agreedWith}`;
      case "table":
        return `no test: built to ${sourcePlace(plan.target.source, plan.target.sourceWhere)}`;
      default:
        return ofCode;
    }
  };
  const climbs = rules?.climbRule ? rules.climbRule.value : "allowed; no rule on climbing assumed";
  const questions: readonly (readonly [Text, Text])[] = [
    ["Which edition applies, with which local amendments?", code.edition],
    // The class decides which volume and which loads apply.
    ...(code.edition.startsWith("NCC") ? ([["Which class of building is it, and which volume applies?", code.occupancy]] as const) : []),
    ["Is a guard required here, and how high must it be?", show.tape(code.guardHeight_min.value)],
    ["Which sphere must not pass, and up to which height?", `${show.tape(code.openingSphere.value)}, full height`],
    ["Is the opening tested under a force? Sphere or cone, how large, how hard, where?", forceOf()],
    ["Are level cables allowed (climbing)?", climbs],
    ...slopeQuestions(context),
    ...frameQuestions(context, rules),
    ...gatesOf(plan).map((gate): readonly [Text, Text] => [
      `Which rules hold for the gate between ${gate.posts.join(" and ")} (closing, latch, height, its posts)?`,
      gateAlone(gate),
    ]),
    ["Is the guard also a pool barrier?", code.poolBarrier ? "yes" : "no"],
    ["Is a permit needed? Which drawings, which inspections, when?", "asked here"],
    ...(posts.existing
      ? ([["Do existing posts and heights still count when only the infill changes?", "existing posts stay"]] as const)
      : []),
    ["Are there rules on the gap under the guard and on openings next to posts?", openingsAtFoot({ plan, show })],
    ...(criterion.kind === "table"
      ? ([[`Does a spacer count as a post in ${plan.target.sourceWhere}?`, "no: the clear distance between posts counts"]] as const)
      : []),
    [
      "How far may posts move under the pull of all cables (engineer)?",
      `${show.fine(plan.frame.movement_max.value)} ${sourceMark(plan.frame.movement_max.source)}; computed: ${mostMovedWords(context)}`,
    ],
    ...bearingQuestion(plan),
    ...bendQuestion(plan),
    ...mitreQuestion(plan),
    ...faceQuestion(plan),
    ...pierQuestions(plan, show),
    ...sleeveQuestions(context),
    ["Does anything else at this place apply (fire, coast, association, heritage)?", `exposure: ${code.exposure}`],
  ];
  return table({
    id: "authority-questions",
    caption: 'Questions. Write the answer, or "as assumed"',
    columns: [
      column("no", "No.", 0.07),
      column("question", "Question", 0.34),
      column("assumed", "Assumed in this packet", 0.34),
      column("answer", "Answer", 0.25),
    ],
    rows: questions.map(([question, answer], index) => [`${index + 1}`, question, answer, blank()]),
    writeIn: true,
  });
}
