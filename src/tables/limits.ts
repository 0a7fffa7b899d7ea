// What does each code ask of a guard: height, opening, loads, climbing? By edition and occupancy, with the clause.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { feet, inches, poundsForce, poundsPerFoot } from "./customary.ts";

/** The editions that a job may name; "other" brings its own numbers. */
export type CodeEdition = "IRC 2018" | "IRC 2021" | "IRC 2024" | "IBC 2021" | "IBC 2024" | "NCC 2022" | "other";
export type Occupancy = "one- or two-family dwelling" | "dwelling unit in a larger building" | "other";

/** As somebody who stands on the walking surface sees it. */
export type LoadDirection = "outward" | "inward" | "along the rail" | "down" | "up";

/** Where nothing may help a child to climb. */
export interface ClimbZone {
  /** The rule binds when the fall is greater than this. */
  readonly aboveDrop: Mm;
  /** Heights above the walking surface. */
  readonly from: Mm;
  readonly to: Mm;
}

export interface GuardRules {
  readonly guardRequiredAboveDrop: Cited<Mm>;
  /** Least height above the walking surface, level. */
  readonly guardHeight_min: Cited<Mm>;
  /** Diameter of the sphere that must not pass, from the walking surface up. */
  readonly openingSphere: Cited<Mm>;
  /** On the open side of a stair. */
  readonly stairs: StairRules;
  /** Least height above a ramp, plumb, where the code asks for less there than above a floor. */
  readonly rampHeight_min?: Cited<Mm>;
  /** Load on the infill, square to the guard, over `infillArea_mm2`. */
  readonly infillLoad: Cited<Newton>;
  readonly infillArea_mm2: Cited<number>;
  /** Single load at any point of the top. */
  readonly topLoad: Cited<Newton>;
  readonly topLoadDirection: Cited<string>;
  /** The same, to compute with; the line load acts in these directions too. */
  readonly topLoadDirections: readonly LoadDirection[];
  /** Where the top rail is the handrail too. */
  readonly handrailLoadDirections: readonly LoadDirection[];
  /** Line load along the top, not together with the single load; null where the code has none. */
  readonly uniformLoad_NPerMm: Cited<number> | null;
  /** Force with which the code tests the opening of flexible infill; null where it states none. */
  readonly openingForce: Cited<Newton> | null;
  /** In words, for the sheet; null where no rule was found. */
  readonly climbRule: Cited<string> | null;
  readonly climbZone: Cited<ClimbZone> | null;
  /** What a guard that is also a pool barrier must follow; a field of level cables meets none of these. */
  readonly poolRule: Cited<string>;
  /** What the reader should know about the choice of these numbers. */
  readonly notes: readonly string[];
}

/** What differs on the open side of a stair; heights are plumb above the line of the nosings. */
export interface StairRules {
  readonly guardHeight_min: Cited<Mm>;
  readonly openingSphere: Cited<Mm>;
  /** Below what an opening is none: the steps themselves, or the line of their nosings. */
  readonly openingFrom: "steps" | "line of the nosings";
  /** Sphere that must not pass at the triangle of riser, tread and bottom rail; null where the code names none. */
  readonly triangleSphere: Cited<Mm> | null;
  /** Height of the guard's top where it is the stair's handrail. */
  readonly handrail: { readonly low: Cited<Mm>; readonly high: Cited<Mm> | null };
  /** A flight from this many risers on, or of this rise, needs a handrail. */
  readonly handrailNeeded: Cited<{ readonly risers: number } | { readonly rise: Mm }>;
}

interface Question {
  readonly edition: CodeEdition;
  readonly occupancy: Occupancy;
}

/**
 * The rules for guards, level and on stairs, of one edition and occupancy.
 *
 * @param question - edition and occupancy as a job names them [words]
 * @returns lengths [mm], loads [N], area [mm2] and line load [N/mm], each with its clause; null for "other", whose rules the job must state
 * @throws never
 * Source: irc-2018, irc-2021, irc-2024, ibc-2021, ibc-2024, ncc-2022; clause with each value
 */
export function guardRules(question: Question): GuardRules | null {
  switch (question.edition) {
    case "IRC 2018":
    case "IRC 2021":
    case "IRC 2024":
      return residentialRules(ircClauses[question.edition], question.occupancy);
    case "IBC 2021":
    case "IBC 2024":
      return buildingRules(ibcClauses[question.edition], question.occupancy);
    case "NCC 2022":
      return australianRules(question.occupancy);
    case "other":
      return null;
  }
}

const SQUARE_FOOT_mm2 = feet(1) * feet(1);

const ANY_DIRECTION: readonly LoadDirection[] = ["outward", "inward", "along the rail", "down", "up"];

