// How do the demand and the capacity of a check of the frame follow from its parts?
import { TURNING } from "../plan/frame-check-strength.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import { ownDemand } from "./frame-part-rules.ts";
import { from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Origin, Working } from "./trace.ts";

/** A row whose member buckles before it can answer has this in place of a ratio, and parts of the size below. */
const MOST_ratio = 99;
const MOST_part = 1e15;

interface Form {
  /** How the row's own formula begins. */
  readonly is: RegExp;
  readonly formula: string;
  /** Symbol and how the name of its part begins. */
  readonly parts: readonly (readonly [symbol: string, name: string])[];
}

const bent = [
  ["b1", "fb1/"],
  ["b2", "fb2/"],
] as const;
const amplified = [
  ["b1", "fbx/Fb"],
  ["b2", "fby/Fb"],
] as const;

const forms: readonly Form[] = [
  {
    is: /^fb = M \/ S /,
    formula: "M / S",
    parts: [
      ["M", "M"],
      ["S", "S"],
    ],
  },
  {
    is: /^fc = P \/ A /,
    formula: "P / A",
    parts: [
      ["P", "P"],
      ["A", "A"],
    ],
  },
  {
    is: /^fv = 3 V \/ \(2 A\) /,
    formula: "3 * V / (2 * A)",
    parts: [
      ["V", "V"],
      ["A", "A"],
    ],
  },
  {
    is: /^fv = V \/ A /,
    formula: "V / A",
    parts: [
      ["V", "V"],
      ["A", "A"],
    ],
  },
  {
    is: /^le \/ d /,
    formula: "le / d",
    parts: [
      ["le", "le"],
      ["d", "d"],
    ],
  },
  {
    is: /^b \/ t /,
    formula: "b / t",
    parts: [
      ["b", "b"],
      ["t", "t"],
    ],
  },
  {
    is: /^M = sqrt\(/,
    formula: "hypot(M1, M2)",
    parts: [
      ["M1", "M along"],
      ["M2", "M square"],
    ],
  },
  {
    is: /^P h\^3/,
    formula: "u1 + u2",
    parts: [
      ["u1", "by bending of the post"],
      ["u2", "by turn of its base"],
    ],
  },
  {
    is: /^M, to be carried$/,
    formula: "hypot(M1, M2)",
    parts: [
      ["M1", "M along"],
      ["M2", "M square"],
    ],
  },
  {
    is: /^M, to be carried with P$/,
    formula: "max(M1, M2)",
    parts: [
      ["M1", "M level"],
      ["M2", "M upright"],
    ],
  },
  { is: /^M, to be carried by a spacer$/, formula: "M", parts: [["M", "M"]] },
  {
    is: /^V = P \(1/,
    formula: "P * (1 - w / (2 * L))",
    parts: [
      ["P", "P"],
      ["w", "w"],
      ["L", "L"],
    ],
  },
  { is: /^P, to be carried$/, formula: "P", parts: [["P", "P"]] },
  { is: /^fb\/Fb/, formula: "b1 + b2", parts: bent },
  { is: /^fb\/Fb/, formula: "b1 + b2", parts: amplified },
  { is: /^\(fc\/Fc'\)\^2/, formula: "a + b1 + b2", parts: [["a", "(fc/Fc')^2"], ...bent] },
  { is: /^fc\/Fc \+/, formula: "a + b1 + b2", parts: [["a", "fc/Fc"], ...amplified] },
];

const half: Form = { is: /^fc\/Fc \(half/, formula: "a / 2 + b1 + b2", parts: [["a", "fc/Fc"], ...amplified] };
/** Where the compression is a fifth of what is allowed or more. */
const full: Form = { ...half, formula: "a + 8 / 9 * (b1 + b2)" };
const FIFTH = 0.2;

const named = ({ plan }: Reader, id: string): FrameCheck =>
  must(
    plan.frame.checks.find((one) => one.id === id),
    `frame check ${id}`,
  );
const originOf = ({ source, sourceWhere }: FrameCheck): Origin => from(source, sourceWhere);

const partAt = ({ parts }: FrameCheck, name: string): number =>
  parts.findIndex((part) => part.name === name || (/[/^]/.test(name) && part.name.startsWith(name)));

function formOf(check: FrameCheck): Form | undefined {
  const compression = check.parts[partAt(check, "fc/Fc")]?.value ?? 0;
  const all = [...forms, compression < FIFTH ? half : full];
  const fits = ({ is, parts }: Form): readonly boolean[] =>
    is.test(check.formula) ? parts.map(([, name]) => partAt(check, name) >= 0) : [];
  // A term of a sum that is nothing is left out of the parts.
  return all.find((form) =>
    /^(fb|fc|\(fc)\//.test(check.formula) ? fits(form).some(Boolean) : fits(form).length > 0 && fits(form).every(Boolean),
  );
}

function demand(reader: Reader, [id = ""]: readonly string[]): Working | null {
  const check = named(reader, id);
  const form = formOf(check);
  if (form === undefined) return ownDemand(reader, check);
  const inputs = form.parts.map(([symbol, name]): Input => {
    const nth = partAt(check, name);
    if (nth < 0) return given(symbol, `${name}: nothing acts so`, 0, "share");
    return reader.at(symbol, `${check.parts[nth]?.name}, ${check.member}`, `frame.checks.${id}.parts[${nth}].value`);
  });
  if (inputs.some(({ value }) => Number(value) >= MOST_part)) {
    return {
      formula: "z",
      inputs: [given("z", "the member buckles under this before it can bend: no number says how much", MOST_ratio, "share")],
      origin: originOf(check),
    };
  }
  return { formula: form.formula, inputs, origin: originOf(check) };
}

function capacity(reader: Reader, [id = ""]: readonly string[]): Working | null {
  const check = named(reader, id);
  const { at } = reader;
  const origin = originOf(check);
  const factors = check.factors.map(
    ({ name, value, source, where }, nth): Input =>
      given(`k${nth + 1}`, name, value, /^(F\w+|E|stress .*)$/.test(name) ? "stress" : "share", from(source, where)),
  );
  const names = check.factors.map(({ name }) => name).join();
  if (/<= 1$/.test(check.formula))
    return { formula: "l", inputs: [given("l", "parts of what is allowed add up to 1 at most", 1, "share")], origin };
  if (/^le \/ d/.test(check.formula))
    return { formula: "l", inputs: [given("l", "most slender that a column of wood may be", 50, "share")], origin };
  if (/^f[bcv] = .*'$/.test(check.formula)) return { formula: factors.map(({ symbol }) => symbol).join(" * "), inputs: factors, origin };
  if (names === "Fy,Omega,Fu,Omega of rupture") return { formula: "min(k1 / k2, k3 / k4)", inputs: factors, origin };
  if (names === "Fy,Omega,share of Fy") return { formula: "k1 / k2 * k3", inputs: factors, origin };
  if (names === `${TURNING},Omega`) return { formula: "k1 / k2", inputs: factors, origin };
  if (names === "k,E,Fy") return { formula: "k1 * sqrt(k2 / k3)", inputs: factors, origin };
  if (/ <= capacity of a fixing$/.test(check.formula))
    return { formula: "c", inputs: [at("c", "what the fixing of either end holds", "job.spacers.fixing")], origin };
  if (/^movement /.test(check.formula))
    return { formula: "m", inputs: [at("m", "largest movement that is allowed", "frame.movement_max")], origin };
  const bends = Math.max(partAt(check, "h"), partAt(check, "L"));
  if (!/ <= share of [hL]$/.test(check.formula) || bends < 0) return null;
  return {
    formula: "q * h",
    inputs: [
      at("q", "share of the length that bends", "job.limits.deflectionShare_max"),
      at("h", "length that bends", `frame.checks.${id}.parts[${bends}].value`),
    ],
    origin,
  };
}

export const frameCheckRules: readonly Rule[] = [
  rule("frame.checks.*.ratio", "How much of its capacity the frame's check {} uses", (reader, [id = ""]) => {
    const check = named(reader, id);
    if (check.verdict === "ask" || check.capacity === 0) return null;
    return {
      formula: `min(${MOST_ratio}, D / C)`,
      inputs: [
        reader.at("D", `demand: ${check.loads}`, `frame.checks.${id}.demand`),
        reader.at("C", "capacity", `frame.checks.${id}.capacity`),
      ],
      origin: originOf(check),
    };
  }),
  rule("frame.checks.*.demand", "Demand of the frame's check {}", demand),
  rule("frame.checks.*.capacity", "Capacity of the frame's check {}", capacity),
];
