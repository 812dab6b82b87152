import { describe, expect, it } from "vitest";
import { lengthForStraps } from "./lengthForStraps.ts";
import { hasAllPoints, normalPoints } from "./raster.ts";
import type { StrapOnCloth } from "./strapProblem.ts";
import { type StrapYield, strapYield } from "./strapYield.ts";

const INCH = 25.4;

function cloth(strapWidth: number, strapLength: number, clothWidth: number, unit: number): StrapOnCloth {
  return {
    strapWidth: strapWidth * unit,
    strapLength: strapLength * unit,
    clothWidth: clothWidth * unit,
    gap: 0,
    directions: "both",
  };
}

/** Overlap, edge and gap, straight from the placements. */
function expectValid(on: StrapOnCloth, length: number, found: StrapYield): void {
  expect(found.placements).toHaveLength(found.count);
  const boxes = found.placements.map(({ x, y, rotation }) => ({
    x,
    y,
    dx: rotation === 0 ? on.strapLength : on.strapWidth,
    dy: rotation === 0 ? on.strapWidth : on.strapLength,
  }));
  const tiny = 1e-6;
  boxes.forEach((p, i) => {
    expect(Math.min(p.x, p.y)).toBeGreaterThanOrEqual(0);
    expect(p.x + p.dx).toBeLessThanOrEqual(length + tiny);
    expect(p.y + p.dy).toBeLessThanOrEqual(on.clothWidth + tiny);
    for (const q of boxes.slice(0, i)) {
      const apart =
        Math.max(q.x - p.x - p.dx, p.x - q.x - q.dx) >= on.gap - tiny ||
        Math.max(q.y - p.y - p.dy, p.y - q.y - q.dy) >= on.gap - tiny;
      expect(apart).toBe(true);
    }
  });
}

describe("straps on a length, worked by hand (rows of floor(length / side) times floor(width / side))", () => {
  // [strap width, strap length, cloth length, cloth width, unit mm, lengthwise, crosswise, mixed in two blocks]
  it.each([
    [10, 70, 100, 107, 10, 10, 10, 13],
    [10, 70, 100, 137, 10, 13, 10, 16],
    [16, 70, 100, 148, 10, 9, 12, 12],
    [7.5, 60, 50, 137, 10, 0, 12, 12],
    [12, 66, 100, 107, 10, 8, 8, 11],
    [10, 152, 160, 107, 10, 10, 0, 10],
    [4, 28, 36, 42, INCH, 10, 9, 12],
    [4, 18, 18, 21, INCH, 5, 4, 5],
  ])(
    "%d x %d on %d x %d: at least the best two blocks",
    (w, l, length, width, unit, lengthwise, crosswise, mixed) => {
      const on = cloth(w, l, width, unit);
      const found = strapYield(on, length * unit);
      expectValid(on, length * unit, found);
      expect(found).toMatchObject({ lengthwise, crosswise });
      expect(found.count).toBeGreaterThanOrEqual(mixed);
      expect(found.bound).toBeGreaterThanOrEqual(found.count);
    },
  );

  it("proves that 13 straps of 10 x 70 cm are the most on 1 m of 107 cm", () => {
    expect(strapYield(cloth(10, 70, 107, 10), 1000)).toMatchObject({ count: 13, bound: 13, proven: true });
  });

  it("gives none where the strap is longer than the cloth either way", () => {
    expect(strapYield(cloth(10, 150, 107, 10), 1000)).toMatchObject({ count: 0, bound: 0, proven: true });
  });
});

describe("directions and gap", () => {
  it("keeps to one direction when told", () => {
    const on = cloth(10, 70, 107, 10);
    expect(strapYield({ ...on, directions: "lengthwise" }, 1000)).toMatchObject({
      count: 10,
      crosswise: 0,
      proven: true,
    });
    expect(strapYield({ ...on, directions: "crosswise" }, 1000)).toMatchObject({
      count: 10,
      lengthwise: 0,
      proven: true,
    });
  });

  it("keeps the gap between straps and not to the edge", () => {
    const on = { ...cloth(10, 70, 107, 10), gap: 7.5 };
    const found = strapYield(on, 1000);
    expectValid(on, 1000, found);
    // 10 straps and 9 gaps of 7.5 mm are 1067.5 mm: a hair under 1070.
    expect(found.lengthwise).toBe(10);
    expect(strapYield({ ...on, gap: 8 }, 1000).lengthwise).toBe(9);
  });

  it("refuses sizes that are none", () => {
    expect(() => strapYield(cloth(0, 70, 107, 10), 1000)).toThrow(RangeError);
    expect(() => strapYield(cloth(10, 70, 107, 10), Number.NaN)).toThrow(RangeError);
  });
});

