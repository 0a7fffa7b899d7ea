// How fast is a browser alone? Prints finished pages over its pipe, two at once, with nothing in between: the yardstick.
import { readFileSync, writeFileSync } from "node:fs";
import { findBrowser } from "../../src/pdf/find-browser.ts";
import type { RunningBrowser } from "../../src/pdf/launch.ts";
import { startBrowser } from "../../src/pdf/start.ts";

interface Answer {
  readonly id?: number;
  readonly result?: { readonly [key: string]: unknown };
  readonly error?: { readonly message: string };
}

type Send = (method: string, params?: object, sessionId?: string) => Promise<{ readonly [key: string]: unknown }>;

const clientOf = ({ pipe }: RunningBrowser): Send => {
  const waiting = new Map<
    number,
    { readonly resolve: (value: { readonly [key: string]: unknown }) => void; readonly reject: (error: Error) => void }
  >();
  let last = 100;
  pipe.onmessage = (text) => {
    const answer = JSON.parse(text) as Answer;
    const asked = answer.id === undefined ? undefined : waiting.get(answer.id);
    if (asked === undefined) return;
    if (answer.error !== undefined) asked.reject(new Error(answer.error.message));
    else asked.resolve(answer.result ?? {});
  };
  return (method, params = {}, sessionId) =>
    new Promise((resolve, reject) => {
      last += 1;
      waiting.set(last, { resolve, reject });
      pipe.send(JSON.stringify({ id: last, method, params, ...(sessionId === undefined ? {} : { sessionId }) }));
    });
};

export interface BareClient {
  readonly print: (html: string) => Promise<Buffer>;
  readonly close: () => void;
}

export const bareClient = async (cache: string): Promise<BareClient> => {
  const found = findBrowser({ platform: process.platform, env: process.env });
  if (found === undefined) throw new Error("there is no browser to measure");
  const running = await startBrowser(found, { cache, warn: () => {}, pages: 1 });
  const send = clientOf(running);
  const free = await Promise.all(
    [0, 1].map(async () => {
      const { targetId } = await send("Target.createTarget", { url: "about:blank" });
      const { sessionId } = await send("Target.attachToTarget", { targetId, flatten: true });
      const { frameTree } = await send("Page.getFrameTree", {}, String(sessionId));
      return { session: String(sessionId), frame: (frameTree as { frame: { id: string } }).frame.id };
    }),
  );
  const queue: (() => void)[] = [];
  const print = async (html: string): Promise<Buffer> => {
    if (free.length === 0) await new Promise<void>((resolve) => queue.push(resolve));
    const page = free.shift();
    if (page === undefined) throw new Error("no page is free");
    await send("Page.setDocumentContent", { frameId: page.frame, html }, page.session);
    await send(
      "Runtime.evaluate",
      { expression: "Promise.all([...document.fonts].map((f) => f.load())).then(() => 1)", awaitPromise: true },
      page.session,
    );
    const options = { preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true, generateDocumentOutline: true };
    const { data } = await send("Page.printToPDF", options, page.session);
    free.push(page);
    queue.shift()?.();
    return Buffer.from(String(data), "base64");
  };
  return { print, close: running.kill };
};

// Called by itself: cache folder, then pages; each PDF is written beside its page.
const [cache, ...pages] = process.argv.slice(2);
if (process.argv[1]?.endsWith("bare-client.js") && cache !== undefined) {
  const client = await bareClient(cache);
  await Promise.all(pages.map(async (page) => writeFileSync(`${page}.pdf`, await client.print(readFileSync(page, "utf8")))));
  client.close();
}
