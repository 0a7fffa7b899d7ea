// What can be wrong with wood, warmth and measurements although each value reads well by itself?
import type { JobPath, Problem } from "../problem/problem.ts";
import { printedRuler, printerError_max } from "../tables/practice.ts";
import { woodStrength } from "../tables/timber-strength.ts";
import { millimetres } from "../units/print.ts";
import { woodOf } from "./frame-defaults.ts";
import type { JobFile } from "./schema.ts";
import { wrong } from "./wrong.ts";

/** A 2x4 of each species and grade stands in the tables, so what it lacks no other size has. */
const USUAL_PIECE = { thickness: 38.1, width: 88.9 };

type LumberFile = Parameters<typeof woodOf>[0];

/** Species and grade belong to wood, and must have values of their own. */
export function checkLumber(file: LumberFile, path: JobPath): readonly Problem[] {
  if (file.material !== "wood") {
    return (["species", "grade", "incised"] as const)
      .filter((key) => file[key] !== undefined)
      .map((key) => wrong([...path, key], `${file.material} has no ${key}`, "leave it out; only wood has one"));
  }
  const wood = woodOf(file, "")?.value;
  if (wood === undefined || woodStrength({ ...wood, ...USUAL_PIECE }) !== null) return [];
  const what = `no design values are known for ${wood.species} ${wood.grade}`;
  return [
    wrong(
      [...path, file.grade === undefined ? "species" : "grade"],
      what,
      "write No.1 or No.2, or another species that is stamped on the wood",
    ),
  ];
}

export function checkSite(site: NonNullable<JobFile["site"]>): readonly Problem[] {
  const { coldest, warmest, reference } = site;
  const problems: Problem[] = [];
  if (coldest !== undefined && warmest !== undefined && coldest >= warmest) {
    problems.push(wrong(["site", "coldest"], "the coldest day is not colder than the warmest", "exchange the two, or check their units"));
  }
  const isOff = reference !== undefined && (reference < (coldest ?? reference) || reference > (warmest ?? reference));
  if (isOff) {
    problems.push(
      wrong(
        ["site", "reference"],
        "the reference temperature lies outside the site's range",
        "take one between the coldest and the warmest day",
      ),
    );
  }
  return problems;
}

export function checkCalibration({ turns }: NonNullable<JobFile["calibration"]>): readonly Problem[] {
  if (turns === undefined) return [];
  const path = ["calibration", "turns"];
  const byGauge = [turns.from, turns.to].filter((reading) => reading !== undefined).length;
  const byPitch = [turns["from pitch"], turns["to pitch"]].filter((reading) => reading !== undefined).length;
  const example = "from: 100 lbf and to: 250 lbf, or from pitch: 30 Hz and to pitch: 47 Hz with span: 34-1/2 in";
  if (byGauge + byPitch !== 2 || byGauge === 1) {
    return [wrong(path, "the turns need two readings of one kind, before and after", `write ${example}`)];
  }
  if (byPitch === 2 && turns.span === undefined) {
    return [
      wrong(path, "a pitch says nothing without the span that was plucked", "add span: its free length between the faces of the posts"),
    ];
  }
  return [];
}

const MOST_NAME_letters = 30;

/** A page that is off by more was not printed at 100 %: no correction makes up for a setting that may be another one tomorrow. */
export function checkPrinter(printer: NonNullable<JobFile["printer"]>): readonly Problem[] {
  const ruler = printedRuler.value;
  const isLong = printer.name.length > MOST_NAME_letters;
  const long = `the name of the printer has ${printer.name.length} letters`;
  return [
    ...(isLong ? [wrong(["printer", "name"], long, `shorten it to ${MOST_NAME_letters} or fewer: it stands on every template`)] : []),
    ...(["across", "up"] as const)
      .filter((key) => Math.abs(printer[key] - ruler) > ruler * printerError_max.value)
      .map((key) =>
        wrong(
          ["printer", key],
          `a ruler of ${millimetres(ruler)} that measures ${millimetres(printer[key], { decimals: 1 })} was printed at a wrong setting`,
          'print the page again at 100 %, not "fit", and measure the ruler of 150 mm; a printer itself is off by at most 3 %',
        ),
      ),
  ];
}
