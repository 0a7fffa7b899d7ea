// Does everything fit its page? Measured in the page before it is printed, sheet by sheet.
/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

export interface Misfit {
  /** The sheet's heading as printed: "Z-603 Bores". */
  readonly sheet: string;
  /** The element, by its id or by its nearest ancestor's, with its first words. */
  readonly element: string;
  readonly what: string;
}

/** Height of a printed page between its margins, in CSS pixels. */
export type PageHeights = Readonly<Record<"portrait" | "landscape", number>>;

/**
 * Runs inside the page, so it may use nothing from outside itself.
 * A whole pixel of play is given: boxes are snapped to pixels when they are laid out.
 */
export const measureInPage = async ({ heights }: { readonly heights: PageHeights }): Promise<Misfit[]> => {
  const play = 1.01;
  const smallest_px = 9 * (96 / 72) - 0.01;
  const looked = [...document.querySelectorAll<HTMLElement>(".sheet")];
  const misfits: Misfit[] = [];
  const nameOf = (element: Element): string => {
    const own = element.closest("[id]");
    const words = (element.textContent ?? "").replace(/\s+/g, " ").trim().slice(0, 40);
    return `${element.tagName.toLowerCase()}${own === null ? "" : ` in #${own.id}`}${words === "" ? "" : ` "${words}"`}`;
  };
  // Style is asked once for each way of standing: what an element and the two around it are called decides its letters here.
  const known = new Map<string, number>();
  const callOf = (element: Element | null): string =>
    element === null
      ? ""
      : `${element.tagName} ${element.getAttribute("class") ?? ""} ${element.getAttribute("style") ?? ""} ${element.getAttribute("font-size") ?? ""}`;
  const sizeOf = (element: Element): number => {
    const above = element.parentElement;
    const key = `${callOf(element)}<${callOf(above)}<${callOf(above?.parentElement ?? null)}<${callOf(above?.parentElement?.parentElement ?? null)}`;
    const size = known.get(key) ?? Number.parseFloat(getComputedStyle(element).fontSize);
    known.set(key, size);
    return size;
  };
  /** Each element that holds letters of its own, with their height in CSS pixels. */
  const lettersOf = (sheet: HTMLElement): Map<Element, number> => {
    const sizes = new Map<Element, number>();
    const scales = new Map<SVGSVGElement, number>();
    const walker = document.createTreeWalker(sheet, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const element = node.parentElement;
      if (element === null || sizes.has(element) || !/\S/.test(node.nodeValue ?? "") || /^(title|desc|style)$/.test(element.tagName))
        continue;
      const owner = element instanceof SVGElement ? element.ownerSVGElement : null;
      let scale = 1;
      if (owner !== null) {
        scale = scales.get(owner) ?? owner.getBoundingClientRect().width / (owner.viewBox.baseVal.width || owner.width.baseVal.value);
        scales.set(owner, scale);
      }
      sizes.set(element, sizeOf(element) * scale);
    }
    return sizes;
  };
  for (const sheet of looked) sheet.style.contentVisibility = "visible";
  for (const sheet of looked) {
    const name = (sheet.querySelector("h2")?.textContent ?? "").replace(/\s+/g, " ").trim();
    const report = (element: Element, what: string): void => {
      misfits.push({ sheet: name, element: nameOf(element), what });
    };
    const box = sheet.getBoundingClientRect();
    const high = heights[sheet.classList.contains("landscape") ? "landscape" : "portrait"];
    const leaves = (rect: DOMRect): boolean => rect.right > box.right + play || rect.left < box.left - play;
    for (const element of sheet.querySelectorAll("figure, svg, tr")) {
      if (element.getBoundingClientRect().height > high + play) report(element, "is higher than its page");
    }
    // A sheet that holds nothing wider than itself needs no look at each of its elements.
    const wide = sheet.scrollWidth > sheet.clientWidth + play;
    // Lines and shapes of a drawing are clipped by its own edge: only the drawing as a whole and its letters matter.
    for (const element of wide ? sheet.querySelectorAll("*:not(svg *)") : []) {
      const rect = element.getBoundingClientRect();
      if (rect.width === 0 && rect.height === 0) continue;
      if (leaves(rect)) report(element, "is wider than its page");
      else if (element.scrollWidth > element.clientWidth + play && element.clientWidth > 0)
        report(element, "holds a word that is wider than its place");
    }
    for (const element of sheet.querySelectorAll("svg text"))
      if (leaves(element.getBoundingClientRect())) report(element, "is wider than its page");
    for (const [element, size] of lettersOf(sheet))
      if (size < smallest_px) report(element, `has letters of ${(size * 72) / 96} pt, below 9 pt`);
  }
  for (const sheet of looked) sheet.style.contentVisibility = "";
  return misfits;
};
