// Which characters can the sheets show? Those of the font that ships with them; a test compares both with the font's own files.

/** Any character that the sheets' font lacks: a printer would put a box, nothing, or another font's letter in its place. */
export const undrawn = new RegExp(
  `[^${[
    // Western Europe, and the signs of text
    String.raw` -~\u00a0-\u00ff\u0131\u0152\u0153\u02c6\u02da\u02dc\u2013\u2014\u2018-\u201a\u201c-\u201e\u2022\u2026\u2039\u203a\u2044\u20ac\u2122\u2212\u2215`,
    // Central Europe, the Baltic, Romania; of Turkey all but a dotted capital I
    String.raw`\u0100-\u0107\u010a-\u0113\u0116-\u011b\u011e-\u0123\u0126-\u0127\u012a-\u012b\u012e-\u012f\u0136-\u0137\u013b-\u013e\u0141-\u0148\u0150-\u0151\u0154-\u0155\u0158-\u015b\u015e-\u0165\u016a-\u016b\u016e-\u0173\u0178-\u017e\u0192\u0218-\u021b\u02c7\u02dd\u2020\u2113`,
  ].join("")}]`,
  "u",
);
