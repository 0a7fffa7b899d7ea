// What does the list of jobs say of each? A table that is whole without scripts, and searchable with one.
import type { Verdict } from "../plan/plan.ts";
import { escapeText, richText } from "./escape.ts";

/** One job in the list. */
export interface ArchiveEntry {
  readonly number: string;
  readonly title: string;
  readonly place: string;
  readonly status: string;
  readonly revision: string;
  readonly date: string;
  /** First letters of the job file's hash, as at the foot of each sheet. */
  readonly code: string;
  readonly verdict: Verdict;
  readonly verdictText: string;
  readonly example: boolean;
}

export const jobTableHtml = (entries: readonly ArchiveEntry[]): string =>
  `<div class="scroll"><table class="jobs" id="jobs"><caption id="jobs-caption">${caption(entries.length)}</caption>` +
  `<thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join("")}</tr></thead>` +
  `<tbody>${entries.map(rowHtml).join("\n")}</tbody></table></div>`;

const heads = ["Number", "Title", "Place", "Status", "Revision", "Date", "Code", "Verdict"];

const caption = (count: number): string => (count === 1 ? "1 job" : `${count} jobs`);

/** Each cell says what it is where the head has no room, on a phone. */
const rowHtml = (entry: ArchiveEntry): string => {
  const number = escapeText(entry.number);
  const example = entry.example ? " <small>(example)</small>" : "";
  const cells = [
    `${richText(entry.title)}${example}`,
    richText(entry.place),
    escapeText(entry.status),
    escapeText(entry.revision),
    escapeText(entry.date),
    `<code>${escapeText(entry.code)}</code>`,
    richText(entry.verdictText),
  ];
  return (
    `<tr><th scope="row"><a class="reach" href="${number}/index.html">${number}</a></th>` +
    `${cells.map((cell, index) => `<td data-head="${heads[index + 1]}">${cell}</td>`).join("")}</tr>`
  );
};
