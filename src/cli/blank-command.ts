// How does somebody begin a job file? With every word that it may hold, each with a comment, printed to be kept and filled in.
import { parseJob } from "../job/parse.ts";
import { skeleton } from "../job/skeleton.ts";
import type { Effects } from "./effects.ts";

/** Exit code 1 when the number is none that a job may have. */
export const blank = (number: string, { output }: Effects): number => {
  const text = skeleton(number);
  const [problem] = parseJob(text).problems;
  if (problem !== undefined) {
    output.warn(`${problem.what}\nfix: ${problem.fix}\n`);
    return 1;
  }
  output.write(text);
  return 0;
};
