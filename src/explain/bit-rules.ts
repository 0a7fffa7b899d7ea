// How many holes does each bit bore, and how long must it be?
import { reachOf, SLEEVE_USE, sleeveHoles, useOf, WASHER_HOLE } from "../plan/bores.ts";
import type { Bore } from "../plan/plan.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";

/** One hole: the places of its depth and its diameter. */
interface User {
  readonly bore: Bore;
  readonly path: string;
  readonly size: string;
}

/** The holes that a row of the list of bits counts. */
function usersOf({ plan }: Reader, key: string | undefined): readonly User[] {
  const bit = must(plan.bits[Number(/\d+/.exec(key ?? "")?.[0])], `bit ${key}`);
  if (bit.use === SLEEVE_USE) {
    const own = plan.bores.filter(({ sleeveHole }) => sleeveHole === bit.diameter);
    return own.flatMap((bore) =>
      new Array(sleeveHoles(bore)).fill({ bore, path: "job.posts.sleeve.wall", size: `bores.${bore.mark}.sleeveHole` }),
    );
  }
  if (bit.use === "counterbore" || bit.use === WASHER_HOLE) {
    return plan.bores.flatMap((bore) => {
      const place = `bores.${bore.mark}.counterbore`;
      return bore.counterbore?.diameter === bit.diameter ? [{ bore, path: `${place}.depth`, size: `${place}.diameter` }] : [];
    });
  }
  return plan.bores.flatMap((bore) =>
    bore.diameter === bit.diameter && useOf(bore) === bit.use
      ? [{ bore, path: `bores.${bore.mark}.drilledLength`, size: `bores.${bore.mark}.diameter` }]
      : [],
  );
}

export const bitRules: readonly Rule[] = [
  rule("bits.*.diameter", "Diameter of bit {} in the list", (reader, [key]) => ({
    formula: "max(d)",
    inputs: [
      reader.all(
        "d",
        "diameter of each hole of this use and size",
        usersOf(reader, key).map(({ size }) => size),
      ),
    ],
    origin: derived("one bit for each diameter and use"),
  })),
  rule("bits.*.holes", "Holes of bit {} in the list", (reader, [key]) => ({
    formula: "n",
    inputs: [given("n", "bores of this size and use", usersOf(reader, key).length, "count")],
    origin: derived("counted"),
  })),
  rule("bits.*.deepest", "Deepest hole of bit {} in the list", (reader, [key]) => ({
    formula: "max(l)",
    inputs: [
      reader.all(
        "l",
        "depth of each hole",
        usersOf(reader, key).map(({ path }) => path),
      ),
    ],
    origin: derived("the deepest decides"),
  })),
  rule("bits.*.bitLength_min", "Least length of bit {} in the list", (reader, [key]) => ({
    formula: "up(max(l) + e, s)",
    inputs: [
      given(
        "l",
        "depth of each hole, and the guide block through which one at an angle is begun",
        usersOf(reader, key).map(({ path, bore }) => reachOf(bore, reader.number(path))),
        "length",
        from("practice", "a guide block as thick as lumber of 2 in"),
      ),
      given("e", "chuck's grip and start", BIT_EXTRA_mm, "length", from("practice", "what a bit needs besides the hole")),
      given(
        "s",
        "step in which bits are sold",
        reader.plan.job.units === "inch" ? 12.7 : 10,
        "length",
        from("practice", "lengths of bits"),
      ),
    ],
    origin: derived("sum of lengths"),
    rounding: "up to the next length that is sold, so that the bit comes through",
  })),
];

/** As the plan counts it. */
const BIT_EXTRA_mm = 50.8;
