// What can be wrong with a job although each of its values reads well by itself?
import type { JobPath, Problem } from "../problem/problem.ts";
import { lumberNames } from "../tables/timber.ts";
import { angleDegrees } from "../units/print.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { checkBushing } from "./checks-bushing.ts";
import { checkFace } from "./checks-face.ts";
import { checkFitting } from "./checks-fitting.ts";
import { checkRevisions } from "./checks-identity.ts";
import { checkPiers } from "./checks-pier.ts";
import { checkRakeFrame, checkRakes, checkStairRules } from "./checks-rake.ts";
import { checkSetOff } from "./checks-set-off.ts";
import { checkCalibration, checkLumber, checkPrinter, checkSite } from "./checks-site.ts";
import { checkSleeve } from "./checks-sleeve.ts";
import { checkAsFound, checkHardware, checkInterruption, checkNotBored } from "./checks-standing.ts";
import { checkCorners, isOnePost } from "./corners.ts";
import { breakingForce } from "./defaults.ts";
import { nearest } from "./field.ts";
import type { SizeText } from "./fields.ts";
import { missingDimensions } from "./fitting-defaults.ts";
import type { UnitSystem } from "./job.ts";
import type { BlocksOf } from "./read-file.ts";
import type { JobFile } from "./schema.ts";
import { lumberOf } from "./sections.ts";
import { wrong } from "./wrong.ts";

/** The blocks of a job file that read well. */
export type Blocks = BlocksOf<JobFile>;

export function checkBlocks(blocks: Blocks): readonly Problem[] {
  const { job, code, guard, posts, spacers, frame, cable, fittings, supply, stock, limits, tightening, site, calibration, printer } =
    blocks;
  const units = blocks.units ?? "inch";
  return [
    ...(job ? checkRevisions(job) : []),
    ...(code ? checkCode(code, units) : []),
    ...(guard ? guard.sides.flatMap((side, index) => checkSide(side, index, guard.sides)) : []),
    ...(guard ? checkRakes(guard) : []),
    ...(guard && frame ? checkRakeFrame(guard, frame) : []),
    ...(guard && code ? checkStairRules(guard, code, units) : []),
    ...(guard && posts?.existing === true ? checkExisting(guard) : []),
    ...(posts
      ? [...checkMember(posts, ["posts"]), ...checkNewPosts(posts, units), ...checkLumber(posts, ["posts"]), ...checkHardware(posts)]
      : []),
    ...checkNotBored(blocks),
    ...(guard ? checkPiers(guard) : []),
    ...(guard ? checkCorners(guard, blocks) : []),
    ...checkSetOff(blocks),
    ...checkFace(blocks),
    ...checkBushing(blocks),
    ...checkSleeve(blocks),
    ...(posts && guard ? checkAsFound(posts, guard.sides) : []),
    ...(posts ? (posts["as found"] ?? []).flatMap((one, index) => checkSize(one, posts, ["posts", "as found", index])) : []),
    ...(spacers ? [...checkMember(spacers, ["spacers"]), ...checkLumber(spacers, ["spacers"])] : []),
    ...(frame ? checkFrame(frame) : []),
    ...(cable ? checkCable(cable) : []),
    ...(cable && fittings ? missingDimensions(cable.diameter, fittings, units) : []),
    ...checkFitting(blocks),
    ...(supply ? checkSupply(supply) : []),
    ...(stock?.["post lengths"] ? checkAscending(stock["post lengths"], ["stock", "post lengths"], "stock lengths of posts") : []),
    ...(stock?.lengths ? checkAscending(stock.lengths, ["stock", "lengths"], "stock lengths") : []),
    ...(limits ? checkLimits(limits) : []),
    ...(tightening ? checkTightening(tightening) : []),
    ...(site ? checkSite(site) : []),
    ...(calibration ? checkCalibration(calibration) : []),
    ...(printer ? checkPrinter(printer) : []),
  ];
}

function checkCode(code: JobFile["code"], units: UnitSystem): readonly Problem[] {
  if (code.edition !== "other") return [];
  const needed = [
    ["guard height", units === "mm" ? "1000 mm" : "36 in"],
    ["opening", units === "mm" ? "100 mm" : "4 in"],
  ] as const;
  return needed
    .filter(([key]) => code[key] === undefined)
    .map(([key, example]) =>
      wrong(
        ["code"],
        `another edition brings no "${key}" of its own`,
        `add what the authority asks, for example ${key}: ${example}`,
        "key",
      ),
    );
}

type Side = JobFile["guard"]["sides"][number];

