// What are wood, post bases, warmth and moisture taken to be where the job does not state them, and what was measured instead?
import { type Cited, cite, fromJob, practice } from "../sources/cited.ts";
import * as custom from "../tables/practice.ts";
import { withoutDust } from "../units/round.ts";
import { stated } from "./fitting-defaults.ts";
import type { JobFile } from "./schema.ts";
import type { Calibration, FloorMaterial, GaugeOrPitch, PostBase, Site, Wood } from "./site.ts";

type LumberFile = Pick<JobFile["posts"], "material" | "treated" | "species" | "grade" | "incised">;

/** The weakest of the usual framing woods, where the job names none; null for metal. */
export function woodOf(file: LumberFile, where: string): Cited<Wood> | null {
  if (file.material !== "wood") return null;
  const species = file.species ?? "Hem-Fir";
  const value: Wood = {
    species,
    grade: file.grade ?? "No.2",
    // Southern Pine takes preservative without it.
    incised: file.incised ?? (file.treated === true && species !== "Southern Pine"),
  };
  if (file.species !== undefined && file.grade !== undefined) return fromJob(value, `${where}: species and grade`);
  return practice(value, `${where}: where no species or grade is stated, Hem-Fir No.2, the weakest of the usual framing woods, is taken`);
}

/** Stated or measured by the job, else a spring of our own setting. */
export function baseOf({ base, material }: JobFile["posts"]): Cited<PostBase> {
  if (base !== undefined) return fromJob<PostBase>(base, "posts: base");
  const { value, ...origin } = material === "wood" ? custom.postBase_wood : custom.postBase_metal;
  return { ...origin, value: { kind: "spring", stiffness_NmmPerRad: value } };
}

const PERCENT = 100;
/** 14 % is 0.14 of a whole, and 100 times that is a hair above 14: a rule for wood up to 14 % would not be asked. */
const inPercent = (share: number | undefined): number | undefined => (share === undefined ? undefined : withoutDust(share * PERCENT));

export const siteOf = (file: NonNullable<JobFile["site"]>): Site => ({
  reference: stated(file.reference, "site: reference", custom.reference),
  coldest: stated(file.coldest, "site: coldest", custom.coldest),
  warmest: stated(file.warmest, "site: warmest", custom.warmest),
  moistureAtFitting_percent: stated(inPercent(file["moisture at fitting"]), "site: moisture at fitting", custom.moistureAtFitting_percent),
  moistureInService_percent: stated(inPercent(file["moisture in service"]), "site: moisture in service", custom.moistureInService_percent),
  wet: stated<boolean>(file.wet, "site: wet", cite(true, "nds-2018", "4.3.3: exposed lumber is taken as wet in service")),
  floor: file.floor === undefined ? null : fromJob<FloorMaterial>(file.floor, "site: floor"),
  nextVisit_months: stated(file["next visit"], "site: next visit", custom.nextVisit_months),
});

export function calibrationOf({ turns }: NonNullable<JobFile["calibration"]>): Calibration {
  if (turns === undefined) return { turns: null };
  const span = turns.span ?? 0;
  const reading = (force: number | undefined, pitch_Hz: number | undefined): GaugeOrPitch =>
    force !== undefined ? { kind: "gauge", force } : { kind: "pitch", pitch_Hz: pitch_Hz ?? 0, span };
  return {
    turns: {
      cable: turns.cable,
      turns: turns.turns,
      from: reading(turns.from, turns["from pitch"]),
      to: reading(turns.to, turns["to pitch"]),
    },
  };
}
