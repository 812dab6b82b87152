import { type Box, ringBox } from "../../geometry/box.ts";
import { type Orientation, posePolygon } from "../../geometry/pose.ts";
import type { LayPlan, StockPlacement } from "../../lay/problem/layProblem.ts";
import type { GrainArrow } from "../lay/labelBlock.ts";
import { type LaySheet, layDrawing, type PieceArt } from "../lay/layDrawing.ts";
import { seamsOf, type Tiling, type TilingOptions, tilePieces, usableSize } from "./tiling.ts";

/** A piece to have on paper once, as it lies on its cloth. */
export interface Pattern {
  readonly id: string;
  readonly art: PieceArt;
  readonly orientation: Orientation;
  readonly grain: GrainArrow;
}

/** Room between patterns, mm. */
const GAP = 6;
const STOCK = "patterns";

/**
 * One of each pattern side by side in rows, the cloth's length from left to right, in the arrangement of rows that
 * needs the fewest sheets of paper. Null when there is none. Cost O(patterns · arrangements).
 */
export function patternSheet(patterns: readonly Pattern[], paper: TilingOptions): LaySheet | null {
  if (patterns.length === 0) return null;
  const usable = usableSize(paper, false);
  const step = Math.min(usable.width, usable.height) - paper.overlap;
  let best: { width: number; tiling: Tiling } | null = null;
  for (let columns = 1; columns <= 8; columns++) {
    const width = columns * step + paper.overlap;
    const tiling = tilePieces(rowsOf(patterns, width, []).copies, paper);
    if (!best || tiling.tiles.length < best.tiling.tiles.length) best = { width, tiling };
  }
  return rowsOf(patterns, best!.width, seamsOf(best!.tiling));
}

function rowsOf(patterns: readonly Pattern[], width: number, seams: readonly Box[]): LaySheet {
  const boxed = patterns
    .map((pattern) => ({
      pattern,
      box: ringBox(posePolygon(pattern.art.outline, { ...pattern.orientation, x: 0, y: 0 }).outer),
    }))
    .sort((a, b) => b.box.maxY - b.box.minY - (a.box.maxY - a.box.minY));
  const placements: StockPlacement[] = [];
  let x = 0;
  let y = 0;
  let rowHeight = 0;
  let far = 0;
  for (const { pattern, box } of boxed) {
    const along = box.maxX - box.minX;
    const across = box.maxY - box.minY;
    if (x > 0 && x + along > width) {
      x = 0;
      y += rowHeight + GAP;
      rowHeight = 0;
    }
    const { turnDeg, mirrored } = pattern.orientation;
    placements.push({
      pieceId: pattern.id,
      copy: 0,
      stockId: STOCK,
      turnDeg,
      mirrored,
      x: x - box.minX,
      y: y - box.minY,
    });
    x += along + GAP;
    rowHeight = Math.max(rowHeight, across);
    far = Math.max(far, x - GAP);
  }
  return drawn(patterns, placements, far, y + rowHeight, seams);
}

/** The patterns drawn without any cloth under them, each with its own kind of grain arrow. */
function drawn(
  patterns: readonly Pattern[],
  placements: readonly StockPlacement[],
  length: number,
  width: number,
  seams: readonly Box[],
): LaySheet {
  const stock = { kind: "roll" as const, id: STOCK, width, length: null, flaws: [] };
  const art = new Map(patterns.map((pattern) => [pattern.id, pattern.art]));
  const kinds = [...new Set(patterns.map((pattern) => pattern.grain))];
  const sheets = kinds.map((grain) => {
    const ids = new Set(patterns.filter((pattern) => pattern.grain === grain).map((pattern) => pattern.id));
    const plan: LayPlan = {
      materialId: STOCK,
      placements: placements.filter((placement) => ids.has(placement.pieceId)),
      unplaced: [],
      uses: [{ stockId: STOCK, usedLength: length, bound: null }],
      evaluations: 0,
      seed: 0,
    };
    // One of each: no copies are counted, so the language does not show.
    return layDrawing(stock, plan, art, grain, "en", seams);
  });
  const items = sheets
    .flatMap((sheet) => sheet.drawing.items)
    .filter((item) => (item.kind === "area" ? item.tone !== "cloth" : item.role !== "cloth"));
  return {
    stockId: STOCK,
    drawing: { box: { minX: 0, minY: 0, maxX: length, maxY: width }, items },
    copies: sheets.flatMap((sheet) => sheet.copies),
    usedLength: length,
  };
}
