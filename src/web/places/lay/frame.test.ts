import fc from "fast-check";
import { expect, test } from "vitest";
import {
  clearFrame,
  type Frame,
  fitFrame,
  frameMatrix,
  shiftToTable,
  toScreen,
  toTable,
  zoomFrame,
} from "./frame.ts";

const length = fc.double({ min: -5000, max: 5000, noNaN: true });
const frames: fc.Arbitrary<Frame> = fc.record({
  scale: fc.double({ min: 0.02, max: 15, noNaN: true }),
  originX: length,
  originY: length,
  upright: fc.boolean(),
});

test("screen and table are each other's way back", () => {
  fc.assert(
    fc.property(frames, length, length, (frame, x, y) => {
      const [sx, sy] = toScreen(frame, x, y);
      const [bx, by] = toTable(frame, sx, sy);
      expect(bx).toBeCloseTo(x, 6);
      expect(by).toBeCloseTo(y, 6);
    }),
  );
});

test("the matrix draws what toScreen says", () => {
  fc.assert(
    fc.property(frames, length, length, (frame, x, y) => {
      const [a, b, c, d, e, f] = frameMatrix(frame).slice(7, -1).split(" ").map(Number) as number[];
      const [sx, sy] = toScreen(frame, x, y);
      expect(a! * x + c! * y + e!).toBeCloseTo(sx, 6);
      expect(b! * x + d! * y + f!).toBeCloseTo(sy, 6);
      // A turn, never a mirror image: the determinant keeps the sign of the y flip.
      expect(a! * d! - b! * c!).toBeLessThan(0);
    }),
  );
});

test("zooming holds the point under the finger still", () => {
  fc.assert(
    fc.property(frames, fc.double({ min: 0.2, max: 5, noNaN: true }), length, length, (frame, factor, x, y) => {
      const [tx, ty] = toTable(frame, x, y);
      const [sx, sy] = toScreen(zoomFrame(frame, factor, x, y), tx, ty);
      expect(sx).toBeCloseTo(x, 4);
      expect(sy).toBeCloseTo(y, 4);
    }),
  );
});

test("a fitted box lies on the screen", () => {
  const box = { minX: -20, minY: 10, maxX: 1480, maxY: 1080 };
  for (const upright of [true, false]) {
    const frame = fitFrame(box, { width: 800, height: 600 }, upright);
    for (const [x, y] of [
      [box.minX, box.minY],
      [box.maxX, box.maxY],
    ] as const) {
      const [sx, sy] = toScreen(frame, x, y);
      expect(sx).toBeGreaterThanOrEqual(23.9);
      expect(sx).toBeLessThanOrEqual(776.1);
      expect(sy).toBeGreaterThanOrEqual(23.9);
      expect(sy).toBeLessThanOrEqual(576.1);
    }
  }
  expect(shiftToTable({ scale: 2, originX: 0, originY: 0, upright: false }, 10, 10)).toEqual([5, -5]);
});

test("no button lies over a fitted box, and a box that is clear of them is as large as without", () => {
  const sizes = fc.record({ dx: fc.integer({ min: 100, max: 6000 }), dy: fc.integer({ min: 100, max: 2000 }) });
  const views = fc.constantFrom(
    { screen: { width: 330, height: 390 }, upright: true, corner: "bottom-right", width: 160, height: 53 } as const,
    {
      screen: { width: 700, height: 500 },
      upright: false,
      corner: "bottom-right",
      width: 160,
      height: 53,
    } as const,
    { screen: { width: 1200, height: 500 }, upright: false, corner: "top-right", width: 55, height: 160 } as const,
  );
  let moved = 0;
  fc.assert(
    fc.property(sizes, views, ({ dx, dy }, { screen, upright, ...buttons }) => {
      const box = { minX: -10, minY: 20, maxX: dx - 10, maxY: dy + 20 };
      const frame = clearFrame(box, screen, upright, buttons);
      const [ax, ay] = toScreen(frame, box.minX, box.minY);
      const [bx, by] = toScreen(frame, box.maxX, box.maxY);
      const [left, right, top, bottom] = [Math.min(ax, bx), Math.max(ax, bx), Math.min(ay, by), Math.max(ay, by)];
      expect(left).toBeGreaterThan(11.9);
      expect(top).toBeGreaterThan(11.9);
      expect(right).toBeLessThan(screen.width - 11.9);
      expect(bottom).toBeLessThan(screen.height - 11.9);
      const isBeside = right <= screen.width - buttons.width;
      const isPast =
        buttons.corner === "top-right" ? top >= buttons.height : bottom <= screen.height - buttons.height;
      expect(isBeside || isPast).toBe(true);
      if (frame.scale < fitFrame(box, screen, upright).scale) moved++;
    }),
    { seed: 7, numRuns: 300 },
  );
  expect(moved).toBeGreaterThan(20);
  expect(moved).toBeLessThan(280);
});
