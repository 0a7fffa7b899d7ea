// What does a job say once it has been read? Inside units only; every default carries its source.
import type { Cited } from "../sources/cited.ts";
import type { AxialStiffness, Cents, Mm, Newton, Radian } from "../units/quantity.ts";
import type { Bushing } from "./bushing.ts";
import type { FaceEnds } from "./face-end.ts";
import type { Identity } from "./identity.ts";
import type { Pier } from "./pier.ts";
import type { Calibration, PostBase, Printer, Site, Wood } from "./site.ts";
import type { Rake, RakeFrame, StairBasis } from "./slope.ts";
import type { CornerLimits, Interruption, Standing } from "./standing.ts";

export type UnitSystem = "inch" | "mm";
export type Paper = "letter" | "a4";
/** The four issues of one job: which sheets they hold and how many words. */
export type Issue = "crew" | "homeowner" | "permit" | "record";

export type CodeEdition = "IRC 2018" | "IRC 2021" | "IRC 2024" | "IBC 2021" | "IBC 2024" | "NCC 2022" | "other";
export type Occupancy = "one- or two-family dwelling" | "dwelling unit in a larger building" | "other";
export type Exposure = "inland" | "coast" | "pool" | "road salt";

export interface CodeBasis {
  readonly edition: CodeEdition;
  readonly authority: string;
  readonly occupancy: Occupancy;
  readonly exposure: Exposure;
  /** From the walking surface to the ground below. */
  readonly drop: Mm;
  readonly poolBarrier: boolean;
  /** Least height of the guard above the walking surface. */
  readonly guardHeight_min: Cited<Mm>;
  /** The same above a ramp, plumb. */
  readonly rampHeight_min: Cited<Mm>;
  /** Diameter of the sphere that must not pass. */
  readonly openingSphere: Cited<Mm>;
  readonly stairs: StairBasis;
}

export type WoodTreatment = "untreated" | "treated";
export type FrameMaterial = "wood" | "steel" | "stainless" | "aluminium";

/** A member's cross-section. `along` lies along the side (what the cable passes through), `across` square to it. */
export interface Section {
  readonly material: FrameMaterial;
  readonly along: Mm;
  readonly across: Mm;
  /** Wall of a tube; null for a solid section. */
  readonly wall: Mm | null;
  /** As written in the job file and printed on sheets: "4x4", "50 x 50 x 3 mm tube". */
  readonly name: string;
}

/** A rail seen from its end: `depth` is upright, `width` lies flat. */
export interface Rail {
  readonly material: FrameMaterial;
  readonly depth: Mm;
  readonly width: Mm;
  readonly wall: Mm | null;
  readonly name: string;
  /** null for metal. */
  readonly wood: Cited<Wood> | null;
}

/** What fits behind an end post: a drill, only a hand with a wrench, or nothing. */
export type Access = "drill" | "hand" | "none";

/** How the guard begins or ends. */
export interface GuardEnd {
  readonly kind: "post" | "wall" | "pier";
  /** Clear gap between the wall and the end post; null at a free post and at a pier. */
  readonly gap: Mm | null;
  readonly access: Access;
  /** In which the cables are anchored, where no end post stands. */
  readonly pier?: Pier;
}

export interface Side {
  /** A, B, C ... from left to right as seen from the deck looking out. */
  readonly id: string;
  /** Level, along the line of the bores, from the outer face of an end post (or the face of a wall or pier) or from a corner point to the next. */
  readonly length: Mm;
  /** Change of direction at the right-hand end, positive to the right (an outside corner), 0 where only the slope changes; null at the last side. */
  readonly turn: Radian | null;
  /**
   * Of what the corner at its right-hand end is made; the cables pass one post in one bore, or end on its two faces, or behind it, those of
   * the two sides at heights that are set off from each other.
   */
  readonly corner: "two posts" | "one post" | "one post, ends" | "one post, bores set off";
  /** What stands behind its right-hand end where no cable passes to the next side; null at a corner and at the last side. */
  readonly interrupted: Interruption | null;
  /** Centres of all posts on this side, measured from its left-hand start, when they stand already or are prescribed; null: placed by the plan. */
  readonly stations: readonly Mm[] | null;
  /** How the walking surface slopes along this side; null: level. */
  readonly rake: Rake | null;
}

