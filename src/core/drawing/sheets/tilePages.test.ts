import { expect, test } from "vitest";
import { sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { linesOf, runTogether, standOut, type Written, wordsOn } from "../../../../tests/tools/writtenWords.ts";
import { boxesOverlap } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { circleContour } from "../../geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { paperNamed } from "../../project/papers.ts";
import type { DrawnText } from "../list/drawing.ts";
import { drawArea } from "../list/items.ts";
import type { Page } from "../list/page.ts";
import { tilePages } from "./tilePages.ts";
import { type Tile, type Tiling, tilePieces } from "./tiling.ts";

const TITLE = { project: "Quay satchel", material: "Canvas", stock: "roll", language: "en" as const };
const sheet = sampleSheet();
const tilingOf = (overlap: number, margin = 10): Tiling =>
  tilePieces(sheet.copies, {
    paper: paperNamed("A4")!,
    margin,
    overlap,
    orientation: "portrait",
    correction: { x: 1, y: 1 },
  });
const pagesOf = (tiling: Tiling, grain: "both" | "one-way" | "none" = "both"): Page[] =>
  tilePages(sheet, tiling, TITLE, grain);
/** The sheet's own marks and words: the part that no drawing is in, mm of the drawing from the window's corner. */
const marksOf = ({ parts }: Page) =>
  parts.find(({ items }) => items.some((item) => item.kind === "text" && item.tone === "shade"))!;
const size = ({ window }: Tile) => [window.maxX - window.minX, window.maxY - window.minY] as [number, number];

test("a page shows its window of the drawing where the paper's margins are, and nothing outside of it", () => {
  const tiling = tilingOf(10, 12);
  for (const [i, page] of pagesOf(tiling).entries()) {
    const { window, name } = tiling.tiles[i]!;
    expect([page.name, page.width, page.height]).toEqual([name, 210, 297]);
    const drawn = page.parts.at(-1)!;
    for (const { clip } of page.parts) expect(clip).toEqual({ minX: 12, minY: 12, maxX: 198, maxY: 285 });
    expect(drawn.x + window.minX * drawn.scaleX).toBeCloseTo(12, 9);
    expect(drawn.y + window.minY * drawn.scaleY).toBeCloseTo(12, 9);
    const marks = marksOf(page);
    expect([marks.x, marks.y]).toEqual([12, 12]);
  }
});

// By eye and hand: a joint is as far in from the frame as sheets lie over each other, where there is a neighbour.
test("each sheet has its frame, and a joint line on each side where a neighbour is", () => {
  for (const overlap of [10, 6]) {
    const tiling = tilingOf(overlap);
    const joints = { left: 0, right: 0, above: 0, below: 0 };
    for (const [i, page] of pagesOf(tiling).entries()) {
      const tile = tiling.tiles[i]!;
      const [w, h] = size(tile);
      const lines = linesOf(marksOf(page).items, "sheet");
      for (const one of [`0 0, ${w} 0`, `${w} 0, ${w} ${h}`, `${w} ${h}, 0 ${h}`, `0 ${h}, 0 0`])
        expect(lines).toContain(one);
      const at = {
        left: `${overlap} 0, ${overlap} ${h}`,
        right: `${w - overlap} 0, ${w - overlap} ${h}`,
        below: `0 ${overlap}, ${w} ${overlap}`,
        above: `0 ${h - overlap}, ${w} ${h - overlap}`,
      };
      for (const side of ["left", "right", "below", "above"] as const) {
        expect(lines.includes(at[side]), `${tile.name} ${side}`).toBe(tile[side] !== null);
        if (tile[side] !== null) joints[side]++;
      }
      const rings = marksOf(page).items.filter((item) => item.kind === "line" && item.contour.vertices[2] !== 0);
      expect(rings).toHaveLength(2 * [tile.left, tile.right, tile.below, tile.above].filter(Boolean).length);
    }
    expect(Math.min(...Object.values(joints))).toBeGreaterThan(0);
  }
});

/** Rings with a cross through them, by their middle on the drawing, and their radius. */
function ringsOf(page: Page, { window }: Tile) {
  return marksOf(page).items.flatMap((item) => {
    if (item.kind !== "line" || item.contour.vertices[2] === 0) return [];
    const box = contourBox(item.contour);
    const [x, y, radius] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2, (box.maxX - box.minX) / 2];
    return [{ x: x + window.minX, y: y + window.minY, radius, onPage: { x, y } }];
  });
}

