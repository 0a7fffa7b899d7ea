// Source: worked by hand here, from statics alone, and compared with the program.
//
// A sphere of diameter S is pushed midway between two equal cables of diameter D at a spacing 2a. Put c = (S + D)/2. With the sphere's
// centre at the distance t from the cables' plane, contact without friction pushes each cable along the line from the centre to it. A cable
// that answers alike in all directions moves along that line, so its place of rest, its new place and the centre lie on one line:
//   r^2 = a^2 + t^2,  deflection d = c - r,  push F = 2 P(d) t / r.
// With P = k d:  F(r) = 2 k (c - r) sqrt(r^2 - a^2) / r.
// Greatest where d/dr ln F = -1/(c - r) + r/(r^2 - a^2) - 1/r = 0, that is a^2 (c - r) = r (r^2 - a^2), so r^3 = c a^2, and
//   F = 2 k c [1 - (a/c)^(2/3)]^(3/2).
// Below, the greatest value is found by walking along the travel t, not by these steps.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lateralResponse } from "../../../src/mechanics/lateral.ts";
import { pushThroughBesideRail, pushThroughForce } from "../../../src/mechanics/push-through.ts";

interface Walk {
  readonly a: number;
  readonly c: number;
  readonly answer: (deflection: number) => number;
}

/** Greatest push along the travel: a walk of 400 steps, then ever finer walks around the best step. */
function greatestPush({ a, c, answer }: Walk): number {
  const push = (t: number): number => {
    const r = Math.hypot(a, t);
    return r >= c ? 0 : (2 * answer(c - r) * t) / r;
  };
  let [from, to] = [0, Math.sqrt(c * c - a * a)];
  let best = 0;
  for (let round = 0; round < 8; round++) {
    const step = (to - from) / 400;
    let place = from;
    for (let index = 0; index <= 400; index++) {
      const t = from + index * step;
      if (push(t) > best) [best, place] = [push(t), t];
    }
    [from, to] = [Math.max(0, place - step), place + step];
  }
  return best;
}

const push = {
  solid: { kind: "sphere", diameter: 101.6 },
  spacing: 76.2,
  cableDiameter: 3.175,
  span: 914.4,
  tension: 1000,
  stiffness: 782e3,
  runLength: 6096,
  support: "sliding",
} as const;
const a = push.spacing / 2;
const c = (push.solid.diameter + push.cableDiameter) / 2;

describe("pushThroughForce", () => {
  it("the closed form is the greatest push along the travel on springs of 4T/L, to 1e-9, for any sphere and spacing", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.98, noNaN: true }), fc.double({ min: 20, max: 150, noNaN: true }), (share, diameter) => {
        const widest = (diameter + push.cableDiameter) / 2;
        const k = (4 * push.tension) / push.span;
        const walked = greatestPush({ a: share * widest, c: widest, answer: (d) => k * d });
        const { linear } = pushThroughForce({ ...push, solid: { kind: "sphere", diameter }, spacing: 2 * share * widest });
        expect(Math.abs((linear ?? 0) / walked - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it("with the rise of tension the peak is the greatest push along the travel, to 1e-9: sliding and held", () => {
    for (const support of ["sliding", "held"] as const) {
      const walked = greatestPush({ a, c, answer: (deflection) => lateralResponse({ ...push, support, deflection }).force });
      expect(Math.abs(pushThroughForce({ ...push, support }).force / walked - 1)).toBeLessThan(1e-9);
    }
  });

  it("the linear peak lies at the distance (c a^2)^(1/3) of the centres, so the deflection there is c less that", () => {
    // An inextensible answer is linear only for a long run and a small deflection: a run 1e6 times the span, a span of 100 m.
    const long = pushThroughForce({ ...push, span: 1e5, runLength: 1e11 });
    expect(long.cableDeflection).toBeCloseTo(c - (c * a * a) ** (1 / 3), 4);
    expect((long.linear ?? 0) / long.force).toBeCloseTo(1, 5);
  });

  it("slack wires answer with the cube of the deflection: F = 2 k3 (c - r)^3 t / r, greatest along the travel", () => {
    const answer = (deflection: number): number => lateralResponse({ ...push, tension: 0, deflection }).force;
    const walked = greatestPush({ a, c, answer });
    expect(Math.abs(pushThroughForce({ ...push, tension: 0 }).force / walked - 1)).toBeLessThan(1e-9);
  });
});

describe("pushThroughForce with friction", () => {
  // The contact force leans from the normal by atan(mu) towards the push, and the cable gives way along the force. So for a given travel the
  // cable lies where the step from its place of rest, (c cos n - a, c sin n - t), has the direction n + atan(mu): found by halving in n.
  const phi = Math.atan(0.2);
  const start = Math.acos(a / c);

  function pushAt(t: number): number {
    const step = (n: number): readonly [number, number] => [c * Math.cos(n) - a, c * Math.sin(n) - t];
    let [low, high] = [Math.atan2(t, a), start];
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2;
      const [across, ahead] = step(middle);
      if (Math.atan2(ahead, across) - middle - phi < 0) low = middle;
      else high = middle;
    }
    const [across, ahead] = step(low);
    const deflection = Math.hypot(across, ahead);
    return (2 * lateralResponse({ ...push, deflection }).force * ahead) / deflection;
  }

  it("friction 0.2 on the sphere gives the greatest push along the travel, to 1e-7, and more than without friction", () => {
    const first = Math.sqrt(c * c - a * a);
    const walked = Math.max(...Array.from({ length: 4000 }, (_, index) => pushAt((first * (index + 1)) / 4001)));
    const computed = pushThroughForce({ ...push, friction: 0.2 }).force;
    expect(Math.abs(computed / walked - 1)).toBeLessThan(1e-7);
    expect(computed).toBeGreaterThan(pushThroughForce(push).force);
  });
});

describe("pushThroughBesideRail", () => {
  it("a rail 70 mm from the cable guides a sphere of 101.6 mm: half the greatest push of two cables at 2 (70 - 50.8) mm", () => {
    const offset = 70 - push.solid.diameter / 2;
    const walked = greatestPush({ a: offset, c, answer: (deflection) => lateralResponse({ ...push, deflection }).force }) / 2;
    expect(Math.abs(pushThroughBesideRail({ ...push, gap: 70 }).force / walked - 1)).toBeLessThan(1e-9);
  });
});
