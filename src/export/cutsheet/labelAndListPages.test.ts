import { expect, test } from "vitest";
import { A4, lineNumbers, sheetIn, sheets } from "../../../tests/tools/sampleCutSheet.ts";
import { runTogether, standOut, type Written, wordsOn } from "../../../tests/tools/writtenWords.ts";
import { paperNamed } from "../../core/project/papers.ts";
import { labelPages } from "./labelPages.ts";
import { listPages } from "./listPages.ts";

// Common practice, no source: 24 labels of 70 × 37 mm on A4.
test("labels are 70 × 37 mm on A4, one a copy, each within its own; fine lines part them", () => {
  for (const sheet of sheets()) {
    const pages = labelPages(sheet, A4);
    const total = 4 + 2 + 3 + 41 + 40;
    expect(pages).toHaveLength(Math.ceil(total / 24));
    expect(pages.map(({ name, width, height }) => [name, width, height])).toEqual(
      pages.map((_, i) => [String(i + 1), 210, 297]),
    );
    let labels = 0;
    for (const page of pages) {
      const lines = lineNumbers(page, "sheet");
      expect(lines.filter(([x0, , x1]) => x0 === x1)).toEqual([70, 140].map((x) => [x, 0, x, 297]));
      expect(lines.filter(([, y0, , y1]) => y0 === y1)).toEqual(
        [1, 2, 3, 4, 5, 6, 7].map((row) => [0, row * 37.125, 210, row * 37.125]),
      );
      const words = wordsOn(page);
      expect(runTogether(words)).toEqual([]);
      const cells = new Map<string, Written[]>();
      for (const word of words) {
        const [column, row] = [Math.floor((word.x + 1e-9) / 70), Math.floor((297 - word.y) / 37.125)];
        expect(
          standOut([word], {
            minX: column * 70 + 6.2,
            maxX: column * 70 + 63.7,
            minY: 297 - (row + 1) * 37.125 + 3,
            maxY: 297 - row * 37.125 - 5.5,
          }),
        ).toEqual([]);
        const key = `${row} ${column}`;
        cells.set(key, [...(cells.get(key) ?? []), word]);
      }
      // Row by row from the upper left.
      expect([...cells.keys()]).toEqual([...cells.keys()].map((_, i) => `${Math.floor(i / 3)} ${i % 3}`));
      labels += cells.size;
    }
    expect(labels).toBe(total);
  }
});

test("a label tells name, number, which of how many, size, grain, cloth and project, its name no more than two lines", () => {
  const [page] = labelPages(sheetIn("en", true), A4);
  const words = wordsOn(page!);
  const cell = (column: number, row: number) =>
    words.filter(({ x, y }) => Math.floor(x / 70) === column && Math.floor((297 - y) / 37.125) === row);
  expect(cell(1, 0).map(({ text }) => text)).toEqual([
    "Strap",
    expect.stringMatching(/1.* · 2 of 4$/u),
    "700 mm · 27 9/16 in  ×",
    "101.6 mm · 4 in",
    "↔ lengthwise · Cloth a",
    "Quay satchel",
  ]);
  expect(cell(1, 0).map(({ size, bold }) => [Math.round(size * 1000) / 1000, bold])).toEqual([
    [4.4, true],
    ...Array.from({ length: 5 }, () => [2.904, false]),
  ]);
  // The strap's four, two gussets, three turned over.
  expect(cell(1, 1).filter(({ bold }) => bold)).toHaveLength(2);
  expect(
    cell(0, 2)
      .map(({ text }) => text)
      .join(),
  ).toMatch(/mirrored.*1 of 3|1 of 3.*mirrored/u);
  expect(
    cell(1, 2)
      .map(({ text }) => text)
      .join(),
  ).toMatch(/2 of 3/u);
  const wide = labelPages({ ...sheetIn("en", true), project: "x".repeat(200) }, A4)[0]!;
  const cut = wordsOn(wide).filter(({ text }) => text.endsWith("…"));
  expect(cut.length).toBeGreaterThan(15);
  for (const { x, maxX } of cut) {
    expect(maxX - x).toBeGreaterThan(55);
    expect(maxX - x).toBeLessThanOrEqual(57.01);
  }
  // On smaller labels letters are smaller, and what has no room below is left out.
  const [small] = labelPages(sheetIn("en", true), A4, { columns: 5, rows: 13, marginX: 10, marginY: 12 });
  const low = wordsOn(small!);
  expect(runTogether(low)).toEqual([]);
  expect(low[0]!.size).toBeCloseTo(273 / 13 / 8, 6);
  expect(low[0]!.x).toBe(16.5);
  expect(lineNumbers(small!, "sheet")[0]).toEqual([48, 12, 48, 285]);
  for (const { y, text } of low) {
    const row = Math.floor((297 - 12 - y) / 21);
    expect(y, text).toBeGreaterThan(285 - (row + 1) * 21 + 3);
  }
});

