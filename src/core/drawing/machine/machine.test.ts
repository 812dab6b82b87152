import { expect, test } from "vitest";
import type { Contour } from "../../geometry/contour.ts";
import { contourBox, contourEdges, edgeCircle, flattenContour } from "../../geometry/contourArcs.ts";
import { circleContour, rectangleContour, straightContour } from "../../geometry/contourShapes.ts";
import { drawLine } from "../list/items.ts";
import { bladePath, tangents } from "./bladePath.ts";
import { type CutPath, cutOrder } from "./cutOrder.ts";
import { cutPaths, type MachineWish, machineDrawing } from "./machineDrawing.ts";
import { cornerOvercuts, overcutPath } from "./overcut.ts";

const wish: MachineWish = {
  bedWidth: 300,
  bedHeight: 300,
  grip: 6,
  kerf: 0,
  bladeOffset: 0,
  overcut: 0,
  sharedOnce: false,
  order: "nearest",
};
const path = (contour: Contour) => ({ contour, owner: undefined });

test("what lies inside is cut before what is around it, then the nearest next", () => {
  const outer = rectangleContour(0, 0, 100, 100);
  const hole = circleContour(50, 50, 10);
  const far = rectangleContour(200, 0, 10, 10);
  const near = rectangleContour(110, 0, 10, 10);
  const order = cutOrder([outer, far, near, hole].map(path)).map(({ contour }) => contourBox(contour).minX);
  expect(order).toEqual([40, 0, 110, 200]);
});

test("closed paths start at the vertex nearest to where the last one ended", () => {
  const [, second] = cutOrder([rectangleContour(0, 0, 10, 10), rectangleContour(-30, -30, 20, 20)].map(path));
  expect([second!.contour.vertices[0], second!.contour.vertices[1]]).toEqual([-10, -10]);
});

// Common practice, no source: a kerf is centred on the line, so a 2 × 4 in part at 0.2 mm kerf is drawn 0.2 mm larger.
test("kerf: parts are drawn larger, their holes smaller, arcs kept", () => {
  const part = drawLine("cut", rectangleContour(0, 0, 101.6, 50.8), "p#0");
  const hole = drawLine("cut", circleContour(50, 25, 10), "p#0");
  const [first, second] = cutPaths([part, hole], { ...wish, kerf: 0.2 }).map(({ contour }) => contour);
  const box = contourBox(second!);
  expect(box.maxX - box.minX).toBeCloseTo(101.8, 9);
  expect(box.maxY - box.minY).toBeCloseTo(51, 9);
  expect(edgeCircle(contourEdges(first!)[0]!).radius).toBeCloseTo(9.9, 9);
});

test("a drag knife's tip stays on the contour: the holder is one offset ahead of it everywhere", () => {
  const shape: Contour = {
    vertices: Float64Array.of(0, 0, 0, 40, 0, Math.tan(Math.PI / 8), 50, 10, 0, 50, 30, 0, 0, 30, 0),
    closed: true,
  };
  const ring = flattenContour(shape, 0.001);
  const holder = bladePath(shape, 0.25);
  expect(holder.closed).toBe(false);
  // Walk the holder and drag the tip behind it; the tip must keep to the shape.
  let tipX = 0;
  let tipY = 0;
  let worst = 0;
  for (const [x, y] of walked(holder, 0.01)) {
    const away = Math.hypot(x - tipX, y - tipY);
    const pull = away > 0.25 ? 1 - 0.25 / away : 0;
    tipX += (x - tipX) * pull;
    tipY += (y - tipY) * pull;
    worst = Math.max(worst, distanceTo(ring, tipX, tipY));
  }
  expect(worst).toBeLessThan(0.005);
  expect(Math.hypot(tipX, tipY)).toBeLessThan(0.01);
});

test("overcut goes on along the first edge", () => {
  const out = overcutPath(rectangleContour(0, 0, 10, 5), 1);
  expect([...out.vertices].slice(-6)).toEqual([0, 0, 0, 1, 0, 0]);
  expect(contourEdges(overcutPath(circleContour(0, 0, 10), 1))).toHaveLength(3);
});

test("corner overcuts run into waste: outward at an outline's corners, inward at a hole's, none at round ones", () => {
  const ends = (marks: readonly Contour[]) => marks.map(({ vertices }) => [...vertices].map((n) => Math.round(n)));
  // An L: five corners that point outward, one that points in.
  const shape = straightContour([0, 0, 20, 0, 20, 10, 10, 10, 10, 20, 0, 20], true);
  expect(cornerOvercuts(shape, 2, false)).toHaveLength(10);
  expect(ends(cornerOvercuts(shape, 2, true))).toEqual([
    [10, 10, 0, 8, 10, 0],
    [10, 8, 0, 10, 10, 0],
  ]);
  expect(ends(cornerOvercuts(rectangleContour(0, 0, 10, 5), 1, false)).flat()).toEqual([
    ...[10, 0, 0, 11, 0, 0],
    ...[10, -1, 0, 10, 0, 0],
    ...[10, 5, 0, 10, 6, 0],
    ...[11, 5, 0, 10, 5, 0],
    ...[0, 5, 0, -1, 5, 0],
    ...[0, 6, 0, 0, 5, 0],
    ...[0, 0, 0, 0, -1, 0],
    ...[-1, 0, 0, 0, 0, 0],
  ]);
  expect(cornerOvercuts(circleContour(0, 0, 10), 1, false)).toEqual([]);
  expect(cornerOvercuts(shape, 0, false)).toEqual([]);
});

