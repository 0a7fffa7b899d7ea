// Which force does a printed text begin with? Read by a reader of the tests' own.

const LB_N = 4.4482216152605;

/** "275 lbf (1.22 kN)" or "824 N (185 lbf)": the first value in N. */
export function readForce(text: string): number {
  const match = /^([\d.]+) (lbf|N|kN)/.exec(text);
  if (!match) throw new Error(`not a printed force: ${text}`);
  const [, digits = "", unit] = match;
  return Number(digits) * (unit === "lbf" ? LB_N : unit === "kN" ? 1000 : 1);
}

/** Three significant figures, or whole pounds (1 lbf = 4.4482216152605 N): one unit of the last printed digit at most. */
export const forceStep = (value: number): number => Math.max(LB_N, value * 0.01);
