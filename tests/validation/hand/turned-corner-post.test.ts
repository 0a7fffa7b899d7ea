// One post at a corner that stands turned to its sides, worked out by hand: 0014 with two sides of 8 ft and a turn of 45 degrees, without a
// bottom rail, so that the top rails alone hold the post; both ends pull, so the cable is as tight on one side of it as on the other.
//
// The post stands on the bisector, its faces at 22.5 deg to either side. With T the tension, the cables push it by 2 T sin 22.5 along the
// bisector, which is along one of its faces: nothing bends it square to the other. A load square to a side has the parts P sin 22.5 and
// P cos 22.5 along its faces, whose stresses meet at an arris: (sin 22.5 + cos 22.5) M / S = 1.3066 M / S of a whole section.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mitredSection, mitreLoss } from "../../../src/mechanics/bore-cuts.ts";
import { solidRectangle } from "../../../src/mechanics/section.ts";
import { cornerShape } from "../../../src/plan/corner-post.ts";
import { directionsOf, inOwnAxes } from "../../../src/plan/frame-check-axes.ts";
import type { Push } from "../../../src/plan/frame-check-guard.ts";
import { type LoadedPost, loadsOf } from "../../../src/plan/frame-check-loads.ts";
import type { FrameCheck } from "../../../src/plan/frame-plan.ts";
import type { Vertical } from "../../../src/plan/plan.ts";
import { changedText, jobOf, withSides } from "../../support/example-jobs.ts";
import { framesOf } from "../../support/frame-groups.ts";
import { INCH, LBF } from "../../support/in-plan.ts";

const deg = (value: number): number => (value * Math.PI) / 180;
const [sin, cos] = [Math.sin(deg(22.5)), Math.cos(deg(22.5))];

const framed = framesOf(
  jobOf(
    withSides(
      changedText("0014-corners-of-one-post", {
        "start: { kind: wall, gap: 3-1/2 in, access: hand }": "start: { kind: post, access: drill }",
        "end: { kind: wall, gap: 3-1/2 in, access: hand }": "end: { kind: post, access: drill }",
        "  bottom rail: { size: 2x4, lay: edge, material: wood, treated: true, species: Southern Pine, grade: No.1 }\n": "",
        "  gap below: 2-1/2 in\n": "",
        "  clear opening: 30-1/2 in\n": "  clear opening: 34-1/2 in\n",
        "    force: 9 lbf\n": "    force: 5 lbf\n",
      }),
      "    - length: 8 ft\n      turn: left 45 deg\n      corner: one post\n    - length: 8 ft\n",
    ),
  ),
);
const { plan } = framed;

function cornerOf(): LoadedPost {
  const found = loadsOf({ ...plan, groups: framed.groups, job: plan.job }).posts.find(({ post }) => post.corner !== undefined);
  if (found === undefined) throw new Error("no corner post");
  return found;
}
const corner = cornerOf();

const checkOf = (name: string): FrameCheck => {
  const found = plan.frame.checks.find((check) => check.name === name);
  if (found === undefined) throw new Error(`no check ${name}`);
  return found;
};
const part = ({ parts }: FrameCheck, name: string): number => parts.find((one) => one.name === name)?.value ?? Number.NaN;

