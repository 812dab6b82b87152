import type { CutBox, CutTree } from "./cutTree.ts";

/** Where a narrow strip that is left over does no harm: it goes with the selvedge, or stays at the roll's end. */
export interface LooseEdges {
  /** The far edge along the cloth, and its far end. */
  readonly side: boolean;
  readonly end: boolean;
}

/**
 * Strips narrower than `least` that the cuts of a closed tree take off: hard to cut, since the ruler hardly lies on
 * them. What is left along a loose edge of the whole cloth is none.
 */
export function narrowStrips(
  tree: CutTree,
  least: number,
  loose: LooseEdges,
  tolerance: number,
): readonly CutBox[] {
  const { box: whole } = tree;
  const found: CutBox[] = [];
  const walk = (part: CutTree): void => {
    if (part.kind !== "parts") return;
    const crosscut = part.direction === "crosscut";
    for (const child of part.parts) {
      walk(child);
      if (child.kind !== "offcut") continue;
      const { box } = child;
      if ((crosscut ? box.dx : box.dy) >= least - tolerance) continue;
      const atSide = !crosscut && box.y + box.dy >= whole.y + whole.dy - tolerance;
      const atEnd = crosscut && box.x + box.dx >= whole.x + whole.dx - tolerance;
      if (!(loose.side && atSide) && !(loose.end && atEnd)) found.push(box);
    }
  };
  walk(tree);
  return found;
}
