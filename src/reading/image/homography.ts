/** Nine numbers, row by row: (x, y) goes to (X / W, Y / W). */
export type Homography = readonly number[];

/** A point in the picture and where it is on the table. */
export interface PointPair {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/**
 * The perspective map that takes at least four points to their places, by least squares when there are more; null when
 * three of four lie on one line.
 * Source: Hartley & Zisserman, Multiple View Geometry, 4.1 (DLT) with normalised points (4.4.4), last entry set to 1.
 */
export function homographyOf(pairs: readonly PointPair[]): Homography | null {
  const from = normaliser(pairs.map((pair) => pair.from));
  const to = normaliser(pairs.map((pair) => pair.to));
  // Normal equations of the two rows that each pair gives for eight unknowns.
  const a = Array.from({ length: 8 }, () => new Float64Array(9));
  for (const pair of pairs) {
    const [x, y] = from.apply(pair.from);
    const [u, v] = to.apply(pair.to);
    for (const row of [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ])
      for (let i = 0; i < 8; i++) for (let j = 0; j < 9; j++) a[i]![j]! += row[i]! * row[j]!;
  }
  const solved = solve(a);
  if (solved === null) return null;
  const inner = [...solved, 1];
  return product(product(to.inverse, inner), from.matrix);
}

/** Where a point goes. */
export function mapByHomography(h: Homography, x: number, y: number): readonly [number, number] {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return [(h[0]! * x + h[1]! * y + h[2]!) / w, (h[3]! * x + h[4]! * y + h[5]!) / w];
}

/** The map the other way, from the table to the picture; null when it has none. */
export function inverseOf(h: Homography): Homography | null {
  const [a, b, c, d, e, f, g, i, j] = h;
  const inverse = [
    e! * j! - f! * i!,
    c! * i! - b! * j!,
    b! * f! - c! * e!,
    f! * g! - d! * j!,
    a! * j! - c! * g!,
    c! * d! - a! * f!,
    d! * i! - e! * g!,
    b! * g! - a! * i!,
    a! * e! - b! * d!,
  ];
  const determinant = a! * inverse[0]! + b! * inverse[3]! + c! * inverse[6]!;
  return determinant === 0 || !Number.isFinite(determinant) ? null : inverse;
}

function normaliser(points: readonly (readonly [number, number])[]) {
  const n = points.length;
  const cx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const cy = points.reduce((sum, [, y]) => sum + y, 0) / n;
  const mean = points.reduce((sum, [x, y]) => sum + Math.hypot(x - cx, y - cy), 0) / n || 1;
  const s = Math.SQRT2 / mean;
  return {
    apply: ([x, y]: readonly [number, number]): readonly [number, number] => [s * (x - cx), s * (y - cy)],
    matrix: [s, 0, -s * cx, 0, s, -s * cy, 0, 0, 1],
    inverse: [1 / s, 0, cx, 0, 1 / s, cy, 0, 0, 1],
  };
}

function product(a: readonly number[], b: readonly number[]): number[] {
  return Array.from({ length: 9 }, (_, k) => {
    const row = 3 * Math.floor(k / 3);
    return [0, 1, 2].reduce((sum, i) => sum + a[row + i]! * b[3 * i + (k % 3)]!, 0);
  });
}

/** Gaussian elimination with the largest pivot; null when there is none. */
function solve(a: Float64Array[]): number[] | null {
  const n = a.length;
  for (let i = 0; i < n; i++) {
    let best = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(a[k]![i]!) > Math.abs(a[best]![i]!)) best = k;
    if (Math.abs(a[best]![i]!) < 1e-10) return null;
    [a[i], a[best]] = [a[best]!, a[i]!];
    for (let k = i + 1; k < n; k++) {
      const factor = a[k]![i]! / a[i]![i]!;
      for (let j = i; j <= n; j++) a[k]![j]! -= factor * a[i]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = a[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= a[i]![j]! * x[j]!;
    x[i] = sum / a[i]![i]!;
  }
  return x;
}