test("match marks of neighbours come onto each other, two a joint, whole within the overlap; butted sheets have half of each", () => {
  for (const overlap of [10, 5, 4, 2, 0]) {
    const tiling = tilingOf(overlap);
    const pages = pagesOf(tiling);
    const all = tiling.tiles.map((tile, i) => ringsOf(pages[i]!, tile));
    let joints = 0;
    for (const [i, tile] of tiling.tiles.entries())
      for (const name of [tile.right, tile.below]) {
        const other = tiling.tiles.findIndex((one) => one.name === name);
        if (other < 0) continue;
        const common = all[i]!.filter((one) =>
          all[other]!.some(({ x, y }) => Math.hypot(x - one.x, y - one.y) < 1e-6),
        );
        expect(common, `${tile.name} ${name} ${overlap}`).toHaveLength(2);
        // A ring within the overlap with its cross, or 2.6 mm where there is no room for it.
        for (const { radius } of common)
          expect(radius).toBeCloseTo(overlap >= 4 ? Math.min(2.6, overlap / 2 - 0.8) : 2.6, 9);
        const along = name === tile.right ? ("y" as const) : ("x" as const);
        const long = size(tile)[name === tile.right ? 1 : 0];
        expect(common.map(({ onPage }) => onPage[along] / long).sort()).toEqual([
          expect.closeTo(0.2, 6),
          expect.closeTo(0.8, 6),
        ]);
        joints++;
      }
    expect(joints).toBeGreaterThan(4);
    for (const [i, page] of pages.entries())
      for (const { onPage, radius } of ringsOf(page, tiling.tiles[i]!)) {
        const lines = linesOf(marksOf(page).items, "sheet").map((one) => one.split(/,? /u).map(Number));
        const cross = lines.filter(
          ([x0, y0, x1, y1]) =>
            Math.abs((x0! + x1!) / 2 - onPage.x) < 1e-3 &&
            Math.abs((y0! + y1!) / 2 - onPage.y) < 1e-3 &&
            Math.abs(Math.hypot(x1! - x0!, y1! - y0!) - 2 * (radius + 0.8)) < 2e-3,
        );
        expect(cross).toHaveLength(2);
        expect(cross.filter(([x0, , x1]) => x0 === x1)).toHaveLength(1);
      }
  }
});

const said = (page: Page): Written[] => wordsOn(page).filter(({ size: high }) => high < 30);

test("words of a sheet do not run into each other or off it, whatever the overlap", () => {
  for (const overlap of [0, 5, 10, 20])
    for (const grain of ["both", "one-way", "none"] as const) {
      const tiling = tilingOf(overlap);
      for (const [i, page] of pagesOf(tiling, grain).entries()) {
        const words = said({ ...page, parts: [marksOf(page)] });
        expect(runTogether(words), `${tiling.tiles[i]!.name} ${overlap}`).toEqual([]);
        expect(standOut(words, { minX: 10, minY: 10, maxX: 200, maxY: 287 })).toEqual([]);
      }
    }
});

