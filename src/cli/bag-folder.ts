// What lies in a folder that is a bag, and how is it hashed? Links are named and not followed.
import { createHash } from "node:crypto";
import { join } from "node:path";
import type { Digest, Entry } from "../bag/bag.ts";
import type { Files } from "./effects.ts";

export const digest: Digest = ({ name }, bytes) => createHash(name).update(bytes).digest("hex");

/** Everything below a folder, in the order of the paths. */
export const walk = (files: Files, folder: string): readonly Entry[] => {
  const below = (under: string): readonly Entry[] =>
    [...(files.list(join(folder, under)) ?? [])].sort().flatMap((name) => {
      const path = under === "" ? name : `${under}/${name}`;
      const kind = files.kind(join(folder, path));
      if (kind === undefined) return []; // gone meanwhile
      return [{ path, kind }, ...(kind === "folder" ? below(path) : [])];
    });
  return below("");
};

/** A file that is there; what vanishes between two looks is a fault of the machine's. */
export const readFile = (files: Files, path: string): Uint8Array => {
  const bytes = files.read(path);
  if (bytes === undefined) throw new Error(`${path} was there a moment ago and is gone`);
  return bytes;
};

export const isSame = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;
