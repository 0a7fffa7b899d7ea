// How far does a level cable hang under its own weight?
import type { Mm, Newton } from "../units/quantity.ts";
import { risingRoot } from "./solve.ts";

interface Hung {
  readonly span: Mm;
  readonly weight_NPerMm: number;
}

/**
 * Sag at the middle of a level cable with a given horizontal tension, exact: f = a (cosh(L / 2a) - 1), a = H / w.
 *
 * @param cable - span L [mm], weight per length w [N/mm], horizontal tension H [N]
 * @returns sag [mm]
 * @throws RangeError when span or tension is not positive or the weight is negative
 * Valid: both ends at one height, no bending stiffness
 * Source: derived, catenary
 */
export function levelSag({ span, weight_NPerMm, tension }: Hung & { readonly tension: Newton }): Mm {
  refuse({ span, weight_NPerMm });
  if (!(tension > 0)) throw new RangeError(`horizontal tension ${tension} N must be positive`);
  if (weight_NPerMm === 0) return 0;
  const a = tension / weight_NPerMm;
  // cosh z - 1 = 2 sinh^2(z / 2) keeps the digits of a small sag.
  return 2 * a * Math.sinh(span / (4 * a)) ** 2;
}

/**
 * Sag at the middle of a level cable that hangs shallow: f = w L^2 / 8 H.
 *
 * @param cable - span L [mm], weight per length w [N/mm], horizontal tension H [N]
 * @returns sag [mm]
 * @throws RangeError when span or tension is not positive or the weight is negative
 * Valid: sag below about a tenth of the span
 * Source: derived, parabola
 */
export function shallowSag({ span, weight_NPerMm, tension }: Hung & { readonly tension: Newton }): Mm {
  refuse({ span, weight_NPerMm });
  if (!(tension > 0)) throw new RangeError(`horizontal tension ${tension} N must be positive`);
  return (weight_NPerMm * span ** 2) / (8 * tension);
}

/**
 * Level cable from its sag: a is the root of a (cosh(L / 2a) - 1) = f; H = w a, length S = 2 a sinh(L / 2a), end tension T = H + w f.
 *
 * @param cable - span L [mm], weight per length w [N/mm], sag f at the middle [mm]
 * @returns horizontal tension H and tension at the ends T [N], length along the cable S [mm]
 * @throws RangeError when span, weight or sag is not positive
 * Valid: as levelSag
 * Source: derived, catenary
 */
export function fromSag({ span, weight_NPerMm, sag }: Hung & { readonly sag: Mm }): {
  readonly tension_horizontal: Newton;
  readonly tension_end: Newton;
  readonly length: Mm;
} {
  refuse({ span, weight_NPerMm });
  if (!(sag > 0 && weight_NPerMm > 0)) throw new RangeError(`sag ${sag} mm and weight ${weight_NPerMm} N/mm must be positive`);
  // In z = L / 2a the ratio (cosh z - 1) / z = 2 f / L rises from 0; z / 2 is below it, so twice the ratio is above the root.
  const ratio = (2 * sag) / span;
  const z = risingRoot({ of: (value) => (2 * Math.sinh(value / 2) ** 2) / value - ratio, low: 0, high: 2 * ratio });
  const a = span / (2 * z);
  return { tension_horizontal: weight_NPerMm * a, tension_end: weight_NPerMm * (a + sag), length: 2 * a * Math.sinh(z) };
}

function refuse({ span, weight_NPerMm }: Hung): void {
  if (!(span > 0)) throw new RangeError(`span ${span} mm must be positive`);
  if (!(weight_NPerMm >= 0)) throw new RangeError(`weight ${weight_NPerMm} N/mm must not be negative`);
}
