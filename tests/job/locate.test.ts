import { describe, expect, test } from "vitest";
import { locator } from "../../src/job/locate.ts";

const text = [
  "# a remark",
  "guard:",
  "  start: { kind: post, access: drill }",
  "  sides:",
  "    - length: 23 ft  # measured",
  "      stations: [3 in, 5 ft 9 in]",
  "posts:",
].join("\n");
const locate = locator(text);

describe("locator", () => {
  test("a value is found under its letters: 23 ft at 5:15 to 5:20", () => {
    expect(locate(["guard", "sides", 0, "length"])).toEqual({ line: 5, column: 15, endColumn: 20 });
  });

  test("its key at 5:7 to 5:13", () =>
    expect(locate(["guard", "sides", 0, "length"], "key")).toEqual({ line: 5, column: 7, endColumn: 13 }));

  test("the second of two stations at 6:24 to 6:33", () => {
    expect(locate(["guard", "sides", 0, "stations", 1])).toEqual({ line: 6, column: 24, endColumn: 33 });
  });

  test("braces on one line are a value: 3:10 to 3:39", () =>
    expect(locate(["guard", "start"])).toEqual({ line: 3, column: 10, endColumn: 39 }));

  test("a block over several lines is shown by its key, an entry of a list by its first key", () => {
    expect(locate(["guard"])).toEqual({ line: 2, column: 1, endColumn: 6 });
    expect(locate(["guard", "sides", 0])).toEqual({ line: 5, column: 7, endColumn: 13 });
  });

  test("what is not there is shown by the nearest block around it", () => {
    expect(locate(["guard", "sides", 0, "turn"])).toEqual({ line: 5, column: 7, endColumn: 13 });
    expect(locate(["guard", "bearing"])).toEqual({ line: 2, column: 1, endColumn: 6 });
    expect(locate(["posts"])).toEqual({ line: 7, column: 1, endColumn: 6 });
  });

  test("the whole file, and a block that it lacks, stand at 1:1", () => {
    expect(locate([])).toEqual({ line: 1, column: 1, endColumn: 1 });
    expect(locate(["cable"])).toEqual({ line: 1, column: 1, endColumn: 1 });
  });

  test("lines that end in CR and LF have the same columns", () => {
    expect(locator(text.replaceAll("\n", "\r\n"))(["guard", "sides", 0, "length"])).toEqual({ line: 5, column: 15, endColumn: 20 });
  });

  test("a text that is no YAML places everything at 1:1 or on a line that it has", () => {
    expect(locator("a: [1, 2")(["b"])).toEqual({ line: 1, column: 1, endColumn: 1 });
  });
});
