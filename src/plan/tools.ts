// Which tools does this job need, step by step?

import type { Job } from "../job/job.ts";
import { decimal, drillStep, force, length } from "../units/print.ts";
import { onScale } from "../units/print-measured.ts";
import type { Mm } from "../units/quantity.ts";
import { SLEEVE_USE, WASHER_HOLE } from "./bores.ts";
import { tubeTools } from "./bushing-tubes.ts";
import { faceEndsOf, faceOf, plainShankOf } from "./face-end.ts";
import type { InstrumentRange } from "./instrument-range.ts";
import { rakeTools, slopesOf, surveyTools } from "./measure-tools.ts";
import { isForMasonry, mergedBits } from "./merged-bits.ts";
import { mitreNote } from "./mitres.ts";
import { edgeProtection } from "./open-edge.ts";
import { anchorEndsOf } from "./pier.ts";
import { pierTools } from "./pier-tools.ts";
import type { Plan, Run } from "./plan.ts";
import type { BitUse, ToolLine } from "./purchase.ts";
import { isSetOff } from "./set-off.ts";

interface ToolUsers extends Pick<Plan, "rakes" | "runs" | "bores"> {
  readonly bits: readonly BitUse[];
  readonly range: InstrumentRange;
}

export function makeTools({ bits, runs, range, rakes, bores }: ToolUsers, job: Job): readonly ToolLine[] {
  return [
    ...safeTools(job),
    ...to("measure", surveyTools(job)),
    ...to("measure slopes", rakeTools(rakes)),
    ...cutTools({ runs, rakes }, job),
    ...setOutTools({ rakes }, job),
    ...boreTools({ bits, rakes }, job),
    ...faceTools(runs, job),
    ...to("bore", [...tubeTools(bores, job), ...pierTools(runs, job)]),
    ...reeveTools(runs, job),
    ...tightenTools(range, job),
    ...proveTools(job),
  ];
}

export interface Line {
  readonly item: string;
  readonly size?: string;
  readonly source: ToolLine["source"];
  readonly note: string;
}

const to = (step: string, lines: readonly Line[]): readonly ToolLine[] => lines.map((line) => ({ step, size: "", ...line }));
const small = (mm: Mm, job: Job): string => length(mm, { units: job.units, decimals: 1, step: drillStep(mm) });

/** What closes the edge stands before the first step there: measuring. */
function safeTools(job: Job): readonly ToolLine[] {
  const item = edgeProtection(job);
  const note = `at the open edge until H4; drop of ${length(job.code.drop, { units: job.units, style: "feet" })}`;
  return to("before measuring", [{ item, source: item === "fall protection" ? "rent" : "have", note }]);
}

/** Rails and spacers are cut and fixed to the standing posts. */
function cutTools({ runs, rakes }: Pick<ToolUsers, "runs" | "rakes">, job: Job): readonly ToolLine[] {
  const materials = [job.posts.section.material, job.spacers.section.material];
  const treated = [job.posts.treatment, job.spacers.treatment, job.frame.topRailTreatment].includes("treated");
  return to("build the frame", [
    {
      item: materials.every((each) => each === "wood") ? "saw for wood" : "saw with a blade for each material",
      source: "have",
      note: ["square cuts", ...mitreNote(job), ...(rakes.length === 0 ? [] : [`on slopes ${slopesOf(rakes)} off square`])].join("; "),
    },
    ...(runs.some(({ spans }) => spans.length > 0)
      ? [{ item: "driver with bits", size: "to fit the fasteners", source: "have", note: "for rails and spacers" } as const]
      : []),
    ...(treated ? [{ item: "brush for preservative", source: "buy", note: "cut ends and bores" } as const] : []),
  ]);
}

