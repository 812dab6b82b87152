import { expect, test } from "vitest";
import { sampleMaterial } from "../../../../tests/tools/sampleMaterial.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import type { LayProblem } from "../../lay/problem/layProblem.ts";
import { inOneGo } from "../../lay/search/breath.ts";
import { seededRng } from "../../lay/search/rng.ts";
import type { Material } from "../../materials/material.ts";
import type { MaterialStock } from "../../materials/stock.ts";
import { layProblemStocks } from "../layProblems.ts";
import { cheapestPlan, hasStockChoice } from "./cheapestPlan.ts";

const EUROS = { currency: "EUR" };
const QUICK = { mode: "free", evaluations: 2000, seed: 1 } as const;
const metre = (amount: number) => ({ amount, basis: { kind: "length", mm: 1000 }, step: 100 }) as const;
const roll = (id: string, width: number, amount: number): MaterialStock => ({
  ...{ kind: "roll", id, width, selvedge: 0, length: null, squaring: 0, flaws: [] },
  price: metre(amount),
});
const quarter = (count: number, amount: number): MaterialStock => ({
  ...{ kind: "remnant", id: "quarter", shape: { kind: "rectangle", along: 500, across: 550 }, flaws: [], count },
  ...{ toBuy: true, price: { amount, basis: { kind: "each" }, step: 0 } },
});
const leftover: MaterialStock = {
  ...{
    kind: "remnant",
    id: "leftover",
    shape: { kind: "rectangle", along: 400, across: 300 },
    flaws: [],
    count: 1,
  },
};

function choose(stock: readonly MaterialStock[], sizes: readonly (readonly [number, number, number])[]) {
  const material: Material = sampleMaterial("cloth", { stock });
  const problem: LayProblem = {
    materialId: "cloth",
    pieces: sizes.map(([along, across, count], i) => ({
      ...{ id: `p${i}`, count, freeTurn: false, outline: solid(rectangleRing(0, 0, along, across)) },
      orientations: [0, 90].map((turnDeg) => ({ turnDeg, mirrored: false })),
    })),
    stocks: layProblemStocks(material),
    ...{ gap: 0, margin: 0, pinned: [] },
  };
  const choice = inOneGo(cheapestPlan(material, problem, EUROS, QUICK));
  for (const { plan } of [choice.best, ...choice.others]) expect(checkPlan(problem, plan)).toEqual([]);
  return choice;
}

// By hand: 300 × 400 lies on the leftover; the strip of 1 m fits no quarter and takes 10 cm of the wider roll's width.
test("what is there is used up first, a long strip goes on the roll that takes it for least", () => {
  const { best, others } = choose(
    [leftover, roll("narrow", 900, 10), roll("wide", 1100, 14)],
    [
      [300, 400, 1],
      [1000, 90, 1],
    ],
  );
  // Across the wide roll 10 cm cost 1.40; the narrow one takes it lengthwise only, 1 m for 10.00.
  expect(best).toMatchObject({ opened: ["wide"], outlay: { leftOut: 0, toPay: 140 } });
  expect(others.some(({ opened, outlay }) => opened.join() === "narrow" && outlay.toPay === 1000)).toBe(true);
});

// By hand: two pieces of 250 × 550 are one quarter for 3.00, or half a metre of a roll of 5 cm more for 5.00.
test("panels cut to size are bought where they cost less, and no more of them than are needed", () => {
  const stock = [quarter(4, 3), roll("roll", 600, 10)];
  expect(choose(stock, [[250, 550, 2]]).best).toMatchObject({ opened: ["quarter"], outlay: { toPay: 300 } });
  expect(choose(stock, [[250, 550, 3]]).best).toMatchObject({ outlay: { toPay: 600 } });
  expect(choose([quarter(4, 7), roll("roll", 600, 10)], [[250, 550, 2]]).best).toMatchObject({ opened: ["roll"] });
});

test("there is a choice with two stocks of the shop, or one beside what is there", () => {
  const has = (...stock: MaterialStock[]) => hasStockChoice(sampleMaterial("cloth", { stock }));
  expect(has(roll("a", 900, 1), roll("b", 1100, 1))).toBe(true);
  expect(has(quarter(1, 1), roll("a", 900, 1))).toBe(true);
  expect(has(leftover, roll("a", 900, 1))).toBe(false);
});

test("laws: another stock never makes it dearer, and one copy fewer never costs more", () => {
  for (let seed = 1; seed <= 12; seed++) {
    const rng = seededRng(seed);
    const sizes = Array.from({ length: 2 }, () => [100 * (1 + rng.below(4)), 100 * (1 + rng.below(4)), 2] as const);
    const stock = [roll("a", 500 + 100 * rng.below(4), 5 + rng.below(9)), quarter(1, 1 + rng.below(5))];
    const more = [...stock, rng.below(2) === 0 ? leftover : roll("b", 500 + 100 * rng.below(5), 5 + rng.below(9))];
    const paid = (some: readonly MaterialStock[], asked: readonly (readonly [number, number, number])[]) =>
      choose(some, asked).best.outlay.toPay;
    const all = paid(stock, sizes);
    expect(paid(more, sizes), `seed ${seed}`).toBeLessThanOrEqual(all);
    expect(paid(stock, [sizes[0]!, [sizes[1]![0], sizes[1]![1], 1]]), `seed ${seed}`).toBeLessThanOrEqual(all);
  }
});
