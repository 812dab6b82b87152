import type { BenchLine } from "./benchLine.ts";

/** The summary for people: one row an instance and the means of each kind. */
export function benchTable(lines: readonly BenchLine[]): string {
  const header = ["instance", "length", "bound", "gap %", "density %", "seconds"];
  const rows = lines.map((line) => [
    line.name,
    shortNumber(line.length),
    shortNumber(line.bound),
    percent(line.gap),
    percent(line.density),
    line.seconds.toFixed(2),
  ]);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const means = [
    `mean of ${lines.length}`,
    "",
    "",
    percent(mean(lines.map((line) => line.gap))),
    percent(mean(lines.map((line) => line.density))),
    mean(lines.map((line) => line.seconds)).toFixed(2),
  ];
  return `${alignedRows(lines.length > 1 ? [header, ...rows, means] : [header, ...rows])}\n`;
}

/** Rows in columns: the first to the left, numbers to the right. */
export function alignedRows(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows
    .map((row) => row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join("  "))
    .join("\n");
}

function percent(share: number): string {
  return (share * 100).toFixed(3);
}

function shortNumber(value: number): string {
  return `${Number(value.toPrecision(7))}`;
}
