import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../geometry/ring.ts";
import type { RegionJob } from "../../problem/region.ts";
import { inOneGo } from "../../search/breath.ts";
import { compileJob } from "../compile/compileJob.ts";
import { NoFitStore } from "../noFit/noFitStore.ts";
import { outlineBound } from "./outlineBound.ts";

const HALF_TURNS = [
  { turnDeg: 0, mirrored: false },
  { turnDeg: 180, mirrored: false },
];

function boundFor(rings: readonly Float64Array[], count: number, more: Partial<RegionJob> = {}): number | null {
  const compiled = compileJob({
    region: { width: 100, length: null, outline: null, flaws: [] },
    pieces: rings.map((ring, i) => {
      return { id: `p${i}`, outline: solid(ring), count, orientations: HALF_TURNS, freeTurn: false };
    }),
    gap: 0,
    margin: 0,
    pinned: [],
    goal: "shortest",
    ...more,
  });
  return inOneGo(outlineBound(compiled, new NoFitStore(compiled)));
}

test("area over width when pieces are small", () => {
  expect(boundFor([rectangleRing(0, 0, 10, 10)], 30)).toBeCloseTo(30, 6);
});

test("the longest piece when there is only one", () => {
  expect(boundFor([rectangleRing(0, 0, 70, 10)], 1, { margin: 4 })).toBeCloseTo(78, 6);
});

test("pieces taller than half the width stand in a row", () => {
  expect(boundFor([rectangleRing(0, 0, 10, 60)], 3)).toBeCloseTo(30, 5);
});

test("the row lets tall pieces interlock: two triangles turned head to tail share their length", () => {
  // Right triangles 40 long, 90 tall, on a roll 100 wide: one turned by 180° fits above the other's slope, so
  // both lie in 40 mm. Their boxes alone would ask for 80; area over width is 36.
  const bound = boundFor([Float64Array.of(0, 0, 40, 0, 0, 90)], 2)!;
  expect(bound).toBeLessThanOrEqual(40 + 1e-6);
  expect(bound).toBeGreaterThan(36 - 1e-6);
});

test("a gap counts: area with half the gap round each piece", () => {
  const plain = boundFor([rectangleRing(0, 0, 10, 10)], 30)!;
  const spaced = boundFor([rectangleRing(0, 0, 10, 10)], 30, { gap: 2 })!;
  expect(spaced).toBeGreaterThan(plain * 1.15);
  // 30 squares of 10 mm in 8 rows at pitch 12 need four columns: 46 mm is possible.
  expect(spaced).toBeLessThanOrEqual(46);
});

test("no bound for a region that is not an open roll", () => {
  const region = { width: 100, length: 50, outline: null, flaws: [] };
  expect(boundFor([rectangleRing(0, 0, 10, 10)], 3, { region })).toBeNull();
});
