// Do the posts hold, bent and sheared by the cables alone and by the cables with the code's load at the top?

import type { LoadDuration } from "../tables/wood-factors.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { along, type Direction, directionsOf } from "./frame-check-axes.ts";
import type { GuardLoads, TopLoad } from "./frame-check-guard.ts";
import type { LoadedPost, PostPlace } from "./frame-check-loads.ts";
import { askRow, CABLES_ALONE, growthPart, stressRow, worstOf } from "./frame-check-row.ts";
import { type Axis, bendingLimit, type FreeLength, type Strength } from "./frame-check-strength.ts";
import { type Bent, shearOf, stressOf } from "./frame-check-stress.ts";
import type { CheckPart, FrameCheck } from "./frame-plan.ts";
import type { VerticalRole } from "./plan.ts";

export interface PostQuestion {
  readonly posts: readonly LoadedPost[];
  /** Of all these posts: they have one section. */
  readonly strength: (load: LoadDuration) => Strength | null;
  /** " of 6x6" where these posts have another section than most; else nothing. */
  readonly ofSection: string;
  readonly guard: GuardLoads;
  /** Of the guard's top over the datum, where the code's load acts. */
  readonly top: Mm;
}

const groupNames: readonly (readonly [VerticalRole, string])[] = [
  ["end", "end posts"],
  ["corner", "corner posts"],
  ["transition", "posts where the slope changes"],
  ["pair", "posts of a pair"],
  ["shared", "posts on which two runs end"],
  ["line", "line posts"],
];

/** Like posts, those that are there. */
export const postGroups = ({
  posts,
  ofSection,
}: Pick<PostQuestion, "posts" | "ofSection">): readonly { readonly name: string; readonly posts: readonly LoadedPost[] }[] =>
  groupNames
    .map(([role, name]) => ({ name: `${name}${ofSection}`, posts: posts.filter(({ post }) => post.role === role) }))
    .filter((group) => group.posts.length > 0);

export const postRows = (question: PostQuestion): readonly FrameCheck[] =>
  postGroups(question).flatMap(({ name, posts }) => {
    const group = { ...question, posts };
    return [...bendingRows(name, group), ...shearRows(name, group)];
  });

/** Cables, or cables with one load at the top, at one place of one post. */
export interface Situation {
  readonly post: LoadedPost;
  readonly place: PostPlace;
  readonly load: TopLoad | null;
  readonly towards: Direction | null;
  /** Of the load at the top into this post. */
  readonly force: Newton;
  readonly moment: Readonly<Record<Axis, number>>;
  readonly shear: Readonly<Record<Axis, Newton>>;
}

/** Every place of some posts under the cables alone. */
export const alone = (posts: readonly LoadedPost[]): readonly Situation[] =>
  posts.flatMap((post) =>
    post.places.map((place) => ({ post, place, load: null, towards: null, force: 0, moment: place.moment, shear: place.shear })),
  );

/**
 * The same with each load of the code: square to the guard it stands on one post, along the rail all posts of the side share it. Whether it
 * relieves what the cables do is not asked: its parts are added to theirs without sign.
 */
export function withLoads(posts: readonly LoadedPost[], { guard, top }: PostQuestion): readonly Situation[] {
  return guard.top.flatMap((load) =>
    posts.flatMap((post) => {
      const whole = load.on(post.tributary);
      return directionsOf(post, load).flatMap((towards): readonly Situation[] => {
        const force = whole / towards.sharing;
        const { x, y } = along(force, towards);
        return post.places.map((place) => {
          const lever = Math.max(0, top - place.height);
          const { moment, shear } = place;
          return {
            post,
            place,
            load,
            towards,
            force,
            moment: { x: moment.x + x * lever, y: moment.y + y * lever },
            shear: { x: shear.x + x, y: shear.y + y },
          };
        });
      });
    }),
  );
}

export const loadsText = ({ load, towards }: Situation): string =>
  load === null || towards === null ? CABLES_ALONE : load.text(towards.words);

const NAMES = { x: "along", y: "square" } as const;

const bentOf = ({ post, place, moment }: Situation, free: FreeLength): Bent => {
  const section = place.isBored ? post.net : post.whole;
  return { force: 0, moment, modulus_mm3: { x: section.x.modulus_mm3, y: section.y.modulus_mm3 }, free, names: NAMES };
};

function bendingRows(name: string, question: PostQuestion): readonly FrameCheck[] {
  const { posts, guard, top } = question;
  const free: FreeLength = { length: top, bends: "cantilever, load at the tip" };
  const [cables, loaded] = [alone(posts), withLoads(posts, question)];
  const permanent = question.strength(guard.permanent);
  if (permanent === null) return [askBending(name, loaded.length > 0 ? loaded : cables)];
  const byLoad = guard.top.map((load) => loaded.filter((one) => one.load === load));
  return [
    ...bendingRow(`bending of ${name} by the cables`, "post-cables", cables, { strength: permanent, free }),
    ...worstRow(
      byLoad.flatMap((situations, index) =>
        bendingRow(`bending of ${name} by cables and guard load`, "post-guard", situations, {
          strength: question.strength(guard.top[index]?.duration ?? guard.permanent) ?? permanent,
          free,
        }),
      ),
    ),
  ];
}

