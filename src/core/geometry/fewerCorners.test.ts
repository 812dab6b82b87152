import fc from "fast-check";
import { expect, test } from "vitest";
import { contourEdges } from "./contourArcs.ts";
import { fewerCorners } from "./fewerCorners.ts";

const closed = (...vertices: number[]) => ({ vertices: Float64Array.from(vertices), closed: true });

test("corners on the straight go, the others stay", () => {
  const rectangle = closed(0, 0, 0, 5, 0.001, 0, 10, 0, 0, 10, 5, 0, 0, 5, 0);
  expect([...fewerCorners(rectangle, 0.005).vertices]).toEqual([0, 0, 0, 10, 0, 0, 10, 5, 0, 0, 5, 0]);
  expect(fewerCorners(rectangle, 0.0005)).toEqual(rectangle);
});

test("arcs and their ends stay", () => {
  const slot = closed(0, 0, 0, 5, 0, 0, 10, 0, 1, 10, 5, 0, 5, 5, 0, 0, 5, 1);
  expect([...fewerCorners(slot, 0.005).vertices]).toEqual([0, 0, 0, 10, 0, 1, 10, 5, 0, 0, 5, 1]);
});

test("an open line keeps its ends", () => {
  const line = { vertices: Float64Array.of(0, 0, 0, 3, 0, 0, 7, 0, 0, 9, 0, 0), closed: false };
  expect([...fewerCorners(line, 0.005).vertices]).toEqual([0, 0, 0, 9, 0, 0]);
});

// A chord that keeps within s of a circle of radius r spans 2 acos(1 − s / r): own trigonometry.
test("a circle of 3000 corners keeps about as many as chords within the tolerance need", () => {
  const radius = 150;
  const circle = Array.from({ length: 3000 }, (_, i) => {
    const a = (2 * Math.PI * i) / 3000;
    return [radius * Math.cos(a), radius * Math.sin(a), 0];
  });
  const least = Math.PI / Math.acos(1 - 0.005 / radius);
  const kept = fewerCorners(closed(...circle.flat()), 0.005).vertices.length / 3;
  expect(kept).toBeGreaterThanOrEqual(Math.floor(least));
  expect(kept).toBeLessThan(2 * least);
});

test("every corner that went is within the tolerance of what stayed", () => {
  const corner = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }));
  fc.assert(
    fc.property(fc.array(corner, { minLength: 3, maxLength: 60 }), fc.integer({ min: 0, max: 9 }), (at, within) => {
      const contour = closed(...at.flatMap(([x, y]) => [x, y, 0]));
      const edges = contourEdges(fewerCorners(contour, within));
      for (const [x, y] of at) {
        const away = edges.map(({ x0, y0, x1, y1 }) => {
          const long = (x1 - x0) ** 2 + (y1 - y0) ** 2;
          const t = long === 0 ? 0 : ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / long;
          const share = Math.min(1, Math.max(0, t));
          return Math.hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0));
        });
        expect(Math.min(...away)).toBeLessThanOrEqual(within + 1e-9);
      }
    }),
  );
});
