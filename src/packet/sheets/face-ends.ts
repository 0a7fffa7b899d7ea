// What is said of ends that are held on the face of their post, wherever they stand?
import { faceEndsOf, faceOf, goesThroughOneWall, isOnFace, plainShankOf } from "../../plan/face-end.ts";
import { pierNamed } from "../../plan/pier.ts";
import type { Plan, RunEnd } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import { type Show, sourceMark } from "../show-number.ts";
import { faceName } from "../wording.ts";
import { listed, unique } from "./kit.ts";
import type { SurveyRow } from "./survey-rows.ts";

export const faceEnds = (plan: Plan): readonly RunEnd[] => faceEndsOf(plan).map(({ end }) => end);
export const faceIds = (plan: Plan): Text => listed(unique(faceEnds(plan).map(({ postId }) => postId)));

/** The face that the cable comes to: at a corner post the one that looks to its side. */
export function faceOfEnd({ verticals }: Plan, { postId, backFace }: RunEnd): Text {
  const corner = verticals.find(({ id }) => id === postId)?.corner;
  if (corner === undefined) return faceName[backFace === "left" ? "right" : "left"];
  return `face towards side ${backFace === "left" ? corner.nextId : corner.homeId}`;
}

/** Ends at an eye, on the face of a post or of a pier. */
export const eyeEnds = (plan: Plan): readonly RunEnd[] => plan.runs.flatMap(({ left, right }) => [left, right].filter(isOnFace));
export const eyeIds = (plan: Plan): Text => listed(unique(eyeEnds(plan).map(({ postId }) => postId)));

/** How far before the face the cable ends, at each of them. */
export function eyeDistances({ plan, show }: { readonly plan: Plan; readonly show: Show }): Text {
  const distances = eyeEnds(plan).map(({ kind, postId }) =>
    show.tapeBoth((kind === "anchor" ? pierNamed(plan.job, postId).anchor : faceOf(plan.job)).standOut.value),
  );
  return listed(unique(distances));
}

/** What holds there, in the words of the trade. */
export function fasteningName(plan: Plan): Text {
  const { fastening } = faceOf(plan.job);
  switch (fastening.kind) {
    case "lag screw":
      return "lag screw with an eye";
    case "tapped hole":
      return `stud ${fastening.thread} with an eye, in a tapped hole`;
    case "rivet nut":
      return `stud ${fastening.thread} with an eye, in a rivet nut`;
  }
}

/** Behind the size of the hole. */
export const faceWords = (plan: Plan, show: Show): Text =>
  plan.job.fittings.face === null
    ? ""
    : `; ${fasteningName(plan)}, its middle ${show.tape(plan.job.fittings.face.standOut.value)} from the face; the end fitting of the cable is pinned to it`;

/** A screw that is shorter or longer than this holds otherwise, or comes out at the back (common practice, no source). */
const FIT_mm = 0.8;

/** What is measured on the fitting that was bought. */
export function faceRows({ plan, show }: { readonly plan: Plan; readonly show: Show }): readonly SurveyRow[] {
  if (faceEnds(plan).length === 0) return [];
  const { fastening, hole, standOut, flange, rated } = faceOf(plan.job);
  const off = `off by more than ${show.fine(FIT_mm)} ${sourceMark("practice")}`;
  const key = (name: Text): Text => `fittings / face / ${name}`;
  return [
    ...(fastening.kind === "lag screw"
      ? ([
          [key("diameter"), "Lag screw: shank", show.diameter(fastening.diameter.value), "another size"],
          [key("depth"), "Lag screw: face of the post to its point", show.tapeBoth(fastening.depth.value), off],
          [key("thread length"), "Lag screw: thread, its tip included", show.tapeBoth(fastening.threadLength.value), "shorter"],
          [key("tip"), "Lag screw: tapered tip", show.diameter(fastening.tip.value), "longer"],
        ] as const)
      : ([[key("thread"), "Stud of the eye: thread", fastening.thread, "another"]] as const)),
    [key("hole"), "Hole tried in a scrap of the same post", show.diameter(hole.value), "the fastening turns by hand, or the scrap splits"],
    [key("stand-out"), "Eye: its middle from the face", show.tapeBoth(standOut.value), "more than this"],
    [key("flange"), "Flange on the face, across", show.diameter(flange.value), "wider than the post's face"],
    [
      key("rated"),
      "Working load of the eye, from its maker",
      rated === null ? "not known: asked for" : show.forceBoth(rated.value),
      rated === null ? "none to be had" : `below ${show.force(rated.value)}`,
    ],
  ];
}

/** For the sheet of questions: does the fastening hold by the checks here? */
export function faceQuestion(plan: Plan): readonly (readonly [Text, Text])[] {
  if (faceEnds(plan).length === 0) return [];
  const own = plan.checks.filter(({ id }) => id.startsWith("face-"));
  const fails = own.some(({ verdict }) => verdict === "fail");
  const { rated } = faceOf(plan.job);
  return [
    [
      `May the cables end at a ${fasteningName(plan)} in the face of ${faceIds(plan)} (engineer)? Which load is it rated for?`,
      `${fails ? "**not by the checks on Z-001: change it**" : "yes, by the checks on Z-001"}; ${rated === null ? "eye not rated: ask its maker" : `rated ${sourceMark(rated.source)}`}`,
    ],
  ];
}

/** "then opened to 5/16" for the first 1/4"": the pilot hole is too narrow for the plain shank of a lag screw. */
export function shankWords({ plan, show }: { readonly plan: Plan; readonly show: Show }): Text {
  const shank = plainShankOf(plan);
  return shank === null
    ? ""
    : `then opened to ${show.diameterOne(shank.diameter)} for the first ${show.tape(shank.length)}, the plain shank of the screw`;
}

/** Behind "every bore goes right through". */
export function blindWords(context: { readonly plan: Plan; readonly show: Show }): Text {
  const { plan } = context;
  if (plan.bores.some((bore) => goesThroughOneWall(bore, plan.job)))
    return ", but for the holes of ends on faces: **through the wall that the cable comes to, never through the far one**";
  const shank = shankWords(context);
  return `, but for the blind holes of ${faceEnds(plan).length === 0 ? "piers" : "ends on faces"}: as deep as written, with a stop on the bit${shank === "" ? "" : `, **${shank}**`}`;
}

/** Whether ends of this job hang on screws in wood. */
export const hasLags = (plan: Plan): boolean => faceEnds(plan).length > 0 && faceOf(plan.job).fastening.kind === "lag screw";

/** How a fastening goes into its hole. */
export function setWords(plan: Plan): Text {
  switch (faceOf(plan.job).fastening.kind) {
    case "lag screw":
      return "Lag screws waxed and turned in by hand through the eye, none hammered. Stopped when the flange lies flat: turned on, or back, a screw tears its thread out of the wood.";
    case "tapped hole":
      return "Threads cut square, cleaned and oiled; studs run in by hand to their flange and locked.";
    case "rivet nut":
      return "Rivet nuts set as their maker says, none turns; studs oiled, run in by hand to their flange and locked.";
  }
}
