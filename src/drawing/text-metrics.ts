// How far do letters reach above and below their baseline? Shares of the size, for every letter of the sheets' font.

/** Height of capitals. */
export const CAPITAL = 0.668;
/** No letter reaches higher above the baseline, or further below it. */
export const ABOVE = 0.76;
export const BELOW = 0.22;
