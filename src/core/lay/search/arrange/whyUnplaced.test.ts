import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { chooseEngines } from "../../engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../problem/layProblem.ts";
import { arrange } from "./arrange.ts";
import { unplacedOf, unplacedReasons } from "./unplacedReasons.ts";
import { whyUnplaced } from "./whyUnplaced.ts";

const strip = (id: string, along: number, across: number, count: number): LayPiece => {
  const orientations = [{ turnDeg: 0, mirrored: false }];
  return { id, outline: solid(rectangleRing(0, 0, along, across)), count, orientations, freeTurn: false };
};
const roll = (width: number, length: number | null): Stock => {
  return { kind: "roll", id: `roll ${width}`, width, length, flaws: [] };
};
const leftover = (along: number, across: number): Stock => {
  return { kind: "remnant", id: "leftover", outline: solid(rectangleRing(0, 0, along, across)), flaws: [] };
};

function why(pieces: readonly LayPiece[], stocks: readonly Stock[], margin = 5) {
  const problem: LayProblem = { materialId: "canvas", pieces, stocks, gap: 0, margin, pinned: [] };
  const engines = (job: Parameters<typeof chooseEngines>[0]) => chooseEngines(job, "free");
  const search = arrange(problem, engines, { evaluations: 5_000 }, 1);
  let turn = search.next();
  while (!turn.done) turn = search.next();
  const plan: LayPlan = turn.value;
  return whyUnplaced(problem, plan, engines);
}

test("a piece wider than every roll says how wide one must be, and whether the other straight way would do", () => {
  const common = { code: "piece-too-long-for-width", path: "pieces.flap", pieceId: "flap", count: 2 };
  const told = { ...common, neededWidthMm: 410, widestMm: 400 };
  expect(why([strip("flap", 300, 400, 2)], [roll(300, null), roll(400, null)])).toEqual([
    { ...told, fitsTurned: true },
  ]);
  expect(why([strip("flap", 900, 400, 2)], [roll(300, null), roll(400, null)])).toEqual([
    { ...told, fitsTurned: false },
  ]);
});

test("of a roll that is used up, the missing length is told: two more strips of 250 mm, one behind the other", () => {
  const [told] = why([strip("strap", 250, 90, 6)], [roll(100, 1010)]);
  expect(told).toMatchObject({ code: "piece-stock-used-up", count: 2, moreLengthMm: 2 * 250 + 2 * 5 });
});

test("without a roll no length can be told, and a piece larger than all there is says its size", () => {
  const left = why([strip("strap", 250, 90, 2), strip("body", 500, 300, 1)], [leftover(300, 110)]);
  expect(left).toEqual([
    { code: "piece-stock-used-up", path: "pieces.strap", pieceId: "strap", count: 1, moreLengthMm: null },
    {
      code: "piece-too-large-for-stock",
      path: "pieces.body",
      pieceId: "body",
      count: 1,
      alongMm: 500,
      acrossMm: 300,
    },
  ]);
  expect(why([strip("strap", 250, 90, 2)], [])).toMatchObject([{ code: "piece-no-stock", count: 2 }]);
});

// By hand: lines at 20, 110, 200 … across; a panel 120 high with its middle on one lies from 50 to 170 on the second, and
// with the margin of 5 mm takes 175 of the width. On the first it would begin below the edge.
test("a matched piece for which no line leaves room between the edges is told as that, not as cloth that is used up", () => {
  const pattern = {
    ...{ along: null, across: 90, firstAlong: 0, firstAcross: 20 },
    ...{ halfDrop: false, symmetric: false, tolerance: 1 },
  };
  const phases = { g: { along: null, across: 0 } };
  const held = (id: string, high: number): LayPiece => ({
    ...strip(id, 100, high, 2),
    match: { group: "g", x: 50, y: high / 2, senseX: 1, senseY: 1, along: false, across: true },
  });
  const told = (...stocks: Stock[]) => {
    const pieces = [held("flap", 120), held("tab", 20)];
    const lay = { materialId: "canvas", pieces, stocks, gap: 0, margin: 5, pinned: [], pattern, phases };
    const unplaced = unplacedOf(lay, [2, 0], unplacedReasons(lay));
    const plan = { materialId: "canvas", placements: [], unplaced, uses: [], evaluations: 0, seed: 1 };
    const [left] = whyUnplaced(lay, plan, (job) => chooseEngines(job, "free"));
    return left!;
  };
  const noRoom = { code: "piece-no-room-on-pattern", path: "pieces.flap", pieceId: "flap", count: 2 };
  expect(told(roll(150, null))).toEqual({ ...noRoom, neededWidthMm: 175, widestMm: 150 });
  expect(told(roll(140, 500), roll(174.9, null))).toEqual({ ...noRoom, neededWidthMm: 175, widestMm: 174.9 });
  // Where one has room, and is used up, that is the reason; a roll that is narrower than the piece has its own.
  expect(told(roll(175, 50), roll(175, 110), roll(150, null)).code).toBe("piece-stock-used-up");
  expect(told(roll(129, null)).code).toBe("piece-too-long-for-width");
  expect(told(leftover(500, 150), roll(150, null)).code).toBe("piece-stock-used-up");
});
