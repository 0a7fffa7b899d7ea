// How is an end held on the face of a post, without a bore that goes right through? Types of the Job.
import type { Cited } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";

/** A lag screw with an eye, in wood. */
export interface LagScrew {
  readonly kind: "lag screw";
  /** Of the shank. */
  readonly diameter: Cited<Mm>;
  /** From the face of the post to the point of the screw. */
  readonly depth: Cited<Mm>;
  /** Length of the thread, its tip included. */
  readonly threadLength: Cited<Mm>;
  /** Tapered point, which holds nothing. */
  readonly tip: Cited<Mm>;
}

/** A threaded stud with an eye, in a thread that is cut into the metal of the post. */
export interface TappedHole {
  readonly kind: "tapped hole";
  /** "M6x1" or "1/4-20". */
  readonly thread: string;
  readonly diameter: Cited<Mm>;
  readonly pitch: Cited<Mm>;
  /** Thread in solid metal; null in a tube, where the wall is all that there is. */
  readonly depth: Cited<Mm> | null;
  /** Least length of thread in the metal, in diameters. */
  readonly engagement_min: Cited<number>;
}

/** A threaded insert that is set into the wall of a tube; what it holds is its maker's figure. */
export interface RivetNut {
  readonly kind: "rivet nut";
  readonly thread: string;
}

export interface FaceEnd {
  readonly fastening: LagScrew | TappedHole | RivetNut;
  /** Pilot hole, tapping hole, or hole for the insert. */
  readonly hole: Cited<Mm>;
  /** From the face of the post to the middle of the eye. */
  readonly standOut: Cited<Mm>;
  /** Across the collar or flange that lies on the face. */
  readonly flange: Cited<Mm>;
  /** Working load of the eye, or of the insert, by its maker or a test; null: not known. */
  readonly rated: Cited<Newton> | null;
}

export interface FaceEnds {
  /** Where ends are held that don't pull: behind their posts, or on the face that the cable comes to. */
  readonly ends: "through bores" | "on the face";
  /** The fitting of ends on the face; with it, ends whose back nothing reaches stand on the face too. */
  readonly face: FaceEnd | null;
}
