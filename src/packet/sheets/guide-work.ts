// What does somebody who does this once do to bore, reeve, tighten and finish? Sentences of at most 20 words.
import type { Plan, Run, RunEnd } from "../../plan/plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { endName, faceName } from "../wording.ts";
import { siteEnds, startOf, startsInside, stopOf } from "./ends.ts";
import { count, endPostIds, listed, refer, type SheetContext, unique } from "./kit.ts";
import type { SafetyKey } from "./safety-messages.ts";

export interface Stage {
  readonly key: string;
  readonly title: Text;
  readonly safety: SafetyKey | null;
  readonly items: readonly StepItem[];
  readonly hold?: Text;
}

export function setOutStage(context: SheetContext): Stage {
  const { plan, show } = context;
  return {
    key: "set-out",
    title: "Mark the holes",
    safety: null,
    items: [
      {
        text: `Take a straight stick. Mark all ${plan.courses.length} heights from ${refer(context, "bores")} on it.`,
        more: "Measure every mark from the same end. Do not add up small steps.",
      },
      {
        text: `Stand the stick on the datum: ${plan.job.frame.datum}.`,
        more: 'Write "datum" on that end, so that you never turn it round.',
        killer: true,
      },
      { text: "Carry the marks to every post and spacer. Use the middle of the face." },
      {
        text: "Measure the gaps on one post. Write down the widest.",
        more: `No gap may be above ${show.tape(plan.job.limits.cableSpacing_max.value)}.`,
        value: show.lengthUnit,
        killer: true,
      },
    ],
  };
}

export function boreStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const counterbored = plan.bores.filter(({ counterbore }) => counterbore !== null);
  const wood = plan.job.posts.section.material === "wood";
  const treated = wood && plan.job.posts.treatment === "treated";
  return {
    key: "bore",
    title: `Bore ${count(plan.bores.length, "hole")}`,
    safety: "bore",
    items: [
      {
        text: "Bore one hole of each size in a scrap. Slide the real part in.",
        more: "A test hole costs nothing. A wrong hole in a post stays.",
      },
      ...plan.bits.map(
        (bit): StepItem => ({
          text: `Bore ${bit.holes} x **${show.tape(bit.diameter)}** (${bit.use}). The bit is at least ${show.tape(bit.bitLength_min)} long.`,
        }),
      ),
      {
        text: "Start at the face that the table names. Hold a block behind the post.",
        more: "The block keeps the far side from breaking out.",
      },
      ...(counterbored.length > 0
        ? [
            {
              text: "Put a tape flag on the bit for the counterbore. Stop at its depth.",
              more: `The depth is ${show.tape(counterbored[0]?.counterbore?.depth ?? 0)}. Too deep leaves too little wood.`,
              killer: true as const,
            },
          ]
        : []),
      treated
        ? { text: "Brush wood preservative into every hole. Wipe off the rest.", more: "The drill cut through the treated layer." }
        : { text: "Clean every hole. Take off sharp edges." },
      { text: "Tick each hole. Write the real height if it is off." },
    ],
  };
}

export function reeveStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const bushed = plan.bores.filter(({ bushing }) => bushing).length;
  const ready = plan.job.supply.kind === "ready";
  return {
    key: "reeve",
    title: `Thread ${count(plan.cables.length, "cable")}`,
    safety: "reeve",
    items: [
      ...(bushed > 0 ? [{ text: `Put bushings in ${bushed} holes first.`, more: "The table of bores says which." }] : []),
      ...(ready
        ? []
        : [
            {
              text: "Measure the run once more. Then cut each cable at its cut length.",
              more: "Tape the strand and cut through the tape.",
              killer: true as const,
            },
            { text: "Fit a stud on one end of each cable, as its instruction says.", more: "Test the first one with a hard pull." },
          ]),
      ...plan.runs.map((run) => reeveItem(run, show.feetUp(run.orderLength))),
      { text: "Let a helper guide the cable at each post. Never drag it over an edge.", more: "A kink stays in the cable for good." },
      { text: "Put a tape flag with the mark on each cable, such as R1-05." },
    ],
  };
}

function reeveItem(run: Run, lengthText: Text): StepItem {
  const start = startOf(run);
  const more = `Each cable here is ${lengthText} long. Start with the lowest course.`;
  const on = `Push the plain end through to ${stopOf(run).postId}.`;
  return startsInside(run)
    ? { text: `Run ${run.id}: start inside, beside ${start.postId}. ${on} Then push the stud out through ${start.postId}.`, more }
    : { text: `Run ${run.id}: start at ${start.postId}, ${faceName[start.backFace]}. ${on}`, more };
}

