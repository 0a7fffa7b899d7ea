// What can be read on a span: its pitch, its sag, what pushes a sphere through?
import { deflectionUnder, type Support } from "../mechanics/lateral.ts";
import { pitchStiff } from "../mechanics/pitch.ts";
import { pushThroughForce } from "../mechanics/push-through.ts";
import { bendingStiffness, metallicArea } from "../mechanics/strand.ts";
import { guardRules } from "../tables/limits.ts";
import type { Value } from "./formula.ts";
import { derived, from, given, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, NamedFunction, Working } from "./trace.ts";

export const spanPath = (run: string | undefined, bay: string | undefined, field: string): string => `runs.${run}.spans.${bay}.${field}`;

const path = spanPath;

const n = (value: Value | undefined): number => Number(value);

const nut = "what slides through its posts shares the stretch of the whole run";

export const sagMeans = "P = T' (w / s1 + w / s2), T' = T + (EA + T) (s1 + s2 - L) / R, s1 = s2 = sqrt((L / 2)^2 + w^2)";
export const pushMeans =
  "F = the greatest 2 P(w) sin(t) on the way through, w = (c cos(t) - a / 2) / cos(t), c = (S + d) / 2, t the angle of the contact, P(w) the force that holds a cable at w";

/** What a cable of the run does under a weight at the middle of a span. */
function hung(reader: Reader, [run = "", bay]: readonly string[], support: Support): readonly Input[] {
  const { at } = reader;
  return [
    at("L", "free length of the span", path(run, bay, "free")),
    at("T", "tension of the span", path(run, bay, "tension")),
    at("EA", "axial stiffness of the strand", "job.cable.stiffness.value.nominal"),
    support === "held"
      ? at("R", "length that stretches: the span alone", path(run, bay, "free"))
      : at("R", `length that stretches: ${nut}`, `runs.${run}.pathLength`),
  ];
}

/** The span alone stretches when R is its own length. */
const sagOf = (result: "deflection" | "tension"): NamedFunction => ({
  means: result === "deflection" ? `root w of ${sagMeans}` : `T' of ${sagMeans}`,
  of: (force, span, tension, stiffness, runLength) =>
    deflectionUnder({
      force: n(force),
      span: n(span),
      tension: n(tension),
      stiffness: n(stiffness),
      runLength: n(runLength),
      support: "sliding",
    })[result],
});

const sag =
  (support: Support): Rule["explain"] =>
  (reader, keys) => ({
    formula: "w(P, L, T, EA, R)",
    inputs: [reader.at("P", "weight of the sag test", "job.tightening.sagWeight"), ...hung(reader, keys, support)],
    functions: { w: sagOf("deflection") },
    origin: derived("statics of a two-segment string"),
  });

const infill =
  (result: "deflection" | "tension"): Rule["explain"] =>
  (reader, keys) => ({
    formula: result === "deflection" ? "w(P, L, T, EA, R)" : "tensionUnder(P, L, T, EA, R)",
    inputs: [
      reader.at("P", "share of the code's infill load that one cable takes", path(keys[0], keys[1], "underInfillLoad.load")),
      ...hung(reader, keys, "held"),
    ],
    functions: { w: sagOf("deflection"), tensionUnder: sagOf("tension") },
    origin: derived("statics of a two-segment string"),
  });

function infillLoad({ plan, at }: Reader, [run, bay]: readonly string[]): Working | null {
  const rules = guardRules({ edition: plan.job.code.edition, occupancy: plan.job.code.occupancy });
  if (rules === null) return null;
  const { infillLoad, infillArea_mm2 } = rules;
  return {
    formula: "P / max(1, down(sqrt(A) / a, 1))",
    inputs: [
      given("P", "load on the infill, square to the guard", infillLoad.value, "force", from(infillLoad.source, infillLoad.where)),
      given("A", "area that it stands on, a square", infillArea_mm2.value, "area", from(infillArea_mm2.source, infillArea_mm2.where)),
      at("a", "widest spacing of two neighbouring cables", path(run, bay, "spacing")),
    ],
    origin: from(infillLoad.source, infillLoad.where),
    rounding: "the number of cables that share the load goes down to a whole one, so that each takes more",
  };
}

const push =
  (support: Support): Rule["explain"] =>
  (reader, keys) => ({
    formula: "push(S, a, d, L, T, EA, R)",
    inputs: [
      reader.at("S", "diameter of the code's sphere", path(keys[0], keys[1], "sphere")),
      reader.at("a", "widest spacing of two neighbouring cables", path(keys[0], keys[1], "spacing")),
      reader.at("d", "diameter of the cable", "job.cable.diameter"),
      ...hung(reader, keys, support),
    ],
    functions: {
      push: {
        means: pushMeans,
        of: (sphere, spacing, cable, span, tension, stiffness, runLength) =>
          pushThroughForce({
            solid: { kind: "sphere", diameter: n(sphere) },
            spacing: n(spacing),
            cableDiameter: n(cable),
            span: n(span),
            tension: n(tension),
            stiffness: n(stiffness),
            runLength: n(runLength),
            support: "sliding",
          }).force,
      },
    },
    origin: derived("statics of a string and of a contact"),
    rounding: "not in the plan; a sheet rounds it down, since it is what holds back",
  });

