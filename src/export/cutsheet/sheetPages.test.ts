import { expect, test } from "vitest";
import { A4, lineNumbers, SHEET_INPUT, sheetIn, sheetPiece, sheets } from "../../../tests/tools/sampleCutSheet.ts";
import { runTogether, standOut, type Written, wordsOn } from "../../../tests/tools/writtenWords.ts";
import { paperNamed } from "../../core/project/papers.ts";
import { cutSheetOf } from "./cutSheet.ts";
import { cutSheetPages } from "./cutSheetPages.ts";

test("words of a cut sheet do not run into each other and stay 15 mm off the paper's edges, on any paper", () => {
  for (const paper of ["A5", "A4", "Letter", "A3"])
    for (const sheet of sheets()) {
      const { width, height } = paperNamed(paper)!;
      for (const page of cutSheetPages(sheet, { width, height })) {
        const words = wordsOn(page);
        expect(runTogether(words), paper).toEqual([]);
        expect(standOut(words, { minX: 14.7, minY: 14, maxX: width - 14.7, maxY: height - 15 }), paper).toEqual([]);
        // A size that is too long for its column is written smaller, never cut.
        expect(words.filter(({ text }) => text.includes(" × ") && text.endsWith("…"))).toEqual([]);
      }
    }
});

test("each row has a rule below it, with its words and boxes between it and the rule before", () => {
  const [first] = cutSheetPages(sheetIn("en", true), A4);
  const words = wordsOn(first!);
  const rules = lineNumbers(first!, "sheet").filter(([x0, y0, x1, y1]) => x0 === 15 && x1 === 195 && y0 === y1);
  // Four rows, and the line over the foot.
  expect(rules).toHaveLength(5);
  const boxes = lineNumbers(first!, "mark");
  const rows = ["Strap", "Gusset", "Lining", "Pocket"];
  const [counts, ticked] = [
    [4, 5, 41, 40],
    [4, 5, 0, 40],
  ];
  for (const [i, name] of rows.entries()) {
    const floor = rules[i]![1]!;
    const at = words.find(({ text, bold, size }) => text.startsWith(name) && bold && size === 3.2)!;
    const top = at.maxY + 2.2;
    const own = words.filter(({ y }) => y < top && y > floor);
    expect(own[0]!.text).toBe(String(i + 1));
    expect(own[1]!.text).toBe(String(counts[i]));
    const [number, count, title] = own as [Written, Written, Written];
    expect([number.x, count.x, title.x]).toEqual(
      [15, 15 + 180 * 0.045, 15 + 180 * 0.115].map((x) => expect.closeTo(x, 6)),
    );
    expect([number.bold, count.bold, title.bold]).toEqual([false, true, true]);
    const ticks = boxes.filter(([, y]) => y! < top && y! > floor);
    expect(ticks, name).toHaveLength(ticked[i]!);
    for (const [x0, y0, x1, , , y2] of ticks) {
      expect(x1! - x0!).toBeCloseTo(3, 2);
      expect(y2! - y0!).toBeCloseTo(3, 2);
      expect(x0!).toBeGreaterThanOrEqual(title.x - 1e-3);
      expect(x1!).toBeLessThanOrEqual(195.001);
      expect(y0!).toBeGreaterThan(floor + 0.5);
      expect(own.every(({ minY, minX, maxX }) => minY > y2! - 0.2 || maxX < x0! || minX > x1!)).toBe(true);
    }
    // Boxes stand apart.
    const places = ticks.map(([x, y]) => `${x} ${y}`);
    expect(new Set(places).size).toBe(places.length);
    const lowest = Math.min(...own.map(({ minY }) => minY), ...ticks.map(([, y]) => y!));
    expect(lowest - floor).toBeGreaterThan(0.5);
    expect(lowest - floor).toBeLessThan(3.3);
  }
  // 32 boxes go in a line of what is right of the number and count.
  const pocket = boxes.filter(([, y]) => y! < rules[2]![1]! && y! > rules[3]![1]!);
  expect(new Set(pocket.map(([, y]) => y)).size).toBe(2);
  expect(pocket.filter(([, y]) => y === pocket[0]![1])).toHaveLength(34);
});

