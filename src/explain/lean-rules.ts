// Where do the places of a post that leans along its side come from, and the lengths beside it?
import { endPostOf, guardEnds } from "../plan/check-wall.ts";
import { middleCourse } from "../plan/lean-along-plan.ts";
import type { Vertical } from "../plan/plan.ts";
import { derived, from, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const leanPath = ({ plan }: Reader, id: string | undefined): string =>
  `job.posts.asFound[${plan.job.posts.asFound.findIndex(({ post }) => post === id)}].leans`;

const shift = (which: "low" | "high", course: "lowest" | "highest"): Rule =>
  rule(
    `verticals.*.leansAlong.${which}`,
    `How far to the right of its station the middle of {} is at the ${course} course`,
    (reader, [id]) => {
      const { courses } = reader.plan;
      const number = (which === "low" ? courses[0] : courses.at(-1))?.number;
      return {
        formula: "l * (h - m)",
        inputs: [
          reader.at("l", "lean to the right for each mm of height", `verticals.${id}.leansAlong.slant`),
          reader.at("h", `height of the ${course} course`, `courses.${number}.height`),
          reader.at("m", "height at which its station was read", `verticals.${id}.leansAlong.height`),
        ],
        origin: derived("the post is straight"),
      };
    },
  );

export const leanRules: readonly Rule[] = [
  rule("verticals.*.leansAlong.slant", "Lean of {} along its side, to the right for each mm of height", (reader, [id]) => ({
    formula: "r / v",
    inputs: [
      reader.at("r", "its middle stands this much to the right", `${leanPath(reader, id)}.right`),
      reader.at("v", "at this height", `${leanPath(reader, id)}.over`),
    ],
    origin: from("job", "posts: as found: leans"),
  })),
  rule("verticals.*.leansAlong.height", "Height above the datum at which the station of {} was read", (reader) => ({
    formula: "h",
    inputs: [reader.at("h", "height of the middle course, of two the lower", `courses.${middleCourse(reader.plan.courses).number}.height`)],
    origin: derived("the survey reads it at the middle cable"),
  })),
  shift("low", "lowest"),
  shift("high", "highest"),
  rule(
    "verticals.*.leansAlong.gap.widest",
    "Widest gap between the wall and {}, anywhere from the datum to the top of the guard",
    (reader, [id]) => gapWorking(reader, id, ["0", "H"], [reader.at("H", "height of the guard", "opening.guardHeight")]),
  ),
  rule("verticals.*.leansAlong.gap.narrowest", "Narrowest gap between the wall and {}, at a cable", (reader, [id]) => {
    const { courses } = reader.plan;
    const at = (symbol: string, course: string, number: number | undefined): Input =>
      reader.at(symbol, `height of the ${course} course`, `courses.${number}.height`);
    return gapWorking(reader, id, ["h1", "h2"], [at("h1", "lowest", courses[0]?.number), at("h2", "highest", courses.at(-1)?.number)]);
  }),
];

/** The gap at two heights; the wall is plumb, so one of them is the widest, the other the narrowest. */
function gapWorking(reader: Reader, id: string | undefined, [low, high]: readonly [string, string], heights: readonly Input[]): Working {
  const { plan, at } = reader;
  const place = must(
    guardEnds(plan.job).find((one) => endPostOf(plan, one)?.id === id),
    `the wall beside ${id}`,
  );
  const [sign, pick] = [place.which === "first" ? "+" : "-", low === "0" ? "max" : "min"];
  const gap = (height: string): string => `g ${sign} l * (${height} - m)`;
  return {
    formula: `nearest(${pick}(${gap(low)}, ${gap(high)}), 0.000001)`,
    inputs: [
      at("g", "gap between wall and end post, at the height of the station", `${guardEndPath(place.id)}.gap`),
      at("l", "lean to the right for each mm of height", `verticals.${id}.leansAlong.slant`),
      at("m", "height at which its station was read", `verticals.${id}.leansAlong.height`),
      ...heights,
    ],
    origin: derived("the wall is plumb"),
  };
}

/** start, end; A-end and A-start at what interrupts the guard behind side A. */
export const guardEndPath = (id: string): string => {
  const [side = "", end] = id.split("-");
  return end === undefined ? `job.${id}` : `job.sides.${side}.interrupted.${end}`;
};

/** A bay beside a post that leans along its side: the longest of its courses, which is the lowest or the highest. */
export function longestFreeOf(
  { at }: Reader,
  { left, right, inputs }: { readonly left: Vertical; readonly right: Vertical; readonly inputs: readonly Input[] },
): Working {
  const shifts = (["low", "high"] as const).map((which) => {
    const [symbol, course] = which === "low" ? ["b", "lowest"] : ["t", "highest"];
    const of = (nth: string, { id, leansAlong }: Vertical): readonly Input[] =>
      leansAlong === undefined
        ? []
        : [at(`${symbol}${nth}`, `${id} to the right of its station at the ${course} course`, `verticals.${id}.leansAlong.${which}`)];
    const [before, after] = [of("1", left), of("2", right)];
    return { term: `${after[0]?.symbol ?? "0"} - ${before[0]?.symbol ?? "0"}`, inputs: [...before, ...after] };
  });
  return {
    formula: `nearest(x2 - w2 / 2 - (x1 + w1 / 2) + max(${shifts.map(({ term }) => term).join(", ")}, 0), 0.000001)`,
    inputs: [...inputs, ...shifts.flatMap((one) => one.inputs)],
    origin: derived("stations as measured, and the lean of the posts"),
  };
}
