// How large and stiff is a cross-section, whole and where a bore goes through it?
import type { Mm } from "../units/quantity.ts";

/**
 * Bending that moves the piece along one axis of its section. For a post, x runs with the cables and y out of the guard; for a rail, x is
 * level and y is up.
 */
export interface SectionAxis {
  /** Outside size along the axis. */
  readonly size: Mm;
  readonly inertia_mm4: number;
  /** Of the fibre farther from the neutral axis. */
  readonly modulus_mm3: number;
}

export interface Section {
  readonly area_mm2: number;
  readonly x: SectionAxis;
  readonly y: SectionAxis;
}

/** What stresses ask of a section that is bored. */
export interface NetSection {
  readonly area_mm2: number;
  readonly x: Pick<SectionAxis, "modulus_mm3">;
  readonly y: Pick<SectionAxis, "modulus_mm3">;
}

const symmetrical = (size: Mm, inertia_mm4: number): SectionAxis => ({ size, inertia_mm4, modulus_mm3: (2 * inertia_mm4) / size });

/**
 * A solid rectangle: A = x y, I = y x^3 / 12, S = 2 I / x.
 *
 * @param size - x [mm], y [mm]
 * @returns area [mm2], and for each axis size [mm], second moment [mm4], section modulus [mm3]
 * @throws RangeError when a size is not positive
 * Source: derived, rectangle
 */
export function solidRectangle({ x, y }: { readonly x: Mm; readonly y: Mm }): Section {
  if (!(x > 0 && y > 0)) throw new RangeError(`section ${x} x ${y} mm must be positive`);
  return { area_mm2: x * y, x: symmetrical(x, (y * x ** 3) / 12), y: symmetrical(y, (x * y ** 3) / 12) };
}

/** What a round corner of radius 1 takes from a square corner: area, its centre's distance from the edge, second moment about it. */
const CORNER_area = 1 - Math.PI / 4;
const CORNER_centre = (5 / 6 - Math.PI / 4) / CORNER_area;
const CORNER_inertia = 1 - (5 * Math.PI) / 16 - CORNER_area * CORNER_centre ** 2;

/** Second moment of a rectangle of `size` along the axis and `across`, less its four corners. */
function roundedInertia({ size, across, radius }: { readonly size: Mm; readonly across: Mm; readonly radius: Mm }): number {
  const arm = size / 2 - CORNER_centre * radius;
  return (across * size ** 3) / 12 - 4 * (CORNER_inertia * radius ** 4 + CORNER_area * radius ** 2 * arm ** 2);
}

/**
 * A rectangular tube with round corners: the outer rectangle less the inner one, each less its corners; the inner radius is the outer
 * one less the wall.
 *
 * @param tube - x [mm], y [mm], wall: the design wall, 0.93 of the nominal one for welded steel tube to A500 [mm], corner: outer radius,
 *   2 walls where not given, 0 for a sharp corner [mm]
 * @returns area [mm2], and for each axis size [mm], second moment [mm4], section modulus [mm3]
 * @throws RangeError when the walls meet
 * Source: derived, composite section; aisc-360 manual part 1 for the corner of 2 design walls, from memory
 */
export function rectangularTube(tube: { readonly x: Mm; readonly y: Mm; readonly wall: Mm; readonly corner?: Mm }): Section {
  const { x, y, wall, corner = 2 * wall } = tube;
  const inner = { x: x - 2 * wall, y: y - 2 * wall, corner: Math.max(0, corner - wall) };
  if (!(wall > 0 && inner.x > 0 && inner.y > 0)) throw new RangeError(`a wall of ${wall} mm leaves no tube of ${x} x ${y} mm`);
  const area_mm2 = x * y - inner.x * inner.y - 4 * CORNER_area * (corner ** 2 - inner.corner ** 2);
  const inertia = (size: Mm, across: Mm): number => roundedInertia({ size, across, radius: corner });
  const hollow = (size: Mm, across: Mm): number => roundedInertia({ size, across, radius: inner.corner });
  return {
    area_mm2,
    x: symmetrical(x, inertia(x, y) - hollow(inner.x, inner.y)),
    y: symmetrical(y, inertia(y, x) - hollow(inner.y, inner.x)),
  };
}

