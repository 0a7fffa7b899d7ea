// What changed on paper? The plan of every example and its drawing from above, as they were: read the difference, then decide.
// A changed result is written beside the old one as NAME-changed; copy it over to accept it. CI writes nothing.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { contentBox } from "../../src/drawing/paper.ts";
import { planView } from "../../src/packet/drawings/plan-view.ts";
import { exampleNames, examplePlan } from "../support/example-jobs.ts";
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
