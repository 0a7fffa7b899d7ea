// Source: reference solutions of the order of tightening, made with numpy and scipy (cables as springs with fixed take-ups on a linear
// frame, slack allowed) and checked with CalculiX 2.20 (tests/support/reference-cases.json). Each case states its own tolerance.
// All cables start slack; each is pulled until its gauge reads the target and then keeps its take-up; errors are judged after whole passes.
import { describe, expect, it } from "vitest";
import { type SequenceCaseOrder, solveSequenceCase } from "../../src/mechanics/cases/sequence-case.ts";
import { type FrameCase, frameCases, type OrderOutput, shareOf } from "../support/reference-cases.ts";

interface Compared {
  readonly one: FrameCase;
  readonly what: string;
}

function expectNear(
  computed: readonly number[],
  reference: readonly number[],
  { within, what }: { readonly within: number; readonly what: string },
): void {
  expect.soft(computed, what).toHaveLength(reference.length);
  for (const [index, value] of reference.entries()) {
    expect
      .soft(Math.abs((computed[index] ?? Number.NaN) - value), `${what} ${index + 1}: ${computed[index]} against ${value}`)
      .toBeLessThanOrEqual(within);
  }
}

function expectOrder(found: SequenceCaseOrder, reference: OrderOutput, { one, what }: Compared): void {
  const target = one.in.target.N;
  const tension = shareOf(one, "tensions");
  const reading = shareOf(one, "step_targets");
  expect.soft(found.order, what).toEqual(reference.order);
  expect.soft(found.slack_after_one_pass, what).toEqual(reference.slack_after_one_pass);
  expect.soft(found.passes_to_5pct, what).toBe(reference.passes_to_5pct);
  expect.soft(found.passes_to_10pct, what).toBe(reference.passes_to_10pct);
  const pairs = [
    ["tension_after_one_pass", tension * target],
    ["one_pass_step_targets_by_cable", reading * target],
    ["second_pass_step_targets_by_cable", reading * target],
  ] as const;
  for (const [key, within] of pairs) expectNear(found[key].N, reference[key].N, { within, what: `${what}, ${key}` });
  expectNear(found.least_over_target_by_pass, reference.least_over_target_by_pass, { within: tension, what: `${what}, least by pass` });
  for (const key of ["first_cable_left_with", "least_over_target", "mean_over_target"] as const) {
    expectNear([found[key]], [reference[key]], { within: tension, what: `${what}, ${key}` });
  }
  for (const key of ["largest_step_target_over_target", "largest_second_pass_target_over_target"] as const) {
    expectNear([found[key]], [reference[key]], { within: reading, what: `${what}, ${key}` });
  }
  for (const [key, error] of Object.entries(reference)) {
    if (key.startsWith("worst_error_at_pass_") && typeof error === "number") {
      expectNear([found[key as `worst_error_at_pass_${number}`] ?? Number.NaN], [error], { within: tension, what: `${what}, ${key}` });
    }
  }
}

describe("solveSequenceCase against reference solutions", () => {
  it("has all 5 frames, with four orders each", () => {
    expect(frameCases.map(({ out }) => Object.keys(out.orders).length)).toEqual([4, 4, 4, 4, 4]);
  });

  it.each(frameCases)(
    "$id: $in.cable_heights.mm.length cables of $in.target.N N over $in.run_between_anchorages.mm mm, from the frame's own data",
    (one) => {
      for (const [name, found] of Object.entries(solveSequenceCase(one.in).orders)) {
        const reference = one.out.orders[name];
        if (reference === undefined) throw new Error(`${one.id} has no order ${name}`);
        expectOrder(found, reference, { one, what: `${one.id} ${name}` });
      }
    },
  );

  it.each(frameCases)("$id: the same from the reference's own flexibility, to the digits that it prints", (one) => {
    for (const [name, found] of Object.entries(solveSequenceCase(one.in, one.out.flexibility_F["mm/N"]).orders)) {
      const reference = one.out.orders[name]?.one_pass_step_targets_by_cable.N ?? [];
      expectNear(found.one_pass_step_targets_by_cable.N, reference, { within: 1e-5, what: `${one.id} ${name}` });
    }
  });

  it("a frame so soft that plain passes never come within 5 %: no number of passes is named, and no error for it", () => {
    const [{ in: input }] = frameCases as [FrameCase];
    const [n, F] = [input.cable_heights.mm.length, 10];
    const { bottom_to_top } = solveSequenceCase(
      input,
      Array.from({ length: n }, () => Array.from({ length: n }, () => F)),
    ).orders;
    expect(bottom_to_top).toMatchObject({ passes_to_5pct: null, passes_to_10pct: null });
    expect(Object.keys(bottom_to_top).filter((key) => key.startsWith("worst"))).toEqual([]);
  });
});
