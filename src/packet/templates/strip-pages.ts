// How do the tiles of a strip stand on full-size pages, with the rulers that tell whether the printer kept the size?
import { contentBox, type Room } from "../../drawing/paper.ts";
import { doubleRuler, RULER_SIDE_mm } from "../../drawing/ruler.ts";
import { group, type Part } from "../../drawing/shape.ts";
import { lineHeight, textLines, wrap } from "../../drawing/text.ts";
import type { Job, Paper } from "../../job/job.ts";
import { printedRuler } from "../../tables/practice.ts";
import type { Mm } from "../../units/quantity.ts";
import { roundDown } from "../../units/round.ts";
import { finishDrawing } from "../drawings/kit.ts";
import type { Drawing, Text } from "../packet.ts";
import { evenly } from "../sheets/kit.ts";
import { onlyFor, stretchOf } from "./printer.ts";
import { flapDrop, LAP_mm, type StripLook, tileParts } from "./tile-drawing.ts";
import type { Tile } from "./tiles.ts";

/** Both rulers with their numbers, and the gap to what stands beside them. */
const RULER_mm = 2 * RULER_SIDE_mm + 0.6;
/** Between two tiles on one page. */
const GAP_mm = 4;
/** What a figure takes above and below its drawing: its margins and one line of caption; and what a browser rounds. */
const FIGURE_mm = 13.5;

const stopRule: Text = 'Both rulers first: 150 mm within 0.5 mm, 6 in within 1/64 in. If not, stop: print at 100 %, never "fit".';
const readings: Text = "Read: across ________ mm, up ________ mm.";

/** Under the rulers; `notes` are those of the strip, the first of which follows the readings. */
const ruleLines = (width: Mm, job: Job, notes: readonly Text[]): readonly Text[] => [
  ...wrap(stopRule, width),
  ...wrap([readings, ...(onlyFor(job) === "" ? [] : [`This page is ${onlyFor(job)}.`]), ...notes.slice(0, 1)].join(" "), width),
  ...notes.slice(1).flatMap((note) => wrap(note, width)),
];

/** Room for the tiles of one page, true to size, when the whole is drawn for the job's printer. */
export function stripRoom(paper: Paper, job: Job, notes: readonly Text[]): Room {
  const { width, height } = contentBox({ paper, orientation: "portrait" });
  const { across, up } = stretchOf(job);
  const inner = (width - 1) / across;
  const foot = RULER_mm + ruleLines(inner - 1, job, notes).length * lineHeight() + 1;
  return { width: inner - RULER_mm, height: (height - FIGURE_mm) / up - foot };
}

/** The longest tile that a page holds, its lap included elsewhere; its flaps hang below it by `drop`. */
export const longestTile = (room: Room, drop: Mm): Mm => roundDown(room.height - LAP_mm - 1 - drop, 1);

export interface StripPagesOptions {
  readonly look: StripLook;
  readonly tiles: readonly Tile[];
  readonly paper: Paper;
  readonly job: Job;
  /** "Template T1 (P2 to P4, left face)" */
  readonly title: Text;
  /** Says what a page of tiles holds, with its numbers. */
  readonly describe: (tiles: readonly Tile[]) => Text;
}

/** As many tiles side by side as the page takes; rulers below them and at their right on each page. */
export function stripPages({ look, tiles, paper, job, title, describe }: StripPagesOptions): readonly Drawing[] {
  const room = stripRoom(paper, job, look.notes);
  const columns = Math.max(1, roundDown((room.width + GAP_mm) / (2 * look.half + GAP_mm), 1));
  return evenly(tiles, columns).map((some) => {
    const first = some[0]?.number ?? 0;
    const last = some.at(-1)?.number ?? 0;
    const named = some.length === 1 ? `tile ${first}` : `tiles ${first} to ${last}`;
    return finishDrawing({
      id: `${look.id.toLowerCase()}-${first}`,
      title: `${title}: ${named} of ${some[0]?.count ?? 0}`,
      description: `${describe(some)} Rulers of 150 mm and 6 in across and up the page.`,
      parts: [pageOf(look, some, { room, job })],
      ...(job.printer === null ? {} : { stretch: stretchOf(job) }),
    });
  });
}

function pageOf(look: StripLook, tiles: readonly Tile[], { room, job }: { readonly room: Room; readonly job: Job }): Part {
  const bottom = room.height;
  const foot = bottom - flapDrop(look);
  const line = { x: 0, y: bottom + RULER_SIDE_mm + 0.4 };
  return group([
    ...tiles.map((tile, index) => tileParts(look, tile, { x: look.half + index * (2 * look.half + GAP_mm), y: foot })),
    doubleRuler({ x: room.width + RULER_SIDE_mm + 0.4, y: bottom - 2 }, { x: 0, y: -1 }, { millimetres: printedRuler.value }),
    doubleRuler({ ...line, x: 3 }, { x: 1, y: 0 }, { millimetres: printedRuler.value }),
    ...textLines(ruleLines(room.width + RULER_mm - 1, job, look.notes), { x: 0, y: bottom + RULER_mm + 2 }),
  ]);
}
