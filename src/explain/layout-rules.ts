// Where do heights, gaps, stations and free lengths come from?
import { cornerPath, cornerSetback } from "../plan/corner-path.ts";
import type { SidePlan, Vertical } from "../plan/plan.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import { stationOf } from "./stations.ts";
import type { Input, Origin, Working } from "./trace.ts";

const tapeRounding = "to the nearest mark of the tape, because the crew drills the rounded height; every gap is checked again afterwards";

const job = (where: string): Origin => from("job", where);

const courses: readonly Rule[] = [
  rule("courses.*.height_exact", "Height of course {} above the datum before it is rounded to the tape", ({ at, plan }, [course]) => ({
    formula: "b + c * n / (N + 1)",
    inputs: [
      at("b", "lower edge of the opening above the datum", "opening.bottom"),
      at("c", "clear opening that the cables fill", "job.frame.clearOpening"),
      at("n", "number of the course, 1 is the lowest", `courses.${course}.number`),
      given("N", "courses: the fewest whose gaps, after rounding, keep the largest spacing", plan.courses.length, "count"),
    ],
    origin: derived("the opening is divided evenly"),
  })),
  rule("courses.*.height", "Height of course {} above the datum: this is drilled", ({ at }, [course]) => ({
    formula: "nearest(h, s) + m",
    inputs: [
      at("h", "height before rounding", `courses.${course}.height_exact`),
      at("s", "step of the tape", "job.limits.tapeStep"),
      at("m", "moved up to keep clear of hardware, 0 where none is in the way", `courses.${course}.moved`),
    ],
    origin: derived("the opening is divided evenly"),
    rounding: tapeRounding,
  })),
  rule("gaps.*.spacing", "Spacing of the opening {}, from centre to centre or from a rail's face to a centre", (reader, keys) => {
    const [low, high] = edgesOf(reader, keys);
    return { formula: "h2 - h1", inputs: [high.height, low.height], origin: derived("heights as drilled") };
  }),
  rule("gaps.*.clear", "Clear gap of the opening {}: what a sphere meets", (reader, keys) => {
    const radii = edgesOf(reader, keys).filter(({ isCable }) => isCable).length;
    return {
      formula: radii === 2 ? "a - d / 2 - d / 2" : "a - d / 2",
      inputs: [reader.at("a", "spacing", `gaps${keys[0]}.spacing`), reader.at("d", "diameter of the cable", "job.cable.diameter")],
      origin: derived("half a cable at each side that is a cable"),
    };
  }),
];

interface Edge {
  readonly height: Input;
  readonly isCable: boolean;
}

/** What bounds an opening below and above. */
function edgesOf({ at, plan }: Reader, [key = ""]: readonly string[]): readonly [Edge, Edge] {
  const index = Number(/\d+/.exec(key)?.[0]);
  const edge = (nth: number, symbol: string): Edge => {
    const course = plan.courses[nth - 1];
    if (course !== undefined)
      return { isCable: true, height: at(symbol, `height of course ${course.number}`, `courses.${course.number}.height`) };
    const [what, path] = nth === 0 ? ["lower edge of the opening", "opening.bottom"] : ["underside of the top rail", "opening.top"];
    return { isCable: false, height: at(symbol, what, path) };
  };
  return [edge(index, "h1"), edge(index + 1, "h2")];
}

const frame: readonly Rule[] = [
  rule("opening.bottom", "Lower edge of the opening above the datum", ({ at, plan }) => ({
    formula: plan.job.frame.bottomRail === null ? "g" : "g + r",
    inputs: [
      at("g", "gap from the datum to the bottom rail, 0 without one", "job.frame.gapBelow"),
      ...(plan.job.frame.bottomRail === null ? [] : [at("r", "depth of the bottom rail", "job.frame.bottomRail.depth")]),
    ],
    origin: job("frame"),
  })),
  rule("opening.top", "Underside of the top rail above the datum", ({ at }) => ({
    formula: "b + c",
    inputs: [at("b", "lower edge of the opening", "opening.bottom"), at("c", "clear opening", "job.frame.clearOpening")],
    origin: job("frame: clear opening"),
  })),
  rule("opening.guardHeight", "Height of the guard: top of the top rail above the datum", ({ at }) => ({
    formula: "t + d",
    inputs: [at("t", "underside of the top rail", "opening.top"), at("d", "depth of the top rail", "job.frame.topRail.depth")],
    origin: job("frame"),
  })),
];

