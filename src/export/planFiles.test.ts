import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { layDrawing } from "../core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../core/drawing/lay/pieceArt.ts";
import type { Page } from "../core/drawing/list/page.ts";
import { rollPages } from "../core/drawing/sheets/sheetPage.ts";
import { contourBox } from "../core/geometry/contourArcs.ts";
import { ringContour } from "../core/geometry/contourShapes.ts";
import { rectangleRing, solid } from "../core/geometry/ring.ts";
import { layProblemsOf } from "../core/job/layProblems.ts";
import { matsOfAll } from "../core/job/matsOf.ts";
import type { LayPlan } from "../core/lay/problem/layProblem.ts";
import type { Material } from "../core/materials/material.ts";
import { cutListOf } from "../core/project/cutList.ts";
import { readProject } from "../core/project/file/readProject.ts";
import { paperOf } from "../core/project/papers.ts";
import { cutSheetPages } from "./cutsheet/cutSheetPages.ts";
import { projectSheet } from "./cutsheet/projectSheet.ts";
import type { FontBytes } from "./fonts/faces.ts";
import { OUTPUTS } from "./outputs.ts";
import type { PlanFilesInput } from "./planFile.ts";
import { planFiles } from "./planFiles.ts";
import { tiledPages } from "./tiledPages.ts";

