import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { paperNamed } from "../../project/papers.ts";
import { rowLetters, seamsOf, type TilingOptions, tileCount, tilePieces } from "./tiling.ts";

const options = (paper: string, more: Partial<TilingOptions> = {}): TilingOptions => ({
  paper: paperNamed(paper)!,
  margin: 10,
  overlap: 10,
  orientation: "fewest",
  correction: { x: 1, y: 1 },
  ...more,
});
const full = (width: number, height: number) => [
  { name: "cloth", outline: solid(rectangleRing(0, 0, width, height)) },
];

// Counts below: own arithmetic on usable = paper − 2 × margin, each further sheet adding usable − overlap.
test("a 1000 × 700 layout takes 18 A4 upright, 16 lying, 8 A3", () => {
  const count = (paper: string, orientation: TilingOptions["orientation"]) =>
    tilePieces(full(1000, 700), options(paper, { orientation })).tiles.length;
  expect(count("A4", "portrait")).toBe(18);
  expect(count("A4", "landscape")).toBe(16);
  expect(count("A4", "fewest")).toBe(16);
  expect(count("A3", "fewest")).toBe(8);
});

test("a 100 × 1520 strap takes 6 A4 down the page and 9 across", () => {
  expect(tilePieces(full(100, 1520), options("A4", { orientation: "portrait" })).tiles).toHaveLength(6);
  expect(tilePieces(full(100, 1520), options("A4", { orientation: "landscape" })).tiles).toHaveLength(9);
  expect(tilePieces(full(100, 1520), options("A4")).tiles).toHaveLength(6);
});

test("1000 mm on Letter with a quarter-inch margin: 5 columns butted, 6 overlapped", () => {
  expect(tileCount(1000, 215.9 - 12.7, 0)).toBe(5);
  expect(tileCount(1000, 215.9 - 12.7, 10)).toBe(6);
  expect(tileCount(190, 190, 10)).toBe(1);
  expect(tileCount(370, 190, 10)).toBe(2);
  expect(() => tileCount(100, 10, 10)).toThrow(RangeError);
});

