import { plainLine } from "../../core/drawing/list/textWidth.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import { type Amount, type CutRow, type CutSheet, sheetInches } from "./cutSheet.ts";

/** The cut sheet as plain text for a terminal or a printer that knows letters only. */
export function cutSheetText(sheet: CutSheet): string {
  const texts = SHEET_TEXTS[sheet.language];
  const out: string[] = [`${plainLine(sheet.project)}: ${texts.title}`, texts.forBags(sheet.bags), ""];
  for (const group of sheet.groups) {
    out.push(plainLine(group.material), underline(plainLine(group.material)), ...table(group.rows, sheet));
    for (const line of group.lay) out.push(`  ${plainLine(line)}`);
    out.push("");
  }
  out.push(...amounts(texts.toBuy, sheet.purchase), ...amounts(texts.alsoNeeded, sheet.consumables));
  for (const { title, lead, steps } of sheet.work) {
    out.push(plainLine(title), underline(plainLine(title)), ...lead.map((line) => `  ${plainLine(line)}`));
    steps.forEach((step, i) => {
      out.push(`  ${i + 1}. ${plainLine(step)}`);
    });
    out.push("");
  }
  if (sheet.cautions.length > 0) {
    out.push(
      texts.takeCare,
      underline(texts.takeCare),
      ...sheet.cautions.map((line) => `  ! ${plainLine(line)}`),
      "",
    );
  }
  return out.join("\n");
}

function table(rows: readonly CutRow[], { language, inInches }: CutSheet): string[] {
  const texts = SHEET_TEXTS[language];
  const { columns } = texts;
  const cells = rows.map((row) => [
    String(row.number),
    texts.counted(row.count, row.mirroredCount),
    plainLine(row.name),
    `${formatLength(row.along, "mm", language)} × ${formatLength(row.across, "mm", language)}`,
    ...(inInches ? [`${sheetInches(row.along)} × ${sheetInches(row.across)}`] : []),
    texts.grains[row.grain],
  ]);
  const inches = inInches ? [columns.inches] : [];
  const all = [[columns.number, columns.cut, columns.piece, columns.size, ...inches, columns.grain], ...cells];
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
