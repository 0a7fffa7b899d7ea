// To which share does a pass go, and by how much do passes that keep no limit miss it?
import { type MovementRow, movementOverLimit } from "../mechanics/order-search-figures.ts";
import { COMPENSATED, type PassKind, PLAIN, tightenInPasses } from "../mechanics/sequence.ts";
import { movementRows } from "../plan/movement.ts";
import { firstWithin, whereMost } from "./lists.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

function share({ at, plan, tightening }: Reader, [run = "", key]: readonly string[]): Working {
  const { passes } = tightening(run);
  const pass = must(
    passes.find(({ number }) => `${number}` === key),
    `pass ${key}`,
  );
  if (pass.kind === "compensated") {
    return {
      formula: "z",
      inputs: [given("z", "the last pass is compensated: it leaves every cable at its whole target", 1, "share")],
      origin: derived("step targets"),
    };
  }
  if (plan.job.tightening.passes !== null) {
    const { source, where } = plan.job.tightening.passes;
    return {
      formula: "q",
      inputs: [at("q", "share that the job asks for", `job.tightening.passes.value[${pass.number - 1}]`)],
      origin: from(source, where),
    };
  }
  const staged = pass.share < 1;
  return {
    formula: staged ? "i / n" : "z",
    inputs: staged
      ? [given("i", "number of the pass", pass.number, "count"), given("n", "passes, the compensated one included", passes.length, "count")]
      : [given("z", "plain passes go to the whole target: even stages read higher in the end, or keep the limits no better", 1, "share")],
    origin: from(
      "practice",
      "even stages, or all to the whole target: of those that keep the limits the one with the lower highest reading",
    ),
  };
}

/** How near the steps of some passes come to their limits, in their order. */
interface Nearness {
  readonly reading: readonly number[];
  readonly movement: readonly number[];
  readonly courses: readonly number[];
  readonly passes: readonly number[];
}

function nearness(reader: Reader, run: string, passes?: readonly PassKind[]): Nearness {
  const { group } = reader.group(run);
  const { system, tightening, steps: planned } = reader.passes(run);
  const steps = passes === undefined ? planned : tightenInPasses(system, tightening, passes);
  const rows: readonly MovementRow[] = movementRows(group, reader.plan.job);
  return {
    reading: steps.map(({ reading }) => reading / reader.plan.target.workingLimit),
    movement: steps.map(({ tensions }) => movementOverLimit(rows, tensions)),
    courses: steps.map(({ cable }) => (cable % group.courses.length) + 1),
    passes: steps.map(({ pass }) => pass),
  };
}

const brokenWords = { reading: "reading", movement: "largest movement of a post" } as const;

const overs = (reader: Reader, run: string, broken: "reading" | "movement") =>
  given(
    "q",
    `${brokenWords[broken]} at each step of all runs on this frame, over its limit`,
    nearness(reader, run)[broken],
    "share",
    derived(
      broken === "reading" ? "readings over the strand's working limit" : "plane frame by direct stiffness, over the limit of movement",
    ),
  );

const refused = ({ tightening }: Reader, run: string) => must(tightening(run).refusal ?? undefined, `refusal of run ${run}`);

const nearest = derived("of all ways with as many passes as a crew can be asked for, the one that comes nearest to its limits");

