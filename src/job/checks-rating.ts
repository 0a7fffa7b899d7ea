// Is a rated load written together with the name of who states it?
import type { JobPath, Problem } from "../problem/problem.ts";
import { wrong } from "./wrong.ts";

interface Rating {
  readonly rated?: number;
  readonly "rated by"?: string;
}

/** `what` is rated; `by` says who may state it. */
export function checkRating(
  { rated, "rated by": stated }: Rating,
  at: JobPath,
  { what, by }: { readonly what: string; readonly by: string },
): readonly Problem[] {
  if ((rated === undefined) === (stated === undefined)) return [];
  return [
    rated === undefined
      ? wrong([...at, "rated by"], `who rates the ${what} is said, but not for how much`, "add rated: with the working load", "key")
      : wrong([...at, "rated"], "a rated load without the name of who states it", `add rated by: ${by}`, "key"),
  ];
}
