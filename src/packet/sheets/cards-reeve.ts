// What does a crew confirm when cables are reeved and their ends are set?
import type { Plan } from "../../plan/plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import type { Card } from "./card.ts";
import {
  cutEnds,
  depthOf,
  farFitting,
  gripEnds,
  isNarrow,
  meetingTails,
  postsWith,
  secondStuds,
  siteEnds,
  slopedEnds,
  startOf,
  startWords,
  stopOf,
} from "./ends.ts";
import { eyeEnds, eyeIds, faceEnds, faceIds, setWords } from "./face-ends.ts";
import { count, refer, type SheetContext } from "./kit.ts";
import { setItems } from "./piers.ts";
import { safetyFor } from "./safety-messages.ts";
import { sleeveEndItems } from "./sleeves.ts";

export function reeveCard(context: SheetContext): Card {
  const { plan } = context;
  const cut = cutEnds(plan).length > 0;
  return {
    key: "reeve",
    troubles: "reeve",
    title: cut ? "Reeve and mark the far ends" : "Reeve and set the ends",
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: safetyFor("reeve", plan),
    items: [
      ...eyeItems(plan),
      ...spoolItems(context),
      { text: reeveWords(plan) },
      {
        text: `${count(plan.cables.length, "cable")} reeved, lowest course first, none crossed; each mark on ${refer(context, "cables")} ticked.`,
      },
      {
        text: `Threads clean and oiled; ${firstTurnWords(context)} at ${postsWith(plan.runs.map(startOf))}.${bevelWords(context)}`,
        killer: true,
      },
      ...markItems(plan),
      ...sleeveEndItems(plan),
      ...gripItems(context),
    ],
    hold: `H2, signed on ${refer(context, "proof")}: ${cut ? `no cable is cut to its final length for its ${farFitting(plan)} before H2. A cut cable cannot be made longer.` : "ends set. Tails stay long until H3."}`,
  };
}

/** On a slope nut and collar bear on a wedge. */
function bevelWords(context: SheetContext): Text {
  const { plan } = context;
  const ends = slopedEnds(plan);
  return ends.length === 0 ? "" : ` At ${postsWith(ends)}, on a slope, the bevelled washer first, as ${refer(context, "stairs")} shows.`;
}

const reeveWords = (plan: Plan): Text =>
  `Plain end first: ${plan.runs.map((run) => `${run.id} from ${startWords(plan, run)} to ${stopOf(run).postId}`).join("; ")}.`;

/** Eyes stand before the cables come. */
const eyeItems = (plan: Plan): readonly StepItem[] => [
  ...(faceEnds(plan).length === 0
    ? []
    : [
        {
          text: `${setWords(plan)} ${faceIds(plan)}: flange flat on the face, eye as near upright as that allows; the first one tried with a hard pull.`,
          killer: true as const,
        },
      ]),
  ...setItems(plan),
];

function spoolItems({ plan, show }: SheetContext): readonly StepItem[] {
  return plan.job.supply.kind === "ready"
    ? []
    : [
        { text: "Outside length measured before the first cut from the spool", value: show.lengthUnit, killer: true },
        { text: "One stud fitted on each cable before it goes in, as its instruction says; the first one tested." },
      ];
}

function firstTurnWords({ plan, show }: SheetContext): Text {
  const { firstTurns } = plan.job.fittings.stud;
  return `washer, nut run on by hand, ${show.decimal(firstTurns.value, 1)} full turns ${sourceMark(firstTurns.source)}`;
}

const slackWords = ({ plan, show }: SheetContext): Text =>
  plan.runs
    .filter(({ takeUp }) => takeUp.slackToPull > 0)
    .map((run) => `${run.id} ${show.tape(run.takeUp.slackToPull)}`)
    .join(", ");

