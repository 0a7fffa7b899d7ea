// What do the notes under an elevation say?
import type { Plan } from "../../plan/plan.ts";
import type { RakePlan } from "../../plan/rake-plan.ts";
import { outsideOf } from "../../plan/sleeve.ts";
import type { Text } from "../packet.ts";
import { sidesAsHighAs } from "../sheets/set-off-words.ts";
import { sidesWord } from "../sheets/slopes.ts";
import type { Show } from "../show-number.ts";
import { floorWord } from "../wording.ts";
import { places } from "./kit.ts";
import { gapsOn, rakeOn } from "./raked.ts";
import { type Scene, verticalsIn } from "./side-scene.ts";
import { outlineOf } from "./turned-post.ts";

/** `index` counts the parts of a side from 0. */
export function notesOf(
  { plan, side, stretch }: Scene,
  show: Show,
  { index, count }: { readonly index: number; readonly count: number },
): Text {
  const stations = `Stations: middle of each post and spacer, from the left-hand start of side ${side.id}.`;
  if (index > 0) return "Sections, spacing and heights as on part 1.";
  const rake = rakeOn(plan, side);
  if (rake !== undefined) return rakeNotes(rake, { plan, stations, show });
  // Parts stand two to a page: what the first side with these heights says is not said again.
  const [first] = sidesAsHighAs(plan, side);
  if (count > 1 && first !== side) return `Sections, spacing and heights as on side ${first?.id ?? ""}. ${stations}`;
  const gaps = gapsOn(plan, side);
  const widest = Math.max(...gaps.map((gap) => gap.clear));
  const { frame, posts, spacers } = plan.job;
  const rails = `top rail ${frame.topRail.name}, ${frame.bottomRail === null ? "no bottom rail" : `bottom rail ${frame.bottomRail.name}`}`;
  const spacing = places(gaps.map((gap) => show.tape(gap.spacing)));
  return [
    `${plan.hardware.length > 0 ? "Hatched on posts: hardware, no bore there. " : ""}Posts ${outsideOf(plan.job).name}${othersOf(plan)}${posts.sleeve === null ? "" : " (broken lines: the wood inside)"}, spacers ${spacers.section.name}, ${rails}.`,
    `Spacing of the cables, also to the rails or the ${floorWord(plan.job)}: ${spacing}; widest clear gap ${show.tape(widest)}.`,
    `Heights: middle of the bore above the datum, ${plan.job.frame.datum}. In parentheses: faces of the rails, and spans${posts.sleeve === null ? "" : " from wood to wood"}.${levelNote(plan, side, show)}`,
    ...bendNotes(side.id, plan, show),
    ...turnedNotes({ plan, side, stretch }, show),
    stations,
  ].join(" ");
}

/** Its outline is wider than its section. */
const turnedNotes = (place: Pick<Scene, "plan" | "side" | "stretch">, show: Show): readonly Text[] =>
  verticalsIn(place).flatMap((vertical) => {
    const { turned, left, right } = outlineOf(vertical, place.side);
    const angle = show.angle(Math.abs(vertical.direction - place.side.direction));
    return turned === null
      ? []
      : [`${vertical.id} stands turned by ${angle}: two of its faces are seen, together ${show.tape(right - left)} wide.`];
  });

/** Posts of other sections, each section named once. */
function othersOf({ job }: Plan): Text {
  const names = new Set(job.posts.asFound.flatMap(({ section }) => section?.name ?? []));
  return [...names]
    .map((name) => ` (${job.posts.asFound.flatMap(({ post, section }) => (section?.name === name ? post : [])).join(", ")} ${name})`)
    .join("");
}

/** The cables of both sides of a corner post cross in it at two heights. */
function levelNote(plan: Plan, side: Scene["side"], show: Show): Text {
  if (plan.setOff === null) return "";
  const others = plan.sides.filter(({ isRaised }) => isRaised !== side.isRaised).map(({ id }) => id);
  return ` The cables lie ${show.tape(plan.setOff.by)} ${side.isRaised === true ? "higher" : "lower"} than on ${sidesWord(others)}.`;
}

interface RakeNotes {
  readonly plan: Plan;
  readonly stations: Text;
  readonly show: Show;
}

function rakeNotes(rake: RakePlan, { plan, stations, show }: RakeNotes): Text {
  const { slope, kind, gaps, rise, sideId } = rake;
  const surface = kind === "stair" ? "line of the nosings (dash-dotted)" : "surface of the ramp";
  return [
    `Rake ${show.angle(Math.abs(slope))}, ${rise > 0 ? "up" : "down"} to the right. Heights are plumb above the ${surface}, at the left-hand end here and at the middle of each post; the bores of its faces stand higher and lower: Z-401.`,
    `Spacing square to the cables: ${places(gaps.map((gap) => show.tape(gap.spacing)))}; along a post: ${places(gaps.map((gap) => show.tape(gap.plumb)))}. In parentheses: faces of the rails, plumb, and spans along the slope.`,
    ...sphereNote(rake, show),
    ...bendNotes(sideId, plan, show),
    stations,
  ].join(" ");
}

const sphereNote = ({ triangle }: RakePlan, show: Show): readonly Text[] =>
  triangle === null
    ? []
    : [`Circle on a step: the largest sphere that goes in under the ${triangle.under}, ${show.tape(triangle.sphere)}.`];

/** Where the cables pass a change of slope they bend, part of it in each of its two posts. */
const bendNotes = (sideId: Text, { transitions }: Plan, show: Show): readonly Text[] =>
  transitions
    .filter(({ leftSideId, rightSideId, passes }) => passes && (leftSideId === sideId || rightSideId === sideId))
    .map(({ id, bend }) => `Dots at ${id}: there the cables bend, by ${show.angle(bend)} in two posts.`);
