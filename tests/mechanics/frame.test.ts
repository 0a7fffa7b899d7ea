import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alongMember, solveFrame } from "../../src/mechanics/frame.ts";
import type { Frame, FrameNode, FrameResponse, LoadCase } from "../../src/mechanics/frame-model.ts";

const EI = 2e10;
const EA = 8e7;
const L = 2000;
const fixed = { x: "fixed", y: "fixed", rotation: "fixed" } as const;
const propped = { y: "fixed" } as const;

/** A level member of 2 m between two supports. */
const beam = (left: FrameNode["support"], right: FrameNode["support"], more: Partial<Frame["members"][number]> = {}): Frame => ({
  nodes: [
    { x: 0, y: 0, ...(left && { support: left }) },
    { x: L, y: 0, ...(right && { support: right }) },
  ],
  members: [{ from: 0, to: 1, EA, EI, ...more }],
});

function solve(frame: Frame, load: LoadCase) {
  const [response] = solveFrame(frame, [load]);
  if (response === undefined) throw new Error("no response");
  return { response, at: (member: number, at: number) => alongMember({ frame, load, response }, member)(at) };
}

const node = (response: FrameResponse, index: number) => response.nodes[index] ?? { x: Number.NaN, y: Number.NaN, rotation: Number.NaN };
const reaction = (response: FrameResponse, index: number) =>
  response.reactions[index] ?? { x: Number.NaN, y: Number.NaN, moment: Number.NaN };
const expectShare = (computed: number, expected: number, share = 1e-9): void =>
  expect.soft(Math.abs(computed - expected), `${computed} against ${expected}`).toBeLessThanOrEqual(share * Math.abs(expected));

