import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";

const page = readFileSync(new URL("../../docs/how-to/write-a-project-file.md", import.meta.url), "utf8");
const demo = readFileSync(new URL("../../fixtures/harbour-bags.json", import.meta.url), "utf8");

test("the example of the how-to is a project that can be laid out", () => {
  const [, example] = /```json\n(\{\n {2}"laywright"[\s\S]*?)```/u.exec(page)!;
  const project = readProject(example!);
  const cut = project.ok ? cutListOf(project.value) : project;
  expect(cut.ok ? [] : cut.problems).toEqual([]);
  if (project.ok && cut.ok) expect(layProblemsOf(project.value, cut.value)).toHaveLength(1);
});

test("the demo project has every kind of stock, mirrored pairs, folds and interfacing, and can be laid out", () => {
  const project = readProject(demo);
  const cut = project.ok ? cutListOf(project.value) : project;
  expect(cut.ok ? [] : cut.problems).toEqual([]);
  if (!project.ok || !cut.ok) return;
  const problems = layProblemsOf(project.value, cut.value);
  expect(problems.map((problem) => problem.materialId)).toEqual(["sailcloth", "faux", "lining", "fusible", "hide"]);
  expect(new Set(problems.flatMap(({ stocks }) => stocks.map(({ kind }) => kind)))).toEqual(
    new Set(["remnant", "roll"]),
  );
  expect(new Set(project.value.straps.map(({ construction }) => construction)).size).toBeGreaterThanOrEqual(4);
  const bent = cut.value.pieces.filter((piece) =>
    piece.contour.vertices.some((bulge, i) => i % 3 === 2 && bulge !== 0),
  );
  expect(bent.length).toBeGreaterThanOrEqual(5);
});
