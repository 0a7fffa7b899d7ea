// What does each code ask of the handrail of a stair or ramp? By edition, with the clause.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { SourceId } from "../sources/sources.ts";
import type { Mm } from "../units/quantity.ts";
import { inches } from "./customary.ts";
import type { CodeEdition } from "./limits.ts";

/** A rail that a hand closes round: its outline, and the largest size across. */
export interface Grip {
  readonly perimeter_min: Mm;
  readonly perimeter_max: Mm;
  readonly across_max: Mm;
}

export interface HandrailRules {
  readonly stair: Cited<string>;
  readonly ramp: Cited<string>;
  readonly height: Cited<string>;
  /** null where no rule was read. */
  readonly grip: { readonly size: Cited<Grip>; readonly words: Cited<string> } | null;
  readonly ends: Cited<string> | null;
  readonly clearance: Cited<string> | null;
}

/**
 * The rules for handrails of one edition.
 *
 * @param edition - as a job names it [words]
 * @returns rules in words and the sizes of a grip [mm], each with its clause; null for "other", whose authority must state them
 * @throws never
 * Source: irc-2018, irc-2021, irc-2024, ibc-2021, ibc-2024, ncc-2022; what was not read is from memory and says so
 */
export function handrailRules(edition: CodeEdition): HandrailRules | null {
  switch (edition) {
    case "IRC 2018":
    case "IRC 2021":
    case "IRC 2024":
      return residential[edition];
    case "IBC 2021":
      return building((value, where) => fromMemory(value, `IBC 2021, ${where}`));
    case "IBC 2024":
      return building((value, where) => cite(value, "ibc-2024", where));
    case "NCC 2022":
      return australian;
    case "other":
      return null;
  }
}

/** Type I, other than round: what a round one may measure across, the code says apart. */
const grip: Grip = { perimeter_min: inches(4), perimeter_max: inches(6.25), across_max: inches(2.25) };
const gripWords =
  "a grip: round, 1-1/4 to 2 in; or 4 to 6-1/4 in around and at most 2-1/4 in across (type I); or with finger recesses (type II)";
const gripOf = (source: SourceId, where: string): HandrailRules["grip"] => ({
  size: cite(grip, source, where),
  words: cite(gripWords, source, where),
});

interface Clauses {
  readonly source: SourceId;
  readonly needed: string;
  /** Of height, clearance, ends and grip. */
  readonly height: string;
  readonly clearance: string;
  readonly ends: string;
  readonly grip: string;
  readonly ramp: string;
}

const ofClauses = ({ source, needed, height, clearance, ends, grip: grips, ramp }: Clauses): HandrailRules => ({
  stair: cite("on at least one side of a flight of 4 or more risers", source, needed),
  ramp: fromMemory("on at least one side of a ramp steeper than 1 in 12", ramp),
  height: cite("34 to 38 in, plumb above the nosings", source, height),
  grip: gripOf(source, grips),
  ends: cite("continuous over the flight, ends returned", source, ends),
  clearance: cite("at least 1-1/2 in from a wall, at most 4-1/2 in into the stair", source, clearance),
});

/** The rules are the same in the three editions; clauses moved in 2024. */
const before2024 = (source: SourceId): HandrailRules =>
  ofClauses({
    source,
    needed: "R311.7.8",
    height: "R311.7.8.1",
    clearance: "R311.7.8.2 and .3",
    ends: "R311.7.8.4",
    grip: "R311.7.8.5",
    ramp: "IRC R311.8.3",
  });

const residential: Readonly<Record<"IRC 2018" | "IRC 2021" | "IRC 2024", HandrailRules>> = {
  "IRC 2018": before2024("irc-2018"),
  "IRC 2021": before2024("irc-2021"),
  "IRC 2024": ofClauses({
    source: "irc-2024",
    needed: "R318.7.8",
    height: "R320.2",
    clearance: "R320.3 and R320.4",
    ends: "R320.5",
    grip: "R320.6",
    ramp: "IRC 2024, the clause on ramps (R311.8.3 before 2024)",
  }),
};

type Citing = <T>(value: T, where: string) => Cited<T>;

/** Only the clauses of 2024 were read. */
const building = (citing: Citing): HandrailRules => ({
  stair: citing("on both sides of a flight; on one side within dwellings", "1011.11"),
  ramp: fromMemory("on both sides of a ramp that rises more than 6 in", "IBC 1012.8"),
  height: citing("34 to 38 in, plumb above the nosings or the ramp", "1014.2"),
  grip: {
    size: citing(grip, "1014.2 to 1014.9"),
    words: citing(`${gripWords}; type II within dwellings only`, "1014.2 to 1014.9"),
  },
  ends: citing("continuous; 12 in beyond the top, one tread beyond the bottom; ends returned", "1014.2 to 1014.9"),
  clearance: citing("at least 1-1/2 in from a wall, at most 4-1/2 in into the stair", "1014.2 to 1014.9"),
});

const rises: Cited<string> = cite("on at least one side where it rises 1 m or more", "ncc-2022", "11.3.5");
const australian: HandrailRules = {
  stair: rises,
  ramp: rises,
  height: cite("at least 865 mm, plumb above the nosings or the ramp", "ncc-2022", "11.3.5"),
  grip: null,
  ends: null,
  clearance: null,
};
