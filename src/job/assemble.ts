// How does a file that reads well become a Job? What it leaves out comes from the defaults, each with its source.
import { fromJob } from "../sources/cited.ts";
import * as custom from "../tables/practice.ts";
import { mass, strandStiffness } from "../tables/strand.ts";
import { tidy } from "../units/notation.ts";
import type { Mm } from "../units/quantity.ts";
import { cornerLimitsOf } from "./corners.ts";
import * as usual from "./defaults.ts";
import { fittingsOf, stated } from "./fitting-defaults.ts";
import { baseOf, calibrationOf, siteOf, woodOf } from "./frame-defaults.ts";
import type { Identity } from "./identity.ts";
import type {
  Cable,
  CableSupply,
  CodeBasis,
  Criterion,
  Frame,
  FrameMaterial,
  GuardEnd,
  Job,
  Limits,
  PlainOrder,
  Posts,
  Rail,
  Side,
  Spacers,
  Stock,
  Tightening,
  UnitSystem,
  WoodTreatment,
} from "./job.ts";
import { pierOf } from "./pier-defaults.ts";
import { rakeFrameOf, rakeOf } from "./rake.ts";
import type { JobFile } from "./schema.ts";
import { nameOf, sectionOf, sizesOf, sleeveOf } from "./sections.ts";

export function jobOf(file: JobFile): Job {
  const { units, guard } = file;
  const limits = limitsOf(file.limits ?? {}, units);
  return {
    identity: identityOf(file.job),
    units,
    paper: file.paper ?? (units === "mm" ? "a4" : "letter"),
    audience: file.audience ?? "crew",
    code: codeOf(file.code),
    start: endOf(guard.start, limits),
    end: endOf(guard.end, limits),
    sides: guard.sides.map((side, index) => sideOf(side, index, { limits, isLast: index === guard.sides.length - 1 })),
    bearing: guard.bearing ?? null,
    posts: postsOf(file.posts),
    spacers: spacersOf(file.spacers),
    frame: frameOf(file.frame, file.posts),
    cable: cableOf(file.cable, file.calibration ?? {}),
    fittings: fittingsOf(file.fittings, { units, material: file.posts.material }),
    supply: supplyOf(file.supply),
    stock: stockOf(file.stock ?? {}, file.posts.material),
    limits,
    site: siteOf(file.site ?? {}),
    calibration: calibrationOf(file.calibration ?? {}),
    tightening: tighteningOf(file.tightening, units),
    printer: file.printer ?? null,
    notes: file.notes ?? [],
  };
}

function identityOf(file: JobFile["job"]): Identity {
  return {
    number: file.number,
    title: file.title,
    place: file.place,
    client: file.client,
    firm: file.firm,
    preparedBy: file["prepared by"],
    checkedBy: file["checked by"] ?? null,
    status: file.status,
    surveyDate: file.surveyed,
    issueDate: file.issued,
    revisions: file.revisions ?? [{ mark: "0", date: file.issued, by: file["prepared by"], change: "first issue" }],
    example: file.example ?? false,
  };
}

function codeOf(file: JobFile["code"]): CodeBasis {
  const { edition, authority, occupancy, exposure, drop } = file;
  const rules = usual.codeRules(file);
  return { edition, authority, occupancy, exposure, drop, poolBarrier: file["pool barrier"] ?? false, ...rules };
}

function endOf(file: JobFile["guard"]["start"], limits: Limits): GuardEnd {
  if (file.kind === "pier") return { kind: "pier", gap: null, access: "none", pier: pierOf(file) };
  if (file.kind === "post") return { kind: "post", gap: null, access: file.access ?? "drill" };
  const reachable = file.gap >= limits.wallGap_min.value ? "hand" : "none";
  return { kind: "wall", gap: file.gap, access: file.access ?? reachable };
}

function sideOf(
  file: JobFile["guard"]["sides"][number],
  index: number,
  { limits, isLast }: { readonly limits: Limits; readonly isLast: boolean },
): Side {
  const { interrupted } = file;
  return {
    id: String.fromCharCode("A".charCodeAt(0) + index),
    length: file.length,
    // Straight on past an interruption, and where only the slope changes.
    turn: file.turn ?? (isLast ? null : 0),
    corner: file.corner ?? "two posts",
    interrupted:
      interrupted === undefined
        ? null
        : {
            what: interrupted.what,
            width: interrupted.width,
            out: (interrupted.out ?? 0) - (interrupted.in ?? 0),
            end: endOf(interrupted.end, limits),
            start: endOf(interrupted.start, limits),
          },
    stations: file.stations ?? null,
    rake: file.rake === undefined ? null : rakeOf(file.rake, file.length),
  };
}

