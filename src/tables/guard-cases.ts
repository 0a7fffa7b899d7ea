// Which loads must a guard's frame carry together, and for how long do they last? One case after the other, by the code's rules.
import { type Cited, cite, fromMemory } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import type { GuardRules, LoadDirection } from "./limits.ts";
import { cableLoadDuration, guardLoadDuration, type LoadDuration } from "./wood-factors.ts";

export type GuardLoad =
  | { readonly kind: "none" }
  /** At any point of the top. */
  | { readonly kind: "top"; readonly force: Newton; readonly directions: readonly LoadDirection[] }
  /** Along the whole top. */
  | { readonly kind: "line"; readonly force_NPerMm: number; readonly directions: readonly LoadDirection[] }
  /** Square to the guard, on a square of the infill. */
  | { readonly kind: "infill"; readonly force: Newton; readonly side: Mm; readonly directions: readonly LoadDirection[] };

/** The cables pull in every case, with a factor of 1 on both parts. */
export interface GuardCase {
  readonly name: string;
  readonly load: Cited<GuardLoad>;
  /** The shortest load of a case sets the duration. */
  readonly duration: Cited<LoadDuration>;
}

/** The two parts are added as they are: dead load, tension and live load each once. */
export const combinationRule: Cited<string> = fromMemory(
  "cable tension + one guard load, each once; the single load, the line load and the load on the infill not together",
  "ASCE 7, 2.4.1 and 4.5.1; the code's own notes with each load",
);

const SQUARE: readonly LoadDirection[] = ["outward", "inward"];

/**
 * The cases for the frame: cables alone, and cables with each guard load of the code in turn.
 *
 * @param rules - rules of the edition: loads [N], area [mm2], line load [N/mm]
 * @param railIsHandrail - whether the top rail is the handrail too [true or false]
 * @returns cases with their loads [N, N/mm] and durations [words]; the line load only where the code has one
 * @throws never
 * Source: irc-2018, irc-2021, irc-2024, ibc-2021, ibc-2024, ncc-2022; clause with each load
 */
export function guardCases(rules: GuardRules, railIsHandrail: boolean): readonly GuardCase[] {
  const directions = railIsHandrail ? rules.handrailLoadDirections : rules.topLoadDirections;
  const { topLoad, uniformLoad_NPerMm: line, infillLoad } = rules;
  const lineCase: readonly GuardCase[] =
    line === null
      ? []
      : [
          {
            name: "cables and line load along the top",
            load: { ...line, value: { kind: "line", force_NPerMm: line.value, directions } },
            duration: guardLoadDuration,
          },
        ];
  const side = Math.sqrt(rules.infillArea_mm2.value);
  return [
    { name: "cables alone", load: cite({ kind: "none" }, "derived", "no load on the guard"), duration: cableLoadDuration },
    {
      name: "cables and single load at the top",
      load: { ...topLoad, value: { kind: "top", force: topLoad.value, directions } },
      duration: guardLoadDuration,
    },
    ...lineCase,
    {
      name: "cables and load on the infill",
      load: { ...infillLoad, value: { kind: "infill", force: infillLoad.value, side, directions: SQUARE } },
      duration: guardLoadDuration,
    },
  ];
}
