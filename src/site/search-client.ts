// Which rows of the list hold the words that are typed? Runs in the browser, from a file as well as from a server.
/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import MiniSearch from "minisearch";

/** Letters that are no base with an accent, as one types them without. */
const plain: Readonly<Record<string, string>> = { ł: "l", đ: "d", ð: "d", ø: "o", ħ: "h", ı: "i", ß: "ss", æ: "ae", œ: "oe", þ: "th" };

/** A name is found without its accents too: Łódź by "lodz". */
const folded = (word: string): string =>
  [...word.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "")].map((letter) => plain[letter] ?? letter).join("");

const form = document.querySelector<HTMLFormElement>("form.search");
const words = document.querySelector<HTMLInputElement>("#words");
const found = document.querySelector<HTMLElement>("#found");
const rows = [...document.querySelectorAll<HTMLTableRowElement>("#jobs tbody tr")];

if (form !== null && words !== null && found !== null) {
  // The table is the data: what is found is what is shown, and there is no second list to keep true.
  const fields = [...document.querySelectorAll("#jobs thead th")].map((head) => head.textContent ?? "");
  const index = new MiniSearch<Record<string, string | number>>({
    fields,
    processTerm: folded,
    // A slip of the pen in a word is let pass; another number is another job.
    searchOptions: { prefix: true, fuzzy: (word) => (/\d/.test(word) ? false : 0.15), combineWith: "AND" },
  });
  index.addAll(
    rows.map((row, id) => ({ id, ...Object.fromEntries(fields.map((field, at) => [field, row.cells[at]?.textContent ?? ""])) })),
  );
  const show = (): void => {
    const asked = words.value.trim();
    const hits = asked === "" ? undefined : new Set(index.search(asked).map((hit) => Number(hit.id)));
    for (const [id, row] of rows.entries()) row.hidden = hits !== undefined && !hits.has(id);
    found.textContent = hits === undefined ? "" : `${hits.size} of ${rows.length} jobs`;
  };
  words.addEventListener("input", show);
  form.addEventListener("submit", (event) => event.preventDefault());
  form.hidden = false;
}
