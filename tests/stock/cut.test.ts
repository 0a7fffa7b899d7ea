import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CutRequest, cutStock, type StockPlan } from "../../src/stock/cut.ts";

const FOOT = 304.8;
const INCH = 25.4;

function planOf(request: CutRequest): StockPlan {
  const result = cutStock(request);
  if ("tooLong" in result) throw new Error(`${result.tooLong} is too long`);
  return result;
}

const feetStock = (...feet: number[]) => feet.map((one) => ({ length: one * FOOT, cost: one * 100 }));

describe("cutStock", () => {
  test("seven 33 in pieces need four 8 ft bars: two to a bar, the third would need 99 in and two kerfs", () => {
    const plan = planOf({
      pieces: [{ mark: "A", length: 33 * INCH, count: 7 }],
      stock: feetStock(8),
      kerf: INCH / 8,
      endTrim: INCH / 2,
      objective: "length",
    });
    expect(plan.bars.map((bar) => bar.pieces.length)).toEqual([2, 2, 2, 1]);
    expect(plan.proven).toBe(true);
    // 96 in less two trims of 1/2 in, two pieces of 33 in and two kerfs of 1/8 in.
    expect(plan.bars[0]?.offcut).toBeCloseTo((96 - 1 - 66 - 0.25) * INCH, 9);
  });

  test("three 31-1/2 in pieces and two kerfs of 1/8 in fill 94-3/4 in exactly: one bar, no offcut", () => {
    const plan = planOf({
      pieces: [{ mark: "A", length: 31.5 * INCH, count: 3 }],
      stock: [{ length: 94.75 * INCH, cost: 1 }],
      kerf: INCH / 8,
      endTrim: 0,
      objective: "count",
    });
    expect(plan.bars).toHaveLength(1);
    expect(plan.bars[0]?.offcut).toBeCloseTo(0, 9);
  });

  test("a kerf too much: the same three pieces in 94-11/16 in need two bars", () => {
    const plan = planOf({
      pieces: [{ mark: "A", length: 31.5 * INCH, count: 3 }],
      stock: [{ length: (94 + 11 / 16) * INCH, cost: 1 }],
      kerf: INCH / 8,
      endTrim: 0,
      objective: "count",
    });
    expect(plan.bars).toHaveLength(2);
  });

  // What bars of 20 and 14 add up to: 14 20 28 34 40 42 48 54 56 60 62 68 70 74 ...; the pieces cannot come to less than the next of these.
  test.each([
    { pieces: [9, 9, 7, 7, 7, 12, 12], sum: 63, total: 68 },
    { pieces: [4, 4, 6, 6, 6, 7, 7, 7, 10, 10], sum: 67, total: 68 },
    { pieces: [2, 2, 7, 3, 3, 2, 2, 11, 11], sum: 43, total: 48 },
  ])(
    "pieces of $sum in bars of 20 and 14 cost $total, the least that such bars add up to, where filling bar by bar takes 6 more or 2 more",
    ({ pieces, sum, total }) => {
      expect(pieces.reduce((a, b) => a + b, 0)).toBe(sum);
      const plan = planOf({
        pieces: pieces.map((length, index) => ({ mark: `${index}`, length })),
        stock: [
          { length: 20, cost: 1 },
          { length: 14, cost: 1 },
        ],
        kerf: 0,
        endTrim: 0,
        objective: "length",
      });
      expect(plan).toMatchObject({ total, bound: total, proven: true, used: sum });
    },
  );

  // Totals of such bars from 46 on: 46 = 20 + 13 + 13 and 52 = 13 x 4 hold neither 15 beside 12 and 10 nor 15 at all; then comes 53.
  test("15 12 10 5 4 in bars of 20 and 13 cost 53, proven, though totals of 46 and 52 would hold their length", () => {
    const plan = planOf({
      pieces: [15, 12, 10, 5, 4].map((length, index) => ({ mark: `${index}`, length })),
      stock: [20, 13].map((length) => ({ length, cost: 1 })),
      kerf: 0,
      endTrim: 0,
      objective: "length",
    });
    expect(plan).toMatchObject({ total: 53, bound: 53, proven: true });
  });

  test("7 7 5 5 4 4 4 4 in bars of 20 need two bars, 7+5+4+4 twice, where first fit decreasing takes three: 7+7+5, 5+4+4+4, 4", () => {
    const plan = planOf({
      pieces: [7, 7, 5, 5, 4, 4, 4, 4].map((length, index) => ({ mark: `${index}`, length })),
      stock: [{ length: 20, cost: 1 }],
      kerf: 0,
      endTrim: 0,
      objective: "count",
    });
    expect(plan.bars).toHaveLength(2);
    expect(plan.proven).toBe(true);
  });

  test("by length two 8 ft bars beat one 20 ft bar for two pieces of 7 ft; by count one 20 ft bar is taken; by cost the cheaper", () => {
    const pieces = [{ mark: "A", length: 7 * FOOT, count: 2 }];
    const rest = { kerf: 0, endTrim: 0 };
    const stock = [
      { length: 8 * FOOT, cost: 900 },
      { length: 20 * FOOT, cost: 1500 },
    ];
    expect(planOf({ pieces, stock, ...rest, objective: "length" }).bought).toBeCloseTo(16 * FOOT, 9);
    expect(planOf({ pieces, stock, ...rest, objective: "count" }).bars.map((bar) => bar.stockLength)).toEqual([20 * FOOT]);
    expect(planOf({ pieces, stock, ...rest, objective: "cost" }).total).toBeCloseTo(1500, 9);
  });

  test("a length that costs more than a longer one is not bought", () => {
    const stock = [
      { length: 8 * FOOT, cost: 2000 },
      { length: 10 * FOOT, cost: 1500 },
    ];
    const plan = planOf({ pieces: [{ mark: "A", length: 7 * FOOT }], stock, kerf: 0, endTrim: 0, objective: "cost" });
    expect(plan.bars[0]?.stockLength).toBe(10 * FOOT);
  });

  test("a piece longer than every bar is named, with trims counted: 96 in does not come out of 8 ft", () => {
    const request: CutRequest = {
      pieces: [
        { mark: "short", length: 90 * INCH },
        { mark: "long", length: 96 * INCH },
      ],
      stock: feetStock(8),
      kerf: INCH / 8,
      endTrim: INCH / 2,
      objective: "length",
    };
    expect(cutStock(request)).toEqual({ tooLong: "long" });
    expect(cutStock({ ...request, endTrim: 0 })).toHaveProperty("bars");
    // However wide the kerf, and of however many a kind: what is not asked for is not too long.
    const longer = { mark: "longer", length: 96 * INCH + 1 };
    expect(cutStock({ ...request, pieces: [longer], kerf: 3, endTrim: 0 })).toEqual({ tooLong: "longer" });
    expect(cutStock({ ...request, pieces: [{ ...longer, count: 0 }], endTrim: 0 })).toMatchObject({ bars: [] });
  });

  test("of two offers of one length the cheaper is bought, and a bar that its trims use up is none", () => {
    const pieces = [{ mark: "A", length: 7 * FOOT, count: 2 }];
    for (const costs of [
      [900, 1500],
      [1500, 900],
    ]) {
      const stock = [...costs.map((cost) => ({ length: 8 * FOOT, cost })), { length: 2 * INCH, cost: 1 }];
      const plan = planOf({ pieces, stock, kerf: 3, endTrim: INCH, objective: "cost" });
      expect(plan).toMatchObject({ total: 1800, proven: true });
      expect(plan.bars.map(({ stockLength }) => stockLength)).toEqual([8 * FOOT, 8 * FOOT]);
    }
  });

  test("marks of one length are handed out once each, longest bars first, then those with most of the longest pieces", () => {
    const plan = planOf({
      pieces: [
        { mark: "A", length: 40 },
        { mark: "B", length: 40 },
        { mark: "C", length: 40 },
        { mark: "D", length: 15 },
        { mark: "E", length: 60 },
      ],
      stock: [
        { length: 100, cost: 1 },
        { length: 60, cost: 1 },
      ],
      kerf: 0,
      endTrim: 0,
      objective: "length",
    });
    expect(plan.bars.map(({ stockLength, pieces }) => [stockLength, ...pieces.map(({ mark }) => mark)])).toEqual([
      [100, "E", "A"],
      [100, "B", "C", "D"],
    ]);
  });

  test("nothing to cut buys nothing", () => {
    const plan = planOf({ pieces: [], stock: feetStock(8), kerf: 3, endTrim: 0, objective: "length" });
    expect(plan).toEqual({ bars: [], bought: 0, used: 0, total: 0, bound: 0, proven: true });
    expect(planOf({ pieces: [], stock: [], kerf: 3, endTrim: 0, objective: "cost" })).toEqual(plan);
  });

  test("a length, kerf, trim, count or cost that cannot be is refused", () => {
    const good: CutRequest = {
      pieces: [{ mark: "A", length: 1 }],
      stock: [{ length: 2, cost: 1 }],
      kerf: 0,
      endTrim: 0,
      objective: "length",
    };
    expect(() => cutStock({ ...good, pieces: [{ mark: "A", length: -1 }] })).toThrow(RangeError);
    expect(() => cutStock({ ...good, pieces: [{ mark: "A", length: 1, count: 1.5 }] })).toThrow(RangeError);
    expect(() => cutStock({ ...good, pieces: [{ mark: "A", length: 0 }] })).toThrow(RangeError);
    expect(() => cutStock({ ...good, pieces: [{ mark: "A", length: 1, count: -1 }] })).toThrow(RangeError);
    expect(() => cutStock({ ...good, kerf: -1 })).toThrow(RangeError);
    expect(() => cutStock({ ...good, endTrim: -1 })).toThrow(RangeError);
    expect(() => cutStock({ ...good, stock: [{ length: 0, cost: 1 }] })).toThrow(RangeError);
    expect(() => cutStock({ ...good, stock: [{ length: 2, cost: 0 }] })).toThrow(RangeError);
  });
});

