import { expect, test } from "vitest";
import { seededRng } from "../../search/rng.ts";
import { PairTable } from "./pairTable.ts";

/** The same by full matrices. */
function denseTable(items: number, columns: number) {
  const overlap = new Float32Array(items * columns);
  const weight = new Float32Array(items * columns).fill(1);
  const both = (i: number, j: number): number[] =>
    j < items ? [i * columns + j, j * columns + i] : [i * columns + j];
  return {
    overlap,
    weight,
    set: (i: number, j: number, value: number) => {
      for (const p of both(i, j)) overlap[p] = value;
    },
    clear: (i: number) => {
      for (let j = 0; j < columns; j++) for (const p of both(i, j)) overlap[p] = 0;
    },
    grow: (least: number, most: number, decay: number) => {
      const deepest = Math.max(...overlap);
      if (deepest === 0) return;
      weight.forEach((before, p) => {
        const depth = overlap[p]!;
        weight[p] = depth > 0 ? before * (least + ((most - least) * depth) / deepest) : Math.max(1, before * decay);
      });
    },
  };
}

test("the sparse table keeps what full matrices keep", () => {
  const items = 23;
  const columns = 26;
  const rng = seededRng(5);
  const table = new PairTable(items, columns);
  const dense = denseTable(items, columns);
  let compared = 0;
  for (let step = 0; step < 3000; step++) {
    const i = rng.below(items);
    const j = rng.below(columns);
    const kind = rng.below(20);
    if (kind < 14 && i !== j) {
      const depth = rng.unit() < 0.3 ? 0 : Math.fround(rng.unit());
      table.setOverlap(i, j, depth);
      dense.set(i, j, depth);
    } else if (kind < 17) {
      table.clearOverlaps(i);
      dense.clear(i);
    } else if (kind < 19) {
      table.growWeights(1.2, 2, 0.8);
      dense.grow(1.2, 2, 0.8);
    } else if (step % 7 === 0) {
      table.resetWeights();
      dense.weight.fill(1);
    }
    const row = dense.overlap.subarray(i * columns, (i + 1) * columns);
    const weights = dense.weight.subarray(i * columns, (i + 1) * columns);
    expect(table.overlapsAny(i)).toBe(row.some((depth) => depth > 0));
    expect(table.weightedSum(i)).toBe(row.reduce((sum, depth, p) => sum + depth * weights[p]!, 0));
    expect(table.openWeights(i)).toEqual(weights);
    table.closeWeights(i);
    let total = 0;
    for (let a = 0; a < items; a++)
      for (let b = 0; b < columns; b++) if (b < a || b >= items) total += dense.overlap[a * columns + b]!;
    expect(table.total()).toBe(total);
    if (total > 0) compared++;
  }
  expect(compared).toBeGreaterThan(1000);
});
