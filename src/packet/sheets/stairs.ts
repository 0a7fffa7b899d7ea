// Z-401: how do the sides that slope differ: rake, spacings, bores at an angle, the triangle at a step, changes of slope?
import { bitOf, heightOn } from "../../plan/bores.ts";
import { bevelOf, thickEdge } from "../../plan/end-fitting.ts";
import type { Bore, Vertical } from "../../plan/plan.ts";
import type { RakePlan } from "../../plan/rake-plan.ts";
import type { Block, Cell, Sheet, Table, Text } from "../packet.ts";
import { clauseOf, sourceMark } from "../show-number.ts";
import { surfaceWords } from "../templates/slope-words.ts";
import { faceName, introduction } from "../wording.ts";
import { drawnRake } from "./drawn.ts";
import {
  bold,
  caution,
  column,
  facts,
  heading,
  list,
  pageBreak,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  strong,
  table,
  unique,
} from "./kit.ts";
import { slidingEnds, surfaceOf, washerFriction } from "./slopes.ts";
import { liftTable, transitionBlocks } from "./stairs-joints.ts";

export const stairsSheet: SheetMaker = (context, head): Sheet =>
  sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.stairs)] : []),
    caution("warning", ...layOut(context)),
    ...context.plan.rakes.flatMap((rake, index) => [...(index === 0 ? [] : [pageBreak]), ...rakeBlocks(context, rake)]),
    ...transitionBlocks(context),
    ...liftTable(context),
    list(...rules(context)),
  ]);

function layOut({ plan }: SheetContext): readonly Text[] {
  const [hasStair, hasRamp] = (["stair", "ramp"] as const).map((wanted) => plan.rakes.some(({ kind }) => kind === wanted));
  const over = [...(hasStair ? ["the whole flight, not over one step"] : []), ...(hasRamp ? ["the whole ramp, not at one place"] : [])];
  return [
    `Posts and spacers stand plumb; rails and cables lie along the slope. Lay a straight board on ${surfaceOf(plan)} and mark where its lower edge crosses the middle line of each post and spacer: this is the datum there. Carry the mark level to both faces. Every height of this sheet is measured plumb from that level mark.`,
    `Measure the slope on site before anything is bored: over ${over.join("; over ")}. If it differs from this sheet by half a degree, stop: every bore changes.`,
  ];
}

function rakeBlocks(context: SheetContext, rake: RakePlan): readonly Block[] {
  const { plan, show } = context;
  const { sideId, slope, rise, slopeLength, opening, triangle, kind, givenAs } = rake;
  const side = plan.sides.find(({ id }) => id === sideId);
  const way = rise > 0 ? "up" : "down";
  const rows: (readonly [Text, Text])[] = [
    ["Rake", `${bold(show.angle(Math.abs(slope)))}, ${way} to the right; the job gives it as ${givenAs}`],
    [
      "Rise and length",
      `rise ${show.tapeBoth(Math.abs(rise))}; level ${show.feetBoth(side?.length ?? 0)}; along the slope ${show.feetBoth(slopeLength)}`,
    ],
    [
      "Heights, plumb",
      `above the ${surfaceWords(rake)}: lower edge of the opening ${show.tapeBoth(opening.bottom)}, underside of the top rail ${show.tapeBoth(opening.top)}, top of the guard ${show.tapeBoth(opening.guardHeight)}; at least ${show.tapeBoth(rake.guardHeight_min.value)} ${sourceMark(rake.guardHeight_min.source)} ${rake.guardHeight_min.where}`,
    ],
    [
      "Openings",
      `a sphere of ${show.tapeBoth(rake.openingSphere.value)} must not pass ${sourceMark(rake.openingSphere.source)} ${rake.openingSphere.where}; measured square to the cables`,
    ],
    ...triangleRow(context, rake),
  ];
  const name = `Side ${sideId}: ${kind}, ${show.angle(Math.abs(slope))} ${way} to the right`;
  return [
    heading(`stairs-${sideId}`, name),
    facts(`stairs-facts-${sideId}`, rows),
    ...drawnRake(plan, sideId),
    spacingTable(context, rake),
    facesTable(context, rake),
    boresTable(context, rake),
    ...(triangle === null && kind === "stair"
      ? [prose("Riser and tread are not in the job file: measure the opening at riser, tread and bottom rail on site.")]
      : []),
  ];
}

