// Which checks say something else than they said?
import type { Check } from "../plan/plan.ts";
import type { Draft } from "./changes.ts";
import { wordDiffers } from "./differences.ts";
import type { Match } from "./match.ts";

/** A check that is new and passes, or passed and is gone, says nothing that anybody must know. */
export function checkChanges({ before, after, names }: Match): readonly Draft[] {
  const old = new Map(before.checks.map((check) => [renamed(check, names), check]));
  const now = new Map(after.checks.map((check) => [check.id, check]));
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((id): readonly Draft[] => {
    const [was, is] = [old.get(id), now.get(id)];
    const check = is ?? was;
    if (check === undefined || (was?.verdict ?? "pass") === (is?.verdict ?? "pass")) return [];
    return [
      {
        todo: is === undefined || is.verdict === "pass" ? "read" : "ask",
        subject: "check",
        what: was === undefined ? "added" : is === undefined ? "removed" : "changed",
        marks: [`${check.name}, ${check.where}`],
        differences: wordDiffers("verdict", [was?.verdict ?? null, is?.verdict ?? null]),
      },
    ];
  });
}

/** The id of a check with the marks that its posts and runs have now. */
const renamed = ({ id }: Check, names: Match["names"]): string => id.replace(/(?<=-)[A-Z]+\d+(?=-|$)/g, (mark) => names.get(mark) ?? mark);
