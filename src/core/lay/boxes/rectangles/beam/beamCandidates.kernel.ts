import type { Candidates } from "./beamMemory.ts";

/** Fills `order` with the candidates' indices by key: three passes of an 11-bit radix sort. Stable. */
export function sortCandidates(candidates: Candidates, count: number): void {
  const { key, order, spare, counts } = candidates;
  let source = spare;
  let target = order;
  for (let i = 0; i < count; i++) source[i] = i;
  for (let shift = 0; shift < 33; shift += 11) {
    counts.fill(0);
    for (let i = 0; i < count; i++) counts[(key[i]! >>> shift) & 2047]!++;
    let sum = 0;
    for (let bucket = 0; bucket < 2048; bucket++) {
      const c = counts[bucket]!;
      counts[bucket] = sum;
      sum += c;
    }
    for (let i = 0; i < count; i++) {
      const index = source[i]!;
      target[counts[(key[index]! >>> shift) & 2047]!++] = index;
    }
    const swap = source;
    source = target;
    target = swap;
  }
  // Three passes end in `order`.
}

/** Cuts the sorted candidates down to the best `keep`; returns how many are left. */
export function keepBest(candidates: Candidates, count: number, keep: number): number {
  if (count <= keep) return count;
  const { key, parent, move, block, order, spare } = candidates;
  for (const column of [key, parent, move, block]) {
    for (let i = 0; i < keep; i++) spare[i] = column[order[i]!]!;
    for (let i = 0; i < keep; i++) column[i] = spare[i]!;
  }
  return keep;
}
