// Which values stand behind a mark of a sheet: a run, a cable, a bore, a post, a bay, a course?
import type { Plan } from "../plan/plan.ts";

export interface Behind {
  readonly title: string;
  readonly paths: readonly string[];
}

type Finder = (plan: Plan, mark: string) => Behind | null;

const boresOf = (plan: Plan, is: (bore: Plan["bores"][number]) => boolean): readonly string[] =>
  plan.bores.filter(is).map(({ mark }) => `bores.${mark}`);

const ofRun: Finder = (plan, mark) => {
  if (!plan.runs.some(({ id }) => id === mark)) return null;
  const runFields = ["left", "right", "pathLength", "outsideLength", "orderLength", "bends", "tension", "takeUp", "proof"];
  const climateFields = ["heat.worst", "cold.worst", "settling.worst", "both.worst", "covered", "shrinkage", "bedding", "visit"];
  const steps = plan.tightening.find(({ runId }) => runId === mark)?.steps ?? [];
  return {
    title: `run ${mark}`,
    paths: [
      ...runFields.map((field) => `runs.${mark}.${field}`),
      ...climateFields.map((field) => `climate.${mark}.${field}`),
      ...["orderName", "passes", "highest_overTarget", "movement_overLimit"].map((field) => `tightening.${mark}.${field}`),
      ...steps.map(({ number }) => `tightening.${mark}.steps.${number}.reading`),
      ...["low", "high"].map((field) => `frame.windows.${mark}.${field}`),
    ],
  };
};

/** R1-05 */
const ofCable: Finder = (plan, mark) => {
  const cable = plan.cables.find((one) => one.mark === mark);
  if (cable === undefined) return null;
  const { runId, course } = cable;
  const steps = plan.tightening.find((one) => one.runId === runId)?.steps.filter((step) => step.course === course) ?? [];
  const nth = course - 1;
  const stepFields = ["pass", "kind", "reading", "reading_exact", "reading_low", "reading_high", "turnsPerEnd", "pitch_Hz", "sag"];
  const days = plan.climate.find((one) => one.runId === runId)?.days ?? [];
  return {
    title: `cable ${mark}: run ${runId}, course ${course}`,
    paths: [
      `courses.${course}.${plan.runs.some(({ id, isRaised }) => id === runId && isRaised === true) ? "raised" : "height"}`,
      `runs.${runId}.orderLength`,
      `runs.${runId}.tension.target`,
      ...steps.flatMap(({ number }) => stepFields.map((field) => `tightening.${runId}.steps.${number}.${field}`)),
      `tightening.${runId}.plain.tensions[${nth}]`,
      ...["heat", "cold", "settling", "both"].map((cause) => `climate.${runId}.${cause}.each[${nth}]`),
      ...days.map((_, day) => `climate.${runId}.days[${day}].each[${nth}]`),
      ...boresOf(plan, (bore) => bore.runId === runId && bore.course === course).map((path) => `${path}.diameter`),
    ],
  };
};

const ofBore: Finder = (plan, mark) =>
  plan.bores.some((bore) => bore.mark === mark) ? { title: `bore ${mark}`, paths: [`bores.${mark}`] } : null;

/** P1 or S1 */
const ofVertical: Finder = (plan, mark) => {
  const own = plan.verticals.find(({ id }) => id === mark);
  if (own === undefined) return null;
  return {
    title: `${own.kind} ${mark}`,
    paths: [
      ...["role", "sideId", "station", "along", "across", "sectionName"].map((field) => `verticals.${mark}.${field}`),
      ...plan.frame.sides.flatMap(({ sideId, posts }) =>
        posts.some(({ postId }) => postId === mark) ? [`frame.sides.${sideId}.posts.${mark}`] : [],
      ),
      ...plan.pulls.filter(({ postId }) => postId === mark).map(({ runId }) => `pulls.${mark}/${runId}`),
      ...plan.cornerPulls.filter(({ postId }) => postId === mark).map(() => `cornerPulls.${mark}`),
      ...plan.frame.checks.filter(({ member }) => member === mark).map(({ id }) => `frame.checks.${id}.ratio`),
      ...boresOf(plan, ({ verticalId }) => verticalId === mark).flatMap((path) => [`${path}.height`, `${path}.diameter`]),
    ],
  };
};

