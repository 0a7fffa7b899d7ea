// What do the checks of ends on the face of a post compare?

import { innerThreadArea } from "../mechanics/thread-shear.ts";
import { holdOf, screwFactors, screwOf, threadIn, threadShear, widestInHole } from "../plan/check-face.ts";
import { faceEndsOf } from "../plan/face-end.ts";
import type { Bore, RunEnd } from "../plan/plan.ts";
import { behindHole, lagEdge_diameters, lagPenetration_diameters, pilotRange } from "../tables/face-fastening.ts";
import { guardLoadDuration, type LoadDuration } from "../tables/wood-factors.ts";
import type { CheckSide } from "./rake-check-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

const whole = derived("the plan as it stands");
const FASTENING = "job.fittings.face.fastening";

export function hardestPull({ at }: Reader, id: string): Working {
  return {
    formula: "max(P + g, m)",
    inputs: [
      at("P", "greatest reading allowed", `runs.${id}.tension.high`),
      at("g", "what the hardest day of the year adds", `climate.${id}.hardest.worst`),
      at("m", "most that a step may come to on any day of the table", `tightening.${id}.most_onAnyDay`),
    ],
    origin: whole,
  };
}

/** As the strand is checked. */
export const infillPull = ({ all, at, run }: Reader, id: string): Working => ({
  formula: "max(t) + h - T + g",
  inputs: [
    all(
      "t",
      "tension of each span under the infill load",
      run(id).spans.map(({ bayId }) => `runs.${id}.spans.${bayId}.underInfillLoad.tension`),
    ),
    at("h", "greatest reading allowed", `runs.${id}.tension.high`),
    at("T", "target", `runs.${id}.tension.target`),
    at("g", "what the hardest day of the year adds", `climate.${id}.hardest.worst`),
  ],
  origin: whole,
});

/** `rest`: run and post, R1-P1. */
const placeOf = (rest: string): readonly [run: string, post: string] => {
  const [run = "", post = ""] = rest.split("-");
  return [run, post];
};

function boresAt({ plan }: Reader, rest: string): readonly [Bore, ...Bore[]] {
  const [run, post] = placeOf(rest);
  const [first, ...others] = plan.bores.filter(({ runId, verticalId }) => runId === run && verticalId === post);
  return [must(first, `holes of ${rest}`), ...others];
}

function endAt(reader: Reader, rest: string): RunEnd {
  const [run, post] = placeOf(rest);
  const { left, right } = reader.run(run);
  return left.postId === post ? left : right;
}

const ofRun: CheckSide = (reader, rest) => hardestPull(reader, placeOf(rest)[0]);

const underInfill: CheckSide = (reader, rest) => infillPull(reader, placeOf(rest)[0]);

const thread = ({ at }: Reader): readonly Input[] => [
  at("t", "length of the thread", `${FASTENING}.threadLength`),
  at("p", "tapered tip, which holds nothing", `${FASTENING}.tip`),
];

const pilot: CheckSide = ({ at }) => ({ formula: "d", inputs: [at("d", "pilot hole", "job.fittings.face.hole")], origin: whole });

export const faceDemands: Readonly<Record<string, CheckSide>> = {
  "face-hold": ofRun,
  "face-brief": underInfill,
  "face-rated": ofRun,
  "face-infill": underInfill,
  "face-behind": (reader, rest) => {
    const [, post] = placeOf(rest);
    const atCorner = reader.plan.verticals.some(({ id, corner }) => id === post && corner !== undefined);
    const holes = atCorner ? 1 : faceEndsOf(reader.plan).filter(({ end }) => end.postId === post).length;
    return {
      formula: "w - n * l",
      inputs: [
        reader.at("w", "post along the side", `verticals.${post}.along`),
        given("n", atCorner ? "holes in this direction" : "runs that end on its faces", holes, "count"),
        reader.at("l", "depth of the hole", `bores.${boresAt(reader, rest)[0].mark}.drilledLength`),
      ],
      origin: derived("plan geometry"),
    };
  },
  "face-between": (reader, post) => {
    const { mark } = must(
      reader.plan.bores.find(({ verticalId }) => verticalId === post),
      `holes of ${post}`,
    );
    return {
      formula: "sqrt(2) * (w / 2 - l - d / 2)",
      inputs: [
        reader.at("w", "width of the post", `verticals.${post}.along`),
        reader.at("l", "depth of the holes", `bores.${mark}.drilledLength`),
        given("d", "across what is in the hole: the screw, or the hole where that is wider", widestInHole(reader.plan.job), "length"),
      ],
      origin: derived("two holes square to each other, each ending before the middle of the post"),
    };
  },
  "face-edge": (reader, rest) => {
    const [, post] = placeOf(rest);
    return {
      formula: "w / 2 - max(o)",
      inputs: [
        reader.at("w", "post square to the side", `verticals.${post}.across`),
        given(
          "o",
          "how far each hole lies off the middle",
          boresAt(reader, rest).map(({ offset }) => Math.abs(offset)),
          "length",
        ),
      ],
      origin: derived("plan geometry"),
    };
  },
  "face-engaged": (reader, rest) => ({
    formula: "l",
    inputs: [reader.at("l", "depth of the hole", `bores.${boresAt(reader, rest)[0].mark}.drilledLength`)],
    origin: whole,
  }),
  "face-thread": (reader) => ({ formula: "t - p", inputs: thread(reader), origin: derived("the thread that holds") }),
  "face-pilot-least": pilot,
  "face-pilot-most": pilot,
};

