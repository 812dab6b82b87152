import fontkit from "@pdf-lib/fontkit";
import { expect, test } from "vitest";
import { FONTS } from "../../../../tests/tools/samplePlan.ts";
import { fitText, plainLine, textWidth, wrapText } from "./textWidth.ts";

const SIZE = 3;
const wide = (text: string) => textWidth(text, SIZE) + 0.01;

test("lines end between words, and no line ends inside a size", () => {
  const text = "Useful offcuts: 85 mm × 415 mm and 3 smaller.";
  expect(wrapText(text, SIZE, wide("Useful offcuts: 85 mm × 4"))).toEqual([
    "Useful offcuts:",
    "85 mm × 415 mm and 3",
    "smaller.",
  ]);
});

test("a size wider than the line breaks at its blanks, a word at any letter", () => {
  expect(wrapText("85 mm × 415 mm", SIZE, wide("85 mm ×"))).toEqual(["85 mm ×", "415 mm"]);
  expect(wrapText("waxed sailcloth", SIZE, wide("sailc"))).toEqual(["wax", "ed", "sailc", "loth"]);
});

test("blanks are single and plain", () => {
  expect(wrapText("  cut\n 30   mm ", SIZE, 1000)).toEqual(["cut 30 mm"]);
  expect(wrapText("", SIZE, 10)).toEqual([]);
});

// Widths against the font that pages embed, read by fontkit, a font library that we did not write.
const [regular, bold] = [fontkit.create(FONTS.regular), fontkit.create(FONTS.bold)];
const ASCII = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

test("every sign of ASCII is as wide as in the font, to half a thousandth of its height", () => {
  for (const sign of ASCII) {
    const { advanceWidth } = regular.glyphForCodePoint(sign.codePointAt(0)!);
    expect(Math.abs(textWidth(sign, 1) - advanceWidth / regular.unitsPerEm), sign).toBeLessThanOrEqual(0.0005001);
  }
});

test("widths add up, grow with the height, and bold words are about as wide as in the bold font", () => {
  const words = "Shoulder strap 2 of 4";
  const each = [...words].reduce((sum, sign) => sum + textWidth(sign, 3), 0);
  expect(textWidth(words, 3)).toBeCloseTo(each, 9);
  expect(textWidth(words, 6)).toBeCloseTo(2 * each, 9);
  const inBold = (6 * bold.layout(words).advanceWidth) / bold.unitsPerEm;
  expect(Math.abs(textWidth(words, 6, true) / inBold - 1)).toBeLessThan(0.03);
});

// Unicode Annex 11, in outline: wide and full-width characters fill the em, letters of alphabets do not.
test("ideographs, kana, Hangul, full-width signs and pictures fill the em; letters of alphabets do not", () => {
  for (const sign of "帆あハ한ｗ、👜") expect(textWidth(sign, 1), sign).toBe(1);
  for (const sign of "äßΩж×≈") {
    expect(textWidth(sign, 1), sign).toBeGreaterThan(0.4);
    expect(textWidth(sign, 1), sign).toBeLessThan(0.9);
  }
});

test("a text that fits is left alone, one that does not keeps as many letters as go in before its ellipsis", () => {
  const text = "Shoulder strap, mirrored";
  expect(fitText(text, 4, textWidth(text, 4))).toBe(text);
  for (const isBold of [false, true]) {
    const width = textWidth("Shoulder s", 4, isBold);
    const cut = fitText(text, 4, width, isBold);
    // The longest that fits, by trying all.
    const all = [...text].map((_, i) => `${text.slice(0, i).trimEnd()}…`);
    expect(cut).toBe(all.filter((one) => textWidth(one, 4, isBold) <= width).at(-1));
  }
  expect(fitText("Shoulder strap", 4, textWidth("Should…", 4))).toBe("Should…");
  expect(fitText("W", 4, 0.1)).toBe("");
});

test("of a single letter that is too wide the ellipsis alone is left", () => {
  // A W is 0.89 of the height wide.
  expect([fitText("W", 10, 8.9), fitText("W", 10, 8.8), fitText("W", 10, 1)]).toEqual(["W", "…", ""]);
});

test("no line of wrapped words is wider than asked, and none would take the next word", () => {
  const text = "Turn both long edges in to the middle, press, fold in half and topstitch all four layers.";
  for (const isBold of [false, true])
    for (const width of [14, 20, 33.3, 60]) {
      const lines = wrapText(text, 3, width, isBold);
      expect(lines.join(" ")).toBe(text);
      for (const [i, line] of lines.entries()) {
        expect(textWidth(line, 3, isBold)).toBeLessThanOrEqual(width);
        const next = lines[i + 1]?.split(" ")[0];
        if (next !== undefined) expect(textWidth(`${line} ${next}`, 3, isBold)).toBeGreaterThan(width);
      }
    }
  // A line as wide as the room is not broken.
  expect(wrapText("cut on grain", 3, textWidth("cut on grain", 3))).toEqual(["cut on grain"]);
  expect(wrapText("grain", 3, textWidth("grai", 3))).toEqual(["grai", "n"]);
});

test("a line holds no control characters, line ends or marks that turn the way of reading", () => {
  expect(plainLine(" two\r\n\u2028lines\u0007 \u202eand\u2066 a\ufeff bag ")).toBe("two lines and a bag");
});
