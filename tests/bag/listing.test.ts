// Is a manifest read line by line as RFC 8493 writes it, and does no path lead out of the bag?
import { describe, expect, test } from "vitest";
import { algorithms } from "../../src/bag/bag.ts";
import { readListing, writeListing } from "../../src/bag/listing.ts";

const md5 = algorithms[3];
const hash = "49afbd86a1ca9f34b677a3f09655eae9";
const read = (text: string) => readListing(text, { name: "manifest-md5.txt", algorithm: md5 });

describe("readListing", () => {
  test("the example of the RFC (from memory): a hash, blanks, a path", () => {
    const text = `${hash} data/27613-h/images/q172.png\n408ad21d50cef31da4df6d9ed81b01a7 data/27613-h/images/q172.txt\n`;
    expect(read(text)).toEqual({
      listed: [
        { path: "data/27613-h/images/q172.png", hash },
        { path: "data/27613-h/images/q172.txt", hash: "408ad21d50cef31da4df6d9ed81b01a7" },
      ],
      faults: [],
    });
  });

  test("capitals in hashes, tabs, other line ends and blanks inside of a path are taken", () => {
    expect(read(`${hash.toUpperCase()}\t \tdata/a b.txt\r\n${hash}  data/c\r`).listed).toEqual([
      { path: "data/a b.txt", hash },
      { path: "data/c", hash },
    ]);
  });

  test("a line feed, a carriage return and a percent sign are written as codes, and nothing else is", () => {
    expect(read(`${hash}  data/%25%0A%0d`).listed[0]?.path).toBe("data/%\n\r");
    expect(read(`${hash}  data/%2525`).listed[0]?.path).toBe("data/%25");
    for (const path of ["data/100%", "data/%2e%2e/x", "data/%20"]) {
      expect(read(`${hash}  ${path}`)).toMatchObject({ listed: [], faults: [{ what: expect.stringContaining("percent sign") }] });
    }
  });

  test.each(["../secret", "data/../../secret", "data/..", "/etc/passwd", "data//x", "data/./x", "~/x", "C:/x", "data\\..\\x", "data/x/"])(
    "%s may lead out of the bag and is refused with its line",
    (path) => {
      const { listed, faults } = read(`${hash}  data/good\n${hash}  ${path}\n`);
      expect(listed.map((one) => one.path)).toEqual(["data/good"]);
      expect(faults).toEqual([
        expect.objectContaining({ where: "manifest-md5.txt, line 2", what: expect.stringContaining("lead out of the bag") }),
      ]);
    },
  );

  test.each([
    ["", /not a hash and a path/],
    [hash, /not a hash and a path/],
    [`${hash}0  data/x`, /not 32 hexadecimal digits/],
    [`${hash.slice(1)}g  data/x`, /not 32 hexadecimal digits/],
  ])("%j is refused", (line, what) => {
    const { listed, faults } = read(`${line}\n`);
    expect([listed, faults.length]).toEqual([[], 1]);
    expect(faults[0]?.what).toMatch(what);
  });

  test("a path that is listed twice is told", () => {
    expect(read(`${hash}  data/x\n${hash}  data/x\n`).faults[0]?.what).toBe("data/x is listed twice");
  });
});

test("lines are written in the order of their paths with two blanks, as sha256sum reads them", () => {
  const listed = [
    { path: "data/b", hash: "2" },
    { path: "data/B", hash: "1" },
  ];
  expect(writeListing(listed)).toBe("1  data/B\n2  data/b\n");
});