function triangleRow({ plan, show }: SheetContext, { triangle, aboveNosings }: RakePlan): readonly (readonly [Text, Text])[] {
  if (triangle === null) return [];
  const { triangleSphere: limit, openingSphere, openingFrom } = plan.job.code.stairs;
  const { riser, tread, nosing, gap, under, sphere, gap_max } = triangle;
  const rule =
    limit === null
      ? openingFrom === "steps"
        ? "; this edition names no size of its own for it"
        : `; this edition measures openings above the line of the nosings ${clauseOf(openingSphere)}${aboveNosings === null ? "" : `: there ${show.tapeBoth(aboveNosings)} square to the slope up to the bottom rail, at most ${show.tapeBoth(openingSphere.value)}`}`
      : `; ${show.tapeBoth(limit.value)} must not go in ${sourceMark(limit.source)} ${limit.where}${gap_max === null || gap_max <= 0 ? "" : `, so the gap is at most ${show.tapeDown(gap_max)}`}`;
  return [
    [
      "Triangle",
      `riser ${show.tape(riser)}, tread ${show.tape(tread)}, nosing ${show.tape(nosing.value)} before the riser ${sourceMark(nosing.source)}, ${under} ${show.tapeBoth(gap)} plumb above the nosings: the largest sphere that goes in measures ${bold(show.tapeBoth(sphere))}${rule}`,
    ],
  ];
}

const courseName = (number: number): Text => String(number).padStart(2, "0");

