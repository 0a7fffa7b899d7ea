// Does each block of a sheet become the HTML that it should, with nothing of a job taken as markup?
import { describe, expect, test } from "vitest";
import type { Block } from "../../src/packet/packet.ts";
import { blockHtml, flowHtml } from "../../src/site/html-block.ts";
import { tableHtml } from "../../src/site/html-table.ts";
import { samplePacket } from "../support/sample-packet.ts";

const evil = '<script>alert("x")</script>';

describe("blockHtml", () => {
  const blocks: readonly Block[] = [
    { kind: "heading", id: "a", text: evil },
    { kind: "prose", text: [evil] },
    { kind: "list", items: [evil] },
    { kind: "facts", id: "a", facts: [{ name: evil, value: evil, strong: true }] },
    { kind: "caution", level: "danger", text: [evil] },
    { kind: "blanks", id: "a", title: evil, rows: [{ label: evil, unit: evil, key: evil }] },
    { kind: "signatures", id: "a", roles: [evil] },
    { kind: "drawing", id: "a", title: evil, description: evil, svg: "<svg></svg>", width_mm: 1, height_mm: 1 },
    { kind: "steps", id: "a", title: evil, mode: "read-do", items: [{ text: evil, more: evil, value: evil, killer: true }], hold: evil },
    {
      kind: "table",
      id: "a",
      caption: evil,
      columns: [{ key: "a", head: evil, sub: evil }],
      rows: [[evil], [{ text: evil, minor: true }], [{ text: "P4", delta: evil }], [{ blank: evil }]],
      notes: [evil],
    },
  ];

  test.each(blocks)("a script in the words of a $kind stays words", (block) => {
    const html = blockHtml(block);
    expect(html).not.toMatch(/<script/i);
    expect(html).toContain("&lt;script&gt;");
  });

  test("the sample packet holds every kind of block, so that what is tested with it is tested for all", () => {
    const kinds = new Set(samplePacket().sheets.flatMap((sheet) => sheet.blocks.map((block) => block.kind)));
    expect([...kinds].sort()).toEqual([
      "blanks",
      "break",
      "caution",
      "drawing",
      "facts",
      "heading",
      "list",
      "prose",
      "signatures",
      "steps",
      "table",
    ]);
  });

  test("a drawing without words of its own is one picture with title and description as its label", () => {
    const html = blockHtml({
      kind: "drawing",
      id: "a",
      title: "Side A",
      description: "9 cables",
      svg: "<svg></svg>",
      width_mm: 1,
      height_mm: 1,
    });
    expect(html).toContain('<svg role="img" aria-label="Side A. 9 cables">');
  });

  test("a drawing that names itself keeps its own words", () => {
    const html = blockHtml({
      kind: "drawing",
      id: "a",
      title: "t",
      description: "d",
      svg: '<svg role="img" aria-labelledby="x"></svg>',
      width_mm: 1,
      height_mm: 1,
    });
    expect(html.match(/<svg [^>]*>/)?.[0]).toBe('<svg role="img" aria-labelledby="x">');
  });
});

describe("tableHtml", () => {
  const columns = Array.from({ length: 9 }, (_, index) => ({ key: `k${index}`, head: `H${index}` }));

  test("in a table of 9 columns the row's mark stands at both ends", () => {
    const html = tableHtml({
      kind: "table",
      id: "t",
      caption: "C",
      columns,
      rowHeads: true,
      rows: [["P1", ...Array.from({ length: 8 }, () => "x")]],
    });
    expect(html.match(/P1/g)).toHaveLength(2);
    expect(html).toContain('<th scope="row">P1</th>');
    expect(html).toContain('colspan="10"');
  });

  test("of a width of 0.4 the other three columns take 20 % each", () => {
    const html = tableHtml({
      kind: "table",
      id: "t",
      caption: "C",
      columns: [{ key: "a", head: "A", width: 0.4 }, ...columns.slice(0, 3)],
      rows: [],
    });
    expect([...html.matchAll(/width:([\d.]+)%/g)].map((match) => Number(match[1]))).toEqual([40, 20, 20, 20]);
  });

  test("the numbers of its changes stand beside a cell's text, in a heading of a row as in any other cell", () => {
    const html = tableHtml({
      kind: "table",
      id: "t",
      caption: "C",
      columns: [
        { key: "a", head: "A" },
        { key: "b", head: "B" },
      ],
      rows: [
        [
          { text: "P4", delta: "8, 9" },
          { text: "5/8", strong: true, delta: "3" },
        ],
      ],
      rowHeads: true,
    });
    expect(html).toContain('<th scope="row">P4 <span class="delta">8, 9</span></th>');
    expect(html).toContain('<td class="critical n">5/8 <span class="delta">3</span></td>');
  });

  test("a blank keeps its unit, a tick is an empty box, a critical value is strong", () => {
    const html = tableHtml({
      kind: "table",
      id: "t",
      caption: "C",
      columns: columns.slice(0, 3),
      rows: [[{ blank: "in" }, { tick: true }, { text: "300 lbf", strong: true }]],
    });
    expect(html).toContain('<td class="blank"><span class="unit">in</span></td>');
    expect(html).toContain('<td class="center"><span class="tick"></span></td>');
    expect(html).toContain('<td class="critical">300 lbf</td>');
  });
});

describe("flowHtml", () => {
  const heading = (id: string): Block => ({ kind: "heading", id, text: `Head ${id}` });
  const caution: Block = { kind: "caution", level: "danger", text: ["Mind the edge"] };
  const steps: Block = { kind: "steps", id: "s", title: "Steps", mode: "read-do", items: [{ text: "One" }] };
  const prose: Block = { kind: "prose", text: ["Words"] };
  const leadOf = (html: string): string => /<div class="steps-head">(.*?)<\/div><ol>/s.exec(html)?.[1] ?? "";

  test("the heading and the caution right before steps stand in one box with their head: a page never parts them", () => {
    const lead = leadOf(flowHtml([heading("a"), caution, steps]));
    for (const words of ["Head a", "Mind the edge", "Steps", "Read each line"]) expect.soft(lead).toContain(words);
  });

  test("what stands further off stays outside, and each block is printed once, in its order", () => {
    const html = flowHtml([heading("a"), prose, caution, heading("b"), steps, heading("c")]);
    expect(leadOf(html)).not.toContain("Head a");
    const order = ["Head a", "Words", "Mind the edge", "Head b", "Steps", "Head c"].map((words) => html.indexOf(words));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(html.match(/Head \w|Words|Mind/g)).toHaveLength(5);
  });
});
