// What does an order of tightening ask, which bound does no order escape, and how far do plain passes come?
import { searchOrder } from "../mechanics/order-search.ts";
import { COMPENSATED, type PassKind, PLAIN, tightenInPasses } from "../mechanics/sequence.ts";
import { centreOutwards } from "../mechanics/sequence-order.ts";
import { type CableSystem, cableSystem, LOOSE, takeUpsFor, tensionsFor } from "../mechanics/sequence-solve.ts";
import { movementRows } from "../plan/movement.ts";
import type { OrderFigures } from "../plan/readings.ts";
import type { Newton } from "../units/quantity.ts";
import { firstWithin } from "./lists.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Input, Working } from "./trace.ts";

/** The cables of one run by themselves, as its order is searched: the others of the frame stand as they are. */
interface Alone {
  readonly system: CableSystem;
  readonly target: readonly Newton[];
}

function alone(reader: Reader, run: string): Alone {
  const { group, first } = reader.group(run);
  const part = <T>(list: readonly T[]): readonly T[] => list.slice(first, first + group.courses.length);
  const system = cableSystem({ flexibility: part(group.flexibility).map(part), cableFlexibility: part(group.cableFlexibility) });
  return { system, target: group.courses.map(() => reader.run(run).tension.target) };
}

const targetOf = (reader: Reader, run: string): Input => reader.at("T", "target at the nut", `runs.${run}.tension.target`);

const simulation = derived("each cable keeps its take-up: one pass after the other, cable by cable");

type Kept = "recommended" | "customary";

const orderWords: Readonly<Record<Kept, string>> = {
  recommended: "the order of the plan",
  customary: "the customary order, from the middle outward",
};

const inOrder = ({ order }: OrderFigures): string => `courses ${order.join(", ")}`;

function highestOf(reader: Reader, run: string, kept: Kept): Working {
  const figures = reader.tightening(run)[kept];
  const { system, target } = alone(reader, run);
  const steps = tightenInPasses(system, { order: figures.order.map((course) => course - 1), target }, [COMPENSATED]);
  return {
    formula: "max(r) / T",
    inputs: [
      given(
        "r",
        `reading of each step of one compensated pass over this run alone: ${inOrder(figures)}`,
        steps.map(({ reading }) => reading),
        "force",
        simulation,
      ),
      targetOf(reader, run),
    ],
    origin: derived("ratio"),
  };
}

function leastOf(reader: Reader, run: string, kept: Kept): Working {
  const figures = reader.tightening(run)[kept];
  const { system, target } = alone(reader, run);
  const steps = tightenInPasses(system, { order: figures.order.map((course) => course - 1), target }, [PLAIN]);
  return {
    formula: "min(t) / T",
    inputs: [
      given(
        "t",
        `tension of each cable, from the lowest, after one plain pass over this run alone: ${inOrder(figures)}`,
        must(steps.at(-1), "step").tensions,
        "force",
        simulation,
      ),
      targetOf(reader, run),
    ],
    origin: derived("ratio"),
  };
}

/** The search goes through all sets of so many cables; with more it has a bound that is quick to find. */
const CABLES_bySets_max = 12;

function bound(reader: Reader, [run = ""]: readonly string[]): Working {
  const { system, target } = alone(reader, run);
  const takeUps = takeUpsFor(system, target);
  return target.length <= CABLES_bySets_max ? boundBySets(reader, run, system, takeUps) : quickBound(reader, run, system, takeUps);
}

function boundBySets(reader: Reader, run: string, system: CableSystem, takeUps: readonly number[]): Working {
  return {
    formula: "least(M, u) / T",
    inputs: [
      given(
        "M",
        "what each cable gives way when one of them pulls with 1 N, its own stretch included: row by row from the lowest",
        [...system.coupling],
        "flexibility",
        derived("plane frame by direct stiffness; Hooke's law"),
      ),
      given("u", "take-up of each cable when all stand at the target: M T", takeUps, "length", derived("the end of a compensated pass")),
      targetOf(reader, run),
    ],
    functions: {
      least: {
        means:
          "least highest reading of all n! orders. What a step reads depends only on which cables are tight then, not on their order; so for " +
          "each set S of cables best(S) = least, over its cable k pulled last, of the greater of best(S without k) and the reading of k when " +
          "just the cables of S stand at their take-ups; best of all cables is the bound",
        of: (gives, ends) => leastOfOrders({ count: system.count, coupling: new Float64Array([gives ?? []].flat()) }, [ends ?? []].flat()),
      },
    },
    origin: derived("shortest way through the sets of cables, its longest step as its length: no order of all n! is lower"),
  };
}

/** By the plain solution of each set, since the search itself takes a shorter way. */
function leastOfOrders(system: CableSystem, takeUps: readonly number[]): number {
  const best: number[] = [0];
  for (let set = 1; set < 2 ** takeUps.length; set++) {
    const isIn = (cable: number): boolean => ((set >> cable) & 1) === 1;
    const tensions = tensionsFor(
      system,
      takeUps.map((takeUp, cable) => (isIn(cable) ? takeUp : LOOSE)),
    );
    const ways = tensions.flatMap((reading, cable) => (isIn(cable) ? [Math.max(reading, best[set & ~(1 << cable)] ?? 0)] : []));
    best.push(Math.min(...ways));
  }
  return best.at(-1) ?? 0;
}

