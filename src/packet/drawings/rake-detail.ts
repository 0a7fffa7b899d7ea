// What stands at one step of a stair, and how does a bore lie in a plumb post on a rake?
import { dimension } from "../../drawing/dimension.ts";
import { chooseScale, type Room, type Scale } from "../../drawing/paper.ts";
import { boxOfParts, circle, type Line, type Part, polygon, strokes } from "../../drawing/shape.ts";
import { label, lineHeight, textWidth } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import { heightOn } from "../../plan/bores.ts";
import { climbTo } from "../../plan/corner-path.ts";
import type { Bore, Face, Gap, Plan, SidePlan, Vertical } from "../../plan/plan.ts";
import type { RakePlan, Triangle } from "../../plan/rake-plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Drawing, Text } from "../packet.ts";
import { groupBy } from "../sheets/kit.ts";
import type { Show } from "../show-number.ts";
import { finishDrawing, footer, showOf } from "./kit.ts";

/** Paper for the ends of strokes at both edges, and for the scale bar and the note under the pictures. */
const EDGE_mm = 2;
const FOOT_mm = 15;

/** A bored post of the side, and on a stair one step with the largest sphere that goes in. */
export function rakeDetail(plan: Plan, sideId: string, box: Room): Drawing {
  const side = plan.sides.find(({ id }) => id === sideId);
  const rake = plan.rakes.find((one) => one.sideId === sideId);
  const post = plan.verticals.find((one) => one.sideId === sideId && one.kind === "post");
  const bore = plan.bores.find(({ verticalId, course }) => verticalId === post?.id && course === 1);
  if (side === undefined || rake === undefined || post === undefined || bore === undefined)
    throw new RangeError(`side ${sideId} has no rake with a bored post`);
  const show = showOf(plan);
  const { triangle } = rake;
  const picturesAt = (scale: Scale): readonly Part[] => {
    const bored = boredPost({ post, bore, rake, scale, show });
    const { top, right, bottom } = boxOfParts(bored);
    const step = triangle === null ? [] : stepPicture({ plan, side, triangle, scale, show, left: right + APART_mm });
    return [...bored, ...step, ...spacings({ rake, show, at: triangle === null ? { below: bottom } : { above: top } })];
  };
  const scale = chooseScale(plan.job.units, (one) => {
    const { left, right, top, bottom } = boxOfParts(picturesAt(one));
    return right - left <= box.width - EDGE_mm && bottom - top <= box.height - FOOT_mm;
  });
  const drawn = picturesAt(scale);
  return finishDrawing({
    id: `rake-${sideId.toLowerCase()}`,
    title:
      triangle === null
        ? `Side ${sideId}: a bore on the rake`
        : `Side ${sideId}: a bore on the rake, and a step with the sphere that goes in`,
    description: describe({ rake, post, bore, show }),
    parts: [...drawn, footer(drawn, { scale, units: plan.job.units, notes: [NOTE], room: box })],
  });
}

const NOTE =
  "Seen from inside. The level mark on the post is where the datum crosses its middle line; both heights of a bore are measured from that mark. The two cables with their usual spacing are not to scale.";

const postHeight = ({ along }: Vertical, { slope }: RakePlan): Mm => along * (1.4 + Math.abs(Math.tan(slope)));

/** Words beside the post: of a face, and of the angle. */
const FACE_mm = 4;
const OFF_LEVEL_mm = 9;

interface BoredPost {
  readonly post: Vertical;
  readonly bore: Bore;
  readonly rake: RakePlan;
  readonly scale: Scale;
  readonly show: Show;
}