test("sizes stand in their columns, in millimetres and inches where these are wanted, one unit for both sides", () => {
  const row = (inches: boolean) => wordsOn(cutSheetPages(sheetIn("en", inches), A4)[0]!);
  const both = row(true)
    .filter(({ text }) => /\d × /u.test(text))
    .slice(0, 2);
  expect(both.map(({ text }) => text)).toEqual(["700 × 101.6 mm", "27 9/16 × 4 in"]);
  expect(both.map(({ x }) => x)).toEqual([15 + 180 * 0.43, 15 + 180 * 0.595].map((x) => expect.closeTo(x, 6)));
  const metric = row(false).filter(({ text }) => /\d × /u.test(text));
  expect(metric[0]!.text).toBe("700 × 101.6 mm");
  expect(metric[0]!.x).toBeCloseTo(15 + 180 * 0.55, 6);
  expect(metric.some(({ text }) => text.includes("in"))).toBe(false);
  for (const inches of [true, false]) {
    const grain = row(inches).find(({ text }) => text === "lengthwise")!;
    expect(grain.x).toBeCloseTo(15 + 180 * (inches ? 0.855 : 0.8), 6);
    // Heads stand over their columns.
    const heads = row(inches)
      .filter(({ size }) => size === 2.8)
      .slice(0, inches ? 5 : 4);
    const columns = inches ? [0.045, 0.115, 0.43, 0.595, 0.855] : [0.045, 0.115, 0.55, 0.8];
    expect(heads.map(({ x }) => x)).toEqual(columns.map((share) => expect.closeTo(15 + 180 * share, 6)));
  }
});

test("the sheet begins with project and bags and goes on by material, buying, work and care, each under its head", () => {
  const pages = cutSheetPages(sheetIn("en", false), A4);
  const words = pages.flatMap(wordsOn);
  const heads = words.filter(({ size, bold }) => size === 4.6 && bold).map(({ text }) => text);
  expect(heads).toEqual(["Cloth a", "Cloth b", "To buy", "Also needed", "Strap", "Take care"]);
  expect([words[0]!.text, words[0]!.size, words[0]!.bold, words[0]!.y]).toEqual(["Quay satchel", 7, true, 275]);
  expect(words[1]!.text).toBe("Cut sheet. For 2 bags; counts are for all of them.");
  expect(words[1]!.size).toBe(3.2);
  // Every head has its line below it, over the whole width.
  const under = pages.flatMap((page) => lineNumbers(page, "label"));
  expect(under).toHaveLength(6);
  for (const [x0, y0, x1, y1] of under) expect([x0, x1, y1]).toEqual([15, 195, y0]);
  const [head] = words.filter(({ text }) => text === "Cloth a");
  expect(head!.y - under[0]![1]!).toBeCloseTo(2, 6);
  // Steps are numbered, what goes on in a further line is set in by 4.5 mm.
  const at = words.findIndex(({ text }) => text.startsWith("2. Topstitch."));
  const [step, next] = words.slice(at, at + 2) as [Written, Written];
  expect([step.x, next.x]).toEqual([15, 19.5]);
  expect(step.y - next.y).toBeCloseTo(3.2 * 1.35, 6);
  expect(words.some(({ text }) => text.includes("Not said"))).toBe(false);
  expect(words.map(({ text }) => text)).toEqual(
    expect.arrayContaining([
      "Needle 100, thread 60.",
      "Fold at 25.4, 50.8 mm from a long edge",
      "2 as drawn, 3 mirrored",
      "1. Fold both edges in.",
      "The pieces take 1420 mm: proven shortest.",
      "1.5 m, €18.00",
    ]),
  );
  const amount = words.find(({ text }) => text === "24 m")!;
  expect([amount.x, amount.bold]).toEqual([15 + 180 * 0.45, true]);
  // The foot names the sheet and its page.
  const feet = words.filter(({ y }) => y === 15);
  expect(feet.map(({ text }) => text)).toEqual(
    pages.flatMap((_, i) => [
      "Quay satchel: Cut sheet",
      expect.stringMatching(new RegExp(`${i + 1}.*${pages.length}`, "u")),
    ]),
  );
});

