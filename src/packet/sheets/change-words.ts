// How is a change said: which marks, what was and what is, and what if the work was done already?
import type { Change, Difference, Todo, Value } from "../../changes/changes.ts";
import { courseName } from "../drawings/kit.ts";
import type { Text } from "../packet.ts";
import { marksOf } from "../templates/faces.ts";
import { endName, roleName, verdictWord } from "../wording.ts";
import { bold, groupBy, listed, type SheetContext } from "./kit.ts";
import { acrossWords } from "./leaning.ts";

/** In the order of the sheet. */
export const todoName: Readonly<Record<Todo, Text>> = {
  ask: "STOP, ask",
  mark: "write mark",
  set: "set, move",
  bore: "bore",
  cut: "cut, fit",
  buy: "buy, get",
  tighten: "tighten",
  read: "know",
};

const subjectName: Readonly<Record<Change["subject"], Text>> = {
  side: "Side",
  rail: "Rails",
  post: "Post",
  spacer: "Spacer",
  pier: "Pier",
  bore: "Bore",
  strand: "Kind of cable",
  cable: "Cable",
  end: "Ends",
  tension: "Tension",
  reading: "Other readings",
  part: "Part",
  item: "Item",
  tool: "Tool",
  check: "Check",
};

/** "Post moved", "New post", "Post gone" */
function headWords({ subject, what }: Change): Text {
  const name = subjectName[subject];
  if (what === "added") return `New ${name.toLowerCase()}`;
  return `${name} ${what === "removed" ? "gone" : what}`;
}

/** "Bore moved: height 8-3/8", was 8-1/2"" */
export function changeWords(change: Change, context: SheetContext): Text {
  const said = change.differences.map((difference) => differenceWords(difference, change, context));
  return `${bold(headWords(change))}${said.length === 0 ? "" : `: ${said.join("; ")}`}`;
}

/** What is comes first, what was behind it: the new number is the one to use. */
function differenceWords({ of, from, to }: Difference, { what }: Change, context: SheetContext): Text {
  const [was, is] = [from, to].map((value) => {
    if (value === null) return null;
    return typeof value === "string" ? wordOf(of, value) : numberWords(value, context);
  });
  if (of === "mark") return `${was} is now ${bold(is ?? "")}`;
  if (was === null) return `${of} ${bold(is ?? "none")}`;
  if (what === "removed") return `${of} was ${was}`;
  return `${of} ${bold(is ?? "none")}, was ${was}`;
}

function numberWords({ value: number, kind }: Exclude<Value, string>, context: SheetContext): Text {
  const { show } = context;
  switch (kind) {
    case "height":
    case "size":
      return show.tape(number);
    case "station":
      return show.measure({ value: number, kind: "length" });
    case "diameter":
      return show.diameterOne(number);
    case "depth":
      return show.fine(number);
    case "across":
      return acrossWords(number, context).replaceAll("**", "");
    case "order":
      return show.feetUp(number);
    case "force":
      return show.force(number);
    case "slope":
      return number === 0 ? "level" : `${show.angle(Math.abs(number))} ${number > 0 ? "up" : "down"} to the right`;
    case "turns":
      return show.decimal(number, 1);
    case "angle":
      return show.angle(number);
    case "count":
      return `${number}`;
  }
}

/** Words of the plan as the sheets print them; the same word may mean two things. */
function wordOf(of: string, word: string): Text {
  if (of === "verdict" && isKey(verdictWord, word)) return verdictWord[word].replaceAll("**", "");
  if (of === "stands as" && isKey(roleName, word)) return roleName[word];
  return /^(?:left|right) end$/.test(of) && isKey(endName, word) ? endName[word] : word;
}

const isKey = <T extends object>(words: T, key: string): key is Extract<keyof T, string> => Object.hasOwn(words, key);

/** Marks that are letters alone need a word in front. */
const kindName: Readonly<Partial<Record<Change["subject"], Text>>> = {
  side: "side",
  strand: "run",
  cable: "run",
  end: "run",
  tension: "run",
  reading: "run",
  part: "part",
};

const BORE = /^(.+?)-(\d+)(\/.+)?$/;

/** Which marks a change is about: what is gone has none on the new sheets. */
export const markWords = (change: Change): Text =>
  `${nowWords(change)}${change.what === "removed" && isMarked(change) ? " (old mark)" : ""}`;

/** Items, tools and checks have names, no marks. */
const isMarked = ({ subject }: Change): boolean => !["item", "tool", "check"].includes(subject);

/** Of bores as the bore schedule has them: "P1 to P5: course 03"; all others one after another. */
function nowWords({ subject, marks }: Change): Text {
  if (subject === "post" || subject === "spacer" || subject === "pier") return marksOf(marks.map((id) => ({ id })));
  const kind = kindName[subject];
  if (kind !== undefined) return `${kind} ${marks.join(", ")}`;
  if (subject !== "bore") return marks.join(", ");
  const bores = marks.map((mark) => {
    const [, id = mark, course = "", behind = ""] = BORE.exec(mark) ?? [];
    return { id, course: Number(course), behind };
  });
  const uprights = groupBy(bores, ({ id, behind }) => `${id}${behind}`).map((own) => ({
    id: own[0].id,
    behind: own[0].behind,
    courses: coursesWords(own.map(({ course }) => course)),
  }));
  return groupBy(uprights, ({ behind, courses }) => `${behind} ${courses}`)
    .map((own) => `${marksOf(own)}${own[0].behind === "" ? "" : ` (${own[0].behind.slice(1)})`}: ${own[0].courses}`)
    .join("; ");
}

/** "course 03", "courses 01 to 09", "courses 01, 02 and 05" */
function coursesWords(courses: readonly number[]): Text {
  const [first = 0, last = 0] = [courses[0], courses.at(-1)];
  if (courses.length === 1) return `course ${courseName(first)}`;
  const isRow = courses.length > 2 && courses.every((course, index) => course === first + index);
  return `courses ${isRow ? `${courseName(first)} to ${courseName(last)}` : listed(courses.map(courseName))}`;
}
