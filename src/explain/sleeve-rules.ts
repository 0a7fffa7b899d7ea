// Where do the wood in a sleeve and the holes in the sleeve come from?
import { derived, from, type Reader } from "./reader.ts";
import { type Rule, rule } from "./rule.ts";
import type { Working } from "./trace.ts";

const wood = (axis: "along" | "across"): Rule =>
  rule(`verticals.*.core.${axis}`, `Wood in the sleeve of {}, ${axis === "along" ? "along its side" : "square to its side"}`, ({ at }) => ({
    formula: "w",
    inputs: [at("w", "post inside the sleeve", `job.posts.section.${axis}`)],
    origin: from("job", "posts: size"),
  }));

export const sleeveRules: readonly Rule[] = [
  wood("along"),
  wood("across"),
  rule("verticals.*.core.recess", "From the outer face of the sleeve of {} to the wood inside", ({ at }, [id]) => ({
    formula: "(W - w) / 2",
    inputs: [at("W", "sleeve along the side", "job.posts.sleeve.along"), at("w", "wood inside it", `verticals.${id}.core.along`)],
    origin: derived("the post stands in the middle of its sleeve: wall and gap"),
  })),
  rule("bores.*.sleeveHole", "Diameter of the holes in the sleeve at {} where the cable goes through", ({ at }, [mark]) => ({
    formula: "d + c",
    inputs: [at("d", "diameter of the bore", `bores.${mark}.diameter`), at("c", "clearance", "job.posts.sleeve.boreClearance")],
    origin: from("practice", "a sleeve must not close on the cable"),
  })),
];

/** The hole in the sleeve in which nut or collar bears on the wood; null where the post has no sleeve. */
export function washerHoleOf(
  { at, plan }: Reader,
  mark: string | undefined,
): { readonly diameter: Working; readonly depth: Working } | null {
  const bore = plan.bores.find((one) => one.mark === mark);
  if (bore?.sleeveHole === undefined) return null;
  const kind = bore.kind === "stud end" ? "stud" : "grip";
  return {
    diameter: {
      formula: "d + c",
      inputs: [
        at("d", "diameter of the washer", `job.fittings.${kind}.washerDiameter`),
        at("c", "clearance round it", "job.posts.sleeve.washerClearance"),
      ],
      origin: from("practice", "room for the washer and a socket"),
    },
    depth: {
      formula: "r",
      inputs: [at("r", "from the outer face of the sleeve to the wood", `verticals.${bore.verticalId}.core.recess`)],
      origin: derived("the washer bears on the wood, not on the sleeve"),
    },
  };
}
