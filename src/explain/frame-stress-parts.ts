// How does what a post or rail may be stressed to follow from its table, and how do the terms of a sum follow from its stresses?
import { CABLES_ALONE, GROWTH, growthPart } from "../plan/frame-check-row.ts";
import { type Axis, type BendingLimit, bendingLimit, type FreeLength, type Strength } from "../plan/frame-check-strength.ts";
import { stressOf } from "../plan/frame-check-stress.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import type { Value } from "./formula.ts";
import { questionOf, railSituationOf, situationOf } from "./framed.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

/** A member under a check: what it is made of, where it is free, and what its axes are called. */
interface Stressed {
  readonly strength: Strength;
  readonly free: FreeLength;
  readonly names: Readonly<Record<Axis, string>>;
}

function stressedOf(reader: Reader, check: FrameCheck): Stressed {
  if (check.id.startsWith("post-")) {
    const posts = questionOf(reader, check.member);
    const { load } = situationOf(reader, check);
    const strength = posts.strength(load?.duration ?? posts.guard.permanent);
    return {
      strength: must(strength ?? undefined, "strength of the posts"),
      free: { length: posts.top, bends: "cantilever, load at the tip" },
      names: { x: "along", y: "square" },
    };
  }
  const { rail, bay, load } = railSituationOf(reader, check);
  return {
    strength: must(rail.strength(load?.duration ?? rail.guard.permanent) ?? undefined, `strength of the ${rail.rail}`),
    free: { length: bay.length, bends: load?.isLine === true ? "any other" : "held at both ends, load in the middle" },
    names: { x: "level", y: "upright" },
  };
}

const partPath = (check: FrameCheck, name: string): string | null => {
  const nth = check.parts.findIndex((part) => part.name === name);
  return nth < 0 ? null : `frame.checks.${check.id}.parts[${nth}].value`;
};

function partAt({ at }: Reader, check: FrameCheck, symbol: string, name: string): Input {
  return at(symbol, name, must(partPath(check, name) ?? undefined, `part ${name} of ${check.id}`));
}

function product({ factors }: Pick<BendingLimit, "factors">, kind: Strength["kind"]): Working {
  const inputs = factors.map(({ name, value, source, where }, nth) =>
    given(`k${nth + 1}`, name, value, /^(F\w+|E|stress .*)$/.test(name) ? "stress" : "share", from(source, where)),
  );
  const origin = inputs[0]?.origin ?? derived("product");
  return kind === "wood"
    ? { formula: inputs.map(({ symbol }) => symbol).join(" * "), inputs, origin }
    : { formula: inputs.length > 2 ? "min(k1 / k2, k3 / k4)" : "k1 / k2", inputs, origin };
}

function columnLimit(reader: Reader, { id, factors }: FrameCheck, kind: Strength["kind"]): Working {
  const start = kind === "wood" ? factors.findIndex(({ name }) => name === "Fc") : factors.length - 3;
  const inputs = factors.slice(start).map(({ name }, nth) => reader.at(`k${nth + 1}`, name, `frame.checks.${id}.factors[${start + nth}]`));
  return kind === "wood"
    ? { formula: inputs.map(({ symbol }) => symbol).join(" * "), inputs, origin: from("nds-2018", "table 4.3.1 and 3.7.1") }
    : { formula: "k2 / k3", inputs: inputs.slice(1), origin: derived("failing stress over its safety") };
}

/** The compression of a column; nothing without one. */
interface Pressed {
  readonly stress: string;
  readonly inputs: readonly Input[];
}

function pressed(reader: Reader, check: FrameCheck): Pressed | null {
  if (partPath(check, "P") === null) return null;
  return { stress: "P / A", inputs: [partAt(reader, check, "P", "P"), partAt(reader, check, "A", "A")] };
}

/** Elastic buckling stress of the member along one axis: its formula and inputs. */
function bucklingStress({ strength, free }: Stressed, axis: Axis): Pressed {
  const length = given("L", "length between the posts, over which it may buckle", free.length, "length", derived("difference of stations"));
  const { section } = strength;
  if (strength.kind === "wood") {
    return {
      stress: "(0.822 * E / (L / s) ^ 2)",
      inputs: [
        given("E", "least modulus, for buckling", strength.modulus_min, "stress", from("nds-2018", "table 4.3.1")),
        length,
        given("s", "size along the buckling", section[axis].size, "length"),
      ],
    };
  }
  return {
    stress: "(pi ^ 2 * E * I / (B * L ^ 2))",
    inputs: [
      given("E", "modulus", strength.alloy.modulus.value, "stress", from(strength.alloy.modulus.source, strength.alloy.modulus.where)),
      given("I", "second moment along the buckling", section[axis].inertia_mm4, "second moment", derived("composite section")),
      given("B", "area of the whole section", section.area_mm2, "area", derived("composite section")),
      length,
    ],
  };
}

/** Bending stress over what is allowed, from the parts of one axis. */
function bentShare(reader: Reader, check: FrameCheck, name: string): Pressed {
  const part = (symbol: string, kind: string): Input => partAt(reader, check, symbol, `${kind} ${name}`);
  return { stress: "M / S / F", inputs: [part("M", "M"), part("S", "S"), part("F", "Fb'")] };
}

const other = (axis: Axis): Axis => (axis === "x" ? "y" : "x");
const nds = from("nds-2018", "3.9.2");

