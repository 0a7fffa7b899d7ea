// Z-801: in which order is the work done, and where does everybody stop and confirm?
import type { Sheet, Table } from "../packet.ts";
import { troubles } from "../troubles.ts";
import { introduction, slopeWordList, unitWords, wordList } from "../wording.ts";
import { mitredIds } from "./bore-corners.ts";
import { crewCards } from "./cards.ts";
import { drawnParts } from "./drawn.ts";
import { hasTails } from "./ends.ts";
import { faceEnds, hasLags } from "./face-ends.ts";
import { guideBlocks } from "./guide.ts";
import { bold, column, prose, type SheetContext, type SheetMaker, sheet, table } from "./kit.ts";
import { piersOf } from "./piers.ts";

export const stepsSheet: SheetMaker = (context, head): Sheet =>
  context.home
    ? sheet(head, "portrait", [
        prose(...introduction.steps),
        ...drawnParts(context.plan),
        wordTable(context),
        ...guideBlocks(context),
        troubleTable(context),
      ])
    : sheet(head, "portrait", crewCards(context));

/** What goes wrong most, and what to do: the condition first. */
function troubleTable({ plan }: SheetContext): Table {
  return table({
    id: "steps-troubles",
    caption: "If something goes wrong",
    columns: [column("when", "If ...", 0.38), column("then", "then ...", 0.62)],
    rows: troubles(plan, true).map(({ when, then }) => [bold(when), then]),
  });
}

function wordTable({ plan }: SheetContext): Table {
  const unused = [
    ...(hasTails(plan) ? [] : ["grip end", "tail"]),
    ...(faceEnds(plan).length > 0 ? [] : ["face end"]),
    ...(hasLags(plan) ? [] : ["lag screw"]),
    ...(mitredIds(plan).length > 0 ? [] : ["mitre"]),
    ...(piersOf(plan).length > 0 ? [] : ["anchor"]),
    ...(plan.bores.some(({ bushing }) => bushing) ? [] : ["bushing"]),
    ...(plan.rakes.length === plan.sides.length ? ["story pole"] : []),
  ];
  return table({
    id: "steps-words",
    caption: "Words used in this packet",
    columns: [column("word", "Word", 0.27), column("meaning", "What it means", 0.73)],
    rows: [...wordList, unitWords[plan.job.units], ...(plan.rakes.length === 0 ? [] : slopeWordList)]
      .filter(([term]) => !unused.includes(term))
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([term, meaning]) => [term, meaning]),
    rowHeads: true,
  });
}
