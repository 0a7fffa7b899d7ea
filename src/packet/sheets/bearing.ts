// Where is a washer or a bushing too small for the wood that bears it, and how is that said beside it?
import type { EndKind, Plan } from "../../plan/plan.ts";
import type { Text } from "../packet.ts";

/** True where a check finds that the washers at ends of this kind press too hard on the wood. */
function sinksIn({ checks, runs }: Pick<Plan, "checks" | "runs">, kind: EndKind): boolean {
  const ids = runs.flatMap((run) =>
    [run.left, run.right].filter((end) => end.kind === kind).map(({ postId }) => `bearing-${run.id}-${postId}`),
  );
  return checks.some(({ id, ratio }) => ids.includes(id) && ratio !== null && ratio > 1);
}

/** For the sheet of questions. */
export const bearingQuestion = (plan: Plan): readonly (readonly [Text, Text])[] =>
  plan.job.posts.section.material === "wood"
    ? [
        [
          "Do the washers bear on the wood of these posts (engineer)?",
          sinksIn(plan, "stud") || sinksIn(plan, "grip") ? "not by the check on Z-001: to be decided" : "yes, by the check on Z-001",
        ],
      ]
    : [];

const TOO_SMALL: Text = " (**too small by the check on Z-001: decide first**)";

/** Printed behind a washer's size wherever it stands. */
export const washerWarning = (plan: Plan, kind: EndKind): Text => (sinksIn(plan, kind) ? TOO_SMALL : "");

/** True where a check finds that a cable presses too hard where it bends, on wood or on its bushing. */
const isCrushed = ({ checks }: Pick<Plan, "checks">): boolean =>
  checks.some(({ id, ratio }) => (id.startsWith("bend-") || id.startsWith("bushing-")) && ratio !== null && ratio > 1);

/** Printed behind the size of the bushings wherever it stands. */
export const bushingWarning = (plan: Plan): Text => (isCrushed(plan) ? TOO_SMALL : "");

/** For the sheet of questions. */
export function bendQuestion(plan: Plan): readonly (readonly [Text, Text])[] {
  const own = plan.checks.filter(({ id }) => id.startsWith("bend-") || id.startsWith("bushing-"));
  if (own.length === 0) return [];
  const isKnown = own.every(({ ratio }) => ratio !== null);
  const found = isCrushed(plan) ? "not by the check on Z-001: to be decided" : "yes, by the check on Z-001";
  return [
    [
      hasBushingTubes(plan)
        ? "Do the wood along the tubes, and the bushings in them, bear the push of the cables where they bend (engineer)?"
        : "Do the wood at the mouths of bores, and the bushings there, bear the push of the cables where they bend (engineer)?",
      isKnown ? found : "bushings are not rated: ask their maker; the push stands on Z-001",
    ],
  ];
}

/** Bushings that sit in a tube right through a post of wood. */
export const hasBushingTubes = ({ job, bores }: Pick<Plan, "job" | "bores">): boolean =>
  job.posts.section.material === "wood" && job.fittings.bushing.tubeWall !== null && bores.some(({ bushing }) => bushing);

const isBushedOnMitre = ({ bores }: Pick<Plan, "bores">): boolean => bores.some(({ bushing, skew }) => bushing && skew !== 0);

/** Whether any of them lies in a bore on the mitre: square ends would not be flush with both faces. */
export const hasMitredTubes = (plan: Pick<Plan, "job" | "bores">): boolean => hasBushingTubes(plan) && isBushedOnMitre(plan);

/** How the ends of the tubes are cut, behind which their finish stands. */
export const tubeEnds = (plan: Pick<Plan, "job" | "bores">): Text =>
  hasMitredTubes(plan) ? "cut at 45 deg on the mitre, rounded" : "rounded";

/** Where a bushing sits in a mouth that is cut at 45 deg: square ends that stand out are held on one side only. */
export const mitredSeat = (plan: Pick<Plan, "job" | "bores">): Text =>
  isBushedOnMitre(plan) ? ` On the mitre push it in until the ${hasBushingTubes(plan) ? "tube" : "wood"} holds it all round.` : "";
