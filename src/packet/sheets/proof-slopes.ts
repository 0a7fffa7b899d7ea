// Z-804, Z-901: what is written down of the sides that slope?
import type { Block, Cell } from "../packet.ts";
import { blank, bold, column, type SheetContext, table } from "./kit.ts";
import { type SlopeCheck, slopeChecks } from "./slope-checks.ts";

/** Nothing where none slopes. */
export function slopeTables(context: SheetContext, id: "proof-slopes" | "record-slopes"): readonly Block[] {
  const checks = slopeChecks(context);
  if (checks.length === 0) return [];
  const isProof = id === "proof-slopes";
  return [
    table({
      id,
      caption: isProof
        ? "Slopes: heights are plumb, openings square to the cables"
        : "Slopes as built: heights are plumb, openings square to the cables",
      columns: [
        column("side", "Side", 0.07),
        column("what", "What", 0.35),
        column("plan", "Plan", 0.13),
        column("limit", "Limit", 0.24),
        column("measured", isProof ? "Measured" : "Built", 0.13),
        ...(isProof ? [column("initials", "Init.", 0.08)] : []),
      ],
      rows: checks.map((check) => rowOf(check, isProof)),
      writeIn: true,
    }),
  ];
}

const rowOf = ({ sideId, what, planned, limit, unit }: SlopeCheck, isProof: boolean): readonly Cell[] => [
  bold(sideId),
  what,
  bold(planned),
  limit,
  blank(unit),
  ...(isProof ? [blank()] : []),
];
