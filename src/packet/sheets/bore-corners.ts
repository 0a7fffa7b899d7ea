// How is one post bored that makes a corner by itself?
import { type CornerPost, endsOnFaces } from "../../plan/corner-post.ts";
import type { Bore, Plan } from "../../plan/plan.ts";
import type { Cell, Column, Text } from "../packet.ts";
import { column, listed, type SheetContext, strong, unique } from "./kit.ts";
import { raisedBy } from "./set-off-words.ts";

/** Columns of the table of bores where a guard has such a corner. */
export const cornerColumns: readonly Column[] = [
  column("skew", "Off square", 0.065, { sub: "from above" }),
  column("exit", "Out", 0.08, { sub: "face" }),
  column("through", "Long", 0.065),
];

export const cornerCells = (
  { skew, through, drilledLength }: Bore,
  corner: CornerPost | undefined,
  show: SheetContext["show"],
): readonly Cell[] => [
  skew === 0 ? "square" : strong(show.angle(skew)),
  through ? (corner === undefined || corner.isSetOff ? "opposite" : towards(corner.nextId)) : "blind",
  show.tape(drilledLength),
];

/** The face that the bit goes in, in words that hold at a corner too. */
export const entryWords = ({ entryFace }: Pick<Bore, "entryFace">, corner: CornerPost | undefined): Text =>
  corner === undefined ? entryFace : towards(entryFace === "left" ? corner.homeId : corner.nextId);

/** One of the two faces of one post at a corner that are bored. */
const towards = (sideId: Text): Text => `to ${sideId}`;

/** How one post at a corner is bored. */
export function cornerBoreRules({ plan, show }: SheetContext): readonly Text[] {
  const all = plan.verticals.flatMap(({ id, corner }) => (corner === undefined ? [] : [{ id, corner }]));
  const posts = all.filter(({ corner }) => corner.isPassed);
  const ends = all.filter(({ corner }) => endsOnFaces(corner));
  const crossed = all.filter(({ corner }) => corner.isSetOff);
  const [mitred, straight] = (["adjacent", "opposite"] as const).map((faces) => posts.filter(({ corner }) => corner.faces === faces));
  const outside = boredFromOutside(plan);
  const named = (some: typeof all | undefined): Text =>
    listed(
      (some ?? []).map(({ id, corner }) => `${id} (from the face towards side ${corner.homeId} to that towards side ${corner.nextId})`),
    );
  return [
    ...(mitred?.length
      ? [
          `**${named(mitred)}: bored on the mitre**, level, ${show.angle(Math.PI / 4)} off square, from the middle of one face to the middle of the next. Mark and punch the middles on both faces. Clamp on a guide block with a hole at ${show.angle(Math.PI / 4)}, its hole on the punch mark and leaning towards the other face. Bore slowly, until the bit comes out on the mark there; first through one scrap of the same section. More than ${show.tape(MITRE_OFF_mm)} off the mark at the other face: stop and ask.`,
        ]
      : []),
    ...(outside.length === 0
      ? []
      : [`**${listed(outside)}, at an outside corner: the drill is held outside the guard**, ${OUTSIDE_STAND}.`]),
    ...(ends.length > 0
      ? [
          `**${listed(ends.map(({ id, corner }) => `${id} (faces towards sides ${corner.homeId} and ${corner.nextId})`))}: a hole in the middle of each of the two faces, at the same heights, square to its face.** The holes run towards each other: a stop on the bit${plan.job.posts.section.wall === null ? ", and never bore deeper" : "; each through its own wall alone"}.`,
        ]
      : []),
    ...(crossed.length > 0
      ? [
          `**${listed(crossed.map(({ id, corner }) => `${id} (faces towards sides ${corner.homeId} and ${corner.nextId})`))}: bored right through from each of the two faces, in its middle, square to it, each face at the heights of its own side.** The bores cross inside, ${raisedBy({ plan, show })} apart. Mark both faces and compare them side by side before the first hole. A drill stand: more than ${show.tape(MITRE_OFF_mm)} off the middle or off its height where it comes out: stop and ask. A split that runs into a bore: stop, do not pull on it, ask the engineer.`,
        ]
      : []),
    ...(straight?.length
      ? [`${named(straight)}: the post stands turned between its two sides and is bored square to its face, right through.`]
      : []),
  ];
}

/** Posts at corners that stand turned, half-way between their two sides. */
export const turnedIds = ({ verticals }: Plan): readonly string[] =>
  verticals.flatMap(({ id, corner }) => (corner === undefined || corner.twist === 0 ? [] : [id]));

/** Posts whose bores join the middles of two faces that meet. */
export const mitredIds = ({ bores }: Plan): readonly string[] =>
  unique(bores.flatMap(({ skew, verticalId }) => (skew === 0 ? [] : [verticalId])));

/** For the sheet of questions: who is to say that such a post does not split is named there too. */
export function mitreQuestion(plan: Plan): readonly (readonly [Text, Text])[] {
  const ids = mitredIds(plan);
  if (ids.length === 0) return [];
  return [
    [
      `Does the wood of ${listed(ids)} between the bores on the mitre and the edge hold the push of the bend, or which bolts or screws across the bores hold it (engineer)?`,
      "not computed: asked here; else two posts at the corner",
    ],
  ];
}

/**
 * Those of them that stand at an outside corner: a straight bit through the middles of the two faces that look along the guard leaves the post
 * on the far side of both its lines, whichever face it is begun on, so that the drill is held outside.
 */
export const boredFromOutside = (plan: Plan): readonly string[] =>
  mitredIds(plan).filter((mitred) => plan.verticals.some(({ id, corner }) => id === mitred && corner !== undefined && corner.turn > 0));

/** Where the drill is held, for those who stand on the deck. */
export const OUTSIDE_STAND: Text = "from a ladder or a platform there, nobody leaning out over the edge";

/** How far from its mark a bore on the mitre may come out: 1/8 in (common practice, no source). */
export const MITRE_OFF_mm = 3.175;
