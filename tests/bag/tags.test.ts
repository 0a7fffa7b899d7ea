// Are labels and values of a tag file read as RFC 8493 writes them?
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readTags, tagValue, writeTags } from "../../src/bag/tags.ts";

/** The example of bag-info.txt in RFC 8493, section 2.2.2, from memory. */
const example = `Source-Organization: FOO University
Organization-Address: 1 Main St., Cupertino, California, 11111
Contact-Name: Jane Doe
Contact-Phone: +1 111-111-1111
Contact-Email: example@example.com
External-Description: Uncompressed greyscale TIFF images from the
     FOO papers colle...
Bagging-Date: 2008-01-15
External-Identifier: university_foo_001
Payload-Oxum: 279164409832.1198
Bag-Group-Identifier: university_foo
Bag-Count: 1 of 15
Internal-Sender-Identifier: /storage/images/foo
Internal-Sender-Description: Uncompressed greyscale TIFFs created
     from microfilm and are...
`;

describe("readTags", () => {
  test("the example of the RFC (from memory) has 13 labels, and a line that begins with blanks goes on", () => {
    const { tags, wrongLines } = readTags(example);
    expect(wrongLines).toEqual([]);
    expect(tags).toHaveLength(13);
    expect(tagValue(tags, "External-Description")).toBe("Uncompressed greyscale TIFF images from the FOO papers colle...");
    expect(tagValue(tags, "payload-oxum")).toBe("279164409832.1198");
    expect(tagValue(tags, "Bag-Size")).toBeUndefined();
  });

  test("each kind of line end is read", () => {
    for (const end of ["\n", "\r", "\r\n"]) expect(readTags(example.replaceAll("\n", end))).toEqual(readTags(example));
  });

  test.each(["no colon", "Label:value", ": value", " begins with a blank", "Label : value", ""])(
    "%j is no tag, and its line is told",
    (line) => expect(readTags(`${line}\nA: b\n`)).toEqual({ tags: [{ label: "A", value: "b" }], wrongLines: [1] }),
  );

  test("what is written is read back", () => {
    const label = fc.stringMatching(/^[A-Za-z][A-Za-z-]{0,20}$/);
    const value = fc.string({ unit: "grapheme" }).map((text) => text.replace(/\s+/g, " ").trim());
    fc.assert(
      fc.property(fc.array(fc.record({ label, value }, { noNullPrototype: true })), (tags) => {
        expect(readTags(writeTags(tags))).toEqual({ tags, wrongLines: [] });
      }),
    );
  });
});
