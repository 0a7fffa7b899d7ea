// What may a job file say of a pier at the end of a guard?
import { exactOptional as maybe } from "zod";
import { block, choice, forceField, kind, lengthField, textField } from "./field.ts";

const small = (name: string, example: string, to = "300 mm") => lengthField({ name, example, from: "1 mm", to });

const anchor = block("the anchor of each cable", "{ kind: adhesive, hole: 12 mm, depth: 90 mm, stand-out: 30 mm, flange: 20 mm }", {
  kind: choice("the kind of anchor", ["adhesive", "expansion", "screw"]),
  hole: small("the hole of the anchor", "12 mm"),
  depth: small("the depth of the hole", "90 mm", "1 m"),
  "stand-out": small("the stand-out of the eye", "30 mm"),
  flange: small("the flange on the face", "20 mm"),
  rated: maybe(forceField({ name: "the rated load", example: "4 kN", from: "50 N", to: "50 kN" })),
  "rated by": maybe(textField("who rates the anchor", "report of 2026-02-01, page 3")),
  "least edge": maybe(small("the least distance to an edge", "100 mm", "1 m")),
  "least spacing": maybe(small("the least distance to the next anchor", "80 mm", "1 m")),
});

export const pierEnd = block(
  "an end of the guard at a pier",
  "{ kind: pier, of: concrete, along: 400 mm, across: 400 mm, height: 1.2 m, anchor: { kind: adhesive, hole: 12 mm, ... } }",
  {
    kind: kind("pier"),
    of: choice("what the pier is made of", ["concrete", "brick", "block", "stone"]),
    along: lengthField({ name: "the size of the pier along the guard", example: "400 mm", from: "100 mm", to: "3 m" }),
    across: lengthField({ name: "the size of the pier square to the guard", example: "400 mm", from: "100 mm", to: "3 m" }),
    height: lengthField({ name: "the height of the pier", example: "1.2 m", from: "100 mm", to: "10 m" }),
    anchor,
  },
);