describe("by the cables", () => {
  // Each course pushes 2 T sin 22.5 at its height a on a post whose top L is held: R (L^3/3EI + L/GA + L^2/k) = P (a^2 (3L - a)/6EI + a/GA + a L/k),
  // moment at the foot P a - R L. Shear of the post counts with 5/6 of its area and G = E/16; k is the stiffness of the base.
  test("they bend it along the bisector alone, as by hand", () => {
    const { modulus } = plan.frame.posts;
    const base = plan.frame.posts.base.value as number;
    const size = 5.5 * INCH;
    const [EI, GA] = [(modulus.value * size ** 4) / 12, ((5 / 6) * modulus.value * size ** 2) / 16];
    const L = plan.opening.top + (1.5 * INCH) / 2;
    const compliance = L ** 3 / (3 * EI) + L / GA + L ** 2 / base;
    const run = plan.runs[0];
    const bend = run?.bends.reduce((sum, { angle }) => sum + angle, 0);
    expect(bend).toBeCloseTo(deg(45), 9);
    // What friction leaves at the mouths of its bore: both ends pull, and each mouth turns the cable by 22.5 deg. The bore is straight and rubs
    // no more. The side before it has the pull of its own nut.
    const added = plan.climate.find(({ runId }) => runId === run?.id)?.hardest.each ?? [];
    const foot = plan.courses.reduce((sum, { height: a }, course) => {
      const T = (run?.tension.high ?? Number.NaN) + (added[course] ?? 0);
      const P = 2 * T * sin;
      const R = (P * ((a ** 2 * (3 * L - a)) / (6 * EI) + a / GA + (a * L) / base)) / compliance;
      return sum + P * a - R * L;
    }, 0);
    const place = corner.places.find(({ height }) => height === 0);
    expect(place?.moment.y).toBeCloseTo(Math.abs(foot), -2);
    expect((place?.moment.y ?? 0) / Math.abs(foot)).toBeCloseTo(1, 4);
    for (const { moment, shear } of corner.places) {
      expect(moment.x).toBeLessThan(1e-6 * (place?.moment.y ?? 0));
      expect(shear.x).toBeLessThan(1e-6 * (place?.shear.y ?? 0));
    }
  });
});

describe("by the guard's load", () => {
  const check = checkOf("bending of corner posts by cables and guard load");

  test("200 lbf square to a side has both parts, at 22.5 deg to its faces", () => {
    const arm = plan.opening.guardHeight - (check.height ?? Number.NaN);
    expect(part(check, "load at the top on this post")).toBeCloseTo(200 * LBF, 6);
    expect(part(check, "M along") - part(check, "M along, of the cables")).toBeCloseTo(200 * LBF * arm * sin, 3);
    expect(part(check, "M square") - part(check, "M square, of the cables")).toBeCloseTo(200 * LBF * arm * cos, 3);
    expect(check.loads).toContain("square to side A");
  });

  test("its ratio is the sum of both parts over the modulus of a 6x6, bored across one of its axes", () => {
    const bored = plan.courses.some(({ height }) => height === check.height);
    const [b, d] = [5.5 * INCH, bored ? (5 / 8) * INCH : 0];
    const [along, square] = [((b - d) * b ** 2) / 6, (b ** 3 - d ** 3) / 6];
    // Southern Pine 5x5 and larger, No.1: 1350 psi; C_D 1.6 (ten minutes), nothing for treatment, dry or wet service.
    const allowed = part(check, "Fb' along");
    expect(allowed).toBeCloseTo(1350 * 1.6 * 0.006894757, 2);
    const ratio = part(check, "M along") / along / allowed + part(check, "M square") / square / allowed;
    expect(check.ratio).toBeCloseTo(ratio, 9);
  });
});

