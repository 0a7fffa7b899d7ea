// Which words does a packet use for the things of the trade, for crews and for those who do it once?

import type { Job, Paper } from "../job/job.ts";
import type { EndKind, Face, Plan, Run, Verdict, VerticalRole } from "../plan/plan.ts";
import { FRAME_SHEET, failingChecks } from "./frame-verdict.ts";
import type { SheetKey } from "./issues.ts";
import type { Text } from "./packet.ts";

/** Stamped on every sheet, and a part of each file name, of a packet that nobody may build from. */
export const NOT_FOR_CONSTRUCTION = "NOT FOR CONSTRUCTION";

/** When the frame has to be accepted: the same words on every sheet. */
export const frameAccepted: Text = "Frame accepted in writing before anything is bored";

export const notApproval: Text =
  "This packet is not an approval. The authority having jurisdiction decides. A licensed engineer decides about the frame.";

export const verdictWord: Readonly<Record<Verdict, Text>> = {
  pass: "passes",
  fail: "**FAILS**",
  ask: "**ask**",
  "not checked": "**NOT CHECKED**",
};

/** A frame that holds on paper still has to be accepted by somebody: no verdict says that it is fine. */
const ACCEPTED_BY: Text = "A licensed engineer or the authority must still accept the frame.";

const wouldHold = ({ frame: { remedy } }: Plan): Text => (remedy === null ? "" : ` It would hold with: ${remedy.change}.`);

export function verdictText(plan: Plan): Text {
  const failed = plan.checks.filter(({ verdict }) => verdict === "fail").length;
  const failing = failingChecks(plan).length;
  switch (plan.verdict) {
    case "fail":
      return failing === 0
        ? `Not for construction: ${failed === 1 ? "1 check fails" : `${failed} checks fail`}. ${ACCEPTED_BY}`
        : `Not for construction: ${failed === 1 ? "1 check fails" : `${failed} checks fail`}, ${failing === failed ? "" : `${failing} of them `}of the frame. It must be changed or reviewed by a licensed engineer, see ${FRAME_SHEET}.${wouldHold(plan)}`;
    case "ask":
      return `No check fails, but ${plan.checks.filter(({ verdict }) => verdict === "ask").length} ask: each needs an answer before anything is bored. ${ACCEPTED_BY}`;
    default:
      return `All checks made by this program pass. ${ACCEPTED_BY}`;
  }
}

export const roleName: Readonly<Record<VerticalRole, Text>> = {
  end: "end post",
  corner: "corner post",
  transition: "post where the slope changes",
  pair: "end post of a pair",
  shared: "post shared by two runs",
  line: "line post",
  spacer: "spacer",
  pier: "pier",
};

export const paperName: Readonly<Record<Paper, Text>> = { letter: "Letter", a4: "A4" };
export const endName: Readonly<Record<EndKind, Text>> = { stud: "stud end", grip: "grip end", face: "face end", anchor: "anchor end" };
export const faceName: Readonly<Record<Face, Text>> = { left: "left face", right: "right face" };

/** What the datum says that people stand on: deck, planks and boards are a deck, all else (stone, tiles, concrete) a floor. */
export const floorWord = ({ frame }: Pick<Job, "frame">): "deck" | "floor" => (/deck|plank|board/i.test(frame.datum) ? "deck" : "floor");

/** A sheet's first words, for those who do it once. At most 20 words a sentence. */
export const introduction: Readonly<Record<SheetKey, readonly Text[]>> = {
  cover: ["Read this sheet first. It says what the packet is for, and when you must stop."],
  authority: [
    "Take this sheet to your building office before you buy anything.",
    "The official fills in the answers. Do not start with questions open.",
  ],
  survey: [
    "Measure everything on this sheet yourself. Write your number beside the planned one.",
    "If your number is past the stop value, the packet does not fit your frame. Have it made again.",
  ],
  changes: [
    "An older set of these sheets was given out. This sheet says what is different now.",
    "Throw every old sheet away first. A hole bored from an old sheet is in the wrong place.",
  ],
  plan: ["This is your guard seen from above. Stand where people walk and look out: everything counts from left to right."],
  elevation: ["This is one side as you see it from inside. Heights start at the datum. Look up each hole in the table of bores."],
  details: ["These drawings cut through the guard at its ends and at some posts. They show which part goes where."],
  stairs: [
    "A side that slopes is bored at an angle: each hole goes in and comes out at two heights.",
    "Measure the slope yourself first, over the whole flight. If you are not sure of it, call a carpenter before you bore.",
  ],
  cables: [
    "One cable is one line of one run. The mark R1-05 means run 1, fifth cable from the bottom.",
    "Cables are bought longer than needed. The steps say when the rest is cut off.",
  ],
  lumber: ["These are the parts to cut. The second table says which part comes from which piece, so that little is wasted."],
  bores: [
    "Every hole of the job stands here. Work post by post and tick each hole.",
    "Heights are measured from the datum up to the middle of the hole.",
  ],
  order: ["This is your shopping list. Spare pieces are in it already."],
  tools: ["Get all tools before the first day. Some can be rented by the day."],
  steps: [
    "Do the steps in this order. Read one step, do it, tick it.",
    "Where it says HOLD, stop until it is signed on the sheet of proof.",
  ],
  safety: ["Read this sheet before the first day. The other dangers stand beside the step they belong to."],
  tightening: [
    "Tightening one cable slackens the others. That is why each cable has its own reading to stop at.",
    "Keep to the order of the log. At its end all cables pull alike.",
    "A reading is what your gauge shows. Write it down each time.",
  ],
  proof: ["Now you show that the work is right. This sheet names the way that was agreed.", "Sign each hold point here, and only here."],
  frameChecks: [
    "This sheet says whether posts, rails and post feet are strong enough for the cables.",
    "If a check fails, do not start. Change the frame, or ask a licensed engineer.",
  ],
  care: ["Keep this sheet. It says when to look at the cables again, and how to clean them."],
  record: ["This sheet keeps what was really built."],
  sources: ["Each number in this packet has a short mark in brackets. Look it up here."],
};

