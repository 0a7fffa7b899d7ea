import { describe, expect, test } from "vitest";
import { showIn } from "../../../src/packet/show-number.ts";
import { supportsOn } from "../../../src/plan/corner-post.ts";
import { restOf } from "../../../src/plan/pier.ts";
import { changedText, examplePlan, planOf } from "../../support/example-jobs.ts";
import { readForce } from "../read-force.ts";
import { cellText, examples, packetOf, readPrinted, sheetOf, tableOf, textsOf } from "../read-packet.ts";

describe("cablesSheet", () => {
  test.each(examples)("%s: path, outside and order length of each run are those of the plan, the order length never short", (_, plan) => {
    const { rows } = tableOf(packetOf(plan, "crew"), "cables-lengths");
    expect(rows.length).toBe(plan.runs.length);
    for (const [index, run] of plan.runs.entries()) {
      const cells = rows[index]?.map(cellText) ?? [];
      expect.soft(cells[0]).toBe(run.id);
      expect.soft(Number(cells[2])).toBe(plan.cables.filter(({ runId }) => runId === run.id).length);
      expect.soft(Math.abs(readPrinted(cells[3] ?? "") - run.pathLength)).toBeLessThan(0.8);
      expect.soft(Math.abs(readPrinted(cells[4] ?? "") - run.outsideLength)).toBeLessThan(0.8);
      expect.soft(readPrinted(cells[5] ?? "")).toBeGreaterThanOrEqual(run.orderLength - 1e-6);
    }
  });

  test.each(examples)("%s: every cable of the plan stands once", (_, plan) => {
    const { columns, rows } = tableOf(packetOf(plan, "crew"), "cables-marks");
    // Cables stand side by side: the marks are read down one part of the table, then down the next.
    const marks = columns.flatMap(({ key }, at) => (key.startsWith("mark") ? rows.map((row) => cellText(row[at] ?? "")) : []));
    expect(marks.filter((mark) => mark !== "")).toEqual(plan.cables.map(({ mark }) => mark));
  });
});

describe("cablesSheet, take-up and friction", () => {
  test.each(examples)("%s: the frame's closing, the least tension along the run and what is kept for losses are the plan's", (_, plan) => {
    const packet = packetOf(plan, "permit");
    const takeUp = tableOf(packet, "cables-take-up");
    const closing = takeUp.columns.findIndex(({ key }) => key === "closing");
    const rows = tableOf(packet, "cables-friction").rows.map((row) => row.map(cellText));
    for (const [index, run] of plan.runs.entries()) {
      const own = takeUp.rows.filter(([first]) => cellText(first ?? "").startsWith(`${run.id},`));
      for (const row of own)
        expect.soft(Math.abs(readPrinted(cellText(row[closing] ?? "")) - run.takeUp.closing)).toBeLessThanOrEqual(25.4 / 64 + 1e-6);
      const [, , least = "", , , , covered = ""] = rows[index] ?? [];
      expect.soft(readForce(least.split(" in ")[0] ?? "")).toBeLessThanOrEqual(run.tension.least * (1 + 1e-9));
      expect.soft(least).toContain(` in ${run.tension.leastBayId}`);
      if (run.tension.covered > 0) expect.soft(readForce(covered)).toBeGreaterThanOrEqual(run.tension.covered * (1 - 1e-9));
      else expect.soft(covered).toBe("nothing");
    }
  });
});

describe("careSheet", () => {
  test.each(examples)("%s: the visit after drying: its month, the turns of each nut, and the thread that is left then", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const months = plan.job.site.nextVisit_months.value;
    const visit = tableOf(packet, "care-visits")
      .rows.map((row) => row.map(cellText))
      .find(([when]) => when === `After ${months} months`);
    for (const { runId, visit: settled } of plan.climate) {
      expect.soft(visit?.[1]).toContain(`${runId} ${Math.round(settled.turnsPerEnd * 10) / 10}`);
    }
    const thread = tableOf(packet, "care-thread");
    const at = (key: string): number => thread.columns.findIndex((column) => column.key === key);
    for (const row of thread.rows) {
      const run = plan.runs.find(({ id }) => cellText(row[0] ?? "").startsWith(`${id}-`));
      const taken = plan.climate.find(({ runId }) => runId === run?.id)?.visit.travelPerEnd ?? 0;
      const [now, then] = ["planned", "then"].map((key) => readPrinted(cellText(row[at(key)] ?? "")));
      // Each is rounded down to 1/16 in, or to 1 mm.
      expect.soft(Math.abs((now ?? 0) - (then ?? 0) - taken)).toBeLessThanOrEqual(25.4 / 16 + 1e-6);
    }
  });
});