describe("which direction of the load is worst", () => {
  const half = 69.85;
  const arrises = [
    [half, half],
    [half, -half],
    [-half, half],
    [-half, -half],
  ] as const;
  const whole = solidRectangle({ x: 2 * half, y: 2 * half });
  /** Greatest stress at an arris of a square post, from plain bending: M_x x / I + M_y y / I. */
  const greatest = (x: number, y: number): number => Math.max(...arrises.map(([at, off]) => (x * at + y * off) / whole.x.inertia_mm4));

  test("the parts of a moment along the faces, added, are the stress at the worst arris, however the post is turned", () => {
    fc.assert(
      fc.property(fc.double({ min: -180, max: 180, noNaN: true }), (angle) => {
        const [x, y] = [Math.cos(deg(angle)), Math.sin(deg(angle))];
        expect(greatest(x, y) * whole.x.modulus_mm3).toBeCloseTo(Math.abs(x) + Math.abs(y), 9);
      }),
    );
  });

  const standing = (turn: number): Pick<Vertical, "corner"> => ({
    corner: {
      homeId: "A",
      nextIndex: 1,
      nextId: "B",
      nextStation: 0,
      turn: deg(turn),
      isPassed: true,
      isSetOff: false,
      ...cornerShape(deg(turn), 2 * half, deg(60)),
    },
  });
  const waysOf = (post: Pick<Vertical, "corner">, pushes: readonly Push[], isLine = false) =>
    directionsOf({ post: post as Vertical, whole, sharing: 3, sharingNext: 4 }, { pushes, isLine });
  const parts = (turn: number): readonly number[] => waysOf(standing(turn), ["square"]).map(({ parts: { x, y } }) => x + y);

  test("square to either side of a turn t it stresses a post on the bisector by cos t/2 + sin t/2, whichever way the guard turns", () => {
    for (const turn of [10, 30, 45, 60, -10, -30, -45, -60]) {
      const byHand = Math.cos(deg(turn / 2)) + Math.abs(Math.sin(deg(turn / 2)));
      expect(parts(turn)).toEqual([expect.closeTo(byHand, 9), expect.closeTo(byHand, 9)]);
    }
    expect(parts(45)[0]).toBeCloseTo(1.3066, 4);
  });

  test("nowhere between the two does all of it stress such a post more", () => {
    for (const turn of [10, 30, 45, 60]) {
      const most = parts(turn)[0] ?? Number.NaN;
      for (let angle = -turn / 2; angle <= turn / 2; angle += 0.5) {
        // From the bisector, which is along a face.
        expect(Math.abs(Math.sin(deg(angle))) + Math.cos(deg(angle))).toBeLessThanOrEqual(most + 1e-12);
      }
    }
  });

  // In between, a force is parts along both rails, each shared by the posts of its side: F = p a + q b, of which p / n and q / m come here.
  test("at a right angle the rails of both sides leave this post less of a slanting load than of one square to a side", () => {
    for (const [n, m] of [
      [2, 2],
      [2, 6],
      [4, 3],
    ] as const) {
      for (let angle = 0; angle <= 90; angle += 1) {
        expect(Math.sin(deg(angle)) / n + Math.cos(deg(angle)) / m).toBeLessThan(Math.max(...parts(90)));
      }
    }
    expect(parts(90)).toEqual([expect.closeTo(1, 9), expect.closeTo(1, 9)]);
  });

  test("along the rail of either side the posts of that side share it", () => {
    const [own, next] = waysOf(standing(45), ["along the rail"]);
    expect([own?.sharing, next?.sharing]).toEqual([3, 4]);
    expect([own?.parts.x, own?.parts.y]).toEqual([expect.closeTo(cos, 9), expect.closeTo(sin, 9)]);
    expect([next?.parts.x, next?.parts.y]).toEqual([expect.closeTo(cos, 9), expect.closeTo(sin, 9)]);
  });

  // Of a force that slants by f off square, cos f and sin f / n come to the post: together at most sqrt(1 + 1 / n^2), where tan f = 1 / n.
  test("in any direction a line post is stressed most by a load that slants: sqrt(1 + 1/9) where three posts share what goes along", () => {
    const [, , slanting] = waysOf({}, ["square", "along the rail"]);
    expect((slanting?.parts.x ?? 0) + (slanting?.parts.y ?? 0)).toBeCloseTo(Math.sqrt(10) / 3, 9);
    expect(slanting?.words).toBe("slanting, 18 deg off square to the guard");
    for (let f = 0; f <= 90; f += 1) {
      expect(Math.cos(deg(f)) + Math.sin(deg(f)) / 3).toBeLessThanOrEqual(Math.sqrt(10) / 3 + 1e-12);
    }
  });

  test("a load all along the top, which no other post takes, is worst at 45 deg: along the diagonal, sqrt 2 times as much", () => {
    const [, , slanting] = waysOf({}, ["square", "along the rail"], true);
    expect((slanting?.parts.x ?? 0) + (slanting?.parts.y ?? 0)).toBeCloseTo(Math.SQRT2, 9);
    expect(slanting?.words).toBe("slanting, 45 deg off square to the guard");
  });

  test("a post that is weaker along its side is stressed most by a load that slants further: S 2 to 1, tan f = 2", () => {
    const oblong = solidRectangle({ x: 50, y: 100 });
    const [, , slanting] = directionsOf(
      { post: {} as Vertical, whole: oblong, sharing: 1, sharingNext: 1 },
      { pushes: ["square", "along the rail"], isLine: false },
    );
    expect(slanting?.parts).toEqual({ x: expect.closeTo(2 / Math.sqrt(5), 9), y: expect.closeTo(1 / Math.sqrt(5), 9) });
  });

  test("a turned post too: no direction off either side stresses it more than the worst of its ways", () => {
    const ways = waysOf(standing(45), ["square", "along the rail"]);
    const most = Math.max(...ways.map(({ parts: { x, y }, sharing }) => (x + y) / sharing));
    expect(ways).toHaveLength(6);
    for (const [turn, n] of [
      [22.5, 3],
      [-22.5, 4],
    ] as const) {
      for (let f = 0; f < 360; f += 1) {
        const [square, along] = [Math.cos(deg(f)), Math.sin(deg(f)) / n];
        const x = along * Math.cos(deg(turn)) + square * Math.sin(deg(turn));
        const y = square * Math.cos(deg(turn)) - along * Math.sin(deg(turn));
        expect(Math.abs(x) + Math.abs(y)).toBeLessThanOrEqual(most + 1e-12);
      }
    }
  });

  test("turning the axes leaves a moment as long as it is", () => {
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true }), (x, y) => {
        const turned = inOwnAxes({ x, y }, standing(-45));
        expect(Math.hypot(turned.x, turned.y)).toBeCloseTo(Math.hypot(x, y), 9);
      }),
    );
  });
});

