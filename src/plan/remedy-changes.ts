// Which changes of a guard may make its frame hold, in the order of what they cost?
import type { Job, Rail, Section, Tightening } from "../job/job.ts";
import type { Wood } from "../job/site.ts";
import { fromJob } from "../sources/cited.ts";
import { feet, inches } from "../tables/customary.ts";
import { deeperSpacers, HAIR, largerTubes, lumber, type Size, sectionOf, tapeText } from "./remedy-sizes.ts";

/** What a change sets. */
export type Family = "tension" | "allowance" | "spacers" | "spacing" | "posts" | "wood" | "rails" | "size of spacers";

export interface Change {
  /** Changes that set the same exclude each other. */
  readonly sets: readonly Family[];
  /** Rises with what the change costs. */
  readonly cost: number;
  /** In words: "posts of 6x6 instead of 4x4". */
  readonly text: string;
  /** Key and value for the job file. */
  readonly write: string;
  readonly apply: (job: Job) => Job;
}

/** Which members fail, so that only what can help them is tried. */
export interface Failing {
  readonly posts: boolean;
  readonly topRail: boolean;
  readonly bottomRail: boolean;
  readonly spacers: boolean;
}

type Draft = Omit<Change, "cost">;

export function changesOf(job: Job, failing: Failing): readonly Change[] {
  const drafts: readonly Draft[] = [
    ...(failing.spacers ? spacerSizes(job) : []),
    ...bandChanges(job),
    ...spacerChanges(job),
    ...spacingChanges(job),
    ...(failing.posts ? postChanges(job) : []),
    // Cheap to build, but somebody has to come back for it on every warm day.
    ...allowanceChanges(job),
    ...woodChanges(job),
    ...railChanges(job, failing),
  ];
  return drafts.map((draft, index) => ({ ...draft, cost: index + 1 }));
}

const LOW_band = 0.05;

/** Readings that miss their target by less let the target be lower. */
const bandChanges = ({ tightening }: Job): readonly Draft[] =>
  tightening.band.value <= LOW_band
    ? []
    : [
        {
          sets: ["tension"],
          text: "readings within 5 % of their targets, which may then be lower",
          write: "tightening: band: 5 %",
          apply: (job) => ({ ...job, tightening: { ...job.tightening, band: fromJob(LOW_band, "tightening: band") } }),
        },
      ];

/** The target as low as the criterion lets it be. */
const allowanceChanges = ({ tightening: { allowFor, criterion } }: Job): readonly Draft[] =>
  criterion.kind === "stated" || allowFor.value === "nothing"
    ? []
    : [
        {
          sets: ["allowance"],
          text: "a target that makes up for no loss, with a visit when the weather slackens it and after drying",
          write: "tightening: allow for: nothing",
          apply: (job) => ({
            ...job,
            tightening: {
              ...job.tightening,
              allowFor: fromJob<Tightening["allowFor"]["value"]>("nothing", "tightening: allow for"),
            },
          }),
        },
      ];

const freeLengths = { inch: [inches(24), inches(18)], mm: [600, 450] } as const;
const spacings = { inch: [feet(5), feet(4)], mm: [1500, 1200] } as const;

/** More spacers shorten the free length, and a shorter span needs less tension. */
const spacerChanges = (job: Job): readonly Draft[] =>
  job.tightening.criterion.kind === "stated" || job.tightening.criterion.kind === "table"
    ? []
    : freeLengths[job.units]
        .filter((free) => free < job.spacers.free_max.value)
        .map((free) => ({
          sets: ["spacers"],
          text: `free lengths of at most ${tapeText(free, job)}, and the lower tension that they need`,
          write: `spacers: longest free length: ${tapeText(free, job)}`,
          apply: (given) => ({ ...given, spacers: { ...given.spacers, free_max: fromJob(free, "spacers: longest free length") } }),
        }));

/** The load on the infill does not fall with the tension: spacers get deeper square to the guard, tubes larger. */
function spacerSizes(job: Job): readonly Draft[] {
  const { section } = job.spacers;
  return deeperSpacers(section, job).map((size) => ({
    sets: ["size of spacers"],
    text: `spacers of ${size.name} instead of ${section.name}`,
    write: `spacers: ${size.write}`,
    apply: (given) => ({ ...given, spacers: { ...given.spacers, section: { ...given.spacers.section, ...sectionOf(size) } } }),
  }));
}

const spacingChanges = (job: Job): readonly Draft[] =>
  job.sides.every(({ stations }) => stations !== null)
    ? []
    : spacings[job.units]
        .filter((spacing) => spacing < job.posts.spacing_max.value)
        .map((spacing) => ({
          sets: ["spacing"],
          text: `posts at most ${tapeText(spacing, job)} apart`,
          write: `posts: largest spacing: ${tapeText(spacing, job)}`,
          apply: (given) => ({ ...given, posts: { ...given.posts, spacing_max: fromJob(spacing, "posts: largest spacing") } }),
        }));

const POSTS_of_wood = ["4x4", "4x6", "6x4", "6x6"] as const;

function postChanges(job: Job): readonly Draft[] {
  const { section, wood } = job.posts;
  const sizes = (section.material === "wood" ? largerLumber(section) : largerTubes(section, job)).filter((size) => fitsSleeve(size, job));
  const sized = sizes.map((size): Draft => {
    return {
      sets: ["posts"],
      text: `${job.posts.existing ? "new posts" : "posts"} of ${size.name} instead of ${section.name}`,
      write: `posts: ${size.write}`,
      apply: (given) => ({ ...given, posts: { ...given.posts, section: { ...given.posts.section, ...sectionOf(size) } } }),
    };
  });
  const largest = sized.at(-1);
  if (largest === undefined || wood === null) return sized;
  // Large posts of the usual woods have low values; this one is sold as a post.
  const pine = (["No.2", "No.1"] as const).map((grade): Draft => {
    const value: Wood = { species: "Southern Pine", grade, incised: false };
    return {
      sets: ["posts", "wood"],
      text: `${largest.text}, of ${value.species} ${grade}`,
      write: `${largest.write}, species: ${value.species}, grade: ${grade}, incised: false`,
      apply: (given) => {
        const larger = largest.apply(given);
        return { ...larger, posts: { ...larger.posts, wood: fromJob(value, "posts: species and grade") } };
      },
    };
  });
  return [...sized, ...pine];
}

