// What may a job file say of its wood, its post bases, its weather and of what was measured on it?
import { exactOptional as maybe } from "zod";
import { block, choice, forceField, kind, kinds, lengthField, textField } from "./field.ts";
import { countField, numberField, pitch, sampleWeight, share, warmth, yesNo } from "./fields.ts";

/** Wood tells its species and grade. */
export const lumber = {
  species: maybe(choice("the species", ["Douglas Fir-Larch", "Hem-Fir", "Spruce-Pine-Fir", "Southern Pine", "Redwood", "Western Cedars"])),
  grade: maybe(choice("the grade of wood", ["Select Structural", "No.1", "No.2"])),
  incised: maybe(yesNo("incised")),
};

export const pull = forceField({ name: "the pull", example: "50 lbf", from: "1 N", to: "20 kN" });
export const pullHeight = lengthField({ name: "the height of the pull", example: "36 in", from: "4 in", to: "3 m" });

export const base = kinds("the base of a post", "{ kind: measured, pull: 50 lbf, height: 36 in, movement: 1/4 in }", [
  block("a fixed base", "{ kind: fixed }", { kind: kind("fixed") }),
  block("a measured base", "{ kind: measured, pull: 50 lbf, height: 36 in, movement: 1/4 in }", {
    kind: kind("measured"),
    pull,
    height: pullHeight,
    movement: lengthField({ name: "the movement", example: "1/4 in", from: "0.1 mm", to: "200 mm" }),
  }),
]);

const moisture = (name: string, example: string) => maybe(share({ name, example, from: "4 %", to: "30 %" }));

export const printer = block("the printer block", "{ name: office, across: 149.2 mm, up: 149.6 mm }", {
  name: textField("the name of the printer", "office"),
  across: lengthField({ name: "the ruler across the page", example: "149.2 mm", from: "75 mm", to: "300 mm" }),
  up: lengthField({ name: "the ruler up the page", example: "149.6 mm", from: "75 mm", to: "300 mm" }),
});

export const site = block("the site block", "{ reference: 68 F, coldest: 10 F, warmest: 95 F }", {
  reference: maybe(warmth("the reference temperature", "68 F")),
  coldest: maybe(warmth("the coldest temperature", "10 F")),
  warmest: maybe(warmth("the warmest temperature", "95 F")),
  "moisture at fitting": moisture("the moisture at fitting", "19 %"),
  "moisture in service": moisture("the moisture in service", "12 %"),
  wet: maybe(yesNo("wet")),
  floor: maybe(choice("what the posts stand on", ["wood", "concrete", "steel", "stainless", "aluminium"])),
  "next visit": maybe(countField({ name: "the months to the next visit", example: "3", from: "1", to: "24" })),
});

export const calibration = block("the calibration block", "{ turns: { cable: R1-05, turns: 6, from: 100 lbf, to: 250 lbf } }", {
  turns: maybe(
    block("the measured turns", "{ cable: R1-05, turns: 6, from: 100 lbf, to: 250 lbf }", {
      cable: textField("the cable", "R1-05"),
      turns: numberField({ name: "the turns", example: "6", from: "0.25", to: "100" }),
      from: maybe(forceField({ name: "the first reading", example: "100 lbf", from: "10 N", to: "20 kN" })),
      to: maybe(forceField({ name: "the second reading", example: "250 lbf", from: "10 N", to: "20 kN" })),
      "from pitch": maybe(pitch("the first pitch")),
      "to pitch": maybe(pitch("the second pitch")),
      span: maybe(lengthField({ name: "the plucked span", example: "34-1/2 in", from: "6 in", to: "4 m" })),
    }),
  ),
  weighed: maybe(
    block("the weighed sample", "{ length: 10 ft, weight: 0.35 lb }", {
      length: lengthField({ name: "the length of the sample", example: "10 ft", from: "12 in", to: "100 m" }),
      weight: sampleWeight,
    }),
  ),
});
