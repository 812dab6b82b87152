import { type Curve, type CurvePart, curveEnd, reversedCurve } from "./curve.ts";
import { curveArea, curveBox } from "./measureCurve.ts";
import type { PatternLine } from "./patternDrawing.ts";

/** Ends this close are one point, mm: a tenth of a millimetre cannot be cut. */
export const SNAP = 0.1;
/** Ends further apart than this are not taken for a gap in one line, mm. */
const GAP_MOST = 5;

/** A joined line, and how far its ends are from each other when they should meet. */
export interface JoinedLine {
  readonly line: PatternLine;
  /** 0 when it was drawn closed or closes; the widest gap on its way otherwise, bridged when asked for. */
  readonly gapMm: number;
  readonly gapX: number;
  readonly gapY: number;
}

/** One end of an open line: which line, and whether it is its start (0) or its end (1). */
interface End {
  readonly line: number;
  readonly side: 0 | 1;
  readonly x: number;
  readonly y: number;
}

/**
 * Open lines of one look whose ends meet within `SNAP`, put together where the chain closes; other lines stay as they
 * are drawn. What would close but for one or more gaps up to `GAP_MOST` comes out as one open line with its gap, or
 * closed by straight bridges when `bridge` is set.
 * Cost: O(n log n) for lines that do not crowd on one spot.
 */
export function joinLines(lines: readonly PatternLine[], bridge: boolean): readonly JoinedLine[] {
  const out = new Map<number, JoinedLine>();
  const byLook = new Map<string, number[]>();
  for (const [i, line] of lines.entries()) {
    if (line.curve.closed || meetsItself(line.curve)) {
      out.set(i, whole({ ...line, curve: { ...line.curve, closed: true } }));
      continue;
    }
    const look = JSON.stringify([line.layer, line.color, line.dash]);
    const group = byLook.get(look);
    if (group) group.push(i);
    else byLook.set(look, [i]);
  }
  for (const group of byLook.values()) {
    const left = new Set(group);
    for (const reach of [SNAP, GAP_MOST])
      for (const [first, chain] of closedChains(lines, left, reach, bridge)) out.set(first, chain);
    for (const i of left) out.set(i, whole(lines[i]!));
  }
  // In the order in which they are drawn, a chain where its first line stands.
  return [...out].sort(([a], [b]) => a - b).map(([, one]) => one);
}

const whole = (line: PatternLine): JoinedLine => ({ line, gapMm: 0, gapX: 0, gapY: 0 });

function meetsItself(curve: Curve): boolean {
  const [x, y] = curveEnd(curve);
  return curve.parts.length > 1 && Math.hypot(x - curve.x, y - curve.y) <= SNAP && reachOf(curve) > 2 * SNAP;
}

/** How far the ends of its parts go from its start: a line that hardly moves is no outline. */
function reachOf(curve: Curve): number {
  let most = 0;
  for (const part of curve.parts) {
    most = Math.max(most, Math.hypot(part.x - curve.x, part.y - curve.y));
    if (part.kind === "arc") most = Math.max(most, Math.hypot(part.ux, part.uy), Math.hypot(part.vx, part.vy));
    if (part.kind === "bezier") most = Math.max(most, Math.hypot(part.x1 - curve.x, part.y1 - curve.y));
  }
  return most;
}

/** Chains among the lines that are left whose ends all find a partner within `reach`; takes them out of `left`. */
function closedChains(
  lines: readonly PatternLine[],
  left: Set<number>,
  reach: number,
  bridge: boolean,
): (readonly [first: number, chain: JoinedLine])[] {
  const partner = partnersWithin(lines, left, reach);
  const out: (readonly [number, JoinedLine])[] = [];
  for (const first of [...left]) {
    if (!left.has(first)) continue;
    const chain = followed(first, partner);
    if (chain === null) continue;
    const one = joined(lines, chain, bridge);
    // There and back is no outline: the same line drawn twice.
    if (enclosesNothing(one.line.curve)) continue;
    for (const { line } of chain) left.delete(line);
    out.push([Math.min(...chain.map(({ line }) => line)), one]);
  }
  return out;
}

function enclosesNothing(curve: Curve): boolean {
  const { minX, minY, maxX, maxY } = curveBox(curve);
  return Math.abs(curveArea(curve)) <= SNAP * Math.hypot(maxX - minX, maxY - minY);
}

