// Which rules, limits and default dimensions does this job rest on, and where does each come from?

import type { PostBase } from "../../job/site.ts";
import type { RunClimate } from "../../plan/climate-plan.ts";
import { mustBeOnFace } from "../../plan/face-end.ts";
import { jointsOf, jointsWord } from "../../plan/joints.ts";
import type { Bore } from "../../plan/plan.ts";
import { cornerCount } from "../../plan/splits.ts";
import type { Cited } from "../../sources/cited.ts";
import type { SourceId } from "../../sources/sources.ts";
import type { Table, Text } from "../packet.ts";
import { sourcePlace } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { isBored } from "./bore-kinds.ts";
import { bushingRules } from "./bushings.ts";
import { faceEnds } from "./face-ends.ts";
import { keptInTarget } from "./kept.ts";
import { column, type SheetContext, table, upperFirst } from "./kit.ts";
import { woodName } from "./material.ts";
import { piersOf } from "./piers.ts";

export interface RuleRow {
  readonly rule: Text;
  readonly value: Text;
  readonly source: SourceId;
  readonly where: Text;
}

const row = <T>(rule: Text, cited: Cited<T>, print: (value: T) => Text): RuleRow => ({
  rule,
  value: print(cited.value),
  source: cited.source,
  where: cited.where,
});

export function rulesTable(context: SheetContext): Table {
  return table({
    id: "cover-rules",
    caption: "Rules used in this packet. Each can be changed in the job file",
    columns: [column("rule", "Rule", 0.4), column("value", "Value", 0.27), column("source", "Source", 0.33)],
    rows: rulesUsed(context).map(({ rule, value, source, where }) => [rule, value, sourcePlace(source, where)]),
  });
}

export function rulesUsed(context: SheetContext): readonly RuleRow[] {
  const { plan } = context;
  const walls = plan.sides.some(({ begins, ends }) => begins?.kind === "wall" || ends?.kind === "wall");
  return [
    ...codeRules(context),
    ...frameRules(context, walls),
    ...runRules(context),
    ...fittingRules(context),
    ...pullRules(context),
    ...standingRules(context),
    ...siteRules(context),
  ];
}

function codeRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { code } = plan.job;
  return [
    row("Least height of the guard", code.guardHeight_min, show.tapeBoth),
    row("Sphere that must not pass", code.openingSphere, show.tapeBoth),
    { rule: "Tension asked for", value: show.forceUp(plan.target.required), source: plan.target.source, where: plan.target.sourceWhere },
  ];
}

function frameRules(context: SheetContext, walls: boolean): readonly RuleRow[] {
  const { plan, show } = context;
  const { posts, spacers, limits } = plan.job;
  return [
    row("Cable spacing at most", limits.cableSpacing_max, show.tapeBoth),
    row("Free length of a cable at most, before the criterion", spacers.free_max, show.tapeBoth),
    row("Posts, centre to centre, at most", posts.spacing_max, show.feetBoth),
    ...(plan.bays.some(({ kind }) => kind === "corner") ? [cornerRule(context)] : []),
    ...(plan.verticals.some(({ corner }) => corner?.isPassed === true)
      ? [
          row("Turn at a corner of one post, at most", limits.onePostTurn_max, show.angle),
          row("One post is bored straight through up to a turn of", limits.straightBoreTurn_max, show.angle),
        ]
      : []),
    ...(plan.setOff === null
      ? []
      : [row("Wood between bores that cross in a corner post, at least", limits.betweenBores_min, show.tapeBoth)]),
    ...(plan.verticals.some(({ role }) => role === "pair")
      ? [row("Clear distance between two posts of a pair", posts.pairGap, show.tapeBoth)]
      : []),
    ...(walls ? [row("Gap from an end post to the wall, at most", limits.wallGap_max, show.tapeBoth)] : []),
    ...(isReachedAtWall(plan) ? [row("Gap from an end post to the wall, at least", limits.wallGap_min, show.tapeBoth)] : []),
    row("Edge of a bore to the edge of the post, at least", limits.edgeDistance_min, show.tapeBoth),
    row("Heights and stations are rounded to", limits.tapeStep, show.tape),
  ];
}

/** Where an end stands on the face of its post, nobody has to reach between post and wall. */
const isReachedAtWall = ({ job, sides }: SheetContext["plan"]): boolean =>
  sides.some(({ begins, ends }) => [begins, ends].some((end) => end?.kind === "wall" && !mustBeOnFace(end.access, job)));

function runRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { limits, supply } = plan.job;
  const joints = jointsWord(plan, jointsOf(plan.runs));
  return [
    ...(joints !== ""
      ? [
          row(`${upperFirst(joints)} in one run at most`, limits.bends_max, String),
          ...(plan.sides.some(({ turn }) => turn !== null && cornerCount(turn, plan.job) < 1)
            ? [row("A turn counts by its share of a right angle, up to", limits.smallTurn_max, show.angle)]
            : []),
          row(`Run with ${joints} at most`, limits.runWithBends_max, show.feetBoth),
        ]
      : [row("Straight run at most", limits.runStraight_max, show.feetBoth)]),
    supply.kind === "ready"
      ? row(
          "Ready lengths",
          supply.lengths,
          (lengths) => `${show.feet(lengths[0] ?? 0)} to ${show.feet(lengths.at(-1) ?? 0)}, ${lengths.length} sizes`,
        )
      : row("Added to a cable cut from the spool", supply.allowance, show.tapeBoth),
  ];
}

/** Stated by the job, or worked out for each corner with this much room. */
function cornerRule({ plan, show }: SheetContext): RuleRow {
  const { cornerSetback, cornerClearance } = plan.job.posts;
  const isStraight = plan.sides.every(({ turn, ends }) => ends !== null || turn === 0);
  if (isStraight) return row("Change of slope to the near face of its posts", cornerSetback ?? cornerClearance, show.tapeBoth);
  return cornerSetback === null
    ? row("Room left inside a corner beyond the touching of its two posts", cornerClearance, show.tapeBoth)
    : row("Corner point to the near face of its posts", cornerSetback, show.tapeBoth);
}

/** Sizes of bores stand here only where the job has such a bore. */
function fittingRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { sleeve } = plan.job.posts;
  const { stud, grip, face, passBore, bushingBore, bushingAngle, spareShare } = plan.job.fittings;
  const sizes: readonly (readonly [used: boolean, rule: Text, size: Cited<number>])[] = [
    [plan.bores.some((bore) => !bore.bushing && isPass(bore)), "Bore that the cable passes", passBore],
    [plan.bores.some((bore) => bore.bushing), "Bore where a bushing goes in", bushingBore],
    [isBored(plan, stud.bore.value, "stud end"), "Bore at a stud end", stud.bore],
    [isBored(plan, grip.bore.value, "grip end"), "Bore at a grip end", grip.bore],
    [isBored(plan, grip.boreNoBack.value, "grip end"), "Bore at a grip end without a counterbore", grip.boreNoBack],
    [
      plan.bores.some(({ counterbore, sleeveHole }) => counterbore !== null && sleeveHole === undefined),
      "Counterbore at a grip end",
      grip.counterbore,
    ],
    ...(sleeve === null
      ? []
      : ([
          [true, "Hole in a sleeve wider than the washer in it by", sleeve.washerClearance],
          [true, "Hole in a sleeve wider than the bore by", sleeve.boreClearance],
        ] as const)),
  ];
  return [
    ...sizes.filter(([used]) => used).map(([, rule, size]) => row(rule, size, show.diameter)),
    ...(face === null || faceEnds(plan).length === 0
      ? []
      : [
          row("Hole of the fastening at a face end", face.hole, show.diameter),
          row("Middle of an eye from the face of its post", face.standOut, show.tapeBoth),
        ]),
    ...piersOf(plan).flatMap(({ id, anchor }) => [
      row(`Hole of the anchors in ${id}`, anchor.hole, show.diameter),
      row(`Depth of that hole in ${id}`, anchor.depth, show.tapeBoth),
      row(`Middle of an eye from the face of ${id}`, anchor.standOut, show.tapeBoth),
    ]),
    row("Thread of the stud that the nut can use", stud.threadLength, show.tapeBoth),
    row("Turns of the nut at first", stud.firstTurns, (turns) => show.decimal(turns, 1)),
    row("Thread left for later visits, at least", stud.reserve, show.tapeBoth),
    ...(plan.bores.some(({ kind }) => kind === "grip end") ? [row("Length of the gripping fitting", grip.bodyLength, show.tapeBoth)] : []),
    ...(plan.bores.some(({ bushing }) => bushing) ? [row("Bushing where the cable turns by more than", bushingAngle, show.angle)] : []),
    ...bushingRules({ plan, show }).map(([rule, size, print]) => row(rule, size, print)),
    row("Spare fittings", spareShare, show.percent),
  ];
}

const isPass = ({ kind }: Bore): boolean => kind === "pass" || kind === "bend";

function pullRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { cable, tightening } = plan.job;
  return [
    row("Breaking force of the strand", cable.breakingForce, show.forceBoth),
    row("Highest tension, as a share of it", cable.workingShare, show.percent),
    row(
      "Stiffness E A of the strand",
      cable.stiffness,
      ({ low, nominal, high }) => `${kilo(nominal, show)} (${kilo(low, show)} - ${kilo(high, show)})`,
    ),
    row("Lasting stretch as the strand beds in", cable.beddingShare, (share) => `${show.decimal(share * 100, 3)} %`),
    tightening.passes === null
      ? row("Passes that the plan may choose, at most", tightening.passes_max, String)
      : row("Passes, as shares of the target", tightening.passes, (shares) => shares.map(show.percent).join(", ")),
    row("Band around each reading", tightening.band, (share) => `+/- ${show.percent(share)}`),
    ...(plan.runs.some(({ bends }) => bends.length > 0)
      ? [row("Friction at a bend", tightening.friction, (mu) => show.decimal(mu, 2))]
      : []),
    ...(tightening.wobble_perMm.value > 0
      ? [row("Loss by bores out of line, a metre", tightening.wobble_perMm, (wobble) => show.percent(wobble * 1000))]
      : []),
    row("Travel used up by seating", tightening.seating, show.fine),
    row("Weight for the sag test", tightening.sagWeight, show.forceBoth),
  ];
}

const kilo = (stiffness: number, show: SheetContext["show"]): Text => `${show.decimal(stiffness / 1000, 0)} kN`;

/** How the frame stands, and how far it may give way. */
function standingRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { posts, frame, limits } = plan.job;
  return [
    ...(posts.wood === null ? [] : [row("Wood of the posts", posts.wood, woodName)]),
    ...(frame.topRail.wood === null ? [] : [row("Wood of the top rail", frame.topRail.wood, woodName)]),
    ...(frame.bottomRail?.wood == null ? [] : [row("Wood of the bottom rail", frame.bottomRail.wood, woodName)]),
    row("Base of a post", posts.base, (base) => baseWords(base, show)),
    row("Rails on the posts", frame.railJoint, (joint) => (joint === "rigid" ? "fixed against turning" : "hinged")),
    row("Movement of a post under the cables, at most, of its height", limits.movementShare_max, oneIn(show)),
    row("Deflection under the code's loads, at most, of the length", limits.deflectionShare_max, oneIn(show)),
  ];
}

const oneIn =
  (show: SheetContext["show"]) =>
  (share: number): Text =>
    `1/${show.decimal(1 / share, 0)}`;

function baseWords(base: PostBase, show: SheetContext["show"]): Text {
  switch (base.kind) {
    case "fixed":
      return "does not turn";
    case "spring":
      return `turns: ${show.turnStiffness(base.stiffness_NmmPerRad)}`;
    case "measured":
      return `measured: ${show.forceBoth(base.pull)} at ${show.tape(base.height)} moved it ${show.fine(base.movement)}`;
  }
}

/** Between which days and moistures the guard stands, and what the target holds in store for them. */
function siteRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { site } = plan.job;
  const kept = keptInTarget(plan);
  const [climate] = plan.climate;
  const moisture = (percent: number): Text => `${show.decimal(percent, 0)} %`;
  const growth = (expansion: number): Text => `${show.decimal(expansion * 1e6, 1)} millionths per deg C`;
  return [
    { rule: "The target makes up for", value: kept.what, source: kept.source, where: kept.where },
    row("Temperature at which the target holds", site.reference, show.heatBoth),
    row("Coldest day", site.coldest, show.heatBoth),
    row("Warmest day", site.warmest, show.heatBoth),
    ...(plan.job.posts.wood === null
      ? []
      : [
          row("Moisture of the posts when cables are fitted", site.moistureAtFitting_percent, moisture),
          row("Moisture of the posts later", site.moistureInService_percent, moisture),
          row("Wood stays wet for long", site.wet, (wet) => (wet ? "yes" : "no")),
        ]),
    row("Visit after drying and bedding-in", site.nextVisit_months, (months) => `${months} months`),
    ...(climate === undefined
      ? []
      : [
          row("Strand grows by", climate.expansion.strand, growth),
          row(
            `The ${floorWord(plan.job)} ${site.floor === null ? "is taken to grow as the posts, by" : `of ${site.floor.value} grows by`}`,
            climate.expansion.deck,
            growth,
          ),
          row("Rail grows by", climate.expansion.rail, growth),
          row("Strand beds in later by", climate.beddingShare, (share) => `${show.decimal(share * 1000, 2)} mm a metre`),
        ]),
    ...(climate?.wood == null ? [] : [dryingRow(climate.wood, show)]),
  ];
}

/** By the figure that drying is computed with: for each percent of moisture where the wood changes evenly, else from green to dry. */
const dryingRow = ({ name, changeShare, shrinkage_percent }: NonNullable<RunClimate["wood"]>, show: SheetContext["show"]): RuleRow =>
  changeShare !== null
    ? row(`${name} changes in size, for each percent of moisture`, changeShare, (share) => `${show.decimal(share * 100, 3)} %`)
    : row(`${name} shrinks, green to dry`, shrinkage_percent, (percent) => `${show.decimal(percent, 1)} %`);
