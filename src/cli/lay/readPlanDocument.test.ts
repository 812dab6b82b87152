import { expect, test } from "vitest";
import { InputProblem } from "../inOut/problemReport.ts";
import { readPlanDocument } from "./readPlanDocument.ts";

function wrong(data: unknown): string[] {
  try {
    readPlanDocument(data, "plan.json");
  } catch (error) {
    if (error instanceof InputProblem) return error.told("en").map(({ path }) => path);
    throw error;
  }
  return [];
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
