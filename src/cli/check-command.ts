// What is wrong with the jobs, and what do their checks say? Everything but pages.
import { isBeyond, ratioText, remedyTexts } from "../packet/frame-verdict.ts";
import { count as counted } from "../packet/sheets/kit.ts";
import type { Check } from "../plan/plan.ts";
import { percent } from "../units/print.ts";
import { type Claim, duplicates } from "./build-steps.ts";
import type { Effects } from "./effects.ts";
import { faultText } from "./fault.ts";
import { allProblemsText, type Prepared, prepare } from "./planner.ts";
import { type Survey, strayText } from "./survey.ts";

/** Exit code 1 when a job has problems; a check that fails is a finding, not a problem of the file. */
export const check = (survey: Survey, { files, output }: Effects): number => {
  const { options, changed, unchanged, unread } = survey;
  const ready: (Claim & Prepared)[] = [];
  let faults = 0;
  let bad = unread.length;
  for (const file of [...changed, ...unchanged]) {
    try {
      const prepared = prepare(file, options);
      if (prepared.plan !== undefined) ready.push({ ...prepared, number: prepared.plan.job.identity.number });
      else output.warn(allProblemsText(prepared));
      bad += prepared.plan === undefined ? 1 : 0;
    } catch (error) {
      faults += 1;
      output.warn(`${file.path}: ${faultText(error)}`);
    }
  }
  const clashing = duplicates(ready, {}, { survey, files });
  for (const { text } of clashing) output.warn(text);
  for (const { number, ...prepared } of ready) {
    const { file, plan } = prepared;
    if (plan === undefined) continue;
    output.write(`${file.path}: job ${number}, verdict: ${plan.verdict}\n`);
    output.write(allProblemsText(prepared));
    for (const row of plan.checks) output.write(`  ${rowText(row)}\n`);
    // What to change stands last, where the eye is: the rows above may be many.
    for (const text of remedyTexts(plan)) output.write(`  remedy      ${text.replaceAll("**", "")}\n`);
  }
  for (const path of survey.stray) output.warn(strayText(path));
  const failed = bad + clashing.length + survey.stray.length;
  output.write(`${counted(ready.length - clashing.length, "job")} without errors, ${failed + faults} with errors\n`);
  if (faults > 0) return 2;
  return failed > 0 ? 1 : 0;
};

const rowText = ({ verdict, name, where, ratio, source, sourceWhere, advice }: Check): string => {
  const share =
    ratio === null ? "" : `, ${isBeyond(ratio) ? `${ratioText(ratio)} times` : `${percent(ratio, { rounding: "up" })} of`} the limit`;
  const more = verdict === "pass" || advice === "" ? "" : `. ${advice}`;
  return `${verdict.padEnd(11)} ${name}, ${where}${share} (${source}${sourceWhere === "" ? "" : `, ${sourceWhere}`})${more}`;
};
