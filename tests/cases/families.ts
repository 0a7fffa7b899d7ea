// Which function answers each family of reference cases? Each takes a case's `in` as it stands and returns data keyed like its `out`.
import { solveCapstanCase } from "../../src/mechanics/cases/capstan-case.ts";
import { solveClimateCase } from "../../src/mechanics/cases/climate-case.ts";
import { solveFrameCase } from "../../src/mechanics/cases/frame-case.ts";
import { solveLateralCase } from "../../src/mechanics/cases/lateral-case.ts";
import { solveSequenceCase } from "../../src/mechanics/cases/sequence-case.ts";
import { solveSphereCase } from "../../src/mechanics/cases/sphere-case.ts";
import { solveVibrationCase } from "../../src/mechanics/cases/vibration-case.ts";

type Solver = (input: never) => unknown;

export const families: Readonly<Record<string, Solver>> = {
  family1_frame_and_sequence: (input) => ({ ...solveFrameCase(input), ...solveSequenceCase(input) }),
  family2_lateral_load: solveLateralCase,
  family3_sphere: solveSphereCase,
  family4_capstan: solveCapstanCase,
  family5_temperature_shrinkage: solveClimateCase,
  family6_vibration: solveVibrationCase,
};
