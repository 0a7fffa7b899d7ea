// Where do the height, size and depth of a bore come from, and how long must a bit be?
import { sectionOfPost } from "../plan/as-found.ts";
import { counterboreDepth } from "../plan/end-fitting.ts";
import { faceOf } from "../plan/face-end.ts";
import type { Bore, RunEnd } from "../plan/plan.ts";
import type { PostPull } from "../plan/readings.ts";
import { bitRules } from "./bit-rules.ts";
import { anchorHole } from "./pier-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { sleeveRules, washerHoleOf } from "./sleeve-rules.ts";
import type { Working } from "./trace.ts";

const boreNamed = ({ plan }: Reader, mark: string | undefined): Bore =>
  must(
    plan.bores.find((bore) => bore.mark === mark),
    `bore ${mark}`,
  );

function endAt(reader: Reader, { runId, verticalId }: Bore): RunEnd {
  const { left, right } = reader.run(runId);
  return must(
    [left, right].find(({ postId }) => postId === verticalId),
    `end of run ${runId} on ${verticalId}`,
  );
}

const fittings = derived("measured on the fitting");

function diameter(reader: Reader, [mark]: readonly string[]): Working {
  const { at, plan } = reader;
  const bore = boreNamed(reader, mark);
  const same = (what: string, field: string): Working => ({
    formula: "d",
    inputs: [at("d", what, `job.fittings.${field}`)],
    origin: fittings,
  });
  switch (bore.kind) {
    case "stud end":
      return same("bore of a stud end", "stud.bore");
    case "face end":
      return same("hole of the fastening of an end on the face", "face.hole");
    case "anchor end":
      return anchorHole(reader, bore.verticalId, "hole");
    case "grip end":
      return counterboreDepth(endAt(reader, bore), plan.job) > 0
        ? same("bore in front of a counterbore", "grip.bore")
        : same("bore of a gripping end where no counterbore goes in from the back", "grip.boreNoBack");
    default:
      return bore.bushing ? same("bore of a bushing", "bushingBore") : same("bore that the cable only passes", "passBore");
  }
}

/** To the point of a lag screw, through one wall of a tube, or as deep as a thread in solid metal. */
function blindDepth(reader: Reader, { verticalId, kind: bored }: Bore): Working {
  if (bored === "anchor end") return anchorHole(reader, verticalId, "depth");
  const { job } = reader.plan;
  const { kind } = faceOf(job).fastening;
  const { wall } = sectionOfPost(job, verticalId);
  if (kind !== "lag screw" && wall !== null)
    return {
      formula: "t",
      inputs: [given("t", "wall of the tube", wall, "length", from("job", "posts: wall"))],
      origin: derived("one wall"),
    };
  return { formula: "l", inputs: [reader.at("l", "depth of the fastening", "job.fittings.face.fastening.depth")], origin: fittings };
}

/** Where the height of a course stands for a run. */
const courseOf = (reader: Reader, runId: string, course: number): string =>
  `courses.${course}.${reader.run(runId).isRaised === true ? "raised" : "height"}`;

