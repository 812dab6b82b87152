import { poseRing } from "../../../geometry/pose.ts";
import type { Ring } from "../../../geometry/ring.ts";
import { quickBoundSteps } from "../../bounds/quickBound.ts";
import { isLoose, type LayPiece } from "../../problem/layProblem.ts";
import { searchTables, type TableSize } from "../../problem/rectangles/searchTables.ts";
import type { RegionJob } from "../../problem/region.ts";
import { BREATH, type Breath } from "../../search/breath.ts";

/** mm; sizes of slabs are rounded down to it, the roll's up. */
const UNIT = 0.05;
/** Slabs that a piece is cut into at most, and all pieces together: the bound takes work for each size. */
const MOST_SLABS = 16;
const MOST_SIZES = 400;
/** Columns between corners looked at; more are joined to their neighbours first. */
const MOST_COLUMNS = 120;

/** A rectangle inside a piece, mm. */
interface Slab {
  readonly along: number;
  readonly across: number;
}

/** Part of a piece between two lines across the roll: the stretch that lies in it all the way, mm. */
interface Column {
  readonly from: number;
  readonly to: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Proven least lengths of an open roll, mm, from rectangles cut out of the pieces: what does not fit as slabs, each free
 * to lie by itself, does not fit as whole pieces, interlocked or not. One after the other, from the one largest slab of
 * each piece, slabs across the roll and slabs along it, each by `quickBound`; breaths in between; none when a piece may lie aslant
 * or the region is no open roll.
 * Cost O(corners² · slabs) for each piece, then that of `quickBound`: some tens of milliseconds each.
 */
export function* slabBounds(job: RegionJob): Generator<number | Breath, void> {
  const pieces = job.pieces.filter(({ count }) => count > 0);
  const square = pieces.every((p) => !isLoose(p) && p.orientations.every(({ turnDeg }) => turnDeg % 90 === 0));
  const room = job.region.width - 2 * job.margin;
  const { gap, region } = job;
  if (!square || !(room > 0) || region.length !== null || region.outline !== null) return;
  if (pieces.length > MOST_SIZES) return;
  const most = Math.min(MOST_SLABS, Math.floor(MOST_SIZES / Math.max(1, pieces.length)));
  const ends = 2 * job.margin;
  // Half the gap all round a piece makes its slabs longer by the gap, not thicker: they lie side by side.
  const longer = { along: 0, across: gap };
  yield ends + (yield* leastLength(pieces, room + gap, (piece) => slabsOf(piece, false, 1), longer));
  yield ends + (yield* leastLength(pieces, room + gap, (piece) => slabsOf(piece, false, most), longer));
  const lengthwise = yield* leastLength(pieces, room, (piece) => slabsOf(piece, true, most), {
    along: gap,
    across: 0,
  });
  yield ends + lengthwise - gap;
}

function* leastLength(
  pieces: readonly LayPiece[],
  width: number,
  cut: (piece: LayPiece) => readonly Slab[],
  more: Slab,
): Generator<Breath, number> {
  const units = (mm: number): number => Math.floor(mm / UNIT + 1e-9);
  const wide = Math.ceil(width / UNIT - 1e-9);
  const sizes = new Map<string, { count: number; ways: [number, number][] }>();
  for (const piece of pieces) {
    const both = new Set(piece.orientations.map(({ turnDeg }) => Math.abs(turnDeg) % 180)).size > 1;
    for (const slab of cut(piece)) {
      const ways: [number, number][] = [[units(slab.across + more.across), units(slab.along + more.along)]];
      // Turned, the slabs lie one behind the other where the gap would widen them.
      if (both) ways.push([units(slab.along), units(slab.across)]);
      const fitting = ways.filter(([a, b]) => a > 0 && b > 0 && a <= wide);
      if (fitting.length === 0) continue;
      const key = fitting.join();
      const size = sizes.get(key) ?? { count: 0, ways: fitting };
      size.count += piece.count;
      sizes.set(key, size);
    }
    yield BREATH;
  }
  if (sizes.size === 0) return 0;
  const list: TableSize[] = [...sizes.values()];
  return (yield* quickBoundSteps(searchTables(wide, list, []))) * UNIT;
}

/** Slabs of a piece as it first may lie; cut lengthwise on demand. */
function slabsOf(piece: LayPiece, lengthwise: boolean, most: number): Slab[] {
  const turn = piece.orientations[0]!;
  const posed = { ...turn, turnDeg: turn.turnDeg + (lengthwise ? 90 : 0), x: 0, y: 0 };
  const rings = [piece.outline.outer, ...piece.outline.holes].map((ring) => poseRing(ring, posed));
  const slabs = bestSlabs(columnsOf(rings), most);
  return lengthwise ? slabs.map(({ along, across }) => ({ along: across, across: along })) : slabs;
}

function columnsOf(rings: readonly Ring[]): Column[] {
  const xs = [...new Set(rings.flatMap((ring) => [...ring].filter((_, i) => i % 2 === 0)))].sort((a, b) => a - b);
  const columns: Column[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const [from, to] = [xs[i]!, xs[i + 1]!];
    if (to - from < 1e-9) continue;
    columns.push(columnBetween(rings, from, to));
  }
  while (columns.length > MOST_COLUMNS) {
    for (let i = 0; i + 1 < columns.length && columns.length > MOST_COLUMNS; i++)
      columns.splice(i, 2, joined(columns[i]!, columns[i + 1]!));
  }
  return columns;
}

/** The longest stretch across that lies inside all the way between two neighbouring corners. */
function columnBetween(rings: readonly Ring[], from: number, to: number): Column {
  const middle = (from + to) / 2;
  const edges: { y: number; low: number; high: number }[] = [];
  for (const ring of rings)
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ax, ay, bx, by] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
      if (ax > middle === bx > middle) continue;
      const at = (x: number): number => ay + ((x - ax) / (bx - ax)) * (by - ay);
      edges.push({ y: at(middle), low: Math.min(at(from), at(to)), high: Math.max(at(from), at(to)) });
    }
  edges.sort((a, b) => a.y - b.y);
  let best: Column = { from, to, low: 0, high: 0 };
  for (let i = 0; i + 1 < edges.length; i += 2) {
    const [low, high] = [edges[i]!.high, edges[i + 1]!.low];
    if (high - low > best.high - best.low) best = { from, to, low, high };
  }
  return best;
}

