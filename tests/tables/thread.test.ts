import { describe, expect, it } from "vitest";
import { stressArea, threadNames, threadOf } from "../../src/tables/thread.ts";

describe("threadOf", () => {
  it("1/4-28 has 28 threads to the inch: pitch 25.4/28 mm, read as 0.03571 in (UNF table)", () => {
    const thread = threadOf("1/4-28");
    expect(thread).toMatchObject({ source: "unified-thread-table", value: { form: "unified", diameter: 6.35 } });
    expect((thread?.value.pitch ?? 0) / 25.4).toBeCloseTo(0.03571, 5);
  });

  it("lets a space, a small m and a multiplication sign pass: M 6 x 1", () => {
    expect(threadOf("m 6 \u00d7 1")?.value).toEqual({ name: "M6x1", form: "metric", diameter: 6, pitch: 1 });
  });

  it("knows no 1/4-24", () => {
    expect(threadOf("1/4-24")).toBeNull();
  });

  it("finds each of its names", () => {
    expect(threadNames).toHaveLength(11);
    for (const name of threadNames) expect(threadOf(name)?.value.name).toBe(name);
  });
});

describe("stressArea", () => {
  it("of a thread without depth is the full circle: pi/4 d^2", () => {
    expect(stressArea({ form: "metric", diameter: 10, pitch: 0 })).toBeCloseTo(25 * Math.PI, 12);
    expect(stressArea({ form: "unified", diameter: 10, pitch: 0 })).toBeCloseTo(25 * Math.PI, 12);
  });
});