const worstRow = (rows: readonly FrameCheck[]): readonly FrameCheck[] => {
  const worst = worstOf(rows, ({ ratio }) => ratio);
  return worst === undefined ? [] : [worst];
};

function bendingRow(
  name: string,
  kind: string,
  situations: readonly Situation[],
  { strength, free }: { readonly strength: Strength; readonly free: FreeLength },
): readonly FrameCheck[] {
  // The plain sum of both directions finds the place; it differs from the full rule by a term that is small for posts.
  const allowed = { x: bendingLimit(strength, "x", free).value, y: bendingLimit(strength, "y", free).value };
  const worst = worstOf(situations, ({ post, place, moment }) => {
    const section = place.isBored ? post.net : post.whole;
    return moment.x / (section.x.modulus_mm3 * allowed.x) + moment.y / (section.y.modulus_mm3 * allowed.y);
  });
  if (worst === undefined) return [];
  const bent = bentOf(worst, free);
  const stressed = stressOf(strength, bent);
  const isCurved = worst.load === null && stressed.unit === "1" && strength.section.x.size !== strength.section.y.size;
  const grown = (growth: number): number =>
    stressOf(strength, { ...bent, moment: { x: growth * bent.moment.x, y: growth * bent.moment.y } }).check.ratio;
  const parts: readonly CheckPart[] = [...(worst.load === null ? [] : cableParts(worst)), ...(isCurved ? [growthPart(grown)] : [])];
  const { post, place } = worst;
  return [
    stressRow(
      {
        id: `${kind}-${post.post.id}`,
        name,
        member: post.post.id,
        height: place.height,
        loads: loadsText(worst),
        advice: "Use a larger or stronger post, or a lower tension with more spacers.",
      },
      stressed,
      parts,
    ),
  ];
}

/** What of the moments comes from the cables, and the load at the top. */
const cableParts = ({ place, force }: Situation): readonly CheckPart[] => [
  { name: "load at the top on this post", value: force, unit: "N" },
  { name: "M along, of the cables", value: place.moment.x, unit: "N mm" },
  { name: "M square, of the cables", value: place.moment.y, unit: "N mm" },
];

const resultant = ({ x, y }: Readonly<Record<Axis, number>>): number => Math.hypot(x, y);

function askBending(name: string, situations: readonly Situation[]): FrameCheck {
  const worst = worstOf(situations, ({ moment }) => resultant(moment)) as Situation;
  const { post, place, moment, shear } = worst;
  return askRow(
    {
      id: `post-ask-${post.post.id}`,
      name: `bending of ${name}`,
      member: post.post.id,
      height: place.height,
      loads: loadsText(worst),
      advice: "No design values stand here for this wood in this size: have a licensed engineer compare the demand with what it carries.",
    },
    {
      source: "nds-design-values",
      where: "tables 4A, 4B and 4D",
      demand: resultant(moment),
      unit: "N mm",
      formula: "M, to be carried",
      parts: [
        { name: "M along", value: moment.x, unit: "N mm" },
        { name: "M square", value: moment.y, unit: "N mm" },
        { name: "V", value: resultant(shear), unit: "N" },
      ],
    },
  );
}

function shearRows(name: string, question: PostQuestion): readonly FrameCheck[] {
  const { posts, guard } = question;
  const rows = [...new Set([null, ...guard.top])].flatMap((load): readonly FrameCheck[] => {
    const strength = question.strength(load?.duration ?? guard.permanent);
    const situations = load === null ? alone(posts) : withLoads(posts, { ...question, guard: { ...guard, top: [load] } });
    const sheared = (one: Situation) => ({
      force: resultant(one.shear),
      netArea_mm2: (one.place.isBored ? one.post.net : one.post.whole).area_mm2,
      axis: one.shear.x >= one.shear.y ? ("x" as const) : ("y" as const),
    });
    const worst = worstOf(situations, ({ place, post, shear }) => resultant(shear) / (place.isBored ? post.net : post.whole).area_mm2);
    if (strength === null || worst === undefined) return [];
    return [
      stressRow(
        {
          id: `post-shear-${worst.post.post.id}`,
          name: `shear of ${name}`,
          member: worst.post.post.id,
          height: worst.place.height,
          loads: loadsText(worst),
          advice: "Use a larger post, or a lower tension with more spacers.",
        },
        shearOf(strength, sheared(worst)),
      ),
    ];
  });
  return worstRow(rows);
}
