// Where in the plan does a path lead, and how is a place of the plan named?

/** A value at a place of the plan. */
export interface Place {
  /** With marks for list entries: runs.R1.tension.target. */
  readonly path: string;
  /** Counted from 0: runs[0].tension.target. */
  readonly jsonPath: string;
  /** runs.*.tension.target */
  readonly pattern: string;
  /** What the stars stand for: R1. */
  readonly keys: readonly string[];
  readonly value: unknown;
  /** What the value is an entry of. */
  readonly holder: unknown;
}

/** The marks by which the entries of a list are told apart; entries of other lists are counted from 0. */
const marks: Readonly<Record<string, readonly string[]>> = {
  sides: ["id"],
  rakes: ["sideId"],
  transitions: ["id"],
  verticals: ["id"],
  bays: ["id"],
  courses: ["number"],
  runs: ["id"],
  "runs.*.spans": ["bayId"],
  "runs.*.takeUp.ends": ["postId"],
  bores: ["mark"],
  cables: ["mark"],
  tightening: ["runId"],
  "tightening.*.passes": ["number"],
  "tightening.*.steps": ["number"],
  "tightening.*.plain.steps": ["course"],
  pulls: ["postId", "runId"],
  cornerPulls: ["postId"],
  climate: ["runId"],
  "frame.sides": ["sideId"],
  "frame.sides.*.posts": ["postId"],
  "frame.checks": ["id"],
  "frame.checks.*.parts": ["name"],
  "frame.windows": ["runId"],
  "frame.remedy.checks": ["kind"],
  checks: ["id"],
  cuts: ["mark"],
  "job.sides": ["id"],
};

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The mark of an entry of the list at `pattern`; null where its entries have none. */
function markOf(pattern: string, entry: unknown): string | null {
  const fields = marks[pattern];
  if (fields === undefined || !isRecord(entry)) return null;
  return fields.map((field) => `${entry[field]}`).join("/");
}

const START: Omit<Place, "value"> = { path: "", jsonPath: "", pattern: "", keys: [], holder: null };

const under = (path: string, name: string): string => (path === "" ? name : `${path}.${name}`);

function field(place: Place, name: string): Place {
  return {
    path: under(place.path, name),
    jsonPath: under(place.jsonPath, name),
    pattern: under(place.pattern, name),
    keys: place.keys,
    value: isRecord(place.value) ? place.value[name] : undefined,
    holder: place.value,
  };
}

function entry(place: Place, list: readonly unknown[], index: number): Place {
  const mark = markOf(place.pattern, list[index]);
  const twice = mark !== null && list.some((other, nth) => nth < index && markOf(place.pattern, other) === mark);
  const key = mark === null || twice ? `[${index}]` : mark;
  return {
    path: mark === null || twice ? `${place.path}${key}` : `${place.path}.${key}`,
    jsonPath: `${place.jsonPath}[${index}]`,
    pattern: `${place.pattern}.*`,
    keys: [...place.keys, key],
    value: list[index],
    holder: list,
  };
}

/** The place that a path names, by marks (runs.R1), by numbers from 0 (runs[0], runs.0) or both; undefined where it leads nowhere. */
export function placeAt(root: unknown, path: string): Place | undefined {
  let place: Place = { ...START, value: root };
  for (const step of path
    .replace(/\[(\d+)\]/g, ".[$1]")
    .replace(/^\./, "")
    .split(".")) {
    const next = stepTo(place, step);
    if (next === undefined) return undefined;
    place = next;
  }
  return place;
}

function stepTo(place: Place, step: string): Place | undefined {
  const { value } = place;
  if (isRecord(value)) return Object.hasOwn(value, step) ? field(place, step) : undefined;
  if (!Array.isArray(value)) return undefined;
  const list: readonly unknown[] = value;
  const marked = list.findIndex((one) => markOf(place.pattern, one) === step);
  const counted = marks[place.pattern] === undefined ? /^\[?(\d+)\]?$/.exec(step) : /^\[(\d+)\]$/.exec(step);
  const index = marked >= 0 ? marked : Number(counted?.[1] ?? "-1");
  return index >= 0 && index < list.length ? entry(place, list, index) : undefined;
}

/** Every value below a place that is no list and no record, in the order of the plan. */
export function leavesBelow(place: Place): readonly Place[] {
  const leaves: Place[] = [];
  const walk = (at: Place): void => {
    const { value } = at;
    if (Array.isArray(value)) for (let index = 0; index < value.length; index++) walk(entry(at, value, index));
    else if (isRecord(value)) for (const name of Object.keys(value)) walk(field(at, name));
    else leaves.push(at);
  };
  walk(place);
  return leaves;
}

export const wholePlan = (root: unknown): Place => ({ ...START, value: root });

/** Whether a value stands in the plan together with its source. */
export const isCited = (
  value: unknown,
): value is { readonly value: unknown; readonly source: string; readonly where: string; readonly note?: string } =>
  isRecord(value) && "value" in value && typeof value["source"] === "string" && typeof value["where"] === "string";
