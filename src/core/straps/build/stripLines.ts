import { segmentContour } from "../../geometry/contourShapes.ts";
import type { LineNote, PieceLine } from "../../materials/cutPiece.ts";
import { type StitchRow, TRADE } from "../constructions/construction.ts";
import { foldLinesOf, type SolvedStrip } from "../section/foldSection.ts";

/** Where a point `x` across the finished strap lies on the flat strip's face run; null when that run does not pass it. */
function flatOnFace(strip: SolvedStrip, x: number): number | null {
  const run = strip.segments.filter((segment) => segment.kind === "run")[strip.plan.face];
  if (!run || x < Math.min(run.fromX, run.toX) || x > Math.max(run.fromX, run.toX)) return null;
  return run.flatFrom + Math.abs(x - run.fromX);
}

/**
 * What is drawn along a flat strip: fold lines, tape lines near its raw edges, seam and topstitch lines.
 *
 * Units: mm; the strip lies along x from 0 to `length`, y from its lower edge. `trim` is cut off again on each side.
 */
export function stripLines(
  strip: SolvedStrip,
  length: number,
  finishedWidth: number,
  trim: number,
  rows: readonly StitchRow[],
  taped: boolean,
): readonly PieceLine[] {
  const width = strip.width + 2 * trim;
  const along = (role: PieceLine["role"], y: number, note: LineNote): PieceLine => ({
    role,
    contour: segmentContour(0, y, length, y),
    note,
  });
  const lines = foldLinesOf(strip).map((y) => along("fold", y + trim, "fold"));
  if (taped && width > 4 * TRADE.tapeFromEdge) {
    lines.push(along("tape", TRADE.tapeFromEdge, "tape"), along("tape", width - TRADE.tapeFromEdge, "tape"));
  }
  // A seam of a turned strap runs along both raw edges of the strip, whether it takes one row or two.
  const seam = rows.find((row) => row.kind === "construction");
  if (seam) lines.push(along("stitch", seam.mm, "seam"), along("stitch", width - seam.mm, "seam"));
  for (const row of rows) {
    if (row.kind === "construction") continue;
    const y = flatOnFace(strip, row.from === "left" ? row.mm : finishedWidth - row.mm);
    if (y !== null) lines.push(along("stitch", y + trim, "topstitch"));
  }
  if (trim > 0) lines.push(along("mark", trim, "trim"), along("mark", width - trim, "trim"));
  return lines;
}
