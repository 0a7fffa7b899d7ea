// What do warmth, drying and bedding-in take from a cable, and what is read on another day?
import { unstressedLength } from "../mechanics/stretch.ts";
import { closingByTemperature } from "../mechanics/temperature.ts";
import type { RunClimate } from "../plan/climate-plan.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const causes = ["heat", "cold", "settling", "both"] as const;
type Cause = (typeof causes)[number];

const causeWords: Readonly<Record<Cause, string>> = {
  heat: "the warmest day",
  cold: "the coldest day",
  settling: "drying and bedding-in",
  both: "the day that slackens most, drying and bedding-in together",
};

/** What the plan says of the climate of a run. */
export const climateNamed = ({ plan }: Reader, run: string): RunClimate =>
  must(
    plan.climate.find(({ runId }) => runId === run),
    `climate of run ${run}`,
  );

/** Warmth above the reference, and whether posts have dried and the strand has bedded in. */
interface Change {
  readonly warmer: Input;
  readonly settles: boolean;
}

const warmth = (reader: Reader, temperature: number, what: string): Input =>
  given("dt", `warmth above the reference: ${what}`, temperature - reader.plan.job.site.reference.value, "warmth");

function changeOf(reader: Reader, run: string, cause: Cause): Change {
  const { warmest, coldest, reference } = reader.plan.job.site;
  const settles = cause === "settling" || cause === "both";
  const isCold = cause === "cold" || (cause === "both" && climateNamed(reader, run).slackest.temperature === coldest.value);
  if (isCold) return { warmer: warmth(reader, coldest.value, "the coldest day"), settles };
  return {
    warmer: cause === "settling" ? warmth(reader, reference.value, "none") : warmth(reader, warmest.value, "the warmest day"),
    settles,
  };
}

interface CableChange {
  /** Length without tension, after the change. */
  readonly slackLength: number;
  /** How much nearer the anchors come if no cable pulls. */
  readonly closing: number;
  readonly stiffness: number;
}

function cableChange(reader: Reader, run: string, course: number, { warmer, settles }: Change): CableChange {
  const { group, first } = reader.group(run);
  const { expansion, shrinkage, bedding } = climateNamed(reader, run);
  const length = reader.geometry(run).pathLength;
  const stiffness = length / (group.cableFlexibility[first + course] ?? 1);
  const tension = reader.run(run).tension.target;
  const degrees = Number(warmer.value);
  const closings = closingByTemperature({
    warmer: degrees,
    expansion_deck_perC: expansion.deck.value,
    expansion_rail_perC: expansion.rail.value,
    perDeckStrain: group.perDeckStrain,
    perRailStrain: group.perRailStrain,
  });
  return {
    stiffness,
    closing: (closings[first + course] ?? 0) + (settles ? shrinkage.closing : 0),
    slackLength: (unstressedLength({ length, tension, stiffness }) + (settles ? bedding : 0)) * (1 + expansion.strand.value * degrees),
  };
}

const equation =
  "T' s / EA + sum F (T' - T) = L - c - s for each tight cable, T' = 0 where it is slack; unstressed length as EN 1993-1-11 has it";

/** What goes into the loss of one cable, but for what the others lose. */
function lossInputs(reader: Reader, run: string, course: number, change: Change): readonly Input[] {
  const { group, first } = reader.group(run);
  const { slackLength, closing, stiffness } = cableChange(reader, run, course, change);
  const row = group.flexibility[first + course] ?? [];
  const mean = (other: number): number => ((row[other] ?? 0) + (group.flexibility[other]?.[first + course] ?? 0)) / 2;
  const others = row.flatMap((_, other) => (other === first + course ? [] : [mean(other)]));
  return [
    reader.at("T", "target at the nut", `runs.${run}.tension.target`),
    reader.at("L", "length of the run", `runs.${run}.pathLength`),
    change.warmer,
    given(
      "s",
      "length of this cable without tension, after the change: (L / (1 + T / EA) + bedding-in) (1 + alpha dt)",
      slackLength,
      "length",
    ),
    given("c", "how much nearer its anchors come if no cable pulls: deck and rails by their warmth, posts by drying", closing, "length"),
    given("EA", "axial stiffness of the strand, counted at the nut", stiffness, "axial stiffness"),
    given(
      "F",
      "closing of its anchors per newton of its own",
      row[first + course] ?? 0,
      "flexibility",
      derived("plane frame by direct stiffness"),
    ),
    given(
      "f",
      "closing of its anchors per newton of each other cable on this frame",
      others,
      "flexibility",
      derived("plane frame by direct stiffness"),
    ),
  ];
}

/** Paths of one number of every other cable on the frame of a run. */
function othersOf(reader: Reader, run: string, course: number, pathOf: (run: string, course: number) => string): readonly string[] {
  const { group } = reader.group(run);
  return group.runs.flatMap(({ id }) => group.courses.flatMap((_, nth) => (id === run && nth === course ? [] : [pathOf(id, nth)])));
}

const courseOf = (key: string | undefined): number => Number(/\d+/.exec(key ?? "")?.[0]);

const eachLoss = (cause: Cause): Rule =>
  rule(
    `climate.*.${cause}.each.*`,
    `What ${causeWords[cause]} takes from one cable of run {}, at the nut; {} counts from the lowest`,
    (reader, [run = "", key]) => {
      const course = courseOf(key);
      const target = reader.at("T", "target at the nut", `runs.${run}.tension.target`);
      if (climateNamed(reader, run)[cause].slackCourses.includes(course + 1)) {
        return { formula: "T", inputs: [target], origin: derived("the cable hangs slack then: all is lost") };
      }
      const others = othersOf(reader, run, course, (id, nth) => `climate.${id}.${cause}.each[${nth}]`);
      return {
        formula: "(T * s / EA - L + s + c - dot(f, g)) / (s / EA + F)",
        inputs: [
          ...lossInputs(reader, run, course, changeOf(reader, run, cause)),
          reader.all("g", "what every other cable on this frame loses", others),
        ],
        origin: derived(equation),
      };
    },
  );

