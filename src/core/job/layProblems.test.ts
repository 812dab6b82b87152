import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { isCutBySize } from "../materials/cutPiece.ts";
import { cutListOf } from "../project/cutList.ts";
import { readProject } from "../project/file/readProject.ts";
import { writeProject } from "../project/file/writeProject.ts";
import { layProblemsOf } from "./layProblems.ts";

const file = JSON.parse(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));

function withTilt(tilt: unknown) {
  const materials = file.materials.map((material: { id: string }) =>
    material.id === "sailcloth" ? { ...material, tilt } : material,
  );
  return readProject(JSON.stringify({ ...file, materials }));
}

test("shaped panels of a material may lie as far off the grain as it says; straps and rectangles lie true", () => {
  const read = withTilt(2);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const again = readProject(writeProject(read.value));
  expect(again.ok && again.value.materials.find(({ id }) => id === "sailcloth")?.tilt).toBe(2);
  const list = cutListOf(read.value);
  if (!list.ok) throw new Error("no cut list");
  const lay = layProblemsOf(read.value, list.value).find(({ materialId }) => materialId === "sailcloth")!;
  const kinds = lay.pieces.map(({ id, tilt }) => {
    const piece = list.value.pieces.find((one) => id.startsWith(one.id))!;
    return { isShaped: piece.kind === "panel" && !isCutBySize(piece.outline), tilt };
  });
  expect(new Set(kinds.map(({ isShaped }) => isShaped))).toEqual(new Set([true, false]));
  for (const { isShaped, tilt } of kinds) expect(tilt).toBe(isShaped ? 2 : undefined);
});

test("more than a few degrees off the grain is refused with its place", () => {
  const read = withTilt(45);
  expect(read.ok).toBe(false);
  if (!read.ok) expect(read.problems.map(({ path }) => path)).toEqual(["materials[0].tilt"]);
});