function postsOf(file: JobFile["posts"]): Posts {
  const section = sectionOf(file);
  const existing = file.existing ?? false;
  return {
    section,
    spacing_max: stated(file["largest spacing"], "posts: largest spacing", custom.postSpacing_max),
    existing,
    treatment: treatmentOf(file.treated),
    belowDatum: file["below datum"] ?? 0,
    cornerSetback: file["corner setback"] === undefined ? null : fromJob(file["corner setback"], "posts: corner setback"),
    cornerClearance: stated(file["corner clearance"], "posts: corner clearance", custom.cornerClearance),
    pairGap: stated(file["pair gap"], "posts: pair gap", custom.pairGap),
    wood: woodOf(file, "posts"),
    base: baseOf(file),
    baseCapacity_Nmm:
      file["base capacity"] === undefined
        ? null
        : fromJob(file["base capacity"].pull * file["base capacity"].height, "posts: base capacity"),
    split: file.split ?? (existing ? "offset bores" : "two posts"),
    hardware: (file.hardware ?? []).map(({ what, posts, from, to }) => ({ what, posts: posts ?? null, from, to })),
    asFound: (file["as found"] ?? []).map(({ post, access, behind, size, wall, leans }) => ({
      post,
      access: access ?? null,
      behind: behind ?? null,
      section: size === undefined ? null : sectionOf({ size, material: file.material, ...(wall === undefined ? {} : { wall }) }),
      leans:
        leans === undefined
          ? null
          : { out: (leans.out ?? 0) - (leans.in ?? 0), right: (leans.right ?? 0) - (leans.left ?? 0), over: leans.over },
    })),
    built: file.built ?? "solid",
    sleeve: file.sleeve === undefined ? null : sleeveOf(file.sleeve),
    mount: file.mount ?? "deck",
    hardwareClearance: stated(file["hardware clearance"], "posts: hardware clearance", custom.hardwareClearance),
  };
}

const spacersOf = (file: JobFile["spacers"]): Spacers => ({
  section: sectionOf(file),
  wood: woodOf(file, "spacers"),
  fixing: file["fixing capacity"] === undefined ? null : fromJob(file["fixing capacity"], "spacers: fixing capacity"),
  free_max: stated(file["longest free length"], "spacers: longest free length", custom.freeLength_max),
  treatment: treatmentOf(file.treated),
});

const treatmentOf = (treated: boolean | undefined): WoodTreatment => (treated === true ? "treated" : "untreated");

function frameOf(file: JobFile["frame"], posts: JobFile["posts"]): Frame {
  const { "top rail": top, "bottom rail": bottom } = file;
  return {
    datum: tidy(file.datum),
    topRail: railOf(top, "top rail"),
    topRailTreatment: treatmentOf(top.treated),
    bottomRail: bottom === undefined ? null : railOf(bottom, "bottom rail"),
    bottomRailTreatment: treatmentOf(bottom?.treated),
    gapBelow: file["gap below"] ?? 0,
    railJoint: stated(file["rail joint"], "frame: rail joint", usual.railJoint(top.material)),
    railIsHandrail: file.handrail ?? false,
    clearOpening: file["clear opening"],
    onRakes: rakeFrameOf(file, posts),
  };
}

function railOf(file: JobFile["frame"]["top rail"], where: string): Rail {
  const sizes = sizesOf(file.size);
  const [thin, wide] = [Math.min(...sizes), Math.max(...sizes)];
  const [depth, width] = file.lay === "edge" ? [wide, thin] : [thin, wide];
  return {
    material: file.material,
    depth,
    width,
    wall: file.wall ?? null,
    name: nameOf(file.size, file.wall ?? null),
    wood: woodOf(file, where),
  };
}

function cableOf(file: JobFile["cable"], { weighed: sample }: NonNullable<JobFile["calibration"]>): Cable {
  const weighed = sample === undefined ? undefined : (sample.weight * MM_PER_M) / sample.length;
  const { construction, diameter, grade } = file;
  const breakingForce = usual.breakingForce(file);
  if (breakingForce === null) throw new Error("the cable passed the checks without a breaking force");
  return {
    construction,
    diameter,
    grade,
    stiffness: stated<Cable["stiffness"]["value"]>(file["axial stiffness"], "cable: axial stiffness", strandStiffness(file)),
    breakingForce,
    mass_kgPerM: weighed === undefined ? stated(file.mass, "cable: mass", mass(file)) : fromJob(weighed, "calibration: weighed"),
    workingShare: stated(file["working share"], "cable: working share", custom.workingShare),
    beddingShare: stated(file.bedding, "cable: bedding", custom.beddingShare),
  };
}

