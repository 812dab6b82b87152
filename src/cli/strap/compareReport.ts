import type { BesideOthers } from "../../core/straps/build/sideBySide.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** Constructions side by side as a table for people, one line each. */
export function compareText(rows: readonly BesideOthers[], language: Language): string {
  const texts = CLI_TEXTS[language].compare;
  const { constructions } = STRAP_WORDS[language];
  const size = (mm: number | null): string =>
    mm === null ? "–" : formatLength(mm, mm >= 1000 ? "m" : "mm", language);
  const cells = rows.map((row) => [
    constructions[row.construction].name,
    size(row.cutWidth),
    String(row.layers),
    formatLength(row.thickness, "mm", language),
    size(row.lengthwise),
    size(row.crosswise),
    row.cost === null ? "–" : withDecimalSign(row.cost.toFixed(2), language),
    row.machine ? texts.fits : texts.tooThick,
    row.slider ? texts.fits : texts.tooThick,
    String(row.rawEdges),
  ]);
  const all = [texts.columns, ...cells];
  const widths = texts.columns.map((_, i) => Math.max(...all.map((line) => line[i]!.length)));
  return `${all
    .map((line) =>
      line
        .map((cell, i) => cell.padEnd(widths[i]!))
        .join("  ")
        .trimEnd(),
    )
    .join("\n")}\n`;
}

/** The same as CSV (RFC 4180): lengths in mm, unknown ones empty. */
export function compareCsv(rows: readonly BesideOthers[]): string {
  const head =
    "construction,cut_width_mm,layers,thickness_mm,lengthwise_mm,crosswise_mm,cloth_mm2,cost,machine,slider,raw_edges";
  const number = (value: number | null): string => (value === null ? "" : String(Math.round(value * 1000) / 1000));
  const lines = rows.map((row) =>
    [
      row.construction,
      number(row.cutWidth),
      row.layers,
      number(row.thickness),
      number(row.lengthwise),
      number(row.crosswise),
      number(row.cloth),
      number(row.cost),
      row.machine,
      row.slider,
      row.rawEdges,
    ].join(","),
  );
  return `${[head, ...lines].join("\r\n")}\r\n`;
}
