// What does each sheet say? The Packet: plain data that layouts place on pages without any arithmetic.
import type { Status } from "../job/identity.ts";
import type { Issue, Paper } from "../job/job.ts";
import type { Verdict } from "../plan/plan.ts";

/** Text with **bold** stretches as its only markup. */
export type Text = string;

/** What stands in a table cell: text, or a place to write or tick. */
export type Cell =
  | Text
  | {
      readonly text: Text;
      readonly strong?: true;
      readonly minor?: true;
      /** Numbers of the changes on Z-004, beside a triangle. */
      readonly delta?: Text;
    }
  | { readonly blank: string }
  | { readonly tick: true };

export interface Column {
  readonly key: string;
  readonly head: Text;
  /** Second line of the head: unit, or who fills it in ("plan", "field reading", "field calculation"). */
  readonly sub?: Text;
  readonly align?: "left" | "right" | "center";
  /** Share of the table's width; the rest is divided evenly. */
  readonly width?: number;
}

export interface Table {
  readonly kind: "table";
  readonly id: string;
  readonly caption: Text;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** Rows to write in are at least 8.5 mm high. */
  readonly writeIn?: true;
  /** The first column heads its row; it is repeated at the right of wide tables. */
  readonly rowHeads?: true;
  readonly notes?: readonly Text[];
}

export interface Drawing {
  readonly kind: "drawing";
  readonly id: string;
  readonly title: Text;
  /** Says in words what the drawing shows, with its numbers, and names its table. */
  readonly description: Text;
  /** Finished <svg>, measured in paper millimetres. */
  readonly svg: string;
  readonly width_mm: number;
  readonly height_mm: number;
}

export interface StepItem {
  readonly text: Text;
  /** Why, or how, for those who do it once. */
  readonly more?: Text;
  /** A value to read and write down instead of a tick. */
  readonly value?: string;
  /** Must not be missed: printed with a mark that works without colour. */
  readonly killer?: true;
}

export interface Steps {
  readonly kind: "steps";
  readonly id: string;
  readonly title: Text;
  /** read-do: read each, then do it. do-confirm: do the work, then stop and confirm. */
  readonly mode: "read-do" | "do-confirm";
  readonly items: readonly StepItem[];
  /** Stop here until somebody has signed. */
  readonly hold?: Text;
}

export type Block =
  | { readonly kind: "heading"; readonly id: string; readonly text: Text }
  | { readonly kind: "prose"; readonly text: readonly Text[] }
  | { readonly kind: "list"; readonly items: readonly Text[] }
  | {
      readonly kind: "facts";
      readonly id: string;
      readonly facts: readonly { readonly name: Text; readonly value: Text; readonly strong?: true }[];
    }
  | { readonly kind: "caution"; readonly level: "danger" | "warning" | "caution" | "notice"; readonly text: readonly Text[] }
  | {
      readonly kind: "blanks";
      readonly id: string;
      readonly title: Text;
      readonly rows: readonly { readonly label: Text; readonly unit: string; readonly key?: string }[];
    }
  | { readonly kind: "signatures"; readonly id: string; readonly roles: readonly Text[] }
  | { readonly kind: "break" }
  | Table
  | Drawing
  | Steps;

export interface Sheet {
  /** Z-603 */
  readonly id: string;
  readonly name: Text;
  /** For file names, anchors and layouts: "bores". */
  readonly slug: string;
  readonly orientation: "portrait" | "landscape";
  readonly blocks: readonly Block[];
}

/** What stands on every sheet, ready to print. */
export interface TitleBlock {
  readonly firm: Text;
  readonly jobNumber: string;
  readonly title: Text;
  readonly place: Text;
  readonly client: Text;
  readonly revision: string;
  readonly date: string;
  readonly status: Status;
  readonly preparedBy: Text;
  readonly checkedBy: Text;
  /** "feet and inches (mm in parentheses)" */
  readonly units: Text;
  readonly datum: Text;
  /** "EXAMPLE - invented job" or empty. */
  readonly example: Text;
  /** Marks every sheet when a check fails; else empty. */
  readonly stamp: Text;
  /** First 12 hex digits of the SHA-256 of the job file. */
  readonly jobHash: string;
  readonly programVersion: string;
}

export interface Packet {
  readonly issue: Issue;
  readonly issueName: Text;
  readonly paper: Paper;
  readonly titleBlock: TitleBlock;
  readonly verdict: Verdict;
  readonly verdictText: Text;
  readonly sheets: readonly Sheet[];
}

/** What cannot be known inside: given from outside so that the packet stays a function of its input. */
export interface Stamp {
  readonly jobHash: string;
  /** Of the record of what was built, where there is one. */
  readonly recordHash?: string;
  /** Of the job file as it was issued before, where there is one. */
  readonly issuedHash?: string;
  readonly programVersion: string;
}
