import { describe, expect, test } from "vitest";
import type { Issue } from "../../../src/job/job.ts";
import type { Table } from "../../../src/packet/packet.ts";
import { leansOf } from "../../../src/packet/sheets/readings.ts";
import type { Plan, Run } from "../../../src/plan/plan.ts";
import { changedText, examplePlan, exampleText, planOf } from "../../support/example-jobs.ts";
import { forceStep, readForce } from "../read-force.ts";
import { cellText, examples, packetOf, rowsOf, sheetOf, tableOf, textsOf, wordsOn } from "../read-packet.ts";

/** Half-tones above the C of an octave; A4, 9 above C4, is 57 above C0. */
const HALF_TONES: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const LB_N = 4.4482216152605;
const logOf = (plan: Plan, runId: string, pass = 1): Table => tableOf(packetOf(plan, "crew"), `tightening-log-${runId}-${pass}`);
const runOf = (plan: Plan, id: string): Run => plan.runs.find((run) => run.id === id) as Run;
/** The second example with two passes asked for by its job file. */
const inTwoPasses = planOf(exampleText("0002-deck-two-corners").replace("\ntightening:\n", "\ntightening:\n  passes: [60 %, 100 %]\n"));
const plans: readonly (readonly [string, Plan])[] = [...examples, ["0002 in two passes", inTwoPasses]];

/** The unit of a column stands in its head. */
function readIn(table: Table, row: number, key: string): number {
  const column = table.columns.findIndex((each) => each.key === key);
  const unit = table.columns[column]?.sub;
  return Number(cellText(table.rows[row]?.[column] ?? "")) * (unit === "lbf" ? LB_N : 1);
}

const blanksIn = (table: Table, row: number): readonly string[] =>
  (table.rows[row] ?? []).flatMap((cell, index) => (typeof cell === "object" && "blank" in cell ? [table.columns[index]?.key ?? ""] : []));

const crewText = (plan: Plan): string => sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join("\n");

