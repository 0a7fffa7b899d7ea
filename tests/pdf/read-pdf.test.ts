// Is a PDF read by its tables, newest first, and is anything else refused?
import { deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { finishPdf } from "../../src/pdf/finish.ts";
import { inspectPdf } from "../../src/pdf/inspect.ts";
import { objectOf, pagesOf, readPdf, referenceIn, streamOf } from "../../src/pdf/read-pdf.ts";
import { finishOptions } from "../support/test-printer.ts";

/** A file by hand, in the form of ISO 32000-1:2008, 7.5: objects, one table, a trailer (from memory). */
const fileOf = (objects: readonly string[], more = ""): Buffer => {
  let text = "%PDF-1.4\n";
  const offsets = objects.map((body, index) => {
    const at = text.length;
    text += `${index + 1} 0 obj\n${body}\nendobj\n`;
    return at;
  });
  const rows = offsets.map((offset) => `${String(offset).padStart(10, "0")} 00000 n \n`).join("");
  const table = `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}trailer\n<</Size ${objects.length + 1} /Root 1 0 R${more}>>\n`;
  return Buffer.from(`${text}${table}startxref\n${text.length}\n%%EOF\n`, "latin1");
};

const content = "BT /F1 9 Tf <0001> Tj ET q 2.834646 0 0 2.834646 0 0 cm .0039 .0078 .0118 RG 2 3 m 102 3 l S Q";
const twoPages = [
  "<</Type /Catalog /Pages 2 0 R>>",
  "<</Type /Pages /Kids [3 0 R 4 0 R] /Count 2>>",
  "<</Type /Pages /Kids [5 0 R] /Count 1>>",
  "<</Type /Page /MediaBox [0 0 612 792]>>",
  "<</Type /Page /MediaBox [0 0 792 612] /Contents 6 0 R>>",
  `<</Length 7 0 R>>\nstream\n${content}\nendstream`,
  String(content.length),
];

describe("readPdf", () => {
  test("objects are found by the table, and what is no PDF or has another kind of table is refused", () => {
    expect(objectOf(readPdf(fileOf(twoPages)), { number: 2 })).toBe("<</Type /Pages /Kids [3 0 R 4 0 R] /Count 2>>");
    expect(() => readPdf(Buffer.from("hello"))).toThrow(/this is no PDF/);
    expect(() => readPdf(Buffer.from("%PDF-1.5\n1 0 obj\nstartxref\n9\n%%EOF\n"))).toThrow(/no classic cross-reference table/);
  });

  test("object 0, which is free, and one beyond the last are refused by number", () => {
    const file = readPdf(fileOf(twoPages));
    expect(() => objectOf(file, { number: 0 })).toThrow(/no object 0/);
    expect(() => objectOf(file, { number: 99 })).toThrow(/no object 99/);
  });
});

describe("pagesOf", () => {
  test("a tree of two levels has its pages in order: 792 x 612 pt below its own branch, then 612 x 792 pt", () => {
    expect(pagesOf(readPdf(fileOf(twoPages))).map(({ size_pt }) => size_pt)).toEqual([
      [792, 612],
      [612, 792],
    ]);
  });

  test("a file without a page tree says so", () => {
    expect(() => pagesOf(readPdf(fileOf(["<</Type /Catalog>>"])))).toThrow(/no page tree/);
  });
});

describe("streamOf", () => {
  test("a length that stands in another object is followed, and a packed stream is unpacked", () => {
    const file = readPdf(fileOf(twoPages));
    expect(streamOf(file, { number: 6 }).toString("latin1")).toBe(content);
    const packed = deflateSync(Buffer.from("words"));
    const flat = fileOf([`<</Filter /FlateDecode /Length ${packed.length}>>\nstream\r\n${packed.toString("latin1")}\nendstream`]);
    expect(streamOf(readPdf(flat), { number: 1 }).toString("latin1")).toBe("words");
  });

  test("a reference is read by its key, and a missing one is undefined", () => {
    expect(referenceIn("<</Contents 6 0 R>>", "Contents")).toEqual({ number: 6 });
    expect(referenceIn("<</Contents 6 0 R>>", "Parent")).toBeUndefined();
  });
});

describe("inspectPdf", () => {
  test("a bar on the second branch is found; letters that are not embedded do not count", () => {
    expect(inspectPdf(fileOf(twoPages))).toEqual({ pages: 2, fonts: [], bar_mm: expect.closeTo(100, 3) });
  });

  test("a font drawn stroke by stroke is told, one with its file is named without its tag", () => {
    const fonts = ["<</Type /FontDescriptor /FontName /ABCDEF+Some-Font /FontFile2 9 0 R>>", "<</Type /Font /Subtype /Type3>>"];
    expect(inspectPdf(fileOf([...twoPages, ...fonts])).fonts).toEqual([
      "Some-Font",
      expect.stringMatching(/^a font drawn stroke by stroke/),
    ]);
  });
});

describe("finishPdf", () => {
  test("the finished file is read from its newest table, keeps its pages and gains metadata and the job file", () => {
    const bytes = finishPdf(readPdf(fileOf(twoPages)), finishOptions);
    const file = readPdf(bytes);
    expect(pagesOf(file)).toHaveLength(2);
    expect(objectOf(file, { number: 1 })).toMatch(/\/Metadata 8 0 R \/Names/);
    expect(streamOf(file, { number: 8 }).toString("utf8")).toContain("0001 &lt;Deck&gt; &amp; more");
    // In the order of their names: "0001.record.yaml" comes before "0001.yaml".
    expect(streamOf(file, { number: 9 }).toString("utf8")).toBe("record: { job: 0001 }\n");
    expect(streamOf(file, { number: 11 }).toString("utf8")).toBe("job: { number: 0001 }\n");
  });

  test("a browser that writes metadata itself one day is noticed", () => {
    const objects = ["<</Type /Catalog /Pages 2 0 R /Metadata 3 0 R>>", ...twoPages.slice(1)];
    expect(() => finishPdf(readPdf(fileOf(objects)), finishOptions)).toThrow(/already has names or metadata/);
  });
});
