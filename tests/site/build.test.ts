// Are the web pages open to everybody, with and without scripts, from a file?
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import puppeteer, { type Browser, type Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makePacket } from "../../src/packet/make-packet.ts";
import { findBrowser } from "../../src/pdf/find-browser.ts";
import { unpackBrowser } from "../../src/pdf/unpack.ts";
import { buildSite } from "../../src/site/build.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { packageRoot } from "../../src/site/root.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { samplePacket } from "../support/sample-packet.ts";

const folder = mkdtempSync(join(tmpdir(), "reevebook-site-"));
const title = 'A <b>deck</b> & "more" <script>document.title = "broken"</script>';
const numbers = ["0001-porch", "0002-balcony", "0003-deck"];
/** A page with every table of an example. */
const whole = "0003-deck";
const wholePacket = () =>
  makePacket({
    plan: examplePlan("0012-stair-from-landing"),
    issue: "crew",
    stamp: { jobHash: "0123456789ab", programVersion: "test" },
    all: true,
  });
const root = packageRoot();
let browser: Browser;

beforeAll(async () => {
  const entry = (number: string, index: number) => ({
    number,
    title: index === 0 ? title : `Guard number ${index}`,
    place: ["Amberfold", "Larkmere", "Łąkowo"][index] ?? "",
    status: "for permit",
    revision: "0",
    date: "2026-04-20",
    code: ["0a1b2c3d4e5f", "a4b5c6d7e8f9", "5f4e3d2c1b0a"][index] ?? "",
    verdict: "ask" as const,
    verdictText: "**ask** the authority",
    example: true,
  });
  await buildSite({
    layouts: makeLayouts(root),
    root,
    numbers,
    pageOf: (number) => ({
      packet: number === whole ? wholePacket() : samplePacket({ number, title }),
      prints: [{ href: "crew.pdf", name: "Crew issue" }],
      data: [{ href: "plan.json", name: "The plan" }],
    }),
    archive: async () => numbers.map(entry),
    write: (path, text) => {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    },
  });
  const found = findBrowser({ platform: process.platform, env: process.env });
  if (found === undefined) throw new Error("there is no browser to test with");
  const path =
    found.kind === "npm"
      ? (await unpackBrowser({ packed: found.path, cache: join(root, ".cache", found.identity.replace(/[^A-Za-z0-9.]+/g, "-")) })).path
      : found.path;
  browser = await puppeteer.launch({ executablePath: path, headless: "shell", args: ["--no-sandbox", "--disable-dev-shm-usage"] });
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

const open = async (path: string, { width = 1280, scripts = true } = {}): Promise<Page> => {
  const page = await browser.newPage();
  await page.setJavaScriptEnabled(scripts);
  await page.setViewport({ width, height: 900 });
  await page.goto(`file://${join(folder, path)}`);
  return page;
};

const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");
const pages = ["index.html", "0001-porch/index.html"];

describe("buildSite", () => {
  // WCAG 2.2 level A and AA with best practice, as the published checker axe-core tests them.
  test.each(pages.flatMap((path) => [390, 1280].map((width) => ({ path, width }))))(
    "axe finds nothing on $path at $width px",
    async ({ path, width }) => {
      const page = await open(path, { width });
      await page.evaluate(axe);
      const found = await page.evaluate(
        "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }).then((r) => ({ passes: r.passes.length, violations: r.violations.map((v) => v.id + ': ' + v.nodes.map((n) => n.html).join(' | ')) }))",
      );
      expect((found as { passes: number }).passes).toBeGreaterThan(15);
      expect((found as { violations: string[] }).violations).toEqual([]);
    },
  );

  test.each(pages)("%s is no wider than a phone of 390 px", async (path) => {
    const page = await open(path, { width: 390 });
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(390);
  });

  test("at 390 px the list of jobs is read without moving it sideways", async () => {
    const page = await open("index.html", { width: 390 });
    const [whole, seen] = (await page.evaluate(
      "(() => { const { scrollWidth, clientWidth } = document.querySelector('#jobs').parentElement; return [scrollWidth, clientWidth]; })()",
    )) as [number, number];
    expect(whole).toBe(seen);
  });

  test("at 390 px what each table is can be read whole, before it is moved sideways and after", async () => {
    const page = await open(`${whole}/index.html`, { width: 390 });
    const cut = async (moved: boolean): Promise<unknown> =>
      page.evaluate(
        `[...document.querySelectorAll('.scroll:has(.caption)')].flatMap((box) => { if (${moved}) box.scrollLeft = 9999; const a = box.getBoundingClientRect(); const b = box.querySelector('.caption > span').getBoundingClientRect(); return b.left < a.left - 1 || b.right > a.right + 1 ? [box.textContent.slice(0, 60)] : []; })`,
      );
    expect(await page.evaluate("document.querySelectorAll('.caption').length")).toBeGreaterThan(30);
    expect(
      await page.evaluate("[...document.querySelectorAll('.scroll')].filter((box) => box.scrollWidth > box.clientWidth).length"),
    ).toBeGreaterThan(20);
    expect(await cut(false)).toEqual([]);
    expect(await cut(true)).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth")).toBe(390);
  });

  // 44 px is what WCAG 2.2, success criterion 2.5.5 (level AAA), asks of a target; 24 px is level AA (2.5.8).
  test.each(pages)("at 390 px every link of %s that stands alone is at least 44 px high", async (path) => {
    const page = await open(path, { width: 390 });
    const low = await page.evaluate(
      "[...document.querySelectorAll('a:not(.skip)')].map((a) => ({ words: a.textContent, high: a.getBoundingClientRect().height })).filter((a) => a.high < 44)",
    );
    expect(low).toEqual([]);
  });

  test("the first screen of a phone (390 x 844 px) shows the PDFs and the list of sheets", async () => {
    const page = await open("0001-porch/index.html", { width: 390 });
    const bottom = await page.evaluate(
      "Math.max(...[...document.querySelectorAll('.prints a, .sheets a')].map((a) => a.getBoundingClientRect().bottom))",
    );
    expect(bottom).toBeLessThan(844);
  });

  test("at 390 px nothing of the hidden head of the list can be seen, and each cell says what it is", async () => {
    const page = await open("index.html", { width: 390 });
    const head = (await page.evaluate(
      "(() => { const { width, height } = document.querySelector('#jobs thead').getBoundingClientRect(); return [width, height]; })()",
    )) as number[];
    expect(Math.max(...head)).toBeLessThanOrEqual(1);
    const labels = await page.evaluate(
      "[...document.querySelectorAll('#jobs tbody tr:first-child td')].map((td) => getComputedStyle(td, '::before').content)",
    );
    expect(labels).toEqual(["Title", "Place", "Status", "Revision", "Date", "Code", "Verdict"].map((head) => `"${head}: "`));
  });

  test("each sheet in the list says which printed issues hold it, and each sheet has a way back to the list", async () => {
    const page = await open("0001-porch/index.html");
    const entries = await page.$$eval(".sheets a", (links) => links.map((link) => (link.textContent ?? "").replace(/\s+/g, " ").trim()));
    expect(entries).toContain("Z-001 cover in all issues");
    expect(entries).toContain("Z-603 bores in crew, homeowner");
    expect(await page.$$eval(".back a[href='#contents']", (links) => links.length)).toBe(samplePacket().sheets.length);
  });

  test("a title with markup is words on the page and in the list, and runs nothing", async () => {
    const page = await open("0001-porch/index.html");
    expect(await page.evaluate("document.querySelector('.top h1').textContent")).toBe(title);
    expect(await page.title()).toContain("<script>");
    const list = await open("index.html");
    expect(await list.evaluate("document.querySelector('#jobs td').textContent")).toBe(`${title} (example)`);
  });

  test("typing larkm into the search leaves the one job in Larkmere, opened from a file", async () => {
    const page = await open("index.html");
    await page.type("#words", "larkm");
    const shown = await page.evaluate(
      "[...document.querySelectorAll('#jobs tbody tr')].filter((row) => !row.hidden).map((row) => row.cells[0].textContent)",
    );
    expect(shown).toEqual(["0002-balcony"]);
    expect(await page.evaluate("document.querySelector('#found').textContent")).toBe("1 of 3 jobs");
  });

  test.each([
    ["0001", ["0001-porch"]],
    ["0002", ["0002-balcony"]],
    ["larkmre", ["0002-balcony"]],
    ["0004", []],
    // the code at the foot of a sheet: it is the latest, or nothing is found
    ["a4b5c6d7e8f9", ["0002-balcony"]],
    ["a4b5c6d7e8f8", []],
    ["lakowo", ["0003-deck"]],
    ["łąk", ["0003-deck"]],
  ])("searching for %s shows %j: a slip in a word is let pass, another number is another job", async (words, numbers) => {
    const page = await open("index.html");
    await page.type("#words", words);
    const shown = await page.evaluate(
      "[...document.querySelectorAll('#jobs tbody tr')].filter((row) => !row.hidden).map((row) => row.cells[0].textContent)",
    );
    expect(shown).toEqual(numbers);
  });

  test("without scripts all 3 jobs are listed, no search is offered, and the packet has all its sheets", async () => {
    const page = await open("index.html", { scripts: false });
    expect(await page.$$eval("#jobs tbody tr", (rows) => rows.length)).toBe(3);
    expect(await page.$eval("form.search", (form) => form.getBoundingClientRect().height)).toBe(0);
    const packet = await open("0001-porch/index.html", { scripts: false });
    expect(await packet.$$eval(".sheet", (sheets) => sheets.length)).toBe(samplePacket().sheets.length);
  });

  test("every link leads to a file or an anchor that is there, but for the job's data, which others write", async () => {
    const page = await open("0001-porch/index.html");
    const anchors = (await page.$$eval("a", (links) => links.map((link) => link.getAttribute("href") ?? ""))).filter(
      (href) => !["plan.json", "crew.pdf", "../index.html"].includes(href),
    );
    expect(anchors.length).toBeGreaterThan(10);
    for (const href of anchors) expect.soft(await page.$(`[id="${href.slice(1)}"]`), href).not.toBeNull();
  });

  test("pages hold no character above FF hex, which would double their memory", () => {
    for (const path of pages) expect.soft(/[\u0100-\uffff]/.test(readFileSync(join(folder, path), "utf8"))).toBe(false);
  });
});
