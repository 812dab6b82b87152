import { expect, test } from "vitest";
import { areasOf, linesOf, runTogether, standOut, wordsOn } from "../../../../tests/tools/writtenWords.ts";
import { boxesOverlap, boxOfAll, ringBox } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { rulerCuts } from "../../lay/alternatives/layFigures.ts";
import type { LayPiece } from "../../lay/problem/layProblem.ts";
import type { LaySheet } from "../lay/layDrawing.ts";
import { type RulerPlan, rulerCards, rulerPages, rulerPlan } from "./rulerPages.ts";

/** Two straps side by side and a tab after them, `gap` apart, `margin` from the edges of a roll. */
function sheetOf(gap: number, margin: number): LaySheet {
  const boxes: [string, number, number, number, number][] = [
    ["Strap", margin, margin, 700, 100],
    ["Strap", margin, margin + 100 + gap, 700, 100],
    ["Tab", margin + 700 + gap, margin, 60, 40],
  ];
  return {
    stockId: "roll",
    drawing: { box: { minX: 0, minY: 0, maxX: 780, maxY: 300 }, items: [] },
    copies: boxes.map(([name, x, y, w, h], copy) => ({
      key: `${name}#${copy}`,
      pieceId: name,
      copy,
      name,
      outline: solid(rectangleRing(x, y, w, h)),
    })),
    usedLength: 2 * margin + 760 + gap,
  };
}

function planOf(gap: number, margin: number): RulerPlan {
  const sheet = sheetOf(gap, margin);
  const pieces = ["Strap", "Tab"].map((id): LayPiece => {
    const own = sheet.copies.filter(({ pieceId }) => pieceId === id);
    const { minX, minY, maxX, maxY } = ringBox(own[0]!.outline.outer);
    const outline = solid(rectangleRing(0, 0, maxX - minX, maxY - minY));
    const orientations = [{ turnDeg: 0, mirrored: false }];
    return { id, outline, count: 3, orientations, freeTurn: false };
  });
  const stocks = [{ kind: "roll", id: "roll", width: 300, length: null, flaws: [] } as const];
  const placements = sheet.copies.map(({ pieceId, copy, outline }) => {
    const { minX: x, minY: y } = ringBox(outline.outer);
    return { pieceId, copy, stockId: "roll", x, y, turnDeg: 0, mirrored: false };
  });
  const uses = [{ stockId: "roll", usedLength: sheet.usedLength, bound: null }];
  const problem = { materialId: "m", pieces, stocks, gap, margin, pinned: [] };
  const plan = { materialId: "m", placements, unplaced: [], uses, evaluations: 0, seed: 1 };
  return rulerPlan(rulerCuts(problem, plan)![0]!, sheet);
}

test("pieces that touch: straighten, two lengths, their rips, the tab's crosscut is its length", () => {
  const { sequence } = planOf(0, 0);
  const said = sequence.steps.map(({ kind, setting, off }) => [kind, setting, off?.kind === "piece"]);
  expect(said).toEqual([
    ["straighten", 0, false],
    ["crosscut", 700, false],
    ["crosscut", 60, false],
    ["rip", 100, true],
    ["rip", 100, true],
    ["rip", 40, true],
  ]);
});

test("gaps are closed up: every piece is cut at its own size, not with its gap", () => {
  const { sequence } = planOf(2, 5);
  const settings = sequence.steps.filter(({ off }) => off?.kind === "piece").map(({ setting }) => setting);
  expect(settings).toEqual([100, 100, 40]);
  expect(sequence.steps.find(({ kind }) => kind === "crosscut")!.setting).toBe(700);
});

test("every cut has its picture, eight a page", () => {
  const plan = planOf(2, 5);
  const title = { project: "p", material: "m", stock: "", language: "en" as const };
  const pages = rulerPages(plan, { width: 210, height: 297 }, title, (mm) => `${mm} mm`);
  expect(pages).toHaveLength(Math.ceil(plan.sequence.steps.length / 8));
  const words = pages
    .flatMap((page) => page.parts.flatMap((part) => part.items))
    .flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(words.some((text) => text.includes("Cut the cloth crosswise at 700 mm"))).toBe(true);
});