/** The greatest overhang of a nosing: where the job gives none, the opening at riser and tread is taken as large as it may be. */
export const nosing_max: Cited<Mm> = fromMemory(inches(1.25), "IRC R311.7.5.3, IBC 1011.5.5: a nosing projects at most 1-1/4 in");

const climbNone = "This edition has no rule on climbing; local amendments may forbid level infill: ask.";
const forceNone = "This edition states no force for the opening test of flexible infill: ask which one is used.";

const poolUs =
  "A guard that is also a pool barrier: where the tops of level members are less than 45 in apart, " +
  "they stand on the pool side and upright members are at most 1-3/4 in apart. Level cables 3 in apart cannot meet it.";

interface IrcClauses {
  readonly source: SourceId;
  /** R312 up to 2021, R321 since 2024. */
  readonly guards: string;
  readonly handrails: string;
  readonly pool: string;
  readonly topDirection: Cited<string>;
  readonly directions: readonly LoadDirection[];
}

const outward = "downward, or level and outward, at any point; in any direction where the top is also the handrail";

/** The numbers are the same in the three editions; clauses moved in 2024, the direction of the top load in 2021. */
const ircClauses: Readonly<Record<"IRC 2018" | "IRC 2021" | "IRC 2024", IrcClauses>> = {
  "IRC 2018": {
    source: "irc-2018",
    guards: "R312.1",
    handrails: "R311.7.8",
    pool: "R326.1",
    topDirection: cite("in any direction, at any point", "irc-2018", "table R301.5, note d"),
    directions: ANY_DIRECTION,
  },
  "IRC 2021": {
    source: "irc-2021",
    guards: "R312.1",
    handrails: "R311.7.8",
    pool: "R327.1",
    topDirection: cite(outward, "irc-2021", "table R301.5, notes d and i"),
    directions: ["outward", "down"],
  },
  "IRC 2024": {
    source: "irc-2024",
    guards: "R321.1",
    handrails: "R318.7.8",
    pool: "R328.1",
    topDirection: cite(outward, "irc-2024", "table R301.5, notes d and i"),
    directions: ["outward", "down"],
  },
};

const handrailOf = (source: SourceId, where: string): StairRules["handrail"] => ({
  low: cite(inches(34), source, where),
  high: cite(inches(38), source, where),
});

function residentialRules(clauses: IrcClauses, occupancy: Occupancy): GuardRules {
  const { source, guards } = clauses;
  const home = occupancy === "one- or two-family dwelling";
  return {
    guardRequiredAboveDrop: cite(inches(30), source, `${guards}.1`, "measured to any point within 36 in of the edge"),
    guardHeight_min: cite(inches(36), source, `${guards}.2`),
    openingSphere: cite(inches(4), source, `${guards}.3`),
    stairs: {
      guardHeight_min: cite(inches(34), source, `${guards}.2, exception 1`),
      openingSphere: cite(inches(4.375), source, `${guards}.3, exception 2`),
      openingFrom: "steps",
      triangleSphere: cite(inches(6), source, `${guards}.3, exception 1`),
      handrail: handrailOf(source, `${guards}.2, exception 2`),
      handrailNeeded: cite({ risers: 4 }, source, clauses.handrails),
    },
    infillLoad: cite(poundsForce(50), source, "table R301.5, note f"),
    infillArea_mm2: cite(SQUARE_FOOT_mm2, source, "table R301.5, note f"),
    topLoad: cite(poundsForce(200), source, "table R301.5"),
    topLoadDirection: clauses.topDirection,
    topLoadDirections: clauses.directions,
    handrailLoadDirections: ANY_DIRECTION,
    uniformLoad_NPerMm: null,
    openingForce: null,
    climbRule: null,
    climbZone: null,
    poolRule: cite(poolUs, "ispsc-2018", "305.2.5", `sent there by ${clauses.pool}`),
    notes: [
      climbNone,
      forceNone,
      ...(home ? [] : ["This code is for one- and two-family dwellings and townhouses; for other buildings ask which code applies."]),
    ],
  };
}

interface IbcClauses {
  readonly source: SourceId;
  readonly line: string;
  readonly point: string;
  readonly infill: string;
}

const ibcClauses: Readonly<Record<"IBC 2021" | "IBC 2024", IbcClauses>> = {
  "IBC 2021": { source: "ibc-2021", line: "1607.9.1", point: "1607.9.1.1", infill: "1607.9.1.2" },
  "IBC 2024": { source: "ibc-2024", line: "1607.9.1.1", point: "1607.9.1", infill: "1607.9.1.2" },
};

