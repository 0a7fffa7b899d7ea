// Which rules of thumb does the trade follow? None has a published source; every one can be overridden in the job file.
import { type Cited, cite, practice } from "../sources/cited.ts";
import type { Celsius, Mm, Newton, Radian } from "../units/quantity.ts";
import { feet, inches, poundsForce } from "./customary.ts";

const HALF_TURN_deg = 180;

// Posts, spacers and walls. The first four are customary among those who fit cable infill.

/** Posts that carry cable, centre to centre. */
export const postSpacing_max: Cited<Mm> = practice(feet(6), "posts that carry cable, centre to centre, at most 6 ft");

/** Free length of a cable between any two vertical members. */
export const freeLength_max: Cited<Mm> = practice(feet(3), "free length of a cable between vertical members, at most 3 ft");

/** Of a post along the guard, for each length of height: up to here washers bear on it as it stands. */
export const alongLean_max: Cited<number> = practice(
  1 / 20,
  "a washer bears on a face up to 1 in 20 off square; further off it takes a bevelled one",
);

/** So that a 4 in sphere cannot pass beside the end post. */
export const wallGap_max: Cited<Mm> = practice(inches(4), "clear gap from an end post to the wall, at most 4 in");

/** So that a tool reaches the back of the end post. */
export const wallGap_min: Cited<Mm> = practice(inches(3), "clear gap from an end post to the wall, at least 3 in for a tool");

/** Between the two posts of a corner and the place where they would touch: our own setting. */
export const cornerClearance: Cited<Mm> = practice(inches(0.5), "setback of corner posts: where they would touch, and 1/2 in more");

/** Thread left on a stud for later visits: our own setting. */
export const threadReserve: Cited<Mm> = practice(inches(0.25), "thread kept on a stud for later visits, 1/4 in");

/** As wide as a 4x4 post, so that a hand and a wrench fit between: our own setting. */
export const pairGap: Cited<Mm> = practice(inches(3.5), "clear distance between two posts where runs meet, 3-1/2 in");

const RIGHT_ANGLE_deg = 90;
const STRAIGHT_BORE_deg = 60;
const SMALL_TURN_deg = 15;
const degrees = (value: number): Radian => (value * Math.PI) / HALF_TURN_deg;

/** At a greater turn each mouth bends the cable by more than 45 deg, and it leaves the face aslant: our own setting. */
export const onePostTurn_max: Cited<Radian> = practice(degrees(RIGHT_ANGLE_deg), "a corner of one post turns by at most 90 deg");

/** Up to this turn the post stands on the bisector and is bored from face to opposite face: our own setting. */
export const straightBoreTurn_max: Cited<Radian> = practice(
  degrees(STRAIGHT_BORE_deg),
  "a corner of one post is bored straight through up to a turn of 60 deg, on the mitre above",
);

/** A curve is made of turns this small: our own setting. */
export const smallTurn_max: Cited<Radian> = practice(
  degrees(SMALL_TURN_deg),
  "a turn of at most 15 deg counts among the corners of a run by its share of a right angle",
);

const OFF_SQUARE_deg = 1;

/** A bore square to its face leaves the line of its cable by less than a mark of the tape within this much: our own setting. */
export const crossedTurn_off: Cited<Radian> = practice(
  degrees(OFF_SQUARE_deg),
  "a corner post that two runs go through turns within 1 deg of a right angle",
);

/** Wood left beside a bore: our own setting. */
export const edgeDistance_min: Cited<Mm> = practice(inches(0.5), "edge of a bore to the edge of the post, at least 1/2 in");

/** Two bores that cross at two heights in one corner post; a bit that wanders must not meet the other: our own setting. */
export const betweenBores_min: Cited<Mm> = practice(inches(0.5), "wood between two bores that cross in a corner post, at least 1/2 in");

/** So that a bit that wanders does not meet a bolt: our own setting. */
export const hardwareClearance: Cited<Mm> = practice(inches(0.25), "edge of a bore to bolts and brackets, at least 1/4 in");

/** Round the washer in the hole of a sleeve, for a socket on the nut and a sleeve that moves: our own setting. */
export const washerClearance: Cited<Mm> = practice(inches(0.25), "hole in a sleeve round a washer: 1/4 in wider");

