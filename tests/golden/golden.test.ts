// What changed on paper? The plan of every example and its drawing from above, as they were: read the difference, then decide.
// A changed result is written beside the old one as NAME-changed; copy it over to accept it. CI writes nothing.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { contentBox } from "../../src/drawing/paper.ts";
import { planView } from "../../src/packet/drawings/plan-view.ts";
import { makePacket } from "../../src/packet/make-packet.ts";
import { cellText, sheetOf, stamp, textsOf } from "../packet/read-packet.ts";
import { exampleNames, examplePlan, revisedExample } from "../support/example-jobs.ts";
import { planSummary } from "../support/plan-summary.ts";

function expectGolden(file: string, text: string): void {
  const path = join(import.meta.dirname, file);
  const known = existsSync(path) ? readFileSync(path, "utf8") : undefined;
  if (known !== text && process.env["CI"] === undefined) writeFileSync(path.replace(/(\.\w+)$/, "-changed$1"), text);
  expect(known, `${file}: read ${file.replace(/(\.\w+)$/, "-changed$1")}`).toBe(text);
}

describe.each(exampleNames)("%s", (name) => {
  const plan = examplePlan(name);

  test("has the plan it had", () => expectGolden(`${name}.txt`, planSummary(plan)));

  test("looks from above as it did", () => {
    const { svg } = planView(plan, contentBox({ paper: plan.job.paper, orientation: "portrait" }));
    expectGolden(`${name}.svg`, `${svg.replaceAll("><", ">\n<")}\n`);
  });
});

const reissued = exampleNames.flatMap((name) => {
  const revised = revisedExample(name);
  return revised === undefined ? [] : [{ name, revised }];
});

test("an example has been issued before", () => expect(reissued.length).toBeGreaterThan(0));

test.each(reissued)("$name has changed since it was issued as it had", ({ name, revised }) => {
  const packet = makePacket({ plan: examplePlan(name), revised, issue: "crew", stamp });
  const lines = sheetOf(packet, "Z-004").blocks.flatMap((block) =>
    block.kind === "table"
      ? [block.caption, ...block.rows.map((row) => row.map(cellText).join(" | ")), ...(block.notes ?? [])]
      : textsOf(block),
  );
  expectGolden(`${name}.changes.txt`, `${lines.join("\n")}\n`);
});
