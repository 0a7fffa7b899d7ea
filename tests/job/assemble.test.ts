import { describe, expect, test } from "vitest";
import { changedText, jobOf } from "../support/example-jobs.ts";

const name = "rule-of-thumb";
const changed = (changes: Readonly<Record<string, string>>) => jobOf(changedText(name, changes));

// Dressed sizes of lumber: NDS Supplement, table 1A (2 is 1-1/2 in, 4 is 3-1/2 in, 6 is 5-1/2 in).
describe("members", () => {
  test("a 2x6 laid flat is 1-1/2 in deep and 5-1/2 in wide, on edge the other way round", () => {
    expect(changed({}).frame.topRail).toMatchObject({ depth: 38.1, width: 139.7, name: "2x6" });
    expect(changed({ "size: 2x6, lay: flat": "size: 2x6, lay: edge" }).frame.topRail).toMatchObject({ depth: 139.7, width: 38.1 });
  });

  test("a 4x6 post is 3-1/2 in along the side, a 6x4 is 5-1/2 in", () => {
    expect(changed({ "size: 4x4": "size: 4x6" }).posts.section).toMatchObject({ along: 88.9, across: 139.7, name: "4x6" });
    expect(changed({ "size: 4x4": "size: 6x4" }).posts.section).toMatchObject({ along: 139.7, across: 88.9, name: "6x4" });
  });

  test("tubes are named by their own units: 50 x 50 x 3 mm tube and 2 x 2 x 1/8 in tube", () => {
    const metal = (size: string) => ({
      "size: 4x4                       # or: size: 50 mm x 50 mm, wall: 3 mm\n  material: wood\n  treated: true": `size: ${size}\n  material: steel`,
    });
    expect(changed(metal("50 x 50 mm\n  wall: 3 mm")).posts.section).toEqual({
      material: "steel",
      along: 50,
      across: 50,
      wall: 3,
      name: "50 x 50 x 3 mm tube",
    });
    expect(changed(metal("2 in x 2 in\n  wall: 1/8 in")).posts.section.name).toBe("2 x 2 x 1/8 in tube");
    expect(changed(metal("10 mm x 40 mm")).posts.section).toMatchObject({ along: 10, across: 40, wall: null, name: "10 x 40 mm" });
  });

  test("without a bottom rail the gap below is 0", () => {
    const job = changed({
      "  bottom rail: { size: 2x4, lay: edge, material: wood, treated: true }\n": "",
      "  gap below: 2 in                 # from the datum to the underside of the bottom rail\n": "",
    });
    expect([job.frame.bottomRail, job.frame.gapBelow]).toEqual([null, 0]);
  });
});

describe("ends and sides", () => {
  const wall = (end: string) => changed({ "  end: { kind: post, access: drill }": `  end: ${end}` }).end;

  test("behind a gap of 3 in a hand is taken to reach, behind 2 in nothing", () => {
    expect(wall("{ kind: wall, gap: 3 in }")).toEqual({ kind: "wall", gap: 76.2, access: "hand" });
    expect(wall("{ kind: wall, gap: 2 in }")).toEqual({ kind: "wall", gap: 50.8, access: "none" });
    expect(wall("{ kind: wall, gap: 2 in, access: hand }").access).toBe("hand");
    expect(wall("{ kind: post }")).toEqual({ kind: "post", gap: null, access: "drill" });
  });

  test("sides are A and B; right turns are positive, left ones negative", () => {
    const job = changed({
      "    - length: 23 ft": "    - { length: 10 ft, turn: left 45 deg, stations: [2 in, 9 ft 10 in] }\n    - length: 23 ft",
    });
    expect(job.sides.map(({ id, length, turn }) => [id, length, turn])).toEqual([
      ["A", 3048, -Math.PI / 4],
      ["B", 7010.4, null],
    ]);
    expect(job.sides[0]?.stations).toEqual([50.8, 2997.2]);
  });
});

