// Which browser do the tests print with? The one that the program itself would find, with its own look-up.
import { join } from "node:path";
import { findBrowser } from "../../src/pdf/find-browser.ts";
import type { FinishOptions } from "../../src/pdf/finish.ts";
import { makePrinter, type Printer, type PrintJob } from "../../src/pdf/print.ts";
import { startBrowser } from "../../src/pdf/start.ts";
import { packageRoot } from "../../src/site/root.ts";

export const testPrinter = (): Printer => {
  const found = findBrowser({ platform: process.platform, env: process.env });
  if (found === undefined) throw new Error("there is no browser to test with");
  return makePrinter(() => startBrowser(found, { cache: join(packageRoot(), ".cache"), warn: () => {} }));
};

export const finishOptions: FinishOptions = {
  date: "2026-04-20",
  title: "0001 <Deck> & more",
  author: "Three Gables Carpentry (invented)",
  identifier: "0001-crew-r0",
  description: "Revision 0, for construction",
  fullSize: false,
  attachments: [
    { name: "0001.yaml", bytes: Buffer.from("job: { number: 0001 }\n") },
    { name: "0001.record.yaml", bytes: Buffer.from("record: { job: 0001 }\n") },
  ],
};

/** US Letter between margins of 16 and 26 mm. */
const PIXELS_PER_MM = 96 / 25.4;
export const printJob = (html: string, more: Partial<PrintJob> = {}): PrintJob => ({
  name: "a test",
  html,
  heights: { portrait: (279.4 - 42) * PIXELS_PER_MM, landscape: (215.9 - 42) * PIXELS_PER_MM },
  measure: "scaled",
  finish: finishOptions,
  tagged: true,
  ...more,
});
