// Why is a run pulled in this order and in these passes, what would equal readings leave, and between which tensions may it stand?
import type { TensionWindow } from "../../plan/frame-plan.ts";
import type { Run } from "../../plan/plan.ts";
import type { RunTightening } from "../../plan/readings.ts";
import type { Block, Cell, Table, Text } from "../packet.ts";
import { sourceMark, sourcePlace } from "../show-number.ts";
import { bold, caution, column, count, list, listed, refer, type SheetContext, strong, table, unique } from "./kit.ts";

/** What stands in the way, if anything does; then the order, its reason and what would happen without it. */
export function whyBlocks(context: SheetContext, run: Run, tightening: RunTightening): readonly Block[] {
  const window = context.plan.frame.windows.find(({ runId }) => runId === run.id);
  return [
    ...refusalBlocks(context, run, tightening),
    ...(window === undefined ? [] : closedBlocks(context, window)),
    list(
      `**Order: ${tightening.orderName}:** ${orderList(tightening)}.`,
      `**Why this order:** ${whyOrder(context, tightening)}.`,
      `**Passes:** ${passesWords(context, tightening)}.`,
      `**Equal readings instead:** ${equalWords(context, run, tightening)}.`,
    ),
  ];
}

/** What is needed part by part, what is allowed by whom: not for those who pull. */
export function windowBlocks(context: SheetContext, run: Run): readonly Block[] {
  const window = context.plan.frame.windows.find(({ runId }) => runId === run.id);
  return window === undefined || !context.whole ? [] : [windowTable(context, window)];
}

/** "09, 01, 08", or what stands for a row of numbers that everybody can count. */
const orderList = ({ order }: RunTightening): Text => order.map((course) => String(course).padStart(2, "0")).join(", ");

const timesIn =
  (show: SheetContext["show"]) =>
  (share: number): Text =>
    `${show.decimal(share, 2)} x`;

function whyOrder({ plan, show }: SheetContext, tightening: RunTightening): Text {
  const { recommended, customary, bound, exact, ordersTried, orderName, together, highest_overTarget } = tightening;
  const times = timesIn(show);
  const own = recommended.highest_overTarget;
  const usual = customary.highest_overTarget;
  const isPrescribed = plan.job.tightening.order !== null;
  const isUsual = orderName === "from the middle outward";
  const found = exact ? "proved by the search" : `by a bound; ${ordersTried} orders tried`;
  const asks = `it asks for readings of ${bold(`${times(own)} target`)} at most${isUsual ? ", and is the customary one" : `, the customary one from the middle outward ${times(usual)}`}`;
  const least =
    // What is printed alike is alike.
    times(own) === times(bound) || own < bound
      ? `no order does with less (${found})`
      : `no order does with less than ${times(bound)} (${found})${isPrescribed ? "" : ", and this one is easier to keep"}`;
  const inLog =
    together.length > 1
      ? `. That is the run by itself; with ${listed(together.filter((id) => id !== tightening.runId))} the log asks for ${times(highest_overTarget)} at most`
      : "";
  return `${isPrescribed ? "prescribed in the job file; " : ""}${asks}; ${least}${inLog} ${sourceMark("derived")}`;
}

function passesWords({ plan, show }: SheetContext, { passes, together, movement_overLimit }: RunTightening): Text {
  const each = passes.map(({ number, kind, share }) =>
    kind === "compensated"
      ? `${passes.length > 1 ? `pass ${number}: ` : ""}**each cable to its own reading**, so that all stand at the target when the last one is pulled`
      : `pass ${number}: every cable to ${show.percent(share)} of the target`,
  );
  const chosen = plan.job.tightening.passes === null ? "the fewest that keep the limits of strand and posts" : "as the job file asks";
  const together_words = together.length > 1 ? ` Runs ${listed(together)} share the frame: each pass on all of them, in this order.` : "";
  const { movement_max } = plan.frame;
  return (
    `${count(passes.length, "pass", "passes")}, ${chosen}: ${each.join("; ")}.${together_words}` +
    ` On the way a post moves at most ${show.percent(movement_overLimit)} of its limit of ${show.fine(movement_max.value)} ${sourcePlace(movement_max.source, "")}`
  );
}

function equalWords({ show }: SheetContext, run: Run, { plain }: RunTightening): Text {
  const least = Math.min(...plain.tensions);
  const course = plain.tensions.indexOf(least) + 1;
  const slack = plain.slackCourses.map((each) => markOf(run.id, each));
  const passes = (number: number | null): Text =>
    number === null ? "more than are worth counting" : count(number, "plain pass", "plain passes");
  const left =
    slack.length > 0
      ? `${listed(slack)} hang${slack.length === 1 ? "s" : ""} slack`
      : `${markOf(run.id, course)} is left with ${show.force(least)}, **${show.percent(least / run.tension.target)} of the target**`;
  return `after one pass to the target in the customary order ${left}; until all are within 10 %: ${passes(plain.passes_10)}; within 5 %: ${passes(plain.passes_5)} ${sourceMark("derived")}`;
}

const markOf = (runId: string, course: number): Text => `${runId}-${String(course).padStart(2, "0")}`;

