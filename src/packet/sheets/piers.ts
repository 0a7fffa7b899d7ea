// What is said of anchors in piers, wherever they stand?
import type { Pier } from "../../job/pier.ts";
import { anchorEndsOf, momentWithoutRails, pierNamed } from "../../plan/pier.ts";
import type { Bay, Plan } from "../../plan/plan.ts";
import type { StepItem, Text } from "../packet.ts";
import { type Show, sourceMark } from "../show-number.ts";
import { unique } from "./kit.ts";
import type { SurveyRow } from "./survey-rows.ts";

interface PierContext {
  readonly plan: Plan;
  readonly show: Show;
}

export interface PierAt extends Pier {
  readonly id: string;
}

/** From left to right, each once. */
export const piersOf = (plan: Plan): readonly PierAt[] =>
  unique(anchorEndsOf(plan).map(({ end }) => end.postId)).map((id) => ({ id, ...pierNamed(plan.job, id) }));

/** For the table of bores. */
export const pierBoreRules = (plan: Plan): readonly Text[] =>
  piersOf(plan).map(
    ({ id }) =>
      `${id}: blind holes, as deep as written, by a masonry bit of the size that the anchor's instructions name, after the search for hidden steel. No wood preservative in them: an anchor does not hold in it.`,
  );

/** ", and on PR1": what else is marked where posts and spacers are. */
export const pierMarked = (plan: Plan): Text =>
  piersOf(plan)
    .map(({ id }) => `, and to ${id}`)
    .join("");

/** Behind what is searched in the path of every bore, before the first of them. */
export const pierSearched = (plan: Plan): Text =>
  piersOf(plan)
    .map(({ id }) => ` ${id} searched for hidden steel and pipes.`)
    .join("");

interface Beside {
  readonly pierId: string;
  readonly spacerId: string;
  readonly bay: Bay;
}

/** Spacers beside piers: a hammer drill is longer than a drill, and nothing makes it shorter. */
const spacersBeside = (plan: Plan): readonly Beside[] =>
  piersOf(plan).flatMap(({ id }) => {
    const bay = plan.bays.find(({ leftId, rightId }) => leftId === id || rightId === id);
    const next = plan.verticals.find((upright) => upright.id === (bay?.leftId === id ? bay.rightId : bay?.leftId));
    return bay === undefined || next?.kind !== "spacer" ? [] : [{ pierId: id, spacerId: next.id, bay }];
  });

/** For the table of bores: what stands in the way of a hammer drill. */
export const pierRoomRules = ({ plan, show }: PierContext): readonly Text[] =>
  spacersBeside(plan).map(
    ({ pierId, spacerId, bay }) =>
      `${pierId}: a hammer drill with its bit may not fit into ${bay.id}, ${show.tapeDown(bay.free)} long. Bore ${pierId} before ${spacerId} is fixed, or take ${spacerId} out for it.`,
  );

/** The same in short sentences. */
const pierRoomSteps = ({ plan, show }: PierContext): readonly StepItem[] =>
  spacersBeside(plan).map(({ spacerId, bay }) => ({
    text: `No room for the hammer drill beside ${spacerId}? Take ${spacerId} out, bore, and fix it again.`,
    more: `Bay ${bay.id} is only ${show.tapeDown(bay.free)} long.`,
  }));

/** With what an engineer or the authority accepts. */
export const pierAccepted = (plan: Plan): Text =>
  piersOf(plan)
    .map(({ id }) => ` Pier ${id} with its anchors, by an engineer.`)
    .join("");

/** What an anchor or its pier does before it fails: whoever sees it stops. */
export const pierFails = (plan: Plan): Text | null => {
  const ids = piersOf(plan).map(({ id }) => id);
  return ids.length === 0 ? null : `an anchor turns, slips or bends, or ${ids.join(" or ")} cracks, opens at a joint or moves`;
};

const isMasonry = ({ of }: Pick<Pier, "of">): boolean => of !== "concrete";

