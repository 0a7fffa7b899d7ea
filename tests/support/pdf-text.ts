// What stands on the pages of a PDF? Read by a PDF reader that has nothing to do with the program that wrote it.
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export interface PdfPageText {
  readonly width_pt: number;
  readonly height_pt: number;
  /** All text of the page in the order in which it was drawn, single spaces between. */
  readonly text: string;
  /** Where the page's text begins and ends, across and up, in points from the lower left corner. */
  readonly extent_pt: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number };
  /** Font heights of the page's text in points, smallest first. */
  readonly sizes_pt: readonly number[];
}

export interface PdfContent {
  readonly pages: readonly PdfPageText[];
  readonly title: string;
  readonly language: string;
  readonly tagged: boolean;
  readonly bookmarks: readonly string[];
  readonly attachments: Readonly<Record<string, string>>;
}

export const readPdfText = async (bytes: Uint8Array): Promise<PdfContent> => {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 }).promise;
  const pages: PdfPageText[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [, , width_pt = 0, height_pt = 0] = page.view;
    const items = (await page.getTextContent()).items.filter((item) => "str" in item);
    const sizes = items.filter((item) => item.str.trim() !== "").map((item) => Math.hypot(item.transform[2], item.transform[3]));
    const shown = items.filter((item) => item.str.trim() !== "");
    const level = shown.filter((item) => Math.abs(item.transform[1]) < 0.01);
    pages.push({
      extent_pt: {
        left: Math.min(...level.map((item) => item.transform[4])),
        right: Math.max(...level.map((item) => item.transform[4] + item.width)),
        bottom: Math.min(...shown.map((item) => item.transform[5])),
        top: Math.max(...level.map((item) => item.transform[5] + item.height)),
      },
      width_pt,
      height_pt,
      text: items
        .map((item) => item.str)
        .join(" ")
        .replace(/\s+/g, " "),
      sizes_pt: sizes.sort((a, b) => a - b),
    });
  }
  const { info } = await document.getMetadata();
  const marks = await document.getMarkInfo();
  const outline = (await document.getOutline()) ?? [];
  const attached = ((await document.getAttachments()) ?? {}) as Record<string, { content: Uint8Array }>;
  const content: PdfContent = {
    pages,
    title: String((info as Record<string, unknown>)["Title"] ?? ""),
    language: String((info as Record<string, unknown>)["Language"] ?? ""),
    tagged: marks?.Marked === true,
    bookmarks: outline.flatMap((entry) => [entry.title, ...entry.items.map((item: { title: string }) => item.title)]),
    attachments: Object.fromEntries(
      Object.entries(attached).map(([name, { content: bytes }]) => [name, Buffer.from(bytes).toString("utf8")]),
    ),
  };
  await document.destroy();
  return content;
};
