// Do the rails hold as columns between the posts, and bent by the code's load at mid-span?

import type { Section } from "../mechanics/section.ts";
import type { LoadDuration } from "../tables/wood-factors.ts";
import type { Mm, Newton } from "../units/quantity.ts";
import { roundTo } from "../units/round.ts";
import { type GuardLoads, type Push, pushNames, type TopLoad } from "./frame-check-guard.ts";
import type { LoadedBay } from "./frame-check-loads.ts";
import { askRow, CABLES_ALONE, growthPart, stressRow, worstOf } from "./frame-check-row.ts";
import type { Axis, Strength } from "./frame-check-strength.ts";
import { type Bent, type Stressed, stressOf } from "./frame-check-stress.ts";
import type { FrameCheck } from "./frame-plan.ts";

export interface RailQuestion {
  readonly rail: "top rail" | "bottom rail";
  readonly bays: readonly LoadedBay[];
  readonly section: Section;
  readonly strength: (load: LoadDuration) => Strength | null;
  /** Loads of the code on this rail besides the cables. */
  readonly guard: GuardLoads;
}

export const memberName = (rail: RailQuestion["rail"], { sideId, leftId, rightId }: LoadedBay): string =>
  `${rail} of side ${sideId}, ${leftId} to ${rightId}`;

interface Situation {
  readonly bay: LoadedBay;
  readonly load: TopLoad | null;
  readonly push: Push | null;
  readonly force: Newton;
  readonly moment: Readonly<Record<Axis, number>>;
}

/** Moment in the middle of a bay that is taken as a beam on two supports, although the rail runs on: on the safe side. */
export const midSpanMoment = (load: TopLoad, length: Mm): number => (load.on(length) * length) / (load.isLine ? 8 : 4);

const alone = (bay: LoadedBay): Situation => ({ bay, load: null, push: null, force: bay.thrust, moment: { x: 0, y: bay.endMoment } });

function under(bay: LoadedBay, load: TopLoad, push: Push): Situation {
  const { force, moment } = alone(bay);
  const added = midSpanMoment(load, bay.length);
  const of = { bay, load, push };
  if (push === "along the rail") return { ...of, force: force + load.on(bay.length), moment };
  return { ...of, force, moment: push === "square" ? { ...moment, x: added } : { ...moment, y: moment.y + added } };
}

const loadsText = ({ load, push }: Situation): string => (load === null || push === null ? CABLES_ALONE : load.text(pushNames[push]));

const NAMES = { x: "level", y: "upright" } as const;

const bentOf = ({ bay, load, force, moment }: Situation, { x, y }: Section): Bent => ({
  force,
  moment,
  modulus_mm3: { x: x.modulus_mm3, y: y.modulus_mm3 },
  free: { length: bay.length, bends: load?.isLine === true ? "any other" : "held at both ends, load in the middle" },
  names: NAMES,
});

export function railRows(question: RailQuestion): readonly FrameCheck[] {
  const { rail, bays, guard, section } = question;
  const cables = bays.map(alone);
  const loaded = guard.top.flatMap((load) => load.pushes.flatMap((push) => bays.map((bay) => under(bay, load, push))));
  const permanent = question.strength(guard.permanent);
  if (permanent === null) return askRail(question, loaded.length > 0 ? loaded : cables);
  const stress = (one: Situation): Stressed =>
    stressOf((one.load === null ? null : question.strength(one.load.duration)) ?? permanent, bentOf(one, section));
  const kind = rail.replace(" ", "-");
  return [
    ...railRow(`${rail} under the cables' thrust`, `${kind}-cables`, cables, { rail, stress, section, permanent }),
    ...railRow(`${rail} under thrust and guard load`, `${kind}-guard`, loaded, { rail, stress, section, permanent }),
  ];
}

interface Stressing {
  readonly rail: RailQuestion["rail"];
  readonly stress: (one: Situation) => Stressed;
  readonly section: Section;
  readonly permanent: Strength;
}

function railRow(name: string, kind: string, situations: readonly Situation[], stressing: Stressing): readonly FrameCheck[] {
  const { rail, stress, section, permanent } = stressing;
  // Bays of one length are pressed alike but for their thrust: the greatest of each length is enough.
  const worst = worstOf(mostPressed(situations), (one) => stress(one).check.ratio);
  if (worst === undefined) return [];
  const stressed = stress(worst);
  const grown = (growth: number): number => {
    const { force, moment } = worst;
    return stressOf(permanent, bentOf({ ...worst, force: growth * force, moment: { x: 0, y: growth * moment.y } }, section)).check.ratio;
  };
  const isCurved = worst.load === null && stressed.unit === "1" && stressed.isShape !== true;
  return [
    stressRow(
      {
        id: `${kind}-${worst.bay.sideId}`,
        name,
        member: memberName(rail, worst.bay),
        height: null,
        loads: stressed.isShape === true ? "any thrust" : loadsText(worst),
        advice: `Set the posts closer together, or use a larger ${rail}.`,
      },
      stressed,
      isCurved ? [growthPart(grown)] : [],
    ),
  ];
}

/** Of bays of one length those that no other surpasses in thrust and moment: the others need not be looked at. */
function mostPressed(situations: readonly Situation[]): readonly Situation[] {
  const found = new Map<string, Situation[]>();
  for (const one of situations) {
    const key = `${roundTo(one.bay.length, 3)}|${one.push}|${one.load?.isLine}`;
    const known = found.get(key) ?? [];
    if (known.some((more) => more.force * EQUAL >= one.force && more.moment.y * EQUAL >= one.moment.y)) continue;
    found.set(key, [...known.filter(({ force, moment }) => force > one.force || moment.y > one.moment.y), one]);
  }
  return [...found.values()].flat();
}

/** Equal bays differ by dust. */
const EQUAL = 1 + 1e-9;

function askRail({ rail }: RailQuestion, situations: readonly Situation[]): readonly FrameCheck[] {
  const worst = worstOf(situations, ({ force, moment }) => Math.max(force, moment.x, moment.y));
  if (worst === undefined) return [];
  const { bay, force, moment } = worst;
  const bends = Math.max(moment.x, moment.y);
  return [
    askRow(
      {
        id: `${rail.replace(" ", "-")}-ask-${bay.sideId}`,
        name: `${rail} without design values`,
        member: memberName(rail, bay),
        height: null,
        loads: loadsText(worst),
        advice: `No design values stand here for this ${rail}: have a licensed engineer compare the demand with what it carries, or use a piece of at least 1-1/2 in.`,
      },
      {
        source: "nds-design-values",
        where: "tables 4A, 4B and 4D",
        demand: bends > 0 ? bends : force,
        unit: bends > 0 ? "N mm" : "N",
        formula: bends > 0 ? "M, to be carried with P" : "P, to be carried",
        parts: [
          { name: "M level", value: moment.x, unit: "N mm" },
          { name: "M upright", value: moment.y, unit: "N mm" },
          { name: "P", value: force, unit: "N" },
          { name: "L", value: bay.length, unit: "mm" },
        ],
      },
    ),
  ];
}
