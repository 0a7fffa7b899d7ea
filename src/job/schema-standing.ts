// What may a job file say of how a guard stands: its ends, what interrupts it, hardware in the way of bores?
import { exactOptional as maybe } from "zod";
import { quoted, type Reading, refuse } from "../units/notation.ts";
import { block, choice, field, kind, kinds, lengthField, list, textField } from "./field.ts";
import { size } from "./fields.ts";
import { pierEnd } from "./schema-pier.ts";

/** What is refused as the material of a post or rail, and what to do instead. */
const notBored: Readonly<Record<string, readonly [what: string, fix: string]>> = {
  concrete: ["concrete", "stand an end post of wood or metal beside it, or bolt one to it, and give that post's material"],
  masonry: [
    "masonry",
    "stand an end post of wood or metal beside it, and write the pier as an end: { kind: wall, gap: 3-1/2 in }, or with its anchors: kind: pier",
  ],
  vinyl: ["a hollow vinyl post", "give the material and size of the post inside it, and the shell as its sleeve (built: sleeved)"],
  composite: ["a composite sleeve", "give the material and size of the post inside it, and this as its sleeve (built: sleeved)"],
  "cast iron": ["cast iron", "it cracks when bored: use posts of steel, stainless, aluminium or wood for the cables"],
  glass: ["glass", "use posts of wood or metal for the cables"],
};

const materials = choice("the material", ["wood", "steel", "stainless", "aluminium"]);

/** The material of a post, rail or spacer; what can't be bored is refused with the alternative. */
export const material = field({ name: "the material", example: "wood" }, (text): Reading<"wood" | "steel" | "stainless" | "aluminium"> => {
  const word = text.trim().toLowerCase();
  const refused = Object.hasOwn(notBored, word) ? notBored[word] : undefined;
  if (refused !== undefined) return refuse(`cables cannot be put through ${refused[0]} here`, refused[1]);
  const known = materials.safeParse(text);
  if (known.success) return { value: known.data };
  const [issue] = known.error.issues;
  const fix = issue !== undefined && "params" in issue ? String(issue.params?.["fix"]) : "write wood, steel, stainless or aluminium";
  return refuse(issue?.message ?? `${quoted(text)} is no material`, fix);
});

const access = maybe(choice("the access", ["drill", "hand", "none"]));

export const guardEnd = kinds("an end of the guard", "{ kind: post, access: drill }", [
  block("an end of the guard at a post", "{ kind: post, access: drill }", { kind: kind("post"), access }),
  block("an end of the guard at a wall", "{ kind: wall, gap: 3-1/2 in, access: hand }", {
    kind: kind("wall"),
    gap: lengthField({ name: "the gap to the wall", example: "3-1/2 in", from: "0 in", to: "1 m" }),
    access,
  }),
  pierEnd,
]);

const away = (name: string) => maybe(lengthField({ name, example: "12 in", from: "0 in", to: "100 m" }));

/** What stands between the end of one side and the start of the next, where no cable passes. */
export const interruption = block("an interruption", "{ what: gate, width: 36 in, end: { kind: post }, start: { kind: post } }", {
  what: choice("what interrupts the guard", ["gate", "column", "house corner", "open"]),
  width: lengthField({ name: "the width of the interruption", example: "36 in", from: "1 in", to: "100 m" }),
  out: away("the offset away from the deck"),
  in: away("the offset towards the deck"),
  end: guardEnd,
  start: guardEnd,
});

/** How a corner is made. */
export const cornerKind = choice("the kind of corner", ["two posts", "one post", "one post, ends", "one post, bores set off"]);

/** P3: a post by its mark on the plan. */
const postMark = field({ name: "the mark of a post", example: "P3" }, (text): Reading<string> => {
  const plain = text.trim().toUpperCase();
  if (/^P[1-9]\d{0,3}$/.test(plain)) return { value: plain };
  return refuse(`${quoted(text)} is not the mark of a post`, "write P and its number from the left, as on the plan, for example P3");
});

const postMarks = list("the list of posts", "[P1, P3]", postMark, { least: 1, most: 500 });

const hardware = block("a piece of hardware", "{ what: rail bracket, from: 30 in, to: 33 in, posts: [P1, P3] }", {
  what: textField("what the hardware is", "rail bracket"),
  posts: maybe(postMarks),
  from: lengthField({ name: "the lower end of the hardware", example: "30 in", from: "0 in", to: "3 m" }),
  to: lengthField({ name: "the upper end of the hardware", example: "33 in", from: "0 in", to: "3 m" }),
});

const asFound = block("a post as found", "{ post: P3, access: hand, behind: planter }", {
  post: postMark,
  access,
  behind: maybe(textField("what is behind a post", "a planter")),
  size: maybe(size("a post", "6x6")),
  wall: maybe(lengthField({ name: "the wall of a tube", example: "3 mm", from: "0.5 mm", to: "30 mm" })),
  leans: maybe(
    block("the lean of a post", "{ out: 1/2 in, over: 36 in }", {
      out: maybe(lengthField({ name: "the lean away from the deck", example: "1/2 in", from: "0 in", to: "6 in" })),
      in: maybe(lengthField({ name: "the lean towards the deck", example: "1/2 in", from: "0 in", to: "6 in" })),
      left: maybe(lengthField({ name: "the lean towards the left", example: "1/2 in", from: "0 in", to: "6 in" })),
      right: maybe(lengthField({ name: "the lean towards the right", example: "1/2 in", from: "0 in", to: "6 in" })),
      over: lengthField({ name: "the height of the lean", example: "36 in", from: "12 in", to: "3 m" }),
    }),
  ),
});

const clearance = (name: string, example: string) => maybe(lengthField({ name, example, from: "0 in", to: "1 in" }));

const sleeve = block("the sleeve block", "{ size: 5 in x 5 in, wall: 3/16 in, material: vinyl }", {
  size: size("a sleeve, outside", "5 in x 5 in"),
  wall: lengthField({ name: "the wall of the sleeve", example: "3/16 in", from: "1 mm", to: "2 in" }),
  material: choice("the material of the sleeve", ["wood", "vinyl", "composite"]),
  "washer clearance": clearance("the clearance round the washer", "1/4 in"),
  "bore clearance": clearance("the clearance round the bore", "1/8 in"),
});

/** Keys of the posts block that tell how the posts really stand. */
export const standing = {
  hardware: maybe(
    list("the list of hardware", "[{ what: rail bracket, from: 30 in, to: 33 in, posts: [P1, P3] }]", hardware, { least: 1, most: 100 }),
  ),
  "as found": maybe(list("the list of posts as found", "[{ post: P3, access: hand, behind: planter }]", asFound, { least: 1, most: 500 })),
  built: maybe(choice("how the posts are built", ["solid", "laminated", "sleeved"])),
  sleeve: maybe(sleeve),
  mount: maybe(choice("how the posts are mounted", ["deck", "fascia"])),
  "hardware clearance": maybe(lengthField({ name: "the clearance to hardware", example: "1/4 in", from: "0 in", to: "4 in" })),
};
