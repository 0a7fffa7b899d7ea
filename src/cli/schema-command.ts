// What may a job file or a record hold? For editors that complete and check while somebody writes.
import { jsonSchemaOf } from "../job/json-schema.ts";
import { jobFile } from "../job/schema.ts";
import { recordFile } from "../record/schema.ts";

export type SchemaKind = "job" | "record";

const kinds = {
  job: { schema: jobFile, title: "Job file of Reevebook" },
  record: { schema: recordFile, title: "Record of what was built, of Reevebook" },
} as const;

export const schemaText = (kind: SchemaKind): string =>
  `${JSON.stringify(jsonSchemaOf(kinds[kind].schema, kinds[kind].title), undefined, 2)}\n`;
