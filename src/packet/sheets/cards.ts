// Where does a crew stop and confirm? One pause card for each step, one page each, at most nine items.
import type { Plan, RunEnd } from "../../plan/plan.ts";
import type { Block, StepItem, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { siteEnds, startOf, startWords, stopOf } from "./ends.ts";
import {
  blanks,
  count,
  endPostIds,
  heading,
  listed,
  pageBreak,
  postsOf,
  refer,
  type SheetContext,
  signatures,
  spacersOf,
  steps,
  unique,
} from "./kit.ts";
import { safetyFor } from "./safety-messages.ts";

interface Card {
  readonly key: string;
  readonly title: Text;
  /** The sheets in the hand at this step. */
  readonly sheets: Text;
  readonly safety: readonly Block[];
  readonly items: readonly StepItem[];
  readonly hold?: Text;
}

export function crewCards(context: SheetContext): readonly Block[] {
  const cards = [frameCard, setOutCard, boreCard, reeveCard, beforePullCard, pullCard, proofCard].map((make) => make(context));
  return cards.flatMap((card, index) => [...(index === 0 ? [] : [pageBreak]), ...cardBlocks(card, index + 1, cards.length)]);
}

function cardBlocks(card: Card, number: number, total: number): readonly Block[] {
  return [
    heading(`card-${card.key}-head`, `Card ${number} of ${total}: ${card.title}`),
    ...card.safety,
    steps({
      id: `card-${card.key}`,
      title: `In the hand: ${card.sheets}`,
      mode: "do-confirm",
      items: [...card.items, { text: "List complete." }],
      ...(card.hold === undefined ? {} : { hold: card.hold }),
    }),
    // A hold point brings its own line to sign.
    ...(card.hold === undefined ? [signatures(`card-${card.key}-sign`, "Crew lead")] : []),
    blanks(`card-${card.key}-stopped`, "If work stops here", [["Stopped after line, date, handed to", ""]]),
  ];
}

function frameCard(context: SheetContext): Card {
  const { plan, show } = context;
  const ends = listed(endPostIds(plan));
  return {
    key: "frame",
    title: "Frame and survey",
    sheets: `${refer(context, "survey")}, ${refer(context, "plan")}, ${refer(context, "lumber")}`,
    safety: safetyFor("frame", plan),
    items: [
      {
        text: `**Frame accepted in writing** by a licensed engineer or the authority: posts, rails, feet. End posts ${ends}.`,
        killer: true,
      },
      { text: "Answers of the authority are in: opening test, level cables, loads.", killer: true },
      { text: `Clear opening between rails, largest (plan ${show.tapeBoth(plan.job.frame.clearOpening)})`, value: show.lengthUnit },
      { text: `Guard height above the datum (plan ${show.tapeBoth(plan.opening.guardHeight)})`, value: show.lengthUnit },
      {
        text: `${count(postsOf(plan).length, "post")} plumb and firm; ${count(spacersOf(plan).length, "spacer")} fixed top and bottom, in line.`,
      },
      { text: `No free length above ${show.tapeBoth(plan.job.spacers.free_max.value)}; longest measured`, value: show.lengthUnit },
      { text: `Survey compared line by line on ${refer(context, "survey")}; nothing past a stop value.` },
      { text: "Fittings measured; each slides into its test bore." },
    ],
    hold: `H1: nothing is bored before frame and survey are signed on ${refer(context, "proof")}.`,
  };
}

function setOutCard(context: SheetContext): Card {
  const { plan, show } = context;
  const first = plan.courses[0];
  const last = plan.courses.at(-1);
  return {
    key: "set-out",
    title: "Set out the bores",
    sheets: refer(context, "bores"),
    safety: safetyFor("set-out", plan),
    items: [
      { text: `Datum: ${plan.job.frame.datum}. Same surface at every post.`, killer: true },
      {
        text: `Stick marked once from the datum end: ${count(plan.courses.length, "mark")}, first ${show.tapeBoth(first?.height ?? 0)}, last ${show.tapeBoth(last?.height ?? 0)}.`,
      },
      { text: "Top gap from the last mark to the rail, measured", value: show.lengthUnit },
      {
        text: `Widest gap on any post (stop above ${show.tapeBoth(plan.job.limits.cableSpacing_max.value)} between centres)`,
        value: show.lengthUnit,
        killer: true,
      },
      { text: "Marks carried to every post and spacer, on the face where the bit goes in." },
      { text: "Path of every bore searched for bolts, screws, brackets.", killer: true },
      { text: "Posts with a second size or a counterbore are labelled." },
      { text: "One scrap bored with each bit; the fittings slide in." },
    ],
  };
}

function boreCard(context: SheetContext): Card {
  const { plan, show } = context;
  const treated = plan.job.posts.treatment === "treated" && plan.job.posts.section.material === "wood";
  const bushings = plan.bores.filter(({ bushing }) => bushing).length;
  const counterbores = plan.bores.filter(({ counterbore }) => counterbore !== null);
  return {
    key: "bore",
    title: "Bore",
    sheets: refer(context, "bores"),
    safety: safetyFor("bore", plan),
    items: [
      { text: `${plan.bores.length} bores done and ticked; bores counted`, value: "bores" },
      { text: plan.bits.map((bit) => `${bit.holes} x ${show.tape(bit.diameter)} ${bit.use}`).join("; ") },
      ...(counterbores.length > 0
        ? [
            {
              text: `${counterbores.length} counterbores, depth of the deepest (plan ${show.tapeBoth(counterbores[0]?.counterbore?.depth ?? 0)})`,
              value: show.lengthUnit,
              killer: true as const,
            },
          ]
        : []),
      { text: "Greatest difference of a height from the plan", value: show.lengthUnit },
      { text: `No gap above ${show.tape(plan.job.limits.cableSpacing_max.value)} after boring.`, killer: true },
      {
        text: treated
          ? `Every bore treated before a cable goes in ${sourceMark("wood-preservative-m4")}.`
          : "Every bore deburred, chips blown out and away from stainless parts.",
      },
      ...(bushings > 0 ? [{ text: `${bushings} bores have their bushing.` }] : []),
      { text: "Real heights written where they differ; deviations told to the office." },
    ],
  };
}

const reeveWords = (plan: Plan): Text =>
  `Plain end first: ${plan.runs.map((run) => `${run.id} from ${startWords(run)} to ${stopOf(run).postId}`).join("; ")}.`;

const postsWith = (ends: readonly RunEnd[]): Text => listed(unique(ends.map(({ postId }) => postId)));

function reeveCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "reeve",
    title: "Reeve and set the ends",
    sheets: `${refer(context, "cables")}, ${refer(context, "details")}`,
    safety: safetyFor("reeve", plan),
    items: [
      ...spoolItems(context),
      { text: reeveWords(plan) },
      {
        text: `${count(plan.cables.length, "cable")} reeved, lowest course first, none crossed; each mark on ${refer(context, "cables")} ticked.`,
      },
      ...endItems(plan, show),
    ],
    hold: "H2: no tail is cut before the crew lead has signed. A cut cable cannot be made longer.",
  };
}