const A4 = { width: 210, height: 297 };
const TITLE = { project: "Quay satchel", material: "Canvas", stock: "", language: "en" as const };
const write = (mm: number): string => `${mm} mm`;
const PLAN = planOf(2, 5);
const pagesNow = () => rulerPages(PLAN, A4, TITLE, write);

/** The twelve straps of a long plan, so that there is a second page. */
const many = (): RulerPlan => {
  const { sequence, ...more } = PLAN;
  const steps = [...sequence.steps, ...sequence.steps.slice(1)].map((step, i) => ({ ...step, number: i + 1 }));
  return { ...more, sequence: { ...sequence, steps } };
};

test("words of the ruler's pages do not run into each other, into pictures or off the paper", () => {
  for (const paper of [A4, { width: 215.9, height: 279.4 }, { width: 297, height: 420 }])
    for (const language of ["en", "de"] as const) {
      const pages = rulerPages(many(), paper, { ...TITLE, language }, write);
      expect(pages.length).toBe(2);
      for (const page of pages) {
        const words = wordsOn({ ...page, parts: [page.parts[0]!] });
        expect(runTogether(words)).toEqual([]);
        const { width, height } = paper;
        expect(standOut(words, { minX: 11.7, minY: 11, maxX: width - 11.7, maxY: height - 12 })).toEqual([]);
        for (const { x, y, scaleX, items } of page.parts.slice(1)) {
          const box = boxOfAll(
            items
              .flatMap((item) =>
                item.kind === "text" ? [] : item.kind === "line" ? [item.contour] : item.contours,
              )
              .map(contourBox),
          );
          const onPaper = {
            minX: x + box.minX * scaleX,
            maxX: x + box.maxX * scaleX,
            minY: y + box.minY * scaleX,
            maxY: y + box.maxY * scaleX,
          };
          expect(words.filter((word) => boxesOverlap(word, onPaper)).map(({ text }) => text)).toEqual([]);
          expect(onPaper.minX).toBeGreaterThan(8.9);
          expect(onPaper.maxX).toBeLessThan(width - 8.9);
          expect(onPaper.minY).toBeGreaterThan(11);
        }
      }
    }
});

test("cuts go row by row, two beside each other, four below; each page names project, cloth, cuts and itself", () => {
  const [first, second] = rulerPages(many(), A4, TITLE, write);
  const own = wordsOn({ ...first!, parts: [first!.parts[0]!] });
  expect([own[0]!.text, own[0]!.size, own[0]!.bold, own[0]!.x, own[0]!.y]).toEqual([
    "Quay satchel: Canvas",
    6,
    true,
    12,
    279,
  ]);
  expect(own[1]!.text).toContain(`${PLAN.sequence.cuts} cuts`);
  expect([own[1]!.size, own[1]!.y]).toEqual([3.2, 273]);
  expect(own[2]!.y).toBe(268);
  expect(own[2]!.y - own[3]!.y).toBeCloseTo(4.2, 6);
  const feet = own.filter(({ size }) => size === 2.6);
  expect(feet.map(({ text, y }) => [text, y])).toEqual([[expect.stringMatching(/1.*2/u), 12]]);
  expect(feet[0]!.maxX).toBeCloseTo(198, 0);
  const numbered = own.filter(({ size, bold, text }) => size === 3.6 && bold && /^\d+ /u.test(text));
  expect(numbered.map(({ text }) => Number.parseInt(text, 10))).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  // Own arithmetic: 186 mm between margins less a gutter of 8 give columns of 89 mm; what is left of the height
  // under a head of 37 mm and over a foot of 8 gives rows of 57 mm.
  expect(numbered.map(({ x }) => x)).toEqual([12, 109, 12, 109, 12, 109, 12, 109]);
  expect(numbered.map(({ y }) => y)).toEqual(
    [0, 0, 1, 1, 2, 2, 3, 3].map((row) => expect.closeTo(244 - 57 * row, 6)),
  );
  const next = wordsOn({ ...second!, parts: [second!.parts[0]!] }).filter(({ text }) => /^9 /u.test(text));
  expect(next[0]!.x).toBe(12);
  // What to do is bold, how below it is not.
  const below = own.filter(({ size, bold }) => size === 3 && !bold);
  expect(below.length).toBeGreaterThanOrEqual(7);
  expect(numbered[1]!.y - below[0]!.y).toBeCloseTo(4.2, 6);
});