// Laws. Lengths in sixteenths of an inch, as pieces really are.
const sixteenth = INCH / 16;
const requests: fc.Arbitrary<CutRequest> = fc.record({
  pieces: fc.array(
    fc.record({
      mark: fc.constantFrom("A", "B", "C", "D"),
      length: fc.integer({ min: 16, max: 1500 }).map((n) => n * sixteenth),
      count: fc.integer({ min: 1, max: 5 }),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  stock: fc
    .uniqueArray(fc.constantFrom(8, 10, 12, 14, 16, 20), { minLength: 1, maxLength: 5 })
    .chain((feet) => fc.tuple(...feet.map((one) => fc.integer({ min: 300, max: 4000 }).map((cost) => ({ length: one * FOOT, cost }))))),
  kerf: fc.constantFrom(0, INCH / 8),
  endTrim: fc.constantFrom(0, INCH / 2),
  objective: fc.constantFrom("length", "cost", "count"),
});

const solved = (request: CutRequest) => {
  const plan = cutStock(request);
  fc.pre(!("tooLong" in plan));
  return plan as StockPlan;
};

describe("every cutting plan", () => {
  test("cuts each piece once", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = solved(request);
        const asked = request.pieces.flatMap(({ mark, length, count = 1 }) => Array(count).fill(`${mark} ${length.toFixed(4)}`));
        const cut = plan.bars.flatMap((bar) => bar.pieces.map(({ mark, length }) => `${mark} ${length.toFixed(4)}`));
        expect(cut.sort()).toEqual(asked.sort());
      }),
      { numRuns: 150 },
    );
  });

  test("overfills no bar, kerfs and trims counted, and accounts for every millimetre of one", () => {
    fc.assert(
      fc.property(requests, (request) => {
        for (const bar of solved(request).bars) {
          const pieces = bar.pieces.reduce((sum, piece) => sum + piece.length, 0);
          const least = pieces + (bar.pieces.length - 1) * request.kerf + 2 * request.endTrim;
          expect(least).toBeLessThanOrEqual(bar.stockLength + 1e-5);
          const all = pieces + bar.pieces.length * request.kerf + 2 * request.endTrim + bar.offcut;
          // Where the last piece ends at the trim its kerf is not cut.
          expect(all).toBeGreaterThanOrEqual(bar.stockLength - 1e-5);
          expect(all).toBeLessThanOrEqual(bar.stockLength + request.kerf + 1e-5);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("lists longest bars first, and of one length those first that hold more of the longest pieces", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const { bars } = solved(request);
        const kinds = [...new Set(request.pieces.map(({ length }) => length))].sort((a, b) => b - a);
        const rank = ({ stockLength, pieces }: StockPlan["bars"][number]) => [
          stockLength,
          ...kinds.map((kind) => pieces.filter(({ length }) => Math.abs(length - kind) < 1e-6).length),
        ];
        for (const [index, bar] of bars.slice(1).entries()) {
          const before = rank(bars[index] ?? bar);
          const changed = rank(bar).findIndex((value, at) => value !== before[at]);
          expect(changed < 0 || (rank(bar)[changed] ?? 0) < (before[changed] ?? 0)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("costs no less than its bound, and exactly its bound when proven", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const { total, bound, proven, bought, bars } = solved(request);
        expect(total).toBeGreaterThanOrEqual(bound * (1 - 1e-9));
        const paid = bars.reduce((sum, bar) => sum + (request.stock.find(({ length }) => length === bar.stockLength)?.cost ?? 0), 0);
        expect(total).toBeCloseTo({ length: bought, cost: paid, count: bars.length }[request.objective], 6);
        expect(proven).toBe(Math.abs(total - bound) < 1e-4);
      }),
      { numRuns: 150 },
    );
  });

  // Where the branches that may be tried run out, with and without a plan better than the first.
  test.each([
    [[15, 39, 39, 39, 11, 11, 8, 8, 14, 39, 45, 37, 37]],
    [[10, 20, 18, 18, 18, 30, 30, 30, 30, 29, 29, 29, 29, 28, 33, 33, 33, 29, 29, 29, 29, 47, 47, 47, 35, 35, 35, 35, 21, 21, 21, 21]],
    [[42, 42, 39, 10, 20, 45, 45, 45, 45, 16, 16, 21, 21, 21, 21, 43, 43, 43, 11, 11, 38, 38, 38]],
  ])("that is not proven says so, and its bound is below it: %j in bars of 100 and 73", (lengths) => {
    const pieces = lengths.map((length, index) => ({ mark: `${index}`, length }));
    const stock = [100, 73].map((length) => ({ length, cost: 1 }));
    const { total, bound, proven, used, bought } = solved({ pieces, stock, kerf: 0, endTrim: 0, objective: "length" });
    expect(proven).toBe(total === bound);
    expect(bound).toBeGreaterThanOrEqual(used);
    expect(total).toBe(bought);
    expect(total).toBeGreaterThanOrEqual(bound);
  });

  // Plans found by a longer search: the least that is known, as length of the bar and pieces.
  test.each([
    [
      400,
      [
        [100, 36, 26, 20, 16],
        [100, 36, 17, 17, 15, 15],
        [100, 35, 32, 32],
        [100, 35, 32, 16, 16],
      ],
    ],
    [
      773,
      [
        [73, 44, 23],
        [100, 46, 40, 13],
        [100, 46, 31, 22],
        [100, 46, 31, 22],
        [100, 44, 44],
        [100, 40, 40, 20],
        [100, 40, 24, 23, 13],
        [100, 31, 24, 24, 20],
      ],
    ],
  ])("has no bound above %d, and is not proven above it, where these bars hold all pieces: %j", (known, bars) => {
    expect(bars.reduce((sum, [length = 0]) => sum + length, 0)).toBe(known);
    for (const [length = 0, ...pieces] of bars) expect(pieces.reduce((sum, piece) => sum + piece, 0)).toBeLessThanOrEqual(length);
    const pieces = bars.flatMap(([, ...of]) => of).map((length, index) => ({ mark: `${index}`, length }));
    const stock = [100, 73].map((length) => ({ length, cost: 1 }));
    const { total, bound, proven } = solved({ pieces, stock, kerf: 0, endTrim: 0, objective: "length" });
    expect(bound).toBeLessThanOrEqual(known);
    if (total > known) expect(proven).toBe(false);
  });

  test("is the same when it is made again, and costs the same when the pieces come in another order", () => {
    fc.assert(
      fc.property(requests, (request) => {
        const plan = solved(request);
        expect(cutStock(request)).toEqual(plan);
        const turned = solved({ ...request, pieces: [...request.pieces].reverse(), stock: [...request.stock].reverse() });
        expect(turned.total).toBeCloseTo(plan.total, 4);
      }),
      { numRuns: 60 },
    );
  });

  test("agrees with trying everything, on up to six pieces in bars of one length", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 6 }), (lengths) => {
        const request: CutRequest = {
          pieces: lengths.map((length, index) => ({ mark: `${index}`, length })),
          stock: [{ length: 20, cost: 1 }],
          kerf: 0,
          endTrim: 0,
          objective: "count",
        };
        const fewest = fewestBars(lengths, 20);
        expect(solved(request)).toMatchObject({ total: fewest, bound: fewest, proven: true });
        expect(solved(request).bars).toHaveLength(fewest);
      }),
      { numRuns: 200 },
    );
  });

  test("agrees with trying everything, on up to five pieces in bars of three lengths, by cost", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 5 }),
        fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 })),
        (lengths, [a, b, c]) => {
          const stock = [
            { length: 8, cost: a },
            { length: 13, cost: b },
            { length: 20, cost: c },
          ];
          const pieces = lengths.map((length, index) => ({ mark: `${index}`, length }));
          const { total, bound, proven } = solved({ pieces, stock, kerf: 0, endTrim: 0, objective: "cost" });
          expect([total, bound, proven]).toEqual([...Array(2).fill(expect.closeTo(cheapestByTrying(lengths, stock), 6)), true]);
        },
      ),
      { numRuns: 200 },
    );
  });
});

/** Puts every piece into every bar that has room, and into a new one: slow and plain. */
function fewestBars(lengths: readonly number[], capacity: number, rooms: readonly number[] = []): number {
  const [first, ...rest] = lengths;
  if (first === undefined) return rooms.length;
  const tries = rooms.flatMap((room, index) =>
    room >= first ? [fewestBars(rest, capacity, rooms.toSpliced(index, 1, room - first))] : [],
  );
  return Math.min(...tries, fewestBars(rest, capacity, [...rooms, capacity - first]));
}

/** Every way to put the pieces into groups, each group into the cheapest bar that holds it. */
function cheapestByTrying(
  lengths: readonly number[],
  stock: readonly { length: number; cost: number }[],
  groups: readonly number[] = [],
): number {
  const [first, ...rest] = lengths;
  if (first === undefined) {
    return groups.reduce((sum, width) => sum + Math.min(...stock.filter((bar) => bar.length >= width).map((bar) => bar.cost)), 0);
  }
  const joined = groups.map((width, index) => cheapestByTrying(rest, stock, groups.toSpliced(index, 1, width + first)));
  return Math.min(...joined, cheapestByTrying(rest, stock, [...groups, first]));
}
