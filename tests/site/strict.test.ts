// Does a layout that asks for a name that is not there fail?
import { describe, expect, test } from "vitest";
import { makeLayouts } from "../../src/site/layouts.ts";
import { packageRoot } from "../../src/site/root.ts";
import { plain, strict } from "../../src/site/strict.ts";

describe("strict", () => {
  const value = { title: "Deck", sheets: [{ id: "Z-001", blocks: [] }] };
  const { env } = makeLayouts(packageRoot());

  test("names that are there are given, at every depth", () => {
    expect(env.renderString("{{ p.title }}{% for s in p.sheets %} {{ s.id }}{% endfor %}", { p: strict(value, "packet") })).toBe(
      "Deck Z-001",
    );
  });

  test("a loop over a name that is not there, which prints nothing by itself, fails and lists the names there are", () => {
    expect(env.renderString("{% for s in p.sheet %}x{% endfor %}", { p: value })).toBe("");
    expect(() => env.renderString("{% for s in p.sheet %}x{% endfor %}", { p: strict(value, "packet") })).toThrow(
      /asks packet for "sheet"; it has title, sheets/,
    );
    expect(() => env.renderString("{% for s in p.sheets %}{{ s.name }}{% endfor %}", { p: strict(value, "packet") })).toThrow(/for "name"/);
  });

  test("the value behind the wrapper is the value itself", () => expect(plain(strict(value, "packet"))).toBe(value));
});
