import { type Box, EMPTY_BOX, joinedBox, ringBox } from "../../geometry/box.ts";
import { boxIndex } from "../../geometry/boxIndex.ts";
import type { Polygon } from "../../geometry/ring.ts";
import { windowTest } from "./windowTest.ts";

/** How a drawing is cut into sheets of paper. Lengths in mm. */
export interface TilingOptions {
  /** Paper, short side first; turned as needed. */
  readonly paper: { readonly width: number; readonly height: number };
  /** Left free on every side of the sheet: printers cannot reach the edge. */
  readonly margin: number;
  /** How far neighbours lie over each other. */
  readonly overlap: number;
  readonly orientation: "portrait" | "landscape" | "fewest";
  /**
   * True ÷ measured along and across the sheet as printed portrait (1, 1 for a true printer): the page is drawn
   * that much larger, so that less of the drawing fits on it.
   */
  readonly correction: { readonly x: number; readonly y: number };
}

/** Anything with an outline and a name that is to be on the sheets. */
export interface TiledPiece {
  readonly name: string;
  readonly outline: Polygon;
}

/** One sheet. */
export interface Tile {
  /** 0 at the top and at the left. */
  readonly row: number;
  readonly column: number;
  /** Row letter and column number: `A1` is top left. */
  readonly name: string;
  /** The part of the drawing on it. */
  readonly window: Box;
  readonly left: string | null;
  readonly right: string | null;
  readonly above: string | null;
  readonly below: string | null;
  /** Names of the pieces on it, each once. */
  readonly pieces: readonly string[];
}

/** Most sheets that are drawn: nobody tapes more, and each takes memory. */
export const MOST_SHEETS = 10_000;

export interface Tiling {
  /** Sheet as it lies, mm. */
  readonly width: number;
  readonly height: number;
  readonly margin: number;
  readonly overlap: number;
  readonly correction: { readonly x: number; readonly y: number };
  readonly rows: number;
  readonly columns: number;
  /** Without blank ones, row by row from the top left. */
  readonly tiles: readonly Tile[];
}

/**
 * Sheets needed in one direction: 1 when `length` fits in `usable`, else each further sheet adds usable − overlap.
 * Source: counting the steps, facts 9.9–9.12 in the unit test. RangeError unless 0 ≤ overlap < usable.
 */
export function tileCount(length: number, usable: number, overlap: number): number {
  if (!(overlap >= 0 && usable > overlap)) {
    throw new RangeError(`tileCount: 0 ≤ overlap < usable expected, got overlap ${overlap}, usable ${usable}`);
  }
  // A nanometre of tolerance, so that a length that fits exactly is not given one more sheet by rounding.
  return length <= usable + 1e-6 ? 1 : 1 + Math.ceil((length - usable) / (usable - overlap) - 1e-9);
}

/** Row letters as in a table: A … Z, AA … */
export function rowLetters(row: number): string {
  const letter = String.fromCharCode(65 + (row % 26));
  return row < 26 ? letter : rowLetters(Math.floor(row / 26) - 1) + letter;
}

/** Name of a tile: row letter, column number from 1. */
function tileName(row: number, column: number): string {
  return `${rowLetters(row)}${column + 1}`;
}

/**
 * The pieces cut into sheets: the orientation and the shift of the grid that need the fewest sheets, blank ones and
 * ones whose whole content is on their neighbours' overlaps left out. Empty when there is no piece.
 */
export function tilePieces(pieces: readonly TiledPiece[], options: TilingOptions): Tiling {
  const { orientation } = options;
  const shapes = shapesOf(pieces);
  const near = boxIndex(shapes, ({ box }) => box);
  const portrait = orientation === "landscape" ? null : bestGrid(shapes, near, options, false);
  const landscape = orientation === "portrait" ? null : bestGrid(shapes, near, options, true);
  if (portrait && landscape) return landscape.tiles.length < portrait.tiles.length ? landscape : portrait;
  return (portrait ?? landscape)!;
}

/** Where neighbouring sheets lie over each other, or meet: nothing that is to be read belongs there. */
export function seamsOf({ tiles, overlap }: Tiling): Box[] {
  return tiles.flatMap(({ window, right, below }) => [
    ...(right === null ? [] : [{ ...window, minX: window.maxX - overlap }]),
    ...(below === null ? [] : [{ ...window, maxY: window.minY + overlap }]),
  ]);
}

/** Usable size of a sheet on the drawing, mm, once a printer's error is made good. */
export function usableSize(options: TilingOptions, landscape: boolean): { width: number; height: number } {
  const { paper, margin, correction } = options;
  const size = landscape
    ? { width: paper.height, height: paper.width, x: correction.y, y: correction.x }
    : { width: paper.width, height: paper.height, x: correction.x, y: correction.y };
  return { width: (size.width - 2 * margin) / size.x, height: (size.height - 2 * margin) / size.y };
}

/** Shifts of the grid that are tried in each direction, as shares of the room there is; the middle is best looking. */
const SHIFTS = [0.5, 0, 1, 0.25, 0.75];
/** On a larger grid of sheets only the middle is tried: a few sheets fewer do not matter there. */
const MOST_SHIFTED = 20_000;

/** A piece as the grids see it. */
interface Shape {
  readonly piece: TiledPiece;
  readonly box: Box;
  readonly meets: (window: Box) => boolean;
}

