import { plainLine } from "../../core/drawing/textWidth.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Amount, CutRow, CutSheet } from "./cutSheet.ts";

/** The cut sheet as plain text for a terminal or a printer that knows letters only. */
export function cutSheetText(sheet: CutSheet): string {
  const out: string[] = [`${plainLine(sheet.project)}: cut sheet`, bagWords(sheet.bags), ""];
  for (const group of sheet.groups) {
    out.push(plainLine(group.material), underline(plainLine(group.material)), ...table(group.rows));
    for (const line of group.lay) out.push(`  ${plainLine(line)}`);
    out.push("");
  }
  out.push(...amounts("To buy", sheet.purchase), ...amounts("Also needed", sheet.consumables));
  for (const { title, steps } of sheet.work) {
    out.push(plainLine(title), underline(plainLine(title)));
    steps.forEach((step, i) => {
      out.push(`  ${i + 1}. ${plainLine(step)}`);
    });
    out.push("");
  }
  if (sheet.cautions.length > 0) {
    out.push("Take care", underline("Take care"), ...sheet.cautions.map((line) => `  ! ${plainLine(line)}`), "");
  }
  return out.join("\n");
}

/** How many bags the counts are for. */
export function bagWords(bags: number): string {
  return bags === 1 ? "For 1 bag." : `For ${bags} bags; counts are for all of them.`;
}

/** How many of a row, as `2` or `1 + 1 mirrored`. */
function countWords(row: CutRow): string {
  return row.mirroredCount > 0 ? `${row.count} + ${row.mirroredCount} mirrored` : String(row.count);
}

/** The grain of a row in words. */
export function grainWords(row: CutRow): string {
  return row.grain === "free" ? "any direction" : row.grain === "either" ? "either grain" : row.grain;
}

function table(rows: readonly CutRow[]): string[] {
  const cells = rows.map((row) => [
    String(row.number),
    countWords(row),
    plainLine(row.name),
    `${formatLength(row.along, "mm")} × ${formatLength(row.across, "mm")}`,
    `${formatLength(row.along, "in/16")} × ${formatLength(row.across, "in/16")}`,
    grainWords(row),
  ]);
  const all = [["no.", "cut", "piece", "along × across", "in inches", "grain"], ...cells];
  const widths = all[0]!.map((_, column) => Math.max(...all.map((row) => cellWidth(row[column]!))));
  const lines = all.map((row) =>
    `  ${row.map((cell, column) => cell + " ".repeat(widths[column]! - cellWidth(cell))).join("  ")}`.trimEnd(),
  );
  return lines.flatMap((line, i) =>
    i === 0 ? [line] : [line, ...rows[i - 1]!.notes.map((note) => `       ${note}`)],
  );
}

function amounts(title: string, list: readonly Amount[]): string[] {
  if (list.length === 0) return [];
  return [
    title,
    underline(title),
    ...list.map(({ what, amount }) => `  ${plainLine(what)}: ${plainLine(amount)}`),
    "",
  ];
}

const underline = (text: string): string => "-".repeat(cellWidth(text));

/** Columns a text takes in a terminal: ideographs and kana take two. Source: Unicode Annex 11, in outline. */
function cellWidth(text: string): number {
  let width = 0;
  for (const char of text)
    width += /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60]/u.test(char) ? 2 : 1;
  return width;
}
