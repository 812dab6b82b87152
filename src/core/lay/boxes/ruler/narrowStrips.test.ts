import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import { rulerCuts } from "../../alternatives/layFigures.ts";
import { checkCuts } from "../../check/checkCuts.ts";
import { checkPlan } from "../../check/checkPlan.ts";
import { chooseEngines } from "../../engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../problem/layProblem.ts";
import { searchTables } from "../../problem/rectangles/searchTables.ts";
import { arrange } from "../../search/arrange/arrange.ts";
import { inOneGo } from "../../search/breath.ts";
import { seededRng } from "../../search/rng.ts";
import { rulerSearch } from "./rulerSearch.ts";

const TURNS = [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false }));

/** Pieces of nearly the same sizes, which leave a few millimetres beside each other. */
function problem(seed: number, leastStrip: number | undefined, mode: "open" | "limited"): LayProblem {
  const rng = seededRng(seed);
  const pieces = Array.from({ length: 6 }, (_, i) => ({
    id: `piece-${i}`,
    outline: solid(rectangleRing(0, 0, 200 + rng.below(24), 110 + rng.below(14))),
    count: 2 + rng.below(3),
    orientations: TURNS,
    freeTurn: false,
  }));
  const length = mode === "open" ? null : 1500;
  const stock = { kind: "roll" as const, id: "roll", width: 700, length, flaws: [] };
  return { ...{ materialId: "cloth", pieces, stocks: [stock], gap: 0, margin: 0, pinned: [] }, leastStrip };
}

function laid(job: LayProblem, mode: "ruler" | "few-stages" = "ruler"): LayPlan {
  return inOneGo(arrange(job, (part) => chooseEngines(part, mode), { evaluations: 200_000 }, 1));
}

/** Strips under 10 mm that the cuts take off but along the roll's own edges, counted from the steps. */
function narrow(job: LayProblem, plan: LayPlan): number {
  const cuts = rulerCuts(job, plan);
  if (cuts === null) throw new Error("cannot be cut edge to edge");
  return cuts.reduce((sum, { sequence, tree }) => {
    const parts = sequence.steps.flatMap(({ off, rest, kind }) =>
      [off, rest].flatMap((part) => (part?.kind === "offcut" ? [{ kind, box: part.box }] : [])),
    );
    return (
      sum +
      parts.filter(({ kind, box }) =>
        kind === "rip"
          ? box.dy < 10 - 1e-3 && box.y + box.dy < tree.box.dy - 1e-3
          : box.dx < 10 - 1e-3 && box.x + box.dx < tree.box.dx - 1e-3,
      ).length
    );
  }, 0);
}

test("with a least strip, ruler plans take off no narrower ones where 3 % of the length spares them", () => {
  let before = 0;
  let after = 0;
  for (let seed = 1; seed <= 6; seed++) {
    const [any, wished] = [problem(seed, undefined, "open"), problem(seed, 10, "open")];
    const [shortest, plan] = [laid(any), laid(wished)];
    expect(checkPlan(wished, plan)).toEqual([]);
    // The checker counts them by itself, in both.
    for (const cuts of rulerCuts(wished, plan)!) expect(checkCuts(wished, cuts)).toEqual([]);
    const judged = { ...any, leastStrip: 10 };
    for (const cuts of rulerCuts(judged, shortest)!) expect(checkCuts(judged, cuts)).toEqual([]);
    before += narrow(any, shortest);
    after += narrow(wished, plan);
    expect(plan.uses[0]!.usedLength).toBeLessThan(1.06 * shortest.uses[0]!.usedLength);
  }
  expect(before).toBeGreaterThan(10);
  expect(after).toBeLessThan(before / 4);
});

test("on cloth of limited length no piece is left out for the sake of a strip", () => {
  for (let seed = 1; seed <= 3; seed++) {
    const left = (plan: LayPlan) => plan.unplaced.reduce((sum, { count }) => sum + count, 0);
    const [any, wished] = [problem(seed, undefined, "limited"), problem(seed, 10, "limited")];
    expect(left(laid(wished))).toBeLessThanOrEqual(left(laid(any)));
  }
});

test("what leaves a narrow strip wherever it lies is laid all the same in few stages", () => {
  // 2,000 of 2,005 units: what is left is less than 10, and these sizes are too large for shelves.
  const tables = searchTables(2005, [{ count: 2, ways: [[2000, 3000]] }], []);
  const narrow = { rule: { least: 10, sideLoose: false, endLoose: true }, has: () => true, allowance: 50 };
  const search = rulerSearch({ tables, stages: 3, limit: Infinity, atLeast: () => 6000, narrow }, 1);
  const turns = Array.from({ length: 2000 }, () => search.next());
  const plans = turns.flatMap(({ value }) => (value?.plan ? [value.plan] : []));
  expect(plans[0]).toHaveLength(2);
});
