// Which rooms may a room import? The map of the house, from the inside out; DEVELOPERS.md shows the same table.

export interface Room {
  readonly name: string;
  /** Rooms whose values and types it may import. */
  readonly rooms: readonly string[];
  /** Rooms of which it may import types only. */
  readonly types?: readonly string[];
  /** Single files, without their ending, of rooms that are otherwise closed. */
  readonly files?: readonly string[];
  /** Packages and node: modules; "node:*" is all of the latter. */
  readonly packages: readonly string[];
}

/** A row names only rooms above it, so no circle can form. */
export const house: readonly Room[] = [
  // Leaves: numbers, origins, faults. They know nothing of the trade.
  { name: "units", rooms: [], packages: [] },
  { name: "sources", rooms: [], packages: [] },
  { name: "problem", rooms: [], packages: [] },
  // Points and lines, published rows, formulas, cutting: numbers in, numbers out; they know no job.
  { name: "geometry", rooms: ["units"], packages: [] },
  { name: "tables", rooms: ["units", "sources"], packages: [] },
  { name: "mechanics", rooms: ["units", "geometry"], packages: ["ml-matrix"] },
  { name: "stock", rooms: ["units"], packages: ["yalps"] },
  // The flow: text -> Job -> Plan -> Packet.
  { name: "job", rooms: ["units", "sources", "problem", "tables"], packages: ["yaml", "zod", "fastest-levenshtein"] },
  { name: "plan", rooms: ["units", "sources", "problem", "geometry", "tables", "mechanics", "stock", "job"], packages: [] },
  // text -> AsBuilt, and what of it differs from the Plan.
  { name: "record", rooms: ["units", "problem", "job", "plan"], packages: ["zod"] },
  // Two plans -> what differs between what was issued and what is.
  { name: "changes", rooms: ["units", "problem", "job", "plan"], packages: [] },
  // Looks back from a number of the Plan to what it came from.
  { name: "explain", rooms: ["units", "sources", "geometry", "tables", "mechanics", "plan"], packages: ["fastest-levenshtein"] },
  // Knows paper and pens, no job.
  { name: "drawing", rooms: ["units", "geometry"], packages: [] },
  {
    name: "packet",
    rooms: ["units", "sources", "problem", "geometry", "tables", "job", "plan", "record", "changes", "drawing"],
    packages: [],
  },
  // What was issued, kept with its hashes; knows files and no job.
  { name: "bag", rooms: [], packages: [] },
  // From here on the world: files, browser, clock.
  {
    name: "site",
    rooms: ["problem", "packet"],
    types: ["job", "plan"],
    files: ["drawing/paper", "drawing/text"],
    packages: ["@11ty/eleventy", "nunjucks", "minisearch", "@fontsource/atkinson-hyperlegible", "@tarikjabiri/dxf", "node:*"],
  },
  {
    name: "pdf",
    rooms: ["problem"],
    types: ["packet", "job"],
    files: ["drawing/paper"],
    packages: ["puppeteer", "@sparticuz/chromium", "tar-fs", "node:*"],
  },
  {
    name: "cli",
    rooms: [
      "units",
      "sources",
      "problem",
      "geometry",
      "tables",
      "mechanics",
      "stock",
      "job",
      "plan",
      "record",
      "changes",
      "explain",
      "drawing",
      "packet",
      "bag",
      "site",
      "pdf",
    ],
    packages: ["node:*"],
  },
];

/** Rooms that are functions from values to values: no file, no clock, no chance, no print. */
export const pureRooms: readonly string[] = house.map((room) => room.name).filter((name) => !["site", "pdf", "cli"].includes(name));

/** One row of the table in DEVELOPERS.md: room, rooms it may import in any way, packages; sorted, since order says nothing there. */
export function mapRow({ name, rooms, types = [], files = [], packages }: Room): readonly [string, string, string] {
  const imports = new Set([...rooms, ...types, ...files.map((file) => file.split("/")[0] ?? "")]);
  return [name, imports.size === house.length - 1 ? "all" : sortedCell([...imports]), sortedCell(packages)];
}

export const sortedCell = (names: readonly string[]): string => [...names].sort().join(", ");
