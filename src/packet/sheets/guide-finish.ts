// What does somebody who does this once do to tighten, prove and finish? Sentences of at most 20 words.
import { edgeProtection } from "../../plan/open-edge.ts";
import type { Plan, Run } from "../../plan/plan.ts";
import { gatesOf } from "../guard-ends.ts";
import { harderWhen } from "../hardest-day.ts";
import type { StepItem, Text } from "../packet.ts";
import { floorWord } from "../wording.ts";
import { hasTails, pulledAtBoth } from "./ends.ts";
import { trySlopes } from "./guide-slopes.ts";
import { listed, refer, type SheetContext } from "./kit.ts";
import { isWood } from "./material.ts";
import { highAtNut, leansOf, lowAtNut } from "./readings.ts";
import { openingRoute, sagBays } from "./route.ts";
import type { Stage } from "./stage.ts";

export function tightenStage(context: SheetContext): Stage {
  const { plan, show } = context;
  return {
    key: "tighten",
    title: "Tighten",
    sheets: refer(context, "tightening"),
    safety: "tighten",
    items: [
      { text: `Take ${refer(context, "tightening")}. Write down the air temperature.`, value: show.heatUnit },
      {
        text: `Hang a plumb line at ${listed(leansOf(plan).map(({ postId }) => postId))}. Write down where each post stands.`,
        more: "You will see at once if a post starts to lean.",
      },
      ...plan.runs.map((run) => targetItem(run, context)),
      ...pulledAtBoth(plan).map(
        (run): StepItem => ({
          text: `Run ${run.id}: turn the nuts at ${run.left.postId} and ${run.right.postId} in turn, a little each.`,
          more: "Both gauges must rise together. Both must end in the band.",
          killer: true,
        }),
      ),
      {
        text: "Find the day's temperature in the table of your run. Stop each cable at the value in that column.",
        more: `Cables pull harder when it is ${harderWhen(plan)}. The table makes up for it. Each reading goes into the log.`,
        killer: true,
      },
      ...passItems(context),
      {
        text: 'Never pull a cable above "at most".',
        more: `The strand itself bears ${show.forceDown(plan.target.workingLimit)}. Your posts may not.`,
        killer: true,
      },
      {
        text: "Read the plumb lines as you go. Stop when a post reaches its limit.",
        more: "Write down how far each post has moved.",
        killer: true,
      },
      { text: "Measure the thread that is left. Write down the least.", more: threadWords(plan, show), value: show.lengthUnit },
    ],
    hold: hasTails(plan)
      ? `H3, signed on ${refer(context, "proof")}: cut tails only when all readings are inside their band.`
      : `H3, signed on ${refer(context, "proof")}: put caps on only when all readings are inside their band.`,
  };
}

const threadWords = (plan: Plan, show: SheetContext["show"]): Text =>
  `Keep ${show.tape(plan.runs[0]?.takeUp.reserve ?? 0)} for later visits.`;

function targetItem(run: Run, context: SheetContext): StepItem {
  const { plan, show } = context;
  const turns = run.takeUp.ends.map((end) => `${show.decimal(end.turns, 1)} at ${end.postId}`);
  return {
    text: `Run ${run.id}: the target is **${show.force(run.tension.target)}**. At ${show.heat(plan.job.site.reference.value)} at least ${lowAtNut(run, context)}, at most ${highAtNut(run, context)}.`,
    more: `Turns to expect: ${turns.join(", ")}. If it takes many more, something moves. Stop and look.`,
  };
}

/** A round for each pass; its last cable is followed by a look at all of them. */
function passItems({ plan, show }: SheetContext): readonly StepItem[] {
  const passes = plan.tightening.reduce<Plan["tightening"][number]["passes"]>(
    (most, { passes: own }) => (own.length > most.length ? own : most),
    [],
  );
  const order =
    passes.length > 1
      ? "Do this round on every run before the next round on any."
      : "Do one run after the other, in the order of their logs.";
  const why = plan.runs.length > 1 ? order : "The first cables are pulled more. The later ones slacken them again.";
  return [
    ...passes.map(
      ({ number, kind, share }): StepItem => ({
        text:
          kind === "plain"
            ? `Round ${number}: tighten each cable to ${show.percent(share)} of its target. Follow the order in the log.`
            : `${passes.length > 1 ? `Round ${number}: follow` : "Follow"} the order in the log. Stop each cable at its own reading.`,
        more: why,
        killer: true,
      }),
    ),
    {
      text: "Read every cable again. Turn a nut only where the reading is too low or too high.",
      more: "On a cold or a warm day both limits move as the table says. Did you turn a nut? Then read all once more.",
    },
  ];
}

