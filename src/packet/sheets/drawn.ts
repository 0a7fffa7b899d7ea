// Which drawings does a plan have? They are the same in every issue, so each is made once for a plan.
import { contentBox, type Room } from "../../drawing/paper.ts";
import type { Plan } from "../../plan/plan.ts";
import { dayPlot } from "../drawings/day-plot.ts";
import { details } from "../drawings/details.ts";
import { elevations } from "../drawings/elevation.ts";
import { frictionPlot } from "../drawings/friction-plot.ts";
import { openingDiagram } from "../drawings/opening-diagram.ts";
import { overview } from "../drawings/overview.ts";
import { partsNamed } from "../drawings/parts-named.ts";
import { planView } from "../drawings/plan-view.ts";
import { rakeDetail } from "../drawings/rake-detail.ts";
import { tensionSteps } from "../drawings/tension-steps.ts";
import { tighteningDiagram } from "../drawings/tightening-diagram.ts";
import type { Drawing, Sheet } from "../packet.ts";

type Drawings = readonly Drawing[];

/** A drawing is a function of the plan alone: what has been drawn once is kept as long as its plan is. */
const drawn = new WeakMap<Plan, Map<string, Drawings>>();

function once(plan: Plan, name: string, draw: () => Drawings): Drawings {
  const known = drawn.get(plan) ?? new Map<string, Drawings>();
  drawn.set(plan, known);
  const before = known.get(name);
  if (before) {
    return before;
  }
  const made = draw();
  known.set(name, made);
  return made;
}

/** The part of a page that a drawing may fill: its width, and a share of its height. */
function roomOf(plan: Plan, orientation: Sheet["orientation"], share: number): Room {
  const { width, height } = contentBox({ paper: plan.job.paper, orientation });
  return { width, height: height * share };
}

/** A guard with corners fills the page before its tables; one straight side takes little of it all the same. */
const PLAN_share = 0.93;

export const drawnPlan = (plan: Plan): Drawings => once(plan, "plan", () => [planView(plan, roomOf(plan, "portrait", PLAN_share))]);

/** Below the drawing the table of heights has its place. */
const ELEVATION_share = 0.7;
/** A rake is as high as it climbs, and stands alone. */
const RAKE_share = 0.9;

export const drawnElevations = (plan: Plan, sideIndex: number): Drawings =>
  once(plan, `elevation ${sideIndex}`, () => {
    const isRaked = plan.sides[sideIndex]?.slope !== 0;
    return elevations(plan, sideIndex, roomOf(plan, "landscape", isRaked ? RAKE_share : ELEVATION_share));
  });

export const drawnDetails = (plan: Plan): Drawings => once(plan, "details", () => details(plan, roomOf(plan, "portrait", 0.75)));

export const drawnRake = (plan: Plan, sideId: string): Drawings =>
  once(plan, `rake ${sideId}`, () => [rakeDetail(plan, sideId, roomOf(plan, "portrait", 0.42))]);

/** None for a run without bends. */
export const drawnFriction = (plan: Plan): Drawings =>
  once(plan, "friction", () =>
    plan.runs.map(({ id }) => frictionPlot(plan, id, roomOf(plan, "portrait", 0.3))).filter((plot) => plot !== null),
  );

/** A picture of all of it beside the plan. */
export const drawnOverview = (plan: Plan): Drawings => once(plan, "overview", () => [overview(plan, roomOf(plan, "portrait", 0.4))]);

/** For those who do it once: what is what. */
export const drawnParts = (plan: Plan): Drawings => once(plan, "parts", () => [partsNamed(plan, roomOf(plan, "portrait", 0.3))]);

export const drawnTightening = (plan: Plan, runId: string): Drawings =>
  once(plan, `tightening ${runId}`, () => [tighteningDiagram(plan, runId, roomOf(plan, "portrait", 0.32))]);

/** Every cable pulled to one reading, beside each pulled to its own. */
export const drawnSteps = (plan: Plan, runId: string): Drawings =>
  once(plan, `steps ${runId}`, () => [tensionSteps(plan, runId, roomOf(plan, "portrait", 0.32))]);

export const drawnDays = (plan: Plan, runId: string): Drawings =>
  once(plan, `days ${runId}`, () => [dayPlot(plan, runId, roomOf(plan, "portrait", 0.25))]);

/** A slope takes more height. */
const SLOPE_share = 0.4;

export const drawnOpenings = (plan: Plan): Drawings =>
  once(plan, "openings", () =>
    plan.sides.map(({ slope }, sideIndex) => openingDiagram(plan, sideIndex, roomOf(plan, "portrait", slope === 0 ? 0.3 : SLOPE_share))),
  );
