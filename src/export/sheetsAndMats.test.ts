import { expect, test } from "vitest";
import { PIECES, PLAN, roundedContour, STOCK, samplePiece } from "../../tests/tools/samplePlan.ts";
import { wordsOn } from "../../tests/tools/writtenWords.ts";
import { pieceArt } from "../core/drawing/lay/pieceArt.ts";
import { contourBox } from "../core/geometry/contourArcs.ts";
import type { LayPiece, LayProblem } from "../core/lay/problem/layProblem.ts";
import { mirrorImageId } from "../core/materials/mirrorImage.ts";
import { readProject } from "../core/project/file/readProject.ts";
import { paperNamed } from "../core/project/papers.ts";
import type { Project } from "../core/project/project.ts";
import { drawnMats, machineMats } from "./machineMats.ts";
import { patternsOf } from "./patterns.ts";
import { patternPages, printerFinding, stocksInUse, tiledPages, tilingOptions, titleOf } from "./tiledPages.ts";

function projectOf(output: object = {}, cloth: object = {}): Project {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Quay satchel" },
      materials: [
        {
          ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.7, grain: "lengthwise" },
          stock: [{ kind: "roll", id: "roll", width: 500 }],
          ...cloth,
        },
      ],
      panels: [
        {
          id: "body",
          name: "Body",
          material: "canvas",
          shape: { kind: "rounded", along: 300, across: 240, radius: 45 },
        },
      ],
      output,
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
const pieces: LayPiece[] = PIECES.map(({ id, outline, count }) => ({
  ...{ id, outline, count, orientations: [{ turnDeg: 0, mirrored: false }], freeTurn: false },
}));
const problem: LayProblem = {
  materialId: "canvas",
  pieces,
  stocks: [STOCK, { ...STOCK, id: "other" }],
  gap: 0,
  margin: 0,
  pinned: [],
};
const clothOf = (project: Project, more: Partial<LayProblem> = {}) => ({
  material: project.materials[0]!,
  problem: { ...problem, ...more },
  plan: PLAN,
});

test("a stock is in use where something lies on it", () => {
  expect(stocksInUse(clothOf(projectOf())).map(({ stock }) => stock.id)).toEqual(["roll"]);
});

test("the sheets are cut by the project's paper, margin, overlap, way and measured square", () => {
  const output = {
    paper: "A3",
    pageMargin: 7,
    overlap: 4,
    orientation: "landscape",
    testSquare: { x: 99.2, y: 100.4 },
  };
  expect(tilingOptions(projectOf(output).output)).toEqual({
    ...{ paper: paperNamed("A3"), margin: 7, overlap: 4, orientation: "landscape" },
    correction: { x: expect.closeTo(100 / 99.2, 9), y: expect.closeTo(100 / 100.4, 9) },
  });
  expect(printerFinding(projectOf().output).kind).toBe("true");
});

test("a sheet's title names a roll by its usable width and what is used of it, a leftover as the shelf does", () => {
  const project = projectOf({ lengths: "cm" });
  const [material] = project.materials;
  const sheet = { usedLength: 631 } as never;
  expect(titleOf(project, material!, STOCK, sheet, "en")).toEqual({
    ...{ project: "Quay satchel", material: "Canvas", language: "en" },
    stock: "48 cm usable width, 63.1 cm used",
  });
  const remnants = projectOf(
    {},
    { stock: [{ kind: "remnant", id: "x", shape: { kind: "rectangle", along: 600, across: 400 } }] },
  );
  const stock = { kind: "remnant", id: "x", outline: pieces[0]!.outline, flaws: [] } as const;
  expect(titleOf(remnants, remnants.materials[0]!, stock, sheet, "de").stock).toBe("Rest, 600 mm × 400 mm");
});

