// How is the browser started? In its own process tree over pipes, inside its sandbox wherever the system allows that.
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { type Pipe, pipeOf } from "./pipe.ts";

export interface LaunchOptions {
  readonly path: string;
  readonly libraries: string | undefined;
  readonly warn: (line: string) => void;
  /** Empty pages to have; the second is asked for before the client is loaded that will use it. */
  readonly pages: number;
}

export interface RunningBrowser {
  readonly pipe: Pipe;
  readonly version: string;
  /** Ends the browser at once and removes its profile. */
  readonly kill: () => void;
}

/** Never --single-process, never web security off: the first is unsupported and grows, the second is nobody's need. */
const flags = [
  "--headless",
  "--remote-debugging-pipe",
  "--disable-dev-shm-usage",
  "--font-render-hinting=none",
  "--disable-extensions",
  "--disable-component-update",
  "--disable-background-networking",
  "--disable-sync",
  "--disable-default-apps",
  "--disable-gpu",
  "--hide-scrollbars",
  "--mute-audio",
  "--no-first-run",
  "--no-default-browser-check",
  "--no-pings",
  "--password-store=basic",
  "--use-mock-keychain",
];

/** Above all ids of the client that takes the pipe over, which leaves answers to unknown ids alone. */
const OUR_IDS = 1_000_000_000;

/** Words by which a browser says that it can't have its sandbox here. */
const sandboxWords = /no-sandbox|usable sandbox|sandbox_host|setuid sandbox|user namespace/i;

/** Starts the browser and waits until it answers. */
export const launchBrowser = async (options: LaunchOptions): Promise<RunningBrowser> => {
  const unboxed = (): Promise<RunningBrowser> => {
    options.warn("the browser can't use its sandbox here (root, or a system that forbids it); it runs without");
    return start(options, ["--no-sandbox"]);
  };
  // A browser of root on Linux refuses its sandbox every time: asking it first would only cost a start.
  if (process.platform === "linux" && process.getuid?.() === 0) return unboxed();
  try {
    return await start(options, []);
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    if (!sandboxWords.test(said)) throw error;
    return unboxed();
  }
};

const start = async ({ path, libraries, pages }: LaunchOptions, more: readonly string[]): Promise<RunningBrowser> => {
  const profile = mkdtempSync(join(tmpdir(), "reevebook-browser-"));
  const env = { ...process.env };
  if (libraries !== undefined) env["LD_LIBRARY_PATH"] = [libraries, env["LD_LIBRARY_PATH"]].filter(Boolean).join(delimiter);
  const own = process.platform !== "win32";
  const browser = spawn(path, [...flags, ...more, `--user-data-dir=${profile}`, "about:blank"], {
    env,
    detached: own, // a process group of its own, so that kill() reaches the browser's children too
    stdio: ["ignore", "ignore", "pipe", "pipe", "pipe"],
  });
  const kill = killer(browser, { profile, group: own });
  try {
    const pipe = pipeOf(browser);
    const version = await firstAnswer(browser, pipe);
    for (let page = 1; page < pages; page += 1) {
      pipe.send(JSON.stringify({ id: OUR_IDS + page, method: "Target.createTarget", params: { url: "about:blank" } }));
    }
    return { pipe, version, kill };
  } catch (error) {
    kill();
    throw error;
  }
};

const killer = (browser: ChildProcess, { profile, group }: { readonly profile: string; readonly group: boolean }): (() => void) => {
  const kill = (): void => {
    process.removeListener("exit", kill);
    try {
      if (group && browser.pid !== undefined) process.kill(-browser.pid, "SIGKILL");
      else browser.kill("SIGKILL");
    } catch {
      // gone already
    }
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  };
  process.once("exit", kill);
  return kill;
};

/** A browser that says nothing for so long does not run. */
const ANSWER_s = 30;

/** Asks for the version: the answer proves that the browser runs. */
const firstAnswer = (browser: ChildProcess, pipe: Pipe): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = "";
    const fail = (why: string): void => {
      clearInterval(timer);
      reject(new Error(`the browser did not start: ${why}\n${said.slice(-2000)}`));
    };
    // Counted second by second: while jobs are planned nobody listens, and an answer that waits for us is not late.
    let seconds = 0;
    const timer = setInterval(() => {
      seconds += 1;
      if (seconds >= ANSWER_s) fail(`no answer within ${ANSWER_s} s`);
    }, 1000);
    browser.stderr?.setEncoding("utf8").on("data", (text: string) => {
      if (said.length < 20_000) said += text;
    });
    browser.once("error", (error) => fail(error.message));
    browser.once("close", (code, signal) => {
      fail(`it ended with ${signal ?? `code ${code}`}`);
    });
    pipe.onmessage = (message) => {
      const answer = JSON.parse(message) as { id?: number; result?: { product?: string } };
      if (answer.id !== 1) return;
      clearInterval(timer);
      delete pipe.onmessage;
      resolve(answer.result?.product ?? "unknown");
    };
    pipe.send(JSON.stringify({ id: 1, method: "Browser.getVersion" }));
  });
