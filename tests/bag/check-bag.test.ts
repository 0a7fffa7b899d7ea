// Does a new bag hold what RFC 8493 asks, and is each kind of damage to it seen and told?
import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import type { Digest, Entry } from "../../src/bag/bag.ts";
import { checkBag } from "../../src/bag/check-bag.ts";
import { makeBag } from "../../src/bag/make-bag.ts";

const digest: Digest = ({ name }, bytes) => createHash(name).update(bytes).digest("hex");

type Folder = Map<string, string>;

const folder = (): Folder => {
  const content = {
    payload: new Map([
      ["plan.json", Buffer.from("{}\n")],
      ["0001/index.html", Buffer.from("<p>abc</p>")],
    ]),
    info: [{ label: "Bagging-Date", value: "2026-04-20" }],
    notes: new Map([["README.txt", "words\n"]]),
  };
  return new Map([...makeBag(content, digest)].map(([path, bytes]) => [path, Buffer.from(bytes).toString("utf8")]));
};

const check = (files: ReadonlyMap<string, string>, { more = [], hash = digest }: { more?: readonly Entry[]; hash?: Digest } = {}) => {
  const folders = new Set(
    [...files.keys()].flatMap((path) =>
      path
        .split("/")
        .slice(0, -1)
        .map((_, index, steps) => steps.slice(0, index + 1).join("/")),
    ),
  );
  const entries: Entry[] = [
    ...[...folders].map((path): Entry => ({ path, kind: "folder" })),
    ...[...files.keys()].sort().map((path): Entry => ({ path, kind: "file" })),
    ...more,
  ];
  return checkBag({ entries, read: (path) => Buffer.from(files.get(path) ?? "", "utf8"), digest: hash });
};

/** The manifests made anew, as somebody would who changes files and manifests together. */
const rehash = (files: Folder): Folder => {
  for (const name of ["manifest", "tagmanifest"]) {
    for (const algorithm of ["sha256", "sha512"]) {
      const paths = [...files.keys()].filter((path) =>
        name === "manifest" ? path.startsWith("data/") : !/^data\/|^tagmanifest/.test(path),
      );
      const line = (path: string): string =>
        `${createHash(algorithm)
          .update(files.get(path) ?? "")
          .digest("hex")}  ${path}\n`;
      files.set(`${name}-${algorithm}.txt`, paths.map(line).join(""));
    }
  }
  return files;
};