describe("careSheet, thread", () => {
  test.each(examples)(
    "%s: turns left are those of the thread printed for after the visit, rounded down, none where the reserve is used",
    (_, plan) => {
      const thread = tableOf(packetOf(plan, "crew"), "care-thread");
      const at = (key: string): number => thread.columns.findIndex((column) => column.key === key);
      for (const row of thread.rows) {
        const [then, reserve] = ["then", "reserve"].map((key) => readPrinted(cellText(row[at(key)] ?? "")));
        const spare = ((then ?? 0) - (reserve ?? 0)) / plan.job.fittings.stud.pitch.value;
        const turns = cellText(row[at("turns")] ?? "");
        // The reserve of a metric job is printed to the millimetre.
        if (turns.includes("none")) expect.soft(spare).toBeLessThanOrEqual(0.5);
        else expect.soft(Number(turns)).toBeLessThanOrEqual(spare + 0.5);
      }
    },
  );

  test("0003: R1 needs more turns at the visit than lie above its reserve, and the sheet says so", () => {
    const { notes = [] } = tableOf(packetOf(examplePlan("0003-long-boardwalk"), "crew"), "care-thread");
    expect(notes.join(" ")).toContain("R1: the visit after 3 months takes more turns than lie above the reserve");
    expect(notes.join(" ")).toContain("its tail is cut");
  });

  test("0005: the thread left at P1 is the same on Z-601 and Z-806", () => {
    const packet = packetOf(examplePlan("0005-steel-balcony"), "crew");
    const take = tableOf(packet, "cables-take-up");
    const care = tableOf(packet, "care-thread");
    const left = take.rows[0]?.[take.columns.findIndex(({ key }) => key === "left")];
    expect(cellText(left ?? "")).toBe(cellText(care.rows[0]?.[2] ?? ""));
  });

  test.each(examples)("%s: the owner's readings by temperature are the target and what the day adds", (_, plan) => {
    const show = showIn(plan.job.units);
    const words = sheetOf(packetOf(plan, "crew"), "Z-806").blocks.flatMap(textsOf).join("\n");
    for (const { runId, days } of plan.tightening) {
      const target = plan.runs.find(({ id }) => id === runId)?.tension.target ?? 0;
      for (const { temperature, added } of days) {
        expect.soft(words).toContain(`${show.heat(temperature).replace(` ${show.heatUnit}`, "")} **${show.gauge(target + added)}**`);
      }
    }
  });
});

describe("what is kept for losses", () => {
  test("0003: the tension is stated, so that every sheet says that nothing is kept", () => {
    const packet = packetOf(examplePlan("0003-long-boardwalk"), "permit");
    const rule = tableOf(packet, "cover-rules").rows.find(([first]) => cellText(first ?? "") === "The target makes up for");
    expect(cellText(rule?.[1] ?? "")).toContain("nothing: the tension is stated");
    expect(tableOf(packet, "cables-friction").notes?.join(" ")).toContain("Kept for losses: nothing");
  });
});

describe("surveySheet, posts that stand", () => {
  test("0006: the side may be off by no more than its posts, and their height is asked", () => {
    const rows = tableOf(packetOf(examplePlan("0006-porch-existing-posts"), "crew"), "survey-measure").rows.map((row) => row.map(cellText));
    const stops = rows.filter(([what = ""]) => what.startsWith("Side A") || what.startsWith("Post P")).map((row) => row[2]);
    expect(new Set(stops).size).toBe(1);
    expect(rows.some(([what = ""]) => what.startsWith("Height of the standing posts"))).toBe(true);
  });

  test("0007: a run that is as long as its side has the same stop", () => {
    const rows = tableOf(packetOf(examplePlan("0007-too-much-for-the-frame"), "crew"), "survey-measure").rows.map((row) =>
      row.map(cellText),
    );
    const [side, run] = ["Side A", "Run R1"].map((name) => rows.find(([what = ""]) => what.startsWith(name))?.[2]);
    expect(run).toBe(side);
  });
});