function buildingRules(clauses: IbcClauses, occupancy: Occupancy): GuardRules {
  const { source } = clauses;
  const home = occupancy === "one- or two-family dwelling";
  const unit = occupancy === "dwelling unit in a larger building";
  return {
    guardRequiredAboveDrop: cite(inches(30), source, "1015.2", "measured to any point within 36 in of the edge"),
    guardHeight_min: home
      ? cite(inches(36), source, "1015.3, exception 1", "group R-3, not more than three storeys")
      : cite(inches(42), source, "1015.3"),
    openingSphere: cite(inches(4), source, "1015.4", "from 36 in to 42 in of height a 4-3/8 in sphere (exception 1)"),
    stairs: {
      guardHeight_min: home || unit ? cite(inches(34), source, "1015.3, exceptions") : cite(inches(42), source, "1015.3"),
      openingSphere: home || unit ? cite(inches(4.375), source, "1015.4, exception 6") : cite(inches(4), source, "1015.4"),
      openingFrom: "steps",
      triangleSphere: cite(inches(6), source, "1015.4, exception 2"),
      handrail: handrailOf(source, "1015.3, exceptions; 1014.2"),
      // Stairways, without a least number of risers.
      handrailNeeded: cite({ risers: 1 }, source, "1011.11"),
    },
    infillLoad: cite(poundsForce(50), source, clauses.infill),
    infillArea_mm2: fromMemory(SQUARE_FOOT_mm2, "ASCE 7-16, 4.5.1.2: 12 in by 12 in including openings"),
    topLoad: cite(poundsForce(200), source, clauses.point),
    topLoadDirection: fromMemory("in any direction, at any point", "ASCE 7, 4.5.1"),
    topLoadDirections: ANY_DIRECTION,
    handrailLoadDirections: ANY_DIRECTION,
    uniformLoad_NPerMm: home ? null : cite(poundsPerFoot(50), source, clauses.line, "not together with the single load"),
    openingForce: null,
    climbRule: null,
    climbZone: null,
    poolRule: cite(poolUs, "ispsc-2018", "305.2.5"),
    notes: [
      climbNone,
      forceNone,
      ...(unit
        ? ["Group R-2 of not more than three storeys, with a way out of each unit of its own: 36 in is allowed (1015.3, exception 1); ask."]
        : []),
    ],
  };
}

/** Printed as 150 N, or 15.3 kg over a pulley. */
const CONE_PULL: Newton = 150;

function australianRules(occupancy: Occupancy): GuardRules {
  const home = occupancy === "one- or two-family dwelling";
  const loads = "AS/NZS 1170.1, table 3.3 (named by 11.3.4(11)): external balconies; read the standard before use";
  const climb: ClimbZone = { aboveDrop: 4000, from: 150, to: 760 };
  return {
    guardRequiredAboveDrop: cite(1000, "ncc-2022", "11.3.3; H5P2"),
    guardHeight_min: cite(1000, "ncc-2022", "11.3.4(2)(b)(i)"),
    openingSphere: cite(125, "ncc-2022", "11.3.4(4)"),
    stairs: {
      guardHeight_min: cite(865, "ncc-2022", "11.3.4(2)(a)"),
      openingSphere: cite(125, "ncc-2022", "11.3.4(4)", "above the line of the nosings"),
      openingFrom: "line of the nosings",
      triangleSphere: null,
      handrail: { low: cite(865, "ncc-2022", "11.3.5"), high: null },
      handrailNeeded: cite({ rise: 1000 }, "ncc-2022", "11.3.5"),
    },
    rampHeight_min: cite(865, "ncc-2022", "11.3.4(2)(a)"),
    infillLoad: fromMemory(500, loads),
    infillArea_mm2: fromMemory(2000, loads),
    topLoad: fromMemory(600, loads),
    topLoadDirection: fromMemory("inward, outward or downward", loads),
    topLoadDirections: ["outward", "inward", "down"],
    handrailLoadDirections: ["outward", "inward", "down"],
    uniformLoad_NPerMm: fromMemory(0.75, loads),
    openingForce: cite(CONE_PULL, "ncc-2022", "H5V1", "pull on a cone of 125 mm diameter"),
    climbRule: cite(
      "Where the fall is more than 4 m, level elements between 150 mm and 760 mm above the floor must not help climbing.",
      "ncc-2022",
      "11.3.4(8)",
    ),
    climbZone: cite(climb, "ncc-2022", "11.3.4(8)"),
    poolRule: cite(
      "A pool deeper than 300 mm needs a barrier to AS 1926.1 and AS 1926.2; level cables do not make one.",
      "ncc-2022",
      "H7D2",
    ),
    notes: [
      "Loads come from AS/NZS 1170.1, which was not read: its values are from memory.",
      "Wire infill meets the opening rule when built to 11.3.6; the 125 mm sphere is greater than 4 in.",
      ...(home ? [] : ["The Housing Provisions are for houses (class 1 and 10); for other buildings ask which volume applies."]),
    ],
  };
}
