// How far does a single straight beam or post bend, and what moment does it carry?
import type { Mm, Newton } from "../units/quantity.ts";

/** A load at a place of a beam that bends but does not shear. */
interface LoadedBeam {
  readonly length: Mm;
  readonly load: Newton;
  /** From the fixed end, of a beam on two supports from the left one. */
  readonly at: Mm;
  /** Bending stiffness [N mm2]. */
  readonly EI: number;
}

function refuseOff({ length, at, EI }: Pick<LoadedBeam, "length" | "at" | "EI">, where = at): void {
  if (!(EI > 0)) throw new RangeError(`bending stiffness ${EI} N mm2 must be positive`);
  if (!(at >= 0 && at <= length && where >= 0 && where <= length)) throw new RangeError(`load and place must lie on the ${length} mm`);
}

/**
 * Cantilever with a load anywhere: deflection at x is P x^2 (3 a - x) / (6 EI) up to the load at a, P a^2 (3 x - a) / (6 EI) beyond it;
 * moment at the fixed end P a.
 *
 * @param beam - length [mm], load P [N], its distance a from the fixed end [mm], EI [N mm2]
 * @param where - distance x from the fixed end, the tip when left out [mm]
 * @returns deflection there [mm] and moment at the fixed end [N mm]
 * @throws RangeError when a place lies off the beam or EI is not positive
 * Source: beam-formulas, cantilever with a load at any point
 */
export function cantilever(beam: LoadedBeam, where: Mm = beam.length): { readonly deflection: Mm; readonly moment: number } {
  const { load, at, EI } = beam;
  refuseOff(beam, where);
  const [near, far] = where < at ? [where, at] : [at, where];
  return { deflection: (load * near ** 2 * (3 * far - near)) / (6 * EI), moment: load * at };
}

/**
 * Cantilever under an even load: tip w L^4 / (8 EI), moment at the fixed end w L^2 / 2.
 *
 * @param beam - length L [mm], load per length w [N/mm], EI [N mm2]
 * @returns deflection of the tip [mm] and moment at the fixed end [N mm]
 * @throws RangeError when EI is not positive
 * Source: beam-formulas, cantilever under an even load
 */
export function cantileverEven(beam: { readonly length: Mm; readonly load_NPerMm: number; readonly EI: number }): {
  readonly deflection: Mm;
  readonly moment: number;
} {
  const { length, load_NPerMm, EI } = beam;
  refuseOff({ length, at: 0, EI });
  return { deflection: (load_NPerMm * length ** 4) / (8 * EI), moment: (load_NPerMm * length ** 2) / 2 };
}

/**
 * Cantilever whose tip a prop holds still, with a load anywhere: prop R = P a^2 (3 L - a) / (2 L^3), moment at the fixed end P a - R L,
 * deflection that of the load less that of the prop.
 *
 * @param beam - length L from the fixed end to the prop [mm], load P [N], its distance a from the fixed end [mm], EI [N mm2]
 * @param where - distance from the fixed end, at the load when left out [mm]
 * @returns force of the prop [N], moment at the fixed end [N mm], deflection there [mm]
 * @throws RangeError when a place lies off the beam or EI is not positive
 * Source: memory, propped cantilever; derived, superposition of two cantilevers
 */
export function proppedCantilever(
  beam: LoadedBeam,
  where: Mm = beam.at,
): { readonly prop: Newton; readonly moment: number; readonly deflection: Mm } {
  const { length, load, at } = beam;
  refuseOff(beam, where);
  const prop = (load * at ** 2 * (3 * length - at)) / (2 * length ** 3);
  const back = cantilever({ ...beam, load: prop, at: length }, where).deflection;
  return { prop, moment: load * at - prop * length, deflection: cantilever(beam, where).deflection - back };
}

/**
 * Beam on two supports with a load anywhere: with b the shorter part and a the longer, greatest deflection P b (L^2 - b^2)^(3/2) /
 * (9 sqrt(3) EI L) at sqrt((L^2 - b^2) / 3) from the support at the longer part's end, moment at the load P a b / L.
 *
 * @param beam - length L [mm], load P [N], its distance from the left support [mm], EI [N mm2]
 * @returns greatest deflection [mm], its distance from the left support [mm], moment at the load [N mm], reactions [N]
 * @throws RangeError when the load lies off the beam or EI is not positive
 * Source: beam-formulas, simple beam with a load at any point
 */