const setOutTools = ({ rakes }: Pick<ToolUsers, "rakes">, job: Job): readonly ToolLine[] => {
  const leaning = job.posts.asFound.flatMap(({ post, leans }) => (leans === null ? [] : [post]));
  return to("set out", [
    { item: "tape", size: "in this packet's unit", source: "have", note: "one for the whole job" },
    ...(rakes.length === job.sides.length
      ? []
      : [
          {
            item: "story pole, straight",
            size: "longer than the guard",
            source: "have",
            note: isSetOff(job) ? "two, for two heights" : rakes.length === 0 ? "marked once" : "marked once; for level sides alone",
          } as const,
        ]),
    {
      item: "square, level, sharp pencil",
      source: "have",
      note: `posts plumb before marking${leaning.length === 0 ? "" : `, but for ${leaning.join(", ")}, which lean${leaning.length === 1 ? "s" : ""} as found`}`,
    },
    { item: "centre punch or awl", source: "have", note: "guides the bit" },
  ]);
};

function boreTools({ bits, rakes }: Pick<ToolUsers, "bits" | "rakes">, job: Job): readonly ToolLine[] {
  const wood = job.posts.section.material === "wood";
  const size = (mm: Mm): string => length(mm, { units: job.units });
  return to("bore", [
    ...mergedBits(bits).map(
      (bit): Line => ({
        item: bitName(bit, wood, job),
        size: `${small(bit.diameter, job)}, at least ${size(bit.bitLength_min)} long`,
        source: "buy",
        note: `${bit.use}: ${bit.holes} holes, deepest ${size(bit.deepest)}`,
      }),
    ),
    {
      item: wood ? "drill with guide or stand" : "drill with stand, clamps",
      source: "rent",
      note: rakes.length === 0 ? "square both ways" : "square both ways; on slopes tilted",
    },
    ...(wood ? [] : [{ item: "deburring tool, brush for swarf", source: "have", note: "every bore, both walls of a tube" } as const]),
    ...(rakes.length === 0
      ? []
      : [
          {
            item: "guide block, clamped",
            size: `sawn to ${slopesOf(rakes)}`,
            source: "have",
            note: "begins every bore of a slope",
          } as const,
        ]),
    ...(bits.some(({ use }) => use.includes("mitre"))
      ? [{ item: "guide block bored at 45 deg, and two clamps", source: "have", note: "for corner posts bored on the mitre" } as const]
      : []),
    ...(job.posts.sleeve === null
      ? []
      : [
          {
            item: "open or deep socket for nut and stud",
            size: "goes into the washer's hole in the sleeve",
            source: "have",
            note: "nuts and collars sit in there, on the wood",
          } as const,
        ]),
    { item: "eye and hearing protection", source: "have", note: "also when strand is cut" },
    ...(bits.some((bit) => bit.use.includes("bushing"))
      ? [{ item: "soft mallet", source: "have", note: "seats bushings without cutting them" } as const]
      : []),
  ]);
}

/** A counterbore is bored first: its bit keeps to the middle by itself and leaves a flat floor. */
function bitName(bit: BitUse, wood: boolean, { posts: { sleeve } }: Job): string {
  const { use } = bit;
  if (isForMasonry(bit)) return "masonry bit, as the anchor asks";
  if (!wood) return "bit for metal, with cutting oil";
  if (use.includes(WASHER_HOLE)) return "hole saw for the sleeve, its pilot no wider than the bore";
  if (use.includes(SLEEVE_USE)) return sleeve?.material === "wood" ? "wood bit" : "step drill, for the sleeve";
  return use.includes("counterbore") ? "flat or piloted wood bit" : "wood bit";
}

/** What sets the fastenings of ends on faces into their blind holes. */
function faceTools(runs: readonly Run[], job: Job): readonly ToolLine[] {
  if (faceEndsOf({ runs }).length === 0) return [];
  const { fastening } = faceOf(job);
  const stop: Line = { item: "stop for the bit", size: "", source: "have", note: "blind holes: each to its depth, no deeper" };
  switch (fastening.kind) {
    case "lag screw":
      return to("bore", [
        stop,
        ...shankTools(runs, job),
        { item: "bar through the eye, wax or soap", source: "have", note: "lag screws are turned in by hand, never driven" },
      ]);
    case "tapped hole":
      return to("bore", [
        ...(job.posts.section.wall === null ? [stop] : []),
        {
          item: "tap with its wrench, cutting oil",
          size: fastening.thread,
          source: "buy",
          note: "square to the face; turned back at each half turn",
        },
      ]);
    case "rivet nut":
      return to("bore", [
        { item: "setting tool for rivet nuts", size: fastening.thread, source: "rent", note: "set one in a scrap of the same tube first" },
      ]);
  }
}

