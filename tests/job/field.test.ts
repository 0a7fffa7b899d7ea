import { describe, expect, test } from "vitest";
import { choice, lengthField, nearest, textField } from "../../src/job/field.ts";

const issueOf = (result: {
  readonly success: boolean;
  readonly error?: { readonly issues: readonly { readonly message: string; readonly code: string }[] } | undefined;
}): string => result.error?.issues.map((issue) => issue.message).join("; ") ?? "none";

describe("nearest", () => {
  test("hieght is height, spacrs is spacers, pots is post", () => {
    expect(nearest("hieght", ["length", "height"])).toBe("height");
    expect(nearest("spacrs", ["sides", "spacers"])).toBe("spacers");
    expect(nearest("pots", ["post", "wall"])).toBe("post");
  });

  test("Length is length whatever its capitals, and zebra is like neither post nor wall", () => {
    expect(nearest("Length", ["length"])).toBe("length");
    expect(nearest("zebra", ["post", "wall"])).toBeNull();
    expect(nearest("anything", [])).toBeNull();
  });
});

describe("lengthField", () => {
  const side = lengthField({ name: "the length of a side", example: "23 ft", from: "6 in", to: "100 m" });

  test("6 in and 100 m are the ends of what is plausible and are read", () => {
    expect(side.parse("6 in")).toBe(152.4);
    expect(side.parse("100 m")).toBe(100_000);
  });

  test("101 m is more than 100 m", () =>
    expect(issueOf(side.safeParse("101 m"))).toBe('"101 m" is more than 100 m, the most for the length of a side'));

  test("a limit of the program's own that does not read is a fault of the program", () => {
    expect(() => lengthField({ name: "x", example: "1 in", from: "1", to: "2 in" })).toThrow(RangeError);
  });
});

describe("choice and textField", () => {
  test("irc 2021 is IRC 2021", () => expect(choice("the edition", ["IRC 2021"]).parse(" irc  2021 ")).toBe("IRC 2021"));

  test("a text over two lines becomes one", () => expect(textField("the title", "x").parse("a\n  deck ")).toBe("a deck"));

  test("301 letters, an escape sign and a sign that turns the direction of writing are refused", () => {
    const title = textField("the title", "x");
    expect(issueOf(title.safeParse("a".repeat(301)))).toBe("the title has 301 letters");
    expect(issueOf(title.safeParse("a\u001b[31m"))).toBe("the title holds a sign that cannot be printed");
    expect(issueOf(title.safeParse("a\u202eb"))).toBe("the title holds a sign that cannot be printed");
  });

  test("markup is text like any other: the page escapes it", () =>
    expect(textField("the title", "x").parse("<b>deck</b>")).toBe("<b>deck</b>"));
});
