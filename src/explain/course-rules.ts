// Where do the heights of the courses and the gaps between them come from?
import { leadingRake } from "./rake-rules.ts";
import { derived, given, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input } from "./trace.ts";

const tapeRounding = "to the nearest mark of the tape, because the crew drills the rounded height; every gap is checked again afterwards";

export const courseRules: readonly Rule[] = [
  rule("courses.*.height_exact", "Height of course {} above the datum before it is rounded to the tape", ({ at, plan }, [course]) => ({
    formula: plan.setOff === null ? "b + c * n / (N + 1)" : "b - d + (c + d) * n / (N + 1)",
    inputs: [
      at("b", "lower edge of the opening above the datum", "opening.bottom"),
      plan.rakes.length < plan.sides.length
        ? at("c", "clear opening that the cables fill", "job.frame.clearOpening")
        : given("c", "clear opening that the cables fill, plumb", plan.opening.top - plan.opening.bottom, "length"),
      at("n", "number of the course, 1 is the lowest", `courses.${course}.number`),
      given("N", "courses: the fewest whose gaps, after rounding, keep the largest spacing", plan.courses.length, "count"),
      ...(plan.setOff === null ? [] : [at("d", "by how much the cables of raised sides lie higher", "setOff.by")]),
    ],
    origin: derived("the opening is divided evenly; with raised sides as if it began lower by what they are raised"),
  })),
  rule("courses.*.height", "Height of course {} above the datum: this is drilled", ({ at }, [course]) => ({
    formula: "nearest(h, s) + m",
    inputs: [
      at("h", "height before rounding", `courses.${course}.height_exact`),
      at("s", "step of the tape", "job.limits.tapeStep"),
      at(
        "m",
        "moved up, to keep clear of hardware or to come nearer to the rails of a side that slopes; 0 where neither asks for it",
        `courses.${course}.moved`,
      ),
    ],
    origin: derived("the opening is divided evenly"),
    rounding: tapeRounding,
  })),
  rule("courses.*.raised", "Height of course {} above the datum on raised sides: this is drilled", ({ at }, [course]) => ({
    formula: "h + d",
    inputs: [at("h", "height on the other sides", `courses.${course}.height`), at("d", "by how much they are raised", "setOff.by")],
    origin: derived("both on marks of the tape"),
  })),
  rule("gaps.*.spacing", "Spacing of the opening {}, from centre to centre or from a rail's face to a centre", (reader, keys) => {
    const [low, high] = edgesOf(reader, keys);
    const rake = leadingRake(reader.plan);
    if (rake === undefined) return { formula: "h2 - h1", inputs: [high.height, low.height], origin: derived("heights as drilled") };
    return {
      formula: "(h2 - h1) * cos(s)",
      inputs: [high.height, low.height, reader.at("s", `slope of side ${rake.sideId}`, `rakes.${rake.sideId}.slope`)],
      origin: derived("heights as drilled, square to the cables"),
    };
  }),
  rule("gaps.*.plumb", "Spacing of the opening {}, along a post", (reader, keys) => {
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

export interface Edge {
  readonly height: Input;
  readonly isCable: boolean;
}

/** What bounds an opening below and above; `key` is its place in the list of gaps. */
export function edgesOf({ at, plan }: Reader, [key = ""]: readonly string[], field: "height" | "raised" = "height"): readonly [Edge, Edge] {
  const index = Number(/\d+/.exec(key)?.[0]);
  const edge = (nth: number, symbol: string): Edge => {
    const course = plan.courses[nth - 1];
    if (course !== undefined)
      return { isCable: true, height: at(symbol, `height of course ${course.number}`, `courses.${course.number}.${field}`) };
    const [what, path] = nth === 0 ? ["lower edge of the opening", "opening.bottom"] : ["underside of the top rail", "opening.top"];
    return { isCable: false, height: at(symbol, what, path) };
  };
  return [edge(index, "h1"), edge(index + 1, "h2")];
}
