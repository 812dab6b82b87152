import { expect, test } from "vitest";
import { wordsOf } from "../../../tests/tools/writtenWords.ts";
import { jobOf } from "../../core/job/projectJob.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import { cutSheetCsv } from "./cutSheetCsv.ts";
import { cutSheetText } from "./cutSheetText.ts";
import { layWords, ruleCostWords } from "./layWords.ts";
import { openedWords, otherWayWords } from "./openedWords.ts";
import { projectSheet } from "./projectSheet.ts";
import { readsInches } from "./sheetWords.ts";

/** Three bags with an adjustable strap and a panel of one cloth; `more` is put into the file, `cloth` into its material. */
function projectOf(more: object = {}, cloth: object = {}): Project {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Quay satchel", bags: 3, currency: "EUR" },
      materials: [
        {
          ...{ id: "c", name: "Canvas", kind: "woven", thickness: 0.7, grain: "lengthwise" },
          stock: [{ kind: "roll", id: "r", width: 1400 }],
          price: { amount: 20, per: "m" },
          ...cloth,
        },
      ],
      panels: [
        {
          id: "front",
          name: "Front",
          material: "c",
          shape: { kind: "rectangle", along: 300, across: 200 },
          seamAllowance: 0,
        },
      ],
      straps: [
        {
          ...{ id: "s", name: "Strap", construction: "fourfold", width: "38 mm", length: "700 mm" },
          ...{ adjustment: "one-piece", materials: { outer: "c" } },
          hardware: [
            { kind: "ring", innerWidth: 39, length: 20 },
            { kind: "slider", innerWidth: 39, opening: 30 },
          ],
        },
      ],
      ...more,
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** The project's job with its first cloth laid as told: what is used of each stock, and one piece on each. */
function laidAs(project: Project, uses: LayPlan["uses"], more: Partial<LayPlan> = {}) {
  const { pieces, straps, lays } = jobOf(project);
  const [cloth] = lays;
  const placements = uses.map(({ stockId }, copy) => ({
    ...{ pieceId: cloth!.problem.pieces[0]!.id, copy, stockId, x: 0, y: 0, turnDeg: 0, mirrored: false },
  }));
  const plan: LayPlan = { materialId: "c", placements, unplaced: [], uses, evaluations: 0, seed: 1, ...more };
  return { project, pieces, straps, lays: [{ ...cloth!, plan }] };
}
const used = (usedLength: number, bound: number | null = null, stockId = "r") => ({ stockId, usedLength, bound });
const said = (project: Project, uses: LayPlan["uses"], more: Partial<LayPlan> = {}) =>
  layWords(laidAs(project, uses, more).lays[0]!, project, "en");

test("the length a lay takes is told with how good it is: proven, bounded, or with neither", () => {
  const project = projectOf();
  expect(said(project, [used(800, 800)])[0]).toBe("The pieces take 800 mm: proven shortest.");
  // By hand: 24 over 800 are 3 %.
  expect(said(project, [used(824, 800)])[0]).toBe(
    "The pieces take 824 mm; no plan can be shorter than 800 mm (gap 3.0 %).",
  );
  expect(said(project, [used(800)])[0]).toBe("The pieces take 800 mm.");
  const unplaced = [{ pieceId: "front", count: 1, reason: "stock-used-up" }] as const;
  expect(said(project, [used(800, 800)], { unplaced })[0]).toBe("The pieces that fit take 800 mm.");
  expect(said(project, [used(0)])[0]).toBe("Nothing was laid.");
});

test("what to buy is told with its price, in the shop's steps, and what is useful of the rest", () => {
  // By hand: 800 mm and 20 at each end to square the cloth are 0.84 m; the shop cuts by 10 cm, at €20 a metre.
  const words = said(projectOf(), [used(800)]);
  expect(words).toContain("Buy 0.9 m, €18.00.");
  expect(said(projectOf({}, { price: undefined }), [used(800)])).toContain("Buy 0.84 m.");
  expect(words.some((line) => /^Useful offcuts: /u.test(line))).toBe(true);
  const own = projectOf(
    {},
    { stock: [{ kind: "remnant", id: "x", shape: { kind: "rectangle", along: 900, across: 700 } }] },
  );
  expect(said(own, [used(300, null, "x")]).join()).not.toMatch(/Buy/u);
});

test("of several stocks each is named beside its length", () => {
  const two = projectOf(
    {},
    {
      stock: [
        { kind: "remnant", id: "x", shape: { kind: "rectangle", along: 900, across: 700 } },
        { kind: "roll", id: "r", width: 1400 },
      ],
    },
  );
  const words = said(two, [used(600, null, "x"), used(400, null, "r")]);
  expect(words[0]).toMatch(/^The pieces take 600 mm \(remnant, 900 mm × 700 mm\)/u);
  expect(words[1]).toMatch(/^The pieces take 400 mm \(roll, 1400 mm wide\)/u);
});

test("a cloth that repeats is told of, one that is not matched by how much is bought more", () => {
  const striped = projectOf({}, { repeat: { along: 60 } });
  expect(said(striped, [used(800)]).join(" ")).toContain("The pattern repeats every 60 mm.");
  expect(said(projectOf(), [used(800)]).join(" ")).not.toContain("repeats");
});

test("the sheet numbers all pieces, adds up hardware and thread for all bags, and names the steps of each strap", () => {
  const sheet = projectSheet(laidAs(projectOf(), [used(800)]));
  expect([sheet.project, sheet.bags, sheet.inInches, sheet.language]).toEqual(["Quay satchel", 3, false, "en"]);
  expect(sheet.groups.map(({ material, rows }) => [material, rows.map(({ number }) => number)])).toEqual([
    ["Canvas", sheet.groups[0]!.rows.map((_, i) => i + 1)],
  ]);
  expect(sheet.purchase).toEqual([{ what: "Canvas", amount: "0.9 m, €18.00" }]);
  const amounts = new Map(sheet.consumables.map(({ what, amount }) => [what, amount]));
  const rings = [...amounts].filter(([what]) => /ring|slider/u.test(what));
  // A slider and two rings for each of three bags.
  expect(rings.map(([, amount]) => amount).sort()).toEqual(["3", "6"]);
  // Thread of one bag three times over, rounded up to a centimetre once.
  const [strap] = laidAs(projectOf(), [used(800)]).straps;
  const threads = [...amounts.values()]
    .filter((amount) => amount.endsWith(" m"))
    .map((amount) => Number.parseFloat(amount));
  expect(threads).toEqual(strap!.consumables.map(({ mm }) => Math.ceil((3 * mm) / 10 - 1e-9) / 100));
  expect(sheet.work.map(({ title }) => title)).toEqual(["Strap"]);
  expect(sheet.work[0]!.steps.length).toBeGreaterThan(5);
  expect(sheet.pictures.map(({ title }) => title)).toEqual([
    expect.stringMatching(/^Strap: /u),
    expect.stringMatching(/^Strap: /u),
    expect.stringMatching(/^Strap: Threading/u),
  ]);
  expect(
    wordsOf(sheet.pictures[0]!.drawing)
      .map(({ text }) => text)
      .join(" "),
  ).not.toMatch(/\d in\b/u);
});

test("inches stand beside millimetres, and yards are bought, where lengths are written in inches or yards alone", () => {
  const inches = (lengths: string) => projectOf({ output: { lengths } });
  expect(["mm", "cm", "m", "in/16", "in/32", "yd/8"].map((style) => readsInches(inches(style)))).toEqual([
    ...[false, false, false, true, true, true],
  ]);
  const sheet = projectSheet(laidAs(inches("in/16"), [used(800)]));
  expect(sheet.inInches).toBe(true);
  expect(sheet.consumables.some(({ amount }) => / yd$/u.test(amount))).toBe(true);
  expect(
    wordsOf(sheet.pictures[0]!.drawing)
      .map(({ text }) => text)
      .join(" "),
  ).toMatch(/\d in\b/u);
});

test("a ruler's widths are offered, but not for cloth that shrinks after making", () => {
  const lead = (cloth: object) => projectSheet(laidAs(projectOf({}, cloth), [used(800)])).work[0]!.lead.join(" ");
  expect(lead({})).toMatch(/With the ruler at \d+(?:\.\d)? mm the strap comes out/u);
  expect(lead({ shrinkage: { lengthwise: 0.03, crosswise: 0, when: "after-making" } })).toBe("");
  expect(lead({ shrinkage: { lengthwise: 0, crosswise: 0.03, when: "after-making" } })).toBe("");
  expect(lead({ shrinkage: { lengthwise: 0.03, crosswise: 0.02, when: "before-cutting" } })).toMatch(/ruler/u);
});

test("a lay on a pattern is shown with its numbers, one picture a stock", () => {
  const project = projectOf(
    { centred: [{ part: "front", on: "line" }] },
    {
      repeat: { along: 60, firstAlong: 25, symmetric: true, tolerance: 0.5 },
      stock: [
        { kind: "roll", id: "r", width: 1400 },
        { kind: "remnant", id: "x", shape: { kind: "rectangle", along: 900, across: 700 } },
      ],
    },
  );
  const one = projectSheet(laidAs(project, [used(800)]));
  expect(one.pictures[0]!.title).toMatch(/^Canvas on its pattern, 1 : \d+/u);
  expect(one.pictures[1]!.title).toMatch(/^Strap: /u);
  const two = projectSheet(laidAs(project, [used(800), used(600, null, "x")]));
  expect(two.pictures.slice(0, 3).map(({ title }) => title.split(" on its pattern")[0])).toEqual([
    "Canvas, x",
    "Canvas, r",
    expect.stringMatching(/^Strap/u),
  ]);
  const numbers = wordsOf(one.pictures[0]!.drawing).map(({ text }) => text);
  expect(numbers).toEqual([
    String(one.groups[0]!.rows.find(({ name }) => name === jobOf(project).pieces[0]!.name)!.number),
  ]);
  expect(
    projectSheet(laidAs(projectOf(), [used(800)])).pictures.some(({ title }) => title.includes("pattern")),
  ).toBe(false);
});

test("the text has its columns below each other and a line under each head; the table is comma-separated", () => {
  const sheet = projectSheet(laidAs(projectOf(), [used(800)]));
  const lines = cutSheetText(sheet).split("\n");
  expect(lines.slice(0, 3)).toEqual(["Quay satchel: Cut sheet", "For 3 bags; counts are for all of them.", ""]);
  for (const [i, line] of lines.entries()) if (/^-+$/u.test(line)) expect(line.length).toBe(lines[i - 1]!.length);
  expect(lines.filter((line) => /^-+$/u.test(line)).length).toBe(5);
  const head = lines.find((line) => line.includes("along × across"))!;
  const at = head.indexOf("along × across");
  for (const row of sheet.groups[0]!.rows) {
    const line = lines.find((one) => one.startsWith(`  ${row.number} `) && one.includes(row.name))!;
    expect(line.slice(at - 2, at)).toBe("  ");
    expect(line.slice(at)).toMatch(/^\d/u);
    expect(line.indexOf(row.name)).toBe(head.indexOf("piece"));
  }
  expect(lines).toContain("  Canvas: 0.9 m, €18.00");
  expect(lines.some((line) => line.startsWith("  1. "))).toBe(true);
  expect(lines.some((line) => line.startsWith("  ! "))).toBe(true);
  const wide = { ...sheet, groups: [{ ...sheet.groups[0]!, material: "帆布 x" }] };
  expect(cutSheetText(wide)).toContain("帆布 x\n------\n");
  const rows = cutSheetCsv(sheet).split("\r\n");
  const front = rows.find((row) => row.includes("Front"))!;
  // By hand: 300 mm are 11.811 in, 200 mm 7.874 in.
  expect(front).toContain(",panel,3,0,300,200,11.811,7.874,lengthwise,");
});

const euro = (text: string) => text.replaceAll("\u00a0", " ");

test("what is cut into and bought is told stock by stock, equal ones counted", () => {
  const project = projectOf(
    {},
    {
      stock: [
        { kind: "remnant", id: "x", shape: { kind: "rectangle", along: 900, across: 700 }, count: 3 },
        {
          kind: "remnant",
          id: "q",
          shape: { kind: "rectangle", along: 500, across: 400 },
          toBuy: true,
          price: { amount: 6, per: "piece" },
          count: 2,
        },
        { kind: "roll", id: "r", width: 1400 },
      ],
    },
  );
  const [material] = project.materials;
  const name = ({ id }: { readonly id: string }) => `the ${id}`;
  const told = (uses: LayPlan["uses"], more: Partial<LayPlan> = {}) =>
    openedWords(project, material!, laidAs(project, uses, more).lays[0]!.plan, name, "en").map(euro);
  const lines = told([used(900, null, "x"), used(900, null, "x (2)"), used(500, null, "q"), used(800, null, "r")]);
  expect(lines[0]).toBe("From what you have: 2 × the x.");
  expect(lines[1]).toBe("Buy the q, €6.00.");
  expect(lines[2]).toBe("Buy 0.9 m of the r, €18.00.");
  expect(lines[3]).toBe("In all €24.00: no other way that was looked at costs less.");
  expect(told([used(900, null, "x")])).toEqual([
    "From what you have: the x.",
    "Nothing to buy: what you have is enough.",
  ]);
  const left = told([used(800, null, "r")], {
    unplaced: [{ pieceId: "front", count: 2, reason: "stock-used-up" }],
  });
  expect(left.at(-1)).toMatch(/^2 pieces find no place/u);
  const other = (toPay: number | null, leftOut = 0, opened = ["q", "q (2)", "r"]) =>
    euro(otherWayWords(project, material!, { opened, toPay, leftOut }, name, "en"));
  expect(other(2880)).toBe("2 × the q + the r: €28.80");
  expect(other(null)).toBe("2 × the q + the r: no price");
  expect(other(0, 1)).toBe("2 × the q + the r: 1 piece finds no place");
  expect(other(0, 0, [])).toBe("nothing bought: €0.00");
});

test("what a rule costs is told as a length where it is a millimetre at least; one whose cost is not known is not", () => {
  const project = projectOf(
    { centred: [{ part: "front", on: "line" }] },
    { repeat: { along: 60, firstAlong: 25, symmetric: true, tolerance: 0.5 } },
  );
  const told = (rule: object, extraLength: number | null) =>
    ruleCostWords([{ rule, extraLength } as never], project, "en");
  expect(told({ kind: "band" }, 40)).toEqual(["Each bag's parts from one stretch of the roll: 40 mm more."]);
  expect(told({ kind: "one-way" }, 1)).toEqual(["All pieces one way: 1 mm more."]);
  expect(told({ kind: "one-way" }, 0.99)).toEqual(["All pieces one way: no more cloth."]);
  expect(told({ kind: "one-way" }, -7)).toEqual(["All pieces one way: no more cloth."]);
  expect(told({ kind: "centred", index: 0 }, 12)).toEqual(["Front in its place on the pattern: 12 mm more."]);
  expect(told({ kind: "band" }, null)).toEqual([]);
});