describe("rulesUsed", () => {
  test.each(examples)("%s: site, wood, base, limits and what the target makes up for stand with their sources", (_, plan) => {
    const rows = tableOf(packetOf(plan, "permit"), "cover-rules").rows.map((row) => row.map(cellText));
    const rule = (name: string): string => rows.find(([first]) => first === name)?.join(" | ") ?? "";
    for (const name of ["The target makes up for", "Coldest day", "Warmest day", "Base of a post", "Rails on the posts", "Strand grows by"])
      expect.soft(rule(name), name).toMatch(/\[[\w-]+\]/);
    expect.soft(rule("Wood of the posts") !== "").toBe(plan.job.posts.wood !== null);
    expect
      .soft(rule("Movement of a post under the cables, at most, of its height"))
      .toContain(`1/${Math.round(1 / plan.job.limits.movementShare_max.value)}`);
    expect.soft(rule("Passes that the plan may choose, at most")).toContain(String(plan.job.tightening.passes_max.value));
  });
});

describe("orderSheet", () => {
  test.each(examples)("%s: each line of the order stands with its net, spare and quantity", (_, plan) => {
    const packet = packetOf(plan, "homeowner");
    const { rows } = tableOf(packet, "order-list");
    expect(rows.length).toBe(plan.order.length);
    const printed = rows.map((row) => row.slice(2, 5).map((cell) => Number.parseInt(cellText(cell), 10)));
    expect(printed).toEqual(plan.order.map(({ net, spare, quantity }) => [net, spare, quantity]));
  });
});

describe("lumberSheet", () => {
  test.each(examples)("%s: each part stands with its count, and the cut plans hold exactly the parts", (_, plan) => {
    if (plan.cuts.length === 0) return;
    const packet = packetOf(plan, "crew");
    const wanted = new Map(plan.cuts.map(({ mark, count }) => [mark, count]));
    expect(tableOf(packet, "lumber-cuts").rows.map((row) => [cellText(row[0] ?? ""), Number(cellText(row[4] ?? ""))])).toEqual([...wanted]);
    const cut = new Map<string, number>();
    for (const row of tableOf(packet, "lumber-plan").rows) {
      for (const [, n = "0", mark = ""] of cellText(row[3] ?? "").matchAll(/(\d+) x ([A-Z]+\d*(?:-[A-Z])?) \(/g))
        cut.set(mark, (cut.get(mark) ?? 0) + Number(n));
    }
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(wanted));
  });
});

describe("surveySheet", () => {
  test("0001 in mm: what is stamped on wood is written without a unit, a breaking force in N", () => {
    const { rows } = tableOf(
      packetOf(planOf(changedText("0001-level-deck-straight", { "units: inch": "units: mm" })), "crew"),
      "survey-measure",
    );
    const unitBeside = (what: string) => rows.find((row) => cellText(row[0] ?? "").startsWith(what))?.[3];
    expect(unitBeside("Grade stamp")).toEqual({ blank: "" });
    expect(unitBeside("Breaking force")).toEqual({ blank: "N" });
  });

  test.each(examples)("%s: the stop value of the clear opening keeps the top gap within its limit", (_, plan) => {
    const rows = tableOf(packetOf(plan, "crew"), "survey-measure").rows.map((row) => row.map(cellText));
    const row = rows.find((cells) => cells.at(-1) === "frame / clear opening") ?? [];
    const stop = readPrinted((row[2] ?? "").replace(/^above /, "").replace(/: nothing to spare$/, ""));
    const top = plan.gaps.at(-1);
    if (!top) throw new Error("a plan without gaps");
    expect(top.spacing + stop - plan.job.frame.clearOpening).toBeLessThanOrEqual(plan.job.limits.cableSpacing_max.value + 1e-6);
  });

  test.each(examples)("%s: a new side as long as its stop allows still has its posts within their largest spacing", (_, plan) => {
    if (plan.job.posts.existing) return;
    const rows = tableOf(packetOf(plan, "crew"), "survey-measure").rows.map((row) => row.map(cellText));
    for (const side of plan.sides) {
      const row = rows.find(([what = ""]) => what.startsWith(`Side ${side.id} along the bores`)) ?? [];
      const stop = readPrinted((row[2] ?? "").replace(/^above /, "").replace(/: nothing to spare$/, ""));
      const stations = supportsOn(side.index, plan.verticals).map(restOf);
      const [first = 0, last = 0] = [stations[0], stations.at(-1)];
      const evenly = (last - first + stop - side.length) / Math.max(1, stations.length - 1);
      expect.soft(evenly).toBeLessThanOrEqual(plan.job.posts.spacing_max.value + 1e-6);
    }
  });

  test.each(examples)("%s: asks for a counterbore only where one is bored, and always for the strand's certificate", (_, plan) => {
    const keys = tableOf(packetOf(plan, "crew"), "survey-measure").rows.map((row) => cellText(row.at(-1) ?? ""));
    expect(keys.includes("fittings / grip / counterbore")).toBe(
      plan.bores.some(({ counterbore, sleeveHole }) => counterbore !== null && sleeveHole === undefined),
    );
    expect(keys.includes("fittings / bushing bore")).toBe(plan.bores.some(({ bushing }) => bushing));
    expect(keys).toContain("cable / breaking force");
  });

  test.each(examples)("%s: asks for the grade stamp of wood, its moisture, and what a post moves when it is pulled", (_, plan) => {
    const rows = tableOf(packetOf(plan, "homeowner"), "survey-measure").rows.map((row) => row.map(cellText));
    const base = rows.find((cells) => cells.at(-1) === "posts: base") ?? [];
    const { pull, movement } = plan.frame.trial;
    expect(Math.abs(readPrinted(base[1] ?? "") - movement)).toBeLessThan(25.4 / 32);
    expect(Math.abs(readForce(/with (.*) at /.exec(base[0] ?? "")?.[1] ?? "") - pull)).toBeLessThan(0.01 * pull);
    const stamps = rows.filter((cells) => (cells.at(-1) ?? "").includes("species, grade")).map((cells) => cells[1]);
    expect(stamps.length > 0).toBe(plan.job.posts.wood !== null || plan.job.frame.topRail.wood !== null);
    expect(rows.some((cells) => cells.at(-1) === "site / moisture at fitting")).toBe(plan.job.posts.wood !== null);
  });
});