function linearPush({ at }: Reader, [run, bay]: readonly string[]): Working {
  return {
    formula: "2 * (T * 4 / L) * c * (1 - (a / 2 / c) ^ (2 / 3)) ^ 1.5",
    inputs: [
      at("T", "tension of the span", path(run, bay, "tension")),
      at("L", "free length of the span", path(run, bay, "free")),
      given(
        "c",
        "half of sphere and cable together",
        (at("S", "", path(run, bay, "sphere")).value as number) / 2 + (at("d", "", "job.cable.diameter").value as number) / 2,
        "length",
      ),
      at("a", "widest spacing of two neighbouring cables", path(run, bay, "spacing")),
    ],
    origin: derived("closed form for cables that do not stretch"),
  };
}

/** Pitch with the bending stiffness of loose wires on pinned ends, and of a solid bar between clamped ones. */
export function pitchInputs({ plan, at }: Reader): {
  readonly inputs: readonly Input[];
  readonly functions: Readonly<Record<string, NamedFunction>>;
} {
  const { construction, diameter, stiffness } = plan.job.cable;
  const modulus = stiffness.value.nominal / metallicArea({ construction, diameter });
  const { loose_Nmm2, solid_Nmm2 } = bendingStiffness({ construction, diameter, modulus });
  const sound = (ends: "pinned" | "clamped", means: string): NamedFunction => ({
    means,
    of: (span, tension, mass, EI) =>
      pitchStiff({ span: n(span), tension: n(tension), mass_kgPerM: n(mass), bendingStiffness_Nmm2: n(EI), ends }),
  });
  return {
    inputs: [
      at("m", "mass of the strand", "job.cable.mass_kgPerM"),
      given("EI1", "bending stiffness of loose wires: EA (d / k)^2 / 16, k wires across", loose_Nmm2, "bending stiffness"),
      given("EI2", "bending stiffness of a solid bar: EA d^2 / 16", solid_Nmm2, "bending stiffness"),
    ],
    functions: {
      pinned: sound("pinned", "f = 1 / (2 L) sqrt(T / m) sqrt(1 + pi^2 EI / (T L^2)), ends free to turn"),
      clamped: sound(
        "clamped",
        "the lowest root of the beam under tension with ends held straight, about (1 + 2 / (L sqrt(T / EI))) times the string",
      ),
    },
  };
}

const pitch =
  (formula: string): Rule["explain"] =>
  (reader, [run, bay]) => {
    const { inputs, functions } = pitchInputs(reader);
    const strung = [
      reader.at("L", "free length of the span", path(run, bay, "free")),
      reader.at("T", "tension of the span", path(run, bay, "tension")),
    ];
    const used = Object.entries(functions).filter(([name]) => formula.includes(name));
    return {
      formula,
      inputs: [...strung, ...inputs.filter(({ symbol }) => formula.includes(symbol))],
      functions: Object.fromEntries(used),
      origin: derived("Mersenne's law of the stretched string; Euler-Bernoulli beam under tension"),
    };
  };

export const readingRules: readonly Rule[] = [
  rule("runs.*.spans.*.pitch_Hz.low", "Lowest pitch of run {}, span {}, when it is plucked", pitch("pinned(L, T, m, EI1)")),
  rule("runs.*.spans.*.pitch_Hz.high", "Highest pitch of run {}, span {}, when it is plucked", pitch("clamped(L, T, m, EI2)")),
  rule(
    "runs.*.spans.*.pitch_Hz.nominal",
    "Middle pitch of run {}, span {}, when it is plucked",
    pitch("sqrt(pinned(L, T, m, EI1) * clamped(L, T, m, EI2))"),
  ),
  rule("runs.*.spans.*.sag.held", "Sag of run {}, span {}, under the test weight, cable held at the ends of the span", sag("held")),
  rule("runs.*.spans.*.sag.sliding", "Sag of run {}, span {}, under the test weight, cable free to slide through the run", sag("sliding")),
  rule(
    "runs.*.spans.*.pushThrough.held",
    "Force that pushes the sphere through run {}, span {}, cable held at the ends of the span",
    push("held"),
  ),
  rule("runs.*.spans.*.pushThrough.sliding", "Force that pushes the sphere through run {}, span {}, cable free to slide", push("sliding")),
  rule(
    "runs.*.spans.*.pushThrough.linear",
    "Force that would push the sphere through run {}, span {}, if the cable did not stretch",
    linearPush,
  ),
  rule("runs.*.spans.*.underInfillLoad.load", "What one cable of run {} takes of the code's infill load in span {}", infillLoad),
  rule("runs.*.spans.*.underInfillLoad.deflection", "Deflection of run {}, span {}, under the code's infill load", infill("deflection")),
  rule("runs.*.spans.*.underInfillLoad.tension", "Tension of run {}, span {}, under the code's infill load", infill("tension")),
  ...(["low", "high"] as const).map((end) =>
    rule(
      `runs.*.proof.${end}`,
      `${end === "low" ? "Least" : "Greatest"} tension that may be read in the span that proves run {}`,
      ({ at, run }, [id = ""]) => ({
        formula: "t * r / T",
        inputs: [
          at("t", "tension of that span at the target", `runs.${id}.spans.${run(id).proof.bayId}.tension`),
          at("r", `${end === "low" ? "least" : "greatest"} reading at the nut`, `runs.${id}.tension.${end}`),
          at("T", "target", `runs.${id}.tension.target`),
        ],
        origin: derived("friction takes a share"),
      }),
    ),
  ),
];
