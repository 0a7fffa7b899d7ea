// What is changed in a printed PDF? Dates and ids that would differ from run to run, and what the browser leaves out.
import { createHash } from "node:crypto";
import { deflateSync } from "node:zlib";
import { need, objectOf, type PdfFile, referenceIn } from "./read-pdf.ts";

export interface FinishOptions {
  /** ISO date of issue, yyyy-mm-dd: the only date a packet may carry. */
  readonly date: string;
  readonly title: string;
  readonly author: string;
  /** Of the document: job, what is printed, revision. */
  readonly identifier: string;
  readonly description: string;
  /** Asks whoever prints it not to scale it to the paper. */
  readonly fullSize: boolean;
  /** The job file and its record, attached as the source of the document. */
  readonly attachments: readonly Attachment[];
}

interface Attachment {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The same bytes for the same page: same-length patches in the file that was read, then one appended update. */
export const finishPdf = (file: PdfFile, options: FinishOptions): Buffer => {
  patch(file, options.date);
  return append(file, options);
};

/** Sets the 14 digits of both dates and counts the ids of structure elements from one; no length changes. */
const patch = ({ bytes, text }: PdfFile, date: string): void => {
  const digits = `${date.replaceAll("-", "")}000000`;
  for (const found of text.matchAll(/\/(?:CreationDate|ModDate) \(D:(\d{14})/g)) {
    bytes.write(digits, found.index + found[0].length - 14, "latin1");
  }
  const ids = [...text.matchAll(/\(node(\d{8})\)/g)];
  const ranks = new Map(
    [...new Set(ids.map((found) => found[1] ?? ""))].sort().map((id, index) => [id, String(index + 1).padStart(8, "0")]),
  );
  for (const found of ids) bytes.write(ranks.get(found[1] ?? "") ?? "", found.index + 5, "latin1");
};

/** Appends metadata, the attachment, a catalog that names both, and an identifier made from the content. */
const append = (file: PdfFile, options: FinishOptions): Buffer => {
  const { bytes } = file;
  const { fullSize, attachments } = options;
  const root = need(referenceIn(file.trailer, "Root"), "catalog");
  const catalog = fullSize ? unscaled(objectOf(file, root)) : objectOf(file, root);
  if (catalog.includes("/Names") || catalog.includes("/Metadata")) throw new Error("the browser's PDF already has names or metadata");
  const first = file.offsets.length;
  const xmp = Buffer.from(metadata(options), "utf8");
  // ISO 32000-1, 7.9.6: names of a tree stand in the order of their bytes.
  const named = [...attachments]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map((attachment, nth) => ({ ...attachment, at: first + 1 + 2 * nth }));
  const objects: readonly (readonly [number, Buffer])[] = [
    [
      root.number,
      latin(
        catalog.replace(
          />>\s*$/,
          `/Metadata ${first} 0 R /Names <</EmbeddedFiles <</Names [${named.map(({ name, at }) => `${pdfString(name)} ${at + 1} 0 R`).join(" ")}]>>>> /AF [${named.map(({ at }) => `${at + 1} 0 R`).join(" ")}]>>`,
        ),
      ),
    ],
    [first, stream(`/Type /Metadata /Subtype /XML`, xmp)],
    ...named.flatMap(({ name, bytes: file, at }) => embedded(name, file, at)),
  ];
  const parts: Buffer[] = [bytes];
  const offsets: (readonly [number, number])[] = [];
  let at = bytes.length;
  for (const [number, body] of objects) {
    const part = Buffer.concat([latin(`${number} 0 obj\n`), body, latin("\nendobj\n")]);
    offsets.push([number, at]);
    parts.push(part);
    at += part.length;
  }
  const hash = createHash("sha256").update(bytes).update(xmp);
  for (const attachment of named) hash.update(attachment.bytes);
  const id = hash.digest("hex").slice(0, 32);
  const table = offsets.map(([number, offset]) => `${number} 1\n${String(offset).padStart(10, "0")} 00000 n \n`).join("");
  const trailer = file.trailer
    .replace(/\/Size \d+/, `/Size ${first + 1 + 2 * named.length}`)
    .replace(/>>\s*$/, `/Prev ${file.xrefAt} /ID [<${id}> <${id}>]>>`);
  parts.push(latin(`xref\n${table}${trailer}\nstartxref\n${at}\n%%EOF\n`));
  return Buffer.concat(parts);
};

/** The stream of an attached file, and what names it. */
const embedded = (name: string, bytes: Uint8Array, at: number): readonly (readonly [number, Buffer])[] => [
  [
    at,
    stream(
      `/Type /EmbeddedFile /Subtype /application#2Fyaml /Filter /FlateDecode /Params <</Size ${bytes.length}>>`,
      deflateSync(bytes, { level: 9 }),
    ),
  ],
  [at + 1, latin(`<</Type /Filespec /F ${pdfString(name)} /UF ${pdfString(name)} /AFRelationship /Source /EF <</F ${at} 0 R>>>>`)],
];

/** ISO 32000-1, 12.2: viewers offer "actual size" first; some ignore it, so the rulers stay. */
const unscaled = (catalog: string): string => {
  const known = /\/ViewerPreferences\s*<</;
  return known.test(catalog)
    ? catalog.replace(known, "$& /PrintScaling /None ")
    : catalog.replace(/>>\s*$/, "/ViewerPreferences <</PrintScaling /None>> >>");
};

const latin = (text: string): Buffer => Buffer.from(text, "latin1");
const stream = (dictionary: string, body: Buffer): Buffer =>
  Buffer.concat([latin(`<<${dictionary} /Length ${body.length}>>\nstream\n`), body, latin("\nendstream")]);
const pdfString = (text: string): string => `(${text.replace(/[\\()]/g, "\\$&").replace(/[^ -~]/g, "_")})`;

const xml = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

const metadata = ({ date, title, author, identifier, description }: FinishOptions): string =>
  `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"><dc:title><rdf:Alt><rdf:li xml:lang="x-default">${xml(title)}</rdf:li></rdf:Alt></dc:title><dc:identifier>${xml(identifier)}</dc:identifier><dc:description><rdf:Alt><rdf:li xml:lang="x-default">${xml(description)}</rdf:li></rdf:Alt></dc:description><dc:creator><rdf:Seq><rdf:li>${xml(author)}</rdf:li></rdf:Seq></dc:creator><dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language><xmp:CreateDate>${date}</xmp:CreateDate><xmp:ModifyDate>${date}</xmp:ModifyDate></rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`;