/** The terms of the sum of wood: the first way is that along the greater size. */
function woodTerm(reader: Reader, check: FrameCheck, stressed: Stressed & { readonly edge: Axis }, name: string): Working | null {
  const { names, edge } = stressed;
  const axial = pressed(reader, check);
  if (name.startsWith("(fc/Fc')")) {
    if (axial === null) return null;
    return { formula: `(${axial.stress} / F) ^ 2`, inputs: [...axial.inputs, partAt(reader, check, "F", "Fc'")], origin: nds };
  }
  if (name === "fc/FcE1") {
    const buckling = bucklingStress(stressed, edge);
    return axial === null
      ? null
      : { formula: `${axial.stress} / ${buckling.stress}`, inputs: [...axial.inputs, ...buckling.inputs], origin: nds };
  }
  if (name.startsWith("fc/FcE2")) return woodSecondRoom(reader, check, stressed, axial);
  const isFirst = name.startsWith("fb1/");
  if (!isFirst && !name.startsWith("fb2/")) return null;
  const share = bentShare(reader, check, names[isFirst ? edge : other(edge)]);
  const room = isFirst ? "fc/FcE1" : "fc/FcE2 + (fb1/FbE)^2";
  if (partPath(check, room) === null) return { formula: share.stress, inputs: share.inputs, origin: nds };
  return { formula: `${share.stress} / (1 - r)`, inputs: [...share.inputs, partAt(reader, check, "r", room)], origin: nds };
}

function woodSecondRoom(reader: Reader, check: FrameCheck, stressed: Stressed & { readonly edge: Axis }, axial: Pressed | null): Working {
  const { strength, free, names, edge } = stressed;
  const turning = bendingLimit(strength, edge, free).bucklingStress;
  const buckling = bucklingStress(stressed, other(edge));
  const terms: readonly Pressed[] = [
    ...(axial === null ? [] : [{ stress: `${axial.stress} / ${buckling.stress}`, inputs: [...axial.inputs, ...buckling.inputs] }]),
    ...(Number.isFinite(turning)
      ? [
          {
            stress: "(M / S / T) ^ 2",
            inputs: [
              partAt(reader, check, "M", `M ${names[edge]}`),
              partAt(reader, check, "S", `S ${names[edge]}`),
              given("T", "FbE: bending stress at which it turns over", turning, "stress", from("nds-2018", "3.3.3")),
            ],
          },
        ]
      : []),
  ];
  return { formula: terms.map(({ stress }) => stress).join(" + "), inputs: terms.flatMap(({ inputs }) => inputs), origin: nds };
}

function metalTerm(reader: Reader, check: FrameCheck, stressed: Stressed, name: string): Working | null {
  const origin = from(check.source, check.sourceWhere);
  const axial = pressed(reader, check);
  if (name === "fc/Fc") {
    if (axial === null) return null;
    return { formula: `${axial.stress} / F`, inputs: [...axial.inputs, partAt(reader, check, "F", "Fc'")], origin };
  }
  const axis = /^fb([xy])\/Fb, amplified$/.exec(name)?.[1] as Axis | undefined;
  if (axis === undefined || stressed.strength.kind !== "metal") return null;
  const share = bentShare(reader, check, stressed.names[axis]);
  if (axial === null) return { formula: share.stress, inputs: share.inputs, origin };
  const buckling = bucklingStress(stressed, axis);
  const { amplification } = stressed.strength.basis;
  return {
    formula: `${share.stress} / (1 - a * ${axial.stress} / ${buckling.stress})`,
    inputs: [
      ...share.inputs,
      given("a", "amplification", amplification.value, "share", from(amplification.source, amplification.where)),
      ...axial.inputs,
      ...buckling.inputs,
    ],
    origin,
  };
}

const single = (value: Value | undefined): number => Number(value ?? 0);

/** How far the tensions may grow: the sum rises faster than they do. */
function growth(reader: Reader, check: FrameCheck, { strength, free, names }: Stressed): Working {
  const moments = (["x", "y"] as const).map((axis) => {
    const own = partPath(check, `M ${names[axis]}`);
    return own === null ? given(`M${axis}`, `no moment ${names[axis]}`, 0, "moment") : reader.at(`M${axis}`, `M ${names[axis]}`, own);
  });
  const force = partPath(check, "P") === null ? given("P", "no thrust", 0, "force") : partAt(reader, check, "P", "P");
  const modulus = (axis: Axis): number => {
    const own = partPath(check, `S ${names[axis]}`);
    return own === null ? strength.section[axis].modulus_mm3 : reader.number(own);
  };
  const modulus_mm3 = { x: modulus("x"), y: modulus("y") };
  return {
    formula: "growth(P, Mx, My)",
    inputs: [force, ...moments],
    functions: {
      growth: {
        means:
          "factor on the thrust and both moments at which the sum of this check comes to 1, found by halving twenty times the range in which it must lie",
        of: (thrust, level, upright) =>
          growthPart(
            (factor) =>
              stressOf(strength, {
                force: factor * single(thrust),
                moment: { x: factor * single(level), y: factor * single(upright) },
                modulus_mm3,
                free,
                names,
              }).check.ratio,
          ).value,
      },
    },
    origin: from(check.source, check.sourceWhere),
  };
}

/** A part of a check of stress; null where it is none of these. */
export function stressPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  if (!/^(post|top-rail|bottom-rail)-(cables|guard)-/.test(check.id)) return null;
  const stressed = stressedOf(reader, check);
  const { strength, free, names } = stressed;
  if (name === GROWTH) return check.loads === CABLES_ALONE ? growth(reader, check, stressed) : null;
  if (name.startsWith("Fb' ")) return product(bendingLimit(strength, name.endsWith(names.x) ? "x" : "y", free), strength.kind);
  if (name === "Fc'") return columnLimit(reader, check, strength.kind);
  const edge: Axis = strength.section.x.size > strength.section.y.size ? "x" : "y";
  return strength.kind === "wood" ? woodTerm(reader, check, { ...stressed, edge }, name) : metalTerm(reader, check, stressed, name);
}
