// Where do the lengths of a run and its tensions come from?

import { isOnFace } from "../plan/face-end.ts";
import { frictionShare } from "../plan/friction.ts";
import { throughPost } from "../plan/lay-run.ts";
import type { Run, Vertical } from "../plan/plan.ts";
import type { RunGeometry } from "../plan/runs.ts";
import { derived, given, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const spanPath = (run: string | undefined, bay: string | undefined, field: string): string => `runs.${run}.spans.${bay}.${field}`;

const lengths: readonly Rule[] = [
  rule("runs.*.pathLength", "Length of run {} between the faces that its ends bear on or stand on", (reader, [id = ""]) => {
    const { members, spans } = reader.geometry(id);
    const isSkew = spans.some(({ bay, from: start, to }) => Math.abs(to - start - bay.free) > 1e-9);
    const reach = isSkew
      ? given(
          "f",
          members.some(({ leansAlong }) => leansAlong !== undefined)
            ? "length of the cable in each bay, at the course where its end posts lean farthest apart"
            : "length of the cable in each bay; longer than the bay where end bores stand off the middle",
          spans.map((span) => span.to - span.from),
          "length",
        )
      : reader.all(
          "f",
          "free length of each bay",
          spans.map(({ bay }) => `bays.${bay.id}.free`),
        );
    return {
      formula: "sum(w) + sum(f)",
      inputs: [passedThrough(reader, passedBy(reader.run(id), members), "posts and spacers that the cable passes, along it"), reach],
      origin: derived("plan geometry"),
    };
  }),
  rule("runs.*.outsideLength", "Length of run {} over its end posts, and over the bevelled washers on them", ({ at }, [id]) => ({
    formula: "L + a + b",
    inputs: [
      at("L", "length between the faces that its ends bear on or stand on", `runs.${id}.pathLength`),
      at("a", "bevelled washer at the left end, 0 where there is none", `runs.${id}.left.seat`),
      at("b", "at the right end", `runs.${id}.right.seat`),
    ],
    origin: derived("plan geometry"),
  })),
  ...(["left", "right"] as const).map((end) =>
    rule(`runs.*.${end}.seat`, `Bevelled washer of run {} at its ${end} end, along the cable in its middle`, (reader, [id = ""]) =>
      seat(reader, id, end),
    ),
  ),
  rule("runs.*.orderLength", "Length to order for each cable of run {}", orderLength),
];

function seat(reader: Reader, id: string, which: "left" | "right"): Working {
  const { at } = reader;
  const { kind, postId } = reader.run(id)[which];
  const slope = at("s", `slope of the side of ${postId}`, `verticals.${postId}.slope`);
  if (slope.value === 0)
    return { formula: "b", inputs: [given("b", "there is none", 0, "length")], origin: derived("a level bore is square to the face") };
  return {
    formula: "e + d / 2 * tan(abs(s))",
    inputs: [
      at("e", "thin edge of a bevelled washer", "job.fittings.bevelEdge"),
      at("d", "diameter of the washer", `job.fittings.${kind}.washerDiameter`),
      slope,
    ],
    origin: derived("the mean of its thin and its thick edge"),
  };
}

/** Members that the cable of a run lies in: not the post that an end stands on the face of. */
export const passedBy = ({ left, right }: Run, members: readonly Vertical[]): readonly Vertical[] =>
  members.filter(({ id }) => ![left, right].some((end) => isOnFace(end) && end.postId === id));

/** Lengths of the cable within the members that it passes, of sleeved posts within the wood. */
export const passedThrough = (reader: Reader, members: readonly Vertical[], what: string): Input =>
  members.every(({ slope }) => slope === 0)
    ? reader.all(
        "w",
        what,
        members.map(
          ({ id, core, corner }) =>
            `verticals.${id}.${corner === undefined ? `${core === undefined ? "" : "core."}along` : "corner.chord"}`,
        ),
      )
    : given("w", `${what}; on a rake, their size along the side over the cosine of the slope`, members.map(throughPost), "length");

function orderLength({ at, plan }: Reader, [id]: readonly string[]): Working {
  const outside = at("L", "length from end to end", `runs.${id}.outsideLength`);
  if (plan.job.supply.kind === "ready") {
    const { source, where, value } = plan.job.supply.lengths;
    return {
      formula: "above(r, L)",
      inputs: [given("r", "ready lengths", value, "length", { source, where }), outside],
      origin: derived("the least ready length that is longer than the run"),
      rounding: "up to the next ready length: a cable that is too short cannot be used",
    };
  }
  return {
    formula: "up(L + a, s)",
    inputs: [
      outside,
      at("a", "allowance for cutting and gripping", "job.supply.allowance"),
      given("s", "step of lengths that are cut", plan.job.units === "inch" ? 25.4 : 10, "length"),
    ],
    origin: derived("from a spool"),
    rounding: "up to the next whole inch or centimetre: a cable that is too short cannot be used",
  };
}

const tensions: readonly Rule[] = [
  rule("runs.*.tension.required", "What the criterion asks in the worst span of run {}", ({ all, run }, [id = ""]) => ({
    formula: "max(q)",
    inputs: [
      all(
        "q",
        "what it asks of each span",
        run(id).spans.map(({ bayId }) => spanPath(id, bayId, "required")),
      ),
    ],
    origin: derived("the worst span decides"),
  })),
  rule("runs.*.tension.target", "Reading to aim at, at each pulling end of run {}", (reader, [id = ""]) => ({
    formula: needsLosses(reader) ? "max(s, up((q + m + c) / (1 - b), s))" : "max(s, up((q + m) / (1 - b), s))",
    inputs: [
      ...neededAtNut(reader, id),
      reader.at("b", "allowed difference of a reading, as a share", "job.tightening.band"),
      step(reader),
    ],
    origin: derived("the low end of the band must still do"),
    rounding: "up to the step of the readings, because a lower target would not do",
  })),
  rule(
    "runs.*.tension.low",
    "Least reading at the pulling ends of run {} that still meets the criterion on the worst day",
    (reader, [id = ""]) => ({
      formula: needsLosses(reader) ? "max(s, up(q + m + c, s))" : "max(s, up(q + m, s))",
      inputs: [...neededAtNut(reader, id), step(reader)],
      origin: derived("what the criterion asks and what is lost later"),
      rounding: "up to the step of the readings, because a lower reading would not do",
    }),
  ),
  rule("runs.*.tension.high", "Greatest reading allowed at the pulling ends of run {}", ({ at }, [id]) => ({
    formula: "min(T * (1 + b), W)",
    inputs: [
      at("T", "target", `runs.${id}.tension.target`),
      at("b", "allowed difference of a reading, as a share", "job.tightening.band"),
      at("W", "working limit of the strand", "target.workingLimit"),
    ],
    origin: derived("band, and the strand's working limit"),
  })),
  rule("runs.*.tension.least", "Least tension along run {} when every pulling end reads its target", (reader, [id = ""]) =>
    alongRun(reader, id, leastStretch(reader, id)),
  ),
  rule("runs.*.tension.farRatio", "Least tension of run {} as a share of its target", ({ at }, [id]) => ({
    formula: "l / T",
    inputs: [at("l", "least tension along the run", `runs.${id}.tension.least`), at("T", "target", `runs.${id}.tension.target`)],
    origin: derived("ratio"),
  })),
  rule("runs.*.spans.*.tension", "Least tension in run {}, span {}, when every pulling end reads its target", (reader, [id = "", bay]) => {
    const span = reader.geometry(id).spans.find((one) => one.bay.id === bay);
    return alongRun(reader, id, { from: span?.from ?? 0, to: span?.to ?? 0 });
  }),
];

const step = ({ at }: Reader): Input => at("s", "step of the readings", "job.tightening.readingStep");

/** A tension that somebody states is the target as it stands. */
export const needsLosses = ({ plan }: Reader): boolean => plan.job.tightening.criterion.kind !== "stated";

function neededAtNut(reader: Reader, id: string): readonly Input[] {
  return [
    reader.at("q", "what the criterion asks in the worst span", `frame.windows.${id}.needs[0].tension`),
    reader.at("m", "what friction takes on the way to it", `frame.windows.${id}.needs[1].tension`),
    ...(needsLosses(reader) ? [reader.at("c", "what weather, drying and bedding-in take later", `runs.${id}.tension.covered`)] : []),
  ];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The stretch between bends in which the tension of a run is least. */
function leastStretch(reader: Reader, id: string): Stretch {
  const geometry = reader.geometry(id);
  const marks = [0, ...geometry.bends.map(({ at }) => at), geometry.pathLength].sort((a, b) => a - b);
  const stretches = marks.slice(1).map((to, index): Stretch => ({ from: marks[index] ?? 0, to }));
  const least = (stretch: Stretch): number => Math.min(...reachesOf(reader, geometry, stretch).map(({ share }) => share));
  const real = stretches.filter((stretch) => stretch.to - stretch.from > 1e-6);
  return real.reduce((best, one) => (least(one) < least(best) ? one : best));
}

interface Reach {
  /** From the left-hand and the right-hand nut: turns on the way and distance; null where that end only holds. */
  readonly left: { readonly turn: number; readonly way: number } | null;
  readonly right: { readonly turn: number; readonly way: number } | null;
  readonly share: number;
}

/** The places of a stretch where its tension can be least: its ends, and where the pulls of both nuts meet. */
function reachesOf({ plan }: Reader, run: RunGeometry, { from: start, to }: Stretch): readonly Reach[] {
  const { friction, wobble_perMm } = plan.job.tightening;
  const turned = (is: (at: number) => boolean): number =>
    run.bends.filter(({ at }) => is(at)).reduce((sum, { angle }) => sum + angle * frictionShare(angle, plan.job), 0);
  const [before, after] = [turned((at) => at <= start + 1e-6), turned((at) => at >= to - 1e-6)];
  const kept = (turn: number, way: number): number => Math.exp(-(friction.value * turn + wobble_perMm.value * way));
  const at = (place: number): Reach => {
    const left = run.left.pulls ? { turn: before, way: place } : null;
    const right = run.right.pulls ? { turn: after, way: run.pathLength - place } : null;
    return { left, right, share: Math.max(...[left, right].map((end) => (end === null ? 0 : kept(end.turn, end.way)))) };
  };
  const meets = run.left.pulls && run.right.pulls && wobble_perMm.value > 0;
  const meet = (run.pathLength + (friction.value * (after - before)) / Math.max(wobble_perMm.value, Number.MIN_VALUE)) / 2;
  return [start, to, ...(meets && meet > start && meet < to ? [meet] : [])].map(at);
}

function alongRun(reader: Reader, id: string, stretch: Stretch): Working {
  const reaches = reachesOf(reader, reader.geometry(id), stretch);
  const worst = reaches.reduce((least, one) => (one.share < least.share ? one : least));
  const ends = [
    { name: "left", symbol: "1", reach: worst.left },
    { name: "right", symbol: "2", reach: worst.right },
  ].flatMap(({ name, symbol, reach }) => (reach === null ? [] : [{ name, symbol, reach }]));
  const parts = ends.map(({ symbol }) => `T * exp(-(mu * a${symbol} + k * x${symbol}))`);
  return {
    formula: parts.length === 1 ? (parts[0] ?? "") : `max(${parts.join(", ")})`,
    inputs: [
      reader.at("T", "target at each pulling end", `runs.${id}.tension.target`),
      reader.at("mu", "friction", "job.tightening.friction"),
      reader.at("k", "loss by imperfectly aligned bores, per mm", "job.tightening.wobble_perMm"),
      ...ends.flatMap(({ name, symbol, reach }) => [
        given(
          `a${symbol}`,
          `turns from the ${name}-hand nut to the weakest place; a bend on bare wood counts for more`,
          reach.turn,
          "angle",
        ),
        given(`x${symbol}`, `way from the ${name}-hand nut to the weakest place`, reach.way, "length"),
      ]),
    ],
    origin: derived("Euler-Eytelwein (capstan) with the wobble term of post-tensioning"),
  };
}

export const runRules: readonly Rule[] = [...lengths, ...tensions];