/** "pier of brick". */
const pierName = ({ of }: Pick<Pier, "of">): Text => `pier of ${of}`;

const anchorName: Readonly<Record<Pier["anchor"]["kind"], Text>> = {
  adhesive: "anchor rods set in adhesive",
  expansion: "expansion anchors",
  screw: "screw anchors",
};

const anchorText = ({ anchor }: Pick<Pier, "anchor">): Text => `${anchorName[anchor.kind]}, each with an eye`;

/** Behind the size of the hole. */
export const anchorWords = (plan: Plan, show: Show): Text => {
  const [first] = piersOf(plan);
  return first === undefined
    ? ""
    : `; ${anchorText(first)}, its middle ${show.tape(first.anchor.standOut.value)} from the face; the end fitting of the cable is pinned to it`;
};

/** What is measured on the pier, and on the anchors that were bought. */
export const pierRows = ({ plan, show }: PierContext): readonly SurveyRow[] =>
  piersOf(plan).flatMap(({ id, of, along, across, height, anchor }): readonly SurveyRow[] => {
    const key = (name: Text): Text => `kind: pier / ${name}`;
    const top = height - Math.max(...plan.courses.map((course) => course.height));
    return [
      [
        key("of"),
        `${id}: what it is made of, solid all through where it is bored`,
        of,
        "hollow, cracked, loose, damp or capped over a void",
      ],
      [
        key("along, across"),
        `${id}: along the guard, and square to it`,
        `${show.tapeBoth(along)}, ${show.tapeBoth(across)}`,
        "less; or the line of the cables off its middle",
      ],
      [key("height"), `${id}: its top above the datum`, show.tapeBoth(height), `less: the top anchor has ${show.tape(top)} above it`],
      [
        key("anchor / hole, depth"),
        `${id}: hole and its depth, in the instructions of the anchor`,
        `${show.diameter(anchor.hole.value)} x ${show.tape(anchor.depth.value)}`,
        "anything else",
      ],
      [
        key("anchor / stand-out, flange"),
        `${id}: middle of the eye from the face; flange across`,
        `${show.tapeBoth(anchor.standOut.value)}; ${show.diameter(anchor.flange.value)}`,
        "more than this",
      ],
      [
        key("anchor / rated"),
        `${id}: working load of one anchor in this pier, beside its neighbours`,
        anchor.rated === null ? "not known: asked for" : show.forceBoth(anchor.rated.value),
        anchor.rated === null ? "none to be had" : `below ${show.force(anchor.rated.value)}`,
      ],
      ...(isMasonry({ of })
        ? [
            [
              key("anchor"),
              `${id}: each hole in a unit or in a joint? The courses of the masonry beside the story pole`,
              "as the anchor's report allows",
              "a hole falls where the report allows none",
            ] as const,
          ]
        : []),
    ];
  });

/** Beside what the frame asks of feet: it counts on rails that press. */
export const pierNotes = (plan: Plan, show: Show): readonly Text[] =>
  piersOf(plan).map(
    ({ id }) =>
      `**${id}: its moment counts on rails that bear on its face; where none does, the cables ask ${show.moment(momentWithoutRails(plan.pulls, id), { rounding: "up" })} about the datum.**`,
  );

