// Where do the numbers of a side that slopes come from: slope, heights, spacings, the triangle, the two ends of a bore?
import { circleInStep } from "../geometry/space.ts";
import type { Plan } from "../plan/plan.ts";
import type { RakePlan } from "../plan/rake-plan.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

export const rakeNamed = ({ plan }: Reader, sideId: string | undefined): RakePlan =>
  must(
    plan.rakes.find((rake) => rake.sideId === sideId),
    `rake of side ${sideId}`,
  );

/** Where no side is level, the rake whose heights and gaps stand for the guard's. */
export const leadingRake = ({ rakes }: Plan): RakePlan | undefined => rakes.find(({ leads }) => leads);

const onRakes = from("job", "frame: on rakes");

function bottomOf({ at, plan }: Reader, slope: Input): Working {
  const gap = at("g", "gap below the bottom rail on rakes, plumb", "job.frame.onRakes.gapBelow");
  if (plan.job.frame.bottomRail === null) return { formula: "g", inputs: [gap], origin: onRakes };
  return {
    formula: "g + r / cos(s)",
    inputs: [gap, at("r", "depth of the bottom rail, square to the rake", "job.frame.bottomRail.depth"), slope],
    origin: onRakes,
  };
}

function topOf(reader: Reader, id: string, slope: Input): Working {
  const { at, plan } = reader;
  if (plan.job.frame.onRakes.clearOpening !== null) {
    return {
      formula: "b + c",
      inputs: [
        at("b", "lower edge of the opening", `rakes.${id}.opening.bottom`),
        at("c", "clear opening on rakes, plumb", "job.frame.onRakes.clearOpening"),
      ],
      origin: onRakes,
    };
  }
  const { bottomRail } = plan.job.frame;
  return {
    formula: `g + ${bottomRail === null ? "" : "r + "}c + d - d / cos(s)`,
    inputs: [
      at("g", "gap below on level sides", "job.frame.gapBelow"),
      ...(bottomRail === null ? [] : [at("r", "depth of the bottom rail", "job.frame.bottomRail.depth")]),
      at("c", "clear opening of level sides", "job.frame.clearOpening"),
      at("d", "depth of the top rail", "job.frame.topRail.depth"),
      slope,
    ],
    origin: derived("the tops of raked and level rails meet at one height; a rail on a rake takes up more of it"),
  };
}

const slopeOf = ({ at }: Reader, id: string | undefined): Input => at("s", `slope of side ${id}`, `rakes.${id}.slope`);

interface Edge {
  readonly height: Input;
  readonly isCable: boolean;
}

function edgesOf({ at, plan }: Reader, [id = "", key = ""]: readonly string[]): readonly [Edge, Edge] {
  const index = Number(/\d+/.exec(key)?.[0]);
  const edge = (nth: number, symbol: string): Edge => {
    const course = plan.courses[nth - 1];
    if (course !== undefined)
      return { isCable: true, height: at(symbol, `height of course ${course.number}`, `courses.${course.number}.height`) };
    const [what, field] = nth === 0 ? ["lower edge of the opening", "bottom"] : ["underside of the top rail", "top"];
    return { isCable: false, height: at(symbol, what, `rakes.${id}.opening.${field}`) };
  };
  return [edge(index, "h1"), edge(index + 1, "h2")];
}

