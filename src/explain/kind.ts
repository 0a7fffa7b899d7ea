// What does a number of the plan count: millimetres, newtons, turns?

import type { CheckPart, FrameCheck } from "../plan/frame-plan.ts";
import type { Measure } from "../plan/plan.ts";
import type { Place } from "./path.ts";
import type { Kind } from "./trace.ts";

const kindOfUnit: Readonly<Record<CheckPart["unit"], Kind>> = {
  MPa: "stress",
  N: "force",
  "N/mm": "line load",
  "N mm": "moment",
  mm: "length",
  mm2: "area",
  mm3: "section modulus",
  "1": "share",
};

/** The first pattern that fits says what a number is. */
const kinds: readonly (readonly [RegExp, Kind])[] = [
  [/_cents(\.\*)?$/, "money"],
  [/_Hz(\.(low|nominal|high))?$/, "frequency"],
  [/_percent(\.value)?$/, "percent"],
  [/_kgPerM\.value$/, "mass"],
  [/_perMm\.value$/, "per length"],
  [/_NmmPerRad$|^frame\.posts\.base\.value$/, "turn stiffness"],
  [/_Nmm(\.value)?$/, "moment"],
  [/temperature$|^job\.site\.(reference|coldest|warmest)\.value$/, "temperature"],
  [/months(\.value)?$/, "months"],
  [/expansion\.\w+\.value$/, "per degree"],
  [/modulus(_min)?\.value$/, "stress"],
  [/\.stiffness\.value\.\w+$/, "axial stiffness"],
  [/\.(turn|angle|direction|bend|slope|turned|cutAngle|skew|twist)$|^job\.bearing$|(bushingAngle|Turn_max)\.value$/, "angle"],
  [/(^|\.)(turns\w*|firstTurns\.value)$/, "turns"],
  [/(Share|Share_max|band|friction)\.value$|\.(share|ratio|farRatio|bound|targetShare)$|_over(Target|Limit)$|\.overLimit$/i, "share"],
  [/^job\.tightening\.passes\.value\.\*$/, "share"],
  [/\.farShare$/, "share"],
  [
    /^rakes\.\*\.(rise|slopeLength|aboveNosings|triangle\.\w+(\.value)?|(openingSphere|guardHeight_min)\.value)$|\.rake\.(step\.\w+|nosing\.value)$/,
    "length",
  ],
  [/\.(datum|datum_from|datum_to|z|plumb|entryHeight|exitHeight|sphere|longest)$/, "length"],
  [
    /\.(index|sideIndex|number|course|pass|cables|runs|fittings|holes|net|spare|quantity|count|ordersTried|passes_\d+|morePasses)$/,
    "count",
  ],
  [/(order|slackCourses)\.\*$|(passes_max|bends_max)\.value$/, "count"],
  [/\.criterion\.(force|weight|tension)$|(breakingForce|readingStep|sagWeight)\.value$/, "force"],
  [
    /\.tension\.(target|low|high|covered|required|least)$|\.(tension|load|required|pull|baseShear|baseThrust|topRailThrust|bottomRailThrust)$/,
    "force",
  ],
  [/pushThrough\.\w+$|\.proof\.(low|high)$|\.reading(_\w+)?$|\.tensions\.\*$|\.each\.\*$|\.worst$|pull_(target|high)$/, "force"],
  [/^climate\.\*\.(covered|days\.\*\.(low|high))$|^frame\.windows\..*(low|high|target)$|^target\.(required|workingLimit)$/, "force"],
  [/^tightening\.\*\.(days\.\*\.(added|readings\.\*|end\.(low|high))|most_onAnyDay)$/, "force"],
  [/^job\.fittings\.(face|bushing)\.rated\.value$|\.pier\.anchor\.rated\.value$/, "force"],
  [/\.pier\.(height|anchor\.\w+\.value)$/, "length"],
  [/engagement_min\.value$/, "share"],
  [/^job\.spacers\.fixing\.value$/, "force"],
  [/^job\.(calibration\..*\.force|posts\.base\.value\.pull)$/, "force"],
  [
    /\.(x|y|along|across|wall|depth|width|length|station|stations\.\*|startsAt|endsAt|free|free_max\.value|free_stop|demandSpan)$/,
    "length",
  ],
  [/^verticals\.\*\.core\.recess$|^bores\.\*\.sleeveHole$/, "length"],
  [/^verticals\.\*\.(lean|leansAlong\.slant)$/, "share"],
  [/^verticals\.\*\.leansAlong\.(height|low|high|gap\.(widest|narrowest))$/, "length"],
  [/^bays\.\*\.longestCourse$/, "count"],
  [/^verticals\.\*\.corner\.(setback|inset|chord|nextStation)$/, "length"],
  [/^verticals\.\*\.corner\.nextIndex$/, "count"],
  [/^job\.posts\.asFound\.\*\.(leans\.(out|right|over)|section\.\w+)$/, "length"],
  [/^courses\.\*\.(moved|raised)$|^setOff\.(by|least)$|^hardware\.\*\.(from|to)$|^job\.posts\.hardware\.\*\.(from|to)$/, "length"],
  [/\.(height|height_exact|spacing|clear|bottom|top|guardHeight|offset|seat|at|diameter|drilledLength|deepest|bitLength_min)$/, "length"],
  [/\.(pathLength|outsideLength|orderLength|elongation|bedding|seating|closing|travel\w*|thread\w*|reserve|slack|slackToPull)$/, "length"],
  [/\.sag(_max)?(\.\w+)?$|\.(deflection|movement|pieceLength|stockLength|offcut|bought|used|bought_bound)$/, "length"],
  [/^target\.worst(Span|Spacing)$|^climate\.\*\.shrinkage\.(left|right)$|movement_max\.value$/, "length"],
  [
    /^job\.(code|posts|fittings|stock|supply|limits|tightening|frame)\.\w+(\.\w+)*?(\.value)?(\.\*)?$|(^job\.(start|end|.*interrupted\.(start|end))|^sides\.\*\.(begins|ends))\.gap$|interrupted\.(width|out)$/,
    "length",
  ],
];

/** What a number at a place counts; null for a place that holds no number. */
export function kindAt({ pattern, value, holder }: Pick<Place, "pattern" | "value" | "holder">): Kind | null {
  if (typeof value !== "number") return null;
  return stated(pattern, holder) ?? kinds.find(([fits]) => fits.test(pattern))?.[1] ?? null;
}

/** Rows of checks carry their own unit. */
function stated(pattern: string, holder: unknown): Kind | null {
  if (/^checks\.\*\.(demand|limit)\.value$/.test(pattern)) return (holder as Measure).kind;
  if (/^frame\.checks\.\*\.(demand|capacity|parts\.\*\.value)$/.test(pattern)) return kindOfUnit[(holder as CheckPart).unit];
  if (!/^frame\.checks\.\*\.factors\.\*\.value$/.test(pattern)) return null;
  return /^(F\w+|E|stress .*)$/.test((holder as FrameCheck["factors"][number]).name) ? "stress" : "share";
}