/**
 * A round tube: A = pi (D^2 - d^2) / 4, I = pi (D^4 - d^4) / 64.
 *
 * @param tube - outside diameter D [mm], wall: the design wall [mm]
 * @returns area [mm2], and for each axis size [mm], second moment [mm4], section modulus [mm3]
 * @throws RangeError when the wall leaves no tube
 * Source: derived, ring
 */
export function roundTube({ outside, wall }: { readonly outside: Mm; readonly wall: Mm }): Section {
  const inside = outside - 2 * wall;
  if (!(wall > 0 && inside > 0)) throw new RangeError(`a wall of ${wall} mm leaves no tube of ${outside} mm`);
  const axis = symmetrical(outside, (Math.PI / 64) * (outside ** 4 - inside ** 4));
  return { area_mm2: (Math.PI / 4) * (outside ** 2 - inside ** 2), x: axis, y: axis };
}

/** A rectangle that is taken out of a section; places are measured from the middle of the whole section. */
export interface Cut {
  readonly x: Mm;
  readonly y: Mm;
  readonly atX: Mm;
  readonly atY: Mm;
}

/**
 * What is left of a section where rectangles are cut out of it: areas and second moments about the new middle. The fibre at the far face
 * counts in full: the corner that remains beside a bore is the most stressed place.
 *
 * @param whole - section, its middle at 0 [mm2, mm4]
 * @param cuts - rectangles inside it that don't overlap [mm]
 * @returns net area [mm2], and for each axis size [mm], net second moment [mm4], the lesser net section modulus [mm3]
 * @throws RangeError when a cut reaches outside or nothing is left
 * Source: derived, composite section and parallel axes
 */
export function netSection(whole: Section, cuts: readonly Cut[]): Section {
  for (const cut of cuts) {
    const inside = Math.abs(cut.atX) + cut.x / 2 <= whole.x.size / 2 + HAIR && Math.abs(cut.atY) + cut.y / 2 <= whole.y.size / 2 + HAIR;
    if (!inside) throw new RangeError(`a cut of ${cut.x} x ${cut.y} mm at ${cut.atX}, ${cut.atY} mm reaches outside the section`);
  }
  const area_mm2 = whole.area_mm2 - cuts.reduce((sum, cut) => sum + cut.x * cut.y, 0);
  if (!(area_mm2 > 0)) throw new RangeError("the cuts leave nothing of the section");
  const along = (axis: SectionAxis, bars: readonly Bar[]): SectionAxis => netAxis({ axis, bars, area_mm2 });
  return {
    area_mm2,
    x: along(
      whole.x,
      cuts.map((cut) => ({ size: cut.x, across: cut.y, at: cut.atX })),
    ),
    y: along(
      whole.y,
      cuts.map((cut) => ({ size: cut.y, across: cut.x, at: cut.atY })),
    ),
  };
}

/** Sizes given in mm are rounded copies of inches. */
const HAIR: Mm = 1e-6;

/** A cut as one axis sees it. */
interface Bar {
  readonly size: Mm;
  readonly across: Mm;
  readonly at: Mm;
}

function netAxis({ axis, bars, area_mm2 }: { axis: SectionAxis; bars: readonly Bar[]; area_mm2: number }): SectionAxis {
  const shift = -bars.reduce((sum, { size, across, at }) => sum + size * across * at, 0) / area_mm2;
  const lost = bars.reduce((sum, { size, across, at }) => sum + size * across * (size ** 2 / 12 + at ** 2), 0);
  const inertia_mm4 = axis.inertia_mm4 - lost - area_mm2 * shift ** 2;
  return { size: axis.size, inertia_mm4, modulus_mm3: inertia_mm4 / (axis.size / 2 + Math.abs(shift)) };
}
