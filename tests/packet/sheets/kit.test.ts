import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { count, evenly, listed, sideBySide, table } from "../../../src/packet/sheets/kit.ts";

describe("evenly", () => {
  test("9 uprights in tables of at most 8 make 5 and 4, not 8 and 1", () => {
    expect(evenly([1, 2, 3, 4, 5, 6, 7, 8, 9], 8)).toEqual([
      [1, 2, 3, 4, 5],
      [6, 7, 8, 9],
    ]);
  });

  test("law: nothing is lost or moved, no list is too long, and there are as few lists as can be", () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { maxLength: 60 }), fc.integer({ min: 1, max: 12 }), (items, most) => {
        const lists = evenly(items, most);
        expect(lists.flat()).toEqual(items);
        expect(lists.every((list) => list.length <= most)).toBe(true);
        expect(lists.length).toBe(Math.ceil(items.length / most));
      }),
    );
  });
});

describe("listed", () => {
  test("three marks are joined by a comma and an and; none is said in words", () => {
    expect(listed(["P1", "P2", "P3"])).toBe("P1, P2 and P3");
    expect(listed(["P1"])).toBe("P1");
    expect(listed([])).toBe("none");
  });
});

describe("count", () => {
  test("one is singular, two and none are plural", () => {
    expect([count(1, "post"), count(2, "post"), count(0, "pass", "passes")]).toEqual(["1 post", "2 posts", "0 passes"]);
  });
});

describe("table", () => {
  test("shares of 1 and 3 become a quarter and three quarters", () => {
    const made = table({
      id: "t",
      caption: "t",
      columns: [
        { key: "a", head: "a", width: 1 },
        { key: "b", head: "b", width: 3 },
      ],
      rows: [],
    });
    expect(made.columns.map(({ width }) => width)).toEqual([0.25, 0.75]);
  });
});

describe("sideBySide", () => {
  const columns = [{ key: "a", head: "a" }];
  const rowsOf = (n: number): readonly (readonly string[])[] => Array.from({ length: n }, (_, index) => [String(index + 1)]);

  test("5 rows in at most 2 parts are read down: 1 to 3, then 4 and 5 with an empty place", () => {
    expect(sideBySide(columns, rowsOf(5), 2)).toEqual({
      columns: [columns[0], { key: "a-2", head: "a" }],
      rows: [
        ["1", "4"],
        ["2", "5"],
        ["3", ""],
      ],
    });
  });

  test("9 rows in at most 4 parts need 3 only: no part is empty", () => {
    expect(sideBySide(columns, rowsOf(9), 4).columns.length).toBe(3);
  });

  test("law: every row stands once, in its order, and no column is left empty", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 6 }), (n, most) => {
        const made = sideBySide(columns, rowsOf(n), most);
        const read = made.columns.flatMap((_, at) => made.rows.map((row) => row[at])).filter((cell) => cell !== "");
        expect(read).toEqual(rowsOf(n).flat());
        expect(made.columns.length).toBeLessThanOrEqual(most);
        expect(made.rows[0]).not.toContain("");
      }),
    );
  });
});
