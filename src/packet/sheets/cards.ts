// Where does a crew stop and confirm? One pause card for each step, one page each, at most nine items.
import { edgeProtection } from "../../plan/open-edge.ts";
import type { Plan } from "../../plan/plan.ts";
import { dangerWords } from "../danger-line.ts";
import type { Block, Steps, Table, Text } from "../packet.ts";
import { showIn } from "../show-number.ts";
import { troubles } from "../troubles.ts";
import type { Card } from "./card.ts";
import { boreCard, frameCard, setOutCard } from "./cards-bore.ts";
import { beforePullCard, proofCard, pullCard } from "./cards-pull.ts";
import { farEndCard, reeveCard } from "./cards-reeve.ts";
import { cutEnds } from "./ends.ts";
import { blanks, bold, column, heading, minor, pageBreak, prose, type SheetContext, steps, table } from "./kit.ts";

export function crewCards(context: SheetContext): readonly Block[] {
  const cut = cutEnds(context.plan).length > 0 ? [farEndCard] : [];
  const makers = [frameCard, setOutCard, boreCard, reeveCard, ...cut, beforePullCard, pullCard, proofCard];
  return makers
    .map((make) => make(context))
    .flatMap((card, index, cards) => [...(index === 0 ? [] : [pageBreak]), ...cardBlocks(card, index + 1, cards.length, context.plan)]);
}

function cardBlocks(card: Card, number: number, total: number, plan: Plan): readonly Block[] {
  return [
    heading(`card-${card.key}-head`, `Card ${number} of ${total}: ${card.title}`),
    ...cardWarnings(card, plan).map((words) => prose(words)),
    ...card.safety,
    cardSteps(card),
    doneRow(card),
    // Last: where a card fills its page, what is confirmed stays with its lines and this table goes on to the next.
    ...troubleTable(card, plan),
  ];
}

/** Cables that are not yet tight are no guard. */
const edgeWords = ({ job }: Plan): Text =>
  `**Open edge, a drop of ${showIn(job.units).measure({ kind: "length", value: job.code.drop })}: ${edgeProtection(job)} up until H4.**`;

/** Cards that say in their own lines what stands at the edge. */
const edgeCards: readonly string[] = ["frame", "before-tightening", "proof"];

/** Each card is a page of its own. */
const cardWarnings = ({ key }: Card, plan: Plan): readonly Text[] =>
  [dangerWords(plan), edgeCards.includes(key) ? "" : edgeWords(plan)].filter((words) => words !== "");

const cardSteps = (card: Card): Steps =>
  steps({
    id: `card-${card.key}`,
    title: `In the hand: ${card.sheets}`,
    mode: "do-confirm",
    items: [...card.items, { text: "List complete." }],
    ...(card.hold === undefined ? {} : { hold: card.hold }),
  });

/** What goes wrong most at this step: the condition first. */
function troubleTable(card: Card, plan: Plan): readonly Table[] {
  const rows = troubles(plan).filter(({ step }) => step === card.troubles);
  return rows.length === 0
    ? []
    : [
        table({
          id: `card-${card.key}-troubles`,
          caption: `${card.title}: if something goes wrong`,
          columns: [column("when", "If ...", 0.34), column("then", "then ...", 0.66)],
          rows: rows.map(({ when, then }) => [minor(bold(when)), minor(then)]),
        }),
      ];
}

/** One row for whoever ends the card, or stops in its middle and hands it on: nothing is signed here. */
const doneRow = (card: Card): Block =>
  blanks(`card-${card.key}-done`, "Card done", [["Initials; or stopped after line no., handed to", "initials, time"]]);
