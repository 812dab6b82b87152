import fontkit from "@pdf-lib/fontkit";
import { PDFDocument } from "pdf-lib";
import { expect, test } from "vitest";
import { FONTS } from "../../../tests/tools/samplePlan.ts";
import { drawArea, drawLine, drawText } from "../../core/drawing/list/items.ts";
import type { Page, PagePart } from "../../core/drawing/list/page.ts";
import { ROLE_STYLES, TONE_COLORS } from "../../core/drawing/list/roleStyles.ts";
import type { Contour } from "../../core/geometry/contour.ts";
import { circleContour, rectangleContour, segmentContour } from "../../core/geometry/contourShapes.ts";
import { pageContent } from "./content.ts";
import { pathOperators, pdfNumber } from "./paths.ts";
import { makeTypesetter } from "./typesetter.ts";

const type = async (...texts: string[]) => makeTypesetter(await PDFDocument.create(), FONTS, texts);
const part = (more: Partial<PagePart>): PagePart => ({
  items: [],
  x: 0,
  y: 0,
  scaleX: 1,
  scaleY: 1,
  clip: null,
  ...more,
});
const page = (...parts: PagePart[]): Page => ({ name: "", width: 210, height: 297, parts });
const content = async (own: Page, background?: string, unit = 25.4 / 72) =>
  pageContent(own, { styles: ROLE_STYLES, unit, type: await type("g8"), background }).split("\n");

// ISO 32000-1, 8.3.3: a matrix of a part maps (x, y) to (a x + e, d y + f).
test("millimetres come first, then each part's place, scale and clip, each part by itself", async () => {
  const clip = { minX: 10, minY: 12, maxX: 200, maxY: 287 };
  const lines = await content(page(part({ x: 3, y: 4.5 }), part({ scaleX: 1.01, scaleY: 0.99, clip })));
  expect(lines).toEqual([
    "2.834645669 0 0 2.834645669 0 0 cm",
    "1 j",
    "q",
    "1 0 0 1 3 4.5 cm",
    "Q",
    "q",
    "10 12 190 275 re W n",
    "1.01 0 0 0.99 0 0 cm",
    "Q",
    "",
  ]);
  const [first] = await content(page(), undefined, (3 * 25.4) / 72);
  expect(first).toBe("0.94488189 0 0 0.94488189 0 0 cm");
});

test("a page on black begins with a black ground over all of it, one on paper with none", async () => {
  expect((await content(page(), "#000000")).slice(2, 4)).toEqual(["0 0 0 rg", "0 0 210 297 re f"]);
  expect((await content(page(), "#ff8001"))[2]).toBe("1 0.502 0.004 rg");
  expect(await content(page())).toHaveLength(3);
});

test("lines are stroked in their role's colour, width and dashes, told once for lines alike; widths are those of the paper", async () => {
  const cut = drawLine("cut", segmentContour(0, 0, 10, 0));
  const fold = drawLine("fold", segmentContour(0, 5, 10, 5));
  const lines = await content(page(part({ items: [cut, cut, fold, cut] })));
  expect(lines.slice(4, -2)).toEqual([
    "0 0 0 RG 0.35 w [] 0 d",
    ...["0 0 m", "10 0 l", "S", "0 0 m", "10 0 l", "S"],
    "0.541 0.294 0.071 RG 0.25 w [8 2 1.5 2] 0 d",
    ...["0 5 m", "10 5 l", "S"],
    "0 0 0 RG 0.35 w [] 0 d",
    ...["0 0 m", "10 0 l", "S"],
  ]);
  // Drawn four times and nine times as large, that is six times for a line.
  const large = await content(page(part({ items: [fold], scaleX: 4, scaleY: 9 })));
  expect(large[4]).toBe("0.541 0.294 0.071 RG 0.0417 w [1.3333 0.3333 0.25 0.3333] 0 d");
});

test("areas are filled by the even-odd rule in their tone's colour", async () => {
  const area = drawArea("ink", [rectangleContour(0, 0, 9, 9), rectangleContour(3, 3, 3, 3)]);
  const lines = await content(page(part({ items: [area] })));
  expect(TONE_COLORS.ink).toBe("#1d1a16");
  expect(lines[4]).toBe("0.114 0.102 0.086 rg");
  expect(lines.filter((line) => line === "h")).toHaveLength(2);
  expect(lines.at(-3)).toBe("f*");
});

test("a text is set back from its place by all or half of its width, along its own baseline", async () => {
  const setter = await type("g8");
  const [run] = setter.runs("g8", false);
  const at = async (anchor: "start" | "middle" | "end", turnDeg = 0) => {
    const items = [drawText("g8", 50, 60, 5, { anchor, turnDeg, ...(turnDeg === 0 ? { bold: false } : {}) })];
    const lines = await content(page(part({ items })));
    expect(lines[4]).toBe("0.114 0.102 0.086 rg");
    expect(lines[6]).toBe(`/F0 5 Tf ${run!.codes} Tj`);
    const [, ...numbers] = /^BT (\S+) (\S+) (\S+) (\S+) (\S+) (\S+) Tm$/u.exec(lines[5]!)!;
    return numbers.map(Number);
  };
  const width = 5 * run!.width;
  expect(await at("start")).toEqual([1, 0, 0, 1, 50, 60]);
  expect(await at("middle")).toEqual([1, 0, 0, 1, expect.closeTo(50 - width / 2, 3), 60]);
  expect(await at("end")).toEqual([1, 0, 0, 1, expect.closeTo(50 - width, 3), 60]);
  expect(await at("end", 90)).toEqual([0, 1, -1, 0, 50, expect.closeTo(60 - width, 3)]);
  const pale = await content(page(part({ items: [drawText("g8", 0, 0, 5, { tone: "shade", bold: true })] })));
  expect(pale[4]).toBe("0.925 0.91 0.882 rg");
  expect(pale[6]).toMatch(/^\/F1 5 Tf/u);
});