test("the whole lay is on the sheets, or its curved pieces with the rectangles as a list of sizes", () => {
  const art = pieceArt(PIECES, "mm");
  const pagesOf = (project: Project, more: Partial<LayProblem> = {}) => {
    const cloth = clothOf(project, more);
    return tiledPages(project, { ...cloth, stock: STOCK }, art)!;
  };
  const whole = pagesOf(projectOf());
  const curved = pagesOf(projectOf({ sheets: "curved" }));
  expect(curved.sheets).toBeLessThan(whole.sheets);
  for (const { pages, sheets } of [whole, curved])
    expect(pages.filter(({ name }) => /^[A-Z]\d+$/u.test(name))).toHaveLength(sheets);
  const said = (pages: typeof whole.pages) => pages.flatMap((page) => wordsOn(page).map(({ text }) => text));
  expect(said(curved.pages)).toContain("2 × Shoulder strap: 560 mm × 98 mm");
  expect(said(whole.pages).join()).not.toContain("Not on these sheets");
  // A cloth without curved pieces has no sheets then.
  const square = PIECES.filter(({ id }) => id === "strap" || id === "tab");
  const straps = {
    ...PLAN,
    placements: PLAN.placements.filter(({ pieceId }) => square.some(({ id }) => id === pieceId)),
  };
  const cloth = { ...clothOf(projectOf({ sheets: "curved" })), plan: straps, stock: STOCK };
  expect(tiledPages(projectOf({ sheets: "curved" }), cloth, art)).toBeNull();
  // Names keep off the seams: none of the cloth's own words is cut by a sheet's edge where it has room beside.
  const pattern = {
    along: 60,
    across: null,
    firstAlong: 0,
    firstAcross: 0,
    halfDrop: false,
    symmetric: true,
    tolerance: 1,
  };
  const matched = pagesOf(projectOf(), { pattern });
  const patterned = (pages: typeof whole.pages) =>
    pages.some(({ parts }) =>
      parts.some(({ items }) => items.some((item) => item.kind === "area" && item.tone === "pattern")),
    );
  expect([patterned(matched.pages), patterned(whole.pages)]).toEqual([true, false]);
});

const bodyOf = (more: object) => samplePiece("body", roundedContour(300, 240, 45), { name: "Body", ...more });

test("one pattern of each piece that is no rectangle, as it lies on its cloth, with how many are cut and turned over", () => {
  const project = projectOf();
  const turned: LayPiece = {
    ...pieces[1]!,
    orientations: [
      { turnDeg: 90, mirrored: false },
      { turnDeg: 270, mirrored: false },
    ],
  };
  const flipped: LayPiece = {
    ...turned,
    id: mirrorImageId("body"),
    orientations: [{ turnDeg: 0, mirrored: false }],
  };
  const cloth = (...own: LayPiece[]) => ({ material: project.materials[0]!, problem: { ...problem, pieces: own } });
  const both = patternsOf(
    [cloth(turned, flipped)],
    [bodyOf({ count: 2, mirroredCount: 1 }), PIECES[0]!],
    "mm",
    "en",
  );
  expect(both).toHaveLength(1);
  expect(both[0]).toMatchObject({ id: "body", grain: "both", orientation: { turnDeg: 90, mirrored: false } });
  expect([both[0]!.art.detail, both[0]!.art.count, both[0]!.art.name]).toEqual([
    "cut 2 and 1 turned over, Canvas",
    1,
    "Body",
  ]);
  const [alone] = patternsOf([cloth(flipped)], [bodyOf({ count: 0, mirroredCount: 3 })], "mm", "en");
  expect([alone!.id, alone!.art.detail]).toEqual([mirrorImageId("body"), "cut 3, Canvas"]);
  // What is not laid, or is of other cloth, has none; a cloth in layers lies singly on paper.
  expect(patternsOf([cloth()], [bodyOf({})], "mm", "en")).toEqual([]);
  expect(patternsOf([cloth(turned)], [bodyOf({ materialId: "felt" })], "mm", "en")).toEqual([]);
  const singly = { ...cloth(), singly: { ...problem, pieces: [turned] } };
  expect(patternsOf([singly], [bodyOf({})], "mm", "en")).toHaveLength(1);
  const pages = patternPages(project, [clothOf(project)], [...PIECES], "en")!;
  expect(pages.pages.filter(({ name }) => /^[A-Z]\d+$/u.test(name))).toHaveLength(pages.sheets);
  const said = pages.pages.flatMap((page) => wordsOn(page).map(({ text }) => text));
  expect(said).toEqual(expect.arrayContaining(["Patterns · one of each curved piece", "cut 1, Canvas"]));
  expect(patternPages(project, [clothOf(project)], [PIECES[0]!], "en")).toBeNull();
});

