// Which numbers of the job cannot be built together, before anything is laid out?
import type { GuardEnd, Job } from "../job/job.ts";
import type { JobPath, Problem } from "../problem/problem.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { SAME_mm } from "../units/tolerance.ts";
import { cornerPostAt, ownStation } from "./corner-post.ts";
import { cornerProblems } from "./corner-problems.ts";
import { guardEndsOf } from "./outline.ts";
import { outsideAt } from "./sleeve.ts";

export function frameProblems(job: Job): readonly Problem[] {
  return [
    ...wallProblems(job.start, ["guard", "start"], job),
    ...wallProblems(job.end, ["guard", "end"], job),
    ...job.sides.flatMap(({ interrupted }, index) => {
      const path = ["guard", "sides", index, "interrupted"];
      if (interrupted === null) return [];
      return [...wallProblems(interrupted.end, [...path, "end"], job), ...wallProblems(interrupted.start, [...path, "start"], job)];
    }),
    ...cornerProblems(job),
    ...stationProblems(job),
    ...boreProblems(job),
    ...bushingProblems(job),
    ...heightProblems(job),
    ...rakedHardwareProblems(job),
  ];
}

const tape = (job: Job) => ({ units: job.units, style: "tape" }) as const;

function wallProblems(end: GuardEnd, path: JobPath, job: Job): readonly Problem[] {
  if (end.gap === null || end.gap <= job.limits.wallGap_max.value + SAME_mm) return [];
  return [
    {
      severity: "error",
      path: [...path, "gap"],
      what: `a gap of ${length(end.gap, tape(job))} beside the end post is wider than ${length(job.limits.wallGap_max.value, tape(job))}`,
      why: "the sphere of the opening rule would pass between post and wall (common practice, no source)",
      fix: "move the end post nearer to the wall, or add a post at the wall",
    },
  ];
}

/** Posts that stand already must leave room between them, and stand where their side begins and ends. */
function stationProblems(job: Job): readonly Problem[] {
  return job.sides.flatMap((side, index) => {
    const stations = side.stations ?? [];
    const halves = stations.map((_, nth) => outsideAt(job, index, nth).along / 2);
    const problems: Problem[] = [];
    stations.slice(1).forEach((station, before) => {
      const halfBoth = (halves[before] ?? 0) + (halves[before + 1] ?? 0);
      if (station - (stations[before] ?? 0) > halfBoth) return;
      const what = `posts at ${length(stations[before] ?? 0, tape(job))} and ${length(station, tape(job))} leave no room between them: their halves take ${length(halfBoth, tape(job))}`;
      problems.push({
        severity: "error",
        path: ["guard", "sides", index, "stations", before + 1],
        what,
        fix: "check the tape readings: a station is the middle of a post",
      });
    });
    problems.push(...cornerStationProblems(job, index));
    const { begins, ends } = guardEndsOf(job, index);
    const [first, last] = [stations[0], stations.at(-1)];
    if (begins !== null && first !== undefined) {
      problems.push(...endStationProblems({ end: begins, outer: first - (halves[0] ?? 0), which: "first", index, nth: 0 }, job));
    }
    if (ends !== null && last !== undefined) {
      const outer = side.length - last - (halves.at(-1) ?? 0);
      problems.push(...endStationProblems({ end: ends, outer, which: "last", index, nth: stations.length - 1 }, job));
    }
    return problems;
  });
}

/** One post at a corner is a station of both its sides. */
function cornerStationProblems(job: Job, index: number): readonly Problem[] {
  const side = job.sides[index];
  if (side?.stations == null) return [];
  const [before, behind] = [cornerPostAt(job, index - 1), cornerPostAt(job, index)];
  const last = side.stations.length - 1;
  const places = [
    ...(before === null ? [] : [{ nth: 0, which: "first", due: before.nextStation }]),
    ...(behind === null ? [] : [{ nth: last, which: "last", due: ownStation(side.length, behind) }]),
  ];
  return places.flatMap(({ nth, which, due }): readonly Problem[] => {
    const given = side.stations?.[nth] ?? Number.NaN;
    if (Math.abs(given - due) <= job.limits.tapeStep.value + SAME_mm) return [];
    return [
      {
        severity: "error",
        path: ["guard", "sides", index, "stations", nth],
        what: `the ${which} post of side ${side.id} makes the corner by itself: its middle is due at ${length(due, tape(job))}, not at ${length(given, tape(job))}`,
        why: "a side is measured to the corner point, where the lines of the bores cross, and the post stands astride of it",
        fix: "measure the side and the station again, or correct the one that is wrong",
      },
    ];
  });
}

interface EndStation {
  readonly end: GuardEnd;
  /** From the end of the side to the outer face of its post. */
  readonly outer: Mm;
  readonly which: "first" | "last";
  readonly index: number;
  readonly nth: number;
}

