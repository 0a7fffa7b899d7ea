// What stands in a new bag? Its payload, and the files that say what it is and hash it, the same bytes each time.
import { algorithms, DECLARATION_FILE, type Digest, INFO_FILE, OXUM, PAYLOAD, type Tag } from "./bag.ts";
import { writeListing } from "./listing.ts";
import { writeTags } from "./tags.ts";

export const DECLARATION = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";

export interface BagContent {
  /** By path below data/. */
  readonly payload: ReadonlyMap<string, Uint8Array>;
  /** What bag-info.txt says, but for the size of the payload, which is added. */
  readonly info: readonly Tag[];
  /** Further files beside data/, by name. */
  readonly notes: ReadonlyMap<string, string>;
}

/** RFC 8493 asks tools to know these two. */
const written = algorithms.filter(({ name }) => name === "sha256" || name === "sha512");

/** All files of the bag by path; dates are those of `info`, no clock is asked. */
export const makeBag = ({ payload, info, notes }: BagContent, digest: Digest): ReadonlyMap<string, Uint8Array> => {
  const encoder = new TextEncoder();
  const data = new Map([...payload].map(([path, bytes]) => [`${PAYLOAD}${path}`, bytes]));
  const size = [...payload.values()].reduce((sum, { length }) => sum + length, 0);
  const texts = new Map([
    [DECLARATION_FILE, DECLARATION],
    [INFO_FILE, writeTags([...info, { label: OXUM, value: `${size}.${payload.size}` }])],
    ...notes,
  ]);
  const tags = new Map<string, Uint8Array>([...texts].map(([path, text]) => [path, encoder.encode(text)]));
  const manifests = (prefix: string, files: ReadonlyMap<string, Uint8Array>): readonly (readonly [string, Uint8Array])[] =>
    written.map((algorithm) => {
      const listed = [...files].map(([path, bytes]) => ({ path, hash: digest(algorithm, bytes) }));
      return [`${prefix}-${algorithm.name}.txt`, encoder.encode(writeListing(listed))];
    });
  for (const [path, bytes] of manifests("manifest", data)) tags.set(path, bytes);
  for (const [path, bytes] of manifests("tagmanifest", tags)) tags.set(path, bytes);
  return new Map([...data, ...tags]);
};
