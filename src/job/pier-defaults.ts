// How does a pier at an end of the guard leave the file? All of it is measured, or stated by the anchor's maker or an engineer.
import { type Cited, fromJob } from "../sources/cited.ts";
import type { Pier } from "./pier.ts";
import type { JobFile } from "./schema.ts";

export type PierFile = Extract<JobFile["guard"]["start"], { readonly kind: "pier" }>;

export function pierOf({ of, along, across, height, anchor }: PierFile): Pier {
  const { rated, "rated by": by, "least edge": edge, "least spacing": spacing } = anchor;
  return {
    of,
    along,
    across,
    height,
    anchor: {
      kind: anchor.kind,
      hole: own(anchor.hole, "hole"),
      depth: own(anchor.depth, "depth"),
      standOut: own(anchor["stand-out"], "stand-out"),
      flange: own(anchor.flange, "flange"),
      rated: rated === undefined ? null : own(rated, `rated${by === undefined ? "" : `, by ${by}`}`),
      edge_min: edge === undefined ? null : own(edge, "least edge"),
      spacing_min: spacing === undefined ? null : own(spacing, "least spacing"),
    },
  };
}

const own = <T>(value: T, key: string): Cited<T> => fromJob(value, `kind: pier, anchor: ${key}`);