/** What would do instead, where no programme keeps the limits. */
function refusalBlocks(context: SheetContext, run: Run, { refusal, passes }: RunTightening): readonly Block[] {
  if (refusal === null) return [];
  const { plan, show } = context;
  const times = timesIn(show);
  const { broken, overLimit, course, pass, morePasses, targetShare } = refusal;
  const what =
    broken === "reading"
      ? `in pass ${pass} the reading of ${markOf(run.id, course)} is ${times(overLimit)} the strand's working limit of ${show.forceBothDown(plan.target.workingLimit)}`
      : `in pass ${pass}, at ${markOf(run.id, course)}, a post moves ${times(overLimit)} its limit of ${show.fine(plan.frame.movement_max.value)}`;
  const ways = [
    ...(morePasses === null ? [] : [`${morePasses} passes would do (tightening: most passes: ${morePasses})`]),
    `a target of ${show.percent(targetShare)} of this one would do, if the criterion allows it`,
    broken === "reading"
      ? "a thicker strand, stiffer posts or stiffer bases"
      : "stiffer posts, stiffer bases, or a top rail that takes the thrust",
  ];
  return [
    caution(
      "danger",
      `**Run ${run.id}: ${passes.length === 1 ? "this pass does" : "these passes do"} not keep the limits. Do not tighten by this log.** ${what}.`,
      `Instead: ${ways.join("; or ")}.`,
    ),
  ];
}

/** Where what is needed lies above what is allowed. */
function closedBlocks(context: SheetContext, window: TensionWindow): readonly Block[] {
  const { plan, show } = context;
  const bound = leastBound(window);
  if (bound === undefined || window.target <= window.high * (1 + 1e-9)) return [];
  const { remedy } = plan.frame;
  return [
    caution(
      "danger",
      `**Run ${window.runId}: do not tighten yet.** The target of ${show.forceBoth(window.target)} is more than ${bound.name} allows: ${show.forceBothDown(bound.tension)}; at least ${show.forceBothUp(window.low)} is needed.`,
      remedy === null
        ? `The frame has to be changed or accepted in writing by a licensed engineer first: ${refer(context, "cover")}.`
        : `What would do: ${remedy.change} (${remedy.write}).`,
    ),
  ];
}

const leastBound = ({ allows }: TensionWindow): TensionWindow["allows"][number] | undefined =>
  allows.reduce<TensionWindow["allows"][number] | undefined>(
    (least, each) => (least === undefined || each.tension < least.tension ? each : least),
    undefined,
  );

/** What is needed part by part, what is allowed by whom, and the target between them. */
/** A bound may lie at a post that the run does not reach. */
function togetherWords({ plan }: SheetContext, { runId, allows }: TensionWindow): readonly Text[] {
  const bays = plan.runs.find(({ id }) => id === runId)?.bayIds ?? [];
  const own = new Set(plan.bays.filter(({ id }) => bays.includes(id)).flatMap(({ leftId, rightId }) => [leftId, rightId]));
  const others = unique(allows.flatMap(({ name }) => name.match(/\bP\d+\b/g) ?? [])).filter((id) => !own.has(id));
  if (others.length === 0) return [];
  return [
    `${listed(others)} ${others.length === 1 ? "is" : "are"} beyond this run: the bounds of the frame hold with all runs scaled together.`,
  ];
}

function windowTable(context: SheetContext, window: TensionWindow): Table {
  const { show } = context;
  const { needs, allows, low, high, target, targetBand } = window;
  const rows: readonly (readonly Cell[])[] = [
    ...needs
      .filter(({ tension }) => tension > 0)
      .map(({ name, tension }, index): readonly Cell[] => [index === 0 ? "Needed" : "+", partName(name), show.forceUp(tension)]),
    [bold("Needed"), bold("at the nut, at least"), strong(show.forceUp(low))],
    [bold("Target"), targetWords(window, show.forceBand(targetBand.low, targetBand.high)), strong(show.force(target))],
    ...[...allows]
      .sort((a, b) => a.tension - b.tension)
      .map((bound): readonly Cell[] => [
        bound.tension === high ? bold("Allowed") : "allowed",
        `${bound.name} ${sourcePlace(bound.source, bound.where)}`,
        bound.tension === high ? strong(show.forceDown(bound.tension)) : show.forceDown(bound.tension),
      ]),
  ];
  return table({
    id: `tightening-window-${window.runId}`,
    caption: `Between which tensions run ${window.runId} may stand`,
    columns: [column("kind", "Side", 0.12), column("what", "What", 0.68), column("tension", "Tension", 0.2, { sub: "at the nut" })],
    rows,
    notes: [...(low > high ? ["**The window is empty: nothing is both enough and allowed.**"] : []), ...togetherWords(context, window)],
  });
}

/** "criterion in the worst span": its wording stands at the top of the sheet. */
const partName = (name: Text): Text => name.split(":")[0] ?? name;

const targetWords = ({ targetBand }: TensionWindow, band: Text): Text =>
  targetBand.high - targetBand.low < 1 ? bold("chosen") : `${bold("chosen")}; with the softest to the stiffest strand it would be ${band}`;
