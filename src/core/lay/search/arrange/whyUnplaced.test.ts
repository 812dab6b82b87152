import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { chooseEngines } from "../../engines/chooseEngines.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../problem/layProblem.ts";
import { arrange } from "./arrange.ts";
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