export function proveStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const sphere = show.tape(plan.job.code.openingSphere.value);
  return {
    key: "prove",
    title: "Prove it",
    sheets: refer(context, "proof"),
    safety: null,
    items: [
      { text: "Call the official before the test. Ask if somebody wants to watch it." },
      {
        text: `Take a ball of ${sphere} and ${refer(context, "proof")}. Start with ${plan.openingBayIds.length === 1 ? "bay" : "bays"} ${listed(plan.openingBayIds)}.`,
        more: "There the opening check has the least left.",
      },
      ...sphereItems(context),
      {
        text: "Try it between every two neighbouring cables, at the middle of the longest free length.",
        more: `Try it at the ${plan.job.frame.bottomRail ? "top and bottom rail" : `top rail and the ${floorWord(plan.job)}`} too, and beside end posts.${plan.rakes.length > 0 ? " On a slope push it square to the cables." : ""}`,
        killer: true,
      },
      ...trySlopes(context),
      { text: "Write down the result for each bay. It must not pass." },
      ...sagItems(context),
      {
        text: `Read the cables that ${refer(context, "proof")} names, in the bay it names.`,
        more: "Its limits move with the temperature of the air. Its note says by how much.",
        killer: true,
      },
    ],
  };
}

function sphereItems(context: SheetContext): readonly StepItem[] {
  const { plan, show } = context;
  const { criterion } = plan.job.tightening;
  switch (openingRoute(context).push) {
    case "agreed":
      return [
        {
          text: "Push the ball with the agreed force and a scale. Write down the force.",
          more: `This packet assumes ${criterion.kind === "sphere" ? show.force(criterion.force) : "one"}. Is the answer higher? Stop and get a new packet.`,
          value: show.forceUnit,
          killer: true,
        },
      ];
    case "if asked":
      return [{ text: "Set the ball in by hand. Push it only if the official asks, and as hard as told.", killer: true }];
    case "never":
      return [
        {
          text: "Set the ball in by hand. Do not push it.",
          more: "Here the gap and the pull are the proof. The code's table asks for both.",
          killer: true,
        },
      ];
  }
}

function sagItems({ plan, show }: SheetContext): readonly StepItem[] {
  const { criterion } = plan.job.tightening;
  return criterion.kind === "sag"
    ? [
        {
          text: `Hang ${show.force(criterion.weight)} at the middle of the cable in bay ${sagBays(plan)}. Write down the sag.`,
          more: `It may sag ${show.fine(criterion.sag_max)} at most.`,
          value: show.lengthUnit,
          killer: true,
        },
      ]
    : [];
}

export function finishStage(context: SheetContext): Stage {
  const { plan } = context;
  const tails = hasTails(plan);
  return {
    key: "finish",
    title: "Finish",
    sheets: refer(context, "care"),
    safety: tails ? "cut" : null,
    items: [
      {
        text: tails ? "Cut the tails. File each end smooth. Put the caps on." : "Look at each end. File what is sharp. Put the caps on.",
        more: `A wire end that stands out cuts hands.${gatesOf(plan)
          .map(({ posts }) => ` At ${posts.join(" and ")} the gate must swing clear of the caps.`)
          .join("")}`,
      },
      ...(isWood(plan)
        ? [{ text: "Seal each bore and the edge of each washer against water.", more: "Water that stands in a bore rots the post." }]
        : []),
      { text: "Wipe the cables clean. Rinse them with clean water." },
      {
        text: `Fill in the card on ${refer(context, "care")}. Put the first visit in your calendar.`,
        more: `Cables lose some pull in the first weeks. ${isWood(plan) ? "Wood dries and strand beds in." : "The strand beds in."}`,
      },
    ],
    hold: `H4, signed on ${refer(context, "proof")}: the guard is ready only then. Take the ${edgeProtection(plan.job)} down after that.`,
  };
}
