// Is a bag complete and valid? As RFC 8493 asks it; nothing is followed out of the bag.
import {
  type Algorithm,
  algorithms,
  anotherCopy,
  DECLARATION_FILE,
  type Digest,
  type Entry,
  type Fault,
  INFO_FILE,
  OXUM,
  PAYLOAD,
  type Tag,
} from "./bag.ts";
import { type Listed, readListing } from "./listing.ts";
import { linesOf, readTags, tagValue } from "./tags.ts";

export interface BagSource {
  /** Everything below the folder, links not followed. */
  readonly entries: readonly Entry[];
  readonly read: (path: string) => Uint8Array;
  readonly digest: Digest;
}

export interface BagCheck {
  /** None: complete and valid. */
  readonly faults: readonly Fault[];
  /** Files beside data/ that no tag manifest lists: allowed, but nothing guards them. */
  readonly unguarded: readonly string[];
  readonly info: readonly Tag[];
  readonly payload: { readonly files: number; readonly bytes: number };
  /** Those of the payload manifests that were read. */
  readonly algorithms: readonly Algorithm[];
}

interface Manifest {
  readonly name: string;
  readonly algorithm: Algorithm;
  readonly isTags: boolean;
  readonly listed: readonly Listed[];
}

/** Reads every file once, one after another. */
export const checkBag = ({ entries, read, digest }: BagSource): BagCheck => {
  const present = new Set(entries.filter(({ kind }) => kind === "file").map(({ path }) => path));
  const text = (path: string): string | undefined => (present.has(path) ? decodeText(read(path)) : undefined);
  const { manifests, faults: manifestFaults } = readManifests(present, text);
  const { tags, faults: infoFaults } = readInfo(present, text);
  const hashed = checkHashes(manifests, { present, read, digest });
  const payload = [...present].filter((path) => path.startsWith(PAYLOAD));
  const bytes = payload.reduce((sum, path) => sum + (hashed.sizes.get(path) ?? read(path).length), 0);
  const guarded = new Set(manifests.filter(({ isTags }) => isTags).flatMap(({ listed }) => listed.map(({ path }) => path)));
  return {
    faults: [
      ...checkKinds(entries),
      ...checkDeclaration(present, text),
      ...checkPlaces(entries, manifests),
      ...manifestFaults,
      ...infoFaults,
      ...checkListed(manifests, present),
      ...hashed.faults,
      ...checkOxum(tags, { files: payload.length, bytes }),
    ],
    unguarded: [...present].filter((path) => !path.startsWith(PAYLOAD) && !guarded.has(path) && manifestName(path)?.isTags !== true),
    info: tags,
    payload: { files: payload.length, bytes },
    algorithms: algorithms.filter((algorithm) => manifests.some((manifest) => !manifest.isTags && manifest.algorithm === algorithm)),
  };
};

