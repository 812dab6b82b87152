import fc from "fast-check";
import { expect, test } from "vitest";
import { type Frame, fitFrame, frameMatrix, shiftToTable, toScreen, toTable, zoomFrame } from "./frame.ts";

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