export interface Posts extends Standing {
  readonly section: Section;
  readonly spacing_max: Cited<Mm>;
  readonly existing: boolean;
  readonly treatment: WoodTreatment;
  /** Length of the post below the datum, for the cut list. */
  readonly belowDatum: Mm;
  /** From the corner point to the near face of each of the two posts of a corner; null: worked out for each corner from its turn. */
  readonly cornerSetback: Cited<Mm> | null;
  /** Added to the least setback at which the two posts of a corner would touch, where the job gives no setback. */
  readonly cornerClearance: Cited<Mm>;
  /** Clear distance between the two posts where one run ends and the next begins. */
  readonly pairGap: Cited<Mm>;
  /** null for metal. */
  readonly wood: Cited<Wood> | null;
  readonly base: Cited<PostBase>;
  /** Moment that the fastening of a base may take, by its own report [N mm]; null: not known. */
  readonly baseCapacity_Nmm: Cited<number> | null;
  /** How two runs end next to each other: two posts (new frames) or bores set off sideways (existing posts). */
  readonly split: "two posts" | "offset bores";
}

export interface Spacers {
  readonly section: Section;
  /** null for metal. */
  readonly wood: Cited<Wood> | null;
  /** What the fixing of either end holds square to the guard, by its own report; null: not known. */
  readonly fixing: Cited<Newton> | null;
  /** Longest free length of cable between the faces of neighbouring verticals. */
  readonly free_max: Cited<Mm>;
  readonly treatment: WoodTreatment;
}

export interface Frame {
  /** The surface from which every height is measured, in words: "top of the decking at the post". */
  readonly datum: string;
  readonly topRail: Rail;
  readonly topRailTreatment: WoodTreatment;
  readonly bottomRail: Rail | null;
  readonly bottomRailTreatment: WoodTreatment;
  /** From the datum to the underside of the bottom rail; 0 without one. */
  readonly gapBelow: Mm;
  /** Whether a rail hinders the turn of a post's top (welded) or only its movement (fastened). */
  readonly railJoint: Cited<"pinned" | "rigid">;
  /** Whether the top rail is held as a handrail too: the code then loads it in every direction. */
  readonly railIsHandrail: boolean;
  /** Clear height between the rails (or deck and rail) that the cables fill. */
  readonly clearOpening: Mm;
  readonly onRakes: RakeFrame;
}

export type Construction = "1x19" | "7x7" | "7x19";

export interface Cable {
  readonly construction: Construction;
  readonly diameter: Mm;
  readonly grade: "304" | "316";
  /** Axial stiffness E A: least, nominal, greatest. */
  readonly stiffness: Cited<{ readonly low: AxialStiffness; readonly nominal: AxialStiffness; readonly high: AxialStiffness }>;
  readonly breakingForce: Cited<Newton>;
  readonly mass_kgPerM: Cited<number>;
  /** Largest tension in any stage as a share of the breaking force. */
  readonly workingShare: Cited<number>;
  /** Permanent stretch as the strand beds in, as a share of its length. */
  readonly beddingShare: Cited<number>;
}

export interface StudEnd {
  /** "1/4-28" or "M6x1". */
  readonly thread: string;
  readonly pitch: Cited<Mm>;
  readonly bore: Cited<Mm>;
  /** Thread that the nut can travel along, from its first position to the end of the thread run. */
  readonly threadLength: Cited<Mm>;
  /** Full turns of the nut before any tension. */
  readonly firstTurns: Cited<number>;
  readonly washerDiameter: Cited<Mm>;
  /** Thread to be left for later visits. */
  readonly reserve: Cited<Mm>;
}

export interface GripEnd {
  readonly bore: Cited<Mm>;
  readonly counterbore: Cited<Mm>;
  readonly bodyLength: Cited<Mm>;
  /** Through bore when no drill reaches the back of the post. */
  readonly boreNoBack: Cited<Mm>;
  readonly washerDiameter: Cited<Mm>;
}

export interface Fittings extends FaceEnds {
  /** The end that does not pull: a gripping fitting fitted on site, or a second stud. */
  readonly holdEnd: "grip" | "stud";
  readonly stud: StudEnd;
  readonly grip: GripEnd;
  /** Bore of posts and spacers that the cable only passes. */
  readonly passBore: Cited<Mm>;
  /** Bore where a bushing goes in, or the tube round it. */
  readonly bushingBore: Cited<Mm>;
  readonly bushing: Bushing;
  /** A bushing is fitted where the cable leaves its bore at more than this angle, and in every metal bore. */
  readonly bushingAngle: Cited<Radian>;
  /** Thin edge of the bevelled washer under nut or collar where an end is bored at an angle. */
  readonly bevelEdge: Cited<Mm>;
  /** Spare fittings of each kind, as a share of the count, rounded up. */
  readonly spareShare: Cited<number>;
}

