/** Takes segment `at` out, its width going to the one before it. Returns the new number of segments. */
export function dropSegment(segAcross: Int32Array, segAlong: Int32Array, m: number, at: number): number {
  for (let i = at; i < m; i++) {
    segAcross[i] = segAcross[i + 1]!;
    segAlong[i] = segAlong[i + 1]!;
  }
  return m - 1;
}

/** Raises the part of segment `at` that lies under a blocked box to the box's far side. Returns the new count. */
export function raiseUnderBlocked(
  segAcross: Int32Array,
  segAlong: Int32Array,
  count: number,
  at: number,
  far: number,
  from: number,
  to: number,
): number {
  let m = count;
  const start = segAcross[at]!;
  const end = segAcross[at + 1]!;
  const base = segAlong[at]!;
  const cuts = (from > start ? 1 : 0) + (to < end ? 1 : 0);
  for (let i = m; i > at; i--) {
    segAcross[i + cuts] = segAcross[i]!;
    segAlong[i + cuts] = segAlong[i]!;
  }
  m += cuts;
  let i = at;
  if (from > start) {
    segAlong[i++] = base;
    segAcross[i] = from;
  }
  segAlong[i++] = far;
  if (to < end) {
    segAcross[i] = to;
    segAlong[i] = base;
  }
  // Neighbours may now be level.
  for (let j = at + cuts; j >= at; j--) {
    if (j + 1 < m && segAlong[j + 1] === segAlong[j]) m = dropSegment(segAcross, segAlong, m, j + 1);
    if (j > 0 && segAlong[j - 1] === segAlong[j]) m = dropSegment(segAcross, segAlong, m, j);
  }
  return m;
}