/** A thicker post must still go into its sleeve. */
const fitsSleeve = ({ along, across }: Size, { posts: { sleeve } }: Job): boolean =>
  sleeve === null || (along + 2 * sleeve.wall < sleeve.along + HAIR && across + 2 * sleeve.wall < sleeve.across + HAIR);

const largerLumber = ({ along, across }: Section): readonly Size[] =>
  POSTS_of_wood.map(lumber).filter(
    (size) => size.along > along - HAIR && size.across > across - HAIR && size.along + size.across > along + across + HAIR,
  );

const better: readonly Pick<Wood, "species" | "grade">[] = [
  { species: "Southern Pine", grade: "No.2" },
  { species: "Douglas Fir-Larch", grade: "No.1" },
  { species: "Southern Pine", grade: "No.1" },
];

/** Posts and rails of a stronger wood; Southern Pine takes its preservative without cuts. */
function woodChanges(job: Job): readonly Draft[] {
  const present = job.posts.wood ?? job.frame.topRail.wood;
  if (present === null) return [];
  const { species, grade } = present.value;
  const own: readonly Pick<Wood, "species" | "grade">[] = grade === "No.2" ? [{ species, grade: "No.1" }] : [];
  return [...own, ...better.filter((one) => one.species !== species)].map(({ species: kind, grade: mark }) => {
    const of = <T extends { readonly wood: Rail["wood"] }>(member: T): T =>
      member.wood === null
        ? member
        : {
            ...member,
            wood: fromJob<Wood>(
              { species: kind, grade: mark, incised: kind === "Southern Pine" ? false : member.wood.value.incised },
              "species and grade",
            ),
          };
    const incised = kind === "Southern Pine" ? ", incised: false" : "";
    const parts = [
      ...(job.posts.wood === null ? [] : ["posts"]),
      ...(job.frame.topRail.wood === null ? [] : ["top rail"]),
      ...(job.frame.bottomRail?.wood == null ? [] : ["bottom rail"]),
    ];
    return {
      sets: ["wood"],
      text: `posts and rails of ${kind} ${mark}${job.posts.existing ? ", if the posts that stand are stamped so, or new posts" : ""}`,
      write: `${parts.join(", ")}: species: ${kind}, grade: ${mark}${incised}`,
      apply: ({ posts, frame, ...rest }) => ({
        ...rest,
        posts: of(posts),
        frame: { ...frame, topRail: of(frame.topRail), bottomRail: frame.bottomRail === null ? null : of(frame.bottomRail) },
      }),
    };
  });
}

const widths = ["4", "6", "8", "10"] as const;

/** Larger rails of the same lay: the next width, and twice as thick. */
function railChanges(job: Job, { topRail, bottomRail }: Failing): readonly Draft[] {
  const { frame } = job;
  const grown = (index: number): readonly Draft[] => {
    const top = topRail ? largerRails(frame.topRail, job)[index] : undefined;
    const bottom = bottomRail && frame.bottomRail !== null ? largerRails(frame.bottomRail, job)[index] : undefined;
    if (top === undefined && bottom === undefined) return [];
    const words = [
      ...(top === undefined ? [] : [{ name: "top rail", rail: top }]),
      ...(bottom === undefined ? [] : [{ name: "bottom rail", rail: bottom }]),
    ];
    return [
      {
        sets: ["rails"],
        text: words.map(({ name, rail }) => `${name} of ${rail.size.name}`).join(" and "),
        write: words.map(({ name, rail }) => `frame: ${name}: ${rail.size.write}`).join("; "),
        apply: (given) => ({
          ...given,
          frame: {
            ...given.frame,
            ...(top === undefined ? {} : { topRail: top.of(given.frame.topRail) }),
            ...(bottom === undefined || given.frame.bottomRail === null ? {} : { bottomRail: bottom.of(given.frame.bottomRail) }),
          },
        }),
      },
    ];
  };
  return [...grown(0), ...grown(1)];
}

interface LargerRail {
  readonly size: Size;
  readonly of: (rail: Rail) => Rail;
}

function largerRails(rail: Rail, job: Job): readonly LargerRail[] {
  const lies = (size: Size): LargerRail => {
    const [thin, wide] = [Math.min(size.along, size.across), Math.max(size.along, size.across)];
    const [depth, width] = rail.depth > rail.width ? [wide, thin] : [thin, wide];
    return { size, of: (given) => ({ ...given, depth, width, wall: size.wall, name: size.name }) };
  };
  const [thin, wide] = [Math.min(rail.depth, rail.width), Math.max(rail.depth, rail.width)];
  if (rail.material !== "wood") return largerTubes({ along: wide, across: thin, wall: rail.wall }, job).map(lies);
  const wider = widths.map((width) => lumber(`2x${width}`)).find(({ across }) => across > wide + HAIR);
  const thicker = (["4x4", "4x6"] as const).map(lumber).find(({ along, across }) => along > thin + HAIR && across > wide - HAIR);
  return [...(wider === undefined ? [] : [wider]), ...(thicker === undefined ? [] : [thicker])].map(lies);
}