describe("solveFrame", () => {
  it("a cantilever of 2 m with 500 N at 1.3 m: tip P a^2 (3 L - a) / 6 EI, base moment P a (beam tables)", () => {
    const { response } = solve(beam(fixed, undefined), { onMembers: [{ member: 0, at: 1300, y: 500 }] });
    expectShare(node(response, 1).y, (500 * 1300 ** 2 * (3 * L - 1300)) / (6 * EI));
    expectShare(reaction(response, 0).moment, -500 * 1300);
    expectShare(reaction(response, 0).y, -500);
  });

  it("with shear, the same cantilever's tip goes P a / GA further (Timoshenko, constant shear force up to the load)", () => {
    const GA = 3e6;
    const { response } = solve(beam(fixed, undefined, { GA }), { onMembers: [{ member: 0, at: 1300, y: 500 }] });
    expectShare(node(response, 1).y, (500 * 1300 ** 2 * (3 * L - 1300)) / (6 * EI) + (500 * 1300) / GA);
  });

  it("a beam fixed at both ends with 500 N in the middle: P L^3 / 192 EI + P L / 4 GA, end moments P L / 8 (beam tables; shear by hand)", () => {
    const GA = 3e6;
    const { response, at } = solve(beam(fixed, fixed, { GA }), { onMembers: [{ member: 0, at: L / 2, y: -500 }] });
    expectShare(at(0, L / 2).y, (-500 * L ** 3) / (192 * EI) - (500 * L) / (4 * GA));
    expectShare(reaction(response, 0).moment, (500 * L) / 8);
    expectShare(reaction(response, 1).moment, (-500 * L) / 8);
    expectShare(at(0, L / 2).moment, (500 * L) / 8);
    expect(at(0, L / 2).rotation).toBeCloseTo(0, 12);
  });

  it("an even load of 3 N/mm on a propped cantilever: prop 3 w L / 8, base w L^2 / 8; the same with a hinge instead of the free turn", () => {
    const load = { even: [{ member: 0, y: -3 }] };
    for (const frame of [beam(fixed, propped), beam(fixed, { y: "fixed", rotation: "fixed" }, { hingedTo: true })]) {
      const { response, at } = solve(frame, load);
      expectShare(reaction(response, 1).y, (3 * 3 * L) / 8);
      expectShare(reaction(response, 0).moment, (3 * L ** 2) / 8);
      // Beam tables: deflection at x from the fixed end w x^2 (3 L^2 - 5 L x + 2 x^2) / 48 EI.
      expectShare(at(0, 800).y, (-3 * 800 ** 2 * (3 * L ** 2 - 5 * L * 800 + 2 * 800 ** 2)) / (48 * EI), 1e-8);
    }
    const mirrored = solve(beam({ x: "fixed", y: "fixed", rotation: "fixed" }, fixed, { hingedFrom: true }), load);
    expectShare(reaction(mirrored.response, 1).moment, (-3 * L ** 2) / 8);
    expectShare(mirrored.at(0, L - 800).y, (-3 * 800 ** 2 * (3 * L ** 2 - 5 * L * 800 + 2 * 800 ** 2)) / (48 * EI), 1e-8);
  });

  it("a couple of 1e6 N mm in the middle of a beam on two supports: reactions M / L, slope there M L / 12 EI, moment M / 2 on each side", () => {
    const frame = beam({ x: "fixed", y: "fixed" }, propped);
    const { response, at } = solve(frame, { onMembers: [{ member: 0, at: L / 2, moment: 1e6 }] });
    expectShare(reaction(response, 0).y, 1e6 / L);
    expectShare(reaction(response, 1).y, -1e6 / L);
    expectShare(at(0, L / 2).rotation, (1e6 * L) / (12 * EI));
    expectShare(at(0, L / 2).moment, 1e6 / 2);
    expectShare(at(0, L / 2 + 1e-6).moment, -1e6 / 2, 1e-8);
    expect(at(0, L / 2).y).toBeCloseTo(0, 9);
    // Shear lets such a beam turn as a whole and so leaves the middle where it is.
    const soft = beam({ x: "fixed", y: "fixed" }, propped, { GA: 1e6 });
    const soft_at = solve(soft, { onMembers: [{ member: 0, at: L / 2, moment: 1e6 }] }).at;
    expect(soft_at(0, L / 2).y).toBeCloseTo(0, 9);
    expect(soft_at(0, L).y).toBeCloseTo(0, 9);
  });

  it("a couple and a force at a free end: M L^2 / 2 EI and P L^3 / 3 EI", () => {
    const { response } = solve(beam(fixed, undefined), {
      atNodes: [
        { node: 1, moment: 1e6 },
        { node: 1, y: 100, x: 40 },
      ],
    });
    expectShare(node(response, 1).y, (1e6 * L ** 2) / (2 * EI) + (100 * L ** 3) / (3 * EI));
    expectShare(node(response, 1).x, (40 * L) / EA);
  });

  it("an end that settles by 5 mm between fixed ends: moments 6 EI d / L^2; one that turns by 0.01: 4 EI t / L and 2 EI t / L", () => {
    const sunk = solve(beam(fixed, fixed), { settlements: [{ node: 1, y: -5 }] }).response;
    expectShare(reaction(sunk, 0).moment, (6 * EI * 5) / L ** 2);
    const turned = solve(beam(fixed, fixed), { settlements: [{ node: 1, rotation: 0.01 }] }).response;
    expectShare(reaction(turned, 1).moment, (4 * EI * 0.01) / L);
    expectShare(reaction(turned, 0).moment, (2 * EI * 0.01) / L);
    expect(node(turned, 1).rotation).toBe(0.01);
  });

  it("warmth between fixed ends pushes with EA e and moves nothing; with a free end it lengthens by e L and pushes nothing", () => {
    const strains = [{ member: 0, strain: 1e-4 }];
    const held = solve(beam(fixed, fixed), { strains });
    expectShare(held.at(0, 700).tension, -EA * 1e-4);
    expect(held.at(0, 700).x).toBeCloseTo(0, 12);
    const free = solve(beam(fixed, undefined), { strains });
    expectShare(node(free.response, 1).x, 1e-4 * L);
    expectShare(free.at(0, 700).x, 1e-4 * 700);
    expect(free.at(0, 700).tension).toBeCloseTo(0, 6);
  });

  it("loads along a member: 100 N at 0.6 m and 0.2 N/mm stretch it by (P a + n L^2 / 2) / EA", () => {
    const { response, at } = solve(beam(fixed, undefined), { onMembers: [{ member: 0, at: 600, x: 100 }], even: [{ member: 0, x: 0.2 }] });
    expectShare(node(response, 1).x, (100 * 600 + (0.2 * L ** 2) / 2) / EA);
    expectShare(at(0, 1000).x, (100 * 600 + 0.2 * (L * 1000 - 1000 ** 2 / 2)) / EA);
    expectShare(at(0, 1000).tension, 0.2 * 1000);
    expectShare(at(0, 500).tension, 100 + 0.2 * 1500);
  });

  it("springs: 40 N/mm under the tip of a cantilever is a second spring beside 3 EI / L^3; a base of 1e8 N mm/rad adds P L^2 / k", () => {
    const { response } = solve(beam(fixed, { y: 40 }), { atNodes: [{ node: 1, y: 100 }] });
    expectShare(node(response, 1).y, 100 / (40 + (3 * EI) / L ** 3));
    expectShare(reaction(response, 1).y, (-40 * 100) / (40 + (3 * EI) / L ** 3));
    const soft = solve(beam({ ...fixed, rotation: 1e8 }, undefined), { atNodes: [{ node: 1, y: 100 }] }).response;
    expectShare(node(soft, 1).y, (100 * L ** 3) / (3 * EI) + (100 * L ** 2) / 1e8);
  });

  it("a portal of equal posts, fixed bases, rigid corners, pushed by H at its head: base moments H h (3 k + 1) / (2 (6 k + 1)) (frame tables, from memory)", () => {
    const [h, l, H] = [1000, 3000, 700];
    const [post, rail] = [EI, 5e9];
    const stiff = 1e13;
    const frame: Frame = {
      nodes: [
        { x: 0, y: 0, support: fixed },
        { x: 0, y: h },
        { x: l, y: h },
        { x: l, y: 0, support: fixed },
      ],
      members: [
        { from: 0, to: 1, EA: stiff, EI: post },
        { from: 1, to: 2, EA: stiff, EI: rail },
        { from: 3, to: 2, EA: stiff, EI: post },
      ],
    };
    const { response } = solve(frame, { atNodes: [{ node: 1, x: H }] });
    const k = (rail / post) * (h / l);
    const base = (H * h * (3 * k + 1)) / (2 * (6 * k + 1));
    expectShare(reaction(response, 0).moment, base, 1e-5);
    expectShare(reaction(response, 3).moment, base, 1e-5);
    expectShare(reaction(response, 0).x, -H / 2, 1e-5);
  });

  it("a bar leaning at 3 to 4 carries 100 N down as 125 N along it, and its hinges turn with nothing", () => {
    const frame: Frame = {
      nodes: [
        { x: 0, y: 0, support: { x: "fixed", y: "fixed" } },
        { x: 300, y: 400, support: { x: "fixed" } },
      ],
      members: [{ from: 0, to: 1, EA, EI: 0, hingedFrom: true, hingedTo: true }],
    };
    const { response, at } = solve(frame, { atNodes: [{ node: 1, y: -100 }] });
    expectShare(at(0, 250).tension, -125);
    expectShare(reaction(response, 1).x, -75);
    expectShare(at(0, 250).y, node(response, 1).y / 2);
    expect(at(0, 250).moment).toBe(0);
    expect(node(response, 1).rotation).toBe(0);
    expect(() => solveFrame(frame, [{ atNodes: [{ node: 1, moment: 1 }] }])).toThrow("nothing turns with node 1");
  });

  it("a cantilever in two pieces carries a load and a couple at its third node: P L^3 / 3 EI + M L^2 / 2 EI; on a hinge no couple can act there", () => {
    const pieces = (hingedTo: boolean): Frame => ({
      nodes: [
        { x: 0, y: 0, support: fixed },
        { x: 800, y: 0 },
        { x: L, y: 0 },
      ],
      members: [
        { from: 0, to: 1, EA, EI },
        { from: 1, to: 2, EA, EI, hingedTo },
      ],
    });
    const { response } = solve(pieces(false), { atNodes: [{ node: 2, x: 70, y: 100, moment: 4e4 }] });
    expectShare(node(response, 2).y, (100 * L ** 3) / (3 * EI) + (4e4 * L ** 2) / (2 * EI));
    expectShare(node(response, 2).x, (70 * L) / EA);
    expectShare(reaction(response, 0).moment, -100 * L - 4e4);
    expect(() => solveFrame(pieces(true), [{ atNodes: [{ node: 2, moment: 1 }] }])).toThrow("nothing turns with node 2");
  });

  it("a load on a support goes straight into it and moves nothing", () => {
    const { response } = solve(beam(fixed, propped), { atNodes: [{ node: 0, x: 30, y: -40, moment: 500 }] });
    expect(response.reactions[0]).toEqual({ x: -30, y: 40, moment: -500 });
    expect(node(response, 1).rotation).toBe(0);
  });

  it("a frame whose every node is fast still hands its loads to the supports", () => {
    const { response } = solve(beam(fixed, fixed), { onMembers: [{ member: 0, at: 500, y: -80 }] });
    // Beam tables: P b^2 (3 a + b) / L^3.
    expectShare(reaction(response, 0).y, (80 * 1500 ** 2 * (3 * 500 + 1500)) / L ** 3);
  });

  it("refuses a frame that can move freely, naming node and direction", () => {
    expect(() => solveFrame(beam({ y: "fixed" }, propped), [{}])).toThrow("mechanism: node 1 can move freely in x");
    expect(() => solveFrame(beam({ x: "fixed", y: "fixed" }, undefined), [{}])).toThrow(/mechanism: node 1 can move freely in rotation/);
  });

  it("refuses what names no node or member, and a settlement where nothing is fixed", () => {
    const frame = beam(fixed, propped);
    expect(() => solveFrame(frame, [{ atNodes: [{ node: 2, x: 1 }] }])).toThrow("no node 2");
    expect(() => solveFrame(frame, [{ onMembers: [{ member: 1, at: 0, x: 1 }] }])).toThrow("no member 1");
    expect(() => solveFrame(frame, [{ settlements: [{ node: 1, x: 1 }] }])).toThrow("node 1 is not fixed in x");
    expect(() => solveFrame({ ...frame, members: [{ from: 0, to: 5, EA, EI }] }, [{}])).toThrow("no node 5");
    expect(() => solveFrame(beam(fixed, undefined, { hingedTo: true }), [{ atNodes: [{ node: 1, moment: 1 }] }])).toThrow(RangeError);
  });

  const loads = fc.array(
    fc.record({
      member: fc.integer({ min: 0, max: 3 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      x: fc.integer({ min: -900, max: 900 }),
      y: fc.integer({ min: -900, max: 900 }),
      moment: fc.integer({ min: -90_000, max: 90_000 }),
    }),
    { minLength: 1, maxLength: 4 },
  );
  /** Two posts, a rail with a hinge and a strut: all kinds of joints. */
  const mixed: Frame = {
    nodes: [
      { x: 0, y: 0, support: { x: "fixed", y: "fixed", rotation: 5e8 } },
      { x: 20, y: 900 },
      { x: 1500, y: 950 },
      { x: 1400, y: -50, support: fixed },
      { x: 700, y: 0, support: { x: "fixed", y: 3000, rotation: "fixed" } },
    ],
    members: [
      { from: 0, to: 1, EA, EI, GA: 4e6 },
      { from: 1, to: 2, EA, EI: EI / 4, hingedFrom: true },
      { from: 3, to: 2, EA, EI, hingedTo: true },
      { from: 4, to: 1, EA: EA / 9, EI: EI / 30, hingedFrom: true, hingedTo: true },
    ],
  };
  const lengths = mixed.members.map(({ from, to }) => {
    const [a, b] = [mixed.nodes[from], mixed.nodes[to]];
    return Math.hypot((b?.x ?? 0) - (a?.x ?? 0), (b?.y ?? 0) - (a?.y ?? 0));
  });

  it("law: loads and reactions balance in both directions and in turning, wherever the loads stand", () => {
    fc.assert(
      fc.property(loads, (list) => {
        const onMembers = list.map(({ share, ...load }) => ({ ...load, at: share * (lengths[load.member] ?? 0) }));
        const { response } = solve(mixed, { onMembers });
        let [x, y, turn, size] = [0, 0, 0, 1];
        for (const [index, force] of response.reactions.entries()) {
          const place = mixed.nodes[index] ?? { x: 0, y: 0 };
          x += force.x;
          y += force.y;
          turn += force.moment + place.x * force.y - place.y * force.x;
        }
        for (const load of onMembers) {
          const member = mixed.members[load.member] ?? { from: 0, to: 0 };
          const [a, b] = [mixed.nodes[member.from] ?? { x: 0, y: 0 }, mixed.nodes[member.to] ?? { x: 0, y: 0 }];
          const share = load.at / (lengths[load.member] ?? 1);
          const [px, py] = [a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)];
          x += load.x;
          y += load.y;
          turn += load.moment + px * load.y - py * load.x;
          size += Math.abs(load.x) + Math.abs(load.y) + Math.abs(load.moment) / 1000;
        }
        for (const rest of [x, y, turn / 1000]) expect(Math.abs(rest)).toBeLessThanOrEqual(1e-8 * size);
      }),
    );
  });

  it("law: the work of one load on the movement of another is the same the other way round, at any two places of any two members", () => {
    const place = fc.record({ member: fc.integer({ min: 0, max: 3 }), share: fc.double({ min: 0, max: 1, noNaN: true }) });
    fc.assert(
      fc.property(place, place, (one, other) => {
        const at = (spot: typeof one) => ({ member: spot.member, at: spot.share * (lengths[spot.member] ?? 0) });
        const [first, second] = [at(one), at(other)];
        const x_first = solve(mixed, { onMembers: [{ ...second, y: 1000 }] }).at(first.member, first.at).x;
        const y_second = solve(mixed, { onMembers: [{ ...first, x: 1000 }] }).at(second.member, second.at).y;
        expect(Math.abs(x_first - y_second)).toBeLessThanOrEqual(1e-9);
      }),
    );
  });

  it("law: a member cut in two by a node in it answers the same", () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 1900, noNaN: true }), fc.double({ min: 0, max: 2000, noNaN: true }), (cut, at) => {
        const GA = 2e6;
        const load = { even: [{ member: 0, y: -2 }] };
        const whole = solve(beam(fixed, { y: 500 }, { GA }), { ...load, onMembers: [{ member: 0, at: cut, y: -300, moment: 4e4 }] });
        const frame: Frame = {
          nodes: [
            { x: 0, y: 0, support: fixed },
            { x: cut, y: 0 },
            { x: L, y: 0, support: { y: 500 } },
          ],
          members: [
            { from: 0, to: 1, EA, EI, GA },
            { from: 1, to: 2, EA, EI, GA },
          ],
        };
        const halves = solve(frame, {
          even: [
            { member: 0, y: -2 },
            { member: 1, y: -2 },
          ],
          atNodes: [{ node: 1, y: -300, moment: 4e4 }],
        });
        const [mine, theirs] = [whole.at(0, at), at <= cut ? halves.at(0, at) : halves.at(1, at - cut)];
        expect(mine.y).toBeCloseTo(theirs.y, 9);
        expect(mine.rotation).toBeCloseTo(theirs.rotation, 11);
        expect(Math.abs(mine.moment - theirs.moment)).toBeLessThanOrEqual(1e-3);
      }),
    );
  });
});

describe("alongMember", () => {
  it("refuses a place off the member and a member that is not there", () => {
    const { at } = solve(beam(fixed, undefined), {});
    expect(() => at(0, -1)).toThrow("not on the member");
    expect(() => at(0, L + 1)).toThrow(RangeError);
    expect(() => at(1, 0)).toThrow("no member 1");
  });
});
