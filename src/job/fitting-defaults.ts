// Which bores and fittings are taken where the job does not state them? For cable of 1/8 in, 3 mm and 3.2 mm only.
import type { Problem } from "../problem/problem.ts";
import { type Cited, fromJob, practice } from "../sources/cited.ts";
import * as custom from "../tables/practice.ts";
import { threadOf } from "../tables/thread.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import type { Bushing } from "./bushing.ts";
import { faceOf } from "./face-defaults.ts";
import type { Fittings, FrameMaterial, GripEnd, StudEnd, UnitSystem } from "./job.ts";
import type { JobFile } from "./schema.ts";

type FittingsFile = JobFile["fittings"];

/** Diameters for which the defaults hold. */
const USUAL_mm: readonly Mm[] = [3, 3.175, 3.2];
const SAME_DIAMETER_mm = 0.01;

const hasDefaults = (diameter: Mm): boolean => USUAL_mm.some((usual) => Math.abs(diameter - usual) < SAME_DIAMETER_mm);

/** For cable of 5/32 in or 4 mm and above. */
const EXAMPLES = {
  inch: {
    fittings: { "pass bore": "5/16 in", "bushing bore": "5/16 in" },
    stud: { thread: "5/16-24", bore: "3/8 in", "thread length": "2 in", washer: "3/4 in" },
    grip: { bore: "5/16 in", counterbore: "7/16 in", "body length": "1-1/2 in", "bore without back": "7/16 in", washer: "3/4 in" },
  },
  mm: {
    fittings: { "pass bore": "7 mm", "bushing bore": "7 mm" },
    stud: { thread: "M6x1", bore: "8 mm", "thread length": "50 mm", washer: "18 mm" },
    grip: { bore: "8 mm", counterbore: "11 mm", "body length": "38 mm", "bore without back": "11 mm", washer: "18 mm" },
  },
} as const;

/** What is missing and nothing else, so that whoever copies it is not told the same again. */
const exampleOf = (keys: readonly string[], values: Readonly<Record<string, string>>): string =>
  keys.map((key) => `${key}: ${values[key]}`).join(", ");

/** Every dimension that drives a bore must be measured where there is no default for the cable. */
export function missingDimensions(diameter: Mm, fittings: FittingsFile, units: UnitSystem): readonly Problem[] {
  if (hasDefaults(diameter)) return [];
  const { stud = {}, grip = {} } = fittings;
  const own = lacking({ "pass bore": fittings["pass bore"], "bushing bore": fittings["bushing bore"] });
  const ofStud = lacking({ thread: stud.thread, bore: stud.bore, "thread length": stud["thread length"], washer: stud.washer });
  const ofGrip = lacking({
    bore: grip.bore,
    counterbore: grip.counterbore,
    "body length": grip["body length"],
    "bore without back": grip["bore without back"],
    washer: grip.washer,
  });
  const cable = `cable of ${length(diameter, { units, decimals: 1, step: 1 / 64, both: false })}`;
  const example = EXAMPLES[units];
  const complain = (keys: readonly string[], name: keyof typeof example, path: readonly string[]): readonly Problem[] =>
    keys.length === 0
      ? []
      : [
          {
            severity: "error",
            path,
            at: "key",
            what: `${cable} has no default for ${keys.map((key) => `"${key}"`).join(", ")} of the ${name}`,
            why: "the defaults hold for cable of 1/8 in, 3 mm and 3.2 mm; a wrong dimension is drilled into a post",
            fix: `measure what you bought and add each under ${name}, for example ${name === "fittings" ? exampleOf(keys, example.fittings) : `${name}: { ${exampleOf(keys, example[name])} }`}`,
          },
        ];
  const at = (key: "stud" | "grip"): readonly string[] => (fittings[key] === undefined ? ["fittings"] : ["fittings", key]);
  return [
    ...complain(own, "fittings", ["fittings"]),
    ...complain(ofStud, "stud", at("stud")),
    ...(fittings["hold end"] === "grip" ? complain(ofGrip, "grip", at("grip")) : []),
  ];
}

const lacking = (values: Readonly<Record<string, unknown>>): readonly string[] =>
  Object.keys(values).filter((key) => values[key] === undefined);

interface Dimensions {
  readonly passBore: Cited<Mm>;
  readonly bushingBore: Cited<Mm>;
  readonly bushingLength: Cited<Mm>;
  readonly studBore: Cited<Mm>;
  readonly thread: Cited<{ readonly name: string; readonly pitch: Mm }>;
  readonly threadLength: Cited<Mm>;
  readonly gripBore: Cited<Mm>;
  readonly counterbore: Cited<Mm>;
  readonly bodyLength: Cited<Mm>;
  readonly boreNoBack: Cited<Mm>;
  readonly washer: Cited<Mm>;
}

/** Which thread a stud has is custom; what its pitch is stands in the table of threads. */
function threadCalled(name: string, where: string): Dimensions["thread"] {
  const thread = threadOf(name);
  if (thread === null) throw new Error(`the table of threads has no ${name}`);
  return practice({ name: thread.value.name, pitch: thread.value.pitch }, where);
}

