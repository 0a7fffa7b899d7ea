// What stands first on every sheet to work from when a check fails?
import type { Issue } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";
import { FRAME_SHEET, frameFails } from "./frame-verdict.ts";
import type { SheetKey } from "./issues.ts";
import type { Block, Text } from "./packet.ts";

/** Sheets from which something is bought, cut, bored, pulled or handed over. Cover, proof and frame checks say it in their own words, each card of a crew for its own page. */
const working: readonly SheetKey[] = [
  "changes",
  "plan",
  "elevation",
  "details",
  "cables",
  "lumber",
  "bores",
  "order",
  "tools",
  "steps",
  "tightening",
  "care",
  "record",
];

/** "Frame fails its checks (Z-805): buy, cut, bore and tighten nothing from this sheet." Empty where all checks hold. */
export function dangerWords(plan: Plan): Text {
  if (plan.verdict !== "fail") return "";
  const what = frameFails(plan) ? `Frame fails its checks (${FRAME_SHEET})` : "A check fails (Z-001)";
  return `**${what}: buy, cut, bore and tighten nothing from this sheet.**`;
}

/** The same as a caution above the body of a sheet. */
export function dangerLine(plan: Plan, { key, issue }: { readonly key: SheetKey; readonly issue: Issue }): readonly Block[] {
  const words = dangerWords(plan);
  const isCards = key === "steps" && issue !== "homeowner";
  return words === "" || isCards || !working.includes(key) ? [] : [{ kind: "caution", level: "danger", text: [words] }];
}
