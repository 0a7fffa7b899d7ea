// Which dimensions of a fitting cannot belong to one fitting? What the job does not state is taken as its default.
import type { JobPath, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { readThread } from "../units/read-thread.ts";
import { SAME_mm } from "../units/tolerance.ts";
import type { Blocks } from "./checks.ts";
import { fittingsOf, missingDimensions } from "./fitting-defaults.ts";
import type { GripEnd, StudEnd } from "./job.ts";
import { wrong } from "./wrong.ts";

type FittingsFile = NonNullable<Blocks["fittings"]>;
type Size = (value: Mm) => string;

/** A wrong dimension is drilled into every end post: those that contradict each other are not planned with. */
export function checkFitting({ fittings, cable, units, posts }: Blocks): readonly Problem[] {
  if (fittings === undefined || cable === undefined || units === undefined || posts === undefined) return [];
  if (missingDimensions(cable.diameter, fittings, units).length > 0) return [];
  // What holds on a face has checks of its own.
  const { face: _face, ...through } = fittings;
  const { stud, grip, holdEnd } = fittingsOf(through, { units, material: posts.material });
  const size: Size = (value) => length(value, { units, decimals: 1, step: 1 / 64 });
  return [
    ...ofStud(stud, fittings.stud ?? {}, size),
    ...(holdEnd === "grip" ? ofGrip(grip, fittings.grip ?? {}, { size, isWood: posts.material === "wood" }) : []),
  ];
}

/** Where the first of these keys stands that the job states itself. */
const at = (block: "stud" | "grip", file: object, keys: readonly string[]): JobPath => {
  const stated = keys.find((key) => key in file);
  return stated === undefined ? ["fittings"] : ["fittings", block, stated];
};

function ofStud(stud: StudEnd, file: NonNullable<FittingsFile["stud"]>, size: Size): readonly Problem[] {
  const [bore, washer] = [stud.bore.value, stud.washerDiameter.value];
  const thread = readThread(stud.thread);
  const used = stud.firstTurns.value * stud.pitch.value;
  const problems: Problem[] = [];
  if ("value" in thread && bore < thread.value.diameter - SAME_mm) {
    const what = `a stud of ${stud.thread}, ${size(thread.value.diameter)} across, does not pass a bore of ${size(bore)}`;
    problems.push(wrong(at("stud", file, ["bore", "thread"]), what, "measure the stud over its thread, and give a bore that it passes"));
  }
  if (washer <= bore + SAME_mm) problems.push(sunk(at("stud", file, ["washer", "bore"]), [washer, bore], size));
  if (used >= stud.threadLength.value - SAME_mm) {
    const what = `the first turns take ${size(used)} of thread, and the stud has ${size(stud.threadLength.value)}`;
    const fix = "measure the thread that the nut can travel along, or take fewer first turns";
    problems.push(wrong(at("stud", file, ["first turns", "thread length", "thread"]), what, fix));
  }
  return problems;
}

function ofGrip(
  grip: GripEnd,
  file: NonNullable<FittingsFile["grip"]>,
  { size, isWood }: { readonly size: Size; readonly isWood: boolean },
): readonly Problem[] {
  const washer = grip.washerDiameter.value;
  const [bore, counterbore] = [grip.bore.value, grip.counterbore.value];
  const problems: Problem[] = [];
  if (isWood && counterbore < bore - SAME_mm) {
    const what = `a counterbore of ${size(counterbore)} is narrower than the bore of ${size(bore)} that it widens`;
    const fix = "measure the body of the fitting for the counterbore, and what comes out of it for the bore";
    problems.push(wrong(at("grip", file, ["counterbore", "bore"]), what, fix));
  }
  const noBack = grip.boreNoBack.value;
  if (isWood && noBack < counterbore - SAME_mm) {
    const what = `the body that needs a counterbore of ${size(counterbore)} does not go into a bore without back of ${size(noBack)}`;
    const fix = "measure the body of the fitting: the bore without back takes it as the counterbore does";
    problems.push(wrong(at("grip", file, ["bore without back", "counterbore"]), what, fix));
  }
  // Metal has no counterbore: the body's bore goes right through.
  const holes = [["bore without back", noBack] as const, ...(isWood ? [["counterbore", counterbore] as const] : [])];
  const [key, widest] = holes.reduce((wide, hole) => (hole[1] > wide[1] ? hole : wide));
  if (washer <= widest + SAME_mm) problems.push(sunk(at("grip", file, ["washer", key]), [washer, widest], size));
  return problems;
}

const sunk = (path: JobPath, [washer, hole]: readonly [Mm, Mm], size: Size): Problem =>
  wrong(
    path,
    `a washer of ${size(washer)} falls into the hole of ${size(hole)} that it lies on`,
    "measure across the washer, and the bore of its fitting",
  );
