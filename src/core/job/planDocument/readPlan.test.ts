import { expect, test } from "vitest";
import { readPlanDocument } from "./readPlan.ts";

function wrong(data: unknown): string[] {
  const read = readPlanDocument(data);
  return read.ok ? [] : read.faults.map(({ path }) => path);
}

const material = {
  materialId: "canvas",
  name: "Canvas",
  cuttingGap: 0,
  edgeMargin: 0,
  stock: [{ id: "roll", kind: "roll", width: 500, length: null, flaws: [], lengthUsed: 0, bound: null }],
  pieces: [],
  placed: [],
  unplaced: [],
  pinned: [],
};

test("every wrong value of a plan file is told, once, and not what lies inside it", () => {
  expect(wrong({ laywrightPlan: 1, seed: 1, materials: [material] })).toEqual([]);
  const spoiled = {
    ...material,
    cuttingGap: "2 mm",
    stock: "none",
    placed: [{ pieceId: 7, copy: 0, stockId: "roll", x: null, y: 0, turnDeg: 0, mirrored: 0 }, 5],
  };
  expect(wrong({ laywrightPlan: 2, seed: "x", materials: [material, spoiled] })).toEqual([
    "laywrightPlan",
    "seed",
    "materials[1].stock",
    "materials[1].cuttingGap",
    "materials[1].placed[0].pieceId",
    "materials[1].placed[0].x",
    "materials[1].placed[0].mirrored",
    "materials[1].placed[1]",
  ]);
  expect(wrong([])).toEqual([""]);
});

test("what a value should have been is told", () => {
  const line = [
    [0, 0],
    [1, 0],
  ];
  const piece = {
    id: "a",
    count: 1,
    outline: { points: line, holes: [[[0], [1, 1, 1], [2, 2]]] },
    turns: [],
    freeTurn: false,
  };
  const spoiled = {
    ...material,
    stock: [{ id: "roll", kind: "bolt" }],
    pieces: [piece, { ...piece, outline: 3 }],
    unplaced: [{ pieceId: "a", count: 1, reason: "none" }],
  };
  const read = readPlanDocument({ laywrightPlan: 1, seed: 1, materials: [spoiled] });
  expect(read).toEqual({
    ok: false,
    faults: [
      { path: "materials[0].stock[0].kind", wanted: "stock-kind" },
      { path: "materials[0].pieces[0].outline.points", wanted: "outline" },
      { path: "materials[0].pieces[0].outline.holes[0][0]", wanted: "point" },
      { path: "materials[0].pieces[0].outline.holes[0][1]", wanted: "point" },
      { path: "materials[0].pieces[1].outline", wanted: "object" },
      { path: "materials[0].unplaced[0].reason", wanted: "reason" },
    ],
  });
});