const MM_PER_M = 1000;

function supplyOf(file: JobFile["supply"]): CableSupply {
  if (file.kind === "ready") {
    return {
      kind: "ready",
      lengths: stated<readonly Mm[]>(file.lengths, "supply: lengths", custom.readyLengths),
      price_cents: file.prices ?? null,
    };
  }
  const allowance = stated(file.allowance, "supply: allowance", custom.spoolAllowance);
  return { kind: "spool", spoolLength: file["spool length"], allowance, price_cents: file.price ?? null };
}

/** Lengths that the job states hold for posts too, unless it states theirs. */
const stockOf = (file: NonNullable<JobFile["stock"]>, material: FrameMaterial): Stock => ({
  lumberLengths: stated<readonly Mm[]>(file.lengths, "stock: lengths", usual.stockLengths(material)),
  postLengths:
    file["post lengths"] === undefined
      ? stated<readonly Mm[]>(file.lengths, "stock: lengths", usual.postLengths(material))
      : fromJob<readonly Mm[]>(file["post lengths"], "stock: post lengths"),
  kerf: stated(file.kerf, "stock: kerf", custom.kerf),
  endTrim: stated(file["end trim"], "stock: end trim", custom.endTrim),
});

const limitsOf = (file: NonNullable<JobFile["limits"]>, units: UnitSystem): Limits => ({
  cableSpacing_max: stated(file["largest cable spacing"], "limits: largest cable spacing", custom.cableSpacing_max),
  wallGap_max: stated(file["widest wall gap"], "limits: widest wall gap", custom.wallGap_max),
  wallGap_min: stated(file["narrowest wall gap"], "limits: narrowest wall gap", custom.wallGap_min),
  bends_max: stated(file["most bends"], "limits: most bends", custom.bends_max),
  runWithBends_max: stated(file["longest run with bends"], "limits: longest run with bends", custom.runWithBends_max),
  runStraight_max: stated(file["longest straight run"], "limits: longest straight run", custom.runStraight_max),
  ...cornerLimitsOf(file),
  tapeStep: stated(file["tape step"], "limits: tape step", usual.tapeStep(units)),
  edgeDistance_min: stated(file["least edge distance"], "limits: least edge distance", custom.edgeDistance_min),
  movementShare_max: stated(file["largest movement"], "limits: largest movement", custom.movementShare_max),
  deflectionShare_max: stated(file["largest deflection"], "limits: largest deflection", custom.deflectionShare_max),
});

function criterionOf(file: JobFile["tightening"]["criterion"]): Criterion {
  switch (file.kind) {
    case "sphere":
      return { kind: "sphere", diameter: file.diameter, force: file.force, agreedWith: file["agreed with"] };
    case "table":
      return { kind: "table", source: "ncc-2022" };
    case "sag":
      return { kind: "sag", weight: file.weight, sag_max: file["largest sag"], agreedWith: file["agreed with"] };
    case "stated":
      return { kind: "stated", tension: file.tension, statedBy: file["stated by"] };
  }
}

const tighteningOf = (file: JobFile["tightening"], units: UnitSystem): Tightening => ({
  criterion: criterionOf(file.criterion),
  order: file.order === undefined ? null : fromJob<PlainOrder>(file.order, "tightening: order"),
  passes: file.passes === undefined ? null : fromJob(file.passes, "tightening: passes"),
  passes_max: stated(file["most passes"], "tightening: most passes", custom.passes_max),
  allowFor: stated<Tightening["allowFor"]["value"]>(file["allow for"], "tightening: allow for", custom.allowFor),
  band: stated(file.band, "tightening: band", custom.readingBand),
  friction: stated(file.friction, "tightening: friction", usual.friction()),
  wobble_perMm: stated(file.wobble, "tightening: wobble", custom.wobble_perMm),
  seating: stated(file.seating, "tightening: seating", custom.seating),
  readingStep: stated(file["reading step"], "tightening: reading step", usual.readingStep(units)),
  sagWeight: stated(file["sag weight"], "tightening: sag weight", custom.sagWeight),
});
