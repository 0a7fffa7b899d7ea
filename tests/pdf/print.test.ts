// Does a printed packet stand as it should, and does a bad one fail with its sheet and element named?
import { createHash } from "node:crypto";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Block } from "../../src/packet/packet.ts";
import { inspectPdf } from "../../src/pdf/inspect.ts";
import { type Printed, type Printer, PrintFault } from "../../src/pdf/print.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { printCopy } from "../../src/site/print-copy.ts";
import { packageRoot } from "../../src/site/root.ts";
import { type PdfContent, readPdfText } from "../support/pdf-text.ts";
import { samplePacket } from "../support/sample-packet.ts";
import { printJob, testPrinter } from "../support/test-printer.ts";

const layouts = makeLayouts(packageRoot());
let printer: Printer;
let printed: Printed;
let pdf: PdfContent;

beforeAll(async () => {
  printer = testPrinter();
  printed = await printer.print(printJob(printCopy(samplePacket(), layouts)));
  pdf = await readPdfText(printed.bytes);
});
afterAll(() => printer.close());

const faultsOf = async (...extra: readonly Block[]): Promise<readonly string[]> => {
  try {
    await printer.print(printJob(printCopy(samplePacket({ extra }), layouts)));
    return [];
  } catch (error) {
    if (error instanceof PrintFault) return error.faults;
    throw error;
  }
};

