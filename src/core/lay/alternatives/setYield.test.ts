import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { strapYield } from "../boxes/straps/strapYield.ts";
import { checkPlan } from "../check/checkPlan.ts";
import type { Stock } from "../problem/layProblem.ts";
import { lengthForSets, type SetOnCloth, setYield } from "./setYield.ts";

const BOTH = [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false }));
const roll = (width: number, length: number | null): Stock => ({
  kind: "roll",
  id: "roll",
  width,
  length,
  flaws: [],
});
const wish = (stock: Stock, strips: readonly [number, number, number][], gap = 0): SetOnCloth => ({
  ...{ stock, gap, margin: 0 },
  strips: strips.map(([width, length, perSet]) => ({ width, length, perSet, orientations: BOTH })),
});

test("sets of one strap are what the strap alone gives (another engine's count)", () => {
  const { count } = strapYield(
    { strapWidth: 100, strapLength: 700, clothWidth: 1070, gap: 0, directions: "both" },
    1000,
  );
  const found = setYield(wish(roll(1070, 1000), [[100, 700, 1]]), 200_000);
  expect(found.sets).toBe(count);
  expect(checkPlan(found.problem, found.plan)).toEqual([]);
});

// Exact: a cloth of 400 x 300 is two bands 400 x 100 and, in the rest of 400 x 100, eight pieces of 50 x 100.
test("straps in proportion fill a cloth that they cover exactly, proven by the area", () => {
  const found = setYield(
    wish(roll(300, 400), [
      [100, 400, 1],
      [50, 100, 4],
    ]),
    200_000,
  );
  expect(found).toMatchObject({ sets: 2, bound: 2, proven: true });
  expect(found.plan.placements).toHaveLength(10);
  expect(checkPlan(found.problem, found.plan)).toEqual([]);
});

test("a leftover of any outline with a flaw: whole sets round the flaw, checked", () => {
  // An L of 300 x 100 and 100 x 200 above its left end, with a flaw of 40 x 100 in its foot.
  const outline = solid(Float64Array.from([0, 0, 300, 0, 300, 100, 100, 100, 100, 300, 0, 300]));
  const flaw = solid(rectangleRing(260, 0, 40, 100));
  const stock: Stock = { kind: "remnant", id: "left", outline, flaws: [flaw] };
  const found = setYield(wish(stock, [[50, 100, 1]]), 300_000);
  // 260 x 100 and 100 x 200 hold five and four of 50 x 100 (exact).
  expect(found.sets).toBe(9);
  expect(checkPlan(found.problem, found.plan)).toEqual([]);
  const flawless = setYield(wish({ ...stock, flaws: [] }, [[50, 100, 1]]), 300_000);
  expect(flawless).toMatchObject({ sets: 10, bound: 10, proven: true });
});

test("the length for a number of sets, and none when a strip is too long for the cloth", () => {
  const strips: [number, number, number][] = [
    [100, 400, 1],
    [50, 100, 4],
  ];
  const found = lengthForSets(wish(roll(300, null), strips), 2, 200_000)!;
  expect(found).toMatchObject({ length: 400, bound: 400, proven: true });
  expect(checkPlan(found.problem, found.plan)).toEqual([]);
  const across = wish(roll(300, null), [[400, 500, 1]]);
  expect(lengthForSets(across, 1, 10_000)).toBeNull();
  expect(() => setYield(wish(roll(300, null), strips), 1000)).toThrow(RangeError);
});
