// Between which tensions may a run stand, and which number of the whole guard decides?
import { movementOverLimit } from "../mechanics/order-search-figures.ts";
import { climateOf } from "../plan/climate.ts";
import { withCables } from "../plan/frames.ts";
import { movementRows } from "../plan/movement.ts";
import { allows } from "./bound-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { needsLosses } from "./run-rules.ts";
import type { Input, Working } from "./trace.ts";

/** Most that a span asks at the nut: what it asks over its share of the pull. */
function atNut(reader: Reader, run: string): readonly Input[] {
  const { demands, low_exact } = reader.demanded(run);
  const path = (bay: string): string => `runs.${run}.spans.${bay}`;
  const target = reader.run(run).tension.target;
  const worst = demands.reduce((most, one) => {
    const ask = (bay: string): number => (reader.number(`${path(bay)}.required`) * target) / reader.number(`${path(bay)}.tension`);
    return ask(one.line.bay.id) > ask(most.line.bay.id) ? one : most;
  });
  const bay = worst.line.bay.id;
  if (!(low_exact > 0)) return [];
  return [
    reader.at("q", `what the criterion asks of span ${bay}, which asks most at the nut`, `${path(bay)}.required`),
    reader.at("t", `tension of span ${bay} at the target`, `${path(bay)}.tension`),
    reader.at("T", "target", `runs.${run}.tension.target`),
  ];
}

const windowPath = (run: string | undefined, field: string): string => `frame.windows.${run}.${field}`;

const needs = (reader: Reader, [run = "", key]: readonly string[]): Working | null => {
  const { at } = reader;
  if (key === "[0]")
    return {
      formula: "q",
      inputs: [at("q", "what the criterion asks in the worst span", `runs.${run}.tension.required`)],
      origin: derived("the worst span"),
    };
  if (key === "[1]") {
    const most = atNut(reader, run);
    if (most.length === 0) {
      const nothing = given("z", "the criterion asks nothing of any span: slack cables meet it", 0, "force");
      return { formula: "z", inputs: [nothing], origin: derived("friction takes a share") };
    }
    return {
      formula: "q * T / t - r",
      inputs: [...most, at("r", "what the criterion asks in the worst span", `runs.${run}.tension.required`)],
      origin: derived("friction takes a share"),
    };
  }
  if (key === "[2]") {
    return needsLosses(reader)
      ? {
          formula: "c",
          inputs: [at("c", "what weather, drying and bedding-in take", `climate.${run}.covered`)],
          origin: derived("made up for beforehand"),
        }
      : {
          formula: "z",
          inputs: [given("z", "a stated tension is the target as it stands", 0, "force")],
          origin: from("job", "tightening: criterion"),
        };
  }
  if (key !== "[3]") return null;
  return {
    formula: "(q + m + c) / (1 - b) - (q + m + c)",
    inputs: parts(reader, run),
    origin: derived("the low end of the band must still do"),
  };
};

const parts = ({ at }: Reader, run: string | undefined): readonly Input[] => [
  at("q", "what the criterion asks in the worst span", windowPath(run, "needs[0].tension")),
  at("m", "what friction takes on the way to it", windowPath(run, "needs[1].tension")),
  at("c", "what weather, drying and bedding-in take", windowPath(run, "needs[2].tension")),
  at("b", "allowed difference of a reading, as a share", "job.tightening.band"),
];

const windows: readonly Rule[] = [
  rule("frame.windows.*.needs.*.tension", "What run {} needs at its nut, part {}", needs),
  rule("frame.windows.*.low", "Least target of run {} whose whole band meets the criterion on the worst day", (reader, [run]) => ({
    formula: "(q + m + c) / (1 - b)",
    inputs: parts(reader, run),
    origin: derived("the low end of the band must still do"),
  })),
  rule("frame.windows.*.allows.*.tension", "What bounds the target of run {} from above, bound {}", allows),
  rule("frame.windows.*.high", "Greatest target of run {} that everything allows", ({ all, plan }, [run]) => ({
    formula: "min(a)",
    inputs: [
      all(
        "a",
        "each bound",
        (plan.frame.windows.find(({ runId }) => runId === run)?.allows ?? []).map((_, nth) => windowPath(run, `allows[${nth}].tension`)),
      ),
    ],
    origin: derived("the least bound decides"),
  })),
  rule("frame.windows.*.target", "Target of run {}", ({ at }, [run]) => ({
    formula: "T",
    inputs: [at("T", "target", `runs.${run}.tension.target`)],
    origin: derived("the same number"),
  })),
];