/** The word list for those who do it once: the trade's terms in plain words. */
export const wordList: readonly (readonly [term: Text, meaning: Text])[] = [
  ["anchor", "A fastening set into a hole in concrete or masonry. Here it has an eye, and the end of the cable is pinned to it."],
  ["authority having jurisdiction", "Your building office. It decides what is allowed at your place."],
  ["band", "What a reading may be: no lower than its 'at least', no higher than its 'at most'."],
  ["base", "The foot of a post and what fastens it there. Moment: how hard the post tries to tip over on it."],
  ["bay", "The space between two uprights that stand next to each other."],
  ["bore", "A drilled hole. Counterbore: a wider hole on top of it, drilled only part of the way."],
  ["bushing", "A short sleeve that keeps the cable off the edge of its hole."],
  ["capacity", "What a part can bear. Demand: what it has to bear. Ratio: demand over capacity; above 1 it is too weak."],
  ["course", "One line of cable all the way round, at one height above the datum. Course 1 is the lowest."],
  ["crown", "The round outside of a wire of the cable. Measure the cable where it is widest."],
  ["datum", "The surface from which all heights are measured."],
  ["end post", "A post that holds the end of a cable. It feels the pull of all cables at once."],
  ["entry face", "The side of the post where the drill bit goes in."],
  ["face end", "An eye that is fastened on the face of its post. The end of the cable is pinned to it. It only holds."],
  ["first turns", "The few turns that a nut gets by hand, before any pull."],
  ["gauge reading", "What a tension gauge shows when it is clipped on a cable."],
  ["grip end", "The fitting that only holds. It grips the cable when you pull, and does not let go again."],
  ["hold point", "A place in the work where you wait for a signature."],
  ["lag screw", "A thick wood screw that is turned in by hand, into a hole that was bored for it."],
  ["line post", "A post between the ends. The cables only pass through it."],
  ["mitre", "At a corner post: a bore from the middle of one face to the middle of the next. It runs at 45 deg."],
  ["pitch", "How high a plucked cable sounds. A tighter cable sounds higher."],
  ["places (PLS)", "How often something comes: a length with (6 PLS) behind it comes six times."],
  ["push-through force", "The push at which a ball slips between two cables."],
  ["reeve", "To thread a cable through all its holes."],
  ["run", "One stretch of cable from its first post to its last post."],
  ["sag", "How far the middle of a cable moves when a weight hangs on it."],
  ["shear", "How hard a part is pushed sideways, as between two blades."],
  ["side", "One straight stretch of the guard."],
  ["spacer", "A light upright between two posts. It keeps the cables apart."],
  ["span", "The free part of a cable between two uprights."],
  ["station", "How far from the start of its side a post or spacer stands, to its middle."],
  ["story pole", "A straight stick on which every height is marked once. It is held to each post in turn."],
  ["stud end", "The threaded end with a nut. You tighten the cable here."],
  ["tail", "The part of a cable that stands out beyond its grip end. It is cut off last."],
  ["take-up", "How far the nut has to travel to make the cable tight."],
  ["target tension", "The pull that each cable should have when all is done."],
];

/** The unit in which a packet gives forces: everybody knows it as a weight. */
export const unitWords: Readonly<Record<Job["units"], readonly [term: Text, meaning: Text]>> = {
  inch: ["lbf", "Pounds of force: the pull of a weight of so many pounds."],
  mm: ["N", "Newton, a force: 10 N pull about as hard as a weight of 1 kg."],
};

/** Words that only a guard with a slope needs. */
export const slopeWordList: readonly (readonly [term: Text, meaning: Text])[] = [
  ["nosing", "The front edge of a step. A straight board on the stair touches all of them."],
  ["plumb", "Straight up and down, as a string with a weight hangs."],
  ["rake", "A side that slopes: a stair or a ramp."],
  ["square to", "At a right angle to."],
];

/** Who does, decides and signs: a firm has an office and a crew, somebody who does it once has neither. */
export const peopleOf = (home: boolean) =>
  home
    ? ({ lead: "you", second: "second person", office: "the author of this packet", handsOver: "author of this packet" } as const)
    : ({ lead: "crew lead", second: "crew lead", office: "the office", handsOver: "office" } as const);

/** "from P1 (left) to P6 (right)" */
/** "A1 to A9", or "A1" where there is no other. */
export const fromTo = (marks: readonly Text[]): Text => (marks.length < 2 ? (marks[0] ?? "none") : `${marks[0]} to ${marks.at(-1)}`);

export const runSpan = (run: Run): Text => `${run.left.postId} to ${run.right.postId}`;
