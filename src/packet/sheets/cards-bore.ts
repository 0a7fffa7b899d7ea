// What does a crew confirm before and after it bores: frame, setting out, bores?
import { edgeProtection } from "../../plan/open-edge.ts";
import type { StepItem } from "../packet.ts";
import { frameAccepted } from "../wording.ts";
import type { Card } from "./card.ts";
import { freeStop } from "./free-stop.ts";
import { count, endPostIds, listed, postsOf, refer, type SheetContext, spacersOf, unique } from "./kit.ts";
import { offMiddle, plumbWords } from "./leaning.ts";
import { boreDone, isWood } from "./material.ts";
import { safetyFor } from "./safety-messages.ts";

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
        text: `**${frameAccepted}** by a licensed engineer or the authority: posts, rails, feet. End posts ${listed(endPostIds(plan))}.`,
        killer: true,
      },
      {
        text: `Answers of the authority written on ${refer(context, "proof")}; limit for the lean of end posts on ${refer(context, "tightening")}.`,
        killer: true,
      },
      { text: `Clear opening between rails, largest (plan ${show.tapeBoth(plan.job.frame.clearOpening)})`, value: show.lengthUnit },
      { text: `Guard height above the datum (plan ${show.tapeBoth(plan.opening.guardHeight)})`, value: show.lengthUnit },
      {
        text: `${count(postsOf(plan).length, "post")} firm and ${plumbWords(context)}; ${count(spacersOf(plan).length, "spacer")} fixed top and bottom, in line.`,
      },
      { text: `No free length above ${freeStop(context).limit}; longest measured`, value: show.lengthUnit },
      { text: `Survey and fittings compared line by line on ${refer(context, "survey")}; nothing past a stop value.` },
    ],
    hold: `H1: nothing is bored before H1 is signed on ${refer(context, "proof")}, and only there.`,
  };
}

export function setOutCard(context: SheetContext): Card {
  const { plan, show } = context;
  const first = plan.courses[0];
  const last = plan.courses.at(-1);
  const labels = [
    ...(unique(plan.bores.map(({ diameter }) => diameter)).length > 1 ? ["bores of two sizes"] : []),
    ...(plan.bores.some(({ counterbore }) => counterbore !== null) ? ["a counterbore"] : []),
  ].join(" or ");
  return {
    key: "set-out",
    title: "Set out the bores",
    sheets: refer(context, "bores"),
    safety: [],
    items: [
      { text: `Datum: ${plan.job.frame.datum}. Same surface at every post.`, killer: true },
      {
        text: `Stick marked once from the datum end: ${count(plan.courses.length, "mark")}, first ${show.tapeBoth(first?.height ?? 0)}, last ${show.tapeBoth(last?.height ?? 0)}.`,
      },
      {
        text: `Top gap from the last mark to the rail (plan ${show.tapeBoth(plan.gaps.at(-1)?.spacing ?? 0)}), measured`,
        value: show.lengthUnit,
      },
      {
        text: `Widest spacing on any post, middle to middle (stop above ${show.tapeBoth(plan.job.limits.cableSpacing_max.value)}${plan.rakes.length > 0 ? "; on a rake square to the cables" : ""})`,
        value: show.lengthUnit,
        killer: true,
      },
      marksItem(context),
      {
        text: isWood(plan)
          ? "Path of every bore searched for bolts, screws, brackets."
          : "Path of every bore searched for welds, bolts, sleeves; both walls marked.",
        killer: true,
      },
      ...(labels === "" ? [] : [{ text: `Posts with ${labels} are labelled.` }]),
      { text: "One scrap bored with each bit; the fittings slide in." },
    ],
  };
}

/** On a rake a height of the stick is the wrong place on both faces; a hole off the middle is not on the line that is carried round. */
function marksItem(context: SheetContext): StepItem {
  const { rakes } = context.plan;
  const off = offMiddle(context.plan);
  const aside = off.length === 0 ? "" : ` At ${listed(off)} off the middle of the face, by the table on ${refer(context, "bores")}.`;
  const carried = "Marks carried to every post and spacer, on the face where the bit goes in";
  if (rakes.length === 0) return { text: `${carried}.${aside}`, ...(aside === "" ? {} : { killer: true as const }) };
  const slopes = rakes.map(({ sideId, slope }) => `${sideId} ${context.show.angle(Math.abs(slope))}`);
  return {
    text: `${carried}. Slope measured first (${listed(slopes)}): there both faces are marked from ${refer(context, "stairs")}, plumb from each post's level mark, not from the stick.${aside}`,
    killer: true,
  };
}

export function boreCard(context: SheetContext): Card {
  const { plan, show } = context;
  const bushings = plan.bores.filter(({ bushing }) => bushing).length;
  const counterbores = plan.bores.filter(({ counterbore }) => counterbore !== null);
  return {
    key: "bore",
    troubles: "bore",
    title: "Bore",
    sheets: refer(context, "bores"),
    safety: safetyFor("bore", plan),
    items: [
      { text: `${plan.bores.length} bores done and ticked; bores counted`, value: "bores" },
      { text: `${plan.bits.map((bit) => `${bit.holes} x ${show.diameterOne(bit.diameter)} ${bit.use}`).join("; ")}.` },
      ...(counterbores.length > 0
        ? [
            {
              text: `${counterbores.length} counterbores bored first, with a flat-bottomed or piloted bit; deepest (plan ${show.tapeBoth(counterbores[0]?.counterbore?.depth ?? 0)})`,
              value: show.lengthUnit,
              killer: true as const,
            },
          ]
        : []),
      { text: "Greatest difference of a height from the plan", value: show.lengthUnit },
      {
        text: `No spacing above ${show.tape(plan.job.limits.cableSpacing_max.value)} after boring, middle to middle${plan.rakes.length > 0 ? ", on a rake square to the cables" : ""}.`,
        killer: true,
      },
      ...(plan.rakes.length > 0
        ? [{ text: "Bores on a rake come out on the mark of the other face, within a bit's width.", killer: true as const }]
        : []),
      { text: boreDone(plan) },
      ...(bushings > 0 ? [{ text: `${bushings} bores have their bushing.` }] : []),
      { text: "Real heights written where they differ; deviations told to the office." },
    ],
  };
}
