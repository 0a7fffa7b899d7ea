// What does a crew confirm before, during and after it tightens the cables?
import type { Card } from "./card.ts";
import { hasTails } from "./ends.ts";
import { count, endPostIds, listed, refer, type SheetContext } from "./kit.ts";
import { isWood } from "./material.ts";
import { bandWords } from "./readings.ts";
import { openingRoute } from "./route.ts";
import { safetyFor } from "./safety-messages.ts";

export function beforePullCard(context: SheetContext): Card {
  const { plan, show } = context;
  return {
    key: "before-tightening",
    title: "Before tightening",
    sheets: refer(context, "tightening"),
    safety: safetyFor("tighten", plan),
    items: [
      { text: `H1 and H2 signed on ${refer(context, "proof")}. Temporary fall protection stays up.`, killer: true },
      { text: "Gauge set for this cable size; serial number and check date", value: "no., date" },
      { text: "Temperature of the air", value: show.heatUnit },
      { text: `Plumb of ${listed(endPostIds(plan))} read and logged; limit for their lean known`, value: show.lengthUnit, killer: true },
      {
        text: `Limits known by all: never above "at most" in the log; strand at most ${show.forceBoth(plan.target.workingLimit)}.`,
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
  const shares = plan.job.tightening.passes.value;
  const targets = plan.runs.map((run) => `${run.id} **${show.force(run.tension.target)}**`).join(", ");
  const every = plan.runs.length > 1 ? " Each pass on every run before the next pass on any." : "";
  const reserve = show.tape(plan.job.fittings.stud.reserve.value);
  const fails = isWood(plan) ? "no post split" : "no post or weld bent or cracked";
  return {
    key: "tightening",
    troubles: "tighten",
    title: "Tightening",
    sheets: refer(context, "tightening"),
    safety: [],
    items: [
      { text: `Targets at the nut: ${targets}.`, killer: true },
      {
        text: `${count(shares.length, "pass", "passes")} in the order of the diagram: ${shares.map(show.percent).join(", ")} of target.${every}`,
      },
      { text: `Every last reading in its band: ${plan.runs.map((run) => bandWords(run, context)).join("; ")}.`, killer: true },
      { text: "Lowest and highest reading in the last pass", value: show.forceUnit },
      { text: "Plumb logged after each pass, within its limit; largest movement", value: show.lengthUnit, killer: true },
      { text: `Turns near the plan; least thread left (keep ${reserve})`, value: show.lengthUnit },
      { text: `No nut stiff, no wire broken, ${fails}, no rail bowed.`, killer: true },
      { text: "Last pass read through without turning a nut. Else one more pass." },
    ],
    hold: `H3: ${hasTails(plan) ? "tails are cut and caps fitted" : "caps are fitted"} only with all readings in their band. Sign on ${refer(context, "proof")}.`,
  };
}

export function proofCard(context: SheetContext): Card {
  const { plan, show } = context;
  const route = openingRoute(context);
  return {
    key: "proof",
    troubles: "prove",
    title: "Proof and finish",
    sheets: refer(context, "proof"),
    safety: safetyFor("cut", plan),
    items: [
      { text: route.confirmed, killer: true },
      ...(route.pushed ? [{ text: "Force used at the sphere, as the authority said", value: show.forceUnit }] : []),
      { text: hasTails(plan) ? "Tails cut, filed, capped: no wire end stands out." : "Studs and nuts capped: no wire end stands out." },
      {
        text: isWood(plan)
          ? "Washers and bores sealed against water; steel dust wiped off; strand rinsed."
          : "Swarf and dust of other steel wiped off; strand rinsed; scratches of coated metal touched up.",
      },
      { text: "Log, proof and deviations complete and signed." },
      { text: `Owner has the card of ${refer(context, "care")}; next visit agreed`, value: "date" },
      { text: "Inspection by the authority passed, or its date", value: "date" },
    ],
    hold: `H4: hand-over only after H4 is signed on ${refer(context, "proof")}.`,
  };
}