function spoolItems({ plan, show }: SheetContext): readonly StepItem[] {
  return plan.job.supply.kind === "ready"
    ? []
    : [
        { text: "Outside length measured before the first cut from the spool", value: show.lengthUnit, killer: true },
        { text: "One stud fitted on each cable before it goes in, as its instruction says; the first one tested." },
      ];
}

function endItems(plan: Plan, show: SheetContext["show"]): readonly StepItem[] {
  const { firstTurns } = plan.job.fittings.stud;
  const onSite = plan.runs.map(siteEnds);
  const studs = onSite.flatMap((ends) => ends.studs);
  const grips = onSite.flatMap((ends) => ends.grips);
  const slack = plan.runs.filter(({ takeUp }) => takeUp.slackToPull > 0);
  const nutPosts = postsWith(plan.runs.map(startOf));
  const slackWords = slack.map((run) => `${run.id} ${show.tape(run.takeUp.slackToPull)}`).join(", ");
  const first = `${show.decimal(firstTurns.value, 1)} full turns ${sourceMark(firstTurns.source)}`;
  return [
    { text: `Threads clean and oiled. Nut run on by hand, washer under it, ${first}, at ${nutPosts}.`, killer: true },
    ...(studs.length > 0
      ? [{ text: `Hand-tight, marked, cut, second stud fitted, nut on with its first turns: ${postsWith(studs)}.`, killer: true } as const]
      : []),
    ...(grips.length > 0
      ? [
          {
            text: `Slack pulled by hand, then grip ends set at ${postsWith(grips)}. One-way: set last, never early.`,
            killer: true,
          } as const,
        ]
      : []),
    ...(slack.length > 0 ? [{ text: `Slack pulled before the nut turns: ${slackWords}.`, killer: true } as const] : []),
    ...(grips.length > 0 ? [{ text: "Tails left long; nothing cut flush yet." }] : []),
  ];
}

function beforePullCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "before-tightening",
    title: "Before tightening",
    sheets: refer(context, "tightening"),
    safety: safetyFor("tighten", plan),
    items: [
      { text: "Frame accepted (H1 signed). Temporary fall protection stays up.", killer: true },
      { text: "Gauge set for this cable size; serial number and check date", value: "no., date" },
      { text: "Temperature of the air", value: show.heatUnit },
      { text: `Plumb of ${listed(endPostIds(plan))} read and logged on ${refer(context, "tightening")}.`, killer: true },
      {
        text: `Limits known by all: never above the high value in the log; strand at most ${show.forceBoth(plan.target.workingLimit)}.`,
        killer: true,
      },
      { text: "Hand wrenches only: one holds the stud, one turns the nut.", killer: true },
      { text: "All cables hand-tight, nuts on their first turns." },
      { text: "Nobody stands in line with a cable under tension." },
    ],
  };
}

function pullCard(context: SheetContext): Card {
  const { plan, show } = context;
  const shares = plan.job.tightening.passes.value;
  const targets = plan.runs.map((run) => `${run.id} ${show.force(run.tension.target)}`).join(", ");
  return {
    key: "tightening",
    title: "Tightening",
    sheets: refer(context, "tightening"),
    safety: [],
    items: [
      { text: `Targets at the nut: ${targets}.`, killer: true },
      {
        text: `${count(shares.length, "pass", "passes")} in the order of the diagram: ${shares.map(show.percent).join(", ")} of target. Every reading is in the log.`,
      },
      { text: "Highest reading in the last pass", value: show.forceUnit },
      { text: "Lowest reading in the last pass", value: show.forceUnit },
      { text: "Plumb of end posts logged after each pass; largest movement", value: show.lengthUnit, killer: true },
      { text: "Turns of the nuts near the plan; thread left on each." },
      { text: "No nut stiff, no wire broken, no post split, no rail bowed.", killer: true },
      { text: "Last pass: all readings inside their band without turning a nut. Else one more pass." },
    ],
    hold: `H3: tails are cut and caps fitted only after all readings are in their band; signed on ${refer(context, "proof")}.`,
  };
}

function proofCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "proof",
    title: "Proof and finish",
    sheets: refer(context, "proof"),
    safety: safetyFor("cut", plan),
    items: [
      {
        text: `Sphere ${show.tapeBoth(plan.job.code.openingSphere.value)} does not pass in any of ${count(plan.bays.filter(({ kind }) => kind !== "pair gap").length, "bay")}.`,
        killer: true,
      },
      { text: "Force used at the sphere, as the authority said", value: show.forceUnit },
      { text: "Tails cut, filed, capped: no wire end stands out." },
      { text: "Bores in wood sealed; steel dust wiped off; strand rinsed." },
      { text: "Log, proof and deviations complete and signed." },
      { text: `Owner has the card of ${refer(context, "care")}; next visit agreed`, value: "date" },
      { text: "Inspection by the authority passed, or its date", value: "date" },
    ],
    hold: `H4: hand-over only after ${refer(context, "proof")} is signed.`,
  };
}
