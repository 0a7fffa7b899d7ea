// With what force does a solid pass between two cables, or between a cable and a rail?
import type { Mm, Newton, Radian } from "../units/quantity.ts";
import { refuseSpan, type SpanUnderTension, springOf } from "./lateral.ts";
import { risingRoot, topOf } from "./solve.ts";

/** The cone stands on a cylinder of its own diameter and has a flat nose. */
export type Solid =
  | { readonly kind: "sphere"; readonly diameter: Mm }
  | { readonly kind: "cone"; readonly diameter: Mm; readonly length: Mm; readonly noseDiameter: Mm };

interface Push extends SpanUnderTension {
  readonly solid: Solid;
  readonly cableDiameter: Mm;
  /** Between the solid and what it rubs on; 0 when left out. */
  readonly friction?: number;
}

export interface PushThrough {
  /** Greatest push on the way through; 0 when it drops through, Infinity when it jams. */
  readonly force: Newton;
  /** The same for a sphere without friction and with no rise of tension, in closed form; null for a cone. */
  readonly linear: Newton | null;
  /** Way of the solid from first touch to the greatest push. */
  readonly travel: Mm;
  /** Way that the widest part of the solid still has to the plane of the cables at the greatest push. */
  readonly toGo: Mm;
  readonly cableDeflection: Mm;
  readonly tension_peak: Newton;
}

/** No strand reaches twice the strain at which strands break, about 1 %. */
const STRAIN_max = 0.02;
/** Precision of a tension that is found by search, as a share. */
const TENSION_precision = 1e-9;

/**
 * Greatest push on a solid that goes midway between two equal cables. With t the angle of the contact normal, c the distance from
 * the solid's axis to the cable's, a half the spacing and phi = atan(mu), each cable moves along its force by
 * d = (c(t) - a) / cos(t + phi), answers with P(d) of lateralResponse, and the push is 2 P(d) sin(t + phi); c = (S + D)/2 cos t for a
 * sphere, S/2 + D/2 cos t for the shoulder of a cone. Closed form for a sphere on springs k = T (1/x + 1/(L - x)):
 * F = 2 k c [1 - (a/c)^(2/3)]^(3/2), c = (S + D)/2.
 *
 * @param push - solid: diameter S, and for a cone its length and nose [mm]; spacing of the cables from centre to centre [mm]; cable
 *   diameter D [mm]; span L and place x of the push, the middle when left out [mm]; tension T [N]; axial stiffness [N]; length of the
 *   run [mm]; support [word]; friction mu between solid and cable, 0 when left out [ratio]
 * @returns greatest push [N], its closed form [N], way from first touch to it and way still to go [mm], deflection [mm] and tension
 *   [N] of each cable at it
 * @throws RangeError when a size, tension, stiffness or friction is out of range
 * Valid: supports rigid, neighbours and posts not touched, cable touches at a point (0.5 % low at mid-span against a cable that wraps)
 * Source: derived, statics of a string and of a contact
 */
export function pushThroughForce(push: Push & { readonly spacing: Mm }): PushThrough {
  refuse(push);
  if (!(push.spacing > 0)) throw new RangeError(`spacing ${push.spacing} mm must be positive`);
  return peakOf({ push, offset: push.spacing / 2, cables: 2 });
}

/**
 * Greatest push on a solid that slides along the flat face of a rigid rail and past the cable next to it: half of what two cables
 * at the spacing 2 (gap - S/2) would hold, and the rubbing on the rail when there is friction.
 *
 * @param push - as for pushThroughForce, with the gap from the rail's face to the cable's centre [mm] in place of the spacing
 * @returns as pushThroughForce; Infinity when the solid pushes the cable towards the rail instead of away from it [N]
 * @throws RangeError when a size, tension, stiffness or friction is out of range
 * Valid: as pushThroughForce; the rail's face is deep enough to guide the solid, a cone keeps its axis parallel to it
 * Source: derived, statics of a string and of a contact
 */
