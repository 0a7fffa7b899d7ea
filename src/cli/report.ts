// What does the user see while it runs, and at the end?
import { count as counted } from "../packet/sheets/kit.ts";
import { decimal } from "../units/print.ts";
import type { Effects } from "./effects.ts";

export interface Report {
  readonly built: (number: string, pages: number) => void;
  readonly failed: (text: string) => void;
  readonly note: (line: string) => void;
  readonly end: (counts: Counts) => void;
}

export interface Counts {
  readonly built: number;
  readonly unchanged: number;
  readonly failed: number;
  readonly pages: number;
  readonly out: string;
}

export const makeReport = ({ output, now_ms }: Effects, total: number): Report => {
  const started = now_ms();
  let done = 0;
  const clear = output.terminal ? "\r\x1b[K" : "";
  return {
    built: (number, pages) => {
      done += 1;
      const what = pages === 0 ? "" : `, ${counted(pages, "page")}`;
      output.write(output.terminal ? `${clear}${done}/${total} ${number}${what}` : `${number} built${what}\n`);
    },
    failed: (text) => {
      done += 1;
      output.warn(`${clear}${text}`);
    },
    note: (line) => output.warn(`${clear}${line}\n`),
    end: ({ built, unchanged, failed, pages, out }) => {
      const seconds = decimal((now_ms() - started) / 1000, { decimals: 1 });
      output.write(
        `${clear}${counted(built, "job")} built, ${unchanged} unchanged, ${failed} failed, ${counted(pages, "page")}, ${seconds} seconds. Open ${out}/index.html\n`,
      );
    },
  };
};
