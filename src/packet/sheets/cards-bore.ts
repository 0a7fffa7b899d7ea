// What does a crew confirm before and after it bores: frame, setting out, bores?
import { alongSlope } from "../../plan/corner-path.ts";
import { goesThroughOneWall } from "../../plan/face-end.ts";
import { edgeProtection } from "../../plan/open-edge.ts";
import type { Opening } from "../../plan/rake-plan.ts";
import { levelGaps } from "../../plan/set-off.ts";
import type { Mm } from "../../units/quantity.ts";
import type { StepItem, Text } from "../packet.ts";
import { frameAccepted } from "../wording.ts";
import { hasBushingTubes, mitredSeat, tubeEnds } from "./bearing.ts";
import { boredFromOutside, MITRE_OFF_mm, mitredIds, OUTSIDE_STAND, turnedIds } from "./bore-corners.ts";
import { bushingsOf } from "./bore-kinds.ts";
import type { Card } from "./card.ts";
import { faceEnds, faceIds, hasLags, shankWords } from "./face-ends.ts";
import { freeStop } from "./free-stop.ts";
import { count, endsOnWords, greatest, listed, postsOf, refer, type SheetContext, spacersOf, unique, upperFirst } from "./kit.ts";
import { leaningAlongIds, offMiddle, plumbWords } from "./leaning.ts";
import { boreDone, isWood } from "./material.ts";
import { pierAccepted, pierItems, pierMarked, pierSearched } from "./piers.ts";
import { safetyFor } from "./safety-messages.ts";
import { cornerStick, crossedIds, levelGroups, raisedBy, stickMarks } from "./set-off-words.ts";
import { sunkElsewhere, sunkWord } from "./sleeve-words.ts";
import { sleeveFrameWords, sleeveRoomWords } from "./sleeves.ts";
import { anglesWords, boreSheets, levelSides, sidesWord, slopedSides, slopesWords, surfaceOf } from "./slopes.ts";

export function frameCard(context: SheetContext): Card {
  const { plan, show } = context;
  const protection = edgeProtection(plan.job);
  return {
    key: "frame",
    title: "Frame and survey",
    sheets: `${refer(context, "survey")}, ${refer(context, "plan")}, ${refer(context, "lumber")}`,
    safety: safetyFor("frame", plan),
    items: [
      {
        text: `${protection === "fall protection" ? "Fall protection" : "Temporary barrier"} up at the open edge before ${plan.job.posts.existing ? "old infill comes off" : "anybody works there"}; it stays until H4.`,
        killer: true,
      },
      {
        text: `**${frameAccepted}** by a licensed engineer or the authority: posts, rails, feet. ${endsOnWords(plan)}.${pierAccepted(plan)}${sleeveFrameWords(plan)}`,
        killer: true,
      },
      {
        text: `Answers of the authority written on ${refer(context, "proof")}; limit for the lean of end posts on ${refer(context, "tightening")}.`,
        killer: true,
      },
      {
        text: `Clear opening${plan.rakes.length === 0 ? " between rails" : ""}, largest (plan ${heightsWords(context, ({ top, bottom }) => top - bottom)})`,
        value: show.lengthUnit,
      },
      {
        text: `Guard height${plan.rakes.length === 0 ? " above the datum" : ""} (plan ${heightsWords(context, ({ guardHeight }) => guardHeight)})`,
        value: show.lengthUnit,
      },
      {
        text: `${count(postsOf(plan).length, "post")} firm and ${plumbWords(context)}${turnedIds(plan).length === 0 ? "" : `, ${listed(turnedIds(plan))} turned half-way between two sides (${refer(context, "plan")})`}; ${count(spacersOf(plan).length, "spacer")} fixed top and bottom, in line.`,
      },
      { text: `No ${freeStop(context).what} above ${freeStop(context).limit}; longest measured`, value: show.lengthUnit },
      surveyItem(context),
    ],
    hold: `H0 and H1: nothing is bored before both are signed on ${refer(context, "proof")}, and only there.`,
  };
}

