// What may a job file say of the bushings where a cable bends?
import { exactOptional as maybe } from "zod";
import { block, forceField, lengthField, textField } from "./field.ts";

/** Its outside diameter is that of the bushing bore; of a tube round it, the tube's. */
export const bushing = block("the bushing block", "{ length: 3/8 in }", {
  length: maybe(lengthField({ name: "the length of a bushing in its bore", example: "3/8 in", from: "1 mm", to: "100 mm" })),
  "tube wall": maybe(lengthField({ name: "the wall of the tube round the bushings", example: "1/16 in", from: "0.5 mm", to: "6 mm" })),
  rated: maybe(forceField({ name: "the rated load of a bushing", example: "300 lbf", from: "20 N", to: "50 kN" })),
  "rated by": maybe(textField("who rates the bushing", "its maker's data sheet of 2026-02-01")),
});
