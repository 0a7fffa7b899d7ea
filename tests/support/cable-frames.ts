// Which frames do the laws of tightening run on? Random ones that close when they are pulled, and the simplest of all: one end frame.
import fc from "fast-check";
import { type OrderFigures, type OrderTask, orderFigures } from "../../src/mechanics/order-search-figures.ts";
import { type CableSystem, cableSystem } from "../../src/mechanics/sequence-solve.ts";

export interface RandomFrame {
  readonly flexibility: readonly (readonly number[])[];
  readonly cableFlexibility: readonly number[];
  readonly target: readonly number[];
}

/** F = A A^T times a softness: symmetric and never opening. `signs` lets a pull of one cable also tighten another. */
export const randomFrames = ({ cables, signs = false }: { readonly cables: readonly [number, number]; readonly signs?: boolean }) =>
  fc.integer({ min: cables[0], max: cables[1] }).chain((count) =>
    fc
      .record({
        shapes: fc.array(fc.array(fc.double({ min: signs ? -1 : 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }), {
          minLength: count,
          maxLength: count,
        }),
        softness: fc.double({ min: 1e-6, max: 5e-3, noNaN: true }),
        cableFlexibility: fc.array(fc.double({ min: 1e-3, max: 1e-2, noNaN: true }), { minLength: count, maxLength: count }),
        target: fc.array(fc.double({ min: 500, max: 1500, noNaN: true }), { minLength: count, maxLength: count }),
      })
      .map(
        ({ shapes, softness, cableFlexibility, target }): RandomFrame => ({
          flexibility: shapes.map((row) =>
            shapes.map((column) => row.reduce((sum, part, k) => sum + part * (column[k] ?? 0), 0) * softness),
          ),
          cableFlexibility,
          target,
        }),
      ),
  );

export const systemOf = ({ flexibility, cableFlexibility }: RandomFrame): CableSystem => cableSystem({ flexibility, cableFlexibility });

/** n cables of stiffness 1 N/mm on one end frame of stiffness 1/r: every pull moves every anchor alike. */
export const endFrame = (count: number, ratio: number): CableSystem =>
  cableSystem({
    flexibility: Array.from({ length: count }, () => Array.from({ length: count }, () => ratio)),
    cableFlexibility: Array.from({ length: count }, () => 1),
  });

export const permutations = (items: readonly number[]): readonly (readonly number[])[] =>
  items.length === 0 ? [[]] : items.flatMap((item, index) => permutations(items.toSpliced(index, 1)).map((rest) => [item, ...rest]));

/** Figures of an order however high its readings are. */
export const figuresOf = (task: OrderTask): ((order: readonly number[]) => OrderFigures) => {
  const within = orderFigures(task);
  return (order) => {
    const figures = within(order, Number.POSITIVE_INFINITY);
    if (figures === null) throw new Error("no reading is above infinity");
    return figures;
  };
};
