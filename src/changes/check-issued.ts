// Can the file beside a job be what was issued of it before?
import { revisionOf } from "../job/identity.ts";
import { wrong } from "../job/wrong.ts";
import type { Plan } from "../plan/plan.ts";
import type { Problem } from "../problem/problem.ts";

/** Problems of the issued file, by its paths. Two different plans under one revision are the error that a revision is there to prevent. */
export function checkIssued(issued: Plan, current: Plan): readonly Problem[] {
  const [old, now] = [issued.job.identity, current.job.identity];
  if (old.number !== now.number) {
    return [
      wrong(
        ["job", "number"],
        `this file was issued for the job ${old.number}, and the job file beside it is that of ${now.number}`,
        `keep what was issued of ${now.number} under this name, or move this file away`,
      ),
    ];
  }
  const mark = revisionOf(old);
  const path = ["job", "revisions", old.revisions.length - 1, "mark"];
  if (mark === revisionOf(now)) return [sameRevision(mark, path, JSON.stringify(issued) === JSON.stringify(current))];
  if (now.revisions.some((revision) => revision.mark === mark)) return [];
  return [
    wrong(
      path,
      `the job file has no revision ${mark}; it is at revision ${revisionOf(now)}`,
      `leave the line of revision ${mark} under job: revisions of the job file, and add a new one below it`,
    ),
  ];
}

const sameRevision = (mark: string, path: Problem["path"], isSame: boolean): Problem =>
  isSame
    ? {
        severity: "warning",
        path,
        what: `the job file is at revision ${mark} too, and both give the same plan: nothing has changed since it was issued`,
        fix: "before you change the job file, add a revision under job: revisions",
      }
    : wrong(
        path,
        `two different plans have the revision ${mark}: this one, which was issued, and that of the job file`,
        "add a new revision under job: revisions of the job file, with its date and what was changed",
      );
