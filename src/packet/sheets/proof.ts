// Z-804: how is it shown that the work is right, and who signs?
import type { Plan } from "../../plan/plan.ts";
import { guardRules } from "../../tables/limits.ts";
import type { Block, Sheet, Table, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { frameNotChecked, introduction } from "../wording.ts";
import { drawnOpenings } from "./drawn.ts";
import {
  blank,
  blanks,
  bold,
  caution,
  column,
  facts,
  greatest,
  least,
  list,
  prose,
  refer,
  type SheetContext,
  type SheetMaker,
  sheet,
  signatures,
  table,
} from "./kit.ts";
import { lastStep, spansInBay } from "./spans.ts";

export const proofSheet: SheetMaker = (context, head): Sheet => {
  const { plan } = context;
  return sheet(head, "portrait", [
    ...(context.home ? [prose(...introduction.proof)] : []),
    caution("warning", frameNotChecked),
    holdTable(context),
    ...openingFacts(context),
    ...drawnOpenings(plan),
    openingTable(context),
    list(...howToTest(context)),
    pullTable(context),
    blanks("proof-conditions", "Conditions", [
      ["Date, weather, air temperature", context.show.heatUnit],
      ["Sphere or cone: diameter measured", context.show.lengthUnit],
      ["Scale: kind, serial number, checked on", ""],
      ["Force named by (authority, name)", ""],
    ]),
    signatures("proof-sign", "Tested by", "For the authority"),
  ]);
};

/** Hold: stop until signed. Witness: invite, go on if nobody comes. Review: paper only. */
function holdTable(context: SheetContext): Table {
  const { plan, show } = context;
  const { limits, code, tightening } = plan.job;
  const band = show.percent(tightening.band.value);
  const points: readonly (readonly [Text, Text, Text, Text])[] = [
    ["H0 questions answered", "H", `no blank on ${refer(context, "authority")}`, "office, authority"],
    [
      "H1 frame accepted, survey compared",
      "H",
      "letter or signature for posts, rails and feet; no value past its stop",
      "engineer or authority",
    ],
    ["Fittings measured", "R", `each size equals ${refer(context, "survey")}`, "crew lead"],
    ["Bores", "W", `no gap above ${show.tape(limits.cableSpacing_max.value)}; bores treated or deburred`, "crew lead"],
    ["H2 ends set, before tails are cut", "H", "first turns on, hold ends set, nothing crossed", "crew lead"],
    ["H3 last pass read", "H", `all readings within ${band} of target, none above its band`, "crew lead"],
    ["Opening check", "W", `${show.tape(code.openingSphere.value)} sphere does not pass at the agreed force, every bay`, "authority"],
    ["H4 hand-over", "H", "proof and log complete, caps on, owner's card given", "office, owner"],
  ];
  return table({
    id: "proof-holds",
    caption: "Hold points (H: stop until signed; W: invite a witness; R: review of paper)",
    columns: [
      column("point", "Point", 0.24),
      column("kind", "H/W/R", 0.08, { align: "center" }),
      column("criterion", "Criterion", 0.33),
      column("who", "Who", 0.15),
      column("sign", "Signed, date", 0.2),
    ],
    rows: points.map(([point, kind, criterion, who]) => [bold(point), kind, criterion, who, blank()]),
    writeIn: true,
  });
}

function openingFacts({ plan, show }: SheetContext): readonly Block[] {
  const { code, tightening } = plan.job;
  const { criterion } = tightening;
  const ofCode = guardRules(code)?.openingForce ?? null;
  const agreed =
    criterion.kind === "sphere"
      ? `${show.forceBoth(criterion.force)} (${criterion.agreedWith})`
      : "not stated in the job: the authority says which";
  return [
    facts("proof-opening-facts", [
      ["Sphere", `${show.tapeBoth(code.openingSphere.value)} ${sourceMark(code.openingSphere.source)} ${code.openingSphere.where}`, true],
      ["Force assumed for the test", agreed, true],
      ...(ofCode
        ? ([
            [
              "Force that the code names",
              `${show.forceBoth(ofCode.value)}${ofCode.note ? `, ${ofCode.note}` : ""} ${sourceMark(ofCode.source)} ${ofCode.where}`,
              true,
            ],
          ] as const)
        : []),
      ["Where", "middle of each bay, between the two cables that look widest; also at the top, the bottom and beside end posts"],
    ]),
  ];
}

const widestClear = (plan: Plan): number => greatest(plan.gaps.map(({ clear }) => clear));

function openingTable({ plan, show }: SheetContext): Table {
  const clear = show.tape(widestClear(plan));
  return table({
    id: "proof-openings",
    caption: "Opening check, bay by bay",
    columns: [
      column("bay", "Bay", 0.09),
      column("clear", "Widest clear", 0.12, { sub: "plan" }),
      column("push", "Passes at", 0.17, { sub: "plan, computed" }),
      column("spot", "Spot", 0.14, { sub: "field" }),
      column("sphere", "Sphere", 0.12, { sub: "field" }),
      column("force", "Force used", 0.13, { sub: "field" }),
      column("result", "Held?", 0.11, { sub: "yes / no" }),
      column("initials", "Initials", 0.12),
    ],
    rows: plan.bays
      .filter(({ kind }) => kind !== "pair gap")
      .map((bay) => {
        const forces = spansInBay(plan, bay.id).flatMap(({ span }) => [span.pushThrough.sliding, span.pushThrough.held]);
        const push = forces.length === 0 ? "-" : `${show.force(least(forces))} - ${show.force(greatest(forces))}`;
        return [bay.id, clear, push, blank(), blank(show.lengthUnit), blank(show.forceUnit), blank(), blank()];
      }),
    rowHeads: true,
    writeIn: true,
    notes: [
      `Passes at: computed without friction, cable free to slide first, held at its uprights second ${sourceMark("derived")}. It is no acceptance value: the authority's force decides.`,
    ],
  });
}

const howToTest = ({ show, plan }: SheetContext): readonly Text[] => [
  "Push square to the guard, slowly, with a scale between hand and sphere. Stop at the agreed force: do not push until it passes.",
  `Measure the sphere first: ${show.tape(plan.job.code.openingSphere.value)} across.`,
  "A bay that fails: write it down, read the tension there, ask the office. Do not tighten above the target.",
];

function pullTable({ plan, show }: SheetContext): Table {
  return table({
    id: "proof-pulls",
    caption: "Readings at the proof: the lowest cable of each run, and one cable of your choice",
    columns: [
      column("run", "Run", 0.1),
      column("bay", "Read in bay", 0.14, { sub: "plan" }),
      column("plan", "At least", 0.16, { sub: "plan" }),
      column("limit", "At most", 0.16, { sub: "plan" }),
      column("cable", "Cable", 0.14, { sub: "field" }),
      column("reading", "Reading", 0.16, { sub: "field reading" }),
      column("initials", "Initials", 0.14),
    ],
    rows: plan.runs.flatMap((run) =>
      [`${run.id}-01`, null].map((mark) => [
        run.id,
        run.tension.leastBayId,
        show.force(run.tension.required),
        show.force(lastStep(plan, run.id)?.reading_high ?? run.tension.target),
        mark ?? blank(),
        blank(show.forceUnit),
        blank(),
      ]),
    ),
    rowHeads: true,
    writeIn: true,
  });
}
