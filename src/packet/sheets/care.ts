// Z-806: what does the owner get, and when does somebody look at the cables again?
import type { TighteningStep } from "../../plan/plan.ts";
import { roundDown } from "../../units/round.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction, runSpan } from "../wording.ts";
import {
  blank,
  blanks,
  bold,
  caution,
  column,
  facts,
  heading,
  list,
  prose,
  pullingEnds,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
} from "./kit.ts";
import { lastStep } from "./spans.ts";

export const careSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.care)] : []),
    ownerFacts(context),
    caution(
      "warning",
      "Do not use the guard, and call the firm, when a cable is slack, a wire is broken, or a post moves.",
      "Do not climb on the cables. Hang nothing on them. Never tighten above the highest reading of its band: the posts may not bear more.",
    ),
    heading("care-clean-head", "Cleaning"),
    list(...cleaning(context)),
    visitsTable(context),
    threadTable(context),
    blanks("care-contact", "Whom to call", [
      ["Firm, telephone", ""],
      ["Date of completion", ""],
      ["Keep these papers until", ""],
    ]),
    signatures("care-sign", "Handed over by", "Received by the owner"),
  ]);

function ownerFacts({ plan, show }: SheetContext) {
  const { identity, cable, code } = plan.job;
  return facts("care-card", [
    ["Owner's card for", `${identity.number} - ${identity.title}, ${identity.place}`, true],
    ["Cables", `${plan.cables.length} of ${cable.construction}, ${show.diameter(cable.diameter)}, stainless ${cable.grade}`],
    ...plan.runs.map((run): readonly [Text, Text, true] => [
      `Target of ${run.id}, ${runSpan(run)}`,
      `${show.forceBoth(run.tension.target)}${bandWords(lastStep(plan, run.id), show)}, tightened at ${pullingEnds(run)
        .map(({ postId }) => postId)
        .join(" and ")}`,
      true,
    ]),
    ["Opening", `a ${show.tapeBoth(code.openingSphere.value)} sphere must not pass`],
  ]);
}

const bandWords = (step: TighteningStep | undefined, show: SheetContext["show"]): Text =>
  step ? ` (${show.forceBand(step.reading_low, step.reading_high)})` : "";

const RINSE: Readonly<Record<string, Text>> = {
  inland: "Rinse with clean water in spring and autumn.",
  coast: "Rinse with clean water every month: salt air marks stainless steel.",
  pool: "Rinse with clean water every month: pool chemicals attack stainless steel.",
  "road salt": "Rinse with clean water every month in winter, and once when it ends.",
};

function cleaning({ plan }: SheetContext): readonly Text[] {
  const wood = plan.job.posts.section.material === "wood";
  return [
    `${RINSE[plan.job.code.exposure] ?? ""} ${sourceMark("practice")}`,
    "Use mild soap and a soft cloth, along the strand. No steel wool, no bleach, no grit.",
    `Brown spots are mostly dust of other steel: clean them off soon ${sourceMark("ssina-fabrication")}.`,
    ...(wood
      ? ["Keep the wood sealed around bores and under washers."]
      : ["Touch up scratches of painted or coated metal before rust creeps under."]),
    "No wire end may stand out; put lost caps back on.",
  ];
}

function visitsTable({ plan }: SheetContext): Table {
  const wood = plan.job.posts.section.material === "wood";
  const visits: readonly (readonly [Text, Text])[] = [
    ["Next day", "read every cable; turn only those below their band"],
    [
      "After about a month",
      wood
        ? "strand has bedded in, wood has begun to dry: read, correct, look at posts"
        : "strand has bedded in: read, correct, look at posts",
    ],
    ["After one year", "read, correct; opening check; clean; look at feet and rail"],
    ["Every year", "the same; before winter where it freezes"],
  ];
  return table({
    id: "care-visits",
    caption: `Visits ${sourceMark("practice")}`,
    columns: [
      column("when", "When", 0.19),
      column("what", "What", 0.35),
      column("due", "Due", 0.12, { sub: "date" }),
      column("done", "Done", 0.12, { sub: "date, by" }),
      column("low", "Lowest", 0.11, { sub: "reading" }),
      column("high", "Highest", 0.11, { sub: "reading" }),
    ],
    rows: visits.map(([when, what]) => [bold(when), what, blank(), blank(), blank(), blank()]),
    writeIn: true,
    notes: [
      "Read at about the temperature of the first readings, or write the temperature beside the reading. Tighten in the order of the log.",
    ],
  });
}

function threadTable({ plan, show }: SheetContext): Table {
  return table({
    id: "care-thread",
    caption: "Thread left for later visits: each cable",
    columns: [
      column("cables", "Cables", 0.22),
      column("end", "Tightened at", 0.18),
      column("planned", "Thread left per nut", 0.22, { sub: "plan" }),
      column("turns", "Full turns left", 0.18, { sub: "plan" }),
      column("found", "Least found", 0.2, { sub: "field" }),
    ],
    rows: plan.runs.map((run) => {
      const marks = plan.cables.filter(({ runId }) => runId === run.id).map(({ mark }) => mark);
      const pitch = plan.job.fittings.stud.pitch.value;
      // Whole turns that are surely there.
      const turns = roundDown(run.takeUp.threadLeft / pitch, 1);
      return [
        `${marks[0] ?? run.id} to ${marks.at(-1) ?? run.id}`,
        pullingEnds(run)
          .map(({ postId }) => postId)
          .join(" and "),
        show.tapeDown(run.takeUp.threadLeft),
        String(turns),
        blank(show.lengthUnit),
      ];
    }),
    rowHeads: true,
    writeIn: true,
    notes: [
      "When the thread is used up: slacken the cable, pull slack through the hold end, begin again. If that cannot be done, replace the cable.",
    ],
  });
}