/** A piece of the post around one bore; its level line stands for the height in the middle. */
function boredPost({ post, bore, rake, scale: { ratio }, show }: BoredPost): readonly Part[] {
  const half = (post.along / 2) * ratio;
  const tall = (postHeight(post, rake) / 2) * ratio;
  const climb = climbTo("right", post) * ratio;
  const radius = (bore.diameter / 2) * ratio;
  // Square to the bore, as it shows along a plumb face.
  const thick = radius / Math.cos(rake.slope);
  const at = (x: Mm, y: Mm): Point => ({ x, y: -y });
  const line = (off: Mm): Line => [at(-half, off - climb), at(half, off + climb)];
  const words = (face: Face): Text => {
    const off = heightOn(bore, face) - bore.height;
    const which = bore.entryFace === face ? "bit in" : "bit out";
    return `${face} face (${which}): ${show.tape(Math.abs(off))} ${off < 0 ? "lower" : "higher"}`;
  };
  const lowest = Math.abs(climb) + (climb < 0 ? OFF_LEVEL_mm : FACE_mm);
  return [
    polygon([at(-half, tall), at(half, tall), at(half, -tall), at(-half, -tall)], { pen: "outline", fill: "white" }),
    strokes("edge", [line(thick), line(-thick)]),
    strokes("centre", [[at(-half * 1.5, -climb * 1.5), at(half * 1.5, climb * 1.5)]]),
    strokes("thin", [
      [at(-half - 6, 0), at(half + 6, 0)],
      [at(0, tall + 2), at(0, -tall - 2)],
    ]),
    label("height of the course", at(half + 7, 0), { anchor: "start" }),
    label(words("left"), at(-half * 1.5 - 2, -climb + Math.sign(0 - climb || 1) * FACE_mm), { anchor: "end" }),
    label(words("right"), at(half + 7, climb + Math.sign(climb || 1) * FACE_mm), { anchor: "start" }),
    label(`${show.angle(Math.abs(rake.slope))} off level`, at(half + 7, climb + Math.sign(climb || 1) * OFF_LEVEL_mm), { anchor: "start" }),
    dimension({
      from: at(-half, -tall),
      to: at(half, -tall),
      offset: Math.max(5, lowest + lineHeight() - tall),
      text: show.tape(post.along),
    }),
    label(`${post.id}, bore ${bore.mark}: ${show.tape(bore.drilledLength)} long`, at(0, tall + 5), { anchor: "middle", weight: 700 }),
  ];
}

/** Between the bored post and the picture of the spacings. */
const APART_mm = 4;
/** Half the length of the cables that show a spacing, and how far apart they are: not to scale. */
const CABLE_mm = 11;
const PLUMB_mm = 9;

/** The spacing that is found most between two cables. */
function usualGap({ gaps }: RakePlan, show: Show): Gap {
  const between = gaps.length > 2 ? gaps.slice(1, -1) : gaps;
  const [first] = groupBy(between, ({ spacing }) => show.tape(spacing)).toSorted((a, b) => b.length - a.length);
  if (first === undefined) throw new RangeError("a rake without gaps");
  return first[0];
}

interface Spacings {
  readonly rake: RakePlan;
  readonly show: Show;
  readonly at: { readonly below: Mm } | { readonly above: Mm };
}

/** Two cables of a rake: how far apart along a plumb line, and how far square to them, where the sphere must not pass. */
function spacings({ rake, show, at: place }: Spacings): readonly Part[] {
  const { slope } = rake;
  const gap = usualGap(rake, show);
  const [sin, cos, tan] = [Math.sin(slope), Math.cos(slope), Math.tan(slope)];
  const climb = CABLE_mm * Math.abs(tan);
  const middle = "below" in place ? place.below + APART_mm + PLUMB_mm + climb : place.above - APART_mm - climb;
  // On the lower cable by its level distance from the middle, and the plumb distance above it.
  const at = (x: Mm, up: Mm): Point => ({ x, y: middle - x * tan - up });
  const foot = at(CABLE_mm * 0.6 * (slope > 0 ? 1 : 0.4), 0);
  const head = { x: foot.x - PLUMB_mm * cos * sin, y: foot.y - PLUMB_mm * cos * cos };
  const [low, high] = [at(0 - CABLE_mm * 0.6, 0), at(0 - CABLE_mm * 0.6, PLUMB_mm)];
  return [
    strokes("cable", [
      [at(-CABLE_mm, 0), at(CABLE_mm, 0)],
      [at(-CABLE_mm, PLUMB_mm), at(CABLE_mm, PLUMB_mm)],
    ]),
    ...ticked(low, high),
    label(`${show.tape(gap.plumb)} along the post`, { x: 0 - CABLE_mm - 2, y: at(-CABLE_mm, PLUMB_mm / 2).y }, { anchor: "end" }),
    ...ticked(foot, head),
    label(`${show.tape(gap.spacing)} square to the cables`, { x: CABLE_mm + 2, y: at(CABLE_mm, PLUMB_mm / 2).y }),
  ];
}

const TICK_mm = 0.8;

/** A line from one cable to another, its ends marked as on dimensions. */
const ticked = (from: Point, to: Point): readonly Part[] => [
  strokes("thin", [[from, to]]),
  strokes(
    "edge",
    [from, to].map(({ x, y }) => [
      { x: x - TICK_mm, y: y + TICK_mm },
      { x: x + TICK_mm, y: y - TICK_mm },
    ]),
  ),
];