function holdLimit(reader: Reader, rest: string, load: LoadDuration): Working {
  const { at, plan } = reader;
  const end = endAt(reader, rest);
  const hold = must(holdOf(end, plan.job, load) ?? undefined, `what holds ${rest}`);
  const origin = from(hold.source, hold.where);
  if (plan.job.fittings.face?.fastening.kind === "tapped hole") {
    const shear = threadShear(end.postId, plan.job);
    return {
      formula: "f * area(d, p, l)",
      inputs: [
        given("f", "shear that the metal may carry", shear.value, "stress", from(shear.source, shear.where)),
        at("d", "diameter of the thread", `${FASTENING}.diameter`),
        at("p", "pitch of the thread", `${FASTENING}.pitch`),
        given("l", "thread in the metal; of the wall of a steel tube, its design thickness", threadIn(end.postId, plan.job), "length"),
      ],
      functions: {
        area: {
          means: "area of the inner thread that is sheared off along the outside of the screw",
          of: (diameter, pitch, length) => innerThreadArea({ diameter: Number(diameter), pitch: Number(pitch), length: Number(length) }),
        },
      },
      origin,
    };
  }
  const { rule, gravity } = screwOf(plan.job);
  const factors = screwFactors(plan.job, load);
  return {
    formula: `k * G ^ ${rule.gravityPower} * D ^ ${rule.diameterPower} * (t - p)${factors.map(({ name }) => ` * ${name}`).join("")}`,
    inputs: [
      given("k", "constant of the rule, for mm and N/mm", rule.constant, "share"),
      given("G", "specific gravity of the wood", gravity, "share"),
      at("D", "diameter of the screw", `${FASTENING}.diameter`),
      ...thread(reader),
      ...factors.map(({ name, value, source, where }) => given(name, "factor of use", value, "share", from(source, where))),
    ],
    origin,
  };
}

const diameters =
  (rule: { readonly value: number; readonly source: Parameters<typeof from>[0]; readonly where: string }, what: string): CheckSide =>
  ({ at }) => ({
    formula: "q * D",
    inputs: [given("q", what, rule.value, "share"), at("D", "diameter", `${FASTENING}.diameter`)],
    origin: from(rule.source, rule.where),
  });

const pilotLimit =
  (side: "least" | "most"): CheckSide =>
  (reader) => {
    const range = pilotRange(screwOf(reader.plan.job).gravity);
    return diameters({ ...range, value: range.value[side] }, "share of the shank")(reader, "", must(reader.plan.checks[0], "check"));
  };

const leftBeyond =
  (what: string): CheckSide =>
  () => ({
    formula: "b",
    inputs: [given("b", what, behindHole.value, "length", from(behindHole.source, behindHole.where))],
    origin: whole,
  });

const rating: CheckSide = ({ at }) => ({ formula: "r", inputs: [at("r", "rated load", "job.fittings.face.rated")], origin: whole });

export const faceLimits: Readonly<Record<string, CheckSide>> = {
  "face-hold": (reader, rest) => holdLimit(reader, rest, "permanent"),
  "face-brief": (reader, rest) => holdLimit(reader, rest, guardLoadDuration.value),
  "face-rated": rating,
  "face-infill": rating,
  "face-behind": leftBeyond("left behind a blind hole"),
  "face-between": leftBeyond("left between blind holes, as behind one"),
  "face-edge": diameters(lagEdge_diameters, "diameters to the edge"),
  "face-engaged": ({ at }) => ({
    formula: "q * D",
    inputs: [at("q", "diameters of thread", `${FASTENING}.engagement_min`), at("D", "diameter of the thread", `${FASTENING}.diameter`)],
    origin: whole,
  }),
  "face-thread": diameters(lagPenetration_diameters, "diameters in the wood"),
  "face-pilot-least": pilotLimit("least"),
  "face-pilot-most": pilotLimit("most"),
};
