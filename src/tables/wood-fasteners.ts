// How hard is it to pull a lag screw or a nail straight out of the side of a piece of wood? The constants of the formulas.
import { type Cited, cite } from "../sources/cited.ts";
import { inches, poundsForce } from "./customary.ts";

/** W = constant x G^a x D^b: force per length of thread or shank in the main piece. */
export interface WithdrawalRule {
  /** For D in mm and W in N/mm. */
  readonly constant: number;
  readonly gravityPower: number;
  readonly diameterPower: number;
}

/** The source's constant is for pounds per inch and inches. */
const rule = (constant_lbfPerIn: number, gravityPower: number, diameterPower: number): WithdrawalRule => ({
  constant: poundsForce(constant_lbfPerIn) / inches(1) ** (1 + diameterPower),
  gravityPower,
  diameterPower,
});

export const lagScrewRule: Cited<WithdrawalRule> = cite(
  rule(1800, 1.5, 0.75),
  "nds-2018",
  "12.2.1: W = 1800 G^1.5 D^0.75 lb/in",
  "side grain; not for end grain alone",
);

export const nailRule: Cited<WithdrawalRule> = cite(rule(1380, 2.5, 1), "nds-2018", "12.2.3: W = 1380 G^2.5 D lb/in", "side grain only");
