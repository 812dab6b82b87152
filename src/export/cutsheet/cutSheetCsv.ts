import { plainLine } from "../../core/drawing/list/textWidth.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import type { CutSheet } from "./cutSheet.ts";

/**
 * The pieces as comma-separated values, one row a piece, CRLF after every record, UTF-8, decimals with a point.
 * Source: RFC 4180. A cell that a spreadsheet would take for a formula gets an apostrophe in front.
 */
export function cutSheetCsv(sheet: CutSheet): string {
  const { table, grains } = SHEET_TEXTS[sheet.language];
  const rows = sheet.groups.flatMap((group) =>
    group.rows.map((row) => [
      String(row.number),
      text(row.name),
      text(group.material),
      table.kinds[row.kind],
      String(row.count),
      String(row.mirroredCount),
      decimal(row.along, 3),
      decimal(row.across, 3),
      decimal(row.along / 25.4, 4),
      decimal(row.across / 25.4, 4),
      grains[row.grain],
      text(row.notes.join("; ")),
    ]),
  );
  return records([table.heads, ...rows]);
}

/** Rows of words as comma-separated values, written as harmlessly as the pieces are. */
export function csvText(rows: readonly (readonly string[])[]): string {
  return records(rows.map((row) => row.map(text)));
}

function records(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

/** A person's words as one harmless line. */
function text(value: string): string {
  const line = plainLine(value);
  return /^[=+\-@|%]/u.test(line) ? `'${line}` : line;
}

function decimal(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

function quoted(cell: string): string {
  return /[",\r\n]/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
