import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job/job.ts";
import { baseStiffness, modulusForBuckling, postMember, trialPull } from "../../src/plan/frame-members.ts";
import { cite } from "../../src/sources/cited.ts";
import { exampleText, jobOf } from "../support/example-jobs.ts";

const weak = jobOf(exampleText("0007-too-much-for-the-frame"));
const steel = jobOf(exampleText("0005-steel-balcony"));
const withBase = (job: Job, value: Job["posts"]["base"]["value"]): Job => ({
  ...job,
  posts: { ...job.posts, base: cite(value, "job", "test") },
});

describe("modulusForBuckling", () => {
  // NDS Supplement 2018, table 4A: Hem-Fir No.2, Emin = 470,000 psi; wet service 0.9; incising 0.95 (NDS table 4.3.8). 1 psi = 0.006894757 MPa.
  test("an incised 4x4 of Hem-Fir No.2 outdoors: 470,000 psi x 0.9 x 0.95 = 401,850 psi", () => {
    const wood = cite({ species: "Hem-Fir", grade: "No.2", incised: true } as const, "job", "test");
    const job: Job = { ...weak, posts: { ...weak.posts, wood } };
    const found = modulusForBuckling(postMember(job), wood, job);
    expect((found?.value ?? 0) / 0.006894757293168361).toBeCloseTo(401_850, 0);
    expect(found?.source).toBe("nds-design-values");
  });

  test("a steel tube has none", () => expect(modulusForBuckling(postMember(steel), null, steel)).toBeNull());
});

describe("trialPull", () => {
  test.each([weak, steel])("what it says, measured on site, gives back the stiffness of the base", (job) => {
    const { pull, height, movement } = trialPull(job);
    const before = baseStiffness(job).value;
    const measured = baseStiffness(withBase(job, { kind: "measured", pull, height, movement })).value;
    if (before === "fixed" || measured === "fixed") throw new Error("an example's base is a spring");
    expect(measured / before).toBeCloseTo(1, 9);
  });

  test("200 N at 900 mm on a base of 100 kN m per radian: P h^2 / k = 1.62 mm more than on a fixed one", () => {
    const spring = trialPull(withBase(steel, { kind: "spring", stiffness_NmmPerRad: 1e8 }));
    const fixed = trialPull(withBase(steel, { kind: "fixed" }));
    expect(spring).toMatchObject({ pull: 200, height: 900 });
    expect(spring.movement - fixed.movement).toBeCloseTo(1.62, 9);
  });
});
