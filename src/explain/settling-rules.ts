// What do drying posts and a strand that beds in change, and what is turned at the next visit?
import { isOnFace } from "../plan/face-end.ts";
import { derived, from, given, must, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const shrinkage =
  (end: "left" | "right"): Rule["explain"] =>
  ({ at, plan, run: named }: Reader, [run = ""]): Working => {
    const climate = must(
      plan.climate.find(({ runId }) => runId === run),
      `climate of run ${run}`,
    );
    if (climate.wood === null)
      return { formula: "z", inputs: [given("z", "metal does not dry", 0, "length")], origin: derived("metal posts") };
    if (isOnFace(named(run)[end]))
      return {
        formula: "z",
        inputs: [given("z", "a screw in the face holds about the middle of its post, which does not move", 0, "length")],
        origin: derived("an end on the face"),
      };
    const { name, changeShare } = climate.wood;
    const common = [
      at(
        "D",
        "wood of the post along the side",
        `verticals.${named(run)[end].postId}.${plan.job.posts.sleeve === null ? "along" : "core.along"}`,
      ),
      at("M1", "moisture when the cables are fitted", "job.site.moistureAtFitting_percent"),
      at("M2", "moisture in service", "job.site.moistureInService_percent"),
    ];
    return {
      formula: changeShare !== null ? "max(0, D * C * (M1 - M2))" : "max(0, D * (M1 - M2) / (30 / (S / 100) - 30 + M1))",
      inputs: [
        ...common,
        changeShare !== null
          ? at("C", `change of ${name} per percent of moisture, tangential`, `climate.${run}.wood.changeShare`)
          : at("S", `shrinkage of ${name} from green to oven-dry, tangential`, `climate.${run}.wood.shrinkage_percent`),
      ],
      origin: from("wood-handbook", "13-2 within 6 to 14 % of moisture, 13-3 outside"),
    };
  };

export const settlingRules: readonly Rule[] = [
  ...(["left", "right"] as const).map((end) =>
    rule(`climate.*.shrinkage.${end}`, `How much the ${end}-hand end post of run {} shrinks along the cable as it dries`, shrinkage(end)),
  ),
  rule("climate.*.shrinkage.closing", "How much nearer the anchors of run {} come as the posts dry", ({ at }, [run]) => ({
    formula: "d1 / 2 + d2 / 2",
    inputs: [
      at(
        "d1",
        "shrinkage of the left-hand end post; it shrinks to its middle, so half of it moves the anchor",
        `climate.${run}.shrinkage.left`,
      ),
      at("d2", "the same of the right-hand one", `climate.${run}.shrinkage.right`),
    ],
    origin: derived("sum of lengths"),
  })),
  rule("climate.*.bedding", "How much longer the strand of run {} becomes after the first tightening", ({ at }, [run]) => ({
    formula: "e * L",
    inputs: [at("e", "share of the length", `climate.${run}.beddingShare`), at("L", "length of the run", `runs.${run}.pathLength`)],
    origin: from("en-1993-1-11", "3.2.2(3), note 1"),
  })),
  rule("climate.*.visit.travelPerEnd", "Travel of each nut of run {} at the next visit", ({ at, run: named }, [run = ""]) => ({
    formula: "(c + b) / n",
    inputs: [
      at("c", "how much nearer the anchors come as the posts dry", `climate.${run}.shrinkage.closing`),
      at("b", "bedding-in of the strand", `climate.${run}.bedding`),
      given("n", "nuts that are pulled", [named(run).left, named(run).right].filter(({ pulls }) => pulls).length, "count"),
    ],
    origin: derived("all cables brought back: the frame then stands as before"),
  })),
  rule("climate.*.visit.turnsPerEnd", "Turns of each nut of run {} at the next visit", ({ at }, [run]) => ({
    formula: "t / p",
    inputs: [at("t", "travel", `climate.${run}.visit.travelPerEnd`), at("p", "pitch of the thread", "job.fittings.stud.pitch")],
    origin: derived("lead of a single-start thread"),
  })),
  rule("climate.*.visit.months", "Months from the fitting of run {} to the next visit", ({ at }) => ({
    formula: "m",
    inputs: [at("m", "in the job", "job.site.nextVisit_months")],
    origin: from("job", "site: next visit"),
  })),
];