/** A sleeve grows and shifts on its post; its holes must not close on the cable. */
export const sleeveBoreClearance: Cited<Mm> = practice(
  inches(0.125),
  "hole in a sleeve where a cable goes through: 1/8 in wider than the bore",
);

// Courses and runs.

/** Level cables under the 4 in sphere rule. */
export const cableSpacing_max: Cited<Mm> = practice(inches(3), "level cables under a 4 in sphere rule, at most 3 in apart");

/** Corners in one run; each corner is made with two posts that turn the cable half-way. */
export const bends_max: Cited<number> = practice(2, "corners in one run, at most 2");

export const runWithBends_max: Cited<Mm> = practice(feet(40), "run with one or two corners, at most 40 ft");

export const runStraight_max: Cited<Mm> = practice(feet(70), "straight run, at most 70 ft");

const READY_STEP_ft = 5;
const READY_LAST_ft = 70;

/** Ready-made cables: the next step above the outside-to-outside length is ordered. */
export const readyLengths: Cited<readonly Mm[]> = practice(
  Array.from({ length: READY_LAST_ft / READY_STEP_ft }, (_, index) => feet(READY_STEP_ft * (index + 1))),
  "ready-made cables in steps of 5 ft from 5 ft to 70 ft",
);

/** Added to a length cut from a spool, to hold on to and to trim: our own setting. */
export const spoolAllowance: Cited<Mm> = practice(inches(6), "added to a length cut from a spool, 6 in");

// Bores and fittings for 1/8 in cable. What was bought must be measured before a hole is drilled.

export const passBore: Cited<Mm> = practice(inches(1 / 4), "1/8 in cable, post or spacer that it passes: 1/4 in");
export const studBore: Cited<Mm> = practice(inches(5 / 16), "1/8 in cable, stud end: 5/16 in");
export const gripBore: Cited<Mm> = practice(inches(1 / 4), "1/8 in cable, gripping end: 1/4 in through");
export const gripCounterbore: Cited<Mm> = practice(inches(3 / 8), "1/8 in cable, gripping end: 3/8 in counterbore");
export const gripBoreNoBack: Cited<Mm> = practice(inches(3 / 8), "1/8 in cable, gripping end, back out of reach: 3/8 in through");

/** The bushing for 1/8 in cable is taken to go into the pass bore: our own setting. */
export const bushingBore: Cited<Mm> = practice(inches(1 / 4), "1/8 in cable, bore with a bushing: 1/4 in");

/** Length of the gripping fitting, so the depth of its counterbore: our own setting. */
export const gripBodyLength: Cited<Mm> = practice(inches(1.25), "gripping fitting for 1/8 in cable: 1-1/4 in long");

/** Thread that the nut can travel along: our own setting. */
export const studThreadLength: Cited<Mm> = practice(inches(2), "stud for 1/8 in cable: 2 in of thread");

/** A wedge sawn or cast thinner than this breaks at its edge: our own setting. */
export const bevelEdge: Cited<Mm> = practice(inches(1 / 16), "bevelled washer, thin edge: 1/16 in");

export const washerDiameter: Cited<Mm> = practice(inches(5 / 8), "washer for 1/8 in cable: 5/8 in across");

/** Of what sits in the bore, without its rim: our own setting, to be measured. */
export const bushingLength: Cited<Mm> = practice(inches(3 / 8), "bushing for 1/8 in cable: 3/8 in of it in the bore; measure yours");

/** A plastic bushing that is longer bends before its inner end bears: our own setting. */
export const bushingBears_diameters: Cited<number> = practice(2, "of a plastic bushing no more than twice its diameter bears");

/** Bare strand is no stiff plug; how far it lies on the wood where it leaves a bore was found nowhere: our own setting. */
export const strandBears_diameters: Cited<number> = practice(2, "bare strand lies on the wood at a mouth over two of its diameters");

const BUSHING_ANGLE_deg = 3;

/** Steeper than this the cable bears on the edge of its bore: our own setting. */
export const bushingAngle: Cited<Radian> = practice(
  (BUSHING_ANGLE_deg * Math.PI) / HALF_TURN_deg,
  "a bushing where the cable leaves its bore at more than 3 deg",
);

/** Fittings of each kind bought beyond the count: our own setting. */
export const spareShare: Cited<number> = practice(0.05, "spare fittings, 5 % of each kind");

// Tightening.

export const firstTurns: Cited<number> = practice(3, "nut on the stud at first: two or three full turns; three are taken");

