// What may a job file contain? Each block with its keys, as people write them.
import { exactOptional as maybe, type output } from "zod";
import { readForce } from "../units/read.ts";
import { block, choice, forceField, kind, kinds, lengthField, list, ranged, textField } from "./field.ts";
import {
  bearing,
  cornerTurn,
  countField,
  dateField,
  jobNumber,
  massPerLength,
  money,
  numberField,
  perLength,
  share,
  size,
  smallAngle,
  thread,
  turn,
  yesNo,
} from "./fields.ts";
import { bushing } from "./schema-bushing.ts";
import { endKind, faceEnd } from "./schema-face.ts";
import { onRakes, rake, stairRules } from "./schema-rake.ts";
import { base, calibration, lumber, printer, pull, pullHeight, site } from "./schema-site.ts";
import { cornerKind, guardEnd, interruption, material, standing } from "./schema-standing.ts";

const revision = block("a revision", '{ mark: "0", date: 2026-04-20, by: RT, change: first issue }', {
  mark: textField("the mark of a revision", "0"),
  date: dateField("the date of a revision"),
  by: textField("the author of a revision", "RT"),
  change: textField("the change of a revision", "first issue"),
});

const identity = block("the job block", "{ number: 0001-porch-front, title: ... }", {
  number: jobNumber,
  title: textField("the title", "Front of a low deck"),
  place: textField("the place", "3 Quillwort Lane, Amberfold"),
  client: textField("the client", "N. Sallow"),
  firm: textField("the firm", "Three Gables Carpentry"),
  "prepared by": textField("the preparer", "R. Teasel"),
  "checked by": maybe(textField("the checker", "H. Marram")),
  status: choice("the status", ["preliminary", "for permit", "for construction", "as built"]),
  surveyed: dateField("the date of the survey"),
  issued: dateField("the date of issue"),
  example: maybe(yesNo("example")),
  revisions: maybe(
    list("the list of revisions", '[{ mark: "0", date: 2026-04-20, by: RT, change: first issue }]', revision, { least: 1, most: 40 }),
  ),
});

const code = block("the code block", "{ edition: IRC 2021, authority: ..., occupancy: other, exposure: inland, drop: 38 in }", {
  edition: choice("the edition", ["IRC 2018", "IRC 2021", "IRC 2024", "IBC 2021", "IBC 2024", "NCC 2022", "other"]),
  authority: textField("the authority", "Building office of Amberfold"),
  occupancy: choice("the occupancy", ["one- or two-family dwelling", "dwelling unit in a larger building", "other"]),
  exposure: choice("the exposure", ["inland", "coast", "pool", "road salt"]),
  drop: lengthField({ name: "the drop", example: "38 in", from: "0 in", to: "100 m" }),
  "pool barrier": maybe(yesNo("pool barrier")),
  "guard height": maybe(lengthField({ name: "the guard height", example: "36 in", from: "12 in", to: "3 m" })),
  opening: maybe(lengthField({ name: "the largest opening", example: "4 in", from: "1/2 in", to: "12 in" })),
  stairs: maybe(stairRules),
});

const station = lengthField({ name: "a station", example: "5 ft 9 in", from: "0 in", to: "100 m" });

const side = block("a side", "{ length: 23 ft, turn: right 90 deg }", {
  length: lengthField({ name: "the length of a side", example: "23 ft", from: "6 in", to: "100 m" }),
  turn: maybe(turn),
  corner: maybe(cornerKind),
  interrupted: maybe(interruption),
  stations: maybe(list("the list of stations", "[3 in, 5 ft 9 in]", station, { least: 2, most: 200 })),
  rake: maybe(rake),
});

/** As many as there are letters to name them. */
const MOST_SIDES = 26;

const guard = block("the guard block", "{ start: { kind: post }, end: { kind: post }, sides: [{ length: 23 ft }] }", {
  start: guardEnd,
  end: guardEnd,
  bearing: maybe(bearing),
  sides: list("the list of sides", "[{ length: 23 ft }]", side, { least: 1, most: MOST_SIDES }),
});

const member = {
  wall: maybe(lengthField({ name: "the wall of a tube", example: "3 mm", from: "0.5 mm", to: "30 mm" })),
  material,
  treated: maybe(yesNo("treated")),
};

