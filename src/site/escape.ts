// How does text become HTML? Escaped by construction; **bold** is the only markup there is.

const special: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
// One character above 0xFF makes the engine store a whole page at two bytes a character, so those become entities.
const needsCare = /[&<>"'\u0100-\uffff]/;
const careful = /[&<>"'\u0100-\u{10ffff}]/gu;

/** Text for element content or a quoted attribute. */
export const escapeText = (text: string): string =>
  needsCare.test(text) ? text.replace(careful, (character) => special[character] ?? entity(character)) : text;

// Between tags quotes are letters like others, and a table of feet and inches is full of them.
const needsCareInside = /[&<>*\u0100-\uffff]/;
const carefulInside = /[&<>\u0100-\u{10ffff}]/gu;

/**
 * A length of more than one part: 5-7/8", 22'-10 1/2"; a value in brackets: (770 mm), (2.37 kN); a mark of a sheet, a cable, a bore or a tile:
 * Z-603, R1-05, T4-3; a thread: 1/4-28. Torn at its hyphen or its space it reads as another.
 */
const torn = /(?:\d+'-)?\d+[- ]\d+\/\d+"?|\d+'-\d+"|\(\d[\d.]* (?:mm|k?N|MPa|N m)\)|\b[A-Z]{1,2}\d*-\d+|\b\d+\/\d+-\d+|\b\d+ %/g;

/** What a text must hold to be changed by either: most hold nothing of it, and one look costs a fifth of replacing nothing twice. */
const needsMarkup = /[&<>*\u0100-\uffff]|\d(?:'-\d|[- ]\d+\/\d| (?:mm|k?N|MPa|N m)\)|-\d| %)|[A-Z]-\d/;

/** Text with its **bold** stretches as <strong> and its lengths in one piece, for element content only. */
export const richText = (text: string): string =>
  needsMarkup.test(text) ? richLine(text).replace(torn, '<span class="n">$&</span>') : text;

/** The same where all of it stands on one line. */
export const richLine = (text: string): string => {
  if (!needsCareInside.test(text)) return text;
  const safe = text.replace(carefulInside, (character) => special[character] ?? entity(character));
  return safe.includes("**") ? safe.replace(/\*\*(.+?)\*\*/gs, "<strong>$1</strong>") : safe;
};

/** Text with the marks of its markup taken away, for attributes and titles. */
export const plainText = (text: string): string => escapeText(text.replace(/\*\*(.+?)\*\*/gs, "$1"));

/** Finished markup with its characters above 0xFF as entities. */
export const asciiMarkup = (markup: string): string =>
  /[\u0100-\uffff]/.test(markup) ? markup.replace(/[\u0100-\u{10ffff}]/gu, entity) : markup;

const entity = (character: string): string => `&#${character.codePointAt(0) ?? 0xfffd};`;

/** A quoted CSS string that can't leave its quotes, its rule or its style element. */
export const cssString = (text: string): string =>
  `"${text.replace(/[^A-Za-z0-9 .,:()+-]/gu, (character) => `\\${(character.codePointAt(0) ?? 0xfffd).toString(16)} `)}"`;