test("a sheet tells which it is and of how many, which way the cloth runs, what it is for and what is on it", () => {
  const tiling = tilingOf(10);
  const count = tiling.tiles.length;
  const texts = (grain: "both" | "one-way" | "none") =>
    pagesOf(tiling, grain).map((page) => said({ ...page, parts: [marksOf(page)] }));
  for (const [i, words] of texts("both").entries()) {
    const tile = tiling.tiles[i]!;
    const all = words.map(({ text }) => text);
    expect(all).toEqual(expect.arrayContaining([tile.name, `${i + 1} of ${count}`, "↔ lengthwise"]));
    expect(all.some((text) => text.startsWith("Quay satchel · Canvas · r"))).toBe(true);
    expect(all.some((text) => text.startsWith(tile.pieces.join(", ").slice(0, 10)))).toBe(true);
    // All in the lower band, between the two match marks of the lower joint.
    const line = words.filter(({ size: high }) => high === 2.4);
    expect(line).toHaveLength(4);
    for (const { y, minX, maxX } of line) {
      expect(y).toBeCloseTo(14.2, 6);
      expect(minX).toBeGreaterThan(10 + 38 + 4.9);
      expect(maxX).toBeLessThan(10 + 152 - 4.9);
    }
    expect(line[1]!.x - line[0]!.maxX).toBeCloseTo(2.5, 0);
    const [name] = words.filter(({ text }) => text === tile.name);
    expect([name!.x, name!.size, name!.bold]).toEqual([14, 4, true]);
    expect(name!.y).toBeCloseTo(13.6, 6);
    // What is on the sheet stands out.
    expect(line.map(({ bold }) => bold)).toEqual([false, false, false, true]);
    const neighbours = { left: "‹ ", right: " ›", below: " ↓", above: "↑ " };
    for (const side of ["left", "right", "below", "above"] as const) {
      const of = words.find(({ text }) => text.includes(neighbours[side]));
      expect(of?.text.replace(neighbours[side], "") ?? null, tile.name).toBe(tile[side]);
      if (of === undefined) continue;
      expect([of.size, of.bold]).toEqual([3.2, true]);
      // 1.5 mm off the joint; upright its middle or its upper edge is reckoned with.
      const base = { left: 147.4, right: 147.4, below: 21.5, above: 273.1 };
      expect(of.y).toBeCloseTo(base[side], 6);
      const near = { left: of.minX - 10, right: 200 - of.maxX, below: of.minY - 10, above: 287 - of.maxY };
      expect(near[side]).toBeGreaterThan(10);
      expect(near[side]).toBeLessThan(14);
      const middle =
        side === "left" || side === "right" ? (of.minY + of.maxY) / 2 - 148.5 : (of.minX + of.maxX) / 2 - 105;
      expect(Math.abs(middle)).toBeLessThan(0.8);
    }
  }
  expect(texts("one-way")[0]!.map(({ text }) => text)).toContain("→ lengthwise, one way");
  expect(
    texts("none")[0]!
      .map(({ text }) => text)
      .join(),
  ).not.toMatch(/lengthwise/u);
});

test("however much there is to say, it ends 5 mm before the right match mark", () => {
  const long = { ...TITLE, project: "Quay satchel ".repeat(20), language: "de" as const };
  const names = sheet.copies.map((copy) => ({ ...copy, name: `${copy.name} of the large quay satchel` }));
  const tiling = tilePieces(names, {
    ...{ paper: paperNamed("A4")!, margin: 10, overlap: 10, orientation: "portrait" },
    correction: { x: 1, y: 1 },
  });
  for (const page of tilePages(sheet, tiling, long, "one-way")) {
    const line = said({ ...page, parts: [marksOf(page)] }).filter(({ size: high }) => high === 2.4);
    expect(line.length).toBeGreaterThan(2);
    expect(Math.max(...line.map(({ maxX }) => maxX))).toBeLessThan(10 + 152 - 4.5);
    expect(runTogether(line)).toEqual([]);
    // Of what is left of the line the project takes little more than half, so that pieces have the rest.
    const [, , project] = line;
    expect(project!.maxX - project!.x).toBeLessThan(0.55 * (157 - project!.x) + 0.5);
  }
});

test("on butted sheets the neighbour's name below stands over the line of words", () => {
  const tiling = tilingOf(0);
  const at = tiling.tiles.findIndex(({ below }) => below !== null);
  const below = said({ ...pagesOf(tiling)[at]!, parts: [marksOf(pagesOf(tiling)[at]!)] }).find(({ text }) =>
    text.endsWith("↓"),
  );
  expect(below!.y).toBeCloseTo(20.5, 9);
});

test("the sheet's name stands large and pale in its middle, under all", () => {
  const tiling = tilingOf(10);
  const [page] = pagesOf(tiling);
  const [first] = marksOf(page!).items;
  expect(first).toMatchObject({ kind: "text", text: tiling.tiles[0]!.name, tone: "shade", bold: true, size: 47.5 });
  const large = wordsOn(page!).find(({ size: high }) => high > 30)!;
  expect(Math.abs((large.minX + large.maxX) / 2 - 105)).toBeLessThan(1.5);
  expect(Math.abs((large.minY + large.maxY) / 2 - 148.5)).toBeLessThan(1.5);
});

