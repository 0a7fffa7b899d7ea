// How many pieces are bought and cut, with which spares, and how much lumber is that?
import type { OrderLine } from "../plan/purchase.ts";
import { derived, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const indexOf = (key: string | undefined): number => Number(/\d+/.exec(key ?? "")?.[0]);
const lineAt = ({ plan }: Reader, key: string | undefined): OrderLine => must(plan.order[indexOf(key)], `order line ${key}`);
const counted = derived("counted");

const count = (formula: string, ...parts: readonly (readonly [symbol: string, what: string, value: number])[]): Working => ({
  formula,
  inputs: parts.map(([symbol, what, value]) => given(symbol, what, value, "count")),
  origin: counted,
});

/** What is needed of a line, spares left out. */
function net(reader: Reader, [key]: readonly string[]): Working | null {
  const { plan } = reader;
  const { item, group, pieceLength } = lineAt(reader, key);
  const ends = plan.runs.flatMap(({ left, right }) => [left, right]);
  const courses = ["N", "courses", plan.courses.length] as const;
  const studs = ["n", "stud ends of all runs", ends.filter(({ kind }) => kind === "stud").length] as const;
  const grips = ["n", "gripping ends of all runs", ends.filter(({ kind }) => kind === "grip").length] as const;
  if (item === "ready cable")
    return count("n * N", ["n", "runs of this length", plan.runs.filter(({ orderLength }) => orderLength === pieceLength).length], courses);
  if (item === "stud end for fitting on site") {
    const ready = plan.job.supply.kind === "ready" ? plan.runs.length : 0;
    return count("(n - r) * N", studs, ["r", "of them that come on ready cables", ready], courses);
  }
  if (item === "nut, stainless" || item === "washer, stainless, stud end" || item === "cap for a stud")
    return count("n * N", studs, courses);
  if (item === "gripping end" || item === "washer, stainless, gripping end" || item === "cap for a cut cable end")
    return count("n * N", grips, courses);
  if (item === "bushing, plastic") {
    const isTube = (id: string): boolean => (id.startsWith("P") ? plan.job.posts : plan.job.spacers).section.wall !== null;
    const bushed = plan.bores.filter(({ bushing }) => bushing);
    const tubes = bushed.filter(({ verticalId }) => isTube(verticalId)).length;
    return count(
      "2 * t + s",
      ["t", "bores with bushings in tubes, two walls each", tubes],
      ["s", "bores with a bushing in solid members", bushed.length - tubes],
    );
  }
  if (item === "isolating sleeve and washer, plastic") return count("2 * n * N", ["n", "runs, two ends each", plan.runs.length], courses);
  if (group === "lumber and tube") {
    const bars = plan.cutPlans.filter(({ sectionName }) => sectionName === item).flatMap((one) => one.bars);
    return count("n", [
      "n",
      "stock pieces of this length in the cut plan",
      bars.filter(({ stockLength }) => stockLength === pieceLength).length,
    ]);
  }
  return null;
}

const order: readonly Rule[] = [
  rule("order.*.net", "Pieces of order line {} that are needed", net),
  rule("order.*.spare", "Spare pieces of order line {}", (reader, [key]) => {
    const { group } = lineAt(reader, key);
    if (group !== "fittings" && group !== "bushings and washers") return count("z", ["z", "no spares of this kind", 0]);
    return {
      formula: "up(n * q, 1)",
      inputs: [reader.at("n", "pieces needed", `order${key}.net`), reader.at("q", "share of spares", "job.fittings.spareShare")],
      origin: derived("spares"),
      rounding: "up to a whole piece, since a missing one stops the work",
    };
  }),
  rule("order.*.quantity", "Pieces of order line {} to buy", ({ at }, [key]) => ({
    formula: "n + s",
    inputs: [at("n", "pieces needed", `order${key}.net`), at("s", "spares", `order${key}.spare`)],
    origin: derived("sum"),
  })),
  rule("orderTotal_cents", "Sum of the lines that have a price", ({ all, plan }) => {
    const priced = plan.order.flatMap(({ price_cents }, nth) => (price_cents === null ? [] : [nth]));
    return {
      formula: "dot(p, n)",
      inputs: [
        all(
          "p",
          "price of each line that has one",
          priced.map((nth) => `order[${nth}].price_cents`),
        ),
        all(
          "n",
          "pieces of each of these lines",
          priced.map((nth) => `order[${nth}].quantity`),
        ),
      ],
      origin: derived("sum"),
    };
  }),
];

const cuts: readonly Rule[] = [
  rule("cuts.*.length", "Length of each piece {} to cut", ({ at, plan }, [mark]) => {
    const use = must(
      plan.cuts.find((piece) => piece.mark === mark),
      `piece ${mark}`,
    ).use;
    if (use === "post")
      return {
        formula: "b + t",
        inputs: [at("b", "post below the datum", "job.posts.belowDatum"), at("t", "underside of the top rail", "opening.top")],
        origin: derived("sum of lengths"),
      };
    if (use === "spacer")
      return {
        formula: "t - b",
        inputs: [at("t", "underside of the top rail", "opening.top"), at("b", "lower edge of the opening", "opening.bottom")],
        origin: derived("the opening"),
      };
    return null;
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

export const orderRules: readonly Rule[] = [...order, ...cuts];
