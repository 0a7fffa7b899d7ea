// What may a job file say of sides that slope: ramps and stairs?
import { exactOptional as maybe } from "zod";
import { block, choice, lengthField } from "./field.ts";
import { countField, smallAngle, yesNo } from "./fields.ts";

/** One way to give the slope out of four: pitch; rise and run; riser and tread; rise and run with the counts of risers and treads. */
export const rake = block("the rake of a side", "{ kind: stair, goes: down, riser: 7 in, tread: 10-1/2 in }", {
  kind: choice("the kind of a rake", ["stair", "ramp"]),
  goes: choice("the way a rake goes", ["up", "down"]),
  pitch: maybe(smallAngle("the pitch of a rake")),
  rise: maybe(lengthField({ name: "the rise", example: "4 ft 8 in", from: "1/4 in", to: "50 m" })),
  run: maybe(lengthField({ name: "the run of a rake", example: "7 ft", from: "6 in", to: "100 m" })),
  riser: maybe(lengthField({ name: "the height of a riser", example: "7 in", from: "2 in", to: "16 in" })),
  tread: maybe(lengthField({ name: "the depth of a tread", example: "10-1/2 in", from: "4 in", to: "4 ft" })),
  risers: maybe(countField({ name: "the number of risers", example: "8", from: "1", to: "100" })),
  treads: maybe(countField({ name: "the number of treads", example: "8", from: "1", to: "100" })),
  nosing: maybe(lengthField({ name: "the overhang of a nosing", example: "3/4 in", from: "0 in", to: "4 in" })),
  "open risers": maybe(yesNo("open risers")),
});

export const onRakes = block("the frame on rakes", "{ gap below: 1 in, clear opening: 28 in }", {
  "gap below": maybe(lengthField({ name: "the gap below the bottom rail on rakes", example: "1 in", from: "0 in", to: "1 m" })),
  "clear opening": maybe(lengthField({ name: "the clear opening on rakes", example: "28 in", from: "1 in", to: "3 m" })),
  "below datum": maybe(lengthField({ name: "the post below the datum on rakes", example: "18 in", from: "0 in", to: "3 m" })),
});

export const stairRules = block("the rules of stairs", "{ guard height: 34 in, opening: 4-3/8 in, triangle: 6 in }", {
  "guard height": maybe(lengthField({ name: "the guard height on stairs", example: "34 in", from: "12 in", to: "3 m" })),
  opening: maybe(lengthField({ name: "the largest opening on stairs", example: "4-3/8 in", from: "1/2 in", to: "12 in" })),
  triangle: maybe(lengthField({ name: "the largest opening at riser and tread", example: "6 in", from: "1/2 in", to: "12 in" })),
});
