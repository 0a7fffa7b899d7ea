// What does one side look like from the deck, and at which heights and stations does everything stand?
import { dimension, type Ordinate, ordinateDepth, ordinateSize, runningDimensions } from "../../drawing/dimension.ts";
import { type Room, type Scale, scalesOf } from "../../drawing/paper.ts";
import type { Part } from "../../drawing/shape.ts";
import { label } from "../../drawing/text.ts";
import type { Bay, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import { courseHeight } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { notesOf } from "./elevation-notes.ts";
import { courseName, finishDrawing, footer, membersOf, showOf } from "./kit.ts";
import { climbOf, gapsOn, openingOn, rakedView } from "./raked.ts";
import { baysIn, DECK_mm, EDGE_NAME_mm, edgeRoom, type Scene, sideScene, verticalsIn, wallRoom, wallsOf } from "./side-scene.ts";
import { spanLabel } from "./span-label.ts";
import { type Stretch, stretchesOf } from "./stretches.ts";

/** Courses stand at least this far apart on paper, so that they can be told apart. */
const COURSE_PITCH_min_mm = 2.1;
/** Verticals stand at least this far apart, so that their marks have room; the posts of a pair may be closer. */
const VERTICAL_PITCH_min_mm = 9;
const GUARD_DIMENSION_mm = 3.4;
const RIGHT_mm = GUARD_DIMENSION_mm + 2.4;
/** Two parts of a long side fit one page. */
const PART_mm = 79;
/** Greatest height of everything but the guard: marks above it; deck, stations, length and notes below. */
const AROUND_mm = 54;
/** The same for a part of a side, without the length of the whole. */
const AROUND_PART_mm = 50;

/** One drawing, or several with match lines where the side is long. */
export function elevations(plan: Plan, sideIndex: number, box: Room): readonly Drawing[] {
  const side = plan.sides[sideIndex];
  if (side === undefined) throw new RangeError(`no side at position ${sideIndex}`);
  const walls = wallRoom(side);
  const depth = ordinateDepth({ ordinates: heightsOf(plan, side), start: 0.6, lay: "outward" });
  const width = box.width - depth - walls.left - walls.right - RIGHT_mm - 1.2;
  const { scale, stretches } = chooseStretches(plan, side, { width, height: box.height });
  return stretches.map((stretch, index) => {
    const view = rakedView(side, stretch, scale.ratio);
    return elevation({ plan, side, stretch, view }, { scale, box, index, count: stretches.length });
  });
}

interface Chosen {
  readonly scale: Scale;
  readonly stretches: readonly Stretch[];
}

/** The fewest stretches at which courses and verticals stand far enough apart, at the largest scale for so many. */
function chooseStretches(plan: Plan, side: SidePlan, room: Room): Chosen {
  const least = leastRatio(plan, side);
  if (climbOf(side) > 0) return chooseOnRake({ plan, side, least }, room);
  const scales = scalesOf(plan.job.units).filter(({ ratio }) => ratio >= least);
  const smallest = scales.at(-1)?.ratio ?? least;
  const { guardHeight } = plan.opening;
  // What cannot be told apart at a smaller scale takes the height that it needs.
  const low = (ratio: number, count: number): boolean =>
    ratio <= smallest ||
    (count === 1 ? guardHeight * ratio + AROUND_mm <= room.height : guardHeight * ratio + AROUND_PART_mm <= Math.min(room.height, PART_mm));
  const stretch = { from: 0, to: side.length, matchLeft: null, matchRight: null };
  for (let count = 1; count < 200; count++) {
    for (const scale of scales) {
      const whole = edgeRoom({ plan, side, stretch }, scale.ratio);
      const width =
        room.width - (count === 1 ? whole.left + whole.right : Math.max(whole.left, EDGE_NAME_mm) + Math.max(whole.right, EDGE_NAME_mm));
      if (!low(scale.ratio, count) || side.length * scale.ratio > count * width) continue;
      const stretches = stretchesOf(plan, side, width / scale.ratio);
      if (stretches.length <= count) return { scale, stretches };
    }
  }
  throw new RangeError("a bay is wider than the paper at every scale");
}

/** A rake needs the height of its climb too: its courses may come closer on paper. */
const RAKE_share = 0.3;
/** Its notes name two spacings: a line more. */
const RAKE_NOTE_mm = 4;

/** The fewest stretches of a rake that fit, at the largest scale for so many; the smallest scale where none does. */
function chooseOnRake({ plan, side, least }: { readonly plan: Plan; readonly side: SidePlan; readonly least: number }, room: Room): Chosen {
  const scales = scalesOf(plan.job.units).filter(({ ratio }) => ratio >= RAKE_share * least);
  const { guardHeight } = openingOn(plan, side);
  const tan = Math.abs(Math.tan(side.slope));
  const most = baysOn(plan, side).length + 1;
  const fits = (ratio: number, stretches: readonly Stretch[]): boolean =>
    stretches.every(({ from, to }) => {
      const height = (guardHeight + (to - from) * tan) * ratio + (stretches.length === 1 ? AROUND_mm : AROUND_PART_mm) + RAKE_NOTE_mm;
      return height <= room.height && (to - from) * ratio <= room.width - 2 * EDGE_NAME_mm;
    });
  for (let count = 1; count <= most; count++) {
    const stretches = count === 1 ? stretchesOf(plan, side, side.length) : stretchesOf(plan, side, (UNEVEN * side.length) / count);
    const scale = stretches.length > count ? undefined : scales.find(({ ratio }) => fits(ratio, stretches));
    if (scale !== undefined) return { scale, stretches };
  }
  const scale = scales.at(-1);
  if (scale === undefined) throw new RangeError("no scale for a rake");
  return { scale, stretches: stretchesOf(plan, side, (room.width - 2 * EDGE_NAME_mm) / scale.ratio) };
}

/** How much longer than an even part a stretch may be, so that it is cut in the middle of a bay. */
const UNEVEN = 1.35;

const baysOn = (plan: Plan, side: SidePlan): readonly Bay[] => plan.bays.filter((bay) => bay.sideId === side.id && bay.kind === "bay");

function leastRatio(plan: Plan, side: SidePlan): number {
  const all = gapsOn(plan, side).map((gap) => gap.spacing);
  // Where bores are set off the short gap beside a rail may be smaller than can be told apart: there is a rail, not a course.
  const gaps = plan.setOff === null || all.length < 3 ? all : all.slice(1, -1);
  const own = baysOn(plan, side).map((bay) => membersOf(plan, bay));
  const pitches = own.map(({ left, right }) => right.station - left.station);
  // A side may hold bays that are too short for any scale: those must not force it apart.
  const forCourses = COURSE_PITCH_min_mm / Math.min(...gaps, 1000);
  const forVerticals = VERTICAL_PITCH_min_mm / Math.max(300, Math.min(...pitches, 1000));
  return Math.max(forCourses, forVerticals);
}

function heightsOf(plan: Plan, side: SidePlan): readonly Ordinate[] {
  const { tape } = showOf(plan);
  const { bottom, top } = openingOn(plan, side);
  return [
    { at: 0, value: "datum 0" },
    ...(bottom > 0 ? [{ at: bottom, value: `(${tape(bottom)})` }] : []),
    ...plan.courses.map((course) => {
      const height = courseHeight(course, side);
      return { at: height, mark: courseName(course.number), value: tape(height) };
    }),
    { at: top, value: `(${tape(top)})` },
  ];
}

interface ElevationOptions {
  readonly scale: Scale;
  readonly box: Room;
  readonly index: number;
  readonly count: number;
}

function elevation(scene: Scene, { scale, box, index, count }: ElevationOptions): Drawing {
  const { plan, side, stretch } = scene;
  const show = showOf(plan);
  const drawn = [...sideScene(scene), ...baysIn(scene).flatMap((bay) => spanLabel(scene, bay, show)), ...dimensions(scene, show)];
  const part = count === 1 ? "" : `, part ${index + 1} of ${count}`;
  const parts = [...drawn, footer(drawn, { scale, units: plan.job.units, notes: [notesOf(scene, show, { index, count })], room: box })];
  return finishDrawing({
    id: `elevation-${side.id.toLowerCase()}${count === 1 ? "" : `-${index + 1}`}`,
    title: `Side ${side.id} seen from inside${part}`,
    description: describe(scene, show),
    parts: stretch.to > stretch.from ? parts : drawn,
  });
}

function dimensions(scene: Scene, show: Show): readonly Part[] {
  const { plan, side, stretch, view } = scene;
  const datum = view.point({ x: stretch.from, y: 0 });
  const right = view.point({ x: stretch.to, y: 0 });
  const heights = heightsOf(plan, side).map((ordinate) => ({ ...ordinate, at: ordinate.at * view.ratio }));
  const verticals = verticalsIn(scene);
  const at = (station: Mm): Mm => (station - stretch.from) * view.ratio;
  const stations = verticals.map(({ station }): Ordinate => ({ at: at(station), value: show.feet(station) }));
  const start = DECK_mm + 0.6;
  const rightward = { x: 1, y: 0 };
  const edges = edgeRoom(scene, view.ratio);
  // Side by side where they have room: turned text is harder to read, and takes more height.
  const needs = (how: "along" | "outward"): Mm => stations.reduce((sum, station) => sum + ordinateSize(station, how), 0);
  const room = right.x - datum.x;
  const lay = needs("along") <= room ? "along" : "outward";
  const whole = stretch.matchLeft === null && stretch.matchRight === null;
  const marks = verticals.map(
    ({ id, kind, station }): Ordinate => ({
      at: at(station),
      mark: id,
      value: "",
      ...(kind === "spacer" ? { minor: true as const } : {}),
    }),
  );
  const { guardHeight } = openingOn(plan, side);
  const top = view.point({ x: stretch.from, y: guardHeight });
  const topRight = view.point({ x: stretch.to, y: guardHeight });
  // Stations stand below the lower end of a rake.
  const foot = { x: datum.x, y: Math.max(datum.y, right.y) };
  const walls = wallsOf(scene);
  const guardEnd = { x: right.x + walls.right + edges.right, y: right.y };
  return [
    runningDimensions({
      origin: { x: datum.x - walls.left - edges.left, y: datum.y },
      along: { x: 0, y: -1 },
      outward: { x: -1, y: 0 },
      ordinates: heights,
      start: 0.6,
      lay: "outward",
    }),
    ...(side.slope === 0
      ? [runningDimensions({ origin: top, along: rightward, outward: { x: 0, y: -1 }, ordinates: marks, start: 0.6, lay: "along" })]
      : verticals.map((vertical) => markAbove(scene, vertical))),
    runningDimensions({
      origin: foot,
      along: rightward,
      outward: { x: 0, y: 1 },
      ordinates: stations,
      start,
      lay,
      // Off the lines at both ends of the length below.
      ...(needs(lay) <= room ? { from: 0, to: room } : {}),
      ...(stretch.matchLeft === null ? { datum: true as const } : {}),
    }),
    dimension({ from: guardEnd, to: { x: guardEnd.x, y: topRight.y }, offset: GUARD_DIMENSION_mm, text: show.tape(guardHeight) }),
    ...(whole
      ? [
          dimension({
            from: { x: datum.x, y: foot.y + DECK_mm },
            to: { x: right.x, y: foot.y + DECK_mm },
            offset: ordinateDepth({ ordinates: stations, start, lay }) - DECK_mm + 2.4,
            text: `side ${side.id}: ${show.feet(side.length)}${side.slope === 0 ? "" : " level"}`,
          }),
        ]
      : []),
  ];
}

/** Above the line at the end of a side. */
const MARK_ABOVE_mm = 5;

/** On a rake the mark stands over its post. */
function markAbove({ plan, side, view }: Scene, { id, kind, station }: Vertical): Part {
  const { x, y } = view.point({ x: station, y: openingOn(plan, side).guardHeight });
  return label(id, { x, y: y - MARK_ABOVE_mm }, { anchor: "middle", weight: kind === "post" ? 700 : 400 });
}

function describe(scene: Scene, show: Show): Text {
  const { plan, side } = scene;
  const verticals = verticalsIn(scene);
  const posts = verticals.filter(({ kind }) => kind === "post");
  const spacers = verticals.length - posts.length;
  const name = (ids: readonly { readonly id: string; readonly station: Mm }[]): Text =>
    ids.map(({ id, station }) => `${id} at ${show.feet(station)}`).join(", ");
  const [lowest, highest] = [plan.courses[0], plan.courses.at(-1)].map((course) => (course === undefined ? 0 : courseHeight(course, side)));
  return (
    `Side ${side.id}, ${show.feet(side.length)} long${side.slope === 0 ? "" : ` measured level, with a rake of ${show.angle(Math.abs(side.slope))} ${side.slope > 0 ? "up" : "down"} to the right`}, seen from inside looking out, left to right. ` +
    `Posts ${name(posts)}; ${spacers === 1 ? "1 spacer" : `${spacers} spacers`}. ` +
    `${plan.courses.length} courses from ${show.tape(lowest ?? 0)} to ${show.tape(highest ?? 0)} above the datum; the guard is ${show.tape(openingOn(plan, side).guardHeight)} high. ` +
    "The tables of heights and bays on this sheet hold the same numbers."
  );
}
