import type { AgainstLine } from "./against.ts";
import type { BenchLine } from "./benchLine.ts";

/** One instance's results for the tables. */
export interface BenchRow {
  readonly line: BenchLine;
  readonly against: readonly AgainstLine[];
  /** Memory of the whole process when it was done. */
  readonly memoryMb: number;
  /** Evaluations a second of processor time of the outline engine alone; absent where it was not asked. */
  readonly outlineRate?: number;
}

/** The summary for people: one row an instance, and the means. */
export function benchTable(rows: readonly BenchRow[]): string {
  const packers = rows[0]?.against.map(({ packer }) => packer) ?? [];
  const header = [
    "instance",
    rows.some(({ line }) => line.area !== undefined) ? "area" : "length",
    "bound",
    "gap %",
    "density %",
    "first s",
    "seconds",
  ];
  const others = packers.flatMap((packer) => [`${packer} gap %`, "density %"]);
  const cells = rows.map(({ line, against }) => [
    line.name,
    shortNumber(line.area ?? line.length),
    shortNumber(line.bound),
    percent(line.gap),
    percent(line.density),
    line.firstSeconds.toFixed(3),
    line.seconds.toFixed(2),
    ...against.flatMap(({ gap, density }) => [gap === undefined ? "" : percent(gap), percent(density)]),
  ]);
  const lines = rows.map((row) => row.line);
  const means = [
    `mean of ${rows.length}`,
    "",
    "",
    percent(mean(lines.map((line) => line.gap))),
    percent(mean(lines.map((line) => line.density))),
    mean(lines.map((line) => line.firstSeconds)).toFixed(3),
    mean(lines.map((line) => line.seconds)).toFixed(2),
    ...packers.flatMap((_, i) => {
      const gaps = rows.map((row) => row.against[i]!.gap);
      const known = gaps.every((gap) => gap !== undefined);
      return [known ? percent(mean(gaps)) : "", percent(mean(rows.map((row) => row.against[i]!.density)))];
    }),
  ];
  return `${alignedRows([[...header, ...others], ...cells, ...(rows.length > 1 ? [means] : [])])}\n`;
}

/** How the work grows with the job: first plan, evaluations of the outline engine alone, memory. */
export function scaleTable(rows: readonly BenchRow[]): string {
  const header = ["job", "pieces", "first s", "first %", "density %", "outline evaluations/s", "memory MB"];
  const cells = rows.map(({ line, memoryMb, outlineRate }) => [
    line.name,
    `${line.placements.length}`,
    line.firstSeconds.toFixed(3),
    percent(line.firstDensity),
    percent(line.density),
    outlineRate === undefined ? "" : outlineRate.toFixed(0),
    memoryMb.toFixed(0),
  ]);
  return `${alignedRows([header, ...cells])}\n`;
}

/**
 * Densities by instance and seed, with their means; the longest wait for a first plan. Rows come instance by instance,
 * with the seeds in their order.
 */
export function seedTable(rows: readonly BenchRow[], seeds: readonly number[]): string {
  const lines = rows.map(({ line }) => line);
  const instances = Array.from({ length: lines.length / seeds.length }, (_, i) =>
    lines.slice(i * seeds.length, (i + 1) * seeds.length),
  );
  const header = ["density %", ...seeds.map((seed) => `seed ${seed}`), "mean", "first s"];
  const cells = instances.map((runs) => [
    runs[0]!.name,
    ...runs.map((run) => percent(run.density)),
    percent(mean(runs.map((run) => run.density))),
    Math.max(...runs.map((run) => run.firstSeconds)).toFixed(3),
  ]);
  const means = [
    `mean of ${instances.length}`,
    ...seeds.map((_, i) => percent(mean(instances.map((runs) => runs[i]!.density)))),
    percent(mean(lines.map((line) => line.density))),
    "",
  ];
  return `${alignedRows([header, ...cells, ...(instances.length > 1 ? [means] : [])])}\n`;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function percent(share: number): string {
  return (share * 100).toFixed(3);
}

function shortNumber(value: number): string {
  return `${Number(value.toPrecision(7))}`;
}

/** Rows in columns: the first to the left, numbers to the right. */
export function alignedRows(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i === 0 || cell.startsWith(" ") ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
