import fc from "fast-check";
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

/** The slow twin: whether so many pieces can be had, by trying every free whole millimetre for each join. */
function canBeJoined(
  cut: number,
  longest: number,
  loss: number,
  count: number,
  isFree: (x: number) => boolean,
): boolean {
  let reached = new Set([0]);
  for (let i = 1; i < count; i++) {
    const next = new Set<number>();
    for (const from of reached) {
      // The first piece has one seam, those between two.
      const most = from + longest - (i > 1 ? loss : loss / 2);
      for (let x = from + 1; x <= most && x < cut; x++) if (isFree(x)) next.add(x);
    }
    reached = next;
  }
  return [...reached].some((from) => cut - from + loss / 2 <= longest);
}

test("joins keep out of the zones, pieces within the stock, all adds up, and no fewer pieces would do", () => {
  let [found, none, dodged] = [0, 0, 0];
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: 200 }),
      fc.integer({ min: 30, max: 120 }),
      fc.constantFrom(0, 2, 8, 20),
      fc.array(fc.tuple(fc.integer({ min: 0, max: 180 }), fc.integer({ min: 5, max: 60 })), { maxLength: 3 }),
      (cut, longest, loss, blocked) => {
        const zones = blocked.map(([from, wide]) => ({ from, to: from + wide, why: "anchor" as const }));
        const isFree = (x: number): boolean => zones.every(({ from, to }) => x <= from || x >= to);
        const plan = planJoins(cut, longest, loss, zones);
        const fewest = cut <= longest ? 1 : Math.ceil((cut - loss) / (longest - loss));
        if (plan === null) {
          none++;
          // It looks no farther than three spare pieces, and goes on from the first place that is near.
          expect(canBeJoined(cut, longest, loss, 2, isFree) && fewest === 2).toBe(false);
          return;
        }
        const { pieces, joints } = plan;
        expect(pieces).toHaveLength(joints.length + 1);
        const sum = pieces.reduce((all, piece) => all + piece, 0);
        expect(sum).toBeCloseTo(cut + joints.length * loss, 9);
        expect(Math.max(...pieces)).toBeLessThanOrEqual(longest + 1e-9);
        expect(Math.min(...pieces)).toBeGreaterThan(loss / 2 - 1e-9);
        for (const joint of joints) expect(isFree(joint)).toBe(true);
        // From seam to seam each piece is what lies between, and half of what each seam takes.
        const stops = [0, ...joints, cut];
        for (const [i, piece] of pieces.entries()) {
          const seams = (i > 0 ? 1 : 0) + (i < joints.length ? 1 : 0);
          expect(piece).toBeCloseTo(stops[i + 1]! - stops[i]! + (seams * loss) / 2, 9);
        }
        found++;
        if (pieces.length === fewest) return;
        dodged++;
        if (fewest === 2) expect(canBeJoined(cut, longest, loss, 2, isFree)).toBe(false);
      },
    ),
    { numRuns: 400, endOnFailure: true },
  );
  expect(Math.min(found, none, dodged)).toBeGreaterThan(10);
});

test("with nothing in the way the pieces are alike but for half a seam", () => {
  expect(planJoins(1000, 600, 20, [])).toEqual({ pieces: [510, 510], joints: [500] });
  const { pieces, joints } = planJoins(900, 400, 30, [])!;
  expect(joints).toEqual([300, 600]);
  expect(pieces).toEqual([315, 330, 315]);
  // The nearest free place to the middle, in steps of 5 mm, the nearer to the start first.
  const shoulder = [{ from: 452, to: 548, why: "shoulder" as const }];
  expect(planJoins(1000, 600, 0, shoulder)!.joints).toEqual([450]);
  expect(planJoins(1000, 600, 0, [{ from: 300, to: 548, why: "shoulder" }])!.joints).toEqual([550]);
});

test("with ends of two lengths ring and slider travel from the one that is folded over the slider", () => {
  expect(forbiddenZones(1400, [40, 20], true).slice(2)).toEqual([
    { from: 40 + 50.8, to: 40 + 670, why: "ring" },
    { from: 40 + 101.6, to: 1380, why: "slider" },
  ]);
});

test("a fixed strap keeps joins off its ends and 50 mm either side of the shoulder; a lap of leather is 15 mm", () => {
  expect(forbiddenZones(1000, [30, 20], false)).toEqual([
    { from: 0, to: 130, why: "anchor" },
    { from: 880, to: 1000, why: "anchor" },
    { from: 450, to: 550, why: "shoulder" },
  ]);
  expect(joinLoss("lapped", 150, 6)).toBe(15);
});
