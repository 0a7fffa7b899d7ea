// Which sources are marked somewhere on a sheet?
import { type SourceId, sources } from "../sources/sources.ts";
import type { Block, Cell, StepItem, Table, Text } from "./packet.ts";

/** Every source whose mark stands in the words of some block, in the order of the list of sources. Drawings carry no marks. */
export function sourcesMarkedIn(blocks: readonly Block[]): readonly SourceId[] {
  const marked = new Set<string>();
  for (const block of blocks) addOfBlock(block, marked);
  return Object.keys(sources).filter((id): id is SourceId => isSourceId(id) && marked.has(id));
}

const isSourceId = (text: string): text is SourceId => Object.hasOwn(sources, text);

function addOfBlock(block: Block, marked: Set<string>): void {
  switch (block.kind) {
    case "heading":
      addOf(block.text, marked);
      break;
    case "prose":
    case "caution":
      addOfAll(block.text, marked);
      break;
    case "list":
      addOfAll(block.items, marked);
      break;
    case "signatures":
      addOfAll(block.roles, marked);
      break;
    case "facts":
      for (const { name, value } of block.facts) addOfAll([name, value], marked);
      break;
    case "blanks":
      addOf(block.title, marked);
      for (const { label, unit } of block.rows) addOfAll([label, unit], marked);
      break;
    case "table":
      addOfTable(block, marked);
      break;
    case "steps":
      addOfAll([block.title, block.hold ?? ""], marked);
      for (const item of block.items) addOfStep(item, marked);
      break;
    case "drawing":
    case "break":
      break;
  }
}

function addOfTable({ caption, columns, rows, notes = [] }: Table, marked: Set<string>): void {
  addOf(caption, marked);
  for (const { head, sub = "" } of columns) addOfAll([head, sub], marked);
  for (const row of rows) {
    // By index: tables hold most words of a packet.
    for (let index = 0; index < row.length; index++) {
      const cell = row[index] as Cell;
      if (typeof cell === "string") addOf(cell, marked);
      else if ("text" in cell) addOf(cell.text, marked);
    }
  }
  addOfAll(notes, marked);
}

const addOfStep = ({ text, more = "", value = "" }: StepItem, marked: Set<string>): void => addOfAll([text, more, value], marked);

function addOfAll(texts: readonly Text[], marked: Set<string>): void {
  for (const text of texts) addOf(text, marked);
}

/** What stands in brackets, source or not. */
function addOf(text: Text, marked: Set<string>): void {
  for (let at = text.indexOf("["); at >= 0; at = text.indexOf("[", at + 1)) {
    const end = text.indexOf("]", at);
    if (end > at) marked.add(text.slice(at + 1, end));
  }
}