export function simpleBeam(beam: LoadedBeam): {
  readonly deflection: Mm;
  readonly deflectionAt: Mm;
  readonly moment: number;
  readonly left: Newton;
  readonly right: Newton;
} {
  const { length, load, at, EI } = beam;
  refuseOff(beam);
  const short = Math.min(at, length - at);
  const rest = length ** 2 - short ** 2;
  const fromFar = Math.sqrt(rest / 3);
  return {
    deflection: (load * short * rest ** 1.5) / (9 * Math.sqrt(3) * EI * length),
    deflectionAt: at >= length / 2 ? fromFar : length - fromFar,
    moment: (load * at * (length - at)) / length,
    left: (load * (length - at)) / length,
    right: (load * at) / length,
  };
}

/**
 * Beam on two supports under an even load: middle 5 w L^4 / (384 EI), moment w L^2 / 8, reactions w L / 2.
 *
 * @param beam - length L [mm], load per length w [N/mm], EI [N mm2]
 * @returns deflection of the middle [mm], moment there [N mm], each reaction [N]
 * @throws RangeError when EI is not positive
 * Source: beam-formulas, simple beam under an even load
 */
export function simpleBeamEven(beam: { readonly length: Mm; readonly load_NPerMm: number; readonly EI: number }): {
  readonly deflection: Mm;
  readonly moment: number;
  readonly reaction: Newton;
} {
  const { length, load_NPerMm: w, EI } = beam;
  refuseOff({ length, at: 0, EI });
  return { deflection: (5 * w * length ** 4) / (384 * EI), moment: (w * length ** 2) / 8, reaction: (w * length) / 2 };
}

/**
 * Beam on two supports under equal loads at several places: at x the moment is R x less P (x - a) of each load at a before it; it is greatest at
 * one of the loads.
 *
 * @param beam - length L [mm], each load P [N], their distances a from the left support [mm]
 * @returns greatest moment [N mm] and reactions [N]
 * @throws RangeError when a load lies off the beam
 * Source: derived, statics of a beam on two supports
 */
export function simpleBeamPoints(beam: { readonly length: Mm; readonly load: Newton; readonly places: readonly Mm[] }): {
  readonly moment: number;
  readonly left: Newton;
  readonly right: Newton;
} {
  const { length, load, places } = beam;
  for (const at of places) refuseOff({ length, at, EI: 1 });
  const left = places.reduce((sum, at) => sum + (load * (length - at)) / length, 0);
  const momentAt = (x: Mm): number => places.reduce((sum, at) => sum - load * Math.max(0, x - at), left * x);
  return { moment: Math.max(0, ...places.map(momentAt)), left, right: places.length * load - left };
}

/**
 * Beam on two supports under a load that stands evenly on a part of it: in the middle its moment is P (2 L - w) / 8; where the part ends at a
 * support, that support bears P (1 - w / (2 L)).
 *
 * @param beam - length L [mm], load P [N], length w of the part [mm]
 * @returns moment with the part in the middle [N mm], reaction of a support that the part reaches [N]
 * @throws RangeError when the part is longer than the beam
 * Source: derived, statics of a beam on two supports
 */
export function simpleBeamPart(beam: { readonly length: Mm; readonly load: Newton; readonly width: Mm }): {
  readonly moment: number;
  readonly reaction: Newton;
} {
  const { length, load, width } = beam;
  refuseOff({ length, at: width, EI: 1 });
  return { moment: (load * (2 * length - width)) / 8, reaction: load * (1 - width / (2 * length)) };
}

/**
 * Beam on two supports with even loads on equal overhangs: between the supports the moment is w a^2 / 2 throughout and the middle rises
 * by w a^2 l^2 / (16 EI).
 *
 * @param beam - distance of the supports l [mm], length of each overhang a [mm], load per length of the overhangs w [N/mm], EI [N mm2]
 * @returns rise of the middle [mm] and moment between the supports [N mm]
 * @throws RangeError when EI is not positive
 * Source: timoshenko-overhang
 */
export function overhangs(beam: { readonly span: Mm; readonly overhang: Mm; readonly load_NPerMm: number; readonly EI: number }): {
  readonly rise: Mm;
  readonly moment: number;
} {
  const { span, overhang, load_NPerMm: w, EI } = beam;
  refuseOff({ length: span, at: 0, EI });
  return { rise: (w * overhang ** 2 * span ** 2) / (16 * EI), moment: (w * overhang ** 2) / 2 };
}
