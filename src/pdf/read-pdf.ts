// What is in a PDF that a browser wrote? Its objects by the classic cross-reference table, without any PDF library.
import { inflateSync } from "node:zlib";

export interface PdfFile {
  /** The bytes as Latin-1, so that positions in text and bytes agree. */
  readonly text: string;
  readonly bytes: Buffer;
  /** Offset of each object by its number; 0 where there is none. */
  readonly offsets: readonly number[];
  readonly xrefAt: number;
  readonly trailer: string;
}

export interface Reference {
  readonly number: number;
}

/** Reads the tables from the newest to the oldest; anything but classic tables is refused. */
export const readPdf = (bytes: Buffer): PdfFile => {
  const text = bytes.toString("latin1");
  const start = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text.slice(-64));
  const xrefAt = Number(start?.[1] ?? Number.NaN);
  if (!text.startsWith("%PDF-")) throw new Error("this is no PDF");
  const offsets: number[] = [];
  let newest = "";
  for (let at: number | undefined = xrefAt; at !== undefined; ) {
    const trailer: string = readTable(text, at, offsets);
    if (newest === "") newest = trailer;
    const previous = /\/Prev (\d+)/.exec(trailer);
    at = previous === null ? undefined : Number(previous[1]);
  }
  return { text, bytes, offsets, xrefAt, trailer: newest };
};

/** Adds the entries of one table, unless a newer one has them, and gives its trailer. */
const readTable = (text: string, xrefAt: number, offsets: number[]): string => {
  if (text.slice(xrefAt, xrefAt + 4) !== "xref") throw new Error("the PDF has no classic cross-reference table");
  let at = xrefAt + 4;
  for (;;) {
    const head = /^\s*(\d+) (\d+)\s+/.exec(text.slice(at, at + 40));
    if (head === null) break;
    at += head[0].length;
    const [first, count] = [Number(head[1]), Number(head[2])];
    for (let index = 0; index < count; index += 1, at += 20) {
      const used = text.charCodeAt(at + 17) === 110; // n
      offsets[first + index] ??= used ? Number(text.slice(at, at + 10)) : 0;
    }
  }
  return text.slice(at, text.indexOf("startxref", at));
};

/** The text of an object between "obj" and "endobj" or its stream. */
export const objectOf = ({ text, offsets }: PdfFile, { number }: Reference): string => {
  const at = offsets[number];
  if (at === undefined || at === 0) throw new Error(`the PDF has no object ${number}`);
  const from = text.indexOf("obj", at) + 3;
  const end = text.indexOf("endobj", from);
  const stream = text.indexOf("stream", from);
  return text.slice(from, stream !== -1 && stream < end ? stream : end).trim();
};

/** A stream's bytes, unpacked. */
export const streamOf = (file: PdfFile, reference: Reference): Buffer => {
  const head = objectOf(file, reference);
  const at = file.text.indexOf("stream", file.text.indexOf(head, file.offsets[reference.number]) + head.length) + 6;
  const from = file.text[at] === "\r" ? at + 2 : at + 1;
  const length = Number(/\/Length (\d+)(?! \d+ R)/.exec(head)?.[1] ?? Number.NaN);
  const size = Number.isNaN(length) ? Number(objectOf(file, referenceIn(head, "Length") ?? { number: 0 })) : length;
  const packed = file.bytes.subarray(from, from + size);
  return head.includes("/FlateDecode") ? inflateSync(packed) : packed;
};

/** The object that a dictionary's entry points to. */
export const referenceIn = (dictionary: string, key: string): Reference | undefined => {
  const found = new RegExp(`/${key}\\s+(\\d+) 0 R`).exec(dictionary);
  return found === null ? undefined : { number: Number(found[1]) };
};

export interface PdfPage {
  readonly dictionary: string;
  /** Width and height in points. */
  readonly size_pt: readonly [width: number, height: number];
}

/** The pages in their order, whatever the depth of their tree. */
export const pagesOf = (file: PdfFile): readonly PdfPage[] => {
  const catalog = objectOf(file, need(referenceIn(file.trailer, "Root"), "catalog"));
  const pages: PdfPage[] = [];
  const walk = (reference: Reference): void => {
    const dictionary = objectOf(file, reference);
    const kids = /\/Kids\s*\[([^\]]*)\]/.exec(dictionary);
    if (kids !== null) {
      for (const kid of (kids[1] ?? "").matchAll(/(\d+) 0 R/g)) walk({ number: Number(kid[1]) });
      return;
    }
    const box = /\/MediaBox\s*\[([^\]]*)\]/.exec(dictionary)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
    pages.push({ dictionary, size_pt: [box[2] ?? 0, box[3] ?? 0] });
  };
  walk(need(referenceIn(catalog, "Pages"), "page tree"));
  return pages;
};

export const need = <T>(value: T | undefined, what: string): T => {
  if (value === undefined) throw new Error(`the PDF has no ${what}`);
  return value;
};
