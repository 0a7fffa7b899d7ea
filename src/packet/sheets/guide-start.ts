// What does somebody who does this once do before a hole is bored: ask, measure, buy, get the frame accepted?
import { edgeProtection } from "../../plan/open-edge.ts";
import type { Plan } from "../../plan/plan.ts";
import type { SheetKey } from "../issues.ts";
import type { StepItem, Text } from "../packet.ts";
import { frameAccepted } from "../wording.ts";
import { turnedIds } from "./bore-corners.ts";
import { fixingWords } from "./frame-posts.ts";
import { freeStop } from "./free-stop.ts";
import { cutSlopes, measureSlopes, railsLie } from "./guide-slopes.ts";
import { count, endsOnWords, listed, postsOf, refer, type SheetContext, spacersOf } from "./kit.ts";
import { leaning, leaningWords } from "./leaning.ts";
import { isWood } from "./material.ts";
import { piersOf } from "./piers.ts";
import { levelSides } from "./slopes.ts";
import type { Stage } from "./stage.ts";

export function askStage(context: SheetContext): Stage {
  return {
    key: "ask",
    title: "Ask first",
    sheets: refer(context, "authority"),
    safety: null,
    items: [
      {
        text: `Take ${refer(context, "authority")} to your building office. Write down each answer.`,
        more: "The official decides about height, openings and permits. Rules differ from place to place.",
      },
      {
        text: "Ask who must check the frame. Get that answer in writing.",
        more:
          piersOf(context.plan).length === 0
            ? "All cables together pull very hard on the end posts. Weak posts lean or break."
            : "All cables together pull very hard on end posts and pier. A weak one leans or breaks.",
        killer: true,
      },
      {
        text: `Ask how far a post may lean. Write it on ${refer(context, "tightening")}.`,
        more: "You need that number when you tighten.",
      },
    ],
    hold: `H0, signed on ${refer(context, "proof")}: go on only when all questions are answered.`,
  };
}

/** A new frame has no rails and openings to measure yet: its site is measured now, the rest when it stands. */
export function measureStage(context: SheetContext): Stage {
  const { plan } = context;
  const { existing } = plan.job.posts;
  const sides = listed(plan.sides.map(({ id }) => id));
  return {
    key: "measure",
    title: existing ? "Measure your guard" : "Measure the site",
    sheets: `${refer(context, "survey")}, ${refer(context, "plan")}`,
    safety: "frame",
    items: [
      edgeItem(plan),
      {
        text: `Measure side${plan.sides.length === 1 ? "" : "s"} ${sides} as ${refer(context, "survey")} says. Read the tape twice.`,
        more: "Measure along the line where the cables will run.",
      },
      ...measureSlopes(context),
      compareItem(),
      existing
        ? { text: "Look for bolts and brackets inside the posts. Mark where they are." }
        : {
            text: "Look where each post will stand. Check what is under it.",
            more: "The foot of an end post must be held by strong parts of the floor.",
          },
    ],
  };
}

function edgeItem({ job }: Plan): StepItem {
  const protection = edgeProtection(job);
  return {
    text: `Put up ${protection === "fall protection" ? protection : `a ${protection}`} at the open edge first. Keep it up until H4.`,
    more: `${job.posts.existing ? "Take old infill off only after that. " : ""}Ask your building office which rules apply to you.`,
    killer: true,
  };
}

const compareItem = (): StepItem => ({
  text: "Compare each number with the plan. Stop if one is past its stop value.",
  more: "The holes would be in the wrong place. Have the packet made again with your numbers.",
  killer: true,
});

function openingWords({ plan, show }: Pick<SheetContext, "plan" | "show">): Text {
  if (plan.rakes.length === 0) return show.tapeBoth(plan.job.frame.clearOpening);
  const level = levelSides(plan);
  return listed([
    ...(level.length === 0 ? [] : [`${show.tape(plan.job.frame.clearOpening)} on ${listed(level)}`]),
    ...plan.rakes.map(({ sideId, opening }) => `${show.tape(opening.top - opening.bottom)} straight up on ${sideId}`),
  ]);
}

const openingItems = ({ plan, show }: SheetContext): readonly StepItem[] => [
  {
    text: `Measure the space ${plan.job.frame.bottomRail ? "between the rails" : "below the rail"} at each post. Write down the largest.`,
    more: `The plan has ${openingWords({ plan, show })}.`,
    value: show.lengthUnit,
  },
];

