import type { PatternOutline, UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { PANEL_WORDS } from "../../core/words/words.ts";
import { PATTERN_TEXTS, type PatternTexts } from "../words/patternTexts.ts";

const MOST_ROWS = 60;

/** What came in, one line an outline, for a person; sizes written as `lengths` says. */
export function patternText(
  pattern: UnderstoodPattern,
  path: string,
  language: Language,
  lengths: LengthStyle,
): string {
  const texts = PATTERN_TEXTS[language];
  const { outlines, marks } = pattern;
  const rows = outlines
    .slice(0, MOST_ROWS)
    .map((outline) => rowOf(outline, texts, (mm) => formatLength(mm, lengths, language), language));
  const widths = [0, 1, 2].map((column) => Math.max(...rows.map((row) => row[column]!.length)));
  const lines = rows.map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join("  ")}`.trimEnd());
  if (outlines.length > MOST_ROWS) lines.push(`  ${texts.more(outlines.length - MOST_ROWS)}`);
  const texted = marks.filter(({ kind }) => kind === "text").length;
  if (texted > 0) lines.push(`  ${texts.texts(texted)}`);
  return `${texts.title(path, pattern.kind, outlines.length)}\n${lines.join("\n")}\n`;
}

function rowOf(
  outline: PatternOutline,
  texts: PatternTexts,
  show: (mm: number) => string,
  language: Language,
): readonly string[] {
  const { box } = outline;
  const arcs = outline.contour.vertices.filter((_, i) => i % 3 === 2).filter((bulge) => bulge !== 0).length;
  const edges = outline.contour.vertices.length / 3;
  return [
    outline.name,
    PANEL_WORDS[language].lines[outline.role],
    `${show(box.maxX - box.minX)} × ${show(box.maxY - box.minY)}`,
    `${outline.closed ? texts.closed : texts.open}, ${texts.edges(edges - (outline.closed ? 0 : 1) - arcs, arcs)}`,
  ];
}
