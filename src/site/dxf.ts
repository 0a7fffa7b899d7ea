// How does what is bored in an upright leave the packet as a drawing for machines? As DXF, true to size in mm.
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from "@tarikjabiri/dxf";
import type { TitleBlock } from "../packet/packet.ts";
import { type Show, showIn } from "../packet/show-number.ts";
import { facesOf, marksOf, type TemplateHole, templatesOf, type UprightFace } from "../packet/templates/faces.ts";
import { slantWords, wayWords } from "../packet/templates/hole-words.ts";
import { faceWords } from "../packet/templates/slope-words.ts";
import type { Plan } from "../plan/plan.ts";

export interface DxfFile {
  /** P3, or spacers-1. */
  readonly name: string;
  /** For a link: "P3: bores, 1 face". */
  readonly label: string;
  readonly text: string;
}

/** What each line is for, named as it is called on the sheets. */
const layers = [
  ["OUTLINE", Colors.White],
  ["CENTRE", Colors.Yellow],
  ["BORE", Colors.Red],
  ["BLIND", Colors.Cyan],
  ["COUNTERBORE", Colors.Blue],
  ["SLEEVE", Colors.Cyan],
  ["EXIT", Colors.Magenta],
  ["TEXT", Colors.Green],
] as const;
type Layer = (typeof layers)[number][0];

/** Between two faces of one upright, which stand side by side. */
const BETWEEN_mm = 60;
/** Above the highest hole the drawing ends: the length of the upright is not said here. */
const ABOVE_mm = 40;
const LETTER_mm = 5;
const CROSS_mm = 4;

/** One for each post and pier; uprights that are bored alike and are no posts share one. */
export function dxfFiles(plan: Plan, titleBlock: TitleBlock): readonly DxfFile[] {
  const posts = plan.verticals
    .filter(({ kind }) => kind !== "spacer")
    .map((post) => ({ name: post.id, marks: post.id, faces: facesOf(plan, post) }));
  const spacers = templatesOf(plan)
    .filter(({ uprights }) => uprights.every(({ kind }) => kind === "spacer"))
    .flatMap(({ uprights, ...marks }, index) => {
      const [upright] = uprights;
      return upright === undefined ? [] : [{ name: `spacers-${index + 1}`, marks: marksOf(uprights), faces: [{ upright, ...marks }] }];
    });
  return [...posts, ...spacers]
    .filter(({ faces }) => faces.length > 0)
    .map(({ name, marks, faces }) => ({
      name,
      label: `${marks}, bores at full size`,
      text: dxfText(faces, { marks, titleBlock, show: showIn(plan.job.units) }),
    }));
}

interface Words {
  readonly marks: string;
  readonly titleBlock: TitleBlock;
  readonly show: Show;
}

/** x: to the right of the middle of a face as one looks at it; y: above the datum. The first face has its middle at 0. */
function dxfText(faces: readonly UprightFace[], words: Words): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable("$MEASUREMENT", { 70: 1 });
  for (const [name, colour] of layers) dxf.addLayer(name, colour, "Continuous");
  let middle = 0;
  for (const face of faces) {
    drawFace(dxf, face, { middle, ...words });
    middle += face.upright.across + BETWEEN_mm;
  }
  return dxf.stringify();
}

function drawFace(
  dxf: DxfWriter,
  { upright, foot, holes, ...face }: UprightFace,
  { middle, marks, titleBlock, show }: Words & { readonly middle: number },
): void {
  const half = upright.across / 2;
  const top = Math.max(...holes.map(({ here }) => here.height)) + ABOVE_mm;
  const on = (layerName: Layer): { readonly layerName: string } => ({ layerName });
  const corners = [point2d(middle - half, foot), point2d(middle + half, foot), point2d(middle + half, top), point2d(middle - half, top)];
  dxf.addLWPolyline(
    corners.map((point) => ({ point })),
    { flags: LWPolylineFlags.Closed, ...on("OUTLINE") },
  );
  dxf.addLine(point3d(middle, foot, 0), point3d(middle, top, 0), on("CENTRE"));
  for (const hole of holes) drawHole(dxf, hole, { middle, on });
  const [hole] = holes;
  const words = [
    `${marks}, ${faceWords({ ...face, uprights: [upright] })}, seen from outside; y is mm above the ${face.rake === null ? "datum" : "level mark: datum in the middle of the upright"}`,
    ...(hole === undefined || hole.skew === 0
      ? []
      : [
          hole.isExit
            ? "layer EXIT: bores on the mitre come out here"
            : `bores on the mitre: level, ${wayWords(hole, show)}, ${show.tape(hole.drilledLength)} long`,
        ]),
    ...(face.rake === null || hole === undefined
      ? []
      : [
          `bores ${slantWords(hole, show)} from level, ${show.tape(hole.drilledLength)} long; points on EXIT: where they come out, seen through`,
        ]),
    `${titleBlock.jobNumber}, revision ${titleBlock.revision}, ${titleBlock.date}`,
    ...(titleBlock.stamp === "" ? [] : [titleBlock.stamp]),
  ];
  for (const [index, line] of words.entries())
    dxf.addText(point3d(middle - half, top + LETTER_mm * (1 + 1.6 * (words.length - 1 - index)), 0), LETTER_mm, line, on("TEXT"));
}

interface Place {
  readonly middle: number;
  readonly on: (layer: Layer) => { readonly layerName: string };
}

function drawHole(dxf: DxfWriter, hole: TemplateHole, { middle, on }: Place): void {
  const { here, there, angle, skew, isExit, diameter, sleeveHole, counterbore, mark, through, oneWall, drilledLength } = hole;
  const [x, y] = [middle + here.right, here.height];
  const round = (size: number, layer: Layer): void => {
    // Where a round bit goes in at an angle, the hole is an ellipse: its long axis is upright.
    if (skew !== 0) dxf.addEllipse(point3d(x, y, 0), point3d(size / 2 / Math.cos(skew), 0, 0), Math.cos(skew), 0, 2 * Math.PI, on(layer));
    else if (angle === 0) dxf.addCircle(point3d(x, y, 0), size / 2, on(layer));
    else dxf.addEllipse(point3d(x, y, 0), point3d(0, size / 2 / Math.cos(angle), 0), Math.cos(angle), 0, 2 * Math.PI, on(layer));
  };
  if (sleeveHole !== null && counterbore === null) round(sleeveHole, "SLEEVE");
  if (counterbore === null) round(diameter, isExit ? "EXIT" : through ? "BORE" : "BLIND");
  else {
    round(counterbore.diameter, "COUNTERBORE");
    round(diameter, "EXIT");
  }
  if (angle !== 0) dxf.addPoint(middle + there.right, there.height, 0, on("EXIT"));
  dxf.addLine(point3d(x - CROSS_mm, y, 0), point3d(x + CROSS_mm, y, 0), on("CENTRE"));
  dxf.addLine(point3d(x, y - CROSS_mm, 0), point3d(x, y + CROSS_mm, 0), on("CENTRE"));
  dxf.addText(
    point3d(x + diameter, y + LETTER_mm / 2, 0),
    LETTER_mm / 2,
    through ? mark : oneWall ? `${mark}, this wall only` : `${mark}, blind, ${showIn("mm").fine(drilledLength)} deep`,
    on("TEXT"),
  );
}
