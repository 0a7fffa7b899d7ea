// Where on a side is the sphere pushed against the cables?
import { spread } from "../../drawing/leader.ts";
import type { Room } from "../../drawing/paper.ts";
import { circle, type Part, strokes } from "../../drawing/shape.ts";
import { label, MARK_mm, textWidth } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import type { Bay, Plan, SidePlan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { overSteps } from "../sheets/slopes.ts";
import type { Show } from "../show-number.ts";
import { fromTo } from "../wording.ts";
import { finishDrawing, footer, showOf } from "./kit.ts";
import { gapsOn, openingOn, rakeOn } from "./raked.ts";
import { baysIn, EDGE_NAME_mm, type Scene, sideScene, verticalsIn } from "./side-scene.ts";
import { stretchedView } from "./stretched-view.ts";
import { middleOf, type Stretch, stretchesOf } from "./stretches.ts";

/** Least paper that a bay takes, tried in this order: its mark and the sign of the spot. */
const BAY_min_mm = [13, 10.5, 8.6] as const;
/** Least height of the guard on paper; a side that is too long for its room at this height takes more room. */
const GUARD_min_mm = 13;
/** Taken by the notes below the rows. */
const FOOT_mm = 15;
/** Below the datum of a row: the names of the bays. Above its rail: those of the posts. */
const BELOW_mm = 9;
const ABOVE_mm = 7.5;
/** Heights have a scale of their own, so that the cables can be told apart. */
const COURSE_PITCH_mm = 2.2;
/** A slope climbs over no more of its row than this. */
const CLIMB_share = 0.5;

export function openingDiagram(plan: Plan, sideIndex: number, box: Room): Drawing {
  const side = plan.sides[sideIndex];
  if (side === undefined) throw new RangeError(`no side at position ${sideIndex}`);
  const show = showOf(plan);
  const bays = plan.bays.filter((bay) => bay.sideId === side.id && bay.kind === "bay");
  const first = bays.find(({ id }) => plan.openingBayIds.includes(id));
  const { stretches, ratio, up, climb } = chooseRows(plan, side, bays, box);
  const rowHeight = openingOn(plan, side).guardHeight * up + climb + ABOVE_mm + BELOW_mm;
  const drawn = stretches.flatMap((stretch, row) => {
    const tan = (climb / (stretch.to - stretch.from)) * Math.sign(side.slope);
    const view = stretchedView(stretch, { across: ratio, up, tan, origin: { x: 0, y: row * rowHeight } });
    return rowParts({ plan, side, stretch, view, stretched: true }, first);
  });
  const foot = footer(drawn, {
    scale: null,
    units: plan.job.units,
    notes: [...slopeNotes(plan, side, show), ...notesOf(show, first)],
    room: box,
  });
  return finishDrawing({
    id: `opening-${side.id.toLowerCase()}`,
    title: `Side ${side.id}: where to test the openings`,
    description: describe(side, bays, first, show),
    parts: [...drawn, foot],
  });
}

interface Rows {
  readonly stretches: readonly Stretch[];
  /** Paper mm per mm of length, and of height. */
  readonly ratio: number;
  readonly up: number;
  /** Of a row on a slope, in paper mm; flatter than the slope where the page has no room for it. */
  readonly climb: Mm;
}

/** Rows of bays that all fit on one page: long sides get smaller bays, then lower rows. */
function chooseRows(plan: Plan, side: SidePlan, bays: readonly Bay[], box: Room): Rows {
  const width = box.width - 2 * EDGE_NAME_mm - 5.2;
  const { guardHeight } = openingOn(plan, side);
  const shortest = Math.min(...bays.map(({ free }) => free), side.length);
  const wished = (COURSE_PITCH_mm * guardHeight) / Math.min(...gapsOn(plan, side).map(({ plumb }) => plumb));
  const tries = BAY_min_mm.map((bay) => {
    const stretches = stretchesOf(plan, side, (width * shortest) / bay, "posts");
    const room = (box.height - FOOT_mm) / stretches.length - ABOVE_mm - BELOW_mm;
    const ratio = Math.min(...stretches.map(({ from, to }) => width / (to - from)), 1 / 16);
    const longest = Math.max(...stretches.map(({ from, to }) => to - from));
    const climb = Math.min(longest * ratio * Math.tan(Math.abs(side.slope)), CLIMB_share * room);
    return { stretches, ratio, climb, room: room - climb };
  });
  const chosen = tries.find(({ room }) => room >= GUARD_min_mm) ?? tries.at(-1) ?? { stretches: [], ratio: 1 / 16, climb: 0, room: 0 };
  const height = Math.max(Math.min(wished, chosen.room), GUARD_min_mm);
  return { stretches: chosen.stretches, ratio: chosen.ratio, up: height / guardHeight, climb: chosen.climb };
}

function rowParts(scene: Scene, first: Bay | undefined): readonly Part[] {
  const { plan, side, view } = scene;
  const opening = openingOn(plan, side);
  const middleHeight = (opening.bottom + opening.top) / 2;
  const posts = verticalsIn(scene).filter(({ kind }) => kind === "post");
  const bays = baysIn(scene).filter(({ kind }) => kind === "bay");
  return [
    ...sideScene(scene),
    ...namesAbove(
      posts.map(({ id, station }) => {
        const { x, y } = view.point({ x: station, y: opening.guardHeight });
        return { id, x, y: y - 3.4 };
      }),
    ),
    ...bays.flatMap((bay) => {
      const spot = view.point({ x: middleOf(plan, bay), y: middleHeight });
      const below = { x: spot.x, y: view.point({ x: middleOf(plan, bay), y: 0 }).y + 5.6 + stepRoom(scene) };
      return [
        ...spotSign(spot, bay === first),
        label(bay.id, below, { size: MARK_mm, weight: bay === first ? 700 : 400, anchor: "middle" }),
      ];
    }),
  ];
}

/** Names of posts side by side, moved apart where two would touch. */
function namesAbove(names: readonly { readonly id: Text; readonly x: Mm; readonly y: Mm }[]): readonly Part[] {
  const places = spread(names.map(({ id, x }) => ({ at: x, size: textWidth(id, { weight: 700 }) + 1 })));
  return names.map(({ id, x, y }, index) => label(id, { x: places[index] ?? x, y }, { weight: 700, anchor: "middle", ground: true }));
}

function spotSign({ x, y }: Point, first: boolean): readonly Part[] {
  const cross = (by: Mm) => [
    [
      { x: x - by, y: y - by },
      { x: x + by, y: y + by },
    ],
    [
      { x: x - by, y: y + by },
      { x: x + by, y: y - by },
    ],
  ];
  return first
    ? [
        circle({ x, y }, 4, { pen: "outline", fill: "white" }),
        circle({ x, y }, 2.9, { pen: "edge", fill: "white" }),
        strokes("outline", cross(1.8)),
      ]
    : [circle({ x, y }, 2.2, { pen: "edge", fill: "white" }), strokes("edge", cross(1.3))];
}

/** Steps reach below the line of the nosings. */
function stepRoom({ plan, side, view }: Scene): Mm {
  const triangle = rakeOn(plan, side)?.triangle;
  return triangle == null ? 0 : view.point({ x: 0, y: 0 - triangle.riser }).y - view.point({ x: 0, y: 0 }).y;
}

/** What is square on a slope. */
function slopeNotes(plan: Plan, side: SidePlan, show: Show): readonly Text[] {
  const rake = rakeOn(plan, side);
  if (rake === undefined) return [];
  const { triangleSphere } = plan.job.code.stairs;
  const widest = Math.max(...rake.gaps.map(({ clear }) => clear));
  const steps =
    rake.kind === "stair" && triangleSphere !== null
      ? ` Under the ${overSteps(plan.job.frame)}, at every riser and tread, a sphere of ${show.tape(triangleSphere.value)} must not go in.`
      : "";
  return [
    `Side ${side.id} slopes by ${show.angle(Math.abs(side.slope))}, drawn flatter: measure and push square to the cables; widest clear opening planned ${show.tape(widest)}, square.${steps}`,
  ];
}

const notesOf = (show: Show, first: Bay | undefined): readonly Text[] => [
  "A cross in a circle: test here, half-way along the bay, between every two neighbouring cables and at the rails, as the table says.",
  `${first === undefined ? "" : `A double circle: bay ${first.id}, free length ${show.tape(first.free)}, gives way most easily: test it first. `}Not to scale.`,
];

function describe(side: SidePlan, bays: readonly Bay[], first: Bay | undefined, show: Show): Text {
  const names = fromTo(bays.map(({ id }) => id));
  const words =
    first === undefined
      ? ""
      : ` Bay ${first.id}, free length ${show.tape(first.free)}, gives way most easily: test it first, in its middle.`;
  return `Bays of side ${side.id} from left to right: ${names}.${words} The table of openings has a row for each bay.`;
}