export function pushThroughBesideRail(push: Push & { readonly gap: Mm }): PushThrough {
  refuse(push);
  if (!(push.gap > 0)) throw new RangeError(`gap ${push.gap} mm must be positive`);
  return peakOf({ push, offset: push.gap - push.solid.diameter / 2, cables: 1 });
}

/**
 * One place of the way through two cables: push, and where solid and cables stand, for a curve of the push along the travel.
 *
 * @param push - as for pushThroughForce, with the angle of the contact normal [rad]: from the angle of first touch down to 0, where the
 *   widest part passes the cables
 * @returns push [N], way that the widest part still has to the plane of the cables [mm], deflection [mm] and tension [N] of each cable
 * @throws RangeError when a size, tension, stiffness or friction is out of range
 * Valid: as pushThroughForce
 * Source: derived, statics of a string and of a contact
 */
export function pushAtAngle(push: Push & { readonly spacing: Mm; readonly normal: Radian }): Omit<PushThrough, "linear" | "travel"> {
  refuse(push);
  const contact = contactOf(push, push.spacing / 2);
  return stateAt({ contact, normal: push.normal, spring: springOf(push), cables: 2 });
}

/**
 * Least tension with which two cables hold a solid against a given push: bisection, as the push rises with the tension.
 *
 * @param push - as for pushThroughForce without the tension, with the force to be held [N] and the tension above which the search ends,
 *   2 % of the axial stiffness when left out [N]
 * @returns tension; 0 when slack cables hold, Infinity when the greatest tension does not [N]
 * @throws never
 * Valid: as pushThroughForce
 * Source: derived, statics of a string and of a contact
 */
export function tensionForPush(
  push: Omit<Push, "tension"> & { readonly spacing: Mm; readonly force: Newton; readonly tension_max?: Newton },
): Newton {
  const high = push.tension_max ?? STRAIN_max * push.stiffness;
  const missing = (tension: Newton): Newton =>
    peakOf({ push: { ...push, tension }, offset: push.spacing / 2, cables: 2 }).force - push.force;
  if (missing(0) >= 0) return 0;
  if (!(missing(high) >= 0)) return Number.POSITIVE_INFINITY;
  return risingRoot({ of: missing, low: 0, high, precision: TENSION_precision });
}

/** How a cable lies on the solid, by the angle of the contact normal from the spacing's direction towards the push. */
interface Contact {
  readonly offset: Mm;
  readonly frictionAngle: Radian;
  /** First touch; for a cone, the touch of its shoulder, up to which the push only rises. */
  readonly start: Radian;
  /** Distance of the widest part from the cables' plane at the first touch. */
  readonly toGo_start: Mm;
  /** The cable's place on the solid: distance from the axis, and ahead of the widest part. */
  readonly reach: (normal: Radian) => Mm;
  readonly ahead: (normal: Radian) => Mm;
}

function contactOf({ solid, cableDiameter, friction = 0 }: Push, offset: Mm): Contact {
  const [body, cable] = [solid.diameter / 2, cableDiameter / 2];
  const frictionAngle = Math.atan(friction);
  if (solid.kind === "sphere") {
    const centres = body + cable;
    const start = Math.acos(offset / centres);
    const ahead = (normal: Radian): Mm => centres * Math.sin(normal);
    return { offset, frictionAngle, start, toGo_start: ahead(start), reach: (normal) => centres * Math.cos(normal), ahead };
  }
  const slope = Math.atan((body - solid.noseDiameter / 2) / solid.length);
  const ahead = (normal: Radian): Mm => cable * Math.sin(normal);
  const reach = (normal: Radian): Mm => body + cable * Math.cos(normal);
  const start = offset > body ? Math.min(slope, Math.acos((offset - body) / cable)) : slope;
  const onCone = Math.max(0, reach(slope) - offset) / Math.tan(slope);
  return { offset, frictionAngle, start, toGo_start: onCone + ahead(start), reach, ahead };
}

