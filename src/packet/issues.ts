// Which sheets does each issue of a packet hold, and how many words do they use?
import type { Issue } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";

export type SheetKey =
  | "cover"
  | "authority"
  | "survey"
  | "changes"
  | "plan"
  | "elevation"
  | "details"
  | "stairs"
  | "cables"
  | "lumber"
  | "bores"
  | "order"
  | "tools"
  | "steps"
  | "safety"
  | "tightening"
  | "proof"
  | "frameChecks"
  | "care"
  | "record"
  | "sources";

interface CatalogueRow {
  readonly id: string;
  readonly name: string;
  readonly slug: string;
  /** What it is for, in a few words for the index on the cover. */
  readonly use: string;
  readonly issues: readonly Issue[];
}

const everyIssue: readonly Issue[] = ["crew", "homeowner", "permit", "record"];

/** All sheets in their order. The numbers follow the US National CAD Standard: Z for shop drawings, then the sheet type. */
export const catalogue: Readonly<Record<SheetKey, CatalogueRow>> = {
  cover: { id: "Z-001", name: "Cover", slug: "cover", use: "what, where, checks, when to stop", issues: everyIssue },
  authority: {
    id: "Z-002",
    name: "Ask the authority",
    slug: "authority",
    use: "questions for the building official",
    issues: ["permit", "homeowner"],
  },
  survey: {
    id: "Z-003",
    name: "Survey",
    slug: "survey",
    use: "measure, compare before boring",
    issues: ["crew", "homeowner"],
  },
  changes: {
    id: "Z-004",
    name: "What changed",
    slug: "changes",
    use: "since the revision issued before: what to do again",
    issues: everyIssue,
  },
  plan: { id: "Z-101", name: "Plan", slug: "plan", use: "posts, bays, runs from above", issues: everyIssue },
  elevation: { id: "Z-201", name: "Elevation", slug: "elevation", use: "heights and bays", issues: everyIssue },
  details: { id: "Z-301", name: "Details", slug: "details", use: "ends and crossings, cut open", issues: ["crew", "homeowner", "permit"] },
  stairs: {
    id: "Z-401",
    name: "Stairs and ramps",
    slug: "stairs",
    use: "rake, spacings, bores at an angle",
    issues: ["crew", "homeowner", "permit"],
  },
  cables: { id: "Z-601", name: "Cables", slug: "cables", use: "lengths, ends, take-up", issues: everyIssue },
  lumber: {
    id: "Z-602",
    name: "Lumber and tube",
    slug: "lumber",
    use: "parts and cut plan",
    issues: ["crew", "homeowner"],
  },
  bores: { id: "Z-603", name: "Bores", slug: "bores", use: "every hole, post by post", issues: ["crew", "homeowner"] },
  order: { id: "Z-604", name: "Order list", slug: "order", use: "what to buy, with spares", issues: ["crew", "homeowner", "record"] },
  tools: { id: "Z-605", name: "Tools", slug: "tools", use: "by step: have, rent or buy", issues: ["crew", "homeowner"] },
  steps: { id: "Z-801", name: "Steps", slug: "steps", use: "the work in its order", issues: ["crew", "homeowner"] },
  safety: {
    id: "Z-802",
    name: "Safety and care of the material",
    slug: "safety",
    use: "read first",
    issues: ["crew", "homeowner"],
  },
  tightening: {
    id: "Z-803",
    name: "Tightening",
    slug: "tightening",
    use: "order, readings, log",
    issues: ["crew", "homeowner", "record"],
  },
  proof: { id: "Z-804", name: "Proof", slug: "proof", use: "opening check, hold points, signatures", issues: everyIssue },
  frameChecks: {
    id: "Z-805",
    name: "Frame checks",
    slug: "frame-checks",
    use: "posts, rails, bases: does the frame hold",
    issues: everyIssue,
  },
  care: { id: "Z-806", name: "Hand-over and care", slug: "care", use: "owner's card and visits", issues: ["crew", "homeowner", "record"] },
  record: { id: "Z-901", name: "Record", slug: "record", use: "planned against built", issues: ["record"] },
  sources: { id: "Z-902", name: "Sources", slug: "sources", use: "where every number comes from", issues: everyIssue },
};

/** A sheet that is printed in a file of its own. */
export interface OwnSheet {
  readonly id: string;
  readonly name: string;
  readonly slug: string;
  readonly use: string;
}

/** Printed at full size, one file for each size of paper, for those who bore. */
export const ownSheets = {
  templates: { id: "Z-701", name: "Templates", slug: "templates", use: "every hole at full size" },
  storyPole: { id: "Z-702", name: "Story pole", slug: "story-pole", use: "heights as numbers and as a strip" },
} as const satisfies Readonly<Record<string, OwnSheet>>;

const order = Object.keys(catalogue) as readonly SheetKey[];

/** One sheet of an issue before it is made. */
export interface SheetHead {
  readonly key: SheetKey;
  readonly id: string;
  readonly name: string;
  readonly slug: string;
  readonly use: string;
  /** Position of the side for an elevation, else 0. */
  readonly sideIndex: number;
}

interface Holding {
  readonly plan: Plan;
  readonly issue: Issue;
  readonly all: boolean;
  /** Whether it is known what was issued before. */
  readonly isRevised?: boolean;
}

/** The sheets of an issue, or all sheets in that issue's words. */
export function sheetHeads({ plan, issue, all, isRevised = false }: Holding): readonly SheetHead[] {
  return order
    .filter((key) => (all || catalogue[key].issues.includes(issue)) && (isRevised || key !== "changes"))
    .flatMap((key) => headsOf(key, plan));
}

/** What is cut has the name of what it is. */
function nameOf(key: SheetKey, { job, rakes }: Plan): string {
  if (key === "stairs") {
    const stairs = rakes.filter(({ kind }) => kind === "stair").length;
    return stairs === 0 ? "Ramps" : stairs === rakes.length ? "Stairs" : catalogue.stairs.name;
  }
  if (key !== "lumber") return catalogue[key].name;
  const materials = [job.posts.section, job.spacers.section, job.frame.topRail, ...(job.frame.bottomRail ? [job.frame.bottomRail] : [])];
  const wooden = materials.filter(({ material }) => material === "wood").length;
  return wooden === 0 ? "Tube and bar" : wooden === materials.length ? "Lumber" : catalogue.lumber.name;
}

function headsOf(key: SheetKey, plan: Plan): readonly SheetHead[] {
  const { id, slug, use } = catalogue[key];
  const name = nameOf(key, plan);
  if (key === "stairs" && plan.rakes.length === 0) return [];
  if (key !== "elevation") {
    return [{ key, id, name, slug, use, sideIndex: 0 }];
  }
  return plan.sides.map((side, sideIndex) => ({
    key,
    id: `Z-${201 + sideIndex}`,
    name: `Elevation of side ${side.id}`,
    slug: `elevation-${sideIndex + 1}`,
    use,
    sideIndex,
  }));
}

export const issueName: Readonly<Record<Issue, string>> = {
  crew: "Crew issue",
  homeowner: "Homeowner issue",
  permit: "Permit issue",
  record: "Record issue",
};

/** Who reads it, for the cover. */
export const issueReader: Readonly<Record<Issue, string>> = {
  crew: "For those who bore, reeve and tighten.",
  homeowner: "For somebody who does this work once. The numbers are the same as in the crew issue; there are more words.",
  permit: "For the building official.",
  record: "For the firm's files: what was planned, what was built, who signed.",
};
