// How do pages become PDFs? One warm browser, two long-lived pages, a queue; a crashed browser is replaced once per document.
import type { Browser, Page } from "puppeteer";
import { type FinishOptions, finishPdf } from "./finish.ts";
import { faultsOf, inspectPdf } from "./inspect.ts";
import type { RunningBrowser } from "./launch.ts";
import { type MeasureRequest, type Misfit, measureInPage } from "./measure.ts";

export interface PrintJob {
  /** What is printed, in words, for messages: "0001-porch-front, crew". */
  readonly name: string;
  readonly html: string;
  /** Sheets that were not measured before, and the page's height. */
  readonly measure: MeasureRequest;
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

const PAGES = 2;
const TIMEOUT_ms = 60_000;
/** The browser's caches grow with every print; a fresh one now and then keeps its memory flat. */
const PRINTS_PER_BROWSER = 500;

interface Session {
  readonly running: RunningBrowser;
  readonly browser: Browser;
  readonly free: Promise<Page>[];
}

/** `launch` starts a browser; it is called at once, and again after a crash. */
export const makePrinter = (launch: () => Promise<RunningBrowser>): Printer => {
  let session = open(launch());
  session.catch(() => {}); // told by print()
  let prints = 0;
  let closed = false;
  const waiting: ((turn: undefined) => void)[] = [];
  let busy = 0;
  const replace = async (broken: Promise<Session>): Promise<void> => {
    if (session !== broken || closed) return;
    session = open(launch());
    session.catch(() => {});
    prints = 0;
    await broken.then(end).catch(() => {});
  };
  const once = async (job: PrintJob): Promise<Printed> => {
    const mine = await session;
    const page = mine.free.shift() ?? newPage(mine.browser);
    try {
      return await printOn(await page, job);
    } finally {
      mine.free.push(page);
    }
  };
  const print = async (job: PrintJob): Promise<Printed> => {
    if (busy >= PAGES) await new Promise((resolve) => waiting.push(resolve));
    busy += 1;
    try {
      prints += 1;
      if (prints > PRINTS_PER_BROWSER && busy === 1) await replace(session);
      const used = session;
      try {
        return await once(job);
      } catch (error) {
        if (error instanceof PrintFault) throw error;
        await used; // a browser that can't start at all is not tried twice
        await replace(used);
        return await once(job);
      }
    } finally {
      busy -= 1;
      waiting.shift()?.(undefined);
    }
  };
  return {
    print,
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
  const free = Array.from({ length: PAGES }, () => newPage(browser));
  for (const page of free) page.catch(() => {}); // told to whoever prints on it
  return { running, browser, free };
};

/** Ends the browser first: what still waits for it fails at once then, and nothing is left that waits. */
const end = async ({ running, browser }: Session): Promise<void> => {
  running.kill();
  await browser.disconnect();
};

/** A page that runs no script of its own and may fetch nothing: all it needs is inside its document, whose own policy says so too. */
const newPage = async (browser: Browser): Promise<Page> => {
  const page = await browser.newPage();
  await Promise.all([page.setJavaScriptEnabled(false), page.setOfflineMode(true)]);
  return page;
};

const printOn = async (page: Page, { name, html, measure, finish, tagged }: PrintJob): Promise<Printed> => {
  await page.setContent(html, { waitUntil: "domcontentloaded", timeout: TIMEOUT_ms });
  const misfits = await page.evaluate(measureInPage, measure);
  if (misfits.length > 0) throw new PrintFault(name, misfits.map(inWords));
  const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged, outline: tagged, timeout: TIMEOUT_ms });
  const bytes = finishPdf(printed, finish);
  const inspection = inspectPdf(bytes);
  const faults = faultsOf(inspection);
  if (faults.length > 0) throw new PrintFault(name, faults);
  return { bytes, pages: inspection.pages };
};

const inWords = ({ sheet, element, what }: Misfit): string => `sheet ${sheet}: ${element} ${what}`;
