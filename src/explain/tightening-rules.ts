// Why does a step of the tightening stop at its reading, after so many turns, and what do the cables carry then?
import { deflectionUnder } from "../mechanics/lateral.ts";
import { readingErrors } from "../mechanics/sequence-band.ts";
import type { TighteningStep } from "../plan/readings.ts";
import { derived, given, must, type Reader, type Simulated } from "./reader.ts";
import { pitchInputs } from "./reading-rules.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const stepPath = (run: string, step: string | undefined, field: string): string => `tightening.${run}.steps.${step}.${field}`;

const stepNamed = (reader: Reader, run: string, step: string | undefined): TighteningStep =>
  must(
    reader.tightening(run).steps.find(({ number }) => `${number}` === step),
    `step ${step} of run ${run}`,
  );

/** The step of a run as it was computed, among those of all cables on its frame, and the take-ups up to it. */
function simulatedStep(reader: Reader, { run, nth }: { readonly run: string; readonly nth: number }, simulated: Simulated) {
  const { first, group } = reader.group(run);
  const isOwn = (cable: number): boolean => cable >= first && cable < first + group.courses.length;
  const places = simulated.steps.flatMap(({ cable }, place) => (isOwn(cable) ? [place] : []));
  const place = must(places[nth], `step ${nth + 1} of run ${run}`);
  return { step: must(simulated.steps[place], "step"), before: simulated.steps.slice(0, place + 1), first };
}

/** What one cable gives way, its own stretch and its anchors, and how much the others move its anchors. */
function answersOf(reader: Reader, run: string, cable: number, tensions: readonly number[]): readonly Input[] {
  const { group } = reader.group(run);
  const others = tensions.flatMap((_, other) => (other === cable ? [] : [other]));
  const row = group.flexibility[cable] ?? [];
  const mean = (other: number): number => ((row[other] ?? 0) + (group.flexibility[other]?.[cable] ?? 0)) / 2;
  return [
    given("o", "stretch of this cable per newton at its nut", group.cableFlexibility[cable] ?? 0, "flexibility", derived("Hooke's law")),
    given("F", "closing of its anchors per newton of its own", row[cable] ?? 0, "flexibility", derived("plane frame by direct stiffness")),
    given(
      "f",
      "closing of its anchors per newton of each other cable on this frame",
      others.map(mean),
      "flexibility",
      derived("plane frame by direct stiffness"),
    ),
    given(
      "t",
      "tension of each other cable after this step",
      others.map((other) => tensions[other] ?? 0),
      "force",
    ),
  ];
}

function readingExact(reader: Reader, [run = "", step]: readonly string[]): Working {
  const { kind, pass, number } = stepNamed(reader, run, step);
  const target = reader.at("T", "target of this cable", `runs.${run}.tension.target`);
  if (kind === "plain") {
    return {
      formula: "q * T",
      inputs: [reader.at("q", "share of the target in this pass", `tightening.${run}.passes.${pass}.share`), target],
      origin: derived("a plain pass"),
    };
  }
  const simulated = reader.passes(run);
  const found = simulatedStep(reader, { run, nth: number - 1 }, simulated);
  const { cable } = found.step;
  const { group } = reader.group(run);
  const targets = group.runs.flatMap(({ id }) => group.courses.map(() => `runs.${id}.tension.target`));
  return {
    formula: "T + (dot(f, T_end) - dot(f, t)) / (o + F)",
    inputs: [
      target,
      ...answersOf(reader, run, cable, found.step.tensions),
      reader.all(
        "T_end",
        "tension of each other cable when the pass ends: its target",
        targets.filter((_, other) => other !== cable),
      ),
    ],
    origin: derived("what the other cables still take before the pass ends: (diag(L/EA) + F) T = take-up"),
    rounding: "not rounded; the step's reading is",
  };
}

