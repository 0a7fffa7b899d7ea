// Z-301: how are the ends, corners and bushings put together?
import { endsOnFaces } from "../../plan/corner-post.ts";
import { isOnFace } from "../../plan/face-end.ts";
import type { BoreKind, Plan } from "../../plan/plan.ts";
import { detailNotes } from "../drawings/details.ts";
import { gateCaution, gatesOf } from "../guard-ends.ts";
import type { Block, Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { hasBushingTubes, washerWarning } from "./bearing.ts";
import { boreMakes, makeWords } from "./bore-kinds.ts";
import { bushingSitWords } from "./bushings.ts";
import { drawnDetails } from "./drawn.ts";
import { faceEnds, faceIds, faceWords } from "./face-ends.ts";
import { endPostIds, facts, list, listed, prose, refer, type SheetContext, type SheetMaker, sheet } from "./kit.ts";
import { anchorWords } from "./piers.ts";
import { crossedIds, raisedBy } from "./set-off-words.ts";
import { sleeveBearing } from "./sleeves.ts";
import { sidesWord, slopedSides } from "./slopes.ts";

export const detailsSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.details)] : []),
    list(...detailNotes, ...slopeNotes(context), ...rules(context)),
    endFacts(context),
    ...drawnDetails(context.plan),
  ]);

/** A level cut shows no slope. */
const slopeNotes = (context: SheetContext): readonly Text[] =>
  context.plan.rakes.length === 0
    ? []
    : [
        `Posts and spacers of ${sidesWord(slopedSides(context.plan))} that a cable only passes are bored along the slope too, which a level cut does not show. Heights on both faces, angle and length of those bores: ${refer(context, "stairs")}.`,
      ];

const GRIP = "Grip end (holds)";
const FACE = "Face end (holds)";
const ANCHOR = "Anchor in a pier (holds)";
const kindNames: readonly (readonly [name: Text, ...kinds: BoreKind[]])[] = [
  ["Stud end", "stud end"],
  [GRIP, "grip end"],
  [FACE, "face end"],
  [ANCHOR, "anchor end"],
  ["Where the cable bends", "bend"],
  ["Where the cable passes", "pass"],
  ["Where it passes or bends", "pass", "bend"],
];

function endFacts({ plan, show }: SheetContext): Block {
  const { stud, grip } = plan.job.fittings;
  const studWords = `; thread ${stud.thread}, washer ${show.diameter(stud.washerDiameter.value)} across${washerWarning(plan, "stud")}`;
  const gripWords = `; its body lies in the post, its collar bears on a washer ${show.diameter(grip.washerDiameter.value)} across${washerWarning(plan, "grip")}`;
  const wordsOf: Readonly<Record<Text, Text>> = {
    "Stud end": studWords,
    [GRIP]: gripWords,
    [FACE]: faceWords(plan, show),
    [ANCHOR]: anchorWords(plan, show),
    "Where the cable bends": hasBushingTubes(plan) ? ", in a tube right through" : "",
  };
  const makes = boreMakes(plan);
  const passed = plan.verticals.filter(
    ({ id, corner }) => corner?.isPassed === true && plan.bores.some(({ verticalId, bushing }) => verticalId === id && bushing),
  );
  const ends = plan.verticals.filter(({ corner }) => corner !== undefined && endsOnFaces(corner));
  const crossed = crossedIds(plan);
  const pairs = plan.verticals.filter(({ role }) => role === "pair").map(({ id }) => id);
  return facts("details-facts", [
    ...kindNames.flatMap(([name, ...kinds]) =>
      makes
        .filter((make) => listed(make.kinds.toSorted()) === listed(kinds.toSorted()))
        .map((make): readonly [Text, Text] => [name, `${makeWords(make, show)}${wordsOf[name] ?? ""}`]),
    ),
    ...(ends.length > 0
      ? ([
          [
            "Ends on a corner post",
            `${listed(ends.map(({ id }) => id))}: the cables of both sides end on two of its faces, at the same heights; ${plan.job.posts.section.wall === null ? "the holes are square to each other and must not meet: a stop on the bit" : "what stands out inside the tube from two walls must not touch: look down the post"}`,
          ],
        ] as const)
      : []),
    ...(crossed.length > 0
      ? ([
          [
            "Ends behind a corner post",
            `${listed(crossed)}: the cables of both sides go through it and are held on the two faces beyond, at heights ${raisedBy({ plan, show })} apart; washers on two faces, no bore meets another`,
          ],
        ] as const)
      : []),
    ...(passed.length > 0
      ? ([
          [
            "Corners of one post",
            `${listed(passed.map(({ id }) => id))}: a bushing at each mouth${passed.some(({ corner }) => corner?.faces === "adjacent") ? "; on the mitre without a rim, or its rim let into a flat that is cut square to the bore: try one on scrap" : ""}`,
          ],
        ] as const)
      : []),
    ...(isIsolated(plan) ? isolation(plan) : []),
    ...(pairs.length > 0
      ? ([
          [
            "Pairs of posts",
            `${listed(pairs)}: one run ends, the next begins; ${show.tapeBoth(plan.job.posts.pairGap.value)} clear between them`,
          ],
        ] as const)
      : []),
  ]);
}

/** Sleeves go through a post; the fastening of an eye sits in its metal, where only a paste keeps the two apart. */
function isolation(plan: Plan): readonly (readonly [Text, Text])[] {
  const behind = plan.runs.flatMap(({ left, right }) => [left, right]).filter((end) => !isOnFace(end));
  const posts = endPostIds(plan).filter((id) => behind.some(({ postId }) => postId === id));
  return [
    ["Isolation", `an isolating sleeve and washer at each end fitting, ${listed(posts)}`],
    ...(faceEnds(plan).length === 0
      ? []
      : [
          [
            "Isolation of eyes",
            `${faceIds(plan)}: paste against corrosion on thread and hole, a plastic washer under each flange`,
          ] as const,
        ]),
  ];
}

/** As ordered: between stainless fittings and a post of another metal. */
const isIsolated = ({ order }: Plan): boolean => order.some(({ item }) => item.startsWith("isolating"));

function rules(context: SheetContext): readonly Text[] {
  const { plan, show } = context;
  const { fittings, posts } = plan.job;
  return [
    ...sleeveBearing(context),
    ...gatesOf(plan).map((gate) => `**${gateCaution(gate)}**`),
    ...(plan.bores.some(({ bushing }) => bushing)
      ? [
          `A bushing goes in where the cable turns by more than ${show.angle(fittings.bushingAngle.value)} in its bore ${sourceMark(fittings.bushingAngle.source)}, and in all metal.${bushingSitWords({ plan, show })}`,
        ]
      : []),
    ...(plan.runs.some(({ left, right }) => left.seat + right.seat > 0)
      ? [
          "Where an end is bored at an angle, a bevelled washer lies under the flat one, its thick edge as drawn: it gives nut or collar a seat square to the cable.",
        ]
      : []),
    `A flat washer lies under every nut${plan.bores.some(({ kind }) => kind === "grip end") ? " and under the collar of every gripping fitting" : ""}. ${
      posts.section.material === "wood"
        ? "The face there is cut flat and treated; the washer must not sink in."
        : "Deburr both walls; keep stainless steel and other metals apart with plastic."
    }`,
  ];
}
