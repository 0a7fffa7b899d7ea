// What are the pitch and the stress area of a thread?
import { type Cited, cite } from "../sources/cited.ts";
import type { Mm } from "../units/quantity.ts";
import { inches } from "./customary.ts";

export interface Thread {
  /** As it is ordered: "1/4-28", "M6x1". */
  readonly name: string;
  readonly form: "unified" | "metric";
  readonly diameter: Mm;
  readonly pitch: Mm;
}

/**
 * Tensile stress area of a thread: A = pi/4 (d - 0.9743 p)^2 for unified, A = pi/4 (d - 0.9382 p)^2 for metric threads.
 *
 * @param thread - form [word], outside diameter d [mm], pitch p [mm]
 * @returns stress area [mm2]
 * @throws never
 * Source: unified-thread-table and metric-thread-table, whose rows the two formulas give
 */
export function stressArea({ form, diameter, pitch }: Pick<Thread, "form" | "diameter" | "pitch">): number {
  return (Math.PI / 4) * (diameter - (form === "unified" ? 0.9743 : 0.9382) * pitch) ** 2;
}

const unified = (name: string, diameter_in: number, threadsPerInch: number): Cited<Thread> =>
  cite({ name, form: "unified", diameter: inches(diameter_in), pitch: 25.4 / threadsPerInch }, "unified-thread-table", name);
const metric = (name: string, diameter: Mm, pitch: Mm): Cited<Thread> =>
  cite({ name, form: "metric", diameter, pitch }, "metric-thread-table", name);

const rows: readonly Cited<Thread>[] = [
  unified("10-32", 0.19, 32),
  unified("1/4-28", 1 / 4, 28),
  unified("5/16-24", 5 / 16, 24),
  unified("3/8-24", 3 / 8, 24),
  unified("1/4-20", 1 / 4, 20),
  unified("5/16-18", 5 / 16, 18),
  unified("3/8-16", 3 / 8, 16),
  metric("M5x0.8", 5, 0.8),
  metric("M6x1", 6, 1),
  metric("M8x1.25", 8, 1.25),
  metric("M10x1.5", 10, 1.5),
];

/** In the order of the table, for "did you mean". */
export const threadNames: readonly string[] = rows.map((row) => row.value.name);

/**
 * A thread by its name; the take-up of a nut per turn is its pitch.
 *
 * @param name - size and threads per inch, or M size and pitch [word]; spaces, a multiplication sign and small m are let pass
 * @returns form, diameter [mm] and pitch [mm] with their source, or null for an unknown name
 * @throws never
 * Source: unified-thread-table; metric-thread-table
 */
export function threadOf(name: string): Cited<Thread> | null {
  const plain = (text: string): string => text.replaceAll(/\s/g, "").replaceAll("\u00d7", "x").toLowerCase();
  return rows.find((row) => plain(row.value.name) === plain(name)) ?? null;
}
