// Which section does a size in a job file mean, and which sleeve stands round it?
import * as custom from "../tables/practice.ts";
import { lumberSection } from "../tables/timber.ts";
import { decimal, inches } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import type { SizeText } from "./fields.ts";
import { stated } from "./fitting-defaults.ts";
import type { Section } from "./job.ts";
import type { JobFile } from "./schema.ts";
import type { Sleeve } from "./standing.ts";

/** Nominal sizes may be written either way round: 4x6 and 6x4 stand differently. */
export function lumberOf(size: SizeText & { readonly kind: "nominal" }): readonly [first: number, second: number] | null {
  const [first, second] = size.numbers;
  const section = lumberSection(size.name);
  if (section !== null) return [section.thickness, section.width];
  const turned = lumberSection(`${second}x${first}`);
  return turned === null ? null : [turned.width, turned.thickness];
}

type MemberFile = JobFile["spacers"];

export function sectionOf({ size, wall, material }: Pick<MemberFile, "size" | "material"> & { readonly wall?: Mm | undefined }): Section {
  const [along, across] = sizesOf(size);
  return { material, along, across, wall: wall ?? null, name: nameOf(size, wall ?? null) };
}

export function sizesOf(size: SizeText): readonly [Mm, Mm] {
  if (size.kind === "measured") return size.sizes;
  const dressed = lumberOf(size);
  if (dressed === null) throw new Error(`${size.name} passed the checks but is no lumber`);
  return dressed;
}

/** "4x4", "50 x 50 x 3 mm tube", "2 x 2 x 1/8 in tube": as the file has it, in its own units. */
export function nameOf(size: SizeText, wall: Mm | null): string {
  if (size.kind === "nominal") return size.name;
  const [unit, write] = size.isMetric
    ? ["mm", (value: Mm): string => decimal(value, { decimals: 2 })]
    : ["in", (value: Mm): string => inches(value, { step: 1 / 64 }).replace('"', "")];
  const parts = [...size.sizes, ...(wall === null ? [] : [wall])].map(write);
  return `${parts.join(" x ")} ${unit}${wall === null ? "" : " tube"}`;
}

/** Outside sizes, wall and the clearances of its holes. */
export function sleeveOf(file: NonNullable<JobFile["posts"]["sleeve"]>): Sleeve {
  const { material, size, wall } = file;
  const [along, across] = sizesOf(size);
  return {
    material,
    along,
    across,
    wall,
    name: `${material} sleeve ${nameOf(size, null)}`,
    washerClearance: stated(file["washer clearance"], "posts: sleeve: washer clearance", custom.washerClearance),
    boreClearance: stated(file["bore clearance"], "posts: sleeve: bore clearance", custom.sleeveBoreClearance),
  };
}