interface Peak {
  readonly push: Push;
  /** From the line on which the solid's axis moves to the cable at rest. */
  readonly offset: Mm;
  readonly cables: 1 | 2;
}

function peakOf({ push, offset, cables }: Peak): PushThrough {
  const { solid, cableDiameter, tension, span, at = span / 2 } = push;
  const widest = (solid.diameter + cableDiameter) / 2;
  const linear = solid.kind === "sphere" ? linearPeak(cables * tension * (1 / at + 1 / (span - at)), offset, widest) : null;
  const still = { travel: 0, toGo: 0, cableDeflection: 0, tension_peak: tension };
  if (offset >= widest) return { force: 0, linear, ...still };
  const contact = contactOf(push, offset);
  // The nose meets the cables, or the solid pushes them the wrong way or drags them along without end.
  const narrowest = solid.kind === "cone" ? solid.noseDiameter / 2 : 0;
  const jams = offset <= narrowest || contact.start + contact.frictionAngle >= Math.PI / 2;
  if (jams) return { force: Number.POSITIVE_INFINITY, linear, ...still };
  const spring = springOf(push);
  // Asked some forty times for one peak: the force alone, without the rest of the state.
  const forceAt = (normal: Radian): Newton => {
    const towards = normal + contact.frictionAngle;
    const cosine = Math.cos(towards);
    return forceOf(spring(deflectionAt(contact, normal, cosine)).force, towards, cosine, contact, cables);
  };
  const normal = topOf({ of: forceAt, low: 0, high: contact.start });
  const { force, toGo, cableDeflection, tension_peak } = stateAt({ contact, normal, spring, cables });
  return { force, cableDeflection, tension_peak, linear, travel: contact.toGo_start - toGo, toGo };
}

function linearPeak(stiffness: number, offset: Mm, widest: Mm): Newton {
  if (offset >= widest) return 0;
  if (offset <= 0) return Number.POSITIVE_INFINITY;
  return stiffness * widest * (1 - (offset / widest) ** (2 / 3)) ** 1.5;
}

interface State {
  readonly contact: Contact;
  readonly normal: Radian;
  readonly spring: ReturnType<typeof springOf>;
  readonly cables: 1 | 2;
}

function stateAt({ contact, normal, spring, cables }: State): Omit<PushThrough, "linear" | "travel"> {
  const towards = normal + contact.frictionAngle;
  const cosine = Math.cos(towards);
  const cableDeflection = deflectionAt(contact, normal, cosine);
  const held = spring(cableDeflection);
  return {
    force: forceOf(held.force, towards, cosine, contact, cables),
    toGo: contact.ahead(normal) - cableDeflection * Math.sin(towards),
    cableDeflection,
    tension_peak: held.tension,
  };
}

/** How far a cable is moved along its force. */
const deflectionAt = (contact: Contact, normal: Radian, cosine: number): Mm =>
  Math.max(0, (contact.reach(normal) - contact.offset) / cosine);

/** Push on the solid while each cable holds with `held`. */
function forceOf(held: Newton, towards: Radian, cosine: number, { frictionAngle }: Contact, cables: 1 | 2): Newton {
  // The rail carries what pushes the cable away from it, and rubs.
  const rubbing = cables === 1 ? Math.tan(frictionAngle) * cosine : 0;
  return held * (cables * Math.sin(towards) + rubbing);
}

function refuse(push: Push): void {
  const { solid, cableDiameter, friction = 0 } = push;
  refuseSpan(push);
  if (!(solid.diameter > 0 && cableDiameter > 0)) throw new RangeError("solid and cable must have a diameter");
  if (solid.kind === "cone" && !(solid.length > 0 && solid.noseDiameter > 0 && solid.noseDiameter < solid.diameter)) {
    throw new RangeError("a cone has a length, and a nose smaller than its base");
  }
  if (!(friction >= 0)) throw new RangeError(`friction ${friction} must not be negative`);
}
