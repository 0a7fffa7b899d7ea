// Seen in a mirror a guard is as strong, and takes the same cables at the same pulls: what was left is right, what rose falls.
import { describe, expect, test } from "vitest";
import type { Plan } from "../../src/plan/plan.ts";
import { changedText, exampleText, planOf, withSides } from "../support/example-jobs.ts";

/** The first example with other sides and ends; turns in degrees, positive to the left. */
function shaped(ends: readonly [string, string], ...given: readonly (readonly [length: string, turn: number])[]): string {
  const lines = given.map(
    ([length, turn]) => `    - { length: ${length}${turn === 0 ? "" : `, turn: ${turn > 0 ? "left" : "right"} ${Math.abs(turn)} deg`} }`,
  );
  const first = exampleText("0001-level-deck-straight")
    .replace("  existing: false", "  existing: false\n  corner setback: 5 in")
    .replace(/ {2}start: .*\n {2}end: .*\n/, `  start: ${ends[0]}\n  end: ${ends[1]}\n`);
  return withSides(first, lines.join("\n"));
}

/** In a mirror the sides come in the other order; a corner that turns left is met from its other side and still turns left. */
const bothWays = (
  ends: readonly [string, string],
  ...given: readonly (readonly [length: string, turn: number])[]
): readonly [string, string] => [
  shaped(ends, ...given),
  shaped(
    [ends[1], ends[0]],
    ...[...given].reverse().map(([length], index) => [length, given[given.length - 2 - index]?.[1] ?? 0] as const),
  ),
];

const drill = "{ kind: post, access: drill }";
const hand = "{ kind: post, access: hand }";
const wall = "{ kind: wall, gap: 3-1/2 in, access: hand }";

const guards: Readonly<Record<string, readonly [string, string]>> = {
  "one side to a wall": bothWays([drill, wall], ["23 ft", 0]),
  "an L": bothWays([hand, drill], ["12 ft", 90], ["9 ft", 0]),
  "a U from a wall": bothWays([wall, drill], ["12 ft", -90], ["17 ft", -90], ["8 ft", 0]),
  "a Z": bothWays([drill, drill], ["12 ft", 90], ["7 ft", -90], ["14 ft", 0]),
  "a bay": bothWays([drill, wall], ["12 ft", -45], ["7 ft", -45], ["14 ft", 0]),
  "a long L of several runs": bothWays([drill, wall], ["60 ft", -90], ["25 ft", 0]),
  "a stair from a landing": [
    exampleText("0012-stair-from-landing"),
    changedText("0012-stair-from-landing", {
      "  start: { kind: wall, gap: 3-1/2 in, access: hand }": `  start: ${drill}`,
      "  end: { kind: post, access: drill }": `  end: ${wall}`,
      "    - length: 6 ft 4 in ":
        "    - length: 6 ft 1-1/2 in\n      rake: { kind: stair, goes: up, riser: 7 in, tread: 10-1/2 in, nosing: 3/4 in, open risers: false }\n    - length: 6 ft 4 in ",
      "    - length: 6 ft 1-1/2 in\n      rake: { kind: stair, goes: down, riser: 7 in, tread: 10-1/2 in, nosing: 3/4 in, open risers: false }\n":
        "",
    }),
  ],
  "corners of one post": [
    exampleText("0014-corners-of-one-post"),
    changedText("0014-corners-of-one-post", {
      "length: 7 ft 8 in ": "length: 7 ft 3-1/2 in ",
      "turn: right 90 deg": "turn: by then",
      "turn: left 45 deg": "turn: right 90 deg",
      "turn: by then": "turn: left 45 deg",
      "    - length: 7 ft 3-1/2 in\n": "    - length: 7 ft 8 in\n",
    }),
  ],
  "posts as they were found": [
    exampleText("0010-old-porch-as-found"),
    changedText("0010-old-porch-as-found", {
      "3 ft 10-1/2 in, 7 ft 6 in, 12 ft 4-3/4 in, 16 ft 1 in, 20 ft 1-1/2 in":
        "4 ft 1/2 in, 8 ft 1 in, 11 ft 9-1/4 in, 16 ft 8 in, 20 ft 3-1/2 in",
      "posts: [P3, P5]": "posts: [P5, P3]",
      "{ post: P1, access": "{ post: P7, access",
      "{ post: P2, leans: { right:": "{ post: by then, leans: { left:",
      "{ post: P6, leans": "{ post: P2, leans",
      "{ post: by then": "{ post: P6",
    }),
  ],
};

const sorted = (values: readonly (number | null)[]): readonly number[] => values.flatMap((one) => one ?? []).sort((a, b) => a - b);

/** What a mirror must not change, without the marks. */
const mirrorless = (plan: Plan): Readonly<Record<string, readonly number[]>> => ({
  free: sorted(plan.bays.map(({ free }) => free)),
  "heights of bores": sorted(plan.bores.map(({ height }) => height)),
  "diameters of bores": sorted(plan.bores.map(({ diameter }) => diameter)),
  paths: sorted(plan.runs.map(({ pathLength }) => pathLength)),
  lengths: sorted(plan.runs.map(({ orderLength }) => orderLength)),
  targets: sorted(plan.runs.map(({ tension }) => tension.target)),
  checks: sorted(plan.checks.map(({ ratio }) => ratio)),
  "checks of the frame": sorted(plan.frame.checks.map(({ ratio }) => ratio)),
});

describe.each(Object.entries(guards))("%s, mirrored", (_, [one, other]) => {
  const [seen, mirrored] = [planOf(one), planOf(other)].map(mirrorless);
  if (seen === undefined || mirrored === undefined) throw new Error("two plans were made");

  test.each(Object.keys(seen))("has the same %s", (what) => {
    const [values = [], others = []] = [seen[what], mirrored[what]];
    expect(values.length).toBeGreaterThan(0);
    expect(others.length).toBe(values.length);
    for (const [index, value] of values.entries())
      expect.soft(Math.abs((others[index] ?? 0) - value)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
  });
});
