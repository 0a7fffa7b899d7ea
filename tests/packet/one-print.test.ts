// Is a force printed alike wherever it stands? Each print of a force is kept with its exact value, over all sheets of all examples.
import { expect, test, vi } from "vitest";
import type { UnitSystem } from "../../src/job/job.ts";
import type { Plan } from "../../src/plan/plan.ts";
import type { force as printForce } from "../../src/units/print.ts";
import { examples, issues, packetOf } from "./read-packet.ts";

const printed = vi.hoisted((): { readonly value: number; readonly units: UnitSystem; readonly text: string }[] => []);

vi.mock("../../src/units/print.ts", async (original) => {
  const real = await original<typeof import("../../src/units/print.ts")>();
  const force: typeof printForce = (value, units, options) => {
    const text = real.force(value, units, options);
    printed.push({ value, units, text });
    return text;
  };
  return { ...real, force };
});

/** Values that are one but for the dust of arithmetic. */
const keyOf = (value: number, units: UnitSystem): string => `${value.toPrecision(10)} N in a job in ${units}`;

function textsByValue(): ReadonlyMap<string, { readonly first: Set<string>; readonly both: Set<string> }> {
  const found = new Map<string, { readonly first: Set<string>; readonly both: Set<string> }>();
  for (const { value, units, text } of printed) {
    const key = keyOf(value, units);
    const texts = found.get(key) ?? { first: new Set(), both: new Set() };
    found.set(key, texts);
    texts.first.add(text.replace(/ \(.*/, ""));
    if (text.includes("(")) texts.both.add(text);
  }
  return found;
}

/**
 * The most that a step of one run may read, rounded down, and the load of a check of another run, rounded up, may happen to be one value:
 * they are two numbers to whoever reads them.
 */
const chanced = ({ tightening, checks, job: { units } }: Plan): ReadonlySet<string> =>
  new Set(
    tightening.flatMap(({ runId, steps }) => {
      const others = checks
        .filter(({ id }) => /-R\d+/.test(id) && !id.includes(`-${runId}`))
        .map(({ demand }) => keyOf(demand?.value ?? 0, units));
      return steps.map(({ reading_high }) => keyOf(reading_high, units)).filter((key) => others.includes(key));
    }),
  );

test("one force has one number, and one in the other unit behind it, on all sheets of all issues of all examples", () => {
  for (const [, plan] of examples) for (const issue of issues) packetOf(plan, issue, true);
  const texts = textsByValue();
  const twice = new Set(examples.flatMap(([, plan]) => [...chanced(plan)]));
  expect(texts.size).toBeGreaterThan(1000);
  for (const [value, { first, both }] of texts) {
    if (!twice.has(value)) expect.soft([...first], value).toHaveLength(1);
    expect.soft(both.size, `${value}: ${[...both].join(", ")}`).toBeLessThanOrEqual(1);
  }
});