export type CableSupply =
  | { readonly kind: "ready"; readonly lengths: Cited<readonly Mm[]>; readonly price_cents: readonly Cents[] | null }
  | { readonly kind: "spool"; readonly spoolLength: Mm; readonly allowance: Cited<Mm>; readonly price_cents: Cents | null };

export interface Stock {
  readonly lumberLengths: Cited<readonly Mm[]>;
  readonly postLengths: Cited<readonly Mm[]>;
  readonly kerf: Cited<Mm>;
  /** Trimmed off each end of a stock piece before the first part. */
  readonly endTrim: Cited<Mm>;
}

export interface Limits extends CornerLimits {
  /** Centre to centre, and from the last cable to the rail or deck. */
  readonly cableSpacing_max: Cited<Mm>;
  readonly wallGap_max: Cited<Mm>;
  readonly wallGap_min: Cited<Mm>;
  readonly bends_max: Cited<number>;
  /** Longest run with at least one bend. */
  readonly runWithBends_max: Cited<Mm>;
  readonly runStraight_max: Cited<Mm>;
  /** Step to which drilled heights and set-out stations are rounded. */
  readonly tapeStep: Cited<Mm>;
  /** Least distance from the edge of a bore to the edge of the post. */
  readonly edgeDistance_min: Cited<Mm>;
  /** Largest movement of a post under the cables, as a share of the guard's height. */
  readonly movementShare_max: Cited<number>;
  /** Largest deflection of post and rail under the code's loads, as a share of the length that bends. */
  readonly deflectionShare_max: Cited<number>;
}

/** What the tension has to achieve; the target is computed from it. */
export type Criterion =
  | { readonly kind: "sphere"; readonly diameter: Mm; readonly force: Newton; readonly agreedWith: string }
  | { readonly kind: "table"; readonly source: "ncc-2022" }
  | { readonly kind: "sag"; readonly weight: Newton; readonly sag_max: Mm; readonly agreedWith: string }
  | { readonly kind: "stated"; readonly tension: Newton; readonly statedBy: string };

/** Orders of tightening that are easy to keep. */
export type PlainOrder = "from the bottom up" | "from the top down" | "from the middle outward" | "from the outside in";

export interface Tightening {
  readonly criterion: Criterion;
  /** null: the plan searches the order that asks for the lowest readings. */
  readonly order: Cited<PlainOrder> | null;
  /** Readings of plain passes as shares of the target, the last one 1; null: the plan chooses the passes and the reading of each step. */
  readonly passes: Cited<readonly number[]> | null;
  /** The plan asks for no more passes than this. */
  readonly passes_max: Cited<number>;
  /** Losses that the target makes up for beforehand. */
  readonly allowFor: Cited<"heat and settling" | "heat" | "nothing">;
  /** Allowed difference of a reading from its target, as a share. */
  readonly band: Cited<number>;
  readonly friction: Cited<number>;
  /** Loss by imperfectly aligned bores, per mm of run. */
  readonly wobble_perMm: Cited<number>;
  /** Travel of the nut used up by posts that move and wood that closes, both ends together. */
  readonly seating: Cited<Mm>;
  /** Step of the printed target. */
  readonly readingStep: Cited<Newton>;
  /** Weight hung on the middle of a span for the sag test. */
  readonly sagWeight: Cited<Newton>;
}

export interface Job {
  readonly identity: Identity;
  readonly units: UnitSystem;
  readonly paper: Paper;
  readonly audience: Issue;
  readonly code: CodeBasis;
  readonly start: GuardEnd;
  readonly end: GuardEnd;
  readonly sides: readonly Side[];
  /** Compass direction that the first side runs to, clockwise from north; null when not surveyed. */
  readonly bearing: Radian | null;
  readonly posts: Posts;
  readonly spacers: Spacers;
  readonly frame: Frame;
  readonly cable: Cable;
  readonly fittings: Fittings;
  readonly supply: CableSupply;
  readonly stock: Stock;
  readonly limits: Limits;
  readonly site: Site;
  readonly calibration: Calibration;
  readonly tightening: Tightening;
  /** The full-size templates are drawn for it alone; null: true to size. */
  readonly printer: Printer | null;
  /** Free remarks for the crew, printed on the cover. */
  readonly notes: readonly string[];
}