function checkSide(side: Side, index: number, sides: readonly Side[]): readonly Problem[] {
  const path = ["guard", "sides", index];
  const isLast = index === sides.length - 1;
  const problems: Problem[] = [];
  if (isLast && side.turn !== undefined) {
    problems.push(
      wrong([...path, "turn"], "the last side has no side to turn to", "leave the turn out, or add the side that follows", "key"),
    );
  }
  // Where the slope changes the guard may go straight on.
  const isBend = side.rake !== undefined || sides[index + 1]?.rake !== undefined;
  if (!isLast && side.turn === undefined && side.interrupted === undefined && !isBend) {
    problems.push(
      wrong(path, `side ${index + 1} does not say where the next side turns to`, "add it, for example turn: right 90 deg", "key"),
    );
  }
  if (side.turn !== undefined && side.turn === 0 && side.interrupted === undefined) {
    problems.push(
      wrong(
        [...path, "turn"],
        `a turn of ${angleDegrees(side.turn)} is no corner`,
        "write the two sides as one, or the angle that was measured",
      ),
    );
  }
  return [...problems, ...checkInterruption(side, path, isLast), ...checkStations(side, path, sides[index - 1])];
}

function checkStations({ stations, length, corner }: Side, path: JobPath, sideBefore: Side | undefined): readonly Problem[] {
  // One post at a corner stands where its sides meet.
  const [least, most] = [isOnePost(sideBefore?.corner) ? -SAME_mm : SAME_mm, length + (isOnePost(corner) ? SAME_mm : -SAME_mm)];
  return (stations ?? []).flatMap((station, index): readonly Problem[] => {
    const at = [...path, "stations", index];
    const before = stations?.[index - 1];
    if (station <= least || station >= most) {
      const fix = "measure to the middle of the post from the left-hand start of the side; it lies between 0 and the length";
      return [wrong(at, "this post stands outside of its side", fix)];
    }
    if (before === undefined || station > before + SAME_mm) return [];
    const isSame = station >= before - SAME_mm;
    const what = isSame ? "two posts stand at the same place" : "this post stands to the left of the one before it";
    return [wrong(at, what, "write the stations in order, from left to right as seen from the deck looking out")];
  });
}

/** Posts that stand already cannot be placed by the program. */
const checkExisting = ({ sides }: JobFile["guard"]): readonly Problem[] =>
  sides.flatMap((side, index) =>
    side.stations === undefined
      ? [
          wrong(
            ["guard", "sides", index],
            `the posts stand already, but side ${index + 1} does not say where`,
            "measure to the middle of each and add stations: [3 in, 5 ft 9 in, ...]",
            "key",
          ),
        ]
      : [],
  );

const checkNewPosts = (posts: JobFile["posts"], units: UnitSystem): readonly Problem[] =>
  posts.existing === true || posts["below datum"] !== undefined
    ? []
    : [
        wrong(
          ["posts"],
          'new posts need "below datum" for the cut list',
          `add the length of a post below the walking surface, for example below datum: ${units === "mm" ? "250 mm" : "10 in"}`,
          "key",
        ),
      ];

interface Member {
  readonly size: SizeText;
  readonly wall?: number | undefined;
  readonly material: string;
  readonly treated?: boolean | undefined;
}

function checkMember({ size, wall, material, treated }: Member, path: JobPath): readonly Problem[] {
  const problems: Problem[] = [];
  if (material === "wood") {
    if (treated === undefined) {
      problems.push(wrong(path, `${path.at(-1)} of wood must say whether it is treated`, "add treated: true or treated: false", "key"));
    }
    if (wall !== undefined)
      problems.push(wrong([...path, "wall"], "wood has no wall", "leave it out, or write the material of the tube", "key"));
    if (size.kind === "nominal" && lumberOf(size) === null) {
      // Of the same thickness: a 2x8 is not meant by 6x8.
      const near = nearest(
        size.name,
        lumberNames.filter((name) => name.split("x")[0] === size.numbers[0]),
      );
      const [thick, wide] = size.numbers;
      // Nobody sells lumber of a nominal 20 in: 45x45 is meant in mm.
      const isMetric = size.numbers.every((number) => Number(number) >= 20);
      const other = `or write both dressed sizes, for example ${isMetric ? `${thick} mm x ${wide} mm` : "3-1/2 in x 3-1/2 in"}`;
      const fix =
        near === null
          ? `use one of ${lumberNames.join(", ")}, ${other}`
          : `did you mean ${near}? Use one of ${lumberNames.join(", ")}, ${other}`;
      problems.push(wrong([...path, "size"], `${size.name} is no size of lumber that is known here`, fix));
    }
    return problems;
  }
  if (treated === true)
    problems.push(wrong([...path, "treated"], `${material} is not treated`, "leave it out; only wood is treated", "key"));
  if (size.kind === "nominal") {
    problems.push(
      wrong(
        [...path, "size"],
        `${size.name} is a size of lumber, not of ${material}`,
        "write both sizes with units and the wall, for example size: 50 mm x 50 mm and wall: 3 mm",
      ),
    );
  } else if (wall !== undefined && 2 * wall >= Math.min(...size.sizes)) {
    problems.push(wrong([...path, "wall"], "a wall this thick leaves nothing hollow", "check the wall, or leave it out for a solid bar"));
  }
  return problems;
}

