// What does a bag say of itself? Its labels, by which it is known and made again, and a guide for whoever finds it without this program.
import type { Tag } from "../bag/bag.ts";
import { tagValue } from "../bag/tags.ts";
import type { Paper } from "../job/job.ts";
import type { Plan } from "../plan/plan.ts";
import type { BuildOptions } from "./arguments.ts";
import { programDigest, programVersion } from "./program.ts";

export interface Issued {
  readonly plan: Plan;
  readonly revision: string;
  readonly options: BuildOptions;
  /** Below data/. */
  readonly jobFile: string;
  /** Who printed the PDFs, as they say themselves. */
  readonly browser: string | undefined;
}

/** How the options of a build are written, and read back. */
const optionsText = ({ paper, pdf }: BuildOptions): string =>
  [...(paper === undefined ? [] : [`--paper ${paper}`]), ...(pdf ? [] : ["--no-pdf"])].join(" ");

/** What bag-info.txt says; its dates are those of the job file. */
export const infoOf = ({ plan, revision, options, jobFile, browser }: Issued): readonly Tag[] => {
  const { identity } = plan.job;
  const asked = optionsText(options);
  const labels: readonly (readonly [string, string | undefined])[] = [
    ["Source-Organization", identity.firm],
    ["External-Identifier", identity.number],
    ["External-Description", `${identity.title}, ${identity.place}`],
    ["Bagging-Date", identity.issueDate],
    ["Job-Revision", revision],
    ["Job-Status", identity.status],
    ["Job-Verdict", plan.verdict],
    ["Job-File", jobFile],
    ["Program-Version", `reevebook ${programVersion}`],
    ["Program-Digest", programDigest],
    ["Program-Options", asked === "" ? undefined : asked],
    ["Browser", browser],
  ];
  return labels.flatMap(([label, value]) => (value === undefined ? [] : [{ label, value }]));
};

export interface Origin {
  readonly version: string;
  readonly digest: string;
  readonly jobFile: string;
  readonly paper: Paper | undefined;
  readonly pdf: boolean;
  readonly browser: string | undefined;
}

/** Who made a bag and from what; undefined when its labels don't say. */
export const originOf = (info: readonly Tag[]): Origin | undefined => {
  const [version, digest, jobFile] = ["Program-Version", "Program-Digest", "Job-File"].map((label) => tagValue(info, label));
  const asked = /^(?:--paper (letter|a4))? ?(--no-pdf)?$/.exec(tagValue(info, "Program-Options") ?? "");
  if (version === undefined || digest === undefined || jobFile === undefined || asked === null) return undefined;
  const paper = asked[1] === "letter" || asked[1] === "a4" ? asked[1] : undefined;
  return { version, digest, jobFile, paper, pdf: asked[2] === undefined, browser: tagValue(info, "Browser") };
};

export const isThisProgram = ({ version, digest }: Origin): boolean =>
  version === `reevebook ${programVersion}` && digest === programDigest;

/** As the browser writes it into each PDF: "Chromium, Skia/PDF m143". */
export const browserOf = (pdf: Uint8Array): string | undefined => {
  const text = Buffer.from(pdf).toString("latin1");
  const names = ["Creator", "Producer"].flatMap((key) => new RegExp(`/${key} \\(([ -~]*?)\\)`).exec(text)?.[1] ?? []);
  return names.length === 0 ? undefined : names.join(", ");
};

const kinds: readonly (readonly [RegExp, string])[] = [
  [/\/index\.html$/, "all sheets on one page, for any web browser"],
  [/^index\.html$/, "begin here: leads to the page of the job"],
  [/\.css$/, "how the pages look, with their letters"],
  [/\.pdf$/, "for paper, for any reader of PDF; the job file is attached in it"],
  [/plan\.json$/, "every number of the packet, as text (JSON): mm, N, MPa, kg, degrees C and radians unless its name says another unit"],
  [/\.csv$/, "a schedule, as text (CSV), for any spreadsheet"],
  [/\.dxf$/, "bores at full size in mm (DXF), for any drawing program"],
  [/\.record\.ya?ml$/, "what was built, as text"],
  [/\.issued\.ya?ml$/, "the job file of the revision that was issued before, as text"],
  [/changes\.json$/, "what has changed since the revision that was issued before, as text (JSON): units as in plan.json"],
  [/\.ya?ml$/, "the job file, as text: everything else was made from it"],
];

/** The guide that lies in each bag, in words that need no program of ours. */
export const readmeOf = ({ plan, revision }: Issued, paths: readonly string[]): string => {
  const { identity } = plan.job;
  const lines = [...paths]
    .sort()
    .map((path) => `  data/${path}\n    ${kinds.find(([pattern]) => pattern.test(path))?.[1] ?? "a file of the packet"}\n`);
  return `${identity.number}, revision ${revision}, issued ${identity.issueDate}
${identity.title}, ${identity.place}
${identity.firm}, prepared by ${identity.preparedBy}. Status: ${identity.status}. Verdict of the checks: ${plan.verdict}.
${identity.example ? "EXAMPLE - invented job\n" : ""}
This folder is a bag (BagIt 1.0, RFC 8493): one revision of a job's packet as it was issued. Never change it.
What changes is a new revision, in a folder of its own.

To check it with common tools, in this folder:
  sha512sum -c manifest-sha512.txt
  sha512sum -c tagmanifest-sha512.txt
or with any program for BagIt. This guards against damage, not against somebody who changes a file and its
manifests too.

${lines.join("")}`;
};
