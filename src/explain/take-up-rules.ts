// How far does a nut travel, in how many turns, and what is left of its thread?
import { profileOf } from "../plan/friction.ts";
import type { RunEnd } from "../plan/plan.ts";
import { shareOf } from "../plan/take-up.ts";
import { derived, given, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const endsOf = (reader: Reader, run: string): readonly RunEnd[] => {
  const { left, right } = reader.geometry(run);
  return [left, right].filter(({ pulls }) => pulls);
};

const endPaths = (reader: Reader, run: string, field: string): readonly string[] =>
  endsOf(reader, run).map(({ postId }) => `runs.${run}.takeUp.ends.${postId}.${field}`);

/** Where the thickness of the bevelled washer of each pulled nut stands. */
const seatPaths = (reader: Reader, run: string): readonly string[] => {
  const { left, right } = reader.geometry(run);
  return [...(left.pulls ? [`runs.${run}.left.seat`] : []), ...(right.pulls ? [`runs.${run}.right.seat`] : [])];
};

/** Tension summed along the cable on one nut's side, and the length of that side. */
function sideOf(reader: Reader, run: string, post: string | undefined): readonly Input[] {
  const { plan } = reader;
  const geometry = reader.geometry(run);
  const ends = endsOf(reader, run);
  const end = ends.find(({ postId }) => postId === post);
  if (end === undefined) throw new RangeError(`no nut of run ${run} is pulled at ${post}`);
  const { integral_NMm, length } = shareOf(
    end,
    ends,
    geometry,
    profileOf(geometry, plan.runs.find(({ id }) => id === run)?.tension.target ?? 0, plan.job),
  );
  const whose = ends.length === 1 ? "the cable" : "the cable on this nut's side of the place that the pull reaches last";
  return [
    given("I", `tension summed along ${whose}`, integral_NMm, "sum of force and length"),
    ends.length === 1 ? reader.at("L", "length of the run", `runs.${run}.pathLength`) : given("L", `length of ${whose}`, length, "length"),
  ];
}

/** Stretch, bedding-in, seating and closing of one end's nut. */
function endParts(reader: Reader, run: string, post: string | undefined, stiffness: "low" | "nominal" | "high"): readonly Input[] {
  const which = { low: "least", nominal: "nominal", high: "greatest" }[stiffness];
  return [
    ...sideOf(reader, run, post),
    reader.at("EA", `axial stiffness of the strand, ${which}`, `job.cable.stiffness.value.${stiffness}`),
    reader.at("e", "bedding-in of the strand, as a share of its length", "job.cable.beddingShare"),
    reader.at("u", "seating of wood and fittings, both ends together", "job.tightening.seating"),
    reader.at("c", "how much nearer the posts come under all cables", `runs.${run}.takeUp.closing`),
    given("n", "nuts that are pulled", endsOf(reader, run).length, "count"),
  ];
}

const TRAVEL = "I / EA + e * L + (u + c) / n";
const pitch = (reader: Reader): Input => reader.at("p", "pitch of the thread", "job.fittings.stud.pitch");
const slack = (reader: Reader, run: string, post: string | undefined): Input =>
  reader.at("k", "slack taken out before the nut is turned", `runs.${run}.takeUp.ends.${post}.slack`);
const lengths = derived("sum of lengths");
const shown = "not in the plan; a sheet rounds it up to the next 1/32 in or 0.1 mm, so that no travel is missing";

const ends: readonly Rule[] = [
  rule("runs.*.takeUp.ends.*.travel", "Travel of the nut of run {} at {}", (reader, [run = "", post]) => ({
    formula: `${TRAVEL} - k`,
    inputs: [...endParts(reader, run, post, "nominal"), slack(reader, run, post)],
    origin: lengths,
    rounding: shown,
  })),
  rule(
    "runs.*.takeUp.ends.*.travel_high",
    "Travel of the nut of run {} at {}, with the least stiffness of the strand",
    (reader, [run = "", post]) => ({
      formula: `${TRAVEL} - k`,
      inputs: [...endParts(reader, run, post, "low"), slack(reader, run, post)],
      origin: lengths,
      rounding: shown,
    }),
  ),
  rule("runs.*.takeUp.ends.*.slack", "Slack to take out of run {} at {} before the nut is turned", (reader, [run = "", post]) => ({
    formula: `max(0, ${TRAVEL} + r - a)`,
    inputs: [
      ...endParts(reader, run, post, "low"),
      reader.at("r", "thread to be left for later visits", `runs.${run}.takeUp.reserve`),
      reader.at("a", "free thread after the first turns", `runs.${run}.takeUp.threadAvailable`),
    ],
    origin: derived("what the thread cannot take with its reserve"),
  })),
  ...(
    [
      ["turns", "nominal", "Turns"],
      ["turns_low", "high", "Fewest turns"],
      ["turns_high", "low", "Most turns"],
    ] as const
  ).map(([field, stiffness, name]) =>
    rule(`runs.*.takeUp.ends.*.${field}`, `${name} of the nut of run {} at {}`, (reader, [run = "", post]) => ({
      formula: `(${TRAVEL} - k) / p`,
      inputs: [...endParts(reader, run, post, stiffness), slack(reader, run, post), pitch(reader)],
      origin: derived("lead of a single-start thread"),
    })),
  ),
  rule("runs.*.takeUp.ends.*.threadLeft", "Thread left at {} {} after tightening", (reader, [run = "", post]) => ({
    formula: "a - t",
    inputs: [
      reader.at("a", "free thread after the first turns", `runs.${run}.takeUp.threadAvailable`),
      reader.at("t", "travel of the nut", `runs.${run}.takeUp.ends.${post}.travel`),
    ],
    origin: lengths,
    rounding: "not in the plan; a sheet rounds it down, as room that must be left",
  })),
];

function stretch(reader: Reader, [run = ""]: readonly string[]): Working {
  const geometry = reader.geometry(run);
  const unit = profileOf(geometry, 1, reader.plan.job);
  return {
    formula: "T * J / EA",
    inputs: [
      reader.at("T", "target at each pulling end", `runs.${run}.tension.target`),
      given("J", "length of the run, each part counted by its share of the pull", unit.integral_NMm, "length"),
      reader.at("EA", "axial stiffness of the strand", "job.cable.stiffness.value.nominal"),
    ],
    origin: derived("Hooke's law"),
  };
}

/** How much nearer the anchors of the cable come that closes most. */
function closing(reader: Reader, [run = ""]: readonly string[]): Working {
  const { group, first } = reader.group(run);
  const count = group.courses.length;
  const targets = group.runs.flatMap(({ id }) => group.courses.map(() => `runs.${id}.tension.target`));
  const pulls = targets.map((path) => reader.number(path));
  const closes = (row: readonly number[]): number => row.reduce((sum, one, other) => sum + one * (pulls[other] ?? 0), 0);
  const rows = group.flexibility.slice(first, first + count);
  const worst = rows.reduce((most, row) => (closes(row) > closes(most) ? row : most));
  return {
    formula: "max(0, dot(f, T))",
    inputs: [
      given(
        "f",
        `closing of course ${rows.indexOf(worst) + 1}, the one that closes most, per newton at each nut: the plane frame of each side`,
        worst,
        "flexibility",
        derived("unit loads by direct stiffness"),
      ),
      reader.all("T", "target at the nut of each cable on this frame", targets),
    ],
    origin: derived("superposition"),
  };
}

const whole: readonly Rule[] = [
  rule("runs.*.takeUp.elongation", "Stretch of the strand of run {} at its target", stretch),
  rule("runs.*.takeUp.bedding", "Bedding-in of the strand of run {} as it is tightened", ({ at }, [run]) => ({
    formula: "e * L",
    inputs: [at("e", "share of the length", "job.cable.beddingShare"), at("L", "length of the run", `runs.${run}.pathLength`)],
    origin: lengths,
  })),
  rule("runs.*.takeUp.seating", "Travel that seating takes on run {}", ({ at }) => ({
    formula: "u",
    inputs: [at("u", "seating of wood and fittings, both ends together", "job.tightening.seating")],
    origin: lengths,
  })),
  rule("runs.*.takeUp.closing", "How much nearer the posts of run {} come under all cables", closing),
  rule("runs.*.takeUp.travel", "Travel of all nuts of run {}", ({ at }, [run]) => ({
    formula: "x + b + u + c",
    inputs: [
      at("x", "stretch", `runs.${run}.takeUp.elongation`),
      at("b", "bedding-in", `runs.${run}.takeUp.bedding`),
      at("u", "seating", `runs.${run}.takeUp.seating`),
      at("c", "closing of the posts", `runs.${run}.takeUp.closing`),
    ],
    origin: lengths,
  })),
  rule("runs.*.takeUp.threadAvailable", "Free thread of a nut of run {} after its first turns", (reader, [run = ""]) => ({
    formula: "l - n * p - max(b)",
    inputs: [
      reader.at("l", "thread that the nut can travel along", "job.fittings.stud.threadLength"),
      reader.at("n", "turns before any tension", "job.fittings.stud.firstTurns"),
      reader.at("p", "pitch of the thread", "job.fittings.stud.pitch"),
      reader.all("b", "bevelled washer at each nut, 0 where the bore is square to the face", seatPaths(reader, run)),
    ],
    origin: lengths,
  })),
  rule("runs.*.takeUp.reserve", "Thread of run {} to be left for later visits", ({ at }) => ({
    formula: "r",
    inputs: [at("r", "reserve", "job.fittings.stud.reserve")],
    origin: lengths,
  })),
  rule("runs.*.takeUp.slackToPull", "Slack to take out of run {} before the nuts are turned", (reader, [run = ""]) => ({
    formula: "sum(k)",
    inputs: [reader.all("k", "slack of each end", endPaths(reader, run, "slack"))],
    origin: lengths,
  })),
  ...(
    [
      ["travelPerEnd", "travel", "Travel of the nut of run {} that travels most"],
      ["turns", "turns", "Turns of the nut of run {} that travels most"],
      ["turns_low", "turns_low", "Fewest turns of the nut of run {} that travels most"],
      ["turns_high", "turns_high", "Most turns of the nut of run {} that travels most"],
      ["threadLeft", "threadLeft", "Thread left at the nut of run {} that travels most"],
    ] as const
  ).map(([field, ofEnd, what]) =>
    rule(`runs.*.takeUp.${field}`, what, (reader, [run = ""]) => {
      const paths = endPaths(reader, run, "travel");
      const most = paths.reduce((worst, path) => (reader.number(path) > reader.number(worst) ? path : worst));
      return {
        formula: "t",
        inputs: [reader.at("t", "of that end", most.replace(/travel$/, ofEnd))],
        origin: derived("the end that travels most"),
      };
    }),
  ),
];

export const takeUpRules: readonly Rule[] = [...ends, ...whole];
