import { describe, expect, test } from "vitest";
import { sourcesMarkedIn } from "../../src/packet/marked-sources.ts";
import type { Block } from "../../src/packet/packet.ts";

describe("sourcesMarkedIn", () => {
  test("finds known marks once, in the order of the list of sources, and leaves other brackets alone", () => {
    const text = ["[irc-2021] a [practice] b [irc-2021] c [no-such-source] [toString] [practic", "[[derived] ["];
    expect(sourcesMarkedIn([{ kind: "prose", text }])).toEqual(["practice", "derived", "irc-2021"]);
  });

  const mark = "[irc-2021]";
  const column = { key: "a", head: "A" };
  const table = { kind: "table", id: "t", caption: "", columns: [column], rows: [] } as const;
  test.each<readonly [string, Block]>([
    ["a heading", { kind: "heading", id: "h", text: mark }],
    ["a list", { kind: "list", items: ["", mark] }],
    ["a caution", { kind: "caution", level: "notice", text: [mark] }],
    ["a fact", { kind: "facts", id: "f", facts: [{ name: "a", value: mark }] }],
    ["a blank", { kind: "blanks", id: "b", title: "", rows: [{ label: mark, unit: "" }] }],
    ["a role", { kind: "signatures", id: "s", roles: [mark] }],
    ["a caption", { ...table, caption: mark }],
    ["the second line of a head", { ...table, columns: [{ ...column, sub: mark }] }],
    ["a cell", { ...table, rows: [[mark]] }],
    ["a critical cell beside blanks", { ...table, rows: [[{ blank: "" }, { tick: true }, { text: mark, strong: true }]] }],
    ["a note below a table", { ...table, notes: [mark] }],
    ["a step's reason", { kind: "steps", id: "p", title: "", mode: "read-do", items: [{ text: "a", more: mark }] }],
    ["a hold point", { kind: "steps", id: "p", title: "", mode: "read-do", items: [], hold: mark }],
  ])("finds a mark in %s", (_, block) => expect(sourcesMarkedIn([{ kind: "break" }, block])).toEqual(["irc-2021"]));
});
