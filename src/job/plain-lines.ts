// Which data does a job file hold that is written plainly, each value on one line? Ten times as quick as the parser of YAML.

type Block = Record<string, unknown>;

interface Line {
  readonly indent: number;
  readonly body: string;
}

interface Cursor {
  readonly lines: Line[];
  at: number;
}

/** Tabs, unusual spaces, signs that are not seen, what might end a line: left to the parser of YAML. */
const ODD_SIGN = /[^\n\x20-\x7e\u00a1-\u024f\u2010-\u2027]/;
const KEY = /^([A-Za-z](?:[A-Za-z0-9 -]*[A-Za-z0-9])?):(?: +(.*))?$/;
const MOST_DEPTH = 10;
const MOST_ENTRIES = 400;
/** A longer line is no plain one: YAML ends a key after 1024 letters. */
const MOST_LETTERS = 1000;

/**
 * Blocks, lists and texts as the parser of YAML reads them, each value the text that was written; undefined where anything stands in
 * the file whose meaning a reader might have to look up, and where anything is wrong with it: then the parser says what.
 */
export function readPlainLines(text: string): Block | undefined {
  if (ODD_SIGN.test(text)) return undefined;
  const lines: Line[] = [];
  for (const line of text.split("\n")) {
    if (line.length > MOST_LETTERS) return undefined;
    const body = line.trim();
    if (body !== "" && !body.startsWith("#")) lines.push({ indent: line.search(/[^ ]/), body });
  }
  if (lines[0]?.indent !== 0) return undefined;
  const cursor = { lines, at: 0 };
  const block = readBlock(cursor, 0, 0);
  return cursor.at === lines.length ? block : undefined;
}

/** Lines of keys that begin in one column. */
function readBlock(cursor: Cursor, indent: number, depth: number): Block | undefined {
  // Without a prototype, as every block of a job file.
  const block: Block = Object.create(null);
  let left = MOST_ENTRIES;
  for (let line = cursor.lines[cursor.at]; line !== undefined && line.indent >= indent; line = cursor.lines[cursor.at]) {
    const [, key, written = ""] = (line.indent === indent && KEY.exec(line.body)) || [];
    left -= 1;
    if (key === undefined || key in block || left < 0) return undefined;
    cursor.at += 1;
    const isEmpty = written === "" || written.startsWith("#");
    const value = isEmpty ? readBelow(cursor, indent, depth + 1) : readValue(written);
    if (value === undefined) return undefined;
    block[key] = value;
  }
  return block;
}

/** What belongs to a key with nothing behind it: the block or the list below, which may begin in the column of its key. */
function readBelow(cursor: Cursor, indent: number, depth: number): unknown {
  if (depth > MOST_DEPTH) return undefined;
  const line = cursor.lines[cursor.at];
  if (line === undefined || line.indent < indent) return "";
  if (line.body.startsWith("- ")) return readList(cursor, line.indent, depth);
  return line.indent === indent ? "" : readBlock(cursor, line.indent, depth);
}

function readList(cursor: Cursor, indent: number, depth: number): readonly unknown[] | undefined {
  const list: unknown[] = [];
  for (let line = cursor.lines[cursor.at]; line?.indent === indent && line.body.startsWith("- "); line = cursor.lines[cursor.at]) {
    const written = line.body.slice(2);
    let value: unknown;
    if (KEY.test(written)) {
      // An entry that is a block begins behind its hyphen.
      cursor.lines[cursor.at] = { indent: indent + 2, body: written };
      value = readBlock(cursor, indent + 2, depth + 1);
    } else {
      cursor.at += 1;
      value = readValue(written);
    }
    if (value === undefined || list.length === MOST_ENTRIES) return undefined;
    list.push(value);
  }
  return list;
}

/** Quoted without any sign that has a meaning inside quotation marks; nothing behind it but a comment. */
const QUOTED = /^(?:"([^"\\]*)"|'([^']*)')(?: +#.*)?$/;
const PLAIN = /^[A-Za-z0-9\u00a1-\u024f]/;

function readValue(written: string): unknown {
  if (PLAIN.test(written)) {
    const comment = written.indexOf(" #");
    const text = comment === -1 ? written : written.slice(0, comment).trimEnd();
    return text.includes(": ") || text.endsWith(":") ? undefined : text;
  }
  if (written.startsWith("{") || written.startsWith("[")) return readBraces(written);
  const [, double, single] = QUOTED.exec(written) ?? [];
  return double ?? single;
}

/** One step through braces: a sign that opens, closes or parts; a key; a text without any sign that might have a meaning. */
const STEP = / *(?:([{}[\],])|([A-Za-z](?:[A-Za-z0-9 -]*[A-Za-z0-9])?): +|([A-Za-z0-9][^,:#"'{}[\]]*)|"([^"\\]*)"|'([^']*)')/y;

interface Braces {
  readonly written: string;
  at: number;
}

function readBraces(written: string): unknown {
  const braces = { written, at: 0 };
  const value = readInside(braces, 0);
  return /^(?: +#.*)?$/.test(written.slice(braces.at)) ? value : undefined;
}

function step(braces: Braces): RegExpExecArray | undefined {
  STEP.lastIndex = braces.at;
  const found = STEP.exec(braces.written) ?? undefined;
  if (found !== undefined) braces.at = STEP.lastIndex;
  return found;
}

/** A text, { key: value, ... } or [value, ...], none of them empty. */
function readInside(braces: Braces, depth: number): unknown {
  const [, sign, , word, double, single] = step(braces) ?? [];
  if (sign === undefined) return word?.trimEnd() ?? double ?? single;
  if ((sign !== "{" && sign !== "[") || depth > MOST_DEPTH) return undefined;
  const [list, block]: [unknown[], Block] = [[], Object.create(null)];
  for (;;) {
    const key = sign === "{" ? step(braces)?.[2] : undefined;
    if (sign === "{" && (key === undefined || key in block)) return undefined;
    const value = readInside(braces, depth + 1);
    if (value === undefined) return undefined;
    if (key === undefined) list.push(value);
    else block[key] = value;
    const after = step(braces)?.[1];
    if (after === (sign === "{" ? "}" : "]")) return key === undefined ? list : block;
    if (after !== ",") return undefined;
  }
}
