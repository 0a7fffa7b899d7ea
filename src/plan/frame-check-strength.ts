// What may a post or rail of this guard be stressed to under loads of a given duration, and from which values and factors?
import type { Job } from "../job/job.ts";
import type { Wood } from "../job/site.ts";
import { woodBeam } from "../mechanics/column.ts";
import { barTurningStress, metalAllowable } from "../mechanics/metal-checks.ts";
import type { Section } from "../mechanics/section.ts";
import { adjusted } from "../mechanics/wood-adjust.ts";
import type { Cited } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import { type Alloy, alloys } from "../tables/metal.ts";
import { type FrameMetal, type MetalBasis, metalBasis } from "../tables/metal-strength.ts";
import { woodStrength } from "../tables/timber-strength.ts";
import { type BendingCase, bendingLength, type LoadDuration, type WoodProperty, woodFactors } from "../tables/wood-factors.ts";
import type { Megapascal, Mm } from "../units/quantity.ts";
import { alloyOf, conditionsOf, type FrameMember, pieceOf } from "./frame-members.ts";

export type Axis = "x" | "y";

export interface CapacityFactor extends Cited<number> {
  readonly name: string;
}

/** A stress that is allowed, with the reference value first and then what it is multiplied or divided by. */
export interface Limit {
  readonly value: Megapascal;
  readonly factors: readonly CapacityFactor[];
}

export interface WoodStrength {
  readonly kind: "wood";
  readonly section: Section;
  /** All factors but C_L. */
  readonly bending: Readonly<Record<Axis, Limit>>;
  readonly shear: Limit;
  /** All factors but C_P. */
  readonly compression: Limit;
  readonly modulus_min: Megapascal;
}

export interface MetalStrength {
  readonly kind: "metal";
  readonly metal: FrameMetal;
  readonly section: Section;
  /** Design wall; null for a solid bar. */
  readonly wall: Mm | null;
  readonly alloy: Alloy;
  readonly basis: MetalBasis;
  readonly bending: Limit;
  readonly shear: Limit;
}

export type Strength = WoodStrength | MetalStrength;

export interface Loaded {
  readonly member: FrameMember;
  readonly wood: Cited<Wood> | null;
  /** Design wall; null for a solid piece. */
  readonly wall: Mm | null;
}

/** null for wood that has no design values here: boards, and sizes and grades without a row. */
export function strengthOf({ member, wood, wall }: Loaded, load: LoadDuration, job: Job): Strength | null {
  const { material, section } = member;
  if (material === "wood") return woodStrengthOf(section, wood, load, job);
  const alloy = alloys[alloyOf[material]];
  const basis = metalBasis[material];
  const [yieldStress, ultimateStress] = [alloy.yieldStress, alloy.ultimateStress];
  const allowed = metalAllowable({
    yieldStress: yieldStress.value,
    ultimateStress: ultimateStress.value,
    yieldSafety: basis.yieldSafety.value,
    ruptureSafety: basis.ruptureSafety.value,
    shearShare: basis.shearShare.value,
  });
  const factors: readonly CapacityFactor[] = [
    { ...yieldStress, name: "Fy" },
    { ...basis.yieldSafety, name: "Omega" },
    { ...ultimateStress, name: "Fu" },
    { ...basis.ruptureSafety, name: "Omega of rupture" },
  ];
  return {
    kind: "metal",
    metal: material,
    section,
    wall,
    alloy,
    basis,
    bending: { value: allowed.bending, factors },
    shear: { value: allowed.shear, factors: [...factors.slice(0, 2), { ...basis.shearShare, name: "share of Fy" }] },
  };
}

const referenceNames = { bending: "Fb", shear: "Fv", compression: "Fc", modulus_min: "Emin" } as const;

