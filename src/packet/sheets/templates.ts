// Z-701: which full-size templates does a guard need, and how are they used?
import { calibrationBar } from "../drawings/calibration-bar.ts";
import type { OwnSheet } from "../issues.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { isOffMiddle, marksOf, type Template, templatesOf } from "../templates/faces.ts";
import { slantWords } from "../templates/hole-words.ts";
import { onlyFor } from "../templates/printer.ts";
import { faceWords, footWords } from "../templates/slope-words.ts";
import { isBeyondPaper, type LookContext, type StripContext, templatePages, tilesOf } from "../templates/template-strips.ts";
import { blanks, bold, caution, column, list, listed, pageBreak, sheet, strong, table, unique } from "./kit.ts";
import { levelSides, surfaceOf } from "./slopes.ts";

export function templatesSheet(context: StripContext, head: OwnSheet): Sheet {
  const templates = templatesOf(context.plan);
  return sheet(head, "portrait", [
    ...warnings(context),
    list(...howTo(context, templates)),
    { ...calibrationBar(), title: "First check of the print; then both rulers on every page" },
    readings(context),
    listTable(templates, context),
    ...templates.flatMap((template) => templatePages(template, context).flatMap((page): readonly Block[] => [pageBreak, page])),
  ]);
}

export function warnings({ plan, titleBlock }: StripContext): readonly Block[] {
  const only = onlyFor(plan.job);
  return [
    ...(titleBlock.stamp === "" ? [] : [caution("danger", `**${titleBlock.stamp}.**`)]),
    ...(only === "" ? [] : [caution("warning", `**This set is drawn ${only}.** On any other printer it is wrong.`)]),
    caution(
      "warning",
      'Print at **100 %**, never "fit" or "shrink", on the paper that this file is named for. On every page measure **both** rulers before you mark anything: 150 mm within 0.5 mm and 6 in within 1/64 in, across and up. If one is off, stop.',
      "Measure the fittings you bought against the bores first, on a scrap. Where a template and Z-603 disagree, stop: the schedule counts, and somebody has made a mistake.",
    ),
  ];
}

/** Nothing where all sides slope: their tiles lie on level marks. */
function standWords(plan: StripContext["plan"], datum: Text): Text {
  if (levelSides(plan).length === 0) return "";
  return `${plan.rakes.length === 0 ? "Stand" : "On a level side stand"} tile 1 on the datum (${datum}). `;
}

function howTo({ plan, show, paper }: StripContext, templates: readonly Template[]): readonly Text[] {
  const off = unique(templates.filter(({ holes }) => holes.some(isOffMiddle)).flatMap(({ uprights }) => uprights));
  const frame = plan.job.frame;
  return [
    `Cut along the lower line and both long edges. Fold back along the dashed lines, which are the edges of the post; the middle line lies on the middle of the face. The arrow points up.`,
    ...wideHowTo(templates, { plan, show, paper }),
    ...slopeHowTo(plan, templates),
    `${standWords(plan, frame.datum)}Lay each next tile with its cut edge on the upper line of the one below, cross on cross, and tape it.`,
    `Paper stretches, and small errors add up: check the lower line of every tile, and the highest hole, against the tape **from the datum**. More than ${show.lengthUnit === "in" ? '1/32"' : "1 mm"} off: lay that tile by the tape alone.`,
    "A tile without holes may be left out: then lay the next one by the tape.",
    `Faces are left and right as seen from the deck, looking out. Punch every middle through the paper, take the paper off, then bore. Holes and order of work: Z-603${plan.bores.some(({ counterbore }) => counterbore !== null) ? " (a counterbore comes first)" : ""}.`,
    ...(off.length === 0
      ? []
      : [
          `**${marksOf(off)}: the middle line is not where the holes are.** It lies on the middle of the face all the same; each hole stands beside it, by what its words say.`,
        ]),
    ...(templates.some(({ holes }) => holes.some(({ skew }) => skew !== 0))
      ? [
          "A bore on the mitre has a template for both its faces: lay both on and mark both middles before it is bored. Its hole is an oval; the bit starts in the middle of it and runs to the hand that is written.",
        ]
      : []),
    ...(plan.hardware.length === 0 ? [] : ["Hatched: hardware sits there. Bore nothing in it."]),
    ...(plan.bores.some(({ counterbore }) => counterbore !== null)
      ? [
          plan.job.posts.sleeve === null
            ? "A counterbore has a template of its own, for its own face. Its inner circle is where the bore comes out."
            : "A washer's hole in the sleeve has a template of its own, for its own face; it is cut first, to the wood. Its inner circle is where the bore comes out.",
        ]
      : []),
    ...(plan.job.posts.sleeve === null
      ? []
      : [
          "Two circles at a bore: the inner one is bored right through, the outer one is opened in the sleeve only, afterwards, on every face where the cable goes through; the face of a washer's hole has none.",
        ]),
  ];
}

