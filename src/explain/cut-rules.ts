// How long is each piece that is cut, how many are there, and what does the cut plan buy and leave?
import { cutLumber, type RailGroup, railGroups } from "../plan/cuts.ts";
import type { Plan, Vertical } from "../plan/plan.ts";
import type { CutPlan } from "../plan/purchase.ts";
import { leftEndOf, rightEndOf } from "./mouths.ts";
import { count, indexOf } from "./order-rules.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

const groupNamed = ({ plan }: Reader, mark: string | undefined): RailGroup =>
  must(
    railGroups(plan, plan.job).find((one) => one.mark === mark),
    `rail ${mark}`,
  );

/** Where the search ended before a proof, the bound beside its answer: found by searching once more. */
function unprovenBound(plan: Plan, { sectionName, bars }: CutPlan): Working {
  const lengths = bars.flatMap(({ pieces }) => pieces.map(({ length }) => length));
  const { kerf, endTrim } = plan.job.stock;
  return {
    formula: "least(l, k, e)",
    inputs: [
      given("l", `length of each piece of ${sectionName}`, lengths, "length"),
      given("k", "width of a cut", kerf.value, "length", kerf),
      given("e", "trimmed off each end of a stock piece", endTrim.value, "length", endTrim),
    ],
    functions: {
      least: {
        means:
          "greatest of three lower bounds: the length of all pieces with their cuts, the bars that long pieces need of their own, and the linear programme over all patterns, each brought up to a total that whole stock pieces can have",
        of: () => must(cutLumber(plan, plan.job).value?.cutPlans.find((one) => one.sectionName === sectionName)?.bought_bound, "bound"),
      },
    },
    origin: from("martello-toth", "section 8.3.2; linear programme over patterns: gilmore-gomory"),
  };
}

/** An end of a rail along its side, as a term of a formula. */
interface End {
  readonly term: string;
  readonly inputs: readonly Input[];
}

/** Between its posts for a bottom rail; over them for a top rail, or to the end of the side, where a mitre goes half the rail's width on. */
function railLength(reader: Reader, mark: string | undefined): Working {
  const { parts, rail } = groupNamed(reader, mark);
  const [first] = parts;
  const { at, plan } = reader;
  const { sideId, fromId, toId } = first;
  const slope = plan.sides.find(({ id }) => id === sideId)?.slope ?? 0;
  const raked = (working: Working): Working =>
    slope === 0
      ? working
      : {
          ...working,
          formula: `(${working.formula}) / cos(s) + d * tan(abs(s))`,
          inputs: [
            ...working.inputs,
            at("s", "slope of the side", `sides.${sideId}.slope`),
            at(
              "d",
              "depth of the rail, by which two plumb cuts lie farther apart",
              `job.frame.${rail === plan.job.frame.topRail ? "topRail" : "bottomRail"}.depth`,
            ),
          ],
        };
  const alike = parts.length === 1 ? "" : `, side ${sideId}; the others with this mark differ by less than a tape shows`;
  if (first.use.startsWith("bottom rail")) {
    const post = (id: string | null): Vertical =>
      must(
        plan.verticals.find((one) => one.id === id),
        `post ${id}`,
      );
    const [low, high] = [leftEndOf(reader, post(fromId), sideId), rightEndOf(reader, post(toId))];
    const [bevels, cut] = bevelled(reader, [post(fromId), post(toId)]);
    return raked({
      formula: `${high.term} - ${low.term}${bevels}`,
      inputs: [...low.inputs, ...high.inputs, ...cut],
      origin: derived(
        `the clear distance between two posts${bevels === "" ? "" : ", to the long points of the ends at turned posts"}${alike}`,
      ),
    });
  }
  const [left, right] = [leftEnd(reader, first), rightEnd(reader, first)];
  const mitred = [left, right].some(({ term }) => term.includes("tan"));
  return raked({
    formula: `${right.term} - ${left.term}`,
    inputs: [...left.inputs, ...right.inputs, ...(mitred ? [at("w", "width of the top rail", "job.frame.topRail.width")] : [])],
    origin: derived("difference of stations along the side; a mitre halves the turn"),
  });
}