describe("coverSheet", () => {
  test.each(examples)("%s: carries the hash of the job file, the version, all checks and a bar of 100 mm", (_, plan) => {
    const packet = packetOf(plan, "permit");
    const cover = sheetOf(packet, "Z-001");
    const texts = cover.blocks.flatMap(textsOf).join(" ");
    expect(texts).toContain("0123456789ab");
    expect(texts).toContain("0.0.0-test");
    const names = tableOf(packet, "cover-checks").rows.map((row) => cellText(row[0] ?? ""));
    const others = plan.checks.filter(({ id }) => !id.startsWith("frame-"));
    expect(names.slice(0, others.length)).toEqual(others.map(({ name }) => name));
    const told = names.slice(others.length).map((name) => Number(/^Frame: (\d+) .* Z-805/.exec(name)?.[1]));
    expect(told.reduce((sum, one) => sum + one, 0)).toBe(plan.checks.length - others.length);
    expect(cover.blocks.some(({ kind }) => kind === "drawing")).toBe(true);
  });

  test.each(examples)(
    "%s: the frame is one row with the highest ratio of all that compare, never told too small, and one of what must be asked",
    (_, plan) => {
      const rows = tableOf(packetOf(plan, "permit"), "cover-checks").rows.map((row) => row.map(cellText));
      const [compares, asks] = rows.filter(([name = ""]) => name.startsWith("Frame: "));
      const [, where = "", , , ratio = "", verdict = ""] = compares ?? [];
      const compared = plan.frame.checks.filter((check) => check.verdict !== "ask");
      const worst = Math.max(...compared.map((check) => check.ratio));
      if (worst < 99) {
        expect(Number(ratio)).toBeGreaterThanOrEqual(worst - 1e-9);
        expect(Number(ratio)).toBeLessThan(worst + 0.011);
      } else expect(ratio).toBe("over 99");
      expect(compared.filter((check) => check.ratio === worst).some(({ member }) => where.startsWith(member))).toBe(true);
      expect(verdict).toBe(compared.some((check) => check.verdict === "fail") ? "FAILS" : "passes");
      const open = plan.frame.checks.filter((check) => check.verdict === "ask");
      expect(asks?.[5]).toBe(open.length === 0 ? undefined : "to be decided (engineer)");
      for (const { name } of open) expect.soft(asks?.[1]).toContain(name);
    },
  );

  test("what fails of the frame stands in one line among what is open, with its ratios", () => {
    const [, plan] = examples.find(([, { frame }]) => frame.checks.some((check) => check.verdict === "fail")) ?? [];
    if (!plan) throw new Error("no example has a frame that fails");
    const open = sheetOf(packetOf(plan, "crew"), "Z-001").blocks.flatMap((block) => (block.kind === "list" ? block.items : []));
    const lines = open.filter((line) => line.includes("FAILS"));
    expect(lines.length).toBe(1);
    for (const check of plan.frame.checks.filter(({ verdict }) => verdict === "fail")) expect.soft(lines[0]).toContain(check.name);
  });
});

