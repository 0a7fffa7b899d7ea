// Z-805: does the frame hold its cables and the code's loads, how was that computed, and what must change if not?

import { isTurned } from "../../plan/frame-check-axes.ts";
import type { FrameCheck, TensionWindow } from "../../plan/frame-plan.ts";
import { jointsOf, jointsWord } from "../../plan/joints.ts";
import type { SourceId } from "../../sources/sources.ts";
import { failingChecks, frameFails, isBeyond, ratioText, remedyTexts, worstCheck } from "../frame-verdict.ts";
import { hardestTexts } from "../hardest-day.ts";
import type { Block, Cell, Sheet, Table, Text } from "../packet.ts";
import { sourceMark, sourcePlace } from "../show-number.ts";
import { introduction, notApproval, verdictWord } from "../wording.ts";
import { factorText, formulaText, RESULT_down, RESULT_up, sizeText } from "./frame-formulas.ts";
import { inputsTable } from "./frame-inputs.ts";
import { BY_REPORT, basesTable, fixingWords, postsTable } from "./frame-posts.ts";
import {
  bold,
  caution,
  column,
  count,
  groupBy,
  list,
  listed,
  minor,
  prose,
  type SheetContext,
  type SheetMaker,
  sheet,
  sideBySide,
  table,
  unique,
} from "./kit.ts";

/** The office and the authority see all of it; those who build see the verdict, what fails and what bases must hold. */
export const frameChecksSheet: SheetMaker = (context, head): Sheet => {
  const { plan, home, rules } = context;
  const start = [...(home ? [prose(...introduction.frameChecks)] : []), verdictBlock(context)];
  if (!rules) {
    const failing = failingChecks(plan);
    return sheet(head, "portrait", [
      ...start,
      ...(failing.length === 0 ? [] : [list(...failing.map((check) => failureText(check, context)))]),
      basesTable(context),
      ...fixingWords(context).map((words) => prose(words)),
    ]);
  }
  return sheet(head, "landscape", [
    ...start,
    prose(...method(context)),
    inputsTable(context),
    checksTable(context),
    ...formulaTables(context),
    postsTable(context),
    windowsTable(context),
  ]);
};

/** What fails and what to do stands in the frame that no copy loses. */
function verdictBlock({ plan }: SheetContext): Block {
  const failing = failingChecks(plan);
  const worst = worstCheck(plan);
  const compared = plan.frame.checks.filter(({ verdict }) => verdict !== "ask").length;
  const asked = plan.frame.checks.length - compared;
  const open = asked === 0 ? "" : ` ${count(asked, "demand")} cannot be compared here: see below what each must hold.`;
  if (frameFails(plan)) {
    return caution(
      "danger",
      `**The frame FAILS: ${failing.length} of ${count(compared, "check")}.** Bore nothing. The frame must be changed, or reviewed by a licensed engineer.`,
      ...remedyTexts(plan),
      `${LIMITS} ${notApproval}`,
    );
  }
  const verdict =
    worst === undefined
      ? "**No check of the frame could be made.**"
      : `**No check of the frame fails (${compared} made).** Highest ratio ${ratioText(worst.ratio)}: ${worst.name}, ${worst.member}.`;
  return caution("warning", `${verdict}${open}`, `${LIMITS} ${notApproval}`);
}

const LIMITS: Text =
  "Computed, not tested. Not in it: fasteners and hardware, the structure below the posts, wood that is worse than its grade. It must be accepted in writing before anything is bored.";

const placeOf = ({ member, height }: FrameCheck, { show }: SheetContext): Text =>
  height === null ? member : `${member}, ${height === 0 ? "at the datum" : `${show.tape(height)} over the datum`}`;

