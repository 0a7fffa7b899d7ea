// How much of its strength does a place of a post or rail use, bent about two axes and compressed?

import { eulerColumn, woodColumn } from "../mechanics/column.ts";
import { columnStress, metalCombinedCheck, metalShearCheck } from "../mechanics/metal-checks.ts";
import { axialCheck, bendingCheck, type Part, type StrengthCheck, strengthCheck } from "../mechanics/strength-check.ts";
import { woodCombinedCheck, woodShearCheck } from "../mechanics/wood-checks.ts";
import { bucklingLengthShare } from "../tables/wood-factors.ts";
import type { Megapascal, Mm, Newton } from "../units/quantity.ts";
import {
  type Axis,
  type BendingLimit,
  bendingLimit,
  type CapacityFactor,
  type FreeLength,
  type Limit,
  type MetalStrength,
  type Rule,
  ruleOf,
  type Strength,
  type WoodStrength,
} from "./frame-check-strength.ts";

/** Forces at one place, with the section that carries them there. */
export interface Bent {
  /** Compression; 0 leaves buckling out. */
  readonly force: Newton;
  /** Without sign [N mm]. */
  readonly moment: Readonly<Record<Axis, number>>;
  /** Net section modulus [mm3]. */
  readonly modulus_mm3: Readonly<Record<Axis, number>>;
  readonly free: FreeLength;
  /** What the axes are called on paper. */
  readonly names: Readonly<Record<Axis, string>>;
}

export interface Stressed extends Rule {
  readonly check: StrengthCheck;
  readonly unit: "MPa" | "1";
  readonly formula: string;
  readonly factors: readonly CapacityFactor[];
  /** A rule of the member's shape: no lower tension helps. */
  readonly isShape?: true;
}

const AXES = ["x", "y"] as const;
const other = (axis: Axis): Axis => (axis === "x" ? "y" : "x");

export function stressOf(strength: Strength, bent: Bent): Stressed {
  const bends = AXES.filter((axis) => bent.moment[axis] > 0);
  const [first] = bends;
  if (bent.force > 0) {
    const slender = tooSlender(strength, bent);
    if (slender !== null) return slender;
    return first === undefined ? compressed(strength, bent) : combined(strength, bent);
  }
  return bends.length > 1 ? combined(strength, bent) : bentOneWay(strength, bent, first ?? "x");
}

function bentOneWay(strength: Strength, bent: Bent, axis: Axis): Stressed {
  const limit = bendingLimit(strength, axis, bent.free);
  return {
    ...ruleOf(strength, { wood: "3.3.1", metal: "bending" }),
    check: bendingCheck({ moment_Nmm: bent.moment[axis], modulus_mm3: bent.modulus_mm3[axis], allowable: limit.value }),
    unit: "MPa",
    formula: strength.kind === "wood" ? "fb = M / S <= Fb'" : "fb = M / S <= Fb",
    factors: limit.factors,
  };
}

const SLENDERNESS_max = 50;

/** Wood only: metal columns lose strength with their length, without an end. */
function tooSlender(strength: Strength, { free }: Bent): Stressed | null {
  const { section } = strength;
  const size = Math.min(section.x.size, section.y.size);
  if (strength.kind === "metal" || free.length / size <= SLENDERNESS_max) return null;
  return {
    source: "nds-2018",
    where: "3.7.1.4",
    check: strengthCheck({ demand: free.length / size, capacity: SLENDERNESS_max }, [
      { name: "le", value: free.length, unit: "mm" },
      { name: "d", value: size, unit: "mm" },
    ]),
    unit: "1",
    formula: "le / d <= 50",
    factors: [],
    isShape: true,
  };
}

interface Column {
  /** Along each axis, of the elastic buckling that moves the member along it. */
  readonly bucklingStress: Readonly<Record<Axis, Megapascal>>;
  readonly limit: Limit;
}

const HELD = "held in place at both ends";

