// Z-101: how does the guard lie, seen from above?

import type { CornerPost } from "../../plan/corner-post.ts";
import { restOf } from "../../plan/pier.ts";
import type { Bay, Plan } from "../../plan/plan.ts";
import { clearOf } from "../../plan/sleeve.ts";
import type { Mm } from "../../units/quantity.ts";
import { SAME_mm } from "../../units/tolerance.ts";
import { slopeChanges, turns } from "../joints.ts";
import type { Sheet, Table, Text } from "../packet.ts";
import { floorWord, fromTo, introduction, roleName, runSpan } from "../wording.ts";
import { drawnOverview, drawnPlan } from "./drawn.ts";
import { bold, column, prose, type SheetContext, type SheetMaker, sheet, table } from "./kit.ts";
import { alongPlanNotes, longestWords } from "./leaning.ts";
import { sleeveFreeNotes } from "./sleeves.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

export const planSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.plan)] : []),
    ...drawnPlan(context.plan),
    // Who has never seen the place, or reads drawings once in a life, knows the guard by its picture.
    ...(context.home || context.issue === "permit" ? drawnOverview(context.plan) : []),
    sidesTable(context),
    runsTable(context),
    verticalsTable(context),
  ]);

function sidesTable({ plan, show }: SheetContext): Table {
  return table({
    id: "plan-sides",
    caption: "Sides, from left to right",
    columns: [
      column("side", "Side", 0.1),
      column("length", "Length along the bores", 0.32),
      column("turn", "Turn at its right-hand end", 0.42),
      column("bays", "Bays", 0.16),
    ],
    rows: plan.sides.map((side) => {
      const bays = plan.bays.filter((bay) => bay.sideId === side.id && bay.kind === "bay");
      const between = plan.job.sides[side.index]?.interrupted;
      const turn =
        between != null
          ? `interrupted: ${between.what}, ${show.feetBoth(between.width)} wide along ${side.id}${stepWords(between.out, plan.sides[side.index + 1]?.id ?? "", show)}`
          : side.turn === null
            ? "last side"
            : side.turn === 0
              ? "straight on, the slope changes"
              : `${show.angle(side.turn < 0 ? -side.turn : side.turn)} to the ${side.turn < 0 ? "left" : "right"}`;
      const slope = side.slope === 0 ? "" : `; slopes ${show.angle(Math.abs(side.slope))} ${side.slope > 0 ? "up" : "down"}`;
      return [
        bold(side.id),
        `${show.feetBoth(side.length)}${slope === "" ? "" : " **level**"}`,
        `${turn}${slope}`,
        fromTo(bays.map(({ id }) => id)),
      ];
    }),
  });
}

/** How far the next side starts beside the line of this one. */
const stepWords = (out: Mm, next: Text, show: SheetContext["show"]): Text =>
  out === 0 ? "" : `; side ${next} starts ${show.feetBoth(Math.abs(out))} ${out > 0 ? "away from the deck" : "towards the deck"}`;

function verticalsTable(context: SheetContext): Table {
  const { plan, show } = context;
  // The name of a sleeve takes more room than any name of a post.
  const sleeved = plan.job.posts.sleeve !== null;
  return table({
    id: "plan-verticals",
    caption: "Posts and spacers: middle of each, measured along its side",
    columns: [
      column("mark", "Mark", 0.1),
      column("what", "What", sleeved ? 0.18 : 0.26),
      column("section", "Section", sleeved ? 0.26 : 0.18),
      column("side", "Side", 0.08),
      column("station", "From the side's left-hand start", 0.23),
      column("bay", "Free length to the next", 0.15),
    ],
    rows: plan.verticals.map((vertical) => {
      const bay = plan.bays.find(({ leftId }) => leftId === vertical.id);
      return [
        vertical.id,
        roleName[vertical.role],
        vertical.sectionName,
        vertical.corner === undefined ? vertical.sideId : `${vertical.sideId}/${vertical.corner.nextId}`,
        vertical.kind === "pier"
          ? `its face: ${show.feetBoth(restOf(vertical))}`
          : vertical.corner === undefined
            ? show.feetBoth(vertical.station)
            : cornerPlace(vertical.corner, { plan, show }),
        bay ? bayWords(bay, context) : "-",
      ];
    }),
    rowHeads: true,
    notes: [startWords(plan), ...slopeNotes(plan), ...alongPlanNotes({ plan, show }), ...sleeveFreeNotes(context)],
  });
}