const posts = block("the posts block", "{ size: 4x4, material: wood, treated: true, below datum: 10 in }", {
  size: size("a post", "4x4"),
  ...member,
  existing: maybe(yesNo("existing")),
  "largest spacing": maybe(lengthField({ name: "the largest post spacing", example: "6 ft", from: "12 in", to: "5 m" })),
  "below datum": maybe(lengthField({ name: "the post below the datum", example: "10 in", from: "0 in", to: "3 m" })),
  "corner setback": maybe(lengthField({ name: "the corner setback", example: "2-1/4 in", from: "0 in", to: "1 m" })),
  "corner clearance": maybe(lengthField({ name: "the corner clearance", example: "1/2 in", from: "0 in", to: "12 in" })),
  "pair gap": maybe(lengthField({ name: "the gap of a post pair", example: "3-1/2 in", from: "0 in", to: "1 m" })),
  split: maybe(choice("the way runs are split", ["two posts", "offset bores"])),
  ...lumber,
  ...standing,
  base: maybe(base),
  "base capacity": maybe(block("the capacity of a base", "{ pull: 500 lbf, height: 36 in }", { pull, height: pullHeight })),
});

const spacers = block("the spacers block", "{ size: 2x2, material: wood, treated: true }", {
  size: size("a spacer", "2x2"),
  ...member,
  ...lumber,
  "longest free length": maybe(lengthField({ name: "the longest free length", example: "3 ft", from: "6 in", to: "3 m" })),
  "fixing capacity": maybe(forceField({ name: "the capacity of a fixing", example: "100 lbf", from: "1 N", to: "20 kN" })),
});

const rail = (name: string, example: string) =>
  block(name, example, { size: size("a rail", "2x6"), lay: maybe(choice("the way a rail lies", ["flat", "edge"])), ...member, ...lumber });

const frame = block("the frame block", "{ datum: top of the decking, top rail: { ... }, clear opening: 29 in }", {
  datum: textField("the datum", "top of the decking"),
  "top rail": rail("the top rail", "{ size: 2x6, lay: flat, material: wood, treated: true }"),
  "bottom rail": maybe(rail("the bottom rail", "{ size: 2x4, lay: edge, material: wood, treated: true }")),
  "rail joint": maybe(choice("the joint of the rails", ["pinned", "rigid"])),
  handrail: maybe(yesNo("handrail")),
  "gap below": maybe(lengthField({ name: "the gap below the bottom rail", example: "2 in", from: "0 in", to: "1 m" })),
  "clear opening": lengthField({ name: "the clear opening", example: "29 in", from: "1 in", to: "3 m" }),
  "on rakes": maybe(onRakes),
});

const stiffness = (name: string) => ranged({ name, example: "840 kN", from: "50 kN", to: "20000 kN" }, readForce);

const cable = block("the cable block", "{ construction: 1x19, diameter: 1/8 in, grade: 316 }", {
  construction: choice("the construction", ["1x19", "7x7", "7x19"]),
  diameter: lengthField({ name: "the cable diameter", example: "1/8 in", from: "2 mm", to: "10 mm" }),
  grade: choice("the grade", ["304", "316"]),
  "axial stiffness": maybe(
    block("the axial stiffness", "{ low: 780 kN, nominal: 840 kN, high: 900 kN }", {
      low: stiffness("the least stiffness"),
      nominal: stiffness("the nominal stiffness"),
      high: stiffness("the greatest stiffness"),
    }),
  ),
  "breaking force": maybe(forceField({ name: "the breaking force", example: "1780 lbf", from: "500 N", to: "200 kN" })),
  mass: maybe(massPerLength),
  "working share": maybe(share({ name: "the working share", example: "30 %", from: "1 %", to: "90 %" })),
  bedding: maybe(share({ name: "the bedding", example: "0.05 %", from: "0 %", to: "2 %" })),
});

const bore = (name: string, example: string) => maybe(lengthField({ name, example, from: "2 mm", to: "50 mm" }));

/** As wide as the checks may ask for on soft wood. */
const washer = (name: string) => maybe(lengthField({ name, example: "5/8 in", from: "5 mm", to: "100 mm" }));

const stud = block("the stud block", "{ thread: 1/4-28, bore: 5/16 in, thread length: 2 in }", {
  thread: maybe(thread),
  bore: bore("the bore of the stud", "5/16 in"),
  "thread length": maybe(lengthField({ name: "the thread length", example: "2 in", from: "5 mm", to: "300 mm" })),
  "first turns": maybe(numberField({ name: "the first turns", example: "3", from: "0", to: "50" })),
  washer: washer("the washer of the stud"),
  reserve: maybe(lengthField({ name: "the thread kept in reserve", example: "1/4 in", from: "0 in", to: "100 mm" })),
});

