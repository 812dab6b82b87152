import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { jobOf } from "../../core/job/projectJob.ts";
import { cheapestPlan } from "../../core/job/stocks/cheapestPlan.ts";
import { otherKinds } from "../../core/job/stocks/openedStocks.ts";
import { inOneGo } from "../../core/lay/search/breath.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import { loopback } from "../../worker/loopback.ts";
import type { WorkerLine } from "../../worker/protocol.ts";
import { type SearchPool, searchPool } from "../../worker/searchPool.ts";
import type { FoundPlan } from "../storage/planStore.ts";
import type { ChooseStock, LayBoard } from "./layBoard.ts";
import { createLayBoard } from "./lays.ts";

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

/** A board whose search does nothing but spend what it is told to, and what is kept of it. */
async function spendingBoard(project: Project) {
  const searched: string[] = [];
  const kept: FoundPlan[] = [];
  let spent = 0;
  const more: SearchPool = {
    threads: 1,
    search: ({ problem }) => {
      searched.push(problem.materialId);
      spent = 0;
      return { result: new Promise(() => {}), stop: () => {}, spent: () => spent };
    },
    close: () => {},
  };
  let time = 0;
  const board = createLayBoard(
    () => ({ first: searchPool([loopback(setImmediate)]), more }),
    () => time,
    (found) => kept.push(found),
  );
  const spend = async (evaluations: number, ms = 60_000) => {
    const running = searched.length;
    spent = evaluations;
    time += ms;
    vi.advanceTimersByTime(1000);
    return searched.length > running;
  };
  board.follow(project, "en");
  await allPlanned(board);
  return { board, searched, kept, spend };
}

test("a search rests after so much effort without a better plan, not after so long; every cloth has its turn and comes again", async () => {
  vi.useFakeTimers({ toFake: ["setInterval"] });
  const { board, searched, kept, spend } = await spendingBoard(demo());
  const open = [...board.lays.get().values()].filter(({ finding }) => finding !== "proven");
  expect(open.length).toBeGreaterThan(1);
  // A minute without effort ends nothing.
  expect(await spend(1000)).toBe(false);
  // A short turn each first, and nobody rests after that.
  for (let i = 0; i < open.length; i++) await spend(700_000);
  expect(new Set(searched).size).toBe(open.length);
  expect([...board.lays.get().values()].filter(({ finding }) => finding === "rested")).toEqual([]);
  for (let i = 0; i < open.length; i++) await spend(50_000_000);
  expect([...board.lays.get().values()].every(({ finding }) => finding === "rested" || finding === "proven")).toBe(
    true,
  );
  // What was found is known at the next sitting: the same plan, and nothing is searched again.
  const next = await spendingBoard({ ...demo(), straps: [] });
  next.board.recall(kept);
  next.board.follow(demo(), "en");
  await allPlanned(next.board);
  for (const [id, { plan, finding }] of next.board.lays.get()) {
    const before = board.lays.get().get(id);
    if (before?.finding !== "rested") continue;
    expect(finding).toBe("rested");
    expect(plan?.placements).toEqual(before.plan?.placements);
  }
  vi.useRealTimers();
});

test("a search of pieces of many corners looks for a while, however many placements were tried", async () => {
  vi.useFakeTimers({ toFake: ["setInterval"] });
  const points = Array.from({ length: 100 }, (_, k) => {
    const turn = (k * Math.PI) / 50;
    return [200 + 150 * Math.cos(turn), 200 + (k % 2 === 0 ? 100 : 95) * Math.sin(turn)];
  });
  const cloth = {
    id: "felt",
    name: "Felt",
    kind: "felt",
    thickness: 3,
    stock: [{ kind: "roll", id: "r", width: 1000 }],
  };
  const shape = { kind: "outline", points };
  const panel = { id: "flap", name: "Flap", material: "felt", count: 20, seamAllowance: 0, shape };
  const file = { laywright: 1, name: "Flaps", gap: 0, margin: 0, materials: [cloth], panels: [panel] };
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read));
  const { board, spend, kept } = await spendingBoard(read.value);
  const finding = () => board.lays.get().get("felt")?.finding;
  // 2,000 corners: twenty seconds.
  await spend(50_000_000, 19_000);
  expect(finding()).toBe("finding");
  // Broken off there, the search goes on at the next sitting.
  board.hush(true);
  await spend(50_000_000, 1000);
  expect(finding()).toBe("waiting");
  expect(kept.at(-1)?.evaluations).toBe(50_000_000);
  const next = await spendingBoard({ ...read.value, bags: 2 });
  next.board.recall(kept);
  next.board.follow(read.value, "en");
  expect(next.board.lays.get().get("felt")?.finding).toBe("finding");
  await next.spend(60_000_000, 20_500);
  expect(next.board.lays.get().get("felt")?.finding).toBe("rested");
  vi.useRealTimers();
});

