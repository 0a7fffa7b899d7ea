// Is a drawing refused that does not fit its page or can't be read, by its own text alone?
import { describe, expect, test } from "vitest";
import { drawingFaults } from "../../src/pdf/drawing-faults.ts";
import { samplePacket } from "../support/sample-packet.ts";

const packetWith = (attributes: string, inside = '<text font-size="3.175">x</text>') =>
  samplePacket({
    extra: [
      {
        kind: "drawing",
        id: "d",
        title: "D",
        description: "D.",
        svg: `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`,
        width_mm: 1,
        height_mm: 1,
      },
    ],
  });

describe("drawingFaults", () => {
  test("the sample's drawings have none", () => expect(drawingFaults(samplePacket())).toEqual([]));

  // US Letter upright, 215.9 x 279.4 mm, less margins of 26 and 42 mm: 189.9 x 237.4 mm.
  test.each([
    ['width="190mm" height="10mm" viewBox="0 0 190 10"', "svg in #d is wider than its page: 190 mm of 189.9 mm"],
    ['width="10mm" height="238mm" viewBox="0 0 10 238"', "svg in #d is higher than its page: 238 mm of 237.4 mm"],
    // 3.175 units are 9 pt at one millimetre a unit, and half of that at half a millimetre.
    ['width="10mm" height="10mm" viewBox="0 0 20 20"', "svg in #d has letters of 1.5875 mm, below 9 pt"],
    ['width="10" height="10" viewBox="0 0 10 10"', "svg in #d does not say its size in mm"],
  ])("%s is told with its sheet", (attributes, fault) => {
    expect(drawingFaults(packetWith(attributes))).toEqual([`sheet Z-001 cover: ${fault}`]);
  });

  test("a drawing of 189.9 x 237.4 mm with letters of 9 pt, or with none, is good", () => {
    const full = 'width="189.9mm" height="237.4mm" viewBox="0 0 189.9 237.4"';
    expect(drawingFaults(packetWith(full))).toEqual([]);
    expect(drawingFaults(packetWith(full, ""))).toEqual([]);
  });
});
