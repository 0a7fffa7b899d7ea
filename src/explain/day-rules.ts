// What do the steps of a run read on another day, and what its cables when all is done?
import { derived, given, must } from "./reader.ts";
import { pitchInputs } from "./reading-rules.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const indexOf = (key: string | undefined): number => Number(/\d+/.exec(key ?? "")?.[0]);

export const dayRules: readonly Rule[] = [
  rule("tightening.*.most_onAnyDay", "Most that a step of run {} may come to on any day of the table", (reader, [run = ""]) => {
    const { steps, days: table } = reader.tightening(run);
    const tops = table.flatMap(({ readings }) =>
      readings.flatMap((reading, place) => {
        const step = steps[place];
        return reading === null || step === undefined ? [] : [(reading * step.reading_high) / step.reading];
      }),
    );
    return {
      formula: "min(W, max(r, t))",
      inputs: [
        reader.at("W", "working limit of the strand", "target.workingLimit"),
        reader.all(
          "r",
          "greatest reading of each step in the log",
          steps.map(({ number }) => `tightening.${run}.steps.${number}.reading_high`),
        ),
        given("t", "readings of the table of days, each with the band of its step", tops, "force"),
      ],
      origin: derived("a band moves with its reading, and no reading goes above the working limit"),
    };
  }),
  rule(
    "tightening.*.days.*.temperature",
    "Temperature of day {1} in the table of step readings of run {0}",
    ({ at, plan }, [run, day]) => ({
      formula: "c + i * (w - c) / n",
      inputs: [
        at("c", "coldest day", "job.site.coldest"),
        at("w", "warmest day", "job.site.warmest"),
        given("i", "number of the day from 0", indexOf(day), "count"),
        given("n", "steps of the table", (plan.climate.find(({ runId }) => runId === run)?.days.length ?? 0) - 1, "count"),
      ],
      origin: derived("even steps over the site's range"),
    }),
  ),
  rule(
    "tightening.*.days.*.added",
    "What the cable of run {} that needs most reads above the target on day {} of the table",
    ({ at }, [run, day]) => ({
      formula: "h - T",
      inputs: [
        at("h", "greatest reading of its cables on this day", `climate.${run}.days${day}.high`),
        at("T", "target", `runs.${run}.tension.target`),
      ],
      origin: derived("difference"),
    }),
  ),
  rule(
    "tightening.*.days.*.readings.*",
    "Reading at which a step of run {} stops on day {} of the table; {} counts from the first step",
    (reader, [run = "", day, key]) => {
      const { number } = must(reader.tightening(run).steps[indexOf(key)], `step ${key}`);
      return {
        formula: "nearest(r * h / T, s)",
        inputs: [
          reader.at("r", "reading of this step in the log, before rounding", `tightening.${run}.steps.${number}.reading_exact`),
          reader.at("h", "greatest reading of its cables on this day: what the target is then", `climate.${run}.days${day}.high`),
          reader.at("T", "target", `runs.${run}.tension.target`),
          reader.at("s", "step of the readings", "job.tightening.readingStep"),
        ],
        origin: derived("all readings of a run grow alike with its target; the cable that needs most sets it for all"),
        rounding: "to the nearest step of the readings",
      };
    },
  ),
  ...(["low", "high"] as const).map((end) =>
    rule(
      `tightening.*.days.*.end.${end}`,
      `${end === "low" ? "Least" : "Greatest"} reading at the nuts of run {} on day {} of the table, when all is done`,
      ({ at }, [run, day]): Working => ({
        formula: end === "low" ? "l + a" : "min(l + a, max(l, W))",
        inputs: [
          at("l", "the same at the reference temperature", `runs.${run}.tension.${end}`),
          at("a", "what the cable that needs most reads above the target on this day", `tightening.${run}.days${day}.added`),
          ...(end === "high" ? [at("W", "working limit of the strand", "target.workingLimit")] : []),
        ],
        origin: derived("a band moves with its reading, and no reading goes above the working limit"),
        rounding: "not in the plan; a sheet rounds it inward",
      }),
    ),
  ),
  rule(
    "tightening.*.days.*.end.pitch_Hz",
    "Pitch of the span that is read on run {} on day {} of the table, when all is done",
    (reader, [run = "", day]) => {
      const { inputs, functions } = pitchInputs(reader);
      const { bayId } = reader.run(run).proof;
      return {
        formula: "sqrt(pinned(L, h * t / T, m, EI1) * clamped(L, h * t / T, m, EI2))",
        inputs: [
          reader.at("L", `free length of span ${bayId}, the one that is read`, `runs.${run}.spans.${bayId}.free`),
          reader.at("h", "greatest reading of its cables on this day: what the target is then", `climate.${run}.days${day}.high`),
          reader.at("t", "tension of that span at the target", `runs.${run}.spans.${bayId}.tension`),
          reader.at("T", "target", `runs.${run}.tension.target`),
          ...inputs,
        ],
        functions,
        origin: derived("Mersenne's law of the stretched string; Euler-Bernoulli beam under tension"),
      };
    },
  ),
];
