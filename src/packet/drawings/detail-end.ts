// How is the end of a run put together in its post, and what room is behind it?

import { dimension, fitsBetween } from "../../drawing/dimension.ts";
import { hatched, type Part, strokes } from "../../drawing/shape.ts";
import type { Point } from "../../geometry/vector.ts";
import { bevelOf, thickEdge } from "../../plan/end-fitting.ts";
import { goesThroughOneWall, isOnFace } from "../../plan/face-end.ts";
import { pierNamed } from "../../plan/pier.ts";
import type { Bore, EndKind, Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import { sleeveHoleText, sunkName } from "../sheets/sleeve-words.ts";
import type { Show } from "../show-number.ts";
import { endName, faceName } from "../wording.ts";
import { type Detail, type Note, type Picture, placeAt } from "./detail-compose.ts";
import type { EndCase } from "./detail-end-cases.ts";
import { endFitting, endHoles } from "./detail-ends.ts";
import { faceNotes, reachBefore } from "./detail-face.ts";
import { cutMember, type EndPoints, reachBehind, sectionOf, signOf } from "./detail-parts.ts";
import { type Place, tiltedPlace } from "./detail-place.ts";
import { showOf } from "./kit.ts";

const titles: Readonly<Record<EndKind, Text>> = { stud: "Stud end", grip: "Grip end", face: "Face end", anchor: "Anchor end" };

export function endDetail(plan: Plan, cases: readonly [EndCase, ...EndCase[]]): Detail {
  const [first] = cases;
  const { end, bore } = first;
  const show = showOf(plan);
  const isTilted = bore.angle !== 0;
  const posts = cases.map(({ post }) => post.id).join(", ");
  const kind = endName[end.kind];
  const behind = behindText(first, show);
  return {
    id: `detail-${end.kind}-end-${first.post.id.toLowerCase()}`,
    title: `${titles[end.kind]} at ${posts}`,
    description: `${isTilted ? "Plumb cut along the cable" : "Level cut"} through ${first.post.kind === "pier" ? "pier" : "end post"} ${first.post.id} with a ${kind}: ${boreText(bore, plan)}. ${behind}. The table of bores gives every height.`,
    notes: [
      ...(first.post.kind === "pier" ? [pierNote(plan, first.post.id, show)] : []),
      ...(isTilted ? ["Cut plumb along the cable and seen from the inside."] : []),
      ...sameText(cases),
      ...(first.gap === null || first.against === "wall" ? [] : [`Hatched behind the gap: the ${first.against}.`]),
    ],
    size: {
      width: reachBefore(plan, end) + first.post.along + Math.max(first.gap ?? 0, reachBehind(end)),
      height: heightOf(plan, first),
    },
    draw: (scale) => drawEnd(plan, first, placeAt(scale.ratio), show),
  };
}

function pierNote(plan: Plan, id: string, show: Show): Text {
  const { along, across } = pierNamed(plan.job, id);
  return `Of the pier, ${show.tape(along)} along the guard and ${show.tape(across)} square to it, the part about an anchor is drawn.`;
}

/** Of the piece of post that is drawn: across it in a level cut; in a plumb one as much as its fitting needs. */
function heightOf({ job }: Plan, { end, post, bore }: EndCase): Mm {
  const reach = post.along / 2 / Math.cos(bore.angle) + reachBehind(end);
  return Math.max(post.across, 2 * reach * Math.sin(Math.abs(bore.angle)) + 1.2 * bevelOf(end.kind, 0, job).across);
}

/** Labels before the post and behind it: on each side what stands there. */
function byFaces(
  plan: Plan,
  one: EndCase,
  points: EndPoints,
  show: Show,
  onPost: Point,
): readonly [front: readonly Note[], back: readonly Note[]] {
  const { post, bore, end } = one;
  const fitting = fittingNotes(plan, one, points, show);
  const ofPost: Note = {
    target: onPost,
    text: post.kind === "pier" ? `pier ${post.id}, ${post.sectionName}` : `post ${post.id}, ${post.sectionName}`,
  };
  const cable: Note = { target: points.cable, text: `cable ${show.fine(plan.job.cable.diameter)}` };
  const hole: Note = { target: points.bore, text: boreText({ ...bore, counterbore: null }, plan) };
  if (!isOnFace(end)) return [[ofPost, cable, hole], fitting];
  const inPost = fitting.filter(({ target }) => target === points.tip);
  return [
    [cable, ...fitting.filter(({ target }) => target !== points.tip)],
    [ofPost, ...inPost, hole],
  ];
}

function sameText([first, ...others]: readonly [EndCase, ...EndCase[]]): readonly Text[] {
  if (others.length === 0) return [];
  const idsOf = (isMirrored: boolean): readonly string[] =>
    others.filter(({ end }) => (end.backFace !== first.end.backFace) === isMirrored).map(({ post }) => post.id);
  const [same, mirrored] = [idsOf(false), idsOf(true)];
  const parts = [
    ...(same.length === 0 ? [] : [`${same.join(", ")} the same`]),
    ...(mirrored.length === 0 ? [] : [`${mirrored.join(", ")} mirrored, left for right`]),
  ];
  return [`Drawn for ${first.post.id}; ${parts.join("; ")}.`];
}

function drawEnd(plan: Plan, one: EndCase, place: Place, show: Show): Picture {
  const { end, bore, gap } = one;
  const sign = signOf(end);
  const post = { ...one.post, across: heightOf(plan, one) };
  const tilted = { ...bore, tilt: bore.angle };
  const half = post.along / 2;
  const fitting = endFitting(plan, end, post, place, tilted);
  const low = place(0, -post.across / 2).y;
  const wall = gap === null ? [] : wallBehind(place, sign, half + gap, post.across / 2);
  // Where a text has no room between its ends it goes to the side on which nothing else stands.
  const across = (a: Mm, b: Mm, y: Mm, { text, beyond }: { readonly text: Text; readonly beyond: "from" | "to" }): Part => {
    const [from, to] = [Math.min(place(a, 0).x, place(b, 0).x), Math.max(place(a, 0).x, place(b, 0).x)];
    return dimension({ from: { x: from, y }, to: { x: to, y }, offset: 5, text, ...(fitsBetween(text, to - from) ? {} : { beyond }) });
  };
  const dimensions = [
    ...(post.kind === "pier" ? [] : [across(-half, half, low, { text: show.tape(post.along), beyond: sign < 0 ? "to" : "from" })]),
    ...(gap === null || gap === 0
      ? []
      : [
          across(sign * half, sign * (half + gap), low, {
            text: `gap ${show.tape(gap)}`,
            beyond: sign < 0 ? "from" : "to",
          }),
        ]),
    ...(bore.counterbore === null ? [] : depthOf(one, bore.counterbore, place, show)),
    ...(bore.through || (post.kind === "post" && sectionOf(plan, post).wall !== null) ? [] : [blindDepth(one, place, show)]),
  ];
  const { points } = fitting;
  const [front, back] = byFaces(plan, one, points, show, place((isOnFace(end) ? 0.6 : -0.6) * sign * half, post.across * 0.36));
  const parts = [
    ...cutMember(plan, post, place, endHoles(end, post, tilted), bore.angle === 0 ? "level" : "plumb"),
    ...fitting.parts,
    ...wall,
    ...dimensions,
  ];
  return { parts, left: sign < 0 ? back : front, right: sign < 0 ? front : back };
}

/** Depth of a blind hole, above the post. */
function blindDepth({ end, post, bore }: EndCase, place: Place, show: Show): Part {
  const sign = signOf(end);
  const [from, to] = [-post.along / 2, -post.along / 2 + bore.drilledLength].map((x) => place(sign * x, post.across / 2)) as [Point, Point];
  const text = show.tape(bore.drilledLength);
  return dimension({ from: from.x < to.x ? from : to, to: from.x < to.x ? to : from, offset: -5, text });
}

/** Depth of a counterbore: beside it in the post, or above the post where it has no room; on a slope its note alone says it then. */
function depthOf({ end, post, bore }: EndCase, counterbore: NonNullable<Bore["counterbore"]>, place: Place, show: Show): readonly Part[] {
  const sign = signOf(end);
  if (bore.angle !== 0) {
    const along = tiltedPlace(place, bore.angle);
    const face = post.along / 2 / Math.cos(bore.angle);
    const [floor, mouth] = [
      along(sign * (face - counterbore.depth), counterbore.diameter / 2),
      along(sign * face, counterbore.diameter / 2),
    ];
    const [from, to] = sign < 0 ? [mouth, floor] : [floor, mouth];
    const depth = show.tape(counterbore.depth);
    return fitsBetween(depth, Math.hypot(to.x - from.x, to.y - from.y)) ? [dimension({ from, to, offset: -5, text: depth })] : [];
  }
  const ends = [place((sign * post.along) / 2, 0).x, place(sign * (post.along / 2 - counterbore.depth), 0).x];
  const [from, to] = [Math.min(...ends), Math.max(...ends)];
  const text = show.tape(counterbore.depth);
  const fits = fitsBetween(text, to - from);
  const y = place(0, fits ? end.offset + counterbore.diameter / 2 : post.across / 2).y;
  return [
    dimension({
      from: { x: from, y },
      to: { x: to, y },
      offset: -5,
      text,
      ...(fits ? {} : { beyond: sign < 0 ? "from" : "to" }),
    }),
  ];
}

export function fittingNotes(plan: Plan, { end, post, bore, gap, against }: EndCase, points: EndPoints, show: Show): readonly Note[] {
  if (isOnFace(end)) return faceNotes(plan, end, points, show);
  const { stud, grip } = plan.job.fittings;
  const washer: Note = {
    target: points.washer,
    text: `washer ${show.fine(end.kind === "stud" ? stud.washerDiameter.value : grip.washerDiameter.value)}`,
  };
  const bevel = bevelOf(end.kind, bore.angle, plan.job);
  const bevelled: readonly Note[] =
    end.seat === 0
      ? []
      : [
          {
            target: points.bevel,
            text: `bevelled washer, thick edge ${thickEdge(end.backFace, bore.angle)}: ${show.fine(bevel.thin)} to ${show.fine(bevel.thick)}`,
          },
        ];
  const room = gap === null ? behindText({ end, gap, against }, show) : null;
  const free: readonly Note[] = room === null ? [] : [{ target: points.tip, text: room.toLowerCase() }];
  const onWood = bore.sleeveHole === undefined ? "" : `, on the ${plan.job.posts.section.name}`;
  const sunk: readonly Note[] =
    bore.counterbore === null
      ? []
      : [
          {
            target: points.counterbore,
            text: `${sunkName(bore)} ${show.fine(bore.counterbore.diameter)}, ${show.tape(bore.counterbore.depth)} deep from the ${faceName[bore.counterbore.face]}`,
          },
        ];
  if (end.kind === "stud") {
    return [
      { ...washer, text: `${washer.text}${onWood}` },
      ...sunk,
      ...bevelled,
      { target: points.fitting, text: end.pulls ? `nut, ${post.id}: tightened here` : `nut, ${post.id}: holds` },
      {
        target: points.tip,
        text: `stud ${stud.thread}, thread ${show.tape(stud.threadLength.value)}${room === null ? "" : `; ${room.toLowerCase()}`}`,
      },
    ];
  }
  return [
    { ...washer, text: `${washer.text} under the collar${onWood}` },
    ...bevelled,
    ...sunk,
    { target: points.fitting, text: `body of the fitting, ${show.tape(grip.bodyLength.value)}, in the post` },
    ...(free.length > 0
      ? [{ target: points.tip, text: `cable, cut off last; ${room?.toLowerCase()}` }]
      : [{ target: points.tip, text: "cable, cut off last" }]),
  ];
}

export function boreText(bore: Bore, plan: Plan): Text {
  const { diameter, counterbore, entryFace, angle, through, drilledLength } = bore;
  const show = showOf(plan);
  if (goesThroughOneWall(bore, plan.job)) return `hole ${show.diameterOne(diameter)} through the wall of the ${faceName[entryFace]} alone`;
  return !through
    ? `blind hole ${show.diameterOne(diameter)}, ${show.fine(drilledLength)} deep from the ${faceName[entryFace]}`
    : `bore ${show.fine(diameter)} right through from the ${faceName[entryFace]}${angle === 0 ? "" : `, ${show.angle(Math.abs(angle))} off level`}${sleeveHoleText(bore, show)}${counterbore === null ? "" : `, ${sunkName(bore)} ${show.fine(counterbore.diameter)}, ${show.tape(counterbore.depth)} deep from the ${faceName[counterbore.face]}`}`;
}

function behindText({ end, gap, against }: Pick<EndCase, "end" | "gap" | "against">, show: Show): Text {
  const reach =
    end.access === "drill"
      ? "A drill reaches the back"
      : end.access === "hand"
        ? "Only a hand with a wrench reaches the back"
        : "Nothing reaches the back";
  return gap === null ? reach : `${reach}: ${show.tape(gap)} to the ${against}`;
}

/** The wall is cut off a little behind its face, at every scale. */
const WALL_mm = 4;

function wallBehind(place: Place, sign: 1 | -1, x: Mm, halfAcross: Mm): readonly Part[] {
  const [top, bottom] = [place(sign * x, halfAcross), place(sign * x, -halfAcross)];
  const back = top.x + sign * WALL_mm;
  return [
    hatched({ outlines: [[top, bottom, { x: back, y: bottom.y }, { x: back, y: top.y }]], spacing: 1.4, angle: Math.PI / 4 }),
    strokes("outline", [[top, bottom]]),
  ];
}
