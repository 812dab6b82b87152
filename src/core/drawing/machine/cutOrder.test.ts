import { expect, test } from "vitest";
import type { Contour } from "../../geometry/contour.ts";
import { contourBox, flattenContour } from "../../geometry/contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "../../geometry/contourShapes.ts";
import { isInsideRing } from "../../geometry/inside.ts";
import { seededRng } from "../../lay/search/rng.ts";
import { type CutPath, cutOrder } from "./cutOrder.ts";

/** The same contour from each place it can be started at, as text. */
const aroundOf = ({ vertices, closed }: Contour): string[] => {
  const points = Array.from({ length: vertices.length / 3 }, (_, i) => vertices.slice(3 * i, 3 * i + 3).join(" "));
  if (!closed) {
    const back = points.map((_, i) => {
      const from = points.length - 1 - i;
      return [vertices[3 * from], vertices[3 * from + 1], from > 0 ? -vertices[3 * from - 1]! : 0].join(" ");
    });
    return [points.join(), back.join()];
  }
  return points.map((_, i) => [...points.slice(i), ...points.slice(0, i)].join());
};

test("whatever is cut, every path is there once, none before what lies in it, each the nearest that may be next", () => {
  const rng = seededRng(7);
  for (let round = 0; round < 40; round++) {
    const paths = Array.from({ length: 9 }, (_, i): CutPath => {
      const [x, y, wide, high] = [rng.below(200), rng.below(200), 4 + rng.below(90), 4 + rng.below(90)];
      const kinds = [
        rectangleContour(x, y, wide, high),
        circleContour(x, y, wide / 2),
        straightContour([x, y, x + wide, y, x + wide, y + high]),
        { vertices: Float64Array.of(x, y, 0.5, x + wide, y, 0, x + wide, y + high, 0), closed: false },
      ];
      return { contour: kinds[i % 4]!, owner: undefined };
    });
    const order = cutOrder(paths);
    expect(order).toHaveLength(paths.length);
    const known = paths.map(({ contour }) => aroundOf(contour));
    const indices = order.map(({ contour }) => {
      const own = Array.from({ length: contour.vertices.length / 3 }, (_, i) =>
        contour.vertices.slice(3 * i, 3 * i + 3).join(" "),
      ).join();
      return known.findIndex((all) => all.includes(own));
    });
    expect([...indices].sort()).toEqual(paths.map((_, i) => i));
    const inside = (i: number, j: number): boolean => {
      const [inner, outer] = [paths[i]!.contour, paths[j]!.contour];
      if (!outer.closed) return false;
      const [a, b] = [contourBox(inner), contourBox(outer)];
      const holds = a.minX >= b.minX && a.maxX <= b.maxX && a.minY >= b.minY && a.maxY <= b.maxY;
      return (
        holds &&
        (a.maxX - a.minX < b.maxX - b.minX || a.maxY - a.minY < b.maxY - b.minY) &&
        isInsideRing(flattenContour(outer, 0.05), inner.vertices[0]!, inner.vertices[1]!)
      );
    };
    let [x, y] = [0, 0];
    for (const [at, { contour }] of order.entries()) {
      const left = indices.slice(at);
      const starts = (i: number): [number, number][] => {
        const { vertices, closed } = paths[i]!.contour;
        const all = Array.from({ length: vertices.length / 3 }, (_, k): [number, number] => [
          vertices[3 * k]!,
          vertices[3 * k + 1]!,
        ]);
        return closed ? all : [all[0]!, all.at(-1)!];
      };
      const near = left
        .filter((i) => !left.some((j) => j !== i && inside(j, i)))
        .map((i) => Math.min(...starts(i).map(([px, py]) => Math.hypot(px - x, py - y))));
      const { vertices, closed } = contour;
      expect(left.some((j) => j !== indices[at] && inside(j, indices[at]!))).toBe(false);
      expect(Math.hypot(vertices[0]! - x, vertices[1]! - y)).toBeCloseTo(Math.min(...near), 6);
      [x, y] = closed ? [vertices[0]!, vertices[1]!] : [vertices.at(-3)!, vertices.at(-2)!];
    }
  }
});

test("two paths that are the same lie in neither, wherever they are", () => {
  for (const [x, y] of [
    [50, 60],
    [-50, -60],
    [-50, 60],
    [50, -60],
  ] as const) {
    const twice = [0, 1].map(() => ({ contour: rectangleContour(x, y, 20, 10), owner: undefined }));
    expect(cutOrder(twice)).toHaveLength(2);
    // One higher, one wider: neither lies in the other.
    const crossed = [rectangleContour(x, y, 20, 10), rectangleContour(x + 5, y - 5, 10, 20)];
    expect(cutOrder(crossed.map((contour) => ({ contour, owner: undefined })))).toHaveLength(2);
  }
});

test("of corners that are equally near, a path begins at its first", () => {
  const [only] = cutOrder([{ contour: rectangleContour(-5, 3, 10, 4), owner: undefined }]);
  expect([...only!.contour.vertices.slice(0, 2)]).toEqual([-5, 3]);
});
