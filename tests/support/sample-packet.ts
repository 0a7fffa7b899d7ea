// What does a packet look like that holds every kind of block? Invented; used where the rendering is tested, not the content.
import type { Block, Packet, Sheet, Table } from "../../src/packet/packet.ts";

const wideTable = (rows: number, id = "bores"): Table => ({
  kind: "table",
  id,
  caption: "Bores by post",
  rowHeads: true,
  columns: [
    { key: "mark", head: "Mark", width: 0.1 },
    { key: "face", head: "Face", sub: "entry" },
    { key: "height", head: "Height", sub: "from datum", align: "right", width: 0.22 },
    { key: "across", head: "Across", align: "right" },
    { key: "diameter", head: "Diameter", align: "right" },
    { key: "depth", head: "Depth", align: "right" },
    { key: "side", head: "Side" },
    { key: "done", head: "Done", align: "center" },
    { key: "actual", head: "Actual", sub: "field reading" },
  ],
  rows: Array.from({ length: rows }, (_, index) => [
    `P${index + 1}-05`,
    index % 2 === 0 ? "left" : "right",
    { text: `${index}-3/16 in (${index * 25} mm)`, strong: true },
    "0 in (0 mm)",
    "5/16 in",
    "through",
    { text: "from the deck", minor: true },
    { tick: true },
    { blank: "in" },
  ]),
  notes: ["Heights are rounded **once**, from the exact value."],
});

const drawing = (
  id: string,
  { width, height, lines }: { readonly width: number; readonly height: number; readonly lines: number },
): Block => ({
  kind: "drawing",
  id,
  title: `Elevation ${id}`,
  description: `Shows ${lines} lines; the table of bores has the numbers.`,
  width_mm: width,
  height_mm: height,
  svg: `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path d="${Array.from({ length: lines }, (_, index) => `M2 ${2 + index * 0.5}H${width - 2}`).join("")}" fill="none" stroke="#000" stroke-width="0.25"/><text x="4" y="${height - 2}" font-size="4">29 in (737 mm)</text></svg>`,
});

const steps = (id: string, count: number): Block => ({
  kind: "steps",
  id,
  title: "Tighten",
  mode: "do-confirm",
  items: Array.from({ length: count }, (_, index) => ({
    text: `Turn the nut of course ${index + 1} until the gauge reads **300 lbf**`,
    ...(index % 3 === 0 ? { more: "Hold the cable with the pliers while you turn." } : {}),
    ...(index % 4 === 0 ? { value: "lbf" } : {}),
    ...(index === 1 ? { killer: true as const } : {}),
  })),
  hold: "Nobody leans on the guard before this is signed.",
});

const form: Block = {
  kind: "blanks",
  id: "survey",
  title: "Measure on site",
  rows: Array.from({ length: 12 }, (_, index) => ({ label: `Side ${index + 1}`, unit: "in", key: `guard.sides.${index}.length` })),
};

const sheet = (id: string, slug: string, more: Partial<Sheet> & { readonly blocks: readonly Block[] }): Sheet => ({
  id,
  name: slug.replace("-", " "),
  slug,
  orientation: "portrait",
  ...more,
});

/** About 25 printed pages; `title` and `extra` let a test put in what it wants to see. */
export const samplePacket = (
  more: { readonly title?: string; readonly extra?: readonly Block[]; readonly number?: string } = {},
): Packet => ({
  issue: "crew",
  issueName: "Crew packet",
  paper: "letter",
  verdict: "ask",
  verdictText: "One question for the authority is open",
  titleBlock: {
    firm: "Three Gables Carpentry (invented)",
    jobNumber: more.number ?? "0001-porch-front",
    title: more.title ?? "Front of a low deck, one straight side",
    place: "3 Quillwort Lane, Amberfold (invented)",
    client: "N. Sallow",
    revision: "0",
    date: "2026-04-20",
    status: "for construction",
    preparedBy: "R. Teasel",
    checkedBy: "H. Marram",
    units: "feet and inches (mm in parentheses)",
    datum: "top of the decking",
    example: "EXAMPLE - invented job",
    stamp: "",
    jobHash: "0123456789ab",
    programVersion: "0.1.0",
  },
  sheets: [
    sheet("Z-001", "cover", {
      blocks: [
        {
          kind: "facts",
          id: "facts",
          facts: [
            { name: "Cables", value: "9", strong: true },
            { name: "Spacing", value: "2-7/8 in (73 mm)" },
          ],
        },
        { kind: "caution", level: "danger", text: ["A guard that is **not finished** holds nobody."] },
        { kind: "caution", level: "warning", text: ["Wear glasses."] },
        { kind: "caution", level: "notice", text: ["This is invented."] },
        { kind: "prose", text: ["Read the sheets in their order.", "Values in **bold** are critical."] },
        { kind: "list", items: ["one", "two"] },
        { kind: "signatures", id: "signed", roles: ["Crew lead", "Owner"] },
        ...(more.extra ?? []),
      ],
    }),
    sheet("Z-003", "survey", { blocks: [form] }),
    sheet("Z-101", "plan", { orientation: "landscape", blocks: [drawing("plan", { width: 250, height: 130, lines: 80 })] }),
    ...["A", "B", "C"].map((side, index) =>
      sheet(`Z-20${index + 1}`, `elevation-${side.toLowerCase()}`, {
        orientation: "landscape",
        blocks: [drawing(`side-${side}`, { width: 250, height: 120, lines: 120 })],
      }),
    ),
    sheet("Z-603", "bores", { orientation: "landscape", blocks: [wideTable(90), { kind: "break" }, wideTable(10, "bores-2")] }),
    sheet("Z-604", "order", {
      blocks: [
        { kind: "heading", id: "order-fittings", text: "Fittings" },
        { ...wideTable(20, "order"), writeIn: true },
      ],
    }),
    sheet("Z-801", "steps", { blocks: [steps("tighten", 24), steps("reeve", 20)] }),
    sheet("Z-803", "tightening", { blocks: [{ ...wideTable(40, "log"), writeIn: true }] }),
    sheet("Z-901", "record", { blocks: [form, { ...wideTable(30, "record"), writeIn: true }] }),
  ],
});
