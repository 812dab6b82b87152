import { unbroken } from "../../units/numberWords.ts";

/**
 * Advance widths of the printable ASCII characters in thousandths of the em, of the condensed sans that our
 * pages embed (DejaVu Sans Condensed 2.37, `hmtx` table).
 */
const ADVANCES = [
  286, 360, 414, 754, 572, 855, 702, 247, 351, 351, 450, 754, 286, 325, 286, 303, 572, 572, 572, 572, 572, 572, 572,
  572, 572, 572, 303, 303, 754, 754, 754, 478, 900, 615, 617, 628, 693, 568, 518, 697, 677, 265, 265, 590, 501, 776,
  673, 708, 542, 708, 625, 571, 549, 659, 615, 890, 616, 549, 616, 351, 303, 351, 754, 450, 450, 551, 571, 495, 571,
  554, 316, 571, 570, 250, 250, 521, 250, 876, 570, 550, 571, 571, 370, 469, 353, 570, 532, 736, 532, 532, 472, 572,
  303, 572, 754,
];
const OTHER = 650;
/** Ideographs, kana, Hangul and full-width forms fill the em. */
const FULL_EM =
  /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60]|[\u{10000}-\u{10ffff}]/u;
const BOLD = 1.12;

/**
 * Width of a text in mm at em height `size`: close enough to lay out labels without a font at hand. Exact for
 * ASCII in the font our pages embed; an estimate for other writing and other fonts.
 */
export function textWidth(text: string, size: number, bold = false): number {
  let sum = 0;
  for (const char of text) {
    const code = char.codePointAt(0)!;
    sum += ADVANCES[code - 32] ?? (FULL_EM.test(char) ? 1000 : OTHER);
  }
  return (sum / 1000) * size * (bold ? BOLD : 1);
}

/** The text cut with an ellipsis so that it is at most `width` mm wide; empty when not even that fits. */
export function fitText(text: string, size: number, width: number, bold = false): string {
  if (textWidth(text, size, bold) <= width) return text;
  const chars = [...text];
  while (chars.length > 0) {
    chars.pop();
    const shorter = `${chars.join("").trimEnd()}…`;
    if (textWidth(shorter, size, bold) <= width) return shorter;
  }
  return "";
}

/** The text broken into lines at most `width` mm wide: between words and whole sizes, else at blanks, else anywhere. */
export function wrapText(text: string, size: number, width: number, bold = false): string[] {
  const lines: string[] = [];
  let line = "";
  const blanks = (part: string): string => part.replaceAll("\u00a0", " ");
  const wholes = unbroken(text.replace(/\s+/gu, " ")).split(" ").map(blanks);
  const words = wholes.flatMap((part) => (textWidth(part, size, bold) <= width ? [part] : part.split(" ")));
  for (const word of words.filter((part) => part !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, size, bold) <= width) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const char of word) {
      if (line !== "" && textWidth(line + char, size, bold) > width) {
        lines.push(line);
        line = "";
      }
      line += char;
    }
  }
  if (line !== "") lines.push(line);
  return lines;
}

/**
 * One line out of any text: control characters, line ends and marks that turn the reading direction become
 * blanks, so that nothing breaks a label or reads as something else.
 */
export function plainLine(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\u202a-\u202e\u2066-\u2069\ufeff]+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim();
}