test("rows are lettered as in a table", () => {
  expect([0, 25, 26, 51, 52, 701, 702].map(rowLetters)).toEqual(["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]);
});

test("tiles know their window, their neighbours and their pieces, and blank ones are left out", () => {
  const pieces = [
    { name: "left", outline: solid(rectangleRing(0, 0, 100, 100)) },
    { name: "right", outline: solid(rectangleRing(900, 500, 100, 100)) },
  ];
  const { tiles, rows, columns } = tilePieces(pieces, options("A4", { orientation: "portrait" }));
  expect([rows, columns]).toEqual([3, 6]);
  expect(tiles.map((tile) => [tile.name, tile.pieces])).toEqual([
    ["A6", ["right"]],
    ["C1", ["left"]],
  ]);
  for (const { window } of tiles) {
    expect(window.maxX - window.minX).toBeCloseTo(190, 9);
    expect(window.maxY - window.minY).toBeCloseTo(277, 9);
  }
  const row = tilePieces(full(300, 100), options("A4", { orientation: "portrait" })).tiles;
  expect(row.map(({ name, left, right }) => [name, left, right])).toEqual([
    ["A1", null, "A2"],
    ["A2", "A1", null],
  ]);
});

test("neighbours are those beside, above and below, and none beyond the edge of the grid", () => {
  const { tiles, rows, columns } = tilePieces(full(500, 760), options("A4", { orientation: "portrait" }));
  expect([rows, columns, tiles.length]).toEqual([3, 3, 9]);
  const name = (row: number, column: number) =>
    row < 0 || row > 2 || column < 0 || column > 2 ? null : `${"ABC"[row]}${column + 1}`;
  for (const { row, column, ...tile } of tiles) {
    expect([tile.name, tile.left, tile.right, tile.above, tile.below]).toEqual([
      ...[
        name(row, column),
        name(row, column - 1),
        name(row, column + 1),
        name(row - 1, column),
        name(row + 1, column),
      ],
    ]);
  }
});

const at = (name: string, x: number, y: number, width: number, height: number) => ({
  name,
  outline: solid(rectangleRing(x, y, width, height)),
});

// By hand: 190 mm a sheet. From the left edge or the right one three sheets do, from the middle four.
test("sheets are moved along until fewest are needed, in either direction", () => {
  const butted = options("A4", { orientation: "portrait", overlap: 0 });
  const along = tilePieces([at("a", 0, 0, 180, 50), at("b", 400, 0, 180, 50)], butted);
  expect([along.columns, along.tiles.length]).toEqual([4, 3]);
  // 277 mm a sheet upright: the same of its height.
  const up = tilePieces([at("a", 0, 0, 50, 267), at("b", 0, 583, 50, 267)], butted);
  expect([up.rows, up.tiles.length]).toEqual([4, 3]);
});

test("seams are where sheets lie over each other: beside a right neighbour, above a lower one", () => {
  const tiling = tilePieces(full(370, 544), options("A4", { orientation: "portrait" }));
  expect(tiling.tiles.map(({ name }) => name)).toEqual(["A1", "A2", "B1", "B2"]);
  expect(seamsOf(tiling)).toEqual([
    { minX: 180, maxX: 190, minY: 267, maxY: 544 },
    { minX: 0, maxX: 190, minY: 267, maxY: 277 },
    { minX: 180, maxX: 370, minY: 267, maxY: 277 },
    { minX: 180, maxX: 190, minY: 0, maxY: 277 },
  ]);
});

// By hand: three columns of 190 and two rows of 277 with 10 mm over each other are 550 × 544: nothing can be moved.
test("a sheet that shows only what lies on its neighbour's overlap is left out, one that shows a hair more is not", () => {
  const names = (...pieces: ReturnType<typeof at>[]) =>
    tilePieces(
      [at("corner", 0, 534, 10, 10), at("far", 540, 0, 10, 10), ...pieces],
      options("A4", { orientation: "portrait" }),
    ).tiles.map(({ name }) => name);
  // The lower middle sheet begins at 180 and ends at 370, the lower row ends at 277.
  expect(names(at("strip", 182, 0, 150, 10))).toEqual(["A1", "B2", "B3"]);
  expect(names(at("strip", 179.9, 0, 150, 10))).toEqual(["A1", "B1", "B2", "B3"]);
  expect(names(at("strip", 200, 0, 168, 10))).toEqual(["A1", "B2", "B3"]);
  expect(names(at("strip", 200, 0, 170.1, 10))).toEqual(["A1", "B2", "B3"]);
  expect(names(at("post", 200, 269, 20, 100))).toEqual(["A1", "A2", "B3"]);
  expect(names(at("post", 200, 266.9, 20, 100))).toEqual(["A1", "A2", "B2", "B3"]);
  expect(names(at("post", 200, 100, 20, 175))).toEqual(["A1", "B2", "B3"]);
  // What is wholly on an overlap stays on one of the two.
  expect(names(at("dot", 200, 269, 5, 5))).toHaveLength(3);
});

test("no piece, no sheet", () => {
  expect(tilePieces([], options("A4"))).toMatchObject({ rows: 0, columns: 0, tiles: [], width: 210, height: 297 });
});

test("a sheet in the middle of a large piece stays, or the paper would have a hole", () => {
  expect(tilePieces(full(500, 760), options("A4", { orientation: "portrait" })).tiles).toHaveLength(9);
});

test("a printer that prints small leaves room for less of the drawing", () => {
  const shrunk = options("A4", { orientation: "portrait", correction: { x: 1 / 0.95, y: 1 / 0.97 } });
  const { window } = tilePieces(full(100, 100), shrunk).tiles[0]!;
  expect(window.maxX - window.minX).toBeCloseTo(190 * 0.95, 9);
  expect(window.maxY - window.minY).toBeCloseTo(277 * 0.97, 9);
});
