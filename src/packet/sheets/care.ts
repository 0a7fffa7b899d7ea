// Z-806: what does the owner get, and when does somebody look at the cables again?
import type { Run } from "../../plan/plan.ts";
import { roundDown } from "../../units/round.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { fromTo } from "../wording.ts";
import { hasBushingTubes } from "./bearing.ts";
import { hasTails } from "./ends.ts";
import { eyeEnds, eyeIds } from "./face-ends.ts";
import {
  blank,
  bold,
  caution,
  column,
  count,
  facts,
  groupBy,
  list,
  listed,
  pullingEnds,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  table,
  unique,
  upperFirst,
} from "./kit.ts";
import { isWood } from "./material.ts";
import { highAtNut, lowAtNut, movedWords } from "./readings.ts";
import { onWhat } from "./slopes.ts";

export const careSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ownerFacts(context),
    caution(
      "warning",
      `Do not use the guard when a cable is slack, a wire is broken, or a post moves. Call ${context.home ? "a professional" : "the firm"}.`,
      'No climbing, nothing hung on the cables. Never tighten above "at most": the posts may not bear more.',
    ),
    handOverTable(context),
    list(...cleaning(context)),
    visitsTable(context),
    threadTable(context),
  ]);

function ownerFacts(context: SheetContext) {
  const { plan, show } = context;
  const { identity, cable, code } = plan.job;
  return facts("care-card", [
    [context.home ? "Keep this card. It is for" : "Owner's card for", `**${identity.number}** - ${identity.title}`],
    [
      "Cables",
      `${plan.cables.length} of ${cable.construction}, ${show.diameter(cable.diameter)}, stainless ${cable.grade}; a ${show.tape(code.openingSphere.value)} sphere must not pass`,
    ],
    ...slopeFacts(context),
    ...plan.runs.flatMap((run): readonly (readonly [Text, Text, true?])[] => [
      [
        `${run.id}, read at ${listed(pullingEnds(run).map(({ postId }) => postId))} (aim ${show.force(run.tension.target)})`,
        `at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}`,
        true,
      ],
      daysRow(run.id, context),
    ]),
  ]);
}

/** What must stay as it is on a stair or a ramp. */
const slopeFacts = ({ plan, show }: SheetContext): readonly (readonly [Text, Text])[] =>
  plan.rakes.map(({ sideId, kind, opening, openingSphere }) => {
    const { triangleSphere } = plan.job.code.stairs;
    const steps =
      kind === "stair" && triangleSphere !== null ? `, a ${show.tape(triangleSphere.value)} one must not go in at riser and tread` : "";
    return [
      `${upperFirst(kind)}, side ${sideId}`,
      `a ${show.tape(openingSphere.value)} sphere must not pass${steps}; top at ${show.tape(opening.guardHeight)} plumb above ${onWhat(kind)}: ${kind === "stair" ? "raise no step, " : ""}lay nothing on ${onWhat(kind)}: it makes the guard lower`,
    ];
  });

/** What is tight on a mild day pulls harder in the cold: the owner reads the value of the day, not the aim. */
const daysRow = (runId: string, { plan, show }: SheetContext): readonly [Text, Text] => {
  const { target } = plan.runs.find(({ id }) => id === runId)?.tension ?? { target: 0 };
  const days = plan.tightening.find((one) => one.runId === runId)?.days ?? [];
  return [
    `${runId}, aim by the air`,
    `${show.heatUnit}: ${days.map(({ temperature, added }) => `${show.heat(temperature).replace(` ${show.heatUnit}`, "")} ${bold(show.gauge(target + added))}`).join(", ")} ${show.forceUnit}`,
  ];
};

function handOverTable({ home }: SheetContext): Table {
  return table({
    id: "care-handover",
    caption: "Hand-over, and whom to call",
    columns: [
      column("date", "Completed on", 0.14),
      column("keep", "Keep papers until", 0.18),
      column("call", home ? "Professional, telephone" : "Firm, telephone", 0.22),
      column("by", home ? "Handed over by its author" : "Handed over by", 0.24),
      column("to", home ? "Received by you" : "Received by the owner", 0.22),
    ],
    rows: [[blank(), blank(), blank(), blank(), blank()]],
    writeIn: true,
  });
}

