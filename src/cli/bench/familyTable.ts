import type { BenchLine } from "./benchLine.ts";
import { alignedRows } from "./benchTable.ts";
import { PUBLISHED, type Published } from "./published.ts";

const SAME = 1e-9;

/** Families that an instance belongs to, by its name: all of `C1-P1`, `C1-P2` … are `C`. */
export function familiesOf(name: string): readonly string[] {
  const [, group] = /^BWMV(\d+)_/.exec(name) ?? [];
  return group === undefined ? [name.replace(/[-_]?P?\d+/g, "")] : [`BWMV class ${Number(group)}`, "BWMV"];
}

/**
 * Mean gaps of the families with the published ones beside them; empty when no family has two instances.
 * `comparable`: fixed grain and any cuts, as published.
 */
export function familyTable(lines: readonly BenchLine[], comparable: boolean): string {
  const members = new Map<string, BenchLine[]>();
  for (const line of lines) {
    for (const family of familiesOf(line.name)) members.set(family, [...(members.get(family) ?? []), line]);
  }
  if ([...members.values()].every((list) => list.length < 2)) return "";
  const cells = [...members].map(([family, list]) => {
    const published = comparable ? PUBLISHED[family] : undefined;
    const theirs = published && publishedGap(published, list);
    return [
      family,
      `${list.length}`,
      (100 * mean(list.map((line) => line.gap))).toFixed(3),
      `${list.filter((line) => line.gap < SAME).length}`,
      theirs === undefined ? "" : theirs.toFixed(3),
      theirs === undefined ? "" : ` ${published!.source}`,
    ];
  });
  return `${alignedRows([["family", "runs", "mean gap %", "at the bound", "published", ""], ...cells])}\n`;
}

/** In per cent, over our bounds when heights are known; undefined when some are not. */
function publishedGap({ gap, heights }: Published, list: readonly BenchLine[]): number | undefined {
  if (heights === undefined) return gap;
  if (list.some(({ name }) => heights[name] === undefined)) return undefined;
  return 100 * mean(list.map(({ name, bound }) => (heights[name]! - bound) / bound));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
