import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import { chooseEngines } from "../../engines/chooseEngines.ts";
import { arrange } from "../../search/arrange/arrange.ts";
import { inOneGo } from "../../search/breath.ts";
import type { LayPiece, LayProblem } from "../layProblem.ts";
import { rectangleJobOf } from "./prepare.ts";

const piece = (id: string, along: number, across: number): LayPiece => ({
  ...{ id, outline: solid(rectangleRing(0, 0, along, across)), count: 1, freeTurn: false },
  orientations: [{ turnDeg: 0, mirrored: false }],
});

// A strip of a length without a common measure with the rest makes the units so fine that nothing comes out whole.
const PIECES = [piece("strip", 875, 40 * Math.PI), piece("panel", 187, 133)];
const rest = { materialId: "cloth", pieces: PIECES, gap: 0, margin: 0, pinned: [] };

test("a piece exactly as wide as the cloth is laid, whatever the others are rounded to; one a little wider is not", () => {
  for (const [width, impossible] of [
    [133, 0],
    [132.999, 1],
  ] as const) {
    const region = { width, length: null, outline: null, flaws: [] };
    const job = rectangleJobOf({ ...rest, region, goal: "shortest" });
    expect(job.exact).toBe(false);
    expect(job.impossible[1]).toBe(impossible);
    if (impossible === 0) expect(job.sizes[1]!.ways).toMatchObject([{ across: job.width }]);
  }
});

test("it is laid by the search, and the plan passes the checker", () => {
  const stock = { kind: "roll" as const, id: "roll", width: 133, length: null, flaws: [] };
  const problem: LayProblem = { ...rest, stocks: [stock] };
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 2_000 }, 1));
  expect(plan.unplaced).toEqual([]);
  expect(checkPlan(problem, plan)).toEqual([]);
});
