// Do the packets of every example job stand on their pages as they should?
import { readdirSync, readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { contentBox, margins_mm, papers } from "../../src/drawing/paper.ts";
import type { Issue, Job } from "../../src/job/job.ts";
import { parseJob } from "../../src/job/parse.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import type { Packet } from "../../src/packet/packet.ts";
import { inspectPdf } from "../../src/pdf/inspect.ts";
import type { Printer } from "../../src/pdf/print.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { printCopy } from "../../src/site/print-copy.ts";
import { packageRoot } from "../../src/site/root.ts";
import { revisedExample } from "../support/example-jobs.ts";
import { type PdfContent, readPdfText } from "../support/pdf-text.ts";
import { printJob, testPrinter } from "../support/test-printer.ts";

const layouts = makeLayouts(packageRoot());
const names = readdirSync("jobs").filter((name) => /^\d.*(?<!\.record|\.issued)\.yaml$/.test(name));
let printer: Printer;
beforeAll(() => {
  printer = testPrinter();
});
afterAll(() => printer.close());

const packetOf = (name: string, issue: Issue): { readonly packet: Packet; readonly job: Job } => {
  const job = parseJob(readFileSync(`jobs/${name}`, "utf8")).value;
  const plan = job === undefined ? undefined : makePlan(job).value;
  if (job === undefined || plan === undefined) throw new Error(`${name} gives no plan`);
  return {
    packet: makePacket({
      plan,
      revised: revisedExample(name.replace(/\.yaml$/, "")),
      issue,
      stamp: { jobHash: "0123456789ab", programVersion: "test" },
    }),
    job,
  };
};

const PIXELS_PER_MM = 96 / 25.4;
const squeezed = (text: string): string => text.replaceAll(" ", "").toLowerCase();
const print = async (packet: Packet): Promise<{ readonly pdf: PdfContent; readonly bar_mm: number | null }> => {
  const heightOf = (orientation: "portrait" | "landscape"): number =>
    contentBox({ paper: packet.paper, orientation }).height * PIXELS_PER_MM;
  const heights = { portrait: heightOf("portrait"), landscape: heightOf("landscape") };
  // Every element of every sheet is looked at here; a build only looks where the finished file shows that something was too wide.
  const { bytes } = await printer.print(printJob(printCopy(packet, layouts), { heights, measure: "always" }));
  return { pdf: await readPdfText(bytes), bar_mm: inspectPdf(bytes).bar_mm };
};

describe("print", () => {
  test("there are at least five example jobs", () => expect(names.length).toBeGreaterThanOrEqual(5));

  test.each(names)("the crew issue of %s has each sheet on pages of its own, of the right size, with a bar of 100.0 mm", async (name) => {
    const { packet, job } = packetOf(name, "crew");
    const { pdf, bar_mm } = await print(packet);
    expect(Math.abs((bar_mm ?? 0) - 100)).toBeLessThan(0.1);
    const seen = new Set<string>();
    for (const [index, page] of pdf.pages.entries()) {
      // The last one before the page's number: a stamp names a sheet as well.
      const id = /(Z-\d+) (?!\s)(?:(?!Z-\d)[^/]){1,60}? page \d+ of/.exec(page.text)?.[1] ?? "";
      const sheet = packet.sheets.find((one) => one.id === id);
      expect.soft(page.text).toContain(`page ${index + 1} of ${pdf.pages.length}`);
      expect.soft(page.text).toContain(job.identity.number);
      // Broken between words, but whole: nothing of the title block is cut.
      for (const words of [packet.titleBlock.title, packet.titleBlock.place, packet.titleBlock.status, packet.titleBlock.checkedBy]) {
        expect.soft(squeezed(page.text).includes(squeezed(words)), `page ${index + 1} says "${words}"`).toBe(true);
      }
      seen.add(id);
      // Nothing of a sheet or its margin boxes leaves the room between the margins (A4 is off by the browser's rounding), and the
      // title block ends where printers still print: 4.2 mm from the edge, common practice, no source.
      expect.soft(page.extent_pt.left).toBeGreaterThan((margins_mm.left * 72) / 25.4 - 1);
      expect.soft(page.extent_pt.right, `page ${index + 1}`).toBeLessThan(page.width_pt - (margins_mm.right * 72) / 25.4 + 1.5);
      expect.soft(page.extent_pt.bottom, `page ${index + 1}`).toBeGreaterThan((4.2 * 72) / 25.4);
      expect.soft(page.extent_pt.top, `page ${index + 1}`).toBeLessThan(page.height_pt - (2 * 72) / 25.4);
      if (sheet === undefined) continue;
      // a browser makes A4 up to 0.4 pt small; Letter is exact
      const { width, height } = papers[packet.paper];
      const [across, down] = sheet.orientation === "portrait" ? [width, height] : [height, width];
      expect.soft(Math.abs(page.width_pt - (across * 72) / 25.4)).toBeLessThan(0.5);
      expect.soft(Math.abs(page.height_pt - (down * 72) / 25.4)).toBeLessThan(0.5);
      expect.soft(page.sizes_pt[0], `${id}, page ${index + 1}`).toBeGreaterThan(8.95);
    }
    expect([...seen].sort()).toEqual([...new Set(packet.sheets.map((sheet) => sheet.id))].sort());
  });

  test.each(names.flatMap((name) => (["homeowner", "permit", "record"] as const).map((issue) => ({ name, issue }))))(
    "the $issue issue of $name prints with nothing too wide, too high or too small, a bookmark for each sheet and its job's number",
    async ({ name, issue }) => {
      const { packet, job } = packetOf(name, issue);
      const { pdf } = await print(packet);
      expect(pdf.title).toContain(job.identity.number);
      expect(pdf.bookmarks.filter((mark) => mark.startsWith("Z-"))).toHaveLength(packet.sheets.length);
    },
  );
});