describe("logBlocks", () => {
  test.each(plans)("%s: a table for each pass, with a row for each step in the order of pulling, its number and its blanks", (_, plan) => {
    for (const { runId, passes, order, steps } of plan.tightening) {
      const ends = runOf(plan, runId).takeUp.ends.length;
      for (const { number } of passes) {
        const table = logOf(plan, runId, number);
        const marks = order.map((course) => steps.find((step) => step.course === course)?.mark);
        expect(table.rows.map((row) => cellText(row[0] ?? ""))).toEqual(marks);
        expect(table.rows.map((row) => Number(cellText(row[1] ?? "")))).toEqual(order.map((__, index) => index + 1));
        const isLast = number === passes.at(-1)?.number;
        const readings = ["reading-1", "reading-2"].slice(0, ends);
        for (const row of table.rows.keys()) expect(blanksIn(table, row)).toEqual([...readings, ...(isLast ? ["end"] : []), "initials"]);
      }
    }
  });

  test.each(plans)("%s: every step's own reading, band, turns and pitch stand in its row; the band is rounded inward", (_, plan) => {
    for (const { runId, steps } of plan.tightening) {
      for (const step of steps) {
        const table = logOf(plan, runId, step.pass);
        const row = table.rows.findIndex(([first]) => cellText(first ?? "") === step.mark);
        // Readings are whole steps of the gauge: printed as they are, in lbf or N.
        expect.soft(Math.abs(readIn(table, row, "stop") - step.reading), step.mark).toBeLessThan(1e-6 * step.reading + 1e-9);
        expect.soft(readIn(table, row, "low"), `${step.mark} low`).toBeGreaterThanOrEqual(step.reading_low - 1e-6);
        expect.soft(readIn(table, row, "low"), `${step.mark} low`).toBeLessThan(step.reading_low + forceStep(step.reading_low));
        expect.soft(readIn(table, row, "high"), `${step.mark} high`).toBeLessThanOrEqual(step.reading_high + 1e-6);
        expect.soft(readIn(table, row, "high"), `${step.mark} high`).toBeGreaterThan(step.reading_high - forceStep(step.reading_high));
        expect.soft(Math.abs(readIn(table, row, "turns") - step.turnsPerEnd), `${step.mark} turns`).toBeLessThanOrEqual(0.05 + 1e-9);
        expect.soft(Math.abs(readIn(table, row, "pitch") - step.pitch_Hz), `${step.mark} pitch`).toBeLessThanOrEqual(0.5 + 1e-9);
      }
    }
  });

  test.each(plans)(
    "%s: a run pulled at both ends has a reading for each, named by its post, and the turns of each in the notes",
    (_, plan) => {
      for (const { runId, passes } of plan.tightening) {
        const run = runOf(plan, runId);
        const table = logOf(plan, runId, passes.length);
        const heads = table.columns.filter(({ key }) => key.startsWith("reading-")).map(({ head }) => head);
        expect(heads).toEqual(run.takeUp.ends.map(({ postId }) => `Read ${postId}`));
        const notes = (table.notes ?? []).join(" ");
        for (const { postId, turns } of run.takeUp.ends) {
          expect.soft(notes).toContain(`at ${postId} ${`${Math.round(turns * 10) / 10}`}`);
        }
        expect.soft(notes.includes("alternately")).toBe(run.takeUp.ends.length > 1);
      }
    },
  );

  test("0003 has two runs: each has its order, its day's table and a log on a page of its own", () => {
    const plan = examplePlan("0003-long-boardwalk");
    const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-803");
    expect(plan.runs.length).toBe(2);
    expect(blocks.filter(({ kind }) => kind === "drawing").length).toBe(2);
    expect(blocks.filter(({ kind }) => kind === "break").length).toBe(2);
    expect(blocks.flatMap((block) => (block.kind === "table" ? [block.id] : []))).toEqual(
      expect.arrayContaining(["tightening-days-R1", "tightening-days-R2", "tightening-log-R1-1", "tightening-log-R2-1"]),
    );
    expect(crewText(plan)).toContain("Runs R1 and R2 share the frame");
  });

  test("plots for those who want to see why: in every issue that holds the sheet but the crew's", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const drawnIn = (issue: Issue): readonly string[] =>
      sheetOf(packetOf(plan, issue), "Z-803").blocks.flatMap((block) => (block.kind === "drawing" ? [block.id] : []));
    expect(drawnIn("crew")).toEqual(["tightening-r1"]);
    for (const issue of ["homeowner", "record"] as const) expect(drawnIn(issue)).toEqual(["day-r1", "tension-steps-r1", "tightening-r1"]);
  });

  test("a run that needs more than its thread says how much slack is taken out first", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const runs = plan.runs.map((run) => ({ ...run, takeUp: { ...run.takeUp, slackToPull: 25.4 } }));
    const notes = (each: Plan): string => (logOf(each, "R1").notes ?? []).join(" ");
    expect(notes({ ...plan, runs })).toContain('Slack to pull past hand-tight before the far end is set or cut: 1".');
    expect(notes(plan)).not.toContain("Slack");
    expect(notes(plan)).toMatch(/Thread left about .* keep .* for later visits/);
  });
});

