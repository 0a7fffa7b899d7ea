// How are messages passed to a browser over its pipes? Each is one JSON text, ended by a zero byte.
import type { ChildProcess } from "node:child_process";
import type { Readable, Writable } from "node:stream";

/** The shape that the browser client asks of a connection. */
export interface Pipe {
  send(message: string): void;
  close(): void;
  onmessage?: (message: string) => void;
  onclose?: () => void;
}

/** Speaks over file descriptors 3 (to the browser) and 4 (from it). */
export const pipeOf = (browser: ChildProcess): Pipe => {
  const toBrowser = browser.stdio[3] as Writable;
  const fromBrowser = browser.stdio[4] as Readable;
  const waiting: Buffer[] = [];
  const pipe: Pipe = {
    send: (message) => {
      toBrowser.write(`${message}\0`);
    },
    close: () => {
      toBrowser.destroy();
      fromBrowser.destroy();
    },
  };
  fromBrowser.on("data", (chunk: Buffer) => {
    let rest = chunk;
    for (let end = rest.indexOf(0); end !== -1; end = rest.indexOf(0)) {
      waiting.push(rest.subarray(0, end));
      const message = Buffer.concat(waiting.splice(0)).toString("utf8");
      setImmediate(() => pipe.onmessage?.(message));
      rest = rest.subarray(end + 1);
    }
    if (rest.length > 0) waiting.push(rest);
  });
  fromBrowser.on("close", () => pipe.onclose?.());
  // A browser that died is reported by "close"; a write that came too late must not end this program.
  toBrowser.on("error", () => {});
  fromBrowser.on("error", () => {});
  return pipe;
};