function failureText(check: FrameCheck, context: SheetContext): Text {
  const { show } = context;
  const demand = sizeText({ value: check.demand, unit: check.unit }, show, { both: false, rounding: "up" });
  const capacity = sizeText({ value: check.capacity, unit: check.unit }, show, { both: false, rounding: "down" });
  const numbers = check.unit === "1" ? "" : `${demand} against ${capacity}, `;
  return `${bold(`FAILS: ${check.name}`)} (${placeOf(check, context)}): ${numbers}ratio ${bold(ratioText(check.ratio))}. ${check.advice}`;
}

function method({ plan, show }: SheetContext): readonly Text[] {
  const { frame } = plan.job;
  const joints = jointsOf(plan.runs);
  const corners =
    joints.length > 0
      ? ` At ${jointsWord(plan, joints)} ${plan.bays.some(({ kind }) => kind === "corner") ? "the two posts take" : "the post takes"} the push of the bend in both directions.`
      : "";
  const turned = plan.verticals.filter(isTurned).map(({ id }) => id);
  const faces =
    turned.length > 0
      ? ` ${listed(turned)} ${turned.length > 1 ? "stand" : "stands"} turned at a corner: there along means square to the face that looks to the side before it, and square means along that face.`
      : "";
  const rails = frame.bottomRail === null ? "posts and top rail" : "posts, top and bottom rail";
  const joint = frame.railJoint.value === "pinned" ? "rails may turn on the posts" : "rails turn with the posts";
  return [
    `**How it was computed.** Each side is one plane frame of ${rails}, with bending, compression and shear ${sourceMark("derived")}; each post stands on a spring for the turn of its base, and ${joint}. All cables pull at once, at the top of their bands on the day of the year that pulls them hardest; bores are taken off the sections.${corners}${faces}${plan.rakes.length > 0 ? " On a rake the posts stand plumb on feet that climb with the slope; sides in one line share a frame." : ""} Single and line loads of the code stand at the worst place of the top, one after the other. Stresses are compared by ${listed(methodSources(plan.frame.checks).map(sourceMark))}. Each row is the worst of its kind; ratio is demand over capacity, above 1 fails.`,
    ...hardestTexts(plan, show),
  ];
}

/** Standards by which stresses are compared. */
const methodSources = (checks: readonly FrameCheck[]): readonly SourceId[] => {
  const used = unique(checks.map(({ source }) => source)).filter((id) => !["practice", "job", "memory", "derived"].includes(id));
  return used.length === 0 ? ["derived"] : used;
};

function checksTable(context: SheetContext): Table {
  const { plan, show } = context;
  return table({
    id: "frame-checks",
    caption: "Checks of the frame",
    columns: [
      column("name", "Check", 0.21),
      column("place", "Member, height", 0.15),
      column("loads", "Loads acting", 0.225),
      column("demand", "Demand", 0.15),
      column("capacity", "Capacity", 0.135),
      column("ratio", "Ratio", 0.055, { align: "right" }),
      column("verdict", "Verdict", 0.075),
    ],
    rows: plan.frame.checks.map((check): readonly Cell[] => {
      const { name, loads, demand, unit, ratio, verdict } = check;
      const asked = verdict === "ask" || verdict === "not checked";
      return [
        name,
        placeOf(check, context),
        minor(withoutOrigin(loads)),
        asked && demand === 0 ? "-" : demandText(check, context),
        asked ? minor(unknownCapacity(check)) : sizeText({ value: check.capacity, unit }, show, RESULT_down),
        asked ? "-" : bold(ratioText(ratio)),
        verdictWord[verdict],
      ];
    }),
    notes: groupBy(
      plan.frame.checks.filter(({ advice }) => advice !== ""),
      ({ advice }) => advice,
    ).map((same) => `${bold(listed(same.map(({ name }) => name)))}: ${same[0].advice}`),
  });
}

/** The origin of each load stands once, among what is given. */
const withoutOrigin = (loads: Text): Text => loads.split(" (")[0] ?? loads;

/** A member that buckles first answers with no number. */
const demandText = ({ demand, unit }: FrameCheck, { show }: SheetContext): Text =>
  unit === "1" && isBeyond(demand) ? "it buckles" : sizeText({ value: demand, unit }, show, RESULT_up);

