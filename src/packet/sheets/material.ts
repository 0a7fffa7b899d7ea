// What does the material of the posts ask of those who bore it: words for wood, treated wood and metal?
import type { Wood } from "../../job/site.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { unique } from "./kit.ts";
import { piersOf } from "./piers.ts";

export const isWood = ({ job }: Plan): boolean => job.posts.section.material === "wood";
export const isTreated = (plan: Plan): boolean => isWood(plan) && plan.job.posts.treatment === "treated";
export const isTube = ({ job }: Plan): boolean => job.posts.section.wall !== null;

/** What is done to a bore before a cable goes in, to be confirmed. */
export function boreDone(plan: Plan): Text {
  if (isTreated(plan)) {
    return `Every bore${onlyWood(plan)} treated before a cable goes in ${sourceMark("wood-preservative-m4")}.`;
  }
  return isWood(plan)
    ? "Every bore cleaned out, edges broken, chips brushed off."
    : `${isTube(plan) ? "Both walls of every bore" : "Every bore"} deburred; ${bareMetal(plan)}; swarf brushed off stainless parts.`;
}

/** An anchor does not hold in a hole with wood preservative. */
export function onlyWood(plan: Plan): Text {
  const ids = piersOf(plan).map(({ id }) => id);
  return ids.length === 0 ? "" : ` in wood, none in ${ids.join(" or ")},`;
}

/** What bare metal in a bore needs. */
function bareMetal({ job }: Plan): Text {
  switch (job.posts.section.material) {
    case "steel":
      return "bare steel touched up cold, with zinc paint";
    case "aluminium":
      return "bare metal kept apart from stainless by plastic sleeves and washers";
    default:
      return "heat tint and dust of other steel cleaned off";
  }
}

/** The same as rules to keep. */
export function boreRule(plan: Plan): Text | null {
  if (isTreated(plan)) {
    return `Treat every bore and cut in treated wood before the cable goes in ${sourceMark("wood-preservative-m4")}. Wipe off what is too much.`;
  }
  switch (plan.job.posts.section.material) {
    case "wood":
      return null;
    case "stainless":
      return "Keep carbon steel off the posts: its dust rusts on them.";
    default:
      return "Touch up bare metal at bores, cold. Keep it apart from stainless steel with plastic sleeves and washers.";
  }
}

export const woodName = ({ species, grade, incised }: Wood): Text => `${species} ${grade}${incised ? ", incised" : ""}`;

/** Of which wood or metal the pieces of a section are bought: the grade that the frame was computed with, and whether they are treated. */
export function stockWords({ job }: Plan, sectionName: Text): Text {
  const { posts, spacers, frame } = job;
  const members = [
    ...(posts.existing ? [] : [{ ...posts.section, wood: posts.wood, treatment: posts.treatment }]),
    { ...spacers.section, wood: spacers.wood, treatment: spacers.treatment },
    { ...frame.topRail, treatment: frame.topRailTreatment },
    ...(frame.bottomRail === null ? [] : [{ ...frame.bottomRail, treatment: frame.bottomRailTreatment }]),
    ...(posts.sleeve === null ? [] : [{ ...posts.sleeve, wood: null, treatment: null }]),
  ];
  return unique(
    members
      .filter(({ name }) => name === sectionName)
      .map(({ material, wood, treatment }) =>
        material === "wood"
          ? [wood === null ? "wood" : woodName(wood.value), ...(treatment === null ? [] : [treatment])].join(", ")
          : material,
      ),
  ).join("; ");
}