describe("detailsSheet", () => {
  test.each(examples)("%s: names each size that is bored, and no other", (_, plan) => {
    const facts = sheetOf(packetOf(plan, "crew"), "Z-301").blocks.find((block) => block.kind === "facts");
    if (facts?.kind !== "facts") throw new Error("no facts on Z-301");
    const printed = facts.facts.flatMap(({ value }) =>
      [...value.matchAll(/(?:bore|counterbore|blind hole|hole in the sleeve|opened to) ([\d/-]+(?: mm|"))/g)].map(([, size = ""]) =>
        readPrinted(size),
      ),
    );
    const bored = plan.bores.flatMap(({ diameter, counterbore, sleeveHole }) => [
      diameter,
      ...(counterbore ? [counterbore.diameter] : []),
      ...(sleeveHole === undefined ? [] : [sleeveHole]),
    ]);
    // Printed to 1/32 in or 0.1 mm.
    const isNear = (a: number, b: number): boolean => Math.abs(a - b) < 25.4 / 64 + 1e-6;
    expect(printed.length).toBeGreaterThan(1);
    expect(printed.filter((size) => !bored.some((each) => isNear(size, each)))).toEqual([]);
    expect(bored.filter((size) => !printed.some((each) => isNear(size, each)))).toEqual([]);
  });
});

describe("authoritySheet", () => {
  test.each(examples)(
    "%s: the force that holds the sphere back is rounded down, in the bay of each side that is tested first",
    (_, plan) => {
      const { rows } = tableOf(packetOf(plan, "permit"), "authority-push");
      expect([...new Set(rows.map((row) => cellText(row[0] ?? "").split(",")[0]))]).toEqual(plan.openingBayIds);
      for (const row of rows) {
        const [bayId, runId] = cellText(row[0] ?? "").split(", ");
        const span = plan.runs.find(({ id }) => id === runId)?.spans.find((each) => each.bayId === bayId);
        expect.soft(readForce(cellText(row[3] ?? ""))).toBeLessThanOrEqual((span?.pushThrough.sliding ?? 0) * (1 + 1e-9));
        expect.soft(readForce(cellText(row[4] ?? ""))).toBeLessThanOrEqual((span?.pushThrough.held ?? 0) * (1 + 1e-9));
      }
    },
  );

  test.each(examples)("%s: question on openings at the foot names the gap under the bottom rail where there is one", (_, plan) => {
    const rows = tableOf(packetOf(plan, "permit"), "authority-questions").rows.map((row) => row.map(cellText));
    const row = rows.find((cells) => (cells[1] ?? "").startsWith("Are there rules on the gap under the guard")) ?? [];
    expect(row[2]).toContain(plan.job.frame.bottomRail === null ? "no bottom rail" : "under the bottom rail");
  });

  test.each(examples)("%s: asks for loads, base, movement and the computation of the frame, with what is assumed", (_, plan) => {
    const rows = tableOf(packetOf(plan, "permit"), "authority-questions").rows.map((row) => row.map(cellText));
    const assumed = (question: string): string => rows.find((cells) => (cells[1] ?? "").includes(question))?.[2] ?? "";
    expect.soft(assumed("Which loads act on top and infill")).toMatch(/ (lbf|N) at any point of the top/);
    expect.soft(assumed("What may the base of a post bear")).toMatch(/not known; demands on Z-805|in-lbf|N m/);
    expect.soft(assumed("How far may posts move")).toMatch(/\[(practice|job)\]; computed: (?!0(?:"| mm| in|$))/);
    expect
      .soft(assumed("Is the computation on Z-805 enough"))
      .toMatch(plan.frame.checks.some(({ verdict }) => verdict === "fail") ? /it FAILS/ : /no check fails/);
    // C_D of table 2.3.2 of the NDS: 0.9 for permanent loads, 1.6 for ten minutes.
    expect.soft(assumed("Load duration of wood")).toMatch(plan.job.posts.wood === null ? /^$/ : /C_D 1\.6 \[practice\] and 0\.9/);
  });

  test("NCC 2022: the table of tensions is the way taken, and the cone test of H5V1 is not claimed", () => {
    const [, plan] = examples.find(([, each]) => each.job.tightening.criterion.kind === "table") ?? [];
    if (!plan) throw new Error("no example uses a table");
    const notes = (tableOf(packetOf(plan, "permit"), "authority-push").notes ?? []).join(" ");
    expect(notes).toMatch(/Way of compliance taken here: .*table 11\.3\.6a.*H5V1.*not claimed/);
  });
});
