// What of the sheet of stairs is about the guard as a whole: where the slope changes, and what the cables do to the posts' feet?
import type { Transition, Way } from "../../plan/rake-plan.ts";
import { hardestAt } from "../hardest-day.ts";
import type { Block, Cell } from "../packet.ts";
import { LIFT_least } from "./frame-posts.ts";
import { bold, column, heading, prose, type SheetContext, strong, table } from "./kit.ts";

export function transitionBlocks(context: SheetContext): readonly Block[] {
  const { transitions } = context.plan;
  if (transitions.length === 0) return [];
  return [
    heading("stairs-transitions", "Where the slope changes"),
    table({
      id: "stairs-ways",
      caption: "The cables pass there, or two runs end there: what each way comes to for the whole guard",
      columns: [
        column("at", "At", 0.08),
        column("way", "Way", 0.14),
        column("chosen", "Chosen", 0.1),
        column("runs", "Runs", 0.08, { align: "right" }),
        column("cables", "Cables", 0.1, { align: "right" }),
        column("fittings", "End fittings", 0.12, { align: "right" }),
        column("longest", "Longest run", 0.16),
        column("turned", "Most turn", 0.11),
        column("far", "Far end gets", 0.11, { align: "right" }),
      ],
      rows: transitions.flatMap((one) => [wayRow(one, "pass", context), wayRow(one, "end", context)]),
    }),
    prose(
      ...transitions.map(
        ({ id, bend, why }) => `${id}: the cable bends by ${context.show.angle(bend)}, part of it at each of the two posts. It ${why}.`,
      ),
    ),
  ];
}

function wayRow({ id, passes, pass, end }: Transition, which: "pass" | "end", { show }: SheetContext): readonly Cell[] {
  const way: Way | null = which === "pass" ? pass : end;
  const isChosen = passes === (which === "pass");
  const name = which === "pass" ? "cables pass" : "runs end";
  if (way === null) return [id, name, "", "not within the limits", "", "", "", "", ""];
  const { runs, cables, fittings, longest, turned, farShare } = way;
  return [
    id,
    name,
    isChosen ? bold("yes") : "no",
    String(runs),
    String(cables),
    String(fittings),
    show.feet(longest),
    show.angle(turned),
    show.percent(farShare),
  ];
}

/** Cables along a slope lift some posts and press others down, on the level sides of the same line too. */
export function liftTable({ plan, show }: SheetContext): readonly Block[] {
  const day = hardestAt(plan, show);
  const rows = plan.frame.sides
    .flatMap(({ posts }) => posts)
    .filter(({ baseThrust }) => Math.abs(baseThrust) >= LIFT_least)
    .map(({ postId, baseThrust }): readonly Cell[] => [
      bold(postId),
      baseThrust < 0 ? "lifted" : "pressed down",
      strong(show.forceBothUp(Math.abs(baseThrust))),
    ]);
  if (rows.length === 0) return [];
  return [
    table({
      id: "stairs-lift",
      caption: `What the cables do to the feet of the posts, at the top of their bands${day === "" ? "" : ` ${day}`}: the fastening must hold down a post that is lifted`,
      columns: [column("post", "Post", 0.2), column("way", "Is", 0.3), column("force", "By", 0.5)],
      rows,
      rowHeads: true,
    }),
  ];
}