/** A face wider than the paper has no edges on it to fold round: its middle is found by a tape. */
const wideHowTo = (templates: readonly Template[], context: LookContext): readonly Text[] =>
  templates
    .filter((template) => isBeyondPaper(template, context))
    .map(
      ({ id, width, uprights }) =>
        `**${id}: the face of ${marksOf(uprights)} is wider than the paper**, its cut edges are not edges of the face: nothing is folded. Draw a plumb line in the middle of the face, ${context.show.tapeBoth(width / 2)} from either edge, and lay the middle line on it.`,
    );

/** How a template of a slope is set, and what its marks mean. */
function slopeHowTo(plan: StripContext["plan"], templates: readonly Template[]): readonly Text[] {
  const sloping = templates.filter(({ rake }) => rake !== null);
  if (sloping.length === 0) return [];
  const spacers = sloping.some(({ kind }) => kind === "spacer");
  return [
    `**${listed(sloping.map(({ id }) => id))}: on a slope.** Lay a straight board on ${surfaceOf(plan)} and mark where its lower edge crosses the middle line of the post. Carry the mark level to the face: tile 1 lies on it.${spacers ? " A spacer's strip stands on the foot of the spacer; its flaps are cut along the slope." : ""}`,
    "There a hole is an ellipse. Hold the bit at the angle beside it, up or down as the arrow says: the words under the rulers say from which face. X: where the bore comes out on the other face, at the height marked, seen through the wood or metal.",
  ];
}

const readings = ({ plan }: StripContext): Block =>
  blanks(
    "templates-printer",
    plan.job.printer === null
      ? "If the printer cannot keep the size: write its rulers here, then in the job file, and a set is drawn for it (up to 3 %)"
      : "Rulers as measured on the corrected set: both must be right now",
    [
      ["Name of the printer", "", "printer: name"],
      ["Ruler of 150 mm across the page", "mm", "printer: across"],
      ["Ruler of 150 mm up the page", "mm", "printer: up"],
    ],
  );

function listTable(templates: readonly Template[], context: StripContext): Table {
  const { show } = context;
  return table({
    id: "templates-list",
    caption: "Templates and their tiles, from the lowest up",
    columns: [
      column("id", "No.", 0.06),
      column("uprights", "For", 0.14),
      column("face", "Face", 0.11),
      column("holes", "Holes", 0.2),
      column("foot", "Stands on", 0.14),
      column("tiles", "Tiles, lower line", 0.2, { sub: `above the datum${context.plan.rakes.length === 0 ? "" : " or mark"}` }),
      column("check", "Highest hole", 0.15, { sub: "check by tape" }),
    ],
    rows: templates.map((template) => [
      bold(template.id),
      marksOf(template.uprights),
      template.rake === null && !template.isCorner ? template.face : faceWords(template),
      `${template.holes.length}: ${listed(unique(template.holes.map((hole) => madeWords(hole, context))))}`,
      footWords(template, context),
      tilesOf(template, context)
        .map(({ number, from }) => `${template.id}-${number}: ${show.tape(from)}`)
        .join("; "),
      strong(show.tape(template.holes.at(-1)?.here.height ?? 0)),
    ]),
    rowHeads: true,
  });
}

const madeWords = (hole: Template["holes"][number], { plan, show }: StripContext): Text => {
  const { diameter, sleeveHole, counterbore, drilledLength, through, oneWall } = hole;
  const made =
    counterbore === null
      ? through
        ? `bore ${show.diameter(diameter)}${sleeveHole === null ? "" : `, sleeve ${show.diameter(sleeveHole)}`}`
        : oneWall
          ? `hole ${show.diameter(diameter)}, through this wall only`
          : `blind hole ${show.diameter(diameter)}, ${show.fine(drilledLength)} deep`
      : `${sleeveHole === null ? "counterbore" : "washer's hole in the sleeve"} ${show.diameter(counterbore.diameter)}, ${show.tapeBoth(counterbore.depth)} deep`;
  return plan.rakes.length === 0 ? made : `${made}, ${slantWords(hole, show)}, ${show.tapeBoth(drilledLength)} long`;
};