/** The target if the strand were as soft, or as stiff, as it may be: losses change with it. */
function band(reader: Reader, run: string, end: "low" | "high"): Working {
  const { plan, at } = reader;
  if (!needsLosses(reader))
    return {
      formula: "T",
      inputs: [at("T", "a stated tension is the target as it stands", `runs.${run}.tension.target`)],
      origin: from("job", "tightening: criterion"),
    };
  const { group } = reader.group(run);
  const soft = withCables(group, plan.job.cable.stiffness.value[end], plan.job);
  const targets = group.runs.map(({ id }) => reader.run(id).tension.target);
  const lost = must(
    climateOf(soft, targets, plan.job).find(({ runId }) => runId === run),
    `climate of run ${run}`,
  ).covered;
  const [q, m, , b] = parts(reader, run);
  return {
    formula: "max(s, up((q + m + c) / (1 - b), s))",
    inputs: [
      must(q, "part"),
      must(m, "part"),
      given(
        "c",
        `what weather, drying and bedding-in take when the strand has its ${end === "low" ? "least" : "greatest"} stiffness`,
        lost,
        "force",
      ),
      must(b, "part"),
      at("s", "step of the readings", "job.tightening.readingStep"),
    ],
    origin: derived("the low end of the band must still do"),
    rounding: "up to the step of the readings, because a lower target would not do",
  };
}

const target: readonly Rule[] = [
  ...(["low", "high"] as const).map((end) =>
    rule(
      `frame.windows.*.targetBand.${end}`,
      `Target of run {} if the strand had its ${end === "low" ? "least" : "greatest"} stiffness`,
      (reader, [run = ""]) => band(reader, run, end),
    ),
  ),
  rule("target.required", "Greatest tension that the criterion asks of any span of the guard", ({ all, plan }) => ({
    formula: "max(q)",
    inputs: [
      all(
        "q",
        "of each run",
        plan.runs.map(({ id }) => `runs.${id}.tension.required`),
      ),
    ],
    origin: derived("the worst span decides"),
  })),
  rule("target.worstSpan", "Length of the worst span, as the criterion counts it", ({ at, plan }) => {
    const run = must(
      plan.runs.find(({ spans }) =>
        spans.some(({ bayId, required }) => bayId === plan.target.worstBayId && required === plan.target.required),
      ),
      "worst span",
    );
    return {
      formula: "L",
      inputs: [at("L", `span ${plan.target.worstBayId}`, `runs.${run.id}.spans.${plan.target.worstBayId}.demandSpan`)],
      origin: derived("the worst span"),
    };
  }),
  rule("target.worstSpacing", "Widest spacing of two neighbouring cables in the worst span", ({ at, plan }) => {
    const { worstBayId } = plan.target;
    const run = must(
      plan.runs.find(({ spans }) => spans.some(({ bayId }) => bayId === worstBayId)),
      "worst span",
    );
    return {
      formula: "a",
      inputs: [at("a", `spacing in ${worstBayId}`, `runs.${run.id}.spans.${worstBayId}.spacing`)],
      origin: derived("the sphere goes through there"),
    };
  }),
  rule("target.workingLimit", "Greatest tension of the strand in any stage", ({ at }) => ({
    formula: "q * B",
    inputs: [at("q", "share of the breaking force", "job.cable.workingShare"), at("B", "breaking force", "job.cable.breakingForce")],
    origin: derived("a share of the breaking force"),
    rounding: "not in the plan; a sheet rounds it down, since it is allowed",
  })),
];

function movement(reader: Reader, [run = ""]: readonly string[]): Working {
  const { group } = reader.group(run);
  const rows = movementRows(group, reader.plan.job);
  const limit = reader.at("m", "largest movement that is allowed", "frame.movement_max");
  const worst = Math.max(...reader.passes(run).steps.map(({ tensions }) => movementOverLimit(rows, tensions)));
  return {
    formula: "d / m",
    inputs: [
      given(
        "d",
        "largest movement of a post at any step: its top, and its anchor in the middle",
        worst * Number(limit.value),
        "length",
        derived("plane frame by direct stiffness"),
      ),
      limit,
    ],
    origin: derived("ratio"),
  };
}

export const windowRules: readonly Rule[] = [
  ...windows,
  ...target,
  rule(
    "tightening.*.movement_overLimit",
    "Largest movement of a post while run {} and those on its frame are tightened, over its limit",
    movement,
  ),
];