function overLimit(reader: Reader, [run = ""]: readonly string[]): Working {
  const { broken } = refused(reader, run);
  const { steps } = reader.passes(run);
  if (broken === "reading") {
    return {
      formula: "max(r) / W",
      inputs: [
        given(
          "r",
          "reading of each step of all runs on this frame, before rounding",
          steps.map(({ reading }) => reading),
          "force",
          derived("each cable keeps its take-up"),
        ),
        reader.at("W", "working limit of the strand", "target.workingLimit"),
      ],
      origin: nearest,
    };
  }
  const { group } = reader.group(run);
  const { movement } = nearness(reader, run);
  const { tensions } = must(steps[movement.indexOf(Math.max(...movement))], "step");
  const rows = movementRows(group, reader.plan.job);
  const worst = must(rows.toSorted((one, other) => movementOverLimit([other], tensions) - movementOverLimit([one], tensions))[0], "place");
  return {
    formula: "abs(dot(f, t)) / m",
    inputs: [
      given(
        "f",
        "movement of the place that moves most per newton at the nut of each cable on this frame",
        worst.perPull,
        "flexibility",
        derived("plane frame by direct stiffness"),
      ),
      given("t", "tension of each of them after the step that moves it most", tensions, "force", derived("each cable keeps its take-up")),
      reader.at("m", "largest movement that is allowed", "frame.movement_max"),
    ],
    origin: nearest,
  };
}

function targetShare(reader: Reader, [run = ""]: readonly string[]): Working {
  const { reading, movement } = nearness(reader, run);
  return {
    formula: "min(1, 1 / max(max(a), max(b)))",
    inputs: [
      given("a", "reading of each step of all runs on this frame, over the working limit", reading, "share", derived("ratio")),
      given("b", "largest movement of a post at each step, over its limit", movement, "share", derived("ratio")),
    ],
    origin: derived("readings and movements go with the target"),
  };
}

/** The ways to divide a number of passes that the plan tries; the last pass is compensated. */
function ways(passes: number): readonly (readonly PassKind[])[] {
  const before = Array.from({ length: passes - 1 }, (_, index) => index + 1);
  return [
    [...before.map(() => PLAIN), COMPENSATED],
    [...before.map((number): PassKind => ({ kind: "plain", share: number / passes })), COMPENSATED],
  ];
}

/** A limit is kept when it is met but for rounding. */
const DUST = 1e-9;

function morePasses(reader: Reader, [run = ""]: readonly string[]): Working {
  const most = reader.number("job.tightening.passes_max");
  const count = must(refused(reader, run).morePasses ?? undefined, "count of passes") - most;
  const best = Array.from({ length: count }, (_, nth) =>
    Math.min(
      ...ways(most + nth + 1).map((passes) => {
        const { reading, movement } = nearness(reader, run, passes);
        return Math.max(...reading, ...movement);
      }),
    ),
  );
  return {
    formula: "p + first(q, l)",
    inputs: [
      reader.at("p", "most passes that a crew can be asked for", "job.tightening.passes_max"),
      given(
        "q",
        "with one pass more, two more and so on: the greatest reading or movement over its limit",
        best,
        "share",
        derived("ratio"),
      ),
      given("l", "a limit that is met, but for rounding", 1 + DUST, "share"),
    ],
    functions: { first: firstWithin },
    origin: derived("passes added one after the other until all limits are kept"),
  };
}

const refusals: readonly Rule[] = [
  rule(
    "tightening.*.refusal.overLimit",
    "By how much the passes of run {} miss the limit that they miss most, as reading over limit",
    overLimit,
  ),
  ...(["course", "pass"] as const).map((field) =>
    rule(
      `tightening.*.refusal.${field}`,
      `The ${field} in which run {} and those on its frame miss their limit most`,
      (reader, [run = ""]) => ({
        formula: "whereMost(q, n)",
        inputs: [
          overs(reader, run, refused(reader, run).broken),
          given("n", `${field} of each of these steps`, nearness(reader, run)[field === "course" ? "courses" : "passes"], "count"),
        ],
        functions: { whereMost },
        origin: nearest,
      }),
    ),
  ),
  rule("tightening.*.refusal.targetShare", "Share of the target of run {} with which its passes would keep their limits", targetShare),
  rule("tightening.*.refusal.morePasses", "Passes with which run {} would keep its limits", morePasses),
];

export const programmeRules: readonly Rule[] = [
  rule("tightening.*.passes.*.share", "Share of the target of run {} to which pass {} goes", share),
  ...refusals,
];
