// README and DEVELOPERS say only what is so: their links, commands and folders exist, and the map of rooms is the one that is enforced.
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { house, mapRow, sortedCell } from "./rooms.ts";
import { lineAt } from "./source-files.ts";

const documents = ["README.md", "DEVELOPERS.md"];
const { scripts = {} } = JSON.parse(readFileSync("package.json", "utf8")) as { scripts?: Record<string, string> };

/** Commands of npm itself. */
const ownCommands = ["install", "ci", "test", "run", "start", "exec", "pack", "version", "outdated", "audit", "ls", "help"];

describe.each(documents)("%s", (name) => {
  test("exists", () => expect(existsSync(name), `${name} is missing`).toBe(true));

  const text = existsSync(name) ? readFileSync(name, "utf8") : "";

  test("says something", () => expect(text.length).toBeGreaterThan(500));

  test("links to files that exist", () => {
    const broken = [...text.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)]
      .map((match) => ({ link: match[1] ?? "", line: lineAt(text, match.index) }))
      .filter(({ link }) => !/^[a-z]+:/.test(link) && !existsSync(link));
    expect(broken.map(({ link, line }) => `${name}:${line}: ${link} does not exist`)).toEqual([]);
  });

  test("links to headings that it has", () => {
    const anchors = [...text.matchAll(/^#+ (.+)$/gm)].map(([, heading = ""]) =>
      heading
        .toLowerCase()
        .replace(/[^\w\- ]/g, "")
        .replaceAll(" ", "-"),
    );
    const broken = [...text.matchAll(/\]\(#([^)]+)\)/g)].map(([, anchor = ""]) => anchor).filter((anchor) => !anchors.includes(anchor));
    expect(broken).toEqual([]);
  });

  test("names npm commands that package.json has", () => {
    const wrong = [...text.matchAll(/\bnpm (?:run (?:-s |--silent )?([\w:-]+)|(\w[\w-]*))/g)].flatMap((match) => {
      const [, script, command] = match;
      const known = script === undefined ? ownCommands.includes(command ?? "") : Object.hasOwn(scripts, script);
      const missing = command === "test" && !Object.hasOwn(scripts, "test");
      return known && !missing ? [] : [`${name}:${lineAt(text, match.index)}: "${match[0]}" is no command here`];
    });
    expect(wrong).toEqual([]);
  });

  test("names folders and files that exist", () => {
    const named = [...text.matchAll(/`((?:src|tests|layouts|jobs)\/[\w./@-]*)`/g)].map((match) => ({
      path: match[1] ?? "",
      line: lineAt(text, match.index),
    }));
    const wrong = named.filter(({ path }) => !existsSync(path));
    expect(wrong.map(({ path, line }) => `${name}:${line}: ${path} does not exist`)).toEqual([]);
  });
});

describe("the map of rooms in DEVELOPERS.md", () => {
  const text = existsSync("DEVELOPERS.md") ? readFileSync("DEVELOPERS.md", "utf8") : "";

  // The table whose first three columns are: room, may import, packages. Further columns are free.
  test("is the table that is enforced, row by row", () => {
    const lines = text.split("\n");
    const head = lines.findIndex((line) => /^\|\s*room\s*\|\s*may import\s*\|\s*packages\s*\|/i.test(line));
    const body = lines.slice(head + 2);
    const cells = body
      .slice(
        0,
        Math.max(
          0,
          body.findIndex((line) => !line.startsWith("|")),
        ),
      )
      .map((line) => {
        const [name = "", imports = "", packages = ""] = line
          .split("|")
          .slice(1, 4)
          .map((cell) => cell.replaceAll("`", "").trim());
        return [name, sortedCell(imports.split(/,\s*/)), sortedCell(packages.split(/,\s*/))];
      });
    const expected = house.map(mapRow);
    const table = expected.map((row) => `| ${row.join(" | ")} |`).join("\n");
    expect(head, `a table "| room | may import | packages |" with these rows is missing:\n${table}`).toBeGreaterThanOrEqual(0);
    expect(cells, `the rows should be:\n${table}`).toEqual(expected);
  });
});
