// Where does a cable leave one member of a bay and enter the next, and how does one post make a corner?

import type { CornerPost } from "../plan/corner-post.ts";
import { seenFrom } from "../plan/corner-post.ts";
import { restOf } from "../plan/pier.ts";
import type { Plan, Vertical } from "../plan/plan.ts";
import { derived, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

/** Part of a formula with what it names. */
export interface Mouth {
  readonly term: string;
  readonly inputs: readonly Input[];
}

/** A member along its side. */
const fullWidth = ({ at }: Reader, { id }: Vertical, symbol: string): Input => at(symbol, `${id} along its side`, `verticals.${id}.along`);

/** A member along its side, as far as it holds a cable: of a sleeved post the wood alone. */
export const heldWidth = (reader: Reader, member: Vertical, symbol: string): Input =>
  member.core === undefined
    ? fullWidth(reader, member, symbol)
    : reader.at(symbol, `wood in the sleeve of ${member.id}, along its side`, `verticals.${member.id}.core.along`);

/** The face of the member to the left of a bay, in stations of the bay's side. */
export function leftEndOf(reader: Reader, member: Vertical, sideId: string, width: typeof fullWidth = fullWidth): Mouth {
  const { at } = reader;
  const { id, corner } = member;
  if (corner?.nextId === sideId) {
    return { term: "c1", inputs: [at("c1", `from the corner point to where the cable leaves ${id}`, `verticals.${id}.corner.setback`)] };
  }
  return {
    term: "(x1 + w1 / 2)",
    inputs: [at("x1", `station of ${id}`, `verticals.${id}.station`), width(reader, member, "w1")],
  };
}

/** The face of the member to the right of a bay. */
export function rightEndOf(reader: Reader, member: Vertical, width: typeof fullWidth = fullWidth): Mouth {
  const { at } = reader;
  const { id, corner, sideId } = member;
  if (corner !== undefined) {
    return {
      term: "L - c2",
      inputs: [
        at("L", `length of side ${sideId}`, `sides.${sideId}.length`),
        at("c2", `from where the cable enters ${id} to the corner point`, `verticals.${id}.corner.setback`),
      ],
    };
  }
  return {
    term: "x2 - w2 / 2",
    inputs: [at("x2", `station of ${id}`, `verticals.${id}.station`), width(reader, member, "w2")],
  };
}

/** Station of a post on a side that it stands on, by its path. */
export const stationPath = ({ id, corner }: Vertical, sideIndex: number): string =>
  corner?.nextIndex === sideIndex ? `verticals.${id}.corner.nextStation` : `verticals.${id}.station`;

/** Centre to centre of the posts that stand next to each other on a side. */
export const postDistances = ({ verticals }: Pick<Plan, "verticals">): readonly number[] => {
  const posts = verticals.filter(({ kind }) => kind !== "spacer");
  return posts.slice(1).flatMap((post, index) => {
    const before = posts[index];
    if (before === undefined) return [];
    const seen = seenFrom(before, post.sideIndex);
    return seen.sideIndex === post.sideIndex ? [restOf(post) - restOf(seen)] : [];
  });
};

function cornerOf({ plan }: Reader, id: string | undefined): { readonly post: Vertical; readonly corner: CornerPost } {
  const post = must(
    plan.verticals.find((one) => one.id === id),
    `post ${id}`,
  );
  return { post, corner: must(post.corner, `corner of one post at ${id}`) };
}

const cornerRule = (field: string, says: string, working: (reader: Reader, id: string, corner: CornerPost) => Working): Rule =>
  rule(`verticals.*.corner.${field}`, says, (reader, [id = ""]) => working(reader, id, cornerOf(reader, id).corner));

const square = ({ at }: Reader, id: string): Input => at("w", `${id}, a square post`, `verticals.${id}.along`);
const turn = ({ at }: Reader, id: string): Input => at("t", `turn of the corner at ${id}`, `verticals.${id}.corner.turn`);

/** Of the two pulls of the runs that end on a corner post. */
const bothPulls =
  (field: "pull_target" | "pull_high") =>
  ({ at, plan }: Reader, [id = ""]: readonly string[]): Working => {
    const { runIds } = must(
      plan.cornerPulls.find(({ postId }) => postId === id),
      `pull of both runs on ${id}`,
    );
    return {
      formula: "sqrt(a ^ 2 + b ^ 2 - 2 * a * b * cos(t))",
      inputs: [
        at("a", `pull of ${runIds[0]}`, `pulls.${id}/${runIds[0]}.${field}`),
        at("b", `pull of ${runIds[1]}`, `pulls.${id}/${runIds[1]}.${field}`),
        at("t", `turn of the corner at ${id}`, `verticals.${id}.corner.turn`),
      ],
      origin: derived("resultant of two forces, one back along a side, one onward along the next"),
    };
  };

export const cornerRules: readonly Rule[] = [
  rule("cornerPulls.*.pull_target", "Pull of both runs on corner post {} together, at their targets", bothPulls("pull_target")),
  rule("cornerPulls.*.pull_high", "Pull of both runs on corner post {} together, at their greatest readings", bothPulls("pull_high")),
  cornerRule("turn", "Turn of the corner that {} makes by itself", ({ at, plan }, id) => {
    const { sideId } = must(
      plan.verticals.find((one) => one.id === id),
      id,
    );
    return { formula: "t", inputs: [at("t", `turn of side ${sideId}`, `sides.${sideId}.turn`)], origin: derived("plan geometry") };
  }),
  cornerRule("chord", "Length of the bore through {}, which makes a corner by itself", (reader, id, { faces, isSetOff }) =>
    faces === "opposite" || isSetOff
      ? { formula: "w", inputs: [square(reader, id)], origin: derived("from the middle of one face to that of the opposite one") }
      : {
          formula: "w / sqrt(2)",
          inputs: [square(reader, id)],
          origin: derived("on the mitre, from the middle of one face to that of the next"),
        },
  ),
  cornerRule("setback", "From the corner point to either mouth of the bore through {}, along the cable", (reader, id, { isSetOff }) =>
    isSetOff
      ? {
          formula: "w / sqrt(2) / (2 * cos(t / 2))",
          inputs: [square(reader, id), turn(reader, id)],
          origin: derived("both faces stand astride of the corner point, in whose middles the runs go in"),
        }
      : {
          formula: "c / (2 * cos(t / 2))",
          inputs: [reader.at("c", "length of the bore", `verticals.${id}.corner.chord`), turn(reader, id)],
          origin: derived("both mouths lie on the lines of their sides, and the bore bisects the turn"),
        },
  ),
  cornerRule(
    "inset",
    "From the corner point to the middle of {}, on the bisector, positive to the inside of the turn",
    (reader, id, { faces }) => ({
      formula:
        faces === "opposite" ? "nearest(s * sin(abs(t) / 2), 0.000000001)" : "nearest(s * sin(abs(t) / 2) - w / sqrt(8), 0.000000001)",
      inputs: [
        reader.at("s", "from the corner point to a mouth", `verticals.${id}.corner.setback`),
        turn(reader, id),
        ...(faces === "opposite" ? [] : [square(reader, id)]),
      ],
      origin: derived(
        faces === "opposite" ? "the bore goes through the middle of the post" : "the middle of the post lies outside of the bore",
      ),
    }),
  ),
  cornerRule("nextStation", "Middle of {} seen square to the side that begins at it, from its start", (reader, id) => ({
    formula: "i * sin(abs(t) / 2)",
    inputs: [reader.at("i", "from the corner point to the middle of the post", `verticals.${id}.corner.inset`), turn(reader, id)],
    origin: derived("plan geometry"),
  })),
  cornerRule("twist", "Turn of {} from square to either of its sides", (reader, id, { faces }) => ({
    formula: faces === "opposite" ? "abs(t) / 2" : "abs(t) / 2 - pi / 4",
    inputs: [turn(reader, id)],
    origin: derived("it stands alike to both sides"),
  })),
];
