// A worked example of the cutting-stock literature with several stocks. Its optimum is worked out besides by HiGHS over all
// patterns, so that a misremembered value would show. A length is a strip as wide as its stock.
import loadHighs from "highs";
import { expect, test } from "vitest";
import { purchaseOf } from "../../src/core/buying/purchase.ts";
import { rectangleRing, solid } from "../../src/core/geometry/ring.ts";
import { layProblemStocks } from "../../src/core/job/layProblems.ts";
import { cheapestPlan } from "../../src/core/job/stocks/cheapestPlan.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import type { LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import type { Material } from "../../src/core/materials/material.ts";
import type { MaterialStock } from "../../src/core/materials/stock.ts";
import { sampleMaterial } from "../tools/sampleMaterial.ts";

// Gilmore and Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9 (1961), 849–859,
// the example worked through: stock of 5, 6 and 9 at 6, 7 and 10; wanted are 20 of 2, 10 of 3 and 20 of 4; least cost 170.
// From memory. Its program is linear: a tenth of the order costs a tenth at least, and here just that.

interface Example {
  readonly stocks: readonly (readonly [length: number, price: number])[];
  /** Length and number of each strip that is wanted. */
  readonly wanted: readonly (readonly [length: number, count: number])[];
}

const BOOK: Example = {
  stocks: [
    [5, 6],
    [6, 7],
    [9, 10],
  ],
  wanted: [
    [2, 20],
    [3, 10],
    [4, 20],
  ],
};
const OPTIMUM = 170;

const share = ({ stocks, wanted }: Example, of: number): Example => {
  return { stocks, wanted: wanted.map(([length, count]) => [length, count / of]) };
};

/** Every way to cut a length into wanted ones. */
function patternsOf(length: number, wanted: Example["wanted"]): number[][] {
  const [first, ...rest] = wanted;
  if (first === undefined) return [[]];
  const most = Math.floor(length / first[0]);
  return Array.from({ length: most + 1 }, (_, n) =>
    patternsOf(length - n * first[0], rest).map((others) => [n, ...others]),
  ).flat();
}

function modelOf({ stocks, wanted }: Example, isWhole: boolean): string {
  const ways = stocks.flatMap(([length, price], i) =>
    patternsOf(length, wanted).map((cuts, k) => ({ name: `x${i}_${k}`, price, cuts })),
  );
  const rows = wanted.map(([, count], i) => {
    const terms = ways.filter(({ cuts }) => cuts[i]! > 0).map(({ name, cuts }) => `${cuts[i]} ${name}`);
    return ` w${i}: ${terms.join(" + ")} >= ${count}`;
  });
  const cost = ways.map(({ name, price }) => `${price} ${name}`).join(" + ");
  const whole = isWhole ? `General\n ${ways.map(({ name }) => name).join(" ")}\n` : "";
  return `Minimize\n obj: ${cost}\nSubject To\n${rows.join("\n")}\n${whole}End\n`;
}

const UNIT = 100;
const WIDTH = 60;

/** What our plan costs, in the example's money, and the stocks that it cuts. */
function ours({ stocks, wanted }: Example): { readonly cost: number; readonly opened: readonly string[] } {
  const stock = stocks.map(
    ([length, amount], i): MaterialStock => ({
      ...{
        kind: "remnant",
        id: `s${i}`,
        shape: { kind: "rectangle", along: length * UNIT, across: WIDTH },
        flaws: [],
      },
      ...{ count: 2, toBuy: true, price: { amount, basis: { kind: "each" }, step: 0 } },
    }),
  );
  const material: Material = sampleMaterial("cloth", { stock });
  const problem: LayProblem = {
    materialId: "cloth",
    pieces: wanted.map(([length, count], i) => ({
      ...{ id: `p${i}`, count, freeTurn: false, outline: solid(rectangleRing(0, 0, length * UNIT, WIDTH)) },
      orientations: [{ turnDeg: 0, mirrored: false }],
    })),
    stocks: layProblemStocks(material),
    ...{ gap: 0, margin: 0, pinned: [] },
  };
  const { best } = inOneGo(
    cheapestPlan(material, problem, { currency: "EUR" }, { mode: "free", evaluations: 20_000, seed: 1 }),
  );
  expect(checkPlan(problem, best.plan)).toEqual([]);
  expect(best.plan.unplaced).toEqual([]);
  expect(purchaseOf(material, best.plan, { currency: "EUR" }).toPay).toBe(best.outlay.toPay);
  return { cost: best.outlay.toPay! / 100, opened: [...new Set(best.opened.map((id) => id.slice(0, 2)))] };
}

/** Least cost by HiGHS, in whole patterns or in parts of them. */
async function leastCost(example: Example, isWhole: boolean): Promise<number> {
  const highs = await loadHighs();
  const solved = highs.solve(modelOf(example, isWhole), { mip_rel_gap: 0 });
  expect(solved.Status).toBe("Optimal");
  return solved.ObjectiveValue;
}

test("the published least cost is the exact model's, in whole patterns and in parts of them", async () => {
  expect(await leastCost(BOOK, false)).toBeCloseTo(OPTIMUM, 6);
  expect(await leastCost(BOOK, true)).toBeCloseTo(OPTIMUM, 6);
});

test("our plan of a tenth of the order costs a tenth, from the stocks that the example cuts", async () => {
  const tenth = share(BOOK, 10);
  expect(await leastCost(tenth, true)).toBeCloseTo(OPTIMUM / 10, 6);
  const { cost, opened } = ours(tenth);
  expect(cost).toBe(OPTIMUM / 10);
  // 4 + 3 + 2 of the 9, 4 + 2 of the 6.
  expect(opened).toEqual(["s1", "s2"]);
  // Each price of its own counts: with the 6 dearer than two of the 5 another way is best, and found.
  const dearer = {
    ...tenth,
    stocks: [
      [5, 6],
      [6, 13],
      [9, 10],
    ],
  } as const;
  expect(ours(dearer).cost).toBe(await leastCost(dearer, true));
});
