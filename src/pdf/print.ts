// How do pages become PDFs? One warm browser, two long-lived pages, a queue; a crashed browser is replaced once per document.
import type { Browser } from "puppeteer";
import { type FinishOptions, finishPdf } from "./finish.ts";
import { faultsOf, inspectFile, isScaled } from "./inspect.ts";
import type { RunningBrowser } from "./launch.ts";
import { type Misfit, measureInPage, type PageHeights } from "./measure.ts";
import { type BrowserPage, openPages } from "./page.ts";
import { readPdf } from "./read-pdf.ts";
import { PAGES } from "./start.ts";

export interface PrintJob {
  /** What is printed, in words, for messages: "0001-porch-front, crew". */
  readonly name: string;
  readonly html: string;
  readonly heights: PageHeights;
  /**
   * "scaled": only when the finished file shows that something was wider than its page, since looking costs another layout.
   * "always": looks at every element before printing.
   */
  readonly measure: "scaled" | "always";
  readonly finish: FinishOptions;
  /** Tags and bookmarks cost half of the time: a draft goes without. */
  readonly tagged: boolean;
}

export interface Printed {
  readonly bytes: Buffer;
  readonly pages: number;
}

export interface Printer {
  readonly print: (job: PrintJob) => Promise<Printed>;
  /** Kept when the browser has answered. */
  readonly connected: Promise<void>;
  /** Kept when the browser is at work on its first documents and this program has nothing to do but wait. */
  readonly atWork: Promise<void>;
  readonly version: () => Promise<string>;
  readonly close: () => void;
  /** Kills the browser as a fault of its own would, for tests. */
  readonly crash: () => void;
}

/** Something that the page or its PDF is at fault with: told to the user, with sheet and element. */
export class PrintFault extends Error {
  readonly faults: readonly string[];
  constructor(name: string, faults: readonly string[]) {
    super(`${name}: ${faults.join("; ")}`);
    this.faults = faults;
  }
}

const TIMEOUT_ms = 60_000;
/** The browser's caches grow with every print; a fresh one now and then keeps its memory flat. */
const PRINTS_PER_BROWSER = 500;

interface Session {
  readonly running: RunningBrowser;
  readonly browser: Browser;
  readonly free: Promise<BrowserPage>[];
}

/** `launch` starts a browser; it is called at once, and again after a crash. */
export const makePrinter = (launch: () => Promise<RunningBrowser>): Printer => {
  let session = open(launch());
  session.catch(() => {}); // told by print()
  let uses = 0;
  let closed = false;
  const waiting: ((turn: undefined) => void)[] = [];
  let busy = 0;
  let prints = 0;
  let tellAtWork = (): void => {};
  const atWork = new Promise<void>((resolve) => {
    tellAtWork = resolve;
  });
  const printing = (): void => {
    prints += 1;
    if (prints >= PAGES) tellAtWork();
  };
  const replace = async (broken: Promise<Session>): Promise<void> => {
    if (session !== broken || closed) return;
    session = open(launch());
    session.catch(() => {});
    uses = 0;
    await broken.then(end).catch(() => {});
  };
  const once = async <T>(work: (page: BrowserPage) => Promise<T>): Promise<T> => {
    const mine = await session;
    const page = mine.free.shift();
    if (page === undefined) throw new Error("more was asked of the browser than it has pages");
    try {
      return await work(await page);
    } finally {
      mine.free.push(page);
    }
  };
  /** Waits for a page; what fails for another reason than the document itself is tried once more in a new browser. */
  const withPage = async <T>(work: (page: BrowserPage) => Promise<T>): Promise<T> => {
    if (busy >= PAGES) await new Promise((resolve) => waiting.push(resolve));
    busy += 1;
    try {
      uses += 1;
      if (uses > PRINTS_PER_BROWSER && busy === 1) await replace(session);
      const used = session;
      try {
        return await once(work);
      } catch (error) {
        if (error instanceof PrintFault) throw error;
        await used; // a browser that can't start at all is not tried twice
        await replace(used);
        return await once(work);
      }
    } finally {
      busy -= 1;
      waiting.shift()?.(undefined);
    }
  };
  return {
    print: (job) => printWith(job, { withPage, printing }),
    connected: session.then(() => {}),
    atWork,
    crash: () => {
      void session.then(({ running }) => running.kill());
    },
    version: async () => (await session).running.version,
    close: () => {
      closed = true;
      void session.then(end).catch(() => {});
    },
  };
};

const open = async (launched: Promise<RunningBrowser>): Promise<Session> => {
  // The client is loaded while the browser starts.
  const [running, { connect }] = await Promise.all([launched, import("puppeteer")]);
  const browser = await connect({ transport: running.pipe, defaultViewport: null, protocolTimeout: TIMEOUT_ms });
  const free = [...openPages(browser, PAGES)];
  for (const page of free) page.catch(() => {}); // told to whoever prints on it
  return { running, browser, free };
};

/** Ends the browser first: what still waits for it fails at once then, and nothing is left that waits. */
const end = async ({ running, browser }: Session): Promise<void> => {
  running.kill();
  await browser.disconnect();
};

interface PrintContext {
  readonly withPage: <T>(work: (page: BrowserPage) => Promise<T>) => Promise<T>;
  /** Called when a page has got all it needs for its print. */
  readonly printing: () => void;
}

const printWith = async (job: PrintJob, { withPage, printing }: PrintContext): Promise<Printed> => {
  const { name, html, tagged, finish } = job;
  const printed = await withPage(async (page) => {
    await page.show(html);
    if (job.measure === "always") await measureOn(page, job);
    const print = page.print({ tagged });
    printing();
    return print;
  });
  // The page is free for the next document while this one is finished.
  const file = readPdf(printed);
  const inspection = inspectFile(file);
  if (isScaled(inspection)) {
    await withPage(async (page) => {
      await page.show(html);
      await measureOn(page, job);
    });
  }
  const faults = faultsOf(inspection);
  if (faults.length > 0) throw new PrintFault(name, faults);
  return { bytes: finishPdf(file, finish), pages: inspection.pages };
};

/** Finds what is too wide, too high or too small by its name. */
const measureOn = async (page: BrowserPage, { name, heights }: PrintJob): Promise<void> => {
  const misfits = await page.ask(measureInPage, { heights });
  if (misfits.length > 0) throw new PrintFault(name, misfits.map(inWords));
};

const inWords = ({ sheet, element, what }: Misfit): string => `sheet ${sheet}: ${element} ${what}`;
