import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { PLAN, STOCK } from "../../../tests/tools/samplePlan.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { USUAL_OUTPUT } from "../../core/project/outputSettings.ts";
import type { Project } from "../../core/project/project.ts";
import { layWords } from "./layWords.ts";

const project: Project = {
  name: "Quay satchel",
  unit: "mm",
  bags: 1,
  currency: "EUR",
  materials: [],
  straps: [],
  panels: [],
  gap: 0,
  margin: 0,
  pins: [],
  output: { paper: "A4", ...USUAL_OUTPUT, lengths: "mm" },
};
const material = sampleMaterial("canvas");
const problem = { materialId: "canvas", pieces: [], stocks: [STOCK], gap: 0, margin: 0, pinned: [] };
const atBound: LayPlan = { ...PLAN, placements: [], uses: [{ stockId: "roll", usedLength: 630, bound: 630 }] };
const first = (plan: LayPlan) => layWords({ material, problem, plan }, project, "en")[0];

test("a length is called proven only when every piece has a place", () => {
  expect(first(atBound)).toBe("The pieces take 630 mm: proven shortest.");
  const missing = [{ pieceId: "body", count: 1, reason: "too-long-for-width" as const }];
  expect(first({ ...atBound, unplaced: missing })).toBe("The pieces that fit take 630 mm.");
});