interface StepPicture {
  readonly plan: Plan;
  readonly side: SidePlan;
  readonly triangle: Triangle;
  readonly scale: Scale;
  readonly show: Show;
  readonly left: Mm;
}

/** Below the tread that the words are of. */
const TREAD_mm = 3.4;

/** Two steps, the line of the nosings, what lies above it, and the circle between. */
function stepPicture({ plan, side, triangle, scale: { ratio }, show, left }: StepPicture): readonly Part[] {
  const { riser, tread, gap, sphere, under, nosing } = triangle;
  const back = nosing.value;
  const isUp = side.slope > 0;
  // x from the lower nosing towards the upper one; turned round where the side goes down to the right.
  const at = (x: Mm, y: Mm): Point => ({ x: left + (isUp ? x : 2 * tread - x) * ratio, y: -y * ratio });
  const steepness = riser / tread;
  const rail = under === "bottom rail" ? (plan.job.frame.bottomRail?.depth ?? 0) : plan.job.cable.diameter;
  const plumb = rail * Math.hypot(1, steepness);
  const above = (by: Mm): Line => [at(0, by), at(2 * tread + back, 2 * riser + by + back * steepness)];
  // The edge of a tread is drawn as thick as it stands out.
  const step = (x: Mm, y: Mm): Line => [
    at(x, y),
    at(x + tread + back, y),
    at(x + tread + back, y + riser - back),
    at(x + tread, y + riser - back),
  ];
  const [lowFrom, lowTo] = above(gap);
  const [highFrom, highTo] = above(gap + plumb);
  const circleAt = at(2 * tread + back - sphere / 2, riser + sphere / 2);
  const end = isUp ? "end" : "start";
  const away = isUp ? -1 : 1;
  const railAt = at(0, gap + plumb / 2);
  const gapAt = at(tread, riser + gap / 2);
  const treadText = `tread ${show.tape(tread)}`;
  const from = isUp ? "start" : "end";
  const beside = (y: Mm): Point => ({ x: at(tread + back, 0).x - away * 2, y });
  const treadWords = at(0, riser).y + TREAD_mm;
  return [
    ...(lowFrom && lowTo && highFrom && highTo ? [polygon([lowFrom, lowTo, highTo, highFrom], { pen: "edge", fill: "white" })] : []),
    strokes("centre", [above(0)]),
    strokes("heavy", [[...step(0, 0), ...step(tread, riser), at(2 * tread, 2 * riser)]]),
    circle(circleAt, (sphere / 2) * ratio, { pen: "edge", fill: "white" }),
    label(show.tape(sphere), circleAt, { anchor: "middle", ground: true }),
    label(under, { x: railAt.x + away * 2, y: railAt.y }, { anchor: end }),
    ...ticked(at(tread, riser), at(tread, riser + gap)),
    label(`gap ${show.tape(gap)}, plumb`, { x: gapAt.x + away * 12, y: at(0, 0).y + 4 }, { anchor: "middle" }),
    label(`riser ${show.tape(riser)}`, beside(Math.max(at(tread, riser / 2).y, treadWords + lineHeight())), { anchor: from }),
    // In its middle, or where it is wider than the tread beside the riser.
    textWidth(treadText) + 4 <= tread * ratio
      ? label(treadText, { x: at(tread * 1.5 + back, 0).x, y: treadWords }, { anchor: "middle" })
      : label(treadText, beside(treadWords), { anchor: from }),
  ];
}

function describe({ rake, post, bore, show }: Omit<BoredPost, "scale">): Text {
  const { triangle } = rake;
  const step =
    triangle === null
      ? ""
      : ` Riser ${show.tape(triangle.riser)}, tread ${show.tape(triangle.tread)}, nosing ${show.tape(triangle.nosing.value)}: under the ${triangle.under}, ${show.tape(triangle.gap)} plumb above the line of the nosings, the largest sphere that goes in measures ${show.tape(triangle.sphere)}.`;
  return `Post ${post.id} of side ${rake.sideId}, ${show.tape(post.along)} along the side, stands plumb; bore ${bore.mark} lies at ${show.angle(Math.abs(rake.slope))} to level and is ${show.tape(bore.drilledLength)} long.${step} The tables of this sheet hold the same numbers.`;
}
