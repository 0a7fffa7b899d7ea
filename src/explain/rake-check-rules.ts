// What do the checks of a raked side compare?
import type { Check } from "../plan/plan.ts";
import { rakeNamed } from "./rake-rules.ts";
import { derived, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

/** One of the two sides of a check, by what stands in its id behind its kind. */
export type CheckSide = (reader: Reader, rest: string, check: Check) => Working | null;

const whole = derived("the plan as it stands");
const same = (input: Input): Working => ({ formula: input.symbol, inputs: [input], origin: whole });

const height: CheckSide = ({ at }, id) => same(at("H", "height of the guard, plumb", `rakes.${id}.opening.guardHeight`));

const widest =
  (field: "clear" | "spacing"): CheckSide =>
  (reader, id) => ({
    formula: "max(c)",
    inputs: [
      reader.all(
        "c",
        `${field === "clear" ? "clear gap" : "spacing"} of each opening, square to the cables`,
        rakeNamed(reader, id).gaps.map((_, nth) => `rakes.${id}.gaps[${nth}].${field}`),
      ),
    ],
    origin: whole,
  });

const stated =
  (path: string, what: string): CheckSide =>
  ({ at }) =>
    same(at("l", what, path));

export const rakeDemands: Readonly<Record<string, CheckSide>> = {
  "rake-height": height,
  "rake-handrail-low": height,
  "rake-handrail-high": height,
  "rake-opening": widest("clear"),
  "rake-spacing": widest("spacing"),
  "rake-gap-below": ({ at }) => same(at("g", "gap under the bottom rail, plumb", "job.frame.onRakes.gapBelow")),
  "rake-nosings": ({ at }, id) =>
    same(at("g", "from the line of the nosings to the bottom rail, square to the slope", `rakes.${id}.aboveNosings`)),
  "rake-triangle": ({ at }, id) => same(at("d", "largest sphere that goes in at riser and tread", `rakes.${id}.triangle.sphere`)),
};

export const rakeLimits: Readonly<Record<string, CheckSide>> = {
  "rake-height": ({ at }, id) => same(at("l", "least height of the guard on this side", `rakes.${id}.guardHeight_min`)),
  "rake-handrail-low": stated("job.code.stairs.handrail.low", "least height of a handrail above the nosings"),
  "rake-handrail-high": stated("job.code.stairs.handrail.high", "greatest height of a handrail above the nosings"),
  "rake-opening": ({ at }, id) => same(at("l", "sphere that must not pass on this side", `rakes.${id}.openingSphere`)),
  "rake-spacing": stated("job.limits.cableSpacing_max", "largest spacing of cables"),
  "rake-gap-below": stated("job.code.openingSphere", "sphere that must not pass"),
  "rake-nosings": ({ at }, id) => same(at("l", "sphere that must not pass on this side", `rakes.${id}.openingSphere`)),
  "rake-triangle": ({ at, plan }) =>
    same(
      plan.job.code.stairs.triangleSphere === null
        ? at("l", "sphere that must not pass on stairs", "job.code.stairs.openingSphere")
        : at("l", "sphere that must not pass at riser, tread and bottom rail", "job.code.stairs.triangleSphere"),
    ),
};
