// How does the fitting of ends on the face leave the file? Every dimension is measured on what was bought.
import { type Cited, fromJob } from "../sources/cited.ts";
import { engagement_min } from "../tables/face-fastening.ts";
import { threadOf } from "../tables/thread.ts";
import type { FaceEnd } from "./face-end.ts";
import type { FrameMaterial } from "./job.ts";
import type { JobFile } from "./schema.ts";

export type FaceFile = NonNullable<JobFile["fittings"]["face"]>;

export function faceOf(file: FaceFile, material: FrameMaterial): FaceEnd {
  const { rated, "rated by": by } = file;
  return {
    fastening: fasteningOf(file, material),
    hole: own(file.hole, "hole"),
    standOut: own(file["stand-out"], "stand-out"),
    flange: own(file.flange, "flange"),
    rated: rated === undefined ? null : own(rated, `rated${by === undefined ? "" : `, by ${by}`}`),
  };
}

const own = <T>(value: T, key: string): Cited<T> => fromJob(value, `fittings: face: ${key}`);

function fasteningOf(file: FaceFile, material: FrameMaterial): FaceEnd["fastening"] {
  switch (file.kind) {
    case "lag screw":
      return {
        kind: "lag screw",
        diameter: own(file.diameter, "diameter"),
        depth: own(file.depth, "depth"),
        threadLength: own(file["thread length"], "thread length"),
        tip: own(file.tip, "tip"),
      };
    case "tapped hole": {
      const thread = threadOf(file.thread.name);
      if (thread === null) throw new Error(`the table of threads has no ${file.thread.name}`);
      const least = file["least engagement"];
      return {
        kind: "tapped hole",
        thread: thread.value.name,
        diameter: { ...thread, value: thread.value.diameter },
        pitch: { ...thread, value: thread.value.pitch },
        depth: file.depth === undefined ? null : own(file.depth, "depth"),
        engagement_min: least === undefined ? leastEngagement(material) : own(least, "least engagement"),
      };
    }
    case "rivet nut":
      return { kind: "rivet nut", thread: file.thread.name };
  }
}

/** In diameters; a lag screw in wood has none. */
export const leastEngagement = (material: FrameMaterial): Cited<number> =>
  material === "aluminium" ? engagement_min.aluminium : engagement_min.steel;
