// Where may nothing be bored, and how did the courses move for it?
import { nearestZone } from "../../plan/check-standing.ts";
import type { HardwareZone } from "../../plan/hardware.ts";
import type { Block, Text } from "../packet.ts";
import { column, groupBy, listed, type SheetContext, strong, table } from "./kit.ts";

/** One row for each kind of hardware; nothing where the posts are free of it. */
export function hardwareTable({ plan, show }: SheetContext): readonly Block[] {
  if (plan.hardware.length === 0) return [];
  const moved = plan.courses.filter(({ moved: by }) => by !== 0);
  const rows = groupBy(plan.hardware, ({ what, from, to }) => `${what}\n${from}\n${to}`).map((same) => {
    const [{ what, from, to }] = same;
    return [what, listed(same.map(({ postId }) => postId)), strong(show.tape(from)), strong(show.tape(to)), show.tape(leastClear(same))];
  });
  const courses: Text =
    moved.length === 0
      ? "No course had to move for it."
      : `Courses ${listed(moved.map(({ number }) => String(number)))} moved from their even places, on all posts, to keep clear of it.`;
  const least = `Kept from it: ${show.tape(plan.job.posts.hardwareClearance.value)} at least.`;
  return [
    table({
      id: "bores-hardware",
      caption: "Bore nothing here: hardware, heights from the datum",
      columns: [
        column("what", "What", 0.3),
        column("posts", "On posts", 0.3),
        column("from", "From", 0.12),
        column("to", "Up to", 0.12),
        column("clear", "Nearest bore or washer", 0.16, { sub: "edge to edge" }),
      ],
      rows,
      notes: [`${courses} ${least}`],
    }),
  ];

  function leastClear(zones: readonly HardwareZone[]): number {
    const clear = zones.flatMap(({ postId }) =>
      plan.bores
        .filter(({ verticalId }) => verticalId === postId)
        .map((bore) => nearestZone(bore, { hardware: zones }, plan.job)?.clear ?? Number.POSITIVE_INFINITY),
    );
    return Math.min(...clear);
  }
}