test("a picture is as large as it is drawn, or smaller to the paper's width; its title stands above it", () => {
  const drawing = (maxX: number, maxY: number) => ({ box: { minX: 0, minY: 0, maxX, maxY }, items: [] });
  const pictured = (maxX: number, maxY: number) => {
    const pages = cutSheetPages(
      {
        ...sheetIn("en", false),
        groups: [],
        work: [],
        purchase: [],
        consumables: [],
        cautions: [],
        pictures: [{ title: "Strap: folded", drawing: drawing(maxX, maxY) }],
      },
      A4,
    );
    const title = pages.flatMap(wordsOn).find(({ text }) => text === "Strap: folded")!;
    return { part: pages[0]!.parts[1]!, title };
  };
  const own = pictured(150, 60);
  expect([own.part.scaleX, own.part.scaleY, own.part.x]).toEqual([1, 1, 15]);
  expect([own.title.bold, own.title.size]).toEqual([true, 3.2]);
  // Its upper edge is 2 mm below the block's, in the margin that every picture has; the title in that margin.
  expect(own.part.y + 60 - own.title.y).toBeCloseTo(3.2 + 1 - 2, 6);
  const off = { title: "Strap: folded", drawing: { box: { minX: 10, minY: 20, maxX: 370, maxY: 60 }, items: [] } };
  const [moved] = cutSheetPages(
    { ...sheetIn("en", false), groups: [], work: [], purchase: [], consumables: [], cautions: [], pictures: [off] },
    A4,
  );
  expect([moved!.parts[1]!.scaleX, moved!.parts[1]!.x]).toEqual([0.5, 10]);
  expect(pictured(360, 60).part.scaleX).toBe(0.5);
  expect(pictured(100, 180).part.scaleX).toBe(0.5);
  expect(
    cutSheetPages({ ...sheetIn("en", false), pictures: [] }, A4)
      .flatMap(wordsOn)
      .some(({ text }) => text === "Pictures"),
  ).toBe(false);
});

test("a head with its column heads is never the last of a page; rows fill each page, amounts follow each other closely", () => {
  const rows = (count: number, materialId: string) =>
    Array.from({ length: count }, (_, i) => sheetPiece(`Piece ${i}`, 100 + i, 50, { materialId, count: 1 }));
  for (let before = 10; before < 26; before++) {
    const sheet = cutSheetOf({
      ...SHEET_INPUT,
      pieces: [...rows(before, "a"), ...rows(40, "b")],
      lay: new Map(),
      work: [],
      mind: [],
    });
    const pages = cutSheetPages(sheet, A4);
    for (const [i, page] of pages.entries()) {
      const words = wordsOn(page).filter(({ y }) => y > 20);
      const lowest = words.toSorted((a, b) => a.y - b.y)[0]!;
      if (i < pages.length - 1) expect(lowest.text, `${before}`).not.toMatch(/^(?:grain|cut|Cloth b)$/u);
      const rules = lineNumbers(page, "sheet").map(([, y]) => y!);
      const last = Math.min(...rules.filter((y) => y > 20));
      // A row of one box is 11.92 mm high, a head with its columns and two rows under it 41.84.
      if (i < pages.length - 2) expect(last - 23).toBeLessThan(42);
    }
    const [heads] = pages.flatMap((page) => wordsOn(page)).filter(({ text }) => text === "Cloth b");
    expect(heads).toBeDefined();
  }
  const list = cutSheetOf({
    ...SHEET_INPUT,
    pieces: [],
    purchase: [],
    consumables: [1, 2, 3].map((n) => ({ what: `thing ${n}`, amount: `${n} m` })),
    work: [],
    mind: [],
  });
  const words = wordsOn(cutSheetPages(list, A4)[0]!).filter(({ text }) => /^thing/u.test(text));
  expect(words.slice(1).map(({ y }, i) => words[i]!.y - y)).toEqual(
    [5.32, 5.32].map((mm) => expect.closeTo(mm, 6)),
  );
});

test("a name wraps within its column; a sheet without cautions has no head for them; one page of rows needs no second", () => {
  const long = cutSheetOf({ ...SHEET_INPUT, pieces: [sheetPiece("Gusset ".repeat(9).trim(), 300, 200)] });
  const names = wordsOn(cutSheetPages({ ...long, cautions: [] }, A4)[0]!).filter(({ text }) =>
    text.startsWith("Gusset"),
  );
  expect(names.length).toBe(2);
  for (const { maxX } of names) expect(maxX).toBeLessThan(15 + 0.55 * 180 - 1.9);
  const said = cutSheetPages({ ...long, cautions: [] }, A4)
    .flatMap(wordsOn)
    .map(({ text }) => text);
  expect(said).not.toContain("Take care");
  expect(
    cutSheetPages(long, A4)
      .flatMap(wordsOn)
      .map(({ text }) => text),
  ).toContain("Take care");
});
