// What is to be built? The Plan: plain data, written as plan.json and turned into every sheet and drawing.
import type { Access, GuardEnd, Job } from "../job/job.ts";
import type { Problem } from "../problem/problem.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Cents, Mm, Newton, Radian } from "../units/quantity.ts";
import type { RunClimate } from "./climate-plan.ts";
import type { CornerPost } from "./corner-post.ts";
import type { FramePlan } from "./frame-plan.ts";
import type { HardwareZone } from "./hardware.ts";
import type { LeanAlong } from "./lean-along.ts";
import type { BitUse, CutPiece, CutPlan, OrderLine, ToolLine } from "./purchase.ts";
import type { Opening, RakePlan, Transition } from "./rake-plan.ts";
import type { Pulls, RunTightening, SpanReading, TakeUp, TargetChoice } from "./readings.ts";
import type { Level, SetOff } from "./set-off.ts";

/** A point seen from above: x to the right, y away from the reader, the first side begins at 0,0 and runs along x. */
export interface PlanPoint {
  readonly x: Mm;
  readonly y: Mm;
}

/** A point of a cable's path; z is up from the walking surface at the guard's start, of a course at height 0. */
export interface PathPoint extends PlanPoint {
  readonly z: Mm;
}

/** A straight stretch of the guard. */
export interface SidePlan extends Level {
  readonly id: string;
  readonly index: number;
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  /** Direction of travel, counter-clockwise from x. */
  readonly direction: Radian;
  /** Level. */
  readonly length: Mm;
  /** Of the walking surface above level, from left to right; 0 on a level side. */
  readonly slope: Radian;
  /** The walking surface at its two ends, above that at the guard's start. */
  readonly datum_from: Mm;
  readonly datum_to: Mm;
  /** Change of direction at its right-hand corner, positive to the right; null where the guard ends or is interrupted. */
  readonly turn: Radian | null;
  /** How the guard begins at its left and ends at its right; null at a corner, where the cables may go on. */
  readonly begins: GuardEnd | null;
  readonly ends: GuardEnd | null;
  /** Outside of the end posts, or walls, in stations of this side. */
  readonly startsAt: Mm;
  readonly endsAt: Mm;
}

/** end: of the guard. corner: of one or two posts, or of one on which two runs end. transition: where the slope changes. pair: of two where runs meet. shared: two runs end on it. pier: no post, the cables are anchored in it. */
export type VerticalRole = "end" | "corner" | "transition" | "pair" | "shared" | "line" | "spacer" | "pier";

/** A post or a spacer, or a pier at an end of the guard. */
export interface Vertical {
  /** P1, P2 ... and S1, S2 ... from left to right; piers PR1, PR2 ... */
  readonly id: string;
  readonly kind: "post" | "spacer" | "pier";
  readonly role: VerticalRole;
  readonly sideIndex: number;
  readonly sideId: string;
  /** Centre, measured along its side from the side's left-hand start. */
  readonly station: Mm;
  readonly centre: PlanPoint;
  /** The walking surface plumb under its middle, above that at the guard's start: from here its heights are measured. */
  readonly datum: Mm;
  /** Slope of its side; it stands plumb all the same. */
  readonly slope: Radian;
  /** Of its side, counter-clockwise from x; one post that makes a corner stands turned. */
  readonly direction: Radian;
  /** Size along the side and square to it. */
  readonly along: Mm;
  readonly across: Mm;
  readonly sectionName: string;
  /** Of its middle away from the deck for each mm of height; its station and line are those at the datum. */
  readonly lean: number;
  readonly leansAlong?: LeanAlong;
  /** Of a sleeved post, whose `along` and `across` are those of its sleeve: the wood inside, and how deep in it lies. */
  readonly core?: { readonly along: Mm; readonly across: Mm; readonly recess: Mm };
  /** Where one post makes a corner: how it stands there. Its side is the one that ends at it. */
  readonly corner?: CornerPost;
}