function joined(a: Column, b: Column): Column {
  const low = Math.max(a.low, b.low);
  return { from: a.from, to: b.to, low, high: Math.max(low, Math.min(a.high, b.high)) };
}

/** At most `most` slabs of joined columns with the largest area, some columns left out where that is better. */
function bestSlabs(columns: readonly Column[], most: number): Slab[] {
  const n = columns.length;
  // area[k][i]: largest area of k slabs among the first i columns; from[k][i]: first column of the last of them.
  const area = Array.from({ length: most + 1 }, () => new Float64Array(n + 1));
  const from = Array.from({ length: most + 1 }, () => new Int32Array(n + 1).fill(-1));
  const slab = Array.from({ length: n }, (_, i) => {
    const row = new Float64Array(n + 1);
    let joint = columns[i]!;
    for (let j = i; j < n; j++) {
      if (j > i) joint = joined(joint, columns[j]!);
      row[j + 1] = (joint.to - joint.from) * (joint.high - joint.low);
    }
    return row;
  });
  for (let k = 1; k <= most; k++)
    for (let end = 1; end <= n; end++) {
      area[k]![end] = area[k]![end - 1]!;
      for (let start = 0; start < end; start++) {
        const sum = area[k - 1]![start]! + slab[start]![end]!;
        if (sum <= area[k]![end]!) continue;
        area[k]![end] = sum;
        from[k]![end] = start;
      }
    }
  const out: Slab[] = [];
  for (let k = most, end = n; k > 0 && end > 0; ) {
    const start = from[k]![end]!;
    if (start < 0) {
      end--;
      continue;
    }
    const joint = columns.slice(start + 1, end).reduce(joined, columns[start]!);
    out.push({ along: joint.to - joint.from, across: joint.high - joint.low });
    end = start;
    k--;
  }
  return out;
}
