// How is one page of the browser driven? By the few commands that a print needs; it runs no script and may fetch nothing.
import type { Browser, CDPSession, Target } from "puppeteer";

export interface BrowserPage {
  readonly show: (html: string) => Promise<void>;
  /** Prints what is shown. */
  readonly print: (options: { readonly tagged: boolean }) => Promise<Buffer>;
  /** Runs a function of ours in what is shown; it takes and gives plain data and uses nothing from outside itself. */
  readonly ask: <A, R>(question: (request: A) => R | Promise<R>, request: A) => Promise<R>;
}

/** The empty pages that the browser was started with. The client's own page objects would do ten times the asking. */
export const openPages = (browser: Browser, count: number): readonly Promise<BrowserPage>[] => {
  const pages = (): readonly Target[] => browser.targets().filter((target) => target.type() === "page");
  return Array.from({ length: count }, async (_, index) => {
    await browser.waitForTarget(() => pages().length > index);
    const target = pages()[index];
    if (target === undefined) throw new Error("the browser has lost a page");
    return drive(await target.createCDPSession());
  });
};

const drive = async (session: CDPSession): Promise<BrowserPage> => {
  let fail = (_error: Error): void => {};
  const broken = new Promise<never>((_resolve, reject) => {
    fail = reject;
  });
  broken.catch(() => {}); // told by whatever is asked next
  session.on("Inspector.targetCrashed", () => fail(new Error("a page of the browser broke down")));
  const [{ frameTree }] = await Promise.all([
    session.send("Page.getFrameTree"),
    session.send("Inspector.enable"),
    session.send("Emulation.setScriptExecutionDisabled", { value: true }),
    session.send("Network.enable"),
    session.send("Network.emulateNetworkConditions", { offline: true, latency: 0, downloadThroughput: -1, uploadThroughput: -1 }),
  ]);
  const evaluate = async (expression: string): Promise<unknown> => {
    const answer = await session.send("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
    if (answer.exceptionDetails !== undefined)
      throw new Error(answer.exceptionDetails.exception?.description ?? "a question to a page failed");
    return answer.result.value;
  };
  const orBroken = <T>(work: Promise<T>): Promise<T> => Promise.race([work, broken]);
  return {
    show: (html) =>
      orBroken(
        session.send("Page.setDocumentContent", { frameId: frameTree.frame.id, html }).then(async () => {
          // A font counts as needed only once something is laid out with it; without this the first page prints blank.
          await evaluate("Promise.all([...document.fonts].map((font) => font.load())).then(() => 1)");
        }),
      ),
    print: ({ tagged }) =>
      orBroken(
        session
          .send("Page.printToPDF", {
            preferCSSPageSize: true,
            printBackground: true,
            generateTaggedPDF: tagged,
            generateDocumentOutline: tagged,
          })
          .then(({ data }) => Buffer.from(data, "base64")),
      ),
    ask: async <A, R>(question: (request: A) => R | Promise<R>, request: A) =>
      (await orBroken(evaluate(`(${String(question)})(${JSON.stringify(request)})`))) as R,
  };
};
