import type { Box } from "../geometry/box.ts";
import type { Ring } from "../geometry/ring.ts";

/** Lines nearer than this are one line for a blade, mm. */
const SAME = 0.1;
/** Stretches shorter than this are where lines cross or meet, mm. */
const LEAST = 2;
/** What is left of a line beside its doubled stretches, when it is longer than this, mm. */
const REST = 0.5;
/** Pairs of chords that are looked at, all lines together: patterns need a few thousand. */
const MOST_PAIRS = 4e6;

/** A line as it is compared. */
interface ComparedLine {
  readonly points: Ring;
  readonly closed: boolean;
  readonly box: Box;
  /** Lines of different looks lie on one another on purpose. */
  readonly look: string;
  /** Whether it may lie on another line by its purpose, as a fold does. */
  readonly mayLie: boolean;
}

/** What of an open line lies on another one. */
export interface PartlyDoubled {
  readonly other: number;
  readonly doubledMm: number;
  /** The stretches that do not, as points x, y in turn. */
  readonly rest: readonly (readonly number[])[];
}

type Span = readonly [from: number, to: number];

/**
 * Open lines of which a stretch lies on another line of the same look, by their index; the longer of two lines that lie
 * on each other stays, and so does every closed one. `skip` is left aside.
 * Units: mm.
 * Cost: chords of lines whose boxes meet, each pair once; what is more than `MOST_PAIRS` is not looked at.
 */
export function partlyDoubledLines(
  lines: readonly ComparedLine[],
  skip: ReadonlySet<number>,
): ReadonlyMap<number, PartlyDoubled> {
  const found = new Map<number, PartlyDoubled>();
  const open = lines
    .map((line, index) => ({ line, index, length: lengthOf(line.points) }))
    .filter(({ line, index }) => !line.closed && !line.mayLie && !skip.has(index))
    .sort((a, b) => a.length - b.length || b.index - a.index);
  let pairs = 0;
  for (const { line, index, length } of open) {
    for (const [other, under] of lines.entries()) {
      if (other === index || skip.has(other) || found.has(other) || under.mayLie || under.look !== line.look)
        continue;
      if (!boxesMeet(under.box, line.box)) continue;
      pairs += (line.points.length / 2) * (under.points.length / 2);
      if (pairs > MOST_PAIRS) return found;
      const spans = spansOn(line.points, under).filter(([from, to]) => to - from >= LEAST);
      if (spans.length === 0) continue;
      const doubledMm = spans.reduce((sum, [from, to]) => sum + to - from, 0);
      found.set(index, { other, doubledMm, rest: restOf(line.points, spans, length) });
      break;
    }
  }
  return found;
}

function boxesMeet(a: Box, b: Box): boolean {
  return a.minX <= b.maxX + SAME && b.minX <= a.maxX + SAME && a.minY <= b.maxY + SAME && b.minY <= a.maxY + SAME;
}

function lengthOf(points: Ring): number {
  let sum = 0;
  for (let i = 2; i < points.length; i += 2)
    sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!);
  return sum;
}

/** Where along a line another one lies within `SAME`, joined where they follow on. */
function spansOn(points: Ring, { points: under, closed }: ComparedLine): Span[] {
  const spans: Span[] = [];
  let at = 0;
  const last = closed ? under.length : under.length - 2;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!];
    const length = Math.hypot(bx - ax, by - ay);
    for (let j = 0; j < last && length > 0; j += 2) {
      const k = (j + 2) % under.length;
      const span = nearSpan(ax, ay, bx, by, under[j]!, under[j + 1]!, under[k]!, under[k + 1]!);
      if (span !== null) spans.push([at + span[0] * length, at + span[1] * length]);
    }
    at += length;
  }
  const joined: [number, number][] = [];
  for (const [from, to] of spans.sort((a, b) => a[0] - b[0])) {
    const before = joined.at(-1);
    if (before !== undefined && from <= before[1] + SAME) before[1] = Math.max(before[1], to);
    else joined.push([from, to]);
  }
  return joined;
}

/**
 * The shares of a→b within `SAME` of c→d, for chords that run the same way or back; null where they do not. The two ends
 * of what they share are projected, so that a stretch ends where the other line does.
 */
function nearSpan(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): Span | null {
  const [ux, uy] = [bx - ax, by - ay];
  const squared = ux * ux + uy * uy;
  const share = (x: number, y: number): number => ((x - ax) * ux + (y - ay) * uy) / squared;
  const [s, t] = [share(cx, cy), share(dx, dy)];
  const [from, to] = [Math.max(0, Math.min(s, t)), Math.min(1, Math.max(s, t))];
  if (to <= from) return null;
  // Between two points of the other chord its distance changes evenly: both ends near, all of it near.
  const off = (x: number, y: number): number => ((x - ax) * uy - (y - ay) * ux) / Math.sqrt(squared);
  const [offC, offD] = [off(cx, cy), off(dx, dy)];
  const offAt = (p: number): number => offC + ((offD - offC) * (p - s)) / (t - s);
  return Math.abs(offAt(from)) <= SAME && Math.abs(offAt(to)) <= SAME ? [from, to] : null;
}

function restOf(points: Ring, spans: readonly Span[], length: number): number[][] {
  const edges = [0, ...spans.flat(), length];
  const out: number[][] = [];
  for (let i = 0; i < edges.length; i += 2)
    if (edges[i + 1]! - edges[i]! > REST) out.push(stretch(points, edges[i]!, edges[i + 1]!));
  return out;
}

/** The points of a line from one place along it to another. */
function stretch(points: Ring, from: number, to: number): number[] {
  const out: number[] = [];
  let at = 0;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i]!, points[i + 1]!, points[i + 2]!, points[i + 3]!];
    const length = Math.hypot(bx - ax, by - ay);
    const [s, t] = [Math.max(from, at), Math.min(to, at + length)];
    if (t > s && length > 0) {
      const place = (p: number): [number, number] => [
        ax + ((bx - ax) * (p - at)) / length,
        ay + ((by - ay) * (p - at)) / length,
      ];
      if (out.length === 0) out.push(...place(s));
      out.push(...place(t));
    }
    at += length;
  }
  return out;
}
