// Ruler cuts carried out by hand: a table of 300 × 200 mm, two strips of 300 × 98 and 300 × 98 mm, 4 mm between them.
import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { RulerCuts } from "../alternatives/layFigures.ts";
import { rulerCuts } from "../alternatives/layFigures.ts";
import type { CutStep } from "../boxes/cuts/cutSequence.ts";
import type { LayPlan, LayProblem } from "../problem/layProblem.ts";
import { checkCuts } from "./checkCuts.ts";

const remnant = { kind: "remnant" as const, id: "rest", outline: solid(rectangleRing(0, 0, 300, 200)), flaws: [] };
const problem: LayProblem = {
  materialId: "cloth",
  pieces: [
    {
      id: "strip",
      outline: solid(rectangleRing(0, 0, 300, 98)),
      count: 2,
      orientations: [{ turnDeg: 0, mirrored: false }],
      freeTurn: false,
    },
  ],
  stocks: [remnant],
  gap: 0,
  margin: 0,
  pinned: [],
  leastStrip: 10,
};
const at = (copy: number, y: number) => ({
  ...{ pieceId: "strip", copy, stockId: "rest", x: 0, y, turnDeg: 0, mirrored: false },
});
const boxes = { below: { x: 0, y: 0, dx: 300, dy: 98 }, between: { x: 0, y: 98, dx: 300, dy: 4 } };
const above = { x: 0, y: 102, dx: 300, dy: 98 };
const whole = { kind: "cloth" as const, name: "", box: { x: 0, y: 0, dx: 300, dy: 200 } };
const first = { kind: "piece" as const, box: boxes.below, piece: 0 };
const second = { kind: "piece" as const, box: above, piece: 1 };
const rest = { kind: "cloth" as const, name: "", box: { x: 0, y: 98, dx: 300, dy: 102 } };
const straighten: CutStep = {
  ...{ number: 1, kind: "straighten", cloth: whole, at: 0, setting: 0, sameSetting: false, off: null, rest: whole },
};
const rip = (number: number, cut: Pick<CutStep, "cloth" | "at" | "off" | "rest">): CutStep => ({
  ...{ number, kind: "rip", setting: cut.at, sameSetting: false },
  ...cut,
});
const steps: readonly CutStep[] = [
  straighten,
  rip(2, { cloth: whole, at: 98, off: first, rest }),
  rip(3, { cloth: rest, at: 102, off: { kind: "offcut", box: boxes.between }, rest: second }),
];

function told(narrow: number, of: readonly CutStep[] = steps): RulerCuts {
  return {
    ...{ stockId: "rest", margin: 0, bare: false, tree: { kind: "offcut", box: whole.box } },
    sequence: { steps: of, cuts: of.length, settings: of.length - 1 },
    narrow: Array.from({ length: narrow }, () => boxes.between),
    placements: [at(0, 0), at(1, 102)],
  };
}
const faultsOf = (cuts: RulerCuts, of: LayProblem = problem) => checkCuts(of, cuts).map(({ fault }) => fault);

test("the strip between two pieces is counted, and a count that leaves it out is found", () => {
  expect(checkCuts(problem, told(1))).toEqual([]);
  expect(checkCuts(problem, told(0))).toEqual([{ fault: "strips-untold", step: 0, told: 0, found: 1 }]);
  // At a least of 4 mm it is none, and one that is told all the same is found too.
  expect(faultsOf(told(0), { ...problem, leastStrip: 4 })).toEqual([]);
  expect(faultsOf(told(1), { ...problem, leastStrip: 4 })).toEqual(["strips-untold"]);
  // Narrower by less than a ruler shows, it may be told or not.
  for (const count of [0, 1]) expect(faultsOf(told(count), { ...problem, leastStrip: 4.005 })).toEqual([]);
});

test("the same strip along the far edge of a roll goes with the selvedge", () => {
  const roll = { kind: "roll" as const, id: "rest", width: 200, length: null, flaws: [] };
  const edge = { x: 0, y: 196, dx: 300, dy: 4 };
  const upper = { ...second, box: { x: 0, y: 98, dx: 300, dy: 98 } };
  const cuts = told(0, [
    straighten,
    steps[1]!,
    rip(3, { cloth: rest, at: 196, off: upper, rest: { kind: "offcut", box: edge } }),
  ]);
  const placed = { ...cuts, placements: [at(0, 0), at(1, 98)] };
  expect(faultsOf(placed, { ...problem, stocks: [roll] })).toEqual([]);
  expect(faultsOf(placed)).toEqual(["strips-untold"]);
});

test("cuts that are not so are found: elsewhere, through a piece, past a piece, of another size", () => {
  const cloth = { ...whole, box: { ...whole.box, dx: 250 } };
  const [, lower, upper] = steps as [CutStep, CutStep, CutStep];
  expect(faultsOf(told(1, [straighten, { ...lower, cloth }, upper]))).toContain("no-such-cloth");
  expect(faultsOf(told(1, [straighten, { ...lower, at: 240 }, upper]))).toContain("off-the-cloth");
  expect(faultsOf(told(1, [straighten, { ...lower, at: 90 }, upper]))).toContain("other-parts");
  expect(faultsOf(told(1, [straighten, lower]))).toContain("pieces-missing");
  const half = { kind: "offcut" as const, box: { ...boxes.below, dy: 49 } };
  const other = { kind: "offcut" as const, box: { ...boxes.below, y: 49, dy: 49 } };
  const through = rip(4, { cloth: first, at: 49, off: half, rest: other });
  expect(faultsOf(told(1, [...steps, through]))).toEqual(expect.arrayContaining(["piece-cut", "pieces-missing"]));
  const wider = { ...problem.pieces[0]!, outline: solid(rectangleRing(0, 0, 300, 97)) };
  expect(faultsOf(told(1), { ...problem, pieces: [wider] })).toEqual(["other-size", "other-size"]);
});

test("the program's own cuts of the same plan pass, and one planted strip untold does not", () => {
  const plan: LayPlan = {
    ...{ materialId: "cloth", placements: [at(0, 0), at(1, 102)], unplaced: [], status: "finished" },
    ...{ uses: [], seed: 1, evaluations: 0 },
  } as unknown as LayPlan;
  const [own] = rulerCuts(problem, plan)!;
  expect(checkCuts(problem, own!)).toEqual([]);
  const planted = { ...own!, narrow: [...own!.narrow, boxes.between] };
  expect(faultsOf(planted)).toEqual(["strips-untold"]);
});
