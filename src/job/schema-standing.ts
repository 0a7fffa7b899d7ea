// What may a job file say of how a guard stands: hardware in the way of bores?
import { exactOptional as maybe } from "zod";
import { quoted, type Reading, refuse } from "../units/notation.ts";
import { block, field, lengthField, list, textField } from "./field.ts";

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

/** Keys of the posts block that tell how the posts really stand. */
export const standing = {
  hardware: maybe(
    list("the list of hardware", "[{ what: rail bracket, from: 30 in, to: 33 in, posts: [P1, P3] }]", hardware, { least: 1, most: 100 }),
  ),
  "hardware clearance": maybe(lengthField({ name: "the clearance to hardware", example: "1/4 in", from: "0 in", to: "4 in" })),
};