const rakes: readonly Rule[] = [
  rule("rakes.*.slope", "Slope of side {}, above level from left to right", ({ at }, [id]) => ({
    formula: "s",
    inputs: [at("s", "slope of the job's rake", `job.sides.${id}.rake.slope`)],
    origin: from("job", "guard: sides: rake"),
  })),
  rule("rakes.*.rise", "Rise of side {} from its left-hand end to its right-hand one", ({ at }, [id]) => ({
    formula: "z2 - z1",
    inputs: [
      at("z2", "walking surface at its right-hand end", `sides.${id}.datum_to`),
      at("z1", "at its left-hand end", `sides.${id}.datum_from`),
    ],
    origin: derived("plan geometry"),
  })),
  rule("rakes.*.slopeLength", "Length of side {} along its slope", (reader, [id]) => ({
    formula: "L / cos(s)",
    inputs: [reader.at("L", "level length", `sides.${id}.length`), slopeOf(reader, id)],
    origin: derived("right triangle"),
  })),
  rule("rakes.*.opening.bottom", "Lower edge of the opening of side {}, plumb above the datum", (reader, [id]) =>
    bottomOf(reader, slopeOf(reader, id)),
  ),
  rule("rakes.*.opening.top", "Underside of the top rail of side {}, plumb above the datum", (reader, [id = ""]) =>
    topOf(reader, id, slopeOf(reader, id)),
  ),
  rule("rakes.*.opening.guardHeight", "Height of the guard on side {}, plumb above the datum", (reader, [id]) => ({
    formula: "t + d / cos(s)",
    inputs: [
      reader.at("t", "underside of the top rail", `rakes.${id}.opening.top`),
      reader.at("d", "depth of the top rail, square to the rake", "job.frame.topRail.depth"),
      slopeOf(reader, id),
    ],
    origin: from("job", "frame"),
  })),
  rule("rakes.*.gaps.*.plumb", "Spacing {1} on side {0}, along a post", (reader, keys) => {
    const [low, high] = edgesOf(reader, keys);
    return { formula: "h2 - h1", inputs: [high.height, low.height], origin: derived("heights as drilled") };
  }),
  rule("rakes.*.gaps.*.spacing", "Spacing {1} on side {0}, square to the cables", (reader, [id, key]) => ({
    formula: "v * cos(s)",
    inputs: [reader.at("v", "the same along a post", `rakes.${id}.gaps${key}.plumb`), slopeOf(reader, id)],
    origin: derived("right triangle"),
  })),
  rule("rakes.*.gaps.*.clear", "Clear gap {1} on side {0}, square to the cables: what a sphere meets", (reader, keys) => {
    const radii = edgesOf(reader, keys).filter(({ isCable }) => isCable).length;
    return {
      formula: radii === 2 ? "a - d / 2 - d / 2" : "a - d / 2",
      inputs: [
        reader.at("a", "spacing square to the cables", `rakes.${keys[0]}.gaps${keys[1]}.spacing`),
        reader.at("d", "diameter of the cable", "job.cable.diameter"),
      ],
      origin: derived("half a cable at each side that is a cable"),
    };
  }),
  rule("rakes.*.aboveNosings", "From the line of the nosings to the bottom rail of side {}, square to the slope", (reader, [id]) => ({
    formula: "g * cos(s)",
    inputs: [reader.at("g", "gap below the bottom rail, plumb", "job.frame.onRakes.gapBelow"), slopeOf(reader, id)],
    origin: derived("right triangle"),
  })),
  rule("rakes.*.triangle.sphere", "Largest sphere that goes in at riser and tread of side {}", ({ at }, [id]) => ({
    formula: "(r + g + n * r / t) * (1 + t / r) - hypot(r + g + n * r / t, (r + g + n * r / t) * t / r)",
    inputs: [
      at("r", "riser", `rakes.${id}.triangle.riser`),
      at("t", "tread", `rakes.${id}.triangle.tread`),
      at("g", "gap above the line of the nosings, plumb", `rakes.${id}.triangle.gap`),
      at("n", "overhang of a nosing: so far back stands the riser", `rakes.${id}.triangle.nosing`),
    ],
    origin: derived("incircle of a right triangle, its corner at the riser behind the nosing"),
  })),
  rule(
    "rakes.*.triangle.gap_max",
    "Gap above the nosings of side {} at which the code's sphere goes in at riser and tread",
    (reader, [id]) => {
      const { plan, at } = reader;
      const limit = plan.job.code.stairs.triangleSphere;
      if (limit === null) return null;
      const { riser = 1, tread = 1 } = rakeNamed(reader, id).triangle ?? {};
      return {
        formula: "S * r / d - r - n * r / t",
        inputs: [
          at("S", "sphere that must not pass there", "job.code.stairs.triangleSphere"),
          at("r", "riser", `rakes.${id}.triangle.riser`),
          at("t", "tread", `rakes.${id}.triangle.tread`),
          at("n", "overhang of a nosing", `rakes.${id}.triangle.nosing`),
          given("d", "circle in a step under the line of the nosings itself", circleInStep({ rise: riser, going: tread }, 0), "length"),
        ],
        origin: derived("the circle grows with the height of its triangle"),
      };
    },
  ),
];