/** The ends that belong together: nearest first, each end once, lines that only hang on a join left aside. */
function partnersWithin(
  group: readonly PatternLine[],
  left: ReadonlySet<number>,
  reach: number,
): ReadonlyMap<number, End> {
  let alive = new Set(left);
  let pairs: { a: End; b: End; apart: number }[] = [];
  // A line with an end that meets nothing cannot be part of a closed chain: without it, the others find each other.
  for (let before = -1; before !== alive.size; ) {
    before = alive.size;
    pairs = nearPairs(group, alive, reach);
    const met = new Set(pairs.flatMap(({ a, b }) => [key(a), key(b)]));
    alive = new Set([...alive].filter((line) => met.has(2 * line) && met.has(2 * line + 1)));
  }
  const partner = new Map<number, End>();
  for (const { a, b } of pairs.sort((p, q) => p.apart - q.apart)) {
    if (partner.has(key(a)) || partner.has(key(b))) continue;
    partner.set(key(a), b);
    partner.set(key(b), a);
  }
  return partner;
}

const key = (end: End): number => 2 * end.line + end.side;

function nearPairs(
  group: readonly PatternLine[],
  alive: ReadonlySet<number>,
  reach: number,
): { a: End; b: End; apart: number }[] {
  const cells = new Map<string, End[]>();
  const pairs: { a: End; b: End; apart: number }[] = [];
  for (const line of alive) {
    const { curve } = group[line]!;
    const [endX, endY] = curveEnd(curve);
    const ends: End[] = [
      { line, side: 0, x: curve.x, y: curve.y },
      { line, side: 1, x: endX, y: endY },
    ];
    for (const end of ends) {
      const cx = Math.floor(end.x / reach);
      const cy = Math.floor(end.y / reach);
      for (let i = -1; i <= 1; i++)
        for (let j = -1; j <= 1; j++)
          // A crowd of ends on one spot is no chain; the first few are enough to know it.
          for (const other of (cells.get(`${cx + i},${cy + j}`) ?? []).slice(0, 8)) {
            const apart = Math.hypot(other.x - end.x, other.y - end.y);
            if (apart > reach || (other.line === line && group[line]!.curve.parts.length < 2)) continue;
            pairs.push({ a: other, b: end, apart });
          }
      const cell = `${cx},${cy}`;
      cells.set(cell, [...(cells.get(cell) ?? []).slice(0, 8), end]);
    }
  }
  return pairs;
}

/** The lines met by going on from partner to partner, with the side each is entered by; null when it does not close. */
function followed(first: number, partner: ReadonlyMap<number, End>): End[] | null {
  const chain: End[] = [];
  let at: End | undefined = { line: first, side: 0, x: 0, y: 0 };
  while (at !== undefined) {
    chain.push(at);
    at = partner.get(2 * at.line + (1 - at.side));
    if (at?.line === first) return at.side === 0 ? chain : null;
    if (chain.length > partner.size) return null;
  }
  return null;
}

function joined(group: readonly PatternLine[], chain: readonly End[], bridge: boolean): JoinedLine {
  const curves = chain.map(({ line, side }) =>
    side === 0 ? group[line]!.curve : reversedCurve(group[line]!.curve),
  );
  const gaps = curves.map((curve, i) => {
    const [x, y] = curveEnd(curve);
    const next = curves[(i + 1) % curves.length]!;
    return { mm: Math.hypot(next.x - x, next.y - y), x: (x + next.x) / 2, y: (y + next.y) / 2 };
  });
  const widest = gaps.reduce((best, gap) => (gap.mm > best.mm ? gap : best));
  const hasGap = widest.mm > SNAP;
  // Opened where it is widest, so that the gap is at its ends.
  const from = (gaps.indexOf(widest) + 1) % curves.length;
  const ordered = hasGap ? [...curves.slice(from), ...curves.slice(0, from)] : curves;
  const parts: CurvePart[] = [];
  for (const [i, curve] of ordered.entries()) {
    const before = parts.at(-1);
    if (i > 0 && before && Math.hypot(curve.x - before.x, curve.y - before.y) > SNAP)
      parts.push({ kind: "straight", x: curve.x, y: curve.y });
    parts.push(...curve.parts);
  }
  const line = group[Math.min(...chain.map((end) => end.line))]!;
  const curve: Curve = { x: ordered[0]!.x, y: ordered[0]!.y, parts, closed: !hasGap || bridge };
  return { line: { ...line, curve }, gapMm: hasGap ? widest.mm : 0, gapX: widest.x, gapY: widest.y };
}