/** undefined where the bytes are no UTF-8. */
const decodeText = (bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

type TextOf = (path: string) => string | undefined;

const incomplete = (where: string, what: string, fix = anotherCopy): Fault => ({ where, kind: "incomplete", what, fix });

const notUtf8 = (where: string): Fault => ({ where, kind: "damaged", what: "this is no text in UTF-8", fix: anotherCopy });

/** A link shows another file tomorrow, and a device is no file: neither is followed or opened. */
const checkKinds = (entries: readonly Entry[]): readonly Fault[] =>
  entries
    .filter(({ kind }) => kind === "link" || kind === "other")
    .map(({ path, kind }) =>
      incomplete(
        path,
        kind === "link" ? "this is a link, which a bag must not hold; it was not followed" : "this is neither a file nor a folder",
        "take it out and put the file itself there, from another copy of the bag",
      ),
    );

const checkDeclaration = (present: ReadonlySet<string>, text: TextOf): readonly Fault[] => {
  if (!present.has(DECLARATION_FILE)) {
    return [incomplete(DECLARATION_FILE, "this file is missing, so the folder is no bag", `name the folder of a bag, or ${anotherCopy}`)];
  }
  const lines = linesOf(text(DECLARATION_FILE) ?? "");
  const [, version] = /^BagIt-Version: (\d+\.\d+)$/.exec(lines[0] ?? "") ?? [];
  const [, encoding] = /^Tag-File-Character-Encoding: (\S+)$/.exec(lines[1] ?? "") ?? [];
  if (version === undefined || encoding === undefined || lines.length !== 2) {
    return [incomplete(DECLARATION_FILE, "these are not the two lines that every bag begins with: version and encoding")];
  }
  const later = "check it with a program that knows it";
  return [
    ...(version === "1.0"
      ? []
      : [incomplete(DECLARATION_FILE, `the bag is of version ${version}; only 1.0 (RFC 8493) can be checked here`, later)]),
    ...(encoding.toUpperCase() === "UTF-8"
      ? []
      : [incomplete(DECLARATION_FILE, `its texts are in ${encoding}; only UTF-8 can be read here`, later)]),
  ];
};

/** What every bag has. */
const checkPlaces = (entries: readonly Entry[], manifests: readonly Manifest[]): readonly Fault[] => [
  ...(entries.some(({ path, kind }) => kind === "folder" && `${path}/` === PAYLOAD) ? [] : [incomplete(PAYLOAD, "this folder is missing")]),
  ...(manifests.some(({ isTags }) => !isTags) ? [] : [incomplete("manifest-sha256.txt", "there is no manifest that could be read")]),
];

const manifestName = (path: string): { readonly isTags: boolean; readonly word: string } | undefined => {
  const [, tag, word] = /^(tag)?manifest-([^/]+)\.txt$/.exec(path) ?? [];
  return word === undefined ? undefined : { isTags: tag !== undefined, word };
};

const readManifests = (
  present: ReadonlySet<string>,
  text: TextOf,
): { readonly manifests: readonly Manifest[]; readonly faults: readonly Fault[] } => {
  const manifests: Manifest[] = [];
  const faults: Fault[] = [];
  for (const name of present) {
    const named = manifestName(name);
    if (named === undefined) continue;
    const algorithm = algorithms.find((one) => one.name === named.word);
    const content = text(name);
    if (algorithm === undefined) {
      faults.push(
        incomplete(name, `hashes of the kind "${named.word}" can't be checked here`, "check the bag with a program that knows them"),
      );
    } else if (content === undefined) {
      faults.push(notUtf8(name));
    } else {
      const { listed, faults: wrong } = readListing(content, { name, algorithm });
      const fits = ({ path }: Listed): boolean =>
        named.isTags ? !path.startsWith(PAYLOAD) && manifestName(path)?.isTags !== true : path.startsWith(PAYLOAD);
      const misplaced = listed.filter((one) => !fits(one)).map(({ path }) => incomplete(name, `${path} has no place in this manifest`));
      faults.push(...wrong, ...misplaced);
      manifests.push({ name, algorithm, isTags: named.isTags, listed: listed.filter(fits) });
    }
  }
  return { manifests, faults };
};

const readInfo = (present: ReadonlySet<string>, text: TextOf): { readonly tags: readonly Tag[]; readonly faults: readonly Fault[] } => {
  if (!present.has(INFO_FILE)) return { tags: [], faults: [] };
  const content = text(INFO_FILE);
  if (content === undefined) return { tags: [], faults: [notUtf8(INFO_FILE)] };
  const { tags, wrongLines } = readTags(content);
  return { tags, faults: wrongLines.map((line) => incomplete(`${INFO_FILE}, line ${line}`, "this is no label with a colon and a value")) };
};

/** Each manifest lists every payload file, each tag manifest every payload manifest; and what is listed is there. */
const checkListed = (manifests: readonly Manifest[], present: ReadonlySet<string>): readonly Fault[] => {
  const lost = new Map<string, string[]>();
  const unlisted = new Map<string, string[]>();
  const add = (to: Map<string, string[]>, path: string, name: string): void => {
    to.set(path, [...(to.get(path) ?? []), name]);
  };
  for (const { name, isTags, listed } of manifests) {
    const paths = new Set(listed.map(({ path }) => path));
    const isAsked = (path: string): boolean => (isTags ? manifestName(path)?.isTags === false : path.startsWith(PAYLOAD));
    for (const path of paths) if (!present.has(path)) add(lost, path, name);
    for (const path of present) if (isAsked(path) && !paths.has(path)) add(unlisted, path, name);
  }
  return [
    ...[...lost].map(([path, names]) =>
      incomplete(path, `missing, though ${names.join(" and ")} ${names.length === 1 ? "lists" : "list"} it`),
    ),
    ...[...unlisted].map(([path, names]) =>
      incomplete(
        path,
        `not in ${names.join(" or ")}: put there later, or its line is lost`,
        `move it out of the bag if it was put there; else ${anotherCopy}`,
      ),
    ),
  ];
};

interface HashContext {
  readonly present: ReadonlySet<string>;
  readonly read: (path: string) => Uint8Array;
  readonly digest: Digest;
}

const checkHashes = (
  manifests: readonly Manifest[],
  { present, read, digest }: HashContext,
): { readonly faults: readonly Fault[]; readonly sizes: ReadonlyMap<string, number> } => {
  const asked = new Map<string, { readonly manifest: Manifest; readonly hash: string }[]>();
  for (const manifest of manifests) {
    for (const { path, hash } of manifest.listed) if (present.has(path)) asked.set(path, [...(asked.get(path) ?? []), { manifest, hash }]);
  }
  const sizes = new Map<string, number>();
  const faults = [...asked].flatMap(([path, hashes]): readonly Fault[] => {
    const bytes = read(path);
    sizes.set(path, bytes.length);
    const wrong = hashes.filter(({ manifest, hash }) => digest(manifest.algorithm, bytes) !== hash);
    if (wrong.length === 0) return [];
    if (wrong.length < hashes.length) {
      const names = wrong.map(({ manifest }) => manifest.name).join(", ");
      const what = `its line for ${path} is wrong, while another manifest says that the file is as it was`;
      return [{ where: names, kind: "damaged", what, fix: anotherCopy }];
    }
    const labels = wrong.map(({ manifest }) => manifest.algorithm.label).join(" and ");
    return [
      {
        where: path,
        kind: "damaged",
        what: `damaged or changed: not the bytes that were frozen, by ${labels}`,
        fix: `do not use it; ${anotherCopy}`,
      },
    ];
  });
  return { faults, sizes };
};

const checkOxum = (tags: readonly Tag[], { files, bytes }: BagCheck["payload"]): readonly Fault[] => {
  const stated = tagValue(tags, OXUM);
  const found = `${bytes}.${files}`;
  if (stated === undefined || stated === found) return [];
  return [incomplete(INFO_FILE, `${OXUM} says ${stated} (bytes.files of the payload), there are ${found}`)];
};
