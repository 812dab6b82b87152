import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { ringBox } from "../../core/geometry/box.ts";
import { layProblemsOf } from "../../core/job/layProblems.ts";
import { inOtherWay, type OtherWay } from "../../core/job/otherWays.ts";
import type { WeighedWay } from "../../core/job/weighWays.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { cutListOf } from "../../core/project/cutList.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import type { Weighed } from "./protocol.ts";
import { weigh } from "./weigh.ts";

function demo(): Project {
  const read = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  // Key straps alone: few pieces, and the leftover holds all of them.
  const straps = read.value.straps.filter(({ id }) => id === "key strap");
  return { ...read.value, straps, panels: [], matches: [], centred: [] };
}

function weighed(project: Project, wanted: (way: OtherWay) => boolean): WeighedWay | undefined {
  const weighing = weigh({ kind: "ways", project, materialId: "sailcloth" });
  for (let step = weighing.next(); ; step = weighing.next())
    if (step.done) return (step.value as readonly WeighedWay[]).find(({ way }) => wanted(way));
}

test("a leftover is weighed in metres of roll, kept back and used again", () => {
  const roll = weighed(demo(), ({ kind }) => kind === "roll");
  // Three strips of 250 by 78.3 mm with their gaps and margins side by side, from the demo's own sums.
  expect(roll?.length).toBeGreaterThan(78);
  expect(roll?.length).toBeLessThan(270);
  const bought = inOtherWay(demo(), "sailcloth", { kind: "roll" });
  expect(weighed(bought, ({ kind }) => kind === "leftover")).toMatchObject({
    way: { kind: "leftover", stockId: "sailcloth leftover", use: true },
    length: 0,
  });
});

test("what a plan leaves is told of every stock that it touches, within its cloth and clear of its piece", () => {
  const project = demo();
  const material = project.materials.find(({ id }) => id === "sailcloth")!;
  const list = cutListOf(project);
  if (!list.ok) throw new Error("the demo has no cut list");
  const problem = layProblemsOf(project, list.value).find(({ materialId }) => materialId === "sailcloth")!;
  const roll = problem.stocks.find(({ kind }) => kind === "roll")!;
  const piece = problem.pieces[0]!;
  const box = ringBox(piece.outline.outer);
  const placement = { pieceId: piece.id, copy: 0, stockId: roll.id, x: 20 - box.minX, y: 20 - box.minY };
  const plan: LayPlan = {
    materialId: "sailcloth",
    placements: [{ ...placement, turnDeg: 0, mirrored: false }],
    unplaced: [],
    uses: [{ stockId: roll.id, usedLength: 400, bound: null }],
    evaluations: 0,
    seed: 1,
  };
  const step = weigh({ kind: "offcuts", material, problem, plan, rules: project }).next();
  const offcuts = step.value as Weighed["offcuts"];
  expect(step.done).toBe(true);
  expect(offcuts.length).toBeGreaterThan(0);
  const far = { x: 20 + box.maxX - box.minX, y: 20 + box.maxY - box.minY };
  for (const { x, y, along, across } of offcuts) {
    const isClear = x >= far.x || y >= far.y || x + along <= 20 || y + across <= 20;
    expect(isClear).toBe(true);
  }
});
