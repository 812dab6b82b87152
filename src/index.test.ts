import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  arrange,
  checkPlan,
  chooseEngines,
  cutListOf,
  type LayPlan,
  layProblemsOf,
  type Result,
  readProject,
} from "./index.ts";

const text = readFileSync(new URL("../fixtures/harbour-bags.json", import.meta.url), "utf8");

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

test("the library alone takes the demo project, one bag of it, from its file to checked plans", () => {
  const project = { ...must(readProject(text)), bags: 1 };
  const cutList = must(cutListOf(project));
  const problems = layProblemsOf(project, cutList);
  expect(problems.length).toBe(project.materials.length);
  for (const problem of problems) {
    const engines = (job: Parameters<typeof chooseEngines>[0]) => chooseEngines(job, "free");
    const search = arrange(problem, engines, { evaluations: 1_000 }, 1);
    let step = search.next();
    while (!step.done) step = search.next();
    const plan: LayPlan = step.value;
    expect(checkPlan(problem, plan)).toEqual([]);
    const wanted = problem.pieces.reduce((sum, piece) => sum + piece.count, 0);
    expect(plan.placements.length, problem.materialId).toBe(wanted);
  }
});
