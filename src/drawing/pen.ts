// Which pens are there? Few, told apart by width and dash alone, in black.
export type PenName = "heavy" | "outline" | "cable" | "edge" | "thin" | "hidden" | "centre" | "match";

interface Pen {
  readonly width: number;
  readonly dash: readonly number[];
}

const pens: Readonly<Record<PenName, Pen>> = {
  heavy: { width: 0.7, dash: [] },
  outline: { width: 0.5, dash: [] },
  cable: { width: 0.4, dash: [] },
  edge: { width: 0.3, dash: [] },
  thin: { width: 0.18, dash: [] },
  hidden: { width: 0.25, dash: [1.6, 0.9] },
  centre: { width: 0.18, dash: [5, 1, 1, 1] },
  match: { width: 0.5, dash: [6, 1.5, 1.5, 1.5] },
};

export const penWidth = (pen: PenName): number => pens[pen].width;

const attributesOf = ({ width, dash }: Pen): string =>
  ` stroke="#000" stroke-width="${width}"${dash.length > 0 ? ` stroke-dasharray="${dash.join(" ")}"` : ""}`;

/** How a line of each pen is written. */
const written: Readonly<Record<PenName, string>> = {
  heavy: attributesOf(pens.heavy),
  outline: attributesOf(pens.outline),
  cable: attributesOf(pens.cable),
  edge: attributesOf(pens.edge),
  thin: attributesOf(pens.thin),
  hidden: attributesOf(pens.hidden),
  centre: attributesOf(pens.centre),
  match: attributesOf(pens.match),
};

/** The attributes of a line of this pen, as markup. */
export const strokeOf = (pen: PenName): string => written[pen];