describe("everything a job may state", () => {
  test("each of 31 values that the file states arrives with the job as its source", () => {
    const job = changed({
      "  # Every dimension": "  pass bore: 9/32 in\n  bushing bore: 5/16 in\n  bushing angle: 4 deg\n  spares: 10 %\n  # Every dimension",
      "  stud: { washer: 1-1/4 in }\n  grip: { washer: 1-1/4 in }\n": "",
      "  # stud: {": "  stud: {",
      "  # grip: { bore: 1/4 in,": "  grip: { bore without back: 7/16 in, bore: 1/4 in,",
      "  # lengths: [5 ft, 10 ft, 15 ft] and prices: one price for each length, in the job's money":
        "  lengths: [10 ft, 25 ft]\n  prices: [9.50, 21]",
      "  grade: 316":
        "  grade: 316\n  breaking force: 8 kN\n  mass: 50 g/m\n  axial stiffness: { low: 700 kN, nominal: 750 kN, high: 800 kN }\n  working share: 25 %\n  bedding: 0.1 %",
      "tightening:\n": [
        "limits: { largest cable spacing: 2-7/8 in, widest wall gap: 3-3/4 in, narrowest wall gap: 2-1/2 in, most bends: 1, longest run with bends: 30 ft, longest straight run: 60 ft, largest turn on one post: 80 deg, largest turn bored straight: 50 deg, small turn: 10 deg, wood between bores: 5/8 in, tape step: 1/8 in, least edge distance: 3/4 in, largest movement: 1 %, largest deflection: 2 % }",
        "stock: { lengths: [8 ft, 12 ft], kerf: 3/32 in, end trim: 1 in }",
        "notes: [mind the hose bib]",
        "tightening:\n  passes: [60 %, 100 %]\n  band: 5 %\n  friction: 0.2\n  wobble: 0.0015 per m\n  seating: 1/8 in\n  reading step: 10 lbf\n  sag weight: 5 lbf\n",
      ].join("\n"),
    });
    expect(job.fittings).toMatchObject({
      passBore: { value: 7.14375 },
      bushingBore: { value: 7.9375 },
      spareShare: { value: 0.1 },
      stud: { thread: "1/4-28" },
      grip: { boreNoBack: { value: 11.1125, source: "job" } },
    });
    expect(job.supply).toMatchObject({ kind: "ready", lengths: { value: [3048, 7620], source: "job" }, price_cents: [950, 2100] });
    expect(job.cable).toMatchObject({
      breakingForce: { value: 8000, source: "job" },
      mass_kgPerM: { value: 0.05 },
      stiffness: { value: { low: 700_000, nominal: 750_000, high: 800_000 }, source: "job" },
      workingShare: { value: 0.25 },
      beddingShare: { value: 0.001 },
    });
    expect(Object.values(job.limits).map(({ value, source }) => [value, source])).toEqual(
      [73.025, 95.25, 63.5, 1, 9144, 18_288, ...[80, 50, 10].map((angle) => (angle * Math.PI) / 180), 15.875, 3.175, 19.05, 0.01, 0.02].map(
        (value) => [value, "job"],
      ),
    );
    expect(job.stock).toMatchObject({ lumberLengths: { value: [2438.4, 3657.6] }, kerf: { value: 2.38125 }, endTrim: { value: 25.4 } });
    expect(job.tightening).toMatchObject({
      passes: { value: [0.6, 1], source: "job" },
      band: { value: 0.05 },
      friction: { value: 0.2 },
      seating: { value: 3.175 },
    });
    expect(job.tightening.wobble_perMm.value).toBeCloseTo(1.5e-6, 15);
    expect(job.notes).toEqual(["mind the hose bib"]);
  });

  test.each([
    ["kind: table, source: NCC 2022", { kind: "table", source: "ncc-2022" }],
    [
      "kind: sag, weight: 40 N, largest sag: 10 mm, agreed with: the owner",
      { kind: "sag", weight: 40, sag_max: 10, agreedWith: "the owner" },
    ],
    ["kind: stated, tension: 1 kN, stated by: the engineer", { kind: "stated", tension: 1000, statedBy: "the engineer" }],
  ])("a criterion { %s } is taken as it stands", (written, criterion) => {
    const block = /criterion: +#[^\n]*\n( {4}[^\n]*\n)+/;
    const text = changedText(name, {}).replace(block, `criterion: { ${written} }\n`);
    expect(jobOf(text).tightening.criterion).toEqual(criterion);
  });

  test("a spool, offset bores and prices in whole cents", () => {
    const job = changed({
      "  kind: ready ": "  kind: spool\n  spool length: 500 ft\n  price: 210.00 ",
      "  existing: false": "  existing: false\n  split: offset bores",
    });
    expect(job.supply).toMatchObject({ kind: "spool", spoolLength: 152_400, price_cents: 21_000, allowance: { value: 152.4 } });
    expect(job.posts.split).toBe("offset bores");
  });

  test("the job is plain data: it survives JSON unchanged", () => {
    const job = changed({});
    expect(JSON.parse(JSON.stringify(job))).toEqual(job);
  });
});