describe("whyBlocks", () => {
  /** The lines under the heading of a run, by their first words. */
  const why = (plan: Plan, runId: string): Readonly<Record<string, string>> => {
    const { blocks } = sheetOf(packetOf(plan, "crew"), "Z-803");
    const from = blocks.findIndex((block) => block.kind === "heading" && block.id === `tightening-order-${runId}`);
    const items = blocks.slice(from).flatMap((block) => (block.kind === "list" ? block.items : []));
    const named = items.slice(0, 4).map((item): readonly [string, string] => {
      const [, name = "", words = ""] = /^\*\*([^:]+):(.*)$/s.exec(item) ?? [];
      return [name, words.replaceAll("**", "").trim()];
    });
    return Object.fromEntries(named);
  };

  test.each(plans)("%s: order in words and numbers, its highest reading beside the customary one's and the least possible", (_, plan) => {
    for (const tightening of plan.tightening) {
      const told = why(plan, tightening.runId);
      const shown = (share: number): string => `${Math.round(share * 100) / 100} x`;
      expect
        .soft(told["Order"])
        .toBe(`${tightening.orderName}: ${tightening.order.map((course) => String(course).padStart(2, "0")).join(", ")}.`);
      expect.soft(told["Why this order"]).toContain(`${shown(tightening.recommended.highest_overTarget)} target`);
      expect.soft(told["Why this order"]).toContain(`from the middle outward ${shown(tightening.customary.highest_overTarget)}`);
      expect.soft(told["Why this order"]).toMatch(/no order does with less/);
    }
  });

  test.each(plans)("%s: what equal readings leave in the weakest cable, as a share of the target that its tensions give", (_, plan) => {
    for (const { runId, plain } of plan.tightening) {
      const text = why(plan, runId)["Equal readings instead"] ?? "";
      const share = Number(/(\d+) % of the target/.exec(text)?.[1]) / 100;
      expect.soft(Math.abs(share - Math.min(...plain.tensions) / runOf(plan, runId).tension.target)).toBeLessThanOrEqual(0.005 + 1e-9);
      expect.soft(text).toContain("within 10 %");
      expect.soft(text).toContain("within 5 %");
    }
  });

  test("slack cables are named, and passes without end are said to be so", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const slack = {
      ...plan.tightening[0],
      plain: { steps: [], tensions: [0, 500, 0], slackCourses: [1, 3], passes_10: 4, passes_5: null },
    };
    const text = why({ ...plan, tightening: [slack as Plan["tightening"][number]] }, "R1")["Equal readings instead"] ?? "";
    expect(text).toContain("R1-01 and R1-03 hang slack");
    expect(text).toContain("within 10 %: 4 plain passes; within 5 %: more than are worth counting");
  });

  const refused = (refusal: Plan["tightening"][number]["refusal"]): string => {
    const plan = examplePlan("0001-level-deck-straight");
    return crewText({ ...plan, tightening: plan.tightening.map((one) => ({ ...one, refusal })) });
  };

  test("passes that break a limit are refused in a danger box, with what would do", () => {
    const reading = refused({ broken: "reading", overLimit: 1.2, course: 9, pass: 1, morePasses: 2, targetShare: 0.83 });
    expect(reading).toMatch(/Do not tighten by this log.*in pass 1 the reading of R1-09 is 1\.2 x the strand's working limit/);
    expect(reading).toContain("2 passes would do (tightening: most passes: 2)");
    expect(reading).toContain("83 % of this one");
    const movement = refused({ broken: "movement", overLimit: 1.35, course: 2, pass: 1, morePasses: null, targetShare: 0.74 });
    expect(movement).toMatch(/at R1-02, a post moves 1\.35 x its limit/);
    expect(movement).not.toContain("passes would do");
    expect(refused(null)).not.toContain("Do not tighten by this log");
  });

  test("a target above what the frame allows: a danger box with the bound and the change that helps", () => {
    const plan = examplePlan("0007-too-much-for-the-frame");
    const [window] = plan.frame.windows;
    expect(window?.high).toBeLessThan(window?.target ?? 0);
    const text = crewText(plan).replaceAll("**", "");
    expect(text).toContain("Run R1: do not tighten yet.");
    if (plan.frame.remedy !== null) expect(text).toContain(plan.frame.remedy.change);
    expect(crewText({ ...plan, frame: { ...plan.frame, remedy: null } })).toContain(
      "changed or accepted in writing by a licensed engineer",
    );
  });

  test.each(plans)("%s: the danger box of a closed window stands where, and only where, the target is above what is allowed", (_, plan) => {
    const closed = plan.frame.windows.filter(({ target, high }) => target > high * (1 + 1e-9)).map(({ runId }) => runId);
    const told = [...crewText(plan).matchAll(/Run (R\d+): do not tighten yet/g)].map(([, runId]) => runId);
    expect(told).toEqual(closed);
  });

  test.each(plans)("%s: the window adds its needs up to the least reading, and every bound has its source", (_, plan) => {
    for (const window of plan.frame.windows) {
      const { rows } = tableOf(packetOf(plan, "record"), `tightening-window-${window.runId}`);
      const cells = rows.map((row) => row.map(cellText));
      const parts = cells.filter(([side]) => side === "+").length + 1;
      expect.soft(parts).toBe(window.needs.filter(({ tension }) => tension > 0).length);
      expect.soft(readForce(cells[parts]?.[2] ?? "")).toBeGreaterThanOrEqual(window.low * (1 - 1e-9));
      const bounds = cells.filter(([side]) => /allowed/i.test(side ?? ""));
      expect.soft(bounds.length).toBe(window.allows.length);
      for (const [, words, tension] of bounds) {
        expect.soft(words).toMatch(/\[[\w-]+\]/);
        expect.soft(readForce(tension ?? "")).toBeGreaterThanOrEqual(window.high - forceStep(window.high));
      }
    }
  });
});

