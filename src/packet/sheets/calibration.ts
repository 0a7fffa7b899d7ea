// Which numbers of the plan were measured on this site, and how is the first cable measured?
import type { GaugeOrPitch } from "../../job/site.ts";
import type { Text } from "../packet.ts";
import { refer, type SheetContext } from "./kit.ts";

/** "From your measurement of ..."; none where the plan rests on tables alone. */
export function measuredWords({ plan, show }: SheetContext): readonly Text[] {
  const { calibration, posts } = plan.job;
  const { turns } = calibration;
  const base = posts.base.value;
  const read = (reading: GaugeOrPitch): Text => (reading.kind === "gauge" ? show.forceBoth(reading.force) : show.hertz(reading.pitch_Hz));
  return [
    ...(turns === null
      ? []
      : [
          `**From your measurement of ${turns.cable}** (${show.decimal(turns.turns, 2)} turns from ${read(turns.from)} to ${read(turns.to)}): stiffness of the strand, so every turn, reading and loss below.`,
        ]),
    ...(base.kind === "measured"
      ? [
          `**From your measurement of a post** (pulled with ${show.forceBoth(base.pull)} at ${show.tape(base.height)}, it moved ${show.fine(base.movement)}): how far the posts give way, so order, readings and turns below.`,
        ]
      : []),
  ];
}

/** What the first cable tells, and where it is written. */
export function howToMeasure(context: SheetContext): Text {
  const { plan, show } = context;
  const [first] = plan.tightening.flatMap(({ steps }) => steps);
  const mark = first?.mark ?? "R1-01";
  const { turns } = plan.job.calibration;
  const [from, to] = [show.force(first === undefined ? 0 : 0.4 * first.reading), show.force(first?.reading ?? 0)];
  const start = `**${turns === null ? "Calibrate" : "Calibrated; to do it again"} on the first cable, ${mark}, all others slack:** read the gauge, count whole turns to a second reading`;
  const base = "A post pulled with a known force";
  const survey = refer(context, "survey");
  if (context.home) {
    return `${start}, from about ${from} to ${to}. Give both readings and the turns between to whoever makes your packet: this sheet is then made again with them. A strand's stiffness is only known roughly; yours shows in the turns. ${base} tells in the same way how far your posts give (${survey}).`;
  }
  return context.whole
    ? `${start}, write them in the job file and have this sheet made again: calibration: { turns: { cable: ${mark}, turns: 6, from: ${from}, to: ${to} } } with your numbers. ${base}: posts: base (${survey}).`
    : `${start}, write all three down and give them to the office, which makes this sheet again. From about ${from} to ${to}. ${base} tells how far posts give (${survey}).`;
}
