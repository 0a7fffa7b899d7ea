// How does somebody who does this once mark, cut and fit the ends of the cables?

import type { Plan, Run, RunEnd } from "../../plan/plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { cutEnds, depthOf, farFitting, gripEnds, isNarrow, meetingTails, postsWith, secondStuds, siteEnds, startOf } from "./ends.ts";
import { eyeEnds } from "./face-ends.ts";
import { bevelItems } from "./guide-slopes.ts";
import { refer, type SheetContext } from "./kit.ts";
import { backOfEnd } from "./set-off-words.ts";
import type { Stage } from "./stage.ts";

export function endsStage(context: SheetContext): Stage {
  const { plan } = context;
  const cut = cutEnds(plan).length > 0;
  return {
    key: "ends",
    title: cut ? "Mark the far ends" : "Set the ends",
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: null,
    items: [
      {
        text: "Oil each thread. Run the nut on by hand once, then take it off again.",
        more: "Stainless threads seize when they are dry.",
        killer: true,
      },
      ...bevelItems(context),
      ...(plan.job.posts.sleeve === null
        ? []
        : [
            {
              text: "Push each washer through its hole until it lies on the wood. Look in with a light.",
              more: "A nut on the sleeve crushes it. The cable then goes slack.",
              killer: true as const,
            },
          ]),
      {
        text: `At ${postsWith(plan.runs.map(startOf))}: washer, then nut. Give it ${firstTurns(context)} full turns, no more.`,
        more: "The rest of the thread is needed for tightening.",
      },
      ...plan.runs.flatMap((run) => siteEnds(run).studs.map((end) => markItem(plan, run, end))),
      ...plan.runs.flatMap((run) => siteEnds(run).faces.map((end) => markAtEye(run, end))),
      ...(cut ? [] : slackItems(context, "pull out")),
      ...plan.runs.flatMap((run) => siteEnds(run).grips.flatMap((end) => gripItem(run, end))),
      ...meetingItems(plan),
      ...(gripEnds(plan).length > 0 ? [{ text: "Leave the tails long. They are cut after H3." }] : []),
    ],
    hold: cut
      ? `H2, signed on ${refer(context, "proof")}: no cable is cut to its final length for its ${farFitting(plan)} before H2.`
      : `H2, signed on ${refer(context, "proof")}: ends set. A second person checks. Tails stay long until H3.`,
  };
}

const firstTurns = ({ plan, show }: SheetContext): Text => show.decimal(plan.job.fittings.stud.firstTurns.value, 1);

/** The thread alone is too short where a run is long: the rest is taken out by hand. */
const slackItems = ({ plan, show }: SheetContext, how: "pull out" | "cut off"): readonly StepItem[] =>
  plan.runs
    .filter(({ takeUp }) => takeUp.slackToPull > 0)
    .map(
      (run): StepItem => ({
        text:
          how === "pull out"
            ? `Run ${run.id}: mark each tail at its fitting. Pull it ${show.tape(run.takeUp.slackToPull)} past hand-tight, then set the grip end.`
            : `Run ${run.id}: cut ${show.tape(run.takeUp.slackToPull)} shorter than the mark asks.`,
        more: `The thread alone is too short here. Write down the least that you reached.`,
        value: show.lengthUnit,
        killer: true,
      }),
    );

const markItem = (plan: Plan, run: Run, end: RunEnd): StepItem => ({
  text: `Run ${run.id}, ${end.postId}: pull the cable hand-tight. Mark it where it leaves the ${backOfEnd(plan, end)}.`,
  more: "Mark every cable of the run. Measure twice. Do not cut yet.",
  killer: true,
});

const markAtEye = (run: Run, end: RunEnd): StepItem => ({
  text: `Run ${run.id}, ${end.postId}: pull the cable hand-tight beside its eye. Mark it at the middle of the eye.`,
  more: "Mark every cable of the run. Measure twice. Do not cut yet.",
  killer: true,
});

const gripItem = (run: Run, end: RunEnd): readonly StepItem[] => [
  ...(isNarrow(end)
    ? [
        {
          text: `${end.postId} has little room behind. Lead each tail out sideways in a wide curve.`,
          more: "Seat that end as the next step says. Then do the next cable. A sharp bend kinks the strand.",
        },
      ]
    : []),
  {
    text: `Run ${run.id}: pull the slack by hand at ${end.postId}. Then set the grip end.`,
    more: "Most of these fittings go on one way only. They do not come off again.",
    killer: true,
  },
];

const meetingItems = (plan: Plan): readonly StepItem[] =>
  meetingTails(plan).map(
    ({ first, firstRun, second, secondRun }): StepItem => ({
      text: `At ${first.postId} and ${second.postId} tails meet. Finish ${firstRun} first, then ${secondRun}.`,
      more: `Cap the tails of ${firstRun}, or bend them aside.`,
    }),
  );

/** Only once the marks have been checked. */
export function farEndStage(context: SheetContext): Stage {
  const { plan } = context;
  const faces = eyeEnds(plan).length > 0;
  return {
    key: faces ? "far-ends" : "second-studs",
    title: `Cut and fit ${faces ? "the far ends" : "the second studs"}`,
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: "cut",
    items: [
      {
        text: `Read the ${faces ? "fitting" : "stud"}'s instruction. It says how far from the mark you cut.`,
        more: "Do one cable to its end. Test it with a hard pull. Then do the rest.",
        killer: true,
      },
      ...slackItems(context, "cut off"),
      ...plan.runs.flatMap((run) => siteEnds(run).studs.flatMap((end) => fitItems(run, end, context))),
      ...plan.runs.flatMap((run) => siteEnds(run).faces.map((end) => pinItem(run, end))),
      {
        text: `Oil each thread. Washer, then nut by hand: ${firstTurns(context)} full turns${secondStuds(plan).length > 0 ? " at both ends" : ""}.`,
        more: "Check that no cable has crossed another.",
      },
    ],
  };
}

const pinItem = (run: Run, end: RunEnd): StepItem => ({
  text: `Run ${run.id}: cut at ${end.postId}, put the fitting on and pin its fork to the eye.`,
  more: `Lock the pin. It does not reach? Turn the nut at ${startOf(run).postId} back.`,
  killer: true,
});

function fitItems(run: Run, end: RunEnd, { plan, show }: SheetContext): readonly StepItem[] {
  const start = startOf(run);
  return isNarrow(end)
    ? [
        {
          text: `Run ${run.id}: take nut and washer off at ${start.postId}. Bow the cable towards the ${floorWord(plan.job)} over the bays.`,
          more: `There is no room to cut behind ${end.postId}. The slack comes from the other end.`,
        },
        {
          text: `Pull the end at ${end.postId} back into the bay. Lead it in a wide curve.`,
          more: `You need about ${show.tape(depthOf(plan, [end]))}, the depth of the post, and room for the press.`,
        },
        {
          text: "Try this with the tool on the first cable, before you cut any other.",
          more: "No room? Stop and ask the author. The stud may go on outside, with the end post left loose.",
          killer: true,
        },
        {
          text: `Cut and fit the stud there, in the bay. Then push the stud out through ${end.postId}.`,
          killer: true,
        },
      ]
    : [{ text: `Run ${run.id}: cut at ${end.postId} and fit the second stud.`, killer: true }];
}