/** A second stud, or a fitting at an eye: the far end is only marked on this card, and cut on the next one. */
function markItems(plan: Plan): readonly StepItem[] {
  const ends = secondStuds(plan);
  return [
    ...(ends.length === 0
      ? []
      : [
          {
            text: `Each cable hand-tight and marked where it leaves the back face of ${postsWith(ends)}; every mark measured twice.`,
            killer: true as const,
          },
        ]),
    ...(eyeEnds(plan).length === 0
      ? []
      : [
          {
            text: `${eyeIds(plan)}: each cable hand-tight beside its eye and marked at the middle of the eye; every mark measured twice.`,
            killer: true as const,
          },
        ]),
  ];
}

function gripItems(context: SheetContext): readonly StepItem[] {
  const { plan } = context;
  const grips = gripEnds(plan);
  if (grips.length === 0) {
    return [];
  }
  const slack = slackWords(context);
  return [
    ...(slack === ""
      ? []
      : [
          {
            text: `Tails marked at the fitting, pulled past hand-tight by ${slack}, then set; least reached`,
            value: context.show.lengthUnit,
            killer: true,
          } as const,
        ]),
    {
      text: `Pulled by hand, then grip ends set at ${postsWith(grips)}. One-way: set last, never early. Tails left long.`,
      killer: true,
    },
    ...narrowItems(plan),
  ];
}

/** Where a tail cannot run straight out. */
function narrowItems(plan: Plan): readonly StepItem[] {
  const narrow = gripEnds(plan).filter(isNarrow);
  const meetings = meetingTails(plan);
  return [
    ...(narrow.length > 0
      ? [{ text: `Narrow gap behind ${postsWith(narrow)}: tail led out sideways in a wide curve, end seated, then the next cable.` }]
      : []),
    ...meetings.map(
      ({ first, firstRun, second, secondRun }): StepItem => ({
        text: `${first.postId} and ${second.postId}: all of ${firstRun} set first, its tails capped or bent aside, then ${secondRun}.`,
      }),
    ),
  ];
}

export function farEndCard(context: SheetContext): Card {
  const { plan, show } = context;
  const ends = secondStuds(plan);
  const narrow = ends.filter(isNarrow);
  const free = ends.filter((end) => !isNarrow(end));
  const starts = plan.runs.filter((run) => siteEnds(run).studs.some(isNarrow)).map(startOf);
  const slack = slackWords(context);
  const faces = eyeEnds(plan).length > 0;
  return {
    key: faces ? "far-ends" : "second-studs",
    title: `Cut and fit ${faces ? "the far ends" : "the second studs"}`,
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: safetyFor("cut", plan),
    items: [
      { text: `H2 signed on ${refer(context, "proof")}; no cable was cut to its final length before.`, killer: true },
      ...(slack === "" ? [] : [{ text: `Cut shorter than the mark asks, or the thread runs out: ${slack}.`, killer: true } as const]),
      ...(narrow.length > 0
        ? [
            {
              text: `${postsWith(narrow)}, no room behind: nut and washer off at ${postsWith(starts)}; cables bowed towards the ${floorWord(plan.job)} over the bays, end pulled back into the bay, in a wide curve; cut and stud fitted there, stud pushed out.`,
              killer: true as const,
            },
            {
              text: `Slack for that, about ${show.tape(depthOf(plan, narrow))} and room for the press, tried on the first cable before any other is cut. None to be had: stop, ask the office (stud fitted outside, end post left loose).`,
              killer: true as const,
            },
          ]
        : []),
      ...(free.length > 0
        ? [{ text: `${postsWith(free)}: cut as far from the mark as the stud's instruction says, stud fitted.`, killer: true as const }]
        : []),
      ...(faces
        ? [
            {
              text: `${eyeIds(plan)}: cut as far before the mark as the instruction of the end fitting says, fitting put on, its fork pinned to the eye, the pin locked. Pin does not reach: nut back or off at the other end, never the strand stretched by a tool.`,
              killer: true as const,
            },
          ]
        : []),
      { text: "First cable finished and tested with a hard pull before the second was cut." },
      {
        text: `Threads clean and oiled; ${firstTurnWords(context)}, at ${ends.length > 0 ? "both ends of every cable" : "the pulling end of every cable"}.`,
        killer: true,
      },
      { text: "Every cable hand-tight again, none crossed." },
    ],
  };
}
