// What do the checks of anchors in piers compare, and where does a pier stand?
import { isLeft } from "../plan/pier.ts";
import type { Plan, SidePlan, Vertical } from "../plan/plan.ts";
import { hardestPull, infillPull } from "./face-check-rules.ts";
import type { CheckSide } from "./rake-check-rules.ts";
import { derived, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

const whole = derived("the plan as it stands");

const pierAt = (plan: Pick<Plan, "verticals">, id: string): Vertical =>
  must(
    plan.verticals.find((one) => one.id === id && one.kind === "pier"),
    `pier ${id}`,
  );

/** "sides.A.begins.pier": where the plan keeps what the job says of a pier. */
function pierPath(plan: Plan, id: string): string {
  const pier = pierAt(plan, id);
  return `sides.${pier.sideId}.${isLeft(pier) ? "begins" : "ends"}.pier`;
}

const anchorPath = (plan: Plan, id: string, field: string): string => `${pierPath(plan, id)}.anchor.${field}`;

/** The hole of an anchor, or its depth. */
export const anchorHole = ({ at, plan }: Reader, id: string, field: "hole" | "depth"): Working => ({
  formula: "d",
  inputs: [at("d", `${field} of the anchors in ${id}`, anchorPath(plan, id, field))],
  origin: derived("instructions of the anchor"),
});

/** Its face is the end of its side. */
export function pierStation({ at }: Reader, { id, sideId, ...pier }: Vertical): Working {
  const left = isLeft(pier);
  return {
    formula: left ? "f - w / 2" : "f + w / 2",
    inputs: [
      at("f", "face of the pier, where the side is measured from or to", `sides.${sideId}.${left ? "startsAt" : "endsAt"}`),
      at("w", "pier along the side", `verticals.${id}.along`),
    ],
    origin: derived("the cables begin at the face of the pier"),
  };
}

/** A post that is spread as if one stood in the pier, its face flush with the pier's: where the middle of that one would be. */
export function flushWith(
  { at }: Reader,
  { id }: SidePlan,
  end: "first" | "last",
  symbol: string,
): { readonly term: string; readonly inputs: readonly Input[] } {
  const face = `${symbol}f`;
  return {
    term: end === "first" ? `(${face} - w / 2)` : `(${face} + w / 2)`,
    inputs: [
      at(face, "face of the pier", `sides.${id}.${end === "first" ? "startsAt" : "endsAt"}`),
      at("w", "post along the side", "job.posts.section.along"),
    ],
  };
}

/** `rest`: run and pier, R1-PR1. */
const placeOf = (rest: string): readonly [run: string, pier: string] => {
  const [run = "", pier = ""] = rest.split("-");
  return [run, pier];
};

const pull: CheckSide = (reader, rest) => hardestPull(reader, placeOf(rest)[0]);

const heights = ({ all, plan }: Reader): Input =>
  all(
    "h",
    "heights of the courses",
    plan.courses.map(({ number }) => `courses.${number}.height`),
  );

export const pierDemands: Readonly<Record<string, CheckSide>> = {
  "anchor-rated": pull,
  "anchor-infill": (reader, rest) => infillPull(reader, placeOf(rest)[0]),
  "anchor-rating": (reader, rest) => {
    const [run] = placeOf(rest);
    const [hard, loaded] = [hardestPull(reader, run), infillPull(reader, run)];
    return reader.run(run).spans.some(({ underInfillLoad }) => underInfillLoad !== null)
      ? {
          formula: `max(P + g, m, ${loaded.formula})`,
          inputs: [...hard.inputs.filter(({ symbol }) => symbol !== "g"), ...loaded.inputs],
          origin: whole,
        }
      : hard;
  },
  "anchor-edge": (reader, rest) => {
    const [, id] = placeOf(rest);
    return {
      formula: "min(w / 2, t - max(h))",
      inputs: [
        reader.at("w", "pier square to the side", `verticals.${id}.across`),
        reader.at("t", "top of the pier", `${pierPath(reader.plan, id)}.height`),
        heights(reader),
      ],
      origin: derived("the cables lie in the middle of the pier"),
    };
  },
  "anchor-spacing": ({ all, plan }) => ({
    formula: "min(a)",
    inputs: [
      all(
        "a",
        "spacing of each opening between two cables",
        plan.courses.slice(1).map((_, nth) => `gaps[${nth + 1}].spacing`),
      ),
    ],
    origin: whole,
  }),
};

const stated =
  (field: string, says: string): CheckSide =>
  ({ at, plan }, rest) => ({ formula: "l", inputs: [at("l", says, anchorPath(plan, placeOf(rest)[1], field))], origin: whole });

export const pierLimits: Readonly<Record<string, CheckSide>> = {
  "anchor-rated": stated("rated", "rated load"),
  "anchor-infill": stated("rated", "rated load"),
  "anchor-edge": stated("edge_min", "least distance to an edge"),
  "anchor-spacing": stated("spacing_min", "least distance to the next anchor"),
};
