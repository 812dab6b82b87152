import { straightContour } from "../../geometry/contourShapes.ts";
import type { PieceLine } from "../../materials/cutPiece.ts";
import { drawn, outlineOf, type ShapeRecord, SIZE, shapeRecord } from "./shapeRecord.ts";

/**
 * The bag of a zip pocket in one piece, folded up at its middle: `height` is that of the pocket. The window for the
 * zip is drawn: the box to stitch and the line to cut in it, with its ends split into the corners.
 */
export const zipPocket: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "width", ...SIZE, usual: 220 },
    { id: "height", ...SIZE, usual: 160 },
    { id: "window", ...SIZE, usual: 180 },
    { id: "windowWidth", ...SIZE, usual: 10, otherwise: 10 },
    { id: "drop", ...SIZE, usual: 30, otherwise: 30 },
  ],
  outline: ({ width, height, window, windowWidth, drop }) => {
    if (window >= width) return { dimension: "window", mm: window, leastMm: null, mostMm: width };
    if (windowWidth >= window) return { dimension: "windowWidth", mm: windowWidth, leastMm: null, mostMm: window };
    const least = windowWidth / 2;
    if (drop <= least || drop + least >= height)
      return { dimension: "drop", mm: drop, leastMm: least, mostMm: height - least };
    const whole = 2 * height;
    const lines = windowLines(width / 2, whole - drop, window, windowWidth);
    return outlineOf(
      [
        [0, 0, 0, "bottom"],
        [width, 0, 0, "right"],
        [width, whole, 0, "top"],
        [0, whole, 0, "left"],
      ],
      { lines: [drawn("fold", [0, height], [width, height]), ...lines], arrowDeg: 90 },
    );
  },
  places: ({ width, height, window, drop }) => [
    { dimension: "width", from: [0, 0], to: [width, 0], off: -1 },
    { dimension: "height", from: [0, 0], to: [0, height], off: 1 },
    {
      dimension: "window",
      from: [(width - window) / 2, 2 * height - drop],
      to: [(width + window) / 2, 2 * height - drop],
      off: -1,
    },
    { dimension: "drop", from: [width, 2 * height - drop], to: [width, 2 * height], off: -1 },
  ],
});

/** The window round (x, y), and its cut: along the middle, forked into the corners. */
function windowLines(x: number, y: number, length: number, width: number): PieceLine[] {
  const [left, right, low, high] = [x - length / 2, x + length / 2, y - width / 2, y + width / 2];
  // The forks leave the middle line as far from the ends as the window is wide (common practice, no source).
  const fork = Math.min(width, length / 2);
  return [
    { role: "stitch", contour: straightContour([left, low, right, low, right, high, left, high], true) },
    drawn("mark", [left + fork, y], [right - fork, y]),
    drawn("mark", [left, low], [left + fork, y], [left, high]),
    drawn("mark", [right, low], [right - fork, y], [right, high]),
  ];
}