describe("instrumentTable", () => {
  // A second run is often pulled on another day, and its readings are worth nothing without the air of that day.
  test.each(plans)("%s: each pass of each run has a row for its gauge, its day and its air", (_, plan) => {
    const { rows, columns } = tableOf(packetOf(plan, "crew"), "tightening-instrument");
    const asked = plan.tightening.flatMap(({ runId, passes }) =>
      passes.map(({ number }) => (passes.length > 1 ? `${runId}, ${number}` : runId)),
    );
    expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(asked);
    const table = tableOf(packetOf(plan, "record"), "tightening-instrument");
    for (const place of table.rows.keys()) expect.soft(blanksIn(table, place)).toEqual(columns.slice(1).map(({ key }) => key));
  });
});

describe("dayTables", () => {
  test.each(plans)(
    "%s: a column for each temperature; each step stops there at its own reading times the day's target over the target, to the gauge's step",
    (_, plan) => {
      for (const { runId, days } of plan.climate) {
        const table = tableOf(packetOf(plan, "crew"), `tightening-days-${runId}`);
        const { target } = runOf(plan, runId).tension;
        const inch = plan.job.units === "inch";
        const unit = inch ? LB_N : 1;
        const { steps } = plan.tightening.find((one) => one.runId === runId) ?? { steps: [] };
        const end = tableOf(packetOf(plan, "crew"), `tightening-days-end-${runId}`);
        expect.soft(table.rows).toHaveLength(steps.length);
        expect.soft(end.columns.slice(1)).toEqual(table.columns.slice(1));
        for (const [index, { temperature, high }] of days.entries()) {
          const printed = Number(table.columns[index + 1]?.head);
          expect.soft(Math.abs(printed - (inch ? temperature * 1.8 + 32 : temperature))).toBeLessThanOrEqual(0.5 + 1e-9);
          for (const [place, { reading_exact }] of steps.entries()) {
            const text = cellText(table.rows[place]?.[index + 1] ?? "");
            const exact = (reading_exact * high) / target;
            if (text === "wait") expect.soft(exact).toBeGreaterThan(plan.target.workingLimit - plan.job.tightening.readingStep.value);
            else
              expect
                .soft(Math.abs(Number(text) * unit - exact))
                .toBeLessThanOrEqual(plan.job.tightening.readingStep.value / 2 + 0.51 * unit);
          }
          expect.soft(Math.abs(Number(cellText(end.rows[0]?.[index + 1] ?? "")) * unit - high)).toBeLessThanOrEqual(0.51 * unit);
        }
      }
    },
  );

  test.each(plans)(
    "%s: below it what every cable reads when all is done: its band moved by as much, rounded inward, and its pitch",
    (_, plan) => {
      for (const { runId, days } of plan.tightening) {
        const { tension, proof, spans } = runOf(plan, runId);
        const { rows } = tableOf(packetOf(plan, "crew"), `tightening-days-end-${runId}`);
        const inch = plan.job.units === "inch";
        const unit = inch ? LB_N : 1;
        const span = spans.find(({ bayId }) => bayId === proof.bayId);
        expect.soft(rows.map(([first]) => cellText(first ?? ""))).toEqual(["read", "at least", "at most", `bay ${proof.bayId}, Hz`]);
        for (const [index, { added }] of days.entries()) {
          const [, low = 0, high = 0, pitch = 0] = rows.map((row) => Number(cellText(row[index + 1] ?? "")));
          const [exactLow, exactHigh] = [tension.low + added, Math.min(tension.high + added, plan.target.workingLimit)];
          expect.soft(low * unit).toBeGreaterThanOrEqual(exactLow - 1e-6);
          expect.soft(low * unit).toBeLessThan(exactLow + 1.01 * forceStep(exactLow));
          expect.soft(high * unit).toBeLessThanOrEqual(exactHigh + 1e-6);
          expect.soft(high * unit).toBeGreaterThan(exactHigh - 1.01 * forceStep(exactHigh));
          // The pitch of a string goes with the root of its tension; a stiff strand keeps to that within 4 % over a year's temperatures.
          const string_Hz = (span?.pitch_Hz.nominal ?? 0) * Math.sqrt((tension.target + added) / tension.target);
          expect.soft(Math.abs(pitch / string_Hz - 1)).toBeLessThan(0.04 + 0.5 / string_Hz);
        }
      }
    },
  );

  test("what holds for all runs stands below the first run's tables alone; the columns' step is named", () => {
    const crew = packetOf(examplePlan("0011-two-guards-and-a-gate"), "crew");
    const notes = ["R1", "R2", "R3", "R4"].map((id) => tableOf(crew, `tightening-days-end-${id}`).notes?.join(" ") ?? "");
    expect(notes[0]).toContain("nearest column (they stand 13.5 deg F apart)");
    for (const other of notes.slice(1)) {
      expect(other).toContain("as those of R1");
      expect(other).not.toContain("nearest column");
    }
  });

  test("thirteen cables: a row for each step and one line for all of them", () => {
    const plan = planOf(changedText("0001-level-deck-straight", { "  clear opening: 29 in": "  clear opening: 40 in" }));
    const crew = packetOf(plan, "crew");
    expect(plan.courses.length).toBeGreaterThan(12);
    expect(tableOf(crew, "tightening-days-R1").rows).toHaveLength(plan.courses.length);
    expect(tableOf(crew, "tightening-days-end-R1").rows).toHaveLength(4);
  });

  test("0001: colder days stop higher, warmer ones lower, the reference day as the log does", () => {
    const plan = examplePlan("0001-level-deck-straight");
    const { rows, columns } = tableOf(packetOf(plan, "crew"), "tightening-days-R1");
    const first = (rows[0] ?? []).slice(1).map((cell) => Number(cellText(cell)));
    expect(first).toEqual([...first].sort((a, b) => b - a));
    const reference = columns.findIndex(({ sub }) => sub?.includes("as in the log")) - 1;
    expect(first[reference]).toBe(Math.round((plan.tightening[0]?.steps[0]?.reading ?? 0) / LB_N));
  });

  // A string's pitch goes with the root of its tension; the log's own pitches are those of a stiff strand, and the printed rule must do for it.
  test.each(plans)(
    "%s: the rule for the pitch of another day holds between any two steps of one pass, which lie as far apart as days do, to 2 %",
    (_, plan) => {
      for (const { steps } of plan.tightening) {
        expect.soft(crewText(plan)).toContain("times the square root of (stop of that day / stop of the log)");
        for (const { reading, pitch_Hz, mark, pass } of steps) {
          const least = steps.filter((step) => step.pass === pass).reduce((one, other) => (other.reading < one.reading ? other : one));
          const ruled = least.pitch_Hz * Math.sqrt(reading / least.reading);
          expect.soft(Math.abs(pitch_Hz / ruled - 1), mark).toBeLessThan(0.02);
        }
      }
    },
  );

  test("a day on which the strand would be pulled above its working limit says wait", () => {
    const plan = planOf(changedText("0001-level-deck-straight", { "  grade: 316": "  grade: 316\n  working share: 24 %" }));
    const { rows } = tableOf(packetOf(plan, "crew"), "tightening-days-R1");
    const { notes } = tableOf(packetOf(plan, "crew"), "tightening-days-end-R1");
    expect(cellText(rows[0]?.[1] ?? "")).toBe("wait");
    expect((notes ?? []).join(" ")).toContain("Tighten on a milder day");
  });
});