describe("a post bored on the mitre and turned a little", () => {
  // What is left are two pieces with corners where the strip of the bore begins and ends. At a distance u from the corner that is cut off
  // the post is 2 u wide across the diagonal, so the strip from near to far takes the integral of (2 u)^3 / 12, (far^4 - near^4) / 6.
  test("the sum of both moments over its modulus is at least the stress at every corner of what is left, whichever way it bends", () => {
    const [size, diameter] = [139.7, 15.875];
    const whole = solidRectangle({ x: size, y: size });
    const net = mitredSection(whole, { diameter, wall: null });
    const lost = mitreLoss(size, { diameter, wall: null });
    const middle = size / Math.SQRT2;
    const arm = (whole.area_mm2 * middle - lost.first_mm3) / net.area_mm2;
    const along = (net.x.modulus_mm3 * arm) / Math.SQRT2;
    const [near, far] = [size / 2 / Math.SQRT2 - diameter / 2, size / 2 / Math.SQRT2 + diameter / 2];
    const across = whole.x.inertia_mm4 - (far ** 4 - near ** 4) / 6;
    // From the corner that is cut off along the diagonal, and off it.
    const corners = [
      [0, 0],
      [near, near],
      [near, -near],
      [far, far],
      [far, -far],
      [middle, middle],
      [middle, -middle],
      [2 * middle, 0],
    ] as const;
    for (let angle = 0; angle < 360; angle += 1) {
      const [u, v] = [Math.cos(deg(angle)), Math.sin(deg(angle))];
      const stress = Math.max(...corners.map(([at, off]) => (u * (at - arm)) / along + (v * off) / across));
      const [x, y] = [(u + v) / Math.SQRT2, (u - v) / Math.SQRT2];
      expect(stress).toBeLessThanOrEqual(((Math.abs(x) + Math.abs(y)) / net.x.modulus_mm3) * (1 + 1e-9));
    }
  });
});
