// Which published sources does the program use? Each stands here once; code, tests and sheets cite it by id.

export interface Source {
  readonly kind: "book" | "paper" | "standard" | "code" | "data" | "practice";
  readonly title: string;
  readonly authors: string;
  readonly year: string;
  readonly identifier: string;
  /** How much of it was read when its numbers were taken. */
  readonly seen: "full text" | "excerpt" | "secondary" | "from memory" | "not published";
}

const list = {
  practice: {
    kind: "practice",
    title: "Common practice, no source",
    authors: "the trade",
    year: "",
    identifier: "",
    seen: "not published",
  },
  job: { kind: "data", title: "Stated in the job file", authors: "whoever prepared the job", year: "", identifier: "", seen: "full text" },
  memory: { kind: "practice", title: "From memory, not looked up", authors: "", year: "", identifier: "", seen: "from memory" },
  derived: {
    kind: "paper",
    title: "Derived from first principles for this program; the working stands in its tests",
    authors: "the authors of this program",
    year: "2026",
    identifier: "tests/validation/hand",
    seen: "full text",
  },
  "irc-2018": {
    kind: "code",
    title: "International Residential Code 2018",
    authors: "International Code Council",
    year: "2018",
    identifier: "IRC 2018, R301.5, R312",
    seen: "full text",
  },
  "irc-2021": {
    kind: "code",
    title: "International Residential Code 2021",
    authors: "International Code Council",
    year: "2021",
    identifier: "IRC 2021, R301.5, R312",
    seen: "full text",
  },
  "irc-2024": {
    kind: "code",
    title: "International Residential Code 2024",
    authors: "International Code Council",
    year: "2024",
    identifier: "IRC 2024, R301.5, R321",
    seen: "full text",
  },
  "ibc-2021": {
    kind: "code",
    title: "International Building Code 2021",
    authors: "International Code Council",
    year: "2021",
    identifier: "IBC 2021, 1015, 1607.9",
    seen: "full text",
  },
  "ibc-2024": {
    kind: "code",
    title: "International Building Code 2024",
    authors: "International Code Council",
    year: "2024",
    identifier: "IBC 2024, 1015, 1607.9",
    seen: "full text",
  },
  "ncc-2022": {
    kind: "code",
    title: "NCC 2022: Housing Provisions Standard and Volume Two",
    authors: "Australian Building Codes Board, Commonwealth of Australia and the States and Territories",
    year: "2022",
    identifier: "ABCB Housing Provisions 11.3; H5P2, H5V1",
    seen: "full text",
  },
  "osha-1926": {
    kind: "code",
    title: "Safety and Health Regulations for Construction",
    authors: "Occupational Safety and Health Administration",
    year: "2024",
    identifier: "29 CFR 1926",
    seen: "excerpt",
  },
  "en-1993-1-11": {
    kind: "standard",
    title: "Design of structures with tension components",
    authors: "CEN",
    year: "2006",
    identifier: "EN 1993-1-11:2006",
    seen: "secondary",
  },
  "ac-43-13": {
    kind: "standard",
    title: "Acceptable Methods, Techniques, and Practices: Aircraft Inspection and Repair, table 7-3",
    authors: "Federal Aviation Administration",
    year: "1998",
    identifier: "AC 43.13-1B",
    seen: "excerpt",
  },
  "nds-supplement": {
    kind: "standard",
    title: "National Design Specification Supplement, table 1A (dressed sizes)",
    authors: "American Wood Council",
    year: "2018",
    identifier: "NDS Supplement",
    seen: "secondary",
  },
  "wood-preservative-m4": {
    kind: "standard",
    title: "Standard for the Care of Preservative-Treated Wood Products",
    authors: "American Wood Protection Association",
    year: "2021",
    identifier: "AWPA M4",
    seen: "secondary",
  },
  "friction-table": {
    kind: "data",
    title: "Static and sliding friction values",
    authors: "PickedShares",
    year: "",
    identifier: "pickedshares.com/en/static-and-sliding-friction-values",
    seen: "excerpt",
  },
  "drive-guide": {
    kind: "data",
    title: "Drive engineering guide, table 7.21: coefficients of friction",
    authors: "a drive maker's engineering guide",
    year: "",
    identifier: "table 7.21",
    seen: "excerpt",
  },
  "ssina-fabrication": {
    kind: "data",
    title: "Fabrication of stainless steel: iron contamination",
    authors: "Specialty Steel Industry of North America",
    year: "",
    identifier: "ssina.com",
    seen: "excerpt",
  },
  "bolt-science-galling": {
    kind: "data",
    title: "Tightening stainless steel fasteners",
    authors: "Bolt Science",
    year: "",
    identifier: "fastfixtechnology.com, tightening stainless steel fasteners",
    seen: "excerpt",
  },
} as const satisfies Record<string, Source>;

export type SourceId = keyof typeof list;

export const sources: Readonly<Record<SourceId, Source>> = list;
