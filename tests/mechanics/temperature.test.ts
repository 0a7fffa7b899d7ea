import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  changedTensions,
  closingByTemperature,
  dayTargets,
  rigidFrameChange,
  type StandingCables,
} from "../../src/mechanics/temperature.ts";
import { type RandomFrame, randomFrames } from "../support/cable-frames.ts";

const LENGTH_mm = 6000;
const standing = ({ flexibility, cableFlexibility, target }: RandomFrame): StandingCables => ({
  cables: target.map((tension, cable) => ({ length: LENGTH_mm, stiffness: LENGTH_mm / (cableFlexibility[cable] ?? 1), tension })),
  flexibility,
});
const alone = (tension: number, closing_perN = 0): StandingCables => ({
  cables: [{ length: 12_192, stiffness: 782_229.67, tension }],
  flexibility: [[closing_perN]],
});
const still = { warmer: 0, expansion_perC: 16e-6, closing: [0] };

describe("changedTensions", () => {
  it("40 ft of strand between anchors that stand still, 30 degC colder: +(EA + T) alpha dt / (1 - alpha dt), by hand 376.08 N", () => {
    const { changes } = changedTensions(alone(889.6443), { ...still, warmer: -30 });
    const strain = 16e-6 * 30;
    expect(changes[0]).toBeCloseTo(((782_229.67 + 889.6443) * strain) / (1 - strain), 6);
  });

  it("nothing changes: the tensions stay, on any frame", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 8] }), (frame) => {
        const { tensions } = changedTensions(standing(frame), { warmer: 0, expansion_perC: 16e-6, closing: frame.target.map(() => 0) });
        for (const [cable, tension] of tensions.entries()) expect(Math.abs(tension - (frame.target[cable] ?? 0))).toBeLessThan(1e-6);
      }),
    );
  });

  it("there and back: the tensions at 25 degC above, taken back by 25 degC, are the first ones (while nothing is slack)", () => {
    fc.assert(
      fc.property(randomFrames({ cables: [1, 8] }), (frame) => {
        const change = { warmer: -25, expansion_perC: 16e-6, closing: frame.target.map(() => -1) };
        const cold = changedTensions(standing(frame), change);
        // The cable's length now is what the anchors left of it.
        const moved = frame.target.map((_, i) => (frame.flexibility[i] ?? []).reduce((sum, f, j) => sum + f * (cold.changes[j] ?? 0), -1));
        const there: StandingCables = {
          flexibility: frame.flexibility,
          cables: standing(frame).cables.map((cable, i) => ({
            ...cable,
            length: cable.length - (moved[i] ?? 0),
            tension: cold.tensions[i] ?? 0,
          })),
        };
        const back = changedTensions(there, { warmer: 25, expansion_perC: 16e-6, closing: frame.target.map(() => 1) });
        for (const [cable, tension] of back.tensions.entries()) {
          // 1 - (alpha dt)^2 is left of the slack length by going there and back.
          expect(Math.abs(tension - (frame.target[cable] ?? 0))).toBeLessThan(1);
        }
      }),
    );
  });

  it("colder is tighter for every cable when all are equal, and a frame that gives way keeps more of the tension even", () => {
    const [stiff, soft] = [alone(900), alone(900, 0.01)];
    const cold = { ...still, warmer: -20 };
    expect(changedTensions(stiff, cold).changes[0] ?? 0).toBeGreaterThan(changedTensions(soft, cold).changes[0] ?? 0);
    expect(changedTensions(soft, cold).changes[0] ?? 0).toBeGreaterThan(0);
  });

  it("a cable of 100 N whose anchors come 5 mm nearer hangs slack, and says so", () => {
    expect(changedTensions(alone(100), { ...still, closing: [5] })).toEqual({ tensions: [0], changes: [-100], slack: [0] });
  });

  it("bedding-in by 1 mm loses as much as anchors that come 1 mm nearer, but for the strain of that millimetre", () => {
    const near = changedTensions(alone(900), { ...still, closing: [1] }).changes[0] ?? 0;
    const long = changedTensions(alone(900), { ...still, lengthening: [1] }).changes[0] ?? 0;
    expect(long / near).toBeCloseTo(1, 2);
  });

  it("refuses a closing, or a lengthening, for more cables than there are", () => {
    expect(() => changedTensions(alone(900), { ...still, closing: [0, 0] })).toThrow(/each of 1/);
    expect(() => changedTensions(alone(900), { ...still, lengthening: [0, 0] })).toThrow(/each of 1/);
  });
});

describe("closingByTemperature", () => {
  it("240 in of wood along the grain at 4e-6, 30 degC colder: the anchors come 0.73152 mm nearer (alpha dt L)", () => {
    const frame = { perDeckStrain: [-6096], perRailStrain: [0], expansion_deck_perC: 4e-6, expansion_rail_perC: 4e-6, warmer: -30 };
    expect(closingByTemperature(frame)[0]).toBeCloseTo(0.73152, 9);
  });
});

describe("dayTargets", () => {
  it("set to the day's target and brought back to the reference temperature, the cables carry their design tension", () => {
    const design = alone(1000, 0.002);
    const [day] = dayTargets(design, [{ warmer: 15, closing: [-0.7] }], 16e-6);
    const [target = 0] = day?.targets ?? [];
    expect(target).toBeLessThan(1000);
    const atDay = {
      ...design,
      cables: design.cables.map((cable) => ({ ...cable, length: cable.length + 0.7 - 0.002 * (target - 1000), tension: target })),
    };
    expect(changedTensions(atDay, { warmer: -15, expansion_perC: 16e-6, closing: [0.7] }).tensions[0]).toBeCloseTo(1000, 1);
    expect(day?.slack).toEqual([]);
  });

  it("on a day so hot that the design leaves the cable slack there is no reading to set: the cable is named", () => {
    expect(dayTargets(alone(50), [{ warmer: 40, closing: [0] }], 16e-6)[0]).toEqual({ warmer: 40, targets: [0], slack: [0] });
  });

  it("the warmer the day the lower the target, on a deck that grows less than strand", () => {
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), fc.double({ min: 0.1, max: 20, noNaN: true }), (warmer, more) => {
        const days = [warmer, warmer + more].map((one) => ({ warmer: one, closing: [-4e-6 * one * 12_192] }));
        const [cool, warm] = dayTargets(alone(1000, 0.001), days, 16e-6).map(({ targets }) => targets[0] ?? 0);
        expect(warm).toBeLessThan(cool ?? 0);
      }),
    );
  });
});

describe("rigidFrameChange", () => {
  const cable = { stiffness: 175_852, length: 480, expansion_cable_perC: 16e-6, expansion_frame_perC: 0, warmer: -30, closing: 0 };

  it("1/8 in strand of 175,852 lb against rigid ends, 30 degC colder: 84.4 lb (restrained bar, EA alpha dt by hand)", () => {
    expect(rigidFrameChange(cable)).toBeCloseTo(84.409, 3);
  });

  it("0.065 in of closing over 480 in loses 23.8 lb", () => {
    expect(rigidFrameChange({ ...cable, warmer: 0, closing: 0.065 })).toBeCloseTo(-23.813, 3);
  });

  it("refuses a cable without length", () => {
    expect(() => rigidFrameChange({ ...cable, length: 0 })).toThrow(/positive/);
  });
});
