// How does a number that went into the check of a spacer follow from the code's load, its length, its bores and its section?
import { type LoadedSpacer, momentByCables, type SpacerQuestion, spacerDemand } from "../plan/frame-check-spacer.ts";
import { spacerMember } from "../plan/frame-members.ts";
import type { FrameCheck } from "../plan/frame-plan.ts";
import { spacerModulus, spacerShearArea } from "./frame-section-parts.ts";
import { framedOf } from "./framed.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

interface Found extends LoadedSpacer {
  readonly question: SpacerQuestion;
}

function spacerOf(reader: Reader, { member }: FrameCheck): Found {
  const question = must(framedOf(reader).spacers ?? undefined, "spacers");
  const found = must(
    question.spacers.find(({ spacer }) => spacer.id === member),
    `spacer ${member}`,
  );
  return { ...found, question };
}

const statics = derived("statics of a beam on two supports");

const partAt = ({ at }: Reader, { id, parts }: FrameCheck, symbol: string, what: string): Input =>
  at(symbol, what, `frame.checks.${id}.parts[${parts.findIndex(({ name }) => name === symbol)}].value`);

const loadAndLength = (reader: Reader, check: FrameCheck): readonly [Input, Input] => [
  partAt(reader, check, "P", "load on the infill, all of it on this spacer"),
  partAt(reader, check, "L", "length between its fixings"),
];

const inputsOf = (reader: Reader, check: FrameCheck): readonly Input[] => [
  ...loadAndLength(reader, check),
  partAt(reader, check, "w", "height over which the load stands"),
];

function moment(reader: Reader, check: FrameCheck): Working {
  const own = spacerOf(reader, check);
  const { heights, question } = own;
  const { count } = spacerDemand(own, question.infill);
  return {
    formula: "max(pressed(P, L, z, n), P * (2 * L - w) / 8)",
    inputs: [
      ...inputsOf(reader, check),
      given("z", "heights of its bores over its foot", heights, "length", derived("heights of the bores less that of the foot")),
      given("n", "cables that share the load", count, "count", derived("side of the load's square over the widest gap between cables")),
    ],
    functions: {
      pressed: {
        means: "greatest moment of a beam on two supports under n loads P / n at neighbouring bores, wherever they stand",
        of: (force, length, places, number) =>
          momentByCables([places ?? []].flat() as number[], { length: Number(length), force: Number(force), count: Number(number) }),
      },
    },
    origin: statics,
  };
}

const REACTION = "P * (1 - w / (2 * L))";

/** What a spacer's check was made of; null where it is none of these. */
export function spacerPart(reader: Reader, check: FrameCheck, name: string): Working | null {
  const own = spacerOf(reader, check);
  const { infill } = own.question;
  const origin = from(infill.origin.source, infill.origin.where);
  switch (name) {
    case "P":
      return { formula: "W", inputs: [given("W", "load on the infill, square to the guard", infill.force, "force", origin)], origin };
    case "L": {
      const { plan, at } = reader;
      const sideId = plan.sides[own.spacer.sideIndex]?.id;
      const opening = plan.rakes.some((rake) => rake.sideId === sideId) ? `rakes.${sideId}.opening` : "opening";
      return {
        formula: "t - b",
        inputs: [at("t", "underside of the top rail, plumb", `${opening}.top`), at("b", "what the spacer stands on", `${opening}.bottom`)],
        origin: derived("from fixing to fixing"),
      };
    }
    case "w":
      return {
        formula: "min(s, L)",
        inputs: [
          given("s", "side of the square on which the load stands", infill.side, "length", origin),
          partAt(reader, check, "L", "length between its fixings"),
        ],
        origin,
      };
    case "M":
      return moment(reader, check);
    case "V":
      return { formula: REACTION, inputs: inputsOf(reader, check), origin: statics };
    case "S":
      return spacerModulus(reader, own);
    case "A":
      return spacerShearArea(reader, own);
    default:
      return null;
  }
}

/** All of the load at mid-height. */
export function spacerDeflection(reader: Reader, check: FrameCheck): Working {
  const { section } = spacerMember(reader.plan.job);
  return {
    formula: "P * L ^ 3 / (48 * E * I)",
    inputs: [
      ...loadAndLength(reader, check),
      reader.at("E", "modulus of the spacers", "frame.spacers.modulus"),
      given("I", "second moment of the spacer square to the side", section.y.inertia_mm4, "second moment", derived("whole section")),
    ],
    origin: derived("beam on two supports"),
  };
}