const simple: readonly Rule[] = [
  rule("tightening.*.steps.*.reading", "Reading at which step {1} of run {0} stops", ({ at }, [run = "", step]) => ({
    formula: "max(s, nearest(r, s))",
    inputs: [
      at("r", "reading before rounding", stepPath(run, step, "reading_exact")),
      at("s", "step of the readings", "job.tightening.readingStep"),
    ],
    origin: derived("step targets"),
    rounding: "to the nearest step of the readings, since too high is as wrong as too low here; never to nothing",
  })),
  rule("tightening.*.steps.*.reading_exact", "Reading at which step {1} of run {0} stops, before rounding", readingExact),
  ...(["low", "high"] as const).map((end) =>
    rule(
      `tightening.*.steps.*.reading_${end}`,
      `${end === "low" ? "Least" : "Greatest"} reading at which step {1} of run {0} may stop`,
      (reader, [run = "", step]): Working => {
        const compensated = stepNamed(reader, run, step).kind === "compensated";
        const share = compensated ? "b / max(1, e)" : "b";
        const { system, tightening } = reader.passes(run);
        return {
          formula: end === "low" ? `r * (1 - ${share})` : `min(r * (1 + ${share}), W)`,
          inputs: [
            reader.at("r", "reading", stepPath(run, step, "reading")),
            reader.at("b", "allowed difference at the end, as a share", "job.tightening.band"),
            ...(compensated
              ? [
                  given(
                    "e",
                    "worst error at the end per error of every reading",
                    readingErrors(system, tightening).all,
                    "share",
                    derived("the end's answer to readings that are off"),
                  ),
                ]
              : []),
            ...(end === "high" ? [reader.at("W", "working limit of the strand", "target.workingLimit")] : []),
          ],
          origin: derived("the band that every step may use up"),
          rounding: "not in the plan; a sheet rounds it inward",
        };
      },
    ),
  ),
  rule("tightening.*.steps.*.turnsPerEnd", "Turns of each nut of run {} from its first position to the end of step {}", turns),
  rule("tightening.*.steps.*.pitch_Hz", "Pitch of the span that is read, after step {1} of run {0}", (reader, [run = "", step]) => {
    const { inputs, functions } = pitchInputs(reader);
    return {
      formula: "sqrt(pinned(L, r * t / T, m, EI1) * clamped(L, r * t / T, m, EI2))",
      inputs: [...readInputs(reader, run, step), ...inputs],
      functions,
      origin: derived("Mersenne's law of the stretched string; Euler-Bernoulli beam under tension"),
    };
  }),
  rule("tightening.*.steps.*.sag", "Sag of the span that is read, after step {1} of run {0}", (reader, [run = "", step]) => ({
    formula: "w(P, L, r * t / T, EA, R)",
    inputs: [
      reader.at("P", "weight of the sag test", "job.tightening.sagWeight"),
      ...readInputs(reader, run, step),
      reader.at("EA", "axial stiffness of the strand", "job.cable.stiffness.value.nominal"),
      reader.at("R", "length of the run, which shares the stretch", `runs.${run}.pathLength`),
    ],
    functions: {
      w: {
        means: "root w of P = T' (w / s1 + w / s2), T' = T + (EA + T) (s1 + s2 - L) / R, s1 = s2 = sqrt((L / 2)^2 + w^2)",
        of: (force, span, tension, stiffness, runLength) =>
          deflectionUnder({
            force: Number(force),
            span: Number(span),
            tension: Number(tension),
            stiffness: Number(stiffness),
            runLength: Number(runLength),
            support: "sliding",
          }).deflection,
      },
    },
    origin: derived("statics of a two-segment string"),
  })),
];

/** The span that is read, and its tension when the nut reads so. */
function readInputs(reader: Reader, run: string, step: string | undefined): readonly Input[] {
  const { bayId } = reader.run(run).proof;
  return [
    reader.at("L", `free length of span ${bayId}, the one that is read`, `runs.${run}.spans.${bayId}.free`),
    reader.at("r", "reading", stepPath(run, step, "reading")),
    reader.at("t", "tension of that span at the target", `runs.${run}.spans.${bayId}.tension`),
    reader.at("T", "target", `runs.${run}.tension.target`),
  ];
}

