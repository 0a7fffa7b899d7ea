// Z-702: at which heights is one stick marked for all bores, as numbers and as a strip to glue on it?
import type { OwnSheet } from "../issues.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { marksOf, templatesOf } from "../templates/faces.ts";
import { type Pole, polePages, polesOf, servedBy, withoutPole } from "../templates/pole.ts";
import type { StripContext } from "../templates/template-strips.ts";
import { bold, caution, column, list, listed, pageBreak, sheet, sideBySide, strong, table, tick } from "./kit.ts";
import { warnings } from "./templates.ts";

export function storyPoleSheet(context: StripContext, head: OwnSheet): Sheet {
  const poles = polesOf(context.plan);
  return sheet(head, "portrait", [
    ...warnings(context),
    ...slopeWarning(context),
    ...(poles.length === 0 ? [] : [list(...howTo(context))]),
    ...poles.map((pole) => numbers(pole, context)),
    ...poles.flatMap((pole) => polePages(pole, context).flatMap((page): readonly Block[] => [pageBreak, page])),
  ]);
}

/** No pole fits an upright on a slope, least of all one of the level sides. */
function slopeWarning({ plan }: StripContext): readonly Block[] {
  const none = withoutPole(plan);
  if (none.length === 0) return [];
  const templates = templatesOf(plan).filter(({ rake }) => rake !== null);
  return [
    caution(
      "warning",
      `**No pole for ${marksOf(none)}: they stand on a slope.** Each face is bored at its own height, and no end of a stick stands on their level mark. Use templates ${listed(templates.map(({ id }) => id))}, or the heights on the two faces on Z-401. ${polesOf(plan).length === 0 ? "This guard has no pole at all." : "A pole of this sheet is wrong there."}`,
    ),
  ];
}

const howTo = ({ plan, show }: StripContext): readonly Text[] => [
  `Take a straight stick longer than ${show.tapeBoth(plan.opening.top)}. Write **DATUM END** at its foot: that end stands on the datum (${plan.job.frame.datum}).`,
  "Mark all heights from the datum end in one go, the tape held still; never from mark to mark. Then measure every mark again, and have somebody else read it.",
  "Use the same stick on every upright named with it, and on no other. It does not say which face is bored, how wide, or how far from the middle: that is on Z-603.",
  "The strip is the same at full size. Check its lines against the numbers before it is glued on: paper stretches.",
];

const BESIDE = 2;

function numbers(pole: Pole, { show }: StripContext): Table {
  const { id, marks } = pole;
  const columns = [
    column("course", "Course", 0.1),
    column("height", "Height", 0.16, { sub: "from the datum end" }),
    column("other", "Height", 0.14, { sub: show.lengthUnit === "in" ? "in mm" : "in inches" }),
    column("done", "Checked", 0.1, { align: "center" }),
  ];
  const rows = marks.map(({ course, height }) => [
    bold(String(course).padStart(2, "0")),
    strong(show.tape(height)),
    show.tapeOther(height),
    tick,
  ]);
  return table({
    id: `story-pole-${id.toLowerCase()}`,
    caption: `Pole ${id}, for ${servedBy(pole)}: middles of the bores`,
    ...sideBySide(columns, rows, BESIDE),
  });
}