/** The size of a post that is not like the others; it is of the others' material. */
const checkSize = (
  { size, wall }: { readonly size?: SizeText | undefined; readonly wall?: number | undefined },
  { material, treated }: JobFile["posts"],
  path: JobPath,
): readonly Problem[] => (size === undefined ? [] : checkMember({ size, wall, material, treated }, path));

function checkFrame(frame: JobFile["frame"]): readonly Problem[] {
  const { "top rail": top, "bottom rail": bottom, "gap below": gap } = frame;
  const problems = [...checkRail(top, ["frame", "top rail"]), ...(bottom ? checkRail(bottom, ["frame", "bottom rail"]) : [])];
  if (bottom === undefined && gap !== undefined && gap > 0) {
    problems.push(
      wrong(["frame", "gap below"], "there is no bottom rail that a gap could be below", "leave it out, or add the bottom rail", "key"),
    );
  }
  if (bottom !== undefined && gap === undefined) {
    problems.push(
      wrong(["frame"], 'a bottom rail needs "gap below", from the datum to its underside', "add it, for example gap below: 2 in", "key"),
    );
  }
  return problems;
}

function checkRail(rail: JobFile["frame"]["top rail"], path: JobPath): readonly Problem[] {
  const { size, lay } = rail;
  const problems = [...checkMember(rail, path), ...checkLumber(rail, path)];
  const isSquare = size.kind === "nominal" ? size.numbers[0] === size.numbers[1] : Math.abs(size.sizes[0] - size.sizes[1]) < SAME_mm;
  if (lay === undefined && !isSquare) {
    problems.push(wrong(path, `the ${path.at(-1)} does not say how it lies`, "add lay: flat or lay: edge", "key"));
  }
  return problems;
}

function checkCable(cable: JobFile["cable"]): readonly Problem[] {
  const stiffness = cable["axial stiffness"];
  const problems: Problem[] = [];
  if (breakingForce(cable) === null) {
    const what = `no breaking force is known for ${cable.construction} strand of this diameter and grade ${cable.grade}`;
    problems.push(wrong(["cable"], what, "add it from the strand's certificate, for example breaking force: 1780 lbf", "key"));
  }
  if (stiffness === undefined || (stiffness.low <= stiffness.nominal && stiffness.nominal <= stiffness.high)) return problems;
  return [
    ...problems,
    wrong(["cable", "axial stiffness"], "the three stiffnesses are not in order", "write the least as low and the greatest as high", "key"),
  ];
}

function checkSupply(supply: JobFile["supply"]): readonly Problem[] {
  if (supply.kind === "spool") return [];
  const { lengths, prices } = supply;
  const problems = lengths ? [...checkAscending(lengths, ["supply", "lengths"], "ready lengths")] : [];
  if (prices !== undefined && lengths === undefined) {
    problems.push(
      wrong(["supply", "prices"], "prices do not say for which lengths they are", "add lengths: with one length for each price", "key"),
    );
  } else if (prices !== undefined && lengths !== undefined && prices.length !== lengths.length) {
    const what = `there are ${prices.length} prices for ${lengths.length} lengths`;
    problems.push(wrong(["supply", "prices"], what, "write one price for each length, in the same order", "key"));
  }
  return problems;
}

const checkAscending = (values: readonly number[], path: JobPath, name: string): readonly Problem[] =>
  values.flatMap((value, index) =>
    index > 0 && value <= (values[index - 1] ?? 0) + SAME_mm
      ? [wrong([...path, index], `the ${name} do not rise from one to the next`, "write the shortest first, each once")]
      : [],
  );

function checkLimits(limits: NonNullable<JobFile["limits"]>): readonly Problem[] {
  const { "narrowest wall gap": least, "widest wall gap": most } = limits;
  if (least === undefined || most === undefined || least <= most) return [];
  return [wrong(["limits", "narrowest wall gap"], "the narrowest wall gap is wider than the widest", "exchange the two, or measure again")];
}

function checkTightening({ passes }: JobFile["tightening"]): readonly Problem[] {
  const last = passes?.at(-1);
  if (passes === undefined || last === 1) return [];
  return [wrong(["tightening", "passes", passes.length - 1], "the last pass does not reach the target", "end the list with 100 %")];
}
