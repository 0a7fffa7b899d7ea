// What do warmth, cold and moved anchors make of the tensions, and what must a gauge read today to be right at the reference temperature?
import type { AxialStiffness, Celsius, Mm, Newton } from "../units/quantity.ts";
import { tensionsOn } from "./sequence-solve.ts";
import { unstressedLength } from "./stretch.ts";

/** A cable as it stands: between its anchors, at a tension. */
export interface StandingCable {
  readonly length: Mm;
  readonly stiffness: AxialStiffness;
  readonly tension: Newton;
}

/** Cables on one frame, tight at a reference temperature. */
export interface StandingCables {
  readonly cables: readonly StandingCable[];
  /** Closing between the anchors of cable i when cable j pulls with 1 N [mm/N]. */
  readonly flexibility: readonly (readonly number[])[];
}

/** What happens to cables and anchors afterwards. */
export interface Change {
  /** Above the reference temperature; negative for cold. */
  readonly warmer: Celsius;
  /** Of the strand. */
  readonly expansion_perC: number;
  /** How much nearer the anchors of each cable would come if no cable pulled. */
  readonly closing: readonly Mm[];
  /** How much longer each cable became for good, bedding-in; none when left out. */
  readonly lengthening?: readonly Mm[];
}

export interface ChangedTensions {
  readonly tensions: readonly Newton[];
  /** Against the tensions before. */
  readonly changes: readonly Newton[];
  /** Cables that hang slack, from 0. */
  readonly slack: readonly number[];
}

/**
 * Tensions after a change of temperature, of the anchors or of the cables: with the slack length s_i = (L_i / (1 + T0_i/EA_i) + b_i)
 * (1 + alpha dt), T_i s_i/EA_i + sum F_ij (T_j - T0_j) = L_i - c_i - s_i where tight, T_i = 0 where slack.
 *
 * @param standing - cables with length [mm], stiffness [N], tension [N] and the flexibility of their frame [mm/N]
 * @param change - warmth [degC], expansion of the strand [1/degC], closing of the anchors c [mm], lengthening of the cables b [mm]
 * @returns tension of each cable and its change [N], slack cables [index], shape (cables)
 * @throws RangeError when the shapes differ, a length or stiffness is not positive, or the frame opens when it is pulled
 * Valid: linear frame, cable straight; exact in the cable's own stretch
 * Source: en-1993-1-11, unstressed length, as a public validation note applies it; derived, complementarity of tension and slack
 */
export function changedTensions({ cables, flexibility }: StandingCables, change: Change): ChangedTensions {
  const lengthening = change.lengthening ?? cables.map(() => 0);
  if (change.closing.length !== cables.length || lengthening.length !== cables.length) {
    throw new RangeError(`closing and lengthening are for each of ${cables.length} cables`);
  }
  const slackLengths = cables.map(
    (cable, index) => (unstressedLength(cable) + (lengthening[index] as number)) * (1 + change.expansion_perC * change.warmer),
  );
  const takeUps = cables.map(({ length }, index) => {
    const given = flexibility[index] as readonly number[];
    let held = 0;
    for (let other = 0; other < cables.length; other++) held += (given[other] as number) * (cables[other] as StandingCable).tension;
    return length + held - (change.closing[index] as number) - (slackLengths[index] as number);
  });
  const cableFlexibility = cables.map(({ stiffness }, index) => (slackLengths[index] as number) / stiffness);
  const tensions = tensionsOn({ flexibility, cableFlexibility }, takeUps);
  return {
    tensions,
    changes: tensions.map((tension, index) => tension - (cables[index] as StandingCable).tension),
    slack: tensions.flatMap((tension, index) => (tension === 0 ? [index] : [])),
  };
}

/**
 * How much nearer the anchors come when deck and rails change temperature and no cable pulls: c = alpha_deck dt e + alpha_rail dt r,
 * with e and r the closing under a strain of 1 of the deck and of the rails. On a frame without rails, or whose rails are of the deck's
 * stuff, that is -alpha dt L.
 *
 * @param frame - warmth dt [degC], expansion of the deck [1/degC] and of the rails [1/degC], closing between the anchors of each cable
 *   under a strain of 1 of the deck [mm] and of the rails [mm], as the frame gives them
 * @returns closing of the anchors of each cable [mm], shape (cables)
 * @throws never
 * Valid: posts keep their height (it does not matter to the distance of the anchors)
 * Source: derived, superposition
 */
export const closingByTemperature = ({
  warmer,
  expansion_deck_perC,
  expansion_rail_perC,
  perDeckStrain,
  perRailStrain,
}: {
  readonly warmer: Celsius;
  readonly expansion_deck_perC: number;
  readonly expansion_rail_perC: number;
  readonly perDeckStrain: readonly Mm[];
  readonly perRailStrain: readonly Mm[];
}): readonly Mm[] =>
  perDeckStrain.map((deck, cable) => warmer * (expansion_deck_perC * deck + expansion_rail_perC * (perRailStrain[cable] as number)));

/**
 * What the cables must carry at the day's temperature so that they carry their design tension at the reference temperature: the design
 * state, changed to the day.
 *
 * @param design - cables with length [mm], stiffness [N] and design tension [N] at the reference temperature, flexibility [mm/N]
 * @param days - warmth of each day above the reference [degC] with the closing of the anchors [mm] then
 * @param expansion_perC - expansion of the strand [1/degC]
 * @returns for each day its warmth [degC], the target of each cable [N], and the cables that no reading can set, as they are slack then
 *   [index], shape (days)
 * @throws RangeError as changedTensions does
 * Source: en-1993-1-11, unstressed length, as a public validation note applies it
 */
export function dayTargets(
  design: StandingCables,
  days: readonly { readonly warmer: Celsius; readonly closing: readonly Mm[] }[],
  expansion_perC: number,
): readonly { readonly warmer: Celsius; readonly targets: readonly Newton[]; readonly slack: readonly number[] }[] {
  return days.map(({ warmer, closing }) => {
    const { tensions, slack } = changedTensions(design, { warmer, closing, expansion_perC });
    return { warmer, targets: tensions, slack };
  });
}

/**
 * Change of tension of a cable between rigid anchors, to first order: EA ((alpha_frame - alpha_cable) dt - c / L).
 *
 * @param cable - stiffness EA [N], length L [mm], expansion of the cable [1/degC] and of what it stands on [1/degC], warmth dt [degC],
 *   closing c of the anchors beside that of temperature [mm]
 * @returns change of tension [N]
 * @throws RangeError when the length is not positive
 * Valid: a first guess and a check, the frame gives way and the cable's length changes a little
 * Source: en-1993-1-11, restrained bar, as a public validation note applies it
 */
export function rigidFrameChange({
  stiffness,
  length,
  expansion_cable_perC,
  expansion_frame_perC,
  warmer,
  closing,
}: {
  readonly stiffness: AxialStiffness;
  readonly length: Mm;
  readonly expansion_cable_perC: number;
  readonly expansion_frame_perC: number;
  readonly warmer: Celsius;
  readonly closing: Mm;
}): Newton {
  if (!(length > 0)) throw new RangeError(`length ${length} mm must be positive`);
  return stiffness * ((expansion_frame_perC - expansion_cable_perC) * warmer - closing / length);
}
