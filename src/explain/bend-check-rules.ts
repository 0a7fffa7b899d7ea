// What do the checks of bent cables compare: the push at the mouth of a bore, and what wood or bushing there bear?
import { type BendMouth, bendMouths } from "../plan/bend-mouths.ts";
import { type MouthBearing, mouthBearing, tubeMoment, worstMouth } from "../plan/check-bend.ts";
import type { Check } from "../plan/plan.ts";
import { bushingBears_diameters, strandBears_diameters } from "../tables/practice.ts";
import { hardestPull } from "./face-check-rules.ts";
import type { CheckSide } from "./rake-check-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

/** The mouth that a row names: of its post the one that is pressed hardest. */
function mouthNamed({ plan, run }: Reader, id: string, { where }: Check): BendMouth {
  const post = where.split(",")[0];
  const own = bendMouths(plan, run(id), plan.job).filter(({ member }) => member.id === post);
  return must(own.toSorted((a, b) => b.pushShare - a.pushShare)[0], `bend of run ${id} at ${post}`);
}

const pushAt = (reader: Reader, id: string, { bend, index, share }: BendMouth): Working => {
  const { inputs } = hardestPull(reader, id);
  return {
    formula: "2 * s * max(P + g, m) * sin(a / 2)",
    inputs: [
      given("s", "of the pull at the nut what friction leaves on the harder side of the bend", share, "share", derived("capstan")),
      ...inputs,
      reader.at("a", `angle of the bend at ${bend.postId}`, `runs.${id}.bends[${index}].angle`),
    ],
    origin: derived("triangle of forces"),
  };
};

const push: CheckSide = (reader, id, check) => pushAt(reader, id, mouthNamed(reader, id, check));

const woodPush: CheckSide = (reader, id) => pushAt(reader, id, worst(reader, id).mouth);

function worst(reader: Reader, id: string): { readonly mouth: BendMouth; readonly bearing: MouthBearing } {
  const { plan } = reader;
  const { mouth } = must(worstMouth(plan, reader.run(id), plan.job), `bend of run ${id} in wood`);
  return { mouth, bearing: must(mouthBearing(mouth, plan.job) ?? undefined, "wood at a bend") };
}

/** Pressure in the way of the push: Hankinson's formula, which is the value across the grain where the push is square to it. */
function pressureInputs({ toGrain }: BendMouth, { across, along }: MouthBearing): readonly [formula: string, inputs: readonly Input[]] {
  const acrossGrain = given("c", "bearing across the grain of the wood, with its factors", across.value, "stress", across);
  if (along === null) return ["c", [acrossGrain]];
  return [
    "e * c / (e * sin(u) ^ 2 + c * cos(u) ^ 2)",
    [
      acrossGrain,
      given("e", "bearing along the grain, with its factors", along.value, "stress", along),
      given("u", "angle between the push and the grain", toGrain, "angle", derived("bisector of the bend, in space")),
    ],
  ];
}

const wood: CheckSide = (reader, id) => {
  const { at, plan } = reader;
  const { mouth, bearing } = worst(reader, id);
  const [pressure, inputs] = pressureInputs(mouth, bearing);
  const origin = derived(
    `plastic equilibrium of what lies in the bore${bearing.along === null ? "" : "; Hankinson, NDS 2018, eq. 3.10-1 (from memory)"}`,
  );
  if (mouth.lining === "bare strand") {
    const { value, source, where } = strandBears_diameters;
    return {
      formula: `${pressure} * d * q * d`,
      inputs: [
        ...inputs,
        at("d", "diameter of the strand", "job.cable.diameter"),
        given("q", "diameters over which it lies on the wood", value, "share", from(source, where)),
      ],
      origin: from(source, where),
    };
  }
  const diameter = at("D", "outside of what lies in the bore", "job.fittings.bushingBore");
  if (mouth.lining === "bushing") {
    const { value, source, where } = bushingBears_diameters;
    return {
      // On the mitre it goes in as far as wood holds it all round.
      formula: `(sqrt(2) - 1) * ${pressure} * D * min(L, q * D, ${mouth.slants.far > 0 && mouth.slants.near > 0 ? "(B - D)" : "B"} / n)`,
      inputs: [
        ...inputs,
        diameter,
        at("L", "length of the bushing in its bore", "job.fittings.bushing.length"),
        given("q", "diameters of its length that bear at most", value, "share", from(source, where)),
        given("B", "length of the bore", mouth.through, "length", derived("plan geometry")),
        given("n", "bushings in it", mouth.mouths, "count"),
      ],
      origin,
    };
  }
  return {
    formula: tubeFormula(mouth, pressure),
    inputs: [
      ...inputs,
      diameter,
      given("L", "length of the tube in its bore, along its middle", bearing.length, "length", derived("right through")),
      given("M", "moment that the tube may take", tubeMoment(plan.job), "moment", derived("yield moment over its safety")),
      ...slantInputs(mouth),
    ],
    origin,
  };
};

const isSquare = ({ slants }: BendMouth): boolean => slants.near === 0 && slants.far === 0;

/** How far it turns or bends: `plugCapacity`. */
function tubeFormula(mouth: BendMouth, pressure: string): string {
  const isOne = mouth.mouths === 1;
  if (isSquare(mouth)) return `min(${isOne ? "(sqrt(2) - 1)" : "1 / 2"} * ${pressure} * D * L, sqrt(2 * ${pressure} * D * M))`;
  const straight = isOne
    ? "2 * sqrt(L ^ 2 / 2 - pi / 8 * D * v * L + (w ^ 2 + v ^ 2) * D ^ 2 / 12) - L - pi / 8 * D * (w - v)"
    : "(L - pi / 8 * D * (w + v)) / 2";
  return `${pressure} * D * min(${straight}, sqrt(2 * M / (${pressure} * D) + (w * D) ^ 2 / 6) - pi / 8 * D * w)`;
}

/** How much deeper a tube begins on the side that is pressed. */
const slantInputs = (mouth: BendMouth): readonly Input[] =>
  isSquare(mouth)
    ? []
    : [
        given("w", "slant of its end at this mouth, the pressed side shorter where above 0", mouth.slants.near, "share", SLANT),
        given("v", "slant of its other end, in the same way", mouth.slants.far, "share", SLANT),
      ];

const SLANT = derived("tangent of the angle between the face of the post and square to the bore, in the way of the push");

const rating: CheckSide = ({ at }) => ({
  formula: "r",
  inputs: [at("r", "rated load", "job.fittings.bushing.rated")],
  origin: derived("the plan as it stands"),
});

export const bendDemands: Readonly<Record<string, CheckSide>> = { bend: woodPush, bushing: push };
export const bendLimits: Readonly<Record<string, CheckSide>> = { bend: wood, bushing: rating };