function turns(reader: Reader, [run = "", step]: readonly string[]): Working {
  const { number } = stepNamed(reader, run, step);
  const { step: own } = simulatedStep(reader, { run, nth: number - 1 }, reader.passes(run));
  const { left, right } = reader.run(run);
  return {
    formula: "max(0, o * r + dot(f, t) + F * r + b + u - k) / n / p",
    inputs: [
      reader.at("r", "reading before rounding", stepPath(run, step, "reading_exact")),
      ...answersOf(reader, run, own.cable, own.tensions),
      reader.at("b", "bedding-in", `runs.${run}.takeUp.bedding`),
      reader.at("u", "seating", `runs.${run}.takeUp.seating`),
      reader.at("k", "slack taken out before the nuts are turned", `runs.${run}.takeUp.slackToPull`),
      given("n", "nuts that are pulled", [left, right].filter(({ pulls }) => pulls).length, "count"),
      reader.at("p", "pitch of the thread", "job.fittings.stud.pitch"),
    ],
    origin: derived("each cable keeps its take-up; lead of a single-start thread"),
  };
}

/** Tension of any cable of a run after a step: its take-up less what the others close. */
function afterStep(
  reader: Reader,
  { run, nth, key }: { readonly run: string; readonly nth: number; readonly key: string },
  simulated: Simulated,
): Working {
  const { step, before, first } = simulatedStep(reader, { run, nth }, simulated);
  const cable = first + Number(/\d+/.exec(key)?.[0]);
  const pulled = before.findLast((one) => one.cable === cable);
  const origin = derived("each cable keeps its take-up, and none pushes: T = 0 where it is slack");
  if (pulled === undefined) return { formula: "z", inputs: [given("z", "this cable has not been pulled yet", 0, "force")], origin };
  return {
    formula: "max(0, (u - dot(f, t)) / (o + F))",
    inputs: [
      given(
        "u",
        "take-up of this cable from slack, since it was pulled last",
        pulled.takeUp,
        "length",
        derived("the same equation at that step"),
      ),
      ...answersOf(reader, run, cable, step.tensions),
    ],
    origin,
  };
}

export const tighteningRules: readonly Rule[] = [
  ...simple,
  rule(
    "tightening.*.steps.*.tensions.*",
    "Tension of one cable of run {0} after step {1}; {2} counts from the lowest",
    (reader, [run = "", step, key = ""]) =>
      afterStep(reader, { run, nth: stepNamed(reader, run, step).number - 1, key }, reader.passes(run)),
  ),
  rule(
    "tightening.*.plain.steps.*.tensions.*",
    "Tension of one cable of run {0} after course {1} was pulled to the target in one plain pass; {2} counts from the lowest",
    (reader, [run = "", course, key = ""]) =>
      afterStep(
        reader,
        { run, nth: reader.tightening(run).plain.steps.findIndex((step) => `${step.course}` === course), key },
        reader.plainPass(run),
      ),
  ),
  rule(
    "tightening.*.plain.tensions.*",
    "Tension of one cable of run {} after one plain pass over all cables; {} counts from the lowest",
    (reader, [run = "", key = ""]) => {
      const simulated = reader.plainPass(run);
      const { first } = reader.group(run);
      const cable = first + Number(/\d+/.exec(key)?.[0]);
      const pulled = must(
        simulated.steps.findLast((one) => one.cable === cable),
        "step",
      );
      return {
        formula: "max(0, (u - dot(f, t)) / (o + F))",
        inputs: [
          given("u", "take-up of this cable from slack", pulled.takeUp, "length"),
          ...answersOf(reader, run, cable, simulated.steps.at(-1)?.tensions ?? []),
        ],
        origin: derived("each cable keeps its take-up, and none pushes: T = 0 where it is slack"),
      };
    },
  ),
  rule(
    "tightening.*.highest_overTarget",
    "Highest reading of all passes of run {}, over the target",
    ({ all, at, tightening }, [run = ""]) => ({
      formula: "max(r) / T",
      inputs: [
        all(
          "r",
          "reading of each step before rounding",
          tightening(run).steps.map(({ number }) => stepPath(run, `${number}`, "reading_exact")),
        ),
        at("T", "target", `runs.${run}.tension.target`),
      ],
      origin: derived("ratio"),
    }),
  ),
];