const surface: readonly Rule[] = [
  rule("sides.*.datum_to", "Walking surface at the right-hand end of side {}, above that at the guard's start", ({ at, plan }, [id]) => {
    const start = at("z", "at its left-hand end", `sides.${id}.datum_from`);
    const side = plan.sides.find((one) => one.id === id);
    if (side?.slope === 0) return { formula: "z", inputs: [start], origin: derived("a level side") };
    return {
      formula: "z + L * tan(s)",
      inputs: [start, at("L", "level length", `sides.${id}.length`), at("s", "slope", `sides.${id}.slope`)],
      origin: derived("right triangle"),
    };
  }),
  rule("verticals.*.datum", "Walking surface plumb under the middle of {}, above that at the guard's start", ({ at, plan }, [id]) => {
    const own = must(
      plan.verticals.find((one) => one.id === id),
      `post or spacer ${id}`,
    );
    const start = at("z", `at the left-hand end of side ${own.sideId}`, `sides.${own.sideId}.datum_from`);
    if (own.slope === 0) return { formula: "z", inputs: [start], origin: derived("a level side") };
    return {
      formula: "z + x * tan(s)",
      inputs: [start, at("x", "its station", `verticals.${id}.station`), at("s", "slope", `verticals.${id}.slope`)],
      origin: derived("right triangle"),
    };
  }),
];

/** What the spans of a bay take from its side; between two sides the wider spacing and the smaller sphere. */
function sidesOf({ plan }: Reader, bayId: string): readonly string[] {
  return bayId.includes("/") ? bayId.split("/") : plan.bays.filter(({ id }) => id === bayId).map(({ sideId }) => sideId);
}

const spans: readonly Rule[] = [
  rule(
    "runs.*.spans.*.spacing",
    "Widest spacing of two neighbouring cables in run {}, span {}, square to them",
    (reader, [_run, bay = ""]) => {
      const { plan, all } = reader;
      const inner = (gaps: readonly unknown[], path: string): readonly string[] =>
        gaps.flatMap((_, nth) => (gaps.length > 2 && (nth === 0 || nth === gaps.length - 1) ? [] : [`${path}[${nth}].spacing`]));
      const paths = sidesOf(reader, bay).flatMap((id) => {
        const rake = plan.rakes.find(({ sideId }) => sideId === id);
        return rake === undefined ? inner(plan.gaps, "gaps") : inner(rake.gaps, `rakes.${id}.gaps`);
      });
      return {
        formula: "max(a)",
        inputs: [all("a", "spacing of each two cables", paths)],
        origin: derived("the sphere goes through there"),
      };
    },
  ),
  rule("runs.*.spans.*.sphere", "Sphere that must not pass in run {}, span {}", (reader, [_run, bay = ""]) => {
    const { plan, all } = reader;
    const ofRakes = sidesOf(reader, bay).flatMap((id) =>
      plan.rakes.some(({ sideId }) => sideId === id) ? [`rakes.${id}.openingSphere`] : [],
    );
    const paths = ["job.code.openingSphere", ...ofRakes];
    return {
      formula: "min(S)",
      inputs: [all("S", "sphere of the code, level and on this side", paths)],
      origin: derived("the smaller one counts"),
    };
  }),
];

/** Height of a bore on one of its two faces. */
const onFace =
  (which: "entry" | "exit"): Rule["explain"] =>
  (reader, [mark]) => {
    const { at, plan } = reader;
    const bore = must(
      plan.bores.find((one) => one.mark === mark),
      `bore ${mark}`,
    );
    const height = at("h", "height in the middle of the post", `bores.${mark}.height`);
    if (bore.angle === 0) return { formula: "h", inputs: [height], origin: derived("a level bore") };
    const isLeft = (bore.entryFace === "left") === (which === "entry");
    return {
      formula: `h ${isLeft ? "-" : "+"} w / 2 * tan(s)`,
      inputs: [
        height,
        at("w", `${bore.verticalId} along its side`, `verticals.${bore.verticalId}.along`),
        at("s", "angle of the bore above level, from left to right", `bores.${mark}.angle`),
      ],
      origin: derived("right triangle"),
    };
  };

const bores: readonly Rule[] = [
  rule("bores.*.entryHeight", "Height of bore {} on the face that the bit goes in", onFace("entry")),
  rule("bores.*.exitHeight", "Height of bore {} on the face that the bit comes out of", onFace("exit")),
  rule("bores.*.angle", "Angle of bore {} above level, from left to right", ({ at, plan }, [mark]) => {
    const id = plan.bores.find((one) => one.mark === mark)?.verticalId;
    return {
      formula: "s",
      inputs: [at("s", `slope of the side of ${id}`, `verticals.${id}.slope`)],
      origin: derived("a bore lies along its cable"),
    };
  }),
];

export const rakeRules: readonly Rule[] = [...rakes, ...surface, ...spans, ...bores];
