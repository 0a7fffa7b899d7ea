// What is handed to the printer? The finished document of one issue, with everything inside it.
import type { Packet } from "../packet/packet.ts";
import type { Layouts } from "./layouts.ts";
import { strict } from "./strict.ts";

/** One document with styles, fonts and drawings inside: the page that prints it may load nothing. */
export const printCopy = (packet: Packet, { env }: Layouts): string => env.render("pages/print.njk", { packet: strict(packet, "packet") });