/** The level sides and each slope by name, where a guard has both. */
function heightsWords({ plan, show }: SheetContext, of: (opening: Opening) => Mm): Text {
  if (plan.rakes.length === 0) return show.tapeBoth(of(plan.opening));
  const level = levelSides(plan);
  return [
    ...(level.length === 0 ? [] : [`${listed(level)} ${show.tape(of(plan.opening))}`]),
    ...plan.rakes.map(({ sideId, opening }) => `${sideId} plumb ${show.tape(of(opening))}`),
  ].join("; ");
}

/** Slopes first: every bore of a slope follows them. */
function surveyItem(context: SheetContext): StepItem {
  const { plan, show } = context;
  return plan.rakes.length === 0
    ? { text: `Survey and fittings compared line by line on ${refer(context, "survey")}; nothing past a stop value.` }
    : {
        text: `Survey and fittings compared on ${refer(context, "survey")}, nothing past a stop; slope (${slopesWords(plan, show.angle)})`,
        value: "deg",
        killer: true,
      };
}

export function setOutCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "set-out",
    title: "Set out the bores",
    sheets: boreSheets(context),
    safety: [],
    items: [
      { text: datumWords(context), killer: true },
      { text: stickWords(context), ...(plan.setOff === null ? {} : { killer: true as const }) },
      { text: `Top gap from the last mark to the rail (plan ${topGaps(context)}), measured`, value: show.lengthUnit },
      {
        text: `Widest spacing on any post, middle to middle (stop above ${spacingStop(context)})`,
        value: show.lengthUnit,
        killer: true,
      },
      marksItem(context),
      {
        text: isWood(plan)
          ? `Path of every bore searched for bolts, screws, brackets.${pierSearched(plan)}`
          : `Path of every bore searched for welds, bolts, sleeves; both walls marked.${pierSearched(plan)}`,
        killer: true,
      },
      ...labelItems(plan),
      {
        text: `One scrap bored with each bit; the fittings slide in.${hasLags(plan) ? " A lag screw turned into one of the post's section: it holds, the scrap does not split." : ""}${plan.rakes.length === 0 ? "" : ` One of the post's section through each guide block (${anglesWords(plan, show.angle)}): the bit comes out on its mark.`}`,
      },
    ],
  };
}

/** Bits are changed between posts: each one says on itself which it takes. */
function labelItems({ bores, job }: SheetContext["plan"]): readonly StepItem[] {
  const labels = [
    ...(unique(bores.map(({ diameter }) => diameter)).length > 1 ? ["the size of its bores"] : []),
    ...(bores.some(({ counterbore }) => counterbore !== null)
      ? [job.posts.sleeve === null ? "its counterbores if it has them" : "its washers' holes if it has them"]
      : []),
  ];
  return labels.length === 0 ? [] : [{ text: `Each post labelled with ${listed(labels)}.` }];
}

const onLevel = ({ plan }: SheetContext): Text => (plan.rakes.length === 0 ? "" : `**Level ${sidesWord(levelSides(plan))}:** `);
const onSlopes = ({ plan }: SheetContext): Text => `**Slope, ${sidesWord(slopedSides(plan))}:** `;

/** A level surface is the datum of a level side, a straight board that of a slope. */
function datumWords(context: SheetContext): Text {
  const { plan } = context;
  const { datum } = plan.job.frame;
  if (plan.rakes.length === 0) return `Datum: ${datum}. Same surface at every post.`;
  const level = levelSides(plan).length === 0 ? "" : `${onLevel(context)}same level surface at every post (${datum}). `;
  return `${level}${onSlopes(context)}straight board clamped on ${surfaceOf(plan)}; its lower edge marked on the middle line of every upright, each mark carried level to both faces.`;
}

