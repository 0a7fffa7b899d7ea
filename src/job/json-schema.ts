// How does an editor know what a file of ours may hold? Through a JSON Schema made from the schema that reads it.
import * as z from "zod";
import { wordOf } from "./field.ts";

/**
 * The JSON Schema (draft 7) of a kind of file: keys, words, examples and plausible ranges. It says less than the reader knows:
 * how a length is written, and what must agree with what, is told when the file is read. In one thing it asks for more: the words
 * of a choice with the capitals that they have in the list.
 *
 * @returns plain data, the same for the same schema
 */
export function jsonSchemaOf(schema: z.ZodObject, title: string): object {
  const made = z.toJSONSchema(schema, {
    target: "draft-7",
    io: "input",
    override: ({ zodSchema, jsonSchema }) => describe(zodSchema as unknown as z.ZodType, jsonSchema),
  });
  return { ...made, title };
}

/** Editors read 0001 as a number and true as a truth; the reader takes each as the text that was written. */
const SCALARS = ["string", "number", "boolean"] as const;

function describe(schema: z.ZodType, made: Record<string, unknown>): void {
  const word = wordOf(schema);
  if (word === undefined) return;
  const { name, example, options, from, to } = word;
  made["description"] = from === undefined || to === undefined ? name : `${name}, ${from} to ${to}`;
  if (made["type"] !== "string" || made["const"] !== undefined) return;
  made["type"] = [...SCALARS];
  if (options !== undefined) made["enum"] = options.flatMap((option) => (/^\d+$/.test(option) ? [option, Number(option)] : [option]));
  else if (example !== "") made["examples"] = [example];
}
