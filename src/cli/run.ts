// What does the user want, and is there anything to do at all? Small on purpose: the rest is loaded only when needed.
import { join } from "node:path";
import { findBrowser, wrongBrowserName } from "../pdf/find-browser.ts";
import { startBrowser } from "../pdf/start.ts";
import { packageRoot } from "../site/root.ts";
import { type Request, readArguments } from "./arguments.ts";
import type { Effects } from "./effects.ts";
import { faultText } from "./fault.ts";
import { programVersion } from "./program.ts";
import { survey, upToDate } from "./survey.ts";

/** Runs one command and gives the exit code: 0 fine, 1 problems in job files, 2 a fault of the program. */
export const run = async (words: readonly string[], effects: Effects): Promise<number> => {
  const request = readArguments(words, programVersion);
  if (request.command === "say") {
    effects.output.write(request.text);
    return 0;
  }
  if (request.command === "refuse") {
    effects.output.warn(request.text);
    return 1;
  }
  const warn = (line: string): void => effects.output.warn(`note: ${line}\n`);
  try {
    if (request.command === "schema") {
      effects.output.write((await import("./schema-command.ts")).schemaText(request.kind));
      return 0;
    }
    if (request.command === "blank") return (await import("./blank-command.ts")).blank(request.number, effects);
    if (request.command === "explain") return (await import("./explain-command.ts")).explainJob(request, effects);
    const prints = needsBrowser(request);
    const wrongName = prints ? wrongBrowserName(effects) : undefined;
    if (wrongName !== undefined) {
      effects.output.warn(wrongName);
      return 1;
    }
    const browser = prints ? findBrowser(effects) : undefined;
    if (request.command === "verify") return await (await import("./verify-command.ts")).verify(request, { effects, browser });
    if (request.command === "freeze") return await (await import("./freeze-command.ts")).freeze(request, { effects, browser });
    const found = survey(request.options, { effects, browser });
    if (typeof found === "string") {
      effects.output.warn(`${found}\n`);
      return 1;
    }
    for (const text of found.unread) effects.output.warn(text);
    if (request.command === "check") return (await import("./check-command.ts")).check(found, effects);
    if (upToDate(found, effects)) {
      effects.output.write(`nothing to do: ${found.unchanged.length} ${found.unchanged.length === 1 ? "job" : "jobs"} unchanged\n`);
      return found.unread.length > 0 ? 1 : 0;
    }
    const started =
      browser === undefined || found.changed.length === 0
        ? undefined
        : startBrowser(browser, { cache: join(packageRoot(), ".cache"), warn });
    started?.catch(() => {}); // told by whoever prints
    return await (await import("./build-command.ts")).build(found, { effects, browser, started });
  } catch (error) {
    effects.output.warn(faultText(error));
    return 2;
  }
};

/** What was printed by another browser is not current, so freezing asks which one it is, too. */
const needsBrowser = (request: Request): boolean => {
  if (request.command === "verify") return request.print;
  return (request.command === "build" || request.command === "freeze") && request.options.pdf;
};
