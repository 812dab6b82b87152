// Outlines have no place of their own: turned and shifted, everything that is asked of them is turned and shifted too.
import { expect, test } from "vitest";
import type { Contour } from "./contour.ts";
import {
  contourBox,
  contourEdges,
  edgeCircle,
  edgeDirection,
  flattenContour,
  poseContour,
  startBeside,
} from "./contourArcs.ts";
import { contourCrossing } from "./contourCrossing.ts";
import { contourArea, contourLength, pointAlong } from "./contourEdgeLengths.ts";
import { addCorner, bowEdge, edgePoint, moveCorner, removeCorner, stretchEdge } from "./contourEdits.ts";
import { fewerCorners } from "./fewerCorners.ts";
import { insertTooth } from "./insertTooth.ts";
import { kerfContour } from "./kerfContour.ts";
import { offsetEdges } from "./offsetEdges.ts";
import { pointOnContour } from "./pointOnContour.ts";
import { poseRing } from "./pose.ts";
import { unevenOffset } from "./unevenOffset.ts";

/** A panel with a straight foot, a side that bows out, one that bows in, and a corner nearly on a line. */
const PANEL: Contour = {
  vertices: Float64Array.of(0, 0, 0, 60, 0, 0.3, 70, 50, 0, 40, 60.004, 0, 10, 70, -0.2, -5, 30, 0),
  closed: true,
};
const POSES = [
  { x: 130, y: -70, turnDeg: 0, mirrored: false },
  { x: -45, y: 210, turnDeg: 90, mirrored: false },
  { x: 80, y: 95, turnDeg: 217, mirrored: false },
];
const WIDTHS = [3, 5, 2, 4, 6, 0];

test.each(POSES)("at %o an outline has the same size, and edits of it lie where theirs do", (pose) => {
  const laid = poseContour(PANEL, pose);
  const put = (x: number, y: number): readonly [number, number] => {
    const [px, py] = poseRing(Float64Array.of(x, y), pose);
    return [px!, py!];
  };
  const same = (here: Contour | null, there: Contour | null): void => {
    expect([...here!.vertices]).toEqual([...poseContour(there!, pose).vertices].map((v) => expect.closeTo(v, 6)));
  };
  expect(contourArea(laid)).toBeCloseTo(contourArea(PANEL), 6);
  expect(contourLength(laid)).toBeCloseTo(contourLength(PANEL), 9);
  expect(contourCrossing(laid)).toBeNull();
  // A box turned by quarters is a box; aslant the outline's points tell it.
  const points = flattenContour(laid, 1e-6);
  const xs = [...points].filter((_, i) => i % 2 === 0);
  expect(contourBox(laid).minX).toBeCloseTo(Math.min(...xs), 4);
  expect(contourBox(laid).maxX).toBeCloseTo(Math.max(...xs), 4);
  for (let i = 0; i < 6; i++) {
    const length = Math.hypot(
      contourEdges(PANEL)[i]!.x1 - contourEdges(PANEL)[i]!.x0,
      contourEdges(PANEL)[i]!.y1 - contourEdges(PANEL)[i]!.y0,
    );
    for (const fromEnd of [false, true]) {
      same(stretchEdge(laid, i, 33, fromEnd), stretchEdge(PANEL, i, 33, fromEnd));
      const stretched = contourEdges(stretchEdge(laid, i, length + 7, fromEnd))[i]!;
      expect(Math.hypot(stretched.x1 - stretched.x0, stretched.y1 - stretched.y0)).toBeCloseTo(length + 7, 9);
    }
    same(addCorner(laid, i, 0.3), addCorner(PANEL, i, 0.3));
    same(bowEdge(laid, i, 6), bowEdge(PANEL, i, 6));
    same(removeCorner(laid, i), removeCorner(PANEL, i));
    const [mx, my] = put(12, 34);
    same(moveCorner(laid, i, mx, my), moveCorner(PANEL, i, 12, 34));
    const [edge, own] = [contourEdges(laid)[i]!, contourEdges(PANEL)[i]!];
    for (const share of [0.2, 0.5]) expect(edgePoint(edge, share)).toEqual(near(put(...edgePoint(own, share))));
    for (const end of [0, 1] as const) {
      const [dx, dy] = edgeDirection(own, end);
      const [ox, oy] = put(0, 0);
      const [tx, ty] = put(dx, dy);
      expect(edgeDirection(edge, end)).toEqual(near([tx - ox, ty - oy]));
    }
    expect(startBeside(edge, edgeDirection(edge, 0), 2)).toEqual(
      near(put(...startBeside(own, edgeDirection(own, 0), 2))),
    );
    // A tooth on the middle of each edge, 4 mm out; on the arcs' own circle.
    const [x, y] = edgePoint(own, 0.5);
    const [tip, laidTip] = [[x + 4, y - 3] as const, put(x + 4, y - 3)];
    same(insertTooth(laid, put(x, y), 2, laidTip), insertTooth(PANEL, [x, y], 2, tip));
    const [px, py, nx, ny] = pointAlong(own, 9);
    const [lx, ly] = put(px, py);
    const [ex, ey] = put(px + nx, py + ny);
    expect(pointAlong(edge, 9)).toEqual(near([lx, ly, ex - lx, ey - ly]));
    if (own.bulge === 0) continue;
    const [circle, ownCircle] = [edgeCircle(edge), edgeCircle(own)];
    expect([circle.x, circle.y]).toEqual(near(put(ownCircle.x, ownCircle.y)));
    expect([circle.radius, circle.sweep]).toEqual(near([ownCircle.radius, ownCircle.sweep]));
  }
  same(fewerCorners(laid, 0.01), fewerCorners(PANEL, 0.01));
  for (const kerf of [0.4, -0.4]) same(kerfContour(laid, kerf), kerfContour(PANEL, kerf));
  for (const sign of [1, -1]) {
    const widths = WIDTHS.map((width) => sign * width);
    for (const each of [widths, WIDTHS.map(() => 4 * sign)]) {
      const [moved, plain] = [offsetEdges(laid, each)!, offsetEdges(PANEL, each)!];
      // Chords of a hundredth fall elsewhere on an arc that lies elsewhere.
      expect(contourArea(moved.contour) / contourArea(plain.contour)).toBeCloseTo(1, 4);
      expect(moved.starts).toEqual(plain.starts);
    }
    const areas = [laid, PANEL].map((one) => unevenOffset(one, widths).map(({ outer }) => contourAreaOf(outer)));
    expect(areas[0]).toEqual(areas[1]!.map((area) => expect.closeTo(area, 2)));
  }
  for (const [x, y] of [
    [-20, 10],
    [30, 20],
    [90, 30],
    [0, 50],
    [100, 100],
  ] as const) {
    const [here, there] = [pointOnContour(laid, ...put(x, y)), pointOnContour(PANEL, x, y)];
    expect(here).toEqual({
      edge: there.edge,
      at: expect.closeTo(there.at, 6),
      distance: expect.closeTo(there.distance, 9),
    });
  }
});

const near = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));
const contourAreaOf = (ring: Float64Array): number => {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
    twice += ring[j]! * ring[i + 1]! - ring[i]! * ring[j + 1]!;
  return twice / 2;
};
