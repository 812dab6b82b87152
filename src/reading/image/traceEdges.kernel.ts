/**
 * Closed lines along which the grey of a picture passes `level`, by marching squares with linear interpolation; the
 * darker side lies to the left. Points in pixels `[x0, y0, x1, y1, …]`, the middle of the first pixel at (0, 0). What
 * runs into the picture's rim is closed along it: outside counts as light.
 *
 * Shapes: `values` row by row, `width × height`. Lines of fewer than `least` points are left out.
 * Source: Lorensen & Cline 1987 in two dimensions; the two saddles are cut so that dark stays apart.
 * Cost: O(pixels + points).
 */
export function traceEdges(
  values: Uint8Array,
  width: number,
  height: number,
  level: number,
  least: number,
): Float64Array[] {
  // Every crossed edge of the grid leads to the next one: edges are numbered 2 i (to the right of i) and 2 i + 1 (down).
  const next = new Map<number, number>();
  const w = width + 2;
  const at = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? 255 : values[y * width + x]!;
  for (let y = -1; y < height; y++) {
    let a = 255;
    let d = at(-1, y + 1);
    a = at(-1, y);
    for (let x = -1; x < width; x++) {
      const b = at(x + 1, y);
      const c = at(x + 1, y + 1);
      const code = (a < level ? 1 : 0) | (b < level ? 2 : 0) | (c < level ? 4 : 0) | (d < level ? 8 : 0);
      if (code !== 0 && code !== 15) {
        const i = (y + 1) * w + (x + 1);
        const top = 2 * i;
        const left = 2 * i + 1;
        const right = 2 * (i + 1) + 1;
        const bottom = 2 * (i + w);
        link(next, code, top, right, bottom, left);
      }
      a = b;
      d = c;
    }
  }
  const lines: Float64Array[] = [];
  for (const first of [...next.keys()]) {
    if (!next.has(first)) continue;
    const points: number[] = [];
    for (let edge: number | undefined = first; edge !== undefined; ) {
      const node = edge >> 1;
      const x = (node % w) - 1;
      const y = Math.floor(node / w) - 1;
      const isDown = (edge & 1) === 1;
      const p = at(x, y);
      const q = isDown ? at(x, y + 1) : at(x + 1, y);
      const share = p === q ? 0.5 : (level - p) / (q - p);
      points.push(isDown ? x : x + share, isDown ? y + share : y);
      const following = next.get(edge);
      next.delete(edge);
      edge = following !== undefined && next.has(following) ? following : undefined;
    }
    if (points.length >= 2 * least) lines.push(Float64Array.from(points));
  }
  return lines;
}

/** Joins the crossed edges of one square, dark on the left where y runs down. */
function link(
  next: Map<number, number>,
  code: number,
  top: number,
  right: number,
  bottom: number,
  left: number,
): void {
  switch (code) {
    case 1:
      next.set(left, top);
      break;
    case 2:
      next.set(top, right);
      break;
    case 3:
      next.set(left, right);
      break;
    case 4:
      next.set(right, bottom);
      break;
    case 5:
      next.set(left, top);
      next.set(right, bottom);
      break;
    case 6:
      next.set(top, bottom);
      break;
    case 7:
      next.set(left, bottom);
      break;
    case 8:
      next.set(bottom, left);
      break;
    case 9:
      next.set(bottom, top);
      break;
    case 10:
      next.set(top, right);
      next.set(bottom, left);
      break;
    case 11:
      next.set(bottom, right);
      break;
    case 12:
      next.set(right, left);
      break;
    case 13:
      next.set(right, top);
      break;
    default:
      next.set(top, left);
  }
}
