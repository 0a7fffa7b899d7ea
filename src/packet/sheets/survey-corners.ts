// What is measured at the corners of a guard, and where its slope changes?
import type { Access } from "../../job/job.ts";
import { isCorner } from "../../plan/joints.ts";
import type { Plan, SidePlan } from "../../plan/plan.ts";
import type { Mm } from "../../units/quantity.ts";
import { joints } from "../joints.ts";
import type { Text } from "../packet.ts";
import type { SheetContext } from "./kit.ts";
import { accessStop, accessWords, offBy, practice, SIZE_mm, type SurveyRow } from "./survey-rows.ts";

/** Room beyond a post for who sets the ends of its runs. */
const accessAt = ({ runs }: Plan, postId: string): Access =>
  runs.flatMap(({ left, right }) => [left, right]).find((end) => end.postId === postId)?.access ?? "none";

/** One post at a corner: the bore lies where its faces do. */
const onePostRows = ({ plan, show }: Pick<SheetContext, "plan" | "show">): readonly SurveyRow[] =>
  plan.verticals.flatMap(({ id, corner }): readonly SurveyRow[] => {
    if (corner === undefined) return [];
    const stop = `${offBy(SIZE_mm, { show })} ${practice}`;
    const { homeId, nextId, setback, twist, isSetOff } = corner;
    const turned: SurveyRow = [
      "(result)",
      `${id} turned from square to side ${homeId}, and to side ${nextId}`,
      show.angle(Math.abs(twist)),
      `off by more than 2 deg ${practice}`,
    ];
    return [
      ["(result)", `Corner point to the middle of the faces of ${id} towards sides ${homeId} and ${nextId}`, show.tapeBoth(setback), stop],
      ...(twist === 0 ? [] : [turned]),
      ...(isSetOff
        ? ([
            [
              "posts / as found / access",
              `Beyond the two far faces of ${id}, where nuts or grips stand`,
              accessWords[accessAt(plan, id)],
              accessStop(accessAt(plan, id)),
            ],
            [
              "posts",
              `${id}, bored both ways: splits and checks on its four faces`,
              "none along its middle",
              "one where bores are to go: replace the post",
            ],
          ] as const)
        : []),
    ];
  });

/** The faces of the posts of a corner, or of a change of slope, set the place of the bends. */
export function cornerRows({ plan, show }: SheetContext): readonly SurveyRow[] {
  const row = (postId: string, setback: Mm, from: Text, side: SidePlan): SurveyRow => [
    plan.job.sides[side.index]?.stations == null ? "posts / corner setback" : `guard / sides / ${side.id} / stations`,
    `${from} to the near face of ${postId}`,
    show.tapeBoth(setback),
    `${offBy(SIZE_mm, { show })} ${practice}`,
  ];
  const two = joints(plan).flatMap((bay) => {
    const { id, leftId, rightId } = bay;
    const from = isCorner(plan, id) ? "Corner point" : `Change of slope ${id}, level,`;
    const [left, right] = [leftId, rightId].map((id) => plan.sides[plan.verticals.find((each) => each.id === id)?.sideIndex ?? -1]);
    return left && right ? [row(leftId, left.length - left.endsAt, from, left), row(rightId, right.startsAt, from, right)] : [];
  });
  return [...onePostRows({ plan, show }), ...two];
}
