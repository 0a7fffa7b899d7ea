import { describe, expect, test } from "vitest";
import type { Status } from "../../src/job/identity.ts";
import { ownSheets, sheetHeads } from "../../src/packet/issues.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import type { Block, Packet } from "../../src/packet/packet.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { wrapped } from "../../src/site/page-rules.ts";
import { sources } from "../../src/sources/sources.ts";
import { readForce } from "./read-force.ts";
import { allTables, cellText, examples, issues, packetOf, stamp, tableOf, textsOf } from "./read-packet.ts";

const packets: readonly (readonly [string, Packet])[] = examples.flatMap(([name, plan]) =>
  issues.flatMap((issue) => [
    [`${name}, ${issue}`, packetOf(plan, issue)] as const,
    [`${name}, all sheets for ${issue}`, packetOf(plan, issue, true)] as const,
  ]),
);

const blocksOf = (packet: Packet): readonly Block[] => packet.sheets.flatMap(({ blocks }) => blocks);
const marksIn = (text: string): readonly string[] => [...text.matchAll(/\[([a-z0-9-]+)\]/g)].map(([, id = ""]) => id);

/** The same plan as if its frame held. */
const holding = (plan: Plan): Plan => ({ ...plan, frame: { ...plan.frame, checks: [], remedy: null } });

