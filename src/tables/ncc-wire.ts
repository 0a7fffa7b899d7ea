// What tension or sag does the Australian code ask of a horizontal stainless wire?
// Tables 11.3.6a and b: (c) Commonwealth of Australia and the States and Territories 2022, published by the
// Australian Building Codes Board.
import { type Cited, cite } from "../sources/cited.ts";
import type { Mm, Newton } from "../units/quantity.ts";

type Construction = "1x19" | "7x7" | "7x19";

/** "not allowed": the table strikes the cell out, as the tension would exceed the wire's safe load. */
export type NoValue = "not allowed" | "not in the table";

interface Row<Cell> {
  readonly diameter: Mm;
  readonly spacing: Mm;
  /** One per column of clear distance between posts; null is struck out. */
  readonly cells: readonly (Cell | null)[];
}

/** Computed lengths within this of a row or column are that row or column. */
const SAME_mm = 1e-6;

/** Note 3 sends wire of 3.2 mm to the rows of 3.0 mm; 1/8 in is the same wire in inches. */
const AS_3_mm: readonly Mm[] = [3.175, 3.2];

/** Clear distance between posts [mm]. */
const spans_a: readonly Mm[] = [600, 800, 900, 1000, 1200, 1500, 1800, 2000, 2500];

/** Table 11.3.6a: least tension [N]. */
const tensions: readonly (Row<Newton> & { readonly construction: Construction })[] = [
  { diameter: 2.5, construction: "7x7", spacing: 60, cells: [55, 190, 263, 415, 478, 823, 1080, 1139, null] },
  { diameter: 2.5, construction: "7x7", spacing: 80, cells: [382, 630, 730, 824, 1025, 1288, null, null, null] },
  { diameter: 2.5, construction: "7x7", spacing: 100, cells: [869, 1218, 1368, null, null, null, null, null, null] },
  { diameter: 2.5, construction: "1x19", spacing: 60, cells: [35, 218, 310, 402, 585, 810, 1125, 1325, null] },
  { diameter: 2.5, construction: "1x19", spacing: 80, cells: [420, 630, 735, 840, 1050, 1400, 1750, null, null] },
  { diameter: 2.5, construction: "1x19", spacing: 100, cells: [1140, 1565, null, null, null, null, null, null, null] },
  { diameter: 3, construction: "7x7", spacing: 60, cells: [15, 178, 270, 314, 506, 660, 965, 1168, 1491] },
  { diameter: 3, construction: "7x7", spacing: 80, cells: [250, 413, 500, 741, 818, 1083, 1370, 1565, null] },
  { diameter: 3, construction: "7x7", spacing: 100, cells: [865, 1278, 1390, 1639, null, null, null, null, null] },
  { diameter: 3, construction: "1x19", spacing: 60, cells: [25, 183, 261, 340, 520, 790, 1025, 1180, null] },
  { diameter: 3, construction: "1x19", spacing: 80, cells: [325, 555, 670, 785, 1025, 1330, 1725, 1980, null] },
  { diameter: 3, construction: "1x19", spacing: 100, cells: [1090, 1500, 1705, 1910, null, null, null, null, null] },
  { diameter: 4, construction: "7x7", spacing: 60, cells: [5, 73, 97, 122, 235, 440, 664, 813, 1178] },
  { diameter: 4, construction: "7x7", spacing: 80, cells: [196, 422, 480, 524, 760, 1100, 1358, 1530, 2130] },
  { diameter: 4, construction: "7x7", spacing: 100, cells: [835, 1182, 1360, 1528, 1837, 2381, 2811, 3098, null] },
  { diameter: 4, construction: "1x19", spacing: 60, cells: [5, 5, 10, 15, 20, 147, 593, 890, 1280] },
  { diameter: 4, construction: "1x19", spacing: 80, cells: [30, 192, 300, 415, 593, 1105, 1303, 1435, 1844] },
  { diameter: 4, construction: "1x19", spacing: 100, cells: [853, 1308, 1487, 1610, 2048, 2608, 3094, 3418, 3849] },
  { diameter: 4, construction: "7x19", spacing: 60, cells: [155, 290, 358, 425, 599, 860, 1080, 1285, 1540] },
  { diameter: 4, construction: "7x19", spacing: 80, cells: [394, 654, 785, 915, 1143, 1485, 1860, 2105, 2615] },
  { diameter: 4, construction: "7x19", spacing: 100, cells: [1038, 1412, 1598, 1785, 2165, 2735, null, null, null] },
];

