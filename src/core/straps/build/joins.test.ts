import { expect, test } from "vitest";
import { forbiddenZones, joinLoss, planJoins, preCutDiagonalLoss } from "./joins.ts";

// Facts 7.1 and 7.2: common practice and plain geometry; 7.3 exact arithmetic on the stated model.
test.each([
  [10, 3, 17],
  [7, 5, 9],
  [20, 1.5, 38.5],
])("7.1: two strips of %s in, %s in wide, joined diagonally make %s in", (length, width, expected) => {
  expect(2 * length - joinLoss("diagonal", width, 0)).toBe(expected);
});

test("7.2: a straight join of 10 and 10 in at 1/4 in makes 19 1/2 in", () => {
  expect(20 - joinLoss("straight", 3, 0.25)).toBe(19.5);
});

test("7.3: ends cut at 45° beforehand lose 2√2 s: 0.707 in at 1/4 in, 17.0 mm at 6 mm", () => {
  expect(preCutDiagonalLoss(0.25)).toBeCloseTo(Math.SQRT1_2, 9);
  expect(preCutDiagonalLoss(6)).toBeCloseTo(17.0, 1);
});

test("joined pieces make up the strip and what the joins lose, each within the stock", () => {
  const zones = forbiddenZones(1500, [30, 30], false);
  const plan = planJoins(1500, 700, 100, zones)!;
  const total = plan.pieces.reduce((sum, piece) => sum + piece, 0);
  expect(total).toBeCloseTo(1500 + plan.joints.length * 100, 9);
  expect(Math.max(...plan.pieces)).toBeLessThanOrEqual(700);
  for (const joint of plan.joints) {
    for (const zone of zones) expect(joint <= zone.from || joint >= zone.to).toBe(true);
  }
});

test("a strip that fits is not joined; one whose every place is forbidden cannot be", () => {
  expect(planJoins(500, 500, 20, [])).toEqual({ pieces: [500], joints: [] });
  expect(planJoins(260, 200, 20, forbiddenZones(260, [30, 30], false))).toBeNull();
  expect(planJoins(260, 20, 20, [])).toBeNull();
});

test("no join has a place where ring and slider of an adjustable strap travel: the slider passes all but its first 4 in", () => {
  const [first, last, ring, slider] = forbiddenZones(1400, [30, 30], true);
  expect([first, last]).toMatchObject([{ why: "anchor" }, { why: "anchor" }]);
  // Doubled over d, the ring lies at d and the slider at 2 d; d runs from 2 in to half of what the ends leave.
  expect(ring).toEqual({ from: 30 + 50.8, to: 30 + 670, why: "ring" });
  expect(slider).toEqual({ from: 30 + 101.6, to: 1370, why: "slider" });
  expect(planJoins(1400, 1000, 50, forbiddenZones(1400, [30, 30], true))).toBeNull();
});