const MAT = { ...STOCK, kind: "remnant", id: "mat 1", outline: pieces[3]!.outline } as never;

test("mats are drawn one a bed, pieces too large for it told by name; without a machine, or where a laser must not cut, there are none", () => {
  const machine = { bedWidth: 330, bedHeight: 300, grip: 6, tool: "knife" };
  const project = projectOf({ machine });
  const cloth = clothOf(project) as never;
  const laid = {
    mats: [MAT],
    plan: { ...PLAN, placements: [{ ...PLAN.placements[4]!, stockId: "mat 1", x: 3, y: 4, turnDeg: 0 }] },
    tooLarge: ["strap", "gone"],
  } as never;
  const made = machineMats(cloth, laid, PIECES, project.output);
  expect(made.tooLarge).toEqual(["Shoulder strap", "gone"]);
  expect(made.refusal).toBeNull();
  expect(made.mats.map(({ box }) => [box.maxX, box.maxY])).toEqual([[330, 300]]);
  const cut = made.mats[0]!.items.find((item) => item.kind === "line" && item.role === "cut");
  expect(cut?.kind === "line" && contourBox(cut.contour).minX).toBe(9);
  expect(machineMats(cloth, undefined, PIECES, projectOf().output)).toEqual({
    mats: [],
    tooLarge: [],
    refusal: null,
  });
  expect(() => machineMats(cloth, undefined, PIECES, project.output)).toThrow(/canvas/u);
  const laser = projectOf({ machine: { ...machine, tool: "laser" } }, { kind: "vinyl", coating: "pvc" });
  const refused = machineMats(clothOf(laser) as never, laid, PIECES, laser.output);
  expect([refused.mats, refused.tooLarge]).toEqual([[], []]);
  expect(refused.refusal).toMatch(/^No laser file for Canvas/u);
  const names = drawnMats(
    { ...made, mats: [made.mats[0]!, made.mats[0]!] },
    "Quay satchel",
    "Canvas",
    "canvas",
    "en",
  );
  expect(names.map(({ stem, title }) => [stem, title])).toEqual([
    ["canvas-mat-1", "Quay satchel: Canvas"],
    ["canvas-mat-2", "Quay satchel: Canvas"],
  ]);
  expect(names[0]!.about).toMatch(/1.*2/u);
  expect(names[1]!.about).toMatch(/2.*2/u);
});

test("edges that two pieces share are cut once on a mat where that is asked for and the kerf is 0", () => {
  const laid = {
    mats: [{ ...(MAT as object), outline: pieces[1]!.outline }],
    plan: {
      ...PLAN,
      placements: [0, 1].map((copy) => ({
        ...PLAN.placements[4]!,
        stockId: "mat 1",
        x: 10 + 60 * copy,
        y: 4,
        turnDeg: 0,
        copy,
      })),
    },
    tooLarge: [],
  } as never;
  const closed = (output: object, machine: object = {}) => {
    const project = projectOf({
      ...output,
      machine: { bedWidth: 330, bedHeight: 300, grip: 6, tool: "knife", ...machine },
    });
    const { mats } = machineMats(clothOf(project) as never, laid, PIECES, project.output);
    return mats[0]!.items.filter((item) => item.kind === "line" && item.role === "cut" && item.contour.closed)
      .length;
  };
  expect(closed({ sharedEdges: "each" })).toBe(2);
  expect(closed({ sharedEdges: "once" })).toBe(1);
  expect(closed({ sharedEdges: "once" }, { kerf: 0.2 })).toBe(2);
});
