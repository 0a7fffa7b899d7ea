import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bottomToTop } from "../../src/mechanics/sequence-order.ts";
import { chooseProgramme, type ProgrammeLimits } from "../../src/mechanics/sequence-programme.ts";
import { endFrame, randomFrames, systemOf } from "../support/cable-frames.ts";

const even = (count: number, value: number): readonly number[] => Array.from({ length: count }, () => value);
/** 8 cables with r = 0.1: one compensated pass is stopped at 1636 N first (T (1 + n r) / (1 + r)). */
const task = { order: bottomToTop(8), target: even(8, 1000) };
const limits = (working: number, more: Partial<ProgrammeLimits> = {}): ProgrammeLimits => ({
  working: even(8, working),
  movement: [],
  passes_max: 3,
  ...more,
});
const FIRST_N = (1000 * 1.8) / 1.1;

describe("chooseProgramme", () => {
  it("a working limit of 1640 N is enough for one compensated pass, whose highest reading is 1636 N at its first step", () => {
    const found = chooseProgramme(endFrame(8, 0.1), task, limits(1640));
    if (!found.fits) throw new Error("refused");
    expect(found.chosen.passes).toEqual([{ kind: "compensated" }]);
    expect(found.chosen.highest_overTarget).toBeCloseTo(FIRST_N / 1000, 9);
    expect(found.chosen.reading).toEqual({ overLimit: expect.closeTo(FIRST_N / 1640, 9), pass: 1, step: 1, cable: 0 });
    expect(found.chosen.steps).toHaveLength(8);
    expect(found.tried).toHaveLength(1);
  });

  it("with 1600 N it takes a plain pass before the compensated one, and ends at target without a reading above 1600 N", () => {
    const found = chooseProgramme(endFrame(8, 0.1), task, limits(1600));
    if (!found.fits) throw new Error("refused");
    expect(found.chosen.passes.map(({ kind }) => kind)).toEqual(["plain", "compensated"]);
    for (const tension of found.chosen.steps.at(-1)?.tensions ?? []) expect(tension).toBeCloseTo(1000, 6);
    for (const { reading } of found.chosen.steps) expect(reading).toBeLessThan(1600);
    // One pass, then full plain passes and even stages: 1/2 of the target of two, 1/3 and 2/3 of three.
    const plain = (share: number) => ({ kind: "plain", share: expect.closeTo(share, 12) });
    const last = { kind: "compensated" };
    expect(found.tried.map(({ passes }) => passes)).toEqual([[last], [plain(1), last], [plain(1 / 2), last]]);
    const three = chooseProgramme(endFrame(8, 2), task, limits(1000.001)).tried.slice(3);
    expect(three.map(({ passes }) => passes)).toEqual([
      [plain(1), plain(1), last],
      [plain(1 / 3), plain(2 / 3), last],
    ]);
  });

  it("refuses 1010 N in two passes, names cable and step, and says how many passes or which share of the target would do", () => {
    const found = chooseProgramme(endFrame(8, 0.1), task, limits(1010, { passes_max: 2 }));
    if (found.fits) throw new Error("accepted");
    expect(found.broken).toBe("reading");
    expect(found.nearest.reading).toMatchObject({ pass: 2 });
    expect(found.nearest.reading.overLimit).toBeGreaterThan(1);
    expect(task.order[found.nearest.reading.step - 1]).toBe(found.nearest.reading.cable);
    expect(found.tried).toHaveLength(3);
    const { morePasses, targetShare } = found.alternatives;
    expect(morePasses?.passes.length).toBeGreaterThan(2);
    expect(morePasses?.fits).toBe(true);
    expect(targetShare).toBeLessThan(1);
    const lower = { ...task, target: even(8, 1000 * targetShare) };
    expect(chooseProgramme(endFrame(8, 0.1), lower, limits(1010, { passes_max: 2 })).fits).toBe(true);
    const alittleMore = { ...task, target: even(8, 1000 * targetShare * 1.001) };
    expect(chooseProgramme(endFrame(8, 0.1), alittleMore, limits(1010, { passes_max: 2 })).fits).toBe(false);
  });

  it.each([
    [8, 0.1, 1010],
    [4, 1, 1001],
  ])("of %i cables with r = %d at %i N the passes that are offered are the fewest, and none beyond six more", (count, r, working) => {
    const one = { order: bottomToTop(count), target: even(count, 1000) };
    const within = (passes_max: number) =>
      chooseProgramme(endFrame(count, r), one, { working: even(count, working), movement: [], passes_max });
    const all = within(30);
    if (!all.fits) throw new Error("refused");
    const fewest = all.chosen.passes.length;
    for (const passes_max of [fewest - 1, fewest - 6, fewest - 7].filter((passes) => passes >= 1)) {
      const found = within(passes_max);
      if (found.fits) throw new Error("accepted");
      expect(found.alternatives.morePasses?.passes.length).toBe(fewest - passes_max > 6 ? undefined : fewest);
    }
  });

  it("a target above the working limit is not helped by passes: no number of them is offered, but 0.9 of the target", () => {
    const found = chooseProgramme(endFrame(8, 0), task, limits(900));
    if (found.fits) throw new Error("accepted");
    expect(found.alternatives.morePasses).toBeNull();
    expect(found.alternatives.targetShare).toBeCloseTo(0.9, 9);
    expect(found.nearest.passes).toHaveLength(1);
  });

  it("a limit that only a dozen passes would keep is refused without a number of passes", () => {
    const found = chooseProgramme(endFrame(8, 2), task, limits(1000.001));
    expect(found).toMatchObject({ fits: false, alternatives: { morePasses: null } });
  });

  it("a frame that leans 0.5 mm while only the first cables are tight breaks a limit of 0.3 mm: the movement is named", () => {
    const movement = [{ perPull: [0.001, 0.001, 0, 0, 0, 0, -0.001, -0.001], limit: 0.3 }];
    const found = chooseProgramme(endFrame(8, 0.1), task, limits(2000, { movement, passes_max: 1 }));
    if (found.fits) throw new Error("accepted");
    expect(found.broken).toBe("movement");
    expect(found.nearest.movement.step).toBeGreaterThan(1);
    expect(found.alternatives.targetShare).toBeCloseTo(1 / found.nearest.movement.overLimit, 9);
  });

  it("of two programmes that both fit the one with the lower readings is chosen: even stages, on a frame where pulls tighten others", () => {
    const flexibility = [
      [2, -0.25, -1.5],
      [-0.25, 0.8125, 0.1875],
      [-1.5, 0.1875, 1.125],
    ];
    const system = systemOf({ flexibility, cableFlexibility: [1, 1, 1], target: [] });
    const one = { order: bottomToTop(3), target: even(3, 1000) };
    const found = chooseProgramme(system, one, { working: even(3, 1034), movement: [], passes_max: 2 });
    if (!found.fits) throw new Error("refused");
    const [, full, stages] = found.tried;
    expect([full?.fits, stages?.fits]).toEqual([true, true]);
    expect(stages?.highest_overTarget).toBeLessThan(full?.highest_overTarget ?? 0);
    expect(found.chosen).toBe(stages);
  });

  it("even stages are chosen where they read lower, full plain passes where those do, and the highest reading falls with more passes", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [2, 6] }), (frame) => {
        const one = { order: bottomToTop(frame.target.length), target: frame.target };
        const free = { working: frame.target.map((aim) => aim * 1000), movement: [], passes_max: 1 };
        const found = chooseProgramme(systemOf(frame), one, free);
        if (!found.fits) throw new Error("refused");
        const tight = {
          ...free,
          working: frame.target.map((aim) => aim * Math.max(1, found.chosen.highest_overTarget * 0.999)),
          passes_max: 4,
        };
        const more = chooseProgramme(systemOf(frame), one, tight);
        const length = more.fits ? more.chosen.passes.length : 0;
        const rivals = more.tried.filter(({ fits, passes }) => fits && passes.length === length);
        if (more.fits) expect(more.chosen.highest_overTarget).toBe(Math.min(...rivals.map((rival) => rival.highest_overTarget)));
        if (more.fits) expect(more.chosen.highest_overTarget).toBeLessThanOrEqual(Math.max(1, found.chosen.highest_overTarget) + 1e-9);
        const last = more.tried.at(-1)?.steps.at(-1)?.tensions ?? [];
        for (const [cable, tension] of last.entries()) expect(Math.abs(tension - (frame.target[cable] ?? 0))).toBeLessThan(1e-6);
      }),
    );
  });

  it.each([
    ["a working limit too few", limits(1600, { working: even(7, 1600) }), /each of 8/],
    ["a movement for 2 of 8 cables", limits(1600, { movement: [{ perPull: [0, 0], limit: 1 }] }), /each of 8/],
    ["a working limit of 0 N", limits(0), /positive/],
    ["a movement of 0 mm", limits(1600, { movement: [{ perPull: even(8, 0), limit: 0 }] }), /positive/],
    ["no pass at all", limits(1600, { passes_max: 0 }), /tighten nothing/],
  ])("refuses %s", (_what, wrong, message) => {
    expect(() => chooseProgramme(endFrame(8, 0.1), task, wrong)).toThrow(message);
  });
});
