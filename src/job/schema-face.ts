// What may a job file say of ends that are held on the face of a post?
import { exactOptional as maybe } from "zod";
import { block, choice, forceField, kind, kinds, lengthField, textField } from "./field.ts";
import { numberField, thread } from "./fields.ts";

/** How cables end at their posts. */
export const endKind = choice("how cables end", ["through bores", "tapped", "on the face"]);

const small = (name: string, example: string) => lengthField({ name, example, from: "1 mm", to: "300 mm" });

const rated = {
  rated: forceField({ name: "the rated load", example: "600 lbf", from: "50 N", to: "50 kN" }),
  "rated by": textField("who rates it", "its maker's data sheet of 2026-02-01"),
};

const onFace = {
  hole: small("the hole of the fastening", "3/16 in"),
  "stand-out": small("the stand-out of the eye", "1-1/4 in"),
  flange: small("the flange on the face", "3/4 in"),
};

const maybeRated = { rated: maybe(rated.rated), "rated by": maybe(rated["rated by"]) };

/** Dimensions of the fitting that was bought, as its kind of fastening needs them. */
export const faceEnd = kinds("the face block", "{ kind: lag screw, diameter: 5/16 in, depth: 2-1/4 in, ... }", [
  block("a lag screw with an eye", "{ kind: lag screw, diameter: 5/16 in, depth: 2-1/4 in, thread length: 2 in, tip: 3/16 in, ... }", {
    kind: kind("lag screw"),
    diameter: small("the diameter of the lag screw", "5/16 in"),
    depth: small("the depth of the lag screw", "2-1/4 in"),
    "thread length": small("the thread length of the lag screw", "2 in"),
    tip: small("the tip of the lag screw", "3/16 in"),
    ...onFace,
    ...maybeRated,
  }),
  block("a stud in a tapped hole", "{ kind: tapped hole, thread: M6x1, hole: 5 mm, ... }", {
    kind: kind("tapped hole"),
    thread,
    depth: maybe(small("the depth of the thread", "12 mm")),
    "least engagement": maybe(numberField({ name: "the least engagement", example: "1", from: "0.3", to: "5" })),
    ...onFace,
    ...maybeRated,
  }),
  block("a rivet nut", "{ kind: rivet nut, thread: M6x1, hole: 9 mm, rated: 2.4 kN, rated by: its maker's data sheet, ... }", {
    kind: kind("rivet nut"),
    thread,
    ...onFace,
    ...rated,
  }),
]);
