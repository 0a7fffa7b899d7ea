// What does a measurement on the first cable make of the strand's stiffness?
import type { Job } from "../job/job.ts";
import type { GaugeOrPitch } from "../job/site.ts";
import { tensionFromPitch } from "../mechanics/pitch.ts";
import type { Outcome } from "../problem/problem.ts";
import { fromJob } from "../sources/cited.ts";
import { force } from "../units/print.ts";
import type { AxialStiffness, Newton } from "../units/quantity.ts";
import type { FrameGroup } from "./frames.ts";
import { profileOf } from "./friction.ts";

/** What gauge, nut and frame leave uncertain of a measured stiffness. */
const MEASURED_band = 0.05;
/** A strand is neither half as stiff nor twice as stiff as its data say: somebody has miscounted. */
const PLAUSIBLE = { least: 0.5, most: 2 };

/**
 * The job with the stiffness that was measured: n turns of pitch p took the cable from T1 to T2 while all others were slack, so
 * n p = (T2 - T1) (integral/EA + F_ii).
 */
export function calibrated(groups: readonly FrameGroup[], job: Job): Outcome<Job> {
  const { turns } = job.calibration;
  if (turns === null) return { value: job, problems: [] };
  const path = ["calibration", "turns"];
  const refuse = (key: string, what: string, fix: string): Outcome<Job> => ({
    value: undefined,
    problems: [{ severity: "error", path: [...path, key], what, fix }],
  });
  const found = groups.flatMap((group) =>
    group.runs.flatMap((run, index) =>
      group.courses.map((course, place) => ({
        mark: `${run.id}-${String(course.number).padStart(2, "0")}`,
        run,
        own: group.flexibility[index * group.courses.length + place]?.[index * group.courses.length + place] ?? 0,
      })),
    ),
  );
  const cable = found.find(({ mark }) => mark === turns.cable);
  if (cable === undefined) {
    return refuse("cable", `there is no cable ${turns.cable}`, `write one of ${found[0]?.mark ?? ""} to ${found.at(-1)?.mark ?? ""}`);
  }
  const [from, to] = [turns.from, turns.to].map((reading) => tensionOf(reading, job));
  const rise = (to ?? 0) - (from ?? 0);
  if (!(rise > 0)) return refuse("cable", "the second reading is not above the first", "write the readings before and after the turns");
  const travel = turns.turns * job.fittings.stud.pitch.value;
  const perNewton = travel / rise - cable.own;
  const stiffness: AxialStiffness = profileOf(cable.run, 1, job).integral_NMm / perNewton;
  const { nominal } = job.cable.stiffness.value;
  if (!(stiffness > PLAUSIBLE.least * nominal && stiffness < PLAUSIBLE.most * nominal)) {
    const shown = perNewton > 0 ? force(+stiffness, job.units) : "more than any strand has";
    return refuse(
      "turns",
      `these turns make the strand's stiffness ${shown}; its data say ${force(+nominal, job.units)}`,
      "measure again: every other cable slack, no slack in this one before the first reading, whole turns counted",
    );
  }
  const value = { low: stiffness * (1 - MEASURED_band), nominal: stiffness, high: stiffness * (1 + MEASURED_band) };
  return { value: { ...job, cable: { ...job.cable, stiffness: fromJob(value, `calibration: turns on ${turns.cable}`) } }, problems: [] };
}

const tensionOf = (reading: GaugeOrPitch, job: Job): Newton =>
  reading.kind === "gauge"
    ? reading.force
    : tensionFromPitch({ span: reading.span, pitch_Hz: reading.pitch_Hz, mass_kgPerM: job.cable.mass_kgPerM.value });
