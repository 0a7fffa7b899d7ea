// Z-902: where does every number of this packet come from, in full?
import { type Source, type SourceId, sources } from "../../sources/sources.ts";
import type { Sheet, Text } from "../packet.ts";
import { sourceMark } from "../show-number.ts";
import { introduction } from "../wording.ts";
import { bold, column, prose, type SheetMaker, sheet, table } from "./kit.ts";

const seenWords: Readonly<Record<Source["seen"], Text>> = {
  "full text": "the text itself was read",
  excerpt: "an excerpt was read",
  secondary: "**not read itself**: quoted by others",
  "from memory": "**not looked up**",
  "not published": "**no source exists**",
};

/** Sources of these kinds are no publications. */
const isPublished = (id: SourceId): boolean => !["practice", "memory", "job", "derived"].includes(id);

export const sourcesSheet: SheetMaker = ({ marked, home, plan }, head): Sheet => {
  const { edition, authority } = plan.job.code;
  const { number } = plan.job.identity;
  const example = plan.cables[0]?.mark ?? "";
  return sheet(head, "portrait", [
    ...(home ? [prose(...introduction.sources)] : []),
    table({
      id: "sources-marks",
      caption: "Marks that stand for no publication",
      columns: [column("mark", "Mark", 0.18), column("meaning", "What it means", 0.82)],
      rows: marked
        .filter((id) => !isPublished(id))
        .map((id) => [sourceMark(id), { text: markMeaning[id] ?? sources[id].title, minor: true }]),
      rowHeads: true,
    }),
    table({
      id: "sources-list",
      caption: "Published sources cited in this packet",
      columns: [
        column("mark", "Mark", 0.19),
        column("source", "Title, by whom, year, number", 0.63),
        column("seen", "How it was seen", 0.18),
      ],
      rows: marked.filter(isPublished).map((id) => {
        const { title, authors, year, identifier, seen } = sources[id];
        return [
          { text: sourceMark(id), minor: true },
          { text: [bold(title), authors, year, identifier].filter((part) => part !== "").join(", "), minor: true },
          { text: seenWords[seen], minor: true },
        ];
      }),
      rowHeads: true,
      notes: [
        `Code values are those of ${edition} before local amendments. ${authority} decides which text applies.`,
        "A source that was not read itself must be looked up before anybody relies on it alone.",
        `How a number came about: reevebook explain ${number} ${example}, or another mark of a sheet, or a path into plan.json.`,
      ],
    }),
  ]);
};

const markMeaning: Readonly<Partial<Record<SourceId, Text>>> = {
  practice: "**Common practice, no source.** The trade does it so; nobody has published why. It can be changed in the job file.",
  memory: "**From memory, not looked up.** Check it before you rely on it.",
  job: "Stated in the job file by whoever prepared the job, or agreed with somebody named there.",
  derived: "Derived from first principles for this program; the working stands in its tests.",
};
