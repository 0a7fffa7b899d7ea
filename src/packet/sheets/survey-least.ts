// How is a fitting measured that may be larger than planned, but not smaller?
import type { Text } from "../packet.ts";

/** The planned value and when to stop, for a row of what is measured on the fittings. */
export const atLeast = (value: number, both: (mm: number) => Text, one: (mm: number) => Text): readonly [Text, Text] => [
  both(value),
  `below ${one(value)}`,
];