describe("print", () => {
  test("the pages that are counted in the file are those that a reader finds", () => {
    expect(pdf.pages.length).toBe(printed.pages);
    expect(pdf.pages.length).toBeGreaterThan(11);
  });

  test("names of Central Europe and the Baltic are printed with the same font, in the text and in the title block", async () => {
    const title = "Taras, Łódź, ulica Żwirki";
    const place = "Győr, Čakovec, Iași, Šiauliai, Beyoğlu";
    const sample = samplePacket({ title });
    const copy = printCopy({ ...sample, titleBlock: { ...sample.titleBlock, place } }, layouts);
    const { bytes } = await printer.print(printJob(copy));
    const { pages } = await readPdfText(bytes);
    for (const page of pages)
      for (const name of [title, place]) expect.soft(page.text.replaceAll(" ", "")).toContain(name.replaceAll(" ", ""));
    expect(new Set(inspectPdf(bytes).fonts)).toEqual(new Set(inspectPdf(printed.bytes).fonts));
    expect(copy.length - printCopy(samplePacket(), layouts).length).toBeGreaterThan(20_000);
  });

  // US Letter: 8-1/2 x 11 in, ANSI/ASME Y14.1, from memory; 72 pt to an inch.
  test("portrait sheets are 612 x 792 pt, landscape sheets 792 x 612 pt", () => {
    const sizeOf = (id: string): string[] => {
      const pages = pdf.pages.filter((page) => page.text.includes(`${id} `));
      return [...new Set(pages.map((page) => `${page.width_pt} x ${page.height_pt}`))];
    };
    expect(sizeOf("Z-003")).toEqual(["612 x 792"]);
    expect(sizeOf("Z-101")).toEqual(["792 x 612"]);
  });

  test("every page says sheet, page n of N, job, revision, date, status, units, datum and EXAMPLE", () => {
    for (const [index, page] of pdf.pages.entries()) {
      expect.soft(page.text).toContain(`page ${index + 1} of ${pdf.pages.length}`);
      for (const words of [
        "Job 0001-porch-front",
        "Revision 0, 2026-04-20, for construction",
        "Datum: top of the decking",
        "Lengths: feet and inches",
        "EXAMPLE",
      ]) {
        expect.soft(page.text).toContain(words);
      }
    }
  });

  test("the head of the table of 90 bores stands on each of its pages", () => {
    const pages = pdf.pages.filter((page) => page.text.includes("Z-603 "));
    expect(pages.length).toBeGreaterThan(5);
    for (const page of pages) expect.soft(page.text).toContain("field reading");
  });

  test("no letter is below 9 pt, and the sheet's id has capitals of 10 mm", () => {
    // 9 pt in whole CSS pixels of layout print as 8.98 pt
    for (const page of pdf.pages) {
      expect.soft(page.sizes_pt[0]).toBeGreaterThan(8.95);
      // capitals of this font are 0.67 of its size: cap height in the font's own OS/2 table
      expect.soft(((page.sizes_pt.at(-1) ?? 0) * 0.668 * 25.4) / 72).toBeGreaterThanOrEqual(10);
    }
  });

  test("the file is tagged and titled, has its language, a bookmark for each sheet, and the job file and its record inside", () => {
    expect(pdf.tagged).toBe(true);
    expect(pdf.title).toBe("0001-porch-front Front of a low deck, one straight side: Crew packet");
    expect(pdf.bookmarks.filter((mark) => mark.startsWith("Z-"))).toHaveLength(samplePacket().sheets.length);
    expect(pdf.attachments).toEqual({ "0001.record.yaml": "record: { job: 0001 }\n", "0001.yaml": "job: { number: 0001 }\n" });
  });

  test("the calibration bar of 100 mm prints 100 mm long within 0.1 mm", () => {
    const bar = inspectPdf(printed.bytes).bar_mm;
    expect(bar).not.toBeNull();
    expect(Math.abs((bar ?? 0) - 100)).toBeLessThan(0.1);
  });

  test("the same page printed again among others gives the same bytes", async () => {
    const jobs = [samplePacket(), samplePacket({ title: "Another" }), samplePacket()];
    const again = await Promise.all(jobs.map((packet) => printer.print(printJob(printCopy(packet, layouts)))));
    const digests = [printed, ...again].map(({ bytes }) => createHash("sha256").update(bytes).digest("hex"));
    expect(digests[1]).toBe(digests[0]);
    expect(digests[3]).toBe(digests[0]);
    expect(digests[2]).not.toBe(digests[0]);
  });

  // What is wider than its page shrinks every page of the document; that is seen in the file, and only then is looked for by name.
  const wideDrawing = (width: number): Block => ({
    kind: "drawing",
    id: "too-wide",
    title: "Wide",
    description: "Wide.",
    svg: `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="10mm" viewBox="0 0 ${width} 10"><path d="M0 5H${width}" stroke="#000"/></svg>`,
    width_mm: width,
    height_mm: 10,
  });
  const faultsOn = async (id: string, block: Block): Promise<readonly string[]> => {
    const packet = samplePacket();
    const sheets = packet.sheets.map((sheet) => (sheet.id === id ? { ...sheet, blocks: [...sheet.blocks, block] } : sheet));
    try {
      await printer.print(printJob(printCopy({ ...packet, sheets }, layouts)));
      return [];
    } catch (error) {
      if (error instanceof PrintFault) return error.faults;
      throw error;
    }
  };

  // US Letter less 26 mm: 189.9 mm upright, 253.4 mm lying. The packet mixes both and begins upright.
  test.each([
    ["Z-001", 191],
    ["Z-001", 200],
    ["Z-901", 200],
    ["Z-901", 260],
    ["Z-101", 255],
    ["Z-603", 280],
  ])("on sheet %s a drawing of %i mm, wider than its page, fails with its sheet and its id", async (id, width) => {
    expect((await faultsOn(id, wideDrawing(width))).join("\n")).toMatch(
      new RegExp(`sheet ${id} .*: svg in #too-wide.* is wider than its page`),
    );
  });

  test.each([
    ["Z-001", 189.5],
    ["Z-101", 253],
  ])("on sheet %s a drawing of %d mm fits", async (id, width) => {
    expect(await faultsOn(id, wideDrawing(width))).toEqual([]);
  });

  test("a table of one word of 200 letters, which makes it wider than its page, fails with its name", async () => {
    const table: Block = { kind: "table", id: "long", caption: "Long", columns: [{ key: "a", head: "A" }], rows: [["m".repeat(200)]] };
    expect((await faultsOn("Z-901", table)).join("\n")).toMatch(/sheet Z-901 record: table in #long .* is wider than its page/);
  });

  test("a word of 200 letters is broken in prose; where nothing can break it, it fails", async () => {
    expect(await faultsOf({ kind: "prose", text: ["m".repeat(200)] })).toEqual([]);
    const html = printCopy(samplePacket({ extra: [{ kind: "prose", text: ["m".repeat(200)] }] }), layouts).replace(
      "<p>mmm",
      '<p style="overflow-wrap:normal">mmm',
    );
    await expect(printer.print(printJob(html))).rejects.toThrow(/sheet Z-001 cover: p .*"mmm.* holds a word that is wider than its place/);
  });

  test("letters of 2 mm (5.7 pt) in a drawing fail where every element is looked at", async () => {
    const svg =
      '<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="10mm" viewBox="0 0 50 10"><text x="1" y="5" font-size="2">fine print</text></svg>';
    const extra: Block = { kind: "drawing", id: "fine", title: "Fine", description: "Fine.", svg, width_mm: 50, height_mm: 10 };
    const html = printCopy(samplePacket({ extra: [extra] }), layouts);
    await expect(printer.print(printJob(html, { measure: "always" }))).rejects.toThrow(
      /sheet Z-001 cover: text in #fine "fine print" has letters of 5\.\d+ pt, below 9 pt/,
    );
  });

  test("a document without letters fails, since a machine without fonts prints blank pages and says nothing", async () => {
    const html = '<!DOCTYPE html><html lang="en"><title>x</title><main><section class="sheet portrait"><h2></h2></section></main></html>';
    await expect(printer.print(printJob(html))).rejects.toThrow(/no letters: no font is embedded/);
  });

  test("a page's scripts do not run, and a server next door hears nothing of its pictures and frames", async () => {
    let heard = 0;
    const server = createServer((_request, response) => {
      heard += 1;
      response.end();
    });
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const { port } = server.address() as AddressInfo;
    const at = `http://127.0.0.1:${port}`;
    const more = `<script>document.title = "run"</script><img src="${at}/x.png" alt=""><iframe src="${at}/f"></iframe><link rel="stylesheet" href="${at}/s.css"><h1`;
    const page = printCopy(samplePacket(), layouts).replace("<h1", more);
    // once with the document's own policy, once without: the page of the browser refuses by itself
    for (const html of [page, page.replace(/<meta http-equiv[^>]*>/, "")]) {
      const { bytes } = await printer.print(printJob(html));
      expect((await readPdfText(bytes)).title).not.toBe("run");
    }
    server.close();
    expect(heard).toBe(0);
  });

  test("a browser that dies is replaced, and the document is printed", async () => {
    const own = testPrinter();
    try {
      const html = printCopy(samplePacket(), layouts);
      await own.print(printJob(html));
      own.crash();
      expect((await own.print(printJob(html))).pages).toBe(printed.pages);
    } finally {
      own.close();
    }
  });
});