describe("makeBag", () => {
  test("declares itself, states its payload, and hashes every file twice", () => {
    const bag = folder();
    expect([...bag.keys()].sort()).toEqual([
      "README.txt",
      "bag-info.txt",
      "bagit.txt",
      "data/0001/index.html",
      "data/plan.json",
      "manifest-sha256.txt",
      "manifest-sha512.txt",
      "tagmanifest-sha256.txt",
      "tagmanifest-sha512.txt",
    ]);
    expect(bag.get("bagit.txt")).toBe("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    expect(bag.get("bag-info.txt")).toBe("Bagging-Date: 2026-04-20\nPayload-Oxum: 13.2\n");
    expect(
      bag
        .get("tagmanifest-sha512.txt")
        ?.split("\n")
        .map((line) => line.split("  ")[1]),
    ).toEqual(["README.txt", "bag-info.txt", "bagit.txt", "manifest-sha256.txt", "manifest-sha512.txt", undefined]);
  });

  // FIPS 180-4's own example for SHA-256, from memory.
  test("the hash of abc is the published one", () => {
    const payload = new Map([["x", Buffer.from("abc")]]);
    const bag = makeBag({ payload, info: [], notes: new Map() }, digest);
    expect(Buffer.from(bag.get("manifest-sha256.txt") ?? "").toString()).toBe(
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  data/x\n",
    );
  });
});

describe("checkBag", () => {
  test("a new bag is complete and valid", () => {
    const { faults, unguarded, payload, algorithms } = check(folder());
    expect([faults, unguarded, payload]).toEqual([[], [], { files: 2, bytes: 13 }]);
    expect(algorithms.map(({ label }) => label)).toEqual(["SHA-512", "SHA-256"]);
  });

  test("the example bag of the RFC (from memory), whose files stand for those behind its hashes, is valid; bag-info and tag manifests are not asked for", () => {
    const files = new Map([
      ["bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"],
      [
        "manifest-md5.txt",
        "49afbd86a1ca9f34b677a3f09655eae9 data/27613-h/images/q172.png\n408ad21d50cef31da4df6d9ed81b01a7 data/27613-h/images/q172.txt\n",
      ],
      ["data/27613-h/images/q172.png", "a picture"],
      ["data/27613-h/images/q172.txt", "a text"],
    ]);
    const hashes: Readonly<Record<string, string>> = {
      "a picture": "49afbd86a1ca9f34b677a3f09655eae9",
      "a text": "408ad21d50cef31da4df6d9ed81b01a7",
    };
    const hash: Digest = ({ name }, bytes) => (name === "md5" ? (hashes[Buffer.from(bytes).toString()] ?? "") : "");
    expect(check(files, { hash }).faults).toEqual([]);
    files.set("data/27613-h/images/q172.txt", "another text");
    expect(check(files, { hash }).faults.map(({ where }) => where)).toEqual(["data/27613-h/images/q172.txt"]);
  });

  const damages: readonly (readonly [string, (files: Folder) => void, readonly (readonly [string, string, RegExp])[]])[] = [
    [
      "a changed payload file",
      (files) => files.set("data/plan.json", "[]\n"),
      [["data/plan.json", "damaged", /damaged or changed.*SHA-256 and SHA-512/]],
    ],
    [
      "a longer payload file",
      (files) => files.set("data/plan.json", "{ }\n"),
      [
        ["data/plan.json", "damaged", /damaged or changed/],
        ["bag-info.txt", "incomplete", /Payload-Oxum says 13\.2 .* there are 14\.2/],
      ],
    ],
    ["a changed tag file", (files) => files.set("README.txt", "other\n"), [["README.txt", "damaged", /damaged or changed/]]],
    [
      "a lost payload file",
      (files) => files.delete("data/plan.json"),
      [
        ["data/plan.json", "incomplete", /missing, though manifest-sha256.txt and manifest-sha512.txt list it/],
        ["bag-info.txt", "incomplete", /there are 10\.1/],
      ],
    ],
    [
      "a lost tag file",
      (files) => files.delete("README.txt"),
      [["README.txt", "incomplete", /missing, though tagmanifest-sha256.txt and tag/]],
    ],
    [
      "a payload file that nobody listed",
      (files) => files.set("data/more.txt", ""),
      [
        ["data/more.txt", "incomplete", /not in manifest-sha256.txt or manifest-sha512.txt/],
        ["bag-info.txt", "incomplete", /there are 13\.3/],
      ],
    ],
    [
      "a lost manifest",
      (files) => files.delete("manifest-sha256.txt"),
      [["manifest-sha256.txt", "incomplete", /missing, though tagmanifest-sha256.txt and/]],
    ],
    [
      "a line of one manifest that was changed, while the file was not",
      (files) =>
        files.set(
          "manifest-sha256.txt",
          (files.get("manifest-sha256.txt") ?? "").replace(/^./, (digit) => (digit === "0" ? "1" : "0")),
        ),
      [
        ["manifest-sha256.txt", "damaged", /its line for data\/0001\/index\.html is wrong/],
        ["manifest-sha256.txt", "damaged", /damaged or changed/],
      ],
    ],
    [
      "no payload folder",
      (files) => ["data/plan.json", "data/0001/index.html"].map((path) => files.delete(path)),
      [
        ["data/", "incomplete", /folder is missing/],
        ["data/0001/index.html", "incomplete", /missing/],
        ["data/plan.json", "incomplete", /missing/],
        ["bag-info.txt", "incomplete", /there are 0\.0/],
      ],
    ],
    [
      "no declaration",
      (files) => files.delete("bagit.txt"),
      [
        ["bagit.txt", "incomplete", /the folder is no bag/],
        ["bagit.txt", "incomplete", /missing, though/],
      ],
    ],
  ];

  test.each(damages)("%s is told, and nothing else", (_name, damage, expected) => {
    const files = folder();
    damage(files);
    const { faults } = check(files);
    expect(faults.map(({ where, kind }) => [where, kind])).toEqual(expected.map(([where, kind]) => [where, kind]));
    for (const [index, [, , what]] of expected.entries()) expect(faults[index]?.what).toMatch(what);
    expect(faults.every(({ fix }) => fix.length > 10)).toBe(true);
  });

  test.each([
    ["another version", "BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n", /version 0\.97; only 1\.0/],
    ["another encoding", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-16\n", /in UTF-16; only UTF-8/],
    ["a byte order mark", "\ufeffBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n", /not the two lines/],
    ["a third line", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\nMore: x\n", /not the two lines/],
    ["one line", "BagIt-Version: 1.0\n", /not the two lines/],
  ])("a declaration with %s is told", (_name, text, what) => {
    const files = rehash(folder().set("bagit.txt", text));
    const { faults } = check(files);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.what).toMatch(what);
  });

  test("a link and a device are told and never read", () => {
    const more: Entry[] = [
      { path: "data/link", kind: "link" },
      { path: "data/pipe", kind: "other" },
    ];
    const { faults } = check(folder(), { more });
    expect(faults.map(({ where, what }) => `${where}: ${what}`)).toEqual([
      "data/link: this is a link, which a bag must not hold; it was not followed",
      "data/pipe: this is neither a file nor a folder",
    ]);
  });

  test("a listed file that is a link now is missing: what it shows is not read", () => {
    const files = folder();
    files.delete("data/plan.json");
    const { faults } = check(files, { more: [{ path: "data/plan.json", kind: "link" }] });
    expect(faults.map(({ where, what }) => `${where}: ${what.slice(0, 14)}`).slice(0, 2)).toEqual([
      "data/plan.json: this is a link",
      "data/plan.json: missing, thoug",
    ]);
  });

  test("a manifest of paths outside of its part is told", () => {
    const files = folder();
    files.set("manifest-sha256.txt", `${files.get("manifest-sha256.txt")}${"0".repeat(64)}  bagit.txt\n`);
    files.set(
      "tagmanifest-sha256.txt",
      `${files.get("tagmanifest-sha256.txt")}${"0".repeat(64)}  data/plan.json\n${"0".repeat(64)}  tagmanifest-sha512.txt\n`,
    );
    const whats = check(files).faults.map(({ where, what }) => `${where}: ${what}`);
    expect(whats).toEqual(
      expect.arrayContaining([
        "manifest-sha256.txt: bagit.txt has no place in this manifest",
        "tagmanifest-sha256.txt: data/plan.json has no place in this manifest",
        "tagmanifest-sha256.txt: tagmanifest-sha512.txt has no place in this manifest",
      ]),
    );
  });

  test("hashes that are not known here, texts that are no UTF-8 and lines without a label are told", () => {
    const files = folder().set("manifest-sha3.txt", "");
    expect(check(files).faults.map(({ where, what }) => `${where}: ${what}`)).toContain(
      'manifest-sha3.txt: hashes of the kind "sha3" can\'t be checked here',
    );
    const broken = rehash(folder().set("bag-info.txt", "no label\n"));
    expect(check(broken).faults.map(({ where }) => where)).toEqual(["bag-info.txt, line 1"]);
    const bag = folder();
    const entries = [...bag.keys(), "data"].map((path): Entry => ({ path, kind: path === "data" ? "folder" : "file" }));
    const read = (path: string): Uint8Array => (path === "bag-info.txt" ? Buffer.from([0xff, 0xfe]) : Buffer.from(bag.get(path) ?? ""));
    expect(checkBag({ entries, read, digest }).faults.map(({ what }) => what)).toContain("this is no text in UTF-8");
  });

  test("a bag without a payload manifest is told; a file beside data/ that no manifest lists is allowed and named", () => {
    const files = folder();
    for (const name of [...files.keys()].filter((path) => path.includes("manifest-"))) files.delete(name);
    expect(check(files).faults.map(({ what }) => what)).toEqual(["there is no manifest that could be read"]);
    expect(check(folder().set("later.txt", "x"))).toMatchObject({ faults: [], unguarded: ["later.txt"] });
  });
});
