// At which heights are two runs bored through one corner post?
import { type Ordinate, ordinateDepth, runningDimensions } from "../../drawing/dimension.ts";
import { circle, polygon, strokes } from "../../drawing/shape.ts";
import { label } from "../../drawing/text.ts";
import type { Point } from "../../geometry/vector.ts";
import { nearestCrossed } from "../../plan/check-set-off.ts";
import type { Bore, Plan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import type { Text } from "../packet.ts";
import type { Show } from "../show-number.ts";
import type { Detail, Picture } from "./detail-compose.ts";
import type { EndCase } from "./detail-end-cases.ts";
import { type OnePost, onePostsOf } from "./detail-one-post.ts";
import { courseName, showOf } from "./kit.ts";

/** Such a corner post upright, seen along the side that ends at it; the heights of each run stand where its side goes off. */
export function crossingDetail(plan: Plan, left: EndCase, right: EndCase): Detail {
  const show = showOf(plan);
  const one = onePostsOf(plan).find(({ post }) => post.id === left.post.id);
  if (one === undefined) throw new RangeError(`${left.post.id} makes no corner`);
  const { post, before, after } = one;
  const { lower, upper, wood } = nearestCrossed(plan, post);
  return {
    id: `detail-heights-${post.id.toLowerCase()}`,
    title: `Corner post ${post.id}: the two runs cross in it at two heights`,
    description: `${post.id} upright, seen along side ${before.id} from its last bay. Bores of ${left.run.id} from this face: ${heightsText(plan, left, show)}. Bores of ${right.run.id}, from the face towards side ${after.id}: ${heightsText(plan, right, show)}. The nearest, ${lower.mark} and ${upper.mark}, leave ${show.tapeDown(wood)} of wood between them.`,
    notes: [
      `Seen along side ${before.id}. Dots: ${left.run.id} goes in here. Broken lines: ${right.run.id} crosses, from the face towards side ${after.id}.`,
      `They differ by ${show.tape(plan.setOff?.by ?? 0)}; least wood between two bores ${show.tapeDown(wood)} (${lower.mark}, ${upper.mark}).`,
    ],
    size: { width: 3 * post.along, height: plan.opening.top },
    draw: (scale) => draw(plan, { one, left, right }, scale.ratio),
  };
}

const boresOf = (plan: Plan, { run, post }: EndCase): readonly Bore[] =>
  plan.bores.filter(({ verticalId, runId }) => verticalId === post.id && runId === run.id).toSorted((a, b) => a.course - b.course);

const heightsText = (plan: Plan, end: EndCase, show: Show): Text =>
  boresOf(plan, end)
    .map(({ course, height }) => `course ${course} at ${show.tape(height)}`)
    .join(", ");

interface Crossed {
  readonly one: OnePost;
  readonly left: EndCase;
  readonly right: EndCase;
}

/** A bore is too small to be seen as it is. */
const DOT_mm = 0.5;
const START_mm = 0.6;
/** Below the post, for the names of the two columns. */
const NAME_mm = 3.4;

function draw(plan: Plan, { one, left, right }: Crossed, ratio: number): Picture {
  const { post, corner, before, after } = one;
  const show = showOf(plan);
  const half = (post.along / 2) * ratio;
  const place = (x: Mm, height: Mm): Point => ({ x, y: 0 - height * ratio });
  const top = plan.opening.top;
  const [ofLeft, ofRight] = [boresOf(plan, left), boresOf(plan, right)];
  // The next side goes off to the right of who looks along this one where the guard turns right.
  const sign = corner.turn > 0 ? 1 : -1;
  const column = (bores: readonly Bore[], side: 1 | -1, name: Text) => {
    const ordinates = bores.map(
      ({ course, height }): Ordinate => ({ at: height * ratio, mark: courseName(course), value: show.tape(height) }),
    );
    const depth = ordinateDepth({ ordinates, start: START_mm, lay: "outward" });
    return [
      runningDimensions({
        origin: { x: side * half, y: 0 },
        along: { x: 0, y: -1 },
        outward: { x: side, y: 0 },
        ordinates,
        start: START_mm,
        lay: "outward",
      }),
      label(name, { x: side * (half + depth / 2), y: NAME_mm }, { anchor: "middle", weight: 700 }),
    ];
  };
  const outline = [place(-half, 0), place(half, 0), place(half, top), place(-half, top)];
  return {
    parts: [
      polygon(outline, { pen: "outline", fill: "white" }),
      strokes(
        "hidden",
        ofRight.map(({ height }) => [place(-half, height), place(half, height)]),
      ),
      ...ofLeft.map(({ height }) => circle(place(0, height), DOT_mm, { pen: "edge", fill: "black" })),
      ...column(ofLeft, sign === 1 ? -1 : 1, `${left.run.id}, side ${before.id}`),
      ...column(ofRight, sign, `${right.run.id}, side ${after.id}`),
    ],
    left: [],
    right: [],
  };
}