/** For the sheet of questions: what the program cannot know of a pier. */
export const pierQuestions = (plan: Plan, show: Show): readonly (readonly [Text, Text])[] =>
  piersOf(plan).flatMap((pier): readonly (readonly [Text, Text])[] => {
    const { id, anchor } = pier;
    const own = anchorEndsOf(plan).filter(({ end }) => end.postId === id);
    const pulls = plan.pulls.filter(({ postId }) => postId === id);
    const moment = plan.frame.sides
      .flatMap(({ posts }) => posts)
      .filter(({ postId }) => postId === id)
      .map(({ baseMoment_Nmm }) => Math.abs(baseMoment_Nmm));
    const rows = plan.checks.filter(({ id: check }) =>
      own.some(({ run }) => check.startsWith("anchor-") && check.endsWith(`${run.id}-${id}`)),
    );
    const fails = rows.some(({ verdict }) => verdict === "fail");
    const asked = rows.some(({ verdict }) => verdict === "ask");
    return [
      [
        `Does the ${pierName(pier)} ${id} hold all cables, and its foot the moment (licensed engineer)?`,
        `taken to stand still; pull of all cables ${show.forceBothUp(Math.max(...pulls.map(({ pull_high }) => pull_high)))}; moment about the datum ${show.moment(momentWithoutRails(plan.pulls, id), { rounding: "up" })} where no rail bears on it, ${show.moment(Math.max(...moment), { rounding: "up" })} at the targets where all do: **to be decided**`,
      ],
      [
        `Do ${anchorName[anchor.kind]} in ${id} hold: one above the other, near an edge, for good (licensed engineer)? ${isMasonry(pier) ? "A report for concrete says nothing of masonry." : `ACI 318-19, 17 asks that cracked concrete, groups and edges be counted ${sourceMark("memory")}.`}`,
        fails
          ? "**not by the checks on Z-001: change it**"
          : asked
            ? "a distance or the working load is not known: **to be decided**"
            : `rated for one anchor ${sourceMark(anchor.rated?.source ?? "job")}; as a group **to be decided**`,
      ],
      ...(isMasonry(pier)
        ? ([
            [
              `May anchors of ${id} sit in mortar joints, or only in the middle of units, and which (engineer, anchor's report)?`,
              "only where the report allows them; every hole is marked on the pier before it is bored",
            ],
          ] as const)
        : []),
      [
        `How are the rails fastened to ${id}? They press on it and may never draw back from it.`,
        "their ends bear on its face all over; the fastening is by others: **to be decided**",
      ],
    ];
  });

const SET: Readonly<Record<Pier["anchor"]["kind"], Text>> = {
  adhesive:
    "Set the adhesive as its maker says for this pier and today's temperature. Fill from the bottom. Touch nothing before it has cured.",
  expansion: "Set expansion anchors with a torque wrench, to the torque that their maker states.",
  screw: "Turn screw anchors in once, as their maker says. Never turn one back and use it again.",
};

/** How holes are bored and anchors set, for those who do it every day. */
export const pierItems = (plan: Plan, show: Show): readonly StepItem[] =>
  piersOf(plan).map(({ id, anchor }) => ({
    text: `${id}: ${plan.courses.length} holes ${show.diameter(anchor.hole.value)}, with a stop (plan ${show.fine(anchor.depth.value)} deep), none through steel (met: stop, ask the engineer); deepest`,
    value: show.lengthUnit,
    killer: true,
  }));

export const setItems = (plan: Plan): readonly StepItem[] =>
  piersOf(plan).map(({ id, anchor }) => ({
    text: `${id}: each hole brushed, its dust drawn off, as the instructions say. ${SET[anchor.kind]} Flange flat on the face, eye upright. Set at`,
    value: "time",
    killer: true,
  }));

/** The same in short sentences, for those who do it once. */
export const pierSteps = (plan: Plan, show: Show): readonly StepItem[] => [
  ...pierRoomSteps({ plan, show }),
  ...piersOf(plan).flatMap(({ id, anchor }): readonly StepItem[] => [
    {
      text: `${id}: look for hidden steel and pipes with a detector. Bore none of them.`,
      more: "You meet steel? Stop and ask the engineer. A hole given up is filled as the engineer says.",
      killer: true,
    },
    {
      text: `${id}: bore ${plan.courses.length} holes ${show.diameterOne(anchor.hole.value)}, ${show.fine(anchor.depth.value)} deep, with a stop on the masonry bit.`,
      more: "Keep the dust down: extraction on the drill, and a mask. Clean each hole as the anchor's instructions say.",
      killer: true,
    },
    {
      text: SET[anchor.kind],
      more: `${anchor.kind === "adhesive" ? "Write down when. Do not pull before the time on its label. " : ""}The flange lies flat on the face.`,
      killer: true,
    },
  ]),
];