/** A side is measured from wall or outer face to wall or outer face: its first and last post must stand there. */
function endStationProblems({ end, outer, which, index, nth }: EndStation, job: Job): readonly Problem[] {
  if (end.kind === "pier") return outer > SAME_mm ? [] : [postInPier(which, index, nth)];
  const gap = end.gap ?? 0;
  if (Math.abs(outer - gap) <= job.limits.tapeStep.value + SAME_mm) return [];
  const side = job.sides[index]?.id ?? "";
  const off = length(Math.abs(outer), tape(job));
  const where = `the ${which === "first" ? "start" : "end"} of side ${side}`;
  const reach = which === "first" ? "" : "length of the side - ";
  const problem = { severity: "error", path: ["guard", "sides", index, "stations", nth] } as const;
  return end.gap === null
    ? [
        {
          ...problem,
          what: `the outer face of the ${which} post stands ${off} ${outer < 0 ? "beyond" : "inside"} ${where}, which is measured to that face`,
          fix: `make the station and the side agree: station = ${reach}half the post; hook the tape on the outer face and read again`,
        },
      ]
    : [
        {
          ...problem,
          what: `the ${which} post stands ${off} ${outer < 0 ? "beyond" : "from"} the wall, but the gap is given as ${length(gap, tape(job))}`,
          fix: `make the station and the gap agree: station = ${reach}${which === "first" ? "gap + half the post" : "gap - half the post"}`,
        },
      ];
}

const postInPier = (which: EndStation["which"], index: number, nth: number): Problem => ({
  severity: "error",
  path: ["guard", "sides", index, "stations", nth],
  what: `the ${which} post stands in the pier: its side is measured from the face of the pier`,
  fix: "check the tape readings: the pier is no post and has no station",
});

/** A bushing lies in its bore. */
function bushingProblems(job: Job): readonly Problem[] {
  const { bushing } = job.fittings;
  const { material, along, name } = job.posts.section;
  if (material !== "wood" || bushing.length.value <= along) return [];
  return [
    {
      severity: "error",
      path: ["fittings", "bushing", "length"],
      what: `a bushing of ${length(bushing.length.value, tape(job))} is longer than a bore through a post of ${name}`,
      fix: "measure what sits in the bore, without its rim",
    },
  ];
}

/** A bore wider than its post, or a stud bore smaller than the cable, cannot be meant. */
function boreProblems(job: Job): readonly Problem[] {
  const { fittings, cable, posts } = job;
  const bores = [
    [fittings.passBore.value, ["fittings", "pass bore"]],
    [fittings.stud.bore.value, ["fittings", "stud", "bore"]],
    [fittings.grip.bore.value, ["fittings", "grip", "bore"]],
    [fittings.grip.counterbore.value, ["fittings", "grip", "counterbore"]],
    [fittings.grip.boreNoBack.value, ["fittings", "grip", "bore without back"]],
    [fittings.bushingBore.value, ["fittings", "bushing bore"]],
  ] as const;
  const size = (value: Mm): string => length(value, { units: job.units, decimals: 1, step: 1 / 64 });
  return bores.flatMap(([bore, path]): readonly Problem[] => {
    if (bore < cable.diameter) {
      return [
        {
          severity: "error",
          path,
          what: `a bore of ${size(bore)} is smaller than the cable of ${size(cable.diameter)}`,
          fix: "measure the fitting and give its bore",
        },
      ];
    }
    if (bore > posts.section.across / 2) {
      return [
        {
          severity: "error",
          path,
          what: `a bore of ${size(bore)} takes more than half of a post of ${posts.section.name}`,
          fix: "check the bore, or use a wider post",
        },
      ];
    }
    return [];
  });
}

/** Courses that are moved past hardware are level; a rake's rails would have to be asked too. */
function rakedHardwareProblems(job: Job): readonly Problem[] {
  if (job.posts.hardware.length === 0 || job.sides.every(({ rake }) => rake === null)) return [];
  return [
    {
      severity: "error",
      path: ["posts", "hardware"],
      what: "hardware on the posts cannot be kept clear of together with a side that slopes",
      fix: "write the raked sides as a job of their own, or set out the bores beside the hardware by hand and leave it out here",
    },
  ];
}

/** Raked sides have heights and checks of their own. */
function heightProblems(job: Job): readonly Problem[] {
  if (job.sides.every(({ rake }) => rake !== null)) return [];
  const height = job.frame.gapBelow + (job.frame.bottomRail?.depth ?? 0) + job.frame.clearOpening + job.frame.topRail.depth;
  const { value, source, where } = job.code.guardHeight_min;
  if (height >= value - SAME_mm) return [];
  return [
    {
      severity: "warning",
      path: ["frame", "clear opening"],
      what: `the guard is ${length(height, tape(job))} high; ${job.code.edition} asks for at least ${length(value, tape(job))}`,
      why: `${source}, ${where}`,
      fix: "raise the top rail; the packet is marked NOT FOR CONSTRUCTION until it is high enough",
    },
  ];
}