function dayReading(reader: Reader, [run = "", day = "", key]: readonly string[]): Working {
  const course = courseOf(key);
  const path = `climate.${run}.days${day}`;
  const temperature = reader.number(`${path}.temperature`);
  if (reader.number(`${path}.each${key}`) === 0) {
    return {
      formula: "z",
      inputs: [given("z", "the cable hangs slack on such a day: no reading can set it", 0, "force")],
      origin: derived(equation),
    };
  }
  const change = { warmer: warmth(reader, temperature, "this day"), settles: false };
  const { group } = reader.group(run);
  const targets = group.runs.flatMap(({ id }) =>
    group.courses.flatMap((_, nth) => (id === run && nth === course ? [] : [`runs.${id}.tension.target`])),
  );
  const others = othersOf(reader, run, course, (id, nth) => `climate.${id}.days${day}.each[${nth}]`);
  return {
    formula: "T - (T * s / EA - L + s + c - dot(f, T_all) + dot(f, t)) / (s / EA + F)",
    inputs: [
      ...lossInputs(reader, run, course, change),
      reader.all("T_all", "target of every other cable on this frame", targets),
      reader.all("t", "reading of every other cable on this day", others),
    ],
    origin: derived(equation),
  };
}

function covered({ at, plan }: Reader, [run = ""]: readonly string[]): Working {
  const { value, source, where } = plan.job.tightening.allowFor;
  if (plan.job.tightening.criterion.kind === "stated") {
    return {
      formula: "z",
      inputs: [given("z", "a stated tension makes up for nothing", 0, "force")],
      origin: from("job", "tightening: criterion"),
    };
  }
  if (value === "nothing") {
    return { formula: "z", inputs: [given("z", "the job makes up for nothing", 0, "force")], origin: from(source, where) };
  }
  return {
    formula: "max(0, l)",
    inputs: [at("l", "what is lost by the worst cable, all at their targets", `climate.${run}.covered`)],
    origin: from(source, where),
  };
}

/** Losses that differ by less are one. */
const SAME_N = 1e-9;

function coveredNow(reader: Reader, [run = ""]: readonly string[]): Working {
  const { at, plan } = reader;
  const { value, source, where } = plan.job.tightening.allowFor;
  if (value === "nothing")
    return { formula: "z", inputs: [given("z", "the job makes up for nothing", 0, "force")], origin: from(source, where) };
  const { heat, cold } = climateNamed(reader, run);
  const day = cold.worst > heat.worst ? "cold" : "heat";
  const loss = at("l", `loss of the worst cable: ${value}`, `climate.${run}.${value === "heat" ? day : "both"}.worst`);
  const found = climateNamed(reader, run).covered;
  const isNow = Math.abs(found - Math.max(0, Number(loss.value))) <= SAME_N;
  return {
    formula: isNow ? "max(0, l)" : "max(0, l, k)",
    inputs: [loss, ...(isNow ? [] : [given("k", "loss at the target of the step below, which rounds to this target", found, "force")])],
    origin: from(source, where),
  };
}

const rest: readonly Rule[] = [
  rule("runs.*.tension.covered", "What the target of run {} makes up for: weather, drying and bedding-in", covered),
  rule("climate.*.covered", "What weather, drying and bedding-in take from run {} at its target", coveredNow),
  rule("climate.*.days.*.each.*", "Reading of one cable of run {} on day {} of the table; {} counts from the lowest", dayReading),
  ...(["low", "high"] as const).map((end) =>
    rule(
      `climate.*.days.*.${end}`,
      `${end === "low" ? "Least" : "Greatest"} reading of the cables of run {} on day {} of the table`,
      ({ all, plan }, [run, day]) => ({
        formula: end === "low" ? "min(t)" : "max(t)",
        inputs: [
          all(
            "t",
            "reading of each cable from the lowest",
            plan.courses.map((_, nth) => `climate.${run}.days${day}.each[${nth}]`),
          ),
        ],
        origin: derived("of all cables of the run"),
      }),
    ),
  ),
  rule("climate.*.days.*.temperature", "Temperature of day {1} of the table of run {0}", ({ at, plan }, [run, day]) => ({
    formula: "c + i * (w - c) / n",
    inputs: [
      at("c", "coldest day", "job.site.coldest"),
      at("w", "warmest day", "job.site.warmest"),
      given("i", "number of the day from 0", courseOf(day), "count"),
      given("n", "steps of the table", (plan.climate.find(({ runId }) => runId === run)?.days.length ?? 0) - 1, "count"),
    ],
    origin: derived("even steps over the site's range"),
  })),
];

export const climateRules: readonly Rule[] = [
  ...causes.map(eachLoss),
  ...causes.map((cause) =>
    rule(
      `climate.*.${cause}.worst`,
      `What ${causeWords[cause]} takes from the cable of run {} that loses most`,
      ({ all, plan }, [run]) => ({
        formula: "max(g)",
        inputs: [
          all(
            "g",
            "what each cable loses, from the lowest",
            plan.courses.map((_, nth) => `climate.${run}.${cause}.each[${nth}]`),
          ),
        ],
        origin: derived("the worst cable decides"),
      }),
    ),
  ),
  ...rest,
];
