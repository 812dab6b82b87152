import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { piecesOf } from "../boxes/cuts/tidyTree.ts";
import { checkCuts } from "../check/checkCuts.ts";
import type { LayPiece, LayPlan, LayProblem } from "../problem/layProblem.ts";
import { rulerCuts } from "./layFigures.ts";

const piece = (id: string, along: number, across: number, onFold: boolean): LayPiece => ({
  id,
  outline: solid(rectangleRing(0, 0, along, across)),
  count: 1,
  orientations: [{ turnDeg: 0, mirrored: false }],
  freeTurn: false,
  gives: { of: id, asDrawn: 1, mirrored: onFold ? 0 : 1, onFold },
});

test("ruler cuts on folded cloth begin at the fold where halves lie, and move nothing else onto it", () => {
  const pieces = [piece("half", 300, 47, true), piece("pair", 120, 80, false), piece("far", 200, 90, false)];
  const problem: LayProblem = {
    ...{ materialId: "m", pieces, gap: 2, margin: 5, leastStrip: 10, pinned: [] },
    stocks: [{ kind: "roll", id: "roll", width: 400, length: null, flaws: [], folded: true }],
  };
  const at = (pieceId: string, x: number, y: number) => {
    return { pieceId, copy: 0, stockId: "roll", x, y, turnDeg: 0, mirrored: false };
  };
  const plan: LayPlan = {
    ...{ materialId: "m", unplaced: [], evaluations: 0, seed: 1 },
    placements: [at("half", 5, 0), at("pair", 307, 8), at("far", 5, 49)],
    uses: [{ stockId: "roll", usedLength: 432, bound: null }],
  };
  const [cuts] = rulerCuts(problem, plan)!;
  expect(checkCuts(problem, cuts!)).toEqual([]);
  const boxes = piecesOf(cuts!.tree);
  expect(boxes.get(0)).toMatchObject({ y: 0, dy: 47 });
  expect(boxes.get(1)!.y).toBeGreaterThanOrEqual(5);
});