const RINSE: Readonly<Record<string, Text>> = {
  inland: "Rinse with clean water in spring and autumn.",
  coast: "Rinse with clean water every month: salt air marks stainless steel.",
  pool: "Rinse with clean water every month: pool chemicals attack stainless steel.",
  "road salt": "Rinse with clean water every month in winter, and once when it ends.",
};

function cleaning({ plan }: SheetContext): readonly Text[] {
  return [
    `${RINSE[plan.job.code.exposure] ?? ""} Mild soap, soft cloth; no steel wool, no bleach ${sourceMark("practice")}.`,
    `Brown spots are mostly dust of other steel: clean them off soon ${sourceMark("ssina-fabrication")}. Put lost caps back on.`,
    isWood(plan)
      ? "Keep the wood sealed around bores and under washers."
      : "Touch up scratches of painted or coated metal before rust creeps under.",
    ...bendCare(plan),
    ...(plan.job.posts.sleeve === null
      ? []
      : [
          `Look into the washers' holes in the sleeves: each washer lies on the ${plan.job.posts.section.name}, none on a sleeve, and they are dry.`,
        ]),
    ...(eyeEnds(plan).length > 0
      ? [
          `Look at each eye at ${eyeIds(plan)}: straight, flange tight on the face, pin locked, no split or crack. Else slacken that cable and call.`,
        ]
      : []),
  ];
}

/** Where cables turn in their bores, wires break and bushings sink in first: nobody else looks there at every visit. */
function bendCare(plan: SheetContext["plan"]): readonly Text[] {
  const ids = unique(plan.runs.flatMap(({ bends }) => bends.map(({ postId }) => postId)));
  return ids.length === 0
    ? []
    : [
        `At every visit look where cables turn, at ${listed(ids)}: broken wire, new cable; a ${hasBushingTubes(plan) ? "tube" : "bushing"} has sunk in: read it.`,
      ];
}

function visitsTable(context: SheetContext): Table {
  const { plan, show } = context;
  const { nextVisit_months, reference } = plan.job.site;
  const visits: readonly (readonly [Text, Text])[] = [
    ["Next day", "read every cable; turn only what is too low"],
    [`After ${count(nextVisit_months.value, "month")}`, settledWords(context)],
    [
      "After one year",
      `read, correct, clean; openings, feet, rail${plan.rakes.length === 0 ? "" : `; on slopes handrail, ${plan.runs.some(({ left, right }) => left.seat + right.seat > 0) ? "bevelled washers, " : ""}feet that the cables lift`}`,
    ],
    ["Every year", "the same; before winter where it freezes"],
  ];
  return table({
    id: "care-visits",
    caption: `Visits ${sourceMark("practice")}`,
    columns: [
      column("when", "When", 0.15),
      column("what", "What", 0.47),
      column("due", "Due", 0.09, { sub: "date" }),
      column("done", "Done", 0.09, { sub: "date, by" }),
      column("low", "Lowest", 0.1, { sub: `reads, ${show.forceUnit}` }),
      column("high", "Highest", 0.1, { sub: `reads, ${show.forceUnit}` }),
    ],
    rows: visits.map(([when, what]) => [bold(when), what, blank(), blank(), blank(), blank()]),
    writeIn: true,
    notes: [
      `Read at about ${show.heat(reference.value)}, or compare with the aim by the air: the limits move as it does. Tighten in the log's order (${refer(context, "tightening")}).`,
      ...lossWords(context),
    ],
  });
}

/** What has settled by the next visit, and how many turns bring it back. */
function settledWords({ plan, show }: SheetContext): Text {
  const turns = plan.climate.map(({ runId, visit }) => `${runId} ${show.decimal(visit.turnsPerEnd, 1)}`);
  return `${isWood(plan) ? "wood has dried, strand bedded in" : "strand has bedded in"}: read, correct, look at posts; **turns of each nut to expect: ${turns.join(", ")}**`;
}

