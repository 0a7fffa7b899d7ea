// What is a printed file called, what does it say of itself, and what is attached to it?
import { describe, expect, test } from "vitest";
import type { JobFile } from "../../src/cli/manifest.ts";
import { pdfName, printJobs, prints } from "../../src/cli/printing.ts";
import type { Printer, PrintJob } from "../../src/pdf/print.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { makeLayouts } from "../../src/site/layouts.ts";
import { packageRoot } from "../../src/site/root.ts";
import { examplePlan } from "../support/example-jobs.ts";
import { memoryEffects } from "../support/memory-effects.ts";

const plan = examplePlan("0001-level-deck-straight");
const identified = (identity: Partial<Plan["job"]["identity"]>, verdict: Plan["verdict"] = "pass"): Plan => ({
  ...plan,
  verdict,
  job: { ...plan.job, identity: { ...plan.job.identity, ...identity } },
});

describe("pdfName", () => {
  const [crew] = prints;
  if (crew === undefined) throw new Error("nothing is printed");
  const revised = (mark: string) => ({ revisions: [{ mark, date: "2026-05-01", by: "RT", change: "more" }] });

  test.each([
    [identified({ status: "for construction" }), "0001-porch-front-crew-r0.pdf"],
    [identified({ status: "as built", ...revised("B") }), "0001-porch-front-crew-rB-as-built.pdf"],
    [identified({ status: "for permit" }), "0001-porch-front-crew-r0-for-permit.pdf"],
    [identified({ status: "for construction" }, "fail"), "0001-porch-front-crew-r0-NOT-FOR-CONSTRUCTION.pdf"],
    [identified({ status: "for construction", ...revised("../2 / b.") }), "0001-porch-front-crew-r2-b.pdf"],
  ])("%# names revision, status and what must not be built from", (one, name) => expect(pdfName(one, crew)).toBe(name));

  test("the six files of a job have six names", () => {
    expect(new Set(prints.map((print) => pdfName(plan, print))).size).toBe(6);
  });
});

describe("printJobs", () => {
  const bytes = Buffer.from("job: {}\n");
  const file: JobFile = {
    path: "jobs/porch.yaml",
    id: "../jobs/porch.yaml",
    bytes,
    digest: "0123456789abcdef",
    key: "",
    record: { path: "jobs/porch.record.yaml", bytes, digest: "fedcba9876543210", rivals: [] },
  };

  test("each file says its revision and what it is not for, and carries job file and record", async () => {
    const asked: PrintJob[] = [];
    const ready = Promise.resolve();
    const printer: Printer = {
      connected: ready,
      atWork: ready,
      version: async () => "0",
      close: () => {},
      crash: () => {},
      print: async (request) => {
        asked.push(request);
        return { bytes, pages: 1 };
      },
    };
    const effects = memoryEffects({});
    const options = { effects, out: "out", layouts: makeLayouts(packageRoot()), printer, draft: true, browser: "" };
    const planOf = () => ({ plan: identified({ status: "preliminary" }), built: undefined, revised: undefined });
    await printJobs([{ file, number: "0001-porch-front", before: undefined }], { ...options, planOf }, (_task, result) => {
      expect(result).toMatchObject({ pages: 6 });
    });
    expect(asked).toHaveLength(6);
    for (const { finish } of asked) {
      expect.soft(effects.disk.has(`out/0001-porch-front/${finish.identifier}.pdf`)).toBe(true);
      expect.soft(finish.identifier).toMatch(/-r0-preliminary$/);
      expect
        .soft(finish.description)
        .toBe("Revision 0, preliminary; NOT FOR CONSTRUCTION - do not bore from this set; EXAMPLE - invented job");
      expect.soft(finish.attachments.map(({ name }) => name)).toEqual(["porch.yaml", "porch.record.yaml"]);
    }
  });
});
