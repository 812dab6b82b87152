/** A placed box; this check shares no code with what it judges. */
interface LaidBox {
  readonly x: number;
  readonly y: number;
  readonly along: number;
  readonly across: number;
}

/**
 * Whether boxes can be parted by straight cuts from edge to edge alone: some line parts them in two without touching
 * a box, and each half is the same again. O(n² log n) at worst.
 */
export function cutsEdgeToEdge(boxes: readonly LaidBox[], tolerance: number): boolean {
  const open: (readonly LaidBox[])[] = [boxes];
  for (let part = open.pop(); part; part = open.pop()) {
    if (part.length < 2) continue;
    const halves =
      parted(part, tolerance, (box) => [box.x, box.x + box.along]) ??
      parted(part, tolerance, (box) => [box.y, box.y + box.across]);
    if (!halves) return false;
    open.push(...halves);
  }
  return true;
}

function parted(
  boxes: readonly LaidBox[],
  tolerance: number,
  rangeOf: (box: LaidBox) => readonly [from: number, to: number],
): [LaidBox[], LaidBox[]] | null {
  const sorted = [...boxes].sort((a, b) => rangeOf(a)[0] - rangeOf(b)[0]);
  let reach = rangeOf(sorted[0]!)[1];
  for (let i = 1; i < sorted.length; i++) {
    const [from, to] = rangeOf(sorted[i]!);
    if (from >= reach - tolerance) return [sorted.slice(0, i), sorted.slice(i)];
    reach = Math.max(reach, to);
  }
  return null;
}
