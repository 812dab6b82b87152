import { expect, test } from "vitest";
import { ringBox } from "../geometry/box.ts";
import { layProblemsOf } from "../job/layProblems.ts";
import { cutListOf } from "./cutList.ts";
import { readProject } from "./file/readProject.ts";

const cloth = {
  id: "cloth",
  kind: "woven",
  thickness: "0.5 mm",
  stock: [
    { kind: "roll", id: "roll", width: "150 cm", selvedge: 10 },
    {
      kind: "roll",
      id: "end",
      width: "150 cm",
      length: "2 m",
      squaring: 20,
      flaws: [{ at: [520, 110], shape: { kind: "rectangle", along: 30, across: 40 } }],
    },
    { kind: "remnant", id: "left", count: 2, shape: { kind: "rectangle", along: 500, across: 400 } },
  ],
};
const panel = { id: "panel", material: "cloth", shape: { kind: "rectangle", along: 100, across: 200 } };

const build = (more: object, material: object = {}) => {
  const file = {
    laywright: 1,
    name: "Test",
    bags: 2,
    materials: [{ ...cloth, ...material }],
    panels: [panel],
    ...more,
  };
  const project = readProject(JSON.stringify(file));
  if (!project.ok) throw new Error(JSON.stringify(project.problems));
  const cut = cutListOf(project.value);
  return { project: project.value, cut };
};
const pieces = (more: object, material: object = {}) => {
  const { cut } = build(more, material);
  if (!cut.ok) throw new Error(JSON.stringify(cut.problems));
  return cut.value.pieces.map((piece) => {
    const box = ringBox(piece.outline.outer);
    return { id: piece.id, count: piece.count, mirrored: piece.mirroredCount, along: box.maxX, across: box.maxY };
  });
};

test("counts are for all bags", () => {
  expect(pieces({ panels: [{ ...panel, count: 3, mirrored: 1 }] })).toEqual([
    { id: "panel", count: 6, mirrored: 2, along: 100, across: 200 },
  ]);
});

// Own arithmetic: cut = finished ÷ (1 − s): 100 at 3 % is 103.09, at 5 % is 105.26, not 103 and 105.
test("pieces are cut larger for the wash, along and across their own cloth", () => {
  const shrinkage = { lengthwise: "3 %", crosswise: "5 %" };
  const size = (grain: string) => pieces({ panels: [{ ...panel, grain }] }, { shrinkage })[0];
  expect(size("lengthwise")).toMatchObject({ along: expect.closeTo(103.09, 2), across: expect.closeTo(210.53, 2) });
  expect(size("crosswise")).toMatchObject({ along: expect.closeTo(105.26, 2), across: expect.closeTo(206.19, 2) });
  const { cut } = build({ panels: [{ ...panel, grain: "either" }] }, { shrinkage });
  expect(cut).toMatchObject({ value: { heldLengthwise: ["panel"], pieces: [{ grain: "lengthwise" }] } });
  expect(pieces({}, { shrinkage: { ...shrinkage, when: "before-cutting" } })[0]).toMatchObject({ along: 100 });
});

test("a strap and a panel whose piece ids would meet keep apart", () => {
  const strap = { id: "a", construction: "fourfold", width: 25, length: 500, materials: { outer: "cloth" } };
  const ids = pieces({ straps: [strap], panels: [{ ...panel, id: "a-outer" }] }).map((piece) => piece.id);
  expect(ids).toEqual(["a-outer", "a-outer-2"]);
});

test("problems of straps and panels are told together, at their places", () => {
  const strap = { id: "s", construction: "fourfold", width: 1, length: 500, materials: { outer: "cloth" } };
  const dented = {
    kind: "outline",
    points: [
      [0, 0],
      [40, 0],
      [60, 20],
      [80, 0],
      [100, 50],
      [0, 50],
    ],
  };
  const { cut } = build({ straps: [strap], panels: [{ ...panel, shape: dented, fold: 0 }] });
  const paths = cut.ok ? [] : cut.problems.map((problem) => problem.path);
  expect(paths).toEqual([expect.stringMatching(/^straps\[0\]/u), "panels[0].fold"]);
});

test("too many pieces are refused before any is laid", () => {
  const { cut } = build({ bags: 10_000, panels: [{ ...panel, count: 1000 }] });
  expect(cut).toMatchObject({ problems: [{ code: "too-many-pieces", count: 10_000_000 }] });
});

test("leftovers first, limited rolls next, the open roll last; selvedge and squared ends are off", () => {
  const { project, cut } = build({ gap: 2, margin: 5, panels: [{ ...panel, mirrored: 1 }] });
  if (!cut.ok) throw new Error("a cut list was expected");
  const [problem] = layProblemsOf(project, cut.value);
  expect(problem!.stocks.map((stock) => stock.id)).toEqual(["left", "left (2)", "end", "roll"]);
  expect(problem!.stocks[2]).toMatchObject({ width: 1500, length: 1960 });
  expect([...(problem!.stocks[2]!.flaws[0]!.outer ?? [])].slice(0, 2)).toEqual([500, 110]);
  expect(problem!.stocks[3]).toMatchObject({ width: 1480, length: null });
  expect(problem!.pieces.map(({ id, count }) => [id, count])).toEqual([
    ["panel", 2],
    ["panel~mirrored", 2],
  ]);
  expect(problem).toMatchObject({ gap: 2, margin: 5 });
});

test("cloth that is washed first is narrower when it is laid out", () => {
  const shrinkage = { lengthwise: "10 %", crosswise: "5 %", when: "before-cutting" };
  const { project, cut } = build({}, { shrinkage });
  const [problem] = cut.ok ? layProblemsOf(project, cut.value) : [];
  expect(problem!.stocks[3]).toMatchObject({ width: 1480 * 0.95 });
  expect(problem!.stocks[2]).toMatchObject({ length: 1960 * 0.9 });
});

test("pins go along while their piece and stock are there", () => {
  const pin = { material: "cloth", stock: "roll", piece: "panel", copy: 1, x: 10, y: 20, turn: 180 };
  const { project, cut } = build({ pins: [pin, { ...pin, copy: 2 }, { ...pin, stock: "gone" }] });
  const [problem] = cut.ok ? layProblemsOf(project, cut.value) : [];
  expect(problem!.pinned).toEqual([
    { stockId: "roll", pieceId: "panel", copy: 1, x: 10, y: 20, turnDeg: 180, mirrored: false },
  ]);
});

test("a strap that its backing keeps lengthwise, on cloth used crosswise only, is a problem and no crash", () => {
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "p",
      unit: "mm",
      materials: [{ id: "m", kind: "vinyl", thickness: 1, backing: "knit", grain: "crosswise" }],
      straps: [{ id: "s", construction: "three-raw", width: 20, length: 500, materials: { outer: "m" } }],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const list = cutListOf(read.value);
  expect(list.ok ? [] : list.problems).toEqual([
    { code: "grain-conflict", path: "straps[0].grain", wish: "lengthwise", materialId: "m", rule: "crosswise" },
  ]);
});
