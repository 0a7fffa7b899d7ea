// How are labels and values written into a tag file, and read back? RFC 8493: a label, a colon, a blank, the value; a line that begins with a blank goes on.
import type { Tag } from "./bag.ts";

export const writeTags = (tags: readonly Tag[]): string => tags.map(({ label, value }) => `${label}: ${value}\n`).join("");

/** Lines of a tag file; the last may end without a line end. */
export const linesOf = (text: string): readonly string[] => {
  const lines = text.split(/\r\n|\n|\r/);
  return lines.at(-1) === "" ? lines.slice(0, -1) : lines;
};

/** The tags in their order, and the numbers of lines that are neither a tag nor the rest of one. */
export const readTags = (text: string): { readonly tags: readonly Tag[]; readonly wrongLines: readonly number[] } => {
  const tags: Tag[] = [];
  const wrongLines: number[] = [];
  for (const [index, line] of linesOf(text).entries()) {
    const last = tags.at(-1);
    const [, label, value = ""] = /^([^:\s](?:[^:]*[^:\s])?):[ \t](.*)$/.exec(line) ?? [];
    if (/^[ \t]/.test(line) && last !== undefined) tags.splice(-1, 1, { label: last.label, value: `${last.value} ${line.trim()}`.trim() });
    else if (label !== undefined) tags.push({ label, value: value.trim() });
    else wrongLines.push(index + 1);
  }
  return { tags, wrongLines };
};

/** Labels are the same in capitals and small letters. */
export const tagValue = (tags: readonly Tag[], label: string): string | undefined =>
  tags.find((tag) => tag.label.toLowerCase() === label.toLowerCase())?.value;
