// Layouts place what the packet says: no arithmetic and no rounding in them, so that paper and plan cannot disagree.
import { describe, expect, test } from "vitest";
import { filesUnder, lineAt } from "./source-files.ts";

const layouts = filesUnder("layouts", ".njk");

/** What stands between {{ }} or {% %}, without strings, comments and the dashes that trim spaces. */
function expressionsOf(text: string): readonly { code: string; line: number }[] {
  const bare = text.replace(/\{#[\s\S]*?#\}/g, (comment) => comment.replace(/[^\n]/g, " "));
  return [...bare.matchAll(/\{\{-?([\s\S]*?)-?\}\}|\{%-?([\s\S]*?)-?%\}/g)].map((match) => ({
    code: (match[1] ?? match[2] ?? "").replace(/"(?:\\.|[^"\\])*"|'(?:\\.|[^'\\])*'/g, '""'),
    line: lineAt(bare, match.index),
  }));
}

const ARITHMETIC = /[+*/%]|(?<![\w"\])])-(?=\s*[\w("])|(?<=[\w"\])])\s*-\s*(?=[\w("])/;
const FILTERS = /\|\s*(round|int|float|abs|sum|random|wordcount|urlize|safe_number)\b/;

function faultsOf(path: string, text: string): readonly string[] {
  return expressionsOf(text).flatMap(({ code, line }) => {
    const faults: string[] = [];
    if (ARITHMETIC.test(code)) faults.push(`${path}:${line}: arithmetic in "${code.trim()}": compute it in src/packet`);
    const filter = code.match(FILTERS)?.[1];
    if (filter !== undefined) faults.push(`${path}:${line}: the filter ${filter}: numbers arrive as text, ready to print`);
    return faults;
  });
}

test("there are layouts to check", () => expect(layouts.length).toBeGreaterThan(2));

test("no layout computes or rounds", () => {
  expect(layouts.flatMap(({ path, text }) => faultsOf(path, text))).toEqual([]);
});

describe("the rule itself", () => {
  test.each([
    "{{ a + 1 }}",
    "{{ a - b }}",
    "{% set x = n * 2 %}",
    "{{ 3 / n }}",
    "{{ n % 2 }}",
    "{{ -n }}",
    "{{ n | round(2) }}",
    "{{ n|int }}",
  ])("sees %s", (text) => {
    expect(faultsOf("x.njk", text)).toHaveLength(1);
  });

  test.each([
    "{{- sheet.id -}}",
    '{{ "a-b/c" }}',
    "{% if a == b and not c %}",
    "a - b",
    "{# a + b #}",
    '{{ a ~ "-" ~ b }}',
    "{%- for x in y -%}",
  ])("lets %s pass", (text) => {
    expect(faultsOf("x.njk", text)).toEqual([]);
  });
});
