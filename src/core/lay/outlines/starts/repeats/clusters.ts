import type { Box } from "../../../../geometry/box.ts";
import type { Ring } from "../../../../geometry/ring.ts";
import { isForbidden, merged, slice } from "./slices.ts";

/** A variant of a shape as this search needs it: its box about its own origin, its area, its half turn. */
export interface RepeatVariant extends Box {
  readonly shape: number;
  readonly area: number;
  /** The variant that is this one turned by 180°, or −1 when that is not allowed. */
  readonly halfTurn: number;
}

/** Shifts of variant b at which it overlaps variant a at rest, as rings on the grid. */
export type NoFit = (a: number, b: number) => readonly Ring[];

/** One piece of a cluster. */
export interface Member {
  readonly variant: number;
  readonly x: number;
  readonly y: number;
}

/** Pieces that keep their places to each other. */
export interface Cluster extends Box {
  readonly members: readonly Member[];
  readonly area: number;
}

/** The cluster of these members, with its box and area. */
export function clusterOf(members: readonly Member[], variants: readonly RepeatVariant[]): Cluster {
  let area = 0;
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { variant, x, y } of members) {
    const v = variants[variant]!;
    area += v.area;
    minX = Math.min(minX, x + v.minX);
    minY = Math.min(minY, y + v.minY);
    maxX = Math.max(maxX, x + v.maxX);
    maxY = Math.max(maxY, y + v.maxY);
  }
  return { members, area, minX, minY, maxX, maxY };
}

/** The cluster turned by 180°, or null when one of its pieces may not be. */
export function halfTurned(cluster: Cluster, variants: readonly RepeatVariant[]): Cluster | null {
  const members: Member[] = [];
  for (const { variant, x, y } of cluster.members) {
    const turned = variants[variant]!.halfTurn;
    if (turned < 0) return null;
    members.push({ variant: turned, x: -x, y: -y });
  }
  return clusterOf(members, variants);
}

/**
 * Forbidden x shifts of cluster b against cluster a when b is moved up by `dy`.
 * Cost: one slice per pair of members.
 */
export function forbiddenShifts(a: Cluster, b: Cluster, dy: number, noFit: NoFit): number[] {
  const all: number[] = [];
  for (const p of a.members)
    for (const q of b.members) {
      const own = slice(noFit(p.variant, q.variant), dy + q.y - p.y, p.x - q.x);
      for (const value of own) all.push(value);
    }
  return merged(all);
}

/** Heights worth trying when b meets a: where a corner of one comes level with a corner of the other. */
export function levelHeights(a: Cluster, b: Cluster, noFit: NoFit): number[] {
  const heights = new Set<number>();
  for (const p of a.members)
    for (const q of b.members)
      for (const ring of noFit(p.variant, q.variant))
        for (let i = 1; i < ring.length; i += 2) heights.add(ring[i]! + p.y - q.y);
  return [...heights].sort((m, n) => m - n);
}

/**
 * Dense pairs of two variants, densest box first: the second touches the first at a corner-level height, to
 * the right or to the left. Boxes of equal size and make-up are kept once.
 */
export function densePairs(
  a: number,
  b: number,
  variants: readonly RepeatVariant[],
  noFit: NoFit,
  most: number,
): Cluster[] {
  const first = clusterOf([{ variant: a, x: 0, y: 0 }], variants);
  const second = clusterOf([{ variant: b, x: 0, y: 0 }], variants);
  const found = new Map<string, Cluster>();
  for (const y of levelHeights(first, second, noFit)) {
    const forbidden = forbiddenShifts(first, second, y, noFit);
    const ends = forbidden.map((x, i) => (i % 2 === 0 ? Math.floor(x) : Math.ceil(x)));
    for (const x of ends) {
      if (isForbidden(forbidden, x)) continue;
      const members = [
        { variant: a, x: 0, y: 0 },
        { variant: b, x, y },
      ];
      const cluster = clusterOf(members, variants);
      const key = `${cluster.maxX - cluster.minX} ${cluster.maxY - cluster.minY}`;
      if (!found.has(key)) found.set(key, cluster);
    }
  }
  const boxArea = (c: Cluster): number => (c.maxX - c.minX) * (c.maxY - c.minY);
  return [...found.values()].sort((p, q) => boxArea(p) - boxArea(q)).slice(0, most);
}