const grip = block("the grip block", "{ bore: 1/4 in, counterbore: 3/8 in, body length: 1-1/4 in }", {
  bore: bore("the bore of the grip", "1/4 in"),
  counterbore: bore("the counterbore of the grip", "3/8 in"),
  "body length": maybe(lengthField({ name: "the body length", example: "1-1/4 in", from: "5 mm", to: "300 mm" })),
  "bore without back": bore("the bore where no drill reaches the back", "3/8 in"),
  washer: washer("the washer of the grip"),
});

const fittings = block("the fittings block", "{ hold end: grip }", {
  "hold end": choice("the hold end", ["grip", "stud"]),
  ends: maybe(endKind),
  face: maybe(faceEnd),
  stud: maybe(stud),
  grip: maybe(grip),
  "pass bore": bore("the pass bore", "1/4 in"),
  "bushing bore": bore("the bushing bore", "1/4 in"),
  "bushing angle": maybe(smallAngle("the bushing angle")),
  bushing: maybe(bushing),
  "bevel edge": maybe(lengthField({ name: "the thin edge of a bevelled washer", example: "1/16 in", from: "1/64 in", to: "1 in" })),
  spares: maybe(share({ name: "the share of spares", example: "5 %", from: "0 %", to: "100 %" })),
});

const readyLength = lengthField({ name: "a ready length", example: "10 ft", from: "12 in", to: "300 m" });

const supply = kinds("the supply block", "{ kind: ready }", [
  block("a supply of ready lengths", "{ kind: ready }", {
    kind: kind("ready"),
    lengths: maybe(list("the list of ready lengths", "[5 ft, 10 ft, 15 ft]", readyLength, { least: 1, most: 100 })),
    prices: maybe(list("the list of prices", "[9.50, 14.00, 18.50]", money("a price"), { least: 1, most: 100 })),
  }),
  block("a supply from a spool", "{ kind: spool, spool length: 500 ft }", {
    kind: kind("spool"),
    "spool length": lengthField({ name: "the spool length", example: "500 ft", from: "1 m", to: "5000 m" }),
    allowance: maybe(lengthField({ name: "the allowance on a cut", example: "6 in", from: "0 in", to: "2 m" })),
    price: maybe(money("the price of a spool")),
  }),
]);

const stockLength = lengthField({ name: "a stock length", example: "8 ft", from: "12 in", to: "20 m" });

const stock = block("the stock block", "{ lengths: [8 ft, 10 ft, 12 ft] }", {
  lengths: maybe(list("the list of stock lengths", "[8 ft, 10 ft, 12 ft]", stockLength, { least: 1, most: 40 })),
  "post lengths": maybe(list("the list of stock lengths of posts", "[8 ft, 10 ft, 12 ft]", stockLength, { least: 1, most: 40 })),
  kerf: maybe(lengthField({ name: "the kerf", example: "1/8 in", from: "0 in", to: "20 mm" })),
  "end trim": maybe(lengthField({ name: "the end trim", example: "1/2 in", from: "0 in", to: "500 mm" })),
});

const limits = block("the limits block", "{ largest cable spacing: 3 in }", {
  "largest cable spacing": maybe(lengthField({ name: "the largest cable spacing", example: "3 in", from: "1 in", to: "12 in" })),
  "widest wall gap": maybe(lengthField({ name: "the widest wall gap", example: "4 in", from: "0 in", to: "1 m" })),
  "narrowest wall gap": maybe(lengthField({ name: "the narrowest wall gap", example: "3 in", from: "0 in", to: "1 m" })),
  "most bends": maybe(countField({ name: "the most bends of a run", example: "2", from: "0", to: "10" })),
  "longest run with bends": maybe(lengthField({ name: "the longest run with bends", example: "40 ft", from: "1 m", to: "200 m" })),
  "longest straight run": maybe(lengthField({ name: "the longest straight run", example: "70 ft", from: "1 m", to: "200 m" })),
  "largest turn on one post": maybe(cornerTurn("the largest turn on one post", "90 deg")),
  "largest turn bored straight": maybe(cornerTurn("the largest turn bored straight", "60 deg")),
  "small turn": maybe(cornerTurn("the small turn", "15 deg")),
  "tape step": maybe(lengthField({ name: "the tape step", example: "1/16 in", from: "1/64 in", to: "1/2 in" })),
  "wood between bores": maybe(lengthField({ name: "the wood between bores that cross", example: "1/2 in", from: "1 mm", to: "100 mm" })),
  "least edge distance": maybe(lengthField({ name: "the least edge distance", example: "1/2 in", from: "1 mm", to: "100 mm" })),
  "largest movement": maybe(share({ name: "the largest movement", example: "1 %", from: "0.1 %", to: "10 %" })),
  "largest deflection": maybe(share({ name: "the largest deflection", example: "1.67 %", from: "0.1 %", to: "20 %" })),
});