const unknownCapacity = ({ id }: FrameCheck): Text => (/^(base|spacer-fixing)-/.test(id) ? BY_REPORT : "not known here");

function formulaTables(context: SheetContext): readonly Block[] {
  const { plan, show } = context;
  const { checks } = plan.frame;
  if (checks.length === 0) return [];
  const rows = checks
    .filter(({ formula }) => formula !== "")
    .map((check): readonly Cell[] => [
      minor(
        `${bold(check.name)}, ${check.member}${checks.filter(({ name }) => name === check.name).length > 1 ? `; ${withoutOrigin(check.loads)}` : ""}`,
      ),
      minor(formulaText(check, show)),
      minor(sourcePlace(check.source, check.sourceWhere)),
    ]);
  const factors = factorRows(context);
  return [
    table({
      id: "frame-formulas",
      caption: "The same with formulas and numbers, to be computed again",
      columns: [
        column("check", "Check", 0.18),
        column("formula", "Symbols: numbers = result; capacity and its factors; ratio", 0.66),
        column("source", "Source", 0.16),
      ],
      rows,
    }),
    ...(factors.length === 0
      ? []
      : [
          table({
            id: "frame-factors",
            caption: "Reference values and factors used above",
            ...sideBySide([column("name", "Symbol", 0.07), column("value", "Value", 0.08), column("where", "Source", 0.35)], factors, 2),
          }),
        ]),
  ];
}

/** Each symbol with its values, place by place. */
function factorRows({ plan, show }: SheetContext): readonly (readonly Cell[])[] {
  const lines = plan.frame.checks.flatMap(({ factors }) =>
    factors.map((factor) => ({
      // "C_fu square" is C_fu: which axis it is for is said where it is used.
      name: factor.name.startsWith("C_") ? (factor.name.split(" ")[0] ?? "") : factor.name,
      value: factorText(factor, show),
      origin: `${sourcePlace(factor.source, factor.where)}${factor.note ? `: ${factor.note}` : ""}`,
    })),
  );
  return groupBy(lines, ({ name, origin }) => `${name}\n${origin}`)
    .map((same) => [same[0].name, unique(same.map(({ value }) => value)).join(", "), same[0].origin] as const)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
    .map((cells) => cells.map(minor));
}

function windowsTable(context: SheetContext): Table {
  const { plan, show } = context;
  return table({
    id: "frame-windows",
    caption: "Between which targets at the nut the cables may be set",
    columns: [
      column("run", "Run", 0.05),
      column("low", "At least", 0.1),
      column("needs", "made up of", 0.32),
      column("high", "At most", 0.1),
      column("allows", "set by the least of", 0.3),
      column("target", "Target", 0.13, { sub: "with least and greatest E A" }),
    ],
    rows: plan.frame.windows.map((window): readonly Cell[] => [
      bold(window.runId),
      bold(show.forceUp(window.low)),
      minor(window.needs.map(({ name, tension }) => `${show.forceUp(tension)} ${name.split(":")[0] ?? name}`).join(" + ")),
      bold(show.forceDown(window.high)),
      minor(window.allows.map(({ name, tension, source }) => `${show.forceDown(tension)} ${name} ${sourceMark(source)}`).join("; ")),
      `${bold(show.force(window.target))} (${show.force(window.targetBand.low)} - ${show.force(window.targetBand.high)})`,
    ]),
    rowHeads: true,
    notes: plan.frame.windows
      .filter(isEmpty)
      .map(
        ({ runId, low, high }) =>
          `**${runId}: no reading does both.** ${show.forceUp(low)} are needed, ${show.forceDown(high)} allowed: ${frameFails(plan) ? "see the change above." : "shorter spans, closer cables or a stiffer frame open the window."}`,
      ),
  });
}

const isEmpty = ({ low, high }: TensionWindow): boolean => low > high;
