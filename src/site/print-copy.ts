// What is handed to the printer? The finished document of one issue, with everything inside it.
import type { Packet } from "../packet/packet.ts";
import { moreFontsFor } from "./assets.ts";
import type { Layouts } from "./layouts.ts";
import { strict } from "./strict.ts";

/** One document with styles, fonts and drawings inside: the page that prints it may load nothing. */
export const printCopy = (packet: Packet, { env, assets }: Layouts): string => {
  const html = env.render("pages/print.njk", { packet: strict(packet, "packet") });
  const more = moreFontsFor(html, assets);
  // Behind the first file, so that it is asked first: that one would put z and an accent together where it lacks the letter.
  return more === "" ? html : html.replace("</style>", () => `${more}</style>`);
};