/** The shapes whose boxes meet a window. */
type ShapesNear = (window: Box) => readonly Shape[];

function shapesOf(pieces: readonly TiledPiece[]): readonly Shape[] {
  return pieces.map((piece) => ({ piece, box: ringBox(piece.outline.outer), meets: windowTest(piece.outline) }));
}

function bestGrid(shapes: readonly Shape[], near: ShapesNear, options: TilingOptions, landscape: boolean): Tiling {
  const { paper, margin, overlap, correction } = options;
  const usable = usableSize(options, landscape);
  const box = shapes.reduce((all, shape) => joinedBox(all, shape.box), EMPTY_BOX);
  const base = {
    width: landscape ? paper.height : paper.width,
    height: landscape ? paper.width : paper.height,
    margin,
    overlap,
    correction: landscape ? { x: correction.y, y: correction.x } : correction,
  };
  if (shapes.length === 0) return { ...base, rows: 0, columns: 0, tiles: [] };
  const columns = tileCount(box.maxX - box.minX, usable.width, overlap);
  const rows = tileCount(box.maxY - box.minY, usable.height, overlap);
  const slackX = usable.width + (columns - 1) * (usable.width - overlap) - (box.maxX - box.minX);
  const slackY = usable.height + (rows - 1) * (usable.height - overlap) - (box.maxY - box.minY);
  let best: KeptTiles | null = null;
  const shifts = rows * columns > MOST_SHIFTED ? [0.5] : SHIFTS;
  for (const shiftX of columns === 1 ? [0.5] : shifts) {
    for (const shiftY of rows === 1 ? [0.5] : shifts) {
      const origin = { x: box.minX - shiftX * slackX, top: box.maxY + shiftY * slackY };
      const found = keptTiles(near, { rows, columns, usable, overlap, origin });
      if (!best || found.kept.size < best.kept.size) best = found;
    }
  }
  return { ...base, rows, columns, tiles: tilesOf(best!) };
}

interface Grid {
  readonly rows: number;
  readonly columns: number;
  readonly usable: { readonly width: number; readonly height: number };
  readonly overlap: number;
  readonly origin: { readonly x: number; readonly top: number };
}

/** The places of a grid that get a sheet, row by row, and the shapes in each column. */
interface KeptTiles {
  readonly grid: Grid;
  readonly inColumn: readonly (readonly Shape[])[];
  readonly kept: ReadonlySet<number>;
}

function windowAt({ usable, overlap, origin }: Grid, row: number, column: number): Box {
  const minX = origin.x + column * (usable.width - overlap);
  const maxY = origin.top - row * (usable.height - overlap);
  return { minX, maxX: minX + usable.width, minY: maxY - usable.height, maxY };
}

function isKept(grid: Grid, kept: ReadonlySet<number>, row: number, column: number): boolean {
  const { rows, columns } = grid;
  return row >= 0 && row < rows && column >= 0 && column < columns && kept.has(row * columns + column);
}

function keptTiles(near: ShapesNear, grid: Grid): KeptTiles {
  const { rows, columns } = grid;
  // A long roll has many columns and few pieces in each; only those are looked at.
  const inColumn = Array.from({ length: columns }, (_, column) =>
    near({ ...windowAt(grid, 0, column), minY: -Infinity, maxY: Infinity }),
  );
  const kept = new Set<number>();
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const window = windowAt(grid, row, column);
      if (inColumn[column]!.some(({ meets }) => meets(window))) kept.add(row * columns + column);
    }
  }
  dropCovered(inColumn, grid, kept);
  return { grid, inColumn, kept };
}

function tilesOf({ grid, inColumn, kept }: KeptTiles): Tile[] {
  const name = (row: number, column: number): string | null =>
    isKept(grid, kept, row, column) ? tileName(row, column) : null;
  return [...kept].map((index) => {
    const row = Math.floor(index / grid.columns);
    const column = index % grid.columns;
    const window = windowAt(grid, row, column);
    const on = inColumn[column]!.filter(({ meets }) => meets(window)).map(({ piece }) => piece.name);
    return {
      row,
      column,
      name: tileName(row, column),
      window,
      left: name(row, column - 1),
      right: name(row, column + 1),
      above: name(row - 1, column),
      below: name(row + 1, column),
      pieces: [...new Set(on)],
    };
  });
}

/** Takes out tiles that show nothing but what lies on the overlaps of neighbours that stay. */
function dropCovered(inColumn: readonly (readonly Shape[])[], grid: Grid, kept: Set<number>): void {
  if (grid.overlap === 0) return;
  const needed = new Set<number>();
  for (const index of [...kept]) {
    if (needed.has(index)) continue;
    const row = Math.floor(index / grid.columns);
    const column = index % grid.columns;
    const sides = [
      [row, column - 1],
      [row, column + 1],
      [row - 1, column],
      [row + 1, column],
    ] as const;
    const [left, right, above, below] = sides.map(([r, c]) => (isKept(grid, kept, r, c) ? grid.overlap : 0));
    const window = windowAt(grid, row, column);
    const core = {
      minX: window.minX + left!,
      maxX: window.maxX - right!,
      minY: window.minY + below!,
      maxY: window.maxY - above!,
    };
    if (inColumn[column]!.some(({ meets }) => meets(core))) continue;
    kept.delete(index);
    for (const [r, c] of sides) if (isKept(grid, kept, r, c)) needed.add(r * grid.columns + c);
  }
}
