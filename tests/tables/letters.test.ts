import { describe, expect, test } from "vitest";
import { undrawn } from "../../src/tables/letters.ts";
import { drawnCharacters, openFont, weights } from "../support/font-table.ts";

// Source: the font files of Atkinson Hyperlegible as they ship in node_modules.
describe("undrawn", () => {
  test.each(weights)("of all characters below U+10000 it lets pass those that weight %d draws, and no other", (weight) => {
    const drawn = new Set([...drawnCharacters(openFont(weight)), ...drawnCharacters(openFont(weight, "latin-ext"))]);
    const wrong: string[] = [];
    for (let code = 0x20; code < 0x10000; code += 1) {
      if (code >= 0xd800 && code < 0xe000) continue;
      const letter = String.fromCodePoint(code);
      if (undrawn.test(letter) === drawn.has(letter)) wrong.push(code.toString(16));
    }
    expect(wrong).toEqual([]);
  });

  test.each([
    "Łódź, ul. Żwirki",
    "Příbram, Dvořák",
    "Győr, Tűzoltó utca",
    "Čakovec, Đurđevac",
    "Iași, Brăila",
    "Šiauliai, Rīga, Jõgeva",
    "Beyoğlu, Şişli",
  ])("%s can be written", (name) => expect(undrawn.exec(name.normalize("NFC"))).toBeNull());

  test("a face beyond U+FFFF is one character that is not drawn", () => expect(undrawn.exec("deck \u{1f600}")?.[0]).toBe("\u{1f600}"));
});
