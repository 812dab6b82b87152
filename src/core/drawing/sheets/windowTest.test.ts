import fc from "fast-check";
import { expect, test, vi } from "vitest";
import type { Box } from "../../geometry/box.ts";
import { type Polygon, type Ring, rectangleRing, solid } from "../../geometry/ring.ts";
import { segmentMeetsBox } from "../list/labelSpot.ts";
import { windowTest } from "./windowTest.ts";

// Counts the edges that are looked at one by one.
vi.mock("../list/labelSpot.ts", async (original) => {
  const module = await original<typeof import("../list/labelSpot.ts")>();
  return { ...module, segmentMeetsBox: vi.fn(module.segmentMeetsBox) };
});

/** Every edge, one by one. */
function obvious({ outer, holes }: Polygon, window: Box): boolean {
  const [px, py] = [(window.minX + window.maxX) / 2, (window.minY + window.maxY) / 2];
  let inside = false;
  for (const ring of [outer, ...holes]) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [x0, y0, x1, y1] = [ring[i]!, ring[i + 1]!, ring[j]!, ring[j + 1]!];
      if (segmentMeetsBox(x0, y0, x1, y1, window)) return true;
      if (y0 > py !== y1 > py && px < x0 + ((x1 - x0) * (py - y0)) / (y1 - y0)) inside = !inside;
    }
  }
  return inside;
}

const circle = (radius: number, corners: number): Ring =>
  Float64Array.from({ length: 2 * corners }, (_, i) => {
    const a = (Math.PI * (i - (i % 2))) / corners;
    return radius * (i % 2 === 0 ? Math.cos(a) : Math.sin(a));
  });

test("tells the same as a look at every edge", () => {
  const number = fc.integer({ min: -60, max: 60 });
  const ring = fc
    .array(number, { minLength: 6, maxLength: 160 })
    .map((at) => Float64Array.from(at.slice(at.length % 2)));
  const window = fc.tuple(number, number, fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }));
  fc.assert(
    fc.property(ring, fc.array(window, { maxLength: 9 }), (outer, windows) => {
      const outline = solid(outer);
      const meets = windowTest(outline);
      for (const [minX, minY, wide, high] of windows) {
        const box = { minX, minY, maxX: minX + wide, maxY: minY + high };
        expect(meets(box)).toBe(obvious(outline, box));
      }
    }),
    { numRuns: 300 },
  );
});

test("a sheet in the middle of a piece holds it together, one in its hole is blank", () => {
  const window = { minX: -5, minY: -5, maxX: 5, maxY: 5 };
  expect(windowTest(solid(circle(100, 3000)))(window)).toBe(true);
  expect(windowTest({ outer: circle(100, 3000), holes: [circle(50, 3000).reverse()] })(window)).toBe(false);
  expect(windowTest(solid(rectangleRing(20, -50, 100, 100)))(window)).toBe(false);
});

test("sheets in the middle of a piece hold it together at every height, whatever the number of its corners", () => {
  for (const corners of [15, 16, 17, 31, 32, 33, 3000]) {
    const meets = windowTest(solid(circle(100, corners)));
    // Round the middle, also about a corner: as the piece is turned, edges begin elsewhere.
    for (let y = -60; y <= 60; y += 1.7)
      expect(meets({ minX: -0.5, minY: y - 0.5, maxX: 0.5, maxY: y + 0.5 }), `${corners} ${y}`).toBe(true);
    // The same outline begun at another corner, a tenth of the way round, and windows in its left half.
    const ring = circle(100, corners);
    const at = 2 * Math.floor(corners / 10);
    const turned = windowTest(solid(Float64Array.of(...ring.slice(at), ...ring.slice(0, at))));
    for (let y = -60; y <= 60; y += 1.7)
      expect(turned({ minX: -30.5, minY: y - 0.5, maxX: -29.5, maxY: y + 0.5 }), `${corners} ${y}`).toBe(true);
    const beside = windowTest({ outer: circle(100, corners), holes: [circle(70, corners).reverse()] });
    for (let y = -60; y <= 60; y += 1.7)
      expect(beside({ minX: -0.5, minY: y - 0.5, maxX: 0.5, maxY: y + 0.5 }), `${corners} ${y}`).toBe(false);
  }
});

test("of a piece of 3000 corners a sheet looks at those near it", () => {
  const meets = windowTest(solid(circle(100, 3000)));
  vi.mocked(segmentMeetsBox).mockClear();
  for (let y = -120; y < 120; y += 10)
    for (let x = -120; x < 120; x += 10) meets({ minX: x, minY: y, maxX: x + 10, maxY: y + 10 });
  // 576 windows, each edge near about two of them.
  expect(vi.mocked(segmentMeetsBox).mock.calls.length).toBeLessThan(4 * 3000);
});
