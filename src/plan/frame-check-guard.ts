// Which of the code's loads act on the top of this guard together with the cables, where they push, and for how long?
import type { Job } from "../job/job.ts";
import type { Cited } from "../sources/cited.ts";
import { type GuardCase, guardCases } from "../tables/guard-cases.ts";
import { guardRules, type LoadDirection } from "../tables/limits.ts";
import { cableLoadDuration, type LoadDuration } from "../tables/wood-factors.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { askRow } from "./frame-check-row.ts";
import type { FrameCheck } from "./frame-plan.ts";

/** The directions that differ for a frame: inward is outward mirrored, up is down. */
export type Push = "square" | "along the rail" | "upright";

export interface TopLoad {
  /** With where it pushes and its origin, for the row. */
  readonly text: (towards: string) => string;
  readonly origin: Pick<Cited<number>, "source" | "where">;
  readonly pushes: readonly Push[];
  readonly duration: LoadDuration;
  readonly isLine: boolean;
  /** What stands on a length of the top. */
  readonly on: (length: Mm) => Newton;
}

const pushOf: Readonly<Record<LoadDirection, Push>> = {
  outward: "square",
  inward: "square",
  down: "upright",
  up: "upright",
  "along the rail": "along the rail",
};

export const pushNames: Readonly<Record<Push, string>> = {
  square: "square to the guard",
  "along the rail": "along the rail",
  upright: "upright",
};

/** The code's load on the infill, square to the guard, on a square of it. */
export interface InfillLoad {
  readonly text: string;
  readonly origin: Pick<Cited<number>, "source" | "where">;
  readonly duration: LoadDuration;
  readonly force: Newton;
  readonly side: Mm;
}

export interface GuardLoads {
  /** Of the cables alone. */
  readonly permanent: LoadDuration;
  readonly top: readonly TopLoad[];
  /** null where the edition's loads are not known. */
  readonly infill: InfillLoad | null;
  /** A question where the edition's loads are not known. */
  readonly asks: readonly FrameCheck[];
}

/**
 * Single and line load at the top, and the load on the infill, which is for spacers and cables: on posts and rails it is less than the load at
 * the top and has a shorter lever.
 */
export function guardLoadsOf(job: Job): GuardLoads {
  const { edition, occupancy } = job.code;
  const rules = guardRules({ edition, occupancy });
  const permanent = cableLoadDuration.value;
  if (rules === null) return { permanent, top: [], infill: null, asks: [unknownLoads(job)] };
  const cases = guardCases(rules, job.frame.railIsHandrail);
  return { permanent, top: cases.flatMap((one) => topLoadOf(one, job)), infill: infillOf(cases, job), asks: [] };
}

const originText = ({ source, where }: Pick<Cited<unknown>, "source" | "where">, job: Job): string =>
  source === "memory" ? `from memory, ${where}` : `${job.code.edition}, ${where}`;

function infillOf(cases: readonly GuardCase[], job: Job): InfillLoad | null {
  const [found] = cases.flatMap(({ name, load, duration }) => {
    const { value, source, where } = load;
    if (value.kind !== "infill") return [];
    const origin = { source, where: `${name}: ${where}` };
    const text = `load on the infill, ${pushNames.square} (${originText(load, job)})`;
    return [{ text, origin, duration: duration.value, force: value.force, side: value.side }];
  });
  return found ?? null;
}

function topLoadOf({ name, load, duration }: GuardCase, job: Job): readonly TopLoad[] {
  const { value, source, where } = load;
  if (value.kind !== "top" && value.kind !== "line") return [];
  const origin = originText(load, job);
  return [
    {
      text: (towards) => `${name}, ${towards} (${origin})`,
      origin: { source, where: `${name}: ${where}` },
      pushes: [...new Set(value.directions.map((direction) => pushOf[direction]))],
      duration: duration.value,
      isLine: value.kind === "line",
      on: (length) => (value.kind === "line" ? value.force_NPerMm * length : value.force),
    },
  ];
}

const unknownLoads = (job: Job): FrameCheck =>
  askRow(
    {
      id: "guard-loads",
      name: "loads on the guard",
      member: "whole guard",
      height: null,
      loads: "guard loads of the authority's own code",
      advice: `Ask ${job.code.authority} which loads the guard must carry and have posts, rails and spacers checked for them: only the cables are checked here.`,
    },
    { source: "job", where: "code: edition", demand: 0, unit: "N", formula: "", parts: [] },
  );