const bores: readonly Rule[] = [
  rule("bores.*.height", "Height of bore {} above the datum: this is drilled", (reader, [mark]) => {
    const { course, runId } = boreNamed(reader, mark);
    return {
      formula: "h",
      inputs: [reader.at("h", `height of course ${course}`, courseOf(reader, runId, course))],
      origin: derived("all bores of a course stand at one height; on raised sides at another"),
    };
  }),
  rule("bores.*.diameter", "Diameter of bore {}", diameter),
  rule("bores.*.drilledLength", "Length drilled through at bore {}", (reader, [mark]) => {
    const bore = boreNamed(reader, mark);
    if (!bore.through) return blindDepth(reader, bore);
    const { verticalId, angle } = bore;
    const corner = reader.plan.verticals.find(({ id }) => id === verticalId)?.corner;
    if (corner !== undefined) {
      const chord = reader.at("c", `bore through ${verticalId}, from mouth to mouth`, `verticals.${verticalId}.corner.chord`);
      return { formula: "c", inputs: [chord], origin: derived("right through, as it lies at the corner") };
    }
    const width = reader.at("w", `${verticalId} along its side`, `verticals.${verticalId}.along`);
    if (angle === 0) return { formula: "w", inputs: [width], origin: derived("right through") };
    return {
      formula: "w / cos(s)",
      inputs: [width, reader.at("s", "angle of the bore", `bores.${mark}.angle`)],
      origin: derived("right through, along the slope"),
    };
  }),
  rule("bores.*.skew", "Angle of bore {} off square to the face that the bit goes in, as seen from above", (reader, [mark]) => {
    const { skew } = boreNamed(reader, mark);
    const what = skew === 0 ? "square to its face" : "from the middle of a face of a square post to that of the next";
    return { formula: "a", inputs: [given("a", what, skew, "angle")], origin: derived("plan geometry") };
  }),
  rule("bores.*.offset", "Distance of bore {} from the middle of its post, away from the deck", (reader, [mark]) => {
    const bore = boreNamed(reader, mark);
    const { left, right } = reader.run(bore.runId);
    const side = left.postId === bore.verticalId ? "left" : right.postId === bore.verticalId ? "right" : null;
    const upright = must(
      reader.plan.verticals.find(({ id }) => id === bore.verticalId),
      bore.verticalId,
    );
    if (upright.lean !== 0) {
      return {
        formula: "o - nearest(l * h, s)",
        inputs: [
          side === null
            ? given("o", "the cable only passes: in the middle", 0, "length")
            : reader.at("o", `offset of the ${side}-hand end bores of ${bore.runId}`, `runs.${bore.runId}.${side}.offset`),
          reader.at("l", `lean of ${upright.id}, away from the deck for each mm of height`, `verticals.${upright.id}.lean`),
          reader.at("h", "height of the bore", `bores.${mark}.height`),
          reader.at("s", "step of the tape", "job.limits.tapeStep"),
        ],
        origin: derived("the cable stays straight where the post leans"),
      };
    }
    if (side === null)
      return { formula: "z", inputs: [given("z", "the cable only passes: in the middle", 0, "length")], origin: derived("plan geometry") };
    return {
      formula: "o",
      inputs: [reader.at("o", `offset of the ${side}-hand end bores of ${bore.runId}`, `runs.${bore.runId}.${side}.offset`)],
      origin: derived("plan geometry"),
    };
  }),
  rule("bores.*.bend", "Turn of the cable at bore {}", (reader, [mark]) => {
    const bore = boreNamed(reader, mark);
    const { bends, left, right } = reader.run(bore.runId);
    const isEnd = [left, right].some(({ postId }) => postId === bore.verticalId);
    const own = isEnd
      ? []
      : bends.flatMap(({ postId }, nth) => (postId === bore.verticalId ? [`runs.${bore.runId}.bends[${nth}].angle`] : []));
    if (own.length === 0)
      return {
        formula: "z",
        inputs: [given("z", isEnd ? "the cable ends here" : "the cable goes straight on", 0, "angle")],
        origin: derived("plan geometry"),
      };
    return { formula: "sum(a)", inputs: [reader.all("a", "turns at this post", own)], origin: derived("plan geometry") };
  }),
  rule(
    "bores.*.counterbore.diameter",
    "Diameter of the counterbore of {}",
    (reader, [mark]) =>
      washerHoleOf(reader, mark)?.diameter ?? {
        formula: "d",
        inputs: [reader.at("d", "counterbore of a gripping end", "job.fittings.grip.counterbore")],
        origin: fittings,
      },
  ),
  rule(
    "bores.*.counterbore.depth",
    "Depth of the counterbore of {}",
    (reader, [mark]) =>
      washerHoleOf(reader, mark)?.depth ?? {
        formula: "l",
        inputs: [reader.at("l", "length of the fitting's body, which lies in the post", "job.fittings.grip.bodyLength")],
        origin: fittings,
      },
  ),
  ...sleeveRules,
];