/** Both spacings: the one that the post shows, and the one that the rule means. */
function spacingTable({ plan, show }: SheetContext, { sideId, gaps, opening }: RakePlan): Table {
  const rows = gaps.map((gap, index): readonly Cell[] => {
    const course = plan.courses[index];
    return [
      course === undefined ? gap.above : bold(courseName(course.number)),
      course === undefined ? `(${show.tape(opening.top)})` : strong(show.tape(course.height)),
      show.tapeOther(course?.height ?? opening.top),
      show.tape(gap.plumb),
      show.tape(gap.spacing),
      show.tape(gap.clear),
    ];
  });
  return table({
    id: `stairs-spacing-${sideId}`,
    caption: `Side ${sideId}: heights plumb above the datum, and spacing below each, along a post and square to the cables`,
    columns: [
      column("course", "Course", 0.16),
      column("height", "Height", 0.2, { sub: "middle of the post" }),
      column("other", "Height", 0.14, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
      column("plumb", "Spacing", 0.17, { sub: "along the post" }),
      column("square", "Spacing", 0.17, { sub: "square to the cables" }),
      column("clear", "Clear", 0.16, { sub: "square" }),
    ],
    rows,
    rowHeads: true,
  });
}

interface Sized {
  readonly along: number;
  readonly names: Text;
  readonly of: Vertical;
}

/** Posts, spacers and posts of another section: what is as wide along the side is bored at the same heights. */
function sizesOf({ plan }: SheetContext, sideId: string): readonly Sized[] {
  const own = plan.verticals.filter((one) => one.sideId === sideId);
  return unique(own.map(({ along }) => along)).flatMap((along) => {
    const alike = own.filter((one) => one.along === along);
    const [of] = alike;
    return of === undefined
      ? []
      : [{ along, of, names: unique(alike.map(({ kind, sectionName }) => `${kind} ${sectionName}`)).join(", ") }];
  });
}

/** Height of each bore on the two faces: where the bit goes in and where it must come out. */
function facesTable(context: SheetContext, { sideId, slope }: RakePlan): Table {
  const { plan, show } = context;
  const sizes = sizesOf(context, sideId);
  const face = ({ of }: Sized, course: number, which: "left" | "right"): Cell => {
    const bore = plan.bores.find((one) => one.verticalId === of.id && one.course === course);
    if (bore === undefined) return "-";
    return strong(show.tape(heightOn(bore, which)));
  };
  const width = 0.84 / Math.max(1, 2 * sizes.length);
  return table({
    id: `stairs-faces-${sideId}`,
    caption: `Side ${sideId}: heights of the bores on the two faces, plumb from the level mark; ${slope > 0 ? "the right face is higher" : "the left face is higher"}`,
    columns: [
      column("course", "Course", 0.16),
      ...sizes.flatMap(({ names }, index) => [
        column(`left-${index}`, names, width, { sub: "left face" }),
        column(`right-${index}`, names, width, { sub: "right face" }),
      ]),
    ],
    rows: plan.courses.map(({ number }) => [
      bold(courseName(number)),
      ...sizes.flatMap((size) => [face(size, number, "left"), face(size, number, "right")]),
    ]),
    rowHeads: true,
  });
}

function boresTable(context: SheetContext, { sideId }: RakePlan): Table {
  const { plan, show } = context;
  const first = plan.courses[0]?.number;
  const own = plan.verticals.filter((one) => one.sideId === sideId);
  const rows = own.flatMap((vertical) =>
    plan.bores
      .filter((bore) => bore.verticalId === vertical.id && bore.course === first)
      .map((bore): readonly Cell[] => [
        bold(vertical.id),
        vertical.sectionName,
        strong(show.angle(Math.abs(bore.angle))),
        `${bore.entryFace}, ${leanWords(bore, context)}`,
        strong(show.tape(bore.drilledLength)),
        show.tape(bitOf(plan, bore).bitLength_min),
        bore.bend === 0 ? "-" : show.angle(bore.bend),
      ]),
  );
  return table({
    id: `stairs-bores-${sideId}`,
    caption: `Side ${sideId}: every bore of an upright is made alike; diameters on ${refer(context, "bores")}`,
    columns: [
      column("upright", "Post", 0.08),
      column("section", "Section", 0.16),
      column("angle", "Angle", 0.16, { sub: "off level" }),
      column("entry", "Bit in", 0.22, { sub: "face, and where it goes" }),
      column("length", "Bore length", 0.14, { sub: "face to face" }),
      column("bit", "Bit at least", 0.15),
      column("bend", "Bend", 0.1),
    ],
    rows,
    rowHeads: true,
  });
}

const leanWords = ({ entryHeight, exitHeight }: Bore, { show }: SheetContext): Text =>
  `${show.tape(Math.abs(exitHeight - entryHeight))} ${exitHeight < entryHeight ? "down" : "up"}`;

/** Each end on a rake with the washer that gives its nut or collar a seat square to the bore. */
function bevelRules({ plan, show }: SheetContext): readonly Text[] {
  const ends = plan.runs.flatMap(({ left, right }) => [left, right]).filter(({ seat }) => seat > 0);
  if (ends.length === 0) return [];
  const words = ends.map(({ postId, kind, backFace }): Text => {
    const slope = plan.verticals.find(({ id }) => id === postId)?.slope ?? 0;
    const { across, thin, thick } = bevelOf(kind, slope, plan.job);
    const way = thickEdge(backFace, slope);
    return `${postId}, ${faceName[backFace]}: ${show.fine(across)} across, ${show.fine(thin)} to ${show.fine(thick)} thick, **thick edge ${way}**, as the bore ${way === "up" ? "falls" : "rises"} outwards`;
  });
  return [
    `End posts on a rake: nut and collar do not stand square on the face. Under each flat washer lies a bevelled one, cut to the slope: ${unique(words).join("; ")} [derived]. Its thickness is counted in the length of the cable, and taken off the thread.`,
    ...slidingRule({ plan, show }),
  ];
}

/** The pull goes along the bore, so a part of it goes along the face. */
function slidingRule({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly Text[] {
  const ends = slidingEnds(plan);
  if (ends.length === 0) return [];
  const { value, source } = washerFriction(plan.job);
  const ways = unique(
    ends.map(({ postId, backFace }) => {
      const slope = plan.verticals.find(({ id }) => id === postId)?.slope ?? 0;
      return `${thickEdge(backFace, slope)} the face of ${postId}`;
    }),
  );
  return [
    `**Each of these bevelled washers is also pushed ${ways.join(", ")}**, as the cable pulls along the bore. Friction is sure to hold it up to ${show.angle(Math.atan(value.low))} only (${value.low} at least ${sourceMark(source)}); beyond that it slides, and the stud or fitting bears sideways in its bore. It is not computed here: the engineer says what keeps it, two screws through it or a seat cut square.`,
  ];
}

function rules(context: SheetContext): readonly Text[] {
  return [
    "A course has one height, plumb above the datum, at every post, level or raked: so its cable meets itself wherever the slope changes. On a rake the cables lie closer together, by the cosine of the slope.",
    "Bore with a guide block sawn to the angle of this sheet and clamped to the face, or with a drill stand tilted to it. Start with a short bit square to the face, to a depth of its own diameter, then tilt. Bore the first post from both faces to the middle, until the exit comes out within a bit's width of its mark.",
    ...bevelRules(context),
    "Rails on a rake are cut plumb at both ends; where the slope changes, their tops meet at one height. Posts are cut at the top along the slope: lengths on the sheet of parts are those of the long edge.",
    "Frame: a raked side is computed as a plane frame of plumb posts whose feet climb with the slope; sides in one line share a frame, in which rails are taken at one plumb height; the top rail goes on past the change of slope, the bottom rail does not. The structure below the posts is not computed.",
  ];
}
