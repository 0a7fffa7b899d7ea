// What do the cables ask of each post and its base, how far does it move, and how hard are the rails pressed?
import { FIXING } from "../../plan/frame-check-spacer.ts";
import type { PostAnswer } from "../../plan/frame-plan.ts";
import { hardestAt } from "../hardest-day.ts";
import type { Cell, Column, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { roleName } from "../wording.ts";
import { sizeText } from "./frame-formulas.ts";
import { bold, column, groupBy, listed, minor, type SheetContext, table, unique } from "./kit.ts";
import { pierNotes } from "./piers.ts";
import { movedWords } from "./readings.ts";

export const BY_REPORT: Text = "by the hardware's own report";

/** Moments below this are none: dust of the solver. */
const NONE_Nmm = 1000;
const NONE_N = 1;
/** A pull upwards below this, 2 kg, is held by the weight of post and rail: own choice, no source. */
export const LIFT_least = 20;

/** Demands only: what a base carries stands in the report of its hardware. */
export function postsTable(context: SheetContext): Table {
  const { plan, show } = context;
  const columns: readonly Column[] = [
    column("post", "Post", 0.15),
    column("movement", "Moves most", 0.2, { sub: "along the side" }),
    column("top", "Top moves", 0.13),
    column("moment", "Moment at its base", 0.17),
    column("shear", "Shear at its base", 0.15),
    column("capacity", "Its base may take", 0.2),
  ];
  const answers = plan.frame.sides.flatMap(({ posts }) => posts);
  return table({
    id: "frame-posts",
    caption: `What the cables alone ask of each post and base along its side, all at their targets at ${context.show.heat(context.plan.job.site.reference.value)}`,
    columns,
    rows: answers.map((answer): readonly Cell[] => [
      `${bold(answer.postId)} ${roleOf(answer, context)}`,
      moved(answer.movement, context, ` at ${show.tape(answer.height)}`),
      moved(answer.top, context),
      bold(momentText(answer, context)),
      shearText(answer, context),
      capacityCell(context, answer.postId),
    ]),
    rowHeads: true,
    notes: postNotes(context),
  });
}

/** What those who fix the spacers are asked for; nothing where no load on them is known. */
export const fixingWords = ({ plan, show }: SheetContext): readonly Text[] =>
  plan.frame.checks
    .filter(({ id }) => id.startsWith(FIXING))
    .map(({ demand }) => `Each end of a spacer must hold at least ${bold(show.forceBothUp(demand))}, pushed square to the guard.`);

/** For those who build: of each kind of post the greatest that its bases are asked for. */
export function basesTable(context: SheetContext): Table {
  const answers = context.plan.frame.sides.flatMap(({ posts }) => posts);
  return table({
    id: "frame-bases",
    caption: `What the cables alone ask of the bases along their side, at most, all at their targets at ${context.show.heat(context.plan.job.site.reference.value)}`,
    columns: [
      column("post", "Posts", 0.32),
      column("moment", "Moment", 0.22),
      column("shear", "Shear", 0.18),
      column("capacity", "The base may take", 0.28),
    ],
    rows: groupBy(answers, (answer) => roleOf(answer, context)).map((same): readonly Cell[] => {
      const moment = same.reduce((most, one) => (Math.abs(one.baseMoment_Nmm) > Math.abs(most.baseMoment_Nmm) ? one : most));
      const shear = same.reduce((most, one) => (Math.abs(one.baseShear) > Math.abs(most.baseShear) ? one : most));
      return [
        `${bold(listed(unique(same.map(({ postId }) => postId))))}: ${roleOf(same[0], context)}`,
        `${bold(momentText(moment, context))}, ${moment.postId}`,
        `${shearText(shear, context)}, ${shear.postId}`,
        capacityCell(context, same[0].postId),
      ];
    }),
    rowHeads: true,
    notes: postNotes(context),
  });
}

/** Feet that the cables pull up, on the hardest day, with what each must be held down. */
export const liftedText = ({ plan, show }: SheetContext): Text =>
  plan.frame.sides
    .flatMap(({ posts }) => posts)
    .filter(({ baseThrust }) => baseThrust <= -LIFT_least)
    .map(({ postId, baseThrust }) => `${postId} ${bold(show.forceBothUp(0 - baseThrust))}`)
    .join(", ");

function liftedFeet(context: SheetContext): readonly Text[] {
  const feet = liftedText(context);
  return feet === "" ? [] : [`**The cables lift these feet:** ${feet}. Their fastening must hold them down; no load of the code is in it.`];
}

const shearText = ({ baseShear }: PostAnswer, { show }: SheetContext): Text =>
  Math.abs(baseShear) < NONE_N ? "none" : show.forceBothUp(Math.abs(baseShear));

function capacityCell({ plan, show }: SheetContext, postId: string): Cell {
  if (plan.verticals.some(({ id, kind }) => id === postId && kind === "pier")) return minor("by a licensed engineer");
  const capacity = plan.job.posts.baseCapacity_Nmm;
  return capacity === null ? minor(BY_REPORT) : `${show.moment(capacity.value, { rounding: "down" })} ${sourceMark(capacity.source)}`;
}

const postNotes = (context: SheetContext): readonly Text[] => {
  const { plan, show } = context;
  return [
    `**For bolts and hardware take what follows, not the table: with the cables at the top of their bands${hardestAt(plan, show) === "" ? "" : ` ${hardestAt(plan, show)}`}, and the load of the code.**`,
    ...loadedBases(context),
    ...boltWords(context),
    ...liftedFeet(context),
    ...pierNotes(plan, show),
    `Greatest compression of the rails: ${plan.frame.sides.map(({ sideId, topRailThrust, bottomRailThrust }) => `side ${sideId} top ${show.forceBothUp(topRailThrust)}${plan.job.frame.bottomRail === null ? "" : `, bottom ${show.forceBothUp(bottomRailThrust)}`}`).join("; ")}. Their joints must hand it over.`,
    `Posts may move ${show.diameter(plan.frame.movement_max.value)} under the cables ${sourceMark(plan.frame.movement_max.source)}. Stop where one moves more.`,
  ];
};

/** Which way and where is said of what a plumb line tells. */
function moved(movement: number, context: SheetContext, where = ""): Text {
  const text = movedWords(movement, context);
  return text.startsWith("under") ? text : `${text} to the ${movement > 0 ? "right" : "left"}${where}`;
}

const momentText = ({ baseMoment_Nmm }: PostAnswer, { show }: SheetContext): Text =>
  Math.abs(baseMoment_Nmm) < NONE_Nmm ? "none" : show.moment(Math.abs(baseMoment_Nmm), { rounding: "up" });

const roleOf = ({ postId }: PostAnswer, { plan }: SheetContext): Text => {
  const vertical = plan.verticals.find(({ id }) => id === postId);
  return vertical === undefined ? "" : roleName[vertical.role];
};

const BOLTS = "force in each of two bolts";

/** Bolts at a and b below the datum: the lower takes (M + V a) / (b - a), the upper (M + V b) / (b - a), which is M / (b - a) + V or more. */
const boltWords = ({ plan }: SheetContext): readonly Text[] =>
  plan.frame.checks.some(({ parts }) => parts.some(({ name }) => name.startsWith(BOLTS)))
    ? [
        `**Force in bolts: of the moment alone, and least.** It is for one bolt at the datum and one at the very foot of the post. Half as far apart they take twice as much, and the upper one takes at least the whole shear besides ${sourceMark("derived")}.`,
      ]
    : [];

/** With the load of the code the moment goes the other way as well: out of the guard. */
const loadedBases = ({ plan, show }: SheetContext): readonly Text[] =>
  plan.frame.checks
    .filter(({ id }) => id.startsWith("base-"))
    .map(({ name, member, loads, demand, unit, parts }) => {
      const shear = parts.find((part) => part.name.startsWith("V"));
      const bolts = parts.filter((part) => part.name.startsWith(BOLTS));
      return `**${name}** (${member}; ${loads.split(" (")[0] ?? loads}): moment ${bold(sizeText({ value: demand, unit }, show, { both: true, rounding: "up" }))}${shear ? `, shear ${show.forceBothUp(shear.value)}${shear.name.slice("V".length).replace(",", "")}` : ""}${bolts.map((part) => `; ${part.name} ${show.forceBothUp(part.value)}`).join("")}.`;
    });