export function endsStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const turns = show.decimal(plan.job.fittings.stud.firstTurns.value, 1);
  const slack = plan.runs.filter(({ takeUp }) => takeUp.slackToPull > 0);
  const onSite = plan.runs.map((run) => ({ run, ends: siteEnds(run) }));
  const grips = onSite.some(({ ends }) => ends.grips.length > 0);
  return {
    key: "ends",
    title: "Set the ends",
    safety: null,
    items: [
      {
        text: "Oil each thread. Run the nut on by hand once, then take it off again.",
        more: "Stainless threads seize when they are dry.",
        killer: true,
      },
      {
        text: `At ${listed(unique(plan.runs.map((run) => startOf(run).postId)))}: washer, then nut. Give it ${turns} full turns, no more.`,
        more: "The rest of the thread is needed for tightening.",
      },
      ...onSite.flatMap(({ run, ends }) => ends.studs.flatMap((end) => studItems(run, end, turns))),
      ...onSite.flatMap(({ run, ends }) => ends.grips.map((end) => gripItem(run, end))),
      ...slack.map(
        (run): StepItem => ({
          text: `Run ${run.id}: pull out ${show.tape(run.takeUp.slackToPull)} more before you turn a nut.`,
          more: "The thread alone is too short for this run.",
          killer: true,
        }),
      ),
      ...(grips ? [{ text: "Leave the tails long. They are cut at the very end." }] : []),
    ],
    hold: "H2: before a cable is cut at its far end, a second person checks.",
  };
}

const studItems = (run: Run, end: RunEnd, turns: Text): readonly StepItem[] => [
  {
    text: `Run ${run.id}, ${end.postId}: pull the cable hand-tight. Mark it where it leaves the ${faceName[end.backFace]}.`,
    more: "The instruction of the stud says how far from this mark you cut. Measure twice.",
    killer: true,
  },
  {
    text: `Cut there and fit the second stud. Then washer, nut and ${turns} full turns.`,
    more: "Test the first one with a hard pull before you go on.",
  },
];

const gripItem = (run: Run, end: RunEnd): StepItem => ({
  text: `Run ${run.id}: pull the slack by hand at ${end.postId}. Then set the ${endName[end.kind]}.`,
  more: "Most of these fittings go on one way only. They do not come off again.",
  killer: true,
});

const passWords = (plan: Plan, show: SheetContext["show"]): readonly StepItem[] =>
  plan.job.tightening.passes.value.map((share, index, all): StepItem => {
    const check = index === all.length - 1 && index > 0 && all[index - 1] === share;
    return check
      ? {
          text: `Round ${index + 1}: read every cable again. Turn a nut only where the reading is too low or too high.`,
          more: "Each cable you tightened has slackened its neighbours a little.",
        }
      : {
          text: `Round ${index + 1}: tighten each cable to ${show.percent(share)} of its target. Follow the order in the log.`,
          more: "Start at the middle cable, then one above, one below, and so on.",
        };
  });

export function tightenStage(context: SheetContext): Stage {
  const { plan, show } = context;
  return {
    key: "tighten",
    title: "Tighten",
    safety: "tighten",
    items: [
      { text: `Take ${refer(context, "tightening")}. Write down the air temperature.`, value: show.heatUnit },
      {
        text: `Hang a plumb line at ${listed(endPostIds(plan))}. Write down where each post stands.`,
        more: "You will see at once if a post starts to lean.",
      },
      ...plan.runs.map(
        (run): StepItem => ({
          text: `Run ${run.id}: the target is **${show.force(run.tension.target)}**. Expect about ${show.decimal(run.takeUp.turns, 1)} turns of each nut.`,
          more: "If it takes many more turns, something moves. Stop and look.",
        }),
      ),
      ...passWords(plan, show),
      {
        text: "Never pull a cable above the high value in the log.",
        more: `The strand itself bears ${show.force(plan.target.workingLimit)}. Your posts may not.`,
        killer: true,
      },
      { text: "After each round, read the plumb lines. Write down the movement.", killer: true },
    ],
    hold: "H3: cut tails only when all readings are inside their band.",
  };
}

export function proveStage(context: SheetContext): Stage {
  const { plan, show } = context;
  return {
    key: "prove",
    title: "Prove it",
    safety: null,
    items: [
      { text: `Take a ball of ${show.tape(plan.job.code.openingSphere.value)} and ${refer(context, "proof")}. Go bay by bay.` },
      {
        text: "Push the ball at the middle of each bay, between two cables. Use the agreed force.",
        more: "The middle is the weakest place. The official told you the force.",
        killer: true,
      },
      { text: "Write down the result for each bay. It must not pass." },
      { text: "Call your building office for its inspection." },
    ],
  };
}

export function finishStage(context: SheetContext): Stage {
  return {
    key: "finish",
    title: "Finish",
    safety: "cut",
    items: [
      { text: "Cut the tails. File each end smooth. Put the caps on.", more: "A wire end that stands out cuts hands." },
      { text: "Wipe the cables clean. Rinse them with clean water." },
      {
        text: `Fill in the card on ${refer(context, "care")}. Put the first visit in your calendar.`,
        more: "Cables lose some pull in the first weeks. Wood dries and strand beds in.",
      },
    ],
    hold: "H4: the guard is ready only when the proof is signed.",
  };
}