/** The space between two neighbouring verticals; at a corner, between its two posts. */
export interface Bay {
  /** A1, A2 ... on side A; A/B across the corner of A and B. */
  readonly id: string;
  readonly kind: "bay" | "corner" | "pair gap";
  readonly sideId: string;
  readonly leftId: string;
  readonly rightId: string;
  /** Free length of a cable between the two faces that hold it, of the wood in sleeves; beside a post that leans along its side, of the longest, at a course. */
  readonly free: Mm;
  readonly longestCourse?: number;
}

export interface Course {
  /** 1 is the lowest. */
  readonly number: number;
  /** Height of the bore centres above the datum, rounded to the tape's step: this is drilled. */
  readonly height: Mm;
  /** The same on sides whose cables lie raised; not there where none do. */
  readonly raised?: Mm;
  /** Where an even division would have it, before rounding. */
  readonly height_exact: Mm;
  /** Up from there once rounded, to keep clear of hardware or to come nearer to the rails of a rake; 0 where neither asks for it. */
  readonly moved: Mm;
}

/** An opening between two neighbours, from the deck or bottom rail up to the top rail. */
export interface Gap {
  readonly below: string;
  readonly above: string;
  /** Square to the cables, from centre to centre, or from a rail's face to the centre. */
  readonly spacing: Mm;
  /** The same along a post. */
  readonly plumb: Mm;
  /** What a sphere meets: less the cable's diameter, or half of it next to a rail. */
  readonly clear: Mm;
}

export type EndKind = "stud" | "grip" | "face" | "anchor";

/** Faces of a vertical for somebody on the deck who looks out. */
export type Face = "left" | "right";

export interface RunEnd {
  readonly postId: string;
  readonly kind: EndKind;
  /** True when the cable is tightened from here. */
  readonly pulls: boolean;
  /** The face away from the cable: the nut or the gripping fitting bears on it, an end on the face stands opposite. */
  readonly backFace: Face;
  readonly access: Access;
  /** Bores of another run cross those of this end in its post: there is no counterbore. */
  readonly isCrossed?: true;
  /** The bore's distance from the middle of the post, positive away from the deck. */
  readonly offset: Mm;
  /** Thickness of the bevelled washer in its middle, along the cable; 0 where the bore is square to the face. */
  readonly seat: Mm;
}

export interface Bend {
  readonly postId: string;
  readonly angle: Radian;
  /** Distance along the cable from the left-hand bearing face. */
  readonly at: Mm;
}

/** A stretch of every course: the same in plan at all heights. */
export interface Run extends Level {
  readonly id: string;
  readonly left: RunEnd;
  readonly right: RunEnd;
  /** In order from left to right, spans across corners included. */
  readonly bayIds: readonly string[];
  readonly sideIds: readonly string[];
  readonly bends: readonly Bend[];
  /** Corner points of the path from bearing face to bearing face, of the longest cable where the end posts lean along their sides. */
  readonly path: readonly PathPoint[];
  /** Between the bearing faces, along the cable. */
  readonly pathLength: Mm;
  /** From the face that nut or collar bears on to that of the other end, bevelled washers included, along the cable. */
  readonly outsideLength: Mm;
  /** Ready length to order, or length to cut from a spool. */
  readonly orderLength: Mm;
  readonly why: string;
  readonly tension: {
    /** Reading at the pulling end to aim at. */
    readonly target: Newton;
    /** Least reading at the pulling end with which every span still meets the criterion: the low end of the last pass' band. */
    readonly low: Newton;
    /** Greatest reading allowed at the pulling end. */
    readonly high: Newton;
    /** What the target makes up for: weather, drying and bedding-in. */
    readonly covered: Newton;
    /** What the criterion asks in the worst span. */
    readonly required: Newton;
    readonly least: Newton;
    readonly leastBayId: string;
    /** Least over target. */
    readonly farRatio: number;
  };
  readonly takeUp: TakeUp;
  readonly spans: readonly SpanReading[];
  /** The span to read when the run is proved: no corner, the smallest margin; and what may be read there. */
  readonly proof: { readonly bayId: string; readonly low: Newton; readonly high: Newton };
}

