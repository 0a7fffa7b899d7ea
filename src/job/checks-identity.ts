// What can be wrong with the revisions of a job?
import type { Problem } from "../problem/problem.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

/** Whoever holds two sheets must tell by the mark which is the newer one. */
export const checkRevisions = ({ revisions = [] }: JobFile["job"]): readonly Problem[] =>
  revisions.flatMap(({ mark }, index) =>
    revisions.findIndex((other) => other.mark === mark) < index
      ? [wrong(["job", "revisions", index, "mark"], `the revision mark "${mark}" is used twice`, "give each revision a mark of its own")]
      : [],
  );
