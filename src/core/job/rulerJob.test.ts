import { expect, test } from "vitest";
import { rectangleRing, solid } from "../geometry/ring.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayProblem } from "../lay/problem/layProblem.ts";
import { clothUsed } from "../lay/problem/planSums.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inOneGo } from "../lay/search/breath.ts";
import { seededRng } from "../lay/search/rng.ts";
import { rulerJobOf } from "./rulerJob.ts";

/** Pieces of nearly the same sizes, which leave a few millimetres beside each other. */
function problem(seed: number): LayProblem {
  const rng = seededRng(seed);
  const pieces = Array.from({ length: 6 }, (_, i) => ({
    id: `piece-${i}`,
    outline: solid(rectangleRing(0, 0, 200 + rng.below(24), 110 + rng.below(14))),
    count: 2 + rng.below(3),
    orientations: [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false })),
    freeTurn: false,
  }));
  const stock = { kind: "roll" as const, id: "roll", width: 700, length: null, flaws: [] };
  return { ...{ materialId: "cloth", pieces, stocks: [stock], gap: 0, margin: 0, pinned: [] }, leastStrip: 10 };
}

test("a plan full of strips too narrow for a ruler is none for the ruler, though it is the shorter one", () => {
  let longer = 0;
  for (const seed of [1, 2, 3]) {
    const job = problem(seed);
    // As short as can be, whatever strips that takes.
    const any = { ...job, leastStrip: undefined };
    const table = inOneGo(arrange(any, (part) => chooseEngines(part, "ruler"), { evaluations: 100_000 }, 1));
    const { isOnTable, onTable, found, plan } = rulerJobOf(job, table);
    if (isOnTable) continue;
    expect(found!.narrow).toBeLessThanOrEqual(onTable!.narrow);
    if (found!.narrow < onTable!.narrow && clothUsed(job, plan) > clothUsed(job, table) + 1) longer++;
    // Laid for the ruler and kept by its pins, a plan stays what it is.
    expect(rulerJobOf({ ...job, pinned: table.placements }, table).isOnTable).toBe(true);
  }
  expect(longer).toBeGreaterThan(0);
});