/** The stick of the level sides is wrong on a slope: rails lie otherwise there, and no face has the height of the middle. */
function stickWords(context: SheetContext): Text {
  const { plan, show } = context;
  if (plan.setOff !== null)
    return `**Two sticks**, ticked once from the datum end. ${upperFirst(stickMarks(plan, show))}. ${cornerStick(plan)}.`;
  const [first, last] = [plan.courses[0], plan.courses.at(-1)];
  const stick = `tick marked once from the datum end: ${count(plan.courses.length, "mark")}, first ${show.tapeBoth(first?.height ?? 0)}, last ${show.tapeBoth(last?.height ?? 0)}.`;
  if (plan.rakes.length === 0) return `S${stick}`;
  const level = levelSides(plan).length === 0 ? "" : `${onLevel(context)}s${stick} `;
  return `${level}${onSlopes(context)}no level stick: heights by ${refer(context, "stairs")}.`;
}

/** The last gap below the rail, where it is measured. */
function topGaps({ plan, show }: SheetContext): Text {
  if (plan.setOff !== null)
    return levelGroups(plan)
      .map(({ level, sideIds }) => `${sidesWord(sideIds)} ${show.tapeBoth(levelGaps(plan, level).at(-1)?.spacing ?? 0)}`)
      .join("; ");
  if (plan.rakes.length === 0) return show.tapeBoth(plan.gaps.at(-1)?.spacing ?? 0);
  const level = levelSides(plan);
  return [
    ...(level.length === 0 ? [] : [`level ${listed(level)} ${show.tape(plan.gaps.at(-1)?.spacing ?? 0)}`]),
    ...plan.rakes.map(({ sideId, gaps }) => `slope ${sideId} ${show.tape(gaps.at(-1)?.plumb ?? 0)} plumb`),
  ].join("; ");
}

/** What counts is square to the cables; a tape held to a plumb post reads more. */
function spacingStop({ plan, show }: SheetContext): Text {
  const most = plan.job.limits.cableSpacing_max.value;
  const plumb = plan.rakes.map(
    ({ sideId, slope }) => `; slope ${sideId}: so much square to the cables, ${show.tapeDown(alongSlope(most, slope))} on a plumb tape`,
  );
  return `${plumb.length === 0 ? show.tapeBoth(most) : show.tape(most)}${plumb.join("")}`;
}

/** Before the first bore of a slope. */
function slopeItems({ plan, show }: SheetContext): readonly StepItem[] {
  if (plan.rakes.length === 0) return [];
  return [
    {
      text: `**Slope, ${sidesWord(slopedSides(plan))}:** guide block at ${anglesWords(plan, show.angle)}, by the bevel; every bore comes out within a bit's width of its mark. First post bored from both faces.`,
      killer: true,
    },
  ];
}

/** On a rake a height of the stick is the wrong place on both faces; a hole off the middle is not on the line that is carried round. */
function marksItem(context: SheetContext): StepItem {
  const { rakes } = context.plan;
  const off = offMiddle(context.plan);
  const aside = off.length === 0 ? "" : ` At ${listed(off)} off the middle of the face, by the table on ${refer(context, "bores")}.`;
  const mitred = mitredIds(context.plan);
  const both = mitred.length === 0 ? "" : `; at ${listed(mitred)} also on the face where it comes out`;
  const sunk = sunkElsewhere(context.plan);
  const behind = sunk.length === 0 ? "" : `; at ${listed(sunk)} also on the face of the ${sunkWord(context.plan)}`;
  const carried = `arks carried to every post and spacer${pierMarked(context.plan)}, on the face where the bit goes in${both}${behind}`;
  if (rakes.length === 0) return { text: `M${carried}.${aside}`, ...(aside + both === "" ? {} : { killer: true as const }) };
  const level = levelSides(context.plan).length === 0 ? "" : `${onLevel(context)}m${carried}. `;
  return {
    text: `${level}${onSlopes(context)}both faces marked from ${refer(context, "stairs")}, plumb from each upright's level mark: the bit goes in at one height and comes out at another.${aside}`,
    killer: true,
  };
}

