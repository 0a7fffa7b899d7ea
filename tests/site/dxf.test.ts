// Does a DXF hold the bores of the schedule? Read back by a parser that has nothing to do with the library that wrote it.
import packed, { type DxfParser, type ICircleEntity, type IEllipseEntity, type IEntity, type ILwpolylineEntity } from "dxf-parser";
import { describe, expect, test } from "vitest";
import { titleBlock } from "../../src/packet/make-packet.ts";
import type { Bore, Plan } from "../../src/plan/plan.ts";
import { dxfFiles } from "../../src/site/dxf.ts";
import { exampleNames, examplePlan } from "../support/example-jobs.ts";

const filesOf = (plan: Plan) => dxfFiles(plan, titleBlock(plan, { jobHash: "0123456789ab", programVersion: "test" }));

/** The package is one class; its types say that it has it inside. */
const Parser = packed as unknown as new () => DxfParser;

const read = (text: string) => {
  const found = new Parser().parseSync(text);
  if (found === null) throw new Error("the parser finds no drawing");
  return found;
};

interface Hole {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

/** Circles, and ellipses whose long axis is upright or level. */
const holesOn = (entities: readonly IEntity[], layer: string): readonly Hole[] =>
  entities
    .filter((entity) => entity.layer === layer)
    .flatMap((entity): readonly Hole[] => {
      if (entity.type === "CIRCLE") {
        const { center, radius } = entity as ICircleEntity;
        return [{ x: center.x, y: center.y, wide: 2 * radius, high: 2 * radius }];
      }
      if (entity.type !== "ELLIPSE") return [];
      const { center, majorAxisEndPoint, axisRatio } = entity as IEllipseEntity;
      const [across, up] = [2 * Math.abs(majorAxisEndPoint.x), 2 * Math.abs(majorAxisEndPoint.y)];
      expect.soft(Math.min(across, up)).toBeCloseTo(0, 9);
      const [long, short] = [Math.max(across, up), Math.max(across, up) * axisRatio];
      return [{ x: center.x, y: center.y, ...(up > across ? { wide: short, high: long } : { wide: long, high: short }) }];
    });

/** Of the faces that stand side by side: the middles of their outlines. */
const middlesOf = (entities: readonly IEntity[]): readonly number[] =>
  (entities.filter(({ type }) => type === "LWPOLYLINE") as ILwpolylineEntity[]).map(
    ({ vertices }) => (Math.min(...vertices.map(({ x }) => x)) + Math.max(...vertices.map(({ x }) => x))) / 2,
  );

/** The bore's place for somebody who looks at this face. */
const rightOn = (face: Bore["entryFace"], { offset }: Bore): number => (face === "right" ? offset : -offset);

describe.each(exampleNames)("%s", (name) => {
  const plan = examplePlan(name);
  const files = filesOf(plan);

  test("has one for each post and pier and one for each kind of spacer, in mm, on layers with plain names", () => {
    const posts = plan.verticals.filter(({ kind }) => kind !== "spacer").map(({ id }) => id);
    expect(files.map((file) => file.name).filter((file) => file.startsWith("P"))).toEqual(posts);
    expect(files.some((file) => file.name === "spacers-1")).toBe(plan.verticals.some(({ kind }) => kind === "spacer"));
    for (const { text } of files) {
      const { header, tables } = read(text);
      // 4: millimetres, in the DXF reference of the format's publisher (variable INSUNITS).
      expect.soft(header["$INSUNITS"]).toBe(4);
      expect.soft(header["$MEASUREMENT"]).toBe(1);
      expect
        .soft(Object.keys(tables.layer.layers).sort())
        .toEqual(["0", "BLIND", "BORE", "CENTRE", "COUNTERBORE", "EXIT", "OUTLINE", "SLEEVE", "TEXT"]);
    }
  });

  test("has every bore and counterbore of each post at its height, its distance from the middle and its size", () => {
    for (const { id } of plan.verticals.filter(({ kind }) => kind === "post")) {
      const { entities } = read(files.find((file) => file.name === id)?.text ?? "");
      const bores = plan.bores.filter((bore) => bore.verticalId === id);
      const faces = (["left", "right"] as const).filter((face) =>
        bores.some(({ entryFace, counterbore, skew }) => entryFace === face || counterbore?.face === face || skew !== 0),
      );
      const middles = middlesOf(entities);
      expect(middles).toHaveLength(faces.length);
      // On the mitre both faces have the hole, as an oval that lies.
      const mitred = bores.filter(({ skew }) => skew !== 0);
      expect(holesOn(entities, "EXIT").filter(({ wide, high }) => wide > high + 1e-6)).toHaveLength(mitred.length);
      const due = (layer: "BORE" | "BLIND" | "SLEEVE" | "COUNTERBORE") =>
        faces.flatMap((face, index) =>
          bores.flatMap((bore) => {
            const isHere =
              layer === "COUNTERBORE"
                ? bore.counterbore?.face === face
                : bore.entryFace === face && (layer === "SLEEVE" ? bore.sleeveHole !== undefined : bore.through === (layer === "BORE"));
            const size =
              { COUNTERBORE: bore.counterbore?.diameter, SLEEVE: bore.sleeveHole, BORE: bore.diameter, BLIND: bore.diameter }[layer] ?? 0;
            // A bit that goes in at an angle meets this face above or below the middle of the post, in an ellipse.
            const y = bore.entryFace === face ? bore.entryHeight : bore.exitHeight;
            const high = size / Math.cos(bore.angle);
            return isHere ? [{ x: (middles[index] ?? 0) + rightOn(face, bore), y, wide: size / Math.cos(bore.skew), high }] : [];
          }),
        );
      for (const layer of ["BORE", "BLIND", "SLEEVE", "COUNTERBORE"] as const) {
        const found = holesOn(entities, layer);
        const wanted = due(layer);
        expect(found).toHaveLength(wanted.length);
        for (const { x, y, wide, high } of wanted) {
          const off = found.map((one) => Math.max(Math.hypot(one.x - x, one.y - y), Math.abs(one.wide - wide), Math.abs(one.high - high)));
          expect.soft(Math.min(...off), `${id} ${layer}`).toBeLessThan(1e-6);
        }
      }
    }
  });

  test("is the same twice", () => expect(filesOf(plan)).toEqual(files));
});

test("a packet that fails says so in each drawing", () => {
  for (const { text } of filesOf(examplePlan("0007-too-much-for-the-frame"))) expect(text).toContain("NOT FOR CONSTRUCTION");
});