function woodColumnOf(strength: WoodStrength, length: Mm): Column {
  const share = bucklingLengthShare[HELD];
  const [x, y] = AXES.map((axis) =>
    woodColumn({
      length: share.value * length,
      size: strength.section[axis].size,
      modulus_min: strength.modulus_min,
      compression: strength.compression.value,
    }),
  ) as [ReturnType<typeof woodColumn>, ReturnType<typeof woodColumn>];
  const factor = Math.min(x.factor, y.factor);
  const { compression } = strength;
  return {
    bucklingStress: { x: x.bucklingStress, y: y.bucklingStress },
    limit: {
      value: compression.value * factor,
      factors: [...compression.factors, { value: factor, source: "nds-2018", where: `3.7.1; ${share.where}`, name: "C_P" }],
    },
  };
}

function metalColumnOf(strength: MetalStrength, length: Mm): Column {
  const { section, alloy, basis } = strength;
  const [modulus, yieldStress] = [alloy.modulus.value, alloy.yieldStress.value];
  const [x, y] = AXES.map((axis) =>
    eulerColumn({ length, inertia_mm4: section[axis].inertia_mm4, area_mm2: section.area_mm2, modulus }),
  ) as [ReturnType<typeof eulerColumn>, ReturnType<typeof eulerColumn>];
  const weak = x.bucklingStress < y.bucklingStress ? x : y;
  const failing = columnStress({ ...weak, yieldStress, modulus, curve: basis.column.value });
  return {
    bucklingStress: { x: x.bucklingStress, y: y.bucklingStress },
    limit: {
      value: failing / basis.yieldSafety.value,
      factors: [
        { ...alloy.yieldStress, name: "Fy" },
        { ...basis.column, value: failing, name: "stress at which the column fails" },
        { ...basis.yieldSafety, name: "Omega" },
      ],
    },
  };
}

const columnOf = (strength: Strength, length: Mm): Column =>
  strength.kind === "wood" ? woodColumnOf(strength, length) : metalColumnOf(strength, length);

function compressed(strength: Strength, { force, free }: Bent): Stressed {
  const { limit } = columnOf(strength, free.length);
  return {
    ...ruleOf(strength, { wood: "3.6.3 and 3.7.1", metal: "compression" }),
    check: axialCheck({ force, area_mm2: strength.section.area_mm2, allowable: limit.value }),
    unit: "MPa",
    formula: strength.kind === "wood" ? "fc = P / A <= Fc'" : "fc = P / A <= Fc",
    factors: limit.factors,
  };
}

const UNBUCKLED = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY } as const;

function combined(strength: Strength, bent: Bent): Stressed {
  const { force, moment, modulus_mm3, free, names } = bent;
  const { area_mm2 } = strength.section;
  const limits = { x: bendingLimit(strength, "x", free), y: bendingLimit(strength, "y", free) };
  const stress = { x: moment.x / modulus_mm3.x, y: moment.y / modulus_mm3.y };
  const column = force > 0 ? columnOf(strength, free.length) : null;
  const compression = force / area_mm2;
  const of = {
    compression,
    compressionAllowable: column?.limit.value ?? limits.x.value,
    bucklingStress: column?.bucklingStress ?? UNBUCKLED,
  };
  const check = strength.kind === "wood" ? woodSum(strength, { ...of, limits, stress }) : metalSum(strength, { ...of, stress });
  const bendingParts = AXES.flatMap((axis): readonly Part[] => [
    { name: `M ${names[axis]}`, value: moment[axis], unit: "N mm" },
    { name: `S ${names[axis]}`, value: modulus_mm3[axis], unit: "mm3" },
    { name: `Fb' ${names[axis]}`, value: limits[axis].value, unit: "MPa" },
  ]);
  const axialParts: readonly Part[] =
    column === null
      ? []
      : [
          { name: "P", value: force, unit: "N" },
          { name: "A", value: area_mm2, unit: "mm2" },
          { name: "Fc'", value: column.limit.value, unit: "MPa" },
        ];
  return {
    ...ruleOf(strength, { wood: "3.9.2", metal: "bending about both axes with compression" }),
    check: { ...check, parts: [...bendingParts, ...axialParts, ...check.parts.filter(({ value }) => value !== 0)] },
    unit: "1",
    formula: formulaOf(strength, column !== null, names),
    factors: [...chainOf(limits, names), ...(column?.limit.factors ?? [])],
  };
}