test("cut piece by piece, one piece is done before the next begins", () => {
  const cuts = [
    { contour: circleContour(18, 10, 1), owner: "a#0" },
    { contour: circleContour(22, 10, 1), owner: "b#0" },
    { contour: rectangleContour(0, 0, 20, 20), owner: "a#0" },
    { contour: rectangleContour(20, 0, 20, 20), owner: "b#0" },
  ];
  const owners = (paths: readonly CutPath[], by: "nearest" | "piece") =>
    cutOrder(paths, by).map(({ owner }) => owner![0]);
  expect(owners(cuts, "nearest").slice(0, 2)).toEqual(["a", "b"]);
  expect(owners(cuts, "piece")).toEqual(["a", "a", "b", "b"]);
  // A piece in the hole of another comes before the other's outlines, whatever the order.
  const nested = [
    { contour: rectangleContour(0, 0, 100, 100), owner: "frame#0" },
    { contour: circleContour(5, 5, 1), owner: "frame#0" },
    { contour: rectangleContour(20, 20, 60, 60), owner: "frame#0" },
    { contour: circleContour(50, 50, 10), owner: "disc#0" },
  ];
  expect(owners(nested, "piece")).toEqual(["f", "d", "f", "f"]);
});

test("an edge that two pieces share is cut once when asked", () => {
  const pair = [
    drawLine("cut", rectangleContour(0, 0, 10, 10), "a#0"),
    drawLine("cut", rectangleContour(10, 0, 10, 10), "b#0"),
  ];
  const edges = (sharedOnce: boolean) =>
    cutPaths(pair, { ...wish, sharedOnce }).flatMap(({ contour }) => contourEdges(contour)).length;
  expect(edges(false)).toBe(8);
  expect(edges(true)).toBe(7);
});

test("a mat's drawing is the whole bed, pieces moved in by the grip, a check square off the cut layer", () => {
  const drawing = machineDrawing(
    {
      stockId: "mat 1",
      drawing: {
        box: { minX: 0, minY: 0, maxX: 288, maxY: 288 },
        items: [
          drawLine("cloth", rectangleContour(0, 0, 288, 288)),
          drawLine("cut", straightContour([0, 0, 9, 0, 0, 9], true)),
        ],
      },
      copies: [],
      usedLength: 9,
    },
    wish,
    "de",
  );
  expect(drawing.box).toEqual({ minX: 0, minY: 0, maxX: 300, maxY: 300 });
  expect(drawing.items.map((item) => (item.kind === "area" ? "area" : item.role))).toEqual([
    "sheet",
    "sheet",
    "cut",
  ]);
  const cut = drawing.items.at(-1)!;
  const words = drawing.items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(words).toEqual(["100 mm hoch und quer: nicht schneiden"]);
  expect(cut.kind === "line" && [...cut.contour.vertices].slice(0, 2)).toEqual([6, 6]);
});

/** Points along a contour, `step` mm apart. */
function walked(contour: Contour, step: number): [number, number][] {
  const points: [number, number][] = [];
  for (const edge of contourEdges(contour)) {
    const arc = edge.bulge === 0 ? null : edgeCircle(edge);
    const length = arc ? arc.radius * Math.abs(arc.sweep) : Math.hypot(edge.x1 - edge.x0, edge.y1 - edge.y0);
    const parts = Math.max(1, Math.ceil(length / step));
    for (let i = 0; i <= parts; i++) {
      const t = i / parts;
      if (!arc) points.push([edge.x0 + t * (edge.x1 - edge.x0), edge.y0 + t * (edge.y1 - edge.y0)]);
      else {
        const angle = arc.start + t * arc.sweep;
        points.push([arc.x + arc.radius * Math.cos(angle), arc.y + arc.radius * Math.sin(angle)]);
      }
    }
  }
  return points;
}

/** Distance from a point to a closed ring. */
function distanceTo(ring: Float64Array, x: number, y: number): number {
  let least = Infinity;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [ax, ay, bx, by] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
    const at = Math.min(1, Math.max(0, t));
    least = Math.min(least, Math.hypot(x - ax - at * (bx - ax), y - ay - at * (by - ay)));
  }
  return least;
}

test("tangents of an arc are square to its radius", () => {
  const [start, end] = tangents(contourEdges(circleContour(0, 0, 5))[0]!);
  expect(start[0]).toBeCloseTo(0, 12);
  expect(start[1]).toBeCloseTo(-1, 12);
  expect(end[1]).toBeCloseTo(1, 12);
});
