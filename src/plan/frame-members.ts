// How stiff are the posts and rails of this guard, and where does each figure come from?
import type { FrameMaterial, Job, Rail } from "../job/job.ts";
import type { Wood } from "../job/site.ts";
import { cantilever } from "../mechanics/beam.ts";
import { rectangularTube, type Section, solidRectangle } from "../mechanics/section.ts";
import { adjusted } from "../mechanics/wood-adjust.ts";
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import { inches, poundsForce } from "../tables/customary.ts";
import { type AlloyName, alloys } from "../tables/metal.ts";
import { type WoodPiece, woodStrength } from "../tables/timber-strength.ts";
import { woodFactors } from "../tables/wood-factors.ts";
import type { Megapascal, Mm } from "../units/quantity.ts";
import type { TrialPull } from "./frame-plan.ts";

/** A member of the frame with what its stiffness is made from. */
export interface FrameMember {
  readonly material: FrameMaterial;
  readonly section: Section;
  /** Adjusted for moisture and incising where it is wood. */
  readonly modulus: Cited<Megapascal>;
  /** Share of the area that takes shear times G over E; 0 leaves shear out. */
  readonly shearShare: number;
}

/** Alloy taken for each metal. */
export const alloyOf: Readonly<Record<Exclude<FrameMaterial, "wood">, AlloyName>> = {
  steel: "A500 grade B",
  stainless: 316,
  aluminium: "6063-T5",
};

/** E over G of wood, and the share of a rectangle that takes shear. */
const WOOD_E_over_G: Cited<number> = fromMemory(16, "E over G of sawn lumber, about 16");
const RECTANGLE_shear = 5 / 6;

/** Design wall over nominal wall of welded tube: AISC 360-16, B4.2, from memory; of stainless tube on the safe side. */
export const DESIGN_WALL = 0.93;

/** A post's section: x along the side, y out of the guard. */
export function postMember(job: Job, section: Job["posts"]["section"] = job.posts.section): FrameMember {
  const { material, along, across, wall } = section;
  return memberOf({ material, x: along, y: across, wall, wood: job.posts.wood }, job);
}

/** A rail's section: x level, y up. */
export const railMember = (rail: Rail, job: Job): FrameMember =>
  memberOf({ material: rail.material, x: rail.width, y: rail.depth, wall: rail.wall, wood: rail.wood }, job);

/** A spacer's section: x along the side, y out of the guard. */
export function spacerMember(job: Job): FrameMember {
  const { material, along, across, wall } = job.spacers.section;
  return memberOf({ material, x: along, y: across, wall, wood: job.spacers.wood }, job);
}

interface MemberSize {
  readonly material: FrameMaterial;
  readonly x: Mm;
  readonly y: Mm;
  readonly wall: Mm | null;
  readonly wood: Cited<Wood> | null;
}

function memberOf({ material, x, y, wall, wood }: MemberSize, job: Job): FrameMember {
  const section = wall === null ? solidRectangle({ x, y }) : rectangularTube({ x, y, wall: designWall(material, wall) });
  if (material === "wood") {
    return {
      material,
      section,
      modulus: woodModulus(pieceOf({ x, y, wood }), wood, job),
      shearShare: RECTANGLE_shear / WOOD_E_over_G.value,
    };
  }
  return { material, section, modulus: alloys[alloyOf[material]].modulus, shearShare: 0 };
}

/** Rolled and welded steel tube is made to the thin side of its tolerance; extrusions are not. */
export const designWall = (material: FrameMaterial, wall: Mm): Mm => (material === "aluminium" ? wall : DESIGN_WALL * wall);

export function pieceOf({ x, y, wood }: Pick<MemberSize, "x" | "y" | "wood">): WoodPiece {
  if (wood === null) throw new RangeError("a piece of wood without a species");
  return { species: wood.value.species, grade: wood.value.grade, thickness: Math.min(x, y), width: Math.max(x, y) };
}

/** Boards have no table of their own: their species' common modulus is taken. */
const BOARD_width: Mm = 88.9;

/** The piece whose modulus stands in the tables for this one. */
export const modulusPiece = (piece: WoodPiece): WoodPiece =>
  woodStrength(piece) === null ? { ...piece, thickness: 38.1, width: BOARD_width } : piece;

function woodModulus(piece: WoodPiece, wood: Cited<Wood> | null, job: Job): Cited<Megapascal> {
  const known = modulusPiece(piece);
  const reference = woodStrength(known);
  if (reference === null) throw new RangeError(`no design values for ${piece.species} ${piece.grade}`);
  const factors = woodFactors({ property: "modulus", piece: known, conditions: conditionsOf(wood, job) });
  return { ...reference, value: adjusted(reference.value.modulus, factors).value };
}

/** Least modulus, for buckling: of wood that has design values, adjusted as its modulus is. */
export function modulusForBuckling({ material, section }: FrameMember, wood: Cited<Wood> | null, job: Job): Cited<Megapascal> | null {
  if (material !== "wood") return null;
  const piece = pieceOf({ x: section.x.size, y: section.y.size, wood });
  const reference = woodStrength(piece);
  if (reference === null) return null;
  const factors = woodFactors({ property: "modulus_min", piece, conditions: conditionsOf(wood, job) });
  return { ...reference, value: adjusted(reference.value.modulus_min, factors).value };
}

/** Conditions in which the wood of a guard stands; the load lasts as long as the cables pull. */
export const conditionsOf = (wood: Cited<Wood> | null, job: Job) =>
  ({
    load: "permanent",
    wet: job.site.wet.value,
    warmest: job.site.warmest.value,
    incised: wood?.value.incised ?? false,
    flat: false,
    repetitive: false,
  }) as const;

/** Rotational stiffness of a post's base [N mm/rad], or fixed. */
export function baseStiffness(job: Job): Cited<number | "fixed"> {
  const { base } = job.posts;
  const { value } = base;
  if (value.kind === "fixed") return { ...base, value: "fixed" };
  if (value.kind === "spring") return { ...base, value: value.stiffness_NmmPerRad };
  const { pull, height, movement } = value;
  const post = postMember(job);
  const EI = post.modulus.value * post.section.x.inertia_mm4;
  const bent = cantilever({ length: height, load: pull, at: height, EI }).deflection;
  // What the post's own bending leaves of the movement is the turn of its base.
  const turned = movement - bent;
  return {
    ...cite<number | "fixed">(turned > 0 ? (pull * height * height) / turned : "fixed", "job", "posts: base, as measured"),
    note: base.note ?? "",
  };
}

/** A pull that a hand scale reads, at a height that a tape finds. */
const TRIAL = { inch: { pull: poundsForce(50), height: inches(36) }, mm: { pull: 200, height: 900 } } as const;

/** What a lone post does under it, as a measured base is turned into a stiffness: P h^3 / (3 E I) + P h^2 / k. */
export function trialPull(job: Job): TrialPull {
  const { pull, height } = TRIAL[job.units];
  const { modulus, section } = postMember(job);
  const base = baseStiffness(job).value;
  const bent = cantilever({ length: height, load: pull, at: height, EI: modulus.value * section.x.inertia_mm4 }).deflection;
  return { pull, height, movement: bent + (base === "fixed" ? 0 : (pull * height * height) / base) };
}