// Own arithmetic: 10 mm to the centimetre, 25.4 mm to the inch, counted from the start of the cloth and its lower edge.
test("the tapes count the cloth's centimetres and inches: every one has its tick, fives and tens longer, fives their number", () => {
  // Margins and overlaps that begin the sheets at other places of the cloth.
  const tilings = [tilingOf(10), tilingOf(10, 8), tilingOf(6, 13), tilingOf(0, 11), tilingOf(3, 15)];
  for (const [tile, page] of tilings.flatMap((of) => pagesOf(of).map((one, i) => [of.tiles[i]!, one] as const))) {
    const { minX, minY } = tile.window;
    const [w, h] = size(tile);
    const marks = marksOf(page);
    const lines = linesOf(marks.items, "sheet").map((one) => one.split(/,? /u).map(Number));
    const near = (a: number, b: number) => Math.abs(a - b) < 1.1e-3;
    const words = marks.items.filter((item): item is DrawnText => item.kind === "text" && item.size === 1.9);
    for (let cm = Math.floor(minX / 10) - 2; cm * 10 <= minX + w + 20; cm++) {
      const x = cm * 10 - minX;
      const long = cm % 10 === 0 ? 2.8 : cm % 5 === 0 ? 2 : 1.2;
      const has = lines.some(([x0, y0, x1, y1]) => near(x0!, x) && near(x1!, x) && y0 === 0 && near(y1!, long));
      expect(has, `${cm} cm`).toBe(x >= 0 && x <= w);
      const word = words.find(({ text }) => text === `${cm} cm`);
      expect(word !== undefined, `${cm} cm on ${tile.name}`).toBe(cm % 5 === 0 && x > 6 && x < w - 8);
      if (word) expect([word.x - x, word.y, word.size]).toEqual([expect.closeTo(0.6, 6), 1.3, 1.9]);
    }
    for (let inch = Math.floor(minY / 25.4) - 2; inch * 25.4 <= minY + h + 60; inch++) {
      const y = inch * 25.4 - minY;
      const has = lines.some(([x0, y0, x1, y1]) => x0 === 0 && near(y0!, y) && near(x1!, 2.8) && near(y1!, y));
      expect(has, `${inch} in`).toBe(y >= 0 && y <= h);
      const word = words.find(({ text }) => text === `${inch} in`);
      expect(word !== undefined, `${inch} in`).toBe(y > 12 && y < h - 4);
      if (word) expect([word.x, word.y - y, word.size]).toEqual([0.6, expect.closeTo(0.6, 6), 1.9]);
    }
  }
});

test("the cloth's pattern lies below the sheet's marks, the lines above, areas of pieces nowhere", () => {
  const pattern = drawArea("pattern", [circleContour(60, 60, 20)]);
  const over = { ...sheet, drawing: { ...sheet.drawing, items: [...sheet.drawing.items, pattern] } };
  const tiling = tilingOf(10);
  const pages = tilePages(over, tiling, TITLE, "both");
  const at = tiling.tiles.findIndex(({ window }) =>
    boxesOverlap(window, { minX: 50, minY: 50, maxX: 70, maxY: 70 }),
  );
  const { parts } = pages[at]!;
  expect(parts[0]!.items).toEqual([pattern]);
  expect(parts).toHaveLength(3);
  expect(
    parts
      .slice(1)
      .flatMap(({ items }) => items)
      .every(({ kind }) => kind !== "area"),
  ).toBe(true);
  for (const page of pagesOf(tiling)) expect(page.parts).toHaveLength(2);
});

test("a tape that ends on a whole centimetre has its tick there", () => {
  const outline = solid(rectangleRing(0, 0, 190, 254));
  const copies = [{ key: "p#0", pieceId: "p", copy: 0, name: "p", outline }];
  const drawing = { box: { minX: 0, minY: 0, maxX: 190, maxY: 254 }, items: [] };
  const square = { width: 210, height: 274 };
  const tiling = tilePieces(copies, {
    paper: square,
    margin: 10,
    overlap: 10,
    orientation: "portrait",
    correction: { x: 1, y: 1 },
  });
  const [page] = tilePages({ stockId: "r", drawing, copies, usedLength: 190 }, tiling, TITLE, "none");
  const lines = linesOf(marksOf(page!).items, "sheet");
  expect(lines).toEqual(expect.arrayContaining(["0 0, 0 2.8", "190 0, 190 1.2", "0 0, 2.8 0", "0 254, 2.8 254"]));
});