describe("measuredWords", () => {
  const withLine = (after: string, line: string): Plan =>
    planOf(exampleText("0001-level-deck-straight").replace(`\n${after}:\n`, `\n${after}:\n${line}\n`));

  test("nothing measured: no such fact, and the sheet says how the first cable is measured", () => {
    const text = crewText(examplePlan("0001-level-deck-straight"));
    expect(text).not.toContain("From your measurement");
    expect(text).toMatch(/Calibrate\*\* on the first cable|Calibrate on the first cable/);
    expect(text).toContain("give them to the office");
    expect(text).not.toContain("calibration: {");
  });

  test.each(examples)("%s: nobody who does this once is shown how a job file is written", (_, plan) => {
    const text = sheetOf(packetOf(plan, "homeowner"), "Z-803").blocks.flatMap(textsOf).join("\n");
    expect(text).toContain("Give both readings and the turns between to whoever makes your packet");
    expect(text).not.toMatch(/calibration:|posts: base|[{}]/);
  });

  test("a measured base and counted turns are named as what the numbers rest on", () => {
    const based = withLine("posts", "  base: { kind: measured, pull: 50 lbf, height: 36 in, movement: 3/8 in }");
    expect(crewText(based)).toContain('From your measurement of a post** (pulled with 50 lbf (222 N) at 36", it moved 3/8")');
    const plan = examplePlan("0001-level-deck-straight");
    const turns = {
      cable: "R1-09",
      turns: 6,
      from: { kind: "gauge", force: 100 * LB_N },
      to: { kind: "pitch", pitch_Hz: 150, span: 800 },
    } as const;
    const counted = crewText({ ...plan, job: { ...plan.job, calibration: { turns } } });
    expect(counted).toContain("From your measurement of R1-09** (6 turns from 100 lbf (445 N) to 150 Hz)");
    expect(counted).toContain("Calibrated; to do it again");
  });
});

