import { expect, test } from "vitest";
import { searchTables } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { rulerSearch } from "../rulerSearch.ts";
import { shelfPlans } from "./shelfSearch.ts";

/** A block of bags on a limited roll: 6 of 138 × 262 and 8 of 111 × 231 on 499 mm, 846 mm by area. */
const tables = searchTables(
  499,
  [
    { count: 6, ways: [[138, 262]] },
    { count: 8, ways: [[111, 231]] },
  ],
  [],
);

test("where no plan can be short enough the shelves come to an end", () => {
  let asked = 0;
  const best = (): number => {
    if (++asked > 1000) throw new Error("no end");
    return 700;
  };
  const offers: number[] = [];
  expect([...shelfPlans(tables, Infinity, best, (end) => offers.push(end), seededRng(1))]).toEqual([]);
  expect(offers).toEqual([]);
});

test("the end of a plan that leaves pieces out is no limit for whole ones", () => {
  const search = rulerSearch({ tables, stages: 3, limit: 908, atLeast: () => 0 }, 1);
  let spent = 0;
  for (let turn = 0; turn < 200; turn++) {
    const step = search.next();
    if (step.done) break;
    spent = step.value.evaluations;
  }
  expect(spent).toBeGreaterThan(1000);
});