/** What the ends of a bottom rail add that stand against one turned post at a corner. */
function bevelled({ at }: Reader, posts: readonly Vertical[]): readonly [term: string, inputs: readonly Input[]] {
  const turned = posts.filter(({ corner }) => corner !== undefined && corner.twist !== 0);
  if (turned.length === 0) return ["", []];
  const twists = turned.map(({ id }, nth) => at(`b${nth + 1}`, `turn of ${id} from square to the side`, `verticals.${id}.corner.twist`));
  const terms = twists.map(({ symbol }) => ` + r / 2 * tan(abs(${symbol}))`);
  return [terms.join(""), [...twists, at("r", "width of the bottom rail", "job.frame.bottomRail.width")]];
}

type Part = RailGroup["parts"][0];

function leftEnd({ at, plan }: Reader, { sideId, fromId }: Part): End {
  if (fromId !== null) return { term: "x1", inputs: [at("x1", `joint over ${fromId}`, `verticals.${fromId}.station`)] };
  const index = plan.sides.findIndex(({ id }) => id === sideId);
  const before = plan.sides[index - 1];
  if (before !== undefined && before.turn === 0 && plan.sides[index]?.begins === null)
    return { term: "z0", inputs: [given("z0", `plumb joint with the rail of side ${before.id}`, 0, "length")] };
  if (before === undefined || plan.sides[index]?.begins !== null)
    return { term: "x1", inputs: [at("x1", "outer face of the first post", `sides.${sideId}.startsAt`)] };
  return {
    term: "(0 - w / 2 * tan(abs(a1) / 2))",
    inputs: [at("a1", `turn of the guard behind side ${before.id}`, `sides.${before.id}.turn`)],
  };
}

function rightEnd({ at, plan }: Reader, { sideId, toId }: Part): End {
  if (toId !== null) return { term: "x2", inputs: [at("x2", `joint over ${toId}`, `verticals.${toId}.station`)] };
  const side = must(
    plan.sides.find(({ id }) => id === sideId),
    `side ${sideId}`,
  );
  if (side.ends !== null || side.turn === null)
    return { term: "x2", inputs: [at("x2", "outer face of the last post", `sides.${sideId}.endsAt`)] };
  if (side.turn === 0) return { term: "L", inputs: [at("L", `length of side ${sideId}`, `sides.${sideId}.length`)] };
  return {
    term: "(L + w / 2 * tan(abs(a2) / 2))",
    inputs: [
      at("L", `length of side ${sideId}`, `sides.${sideId}.length`),
      at("a2", `turn of the guard behind side ${sideId}`, `sides.${sideId}.turn`),
    ],
  };
}

function pieces(reader: Reader, [mark]: readonly string[]): Working {
  const { plan } = reader;
  const onRake = rakeOf(mark);
  const counted = (kind: "post" | "spacer"): number =>
    plan.verticals.filter((one) => one.kind === kind && (onRake === null ? one.slope === 0 : one.sideId === onRake)).length;
  const kind = kindOf(mark);
  if (mark === "SL") return count("n", ["n", "posts in sleeves", counted("post")]);
  if (kind !== null) return count("n", ["n", `${kind}s of ${onRake === null ? "the level sides" : `side ${onRake}`}`, counted(kind)]);
  const { parts } = groupNamed(reader, mark);
  const sides = [...new Set(parts.map(({ sideId }) => sideId))];
  return count(
    `${sides.map((_, nth) => `n${nth + 1}`).join(" + ")}`,
    ...sides.map((id, nth) => {
      const own = parts.filter(({ sideId }) => sideId === id).length;
      return [`n${nth + 1}`, `parts of side ${id} whose lengths a tape cannot tell apart`, own] as const;
    }),
  );
}

/** PO and SP are the posts and spacers of the level sides, PO-B and SP-B those of side B, which slopes. */
const rakeOf = (mark: string | undefined): string | null => /^(?:PO|SP)-(\w)$/.exec(mark ?? "")?.[1] ?? null;
const kindOf = (mark: string | undefined): "post" | "spacer" | null =>
  /^PO\b/.test(mark ?? "") ? "post" : /^SP\b/.test(mark ?? "") ? "spacer" : null;

