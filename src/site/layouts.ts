// How do layouts reach the packet? Through a template engine that knows these filters and nothing else.
import { join } from "node:path";
import nunjucks from "nunjucks";
import { catalogue, issueName } from "../packet/issues.ts";
import type { Packet, Sheet } from "../packet/packet.ts";
import { type ArchiveEntry, jobTableHtml } from "./archive.ts";
import { type Assets, loadAssets } from "./assets.ts";
import { escapeText, plainText, richText } from "./escape.ts";
import { flowHtml } from "./html-block.ts";
import { pageName, pageRules } from "./page-rules.ts";
import { plain } from "./strict.ts";

export interface Layouts {
  readonly env: nunjucks.Environment;
  readonly assets: Assets;
}

/** The engine with autoescape on: functions that return markup say so themselves. */
export const makeLayouts = (root: string): Layouts => {
  const env = new nunjucks.Environment(new nunjucks.FileSystemLoader(join(root, "layouts")), {
    autoescape: true,
    throwOnUndefined: true,
    trimBlocks: true,
    lstripBlocks: true,
  });
  const safe = (markup: string): unknown => new nunjucks.runtime.SafeString(markup);
  const assets = loadAssets(root);
  env.addGlobal("assets", assets);
  env.addGlobal("calibrationBar", calibrationBar);
  env.addFilter("rich", (text: string) => safe(richText(text)));
  env.addFilter("blocks", (sheet: Sheet) => safe(blocksHtml(plain(sheet))));
  env.addFilter("pageName", (sheet: Sheet) => safe(pageName(plain(sheet))));
  env.addFilter("anchor", (sheet: Sheet) => safe(sheetAnchor(plain(sheet))));
  env.addFilter("pageRules", (packet: Packet) => safe(pageRules(plain(packet))));
  env.addFilter("documentTitle", (packet: Packet) => safe(documentTitle(plain(packet))));
  env.addFilter("contents", (packet: Packet) => safe(contentsHtml(plain(packet))));
  env.addFilter("lacksCalibration", (packet: Packet) => !hasCalibration(plain(packet)));
  // Waits for the list, so that it can be made last though its page is one of many.
  env.addFilter(
    "jobTable",
    (archive: () => Promise<readonly ArchiveEntry[]>, done: (error: unknown, html?: unknown) => void) => {
      archive()
        .then((entries) => done(null, safe(jobTableHtml(entries))))
        .catch((error: unknown) => done(error));
    },
    true,
  );
  return { env, assets };
};

const rendered = new WeakMap<Sheet, string>();

/** The blocks of a sheet as HTML, made once for each sheet. */
export const blocksHtml = (sheet: Sheet): string => {
  const known = rendered.get(sheet);
  if (known !== undefined) return known;
  // Joined, not added: what is added piece by piece keeps all its pieces, and the collector has to copy them.
  const html = flowHtml(sheet.blocks);
  rendered.set(sheet, html);
  return html;
};

/** Anchors are made from the sheet's own id and slug; slugs alone may repeat. */
export const sheetAnchor = (sheet: Sheet): string => escapeText(`${sheet.id.toLowerCase()}-${sheet.slug}`);

const documentTitle = ({ titleBlock, issueName }: Packet): string => plainText(`${titleBlock.jobNumber} ${titleBlock.title}: ${issueName}`);

/** The page shows every sheet; a printed issue holds those that name it. */
const contentsHtml = ({ sheets }: Packet): string =>
  sheets
    .map(
      (sheet) =>
        `<li><a href="#${sheetAnchor(sheet)}"><b>${escapeText(sheet.id)}</b> ${richText(sheet.name)} <span class="where">${escapeText(issuesOf(sheet))}</span></a></li>`,
    )
    .join("");

const issuesOf = ({ slug }: Sheet): string => {
  const rows = Object.values(catalogue);
  const row = rows.find((one) => one.slug === slug) ?? rows.find((one) => slug.startsWith(`${one.slug}-`));
  if (row === undefined) return "";
  return row.issues.length === allIssues ? "in all issues" : `in ${row.issues.join(", ")}`;
};

const allIssues = Object.keys(issueName).length;

const hasCalibration = ({ sheets }: Packet): boolean =>
  sheets.some((sheet) => sheet.blocks.some((block) => block.kind === "drawing" && /class="[^"]*\bcalibration\b/.test(block.svg)));

/** Exactly 100 mm, as a drawing in mm: boxes of a page are snapped to whole pixels and would not be. */
const calibrationBar =
  '<figure><svg role="img" aria-label="Calibration bar, 100 millimetres long" xmlns="http://www.w3.org/2000/svg" width="104mm" height="6mm" viewBox="0 0 104 6">' +
  '<line class="calibration" x1="2" y1="3" x2="102" y2="3" stroke-width="0.5"/><path d="M2 1V5M102 1V5" stroke="#000" stroke-width="0.3"/></svg>' +
  "<figcaption>This bar is 100 mm long. If it does not measure 100 mm, print again at 100 %, without fitting to the page.</figcaption></figure>";
