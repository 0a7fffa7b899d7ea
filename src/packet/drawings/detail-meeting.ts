// How do two runs end next to each other: on two posts, or on one post with bores set off sideways?

import { dimension } from "../../drawing/dimension.ts";
import { strokes } from "../../drawing/shape.ts";
import { isOnFace } from "../../plan/face-end.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { type Detail, type Note, type Picture, placeAt } from "./detail-compose.ts";
import { boreText, fittingNotes } from "./detail-end.ts";
import type { EndCase } from "./detail-end-cases.ts";
import { endFitting, endHoles } from "./detail-ends.ts";
import { reachBefore } from "./detail-face.ts";
import { CABLE_mm, cutMember, type EndPoints } from "./detail-parts.ts";
import type { Place } from "./detail-place.ts";
import { leftFace, rightFace, showOf } from "./kit.ts";

export function meetingDetail(plan: Plan, left: EndCase, right: EndCase): Detail {
  const show = showOf(plan);
  const onePost = left.post.id === right.post.id;
  const where = onePost ? `on ${left.post.id}` : `between ${left.post.id} and ${right.post.id}`;
  return {
    id: `detail-meeting-${left.run.id.toLowerCase()}-${right.run.id.toLowerCase()}`,
    title: `Runs ${left.run.id} and ${right.run.id} meet ${where}`,
    description:
      `Level cut where run ${left.run.id} ends and run ${right.run.id} begins. At ${left.post.id}: ${boreText(left.bore, plan)}. At ${right.post.id}: ${boreText(right.bore, plan)}. ` +
      (onePost && left.end.offset === right.end.offset
        ? "The two holes lie on one line, each from its own face."
        : onePost
          ? `The bore of ${left.run.id} stands ${offMiddle(plan, left, show)}; that of ${right.run.id} ${offMiddle(plan, right, show)}.`
          : `The posts stand ${show.tape(leftFace(right.post) - rightFace(left.post))} apart.`),
    notes: [],
    size: {
      width: onePost
        ? left.post.along + reachBefore(plan, left.end) + reachBefore(plan, right.end)
        : rightFace(right.post) - leftFace(left.post) + 2 * CABLE_mm,
      height: left.post.across,
    },
    draw: (scale) => (onePost ? drawOne(plan, left, right, scale.ratio, show) : drawTwo(plan, left, right, scale.ratio, show)),
  };
}

function drawTwo(plan: Plan, left: EndCase, right: EndCase, ratio: number, show: Show): Picture {
  const middle = (rightFace(left.post) + leftFace(right.post)) / 2;
  const placeLeft = placeAt(ratio, left.post.station - middle);
  const placeRight = placeAt(ratio, right.post.station - middle);
  const [a, b] = [
    endFitting(plan, left.end, left.post, placeLeft, left.bore),
    endFitting(plan, right.end, right.post, placeRight, right.bore),
  ];
  const low = placeLeft(0, -left.post.across / 2).y;
  const at = (x: number): { readonly x: number; readonly y: number } => ({ x: x * ratio, y: low });
  const half = (leftFace(right.post) - rightFace(left.post)) / 2;
  return {
    parts: [
      ...cutMember(plan, left.post, placeLeft, endHoles(left.end, left.post, left.bore)),
      ...cutMember(plan, right.post, placeRight, endHoles(right.end, right.post, right.bore)),
      ...a.parts,
      ...b.parts,
      dimension({ from: at(-half - left.post.along), to: at(-half), offset: 5, text: show.tape(left.post.along) }),
      dimension({ from: at(-half), to: at(half), offset: 5, text: show.tape(2 * half) }),
      dimension({ from: at(half), to: at(half + right.post.along), offset: 5, text: show.tape(right.post.along) }),
    ],
    left: [
      { target: placeLeft(-left.post.along * 0.3, left.post.across * 0.36), text: `post ${left.post.id}, end of run ${left.run.id}` },
      { target: a.points.bore, text: boreText({ ...left.bore, counterbore: null }, plan) },
      ...fittingNotes(plan, left, a.points, show),
    ],
    right: [
      { target: placeRight(right.post.along * 0.3, right.post.across * 0.36), text: `post ${right.post.id}, start of run ${right.run.id}` },
      { target: b.points.bore, text: boreText({ ...right.bore, counterbore: null }, plan) },
      ...fittingNotes(plan, right, b.points, show),
    ],
  };
}

function drawOne(plan: Plan, left: EndCase, right: EndCase, ratio: number, show: Show): Picture {
  const { post } = left;
  const place = placeAt(ratio);
  const [a, b] = [endFitting(plan, left.end, post, place, left.bore), endFitting(plan, right.end, post, place, right.bore)];
  const half = post.along / 2;
  return {
    parts: [
      ...cutMember(plan, post, place, [...endHoles(left.end, post, left.bore), ...endHoles(right.end, post, right.bore)]),
      ...a.parts,
      ...b.parts,
      strokes("centre", [[place(-half - 30, 0), place(half + 30, 0)]]),
      dimension({ from: place(-half, -post.across / 2), to: place(half, -post.across / 2), offset: 5, text: show.tape(post.along) }),
    ],
    ...notesOfOne(plan, { left, right, a: a.points, b: b.points, place }, show),
  };
}

interface OnOne {
  readonly left: EndCase;
  readonly right: EndCase;
  readonly a: EndPoints;
  readonly b: EndPoints;
  readonly place: Place;
}

/** Fittings behind a post stand on the far side of their run, ends on faces on its own. */
function notesOfOne(plan: Plan, { left, right, a, b, place }: OnOne, show: Show): Pick<Picture, "left" | "right"> {
  const { post } = left;
  const named = (one: EndCase, points: EndPoints): readonly Note[] =>
    fittingNotes(plan, one, points, show).map((note) => ({ ...note, text: `${one.run.id}: ${note.text}` }));
  const boreNote = (one: EndCase, points: EndPoints): Note => ({
    target: points.bore,
    text: `${one.run.id}: ${boreText({ ...one.bore, counterbore: null }, plan)}${one.end.offset === 0 ? "" : `, ${offMiddle(plan, one, show)}`}`,
  });
  const [ofLeft, ofRight] = [named(left, a), named(right, b)];
  const crossed = !isOnFace(left.end) && !isOnFace(right.end);
  return {
    left: [
      { target: place(-post.along * 0.3, post.across * 0.4), text: `post ${post.id}, ${post.sectionName}` },
      ...(crossed ? ofRight : ofLeft),
      boreNote(left, a),
    ],
    right: [boreNote(right, b), ...(crossed ? ofLeft : ofRight)],
  };
}

const offMiddle = ({ job }: Plan, { end }: EndCase, show: Show): Text =>
  `${show.tape(Math.abs(end.offset))} off the middle of the post, ${end.offset < 0 ? "towards" : "away from"} the ${floorWord(job)}`;
