import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  arrange,
  BAG_BODIES,
  buildPanel,
  checkPlan,
  chooseEngines,
  cutListOf,
  FIT_TOLERANCE,
  type LayPlan,
  layProblemsOf,
  PANEL_WORDS,
  patternPanels,
  projectPanel,
  type Result,
  readPattern,
  readProject,
  SHAPE_IDS,
  SHAPES,
  type Sizes,
  seamLengths,
  sizePanels,
  startBag,
  usualBag,
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

test("the library makes every shape from its usual measures, each with its dimensions placed", () => {
  expect(SHAPE_IDS.length).toBeGreaterThanOrEqual(25);
  for (const id of SHAPE_IDS) {
    const shape = SHAPES[id];
    const usual = Object.fromEntries(shape.dimensions.map((dimension) => [dimension.id, dimension.usual])) as Sizes;
    const made = shape.outline(usual);
    if (!("contour" in made)) throw new Error(`${id}: ${made.dimension}`);
    expect(made.contour.vertices.length, id).toBeGreaterThanOrEqual(6);
    expect(shape.places(usual).length, id).toBeGreaterThan(0);
  }
});

test("the library makes a bag of every body whose seams meet, and builds its panels", () => {
  const project = must(readProject(text));
  for (const body of BAG_BODIES) {
    const bag = startBag(project, usualBag(body, false), PANEL_WORDS.en);
    const sized = must(sizePanels(bag.panels, bag.measures));
    for (const { over } of must(seamLengths(sized, bag.seams ?? [])))
      expect(Math.abs(over), body).toBeLessThan(0.05);
    for (const panel of sized) expect(must(buildPanel(panel)).length, panel.panel.id).toBeGreaterThan(0);
  }
});

test("the library reads a maker's own drawing into a panel of a project", async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><path id="Front" d="M10 10H190V90H10Z"/></svg>';
  const options = { tolerance: FIT_TOLERANCE, mend: new Set<never>(), roles: new Map() };
  const read = await readPattern({ bytes: new TextEncoder().encode(svg), options });
  const [found] = patternPanels(read);
  const panel = projectPanel(found!, { id: "front", materialId: "sailcloth", count: 2, seamAllowance: 10 });
  const [piece] = must(buildPanel(must(sizePanels([panel]))[0]!));
  // What is drawn as a cut line has its seam allowance in it: 180 by 80 mm.
  const xs = piece!.outline.outer.filter((_, i) => i % 2 === 0);
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(180, 6);
  expect(piece!.count).toBe(2);
});
