/** An axis-parallel box: x along the roll, y across it. */
export interface CutBox {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** A crosscut runs across the roll and parts it lengthwise; a rip runs along it. */
export type CutDirection = "crosscut" | "rip";

/**
 * How a box of cloth comes apart under edge-to-edge cuts. Parts of a node lie side by side in order and fill its
 * box; every line between two parts is one cut.
 */
export type CutTree =
  | { readonly kind: "piece"; readonly box: CutBox; readonly piece: number }
  | { readonly kind: "offcut"; readonly box: CutBox }
  | {
      readonly kind: "parts";
      readonly box: CutBox;
      readonly direction: CutDirection;
      readonly parts: readonly CutTree[];
    };

/**
 * The cuts that part `pieces` in `box`, or null when some of them cannot be parted by edge-to-edge cuts. On the
 * whole cloth crosscuts come first (a length that can be carried to the table), below that rips.
 *
 * Shapes: pieces inside the box, not overlapping. `tolerance` is the distance that counts as none.
 * Cost:   O(depth · n log n).
 */
export function cutTreeOf(box: CutBox, pieces: readonly CutBox[], tolerance: number): CutTree | null {
  const all = pieces.map((piece, index) => ({ piece, index }));
  return partedBox(box, all, "crosscut", tolerance);
}

interface Numbered {
  readonly piece: CutBox;
  readonly index: number;
}

function partedBox(
  box: CutBox,
  pieces: readonly Numbered[],
  first: CutDirection,
  tolerance: number,
): CutTree | null {
  if (pieces.length === 0) return { kind: "offcut", box };
  const second = first === "crosscut" ? "rip" : "crosscut";
  for (const direction of [first, second] as const) {
    const slabs = slabsOf(box, pieces, direction, tolerance);
    if (slabs.length === 1) continue;
    const parts: CutTree[] = [];
    for (const slab of slabs) {
      const part = partedBox(slab.box, slab.pieces, direction === "crosscut" ? "rip" : "crosscut", tolerance);
      if (part === null) return null;
      parts.push(part);
    }
    return { kind: "parts", box, direction, parts };
  }
  return pieces.length === 1 ? { kind: "piece", box, piece: pieces[0]!.index } : null;
}

/** The box parted at every line that meets no piece: groups of pieces, and the empty bands between them. */
function slabsOf(
  box: CutBox,
  pieces: readonly Numbered[],
  direction: CutDirection,
  tolerance: number,
): { readonly box: CutBox; readonly pieces: readonly Numbered[] }[] {
  const near = (b: CutBox): number => (direction === "crosscut" ? b.x : b.y);
  const size = (b: CutBox): number => (direction === "crosscut" ? b.dx : b.dy);
  const part = (from: number, to: number): CutBox =>
    direction === "crosscut" ? { ...box, x: from, dx: to - from } : { ...box, y: from, dy: to - from };
  const order = [...pieces].sort((a, b) => near(a.piece) - near(b.piece) || a.index - b.index);
  const slabs: { box: CutBox; pieces: Numbered[] }[] = [];
  let end = near(box);
  let group: Numbered[] = [];
  let start = end;
  const close = (): void => {
    if (group.length > 0) slabs.push({ box: part(start, end), pieces: group });
    group = [];
  };
  for (const numbered of order) {
    const from = near(numbered.piece);
    if (from >= end - tolerance) {
      close();
      if (from > end + tolerance) {
        slabs.push({ box: part(end, from), pieces: [] });
        start = from;
      } else start = end;
    }
    group.push(numbered);
    end = Math.max(end, from + size(numbered.piece));
  }
  close();
  const far = near(box) + size(box);
  if (far > end + tolerance) slabs.push({ box: part(end, far), pieces: [] });
  return slabs;
}

/** Cuts in the tree: one between every two neighbours. */
export function cutCount(tree: CutTree): number {
  if (tree.kind !== "parts") return 0;
  return tree.parts.reduce((sum, part) => sum + cutCount(part), tree.parts.length - 1);
}

/** Every offcut of the tree. */
export function offcutsOf(tree: CutTree): CutBox[] {
  if (tree.kind === "offcut") return [tree.box];
  return tree.kind === "piece" ? [] : tree.parts.flatMap(offcutsOf);
}

/** Most alternations of crosscuts and rips from the whole down to a piece. */
export function stageCount(tree: CutTree): number {
  return tree.kind === "parts" ? 1 + Math.max(...tree.parts.map(stageCount)) : 0;
}
