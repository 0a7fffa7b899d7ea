// Which way is each end of a rail cut at a corner, in words?
import type { Job } from "../job/job.ts";
import { angleDegrees } from "../units/print.ts";
import type { Radian } from "../units/quantity.ts";

/** An end cut to half the turn of its corner; where only the slope changes the rails meet at plumb cuts. */
export interface Mitre {
  readonly end: "left" | "right";
  /** Of the corner, positive to the right. */
  readonly turn: Radian;
}

/** At an outside corner the outer edge is the longer one. */
const longPoint = ({ turn }: Mitre): string => (turn > 0 ? "outside" : "on the deck's side");
const mitreAngle = ({ turn }: Mitre): string => angleDegrees(Math.abs(turn) / 2);

/** Which way each end is cut, for somebody on the deck who looks out; empty for a rail that is cut square. */
export function mitreWords(mitres: readonly Mitre[]): string {
  const [one, other] = mitres;
  if (one === undefined) return "";
  if (other === undefined) {
    return `, to the long point of its mitre: ${one.end} end cut ${mitreAngle(one)} off square, long point ${longPoint(one)}`;
  }
  const [first, second] = [mitreAngle(one), mitreAngle(other)];
  const ends = first === second ? `both ends cut ${first} off square` : `left end cut ${first} off square, right end ${second}`;
  if (one.turn > 0 === other.turn > 0)
    return `, to the long points of its mitres: ${ends}, both long points ${longPoint(one)} (the cuts converge)`;
  const way = first === second ? "the cuts are parallel" : "the cuts lean the same way";
  return `, between the long points of its mitres, measured along the rail from point to point, not along one edge: ${ends}, long point ${longPoint(one)} at the left end, ${longPoint(other)} at the right end (${way})`;
}

/** For the saw: the angles of all corners at which rails meet. */
export function mitreNote({ sides }: Job): readonly string[] {
  const angles = sides.flatMap(({ turn, interrupted }) =>
    turn === null || turn === 0 || interrupted !== null ? [] : [angleDegrees(Math.abs(turn) / 2)],
  );
  return angles.length === 0 ? [] : [`at corners ${[...new Set(angles)].join(" and ")} off square`];
}
