// How is one line of the order written: its size in the unit of the job, and its spares?
import type { Job } from "../job/job.ts";
import { length } from "../units/print.ts";
import type { Mm } from "../units/quantity.ts";
import { roundUp } from "../units/round.ts";
import type { OrderLine } from "./purchase.ts";

export const sizeText = (mm: Mm, job: Job): string => length(mm, { units: job.units, decimals: 1, step: 1 / 32 });

export function piece(
  group: OrderLine["group"],
  item: string,
  size: string,
  net: number,
  options: { readonly job: Job; readonly note: string; readonly unit?: OrderLine["unit"] },
): readonly OrderLine[] {
  if (net === 0) return [];
  const spare = roundUp(net * options.job.fittings.spareShare.value, 1);
  const unit = options.unit ?? "piece";
  return [{ group, item, size, net, spare, quantity: net + spare, unit, pieceLength: null, price_cents: null, note: options.note }];
}
