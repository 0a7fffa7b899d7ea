// What can be wrong with ends that are held on the face of a post?
import type { JobPath, Problem } from "../problem/problem.ts";
import { threadNames, threadOf } from "../tables/thread.ts";
import { decimal, length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { checkRating } from "./checks-rating.ts";
import { type FaceFile, leastEngagement } from "./face-defaults.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

const PATH: JobPath = ["fittings", "face"];

interface Blocks {
  readonly units?: JobFile["units"] | undefined;
  readonly guard?: JobFile["guard"] | undefined;
  readonly posts?: JobFile["posts"] | undefined;
  readonly fittings?: JobFile["fittings"] | undefined;
}

export function checkFace({ units, guard, posts, fittings }: Blocks): readonly Problem[] {
  if (fittings === undefined) return [];
  const { ends, face } = fittings;
  if (ends === "tapped") {
    const fix =
      "write ends: on the face, and say what holds there: face: { kind: tapped hole, thread: M6x1, hole: 5 mm, ... } or kind: rivet nut";
    return [wrong(["fittings", "ends"], "what is tapped is not said: its thread and what it is cut into decide what it holds", fix)];
  }
  if (face === undefined) {
    const fix =
      "add face: with what was bought and measured, for example face: { kind: lag screw, diameter: 5/16 in, depth: 2-1/4 in, ... }";
    return ends === "on the face" ? [wrong(["fittings", "ends"], "ends on the face of a post need the sizes of their fitting", fix)] : [];
  }
  return [
    ...ofRakes(guard),
    ...(posts === undefined ? [] : ofPosts(face, posts, units ?? "inch")),
    ...(face.kind === "lag screw" ? ofScrew(face) : []),
    ...checkRating(face, PATH, { what: "fitting", by: "the maker's data sheet, or who tested it" }),
  ];
}

/** The hole would be bored at an angle, and the screw bent. */
function ofRakes(guard: Blocks["guard"]): readonly Problem[] {
  const index = guard?.sides.findIndex(({ rake }) => rake !== undefined) ?? -1;
  if (index < 0) return [];
  const fix = "leave face: out and let the cables of this guard end behind their posts, or plan the level sides in a job of their own";
  return [wrong(PATH, "ends on the face are planned for level sides only: on a slope the pull bends the screw", fix, "key")];
}

function ofPosts(face: FaceFile, posts: JobFile["posts"], units: JobFile["units"]): readonly Problem[] {
  const isWood = posts.material === "wood";
  const at = [...PATH, "kind"];
  if (isWood && face.kind !== "lag screw") {
    const fix = "use a lag screw with an eye: kind: lag screw, with its diameter, depth, thread length and tip";
    return [wrong(at, `a ${face.kind} is for metal: in wood its thread tears out`, fix)];
  }
  if (!isWood && face.kind === "lag screw") {
    const fix = "use kind: tapped hole where the metal is thick enough for its thread, else kind: rivet nut with its maker's rated load";
    return [wrong(at, `a lag screw does not hold in ${posts.material}`, fix)];
  }
  if (face.kind === "rivet nut" && posts.wall === undefined) {
    return [
      wrong(at, "a rivet nut is set into the wall of a tube, and these posts are solid", "cut a thread: kind: tapped hole, with its depth"),
    ];
  }
  return face.kind === "tapped hole" ? ofThread(face, posts, units) : [];
}

/** A wall of a tube is seldom as thick as a thread needs. */
function ofThread(face: Extract<FaceFile, { kind: "tapped hole" }>, posts: JobFile["posts"], units: JobFile["units"]): readonly Problem[] {
  const { wall, material } = posts;
  const engaged = wall ?? face.depth;
  if (wall !== undefined && face.depth !== undefined) {
    return [wrong([...PATH, "depth"], "the thread in a tube is as long as its wall is thick", "leave depth out", "key")];
  }
  if (engaged === undefined)
    return [
      wrong(
        PATH,
        "how deep the thread goes into the solid post is not said",
        "add depth: with the length of the thread in the post",
        "key",
      ),
    ];
  const known = threadOf(face.thread.name);
  if (known === null) {
    const fix = `use one of ${threadNames.join(", ")}`;
    return [wrong([...PATH, "thread"], `the stress area of a thread ${face.thread.name} is in no table here`, fix)];
  }
  const { diameter } = known.value;
  const least = face["least engagement"] ?? leastEngagement(material).value;
  if (engaged >= least * diameter - SAME_mm) return [];
  const size = (value: Mm): string => length(value, { units, decimals: 1, step: 1 / 64 });
  return [
    wrong(
      [...PATH, "thread"],
      `${size(engaged)} of ${material} hold ${face.thread.name} on ${decimal(engaged / diameter, { decimals: 2 })} of its diameter; at least ${decimal(least, { decimals: 1 })} is asked`,
      "use kind: rivet nut with its maker's rated load, have a thicker plate welded in and give its job the least engagement that an engineer states, or let the bores go right through",
    ),
  ];
}

function ofScrew(face: Extract<FaceFile, { kind: "lag screw" }>): readonly Problem[] {
  const { diameter, depth, "thread length": thread, tip, hole } = face;
  return [
    ...(thread > depth + SAME_mm
      ? [
          wrong(
            [...PATH, "thread length"],
            "the thread is longer than the screw is deep in the post",
            "measure both: depth is from the face to the point",
          ),
        ]
      : []),
    ...(tip >= thread ? [wrong([...PATH, "tip"], "the tip is as long as the whole thread", "measure the tapered point only")] : []),
    ...(hole >= diameter
      ? [
          wrong(
            [...PATH, "hole"],
            "the pilot hole is as wide as the screw: its thread would hold nothing",
            "take the bit that the screw's maker names for this wood",
          ),
        ]
      : []),
  ];
}
