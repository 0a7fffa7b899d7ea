// Which job is it, whose, and how far has it come? Types of the Job.
export type Status = "preliminary" | "for permit" | "for construction" | "as built";

export interface Revision {
  readonly mark: string;
  /** ISO date, yyyy-mm-dd. */
  readonly date: string;
  readonly by: string;
  readonly change: string;
}

export interface Identity {
  /** Letters, digits and single hyphens; names the output folder. */
  readonly number: string;
  readonly title: string;
  readonly place: string;
  readonly client: string;
  readonly firm: string;
  readonly preparedBy: string;
  readonly checkedBy: string | null;
  readonly status: Status;
  readonly surveyDate: string;
  readonly issueDate: string;
  readonly revisions: readonly Revision[];
  /** True on invented jobs: each sheet then says "EXAMPLE". */
  readonly example: boolean;
}

/** The mark of the revision that a job file is at. */
export const revisionOf = ({ revisions }: Pick<Identity, "revisions">): string => revisions.at(-1)?.mark ?? "0";
