// Which sections come next to a section that is too weak, as they are sold and as a job file takes them?
import type { Job, Section } from "../job/job.ts";
import { inches } from "../tables/customary.ts";
import { tubes } from "../tables/metal.ts";
import { lumberSection } from "../tables/timber.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundNearest } from "../units/round.ts";
import { DESIGN_WALL } from "./frame-members.ts";

/** As a job file takes it, in the job's own units. */
export const tapeText = (value: Mm, job: Job): string => length(value, { units: job.units, style: "tape", both: false, step: 1 / 64 });

export interface Size {
  readonly name: string;
  readonly write: string;
  readonly along: Mm;
  readonly across: Mm;
  readonly wall: Mm | null;
}

/** Dressed faces of a nominal section, in the order of its name. */
export function lumber(name: string): Size {
  const known = lumberSection(name);
  const turned = known ?? lumberSection(name.split("x").reverse().join("x"));
  if (turned === null) throw new RangeError(`no section ${name}`);
  const [along, across] = known === null ? [turned.width, turned.thickness] : [turned.thickness, turned.width];
  return { name, write: `size: ${name}`, along, across, wall: null };
}

export const sectionOf = ({ name, along, across, wall }: Size): Omit<Section, "material"> => ({ name, along, across, wall });

export const HAIR: Mm = 0.5;

const WALL_step = { inch: inches(1 / 16), mm: 1 } as const;
/** The table has the design wall of welded tube. */
const NOMINAL_over_design = 1 / DESIGN_WALL;

/** The next wall, and the next square tubes of the table. */
export function largerTubes({ along, across, wall }: Pick<Section, "along" | "across" | "wall">, job: Job): readonly Size[] {
  if (wall === null) return [];
  const larger = tubes.value.filter(({ shape, outside }) => shape === "square" && outside > Math.max(along, across) + HAIR).slice(0, 2);
  const step = WALL_step[job.units];
  return [
    tube({ along, across, wall: wall + step }, job),
    ...larger.map((one) => {
      const nominal = roundNearest(one.wall * NOMINAL_over_design, WALL_step.inch);
      return tube({ along: one.outside, across: one.outside, wall: nominal }, job);
    }),
  ];
}

function tube(size: Omit<Size, "name" | "write">, job: Job): Size {
  const [along, across, wall] = [size.along, size.across, size.wall ?? 0].map((value) => tapeText(value, job)) as [string, string, string];
  return { ...size, name: `${along} x ${across} x ${wall} tube`, write: `size: ${along} x ${across}, wall: ${wall}` };
}

const SPACERS_of_wood = ["2x2", "2x3", "2x4"] as const;
const DEPTH_step = { inch: inches(1 / 2), mm: 10 } as const;
const STEPS = [1, 2, 3] as const;

/** Spacers that are deeper square to the guard; larger tubes. */
export function deeperSpacers(section: Section, job: Job): readonly Size[] {
  const { material, along, across, wall } = section;
  if (material === "wood") {
    return SPACERS_of_wood.map(lumber).filter((size) => size.along > along - HAIR && size.across > across + HAIR);
  }
  if (wall !== null) return largerTubes(section, job);
  return STEPS.map((steps) => bar({ along, across: across + steps * DEPTH_step[job.units] }, job));
}

function bar({ along, across }: Pick<Size, "along" | "across">, job: Job): Size {
  const name = `${tapeText(along, job)} x ${tapeText(across, job)}`;
  return { name: `${name} bar`, write: `size: ${name}`, along, across, wall: null };
}