describe("makePacket", () => {
  test("there are example jobs to look at", () => expect(examples.length).toBeGreaterThan(2));

  test.each(packets)("%s: no text says undefined, NaN, null, Infinity or [object", (_, packet) => {
    const bad = blocksOf(packet)
      .flatMap(textsOf)
      .filter((text) => /undefined|NaN|\bnull\b|Infinity|\[object/.test(text));
    expect(bad).toEqual([]);
  });

  test.each(packets)("%s: every letter is ASCII or Latin-1, without curly quotes, dashes or arrows", (_, packet) => {
    const own = blocksOf(packet).flatMap(textsOf);
    expect(own.filter((text) => /[^\n\x20-\x7e\xa0-\xff]/.test(text))).toEqual([]);
  });

  test.each(packets)("%s: every sheet has content besides its headings, and every table has rows", (_, packet) => {
    for (const sheet of packet.sheets) {
      const content = sheet.blocks.filter(({ kind }) => kind !== "heading" && kind !== "break");
      expect.soft(content.length, sheet.id).toBeGreaterThan(0);
    }
    for (const table of allTables(packet)) expect.soft(table.rows.length, table.id).toBeGreaterThan(0);
  });

  test.each(packets)("%s: every row has as many cells as its table has columns, whose shares make one whole", (_, packet) => {
    for (const table of allTables(packet)) {
      expect.soft(new Set(table.columns.map(({ key }) => key)).size, table.id).toBe(table.columns.length);
      for (const row of table.rows) expect.soft(row.length, `${table.id}: ${row.map(cellText).join(" | ")}`).toBe(table.columns.length);
      const shares = table.columns.reduce((sum, { width }) => sum + (width ?? 0), 0);
      expect.soft(shares, table.id).toBeCloseTo(1, 2);
    }
  });

  test.each(packets)("%s: ids of sheets, slugs and blocks are unique", (_, packet) => {
    const ids = blocksOf(packet).flatMap((block) => ("id" in block ? [block.id] : []));
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    expect(new Set(packet.sheets.map(({ id }) => id)).size).toBe(packet.sheets.length);
    expect(new Set(packet.sheets.map(({ slug }) => slug)).size).toBe(packet.sheets.length);
    for (const { slug } of packet.sheets) expect.soft(slug).toMatch(/^[a-z0-9-]+$/);
  });

  test.each(packets)(
    "%s: the index on the cover lists the sheets of the packet, in their order, and names the last revision",
    (_, packet) => {
      const { caption, columns, rows } = tableOf(packet, "cover-index");
      // Two lists side by side, each read downward.
      const entries = columns.flatMap(({ key }, at) =>
        key.startsWith("id") ? rows.map((row) => [cellText(row[at] ?? ""), cellText(row[at + 1] ?? "").split(": ")[0]]) : [],
      );
      // Those who bore are told of the sheets at full size, which are files of their own.
      const own = packet.sheets.some(({ id }) => id === "Z-603") ? Object.values(ownSheets) : [];
      const listed = [...packet.sheets, ...own].toSorted((a, b) => (a.id < b.id ? -1 : 1));
      expect(entries.filter(([id]) => id !== "")).toEqual(listed.map(({ id, name }) => [id, name]));
      expect(caption).toContain(`all at revision ${packet.titleBlock.revision}:`);
    },
  );

  test.each(packets)("%s: each mark of a source in the text is a known source and stands on Z-902", (_, packet) => {
    const others = packet.sheets.filter(({ id }) => id !== "Z-902").flatMap(({ blocks }) => blocks.flatMap(textsOf));
    const used = [...new Set(others.flatMap(marksIn))].sort();
    const listed = ["sources-marks", "sources-list"].flatMap((id) =>
      tableOf(packet, id).rows.map((row) => marksIn(cellText(row[0] ?? ""))[0] ?? ""),
    );
    expect(used.filter((id) => !Object.hasOwn(sources, id))).toEqual([]);
    expect(listed.sort()).toEqual(used);
  });

  test.each(packets)(
    "%s: the cover and the proof leave the frame to an engineer or the authority, and a failing one to nobody",
    (_, packet) => {
      for (const id of ["Z-001", "Z-804"]) {
        const cautions = packet.sheets.find((sheet) => sheet.id === id)?.blocks.filter(({ kind }) => kind === "caution") ?? [];
        const text = cautions.flatMap(textsOf).join(" ");
        expect.soft(text, id).toMatch(/A licensed engineer or the authority must accept|reviewed by a licensed engineer/);
        expect.soft(text, id).toContain("Z-805");
      }
    },
  );

  test.each(examples)("%s: tables of the same name hold the same numbers in all issues", (_, plan) => {
    const seen = new Map<string, string>();
    for (const issue of issues) {
      // The sheet of sources lists what its own issue cites.
      for (const table of allTables(packetOf(plan, issue, true)).filter(({ id }) => !id.startsWith("sources-"))) {
        // The index, and rows that refer to sheets of another issue, differ by their words only.
        const numbers = JSON.stringify(
          table.rows.map((row) => row.map((cell) => cellText(cell).replaceAll(/Z-\d+( \([a-z]+ issue\))?/g, "sheet"))),
        );
        const before = seen.get(table.id) ?? numbers;
        expect.soft(numbers, `${table.id} in the ${issue} issue`).toBe(before);
        seen.set(table.id, before);
      }
    }
    expect(seen.size).toBeGreaterThan(30);
  });

  test.each(examples)("%s: the same plan gives the same packet twice", (_, plan) => {
    expect(JSON.stringify(packetOf(plan, "homeowner"))).toBe(JSON.stringify(packetOf(plan, "homeowner")));
  });

  test.each(examples)("%s: a failed check stamps every sheet and says so on the cover", (_, plan) => {
    const [check, ...rest] = plan.checks;
    if (!check) throw new Error("a plan without checks");
    const failed = makePacket({
      plan: {
        ...holding(plan),
        verdict: "fail",
        checks: [{ ...check, verdict: "fail" }, ...rest.filter(({ id }) => !id.startsWith("frame-"))],
      },
      issue: "crew",
      stamp,
    });
    expect(failed.titleBlock.stamp).toMatch(/^NOT FOR CONSTRUCTION - a check fails/);
    expect(failed.verdictText).toContain("1 check fails");
    expect(failed.sheets[0]?.blocks.find((block) => block.kind === "caution")).toMatchObject({ level: "danger" });
  });

  test("a frame that fails says so on every sheet, whatever the status, in two lines of the margin, and sends to Z-001 for other checks", () => {
    const [, plan] = examples.find(([, { frame }]) => frame.checks.some(({ verdict }) => verdict === "fail")) ?? [];
    if (!plan) throw new Error("no example has a frame that fails");
    const words = "NOT FOR CONSTRUCTION - frame must be changed or reviewed by a licensed engineer, see Z-805";
    for (const status of ["preliminary", "for permit", "for construction", "as built"] as const) {
      const { titleBlock } = packetOf({ ...plan, job: { ...plan.job, identity: { ...plan.job.identity, status } } }, "permit");
      expect.soft(titleBlock.stamp, status).toBe(words);
    }
    const [check, ...rest] = plan.checks;
    if (!check) throw new Error("a plan without checks");
    const both = packetOf({ ...plan, checks: [{ ...check, verdict: "fail" }, ...rest] }, "crew").titleBlock.stamp;
    expect(both).toBe(`${words}; also Z-001`);
    const [, reason = ""] = both.split(" - ");
    // a third of an upright sheet of A4 (184 mm), 1 mm clear of its neighbour
    expect(wrapped(reason, { room_mm: 60.6, lines: 2 }).join(" ")).toBe(reason);
  });

  test.each(examples)("%s: only a set issued for construction or as built may be bored from", (_, plan) => {
    const stampAt = (status: Status, verdict: Plan["verdict"]): string =>
      packetOf({ ...holding(plan), verdict, job: { ...plan.job, identity: { ...plan.job.identity, status } } }, "crew").titleBlock.stamp;
    for (const status of ["for construction", "as built"] as const) {
      expect.soft(stampAt(status, "ask"), status).toBe("");
      expect.soft(stampAt(status, "fail"), status).toBe("NOT FOR CONSTRUCTION - a check fails, see Z-001");
    }
    for (const status of ["preliminary", "for permit"] as const) {
      expect.soft(stampAt(status, "ask"), status).toBe("NOT FOR CONSTRUCTION - do not bore from this set");
      expect.soft(stampAt(status, "fail"), status).toBe("NOT FOR CONSTRUCTION - a check fails, see Z-001; do not bore from this set");
    }
  });

  test.each(examples)("%s: the pull on every post stands on the cover and, for the authority, on Z-002, never too small", (_, plan) => {
    const packet = packetOf(plan, "permit");
    for (const id of ["cover-pulls", "authority-pulls"]) {
      const { rows, notes = [] } = tableOf(packet, id);
      expect(rows.map((row) => cellText(row[0] ?? "").split(" ")[0])).toEqual(plan.pulls.map(({ postId }) => postId));
      for (const [index, { pull_high }] of plan.pulls.entries()) {
        const printed = readForce(cellText(rows[index]?.[4] ?? ""));
        expect.soft(printed, `${id}, row ${index + 1}`).toBeGreaterThanOrEqual(pull_high * (1 - 1e-9));
        expect.soft(printed, `${id}, row ${index + 1}`).toBeLessThan(pull_high * 1.011);
      }
      expect(notes.join(" ")).toContain("What posts and bases make of it: Z-805");
    }
  });

  // Euler-Eytelwein: with friction towards 0 an end behind bends bears the whole pull of the other end.
  test.each(examples)("%s: each end that holds behind bends has its word on friction beside the pulls, and no other end", (_, plan) => {
    const { notes = [] } = tableOf(packetOf(plan, "permit"), "authority-pulls");
    const told = notes.flatMap(
      (note) => /^\*\*(\S+)\*\* holds (R\d+) behind bends.* as much of R\d+ as (\S+)\.$/.exec(note)?.slice(1) ?? [],
    );
    const spared = plan.runs.flatMap(({ id, left, right, bends }) => {
      if (bends.length === 0 || left.pulls === right.pulls) return [];
      return left.pulls ? [right.postId, id, left.postId] : [left.postId, id, right.postId];
    });
    expect(told).toEqual(spared);
  });

  test.each(examples)("%s: the sheets are those announced by sheetHeads", (_, plan) => {
    for (const issue of issues) {
      const heads = sheetHeads({ plan, issue, all: false });
      expect.soft(packetOf(plan, issue).sheets.map(({ id }) => id)).toEqual(heads.map(({ id }) => id));
    }
  });
});