describe("tighteningSheet", () => {
  test.each(plans)("%s: log, hold point H3 and owner's card print the same 'at least': the low end when all is done", (_, plan) => {
    const packet = packetOf(plan, "crew", true);
    const held = tableOf(packet, "proof-holds").rows.map((row) => row.map(cellText));
    const h3 = held.find(([point]) => point?.startsWith("H3"))?.[2] ?? "";
    const card = sheetOf(packet, "Z-806").blocks.flatMap(textsOf);
    for (const run of plan.runs) {
      const low = /(?:^|; |: )R\d+ at least ([\d.]+ (?:lbf|N|kN)), at most ([\d.]+ (?:lbf|N|kN))/g;
      const printed = [...h3.matchAll(low)].find(([text]) => text.includes(`${run.id} `));
      if (!printed) throw new Error(`no ${run.id} in ${h3}`);
      const passes = plan.tightening.find(({ runId }) => runId === run.id)?.passes.length ?? 0;
      const notes = (logOf(plan, run.id, passes).notes ?? []).join(" ");
      expect.soft(notes).toContain(`at least ${printed[1]}, at most ${printed[2]}`);
      expect.soft(card).toContain(`at least ${printed[1]}, at most ${printed[2]}`);
      expect.soft(readForce(printed[1] ?? "")).toBeGreaterThanOrEqual(run.tension.low - 1e-6);
    }
  });

  test.each(plans)("%s: nothing is said to be not computed or not corrected any more", (_, plan) => {
    expect(crewText(plan)).not.toMatch(/not computed yet|not corrected yet|without a published source/);
  });

  test.each(plans)(
    "%s: the plumb log has the limit of the plan, room for another, and a row for every post that cables pull, with its runs",
    (_, plan) => {
      const { rows, columns } = tableOf(packetOf(plan, "crew"), "tightening-plumb");
      const posts = [...new Set(plan.pulls.map(({ postId }) => postId))];
      expect(rows.map((row) => cellText(row[0] ?? ""))).toEqual(["Limit", ...posts]);
      const passes = Math.max(...plan.tightening.map((one) => one.passes.length));
      expect(columns.length).toBe(7 + (passes > 1 ? passes : 0));
      expect(cellText(rows[0]?.[3] ?? "")).toMatch(/^[\d/ .-]+("| mm)$/);
      expect(rows[0]?.[4]).toMatchObject({ blank: expect.any(String) });
      for (const [index, post] of posts.entries()) {
        const holding = plan.runs
          .filter(({ left, right, bends }) => [left, right, ...bends].some(({ postId }) => postId === post))
          .map(({ id }) => id);
        expect.soft(cellText(rows[index + 1]?.[1] ?? "")).toBe(holding.join(", "));
      }
    },
  );
});

describe("leansOf", () => {
  // From the sketch of the job: its deck lies inside a U; both corners turn right, so their posts are pulled towards the deck.
  test("two corners: end posts lean to the other posts, corner posts of right turns to the deck", () => {
    const ways = Object.fromEntries(leansOf(examplePlan("two-corners-4x4")).map(({ postId, way }) => [postId, way]));
    expect(ways).toEqual({
      P1: "the other posts",
      P3: "the deck",
      P4: "the deck",
      P7: "the deck",
      P8: "the deck",
      P10: "the other posts",
    });
  });
});

describe("spanTable", () => {
  // A2 is 110 Hz, three notes from C; a half-tone is a twelfth of an octave. 121.35 Hz lies 1200 log2(121.35 / 123.471) = -30 cents from B2.
  test("0001: 121 Hz is shown by a tuner as B2, 30 cents low", () => {
    expect(rowsOf(examplePlan("0001-level-deck-straight"), "tightening-spans")[0]?.slice(4)).toEqual([
      "121 Hz (119 - 124)",
      '3/16"',
      "B2 -30 cents",
    ]);
  });

  test.each(plans)("%s: the note printed beside a pitch sounds as high as it does, to its rounding", (_, plan) => {
    for (const [, , , , pitch = "", , note = ""] of rowsOf(plan, "tightening-spans")) {
      const [, letter = "", sharp, octave, cents] = /^([A-G])(#?)(-?\d) ([+-]?\d+) cents$/.exec(note) ?? [];
      const above = (HALF_TONES[letter] ?? 0) + (sharp === "#" ? 1 : 0) + 12 * Number(octave) - 57 + Number(cents) / 100;
      expect.soft(Math.abs(440 * 2 ** (above / 12) - Number.parseFloat(pitch)), pitch).toBeLessThan(0.6);
    }
  });

  /** "A1 to A8" or "B2": the bays of a row, in their order along the run. */
  function baysIn(run: Run, text: string): readonly string[] {
    const [from = "", to = from] = text.split(" to ");
    const bays = run.spans.map(({ bayId }) => bayId);
    return bays.slice(bays.indexOf(from), bays.indexOf(to) + 1);
  }

  // 12 in = 304.8 mm: corners and pairs of posts.
  test.each(examples)(
    "%s: every span of 12 in or more stands in one row, whose gauge value is the least of its spans at the low end",
    (_, plan) => {
      const { rows } = tableOf(packetOf(plan, "crew"), "tightening-spans");
      const seen = rows.flatMap((row) => {
        const [runId = "", bays = "", , gauge = "", pitch = ""] = row.map(cellText);
        const run = plan.runs.find(({ id }) => id === runId) as Run;
        const spans = baysIn(run, bays).map((bay) => run.spans.find(({ bayId }) => bayId === bay));
        const lows = spans.map((span) => ((span?.tension ?? 0) * run.tension.low) / run.tension.target);
        expect.soft(readForce(gauge), bays).toBeGreaterThanOrEqual(Math.min(...lows) - 1e-6);
        expect.soft(readForce(gauge), bays).toBeLessThan(Math.min(...lows) + forceStep(Math.min(...lows)));
        const [, , low = "", high = ""] = /^([\d.]+) Hz \(([\d.]+) - ([\d.]+)\)$/.exec(pitch) ?? [];
        for (const span of spans) {
          expect.soft(Number(low)).toBeLessThanOrEqual((span?.pitch_Hz.low ?? 0) + 0.5);
          expect.soft(Number(high)).toBeGreaterThanOrEqual((span?.pitch_Hz.high ?? 0) - 0.5);
        }
        return baysIn(run, bays).map((bay) => `${runId} ${bay}`);
      });
      const wanted = plan.runs.flatMap((run) => run.spans.filter(({ free }) => free >= 304.8).map(({ bayId }) => `${run.id} ${bayId}`));
      expect(seen).toEqual(wanted);
    },
  );

  test("eight equal spans make one row, A1 to A8, with whole Hz above 50 Hz", () => {
    const { rows } = tableOf(packetOf(examplePlan("rule-of-thumb"), "crew"), "tightening-spans");
    expect(rows.map((row) => row.slice(0, 2).map(cellText))).toEqual([["R1", "A1 to A8"]]);
    expect(cellText(rows[0]?.[4] ?? "")).toMatch(/^\d+ Hz \(\d+ - \d+\)$/);
  });
});

describe("waysToRead", () => {
  test.each(examples)("%s: each way names the range it must cover, and that it is to be asked or tried", (_, plan) => {
    const texts = sheetOf(packetOf(plan, "crew"), "Z-803").blocks.flatMap(textsOf).join("\n");
    expect(texts).toMatch(/Gauge\*\*: must read [\d.]+ (lbf|N|kN) to [\d.]+ (lbf|N|kN).*ask before you rent/);
    expect(texts).toMatch(/Pitch\*\*: must hear \d+ - \d+ Hz: try your tuner/);
    expect(texts).toMatch(/Sag\*\*: hang .* It moves .* here/);
  });
});

describe("runs that share a frame", () => {
  test("0006: the log of R1 says that it reads low until R2 is pulled, the log of R2 says nothing of the kind", () => {
    const packet = packetOf(examplePlan("0006-porch-existing-posts"), "crew");
    expect(tableOf(packet, "tightening-log-R1-1").notes?.join(" ")).toContain("R1 reads low until R2 is pulled");
    expect(tableOf(packet, "tightening-log-R2-1").notes?.join(" ")).not.toContain("until R");
  });
});

// Aluminium grows more than the strand: what is said of cold turns round.
describe("sheets of a frame of aluminium: 0005 with posts, rails and spacers of it", () => {
  const plan = planOf(exampleText("0005-steel-balcony").replaceAll("material: steel", "material: aluminium"));

  test("cold slackens and heat pulls, in the guide, the log and the table of losses", () => {
    expect(wordsOn(plan, "Z-801", "homeowner")).toContain("Cables pull harder when it is hot.");
    expect(wordsOn(plan, "Z-803")).toMatch(
      /Heat: cables that stand right at 20 deg C pull up to .* more at 35 deg C, the site's warmest day/,
    );
    expect(wordsOn(plan, "Z-601")).toMatch(/R1 \d+ N on the coldest day, \d+ N by drying and bedding-in/);
  });

  test("of steel it is the other way", () => {
    const steel = examplePlan("0005-steel-balcony");
    expect(wordsOn(steel, "Z-801", "homeowner")).toContain("Cables pull harder when it is cold.");
    expect(wordsOn(steel, "Z-601")).toMatch(/R1 \d+ N on the warmest day, \d+ N by drying and bedding-in/);
  });
});
