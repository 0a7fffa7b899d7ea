// How does a manifest list files? A line each: the hash, blanks, the path with forward slashes.
import { type Algorithm, anotherCopy, type Fault } from "./bag.ts";
import { linesOf } from "./tags.ts";

export interface Listed {
  readonly path: string;
  /** In small digits. */
  readonly hash: string;
}

/** In the order of their paths, with two blanks, so that `sha256sum -c` reads it too. */
export const writeListing = (listed: readonly Listed[]): string =>
  [...listed]
    .sort((a, b) => (a.path < b.path ? -1 : 1))
    .map(({ path, hash }) => `${hash}  ${path}\n`)
    .join("");

/** What a manifest lists, and each line that says nothing or says what it must not. */
export const readListing = (
  text: string,
  { name, algorithm }: { readonly name: string; readonly algorithm: Algorithm },
): { readonly listed: readonly Listed[]; readonly faults: readonly Fault[] } => {
  const listed = new Map<string, Listed>();
  const faults: Fault[] = [];
  for (const [index, line] of linesOf(text).entries()) {
    const refuse = (what: string): void => {
      faults.push({ where: `${name}, line ${index + 1}`, kind: "incomplete", what, fix: anotherCopy });
    };
    const [, hash = "", encoded = ""] = /^([^ \t]+)[ \t]+(.+)$/.exec(line) ?? [];
    const path = decoded(encoded);
    if (encoded === "") refuse("this is not a hash and a path");
    else if (hash.length !== algorithm.digits || !/^[0-9a-f]+$/i.test(hash))
      refuse(`the hash is not ${algorithm.digits} hexadecimal digits`);
    else if (path === undefined) refuse(`the path ${encoded} has a percent sign that stands for nothing: only %0A, %0D and %25 do`);
    else if (leavesTheBag(path)) refuse(`the path ${path} may lead out of the bag; it was not followed`);
    else if (listed.has(path)) refuse(`${path} is listed twice`);
    else listed.set(path, { path, hash: hash.toLowerCase() });
  }
  return { listed: [...listed.values()], faults };
};

/** The only three signs that a path holds in another form. */
const encodedSigns: Readonly<Record<string, string>> = { "%0A": "\n", "%0D": "\r", "%25": "%" };

const decoded = (path: string): string | undefined =>
  /%(?!0A|0D|25)/i.test(path) ? undefined : path.replace(/%../g, (code) => encodedSigns[code.toUpperCase()] ?? code);

/** Steps up, roots, homes, drives, and what one system reads as a separator and another as a letter. */
const leavesTheBag = (path: string): boolean =>
  /^~|^[a-z]:|[\\\0]/i.test(path) || path.split("/").some((step) => step === "" || step === "." || step === "..");