/** Another bit on the same hole, so not among those of the bores. */
function shankTools(runs: readonly Run[], job: Job): readonly Line[] {
  const shank = plainShankOf({ runs, job });
  if (shank === null) return [];
  const note = `opens the blind holes for the plain shank of the screws: the first ${length(shank.length, { units: job.units, both: false })}`;
  return [{ item: "wood bit for the shank, with a stop", size: small(shank.diameter, job), source: "have", note }];
}

const reeveTools = (runs: readonly Run[], job: Job): readonly ToolLine[] =>
  to("reeve", [
    {
      item: "cutter for stainless strand",
      size: `for ${small(job.cable.diameter, job)}`,
      source: "rent",
      note: "clean cut; tape it first",
    },
    { item: "tape, gloves, clean sheet", source: "have", note: "keeps strand clean" },
    ...(runs.some(({ left, right }) => left.kind === "grip" || right.kind === "grip")
      ? [{ item: "seating tool for grip ends", size: "as its maker asks", source: "rent", note: "try one on scrap first" } as const]
      : []),
    ...(faceEndsOf({ runs }).length + anchorEndsOf({ runs }).length > 0
      ? [
          {
            item: "tool for the end fittings with forks",
            size: "as their maker asks",
            source: "rent",
            note: "try one on scrap first",
          } as const,
        ]
      : []),
    ...(job.supply.kind === "spool"
      ? [
          {
            item: "press for the stud ends",
            size: "as the fitting's maker asks",
            source: "rent",
            note: "check the first one with a gauge",
          } as const,
        ]
      : []),
  ]);

const tightenTools = (range: InstrumentRange, job: Job): readonly ToolLine[] =>
  to("tighten", [
    {
      item: "two hand wrenches",
      size: "to fit the nut: measure it",
      source: "have",
      note: "stud and nut; no power tools",
    },
    {
      item: "tension gauge for strand",
      size: `for ${small(job.cable.diameter, job)}`,
      source: "rent",
      note: "or pitch or sag readings",
    },
    {
      item: "tuner, or a telephone",
      size: `for ${pitchText(range)}`,
      source: "have",
      note: "where pitch is read",
    },
    {
      item: "sag weight, with a hook",
      size: force(job.tightening.sagWeight.value, job.units),
      source: "have",
      note: `water in a bucket: ${onScale(job.tightening.sagWeight.value, job.units)} on a scale, bucket included`,
    },
    {
      item: "rule with fine marks",
      size: job.units === "inch" ? "1/32 in" : "1/2 mm",
      source: "have",
      note: "for sag and lean of posts",
    },
    { item: "thermometer, plumb line", source: "have", note: "for the log, each pass" },
  ]);

/** From the lowest to the highest pitch that the log may show. */
function pitchText({ pitch_Hz }: InstrumentRange): string {
  if (pitch_Hz === null) return "no span is long enough";
  return `${decimal(pitch_Hz.low, { rounding: "down" })} to ${decimal(pitch_Hz.high, { rounding: "up" })} Hz`;
}

/** The code's own, and the one that must not go in at riser and tread of a stair. */
function spheresOf({ code, sides }: Job): readonly Mm[] {
  const { triangleSphere } = code.stairs;
  const stair = sides.some(({ rake }) => rake?.kind === "stair");
  return [code.openingSphere.value, ...(stair && triangleSphere !== null ? [triangleSphere.value] : [])];
}

const proveTools = (job: Job): readonly ToolLine[] => [
  ...to("prove", [
    {
      item: "sphere of the code's size",
      size: spheresOf(job)
        .map((sphere) => length(sphere, { units: job.units }))
        .join(", "),
      source: "buy",
      note: spheresOf(job).length === 1 ? "measure it before the test" : "measure each; which one where: Z-804",
    },
    ...(["table", "stated"].includes(job.tightening.criterion.kind)
      ? []
      : [{ item: "spring scale", size: "reads the agreed force", source: "rent", note: "between hand and sphere" } as const]),
  ]),
  ...to("finish", [{ item: "fine file kept for stainless", source: "have", note: "no wire end may stand proud" }]),
];
