// How does each block of a sheet become HTML?
import type { Block, Drawing, Steps } from "../packet/packet.ts";
import { asciiMarkup, escapeText, plainText, richText } from "./escape.ts";
import { tableHtml } from "./html-table.ts";

export const blockHtml = (block: Block): string => {
  switch (block.kind) {
    case "heading":
      return `<h3 id="${escapeText(block.id)}">${richText(block.text)}</h3>`;
    case "prose":
      return block.text.map((text) => `<p>${richText(text)}</p>`).join("");
    case "list":
      return `<ul>${block.items.map((item) => `<li>${richText(item)}</li>`).join("")}</ul>`;
    case "facts":
      return factsHtml(block);
    case "caution":
      return `<div class="caution ${block.level}"><p class="level">${block.level}</p>${block.text.map((text) => `<p>${richText(text)}</p>`).join("")}</div>`;
    case "blanks":
      return blanksHtml(block);
    case "signatures":
      return signaturesHtml(block);
    case "break":
      return '<div class="break"></div>';
    case "table":
      return tableHtml(block);
    case "drawing":
      return drawingHtml(block);
    case "steps":
      return stepsHtml(block, "");
  }
};

/** The blocks of a sheet: the heading and the cautions right before a list of steps stand in one box with its head, and stay with it. */
export function flowHtml(blocks: readonly Block[]): string {
  const parts: string[] = [];
  let opening: string[] = [];
  for (const block of blocks) {
    if (block.kind === "heading") {
      parts.push(...opening);
      opening = [blockHtml(block)];
    } else if (block.kind === "caution" && opening.length > 0) opening.push(blockHtml(block));
    else {
      if (block.kind === "steps") parts.push(stepsHtml(block, opening.join("")));
      else parts.push(...opening, blockHtml(block));
      opening = [];
    }
  }
  return [...parts, ...opening].join("\n");
}

type Of<K extends Block["kind"]> = Extract<Block, { kind: K }>;

const factsHtml = ({ id, facts }: Of<"facts">): string =>
  `<dl class="facts${facts.length <= SHORT ? " short" : ""}" id="${escapeText(id)}">${facts
    .map(
      (fact) =>
        `<div><dt>${richText(fact.name)}</dt><dd>${fact.strong === true ? `<strong class="critical">${richText(fact.value)}</strong>` : richText(fact.value)}</dd></div>`,
    )
    .join("")}</dl>`;

const blanksHtml = ({ id, title, rows }: Of<"blanks">): string =>
  `<div class="blanks${rows.length <= SHORT ? " short" : ""}" id="${escapeText(id)}"><h3>${richText(title)}</h3>${rows
    .map(
      ({ label, unit, key }) =>
        `<p class="row"><span class="label">${richText(label)}${key === undefined ? "" : ` <code>${escapeText(key)}</code>`}</span><span class="line"></span><span class="unit">${richText(unit)}</span></p>`,
    )
    .join("")}</div>`;

/** So few lines stay together, and with what stands before them. */
const SHORT = 4;

const signaturesHtml = ({ id, roles }: Of<"signatures">): string =>
  `<div class="signatures" id="${escapeText(id)}">${roles
    .map(
      (role) =>
        `<p class="row"><span class="label">${richText(role)}</span><span class="line"></span><span class="unit">date</span><span class="line date"></span></p>`,
    )
    .join("")}</div>`;

// The whole drawing is one picture with its words beside it: its own text would be read as a heap of numbers.
const drawingHtml = ({ id, title, description, svg }: Drawing): string =>
  `<figure id="${escapeText(id)}"><div class="scroll" tabindex="0" role="group" aria-label="${plainText(title)}, drawing">` +
  `${named(asciiMarkup(svg), `${title}. ${description}`)}</div>` +
  `<figcaption><strong>${richText(title)}</strong><span class="words">${richText(description)}</span></figcaption></figure>`;

/** A drawing that does not say itself what it is gets its words as a label. */
const named = (svg: string, words: string): string =>
  /^\s*<svg\b[^>]*\brole=/.test(svg) ? svg : svg.replace(/^\s*<svg\b/, `<svg role="img" aria-label="${plainText(words)}"`);

const stepsHtml = ({ id, title, mode, items, hold }: Steps, opening: string): string => {
  const how = mode === "read-do" ? "Read each line, then do it, then tick it." : "Do the work, then stop and confirm each line.";
  const lines = items.map((item) => {
    const value =
      item.value === undefined
        ? ""
        : `<span class="reading"><span class="line"></span><span class="unit">${richText(item.value)}</span></span>`;
    const more = item.more === undefined ? "" : `<span class="more">${richText(item.more)}</span>`;
    const must = item.killer === true ? '<span class="must">MUST</span> ' : "";
    return `<li${item.killer === true ? ' class="killer"' : ""}><span class="tick"></span><span class="do">${must}${richText(item.text)}${more}</span>${value}</li>`;
  });
  const stop =
    hold === undefined
      ? ""
      : `<div class="hold"><p><strong>HOLD POINT.</strong> ${richText(hold)}</p><p class="row"><span class="label">Initials, when it is signed on Z-804</span><span class="line date"></span></p></div>`;
  return `<section class="steps ${mode}" id="${escapeText(id)}"><div class="steps-head">${opening}<h3>${richText(title)}</h3><p class="mode">${how}</p></div><ol>${lines.join("")}</ol>${stop}</section>`;
};
