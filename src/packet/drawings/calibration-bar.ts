// Did the printer keep the size? A bar of exactly 100 mm to be measured.
import { calibrationLine } from "../../drawing/ruler.ts";
import { label } from "../../drawing/text.ts";
import type { Drawing } from "../packet.ts";
import { finishDrawing } from "./kit.ts";

/** It depends on nothing: drawn when it is first asked for. */
let drawn: Drawing | undefined;

export function calibrationBar(): Drawing {
  drawn ??= draw();
  return drawn;
}

const draw = (): Drawing =>
  finishDrawing({
    id: "calibration-bar",
    title: "Check of the printer",
    description:
      "A bar of exactly 100 mm (3-15/16 in) between its end marks. If it does not measure 100 mm, print again at 100 %, without fitting to the page.",
    parts: [
      calibrationLine({ x: 2, y: 4 }),
      label("0", { x: 2, y: 9.2 }, { anchor: "middle" }),
      label("100 mm", { x: 102, y: 9.2 }, { anchor: "middle" }),
      label("must measure 100 mm (3-15/16 in)", { x: 52, y: 9.2 }, { anchor: "middle" }),
    ],
  });
