import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { makePlan } from "../../src/plan/make-plan.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { remedyOf } from "../../src/plan/remedy.ts";
import { changesOf } from "../../src/plan/remedy-changes.ts";
import { changedText, exampleText, jobOf, planOf } from "../support/example-jobs.ts";

const again = (job: Job): Plan | undefined => makePlan(job).value;
const EVERYTHING = { posts: true, topRail: true, bottomRail: true, spacers: false } as const;

describe("remedyOf", () => {
  test("a frame that holds needs none", () => {
    const job = jobOf(exampleText("rule-of-thumb"));
    const plan = planOf(exampleText("rule-of-thumb"));
    const held = { ...plan, frame: { ...plan.frame, checks: plan.frame.checks.filter(({ verdict }) => verdict !== "fail") } };
    expect(remedyOf(held, job, again)).toBeNull();
  });

  test("written into the job file, closer posts make every check of the frame of 0005 hold", () => {
    const name = "steel-too-long";
    const { remedy } = planOf(exampleText(name)).frame;
    expect(remedy?.write).toBe("posts: largest spacing: 1500 mm");
    expect(remedy?.ratio).toBeLessThanOrEqual(1);
    const changed = planOf(changedText(name, { "largest spacing: 1.6 m": "largest spacing: 1500 mm" }));
    expect(changed.frame.checks.filter(({ verdict }) => verdict === "fail")).toEqual([]);
  });

  test("where no single change does, changes are joined: 0001 with what is written holds", () => {
    const name = "rule-of-thumb";
    const { remedy } = planOf(exampleText(name)).frame;
    expect(remedy?.write).toBe(
      "posts: size: 6x6, species: Southern Pine, grade: No.1, incised: false; frame: top rail: size: 4x6; frame: bottom rail: size: 4x4",
    );
    const changed = planOf(
      changedText(name, {
        "size: 4x4": "size: 6x6\n  species: Southern Pine\n  grade: No.1\n  incised: false",
        "size: 2x6, lay: flat": "size: 4x6, lay: flat",
        "size: 2x4, lay: edge": "size: 4x4, lay: edge",
      }),
    );
    expect(changed.frame.checks.filter(({ verdict }) => verdict === "fail")).toEqual([]);
  });

  test("a change that cannot be planned, or leaves the frame failing, is none", () => {
    const job = jobOf(exampleText("steel-too-long"));
    const plan = planOf(exampleText("steel-too-long"));
    expect(remedyOf(plan, job, () => undefined)).toBeNull();
    expect(remedyOf(plan, job, () => plan)).toBeNull();
  });

  test("a change that makes another check fail, or only makes a check a question, is none", () => {
    const job = jobOf(exampleText("steel-too-long"));
    const plan = planOf(exampleText("steel-too-long"));
    const [first] = plan.checks;
    const checks = plan.frame.checks.map((check) => ({ ...check, verdict: "pass" as const }));
    const good = {
      ...plan,
      frame: { ...plan.frame, checks },
      checks: plan.checks.map((check) => ({ ...check, verdict: "pass" as const })),
    };
    expect(remedyOf(plan, job, () => good)).not.toBeNull();
    const spoilt = {
      ...good,
      checks: good.checks.map((check) => (check.id === first?.id ? { ...check, verdict: "fail" as const } : check)),
    };
    expect(remedyOf({ ...plan, checks: good.checks }, job, () => spoilt)).toBeNull();
    const asked = checks.map((check) => (check.id.startsWith("post-cables") ? { ...check, verdict: "ask" as const } : check));
    expect(remedyOf(plan, job, () => ({ ...good, frame: { ...plan.frame, checks: asked } }))).toBeNull();
  });
});

describe("changesOf", () => {
  const writes = (name: string, changes: Readonly<Record<string, string>> = {}): readonly string[] =>
    changesOf(jobOf(changedText(name, changes)), EVERYTHING).map(({ write }) => write);

  test("rise in cost: readings, spacers, spacing of posts, posts, allowance, wood, rails", () => {
    const found = writes("rule-of-thumb");
    expect(found.slice(0, 6)).toEqual([
      "tightening: band: 5 %",
      'spacers: longest free length: 24"',
      'spacers: longest free length: 18"',
      'posts: largest spacing: 60"',
      'posts: largest spacing: 48"',
      "posts: size: 4x6",
    ]);
    expect(found.at(-1)).toBe("frame: top rail: size: 4x6; frame: bottom rail: size: 4x4");
  });

  test("a stated tension cannot be lowered by spacers, nor posts that stand be set closer", () => {
    expect(writes("0003-long-boardwalk").some((write) => write.startsWith("spacers"))).toBe(false);
    expect(writes("0006-porch-existing-posts").some((write) => write.includes("largest spacing"))).toBe(false);
  });

  test("tubes grow by a wall, then by the next squares of the table, written in the job's units", () => {
    expect(writes("steel-too-long").filter((write) => write.startsWith("posts: size"))).toEqual([
      "posts: size: 50 mm x 50 mm, wall: 4 mm",
      "posts: size: 51 mm x 51 mm, wall: 3 mm",
      "posts: size: 51 mm x 51 mm, wall: 5 mm",
    ]);
  });

  test("nothing is left of what the job already has", () => {
    const found = writes("rule-of-thumb", {
      "tightening:\n": "tightening:\n  band: 5 %\n  allow for: nothing\n",
      "longest free length: 3 ft": "longest free length: 18 in",
      "largest spacing: 6 ft": "largest spacing: 4 ft",
      "size: 4x4": "size: 6x6",
    });
    expect(found.every((write) => /^(posts, top rail|frame)/.test(write))).toBe(true);
  });

  test("each change but the last of its kind is a job that can be read again: 24 in of free length", () => {
    expect(jobOf(changedText("rule-of-thumb", { "longest free length: 3 ft": 'longest free length: 24"' })).spacers.free_max.value).toBe(
      609.6,
    );
  });
});