function formulaOf(strength: Strength, isColumn: boolean, { x, y }: Bent["names"]): string {
  const bending = `fb/Fb' ${x} + fb/Fb' ${y}`;
  if (!isColumn) return `${bending} <= 1`;
  return strength.kind === "wood"
    ? "(fc/Fc')^2 + sum of fb/(Fb'(1 - fc/FcE)) <= 1"
    : `fc/Fc${strength.basis.interaction.value === "H1" ? " (half of it below 0.2)" : ""} + sum of fb/(Fb(1 - a fc/Fe)) <= 1`;
}

/** The chain of the first axis, and of the second what differs from it. */
function chainOf(limits: Readonly<Record<Axis, BendingLimit>>, { y }: Bent["names"]): readonly CapacityFactor[] {
  const differing = limits.y.factors.filter((factor, index) => factor.value !== limits.x.factors[index]?.value);
  return [...limits.x.factors, ...differing.map((factor) => ({ ...factor, name: `${factor.name} ${y}` }))];
}

interface Sum {
  readonly compression: Megapascal;
  readonly compressionAllowable: Megapascal;
  readonly bucklingStress: Readonly<Record<Axis, Megapascal>>;
  readonly stress: Readonly<Record<Axis, Megapascal>>;
}

function woodSum({ section }: WoodStrength, sum: Sum & { readonly limits: Readonly<Record<Axis, BendingLimit>> }): StrengthCheck {
  const edge: Axis = section.x.size > section.y.size ? "x" : "y";
  const side = (axis: Axis) => ({
    stress: sum.stress[axis],
    allowable: sum.limits[axis].value,
    bucklingStress: sum.bucklingStress[axis],
  });
  return woodCombinedCheck({ ...sum, edge: side(edge), flat: side(other(edge)), beamBucklingStress: sum.limits[edge].bucklingStress });
}

function metalSum({ bending, basis }: MetalStrength, { compression, compressionAllowable, bucklingStress, stress }: Sum): StrengthCheck {
  return metalCombinedCheck({
    compression,
    compressionAllowable,
    bendingAllowable: bending.value,
    bending: [
      { stress: stress.x, bucklingStress: bucklingStress.x },
      { stress: stress.y, bucklingStress: bucklingStress.y },
    ],
    amplification: basis.amplification.value,
    rule: basis.interaction.value,
  });
}

/** Shear across a post: of wood on its net section, of a tube on the two walls that lie along the force. */
export function shearOf(
  strength: Strength,
  shear: { readonly force: Newton; readonly netArea_mm2: number; readonly axis: Axis },
): Stressed {
  const { force, netArea_mm2, axis } = shear;
  const { section, shear: limit } = strength;
  if (strength.kind === "wood") {
    return {
      source: "nds-2018",
      where: "3.4.2",
      check: woodShearCheck({ force, area_mm2: netArea_mm2, allowable: limit.value }),
      unit: "MPa",
      formula: "fv = 3 V / (2 A) <= Fv'",
      factors: limit.factors,
    };
  }
  // A solid bar is most stressed in its middle, by a half more than its mean.
  const area_mm2 = strength.wall === null ? (2 / 3) * netArea_mm2 : 2 * section[axis].size * strength.wall;
  return {
    ...ruleOf(strength, { wood: "", metal: "shear" }),
    check: metalShearCheck({ force, area_mm2, allowable: limit.value }),
    unit: "MPa",
    formula: "fv = V / A of the walls along it <= Fv",
    factors: limit.factors,
  };
}