function woodStrengthOf(section: Section, wood: Cited<Wood> | null, load: LoadDuration, job: Job): WoodStrength | null {
  const piece = pieceOf({ x: section.x.size, y: section.y.size, wood });
  const reference = woodStrength(piece);
  if (reference === null) return null;
  const limit = (property: keyof typeof referenceNames & WoodProperty, flat = false): Limit => {
    const chain = adjusted(
      reference.value[property],
      woodFactors({ property, piece, conditions: { ...conditionsOf(wood, job), load, flat } }),
    );
    return { value: chain.value, factors: [{ ...reference, value: chain.reference, name: referenceNames[property] }, ...chain.factors] };
  };
  return {
    kind: "wood",
    section,
    bending: { x: limit("bending", section.x.size < section.y.size), y: limit("bending", section.y.size < section.x.size) },
    shear: limit("shear"),
    compression: limit("compression"),
    modulus_min: limit("modulus_min").value,
  };
}

/** Length over which nothing holds a member against turning over, and how it is loaded there. */
export interface FreeLength {
  readonly length: Mm;
  readonly bends: BendingCase;
}

export interface BendingLimit extends Limit {
  /** FbE; infinite where the member can't turn over. */
  readonly bucklingStress: Megapascal;
}

const SLENDERNESS_max = 50;

/** Bending that is allowed along one axis, turning over included; a beam slenderer than its rule allows may carry nothing. */
export function bendingLimit(strength: Strength, axis: Axis, free: FreeLength): BendingLimit {
  if (strength.kind === "metal") return { ...metalBendingLimit(strength, axis, free), bucklingStress: Number.POSITIVE_INFINITY };
  const { section, modulus_min } = strength;
  const limit = strength.bending[axis];
  const [depth, breadth] = [section[axis].size, section[axis === "x" ? "y" : "x"].size];
  const { value: share, ...origin } = bendingLength[free.bends];
  const { lengths, depths } = share[free.length < 7 * depth ? 0 : 1];
  // The factor of a beam at the end of its rule is taken beyond it: it is some hundredths there.
  const longest = ((SLENDERNESS_max * breadth) ** 2 / depth - depths * depth) / lengths;
  const length = depth > breadth ? Math.min(free.length, longest) : free.length;
  const beam = woodBeam({ length, share, depth, breadth, modulus_min, bending: limit.value });
  const factor: CapacityFactor = { ...origin, source: "nds-2018", where: `3.3.3; ${origin.where}`, value: beam.factor, name: "C_L" };
  return { value: limit.value * beam.factor, factors: [...limit.factors, factor], bucklingStress: beam.bucklingStress };
}

/** Name of the reference value of a bar that turns over before it yields. */
export const TURNING = "stress at which the bar turns over";

/** A bar on edge turns over where it is slender enough; a tube does not. */
function metalBendingLimit({ bending, section, wall, alloy, basis }: MetalStrength, axis: Axis, { length }: FreeLength): Limit {
  const [depth, thickness] = [section[axis].size, section[axis === "x" ? "y" : "x"].size];
  if (wall !== null || depth <= thickness) return bending;
  const value = barTurningStress({ length, depth, thickness, modulus: alloy.modulus.value });
  const allowed = value / basis.yieldSafety.value;
  if (allowed >= bending.value) return bending;
  const where = "1.9 E t^2 / (L d), a bar under the same moment all along";
  return {
    value: allowed,
    factors: [
      { name: TURNING, value, source: "derived", where },
      { ...basis.yieldSafety, name: "Omega" },
    ],
  };
}

/** Where the rule of bending and compression stands, by material. */
export const ruleOf = (strength: Strength, clauses: { readonly wood: string; readonly metal: string }): Rule => {
  if (strength.kind === "wood") return { source: "nds-2018", where: clauses.wood };
  return { source: metalSource[strength.metal], where: `${clauses.metal}; allowable strength on the elastic section` };
};

export interface Rule {
  readonly source: SourceId;
  readonly where: string;
}

const metalSource: Readonly<Record<FrameMetal, SourceId>> = {
  steel: "aisc-360",
  stainless: "aisc-stainless",
  aluminium: "aluminum-design-manual",
};