function pullNamed({ plan }: Reader, key: string): PostPull {
  return must(
    plan.pulls.find(({ postId, runId }) => `${postId}/${runId}` === key),
    `pull ${key}`,
  );
}

function pullAtTarget(reader: Reader, [key = ""]: readonly string[]): Working {
  const { at, plan } = reader;
  const { postId, runId, cause } = pullNamed(reader, key);
  const run = reader.run(runId);
  const cables = at("n", "cables", `pulls.${key}.cables`);
  if (cause === "end") {
    const end = run.left.postId === postId ? run.left : run.right;
    const span = end === run.left ? run.spans[0] : run.spans.at(-1);
    const each = end.pulls
      ? at("T", "target at this end", `runs.${runId}.tension.target`)
      : at("T", "tension of the span next to this end", `runs.${runId}.spans.${span?.bayId}.tension`);
    return { formula: "n * T", inputs: [cables, each], origin: derived("sum of forces") };
  }
  const beside = plan.bays.filter(({ leftId, rightId }) => leftId === postId || rightId === postId).map(({ id }) => id);
  const spans = run.spans.filter(({ bayId }) => beside.includes(bayId)).map(({ bayId }) => `runs.${runId}.spans.${bayId}.tension`);
  const bend = run.bends.findIndex((one) => one.postId === postId);
  const corner = plan.verticals.find(({ id }) => id === postId)?.corner;
  return {
    formula: "n * max(2 * max(t) * sin(abs(a) / 2), sqrt((max(t) - min(t)) ^ 2 + 4 * max(t) * min(t) * sin(a / 2) ^ 2))",
    inputs: [
      cables,
      reader.all(
        "t",
        "tension on both sides of the post; the larger on both, as friction may turn, or each where it is, if that is more",
        spans,
      ),
      corner === undefined
        ? at("a", "turn of the cable at this post", `runs.${runId}.bends[${bend}].angle`)
        : at("a", "turn of the cable at both mouths of its bore", `verticals.${postId}.corner.turn`),
    ],
    origin: derived("resultant of two forces"),
  };
}

const pulls: readonly Rule[] = [
  rule("pulls.*.pull_target", "Pull of all cables on post/run {} at their target", pullAtTarget),
  rule(
    "pulls.*.pull_high",
    "Pull of all cables on post/run {} at the greatest reading allowed, on the day that pulls hardest",
    (reader, [key = ""]) => {
      const { runId } = pullNamed(reader, key);
      const { at } = reader;
      return {
        formula: "P * (h + g) / T",
        inputs: [
          at("P", "pull at the target", `pulls.${key}.pull_target`),
          at("h", "greatest reading allowed", `runs.${runId}.tension.high`),
          at("g", "what that day adds to the cable that gains most", `climate.${runId}.hardest.worst`),
          at("T", "target", `runs.${runId}.tension.target`),
        ],
        origin: derived("goes with the tension"),
      };
    },
  ),
  rule("pulls.*.height", "Height above the datum at which the pull on post/run {} acts", (reader, [key = ""]) => ({
    formula: "mean(h)",
    inputs: [
      reader.all(
        "h",
        "height of each course",
        reader.plan.courses.map(({ number }) => courseOf(reader, key.split("/")[1] ?? "", number)),
      ),
    ],
    origin: derived("resultant of equal forces"),
  })),
  rule("pulls.*.cables", "Cables that pull on post/run {}", ({ plan }) => ({
    formula: "n",
    inputs: [given("n", "courses", plan.courses.length, "count")],
    origin: derived("counted"),
  })),
];

export const boreRules: readonly Rule[] = [...bores, ...bitRules, ...pulls];
