import { expect, test } from "vitest";
import { sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { areasOf, linesOf, runTogether, standOut, wordsOf, wordsOn } from "../../../../tests/tools/writtenWords.ts";
import { boxOfAll } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { paperNamed } from "../../project/papers.ts";
import { textWidth } from "../list/textWidth.ts";
import { mapPages } from "./mapPage.ts";
import { type TilingOptions, tilePieces } from "./tiling.ts";

const sheet = sampleSheet();
const TITLE = { project: "Quay satchel", material: "Canvas", stock: "roll", language: "en" as const };
const tiling = (paper: string, more: Partial<TilingOptions> = {}) =>
  tilePieces(sheet.copies, {
    paper: paperNamed(paper)!,
    margin: 10,
    overlap: 10,
    orientation: "portrait",
    correction: { x: 1, y: 1 },
    ...more,
  });

test("words of the first page do not run into each other or the squares, and stay 15 mm off the paper's edges", () => {
  for (const paper of ["A5", "A4", "Letter", "A3", "A2"])
    for (const language of ["en", "de"] as const)
      for (const bySize of [[], ["2 × Shoulder strap: 560 mm × 98 mm", "1 × Tab: 60 mm × 40 mm"]]) {
        const pages = mapPages(sheet, tiling(paper), { ...TITLE, language }, bySize);
        for (const page of pages) {
          const { width, height } = page;
          const words = wordsOn(page);
          const own = { minX: 14.7, minY: 14.5, maxX: width - 14.7, maxY: height - 14.7 };
          expect(runTogether(words), `${paper} ${page.name}`).toEqual([]);
          expect(standOut(words, own), `${paper} ${page.name}`).toEqual([]);
          // Nobody reads longer lines with ease than some 120 mm at this height.
          for (const { text, size } of words)
            if (size === 3.2) expect(textWidth(text, size)).toBeLessThanOrEqual(120);
        }
        const [first] = pages;
        const square = { minX: 15, maxX: 115, maxY: first!.height - 35.5, minY: first!.height - 135.5 };
        const inside = wordsOn(first!).filter(
          ({ minX, maxX, minY, maxY }) =>
            minX < square.maxX && maxX > square.minX && minY < square.maxY && maxY > square.minY,
        );
        expect(inside.map(({ text }) => text).slice(0, 2)).toEqual(["10 cm", expect.any(String)]);
        expect(inside).toHaveLength(4);
      }
});

// Own arithmetic: 10 cm in ten parts, 2 in = 50.8 mm in four; half way marks are longer.
test("the squares are 10 cm and 2 in, ticked each way in centimetres and half inches", () => {
  const [first] = mapPages(sheet, tiling("A4"), TITLE);
  const squares = first!.parts.find(({ items }) =>
    items.some((item) => item.kind === "text" && item.text === "10 cm"),
  )!;
  expect([squares.x, squares.y, squares.scaleX, squares.scaleY]).toEqual([15, 297 - 35.5, 1, 1]);
  const lines = linesOf(squares.items, "mark");
  const ticks = (left: number, low: number, side: number, parts: number): string[] =>
    Array.from({ length: parts - 1 }, (_, i) => {
      const at = Math.round(side * ((i + 1) / parts) * 1000) / 1000;
      const long = (i + 1) * 2 === parts ? 3 : 1.8;
      const round = (mm: number) => Math.round(mm * 1000) / 1000;
      return [
        `${round(left + at)} ${round(low)}, ${round(left + at)} ${round(low + long)}`,
        `${round(left)} ${round(low + at)}, ${round(left + long)} ${round(low + at)}`,
      ];
    }).flat();
  expect(lines).toEqual([
    "0 -100, 100 -100, 100 0, 0 0",
    ...ticks(0, -100, 100, 10),
    "24.6 -79.4, 75.4 -79.4, 75.4 -28.6, 24.6 -28.6",
    ...ticks(24.6, -79.4, 50.8, 4),
  ]);
  const words = wordsOn({ ...first!, parts: [{ ...squares, x: 0, y: 0 }] });
  expect(words.map(({ text, size, bold }) => [text, size, bold])).toEqual([
    ["10 cm", 6, true],
    ["each way", 3.4, false],
    ["2 in", 6, true],
    ["each way", 3.4, false],
  ]);
  for (const { minX, maxX } of words) expect((minX + maxX) / 2).toBeCloseTo(50, 0);
  expect(squares.items.flatMap((item) => (item.kind === "text" ? [item.y] : []))).toEqual([-12, -17, -53, -58]);
  // The first two above the small square, the others in it.
  expect(words.map(({ minY, maxY }) => [minY > -28.6 && maxY < 0, minY > -79.4 && maxY < -28.6])).toEqual([
    [true, false],
    [true, false],
    [false, true],
    [false, true],
  ]);
});

test("what is done is numbered; taping is told where there is more than one sheet, a correction where there is one", () => {
  const said = (of: ReturnType<typeof tiling>) =>
    wordsOn(mapPages(sheet, of, TITLE)[0]!)
      .map(({ text }) => text)
      .join(" ");
  const several = said(tiling("A4"));
  for (const start of [
    "1 Print",
    "2 Measure",
    `3 Print the ${tiling("A4").tiles.length} sheets`,
    "4 Trim",
    "5 Check",
  ])
    expect(several).toContain(start);
  expect(several).toContain("rings on rings");
  expect(said(tiling("A4", { overlap: 1 }))).toContain("rings on rings");
  expect(said(tiling("A4", { overlap: 0 }))).toContain("half rings to half rings");
  const two = tiling("A4");
  expect(said({ ...two, tiles: two.tiles.slice(0, 2) })).toContain("4 Trim");
  const one = said(tiling("A0"));
  expect(one).toContain("3 Print the one sheet");
  expect(one).not.toMatch(/Trim|Check against/u);
  expect(several).not.toContain("Corrected");
  expect(said(tiling("A4", { correction: { x: 1, y: 1.004 } }))).toContain(
    "Corrected for your printer: ×1.0000 across, ×1.0040 down.",
  );
  expect(said(tiling("A4", { correction: { x: 1.0081, y: 1 } }))).toContain("×1.0081 across, ×1.0000 down");
});

test("project and material stand on top, the project larger and bold; what is too long for the paper is cut", () => {
  const [first] = mapPages(sheet, tiling("A4"), TITLE);
  const [project, heading] = wordsOn(first!);
  expect([project!.text, project!.size, project!.bold, project!.x, project!.y]).toEqual([
    "Quay satchel",
    7,
    true,
    15,
    276,
  ]);
  expect([heading!.text, heading!.size, heading!.bold, heading!.y]).toEqual(["Canvas · roll", 4.2, false, 269.5]);
  const [alone] = mapPages(sheet, tiling("A4"), { ...TITLE, stock: "" });
  expect(wordsOn(alone!)[1]!.text).toBe("Canvas");
  const [long] = mapPages(sheet, tiling("A4"), {
    ...TITLE,
    project: "Quay ".repeat(40),
    material: "Canvas ".repeat(40),
  });
  for (const word of wordsOn(long!).slice(0, 2)) {
    expect(word.text).toMatch(/…$/u);
    expect(word.maxX).toBeGreaterThan(184);
    expect(word.maxX).toBeLessThanOrEqual(195);
  }
});

test("the map is the whole lay with every sheet drawn and named on it, as large as there is room for", () => {
  for (const paper of ["A5", "A4", "A3", "A2"]) {
    const of = tiling(paper);
    const pages = mapPages(sheet, of, TITLE);
    const page = pages.at(-1)!;
    const parts = page.parts.filter(({ scaleX }) => scaleX < 1 && scaleX > 0);
    expect(parts).toHaveLength(2);
    const [lay, grid] = parts;
    expect([grid!.x, grid!.y, grid!.scaleX, grid!.scaleY]).toEqual([lay!.x, lay!.y, lay!.scaleX, lay!.scaleX]);
    const scale = lay!.scaleX;
    const onPaper = boxOfAll([sheet.drawing.box, ...of.tiles.map(({ window }) => window)]);
    const box = {
      minX: lay!.x + onPaper.minX * scale,
      maxX: lay!.x + onPaper.maxX * scale,
      minY: lay!.y + onPaper.minY * scale,
      maxY: lay!.y + onPaper.maxY * scale,
    };
    expect(box.minX).toBeCloseTo(15, 6);
    expect(box.maxX).toBeLessThanOrEqual(page.width - 15 + 1e-6);
    expect(box.minY).toBeGreaterThanOrEqual(15 - 1e-6);
    // It fills the room one way or the other.
    expect(Math.min(page.width - 15 - box.maxX, box.minY - 15)).toBeCloseTo(0, 6);
    const words = wordsOn({ ...page, parts: page.parts.filter(({ scaleX }) => scaleX === 1 || scaleX > 1) });
    const above = Math.min(...words.map(({ minY }) => minY), page.height - 135.5);
    if (pages.length === 1) {
      expect(box.maxY).toBeLessThan(above - 2);
      expect(box.maxY).toBeGreaterThan(above - 12);
      expect(box.maxY - 15).toBeGreaterThanOrEqual(0);
    } else {
      expect(pages.map(({ name }) => name)).toEqual(["test squares", "map"]);
      expect(box.maxY).toBeCloseTo(page.height - 15, 6);
    }
    // Areas and cut lines, nothing else of the lay.
    const kept = sheet.drawing.items.filter(
      (item) => item.kind === "area" || (item.kind === "line" && item.role === "cut"),
    );
    expect(kept.length).toBeGreaterThan(9);
    expect(lay!.items).toEqual(kept);
    const names = wordsOn({ ...page, parts: [grid!] });
    expect(names.every(({ bold }) => bold)).toBe(true);
    expect(names.map(({ text }) => text)).toEqual(of.tiles.map(({ name }) => name));
    const frames = grid!.items.flatMap((item) => (item.kind === "line" ? [contourBox(item.contour)] : []));
    const halos = grid!.items.flatMap((item) => (item.kind === "area" ? [contourBox(item.contours[0]!)] : []));
    for (const [i, { window }] of of.tiles.entries()) {
      for (const side of ["minX", "minY", "maxX", "maxY"] as const)
        expect(frames[i]![side]).toBeCloseTo(window[side], 6);
      const name = names[i]!;
      const middle = {
        x: grid!.x + ((window.minX + window.maxX) / 2) * scale,
        y: grid!.y + ((window.minY + window.maxY) / 2) * scale,
      };
      expect(Math.abs((name.minX + name.maxX) / 2 - middle.x)).toBeLessThan(0.35);
      expect(Math.abs((name.minY + name.maxY) / 2 - middle.y)).toBeLessThan(0.35);
      // Its pale ground reaches beyond it on all sides.
      const halo = halos[i]!;
      expect(grid!.x + halo.minX * scale).toBeLessThan(name.minX);
      expect(grid!.x + halo.maxX * scale).toBeGreaterThan(name.maxX);
      expect(grid!.y + halo.minY * scale).toBeLessThan(name.minY);
      expect(grid!.y + halo.maxY * scale).toBeGreaterThan(name.maxY);
    }
    expect(areasOf(grid!.items, "shade")).toHaveLength(of.tiles.length);
  }
});

test("a map that would be lower than 40 mm has a page of its own", () => {
  const counts = ["A5", "A4", "A3"].map((paper) => mapPages(sheet, tiling(paper), TITLE).length);
  expect(counts[0]).toBe(2);
  // Where no column of words has room beside the squares, they begin 7 mm below them.
  const [small] = mapPages(sheet, tiling("A5"), TITLE);
  const words = wordsOn(small!).filter(({ size }) => size === 3.2);
  expect([words[0]!.x, words[0]!.y]).toEqual([15, 210 - 35.5 - 100 - 7]);
  const [wide] = mapPages(sheet, tiling("A4"), TITLE);
  const beside = wordsOn(wide!).filter(({ size }) => size === 3.2);
  expect([beside[0]!.x, beside[0]!.y]).toEqual([123, 297 - 35.5 - 3]);
  expect(beside[0]!.y - beside[1]!.y).toBeCloseTo(4.4, 6);
  expect(counts[2]).toBe(1);
});

test("a single rectangle is told of as well", () => {
  const [first] = mapPages(sheet, tiling("A4"), TITLE, ["1 × Tab: 60 mm × 40 mm"]);
  expect(wordsOn(first!).map(({ text }) => text)).toContain("1 × Tab: 60 mm × 40 mm");
});

test("what to do is told in lines that are filled before the next begins", () => {
  let ends = 0;
  for (const paper of ["A5", "A4", "A3"]) {
    const page = mapPages(sheet, tiling(paper), TITLE)[0]!;
    const lines = wordsOn(page).filter(({ size }) => size === 3.2);
    const room = Math.min(120, page.width - 15 - lines[0]!.x);
    for (const [i, { text, x, y }] of lines.entries()) {
      const next = lines[i + 1];
      // Lines of one step are 4.4 mm apart, steps 5.6; sizes stay whole.
      if (next === undefined || next.x !== x || Math.abs(y - next.y - 4.4) > 1e-6) continue;
      const [word] = next.text.split(" ");
      if (/\d/u.test(word!)) continue;
      expect(textWidth(`${text} ${word}`, 3.2), `${paper}: ${text}`).toBeGreaterThan(room);
      ends++;
    }
  }
  expect(ends).toBeGreaterThan(3);
});

test("sheets are named on the map in letters of a quarter of their width, a third of their height, at most 5 mm on paper", () => {
  for (const paper of ["A5", "A4", "A3"]) {
    const of = tiling(paper);
    const page = mapPages(sheet, of, TITLE).at(-1)!;
    const grid = page.parts.at(-1)!;
    const names = grid.items.flatMap((item) => (item.kind === "text" ? [item] : []));
    expect(names).toHaveLength(of.tiles.length);
    // Each in the middle of a pale field that is a little larger than it.
    const fields = grid.items.flatMap((item) => (item.kind === "area" ? [contourBox(item.contours[0]!)] : []));
    const words = wordsOf({ box: sheet.drawing.box, items: grid.items });
    for (const [i, { minX, minY, maxX, maxY, text }] of words.entries()) {
      const [field, { window }] = [fields[i]!, of.tiles[i]!];
      expect((field.minX + field.maxX) / 2).toBeCloseTo((window.minX + window.maxX) / 2, 6);
      expect([minX > field.minX, minY > field.minY, maxX < field.maxX, maxY < field.maxY], text).toEqual([
        true,
        true,
        true,
        true,
      ]);
    }
    for (const [i, { size }] of names.entries()) {
      const { minX, minY, maxX, maxY } = of.tiles[i]!.window;
      const most = [(maxX - minX) / 4, (maxY - minY) / 3, 5 / grid.scaleX];
      expect(size).toBeCloseTo(Math.min(...most), 9);
    }
  }
});

test("a list of rectangles longer than the page goes on overleaf, every line of it there", () => {
  const bySize = Array.from({ length: 90 }, (_, i) => `1 × Piece ${i}: 60 mm × 40 mm`);
  for (const paper of ["A5", "A4", "A3"]) {
    const pages = mapPages(sheet, tiling(paper), TITLE, bySize);
    expect(pages[0]!.name).toBe("test squares");
    expect(pages.at(-1)!.name).toBe("map");
    expect(pages.length).toBeGreaterThan(2);
    const words = pages.slice(0, -1).map((page) => wordsOn(page));
    const all = words.flat().map(({ text }) => text);
    for (const line of bySize) expect(all.filter((text) => text === line)).toHaveLength(1);
    for (const [i, own] of words.entries()) {
      const { width, height } = pages[i]!;
      expect(standOut(own, { minX: 14.7, minY: 14, maxX: width - 14.7, maxY: height - 14.7 })).toEqual([]);
      expect(runTogether(own)).toEqual([]);
      if (i > 0) expect(own[0]!.y).toBeCloseTo(height - 18.2, 6);
      // The page is filled before the next begins.
      if (i < words.length - 1) expect(Math.min(...own.map(({ y }) => y))).toBeLessThan(15 + 5.7);
    }
  }
});