const packaged = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/${path}`, import.meta.url)));
const fonts: FontBytes = {
  regular: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
  bold: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
  fallbacks: [],
};

/** Two panels of a vinyl by a laser or a knife, laid side by side by hand. */
function input(tool: "knife" | "laser", coating: string, name = "Dock vinyl"): PlanFilesInput {
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Pier pouch",
      unit: "mm",
      bags: 1,
      materials: [
        {
          id: "vinyl",
          name,
          kind: "vinyl",
          thickness: 1,
          coating,
          stock: [{ kind: "roll", id: "roll", width: 500 }],
        },
      ],
      panels: [
        {
          id: "front",
          name: "Front",
          material: "vinyl",
          shape: { kind: "rounded", along: 180, across: 120, radius: 20 },
        },
      ],
      straps: [
        {
          id: "loop",
          name: "Loop",
          construction: "three-raw",
          width: "20 mm",
          length: "150 mm",
          materials: { outer: "vinyl" },
        },
      ],
      output: { machine: { bedWidth: 300, bedHeight: 300, grip: 6, tool } },
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const cutList = cutListOf(read.value);
  if (!cutList.ok) throw new Error(JSON.stringify(cutList.problems));
  const { pieces } = cutList.value;
  const problem = layProblemsOf(read.value, cutList.value)[0]!;
  const plan: LayPlan = {
    materialId: "vinyl",
    placements: [
      {
        pieceId: pieces[0]!.id,
        copy: 0,
        stockId: problem.stocks[0]!.id,
        x: 10,
        y: 10,
        turnDeg: 0,
        mirrored: false,
      },
    ],
    unplaced: [],
    uses: [{ stockId: problem.stocks[0]!.id, usedLength: 220, bound: null }],
    evaluations: 0,
    seed: 1,
  };
  const lays = [{ material: read.value.materials[0]!, problem, plan }];
  const mats = matsOfAll(lays, read.value.output.machine);
  return { project: read.value, pieces, straps: cutList.value.straps, lays, fonts, mats };
}

test("same plan, same bytes, in every file", async () => {
  const [one, two] = await Promise.all([0, 1].map(() => planFiles(input("knife", "pu"))));
  expect(one!.files.map((file) => file.name)).toEqual(two!.files.map((file) => file.name));
  one!.files.forEach((file, i) => {
    expect(file.data, file.name).toEqual(two!.files[i]!.data);
  });
  expect(one!.files.map((file) => file.name)).toEqual(
    expect.arrayContaining(["cut-sheet.csv", "patterns-a4.pdf", "dock-vinyl.svg", "dock-vinyl-mat-1.svg"]),
  );
});

test("every kind of file alone is what it is among all, and nothing else is made", async () => {
  const all = await planFiles(input("knife", "pu"));
  const alone = await planFiles(input("knife", "pu"), ["svg"]);
  expect(alone.files).toEqual(all.files.filter(({ name }) => name === "dock-vinyl.svg"));
  const names: string[] = [];
  for (const { id } of OUTPUTS) {
    const { files } = await planFiles(input("knife", "pu"), [id]);
    names.push(...files.map(({ name }) => name));
  }
  expect(names.sort()).toEqual(all.files.map(({ name }) => name).sort());
});

test("a lay of more sheets than anybody tapes has none, and it is told; every other file is there", async () => {
  const given = input("knife", "pu");
  const [lay] = given.lays;
  const [piece] = given.pieces;
  const vast = rectangleRing(0, 0, 90_000, 19_000);
  const contour = ringContour(vast);
  const pieces = [{ ...piece!, contour, outline: solid(vast), lines: [] }, ...given.pieces.slice(1)];
  const art = pieceArt(pieces, "mm", "en");
  const stock = lay!.problem.stocks[0]!;
  const tiled = tiledPages(given.project, { ...lay!, stock }, art)!;
  // 90 m × 19 m on A4 with margins of 10 mm and an overlap of 10 mm: the first sheet covers 190 × 277 mm, every other 180 × 267 more.
  expect(tiled.sheets).toBeGreaterThanOrEqual((89_990 * 18_990) / (180 * 267));
  expect(tiled.pages).toEqual([]);
  const { files, notes } = await planFiles({ ...given, pieces });
  const names = files.map(({ name }) => name);
  expect(names).not.toContain("dock-vinyl-a4.pdf");
  expect(names).toEqual(expect.arrayContaining(["dock-vinyl-one-sheet.pdf", "dock-vinyl.svg", "cut-sheet.pdf"]));
  expect(notes.join(" ")).toContain(`there would be ${tiled.sheets} sheets of A4, and at most 10000 are written`);
});

test("in German every page, sheet and note has decimal commas, also for a printer that is off and paper of any size", async () => {
  const given = input("knife", "pu");
  const output = {
    ...given.project.output,
    paper: { width: 205.5, height: 301.5 },
    testSquare: { x: 99.2, y: 100.4 },
  };
  const german = { ...given, project: { ...given.project, output }, language: "de" as const };
  const stock = given.lays[0]!.problem.stocks[0]!;
  const tiled = tiledPages(german.project, { ...given.lays[0]!, stock }, pieceArt(given.pieces, "mm", "de"), "de");
  const drawn = tiled!.pages.flatMap(({ parts }) =>
    parts.flatMap(({ items }) => items.flatMap((item) => (item.kind === "text" ? [item.text] : []))),
  );
  const { files, notes } = await planFiles(german);
  const told = [...drawn, ...notes, ...files.map(({ about }) => about)];
  const sheet = files.find(({ name }) => name === "cut-sheet.txt")!.data;
  const text = `${told.join("\n")}\n${typeof sheet === "string" ? sheet : new TextDecoder().decode(sheet)}`;
  expect(text).toMatch(/×1,0081 quer/u);
  expect(text).toMatch(/Seiten? 205,5 × 301,5 mm/u);
  expect(text).not.toMatch(/\d\.\d/u);
});

/** Drawing files, of mats and of the whole plan, and what is told beside them. */
async function machineFiles(tool: "knife" | "laser", more: Partial<Material>) {
  const given = input(tool, "pu");
  const material = { ...given.lays[0]!.material, ...more };
  const project = { ...given.project, materials: [material] };
  const { files, notes } = await planFiles({ ...given, project, lays: [{ ...given.lays[0]!, material }] });
  return { drawings: files.map(({ name }) => name).filter((name) => /\.(?:svg|dxf)$/u.test(name)), notes };
}

test.each([
  ["vinyl of unknown coating", { kind: "vinyl", coating: "unknown" }, /nobody has said what it is coated with/u],
  ["vinyl", { kind: "vinyl", coating: "pvc" }, /it is PVC/u],
  ["vinyl that is called uncoated", { kind: "vinyl", coating: "none" }, /it is PVC/u],
  ["woven cloth with a PVC coating", { kind: "woven", coating: "pvc" }, /it is PVC/u],
  ["felt", { kind: "felt", coating: "none", polymer: "unknown" }, /nobody has said what it is made of/u],
  ["foam", { kind: "padding", coating: "none", polymer: "unknown" }, /nobody has said what it is made of/u],
  ["foam of PVC", { kind: "padding", coating: "none", polymer: "pvc" }, /it is PVC/u],
  ["fusible interfacing", { kind: "interfacing", coating: "none", polymer: "unknown" }, /nobody has said/u],
] as const)(
  "a laser gets no file of %s: no mat, no plan, and the reason and remedy are told",
  async (_, more, why) => {
    const { drawings, notes } = await machineFiles("laser", more);
    expect(drawings).toEqual([]);
    const [told] = notes.filter((note) => note.startsWith("No laser file for Dock vinyl"));
    expect(told).toMatch(why);
    expect(told).toMatch(/hydrogen chloride.*Ask the supplier.*or cut it with a knife/su);
    expect(notes.filter((note) => note === told).length).toBe(1);
    // A knife may.
    expect((await machineFiles("knife", more)).drawings).toHaveLength(4);
  },
);

test.each([
  ["vinyl of PU", { kind: "vinyl", coating: "pu" }],
  ["woven cloth", { kind: "woven", coating: "none", polymer: "none" }],
  ["felt of wool", { kind: "felt", coating: "none", polymer: "none" }],
  ["foam of PE", { kind: "padding", coating: "none", polymer: "polyethylene" }],
] as const)("a laser gets files of %s, with the caution of fumes, fire and never alone", async (_, more) => {
  const { drawings, notes } = await machineFiles("laser", more);
  expect(drawings).toHaveLength(4);
  expect(notes.join(" ")).toMatch(/Laser: .*fumes.*fire.*never.*alone/su);
});

test("machine files come with what to mind about the machine, a knife's without the laser's", async () => {
  const { notes } = await machineFiles("knife", { kind: "vinyl", coating: "pu" });
  expect(notes.join(" ")).toMatch(/Cutting machine: .*blade/su);
  expect(notes.join(" ")).not.toMatch(/Laser/u);
});

test("a hostile material name stays in its folder", async () => {
  const { files } = await planFiles(input("knife", "pu", "../../etc/<b>"));
  for (const { name } of files) expect(name).toMatch(/^[\p{L}\p{N}-]+\.(pdf|svg|dxf|txt|csv)$/u);
});

test("the cut sheet tells lay, purchase, thread, order of work and cautions", async () => {
  const sheet = projectSheet(input("knife", "pu"));
  expect(sheet.groups[0]!.lay[0]).toBe("The pieces take 220 mm.");
  // 20 mm at both ends to square the cloth.
  expect(sheet.purchase).toEqual([{ what: "Dock vinyl", amount: "0.26 m" }]);
  expect(sheet.consumables.map(({ what }) => what)).toContain("topstitch thread, half of it on the bobbin");
  expect(sheet.work.map(({ title, steps }) => [title, steps.length > 3])).toEqual([["Loop", true]]);
  expect(sheet.pictures[0]!.title).toMatch(/^Loop: Folded in three/u);
  const { files } = await planFiles(input("knife", "pu"));
  expect(files.find(({ name }) => name === "cut-sheet.txt")!.data).toContain(sheet.work[0]!.steps[1]!);
});

const textsOf = (pages: readonly Page[]): string[] =>
  pages.flatMap(({ parts }) =>
    parts.flatMap(({ items }) => items.flatMap((item) => (item.kind === "text" ? [item.text] : []))),
  );

/** Words that are the same in every language here: names of the input, sheets and units. */
const SHARED = /\b(?:Pier pouch|Dock vinyl|[A-Z]\d|mm|cm|in)\b/gu;

test("pages, and what is said of files and mats, are German throughout when German is asked for", async () => {
  const words = async (language: "en" | "de") => {
    const given = { ...input("laser", "unknown"), language };
    const { project, pieces, lays } = given;
    const twice = { ...pieces[0]!, count: 2, mirroredCount: 1, name: "1" };
    const art = pieceArt([twice], "mm", language);
    const laid = { ...lays[0]!, stock: lays[0]!.problem.stocks[0]! };
    const uneven = { ...project.output, testSquare: { x: 99.2, y: 100.4 } };
    const pages = tiledPages({ ...project, output: uneven }, laid, art, language)!.pages;
    const sheet = layDrawing(laid.stock, laid.plan, art, "one-way", language);
    const title = { project: "", material: "", stock: "", language };
    const roll = rollPages(sheet, title, "one-way", { rollWidth: null, correction: { x: 1, y: 1 } });
    const bands = rollPages(sheet, title, "one-way", { rollWidth: 200, correction: { x: 1, y: 1 } });
    const { files, notes } = await planFiles(given);
    const mats = await planFiles({ ...input("knife", "pu"), language });
    const about = [...files, ...mats.files].map((file) => file.about);
    return [
      ...[...art.values()].map(({ name }) => name),
      ...textsOf([...pages, ...roll, ...bands]),
      ...about,
      ...notes,
    ];
  };
  const [english, german] = await Promise.all([words("en"), words("de")]);
  const same = english!.filter((text) => german!.includes(text) && /\p{L}{2}/u.test(text.replace(SHARED, "")));
  expect(same).toEqual([]);
  expect(german).toContain("1 · 1 von 2");
  expect(german).toContain("1, gespiegelt");
});

test.each(["A5", "A4", "Letter", "A3"])("pictures on a cut sheet of %s are as large as they say", (paper) => {
  const given = input("knife", "pu");
  const project = { ...given.project, output: { ...given.project.output, paper } };
  for (const language of ["en", "de"] as const) {
    const pages = cutSheetPages(projectSheet({ ...given, project, language }), paperOf(paper));
    const pictures = pages.flatMap(({ parts }) => parts).filter(({ x }) => x !== 0);
    expect(pictures.map(({ scaleX, scaleY }) => [scaleX, scaleY])).toEqual([
      [1, 1],
      [1, 1],
    ]);
    const words = textsOf([{ ...pages[0]!, parts: [pictures[0]!] }]).join();
    const times = Number(/(\d+) times|(\d+)-fach/u.exec(words)!.slice(1).find(Boolean));
    const widths = pictures[0]!.items.map((item) => {
      if (item.kind !== "area") return 0;
      const box = contourBox(item.contours[0]!);
      return box.maxX - box.minX;
    });
    // The loop is 20 mm wide.
    expect(Math.max(...widths) / times).toBeCloseTo(20, 1);
  }
});