/** Clear distance between posts [mm]. */
const spans_b: readonly Mm[] = [600, 900, 1200, 1500, 1800, 2000];

/** Table 11.3.6b: greatest sag [mm] under a mass of 2 kg hung at mid-span. */
const sags: readonly Row<Mm>[] = [
  { diameter: 2.5, spacing: 60, cells: [17, 11, 9, 8, 8, 8] },
  { diameter: 2.5, spacing: 80, cells: [7, 5, 5, 5, null, null] },
  { diameter: 3, spacing: 60, cells: [19, 13, 8, 7, 7, 7] },
  { diameter: 3, spacing: 80, cells: [8, 6, 6, 5, 5, 5] },
  { diameter: 4, spacing: 60, cells: [18, 12, 8, 8, 7, 7] },
  { diameter: 4, spacing: 80, cells: [8, 6, 4, 4, 4, 4] },
];

/**
 * Least tension of a horizontal stainless wire by table 11.3.6a: the row at or above the spacing and the column at or above the span.
 *
 * @param wire - construction [word], diameter [mm], spacing [mm], clear distance between posts [mm]
 * @returns tension [N] with its place in the table; "not allowed" where the cell is struck out; "not in the table" for another wire, a
 *   wider spacing or a longer span
 * @throws never
 * Valid: never read between rows or columns; 1/8 in counts as 3.2 mm and takes the 3.0 mm rows (note 3)
 * Source: ncc-2022, Housing Provisions table 11.3.6a
 */
export function nccTension({
  construction,
  diameter,
  spacing,
  clearSpan,
}: {
  readonly construction: Construction;
  readonly diameter: Mm;
  readonly spacing: Mm;
  readonly clearSpan: Mm;
}): Cited<Newton> | NoValue {
  const rows = tensions.filter((row) => row.construction === construction);
  return cellOf({ rows, spans: spans_a, diameter, spacing, clearSpan, where: `table 11.3.6a, ${construction}` });
}

/**
 * Greatest sag of a horizontal stainless wire with 2 kg hung at mid-span by table 11.3.6b: the row at or above the spacing and the
 * column at or above the span.
 *
 * @param wire - diameter [mm], spacing [mm], clear distance between posts [mm]
 * @returns sag [mm] with its place in the table; "not allowed" where the cell is struck out; "not in the table" for another wire, a
 *   wider spacing or a longer span
 * @throws never
 * Valid: never read between rows or columns; 1/8 in counts as 3.2 mm and takes the 3.0 mm rows (note 2)
 * Source: ncc-2022, Housing Provisions table 11.3.6b
 */
export function nccSag(wire: { readonly diameter: Mm; readonly spacing: Mm; readonly clearSpan: Mm }): Cited<Mm> | NoValue {
  return cellOf({ rows: sags, spans: spans_b, ...wire, where: "table 11.3.6b" });
}

interface Wanted {
  readonly rows: readonly Row<number>[];
  readonly spans: readonly Mm[];
  readonly diameter: Mm;
  readonly spacing: Mm;
  readonly clearSpan: Mm;
  readonly where: string;
}

function cellOf({ rows, spans, diameter, spacing, clearSpan, where }: Wanted): Cited<number> | NoValue {
  const wire = AS_3_mm.some((one) => Math.abs(one - diameter) <= SAME_mm) ? 3 : diameter;
  // Rows and columns stand in rising order, so the first that reaches is the nearest.
  const row = rows.find((one) => Math.abs(one.diameter - wire) <= SAME_mm && one.spacing >= spacing - SAME_mm);
  const column = spans.findIndex((span) => span >= clearSpan - SAME_mm);
  const cell = row?.cells[column];
  if (row === undefined || cell === undefined) return "not in the table";
  if (cell === null) return "not allowed";
  return cite(cell, "ncc-2022", `${where}, ${row.diameter} mm, spacing ${row.spacing} mm, span ${spans[column]} mm`);
}