test("a picture is the whole table to scale with the ruler along the cut: what is cut strong, the rest pale", () => {
  const { steps } = PLAN.sequence;
  const whole = steps[0]!.cloth.box;
  const pages = pagesNow();
  for (const [i, step] of steps.entries()) {
    const { items, x, scaleX, scaleY } = pages[0]!.parts[i + 1]!;
    expect(scaleX).toBe(scaleY);
    // As large as it can be: as wide as its column, or as high as what its words leave of the row.
    const high =
      57 -
      10 -
      4.2 *
        wordsOn({ ...pages[0]!, parts: [pages[0]!.parts[0]!] }).filter((word) => {
          const left = i % 2 === 0 ? 12 : 109;
          const top = 248 - 57 * Math.floor(i / 2);
          return word.x >= left - 0.1 && word.x < left + 89 && word.y < top && word.y > top - 57 && word.size >= 3;
        }).length;
    expect(scaleX).toBeCloseTo(Math.min(89 / whole.dx, high / whole.dy), 6);
    expect(x + whole.x * scaleX).toBeCloseTo(i % 2 === 0 ? 12 : 109, 6);
    const under = areasOf(items, "face");
    const { box } = step.cloth;
    expect(under).toEqual([
      [
        [box.x, box.y],
        [box.x + box.dx, box.y],
        [box.x + box.dx, box.y + box.dy],
        [box.x, box.y + box.dy],
      ]
        .map((point) => point.map((mm) => Math.round(mm * 1000) / 1000).join(" "))
        .join(", "),
    ]);
    // One outline is strong, that of the cloth under the ruler.
    expect(linesOf(items, "cut")).toEqual(under);
    const [edge] = linesOf(items, "stitch").map((line) => line.split(/,? /u).map(Number));
    const [ruler] = items.flatMap((item) =>
      item.kind === "area" && item.tone === "facing" ? [contourBox(item.contours[0]!)] : [],
    );
    const mm = 1 / scaleX;
    const isRip = step.kind === "rip";
    const [low, far] = isRip ? [box.x, box.x + box.dx] : [box.y, box.y + box.dy];
    const [from, to] = isRip ? [edge![0]!, edge![2]!] : [edge![1]!, edge![3]!];
    expect((low - from) / mm).toBeCloseTo(2, 1);
    expect((to - far) / mm).toBeCloseTo(2, 1);
    expect(isRip ? [edge![1], edge![3]] : [edge![0], edge![2]]).toEqual(
      [step.at, step.at].map((at) => expect.closeTo(at, 2)),
    );
    // The ruler lies on what is kept, its edge on the line, 3 mm wide on the paper.
    const [start, end] = isRip ? [ruler!.minY, ruler!.maxY] : [ruler!.minX, ruler!.maxX];
    expect(end).toBeCloseTo(step.at, 6);
    expect((end - start) / mm).toBeCloseTo(3, 6);
    const [left, right] = isRip ? [ruler!.minX, ruler!.maxX] : [ruler!.minY, ruler!.maxY];
    expect([left, right]).toEqual([expect.closeTo(from, 2), expect.closeTo(to, 2)]);
  }
});

