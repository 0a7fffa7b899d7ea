// Which characters can the sheets show? Those of the font that ships with them; a test compares both with the font's own files.

/** Any character that the sheets' font lacks: a printer would put a box, nothing, or another font's letter in its place. */
export const undrawn =
  /[^ -~\u00a0-\u00ff\u0131\u0152\u0153\u02c6\u02da\u02dc\u2013\u2014\u2018-\u201a\u201c-\u201e\u2022\u2026\u2039\u203a\u2044\u20ac\u2122\u2212\u2215]/u;
