// What may a washer press with, by the wood under it?
import { bearingOf } from "../plan/check-bearing.ts";
import { counterboreDepth, endBore } from "../plan/end-fitting.ts";
import type { RunEnd } from "../plan/plan.ts";
import { from, given, type Reader } from "./reader.ts";
import type { Working } from "./trace.ts";

const endOf = (reader: Reader, rest: string): RunEnd => {
  const [run = "", post] = rest.split("-");
  const { left, right } = reader.run(run);
  return left.postId === post ? left : right;
};

/** `rest`: run and post, R1-P1. */
export function bearingLimit(reader: Reader, rest: string): Working {
  const { at, plan } = reader;
  const end = endOf(reader, rest);
  const isSunk = counterboreDepth(end, plan.job) > 0;
  const { allowable, byLength, seat, capacity } = bearingOf(end, plan, plan.job);
  const washer = at("D", "diameter of the washer", `job.fittings.${end.kind === "stud" ? "stud" : "grip"}.washerDiameter`);
  return {
    formula: "Fc * C_b * pi / 4 * (D ^ 2 - d ^ 2)",
    inputs: [
      given("Fc", "bearing across the grain of the wood of the post, with its factors", allowable.value, "stress", allowable),
      given("C_b", "factor of a short bearing, 1 near the end of the post", byLength, "share", from("nds-2018", "3.10.4")),
      seat === washer.value ? washer : given("D", "as much of the washer as lies round the bore within the post", seat, "length"),
      isSunk
        ? at("d", "counterbore below it", "job.fittings.grip.counterbore")
        : given("d", "bore below it", endBore(end, plan.job), "length"),
    ],
    origin: from(capacity.source, capacity.where),
  };
}
