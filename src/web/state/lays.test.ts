import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import { loopback } from "../../worker/loopback.ts";
import type { WorkerLine } from "../../worker/protocol.ts";
import { searchPool } from "../../worker/searchPool.ts";
import { createLayBoard, type LayBoard } from "./lays.ts";

/** One bag of the demo: all its materials, a third of its pieces. */
function demo(): Project {
  const read = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  return { ...read.value, bags: 1 };
}

/** A worker in the middle of a turn that never ends. */
const busy = (): WorkerLine => ({ send: () => {}, listen: () => {}, close: () => {} });

const allPlanned = async (board: LayBoard) => {
  while ([...board.lays.get().values()].some(({ plan }) => plan === null))
    await new Promise((resolve) => setImmediate(resolve));
};

/** A board that has a plan of every material, while the worker that improves them is busy. */
async function plannedBoard(project: Project): Promise<LayBoard> {
  const pools = { first: searchPool([loopback(setImmediate)]), more: searchPool([busy()]) };
  const board = createLayBoard(
    () => pools,
    () => 0,
  );
  board.follow(project, "en");
  await allPlanned(board);
  return board;
}

test("a first plan comes though the worker that improves them is busy, and an edit of one material leaves the others' plans", async () => {
  const project = demo();
  const board = await plannedBoard(project);
  const before = board.lays.get();
  const strap = project.straps[0]!;
  board.follow({ ...project, straps: [{ ...strap, count: strap.count + 1 }, ...project.straps.slice(1)] }, "en");
  const changed = [...board.lays.get()].filter(([id, { plan }]) => plan !== before.get(id)?.plan).map(([id]) => id);
  expect(changed.length).toBeGreaterThan(0);
  expect(changed.length).toBeLessThan(before.size);
  await allPlanned(board);
  expect(board.lays.get().size).toBe(before.size);
});

test("undo brings back the plan that was there, at once, though another was taken in between", async () => {
  const project = demo();
  const board = await plannedBoard(project);
  const [id, { plan }] = [...board.lays.get()][0]!;
  const taken = { ...plan!, seed: 99 };
  board.showMoved(id, taken);
  board.follow({ ...project, pins: taken.placements.map((placement) => ({ materialId: id, ...placement })) }, "en");
  expect(board.lays.get().get(id)?.plan).toBe(taken);
  board.follow(project, "en");
  expect(board.lays.get().get(id)?.plan).toBe(plan);
});