const faceOf = (side: SidePlan, end: "first" | "last", reader: Reader): Working => {
  const { at, plan } = reader;
  const of = must(plan.job.sides[side.index], `side ${side.id}`);
  const length = at("L", "length of the side", `sides.${side.id}.length`);
  const sign = end === "first" ? "-" : "+";
  if (of.stations !== null) {
    const nth = end === "first" ? 0 : of.stations.length - 1;
    const station = at("x", `station of its ${end} post`, `job.sides.${side.id}.stations[${nth}]`);
    const posts = plan.verticals.filter(({ kind, sideIndex }) => kind === "post" && sideIndex === side.index);
    const own = must(end === "first" ? posts[0] : posts.at(-1), "post");
    return {
      formula: `x ${sign} w / 2`,
      inputs: [station, at("w", `${own.id} along the side`, `verticals.${own.id}.along`)],
      origin: job("guard: sides: stations"),
    };
  }
  const turn = end === "first" ? (plan.sides[side.index - 1]?.turn ?? null) : side.turn;
  const guardEnd = end === "first" ? side.begins : side.ends;
  if (guardEnd !== null) {
    const wall = guardEnd.gap;
    const path = `sides.${side.id}.${end === "first" ? "begins" : "ends"}.gap`;
    const gap = wall === null ? given("g", "gap to a wall: there is none", 0, "length") : at("g", "gap between wall and end post", path);
    return end === "first"
      ? { formula: "g", inputs: [gap], origin: job("guard: start") }
      : { formula: "L - g", inputs: [length, gap], origin: job("guard: end") };
  }
  const setback = given(
    "c",
    "setback of the corner posts: where their inner edges would touch, and a clearance",
    cornerSetback(turn, plan.job),
    "length",
    {
      ...(plan.job.posts.cornerSetback ?? plan.job.posts.cornerClearance),
    },
  );
  return end === "first"
    ? { formula: "c", inputs: [setback], origin: derived("corner of two posts") }
    : { formula: "L - c", inputs: [length, setback], origin: derived("corner of two posts") };
};

const sideNamed = ({ plan }: Reader, id: string | undefined): SidePlan =>
  must(
    plan.sides.find((side) => side.id === id),
    `side ${id}`,
  );

const sides: readonly Rule[] = [
  rule("sides.*.startsAt", "Outer face of the first post of side {}, from the side's left-hand start", (reader, [id]) =>
    faceOf(sideNamed(reader, id), "first", reader),
  ),
  rule("sides.*.endsAt", "Outer face of the last post of side {}, from the side's left-hand start", (reader, [id]) =>
    faceOf(sideNamed(reader, id), "last", reader),
  ),
  rule("sides.*.length", "Length of side {} along the line of the bores", ({ at }, [id]) => ({
    formula: "L",
    inputs: [at("L", "length in the job file", `job.sides.${id}.length`)],
    origin: job("guard: sides: length"),
  })),
];

const verticals: readonly Rule[] = [
  rule("verticals.*.station", "Station of the middle of {} from the left-hand start of its side", stationOf),
  rule("verticals.*.centre.x", "Middle of {} seen from above, to the right", (reader, [id]) => centreOf(reader, id, "x")),
  rule("verticals.*.centre.y", "Middle of {} seen from above, away from the reader", (reader, [id]) => centreOf(reader, id, "y")),
];

const verticalNamed = ({ plan }: Reader, id: string | undefined): Vertical =>
  must(
    plan.verticals.find((one) => one.id === id),
    `post or spacer ${id}`,
  );

function centreOf(reader: Reader, id: string | undefined, axis: "x" | "y"): Working {
  const { sideId } = verticalNamed(reader, id);
  return {
    formula: axis === "x" ? "x0 + s * cos(t)" : "x0 + s * sin(t)",
    inputs: [
      reader.at("x0", `start of side ${sideId}`, `sides.${sideId}.from.${axis}`),
      reader.at("s", "station", `verticals.${id}.station`),
      reader.at("t", "direction of the side", `sides.${sideId}.direction`),
    ],
    origin: derived("plan geometry"),
  };
}

const bays: readonly Rule[] = [
  rule("bays.*.free", "Free length of a cable in bay {}, between the two faces that hold it", (reader, [id]) => {
    const bay = must(
      reader.plan.bays.find((one) => one.id === id),
      `bay ${id}`,
    );
    const [left, right] = [verticalNamed(reader, bay.leftId), verticalNamed(reader, bay.rightId)];
    const post = (symbol: string, one: Vertical): readonly Input[] => [
      reader.at(`x${symbol}`, `station of ${one.id}`, `verticals.${one.id}.station`),
      reader.at(`w${symbol}`, `${one.id} along its side`, `verticals.${one.id}.along`),
    ];
    const inputs = [...post("1", left), ...post("2", right)];
    const rounding = "to a millionth of a millimetre, so that equal bays compare equal";
    if (bay.kind !== "corner") {
      return { formula: "nearest(x2 - w2 / 2 - (x1 + w1 / 2), 0.000001)", inputs, origin: derived("stations as set out"), rounding };
    }
    const turn = reader.at("turn", `turn of side ${left.sideId}`, `sides.${left.sideId}.turn`);
    return {
      formula: "nearest(chord(L - x1 - w1 / 2, x2 - w2 / 2, turn), 0.000001)",
      inputs: [reader.at("L", `length of side ${left.sideId}`, `sides.${left.sideId}.length`), ...inputs, turn],
      functions: {
        chord: {
          means: "chord(a, b, turn) = sqrt((a + b cos turn)^2 + (b sin turn)^2), a and b from the corner point to the near faces",
          of: (a, b, angle) => cornerPath({ setback_left: Number(a), setback_right: Number(b), turn: Number(angle) }).chord,
        },
      },
      origin: derived("plan geometry"),
      rounding,
    };
  }),
];

export const layoutRules: readonly Rule[] = [...courses, ...frame, ...sides, ...verticals, ...bays];