/** A2, or A/B across a corner */
const ofBay: Finder = (plan, mark) => {
  if (!plan.bays.some(({ id }) => id === mark)) return null;
  const runs = plan.runs.filter(({ bayIds }) => bayIds.includes(mark));
  return { title: `bay ${mark}`, paths: [`bays.${mark}`, ...runs.map(({ id }) => `runs.${id}.spans.${mark}`)] };
};

const ofSide: Finder = (plan, mark) => {
  if (!plan.sides.some(({ id }) => id === mark)) return null;
  return {
    title: `side ${mark}`,
    paths: [`sides.${mark}`, ...(plan.frame.sides.some(({ sideId }) => sideId === mark) ? [`frame.sides.${mark}`] : [])],
  };
};

/** 05, or "course 5" */
const ofCourse: Finder = (plan, mark) => {
  const number = Number(/^(?:course )?(\d{1,3})$/.exec(mark)?.[1] ?? "0");
  if (!plan.courses.some((course) => course.number === number)) return null;
  return {
    title: `course ${number}`,
    paths: [
      `courses.${number}`,
      `gaps[${number - 1}]`,
      `gaps[${number}]`,
      ...boresOf(plan, ({ course }) => course === number).map((path) => `${path}.diameter`),
      ...plan.tightening.flatMap(({ runId, steps }) =>
        steps.filter(({ course }) => course === number).map((step) => `tightening.${runId}.steps.${step.number}.reading`),
      ),
    ],
  };
};

const ofCheck: Finder = (plan, mark) => {
  if (plan.frame.checks.some(({ id }) => id === mark)) return { title: `frame check ${mark}`, paths: [`frame.checks.${mark}`] };
  return plan.checks.some(({ id }) => id === mark) ? { title: `check ${mark}`, paths: [`checks.${mark}`] } : null;
};

const ofPiece: Finder = (plan, mark) =>
  plan.cuts.some((piece) => piece.mark === mark) ? { title: `piece ${mark}`, paths: [`cuts.${mark}`] } : null;

const finders: readonly Finder[] = [ofRun, ofCable, ofBore, ofVertical, ofBay, ofSide, ofCourse, ofCheck, ofPiece];

/** The values behind a mark, in small or capital letters; null where no sheet has it. */
export function behindMark(plan: Plan, mark: string): Behind | null {
  for (const one of [mark, mark.toUpperCase(), mark.toLowerCase()]) {
    for (const find of finders) {
      const found = find(plan, one);
      if (found !== null) return found;
    }
  }
  return null;
}

/** The first and the last mark of each kind. */
export function markExamples(plan: Plan): readonly string[] {
  const ends = (marks: readonly string[]): readonly string[] => {
    const [first, last] = [marks[0], marks.at(-1)];
    if (first === undefined || last === undefined) return [];
    return [first === last ? first : `${first} to ${last}`];
  };
  return [
    ...ends(plan.runs.map(({ id }) => id)),
    ...ends(plan.cables.map(({ mark }) => mark)),
    ...ends(plan.bores.map(({ mark }) => mark)),
    ...ends(plan.verticals.filter(({ kind }) => kind === "post").map(({ id }) => id)),
    ...ends(plan.verticals.filter(({ kind }) => kind === "pier").map(({ id }) => id)),
    ...ends(plan.verticals.filter(({ kind }) => kind === "spacer").map(({ id }) => id)),
    ...plan.sides.flatMap(({ id }) =>
      ends(plan.bays.filter(({ sideId, kind }) => sideId === id && kind !== "corner").map((bay) => bay.id)),
    ),
    ...plan.bays.filter(({ kind }) => kind === "corner").map(({ id }) => id),
    ...ends(plan.sides.map(({ id }) => id)),
    ...ends(plan.courses.map(({ number }) => courseMark(number))),
    ...ends(plan.checks.map(({ id }) => id)),
    ...ends(plan.cuts.map(({ mark }) => mark)),
  ];
}

const courseMark = (number: number): string => `${number}`.padStart(2, "0");

/** Every mark that can be asked. */
export const marksOf = (plan: Plan): readonly string[] => [
  ...plan.runs.map(({ id }) => id),
  ...plan.cables.map(({ mark }) => mark),
  ...plan.bores.map(({ mark }) => mark),
  ...plan.verticals.map(({ id }) => id),
  ...plan.bays.map(({ id }) => id),
  ...plan.sides.map(({ id }) => id),
  ...plan.courses.map(({ number }) => courseMark(number)),
  ...plan.frame.checks.map(({ id }) => id),
  ...plan.checks.map(({ id }) => id),
  ...plan.cuts.map(({ mark }) => mark),
];
