// How is the set drawn for one printer that does not keep the size?
import type { Stretch } from "../../drawing/svg.ts";
import type { Job } from "../../job/job.ts";
import { printedRuler } from "../../tables/practice.ts";
import { decimal } from "../../units/print.ts";
import type { Text } from "../packet.ts";

/** What a printer makes too short is drawn as much too long. */
export const stretchOf = ({ printer }: Job): Stretch =>
  printer === null ? { across: 1, up: 1 } : { across: printedRuler.value / printer.across, up: printedRuler.value / printer.up };

/** Printed wherever a size of such a set could be taken for true; nothing where it is. */
export const onlyFor = ({ printer }: Job): Text =>
  printer === null
    ? ""
    : `only for printer ${printer.name}: its rulers measured ${tenths(printer.across)} across, ${tenths(printer.up)} mm up`;

const tenths = (value: number): Text => decimal(value, { decimals: 1 });