export function boreCard(context: SheetContext): Card {
  const { plan, show } = context;
  const { bores, bushings } = bushingsOf(plan);
  const along = leaningAlongIds(plan);
  const counterbores = plan.bores.filter(({ counterbore }) => counterbore !== null);
  return {
    key: "bore",
    troubles: "bore",
    title: "Bore",
    sheets: boreSheets(context),
    safety: safetyFor("bore", plan),
    items: [
      { text: `${plan.bores.length} bores done and ticked; bores counted`, value: "bores" },
      { text: `${plan.bits.map((bit) => `${bit.holes} x ${show.diameterOne(bit.diameter)} ${bit.use}`).join("; ")}.` },
      ...(counterbores.length > 0
        ? [
            {
              text: `${counterbores.length} ${plan.job.posts.sleeve === null ? "counterbores bored first, with a flat-bottomed or piloted bit" : `washer's holes sawn first, to the ${plan.job.posts.section.name}${sleeveRoomWords(plan)}`}; deepest (plan ${show.tapeBoth(counterbores[0]?.counterbore?.depth ?? 0)})`,
              value: show.lengthUnit,
              killer: true as const,
            },
          ]
        : []),
      ...slopeItems(context),
      {
        text: `Greatest difference of a height from the plan${plan.rakes.length === 0 ? "" : ", slopes on both faces"}`,
        value: show.lengthUnit,
      },
      {
        text: `After boring no spacing, middle to middle, above ${spacingStop(context)}.`,
        killer: true,
      },
      ...mitreItems(context),
      ...(plan.setOff === null
        ? []
        : [
            {
              text: `${listed(crossedIds(plan))}: bored from both faces; no bore meets another (${raisedBy(context)} apart), each comes out within ${show.tape(MITRE_OFF_mm)} of its mark.`,
              killer: true as const,
            },
          ]),
      ...(along.length > 0
        ? [
            {
              text: `At ${listed(along)}, which lean${along.length === 1 ? "s" : ""} along the guard, heights plumb and bores level.`,
              killer: true as const,
            },
          ]
        : []),
      ...faceItems(context),
      {
        text: `${boreDone(plan)}${bores === 0 ? "" : ` ${bores} bores have their ${hasBushingTubes(plan) ? `tube, ends ${tubeEnds(plan)} and flush, and their ` : ""}${bushings === bores ? "bushing" : `${bushings} bushings`}.${mitredSeat(plan)}`}`,
      },
      { text: "Real heights written where they differ; deviations told to the office." },
    ],
  };
}

/** At an outside corner nobody can hold the drill from the deck. */
function mitreItems({ plan, show }: SheetContext): readonly StepItem[] {
  if (mitredIds(plan).length === 0) return [];
  const outside = boredFromOutside(plan);
  const stand = outside.length === 0 ? "" : ` ${listed(outside)}: drill held outside the guard, ${OUTSIDE_STAND}.`;
  return [{ text: `Bores on the mitre come out on the mark of the other face, within ${show.tape(MITRE_OFF_mm)}.${stand}`, killer: true }];
}

/** Blind holes are bored to a depth. */
function faceItems({ plan, show }: SheetContext): readonly StepItem[] {
  if (faceEnds(plan).length === 0) return pierItems(plan, show);
  const holes = plan.bores.filter(({ kind }) => kind === "face end");
  if (holes.some((bore) => goesThroughOneWall(bore, plan.job)))
    return [
      { text: `${faceIds(plan)}: ${holes.length} holes through one wall only, bit with a stop; no mark on the far wall.`, killer: true },
      ...pierItems(plan, show),
    ];
  const shank = shankWords({ plan, show });
  return [
    {
      text: `${faceIds(plan)}: ${holes.length} blind holes, bit with a stop${shank === "" ? "" : `, each ${shank}`} (plan ${show.fine(greatest(holes.map(({ drilledLength }) => drilledLength)))} deep); deepest`,
      value: show.lengthUnit,
      killer: true,
    },
    ...pierItems(plan, show),
  ];
}