export function buyStage(context: SheetContext): Stage {
  const { plan } = context;
  const rented = plan.tools.filter(({ source }) => source === "rent").map(({ item }) => item);
  return {
    key: "buy",
    title: "Buy and rent",
    sheets: `${refer(context, "order")}, ${refer(context, "tools")}`,
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

export function frameStage(context: SheetContext): Stage {
  const { plan } = context;
  const { existing } = plan.job.posts;
  return {
    key: "frame",
    title: existing ? "Check the posts, fix rails and spacers" : "Set posts, rails and spacers",
    sheets: ["lumber", "survey", "plan"]
      .map((key) => refer(context, key as SheetKey))
      .concat(elevations(context))
      .join(", "),
    safety: null,
    items: [
      existing ? checkPosts(context) : setPosts(context),
      ...railItems(context),
      ...openingItems(context),
      ...spacerItems(context),
      {
        text: "At each post where cables end push hard at the rail, by hand. It must not rattle, click or stay displaced.",
        more: `${endsOnWords(plan)}. How far one may give stands on ${refer(context, "survey")}.`,
        killer: true,
      },
    ],
    hold: `H1, signed on ${refer(context, "proof")}: wait. ${frameAccepted}.`,
  };
}

const elevations = ({ index }: SheetContext): readonly Text[] => index.filter(({ key }) => key === "elevation").map(({ id }) => id);

const checkPosts = ({ plan, show }: SheetContext): StepItem => {
  const leans = leaningWords({ plan, show });
  const one = leans.length === 1;
  return {
    text: `Check all ${count(postsOf(plan).length, "post")}. Each must stand plumb and firm${leans.length === 0 ? "" : `, but ${listed(leaning(plan))} may lean as ${one ? "it was" : "they were"} found`}.`,
    more: `Plumb means straight up: hold a level on two faces.${leans.length === 0 ? "" : ` ${leans.join(". ")}. Stop if ${one ? "it leans" : "one leans"} otherwise.`}`,
  };
};

/** A post that is bored straight through at a corner stands on the bisector. */
function turnedWords(context: SheetContext): Text {
  const { plan } = context;
  const ids = turnedIds(plan);
  return ids.length === 0
    ? ""
    : ` ${listed(ids)} ${ids.length === 1 ? "stands" : "stand"} turned, half-way between two sides: ${refer(context, "plan")}.`;
}

const setPosts = (context: SheetContext): StepItem => ({
  text: `Cut the posts on ${refer(context, "lumber")}. Set ${count(postsOf(context.plan).length, "post")} plumb and firm.`,
  more: `Plumb means straight up: hold a level on two faces.${context.plan.rakes.length > 0 ? " On a slope their tops are cut along the slope." : ""}${turnedWords(context)}`,
});

/** Rails are cut to the frame that stands; what fastens it is a matter of whoever accepts the frame. */
function railItems(context: SheetContext): readonly StepItem[] {
  const { plan } = context;
  const rails = plan.job.frame.bottomRail ? "rails, bottom and top" : "top rail";
  return [
    { text: `Measure between the standing posts, as ${refer(context, "survey")} says. Do it before you cut rails.` },
    compareItem(),
    ...cutSlopes(context),
    ...(plan.job.posts.sleeve === null
      ? []
      : [
          ...(plan.job.posts.existing
            ? []
            : [
                {
                  text: `Cut the sleeves on ${refer(context, "lumber")}. Slide one over each post before any rail goes on.`,
                  more: "Centre it: the same gap on all four sides.",
                },
              ]),
          {
            text: `Fix rails to the ${plan.job.posts.section.name} inside the sleeve, never to the sleeve.`,
            more: "Fill the gap behind a bracket with a solid block.",
            killer: true as const,
          },
        ]),
    {
      text: `Cut the ${rails}, to fit. Fix them to every post and ${railsLie(context)}.`,
      more: `${isWood(plan) ? "Screws and bolts" : "Welds and bolts"} are not in this packet. Whoever accepts the frame names them.`,
      killer: true,
    },
  ];
}

function spacerItems(context: SheetContext): readonly StepItem[] {
  const spacers = spacersOf(context.plan).length;
  return spacers === 0
    ? []
    : [
        {
          text: `Cut and fix ${count(spacers, "spacer")} where the elevations show them. Fix each at top and bottom.${fixingWords(context)
            .map((words) => ` ${words}`)
            .join("")}`,
          more: `Spacers keep the free pieces of cable short. Stop if one is above ${freeStop(context).limit}.`,
        },
      ];
}
