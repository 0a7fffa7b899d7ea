// Can the output folder be written to? Asked before anything is made, so that nothing is left half done.
import { join } from "node:path";
import type { Files } from "./effects.ts";
import { systemCode } from "./fault.ts";

/** Tried with an empty file, which is removed again; undefined when all is well. */
export const whyUnwritable = (files: Files, out: string): string | undefined => {
  const probe = join(out, ".probe");
  try {
    files.writeWhole(probe, "");
    files.remove(probe);
    return undefined;
  } catch (error) {
    const code = systemCode(error);
    if (code === undefined) throw error;
    const isFile = code === "ENOTDIR" || code === "EEXIST";
    const why = isFile ? "a file stands in its way" : `the system refuses it, ${code}`;
    return `nothing can be written to the folder "${out}": ${why}\n  fix: name another folder after --out, or see that you may write to this one\n`;
  }
};
