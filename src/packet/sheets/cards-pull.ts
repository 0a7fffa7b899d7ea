// What does a crew confirm before, during and after it tightens the cables?
import { edgeProtection } from "../../plan/open-edge.ts";
import { gatesOf } from "../guard-ends.ts";
import type { StepItem } from "../packet.ts";
import type { Card } from "./card.ts";
import { hasTails, pulledAtBoth } from "./ends.ts";
import { count, greatest, listed, refer, type SheetContext } from "./kit.ts";
import { isWood } from "./material.ts";
import { piersOf } from "./piers.ts";
import { bandDay, bandWords, leansOf } from "./readings.ts";
import { forceWords, openingRoute, type Route, sagBays, testPlaces } from "./route.ts";
import { safetyFor } from "./safety-messages.ts";

export function beforePullCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "before-tightening",
    title: "Before tightening",
    sheets: refer(context, "tightening"),
    safety: safetyFor("tighten", plan),
    items: [
      {
        text: `H1 and H2 signed on ${refer(context, "proof")}. ${edgeProtection(plan.job) === "fall protection" ? "Fall protection" : "Temporary barrier"} stays up.`,
        killer: true,
      },
      { text: "Gauge set for this cable size; serial number and check date", value: "no., date" },
      { text: "Temperature of the air; its column marked in the table by temperature", value: show.heatUnit },
      {
        text: `Plumb of ${listed(leansOf(plan).map(({ postId }) => postId))} read and logged; limit for their lean known`,
        value: show.lengthUnit,
        killer: true,
      },
      {
        text: `Limits known by all: never above "at most" in the log; strand at most ${show.forceBothDown(plan.target.workingLimit)}.`,
        killer: true,
      },
      { text: "Hand wrenches only: one holds the stud, one turns the nut.", killer: true },
      { text: "All cables hand-tight, nuts on their first turns." },
      { text: "Nobody stands in line with a cable under tension." },
    ],
  };
}

export function pullCard(context: SheetContext): Card {
  const { plan, show } = context;
  const targets = plan.runs.map((run) => `${run.id} **${show.force(run.tension.target)}**`).join(", ");
  const both = pulledAtBoth(plan);
  const alternately =
    both.length === 0
      ? ""
      : ` ${listed(both.map(({ id }) => id))}: the two nuts turned alternately, so that both gauges rise together; both in the band.`;
  const turns = plan.runs.flatMap(({ takeUp }) => takeUp.ends.map((end) => `${end.postId} ${show.decimal(end.turns, 1)}`)).join(", ");
  const reserve = show.tape(plan.job.fittings.stud.reserve.value);
  const fails = isWood(plan) ? "no post split" : "no post or weld bent or cracked";
  return {
    key: "tightening",
    troubles: "tighten",
    title: "Tightening",
    sheets: refer(context, "tightening"),
    safety: [],
    items: [
      { text: `Targets at the nut: ${targets}.${alternately}`, killer: true },
      {
        text: `${passesText(context)} "Stop at" of each step kept, from the column of the day.`,
      },
      {
        text: `Every last reading in its band: ${plan.runs.map((run) => bandWords(run, context)).join("; ")}, ${bandDay(context)}.`,
        killer: true,
      },
      { text: "Lowest and highest reading at the end", value: show.forceUnit },
      { text: "Plumb logged, near the plan, within its limit; largest movement", value: show.lengthUnit, killer: true },
      { text: `Turns near the plan (${turns}); least thread left (keep ${reserve})`, value: show.lengthUnit },
      {
        text: `No nut stiff, no wire broken, ${fails}, no rail bowed${piersOf(plan).length === 0 ? "" : ", no anchor moved, no crack in its pier"}.`,
        killer: true,
      },
      { text: "All read again without turning a nut. Else turned where it reads outside, and all read once more." },
    ],
    hold: `H3, signed on ${refer(context, "proof")}: ${hasTails(plan) ? "tails are cut and caps fitted" : "caps are fitted"} only with all readings in band.`,
  };
}

/** "1 pass, R1 from the outside in." */
function passesText({ plan }: SheetContext): string {
  const most = greatest(plan.tightening.map(({ passes }) => passes.length));
  const orders = plan.tightening.map(({ runId, orderName }) => `${runId} ${orderName}`);
  const every = plan.runs.length > 1 && most > 1 ? " Each pass on every run before the next pass on any." : "";
  return `${count(most, "pass", "passes")} in the order of the log: ${orders.join("; ")}.${every}`;
}

export function proofCard(context: SheetContext): Card {
  const { plan } = context;
  const route = openingRoute(context);
  const gates = gatesOf(plan).map(
    ({ posts }) => ` In the gate's opening (${posts.join(", ")}) only caps stand out; it swings clear of them.`,
  );
  return {
    key: "proof",
    troubles: "prove",
    title: "Proof and finish",
    sheets: refer(context, "proof"),
    safety: safetyFor("cut", plan),
    items: [
      { text: "The official called before the test; inspection passed, or its date", value: "date" },
      { text: `${route.confirmed} Tried ${testPlaces(plan)}.`, killer: true },
      ...testItems(context, route),
      { text: `${hasTails(plan) ? "Tails cut, filed, capped" : "Studs and nuts capped"}: no wire end stands out.${gates.join("")}` },
      {
        text: isWood(plan)
          ? "Washers and bores sealed against water; steel dust wiped off; strand rinsed."
          : "Swarf and dust of other steel wiped off; strand rinsed; scratches of coated metal touched up.",
      },
      { text: `Log and deviations complete; H0 to H3 signed on ${refer(context, "proof")}.` },
      { text: `Owner has the card of ${refer(context, "care")}; next visit agreed`, value: "date" },
    ],
    hold: `H4, signed on ${refer(context, "proof")}: hand-over, and the ${edgeProtection(plan.job)} down, only after that.`,
  };
}

/** What is written down at the test, by its route. */
function testItems(context: SheetContext, { push }: Route): readonly StepItem[] {
  const { plan, show } = context;
  const { criterion } = plan.job.tightening;
  if (criterion.kind === "sag") {
    return [
      {
        text: `Sag read in bay ${sagBays(plan)} under ${show.forceBoth(criterion.weight)}: at most ${show.fine(criterion.sag_max)}; greatest`,
        value: show.lengthUnit,
        killer: true,
      },
    ];
  }
  return push === "agreed" ? [{ text: `Force used at the sphere (${forceWords(context)})`, value: show.forceUnit, killer: true }] : [];
}
