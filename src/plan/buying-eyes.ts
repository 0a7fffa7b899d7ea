// What has to be bought for ends that hold on the faces of posts and in piers?
import type { Job } from "../job/job.ts";
import { force } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { faceOf, isOnFace } from "./face-end.ts";
import { piece, sizeText } from "./order-piece.ts";
import { anchorEndsOf, pierNamed } from "./pier.ts";
import type { Run } from "./plan.ts";
import type { OrderLine } from "./purchase.ts";

/** What holds on faces and in piers, and what is pinned to it. */
export function eyeLines(runs: readonly Run[], courseCount: number, job: Job): readonly OrderLine[] {
  const ends = runs.flatMap((run) => [run.left, run.right]);
  return [
    ...faceLines(ends.filter(({ kind }) => kind === "face").length * courseCount, job),
    ...anchorLines(runs, courseCount, job),
    ...piece("fittings", FACE_ITEMS.fork, sizeText(job.cable.diameter, job), ends.filter(isOnFace).length * courseCount, {
      job,
      note: "fork and pin for the eye; fitted on site as its instruction says",
    }),
  ];
}

function faceLines(net: number, job: Job): readonly OrderLine[] {
  if (net === 0) return [];
  const { fastening, rated } = faceOf(job);
  const size = (mm: Mm): string => sizeText(mm, job);
  const asRated = rated === null ? "ask its maker for the working load" : `working load at least ${force(rated.value, job.units)}`;
  return [
    ...(fastening.kind === "lag screw"
      ? piece("fittings", FACE_ITEMS.screw, `${size(fastening.diameter.value)} x ${size(fastening.depth.value)} in the post`, net, {
          job,
          note: `thread ${size(fastening.threadLength.value)}; ${asRated}`,
        })
      : piece("fittings", FACE_ITEMS.stud, fastening.thread, net, { job, note: asRated })),
    ...(fastening.kind === "rivet nut"
      ? piece("fittings", FACE_ITEMS.insert, fastening.thread, net, {
          job,
          note: "for the wall of these posts; its maker says for which thickness",
        })
      : []),
  ];
}

/** "anchor with an eye, stainless, PR1": each pier has its own. */
export const anchorItem = (pierId: string): string => `anchor with an eye, stainless, ${pierId}`;

function anchorLines(runs: readonly Run[], courseCount: number, job: Job): readonly OrderLine[] {
  const size = (mm: Mm): string => sizeText(mm, job);
  return [...new Set(anchorEndsOf({ runs }).map(({ end }) => end.postId))].flatMap((id) => {
    const { of, anchor } = pierNamed(job, id);
    const asRated =
      anchor.rated === null
        ? "ask an engineer for the working load"
        : `working load at least ${force(anchor.rated.value, job.units)} in this pier`;
    const glue = anchor.kind === "adhesive" ? "; with its maker's adhesive, enough for these holes" : "";
    return piece("fittings", anchorItem(id), `hole ${size(anchor.hole.value)} x ${size(anchor.depth.value)}`, courseCount, {
      job,
      note: `${anchor.kind} anchor for ${of}; ${asRated}${glue}`,
    });
  });
}

/** As they are ordered. */
export const FACE_ITEMS = {
  screw: "lag screw with an eye, stainless",
  stud: "threaded stud with an eye, stainless",
  insert: "rivet nut, stainless",
  fork: "end fitting with a fork, for fitting on site",
} as const;
