// How many pieces are bought and cut, with which spares, and how much lumber is that?

import { BUSHING_TUBE, bushingTubeSize } from "../plan/bushing-tubes.ts";
import { BUSHING, bevelSize, isBevelled, isInTube, mouthsTurned, SPOOL, spoolsFor } from "../plan/buying.ts";
import { anchorItem, FACE_ITEMS } from "../plan/buying-eyes.ts";
import { isOnFace } from "../plan/face-end.ts";
import type { OrderLine } from "../plan/purchase.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

export const indexOf = (key: string | undefined): number => Number(/\d+/.exec(key ?? "")?.[0]);
const lineAt = ({ plan }: Reader, key: string | undefined): OrderLine => must(plan.order[indexOf(key)], `order line ${key}`);
const counted = derived("counted");

export const count = (formula: string, ...parts: readonly (readonly [symbol: string, what: string, value: number])[]): Working => ({
  formula,
  inputs: parts.map(([symbol, what, value]) => given(symbol, what, value, "count")),
  origin: counted,
});

function spools({ all, at, plan }: Reader): Working {
  return {
    formula: "spools(l, N, S)",
    inputs: [
      all(
        "l",
        "length to order for each run",
        plan.runs.map(({ id }) => `runs.${id}.orderLength`),
      ),
      given("N", "courses", plan.courses.length, "count"),
      at("S", "cable on a spool", "job.supply.spoolLength"),
    ],
    functions: {
      spools: {
        means: "fewest spools of S from which N pieces of each of these lengths can be cut, none of them joined; found by cutting again",
        of: (lengths, pieces, spool) =>
          spoolsFor(
            [lengths ?? []].flat().map((length, nth) => ({ mark: `${nth}`, length, count: Number(pieces) })),
            Number(spool),
          ),
      },
    },
    origin: from("gilmore-gomory", "search over all patterns of cutting"),
  };
}

/** What is needed of a line, spares left out. */
function net(reader: Reader, [key]: readonly string[]): Working | null {
  const { plan } = reader;
  const { item, group, size, pieceLength } = lineAt(reader, key);
  const ends = plan.runs.flatMap(({ left, right }) => [left, right]);
  const courses = ["N", "courses", plan.courses.length] as const;
  const studs = ["n", "stud ends of all runs", ends.filter(({ kind }) => kind === "stud").length] as const;
  const grips = ["n", "gripping ends of all runs", ends.filter(({ kind }) => kind === "grip").length] as const;
  if (item === "ready cable")
    return count("n * N", ["n", "runs of this length", plan.runs.filter(({ orderLength }) => orderLength === pieceLength).length], courses);
  if (item === "bevelled washer, stainless") {
    const own = plan.bores.filter((bore) => isBevelled(bore) && size === bevelSize(bore, plan.job)).length;
    return count("n", ["n", "end bores at this angle", own]);
  }
  if (item === "stud end for fitting on site") {
    const ready = plan.job.supply.kind === "ready" ? plan.runs.length : 0;
    return count("(n - r) * N", studs, ["r", "of them that come on ready cables", ready], courses);
  }
  if (item === "nut, stainless" || item === "washer, stainless, stud end" || item === "cap for a stud")
    return count("n * N", studs, courses);
  if (item === "gripping end" || item === "washer, stainless, gripping end" || item === "cap for a cut cable end")
    return count("n * N", grips, courses);
  if (item === FACE_ITEMS.fork) return count("n * N", ["n", "ends of all runs at an eye", ends.filter(isOnFace).length], courses);
  if (Object.values<string>(FACE_ITEMS).includes(item))
    return count("n * N", ["n", "ends of all runs on the faces of posts", ends.filter(({ kind }) => kind === "face").length], courses);
  const anchored = ends.find(({ kind, postId }) => kind === "anchor" && item === anchorItem(postId));
  if (anchored !== undefined) return count("N", courses);
  if (item === BUSHING_TUBE)
    return count("n", [
      "n",
      "bores with bushings in wood, of this length",
      plan.bores.filter((bore) => bore.bushing && bushingTubeSize(bore, plan.job) === size).length,
    ]);
  if (item === BUSHING) {
    const bushed = plan.bores.filter(({ bushing }) => bushing);
    const tubes = bushed.filter((bore) => isInTube(bore, plan.job)).length;
    const twice = bushed.filter((bore) => !isInTube(bore, plan.job) && mouthsTurned(bore, plan, plan.job) > 1).length;
    return count(
      "2 * t + s + m",
      ["m", "solid posts in which the cable turns at both mouths of its bore: one more each", twice],
      ["t", "bores with bushings in tubes, two walls each", tubes],
      ["s", "bores with a bushing in solid members", bushed.length - tubes],
    );
  }
  if (item === "isolating sleeve and washer, plastic")
    return count("n * N", ["n", "ends of all runs behind their posts", ends.filter((end) => !isOnFace(end)).length], courses);
  if (item === SPOOL) return spools(reader);
  if (group === "care")
    return { ...count("n", ["n", "one of them for a guard", 1]), origin: from("practice", "what goes on threads, strand and bores") };
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

export const orderRules: readonly Rule[] = order;