/** Plumb, with the long edge that a cut along the slope leaves. */
function onRakeLength({ at }: Reader, kind: "post" | "spacer", id: string): Working {
  const common = [at("s", `slope of side ${id}`, `rakes.${id}.slope`), at("t", "underside of the top rail", `rakes.${id}.opening.top`)];
  if (kind === "post")
    return {
      formula: "b + t + w / 2 * tan(abs(s))",
      inputs: [
        ...common,
        at("b", "post below the datum on rakes", "job.frame.onRakes.postBelow"),
        at("w", "post along the side", "job.posts.section.along"),
      ],
      origin: derived("the post stands plumb, its top follows the slope"),
    };
  return {
    formula: "t - b + w * tan(abs(s))",
    inputs: [
      ...common,
      at("b", "lower edge of the opening", `rakes.${id}.opening.bottom`),
      at("w", "spacer along the side", "job.spacers.section.along"),
    ],
    origin: derived("the spacer stands plumb, both its ends follow the slope"),
  };
}

export const cutRules: readonly Rule[] = [
  rule("cuts.*.length", "Length of each piece {} to cut", (reader, [mark]) => {
    const { at } = reader;
    const [kind, onRake] = [kindOf(mark), rakeOf(mark)];
    if (kind !== null && onRake !== null) return onRakeLength(reader, kind, onRake);
    if (kind === "post")
      return {
        formula: "b + t",
        inputs: [at("b", "post below the datum", "job.posts.belowDatum"), at("t", "underside of the top rail", "opening.top")],
        origin: derived("sum of lengths"),
      };
    if (mark === "SL")
      return {
        formula: "t",
        inputs: [at("t", "underside of the top rail", "opening.top")],
        origin: derived("from the datum to under the top rail"),
      };
    if (kind === "spacer")
      return {
        formula: "t - b",
        inputs: [at("t", "underside of the top rail", "opening.top"), at("b", "lower edge of the opening", "opening.bottom")],
        origin: derived("the opening"),
      };
    return railLength(reader, mark);
  }),
  rule("cuts.*.count", "Pieces {} to cut", pieces),
  rule("cutPlans.*.bought_bound", "Length of stock below which no cut plan {} buys", ({ all, plan }, [key]) => {
    const own = plan.cutPlans[indexOf(key)];
    if (own === undefined) return null;
    if (!own.proven) return unprovenBound(plan, own);
    return {
      formula: "sum(l)",
      inputs: [
        all(
          "l",
          "each stock piece of this cut plan, of which the search has proved that none buys less",
          own.bars.map((_, nth) => `cutPlans${key}.bars[${nth}].stockLength`),
        ),
      ],
      origin: from("gilmore-gomory", "search over all patterns of cutting"),
    };
  }),
  rule("cutPlans.*.bought", "Length of stock bought in cut plan {}", ({ all, plan }, [key]) => ({
    formula: "sum(l)",
    inputs: [
      all(
        "l",
        "each stock piece",
        (plan.cutPlans[indexOf(key)]?.bars ?? []).map((_, nth) => `cutPlans${key}.bars[${nth}].stockLength`),
      ),
    ],
    origin: derived("sum of lengths"),
  })),
  rule("cutPlans.*.used", "Length of the parts in cut plan {}", ({ all, plan }, [key]) => ({
    formula: "sum(l)",
    inputs: [
      all(
        "l",
        "each part",
        (plan.cutPlans[indexOf(key)]?.bars ?? []).flatMap(({ pieces }, bar) =>
          pieces.map((_, nth) => `cutPlans${key}.bars[${bar}].pieces[${nth}].length`),
        ),
      ),
    ],
    origin: derived("sum of lengths"),
  })),
  rule("cutPlans.*.bars.*.offcut", "What is left over of stock piece {1} in cut plan {0}", ({ all, at, plan }, [key, bar]) => {
    const pieces = plan.cutPlans[indexOf(key)]?.bars[indexOf(bar)]?.pieces ?? [];
    return {
      formula: "max(0, S - 2 * e - sum(l) - n * k)",
      inputs: [
        at("S", "stock length", `cutPlans${key}.bars${bar}.stockLength`),
        at("e", "trimmed off each end", "job.stock.endTrim"),
        all(
          "l",
          "each part",
          pieces.map((_, nth) => `cutPlans${key}.bars${bar}.pieces[${nth}].length`),
        ),
        given("n", "cuts", pieces.length, "count"),
        at("k", "width of a cut", "job.stock.kerf"),
      ],
      origin: derived("sum of lengths"),
    };
  }),
];
