// Does a drawing fit its page and can its letters be read? Told by its own text, before anything is laid out.
import { contentBox, type PaperName } from "../drawing/paper.ts";
import type { Drawing, Packet, Sheet } from "../packet/packet.ts";

/** 9 pt in mm, and what the writing of three decimals may take away. */
const SMALLEST_mm = (9 * 25.4) / 72 - 0.001;

/** A sheet's page would shrink a drawing that is too wide and cut one that is too high. */
export const drawingFaults = ({ sheets, paper }: Packet): readonly string[] =>
  sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) =>
      block.kind === "drawing" ? faultsIn(block, sheet, paper).map((fault) => `sheet ${sheet.id} ${sheet.name}: ${fault}`) : [],
    ),
  );

const faultsIn = ({ id, svg }: Drawing, { orientation }: Sheet, paper: PaperName): readonly string[] => {
  const room = contentBox({ paper, orientation });
  const head = /^\s*<svg\b[^>]*>/.exec(svg)?.[0] ?? "";
  const width = Number(/ width="([\d.]+)mm"/.exec(head)?.[1]);
  const height = Number(/ height="([\d.]+)mm"/.exec(head)?.[1]);
  const [, , units = Number.NaN] = / viewBox="([^"]*)"/.exec(head)?.[1]?.split(/[ ,]+/).map(Number) ?? [];
  if (!(width > 0 && height > 0 && units > 0)) return [`svg in #${id} does not say its size in mm`];
  const letters = Math.min(...[...svg.matchAll(/ font-size="([\d.]+)"/g)].map((found) => Number(found[1]))) * (width / units);
  return [
    ...(width > room.width ? [`svg in #${id} is wider than its page: ${width} mm of ${room.width} mm`] : []),
    ...(height > room.height ? [`svg in #${id} is higher than its page: ${height} mm of ${room.height} mm`] : []),
    ...(letters < SMALLEST_mm ? [`svg in #${id} has letters of ${letters} mm, below 9 pt`] : []),
  ];
};
