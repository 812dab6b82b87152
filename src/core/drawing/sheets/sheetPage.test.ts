import { expect, test } from "vitest";
import { sampleSheet } from "../../../../tests/tools/samplePlan.ts";
import { linesOf, runTogether, standOut, wordsOn } from "../../../../tests/tools/writtenWords.ts";
import { circleContour } from "../../geometry/contourShapes.ts";
import { DRAWING_ROLES } from "../../project/outputSettings.ts";
import { drawArea } from "../list/items.ts";
import { ROLE_STYLES } from "../list/roleStyles.ts";
import { barePage, projectionStyles, rollPages } from "./sheetPage.ts";

const sheet = sampleSheet();
const TITLE = { project: "Quay satchel", material: "Canvas", stock: "roll", language: "en" as const };
const TRUE = { x: 1, y: 1 };
const pages = (rollWidth: number | null, correction = TRUE, of = sheet) =>
  rollPages(of, TITLE, "both", { rollWidth, correction });

// The lay is 630 × 480 mm. By hand: 10 mm are left all round and 12 for the words: 650 × 512.
test("one sheet is as large as the lay and its edges, or as wide as the roll of paper", () => {
  const [own, ...none] = pages(null);
  expect(none).toEqual([]);
  expect([own!.width, own!.height]).toEqual([650, 512]);
  expect(pages(914.4).map(({ width, height }) => [width, height])).toEqual([[650, 914.4]]);
  expect(pages(512).map(({ height }) => height)).toEqual([512]);
  const [drawn] = own!.parts;
  expect([drawn!.x, drawn!.y, drawn!.scaleX, drawn!.scaleY, drawn!.clip]).toEqual([10, 22, 1, 1, null]);
  expect(drawn!.items.some(({ kind }) => kind === "area")).toBe(false);
  // A lay that does not begin at 0 lies at the same place.
  const moved = { ...sheet, drawing: { ...sheet.drawing, box: { minX: 5, minY: -12, maxX: 635, maxY: 468 } } };
  const [part] = pages(null, TRUE, moved)[0]!.parts;
  expect([part!.x, part!.y]).toEqual([5, 34]);
});

test("a printer's error is made good each way, the sheet grows with it", () => {
  const [page] = pages(null, { x: 1.01, y: 0.99 });
  expect(page!.width).toBeCloseTo(630 * 1.01 + 20, 9);
  expect(page!.height).toBeCloseTo(480 * 0.99 + 32, 9);
  expect([page!.parts[0]!.scaleX, page!.parts[0]!.scaleY]).toEqual([1.01, 0.99]);
  const tape = page!.parts[2]!;
  expect([tape.scaleX, tape.scaleY]).toEqual([1.01, 0.99]);
  expect(tape.x + 100 * 1.01).toBeCloseTo(page!.width - 10, 9);
});

test("a short lay has paper enough for the words and the tape side by side", () => {
  const small = { ...sheet, drawing: { ...sheet.drawing, box: { minX: 0, minY: 0, maxX: 100, maxY: 80 } } };
  const [page] = pages(null, TRUE, small);
  expect([page!.width, page!.height]).toEqual([220, 112]);
  for (const one of [page!, pages(null)[0]!]) {
    const words = wordsOn({ ...one, parts: one.parts.slice(1) });
    expect(runTogether(words)).toEqual([]);
    expect(standOut(words, { minX: 9.8, minY: 6, maxX: one.width - 10, maxY: 21 })).toEqual([]);
    const [title, tape] = words;
    expect([title!.text, title!.size, title!.bold, title!.x, title!.y]).toEqual([
      "Quay satchel · Canvas · roll",
      4,
      true,
      10,
      13,
    ]);
    expect([tape!.text, tape!.size]).toEqual(["10 cm: measure before cutting", 2.6]);
    expect((tape!.minX + tape!.maxX) / 2).toBeCloseTo(one.width - 60, 0);
  }
  const long = rollPages(small, { ...TITLE, project: "Quay ".repeat(30), stock: "" }, "both", {
    rollWidth: null,
    correction: TRUE,
  })[0]!;
  const [title] = wordsOn({ ...long, parts: [long.parts[1]!] });
  expect(title!.text).toMatch(/…$/u);
  // 112 mm are kept for the tape, 10 at either edge.
  expect(title!.maxX).toBeGreaterThan(91);
  expect(title!.maxX).toBeLessThan(220 - 10 - 100 - 10);
});

test("the tape is 10 cm long with a tick each centimetre, those at its ends and its middle longer", () => {
  const tape = pages(null)[0]!.parts[2]!;
  const ticks = [4, 2, 2, 2, 2, 3, 2, 2, 2, 2, 4].map((long, cm) => `${cm * 10} 0, ${cm * 10} ${long}`);
  expect(linesOf(tape.items, "mark")).toEqual(["0 0, 100 0", ...ticks]);
  expect([tape.x, tape.y]).toEqual([540, 6]);
  // Its words begin clear of the longer tick in its middle, 3 mm high.
  expect(tape.items.flatMap((item) => (item.kind === "text" ? [[item.x, item.y]] : []))).toEqual([[50, 3.6]]);
});

test("what is wider than the roll of paper comes in bands as long as the lay, taped like sheets", () => {
  const bands = pages(300);
  expect(bands.length).toBe(2);
  for (const { width, height } of bands) {
    expect(height).toBe(300);
    expect(width).toBe(651);
  }
  expect(bands.map(({ name }) => name)).toEqual(["A1", "B1"]);
  expect(pages(511.9).map(({ name }) => name)).toEqual(["A1"]);
  const corrected = pages(300, { x: 1.01, y: 0.99 });
  expect(corrected[0]!.parts[0]).toMatchObject({ scaleX: 1.01, scaleY: 0.99 });
});

test("a projector's page is the lay alone, edge to edge, without areas", () => {
  const pattern = drawArea("pattern", [circleContour(60, 60, 20)]);
  const page = barePage({ ...sheet, drawing: { ...sheet.drawing, items: [...sheet.drawing.items, pattern] } });
  expect([page.width, page.height]).toEqual([630, 480]);
  expect(page.parts).toHaveLength(1);
  expect([page.parts[0]!.x, page.parts[0]!.y, page.parts[0]!.scaleX]).toEqual([0, 0, 1]);
  expect(page.parts[0]!.items).toEqual(sheet.drawing.items.filter(({ kind }) => kind !== "area"));
});

/** Contrast with black. Source: WCAG 2.2, relative luminance and contrast ratio. */
function contrast(color: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05) / 0.05;
}

test("a projector's lines are bright on black and five times as thick, 1.2 mm at least, their dashes longer", () => {
  const wide = { ...ROLE_STYLES, flaw: { color: "#a8332a", width: 0.3, dash: [2, 4] } };
  const styles = projectionStyles(wide);
  expect(Object.keys(styles).sort()).toEqual([...DRAWING_ROLES].sort());
  for (const role of DRAWING_ROLES) {
    expect(contrast(styles[role].color), role).toBeGreaterThan(7);
    expect(styles[role].width).toBe(Math.max(1.2, 5 * wide[role].width));
  }
  expect(styles.flaw).toMatchObject({ width: 1.5, dash: [5, 10] });
  expect(styles.cut.width).toBe(1.75);
  expect(styles.label.width).toBe(1.2);
});