describe("sums of the sides", () => {
  const slow = (a: number, b: number, limit: number): number[] => {
    const points = new Set<number>();
    for (let x = 0; x <= limit; x += a) for (let y = x; y <= limit; y += b) points.add(y);
    return [...points].sort((p, q) => p - q);
  };

  it.each([
    [10, 70, 1000],
    [7, 5, 300],
    [6, 4, 301],
    [999_983, 1_000_003, 9_000_000],
    [3, 301, 300],
  ])("%d and %d up to %d: all of them", (a, b, limit) => {
    expect([...normalPoints(a, b, limit)]).toEqual(slow(a, b, limit));
    expect(hasAllPoints(a, b, limit)).toBe(true);
  });

  it("are the multiples of either side where there are too many", () => {
    const [a, b, limit] = [13_710_001, 17_007_000, 1.2e11];
    expect(hasAllPoints(a, b, limit)).toBe(false);
    const points = normalPoints(a, b, limit);
    expect(points).toHaveLength(Math.floor(limit / a) + Math.floor(limit / b) + 1);
    expect([...points.slice(0, 4)]).toEqual([0, a, b, 2 * a]);
  });
});

describe("length for a number of straps", () => {
  it("of sides with millions of sums on a narrow roll: a plan, and a bound that claims no proof", () => {
    const on = cloth(13.71, 17.007, 20, 1);
    const found = lengthForStraps(on, 9000)!;
    expect(found.length).toBeCloseTo(9000 * 13.71, 6);
    expect(found.plan.count).toBeGreaterThanOrEqual(9000);
    // No plan is shorter than the straps' area across the cloth.
    expect(found.bound).toBeGreaterThan((9000 * 13.71 * 17.007) / 20);
    expect(found.bound).toBeLessThanOrEqual(found.length);
    expect(found.proven).toBe(false);
  });

  it("in one direction is proven however many sums of the sides there are", () => {
    for (const directions of ["lengthwise", "crosswise"] as const) {
      const found = lengthForStraps({ ...cloth(13.71, 17.007, 20, 1), directions }, 9000)!;
      expect(found.proven).toBe(true);
      expect(found.length).toBeCloseTo(9000 * (directions === "lengthwise" ? 17.007 : 13.71), 6);
      expect(found.bound).toBe(found.length);
    }
  });

  it("needs the metre for 13 and a strap's width less for 12", () => {
    const on = cloth(10, 70, 107, 10);
    const thirteen = lengthForStraps(on, 13);
    expect(thirteen).toMatchObject({ length: 1000, bound: 1000, proven: true });
    expect(thirteen?.plan.count).toBeGreaterThanOrEqual(13);
  });

  it("is no longer than one direction and its bound no longer than that", () => {
    for (let count = 1; count <= 40; count++) {
      const on = cloth(4, 28, 42, INCH);
      const found = lengthForStraps(on, count);
      if (found === null) throw new Error("fits");
      expectValid(on, found.length, found.plan);
      expect(found.plan.count).toBeGreaterThanOrEqual(count);
      expect(found.length).toBeLessThanOrEqual(Math.ceil(count / 10) * 28 * INCH + 1e-6);
      expect(found.bound).toBeLessThanOrEqual(found.length);
      expect(found.bound * 42 * INCH).toBeGreaterThanOrEqual(count * 4 * 28 * INCH * INCH - 1e-3);
    }
  });

  it("is null when no strap fits across", () => {
    expect(lengthForStraps({ ...cloth(10, 150, 107, 10), directions: "crosswise" }, 1)).toBeNull();
  });
});