test("letters set one by one are as wide as the whole text set at once; fonts are those that were used", async () => {
  const setter = await type("Shoulder strap, Ωμέγα, 👜");
  expect([...setter.used().keys()]).toEqual([]);
  const runs = setter.runs("Shoulder strap, Ωμέγα, 👜", false);
  expect(runs.map(({ font }) => font)).toEqual(["F0", "F2"]);
  expect([...setter.used().keys()]).toEqual(["F0", "F2"]);
  expect(setter.runs("Shoulder strap, Ωμέγα, 👜", false)).toBe(runs);
  expect(setter.runs("Shoulder strap, Ωμέγα, 👜", true)[0]!.font).toBe("F1");
  // Measured by fontkit as a whole.
  const font = fontkit.create(FONTS.regular);
  expect(runs[0]!.width).toBeCloseTo(font.layout("Shoulder strap, Ωμέγα, ").advanceWidth / font.unitsPerEm, 2);
});

/** A number as a decimal with at most so many places, by the language's own means. */
const plain = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? "0" : text.includes(".") ? text.replace(/\.?0+$/u, "") : text;
};

test("numbers are those the language writes, without zeros at their end", () => {
  const values = [
    0, 1, -1, 10, 100.5, -0.5, 0.05, 0.0001, 0.00004, -0.00004, 1.23456, -123.4001, 99.99996, 1e6, 14_400,
  ];
  for (const value of values)
    for (const digits of [2, 4, 6, 9]) {
      const units = value * 10 ** digits;
      // Halves are rounded up here and to the nearest double there.
      if (Math.abs((Math.abs(units) % 1) - 0.5) > 1e-6)
        expect(pdfNumber(value, digits), `${value}`).toBe(plain(value, digits));
    }
  expect(pdfNumber(2 ** 50, 4)).toBe(`${2 ** 50}.0000`);
  expect(pdfNumber(-(2 ** 50), 4)).toBe(`${-(2 ** 50)}.0000`);
  expect(pdfNumber(2 ** 53 / 1e4 - 1)).toMatch(/^900719925473\.0\d*$|^900719925473\.\d+$/u);
  expect(() => pdfNumber(Number.NaN)).toThrow(RangeError);
});

/** Points of path operators, cubic curves at a few places between their ends. */
function pointsOf(operators: string): [number, number][] {
  const points: [number, number][] = [];
  for (const line of operators.trim().split("\n")) {
    const numbers = line.split(" ").slice(0, -1).map(Number);
    if (!line.endsWith("c")) {
      if (numbers.length === 2) points.push([numbers[0]!, numbers[1]!]);
      continue;
    }
    const [x0, y0] = points.at(-1)!;
    const [x1, y1, x2, y2, x3, y3] = numbers as [number, number, number, number, number, number];
    for (const t of [0.25, 0.5, 0.75, 1]) {
      const s = 1 - t;
      const at = (a: number, b: number, c: number, d: number) =>
        s ** 3 * a + 3 * s * s * t * b + 3 * s * t * t * c + t ** 3 * d;
      points.push([at(x0, x1, x2, x3), at(y0, y1, y2, y3)]);
    }
  }
  return points;
}

// Cubics over 45° at most are within 4 millionths of the radius of their circle.
test("arcs are curves that keep to their circle, from the start to the end of each, whichever way and however far they go", () => {
  for (const bulge of [1, -1, 0.3, -0.3, 3, -3, Math.tan(Math.PI / 16)]) {
    const contour: Contour = { vertices: Float64Array.of(10, 20, bulge, 110, 60, 0), closed: false };
    const operators = pathOperators(contour);
    const points = pointsOf(operators);
    expect(points.at(-1)).toEqual([110, 60]);
    const off = (1 - bulge * bulge) / (4 * bulge);
    const [cx, cy] = [60 - off * 40, 40 + off * 100];
    const radius = Math.hypot(10 - cx, 20 - cy);
    for (const [x, y] of points)
      expect(Math.abs(Math.hypot(x - cx, y - cy) - radius)).toBeLessThan(5e-6 * radius + 2e-4);
    const parts = operators.split("\n").filter((line) => line.endsWith(" c")).length;
    expect(parts).toBe(Math.ceil((4 * Math.atan(Math.abs(bulge))) / (Math.PI / 4) - 1e-9));
  }
  expect(pathOperators({ vertices: new Float64Array(0), closed: true })).toBe("");
  expect(pathOperators(rectangleContour(0, 0, 2, 1)).split("\n")).toEqual([
    "0 0 m",
    "2 0 l",
    "2 1 l",
    "0 1 l",
    "h",
    "",
  ]);
  const kept = circleContour(0, 0, 10);
  expect(pathOperators(kept)).toBe(pathOperators(kept));
});
