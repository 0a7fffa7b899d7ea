// What bounds the target of a run from above: strand, movement, washers, frame?
import { derived, given, must, type Reader } from "./reader.ts";
import type { Input, Working } from "./trace.ts";

export function allows(reader: Reader, [run = "", key]: readonly string[]): Working | null {
  const { at, plan } = reader;
  const bound = plan.frame.windows.find(({ runId }) => runId === run)?.allows[Number(/\d+/.exec(key ?? "")?.[0])];
  if (bound === undefined) return null;
  const target = at("T", "target", `runs.${run}.tension.target`);
  const high = at("h", "greatest reading that its band allows", `runs.${run}.tension.high`);
  const added = at("g", "what the hardest day adds", `climate.${run}.hardest.worst`);
  const working = at("W", "working limit of the strand", "target.workingLimit");
  switch (bound.kind) {
    case "passes":
      return {
        formula: "W / max(1, q)",
        inputs: [working, at("q", "highest reading of the passes over the target", `tightening.${run}.highest_overTarget`)],
        origin: derived("the strand in any stage"),
      };
    case "season":
      return { formula: "max(0, W - g) * T / h", inputs: [working, added, target, high], origin: derived("the strand on that day") };
    case "movement":
      return movementBound(reader, run, [target, high]);
    case "washer":
    case "bend":
    case "face":
      return endBound(reader, run, bound.kind, [target, high, added]);
    default:
      return frameBound(reader, run, bound.name, [target, high]);
  }
}

const endWords = {
  washer: "the wood under the washers",
  bend: "what wood and bushings bear where the cable bends",
  face: "the ends on faces and in piers",
} as const;

/** Done on the hardest day, or at work on any day. */
function endBound(reader: Reader, run: string, kind: keyof typeof endWords, inputs: readonly Input[]): Working {
  const { all, at, tightening } = reader;
  const [capacities, capacity] =
    kind === "bend"
      ? [bendCapacity(reader, run), "min(l / D * max(h + g, m))"]
      : [[kind === "face" ? holdCapacities(reader, run) : bearingCapacities(reader, run)], "min(C)"];
  return {
    formula: `max(0, min(max(0, ${capacity} - g) * T / h, ${capacity} * (T + max(0, a)) / m - max(0, a)))`,
    inputs: [
      ...capacities,
      ...inputs,
      all(
        "a",
        "what each day of the table adds to the readings",
        tightening(run).days.map(({ temperature: _t }, nth) => `tightening.${run}.days[${nth}].added`),
      ),
      at("m", "most that a step may come to on any day", `tightening.${run}.most_onAnyDay`),
    ],
    origin: derived(`${endWords[kind]}, done on the hardest day or at work on any day`),
  };
}

function bearingCapacities({ all, plan }: Reader, run: string): Input {
  const ids = plan.checks.filter(({ id }) => id.startsWith(`bearing-${run}-`)).map(({ id }) => `checks.${id}.limit.value`);
  return all("C", "what the wood under the washer of each end bears", ids);
}

/** The row that comes nearest to its limit: what the nut may pull with until it does. */
function bendCapacity({ at, plan }: Reader, run: string): readonly Input[] {
  const rows = plan.checks.filter(({ id, ratio }) => (id === `bend-${run}` || id === `bushing-${run}`) && ratio !== null);
  const { id } = must(rows.toSorted((one, other) => (other.ratio ?? 0) - (one.ratio ?? 0))[0], `check of the bends of run ${run}`);
  return [
    at("l", "what the wood or the bushing bears where the cable bends", `checks.${id}.limit.value`),
    at("D", "what the cable presses there with", `checks.${id}.demand.value`),
  ];
}

function holdCapacities({ all, plan }: Reader, run: string): Input {
  const kinds = [`face-hold-${run}-`, `face-rated-${run}-`, `anchor-rated-${run}-`];
  const ids = plan.checks.filter(({ id }) => kinds.some((kind) => id.startsWith(kind))).map(({ id }) => `checks.${id}.limit.value`);
  return all("C", "what holds each end on a face or in a pier, and what it is rated for", ids);
}

/** What the hardest day adds to each cable of a run. */
const hardestEach = ({ all, plan }: Reader, run: string): Input =>
  all(
    "G",
    "what the hardest day adds to each cable",
    plan.courses.map((_, nth) => `climate.${run}.hardest.each[${nth}]`),
  );

/** While the passes go on, and when all is done on the hardest day. */
function movementBound(reader: Reader, run: string, inputs: readonly Input[]): Working {
  const check = reader.plan.frame.checks.find(({ id, ratio }) => id.startsWith("movement-") && ratio > 0);
  const [target] = inputs;
  const moved = reader.at("m", "largest movement of a post while tightening, over its limit", `tightening.${run}.movement_overLimit`);
  const origin = derived("movement goes with the tension; what the day adds does not grow with the target");
  if (check === undefined) return { formula: "T / m", inputs: [...(target === undefined ? [] : [target]), moved], origin };
  return {
    formula: "min(T / m, max(0, h / q + min((1 / q - 1) * min(G), (1 / q - 1) * max(G))) * T / h)",
    inputs: [
      ...inputs,
      moved,
      reader.at("q", "movement under the cables on the hardest day, over its limit", `frame.checks.${check.id}.ratio`),
      hardestEach(reader, run),
    ],
    origin,
  };
}

function frameBound(reader: Reader, run: string, name: string, inputs: readonly Input[]): Working {
  return {
    formula: "max(0, q * h + min((q - 1) * min(G), (q - 1) * max(G))) * T / h",
    inputs: [
      ...inputs,
      given(
        "q",
        `growth of all pulls at which "${name}" comes to its limit`,
        growthOf(reader, name),
        "share",
        derived("frame checks under the cables alone"),
      ),
      hardestEach(reader, run),
    ],
    origin: derived("frame checks; what the day adds does not grow with the target"),
  };
}

/** The share that a row of the frame checks leaves, as its own parts say or as its ratio does. */
function growthOf({ plan }: Reader, name: string): number {
  const check = must(
    plan.frame.checks.find((one) => `${one.name}, ${one.member}` === name && one.ratio > 0 && one.loads.startsWith("cables alone")),
    `check "${name}"`,
  );
  return check.parts.find((part) => part.name.startsWith("growth of the tensions"))?.value ?? 1 / check.ratio;
}