const agreedWith = textField("who agreed", "the authority, on the permit");

const criterion = kinds("the criterion", "{ kind: sphere, diameter: 4 in, force: 12 lbf, agreed with: ... }", [
  block("a sphere criterion", "{ kind: sphere, diameter: 4 in, force: 12 lbf, agreed with: ... }", {
    kind: kind("sphere"),
    diameter: lengthField({ name: "the diameter of the sphere", example: "4 in", from: "20 mm", to: "300 mm" }),
    force: forceField({ name: "the force on the sphere", example: "12 lbf", from: "1 N", to: "2 kN" }),
    "agreed with": agreedWith,
  }),
  block("a table criterion", "{ kind: table, source: NCC 2022 }", {
    kind: kind("table"),
    source: choice("the source of the table", ["NCC 2022"]),
  }),
  block("a sag criterion", "{ kind: sag, weight: 10 lbf, largest sag: 3/8 in, agreed with: ... }", {
    kind: kind("sag"),
    weight: forceField({ name: "the weight", example: "10 lbf", from: "1 N", to: "1 kN" }),
    "largest sag": lengthField({ name: "the largest sag", example: "3/8 in", from: "0.5 mm", to: "100 mm" }),
    "agreed with": agreedWith,
  }),
  block("a stated criterion", "{ kind: stated, tension: 250 lbf, stated by: ... }", {
    kind: kind("stated"),
    tension: forceField({ name: "the tension", example: "250 lbf", from: "50 N", to: "50 kN" }),
    "stated by": textField("who states the tension", "the engineer, letter of 2026-04-01"),
  }),
]);

const passShare = share({ name: "a pass", example: "50 %", from: "5 %", to: "100 %" });

const tightening = block("the tightening block", "{ criterion: { kind: sphere, ... } }", {
  criterion,
  order: maybe(
    choice("the order of tightening", ["from the middle outward", "from the outside in", "from the bottom up", "from the top down"]),
  ),
  passes: maybe(list("the list of passes", "[50 %, 100 %, 100 %]", passShare, { least: 1, most: 10 })),
  band: maybe(share({ name: "the band", example: "10 %", from: "1 %", to: "50 %" })),
  friction: maybe(numberField({ name: "the friction", example: "0.2", from: "0", to: "1" })),
  wobble: maybe(perLength),
  "most passes": maybe(countField({ name: "the most passes", example: "3", from: "1", to: "6" })),
  "allow for": maybe(choice("what the target allows for", ["heat and settling", "heat", "nothing"])),
  seating: maybe(lengthField({ name: "the seating", example: "1/16 in", from: "0 in", to: "50 mm" })),
  "reading step": maybe(forceField({ name: "the reading step", example: "5 lbf", from: "0.1 N", to: "1 kN" })),
  "sag weight": maybe(forceField({ name: "the sag weight", example: "10 lbf", from: "1 N", to: "1 kN" })),
});

const notes = list("the list of notes", "[deliver the posts first]", textField("a note", "deliver the posts first"), {
  least: 0,
  most: 40,
});

/** The whole file. */
export const jobFile = block("the job file", "", {
  job: identity,
  units: choice("the units", ["inch", "mm"]),
  paper: maybe(choice("the paper", ["letter", "a4"])),
  audience: maybe(choice("the audience", ["crew", "homeowner", "permit", "record"])),
  code,
  guard,
  posts,
  spacers,
  frame,
  cable,
  fittings,
  supply,
  stock: maybe(stock),
  limits: maybe(limits),
  site: maybe(site),
  calibration: maybe(calibration),
  tightening,
  printer: maybe(printer),
  notes: maybe(notes),
});

export type JobFile = output<typeof jobFile>;
