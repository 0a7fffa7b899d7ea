// The inside never touches the world: the same job gives the same bytes on every machine, on every day.
import { describe, expect, test } from "vitest";
import { pureRooms } from "./rooms.ts";
import { codeOnly, filesUnder, lineAt, roomOf } from "./source-files.ts";

interface Rule {
  readonly what: string;
  readonly pattern: RegExp;
  readonly instead: string;
}

const world: readonly Rule[] = [
  { what: "the clock", pattern: /\bDate\b(?!\.UTC\b)|\bperformance\b|\bTemporal\b/g, instead: "dates come in from outside, as text" },
  { what: "chance", pattern: /\bMath\.random\b|\brandomUUID\b|\bgetRandomValues\b|\brandomBytes\b/g, instead: "derive ids from the job" },
  { what: "the process or the environment", pattern: /\bprocess\s*\.|\bglobalThis\b|\bnavigator\b/g, instead: "take it as an argument" },
  {
    what: "the locale, which differs between machines",
    pattern: /\bIntl\b|\.toLocale\w*|\.localeCompare\b/g,
    instead: "use units/print.ts, and compare with < and >",
  },
  { what: "the console", pattern: /\bconsole\s*\./g, instead: "return a Problem" },
  {
    what: "timers and the network",
    pattern: /\b(?:setTimeout|setInterval|setImmediate|fetch|XMLHttpRequest)\s*\(/g,
    instead: "do it in cli",
  },
  { what: "require", pattern: /\brequire\s*\(/g, instead: "use import" },
];

const rounding: Rule = {
  what: "rounding",
  pattern:
    /\bMath\.(?:round|floor|ceil|trunc|fround)\b|\.toFixed\b|\.toPrecision\b|\.toExponential\b|~~|\bparseInt\b|[^|]\|\s*0\b(?!x)|>>>?\s*0\b/g,
  instead: "use units/round.ts or units/print.ts, which say in which direction",
};

const mayRound = ["src/units/round.ts", "src/units/print.ts"];

function breaches(path: string, text: string, rules: readonly Rule[]): readonly string[] {
  const code = codeOnly(text);
  return rules.flatMap(({ what, pattern, instead }) =>
    [...code.matchAll(pattern)].map((match) => `${path}:${lineAt(text, match.index)}: ${match[0].trim()} is ${what}: ${instead}`),
  );
}

const files = filesUnder("src", ".ts");

describe.each(pureRooms)("src/%s", (room) => {
  const own = files.filter(({ path }) => roomOf(path) === room);

  test("asks no clock, chance, process, locale, console or network", () => {
    expect(own.flatMap(({ path, text }) => breaches(path, text, world))).toEqual([]);
  });

  test("imports no node: module", () => {
    const found = own.flatMap(({ path, text }) =>
      [...text.matchAll(/["'](node:[\w/]+)["']/g)].map(
        (match) => `${path}:${lineAt(text, match.index)}: ${match[1]}: only site, pdf and cli`,
      ),
    );
    expect(found).toEqual([]);
  });
});

describe("src", () => {
  test("there are files to check", () => expect(files.length).toBeGreaterThan(20));

  test("rounds only in units/round.ts and units/print.ts", () => {
    const others = files.filter(({ path }) => !mayRound.includes(path));
    expect(others.flatMap(({ path, text }) => breaches(path, text, [rounding]))).toEqual([]);
  });
});

describe("the rules themselves", () => {
  test("find what they look for in code, and not in comments, strings or patterns", () => {
    const inTemplate = (code: string): string => `\`Date $\{${code}} Date\``;
    const bad = `const a = Math.floor(x); const b = new Date(); const c = ${inTemplate("Math.round(y)")}; console.log(x.toFixed(2));`;
    expect(breaches("x", bad, [...world, rounding])).toHaveLength(5);
    const good = `// Math.floor\n/* new Date() */ const s = "Math.round Date"; const p = /Date|Math\\.floor/g; const t = ${inTemplate("s")};`;
    expect(breaches("x", good, [...world, rounding])).toEqual([]);
  });

  test("keep the line numbers of the file", () => {
    expect(breaches("x", "\n// one\n\nMath.ceil(1)\n", [rounding])).toEqual([expect.stringContaining("x:4:")]);
  });
});
