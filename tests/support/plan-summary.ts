// What would a person compare of two plans? One line a fact, so that a difference is read as a difference.
import type { Plan } from "../../src/plan/plan.ts";
import { decimal } from "../../src/units/print.ts";

const mm = (value: number): string => decimal(value, { decimals: 3 });

export function planSummary(plan: Plan): string {
  return [
    ...plan.sides.map((side) => `side ${side.id}: length ${mm(side.length)}, posts from ${mm(side.startsAt)} to ${mm(side.endsAt)}`),
    ...plan.verticals.map((one) => `${one.id}: ${one.role} on ${one.sideId} at ${mm(one.station)}, ${one.sectionName}`),
    ...plan.bays.map((bay) => `bay ${bay.id}: ${bay.kind} ${bay.leftId} to ${bay.rightId}, free ${mm(bay.free)}`),
    ...plan.courses.map(
      (course) =>
        `course ${course.number}: ${mm(course.height)} (exact ${mm(course.height_exact)})${course.raised === undefined ? "" : `, raised ${mm(course.raised)}`}`,
    ),
    ...plan.runs.flatMap((run) => [
      `${run.id}: ${run.left.postId} ${run.left.kind} to ${run.right.postId} ${run.right.kind}, path ${mm(run.pathLength)}, outside ${mm(run.outsideLength)}, order ${mm(run.orderLength)}`,
      `${run.id}: target ${mm(run.tension.target)} N, required ${mm(run.tension.required)} N, least ${mm(run.tension.least)} N in ${run.tension.leastBayId}`,
      `${run.id}: travel ${mm(run.takeUp.travel)}, turns ${mm(run.takeUp.turns)}, thread left ${mm(run.takeUp.threadLeft)}`,
      ...run.spans.map((span) => {
        const { pitch_Hz, sag, pushThrough } = span;
        return `${run.id} ${span.bayId}: ${mm(span.tension)} N, ${mm(pitch_Hz.nominal)} Hz, sag ${mm(sag.held)} to ${mm(sag.sliding)}, push ${mm(pushThrough.sliding)} to ${mm(pushThrough.held)} N`;
      }),
    ]),
    ...plan.tightening.flatMap((one) => [
      `${one.runId}: ${one.orderName}, highest ${mm(one.highest_overTarget)}, customary ${mm(one.customary.highest_overTarget)}, bound ${mm(one.bound)}`,
      ...one.steps.map((step) => `${step.mark}: pass ${step.pass} stop at ${mm(step.reading)} N, ${mm(step.turnsPerEnd)} turns`),
    ]),
    ...plan.climate.map(
      ({ runId, heat, cold, settling, covered }) =>
        `${runId}: heat ${mm(heat.worst)}, cold ${mm(cold.worst)}, settling ${mm(settling.worst)}, kept for it ${mm(covered)} N`,
    ),
    ...plan.frame.sides.flatMap(({ sideId, posts, topRailThrust }) => [
      `side ${sideId}: thrust of the top rail ${mm(topRailThrust)} N`,
      ...posts.map((post) => `${post.postId}: moves ${mm(post.movement)} at ${mm(post.height)}`),
    ]),
    ...plan.bits.map((bit) => `bit ${mm(bit.diameter)} for ${bit.use}: ${bit.holes} holes, at least ${mm(bit.bitLength_min)} long`),
    ...plan.checks.map((check) => `check ${check.id}: ${check.verdict}${check.ratio === null ? "" : `, ratio ${mm(check.ratio)}`}`),
    ...plan.order.map((line) => `order ${line.quantity} x ${line.item}, ${line.size}`),
    ...plan.cuts.map((piece) => `cut ${piece.count} x ${piece.mark} ${piece.sectionName} ${mm(piece.length)}`),
    "",
  ].join("\n");
}
