// Which rules, limits and default dimensions does this job rest on, and where does each come from?
import type { Posts } from "../../job/job.ts";
import type { Bore } from "../../plan/plan.ts";
import type { Cited } from "../../sources/cited.ts";
import type { SourceId } from "../../sources/sources.ts";
import type { Text } from "../packet.ts";
import { isBored } from "./bore-kinds.ts";
import type { SheetContext } from "./kit.ts";

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

export function rulesUsed(context: SheetContext): readonly RuleRow[] {
  const { plan } = context;
  const bends = plan.runs.some((run) => run.bends.length > 0);
  const walls = [plan.job.start, plan.job.end].some(({ kind }) => kind === "wall");
  return [
    ...codeRules(context),
    ...frameRules(context, walls),
    ...runRules(context, bends),
    ...fittingRules(context),
    ...pullRules(context),
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

function frameRules({ plan, show }: SheetContext, walls: boolean): readonly RuleRow[] {
  const { posts, spacers, limits } = plan.job;
  return [
    row("Cable spacing at most", limits.cableSpacing_max, show.tapeBoth),
    row("Free length of a cable at most", spacers.free_max, show.tapeBoth),
    row("Posts, centre to centre, at most", posts.spacing_max, show.feetBoth),
    ...(plan.sides.length > 1 ? [cornerRule(posts, show)] : []),
    ...(plan.verticals.some(({ role }) => role === "pair")
      ? [row("Clear distance between two posts of a pair", posts.pairGap, show.tapeBoth)]
      : []),
    ...(walls
      ? [
          row("Gap from an end post to the wall, at most", limits.wallGap_max, show.tapeBoth),
          row("Gap from an end post to the wall, at least", limits.wallGap_min, show.tapeBoth),
        ]
      : []),
    row("Edge of a bore to the edge of the post, at least", limits.edgeDistance_min, show.tapeBoth),
    row("Heights and stations are rounded to", limits.tapeStep, show.tape),
  ];
}

function runRules({ plan, show }: SheetContext, bends: boolean): readonly RuleRow[] {
  const { limits, supply } = plan.job;
  return [
    ...(bends
      ? [
          row("Corners in one run at most", limits.bends_max, String),
          row("Run with corners at most", limits.runWithBends_max, show.feetBoth),
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
function cornerRule({ cornerSetback, cornerClearance }: Posts, show: SheetContext["show"]): RuleRow {
  return cornerSetback === null
    ? row("Room left inside a corner beyond the touching of its two posts", cornerClearance, show.tapeBoth)
    : row("Corner point to the near face of its posts", cornerSetback, show.tapeBoth);
}

/** Sizes of bores stand here only where the job has such a bore. */
function fittingRules({ plan, show }: SheetContext): readonly RuleRow[] {
  const { stud, grip, passBore, bushingBore, bushingAngle, spareShare } = plan.job.fittings;
  const sizes: readonly (readonly [used: boolean, rule: Text, size: Cited<number>])[] = [
    [plan.bores.some((bore) => !bore.bushing && isPass(bore)), "Bore that the cable passes", passBore],
    [plan.bores.some((bore) => bore.bushing), "Bore where a bushing goes in", bushingBore],
    [isBored(plan, stud.bore.value, "stud end"), "Bore at a stud end", stud.bore],
    [isBored(plan, grip.bore.value, "grip end"), "Bore at a grip end", grip.bore],
    [isBored(plan, grip.boreNoBack.value, "grip end"), "Bore at a grip end without a counterbore", grip.boreNoBack],
    [plan.bores.some(({ counterbore }) => counterbore !== null), "Counterbore at a grip end", grip.counterbore],
  ];
  return [
    ...sizes.filter(([used]) => used).map(([, rule, size]) => row(rule, size, show.diameter)),
    row("Thread of the stud that the nut can use", stud.threadLength, show.tapeBoth),
    row("Turns of the nut at first", stud.firstTurns, (turns) => show.decimal(turns, 1)),
    row("Thread left for later visits, at least", stud.reserve, show.tapeBoth),
    ...(plan.bores.some(({ kind }) => kind === "grip end") ? [row("Length of the gripping fitting", grip.bodyLength, show.tapeBoth)] : []),
    row("Bushing where the cable turns by more than", bushingAngle, show.angle),
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
    row("Passes, as shares of the target", tightening.passes, (shares) => shares.map(show.percent).join(", ")),
    row("Band around each reading", tightening.band, (share) => `+/- ${show.percent(share)}`),
    row("Friction at a bend", tightening.friction, (mu) => show.decimal(mu, 2)),
    row("Travel used up by seating", tightening.seating, show.fine),
    row("Weight for the sag test", tightening.sagWeight, show.forceBoth),
  ];
}

const kilo = (stiffness: number, show: SheetContext["show"]): Text => `${show.decimal(stiffness / 1000, 0)} kN`;
