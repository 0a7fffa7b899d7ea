// What is a bag? A folder of files with manifests of their hashes, as RFC 8493 has it (BagIt 1.0). Types, and the names it fixes.

/** Longest hash first: the order in which they are named. Length is that of the hash in hexadecimal digits. */
export const algorithms = [
  { name: "sha512", label: "SHA-512", digits: 128 },
  { name: "sha256", label: "SHA-256", digits: 64 },
  { name: "sha1", label: "SHA-1", digits: 40 },
  { name: "md5", label: "MD5", digits: 32 },
] as const;

export type Algorithm = (typeof algorithms)[number];

/** The hash in small hexadecimal digits; computed outside, where the packages for it are. */
export type Digest = (algorithm: Algorithm, bytes: Uint8Array) => string;

/** Something in a folder; a path has forward slashes and begins below the folder. */
export interface Entry {
  readonly path: string;
  readonly kind: "file" | "folder" | "link" | "other";
}

export interface Tag {
  readonly label: string;
  readonly value: string;
}

export interface Fault {
  /** The file in the bag, with its line where there is one. */
  readonly where: string;
  /** Damaged: the file is there and is another one. All else makes the bag incomplete, or no bag at all. */
  readonly kind: "damaged" | "incomplete";
  readonly what: string;
  readonly fix: string;
}

export const PAYLOAD = "data/";
export const DECLARATION_FILE = "bagit.txt";
export const INFO_FILE = "bag-info.txt";
export const OXUM = "Payload-Oxum";

export const anotherCopy = "take the bag from another copy";
