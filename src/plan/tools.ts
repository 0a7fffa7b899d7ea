// Which tools does this job need, step by step?
import type { Job } from "../job/job.ts";
import { length } from "../units/print.ts";
import type { BitUse, Run } from "./plan.ts";
import type { ToolLine } from "./purchase.ts";

type Source = ToolLine["source"];

export function makeTools(bits: readonly BitUse[], runs: readonly Run[], job: Job): readonly ToolLine[] {
  const wood = job.posts.section.material === "wood";
  const line = (step: string, item: string, size: string, source: Source, note: string): ToolLine => ({ step, item, size, source, note });
  const size = (mm: number): string => length(mm, { units: job.units });
  const fine = (mm: number): string => length(mm, { units: job.units, decimals: 1, step: 1 / 32 });
  return [
    line("set out", "tape", "with the marks of this packet", "have", "one tape for the whole job: two tapes differ"),
    line(
      "set out",
      "straight stick for the heights",
      `longer than the guard is high`,
      "have",
      "marked once from the bore sheet, used on every post",
    ),
    line("set out", "square, level, sharp pencil", "", "have", "posts plumb before a hole is marked"),
    line("set out", "centre punch or awl", "", "have", "so that the bit does not wander"),
    ...bits.map((bit) =>
      line(
        "bore",
        wood ? "wood bit" : "bit for metal, with cutting oil",
        `${fine(bit.diameter)}, at least ${size(bit.bitLength_min)} long`,
        "buy",
        `${bit.use}: ${bit.holes} holes, deepest ${size(bit.deepest)}`,
      ),
    ),
    line("bore", wood ? "drill with guide or stand" : "drill with stand, clamps", "", "rent", "square to the post both ways"),
    line("bore", "eye protection, hearing protection", "", "have", "also when strand is cut"),
    ...(bits.some((bit) => bit.use.includes("bushing"))
      ? [line("bore", "soft mallet", "", "have", "seats bushings without cutting them")]
      : []),
    line("reeve", "cable cutter for stainless strand", `for ${fine(job.cable.diameter)}`, "rent", "a clean cut; tape the strand first"),
    line("reeve", "tape, gloves, clean sheet", "", "have", "keeps the strand off the ground and off steel dust"),
    ...(job.fittings.holdEnd === "grip"
      ? [line("reeve", "tool that seats the gripping end", "as its maker asks", "have", "try one on scrap first")]
      : []),
    ...(job.supply.kind === "spool"
      ? [line("reeve", "press or hand swager for the stud ends", "as the fitting's maker asks", "rent", "check the first one with a gauge")]
      : []),
    line("tighten", "two hand wrenches", job.fittings.stud.thread, "have", "one holds the stud, one turns the nut: no power tools"),
    line(
      "tighten",
      "tension gauge for strand",
      `for ${fine(job.cable.diameter)}`,
      "rent",
      `or pitch or sag readings, ${runs.length === 1 ? "one run" : `${runs.length} runs`} listed on the tightening sheet`,
    ),
    line("tighten", "thermometer, plumb line", "", "have", "written in the log before and after each pass"),
    line(
      "prove",
      "sphere of the code's diameter",
      size(job.code.openingSphere.value),
      "buy",
      "with a spring scale where the authority names a force",
    ),
    line("finish", "fine file or deburring stone kept for stainless only", "", "have", "no wire end may stand proud"),
  ];
}