test("a plan that something was saved from is held, and let go when a better one is asked for", async () => {
  const project = demo();
  const board = await plannedBoard(project);
  const [id, { plan, job }] = [...board.lays.get()].find(([, { finding }]) => finding !== "proven")!;
  board.hold(id);
  board.offer(job.problem, { ...plan!, uses: plan!.uses.map((use) => ({ ...use, usedLength: 1 })) });
  expect(board.lays.get().get(id)).toMatchObject({ finding: "held", plan });
  board.resume(id);
  expect(board.lays.get().get(id)?.finding).not.toBe("held");
});

/** Two panels of 500 × 900 off a narrow roll at 10 a metre or a wide one. */
function twoRolls(wide: number): Project {
  const roll = { kind: "roll", selvedge: 0, squaring: 0 };
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Quay", unit: "mm", bags: 1, currency: "EUR", gap: 0, margin: 0 },
      materials: [
        {
          ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, price: { amount: 10, per: "m" } },
          stock: [
            { ...roll, id: "narrow", width: 1000 },
            { ...roll, id: "wide", width: 2000, price: { amount: wide, per: "m" } },
          ],
        },
      ],
      panels: [
        {
          ...{ id: "front", material: "canvas", count: 2, seamAllowance: 0, grain: "lengthwise" },
          shape: { kind: "rectangle", along: 500, across: 900 },
        },
      ],
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

// By hand: the narrow roll takes 1 m for 10.00, the wide one half a metre for half its price.
test("of two rolls the one for least money is cut into, better plans are looked for on it, and prices change it", async () => {
  const chosen: string[] = [];
  const choose: ChooseStock = (project, materialId) => {
    chosen.push(materialId);
    const lay = jobOf(project).lays.find(({ material }) => material.id === materialId)!;
    const search = { mode: "free", seed: 1, evaluations: 2000 } as const;
    const { best, others } = inOneGo(cheapestPlan(lay.material, lay.problem, project, search));
    const choice = { plan: best.plan, others: otherKinds(lay.material, best.opened, others) };
    return { result: Promise.resolve(choice), stop: () => {} };
  };
  const searched: string[][] = [];
  const more: SearchPool = {
    threads: 1,
    search: ({ problem }) => {
      searched.push(problem.stocks.map(({ id }) => id));
      return { result: new Promise(() => {}), stop: () => {}, spent: () => 0 };
    },
    close: () => {},
  };
  const board = createLayBoard(
    () => ({ first: searchPool([loopback(setImmediate)]), more }),
    () => 0,
    () => {},
    choose,
  );
  const opened = async (project: Project) => {
    board.follow(project, "en");
    const state = () => board.lays.get().get("canvas")!;
    await vi.waitUntil(() => state().choice !== null, { timeout: 60_000 });
    const used = state().plan!.uses.filter(({ usedLength }) => usedLength > 0);
    return { used: used.map(({ stockId }) => stockId), others: state().choice!.others };
  };
  expect(await opened(twoRolls(12))).toEqual({
    used: ["wide"],
    others: [{ opened: ["narrow"], toPay: 1000, leftOut: 0 }],
  });
  expect(searched.at(-1)).toEqual(["wide"]);
  // Nothing but a price changed, and it is chosen anew.
  expect(await opened(twoRolls(24))).toEqual({
    used: ["narrow"],
    others: [{ opened: ["wide"], toPay: 1200, leftOut: 0 }],
  });
  expect(searched.at(-1)).toEqual(["narrow"]);
  expect(chosen).toHaveLength(2);
});
