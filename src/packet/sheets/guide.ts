// How does somebody who does this once work through the job? Read a step, do it; sentences of at most 20 words.
import type { Block, StepItem } from "../packet.ts";
import { boreStage, endsStage, finishStage, proveStage, reeveStage, type Stage, setOutStage, tightenStage } from "./guide-work.ts";
import { blanks, caution, count, endPostIds, listed, postsOf, refer, type SheetContext, spacersOf, steps } from "./kit.ts";
import { safetyFor } from "./safety-messages.ts";

export function guideBlocks(context: SheetContext): readonly Block[] {
  const stages = [
    askStage,
    measureStage,
    buyStage,
    frameStage,
    setOutStage,
    boreStage,
    reeveStage,
    endsStage,
    tightenStage,
    proveStage,
    finishStage,
  ];
  return [
    caution(
      "warning",
      "Call a professional if a post moves, wood is rotten, or you are unsure.",
      "A licensed engineer or your building office must accept the frame. This packet has not checked it.",
    ),
    ...stages.map((make) => make(context)).flatMap((stage, index) => stageBlocks(stage, index + 1, context)),
    blanks("guide-stopped", "If you stop for the day", [
      ["Last step done, date", ""],
      ["What is still loose", ""],
    ]),
  ];
}

function stageBlocks(stage: Stage, number: number, { plan }: SheetContext): readonly Block[] {
  return [
    ...(stage.safety === null ? [] : safetyFor(stage.safety, plan)),
    steps({
      id: `guide-${stage.key}`,
      title: `${number}. ${stage.title}`,
      mode: "read-do",
      items: stage.items,
      ...(stage.hold === undefined ? {} : { hold: stage.hold }),
    }),
  ];
}

function askStage(context: SheetContext): Stage {
  return {
    key: "ask",
    title: "Ask first",
    safety: null,
    items: [
      {
        text: `Take ${refer(context, "authority")} to your building office. Write down each answer.`,
        more: "The official decides about height, openings and permits. Rules differ from place to place.",
      },
      {
        text: "Ask who must check the frame. Get that answer in writing.",
        more: "All cables together pull very hard on the end posts. Weak posts lean or break.",
        killer: true,
      },
    ],
    hold: "H0: go on only when all questions are answered.",
  };
}

function measureStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const sides = listed(plan.sides.map(({ id }) => id));
  return {
    key: "measure",
    title: "Measure your guard",
    safety: "frame",
    items: [
      {
        text: `Measure side${plan.sides.length === 1 ? "" : "s"} ${sides} as ${refer(context, "survey")} says. Read the tape twice.`,
        more: "Measure along the line where the cables will run.",
      },
      {
        text: "Measure the space between the rails at each post. Write down the largest.",
        more: `The plan has ${show.tapeBoth(plan.job.frame.clearOpening)}.`,
        value: show.lengthUnit,
      },
      {
        text: "Compare each number with the plan. Stop if one is past its stop value.",
        more: "The holes would be in the wrong place. Have the packet made again with your numbers.",
        killer: true,
      },
      { text: "Look for bolts and brackets inside the posts. Mark where they are." },
    ],
  };
}

function buyStage(context: SheetContext): Stage {
  const { plan } = context;
  const rented = plan.tools.filter(({ source }) => source === "rent").map(({ item }) => item);
  return {
    key: "buy",
    title: "Buy and rent",
    safety: null,
    items: [
      {
        text: `Buy one of each fitting on ${refer(context, "order")} first. Measure it.`,
        more: "Makers differ. The holes must fit the parts that you really have.",
        killer: true,
      },
      { text: `Compare its sizes with ${refer(context, "survey")}. If one differs, stop and have the packet made again.` },
      { text: "Buy the rest. Keep the papers that come with it.", more: "Write the lot numbers in the order list." },
      ...rented.map((item): StepItem => ({ text: `Rent: ${item}.` })),
    ],
  };
}

function frameStage(context: SheetContext): Stage {
  const { plan, show } = context;
  const posts = postsOf(plan).length;
  const spacers = spacersOf(plan).length;
  const { existing } = plan.job.posts;
  return {
    key: "frame",
    title: existing ? "Check the posts, set the spacers" : "Set posts and spacers",
    safety: null,
    items: [
      existing
        ? {
            text: `Check all ${count(posts, "post")}. Each must stand plumb and firm.`,
            more: "Plumb means straight up: hold a level on two faces.",
          }
        : {
            text: `Cut the parts on ${refer(context, "lumber")}. Set ${count(posts, "post")} plumb and firm.`,
            more: "Plumb means straight up: hold a level on two faces.",
          },
      ...(spacers > 0
        ? [
            {
              text: `Fix ${count(spacers, "spacer")} where the elevations show them. Fix each at top and bottom.`,
              more: `Spacers keep each free piece of cable below ${show.tape(plan.job.spacers.free_max.value)}.`,
            },
          ]
        : []),
      {
        text: "Push each end post hard at the rail, by hand. It must not move.",
        more: `End posts here: ${listed(endPostIds(plan))}.`,
        killer: true,
      },
    ],
    hold: "H1: wait until the frame has been accepted in writing.",
  };
}