/** A crew that has to go round more often loses count: our own setting. */
export const passes_max: Cited<number> = practice(3, "at most three passes");

/** The target holds on a hot day and until the next visit, when the nuts are turned again. */
export const allowFor: Cited<"heat and settling"> = practice(
  "heat and settling",
  "the target makes up for the day that slackens the cables most and for drying and bedding-in until the next visit",
);

/** Borrowed from tower guys, where ten per cent of the design tension is customary. */
export const readingBand: Cited<number> = practice(0.1, "a reading within 10 % of its target");

/** Largest tension in any stage as a share of the breaking force: our own setting. */
export const workingShare: Cited<number> = practice(0.3, "tension in any stage at most 0.30 of the breaking force");

/** Inside the band of 0.025 % to 0.1 % that is reported for new 1x19 strand. */
export const beddingShare: Cited<number> = cite(
  0.0005,
  "yacht-rigging",
  "constructional stretch of 1x19, 0.025 % to 0.1 %; 0.05 % is taken",
);

/** Both ends together: washers that settle, wood that closes: our own setting. */
export const seating: Cited<Mm> = practice(inches(1 / 16), "seating of both ends together, 1/16 in");

/** A bore through wood is never quite in line; no loss along a straight run is taken until one is measured. */
export const wobble_perMm: Cited<number> = practice(0, "loss along a straight run: none taken");

/** Weight hung on the middle of a span for the sag test: our own setting. */
export const sagWeight: Cited<Newton> = practice(poundsForce(10), "sag test with 10 lb");

// The frame and the place where it stands: all of these are our own settings, to be replaced by what is known there.

/** A post that is bolted to a deck's framing: the fastening turns before the post bends. */
export const postBase_wood: Cited<number> = practice(
  25e6,
  "wood post bolted to the framing at its foot: 25 kN m per radian; measure yours",
);
export const postBase_metal: Cited<number> = practice(100e6, "metal post on a bolted plate: 100 kN m per radian; measure yours");

/** Under all cables. */
export const movementShare_max: Cited<number> = practice(1 / 120, "movement of a post under the cables, at most 1/120 of its height");
export const deflectionShare_max: Cited<number> = practice(
  1 / 24,
  "deflection of a post or rail under the code's loads, at most 1/24 of the length that bends",
);

export const reference: Cited<Celsius> = practice(20, "the design tension holds at 20 deg C (68 deg F)");
export const coldest: Cited<Celsius> = practice(-10, "coldest day -10 deg C (14 deg F); write the site's");
export const warmest: Cited<Celsius> = practice(35, "warmest day 35 deg C (95 deg F); write the site's");

/** Lumber that is sold as dry has at most 19 %. */
export const moistureAtFitting_percent: Cited<number> = practice(19, "moisture of the posts when the cables are fitted: 19 %");
export const moistureInService_percent: Cited<number> = practice(12, "moisture of the posts after a dry season: 12 %");
export const nextVisit_months: Cited<number> = practice(3, "next visit three months after the fitting");

// Steps to which printed numbers are rounded.

export const readingStep_inch: Cited<Newton> = practice(poundsForce(5), "gauge readings in steps of 5 lbf");
export const readingStep_mm: Cited<Newton> = practice(25, "gauge readings in steps of 25 N");
export const tapeStep_inch: Cited<Mm> = practice(inches(1 / 16), "finest mark of a tape, 1/16 in");
export const tapeStep_mm: Cited<Mm> = practice(1, "finest mark of a tape, 1 mm");

// Printing at full size.

/** Long enough that half a millimetre, which an eye can read, is a third of a per cent. */
export const printedRuler: Cited<Mm> = practice(150, "rulers of 150 mm on each page of templates");

/** Printers miss a length by some tenths of a per cent; "fit to page" takes three per cent and more (Letter on A4: 2.7 %). */
export const printerError_max: Cited<number> = practice(0.03, "a printer's own error is at most 3 %; more is a wrong setting");

// Cutting lumber and tube.

/** Width of a circular saw's cut. */
export const kerf: Cited<Mm> = practice(inches(1 / 8), "saw kerf, 1/8 in");

/** Squared off each end of a stock piece: our own setting. */
export const endTrim: Cited<Mm> = practice(inches(1 / 2), "trim at each end of a stock piece, 1/2 in");