/** Where no cable goes from one to the next there is no free length of one: between two posts of a pair a tape is laid, across a corner none. */
function bayWords(bay: Bay, { plan, show }: SheetContext): Text {
  if (plan.runs.some(({ bayIds }) => bayIds.includes(bay.id))) return `${show.tape(bay.free)} (${bay.id}${longestWords(bay)})`;
  return bay.kind === "corner" ? `no cable (${bay.id})` : `no cable, clear ${show.tape(clearOf(bay, plan))} (${bay.id})`;
}

/** Where the stations of a side begin. */
function startWords(plan: Plan): Text {
  const first = plan.sides.some(({ startsAt }) => startsAt > 0)
    ? "A side that starts at a wall begins at the face of the wall"
    : plan.sides.some(({ begins }) => begins?.kind === "pier")
      ? "A side that starts at a pier begins at the face of the pier"
      : "A side begins at the outer face of its end post";
  return [
    first,
    ...(turns(plan) ? ["a side after a corner begins at the corner point, where the lines of the bores cross"] : []),
    ...(slopeChanges(plan).length === 0 ? [] : ["after a change of slope a side begins where slope and level meet"]),
    ...(startsFree(plan) ? ["a side after an opening begins at the outer face of its end post"] : []),
  ]
    .join("; ")
    .concat(".");
}

/** Where a side is said to begin at a wall or a pier, those behind an opening may begin at a post of their own. */
const startsFree = ({ sides }: Plan): boolean =>
  sides.slice(1).some(({ begins }) => begins?.kind === "post") && sides.some(({ begins }) => begins !== null && begins.kind !== "post");

/** A tape laid on a slope reads more than a station. */
const slopeNotes = (plan: Plan): readonly Text[] =>
  plan.rakes.length === 0
    ? []
    : [
        `**On ${sidesWord(slopedSides(plan))} length and stations are level: hold the tape level, plumb down. Free lengths run along the slope.**`,
      ];

/** One post at a corner is set out from the corner point. */
function cornerPlace({ inset, twist, turn, homeId }: CornerPost, { plan, show }: Pick<SheetContext, "plan" | "show">): Text {
  const middle =
    Math.abs(inset) < SAME_mm
      ? "its middle at the corner point"
      : `its middle ${show.tapeBoth(Math.abs(inset))} from the corner point, on the bisector, ${(inset > 0) === (turn > 0) ? "towards" : "away from"} the ${floorWord(plan.job)}`;
  return twist === 0
    ? `${middle}, square to both sides`
    : `${middle}; turned ${show.angle(Math.abs(twist))} from square to side ${homeId}, half-way between both`;
}

function runsTable({ plan }: SheetContext): Table {
  return table({
    id: "plan-runs",
    caption: "Runs: the same at every course",
    columns: [
      column("run", "Run", 0.08),
      column("posts", "Posts", 0.14),
      column("sides", "Sides", 0.1),
      column("pull", "Tightened at", 0.16),
      column("why", "Why it is cut so", 0.52),
    ],
    rows: plan.runs.map((run) => [
      bold(run.id),
      runSpan(run),
      run.sideIds.join(", "),
      [run.left, run.right]
        .filter((end) => end.pulls)
        .map((end) => end.postId)
        .join(" and "),
      run.why,
    ]),
  });
}