/** What settling takes, by cause; the target holds it in store. */
function lossWords(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const [first] = plan.climate;
  if (first === undefined) return [];
  const worst = plan.climate.map(({ runId, settling }) => `${show.force(Math.max(0, settling.worst))} (${runId})`);
  const wood =
    first.wood === null
      ? ""
      : ` A post of ${first.wood.name} shrinks ${movedWords(Math.max(first.shrinkage.left, first.shrinkage.right), context)} along the cable while it dries from ${show.decimal(first.wood.from_percent, 0)} % to ${show.decimal(first.wood.to_percent, 0)} % moisture ${sourceMark((first.wood.changeShare ?? first.wood.shrinkage_percent).source)}.`;
  return [
    `Settling takes at most ${worst.join(", ")} by then ${sourceMark("derived")}.${wood} Strand beds in by ${show.decimal(first.beddingShare.value * 1000, 2)} mm a metre ${sourceMark(first.beddingShare.source)}.`,
  ];
}

/** What stands on the nuts today, what the visit takes of it, and what is left then: every turn is counted from the length printed. */
function threadTable(context: SheetContext): Table {
  const { plan, show } = context;
  const months = count(plan.job.site.nextVisit_months.value, "month");
  const rows = plan.runs.flatMap((run) => threadsOf(run, context).map((thread) => ({ run, thread })));
  const short = rows.filter(({ thread }) => thread.isShort);
  return table({
    id: "care-thread",
    caption: "Thread left for later visits: each cable",
    columns: [
      column("cables", "Cables", 0.18),
      column("end", "Pulled at", 0.11),
      column("planned", "Left per nut", 0.14, { sub: "plan, today" }),
      column("visit", "Turns", 0.14, { sub: `in ${months}` }),
      column("then", "Left then", 0.11, { sub: "plan" }),
      column("reserve", "Keep", 0.1, { sub: "reserve" }),
      column("turns", "Full turns left", 0.15, { sub: "above reserve" }),
      column("found", "Least found", 0.14, { sub: "today" }),
    ],
    rows: rows.map(({ run, thread }) => {
      const marks = plan.cables.filter(({ runId }) => runId === run.id).map(({ mark }) => mark);
      return [
        fromTo(marks),
        listed(thread.posts),
        thread.left,
        thread.visit,
        thread.later,
        show.tape(run.takeUp.reserve),
        thread.isShort ? bold("none: uses the reserve") : thread.turns,
        blank(show.lengthUnit),
      ];
    }),
    rowHeads: true,
    writeIn: true,
    notes: [
      ...(short.length === 0
        ? []
        : [
            `**${listed(unique(short.map(({ run }) => run.id)))}: the visit after ${months} takes more turns than lie above the reserve. ${hasTails(plan) ? "Have the cable replaced" : "Have the cable shortened or replaced"} when less than ${show.tape(VISIT_turns * plan.job.fittings.stud.pitch.value)} of thread is left.**`,
          ]),
      hasTails(plan)
        ? "When the thread is used up the cable has to be replaced: its tail is cut, no slack can be pulled through its far end."
        : "When the thread is used up: the cable has to be shortened or replaced.",
    ],
  });
}

/** A nut needs so many turns of thread in front of it to be worth a visit. */
const VISIT_turns = 2;

interface ThreadLeft {
  readonly posts: readonly string[];
  readonly left: Text;
  readonly visit: Text;
  /** After the visit at which what has settled is taken up. */
  readonly later: Text;
  readonly turns: Text;
  /** The visit takes thread from the reserve. */
  readonly isShort: boolean;
}

/** Ends that print alike share a row. Turns above the reserve, whole ones that are surely there. */
function threadsOf({ id, takeUp }: Run, { plan, show }: SheetContext): readonly ThreadLeft[] {
  const visit = plan.climate.find(({ runId }) => runId === id)?.visit ?? { travelPerEnd: 0, turnsPerEnd: 0 };
  const step = plan.job.limits.tapeStep.value;
  const ends = takeUp.ends.map(({ postId, threadLeft }) => {
    const later = roundDown(Math.max(0, threadLeft - visit.travelPerEnd), step);
    const turns = roundDown(Math.max(0, later - takeUp.reserve) / plan.job.fittings.stud.pitch.value, 1);
    return { postId, left: show.tapeDown(threadLeft), later: show.tapeDown(later), turns: String(turns), isShort: later < takeUp.reserve };
  });
  return groupBy(ends, ({ left, later }) => `${left} ${later}`).map((alike) => ({
    ...alike[0],
    posts: alike.map(({ postId }) => postId),
    visit: show.decimal(visit.turnsPerEnd, 1),
  }));
}