const LIST = {
  title: "To buy for three bags",
  groups: ["Cloth", "Hardware"].map((heading) => ({
    heading,
    rows: Array.from({ length: 30 }, (_, i) => [`${heading} ${i + 1}`, `${i + 1} m`, `€${i + 1}.00`] as const),
  })),
  totals: ["In all €930.00", "Hardware comes on top."],
};

test("a list has a box beside each line, amounts and money in columns, and goes on overleaf with nothing cut in two", () => {
  for (const paper of ["A5", "A4", "Letter"]) {
    const { width, height } = paperNamed(paper)!;
    const pages = listPages(LIST, { width, height });
    const words = pages.map(wordsOn);
    expect(pages.map(({ name }) => name)).toEqual(pages.map((_, i) => String(i + 1)));
    expect(pages.length).toBe(Math.ceil((60 * 7 + 4 * 12.6 + 6) / (height - 36)));
    for (const [i, own] of words.entries()) {
      expect(runTogether(own)).toEqual([]);
      expect(standOut(own, { minX: 17.7, minY: 16.5, maxX: width - 17.7, maxY: height - 14 })).toEqual([]);
      const lines = own.filter(({ text }) => /^(?:Cloth|Hardware) \d+$/u.test(text));
      const boxes = lineNumbers(pages[i]!, "sheet");
      expect(boxes).toHaveLength(lines.length);
      for (const [k, { x, y, minY, maxY }] of lines.entries()) {
        const [x0, y0, x1, , , y2] = boxes[k]!;
        expect([x0, x1! - x0!, y2! - y0!]).toEqual([18, expect.closeTo(3.6, 2), expect.closeTo(3.6, 2)]);
        expect(x).toBeCloseTo(25.2, 6);
        // The box is beside its words.
        expect(y0!).toBeLessThan(minY);
        expect(y2!).toBeGreaterThan(maxY - 0.2);
        const amount = own.find((word) => word.y === y && / m$/u.test(word.text))!;
        const money = own.find((word) => word.y === y && word.text.startsWith("€"))!;
        expect(amount.x).toBeCloseTo(width - 18 - 64, 6);
        expect(money.maxX).toBeGreaterThan(width - 18.5);
      }
      // A head never ends a page.
      const lowest = own.toSorted((a, b) => a.y - b.y)[0]!;
      expect(lowest.text).not.toMatch(/^(?:Cloth|Hardware)$/u);
    }
    const all = words.flat();
    expect([all[0]!.size, all[0]!.bold, all[0]!.y]).toEqual([6, true, height - 24]);
    const first = all.filter(({ text }) => /^Cloth \d+$/u.test(text));
    expect(first[0]!.y - first[1]!.y).toBeCloseTo(7, 6);
    const head = all.find(({ text }) => text === "Cloth")!;
    expect([head.size, head.bold, head.x]).toEqual([4, true, 18]);
    expect(all[0]!.y - head.y).toBeCloseTo(12.6, 6);
    expect(head.y - first[0]!.y).toBeCloseTo(7, 6);
    expect(all.slice(-2).map(({ text, bold }) => [text, bold])).toEqual(LIST.totals.map((text) => [text, true]));
  }
  const long = listPages(
    {
      title: "x".repeat(300),
      groups: [{ heading: "h", rows: [["w".repeat(200), "a".repeat(90), "m".repeat(90)]] }],
      totals: [],
    },
    A4,
  );
  expect(runTogether(wordsOn(long[0]!))).toEqual([]);
});
