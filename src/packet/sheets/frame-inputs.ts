// What does the computation of the frame take as given: members, bases, loads, durations, limits, each with its source?
import type { Wood } from "../../job/site.ts";
import type { MemberPlan } from "../../plan/frame-plan.ts";
import type { Cited } from "../../sources/cited.ts";
import { combinationRule, guardCases } from "../../tables/guard-cases.ts";
import { guardRules } from "../../tables/limits.ts";
import { cableLoadDuration, durationFactor, guardLoadDuration } from "../../tables/wood-factors.ts";
import type { Table, Text } from "../packet.ts";
import { sourceMark, sourcePlace } from "../show-number.ts";
import { column, minor, type SheetContext, table } from "./kit.ts";

interface InputRow {
  readonly what: Text;
  readonly value: Text;
  readonly from: Text;
}

const row = <T>(what: Text, cited: Cited<T>, value: Text): InputRow => ({ what, value, from: originOf(cited) });
const originOf = <T>({ source, where, note }: Cited<T>): Text =>
  source === "practice" ? `${sourceMark(source)} ${where}` : `${sourcePlace(source, where)}${note ? `: ${note}` : ""}`;

export function inputsTable(context: SheetContext): Table {
  const rows = [...memberRows(context), ...loadRows(context), ...limitRows(context)];
  return table({
    id: "frame-inputs",
    caption: "What is taken as given",
    columns: [column("what", "Given", 0.2), column("value", "Value", 0.32), column("source", "Source", 0.48)],
    rows: rows.map(({ what, value, from }) => [minor(what), minor(value), minor(from)]),
  });
}

function memberRows({ plan, show }: SheetContext): readonly InputRow[] {
  const { posts, topRail, spacers, trial } = plan.frame;
  const { job } = plan;
  const { bottomRail, railJoint } = job.frame;
  const base = posts.base.value;
  const stiffness = base === "fixed" ? "fixed: it does not turn" : `turns: ${show.turnStiffness(base)}`;
  return [
    ...pieceRows("Posts", posts, job.posts.wood, show),
    ...pieceRows("Top rail", topRail, job.frame.topRail.wood, show),
    ...(bottomRail === null
      ? []
      : [
          {
            what: "Bottom rail",
            value: woodName(bottomRail.name, bottomRail.wood),
            from: bottomRail.wood ? originOf(bottomRail.wood) : sourceMark("job"),
          },
        ]),
    ...(spacers === null ? [] : pieceRows("Spacers", spacers, job.spacers.wood, show)),
    row(
      "Base of a post",
      posts.base,
      `${stiffness}; a lone post pulled with ${show.force(trial.pull)} at ${show.tape(trial.height)} then moves ${show.fine(trial.movement)}`,
    ),
    row(
      "Joint of rails and posts",
      railJoint,
      railJoint.value === "pinned" ? "fastened: it may turn" : "welded or stiff: it does not turn",
    ),
  ];
}

const woodName = (name: Text, wood: Cited<Wood> | null): Text =>
  wood === null ? name : `${name}, ${wood.value.species} ${wood.value.grade}${wood.value.incised ? ", incised" : ""}`;

function pieceRows(
  what: Text,
  { name, modulus, modulus_min }: MemberPlan,
  wood: Cited<Wood> | null,
  show: SheetContext["show"],
): readonly InputRow[] {
  return [
    { what, value: woodName(name, wood), from: wood === null ? sourceMark("job") : originOf(wood) },
    row(`${what}: E`, modulus, show.stress(modulus.value)),
    ...(modulus_min === null ? [] : [row(`${what}: Emin`, modulus_min, show.stress(modulus_min.value))]),
  ];
}

/** The code's loads act in turn, each together with the cables. */
function loadRows({ plan, show }: SheetContext): readonly InputRow[] {
  const { code, frame, site } = plan.job;
  const rules = guardRules(code);
  const loads: readonly InputRow[] =
    rules === null
      ? [{ what: "Loads of the code", value: `none known for ${code.edition}: only the cables are checked`, from: sourceMark("job") }]
      : guardCases(rules, frame.railIsHandrail).flatMap(({ load }) => {
          const { value } = load;
          switch (value.kind) {
            case "top":
              return [row("Single load at the top", load, `${show.forceBoth(value.force)}, ${value.directions.join(", ")}`)];
            case "line":
              return [row("Line load along the top", load, `${show.lineLoad(value.force_NPerMm)}, ${value.directions.join(", ")}`)];
            case "infill":
              return [
                row(
                  "Load on the infill",
                  load,
                  `${show.forceBoth(value.force)} on ${show.area(value.side ** 2)}; less than the load at the top`,
                ),
              ];
            default:
              return [];
          }
        });
  return [
    ...loads,
    row("Loads together", combinationRule, combinationRule.value),
    ...(isWooden(plan.job)
      ? [
          row(
            "Cables last",
            cableLoadDuration,
            `${cableLoadDuration.value}: C_D ${show.decimal(durationFactor[cableLoadDuration.value].value, 2)}`,
          ),
          row(
            "Guard loads last",
            guardLoadDuration,
            `${guardLoadDuration.value}: C_D ${show.decimal(durationFactor[guardLoadDuration.value].value, 2)}`,
          ),
          row("Wood in service", site.wet, site.wet.value ? "wet for long (over 19 %)" : "dry (19 % or less)"),
        ]
      : []),
  ];
}

export const isWooden = ({ posts, spacers, frame }: SheetContext["plan"]["job"]): boolean =>
  [posts, spacers, frame.topRail].some(({ wood }) => wood !== null);

function limitRows({ plan, show }: SheetContext): readonly InputRow[] {
  const { limits, posts, cable } = plan.job;
  const { movement_max } = plan.frame;
  const { deflectionShare_max } = limits;
  const { low, nominal, high } = cable.stiffness.value;
  const kilo = (newton: number): Text => show.decimal(newton / 1000, 0);
  return [
    row("Posts move under cables, at most", movement_max, show.diameter(movement_max.value)),
    row(
      "Deflection by guard loads, at most",
      deflectionShare_max,
      `1/${show.decimal(1 / deflectionShare_max.value, 0)} of the length that bends`,
    ),
    ...(posts.baseCapacity_Nmm === null
      ? []
      : [row("A base may take", posts.baseCapacity_Nmm, show.moment(posts.baseCapacity_Nmm.value, { rounding: "down" }))]),
    row("Strand, E A", cable.stiffness, `${kilo(nominal)} kN (${kilo(low)} - ${kilo(high)})`),
  ];
}