const inInches: Dimensions = {
  passBore: custom.passBore,
  bushingBore: custom.bushingBore,
  bushingLength: custom.bushingLength,
  studBore: custom.studBore,
  thread: threadCalled("1/4-28", "stud for 1/8 in cable: 1/4-28"),
  threadLength: custom.studThreadLength,
  gripBore: custom.gripBore,
  counterbore: custom.gripCounterbore,
  bodyLength: custom.gripBodyLength,
  boreNoBack: custom.gripBoreNoBack,
  washer: custom.washerDiameter,
};

/** The same bores with the next metric bit: our own setting. */
const metric = (value: Mm, name: string): Cited<Mm> => practice(value, `cable of 3 mm or 3.2 mm, ${name}: ${value} mm`);

const inMetric: Dimensions = {
  passBore: metric(6.5, "post or spacer that it passes"),
  bushingBore: metric(6.5, "bore with a bushing"),
  bushingLength: metric(10, "bushing, length in its bore"),
  studBore: metric(8, "stud end"),
  thread: threadCalled("M6x1", "stud for cable of 3 mm or 3.2 mm: M6x1"),
  threadLength: metric(50, "thread of the stud"),
  gripBore: metric(6.5, "gripping end, through"),
  counterbore: metric(10, "gripping end, counterbore"),
  bodyLength: metric(32, "gripping fitting, length"),
  boreNoBack: metric(10, "gripping end, back out of reach, through"),
  washer: metric(16, "washer"),
};

/** The fittings of a job: what it states, and the defaults for the rest. */
export function fittingsOf(
  file: FittingsFile,
  { units, material }: { readonly units: UnitSystem; readonly material: FrameMaterial },
): Fittings {
  const usual = units === "mm" ? inMetric : inInches;
  return {
    holdEnd: file["hold end"],
    ends: file.ends === "on the face" ? "on the face" : "through bores",
    face: file.face === undefined ? null : faceOf(file.face, material),
    stud: studOf(file.stud ?? {}, usual),
    grip: gripOf(file.grip ?? {}, usual),
    passBore: stated(file["pass bore"], "fittings: pass bore", usual.passBore),
    bushingBore: stated(file["bushing bore"], "fittings: bushing bore", usual.bushingBore),
    bushing: bushingOf(file.bushing ?? {}, usual),
    bushingAngle: stated(file["bushing angle"], "fittings: bushing angle", custom.bushingAngle),
    bevelEdge: stated(file["bevel edge"], "fittings: bevel edge", custom.bevelEdge),
    spareShare: stated(file.spares, "fittings: spares", custom.spareShare),
  };
}

function bushingOf(file: NonNullable<FittingsFile["bushing"]>, usual: Dimensions): Bushing {
  const { length, "tube wall": wall, rated, "rated by": by } = file;
  return {
    length: stated(length, "fittings: bushing: length", usual.bushingLength),
    tubeWall: wall === undefined ? null : fromJob(wall, "fittings: bushing: tube wall"),
    rated: rated === undefined ? null : fromJob(rated, `fittings: bushing: rated${by === undefined ? "" : `, by ${by}`}`),
  };
}

function studOf(file: NonNullable<FittingsFile["stud"]>, usual: Dimensions): StudEnd {
  const thread = stated(file.thread, "fittings: stud: thread", usual.thread);
  return {
    thread: thread.value.name,
    pitch: { ...thread, value: thread.value.pitch },
    bore: stated(file.bore, "fittings: stud: bore", usual.studBore),
    threadLength: stated(file["thread length"], "fittings: stud: thread length", usual.threadLength),
    firstTurns: stated(file["first turns"], "fittings: stud: first turns", custom.firstTurns),
    washerDiameter: stated(file.washer, "fittings: stud: washer", usual.washer),
    reserve: stated(file.reserve, "fittings: stud: reserve", custom.threadReserve),
  };
}

function gripOf(file: NonNullable<FittingsFile["grip"]>, usual: Dimensions): GripEnd {
  const counterbore = stated(file.counterbore, "fittings: grip: counterbore", usual.counterbore);
  // The body that needs the counterbore goes into the bore without one as well.
  const noBack = counterbore.value > usual.boreNoBack.value ? counterbore : usual.boreNoBack;
  return {
    bore: stated(file.bore, "fittings: grip: bore", usual.gripBore),
    counterbore,
    bodyLength: stated(file["body length"], "fittings: grip: body length", usual.bodyLength),
    boreNoBack: stated(file["bore without back"], "fittings: grip: bore without back", noBack),
    washerDiameter: stated(file.washer, "fittings: grip: washer", usual.washer),
  };
}

/** What the job states, or the default. */
export const stated = <T>(value: T | undefined, where: string, usual: Cited<T>): Cited<T> =>
  value === undefined ? usual : fromJob(value, where);
