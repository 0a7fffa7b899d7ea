// How is an error written at a place of the job file?
import type { JobPath, Problem } from "../problem/problem.ts";

export const wrong = (path: JobPath, what: string, fix: string, at?: "key"): Problem => ({
  severity: "error",
  path,
  ...(at === undefined ? {} : { at }),
  what,
  fix,
});