test("parts that are off the table already are gone, pieces and cloth that wait are named where there is room", () => {
  const pages = pagesNow();
  for (const [i, step] of PLAN.sequence.steps.entries()) {
    const part = pages[0]!.parts[i + 1]!;
    const words = wordsOn({ ...pages[0]!, parts: [part] });
    expect(runTogether(words)).toEqual([]);
    const boxes = part.items.flatMap((item) =>
      item.kind === "area" && item.tone !== "facing" ? [contourBox(item.contours[0]!)] : [],
    );
    for (const word of words) {
      const { size } = word;
      // A name is within its own piece, and not on its edge.
      const own = boxes.filter(({ minX, maxX, minY, maxY }) => {
        const at = (x: number, y: number) => [part.x + x * part.scaleX, part.y + y * part.scaleY] as const;
        const [[left, low], [right, high]] = [at(minX, minY), at(maxX, maxY)];
        const isIn = word.minX > left && word.maxX < right && word.minY > low && word.maxY < high;
        const [across, up] = [(word.minX + word.maxX - left - right) / 2, (word.minY + word.maxY - low - high) / 2];
        return isIn && Math.abs(across) < 0.3 && Math.abs(up) < 0.4;
      });
      expect(own.length, word.text).toBeGreaterThan(0);
      expect(size).toBeLessThanOrEqual(2.6 + 1e-9);
      expect(size).toBeGreaterThanOrEqual(1);
    }
    if (i === 0) continue;
    const name = step.cloth.kind === "cloth" ? step.cloth.name : "";
    if (name !== "") expect(words.map(({ text }) => text)).toContain(name);
  }
  const last = PLAN.sequence.steps.length;
  const words = wordsOn({ ...pages[0]!, parts: [pages[0]!.parts[last]!] }).map(({ text }) => text);
  expect(words.filter((text) => text === "Strap").length).toBeGreaterThan(0);
});

test("a card is one cut alone with 3 mm of edge, its number apart from its words", () => {
  const cards = rulerCards(PLAN, { width: 100, height: 60 }, write, "en");
  expect(cards.map(({ number }) => number)).toEqual(PLAN.sequence.steps.map((step) => step.number));
  const whole = PLAN.sequence.steps[0]!.cloth.box;
  for (const { words, picture } of cards) {
    expect(words[0]).not.toMatch(/^\d/u);
    expect([picture.width, picture.height]).toEqual([100, 60]);
    const [{ x, y, scaleX }] = picture.parts as [(typeof picture.parts)[0]];
    expect(scaleX).toBeCloseTo(Math.min(94 / whole.dx, 54 / whole.dy), 9);
    expect(x + whole.x * scaleX).toBeCloseTo(3, 9);
    expect(y + (whole.y + whole.dy) * scaleX).toBeCloseTo(57, 9);
  }
  expect(cards[1]!.words.join(" ")).toMatch(/700 mm/u);
  expect(cards[0]!.words).toHaveLength(1);
  expect(cards[1]!.words).toHaveLength(2);
});

test("the first cut says how much is trimmed off where there is an edge, and nothing of it where there is none", () => {
  const first = (plan: RulerPlan) => rulerCards(plan, { width: 100, height: 60 }, write, "en")[0]!.words[0]!;
  expect(first(PLAN)).toContain("5 mm");
  expect(first(planOf(0, 0))).not.toMatch(/mm/u);
});

test("a curved piece is named as its box, one that is not on the sheet by its id", () => {
  const sheet = sheetOf(0, 0);
  const cuts = {
    sequence: PLAN.sequence,
    margin: 5,
    placements: [
      { pieceId: "Strap", copy: 0, stockId: "roll", x: 0, y: 0, turnDeg: 0, mirrored: false },
      { pieceId: "Gone", copy: 4, stockId: "roll", x: 0, y: 0, turnDeg: 0, mirrored: false },
      { pieceId: "Round", copy: 0, stockId: "roll", x: 0, y: 0, turnDeg: 0, mirrored: false },
    ],
  } as never;
  const outline = solid(Float64Array.of(0, 0, 50, 0, 40, 50));
  const copies = [...sheet.copies, { key: "Round#0", pieceId: "Round", copy: 0, name: "Round", outline }];
  const { names, margin } = rulerPlan(cuts, { ...sheet, copies });
  expect(names).toEqual(["Strap", "Gone", expect.stringMatching(/Round/u)]);
  expect(names[2]).not.toBe("Round");
  expect(margin).toBe(5);
});