function quickBound(reader: Reader, run: string, system: CableSystem, takeUps: readonly number[]): Working {
  const first = takeUps.map((_, own) =>
    must(
      tensionsFor(
        system,
        takeUps.map((takeUp, cable) => (cable === own ? takeUp : LOOSE)),
      )[own],
      "reading",
    ),
  );
  const lastButOne = takeUps.map((_, left) =>
    Math.min(...tensionsFor(system, takeUps.with(left, LOOSE)).filter((__, cable) => cable !== left)),
  );
  return {
    formula: "max(T, min(a), min(b)) / T",
    inputs: [
      given("a", "reading of each cable if it is the first to be pulled, from the lowest", first, "force", simulation),
      given("b", "lowest reading of the last but one if each cable is the last to be pulled", lastButOne, "force", simulation),
      targetOf(reader, run),
    ],
    origin: derived(
      "a lower bound: some cable is pulled first and some last but one, and the last reads its target; more than 12 cables are not searched through",
    ),
  };
}

const NAMED_orders = 4;

function ordersTried(reader: Reader, [run = ""]: readonly string[]): Working {
  const { group, first } = reader.group(run);
  const part = <T>(list: readonly T[]): readonly T[] => list.slice(first, first + group.courses.length);
  const movement = movementRows(group, reader.plan.job).map(({ perPull, limit }) => ({ perPull: part(perPull), limit }));
  const tried = searchOrder({ ...alone(reader, run), movement }).ordersTried;
  const bySets = group.courses.length <= CABLES_bySets_max;
  return {
    formula: "n + s + x",
    inputs: [
      given("n", "named orders: from the bottom up, the top down, the middle outward, the outside in", NAMED_orders, "count"),
      given(
        "s",
        bySets ? "the order that the search over all sets of cables finds" : "the order that takes the lowest reading at each step",
        1,
        "count",
      ),
      given(
        "x",
        "orders with two cables exchanged, from the best of these on, until no exchange is better: counted by searching again",
        tried - NAMED_orders - 1,
        "count",
      ),
    ],
    origin: derived(bySets ? "counted; the search over sets answers for all n! orders besides" : "counted"),
  };
}

/** Plain passes over all cables of a frame in the customary order, and the worst difference that each leaves. */
function plainErrors(reader: Reader, run: string, count: number): readonly number[] {
  const { group } = reader.group(run);
  const courses = group.courses.length;
  const order = group.runs.flatMap((_, index) => centreOutwards(courses).map((cable) => index * courses + cable));
  const target = group.runs.flatMap(({ id }) => group.courses.map(() => reader.run(id).tension.target));
  const passes = Array.from({ length: count }, (): PassKind => PLAIN);
  const steps = tightenInPasses(cableSystem(group), { order, target }, passes);
  return passes.map((_, pass) => {
    const { tensions } = must(steps[(pass + 1) * order.length - 1], "step");
    return Math.max(...tensions.map((tension, cable) => Math.abs(tension / must(target[cable], "target") - 1)));
  });
}

const passesTo = (percent: 5 | 10): Rule =>
  rule(
    `tightening.*.plain.passes_${percent}`,
    `Plain passes in the customary order until every cable on the frame of run {} is within ${percent} % of its target`,
    (reader, [run = ""]) => {
      const count = must(reader.tightening(run).plain[`passes_${percent}`] ?? undefined, "count of passes");
      return {
        formula: "first(e, q)",
        inputs: [
          given(
            "e",
            "worst difference from the target after each whole pass, as a share of it",
            plainErrors(reader, run, count),
            "share",
            simulation,
          ),
          given("q", "difference that is let pass", percent / 100, "share", from("practice", "words of the sheet")),
        ],
        functions: { first: firstWithin },
        origin: derived("passes made one after the other until the first that is not above"),
      };
    },
  );

export const searchRules: readonly Rule[] = [
  ...(["recommended", "customary"] as const).flatMap((kept) => [
    rule(
      `tightening.*.${kept}.highest_overTarget`,
      `Highest reading of run {} over its target in ${orderWords[kept]}`,
      (reader, [run = ""]) => highestOf(reader, run, kept),
    ),
    rule(
      `tightening.*.${kept}.leastAfterPlain_overTarget`,
      `Least tension of run {} over its target after one plain pass in ${orderWords[kept]}`,
      (reader, [run = ""]) => leastOf(reader, run, kept),
    ),
  ]),
  rule("tightening.*.bound", "Highest reading over the target that no order of run {} escapes", bound),
  rule("tightening.*.ordersTried", "Orders of run {} whose figures were computed one by one", ordersTried),
  passesTo(10),
  passesTo(5),
];
