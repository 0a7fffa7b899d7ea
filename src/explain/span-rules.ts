// What does the criterion ask of a span, and how long might the span be?
import { longestFree, requiredTension } from "../plan/criterion.ts";
import type { Value } from "./formula.ts";
import { derived, from, given, type Reader } from "./reader.ts";
import { spanPath as path, pushMeans, sagMeans } from "./reading-rules.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const n = (value: Value | undefined): number => Number(value);

const nut = "what slides through its posts shares the stretch of the whole run";

function required(reader: Reader, [run = "", bay]: readonly string[]): Working {
  const { at, plan } = reader;
  const { criterion } = plan.job.tightening;
  const span = at("L", "length that the criterion counts", path(run, bay, "demandSpan"));
  const spacing = at("a", "widest spacing of two neighbouring cables", path(run, bay, "spacing"));
  const stiff = at("EA", "axial stiffness of the strand, least", "job.cable.stiffness.value.low");
  const length = at("R", `length of the run: ${nut}`, `runs.${run}.pathLength`);
  const demand = (free: Value | undefined, apart: number, runLength: number): number =>
    requiredTension({ free: n(free), spacing: apart, runLength }, plan.job).value ?? Number.NaN;
  switch (criterion.kind) {
    case "stated":
      return {
        formula: "T * (1 - b)",
        inputs: [
          at("T", `tension stated by ${criterion.statedBy}`, "job.tightening.criterion.tension"),
          at("b", "allowed difference of a reading, as a share", "job.tightening.band"),
        ],
        origin: from("job", "tightening: criterion"),
      };
    case "table":
      return {
        formula: "table(a, L)",
        inputs: [spacing, span],
        functions: {
          table: {
            means: "row of this cable, the next spacing and the next clear distance of posts; never read between rows",
            of: (apart, free) => demand(free, n(apart), 0),
          },
        },
        origin: from("ncc-2022", "table 11.3.6a"),
      };
    case "sag":
      return {
        formula: "tensionFor(P, f, L, EA, R)",
        inputs: [
          at("P", "weight hung at mid-span", "job.tightening.criterion.weight"),
          at("f", "sag that is allowed", "job.tightening.criterion.sag_max"),
          span,
          stiff,
          length,
        ],
        functions: {
          tensionFor: {
            means: `least T at which w(P, L, T, EA, R) is no more than f; ${sagMeans}`,
            of: (_weight, _sag, free, _stiffness, runLength) => demand(free, n(0), n(runLength)),
          },
        },
        origin: from("job", "tightening: criterion"),
        rounding: "up, by less than a millionth of the breaking force: the end of the search that does",
      };
    case "sphere":
      return {
        formula: "tensionFor(P, S, a, d, L, EA, R)",
        inputs: [
          at("P", `force agreed with ${criterion.agreedWith}`, "job.tightening.criterion.force"),
          at("S", "diameter of the sphere", "job.tightening.criterion.diameter"),
          spacing,
          at("d", "diameter of the cable", "job.cable.diameter"),
          span,
          stiff,
          length,
        ],
        functions: {
          tensionFor: {
            means: `least T at which F is P; ${pushMeans}`,
            of: (_force, _sphere, apart, _cable, free, _stiffness, runLength) => demand(free, n(apart), n(runLength)),
          },
        },
        origin: from("job", "tightening: criterion"),
      };
  }
}

/** Spans of one tension share a search, which starts from the first of them. */
function freeStop({ at, plan }: Reader, [run = "", bay]: readonly string[]): Working {
  return {
    formula: "max(L, longest(T * (l - c) / G, L, R, a))",
    inputs: [
      at("T", "tension of the span", path(run, bay, "tension")),
      at("l", "least reading that is allowed", `runs.${run}.tension.low`),
      at("c", "what is lost later", `runs.${run}.tension.covered`),
      at("G", "target", `runs.${run}.tension.target`),
      at("L", "free length as planned", path(run, bay, "free")),
      at("R", "length of the run", `runs.${run}.pathLength`),
      at("a", "widest spacing of two neighbouring cables", path(run, bay, "spacing")),
    ],
    functions: {
      longest: {
        means: "longest span at which this tension still meets the criterion; the run grows with it",
        of: (tension, free, runLength, spacing) =>
          longestFree({ free: n(free), spacing: n(spacing), runLength: n(runLength) }, n(tension), plan.job) ?? Number.NaN,
      },
    },
    origin: derived("the criterion, turned round"),
    rounding: "down, by less than a tenth of a millimetre: the end of the search that does",
  };
}

/** The code's table counts the distance between posts; a spacer is none. */
function demandSpan(reader: Reader, [run = "", bay]: readonly string[]): Working {
  const { spans, members } = reader.geometry(run);
  const own = spans.findIndex((span) => span.bay.id === bay);
  if (reader.plan.job.tightening.criterion.kind !== "table") {
    return {
      formula: "L",
      inputs: [reader.at("L", "free length of the bay", `bays.${bay}.free`)],
      origin: derived("the free length counts"),
    };
  }
  const left = members.findLastIndex(({ kind }, index) => kind === "post" && index <= own);
  const right = members.findIndex(({ kind }, index) => kind === "post" && index > own);
  const longer = spans.slice(left, right).filter(({ bay: one }) => one.longestCourse !== undefined);
  return {
    formula: longer.length === 0 ? "x2 - x1" : "x2 - x1 + sum(m)",
    inputs: [
      given("x1", "way along the cable to where it leaves the post before", spans[left]?.from ?? 0, "length"),
      given("x2", "way along the cable to where it enters the next post", spans[right - 1]?.to ?? 0, "length"),
      ...(longer.length === 0
        ? []
        : [
            given(
              "m",
              "longest cable of each bay beside a post that leans along its side, less the one laid here",
              longer.map(({ bay: one, from: start, to }) => Math.max(0, one.free - (to - start))),
              "length",
            ),
          ]),
    ],
    origin: from("ncc-2022", "table 11.3.6a: clear distance between posts"),
  };
}

export const spanRules: readonly Rule[] = [
  rule("runs.*.spans.*.demandSpan", "Length that the criterion counts for run {}, span {}", demandSpan),
  rule("runs.*.spans.*.required", "What the criterion asks of run {} in span {}", required),
  rule("runs.*.spans.*.free", "Free length of the cable of run {} in span {}", ({ at }, [, bay]) => ({
    formula: "L",
    inputs: [at("L", "free length of the bay", `bays.${bay}.free`)],
    origin: derived("plan geometry"),
  })),
  rule(
    "runs.*.spans.*.free_stop",
    "Longest free length at which run {}, span {}, at its least reading still meets the criterion",
    freeStop,
  ),
];