/** One cable: a course of a run. */
export interface CablePlan {
  /** R1-05: run 1, course 5. */
  readonly mark: string;
  readonly runId: string;
  readonly course: number;
}

export type BoreKind = "stud end" | "grip end" | "face end" | "anchor end" | "pass" | "bend";

export interface Bore {
  /** P3-05: post 3, course 5; with the run behind it where a post has two bores at a height: P3-05/R1. */
  readonly mark: string;
  readonly verticalId: string;
  readonly course: number;
  readonly runId: string;
  readonly kind: BoreKind;
  /** Of its middle above the datum under the middle of the post. */
  readonly height: Mm;
  /** Of its middle on the face that the bit goes in, and on the other, above the same level. */
  readonly entryHeight: Mm;
  readonly exitHeight: Mm;
  /** Above level, from left to right. */
  readonly angle: Radian;
  /** Off square to the face that the bit goes in, as seen from above; 0 but in a bore on the mitre. */
  readonly skew: Radian;
  /** From the middle of the post, positive away from the deck. */
  readonly offset: Mm;
  readonly diameter: Mm;
  /** Of the holes through the sleeve of a sleeved post, but for the hole of a washer, which is its counterbore. */
  readonly sleeveHole?: Mm;
  /** Drilled right through at `diameter`; a blind hole of an end on the face is as deep as `drilledLength`. */
  readonly through: boolean;
  readonly counterbore: { readonly diameter: Mm; readonly depth: Mm; readonly face: Face } | null;
  /** The face the bit goes in. */
  readonly entryFace: Face;
  readonly bushing: boolean;
  /** Change of direction of the cable at this bore. */
  readonly bend: Radian;
  /** Along the bore from face to face, or to the bottom of a blind hole. */
  readonly drilledLength: Mm;
}

/** A value on a check row that knows how it is printed. */
export interface Measure {
  readonly value: number;
  readonly kind: "length" | "force" | "count" | "angle" | "share";
}

export type Verdict = "pass" | "fail" | "ask" | "not checked";
export interface Check {
  readonly id: string;
  readonly name: string;
  readonly where: string;
  /** "at most" or "at least": how demand and limit compare. */
  readonly rule: "at most" | "at least";
  readonly demand: Measure | null;
  readonly limit: Measure | null;
  /** Above 1 fails; null where there is nothing to divide. */
  readonly ratio: number | null;
  readonly source: SourceId;
  readonly sourceWhere: string;
  readonly verdict: Verdict;
  readonly advice: string;
}

export interface Plan extends Pulls {
  readonly job: Job;
  readonly sides: readonly SidePlan[];
  readonly verticals: readonly Vertical[];
  readonly bays: readonly Bay[];
  readonly courses: readonly Course[];
  /** Of the level sides; where there are none, of the rake that slopes least. */
  readonly gaps: readonly Gap[];
  readonly opening: Opening;
  /** Where bores of two sides cross in a corner post; else null. */
  readonly setOff: SetOff | null;
  readonly hardware: readonly HardwareZone[];
  /** One for each side that slopes. */
  readonly rakes: readonly RakePlan[];
  /** Where the slope changes from one side to the next: do the cables pass? */
  readonly transitions: readonly Transition[];
  readonly runs: readonly Run[];
  readonly cables: readonly CablePlan[];
  readonly bores: readonly Bore[];
  readonly bits: readonly BitUse[];
  readonly target: TargetChoice;
  readonly tightening: readonly RunTightening[];
  readonly climate: readonly RunClimate[];
  readonly frame: FramePlan;
  /** The bay of each side whose opening is tested first: the least push-through force. */
  readonly openingBayIds: readonly string[];
  readonly checks: readonly Check[];
  /** fail if any check fails, else ask if one must be asked, else pass. */
  readonly verdict: Verdict;
  readonly order: readonly OrderLine[];
  readonly orderTotal_cents: Cents | null;
  readonly cuts: readonly CutPiece[];
  readonly cutPlans: readonly CutPlan[];
  readonly tools: readonly ToolLine[];
  readonly warnings: readonly Problem[];
}
