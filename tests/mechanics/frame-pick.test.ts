import { describe, expect, it } from "vitest";
import { pick } from "../../src/mechanics/frame-pick.ts";

describe("pick", () => {
  it("gives what stands there, and refuses a place that a list does not have, naming it", () => {
    expect(pick([4, 0], 1)).toBe(0);
    expect(() => pick([4, 0], 2)).toThrow("there is no entry 2");
    expect(() => pick([], 0, "post")).toThrow("there is no post 0");
  });
});
