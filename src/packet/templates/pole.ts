// Which heights are marked on a story pole, and which uprights does it serve?
import type { View } from "../../drawing/paper.ts";
import { type Part, strokes } from "../../drawing/shape.ts";
import { label, MARK_mm } from "../../drawing/text.ts";
import type { Plan, Vertical } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { groupBy } from "../sheets/kit.ts";
import { facesOf, marksOf, type UprightFace } from "./faces.ts";
import { onlyFor } from "./printer.ts";
import { longestTile, stripPages, stripRoom } from "./strip-pages.ts";
import { lineStep, type StripContext } from "./template-strips.ts";
import { lineWordsHeight, type StripLook } from "./tile-drawing.ts";
import { cutTiles } from "./tiles.ts";

/** One height on a pole. */
export interface PoleMark {
  readonly course: number;
  readonly height: Mm;
}

/** Uprights whose holes stand at the same heights share a pole: all on level sides. */
export interface Pole {
  /** A, B ... */
  readonly id: string;
  readonly uprights: readonly Vertical[];
  /** Of those only the face that looks to this side: corner posts that are bored from both their faces at two heights. */
  readonly faces: readonly { readonly id: string; readonly sideId: string }[];
  readonly marks: readonly PoleMark[];
}

const FIRST_LETTER = 65;

/**
 * Uprights on a slope have none: their two faces are bored at two heights, from a mark that no end of a stick can stand on, so that one
 * pole would be wrong on the other face, and a pole of the level sides on both.
 */
export const withoutPole = ({ verticals }: Plan): readonly Vertical[] => verticals.filter(({ slope }) => slope !== 0);

interface Marked {
  readonly upright: Vertical;
  /** null: all its faces are bored at these heights. */
  readonly sideId: string | null;
  readonly marks: readonly PoleMark[];
}

export const polesOf = (plan: Plan): readonly Pole[] =>
  groupBy(
    plan.verticals.flatMap((upright): readonly Marked[] => {
      if (upright.slope !== 0) return [];
      const { corner } = upright;
      const all = facesOf(plan, upright);
      if (corner?.isSetOff === true) {
        return all.map((one) => ({ upright, sideId: one.face === "left" ? corner.homeId : corner.nextId, marks: marksOn([one]) }));
      }
      const marks = marksOn(all);
      return marks.length === 0 ? [] : [{ upright, sideId: null, marks }];
    }),
    ({ marks }) => JSON.stringify(marks),
  ).map((alike, index) => ({
    id: String.fromCharCode(FIRST_LETTER + index),
    uprights: alike.map(({ upright }) => upright),
    faces: alike.flatMap(({ upright: { id }, sideId }) => (sideId === null ? [] : [{ id, sideId }])),
    marks: alike[0].marks,
  }));

/** Heights where the bit goes in; each height once, whichever face it is on. */
function marksOn(faces: readonly UprightFace[]): readonly PoleMark[] {
  const marks = faces
    .flatMap(({ holes }) => holes.filter(({ counterbore }) => counterbore === null))
    .map(({ course, here }): PoleMark => ({ course, height: here.height }))
    .sort((a, b) => a.height - b.height);
  return marks.filter(
    ({ course, height }, index) => marks.findIndex((other) => other.course === course && other.height === height) === index,
  );
}

/** "P1 to P3", and of a corner post that is bored from two faces the one face that it serves. */
export const servedBy = ({ uprights, faces }: Pole): Text =>
  [marksOf(uprights), ...faces.map(({ id, sideId }) => `${id} on the face towards ${sideId} only`)].join("; ");

/** Half the width of the strip: room for a course and its height. */
const HALF_mm = 22;
const MARGIN_mm = 9;
const HEAD_mm = 15;
const ZERO: Text = "datum";
/** Room that the words of a mark take to each side. */
const REACH_mm = 6;

export function polePages(pole: Pole, context: StripContext): readonly Drawing[] {
  const { plan, show, paper } = context;
  const kept = keptBy(pole);
  const uncut = kept.map(({ low, high }) => ({
    low: low - lineWordsHeight(`${pole.id}-00, ${show.tapeBoth(high)}`, { room: 2 * (HALF_mm - MARGIN_mm), zero: ZERO }),
    high,
  }));
  const top = Math.max(...pole.marks.map(({ height }) => height)) + HEAD_mm;
  const longest = longestTile(stripRoom(paper, plan.job, []), 0);
  return stripPages({
    look: lookOf(pole, context),
    tiles: cutTiles({ foot: 0, top, kept: uncut, marks: kept }, { longest, step: lineStep(plan) }),
    paper,
    job: plan.job,
    title: `Pole ${pole.id}, to glue on a straight stick`,
    describe: () =>
      `Full-size strip with a line for each course above the datum: ${pole.marks.map(({ course, height }) => `course ${course} at ${show.tapeBoth(height)}`).join(", ")}.`,
  });
}

const keptBy = ({ marks }: Pole): StripLook["kept"] => marks.map(({ height }) => ({ low: height - REACH_mm, high: height + REACH_mm }));

function lookOf(pole: Pole, { plan, show, titleBlock }: StripContext): StripLook {
  const [stamp = ""] = titleBlock.stamp.split(" - ");
  const warning: readonly Text[] = [stamp, onlyFor(plan.job)].filter((text) => text !== "");
  return {
    id: pole.id,
    width: 2 * HALF_mm,
    half: HALF_mm,
    margin: MARGIN_mm,
    edge: `this edge stands on the ${ZERO}`,
    zero: ZERO,
    flapRise: 0,
    notes: [],
    about: [
      [`Pole ${pole.id}: ${servedBy(pole)}`, ...(withoutPole(plan).length === 0 ? [] : ["only; never where it slopes"])],
      [warning.length === 0 ? `Job ${titleBlock.jobNumber}, rev. ${titleBlock.revision}` : warning.join("; ")],
    ],
    across: pole.marks.map(({ height }) => height),
    big: [],
    kept: keptBy(pole),
    show,
    marks: (view, tile) =>
      pole.marks.filter(({ height }) => height >= tile.from && height < tile.to).flatMap((mark) => markParts(mark, view, show)),
  };
}

function markParts({ course, height }: PoleMark, view: View, show: StripContext["show"]): readonly Part[] {
  const at = (x: Mm): { readonly x: Mm; readonly y: Mm } => view.point({ x, y: height });
  const above = { x: at(0).x, y: at(0).y - 2.9 };
  return [
    strokes("edge", [[at(-HALF_mm), at(HALF_mm)]]),
    label(String(course).padStart(2, "0"), { ...above, x: above.x - 1 }, { size: MARK_mm, weight: 700, anchor: "end", ground: true }),
    label(show.tape(height), { ...above, x: above.x + 1 }, { anchor: "start", ground: true }),
  ];
}
